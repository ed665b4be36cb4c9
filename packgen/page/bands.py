"""Expected results as bars: for each row the band a careful trial falls in, and the number in its middle."""

from __future__ import annotations

from dataclasses import dataclass, replace

from packgen.page.blocks import Block, Kit, Span, rigid
from packgen.page.look import BOLD, GUIDE, HAIR, RULE, SOFT, THIN, TINT
from packgen.page.marks import Stroke
from packgen.page.pen import Pen
from packgen.page.text import wrap
from packgen.trials.ticks import Axis

_PAD = 1.3
_BAR = 3.4


@dataclass(frozen=True, slots=True)
class BandRow:
    """One row: its label, and the expected number with its band on the axis, or why nothing is expected."""

    label: str
    said: str
    value: float | None = None
    low: float = 0.0
    high: float = 0.0


@dataclass(frozen=True, slots=True)
class Bands:
    """Rows of bands over one axis; `label` heads the rows, `title` the axis, `said` the numbers in words."""

    rows: tuple[BandRow, ...]
    axis: Axis
    label: str
    said: str
    gap: float | None = None
    tight: bool = False

    def _widths(self, kit: Kit, width: float) -> tuple[float, float, float]:
        """The widths of the labels, the axis and the numbers in words."""
        style = kit.look.strong
        labels = max(kit.faces.width(row.label, style.face, style.size) for row in self.rows) + 4.0
        label = max(20.0, min(width * 0.3, labels))
        numbers = [row.said for row in self.rows if row.value is not None]
        body = kit.look.body
        wide = max((kit.faces.width(text, body.face, body.size) for text in numbers), default=0.0) + 4.0
        said = max(24.0, min(width * 0.34, wide))
        return label, width - label - said, said

    def _lines(self, kit: Kit, row: BandRow, width: float) -> tuple[tuple[str, ...], tuple[str, ...]]:
        label, axis, said = self._widths(kit, width)
        room = said if row.value is not None else axis + said
        return wrap(kit.faces, row.label, kit.look.strong, label - 3.0), wrap(kit.faces, row.said, kit.look.body, room)

    def _height(self, kit: Kit, row: BandRow, width: float) -> float:
        label, said = self._lines(kit, row, width)
        return max(len(label) * kit.look.strong.leading, len(said) * kit.look.body.leading) + 2 * _PAD

    def _head(self, kit: Kit, width: float) -> float:
        label, axis, said = self._widths(kit, width)
        heads = ((self.label, label), (self.axis.title, axis), (self.said, said))
        lines = max(len(wrap(kit.faces, text, kit.look.label, wide - 2.0)) for text, wide in heads)
        return lines * kit.look.label.leading + 1.0

    def _foot(self, kit: Kit) -> float:
        known = any(row.value is not None for row in self.rows)
        return kit.look.small.leading + 1.0 if known and not self.axis.blank else 0.0

    def measure(self, kit: Kit, width: float) -> Span:
        """As high as its rows, with the head and the numbers along the foot."""
        rows = sum(self._height(kit, row, width) for row in self.rows)
        return rigid(self._head(kit, width) + rows + self._foot(kit))

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """Heads, grid, then row by row."""
        look = kit.look
        label, axis, said = self._widths(kit, width)
        left, right = x + label, x + label + axis - 4.0
        head = self._head(kit, width)
        heads = ((self.label, x, label), (self.axis.title, left, axis), (self.said, x + label + axis, said))
        for text, at, wide in heads:
            lines = wrap(kit.faces, text, look.label, wide - 2.0)
            pen.lines(at, top - head + len(lines) * look.label.leading + 0.5, lines, look.label.grey(SOFT))
        under = top - head
        foot = under - sum(self._height(kit, row, width) for row in self.rows)
        pen.line(x, under, x + width, under, THIN, RULE, role="band-rule")
        if self._foot(kit):
            self._grid(kit, pen, left, right, under, foot)
        y = under
        for row in self.rows:
            high = self._height(kit, row, width)
            self._row(kit, pen, row, (x, y, width, high), (left, right, x + label + axis))
            y -= high
            pen.line(x, y, x + width, y, HAIR, RULE, role="band-rule")

    def _grid(self, kit: Kit, pen: Pen, left: float, right: float, top: float, foot: float) -> None:
        """A light line and a number at each tick; numbers that would touch are left out."""
        style = kit.look.small
        taken = -1e9
        for tick, label in zip(self.axis.ticks, self.axis.labels, strict=True):
            at = left + self.axis.place(tick) * (right - left)
            pen.line(at, top, at, foot, HAIR, TINT, role="band-grid")
            half = kit.faces.width(label, style.face, style.size) / 2
            if at - half > taken + 1.5:
                pen.text(at, foot - style.leading + 0.4, label, style.grey(SOFT), align="centre")
                taken = at + half

    def _row(self, kit: Kit, pen: Pen, row: BandRow, place: tuple[float, float, float, float],
             ends: tuple[float, float, float]) -> None:  # fmt: skip
        x, top, width, high = place
        left, right, said_at = ends
        label, said = self._lines(kit, row, width)
        pen.lines(x, top - (high - len(label) * kit.look.strong.leading) / 2, label, kit.look.strong)
        at = said_at if row.value is not None else left
        pen.lines(at, top - (high - len(said) * kit.look.body.leading) / 2, said, kit.look.body)
        if row.value is None:
            return
        low, value, up = (
            left + max(0.0, min(1.0, self.axis.place(number))) * (right - left)
            for number in (row.low, row.value, row.high)
        )
        middle = top - high / 2
        pen.box(low, middle - _BAR / 2, max(up - low, 0.6), _BAR, Stroke(HAIR, GUIDE), TINT, role="band")
        pen.line(value, middle - _BAR * 0.75, value, middle + _BAR * 0.75, BOLD, 0.1, role="band-value")

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """Between two rows."""
        used = self._head(kit, width) + self._foot(kit)
        fits = 0
        for row in self.rows:
            used += self._height(kit, row, width)
            if used > room + 1e-6:
                break
            fits += 1
        if not 0 < fits < len(self.rows):
            return None
        return replace(self, rows=self.rows[:fits]), replace(self, rows=self.rows[fits:], gap=0.0)
