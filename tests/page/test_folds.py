"""Fold steps on a page: every scheme has its figures, each inside its cell, with its sentence and its cautions."""

import pytest
from page_marks import box, kit, words_of

from packgen.folding import plan_fold, schemes
from packgen.folding.figures import step_figures
from packgen.page.blocks import Row
from packgen.page.folds import StepBlock, draw_scissors, draw_step, fold_step_blocks
from packgen.page.marks import Group

A4 = (210.0, 297.0)
PAGES = {"half": 4, "slit": 8, "stitched": 12, "quarto": 8, "octavo": 16, "concertina": 8}


@pytest.mark.parametrize("scheme", sorted(schemes()))
def test_every_figure_lies_in_its_frame(scheme: str) -> None:
    on = kit("younger")
    for figure in step_figures(
        plan_fold(scheme, min(PAGES.get(scheme, 4), schemes()[scheme].most_pages or 99), *A4), 38.0
    ):
        pen = on.pen()
        draw_step(on, pen, figure)
        for mark in pen.marks:
            if not isinstance(mark, Group):
                left, bottom, right, top = box(mark)
                assert left >= -1.2 and bottom >= -1.2, (scheme, figure.number)
                assert right <= figure.width + 1.2 and top <= figure.height + 1.2, (scheme, figure.number)


@pytest.mark.parametrize("level", ["first", "younger", "older", "upper"])
def test_a_step_has_its_number_sentence_and_caution_under_its_figure(level: str) -> None:
    on = kit(level)
    for figure in step_figures(plan_fold("slit", 8, *A4), 38.0):
        block = StepBlock(figure)
        pen = on.pen()
        high = block.measure(on, 56.0).least
        block.draw(on, pen, 0.0, 0.0, 56.0, high)
        wanted = [f"{figure.number}.", *figure.sentence.split(), *figure.caution.split()]
        assert words_of(pen.marks) == wanted
        assert all(box(mark)[1] >= -high - 1e-6 for mark in pen.marks if not isinstance(mark, Group))


def test_whoever_cuts_is_told_to_mind_the_scissors() -> None:
    cutting = [figure for figure in step_figures(plan_fold("slit", 8, *A4), 38.0) if figure.scissors]
    assert cutting and all(figure.caution for figure in cutting)


def test_steps_stand_in_rows_and_the_last_row_keeps_its_columns() -> None:
    plan = plan_fold("slit", 8, *A4)
    head, *rows = fold_step_blocks(plan, "How to fold the book", 3)
    steps = len(step_figures(plan, 38.0))
    assert len(rows) == -(-steps // 3)
    assert all(isinstance(row, Row) and len(row.cells) == 3 for row in rows) and head.tight


def test_scissors_have_their_tips_where_they_cut() -> None:
    pen = kit("older").pen()
    draw_scissors(pen, 10.0, 20.0, 0.0, 5.0)
    boxes = [box(mark) for mark in pen.marks]
    assert max(b[2] for b in boxes) == pytest.approx(10.0)
    assert min(b[0] for b in boxes) == pytest.approx(10.0 - 4.7, abs=0.01)
    assert (min(b[1] for b in boxes) + max(b[3] for b in boxes)) / 2 == pytest.approx(20.0)
