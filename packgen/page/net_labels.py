"""Where the letters of a net stand: each as large as its level asks and its tab or edge allows, clear of the rest."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, dist, hypot, radians, sin

from packgen.nets.layout import NetSheet
from packgen.nets.net import Letter
from packgen.nets.tabs import distance, inside
from packgen.page.desk import Desk
from packgen.page.marks import Point

# The em of the letters on tabs and beside edges, in mm.
_LETTERS = {"first": (5.2, 3.2), "younger": (4.2, 3.0), "older": (3.6, 2.7), "upper": (3.4, 2.6)}
_LEAST = 1.9
_CLEAR = 0.45
"""How far letters keep from the lines round them (mm), half a cut line's width included."""
_AIR = 0.35
_SHIFTS = (0.0, 1.0, 2.0, 3.0, 4.5, 6.5, 9.0, 12.0)
_INSETS = (0.0, -0.8, 0.8, 1.8, 3.0)


@dataclass(frozen=True, slots=True)
class Spot:
    """Where letters stand: their middle, the half width and half height they need, and their slant in degrees."""

    at: Point
    wide: float
    high: float
    turn_deg: float

    @property
    def rim(self) -> tuple[Point, ...]:
        """The corners of the place they need, and the middles of its sides, anticlockwise."""
        c, s = cos(radians(self.turn_deg)), sin(radians(self.turn_deg))
        steps = [(-1, -1), (0, -1), (1, -1), (1, 0), (1, 1), (0, 1), (-1, 1), (-1, 0)]
        x, y = self.at
        return tuple(
            (x + c * i * self.wide - s * j * self.high, y + s * i * self.wide + c * j * self.high) for i, j in steps
        )

    def within(self, outline: Sequence[Point], clear: float) -> bool:
        """True if the place lies inside an outline, so far from its sides."""
        edges = list(zip(outline, (*outline[1:], outline[0]), strict=True))
        rim = self.rim
        for point in rim:
            if not inside(point, outline) or min(distance(point, a, b) for a, b in edges) < clear:
                return False
        sides = list(zip(rim, (*rim[1:], rim[0]), strict=True))
        return not any(inside(p, rim) or min(distance(p, a, b) for a, b in sides) < clear for p in outline)

    def apart(self, other: Spot, air: float = 0.0) -> bool:
        """True if two places share nothing: some line along a side of one of them parts them (separating axes)."""
        if dist(self.at, other.at) > hypot(self.wide, self.high) + hypot(other.wide, other.high) + air:
            return True
        for spot in (self, other):
            for turn in (0.0, 90.0):
                x, y = cos(radians(spot.turn_deg + turn)), sin(radians(spot.turn_deg + turn))
                one, two = ([px * x + py * y for px, py in s.rim] for s in (self, other))
                if max(one) + air <= min(two) or max(two) + air <= min(one):
                    return True
        return False

    def off(self, centre: Point, radius: float) -> bool:
        """True if the place keeps clear of a circle."""
        rim = self.rim
        sides = zip(rim, (*rim[1:], rim[0]), strict=True)
        return not inside(centre, rim) and min(distance(centre, a, b) for a, b in sides) >= radius


@dataclass(frozen=True, slots=True)
class Placed:
    """A glue letter with its em in mm and its place."""

    letter: Letter
    size: float
    spot: Spot


def place_letters(desk: Desk, sheet: NetSheet, taken: Sequence[Spot] = ()) -> tuple[Placed, ...]:
    """The glue letters of a sheet, each where it keeps clear of lines, holes, crosses and what is placed before it."""
    done: list[Placed] = []
    marks = circles(sheet)
    for letter in sorted(sheet.letters, key=lambda x: (x.on != "tab", x.slide)):
        outline = _outline(sheet, letter)
        done.append(_placed(desk, letter, outline, [*taken, *(p.spot for p in done)], marks))
    return tuple(done)


def circles(sheet: NetSheet) -> list[tuple[Point, float]]:
    """The holes, tips and crosses of a sheet, with the room they want round them."""
    found = [(h.centre, h.across / 2 + (0.6 if h.snip else 2.2)) for h in sheet.holes]
    return found + [(cross, 3.2) for overlap in sheet.overlaps for cross in overlap.crosses]


def _outline(sheet: NetSheet, letter: Letter) -> Sequence[Point]:
    """The tab or face a letter stands on."""
    shapes = [t.points for t in sheet.tabs if t.letter == letter.text] if letter.on == "tab" else []
    shapes = shapes or [f.points for f in sheet.faces]
    return next((s for s in shapes if inside(letter.at, s)), shapes[0])


def _placed(desk: Desk, letter: Letter, outline: Sequence[Point], taken: Sequence[Spot],
            marks: Sequence[tuple[Point, float]]) -> Placed:  # fmt: skip
    on_tab, on_edge = _LETTERS.get(desk.level, _LETTERS["older"])
    size = on_tab if letter.on == "tab" else on_edge
    while True:
        for at in _places(letter):
            spot = spot_for(desk, letter, at, size)
            near = [s for s in taken if dist(s.at, at) < 20.0]
            if (spot.within(outline, _CLEAR) and all(spot.apart(s, _AIR) for s in near)
                    and all(spot.off(*mark) for mark in marks)):  # fmt: skip
                return Placed(letter, size, spot)
        if size <= _LEAST:
            return Placed(letter, size, spot_for(desk, letter, letter.at, size))
        size = max(_LEAST, size * 0.9)


def _places(letter: Letter) -> Iterator[Point]:
    """Where a letter may stand: as planned, then along its edge and nearer to it or farther in."""
    c, s = cos(radians(letter.turn_deg)), sin(radians(letter.turn_deg))
    x, y = letter.at
    for inset in _INSETS:
        for step in _SHIFTS:
            if step > letter.slide:
                break
            for sign in (1, -1) if step else (1,):
                for side in (1, -1) if inset else (1,):
                    dx, dy = sign * step, side * inset
                    yield x + c * dx - s * dy, y + s * dx + c * dy


def spot_for(desk: Desk, letter: Letter, at: Point, size: float) -> Spot:
    """The place a letter of that em needs at a point: the height of capitals, and its width."""
    wide = desk.faces.width(letter.text, desk.look.strong.face, size)
    return Spot(at, wide / 2 + 0.1, size * 0.36, letter.turn_deg)
