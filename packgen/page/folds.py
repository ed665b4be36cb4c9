"""The steps of folding a book, drawn from its fold program: small figures in rows, each with its sentence."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, radians, sin

from packgen.folding.figure_values import StepFigure
from packgen.folding.figures import step_figures
from packgen.folding.slots import FoldLine, FoldPlan
from packgen.page.blocks import Block, Kit, Row, Space, Span, heading, rigid
from packgen.page.look import BOLD, HAIR, MIDDLE, THIN
from packgen.page.marks import Stroke
from packgen.page.pen import Pen
from packgen.page.text import wrap

_FRONT, _BACK = 1.0, 0.88
_LABEL = 0.2  # darker than other small print, for it stands on the grey back of the paper
_LARGEST = 1.8
_VALLEY = (2.0, 1.2)
_MOUNTAIN = (2.6, 0.9, 0.01, 0.9)


def fold_step_blocks(plan: FoldPlan, title: str, across: int) -> tuple[Block, ...]:
    """A heading and rows of `across` step figures each."""
    figures = step_figures(plan, 38.0)
    rows: list[Block] = []
    for k in range(0, len(figures), across):
        cells: list[tuple[float, Block]] = [(1.0, StepBlock(f)) for f in figures[k : k + across]]
        cells += [(1.0, Space(1.0))] * (across - len(cells))
        rows.append(Row(tuple(cells), gutter=5.0, gap=4.0))
    return (heading(title), *rows)


@dataclass(frozen=True, slots=True)
class StepBlock:
    """One step: its number and figure, and the sentence under it."""

    figure: StepFigure
    gap: float | None = None
    tight: bool = False

    def _words(self, kit: Kit, width: float) -> tuple[str, ...]:
        words = " ".join(part for part in (self.figure.sentence, self.figure.caution) if part)
        return wrap(kit.faces, f"{self.figure.number}. {words}", kit.look.small, width)

    def measure(self, kit: Kit, width: float) -> Span:
        """As high as the figure and the lines of its sentence; the figure may grow to nearly twice its size."""
        words = 1.5 + len(self._words(kit, width)) * kit.look.small.leading
        fits = (width - 2.0) / max(self.figure.width, 1.0)
        least = self.figure.height * min(1.0, fits) + words
        most = self.figure.height * min(_LARGEST, fits) + words
        return Span(least, most, 1.0) if most > least + 0.1 else rigid(least)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """The figure, centred, and its sentence."""
        lines = self._words(kit, width)
        room = height - 1.5 - len(lines) * kit.look.small.leading
        fits = (width - 2.0) / max(self.figure.width, 1.0)
        scale = min(fits, _LARGEST, room / max(self.figure.height, 1.0))
        inner = kit.pen()
        draw_step(kit, inner, self.figure)
        left = x + (width - self.figure.width * scale) / 2
        foot = top - self.figure.height * scale
        pen.group(inner.marks, (scale, 0.0, 0.0, scale, left, foot))
        pen.lines(x, foot - 1.5, lines, kit.look.small)

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """Never."""
        return None


def draw_step(kit: Kit, pen: Pen, figure: StepFigure) -> None:
    """Draw a figure in its own frame: paper, creases, what to fold or cut now, and the arrows."""
    for arrow in figure.arrows:
        if arrow.behind:
            _arrow(pen, arrow.points)
    for outline in figure.outlines:
        pen.polygon(outline.points, Stroke(MIDDLE, 0.15), _FRONT if outline.side == "front" else _BACK)
    for line in figure.creases:
        pen.line(line.x1, line.y1, line.x2, line.y2, HAIR, 0.55)
    for line in (*figure.slits, *figure.staples):
        pen.line(line.x1, line.y1, line.x2, line.y2, BOLD, 0.0)
    for line in figure.folds:
        pen.line(line.x1, line.y1, line.x2, line.y2, MIDDLE, 0.0, _VALLEY if line.kind == "valley" else _MOUNTAIN)
    _labels(kit, pen, figure)
    _cuts(pen, figure.cuts)
    for scissors in figure.scissors:
        draw_scissors(pen, scissors.x, scissors.y, scissors.angle_deg, 5.0)
    for arrow in figure.arrows:
        if not arrow.behind:
            _arrow(pen, arrow.points)


def _labels(kit: Kit, pen: Pen, figure: StepFigure) -> None:
    style = kit.look.small.at(2.6).grey(_LABEL)
    turns = {
        0: (1.0, 0.0, 0.0, 1.0),
        90: (0.0, 1.0, -1.0, 0.0),
        180: (-1.0, 0.0, 0.0, -1.0),
        270: (0.0, -1.0, 1.0, 0.0),
    }
    for label in figure.labels:
        inner = kit.pen()
        inner.text(0.0, -style.size * 0.33, label.text, style, align="centre")
        pen.group(inner.marks, (*turns[round(label.rotation_deg) % 360], label.x, label.y))


def _cuts(pen: Pen, cuts: Sequence[FoldLine]) -> None:
    for line in cuts:
        pen.line(line.x1, line.y1, line.x2, line.y2, BOLD, 0.0)


def _arrow(pen: Pen, points: tuple[tuple[float, float], ...]) -> None:
    """A curved arrow with its head along the end of the curve."""
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = points
    pen.path((("m", x0, y0), ("c", x1, y1, x2, y2, x3, y3)), Stroke(THIN + 0.05, 0.0))
    pen.arrow(x2 + (x3 - x2) * 0.6, y2 + (y3 - y2) * 0.6, x3, y3, 0.01, 0.0, 1.8)


def draw_scissors(pen: Pen, x: float, y: float, angle_deg: float, size: float) -> None:
    """A pair of scissors whose tips are at (x, y), pointing along the angle."""
    cos_a, sin_a = cos(radians(angle_deg)), sin(radians(angle_deg))

    def at(along: float, aside: float) -> tuple[float, float]:
        return x + (along * cos_a - aside * sin_a) * size, y + (along * sin_a + aside * cos_a) * size

    for side in (1, -1):
        pen.polygon([at(0, 0.1 * side), at(-0.55, -0.05 * side)], Stroke(THIN, 0.0), closed=False)
        ring_x, ring_y = at(-0.78, -0.2 * side)
        pen.ring(ring_x, ring_y, size * 0.16, Stroke(THIN, 0.0))
