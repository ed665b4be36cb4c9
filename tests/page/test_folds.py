"""Fold steps on a page: every scheme has its figures, each inside its cell, with its sentence and its cautions."""

import pytest
from page_marks import box, kit, words_of

from packgen.folding import plan_fold, schemes
from packgen.folding.figures import step_figures
from packgen.page.blocks import Row
from packgen.page.folds import StepBlock, draw_scissors, draw_step, fold_step_blocks
from packgen.page.marks import Group, Line, Path_

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
                over = 2.4 if getattr(mark, "role", "") == "arrow" else 1.2  # the handles of a curve lie outside it
                assert left >= -over and bottom >= -over, (scheme, figure.number)
                assert right <= figure.width + over and top <= figure.height + over, (scheme, figure.number)


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


def said(key: str) -> str:
    return {"steps_title": "How to fold the book"}.get(key, key)


def steps(scheme: str, room: float = 230.0, across: tuple[int, ...] = (3, 4, 2)) -> list[Row]:
    plan = plan_fold(scheme, min(PAGES.get(scheme, 4), schemes()[scheme].most_pages or 99), *A4)
    blocks = fold_step_blocks(kit("younger"), plan, said, 178.0, room, across)
    return [block for block in blocks if isinstance(block, Row)]


@pytest.mark.parametrize("scheme", sorted(schemes()))
def test_all_figures_of_a_sheet_have_one_scale(scheme: str) -> None:
    cells = [block for row in steps(scheme) for _, block in row.cells if isinstance(block, StepBlock)]
    assert len(cells) == len({cell.figure.number for cell in cells})
    assert len({cell.scale for cell in cells}) == 1
    on, drawn = kit("younger"), set()
    for cell in cells:
        pen = on.pen()
        cell.draw(on, pen, 0.0, 0.0, 56.0, cell.measure(on, 56.0).least)
        drawn |= {round(mark.matrix[0], 6) for mark in pen.marks if isinstance(mark, Group)}
    assert drawn == {cells[0].scale}


def test_steps_stand_in_rows_that_keep_their_columns_and_grow_with_the_room() -> None:
    small, large = steps("slit", 170.0), steps("slit", 230.0)
    assert all(len(row.cells) == 3 for row in large) and len(large) == 3
    assert large[0].cells[0][1].scale > small[0].cells[0][1].scale  # type: ignore[attr-defined]
    assert steps("slit", 60.0) == []


@pytest.mark.parametrize("scheme", sorted(schemes()))
def test_the_key_explains_every_line_of_the_figures_and_no_other(scheme: str) -> None:
    plan = plan_fold(scheme, min(PAGES.get(scheme, 4), schemes()[scheme].most_pages or 99), *A4)
    first = fold_step_blocks(kit("younger"), plan, said, 178.0, 230.0, (3, 4, 2))[0]
    pen = kit("younger").pen()
    first.draw(kit("younger"), pen, 0.0, 0.0, 178.0, first.measure(kit("younger"), 178.0).least)
    told = {word.removeprefix("key_") for word in words_of(pen.marks) if word.startswith("key_")}
    figures = step_figures(plan, 38.0)
    assert {"valley", "mountain"} & told == {line.kind for figure in figures for line in figure.folds}
    assert ("cut" in told) == any(figure.cuts for figure in figures)


def dashes(scheme: str) -> dict[str, tuple[float, ...]]:
    found = {}
    for figure in step_figures(plan_fold(scheme, 8, *A4), 38.0):
        pen = kit("younger").pen()
        draw_step(kit("younger"), pen, figure)
        for mark in pen.marks:
            if isinstance(mark, Line) and mark.role.startswith("fold-"):
                found[mark.role] = mark.stroke.dash
    return found


def test_a_valley_is_dashed_and_a_mountain_dash_dot() -> None:
    # The notation of Yoshizawa and Randlett. A dot of no length is not printed.
    lines = dashes("slit")
    assert len(lines["fold-valley"]) == 2 and len(lines["fold-mountain"]) == 4
    assert lines["fold-mountain"][2] >= 0.3


def test_a_fold_behind_has_an_arrow_round_the_edge_that_the_paper_hides() -> None:
    figure = next(f for f in step_figures(plan_fold("slit", 8, *A4), 38.0) if any(a.behind for a in f.arrows))
    pen = kit("younger").pen()
    draw_step(kit("younger"), pen, figure)
    head = next(k for k, mark in enumerate(pen.marks) if getattr(mark, "role", "") == "arrow-behind")
    paper = next(k for k, mark in enumerate(pen.marks) if isinstance(mark, Path_) and mark.fill == 1.0 and k > head)
    top = max(y for outline in figure.outlines for _, y in outline.points)
    assert head < paper and box(pen.marks[head])[3] > top + 1.5  # drawn first, and most of it outside the paper
    over = [mark for mark in pen.marks[paper:] if isinstance(mark, Path_) and mark.role == "arrow"]
    assert over and box(over[0])[1] < top - 2.0  # its beginning lies on the paper


def test_scissors_have_their_tips_where_they_cut() -> None:
    pen = kit("older").pen()
    draw_scissors(pen, 10.0, 20.0, 0.0, 5.0)
    boxes = [box(mark) for mark in pen.marks]
    assert max(b[2] for b in boxes) == pytest.approx(10.0)
    assert min(b[0] for b in boxes) == pytest.approx(10.0 - 4.7, abs=0.01)
    assert (min(b[1] for b in boxes) + max(b[3] for b in boxes)) / 2 == pytest.approx(20.0)
