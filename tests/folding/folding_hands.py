"""Paper in the hand: a folding simulator for tests that shares nothing with packgen's own derivation.

It knows marks (a number printed somewhere on a side of a sheet, with a direction for its head), sheets of a size in
mm, and what hands do: lay, fold over, fold under, cut across and stack. A fold splits whatever part of the paper it
runs through; packgen's panels and fractions do not occur here.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

NEAR = 1e-6


@dataclass(frozen=True)
class Mark:
    """A number on a side of a sheet, seen as printed: its centre in mm and the direction of its head."""

    number: int
    sheet: int
    side: str
    x: float
    y: float
    head: tuple[int, int]


@dataclass(frozen=True)
class Part:
    """A flat part of a sheet: its rectangle on the front, how it lies, and its height in the pile (0 at the bottom)."""

    sheet: int
    box: tuple[float, float, float, float]
    sx: int
    sy: int
    tx: float
    ty: float
    level: int = 0

    def put(self, x: float, y: float) -> tuple[float, float]:
        return self.sx * x + self.tx, self.sy * y + self.ty

    def place(self) -> tuple[float, float, float, float]:
        (a, b), (c, d) = self.put(*self.box[:2]), self.put(*self.box[2:])
        return min(a, c), min(b, d), max(a, c), max(b, d)


def behind(mark: Mark, width: float, height: float, sides: str) -> Mark:
    """A mark on the back, in the coordinates of the front it lies behind.

    The printer turns the sheet about its long or its short edge (RFC 8011 `sides`); the long edge of a lying sheet is
    level, of a standing one upright.
    """
    about_level = (width > height) == (sides == "two-sided-long-edge")
    if about_level:
        return replace(mark, y=height - mark.y, head=(mark.head[0], -mark.head[1]))
    return replace(mark, x=width - mark.x, head=(-mark.head[0], mark.head[1]))


class Table:
    """A pile of sheets of one size on the table, with everything printed on them."""

    def __init__(self, width: float, height: float, marks: Iterable[Mark], sides: str) -> None:
        self.width, self.height = width, height
        self.marks = [mark if mark.side == "front" else behind(mark, width, height, sides) for mark in marks]
        self.parts: list[Part] = []

    def lay(self, sheets: Iterable[int], *, back_up: bool = False) -> None:
        """Lay the sheets down one by one, the first at the bottom, each with its front or its back up."""
        for level, sheet in enumerate(sheets):
            part = Part(sheet, (0.0, 0.0, self.width, self.height), 1, 1, 0.0, 0.0, level)
            self.parts.append(replace(part, sx=-1, tx=self.width) if back_up else part)

    def fold(self, moving: str, at: float, *, under: bool = False) -> None:
        """Take the part beyond the line at `at` by its edge and bring it over (or under) the rest."""
        self._split(moving in ("left", "right"), at)
        high = max(part.level for part in self.parts)
        folded = []
        for part in self.parts:
            if not self._beyond(part, moving, at):
                folded.append(part)
                continue
            level = (-1 - part.level) if under else (2 * high + 1 - part.level)
            if moving in ("left", "right"):
                folded.append(replace(part, sx=-part.sx, tx=2 * at - part.tx, level=level))
            else:
                folded.append(replace(part, sy=-part.sy, ty=2 * at - part.ty, level=level))
        self.parts = folded

    def cut_and_put_on_top(self, moving: str, at: float, by: tuple[float, float]) -> None:
        """Cut the pile along a line and slide the moving part, unturned, on top of the rest."""
        self._split(moving in ("left", "right"), at)
        high = max(part.level for part in self.parts) + 1
        self.parts = [
            replace(p, tx=p.tx + by[0], ty=p.ty + by[1], level=p.level + high) if self._beyond(p, moving, at) else p
            for p in self.parts
        ]

    def cut(self, moving: str, at: float) -> None:
        """Cut along a line and leave everything where it lies."""
        self._split(moving in ("left", "right"), at)

    def _beyond(self, part: Part, moving: str, at: float) -> bool:
        left, bottom, right, top = part.place()
        middle = (left + right) / 2 if moving in ("left", "right") else (bottom + top) / 2
        return middle > at if moving in ("right", "top") else middle < at

    def _split(self, upright: bool, at: float) -> None:
        done = []
        for part in self.parts:
            left, bottom, right, top = part.place()
            low, high = (left, right) if upright else (bottom, top)
            if not low + NEAR < at < high - NEAR:
                done.append(part)
                continue
            x1, y1, x2, y2 = part.box
            if upright:
                line = (at - part.tx) * part.sx
                done += [replace(part, box=(x1, y1, line, y2)), replace(part, box=(line, y1, x2, y2))]
            else:
                line = (at - part.ty) * part.sy
                done += [replace(part, box=(x1, y1, x2, line)), replace(part, box=(x1, line, x2, y2))]
        self.parts = done

    def piles(self) -> dict[tuple[float, float], list[Part]]:
        """The parts by the place (left, top) they lie at, each pile from the top down."""
        found: dict[tuple[float, float], list[Part]] = {}
        for part in sorted(self.parts, key=lambda p: -p.level):
            left, _, _, top = part.place()
            found.setdefault((round(left, 3), round(top, 3)), []).append(part)
        return found

    def printed(self, part: Part, *, upper: bool) -> list[tuple[int, tuple[int, int]]]:
        """The numbers on the upper or lower face of a part, each with the way its head points on the table."""
        front_up = part.sx * part.sy > 0
        side = "front" if upper == front_up else "back"
        x1, y1, x2, y2 = part.box
        return [
            (mark.number, (mark.head[0] * part.sx, mark.head[1] * part.sy))
            for mark in self.marks
            if mark.side == side and mark.sheet == part.sheet and x1 < mark.x < x2 and y1 < mark.y < y2
        ]

    def leaf_through(self, pile: list[Part]) -> list[tuple[int, tuple[int, int]]]:
        """Everything printed on a pile, from its top face to its bottom face."""
        return [found for part in pile for upper in (True, False) for found in self.printed(part, upper=upper)]


def strip(
    marks: list[Mark], lines: list[tuple[float, float, float, float, str]], across: int, up: int, w: float, h: float
) -> list[tuple[tuple[float, ...], tuple[int, int], bool]]:
    """Close a strip of panels (one number each, in order) fold by fold in space, and tell how each comes to lie.

    `lines` are the folds and cuts on the printed side. Each panel is turned half round about the edge it shares with
    the one before. Told of each: its rectangle, the way its head points, and whether its printed face looks up. Raises
    AssertionError if two panels that follow one another do not hang together.
    """
    cell_w, cell_h = w / across, h / up
    told = []
    # A turn in space of half round about an upright line maps (x, z) to (2 l - x, -z); about a level one (y, z) alike.
    sx, sy, tx, ty, face = 1, 1, 0.0, 0.0, True
    before: Mark | None = None
    for mark in marks:
        if before is not None:
            upright = abs(mark.y - before.y) < cell_h / 2
            assert abs(mark.x - before.x) + abs(mark.y - before.y) < max(cell_w, cell_h) + NEAR
            line = (mark.x + before.x) / 2 if upright else (mark.y + before.y) / 2
            assert _hangs(lines, upright, line, mark.y if upright else mark.x), (before.number, mark.number)
            if upright:
                at = sx * line + tx
                sx, tx = -sx, 2 * at - tx
            else:
                at = sy * line + ty
                sy, ty = -sy, 2 * at - ty
            face = not face
        column, row = int(mark.x / cell_w), int(mark.y / cell_h)
        xs = sorted((sx * column * cell_w + tx, sx * (column + 1) * cell_w + tx))
        ys = sorted((sy * row * cell_h + ty, sy * (row + 1) * cell_h + ty))
        told.append(((xs[0], ys[0], xs[1], ys[1]), (mark.head[0] * sx, mark.head[1] * sy), face))
        before = mark
    return told


def line_at(
    lines: list[tuple[float, float, float, float, str]], upright: bool, line: float, along: float
) -> str | None:
    """The kind of the line that runs through a place, or None."""
    for x1, y1, x2, y2, kind in lines:
        if upright and abs(x1 - line) < NEAR and abs(x2 - line) < NEAR and y1 < along < y2:
            return kind
        if not upright and abs(y1 - line) < NEAR and abs(y2 - line) < NEAR and x1 < along < x2:
            return kind
    return None


def _hangs(lines: list[tuple[float, float, float, float, str]], upright: bool, line: float, along: float) -> bool:
    return line_at(lines, upright, line, along) in ("valley", "mountain")
