"""The chart to plot on: it holds what may come out, fits the level, and shows nothing of the answer."""

import pytest
from page_marks import drawn, of_role, words_of
from trial_desks import CANOPY, CLOCK, COINS, LEVELS, trial_desk

from packgen.page.trial_chart import trial_chart


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("text", [CANOPY, COINS, CLOCK], ids=["canopy", "coins", "clock"])
def test_the_chart_is_empty_and_its_axis_has_room(level: str, text: str) -> None:
    desk, _, plan = trial_desk(level, text)
    chart = trial_chart(desk, plan)
    assert not (chart.series or chart.bands or chart.means or chart.filled)
    marks = drawn(desk.kit, chart, desk.live_width).marks
    assert not of_role(marks, "point", "band", "mean", "filled")
    for row in plan.rows:
        assert row.expected is None or row.expected.high * 1.2 <= chart.y.high


@pytest.mark.parametrize(("text", "kind"), [(CANOPY, "bars"), (COINS, "picture")])
def test_the_younger_colour_bars_or_squares_for_each_value(text: str, kind: str) -> None:
    desk, _, plan = trial_desk("younger", text)
    chart = trial_chart(desk, plan)
    assert chart.kind == kind and chart.x.words and len(chart.x.ticks) == len(plan.rows)
    said = " ".join(words_of(drawn(desk.kit, chart, desk.live_width).marks))
    assert ("One square stands for ____ pennies" if kind == "picture" else "up to your middle number") in said


def test_the_older_plot_points_over_numbers_and_bars_over_words() -> None:
    desk, _, plan = trial_desk("older")
    assert trial_chart(desk, plan).kind == "points"
    desk, _, plan = trial_desk("older", COINS)
    chart = trial_chart(desk, plan)
    assert chart.kind == "bars" and "number the upright axis" in chart.key
