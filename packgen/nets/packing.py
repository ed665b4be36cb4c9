"""Pieces put on sheets: the largest first, each turned and moved to the first place where it is clear of the others."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import shapely

from packgen.nets.net import Part
from packgen.nets.vectors import Matrix, Point, bounds, hull, moved, rotation, shift, then

GAP = 4.0
"""The least room left between two pieces, for the scissors (mm)."""
_CELL = 2.0
_TURNS = 5
"""How many turns of each piece are tried."""


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a piece goes: the sheet, counted from 0, and its movement."""

    sheet: int
    move: Matrix


def turns_of(corners: Sequence[Point]) -> list[float]:
    """The turns worth trying: as it lies, a quarter round, then those that lay an edge of its hull level."""
    out = [0.0, math.pi / 2]
    for a, b in zip(corners, (*corners[1:], corners[0]), strict=True):
        turn = -math.atan2(b[1] - a[1], b[0] - a[0]) % (math.pi / 2)
        if all(abs(turn - other) > 1e-3 for other in out):
            out += [turn, turn + math.pi / 2]
    return out[:34]


def fits(part: Part, width: float, height: float) -> list[Matrix]:
    """The movements that put a piece into an area, its lower left at the area's; the straightest first."""
    corners = hull(part.outline)
    out = []
    for angle in turns_of(corners):
        left, bottom, right, top = bounds(moved(rotation(angle), p) for p in corners)
        if right - left <= width + 1e-6 and top - bottom <= height + 1e-6:
            out.append(then(rotation(angle), shift(-left, -bottom)))
    return out


class _Sheet:
    """The cells of a sheet already taken, a row of bits for each level."""

    def __init__(self, width: float, height: float) -> None:
        self.wide, self.high = math.ceil(width / _CELL), math.ceil(height / _CELL)
        self.width, self.height = width, height
        self.rows = [0] * self.high

    def place(self, shape: Sequence[tuple[int, int]], size: tuple[float, float]) -> tuple[float, float] | None:
        """The lowest, then leftmost place for a shape of bit rows; takes the cells. None if there is none."""
        most_x = math.floor((self.width - size[0]) / _CELL + 1e-9)
        most_y = math.floor((self.height - size[1]) / _CELL + 1e-9)
        for y in range(most_y + 1):
            for x in range(most_x + 1):
                if all(not self.rows[y + k] & bits << x for k, bits in shape if y + k < self.high):
                    for k, bits in shape:
                        if y + k < self.high:
                            self.rows[y + k] |= bits << x
                    return x * _CELL, y * _CELL
        return None


def _cells(part: Part, move: Matrix) -> tuple[list[tuple[int, int]], tuple[float, float]]:
    """The cells a moved piece needs, with room for the scissors right of and above it, and its size."""
    shapes = [shapely.Polygon([moved(move, p) for p in f.points]) for f in part.faces]
    shapes += [shapely.Polygon([moved(move, p) for p in t.points]) for t in part.tabs]
    whole = shapely.union_all([s.buffer(0) for s in shapes]).buffer(GAP / 2, quad_segs=2).simplify(0.2).buffer(0.21)
    left, _, right, top = whole.bounds
    first = math.floor(-GAP / 2 / _CELL)
    count = math.ceil(top / _CELL) - first
    bands = [shapely.box(left - 1, (first + k) * _CELL, right + 1, (first + k + 1) * _CELL) for k in range(count)]
    shapely.prepare(whole)
    pieces, rows_of = shapely.get_parts(shapely.intersection(whole, bands), return_index=True)
    rows = [0] * count
    for (a, _, b, _), k in zip(shapely.bounds(pieces).tolist(), rows_of.tolist(), strict=True):
        low, high = math.floor(a / _CELL), math.ceil(b / _CELL)
        rows[k] |= (1 << (high + 1)) - (1 << max(low + 1, 0))
    bare = bounds(moved(move, p) for p in part.outline)
    return [(first + k + 1, bits) for k, bits in enumerate(rows) if bits], (bare[2], bare[3])


def pack(parts: Sequence[Part], width: float, height: float, most: int) -> list[Spot] | None:
    """A place for each piece on at most `most` sheets, each sheet's pieces centred; None if that does not go."""
    ways = [fits(p, width, height) for p in parts]
    if not all(ways):
        return None
    if len(parts) == 1:
        return _centred(parts, [Spot(0, ways[0][0])], width, height)
    row = sorted(range(len(parts)), key=lambda i: (-_box(parts[i]), i))
    best: list[Spot] | None = None
    for flip in (0, 1):
        spots = _packed(parts, ways, row, (width, height), most, flip)
        if spots and (best is None or max(s.sheet for s in spots) < max(s.sheet for s in best)):
            best = spots
    return best and _centred(parts, best, width, height)


def _box(part: Part) -> float:
    left, bottom, right, top = bounds(part.outline)
    return round((right - left) * (top - bottom), 3)


def _packed(
    parts: Sequence[Part], ways: list[list[Matrix]], row: list[int], size: tuple[float, float], most: int, flip: int
) -> list[Spot] | None:
    sheets: list[_Sheet] = []
    spots: dict[int, Spot] = {}
    known: dict[tuple[int, int], tuple[list[tuple[int, int]], tuple[float, float]]] = {}
    for i in row:
        tries = ways[i][:_TURNS]
        if not spots and flip and len(tries) > 1:
            tries = [tries[1], tries[0], *tries[2:]]
        spot = _somewhere(parts[i], i, tries, sheets, known)
        if spot is None:
            if len(sheets) == most:
                return None
            sheets.append(_Sheet(size[0] + GAP, size[1] + GAP))
            spot = _somewhere(parts[i], i, tries, sheets[-1:], known)
            if spot is None:
                return None
            spot = Spot(len(sheets) - 1, spot.move)
        spots[i] = spot
    return [spots[i] for i in range(len(parts))]


def _somewhere(
    part: Part, i: int, tries: list[Matrix], sheets: Sequence[_Sheet],
    known: dict[tuple[int, int], tuple[list[tuple[int, int]], tuple[float, float]]],
) -> Spot | None:  # fmt: skip
    for s, sheet in enumerate(sheets):
        for k, move in enumerate(tries):
            if (i, k) not in known:
                known[i, k] = _cells(part, move)
            shape, size = known[i, k]
            found = sheet.place(shape, (size[0] + GAP, size[1] + GAP))
            if found:
                return Spot(s, then(move, shift(*found)))
    return None


def _centred(parts: Sequence[Part], spots: list[Spot], width: float, height: float) -> list[Spot]:
    out = list(spots)
    for sheet in {s.sheet for s in spots}:
        mine = [i for i, s in enumerate(spots) if s.sheet == sheet]
        left, bottom, right, top = bounds(moved(spots[i].move, p) for i in mine for p in parts[i].outline)
        dx, dy = (width - right + left) / 2 - left, (height - top + bottom) / 2 - bottom
        for i in mine:
            out[i] = Spot(sheet, then(spots[i].move, shift(dx, dy)))
    return out
