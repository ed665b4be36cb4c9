import pytest

from packgen.folding import FoldPlan, plan_fold, schemes
from packgen.folding.figure_values import StepFigure
from packgen.folding.figures import step_figures
from packgen.folding.program import Fold

A4 = (210.0, 297.0)
NEAR = 1e-6


def planned(scheme: str) -> FoldPlan:
    return plan_fold(scheme, schemes()[scheme].most_pages or 32, *A4)


def said(scheme: str) -> list[str]:
    return [figure.sentence for figure in step_figures(planned(scheme))]


@pytest.mark.parametrize("scheme", sorted(schemes()))
def test_everything_drawn_lies_in_the_figures_frame(scheme: str) -> None:
    for figure in step_figures(planned(scheme)):
        points = [point for outline in figure.outlines for point in outline.points]
        points += [(label.x, label.y) for label in figure.labels]
        points += [point for line in lines_of(figure) for point in ((line[0], line[1]), (line[2], line[3]))]
        points += [end for arrow in figure.arrows for end in (arrow.points[0], arrow.points[3])]
        assert points
        for x, y in points:
            assert -NEAR <= x <= figure.width + NEAR
            assert -NEAR <= y <= figure.height + NEAR


def lines_of(figure: StepFigure) -> list[tuple[float, float, float, float]]:
    lines = (*figure.creases, *figure.slits, *figure.folds, *figure.cuts, *figure.staples)
    return [(line.x1, line.y1, line.x2, line.y2) for line in lines]


@pytest.mark.parametrize("scheme", sorted(schemes()))
def test_steps_are_numbered_and_say_what_to_do(scheme: str) -> None:
    figures = step_figures(planned(scheme))
    assert [figure.number for figure in figures] == list(range(1, len(figures) + 1))
    assert all(figure.sentence.endswith(".") for figure in figures)
    assert all(figure.caution for figure in figures if figure.scissors or figure.staples)


@pytest.mark.parametrize("scheme", sorted(set(schemes()) - {"concertina"}))
def test_every_fold_of_the_program_has_its_figure_with_its_kind(scheme: str) -> None:
    plan = planned(scheme)
    wanted = [step.kind for step in plan.program.steps if isinstance(step, Fold)]
    assert [line.kind for figure in step_figures(plan) for line in figure.folds] == wanted


@pytest.mark.parametrize("scheme", sorted(schemes()))
def test_an_arrow_to_behind_begins_and_ends_at_the_edge_that_moves_and_turns_outside_it(scheme: str) -> None:
    for figure in step_figures(planned(scheme)):
        for arrow in (arrow for arrow in figure.arrows if arrow.behind):
            (sx, sy), first, second, (ex, ey) = arrow.points
            outlines = [point for outline in figure.outlines for point in outline.points]
            right, top = max(x for x, _ in outlines), max(y for _, y in outlines)
            left, low = min(x for x, _ in outlines), min(y for _, y in outlines)
            assert left < sx < right and low < sy < top
            assert any(x > right + 3 or x < left - 3 or y > top + 3 or y < low - 3 for x, y in (first, second))
            assert min(abs(ex - left), abs(ex - right), abs(ey - low), abs(ey - top)) < 1.5


@pytest.mark.parametrize("scheme", sorted(schemes()))
def test_an_arrow_ends_at_the_mirror_image_of_its_start(scheme: str) -> None:
    """Paper folded about a line comes to lie at its mirror image."""
    for figure in step_figures(planned(scheme)):
        if len(figure.folds) != 1 or figure.arrows[0].behind:
            continue
        (line,), (arrow,) = figure.folds, figure.arrows
        (sx, sy), (ex, ey) = arrow.points[0], arrow.points[3]
        if line.x1 == pytest.approx(line.x2):
            assert (sx + ex) / 2 == pytest.approx(line.x1)
            assert sy == pytest.approx(ey)
        else:
            assert (sy + ey) / 2 == pytest.approx(line.y1)
            assert sx == pytest.approx(ex)
        assert arrow.behind == (line.kind == "mountain")


def test_the_first_figure_is_the_sheet_in_its_true_shape() -> None:
    figure = step_figures(planned("slit"), size=50)[0]
    assert (figure.width, figure.height) == pytest.approx((50, 50 * 210 / 297))
    assert sorted(int(label.text) for label in figure.labels) == list(range(1, 9))
    assert {label.rotation_deg for label in figure.labels if int(label.text) in (2, 3, 4, 5)} == {180}


def test_the_slit_is_cut_from_the_fold_to_the_middle_of_the_folded_sheet() -> None:
    figure = next(f for f in step_figures(planned("slit"), size=40) if f.cuts)
    (cut,), (pair,) = figure.cuts, figure.scissors
    assert abs(cut.x2 - cut.x1) == pytest.approx(10)
    assert (pair.x, pair.y) == pytest.approx((cut.x1, cut.y1))
    assert pair.angle_deg == pytest.approx(180)


def test_the_last_figure_shows_the_first_page() -> None:
    for scheme in ("half", "stitched", "quarto", "octavo", "slit", "pocket"):
        assert [label.text for label in step_figures(planned(scheme))[-1].labels] == ["1"]


def test_sentences_name_edges_and_kinds_of_fold() -> None:
    assert said("quarto")[1:3] == [
        "Fold the top edge down to the bottom edge. Make a valley fold.",
        "Fold the left edge over to the right edge. Make a valley fold.",
    ]
    assert "Fold the top edge behind to the bottom edge. Make a mountain fold." in said("slit")
    assert said("gate")[1:3] == [
        "Fold the left edge over to the middle. Make a valley fold.",
        "Fold the right edge over to the middle. Make a valley fold.",
    ]


def test_a_pile_of_sheets_is_turned_over_and_shows_its_middle_pages() -> None:
    first = step_figures(plan_fold("stitched", 12, *A4))[0]
    assert "Keep the 3 sheets in the order they were printed" in first.sentence
    assert {label.text for label in first.labels} == {"6", "7"}


def test_pages_that_do_not_exist_carry_no_number() -> None:
    first = step_figures(plan_fold("stitched", 2, *A4))[0]
    assert {label.text for label in first.labels} == {"2"}


def test_sections_are_all_mentioned() -> None:
    assert any("3 sections" in sentence for sentence in
               (f.sentence for f in step_figures(plan_fold("stitched", 120, *A4))))  # fmt: skip


def test_a_long_concertina_is_glued_and_a_short_one_is_not() -> None:
    glued = [f.sentence for f in step_figures(plan_fold("concertina", 12, *A4, faces=1))]
    short = [f.sentence for f in step_figures(plan_fold("concertina", 4, *A4, faces=1))]
    assert any("glue" in sentence for sentence in glued)
    assert not any("glue" in sentence for sentence in short)
