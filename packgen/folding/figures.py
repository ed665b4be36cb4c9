"""Fold steps as small figures, from the same program as the pages: what lies there, and what to do with it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from packgen.folding import sentences
from packgen.folding.drawing import PileDrawing, curve, scissors, star, zigzag
from packgen.folding.figure_values import Arrow, Outline, StepFigure, framed
from packgen.folding.layers import Pile, after, cells, hinges, laid_out
from packgen.folding.program import Close, Cut, CutAndStack, Fasten, Fold, Program, Step, Trim, TurnOver, Unfold
from packgen.folding.slots import FoldPlan

_MOST_PANELS_DRAWN = 12


def step_figures(plan: FoldPlan, size: float = 40.0) -> tuple[StepFigure, ...]:
    """The steps of a planned book, its sheet's long side drawn `size` mm long; the last shows the finished book."""
    scale = size / max(plan.sheet_width, plan.sheet_height)
    maker = _Steps(plan, plan.sheet_width * scale, plan.sheet_height * scale)
    made = maker.strip() if plan.program.assembly == "joined" else maker.book()
    return tuple(framed(figure, number) for number, figure in enumerate(made, 1))


@dataclass(frozen=True, slots=True)
class _Steps:
    plan: FoldPlan
    width: float
    height: float

    @property
    def program(self) -> Program:
        return self.plan.program

    def draw(self, pile: Pile) -> PileDrawing:
        return PileDrawing(pile, self.width, self.height, self.plan.pages)

    def figure(self, pile: Pile, sentence: str) -> StepFigure:
        """The pile as it lies, with what was folded and cut before."""
        drawing = self.draw(pile)
        creases, slits = drawing.old_lines()
        return StepFigure(sentence, outlines=drawing.outlines(), creases=creases, slits=slits, labels=drawing.labels())

    def book(self) -> Iterator[StepFigure]:
        """The steps of a book that is folded, or cut and closed."""
        pile = laid_out(self.program, self.plan.signatures[0])
        yield self._lay(pile)
        for steps, opened in _grouped(self.program.steps):
            yield from self._step(pile, steps, opened=opened)
            for step in steps:
                pile = after(pile, step)
        page = min(self.draw(pile).seen(), default=0)
        yield self.figure(pile, sentences.finished(self.program.spine, page, len(self.plan.signatures)))

    def strip(self) -> Iterator[StepFigure]:
        """The steps of a concertina: sheets glued end to end, then folded forth and back."""
        pile = laid_out(self.program)
        sheets = len(self.plan.sheets)
        yield self.figure(pile, sentences.lay_strip(sheets))
        if sheets > 1:
            yield self._glue(pile)
        drawing = self.draw(pile)
        folds = tuple(drawing.fold(step)[0] for step in self.program.steps if isinstance(step, Fold))
        yield replace(self.figure(pile, sentences.FAN), folds=folds)
        panels = min(sheets * self.program.panels, _MOST_PANELS_DRAWN)
        yield StepFigure(sentences.FAN_READY, outlines=zigzag(panels, self.width / 6))

    def _lay(self, pile: Pile) -> StepFigure:
        seen = self.draw(pile).seen() or {1: (pile.bounds, 0.0)}
        first = min(seen)
        box, _ = seen[first]
        where = sentences.place_word(
            float(box[0] + box[2]) / 2, float(box[1] + box[3]) / 2,
            columns=len(self.program.columns), rows=len(self.program.rows),
        )  # fmt: skip
        sentence = sentences.lay(self.plan.signatures[0], first, where, printed_one_side=self.program.faces == 1)
        return self.figure(pile, sentence)

    def _step(self, pile: Pile, steps: tuple[Step, ...], *, opened: bool) -> Iterator[StepFigure]:
        drawing, step = self.draw(pile), steps[0]
        match step:
            case Fold():
                line, arrow = drawing.fold(step)
                sentence = step.say or sentences.fold(step, pile.bounds, opened=opened)
                yield replace(self.figure(pile, sentence), folds=(line,), arrows=(arrow,))
            case Cut():
                cuts = [drawing.cut(one) for one in steps if isinstance(one, Cut)]
                layers = max(len(drawing.outlines()), 1)
                sentence = step.say or sentences.cut(len(cuts), layers, opened=opened)
                yield replace(
                    self.figure(pile, sentence), caution=sentences.SCISSORS,
                    cuts=tuple(line for line, _ in cuts), scissors=tuple(pair for _, pair in cuts),
                )  # fmt: skip
            case CutAndStack():
                cut, pair, arrow = drawing.cut_and_stack(step)
                figure = self.figure(pile, step.say or sentences.cut_and_stack(step))
                yield replace(figure, caution=sentences.SCISSORS, cuts=(cut,), scissors=(pair,), arrows=(arrow,))
            case TurnOver():
                yield replace(self.figure(pile, step.say or sentences.TURN), arrows=(drawing.turned(),))
            case Close():
                yield from self._close(pile, step)
            case Fasten():
                figure = self.figure(pile, step.say or sentences.fasten(len(self.plan.signatures)))
                yield replace(figure, caution=sentences.NEEDLE, staples=drawing.staples(self.program.spine))
            case Trim():
                edges = tuple(drawing.edge(edge) for edge in step.edges)
                figure = self.figure(pile, step.say or sentences.trim(step.edges))
                yield replace(
                    figure, caution=sentences.SCISSORS, cuts=edges, scissors=tuple(scissors(edge) for edge in edges)
                )

    def _close(self, pile: Pile, step: Close) -> Iterator[StepFigure]:
        """How the panels close: a ring is pushed together, a strip folded forth and back."""
        leaves = len(pile.layers) // 2
        if _is_ring(pile):
            figure = self.figure(pile, step.say or sentences.PUSH)
            yield replace(figure, arrows=self.draw(pile).pushed())
            yield StepFigure(sentences.star(leaves), outlines=star(leaves, self.width / 4))
            return
        yield self.figure(pile, step.say or sentences.WIND)
        panels = min(len(pile.layers), _MOST_PANELS_DRAWN)
        yield StepFigure(sentences.COVERS, outlines=zigzag(panels, self.width / 8))

    def _glue(self, pile: Pile) -> StepFigure:
        """The end of one sheet with its flap, the beginning of the next beside it, and where the flap goes."""
        figure = self.figure(pile, sentences.GLUE + " " + sentences.TRIM_FLAP)
        flap = self.width * self.program.glue_flap / self.plan.sheet_width
        right, high, panel = self.width, self.height, self.width / self.program.panels
        start = right + 3 * flap
        flap_outline = Outline(((right, 0.0), (right + flap, 0.0), (right + flap, high), (right, high)), "front")
        beyond = Outline(((start, 0.0), (start + panel, 0.0), (start + panel, high), (start, high)), "front")
        arrow = Arrow(curve((start + panel / 2, high / 2), (right + flap / 2, high / 2)))
        return replace(figure, outlines=(*figure.outlines, flap_outline, beyond), arrows=(arrow,))


def _grouped(steps: tuple[Step, ...]) -> Iterator[tuple[tuple[Step, ...], bool]]:
    """Steps that share a figure: cuts that follow one another, and an unfolding with what comes before it.

    With each group, whether the paper is opened out after it.
    """
    group: list[Step] = []
    for step in steps:
        joins = isinstance(step, Unfold) or (isinstance(step, Cut) and group and isinstance(group[-1], Cut))
        if group and not joins:
            yield tuple(group), isinstance(group[-1], Unfold)
            group = []
        group.append(step)
    if group:
        yield tuple(group), isinstance(group[-1], Unfold)


def _is_ring(pile: Pile) -> bool:
    """True if the cuts have left as many hinges as panels: a strip has one less."""
    opened = {hinge for hinge, _ in pile.cuts}
    whole = sum(hinge not in opened for hinge in hinges(pile.program, (0,)))
    return whole == sum(1 for _ in cells(pile.program))
