"""Packing rectangles of exact sizes onto sheets so that they are cut apart with few straight cuts.

Pieces lie in rows that are cut off from edge to edge; a row is cut into columns; a column may hold several pieces one
under the other. Pieces are never turned: pictures and words stay upright. The same pieces always lie the same way.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

_CLOSE = 1e-6


@dataclass(frozen=True, slots=True)
class Piece:
    """A rectangle to cut out: its name and size in mm."""

    name: str
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Placed:
    """A piece in its place: mm from the sheet's upper left corner, y downwards."""

    piece: Piece
    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Cut:
    """One straight cut: mm from the sheet's upper left corner, y downwards. In order, each ends at an earlier one."""

    x1: float
    y1: float
    x2: float
    y2: float


@dataclass(frozen=True, slots=True)
class PackedSheet:
    """What lies on one sheet, how much of its height is used, and the cuts that free every piece."""

    placed: tuple[Placed, ...]
    used_height: float
    cuts: tuple[Cut, ...] = ()


@dataclass(slots=True)
class _Column:
    x: float
    width: float
    pieces: list[Piece] = field(default_factory=list)
    down: float = 0.0


@dataclass(slots=True)
class _Row:
    height: float
    columns: list[_Column] = field(default_factory=list)
    across: float = 0.0


def pack(pieces: Sequence[Piece], width: float, height: float, gap: float = 0.0) -> tuple[PackedSheet, ...]:
    """The pieces on as few sheets of width x height mm as found, then using as little of their height.

    With no gap neighbours share a cut. Raises ValueError for a piece larger than the sheet.
    """
    for piece in pieces:
        if piece.width > width + _CLOSE or piece.height > height + _CLOSE:
            raise ValueError(f"{piece.name} is larger than the sheet")
    found = [_sheets(_rows(sorted(pieces, key=order), width, gap), height, gap) for order in _ORDERS]
    return min(
        found, key=lambda sheets: (len(sheets), sum(s.used_height for s in sheets), sum(len(s.cuts) for s in sheets))
    )


def backs(sheet: PackedSheet, width: float) -> PackedSheet:
    """The same places seen from the back of the paper, turned over its long edge: left and right change."""
    placed = tuple(Placed(p.piece, width - p.x - p.piece.width, p.y) for p in sheet.placed)
    cuts = tuple(Cut(width - c.x2, c.y1, width - c.x1, c.y2) for c in sheet.cuts)
    return PackedSheet(placed, sheet.used_height, cuts)


_ORDERS: tuple[Callable[[Piece], tuple[float | str, ...]], ...] = (
    lambda p: (-p.height, -p.width, p.name),
    lambda p: (-p.height * p.width, -p.height, p.name),
    lambda p: (-p.width, -p.height, p.name),
    lambda p: (-max(p.width, p.height), -p.height, p.name),
)


def _rows(order: Sequence[Piece], width: float, gap: float) -> list[_Row]:
    rows: list[_Row] = []
    for piece in order:
        if not any(_under(piece, row, gap) for row in rows) and not any(
            _beside(piece, row, width, gap) for row in rows
        ):
            rows.append(_Row(piece.height))
            _beside(piece, rows[-1], width, gap)
    return rows


def _under(piece: Piece, row: _Row, gap: float) -> bool:
    """Place it at the foot of a column of about its width, if one has the room."""
    for column in row.columns:
        fits = column.down + gap + piece.height <= row.height + _CLOSE
        if fits and 0.6 * column.width <= piece.width <= column.width + _CLOSE:
            column.pieces.append(piece)
            column.down += gap + piece.height
            return True
    return False


def _beside(piece: Piece, row: _Row, width: float, gap: float) -> bool:
    x = row.across + gap if row.columns else 0.0
    if piece.height > row.height + _CLOSE or x + piece.width > width + _CLOSE:
        return False
    row.columns.append(_Column(x, piece.width, [piece], piece.height))
    row.across = x + piece.width
    return True


def _sheets(rows: list[_Row], height: float, gap: float) -> tuple[PackedSheet, ...]:
    """The rows on sheets, each on the first that has the room."""
    stacks: list[list[_Row]] = []
    for row in sorted(rows, key=lambda r: -r.height):
        for stack in stacks:
            if sum(r.height + gap for r in stack) + row.height <= height + _CLOSE:
                stack.append(row)
                break
        else:
            stacks.append([row])
    return tuple(_sheet(stack, gap) for stack in stacks)


def _sheet(rows: list[_Row], gap: float) -> PackedSheet:
    placed: list[Placed] = []
    level: list[Cut] = []
    upright: list[Cut] = []
    inner: list[Cut] = []
    down = 0.0
    across = max(row.across for row in rows)
    for row in rows:
        level += [Cut(0.0, down, across, down), Cut(0.0, down + row.height, across, down + row.height)]
        for column in row.columns:
            right = column.x + column.width
            upright += [Cut(x, down, x, down + row.height) for x in (column.x, right)]
            y = down
            for piece in column.pieces:
                placed.append(Placed(piece, column.x, y))
                inner += _freeing(piece, column, y, down, row.height)
                y += piece.height + gap
        down += row.height + gap
    return PackedSheet(tuple(placed), down - gap, _once([*level, *upright, *inner]))


def _freeing(piece: Piece, column: _Column, y: float, top: float, height: float) -> list[Cut]:
    """The cuts that a piece needs besides its row's and its column's."""
    right, low = column.x + column.width, y + piece.height
    cuts = [Cut(column.x, at, right, at) for at in (y, low) if top + _CLOSE < at < top + height - _CLOSE]
    if piece.width < column.width - _CLOSE:
        cuts.append(Cut(column.x + piece.width, y, column.x + piece.width, low))
    return cuts


def _once(cuts: list[Cut]) -> tuple[Cut, ...]:
    seen: dict[tuple[float, ...], Cut] = {}
    for cut in cuts:
        seen.setdefault((round(cut.x1, 4), round(cut.y1, 4), round(cut.x2, 4), round(cut.y2, 4)), cut)
    return tuple(seen.values())
