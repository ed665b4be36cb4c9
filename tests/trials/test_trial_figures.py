"""Which row of a trial a model's figures hold for."""

import pytest

from packgen.trials.plan import plan_trial
from packgen.units import quantity

CLOCK = {"vessel diameter": quantity(75, "mm"), "hole diameter": quantity(3, "mm"), "end level": quantity(0, "mm")}


def test_half_minute_marks_of_a_water_clock_begin_at_the_highest_mark() -> None:
    levels = [quantity(level, "mm") for level in (50, 100, 150)]
    plan = plan_trial("water-clock", CLOCK, ("start level", levels), ("time to run down", "s"))
    marks = [figure.value.to("mm") for figure in plan.figures]
    whole = plan.rows[-1].expected.value
    # Torricelli (see the model): the square root of the level falls evenly with time.
    for place, mark in enumerate(marks, 1):
        assert mark == pytest.approx(150 * (1 - 30 * place / whole) ** 2, abs=0.51)
    assert 30 * len(marks) < whole <= 30 * (len(marks) + 1)
    assert plan.figures[0].label == "filled to the highest mark, level after 30 s"


def test_a_slow_clock_has_fewer_marks_at_longer_steps() -> None:
    slow = {**CLOCK, "hole diameter": quantity(1, "mm"), "start level": quantity(200, "mm")}
    plan = plan_trial("water-clock", slow)
    assert 1 <= len(plan.figures) <= 8
    assert "30 s" not in plan.figures[0].label


def test_a_figure_that_another_row_changes_says_which_row_it_holds_for() -> None:
    sides = [quantity(side, "mm") for side in (200, 300, 400)]
    given = {"load mass": quantity(10, "g"), "drop height": quantity(2, "m")}
    labels = {figure.label for figure in plan_trial("canopy", given, ("canopy side", sides)).figures}
    assert "steady speed under the canopy with canopy side 300 mm" in labels
    assert "time to fall without any canopy or air" in labels


def test_a_pinhole_is_told_no_finer_than_it_can_be_made() -> None:
    (figure,) = plan_trial("pinhole", {}).figures
    assert figure.value.to("mm") == pytest.approx(0.5, abs=0.1)
    assert round(figure.value.to("mm"), 1) == figure.value.to("mm")
