"""What a net is made of: pieces of card with their faces, folds, cuts, tabs and marks. Lengths in mm on paper.

The printed side is the outside of the finished solid. Seen from there an edge where the solid is convex folds away from
the eye: a mountain fold; an edge where it is hollow is a valley fold.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from packgen.nets.solid import Solid
from packgen.nets.vectors import Matrix, Point, all_moved, bounds, moved, rotation

PRINTED_SIDE = "outside"
MOUNTAIN, VALLEY = "mountain", "valley"

Segment = tuple[Point, Point]


@dataclass(frozen=True, slots=True)
class Art:
    """Where a drawing goes on a face: a box of width x height mm, upright on the built model, seen from outside.

    `matrix` takes the box (x right, y up, from its lower left) to the paper; `outline` is the face in the box.
    """

    matrix: Matrix
    width: float
    height: float
    outline: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class FlatFace:
    """A face laid flat. `up` is the direction, on paper, of upright on the built model; `source` counts the solid's
    plane faces, then its curved ones. A part of a face cut up over several sheets has the corners of the whole face, on
    the same paper, in `whole`.
    """

    name: str
    points: tuple[Point, ...]
    label: Point
    up: Point
    source: int
    whole: tuple[Point, ...] = ()

    @property
    def up_deg(self) -> float:
        """The direction of upright on paper, in degrees anticlockwise from rightwards."""
        return math.degrees(math.atan2(self.up[1], self.up[0]))

    @property
    def art(self) -> Art:
        """The upright box round the whole face, for a drawing or a ruled texture, and this face's outline in it."""
        turn = math.atan2(self.up[1], self.up[0]) - math.pi / 2
        upright = all_moved(rotation(-turn), self.points)
        left, bottom, right, top = bounds(all_moved(rotation(-turn), self.whole or self.points))
        back = rotation(turn)
        x, y = moved(back, (left, bottom))
        matrix = (*back[:4], x, y)
        outline = tuple((px - left, py - bottom) for px, py in upright)
        return Art(matrix, right - left, top - bottom, outline)


@dataclass(frozen=True, slots=True)
class Fold:
    """A fold line and its kind seen from the printed side; `dihedral_deg` is the angle inside the finished solid."""

    start: Point
    end: Point
    kind: str
    dihedral_deg: float
    on_tab: bool = False


@dataclass(frozen=True, slots=True)
class Tab:
    """A glue tab: its outline, the line it folds on, its letter and the face it goes under.

    The outline begins at the start of `hinge`, runs round the outside to its end and back along it. `edge` is the edge
    the tab meets, if that lies on the same piece or sheet.
    """

    points: tuple[Point, ...]
    hinge: tuple[Point, ...]
    letter: str
    on_face: str
    under: str
    edge: tuple[Point, ...] = ()

    @property
    def outer(self) -> tuple[Point, ...]:
        """The sides that are cut, from the start of the hinge to its end."""
        return self.points[: len(self.points) - len(self.hinge) + 2]


@dataclass(frozen=True, slots=True)
class Letter:
    """A glue letter: on a `tab`, or on a face just inside the `edge` that goes on that tab. `turn_deg` is its slant.

    `slide` is how far (mm) it may move along that slant either way and still stand beside its edge.
    """

    text: str
    at: Point
    turn_deg: float
    on: str
    slide: float = 0.0


@dataclass(frozen=True, slots=True)
class Hole:
    """A hole to make, or a mark only: its middle, its width, and what it is for (corners, base, apex, axle).

    A `snip` is a hole at a point of the solid: its tip is cut off along a curve, which is among the cuts.
    """

    centre: Point
    across: float
    mark_only: bool
    where: str
    snip: bool = False


@dataclass(frozen=True, slots=True)
class Cut:
    """A cut: a line through points; `closed` if it returns to its start."""

    points: tuple[Point, ...]
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Overlap:
    """The strip two sheets of one cut-up face share: lay the crosses of the one on the crosses of the other."""

    points: tuple[Point, ...]
    text: str
    crosses: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Part:
    """One piece of card as it is cut out.

    `scores` are fine lines along which a curved face bends; `lays` are lines on which another edge comes to lie and
    nothing folds: where a tab begins on a flat joint, or where a turn of a wound strip ends.
    """

    faces: tuple[FlatFace, ...]
    folds: tuple[Fold, ...] = ()
    cuts: tuple[Cut, ...] = ()
    tabs: tuple[Tab, ...] = ()
    letters: tuple[Letter, ...] = ()
    scores: tuple[tuple[Point, ...], ...] = ()
    holes: tuple[Hole, ...] = ()
    overlaps: tuple[Overlap, ...] = ()
    lays: tuple[tuple[Point, ...], ...] = ()

    @property
    def shapes(self) -> tuple[tuple[Point, ...], ...]:
        """The outlines of its faces and tabs: all the card it takes."""
        return (*(f.points for f in self.faces), *(t.points for t in self.tabs))

    @property
    def corners(self) -> tuple[Point, ...]:
        """Every corner of its faces and tabs."""
        return tuple(p for shape in self.shapes for p in shape)

    def moved(self, m: Matrix) -> Part:
        """The piece elsewhere, turned or shifted."""
        turn = math.degrees(math.atan2(m[1], m[0]))
        spin = (*m[:4], 0.0, 0.0)
        return Part(
            tuple(
                replace(
                    f,
                    points=all_moved(m, f.points),
                    label=moved(m, f.label),
                    up=moved(spin, f.up),
                    whole=all_moved(m, f.whole),
                )
                for f in self.faces
            ),
            tuple(replace(f, start=moved(m, f.start), end=moved(m, f.end)) for f in self.folds),
            tuple(replace(c, points=all_moved(m, c.points)) for c in self.cuts),
            tuple(
                replace(t, points=all_moved(m, t.points), hinge=all_moved(m, t.hinge), edge=all_moved(m, t.edge))
                for t in self.tabs
            ),
            tuple(replace(x, at=moved(m, x.at), turn_deg=x.turn_deg + turn) for x in self.letters),
            tuple(all_moved(m, s) for s in self.scores),
            tuple(replace(h, centre=moved(m, h.centre)) for h in self.holes),
            tuple(replace(o, points=all_moved(m, o.points), crosses=all_moved(m, o.crosses)) for o in self.overlaps),
            tuple(all_moved(m, s) for s in self.lays),
        )

    def turned(self, angle: float) -> Part:
        """The piece turned anticlockwise by an angle in radians."""
        return self.moved(rotation(angle))


@dataclass(frozen=True, slots=True)
class Side:
    """One side of a joint: the piece and face it belongs to, and the edge as points on that piece.

    `source` and `at` name the face and the place of the edge in its loop (at is -1 on a curved part).
    """

    part: int
    source: int
    at: int
    points: tuple[Point, ...]

    def moved(self, m: Matrix) -> Side:
        """The side after its piece was moved."""
        return replace(self, points=all_moved(m, self.points))


@dataclass(frozen=True, slots=True)
class Joint:
    """Two edges glued together: the side that carries the tab and the side that meets it, under one letter."""

    letter: str
    tab: Side
    edge: Side
    dihedral_deg: float


@dataclass(frozen=True, slots=True)
class Hinge:
    """Two faces of a piece that stay joined along a fold: `fold` radians, positive for a mountain fold.

    `start` and `end` lie on the piece, in the order in which the parent face runs round.
    """

    part: int
    parent: int
    child: int
    start: Point
    end: Point
    fold: float


@dataclass(frozen=True, slots=True)
class Stage:
    """One stage of building: its kind, the letters glued, and the face closed or laid on, as far as it has any.

    `count` is how many pieces or holes it is about, `folds` the kinds of fold there are, `size` a length in mm. `own`
    is True if the face carries its tabs itself, `thread` if a thread may have to go through a hole before.
    """

    kind: str
    letters: tuple[str, ...] = ()
    face: str = ""
    count: int = 0
    folds: tuple[str, ...] = ()
    size: float = 0.0
    own: bool = False
    thread: bool = False


@dataclass(frozen=True, slots=True)
class Net:
    """A solid at paper size, unfolded: its pieces, which folds hold them and which joints close them.

    `last` is the face closed last. `stages` tell how to build it and `cautions` what to take care of.
    """

    solid: Solid
    parts: tuple[Part, ...]
    joints: tuple[Joint, ...] = ()
    hinges: tuple[Hinge, ...] = ()
    last: str = ""
    card: float = 0.25
    youngest: bool = False
    stages: tuple[Stage, ...] = ()
    cautions: tuple[str, ...] = ()

    def moved(self, part: int, m: Matrix) -> Net:
        """The net with one of its pieces turned or shifted."""

        def side(s: Side) -> Side:
            return s.moved(m) if s.part == part else s

        return replace(
            self,
            parts=tuple(p.moved(m) if i == part else p for i, p in enumerate(self.parts)),
            joints=tuple(replace(j, tab=side(j.tab), edge=side(j.edge)) for j in self.joints),
            hinges=tuple(
                replace(h, start=moved(m, h.start), end=moved(m, h.end)) if h.part == part else h for h in self.hinges
            ),
        )
