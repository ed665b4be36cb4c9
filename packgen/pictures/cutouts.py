"""Laying rectangles of exact sizes on sheets in their own order, in rows that are cut apart from edge to edge.

The first piece lies at the upper left and the last at the lower right, as words are read. Where pieces may be turned on
their sides, only those are that save paper so. The same pieces always lie the same way.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

_CLOSE = 1e-6
_EMPTY = 25.0
"""What a row left empty counts for, in mm of height: half of it free, a quarter of that. It makes rows even."""
_WIDEST_GAP = 9.0
"""A row with room to spare has gaps so wide (mm) at the most."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A rectangle to cut out: its name and size in mm."""

    name: str
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Placed:
    """A piece in its place: mm from the sheet's upper left corner, y downwards. `turned` ones lie on their side."""

    piece: Piece
    x: float
    y: float
    turned: bool = False

    @property
    def wide(self) -> float:
        """Its width as it lies."""
        return self.piece.height if self.turned else self.piece.width

    @property
    def high(self) -> float:
        """Its height as it lies."""
        return self.piece.width if self.turned else self.piece.height


@dataclass(frozen=True, slots=True)
class PackedSheet:
    """What lies on one sheet, and how much of its height is used."""

    placed: tuple[Placed, ...]
    used_height: float


@dataclass(frozen=True, slots=True)
class _Row:
    """Pieces side by side: the first, which are turned, the height of the highest, the share of the width left free."""

    start: int
    turned: tuple[bool, ...]
    height: float
    free: float


@dataclass(frozen=True, slots=True)
class _Lie:
    """A way to lay the first pieces: the number of sheets, the height used on the last, its rows by sheet, and how
    uneven they are (the squares of what they leave free, added up).
    """

    sheets: int
    used: float
    rows: tuple[tuple[_Row, ...], ...]
    uneven: float = 0.0


def pack(pieces: Sequence[Piece], width: float, height: float, gap: float = 0.0, *,
         turn: bool = False) -> tuple[PackedSheet, ...]:  # fmt: skip
    """The pieces in their order on as few sheets of width x height mm as rows allow, using little of the last one.

    Neighbours are `gap` mm apart or, where a row has room to spare, a little more. With `turn` pieces may lie on their
    sides; one that fits only so always does. Raises ValueError for a piece larger than the sheet.
    """
    size = (width, height)
    for piece in pieces:
        if not _fits(piece.width, piece.height, size) and not _fits(piece.height, piece.width, size):
            raise ValueError(f"{piece.name} is larger than the sheet")
    if not pieces:
        return ()
    upright = frozenset(k for k, p in enumerate(pieces) if _fits(p.width, p.height, size))
    kept: frozenset[int] = frozenset() if turn else upright
    best = _laid(pieces, kept, size, gap)
    for k in sorted(upright - kept):  # keep upright all that need not lie on their side
        tried = _laid(pieces, kept | {k}, size, gap)
        if tried.sheets == best.sheets and tried.used < best.used + _CLOSE:
            best, kept = tried, kept | {k}
    return tuple(_sheet(pieces, rows, width, gap) for rows in best.rows)


def _fits(wide: float, high: float, size: tuple[float, float]) -> bool:
    return wide <= size[0] + _CLOSE and high <= size[1] + _CLOSE


def _laid(pieces: Sequence[Piece], upright: frozenset[int], size: tuple[float, float], gap: float) -> _Lie:
    """The best way to lay all pieces, those in `upright` not turned: low with even rows, or as low as can be if that
    saves a sheet.
    """
    even, lowest = (_parted(pieces, upright, size, gap, empty) for empty in (_EMPTY, 0.0))
    return even if even.sheets == lowest.sheets else lowest


def _parted(pieces: Sequence[Piece], upright: frozenset[int], size: tuple[float, float], gap: float,
            empty: float) -> _Lie:  # fmt: skip
    """The best of all ways to part pieces into rows; `empty` is what a row left empty counts for."""

    def cost(way: _Lie) -> tuple[int, float]:
        return way.sheets, way.used + empty * way.uneven

    ways: list[_Lie] = [_Lie(1, 0.0, ((),))]
    for end in range(1, len(pieces) + 1):
        found = [_with(ways[row.start], row, size[1], gap) for row in _last_rows(pieces, end, upright, size, gap)]
        ways.append(min(found, key=cost))
    return ways[-1]


def _with(way: _Lie, row: _Row, height: float, gap: float) -> _Lie:
    """A way with one row more, on the same sheet if it has the room."""
    under = way.used + (gap if way.used else 0.0) + row.height
    uneven = way.uneven + row.free**2
    if under <= height + _CLOSE:
        return _Lie(way.sheets, under, (*way.rows[:-1], (*way.rows[-1], row)), uneven)
    return _Lie(way.sheets + 1, row.height, (*way.rows, (row,)), uneven)


def _last_rows(pieces: Sequence[Piece], end: int, upright: frozenset[int], size: tuple[float, float],
               gap: float) -> Iterator[_Row]:  # fmt: skip
    """The rows that end with piece `end - 1`, each as low as its width allows."""
    for start in range(end - 1, -1, -1):
        row = _lowest(pieces, range(start, end), upright, size, gap)
        if row is None:
            return
        yield row


def _lowest(pieces: Sequence[Piece], these: range, upright: frozenset[int], size: tuple[float, float],
            gap: float) -> _Row | None:  # fmt: skip
    """A row of some pieces at its least height, or None if they are too wide together however they lie."""
    heights = {pieces[k].height for k in these} | {pieces[k].width for k in these if k not in upright}
    for high in sorted(h for h in heights if h <= size[1] + _CLOSE):
        turned, used = [], -gap
        for k in these:
            piece = pieces[k]
            lies = [(piece.width, False)] if piece.height <= high + _CLOSE else []
            lies += [(piece.height, True)] if k not in upright and piece.width <= high + _CLOSE else []
            if not lies:
                break
            wide, turn = min(lies)
            turned.append(turn)
            used += wide + gap
        if len(turned) == len(these) and used <= size[0] + _CLOSE:
            return _Row(these.start, tuple(turned), high, 1 - used / size[0])
    return None


def _sheet(pieces: Sequence[Piece], rows: Sequence[_Row], width: float, gap: float) -> PackedSheet:
    placed: list[Placed] = []
    down = 0.0
    for row in rows:
        lying = [Placed(pieces[row.start + k], 0.0, down, turn) for k, turn in enumerate(row.turned)]
        spare = width - sum(p.wide for p in lying)
        between = min(max(gap, _WIDEST_GAP), spare / (len(lying) - 1)) if len(lying) > 1 else 0.0
        x = 0.0
        for one in lying:
            placed.append(Placed(one.piece, x, one.y, one.turned))
            x += one.wide + between
        down += row.height + gap
    return PackedSheet(tuple(placed), down - gap)
