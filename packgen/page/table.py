"""Tables to read and to write in: a tinted head, thin rules, rows that grow evenly to fill what the page has left.

Widths and heights are mm. A table too high for a page goes on on the next with its head repeated.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass, replace

from packgen.page.blocks import Block, Kit, Span, style_of
from packgen.page.look import BOLD, GUIDE, HAIR, MIDDLE, PALE, RULE, SOFT, THIN
from packgen.page.marks import Ink, Stroke
from packgen.page.pen import Pen
from packgen.page.text import Style, fit, widest_word, wrap

_CREASE = 2.6  # mm more between a fold and the words behind it


@dataclass(frozen=True, slots=True)
class Column:
    """A column: its head with the unit on a line of its own, and its `share` of the width (minus its width in mm).

    Neighbours with the same `group` stand under one common head. `align` is left, centre or right. `ruled` draws
    writing lines into its empty cells; `names` marks a column of row heads, which are tinted like the head; `fold`
    draws the rule on its left as a mountain fold, for a column to fold behind the page until it is wanted.
    """

    head: str = ""
    share: float = 1.0
    unit: str = ""
    group: str = ""
    align: str = "left"
    ruled: bool = False
    names: bool = False
    fold: bool = False


@dataclass(frozen=True, slots=True)
class Cell:
    """A cell that is not plain: a style or ground of its own, `box` for a box to tick, `crossed` if nothing goes in.

    `corner` is a word in small grey letters in its upper left corner, such as its number. `joined` makes it one with
    the cell above: no rule parts them, and no page ends between their rows.
    """

    text: str = ""
    style: str | Style = ""
    fill: Ink | None = None
    box: bool = False
    crossed: bool = False
    corner: str = ""
    joined: bool = False


@dataclass(frozen=True, slots=True)
class Table:
    """A table. A row is a cell for each column: text, "" to write in, or a Cell.

    Rows are at least `least` high (as high as a writing line if not given) and grow to at most `most`.
    """

    columns: tuple[Column, ...]
    rows: tuple[tuple[str | Cell, ...], ...]
    least: float = 0.0
    most: float = 0.0
    style: str | Style = "body"
    grow: float = 1.0
    pad: float = 1.6
    gap: float | None = None
    tight: bool = False

    # Measures

    def widths(self, width: float) -> list[float]:
        """The widths of the columns in mm."""
        room = width + sum(column.share for column in self.columns if column.share < 0)
        shares = sum(column.share for column in self.columns if column.share > 0) or 1.0
        return [-c.share if c.share < 0 else room * c.share / shares for c in self.columns]

    def _cell(self, kit: Kit, column: Column, cell: str | Cell) -> tuple[Cell, Style]:
        full = cell if isinstance(cell, Cell) else Cell(cell)
        return full, style_of(kit, full.style or ("strong" if column.names else self.style))

    def _lines(self, kit: Kit, column: Column, cell: str | Cell, wide: float) -> tuple[tuple[str, ...], Style]:
        """The lines of a cell, and their style: a size smaller where only that keeps its words whole."""
        full, style = self._cell(kit, column, cell)
        room = self._room(column, wide)
        return _whole_words(kit, full.text, style, room) if full.text else ((), style)

    def _room(self, column: Column, wide: float) -> float:
        """The width for the words of a cell; those behind a fold stand clear of it."""
        return wide - 2 * self.pad - (_CREASE if column.fold else 0.0)

    def _least(self, kit: Kit) -> float:
        return self.least or max(kit.look.ruling.pitch, kit.look.body.leading + 2 * self.pad)

    def _row_heights(self, kit: Kit, width: float) -> list[float]:
        """The least height of each row."""
        wides = self.widths(width)
        found: list[float] = []
        for row in self.rows:
            high = self._least(kit)
            for column, cell, wide in zip(self.columns, row, wides, strict=True):
                lines, style = self._lines(kit, column, cell, wide)
                high = max(high, len(lines) * style.leading + 2 * self.pad)
            found.append(high)
        return found

    def _heads(self, kit: Kit, width: float) -> tuple[float, float]:
        """The heights of the common heads and of the heads, 0 if there are none."""
        wides = self.widths(width)
        group = 0.0
        for name, first, last in self._groups():
            if name:
                lines, style = _whole_words(kit, name, kit.look.label, sum(wides[first:last]) - 2 * self.pad)
                group = max(group, len(lines) * style.leading + 2 * self.pad)
        high = max((self._head_height(kit, c, w) for c, w in zip(self.columns, wides, strict=True)), default=0.0)
        return group, high

    def _head_height(self, kit: Kit, column: Column, wide: float) -> float:
        if not (column.head or column.unit):
            return 0.0
        high = 2 * self.pad
        for text, style in ((column.head, kit.look.label), (column.unit, kit.look.small)):
            if text:
                lines, set_in = _whole_words(kit, text, style, self._room(column, wide))
                high += len(lines) * set_in.leading
        return high

    def _groups(self) -> list[tuple[str, int, int]]:
        """The common heads: name, first column, and the column after the last."""
        found: list[tuple[str, int, int]] = []
        for name, run in itertools.groupby(enumerate(self.columns), lambda pair: pair[1].group):
            numbers = [number for number, _ in run]
            found.append((name, numbers[0], numbers[-1] + 1))
        return found

    def _is_bare(self, first: int, last: int) -> bool:
        """True if columns under a common head have no heads of their own, so that theirs is all there is."""
        return bool(self.columns[first].group) and not any(c.head or c.unit for c in self.columns[first:last])

    # The block

    def measure(self, kit: Kit, width: float) -> Span:
        rows = self._row_heights(kit, width)
        head = sum(self._heads(kit, width))
        least = head + sum(rows)
        tallest = self.most or 1.9 * self._least(kit)
        most = head + sum(max(high, tallest) for high in rows)
        return Span(least, most, self.grow) if most > least + 1e-6 and self.grow else Span(least, least)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        wides = self.widths(width)
        group, head = self._heads(kit, width)
        heights = _levelled(self._row_heights(kit, width), height - group - head)
        y = top - group - head
        if group or head:
            self._draw_heads(kit, pen, x, top, wides, group, head)
        for row, high in zip(self.rows, heights, strict=True):
            self._draw_row(kit, pen, x, y, wides, row, high)
            y -= high
        self._draw_rules(pen, x, top, wides, group, top - group - head, heights)

    def _draw_heads(self, kit: Kit, pen: Pen, x: float, top: float, wides: Sequence[float], group: float,
                    head: float) -> None:  # fmt: skip
        full = sum(wides)
        pen.box(x, top - group - head, full, group + head, None, PALE, role="table-head")
        edges = list(itertools.accumulate(wides, initial=x))
        for name, first, last in self._groups():
            if name:
                left, right = edges[first], edges[last]
                lines, style = _whole_words(kit, name, kit.look.label, right - left - 2 * self.pad)
                bare = self._is_bare(first, last)
                up = top - ((group + head if bare else group) - len(lines) * style.leading) / 2
                pen.lines(left, up, lines, style, align="centre", width=right - left)
                if not bare:
                    pen.line(left, top - group, right, top - group, THIN, RULE, role="table-rule")
        for column, left, wide in zip(self.columns, edges, wides, strict=False):
            over = 0.0 if column.group else group
            spare = over + head - self._head_height(kit, column, wide)
            y = top - group + over - spare / 2 - self.pad
            for text, wish in ((column.head, kit.look.label), (column.unit, kit.look.small.grey(SOFT))):
                if text:
                    room = self._room(column, wide)
                    lines, style = _whole_words(kit, text, wish, room)
                    y = pen.lines(left + wide - self.pad - room, y, lines, style, align=column.align, width=room)

    def _draw_row(self, kit: Kit, pen: Pen, x: float, top: float, wides: Sequence[float],
                  row: Sequence[str | Cell], high: float) -> None:  # fmt: skip
        left = x
        for column, cell, wide in zip(self.columns, row, wides, strict=True):
            full, _ = self._cell(kit, column, cell)
            fill = PALE if full.fill is None and column.names else full.fill
            if fill is not None:
                pen.box(left, top - high, wide, high, None, fill, role="table-cell")
            lines, style = self._lines(kit, column, cell, wide)
            room = self._room(column, wide)
            if full.corner:
                small = kit.look.small.at(min(kit.look.small.size, 2.8)).grey(SOFT)
                pen.text(left + 0.9, top - 0.6 - small.size * 0.8, full.corner, small, role="corner")
            if lines:
                up = top - (high - len(lines) * style.leading) / 2
                pen.lines(left + wide - self.pad - room, up, lines, style, align=column.align, width=room)
            elif full.box:
                side = min(kit.look.body.size, high - 2 * self.pad)
                pen.box(left + (wide - side) / 2, top - (high + side) / 2, side, side, Stroke(THIN, 0.15),
                        corner=side * 0.15, role="tick")  # fmt: skip
            elif full.crossed:
                pen.line(left, top - high, left + wide, top, HAIR, RULE, role="table-crossed")
            elif column.ruled:
                _writing_lines(kit, pen, left + self.pad, top, room, high)
            left += wide

    def _draw_rules(self, pen: Pen, x: float, top: float, wides: Sequence[float], group: float, under: float,
                    heights: Sequence[float]) -> None:  # fmt: skip
        """The rules between rows and columns, and the frame; drawn last, so that no ground covers them."""
        full, foot = sum(wides), under - sum(heights)
        edges = list(itertools.accumulate(wides, initial=x))
        levels = list(itertools.accumulate(heights, lambda at, high: at - high, initial=under))[1:-1]
        for y, row in zip(levels, self.rows[1:], strict=True):
            for left, right in self._ruled(row, edges):
                pen.line(left, y, right, y, THIN, RULE, role="table-rule")
        ups: dict[int, float] = {}
        for name, first, last in self._groups():
            # Under a common head the rules between its columns begin below it, or below the whole head if it is bare.
            ups |= dict.fromkeys(range(first, last), under if self._is_bare(first, last) else top - group)
            ups |= {first: top} if name else dict.fromkeys(range(first, last), top)
        for number, at in enumerate(edges[1:-1], 1):
            up = ups[number]
            if self.columns[number].fold:
                pen.line(at, top + 2.0, at, foot - 2.0, MIDDLE, 0.0, (3.0, 1.0, 0.4, 1.0), role="fold")
            else:
                pen.line(at, up, at, foot, THIN, RULE, role="table-rule")
        if under < top:
            pen.line(x, under, x + full, under, BOLD, RULE, role="table-rule")
        pen.box(x, foot, full, top - foot, Stroke(BOLD * 0.8, 0.25), role="table-frame")

    @staticmethod
    def _ruled(row: Sequence[str | Cell], edges: Sequence[float]) -> list[tuple[float, float]]:
        """From where to where a rule over a row runs: all along, but not over cells joined with those above."""
        parts: list[tuple[float, float]] = []
        for cell, left, right in zip(row, edges, edges[1:], strict=False):
            if isinstance(cell, Cell) and cell.joined:
                continue
            if parts and parts[-1][1] == left:
                parts[-1] = (parts[-1][0], right)
            else:
                parts.append((left, right))
        return parts

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        heights = self._row_heights(kit, width)
        left = room - sum(self._heads(kit, width))
        fits = sum(1 for used in itertools.accumulate(heights) if used <= left + 1e-6)
        if fits >= len(self.rows) - 1 and fits > 2:
            fits = len(self.rows) - 2  # no single row alone on the last page
        while 0 < fits < len(self.rows) and any(isinstance(c, Cell) and c.joined for c in self.rows[fits]):
            fits -= 1
        if fits < 1:
            return self._split_row(kit, width, left)
        if fits >= len(self.rows):
            return None
        return replace(self, rows=self.rows[:fits]), replace(self, rows=self.rows[fits:], gap=0.0)

    def _split_row(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """A first row of long texts parted between lines, if it is far higher than a row should be."""
        if self._row_heights(kit, width)[0] < 100.0:
            return None
        now: list[str | Cell] = []
        later: list[str | Cell] = []
        for column, cell, wide in zip(self.columns, self.rows[0], self.widths(width), strict=True):
            full, _ = self._cell(kit, column, cell)
            lines, style = self._lines(kit, column, cell, wide)
            fits = int((room - 2 * self.pad) / style.leading + 1e-6)
            if fits < 3 and len(lines) > fits:
                return None
            now.append(replace(full, text="\n".join(lines[:fits])))
            later.append(replace(full, text="\n".join(lines[fits:])))
        return replace(self, rows=(tuple(now),)), replace(self, rows=(tuple(later), *self.rows[1:]), gap=0.0)


def _whole_words(kit: Kit, text: str, style: Style, width: float) -> tuple[tuple[str, ...], Style]:
    """A text wrapped to a width, a little smaller if only that keeps its words whole."""
    if widest_word(kit.faces, text, style) <= width:
        return wrap(kit.faces, text, style, width), style
    fitted = fit(kit.faces, text, style, width, 1e6, min(style.size, kit.look.floor * 0.85))
    return fitted.lines, fitted.style


def _levelled(least: Sequence[float], height: float) -> list[float]:
    """Row heights that add up to `height`: the low rows grow first, to one common height."""
    low_first = sorted(least)
    common = 0.0
    for number in range(1, len(low_first) + 1):
        common = (height - sum(low_first[number:])) / number
        if number == len(low_first) or common <= low_first[number]:
            break
    return [max(high, common) for high in least]


def _writing_lines(kit: Kit, pen: Pen, x: float, top: float, width: float, high: float) -> None:
    """As many writing lines as fit a cell; the cell's own foot is the last."""
    pitch = kit.look.ruling.pitch
    count = int(high / pitch + 1e-6)
    for k in range(1, count):
        y = top - high * k / count
        pen.line(x, y, x + width, y, HAIR, GUIDE, role="baseline")
