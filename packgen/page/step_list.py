"""Numbered steps, some with a row of letters to tick one by one: a block that is split between its steps."""

from __future__ import annotations

from dataclasses import dataclass, replace

from packgen.page.block import Block, Kit, Span, rigid
from packgen.page.look import THIN
from packgen.page.marks import Stroke
from packgen.page.net_steps import Told
from packgen.page.pen import Pen
from packgen.page.text import wrap

_SPREAD = 0.4


@dataclass(frozen=True, slots=True)
class StepList:
    """The steps from number `first` on, as a list in the level's body type."""

    steps: tuple[Told, ...]
    first: int = 1
    gap: float | None = None
    tight: bool = False

    def _dent(self, kit: Kit) -> float:
        style = kit.look.body
        return kit.faces.width(f"{self.first + len(self.steps) - 1}.", style.face, style.size) + style.size * 0.5

    def _cell(self, kit: Kit, told: Told) -> float:
        """The width of one box with its letter."""
        style = kit.look.strong
        return max(kit.faces.width(x, style.face, style.size) for x in told.letters) + style.size * 2.1

    def _rows(self, kit: Kit, told: Told, width: float) -> int:
        """How many rows of boxes a step has."""
        if not told.letters:
            return 0
        per = max(1, int((width - self._dent(kit)) / self._cell(kit, told)))
        return -(-len(told.letters) // per)

    def _high(self, kit: Kit, told: Told, width: float) -> float:
        lines = wrap(kit.faces, told.words, kit.look.body, width - self._dent(kit))
        return (len(lines) + 1.05 * self._rows(kit, told, width)) * kit.look.body.leading

    def measure(self, kit: Kit, width: float) -> Span:
        """The height of all steps."""
        between = kit.look.body.leading * _SPREAD * max(0, len(self.steps) - 1)
        return rigid(sum(self._high(kit, told, width) for told in self.steps) + between)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """The steps one under the other."""
        style, dent = kit.look.body, self._dent(kit)
        y = top
        for number, told in enumerate(self.steps, self.first):
            pen.text(x, y - pen.drop(style), f"{number}.", style)
            foot = pen.lines(x + dent, y, wrap(kit.faces, told.words, style, width - dent), style)
            if told.letters:
                self._boxes(kit, pen, told, x + dent, foot, width - dent)
            y -= self._high(kit, told, width) + style.leading * _SPREAD

    def _boxes(self, kit: Kit, pen: Pen, told: Told, x: float, top: float, width: float) -> None:
        """A box to tick for each letter, in rows."""
        style = kit.look.strong
        cell = self._cell(kit, told)
        per = max(1, int(width / cell))
        side = style.size * 0.9
        for k, letter in enumerate(told.letters):
            left = x + (k % per) * cell
            base = top - (k // per) * 1.05 * style.leading - pen.drop(style) - 0.05 * style.leading
            middle = base + pen.faces.metrics(style.face).x * style.size / 2
            pen.box(left, middle - side / 2, side, side, Stroke(THIN + 0.1, 0.15), corner=side * 0.15, role="tick")
            pen.text(left + side * 1.35, base, letter, style, role="tick-letter")

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """The steps that fit, at least two, and the rest."""
        used, count = 0.0, 0
        for told in self.steps:
            used += self._high(kit, told, width)
            if used > room + 1e-6:
                break
            count += 1
            used += kit.look.body.leading * _SPREAD
        if len(self.steps) - count == 1:
            count -= 1
        if count < 2:
            return None
        rest = replace(self, steps=self.steps[count:], first=self.first + count, gap=0.0)
        return replace(self, steps=self.steps[:count]), rest
