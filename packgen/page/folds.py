"""The steps of folding a book, drawn from its fold program: figures of one scale in rows, and what their lines mean."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from math import cos, radians, sin

from packgen.folding.figure_values import Point, StepFigure
from packgen.folding.figures import step_figures
from packgen.folding.slots import FoldLine, FoldPlan
from packgen.page.blocks import Block, Kit, Row, Space, Span, Stack, Whole, gap_of, heading, rigid
from packgen.page.look import BOLD, HAIR, MIDDLE, RULE, THIN
from packgen.page.marks import Stroke
from packgen.page.pen import Pen
from packgen.page.text import wrap

_FRONT, _BACK = 1.0, 0.88
_LABEL = 0.2  # darker than other small print, for it stands on the grey back of the paper
_SCALES = (1.8, 1.6, 1.45, 1.3, 1.15, 1.0, 0.88, 0.76, 0.66)
_LONG = 38.0  # mm, the long side of a sheet in a figure at scale 1
_GUTTER = 5.0
# Yoshizawa and Randlett's lines: a valley fold dashed, a mountain fold dash-dot.
_VALLEY = (2.0, 1.2)
_MOUNTAIN = (2.8, 0.9, 0.4, 0.9)
_SAMPLE = 11.0
_STAPLE = 1.3  # mm wide on paper, to stand out from the fold it lies on

Say = Callable[[str], str]


def fold_step_blocks(kit: Kit, plan: FoldPlan, say: Say, width: float, room: float, across: Sequence[int],
                     least: float = 0.0) -> tuple[Block, ...]:  # fmt: skip
    """A heading, what the lines mean, and rows of step figures, all of one scale: the largest that fits the room.

    `across` are the numbers of figures a row may have, the wished one first, `least` the smallest scale. Empty if none
    fits the room (mm high). What to take care of is said in the words of the level.
    """
    figures = [_careful(figure, say) for figure in step_figures(plan, _LONG)]
    title, key = heading(say("steps_title")), LineKey(kinds_in(figures), say)
    counts = [count for count in across if len(figures) % count != 1] or list(across)  # no figure alone in a row
    for scale in (scale for scale in _SCALES if scale >= least):
        for count in counts:
            cell = (width - _GUTTER * (count - 1)) / count
            if max(f.width for f in figures) * scale > cell - 1.0:
                continue
            blocks = (Stack((title, key), tight=True), *_rows(figures, count, scale))
            if sum(b.measure(kit, width).least for b in blocks) + sum(gap_of(kit, b) for b in blocks) <= room:
                return blocks
    return ()


def _careful(figure: StepFigure, say: Say) -> StepFigure:
    """A figure whose caution is worded for the level of who folds."""
    kind = "care_needle" if figure.staples else "care_scissors"
    return replace(figure, caution=say(kind)) if figure.caution else figure


def _rows(figures: Sequence[StepFigure], across: int, scale: float) -> tuple[Block, ...]:
    """Rows of figures; those of a row stand on one line, their sentences under it."""
    rows: list[Block] = []
    for k in range(0, len(figures), across):
        row = figures[k : k + across]
        tall = max(figure.height for figure in row) * scale
        cells: list[tuple[float, Block]] = [(1.0, StepBlock(figure, scale, tall)) for figure in row]
        cells += [(1.0, Space(1.0))] * (across - len(cells))
        rows.append(Row(tuple(cells), gutter=_GUTTER, gap=4.0))
    return tuple(rows)


def kinds_in(figures: Sequence[StepFigure]) -> tuple[str, ...]:
    """Which lines and sides occur in some figures: of valley, mountain, cut and back."""
    folds = {line.kind for figure in figures for line in figure.folds}
    cut = any(figure.cuts or figure.slits for figure in figures)
    back = any(o.side == "back" and len(o.points) > 2 for figure in figures for o in figure.outlines)
    there = {"valley": "valley" in folds, "mountain": "mountain" in folds, "cut": cut, "back": back}
    return tuple(kind for kind, found in there.items() if found)


@dataclass(frozen=True, slots=True)
class LineKey(Whole):
    """What the lines of fold figures mean: a sample of each kind and its words, side by side, in rows as needed."""

    kinds: tuple[str, ...]
    say: Say
    gap: float | None = 1.5
    tight: bool = True

    def _places(self, kit: Kit, width: float) -> list[tuple[str, float, int]]:
        """The kinds with their x and their row."""
        style, x, row = kit.look.small, 0.0, 0
        found = []
        for kind in self.kinds:
            wide = _SAMPLE + 2.0 + kit.faces.width(self.say(f"key_{kind}"), style.face, style.size)
            if x and x + wide > width:
                x, row = 0.0, row + 1
            found.append((kind, x, row))
            x += wide + 6.0
        return found

    def measure(self, kit: Kit, width: float) -> Span:
        """As high as its rows."""
        return rigid(kit.look.small.leading * (1 + max((row for _, _, row in self._places(kit, width)), default=0)))

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """The samples and their words."""
        style = kit.look.small
        for kind, left, row in self._places(kit, width):
            base = top - row * style.leading - pen.drop(style)
            middle = base + pen.faces.metrics(style.face).x * style.size / 2
            _sample(pen, kind, x + left, middle)
            pen.text(x + left + _SAMPLE + 2.0, base, self.say(f"key_{kind}"), style, role="key")


def _sample(pen: Pen, kind: str, x: float, y: float) -> None:
    if kind == "back":
        pen.box(x, y - 1.5, _SAMPLE, 3.0, Stroke(THIN, RULE), _BACK, role="key-line")
    elif kind == "cut":
        pen.line(x, y, x + _SAMPLE, y, BOLD, 0.0, role="key-line")
    else:
        pen.line(x, y, x + _SAMPLE, y, MIDDLE, 0.0, _dash(kind), role="key-line")


def _dash(kind: str) -> tuple[float, ...]:
    return _VALLEY if kind == "valley" else _MOUNTAIN


@dataclass(frozen=True, slots=True)
class StepBlock(Whole):
    """One step: its number and figure at a scale, standing at the foot of `tall` mm, and the sentence under it."""

    figure: StepFigure
    scale: float = 1.0
    tall: float = 0.0
    gap: float | None = None
    tight: bool = False

    def _words(self, kit: Kit, width: float) -> tuple[str, ...]:
        words = " ".join(part for part in (self.figure.sentence, self.figure.caution) if part)
        return wrap(kit.faces, f"{self.figure.number}. {words}", kit.look.small, width)

    def _high(self) -> float:
        return max(self.tall, self.figure.height * self.scale)

    def measure(self, kit: Kit, width: float) -> Span:
        """As high as the figure and the lines of its sentence."""
        return rigid(self._high() + 1.5 + len(self._words(kit, width)) * kit.look.small.leading)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """The figure, centred, and its sentence."""
        inner = kit.pen()
        draw_step(kit, inner, self.figure, self.scale)
        left = x + (width - self.figure.width * self.scale) / 2
        foot = top - self._high()
        pen.group(inner.marks, (self.scale, 0.0, 0.0, self.scale, left, foot))
        pen.lines(x, foot - 1.5, self._words(kit, width), kit.look.small)


def draw_step(kit: Kit, pen: Pen, figure: StepFigure, scale: float = 1.0) -> None:
    """Draw a figure in its own frame: paper, creases, what to fold or cut now, and the arrows.

    `scale` is what the figure will be drawn at: lines and letters keep their weight on paper.
    """
    for arrow in figure.arrows:
        if arrow.behind:
            _arrow_behind(pen, arrow.points)
    for outline in figure.outlines:
        pen.polygon(outline.points, Stroke(MIDDLE, 0.15), _FRONT if outline.side == "front" else _BACK)
    for line in figure.creases:
        pen.line(line.x1, line.y1, line.x2, line.y2, HAIR, 0.55)
    for line in figure.slits:
        pen.line(line.x1, line.y1, line.x2, line.y2, BOLD, 0.0)
    for line in figure.staples:
        pen.line(line.x1, line.y1, line.x2, line.y2, _STAPLE / scale, 0.0, role="staple")
    for line in figure.folds:
        dash = tuple(part / scale for part in _dash(line.kind))
        pen.line(line.x1, line.y1, line.x2, line.y2, MIDDLE / scale, 0.0, dash, role=f"fold-{line.kind}")
    _labels(kit, pen, figure, scale)
    _cuts(pen, figure.cuts)
    for scissors in figure.scissors:
        draw_scissors(pen, scissors.x, scissors.y, scissors.angle_deg, 5.0)
    for arrow in figure.arrows:
        if arrow.behind:
            _curve(pen, _first_half(arrow.points))
        else:
            _arrow(pen, arrow.points)


def _labels(kit: Kit, pen: Pen, figure: StepFigure, scale: float) -> None:
    style = kit.look.small.at(2.8 / scale).grey(_LABEL)
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


Curve = tuple[Point, Point, Point, Point]


def _curve(pen: Pen, points: Curve) -> None:
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = points
    pen.path((("m", x0, y0), ("c", x1, y1, x2, y2, x3, y3)), Stroke(THIN + 0.05, 0.0), role="arrow")


def _arrow(pen: Pen, points: Curve) -> None:
    """A curved arrow with its head along the end of the curve."""
    (x2, y2), (x3, y3) = points[2:]
    _curve(pen, points)
    pen.arrow(x2 + (x3 - x2) * 0.6, y2 + (y3 - y2) * 0.6, x3, y3, 0.01, 0.0, 1.8)


def _arrow_behind(pen: Pen, points: Curve) -> None:
    """A curved arrow with a hollow head; the paper is drawn over its tip."""
    (x2, y2), (x3, y3) = points[2:]
    far = max(((x3 - x2) ** 2 + (y3 - y2) ** 2) ** 0.5, 1e-9)
    ux, uy = (x3 - x2) / far, (y3 - y2) / far
    _curve(pen, points)
    base_x, base_y = x3 - 2.6 * ux, y3 - 2.6 * uy
    head = [(x3, y3), (base_x - 1.15 * uy, base_y + 1.15 * ux), (base_x + 1.15 * uy, base_y - 1.15 * ux)]
    pen.polygon(head, Stroke(THIN, 0.0), 1.0, role="arrow-behind")


def _first_half(points: Curve) -> Curve:
    """The first half of a cubic curve (de Casteljau)."""

    def middle(a: Point, b: Point) -> Point:
        return (a[0] + b[0]) / 2, (a[1] + b[1]) / 2

    a, b, c, d = points
    ab, bc, cd = middle(a, b), middle(b, c), middle(c, d)
    return a, ab, middle(ab, bc), middle(middle(ab, bc), middle(bc, cd))


def draw_scissors(pen: Pen, x: float, y: float, angle_deg: float, size: float) -> None:
    """A pair of scissors whose tips are at (x, y), pointing along the angle."""
    cos_a, sin_a = cos(radians(angle_deg)), sin(radians(angle_deg))

    def at(along: float, aside: float) -> tuple[float, float]:
        return x + (along * cos_a - aside * sin_a) * size, y + (along * sin_a + aside * cos_a) * size

    for side in (1, -1):
        pen.polygon([at(0, 0.1 * side), at(-0.55, -0.05 * side)], Stroke(THIN, 0.0), closed=False)
        ring_x, ring_y = at(-0.78, -0.2 * side)
        pen.ring(ring_x, ring_y, size * 0.16, Stroke(THIN, 0.0))
