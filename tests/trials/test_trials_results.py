"""The children's numbers, as they write them."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.trials.frame import TrialError
from packgen.trials.plan import plan_trial
from packgen.trials.results import judge_results, row_of, turning
from packgen.units import quantity

PLAN = plan_trial(
    "canopy",
    {"load mass": quantity(20, "g"), "drop height": quantity(2, "m")},
    ("canopy side", [quantity(120, "mm"), quantity(180, "mm"), quantity(240, "mm")]),
    ("time to fall", "s"),
)


def _row(*entries, row=0):
    numbers = [()] * row + [entries]
    return judge_results(PLAN, numbers).rows[row]


def test_mean_and_range_of_three_trials():
    # Arithmetic: 1.52, 1.61, 1.55 have the mean 1.56 and the range 0.09.
    found = _row(1.52, 1.61, 1.55)
    assert found.answer == pytest.approx(1.56)
    assert found.how == "mean"
    assert found.range == pytest.approx(0.09)


def test_the_median_stands_in_when_a_trial_failed():
    found = _row(0.70, "it tore", 0.80, 0.71)
    assert found.how == "median"
    assert found.answer == pytest.approx(0.71)


@pytest.mark.parametrize("entry", ["0,71", " 0.71 ", "0.71 s", "710 ms", quantity(710, "ms"), quantity(0.71), 0.71])
def test_numbers_are_read_as_children_write_them(entry):
    assert _row(entry).answer == pytest.approx(0.71)


@pytest.mark.parametrize("entry", [None, "", "-", "it broke", "?"])
def test_what_is_not_a_number_is_a_failed_or_missing_trial(entry):
    found = _row(entry)
    assert found.answer is None
    assert found.how == "none"
    assert found.verdict == ""


@pytest.mark.parametrize(
    ("entry", "words"),
    [(-1, "less than nothing"), (0, "Did the watch start"), ("5 mm", "Which number was meant"),
     (float("nan"), "can be drawn"), (float("inf"), "can be drawn"), ("1" + "0" * 40, "can be drawn")],
)  # fmt: skip
def test_what_cannot_be_is_set_aside_kindly(entry, words):
    summary = judge_results(PLAN, [[entry, 0.7, 0.72]])
    assert summary.rows[0].answer == pytest.approx(0.71)
    assert len(summary.hints) == 1
    assert words in summary.hints[0]
    assert summary.hints[0].startswith("120 mm, trial 1: ")


def test_a_number_in_another_unit_is_recognised():
    summary = judge_results(PLAN, [[720, 0.7, 0.71]])
    assert "in ms" in summary.hints[0]
    assert "0.72 s" in summary.hints[0]
    assert summary.rows[0].answer == pytest.approx(0.705)


def test_a_slipped_point_is_recognised():
    summary = judge_results(PLAN, [[0.7, 0.71, 0.072]])
    assert "point in the right place" in summary.hints[0]


def test_counting_half_swings_is_recognised():
    plan = plan_trial("pendulum", {"length": quantity(1, "m")}, ("length", [quantity(1, "m")]))
    summary = judge_results(plan, [[10.0, 10.1, 10.05]])
    assert all("there and back" in hint for hint in summary.hints)
    assert summary.rows[0].verdict == "below"


def test_half_a_coin_is_asked_about():
    plan = plan_trial("boat-load", {}, measure=("coins", "coins"))
    assert "not a whole number" in judge_results(plan, [[22.5]]).hints[0]
    assert judge_results(plan, [["23 coins"]]).rows[0].answer == 23


def test_results_are_inside_above_or_below_the_band():
    expected = PLAN.rows[0].expected
    assert _row(expected.value).verdict == "inside"
    assert _row(expected.high).verdict == "inside"
    assert _row(expected.high * 1.05).verdict == "above"
    assert _row(expected.low * 0.95).verdict == "below"


def test_rows_are_found_by_their_labels():
    by_label = judge_results(PLAN, {"18 cm": [0.8], "240": [0.9], "120 mm": [0.7]})
    assert [r.answer for r in by_label.rows] == [0.7, 0.8, 0.9]
    with pytest.raises(TrialError, match="no row") as caught:
        judge_results(PLAN, {"300 mm": [1.0]})
    assert "180 mm" in caught.value.instead


def test_more_rows_than_planned_are_refused():
    with pytest.raises(TrialError, match="4 rows"):
        judge_results(PLAN, [[1.0]] * 4)


def test_missing_rows_are_empty():
    summary = judge_results(PLAN, [[0.7, 0.71]])
    assert [r.how for r in summary.rows] == ["mean", "none", "none"]
    assert summary.points == ((120, pytest.approx(0.705)),)


def test_a_curve_is_fitted_through_three_rows_of_numbers():
    summary = judge_results(PLAN, [[0.7], [0.8], [0.92]])
    assert summary.fit is not None
    assert summary.fit.kind == "power"
    assert summary.fit.r2 > 0.95
    assert judge_results(PLAN, [[0.7], [0.8]]).fit is None


def test_words_have_no_curve():
    plan = plan_trial(None, {}, ("paper", ["silk", "crepe", "tissue"]), ("time", "s"))
    summary = judge_results(plan, [[1.0], [2.0], [3.0]])
    assert summary.fit is None
    assert summary.points == ((1, 1.0), (2, 2.0), (3, 3.0))


@settings(max_examples=50, deadline=None)
@given(st.lists(st.lists(st.floats(0.01, 1e6), max_size=5), max_size=3))
def test_the_axis_holds_every_number_that_counts(numbers):
    summary = judge_results(PLAN, numbers)
    for row in summary.rows:
        if row.answer is None:
            continue
        assert summary.y_axis.low <= row.lowest <= row.answer * (1 + 1e-9)
        assert row.highest <= summary.y_axis.high
    for row in PLAN.rows:
        assert row.expected.high <= summary.y_axis.high


@settings(max_examples=80, deadline=None)
@given(st.lists(st.lists(st.one_of(st.none(), st.text(max_size=12), st.floats()), max_size=4), max_size=3))
def test_nothing_a_child_writes_is_too_strange(numbers):
    summary = judge_results(PLAN, numbers)
    assert all(row.answer is None or row.lowest <= row.answer * (1 + 1e-9) for row in summary.rows)


def test_numbers_without_a_plan_for_them_get_an_axis():
    plan = plan_trial(None, {}, ("paper", ["silk", "crepe"]), ("time", "s"))
    summary = judge_results(plan, [[3.0, 4.0], [5.5]])
    assert not summary.y_axis.blank
    assert summary.y_axis.high >= 5.5
    assert judge_results(plan, []).y_axis.blank


def test_a_whole_row_in_the_wrong_unit_is_not_drawn_until_it_is_clear():
    summary = judge_results(PLAN, [[720, 700, 710], [0.8], [0.9]])
    assert summary.rows[0].answer is None
    assert all("in ms" in hint and "not counted" in hint for hint in summary.hints)
    assert summary.y_axis == PLAN.y_axis


def test_a_surprising_number_still_counts():
    summary = judge_results(PLAN, [[4.0]])
    assert summary.rows[0].answer == 4.0
    assert summary.rows[0].verdict == "above"
    assert summary.hints


def test_the_younger_take_the_middle_number():
    summary = judge_results(PLAN, [[0.7, 0.71, 0.9]])
    middle = summary.with_middles()
    assert summary.rows[0].how == "mean" and summary.rows[0].answer == pytest.approx(0.77)
    assert (middle.rows[0].how, middle.rows[0].answer) == ("median", 0.71)
    assert middle.rows[1] == summary.rows[1]


def test_results_that_turn_in_between_are_noticed():
    hours = ("hour", [quantity(h) for h in (9, 10, 11, 12, 13)])
    dial = plan_trial("shadow-clock", {}, hours, None, None, "metric", 50.4)
    turned = turning(judge_results(dial, [[38], [25], [12], [0], [11]]))
    assert turned is not None and turned.row.label == "12"
    assert turning(judge_results(dial, [[38], [25], [12], [6], [0]])) is None
    assert turning(judge_results(dial, [[38, 30], [35, 29], [33, 31], [36, 30], [38, 31]])) is None
    assert turning(judge_results(PLAN, [[0.7], [0.8]])) is None


def test_a_row_is_found_by_its_label():
    assert [row_of(PLAN, label) for label in ("120 mm", "18 cm", "240", "300 mm")] == [0, 1, 2, None]


def _ten_swings():
    lengths = ("length", [quantity(200, "mm"), quantity(600, "mm")])
    return plan_trial("pendulum", {"amplitude": quantity(10, "deg")}, lengths, ("time for the swings", "s"))


def test_a_slip_among_right_numbers_waits_until_it_is_clear():
    row = judge_results(_ten_swings(), [[9.0, 9.1, 4.5], []]).rows[0]
    assert [t.used for t in row.tried] == [True, True, False]
    assert "not counted until that is clear" in row.tried[2].hint and row.answer == pytest.approx(9.05)


def test_a_slip_in_every_trial_is_asked_about_and_counts():
    row = judge_results(_ten_swings(), [[4.5, 4.6, 4.5], []]).rows[0]
    assert all(t.used and "each way counted" in t.hint for t in row.tried)


def test_a_number_that_fits_without_its_unit_is_asked_about_with_the_right_one():
    row = judge_results(_ten_swings(), [[9.0, "9.1 min", 9.0], []]).rows[0]
    assert "Was 9.1 s meant?" in row.tried[1].hint and not row.tried[1].used
