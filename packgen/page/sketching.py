"""Places to draw exactly: squared paper, and bare axes to sketch a guess on."""

from __future__ import annotations

from dataclasses import dataclass

from packgen.page.blocks import Kit, Span, Whole
from packgen.page.look import GUIDE, HAIR, MIDDLE, SOFT, TINT
from packgen.page.pen import Pen
from packgen.page.text import fit

SQUARE = 5.0
"""The usual school square, 5 mm (DIN 16552, ruling 22)."""


def squared_paper(pen: Pen, x: float, top: float, width: float, height: float) -> float:
    """Squared paper of whole squares, centred below `top`; every second line is firmer. Returns the y of its foot."""
    columns, rows = int(width / SQUARE), int(height / SQUARE)
    left, foot = x + (width - columns * SQUARE) / 2, top - rows * SQUARE
    for k in range(columns + 1):
        pen.line(left + k * SQUARE, top, left + k * SQUARE, foot, HAIR, GUIDE if k % 2 == 0 else TINT, role="square")
    for k in range(rows + 1):
        y = top - k * SQUARE
        pen.line(left, y, left + columns * SQUARE, y, HAIR, GUIDE if k % 2 == 0 else TINT, role="square")
    return foot


@dataclass(frozen=True, slots=True)
class SketchAxes(Whole):
    """Two axes with their titles and no numbers, to sketch the shape of a curve on; grows up to `most`."""

    across: str
    up: str
    least: float = 34.0
    most: float = 90.0
    gap: float | None = None
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        return Span(self.least, self.most, 1.0)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        style = kit.look.small.grey(SOFT)
        over = fit(kit.faces, self.up, style, width, 2 * style.leading, style.size * 0.75)
        under = fit(kit.faces, self.across, style, width, 2 * style.leading, style.size * 0.75)
        pen.lines(x, top, over.lines, over.style, role="axis-title")
        foot = top - height + under.height + 1.2
        pen.lines(x, foot - 1.2, under.lines, under.style, align="right", width=width, role="axis-title")
        pen.arrow(x + 1.0, foot, x + 1.0, top - over.height - 0.8, MIDDLE, 0.2)
        pen.arrow(x + 1.0, foot, x + width, foot, MIDDLE, 0.2)
