"""Pieces put on sheets: the largest first, each turned and moved to the first place where it is clear of the others."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import shapely

from packgen.nets.net import Part
from packgen.nets.plane import joined
from packgen.nets.vectors import Matrix, Point, all_moved, area, bounds, hull, moved, rotation, shift, then

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
    corners = hull(part.corners)
    out = []
    for angle in turns_of(corners):
        left, bottom, right, top = bounds(moved(rotation(angle), p) for p in corners)
        if right - left <= width + 1e-6 and top - bottom <= height + 1e-6:
            out.append(then(rotation(angle), shift(-left, -bottom)))
    return out


class _Sheet:
    """The cells of a sheet already taken, a row of bits for each level."""

    def __init__(self, width: float, height: float) -> None:
        self.width, self.height = width, height
        self.rows = [0] * math.ceil(height / _CELL)
        self.room = math.ceil(width / _CELL) * len(self.rows)

    def place(self, shape: _Cells) -> tuple[float, float] | None:
        """The lowest, then leftmost place for a shape; takes its cells. None if there is none."""
        if shape.count > self.room:
            return None
        most_x = math.floor((self.width - shape.width) / _CELL + 1e-9)
        most_y = math.floor((self.height - shape.height) / _CELL + 1e-9)
        if most_x < 0:
            return None
        allowed = (1 << (most_x + 1)) - 1
        for y in range(most_y + 1):
            free = allowed
            for k, low, count in shape.runs:
                if y + k < len(self.rows) and self.rows[y + k]:
                    free &= ~(_smeared(self.rows[y + k], count) >> low)
                    if not free:
                        break
            if free:
                x = (free & -free).bit_length() - 1
                for k, low, count in shape.runs:
                    if y + k < len(self.rows):
                        self.rows[y + k] |= ((1 << count) - 1) << (low + x)
                self.room -= shape.count
                return x * _CELL, y * _CELL
        return None


def _smeared(row: int, count: int) -> int:
    """The cells of a row from which a run of `count` cells to the right meets a taken one, each shifted up to the run.

    Bit i of the result, shifted down by the run's start, tells whether the run would meet something with x = i.
    """
    done, out = 1, row
    while done < count:
        step = min(done, count - done)
        out |= out >> step
        done += step
    return out


@dataclass(frozen=True, slots=True)
class _Cells:
    """The cells a piece needs: runs of (row, first cell, number of cells), how many in all, and its size in mm."""

    runs: tuple[tuple[int, int, int], ...]
    count: int
    width: float
    height: float


def _cells(part: Part, move: Matrix) -> _Cells:
    """The cells a moved piece needs, with room for the scissors all round; its size includes that room once."""
    whole = (
        joined([all_moved(move, outline) for outline in part.shapes])
        .buffer(GAP / 2, quad_segs=2)
        .simplify(0.2)
        .buffer(0.21)
    )
    left, _, right, top = whole.bounds
    first = math.floor(-GAP / 2 / _CELL)
    count = math.ceil(top / _CELL) - first
    bands = [shapely.box(left - 1, (first + k) * _CELL, right + 1, (first + k + 1) * _CELL) for k in range(count)]
    shapely.prepare(whole)
    pieces, rows_of = shapely.get_parts(shapely.intersection(whole, bands), return_index=True)
    runs = []
    there = ~shapely.is_empty(pieces)  # a band that lies between two parts of a piece, or beyond it, holds nothing
    for (a, _, b, _), k in zip(shapely.bounds(pieces[there]).tolist(), rows_of[there].tolist(), strict=True):
        low, high = math.floor(a / _CELL) + 1, math.ceil(b / _CELL) + 1
        if high > max(low, 0):
            runs.append((first + k + 1, max(low, 0), high - max(low, 0)))
    bare = bounds(moved(move, p) for p in part.corners)
    return _Cells(tuple(runs), sum(n for _, _, n in runs), bare[2] + GAP, bare[3] + GAP)


def pack(parts: Sequence[Part], width: float, height: float, most: int) -> list[Spot] | None:
    """A place for each piece on at most `most` sheets, each sheet's pieces centred; None if that does not go."""
    if sum(abs(area(f.points)) for p in parts for f in p.faces) > most * width * height:
        return None
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
    left, bottom, right, top = bounds(part.corners)
    return round((right - left) * (top - bottom), 3)


def _packed(
    parts: Sequence[Part], ways: list[list[Matrix]], row: list[int], size: tuple[float, float], most: int, flip: int
) -> list[Spot] | None:
    sheets: list[_Sheet] = []
    spots: dict[int, Spot] = {}
    known: dict[tuple[int, int], _Cells] = {}
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
    part: Part, i: int, tries: list[Matrix], sheets: Sequence[_Sheet], known: dict[tuple[int, int], _Cells]
) -> Spot | None:
    for s, sheet in enumerate(sheets):
        for k, move in enumerate(tries):
            if (i, k) not in known:
                known[i, k] = _cells(part, move)
            found = sheet.place(known[i, k])
            if found:
                return Spot(s, then(move, shift(*found)))
    return None


def _centred(parts: Sequence[Part], spots: list[Spot], width: float, height: float) -> list[Spot]:
    out = list(spots)
    for sheet in {s.sheet for s in spots}:
        mine = [i for i, s in enumerate(spots) if s.sheet == sheet]
        left, bottom, right, top = bounds(moved(spots[i].move, p) for i in mine for p in parts[i].corners)
        dx, dy = (width - right + left) / 2 - left, (height - top + bottom) / 2 - bottom
        for i in mine:
            out[i] = Spot(sheet, then(spots[i].move, shift(dx, dy)))
    return out
