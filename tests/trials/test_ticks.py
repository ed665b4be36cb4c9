"""Ticks against Heckbert's printed examples, and axes for children."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packgen.trials.ticks import (
    blank_axis,
    nice_number,
    nice_ticks,
    number_axis,
    picture_scale,
    result_axis,
    with_room,
    word_axis,
)


def test_heckberts_own_examples():
    # P. Heckbert, "Nice Numbers for Graph Labels", Graphics Gems (1990): 105 to 543 and 2.04 to 2.16, five ticks.
    assert nice_ticks(105, 543, 5) == (100, 200, 300, 400, 500, 600)
    assert nice_ticks(2.04, 2.16, 5) == (2.0, 2.05, 2.1, 2.15, 2.2)


@pytest.mark.parametrize(
    ("part", "rounded", "up"),
    [(1.0, 1, 1), (1.49, 1, 2), (1.5, 2, 2), (2.9, 2, 5), (3.0, 5, 5), (6.9, 5, 10), (7.0, 10, 10)],
)
def test_cut_offs_of_the_round_numbers(part, rounded, up):
    # Graphics Gems, label.c: rounding at 1.5, 3 and 7; ceiling 1, 2, 5, 10.
    assert nice_number(part, True) == pytest.approx(rounded)
    assert nice_number(part, False) == pytest.approx(up)
    assert nice_number(part / 1000, True) == pytest.approx(rounded / 1000)


def test_other_printed_examples():
    # R package labeling, R/labeling.R: heckbert(8.1, 14.1, 4) is 5 10 15. nice_number README: -0.085 to 0.173, n 10.
    assert nice_ticks(8.1, 14.1, 4) == (5, 10, 15)
    assert nice_ticks(-0.085, 0.173, 10) == (-0.1, -0.05, 0.0, 0.05, 0.1, 0.15, 0.2)


@given(st.floats(-1e6, 1e6), st.floats(1e-3, 1e6), st.integers(2, 12))
def test_ticks_hold_the_range_and_are_even(low, width, count):
    ticks = nice_ticks(low, low + width, count)
    step = ticks[1] - ticks[0]
    assert ticks[0] <= low + 1e-6 * width
    assert ticks[-1] >= low + width - 1e-6 * width
    assert all(b - a == pytest.approx(step, rel=1e-6) for a, b in itertools.pairwise(ticks))
    assert len(ticks) <= 2 * count + 2


def test_one_value_still_has_an_axis():
    assert nice_ticks(5, 5)[-1] >= 5
    assert nice_ticks(0, 0) == (0.0, 0.2, 0.4, 0.6, 0.8, 1.0)
    with pytest.raises(ValueError, match="finite"):
        nice_ticks(0, float("inf"))


def test_things_that_are_counted_have_whole_ticks():
    axis = number_axis("blades", "", (2, 3, 4), whole=True)
    assert axis.labels == ("0", "1", "2", "3", "4")
    assert axis.minor == 1


def test_a_result_axis_begins_at_nought_and_leaves_a_third_above():
    axis = result_axis("time", "s", (0.9, 1.2))
    assert axis.low == 0
    assert axis.high >= 1.3 * 1.2
    assert axis.title == "time (s)"


def test_planned_values_far_from_nought_do_not_begin_at_nought():
    assert number_axis("width", "mm", (800, 1000, 1200)).low == 800
    assert number_axis("width", "mm", (100, 1200)).low == 0
    assert number_axis("temperature", "°C", (-10, 5)).low <= -10


def test_a_value_has_its_place_on_the_axis():
    axis = number_axis("side", "mm", (0, 100))
    assert axis.place(0) == 0
    assert axis.place(50) == 0.5
    words = word_axis("shape", ("flat", "cone"))
    assert words.place(1) == 0.25
    assert words.place(2) == 0.75


def test_a_blank_axis_has_empty_labels():
    axis = blank_axis("distance", "m")
    assert axis.blank
    assert set(axis.labels) == {""}
    assert len(axis.ticks) == 11
    assert picture_scale(axis).each == 0
    assert picture_scale(axis).label == ""


@given(st.floats(0.01, 1e5))
def test_at_most_ten_pictures_reach_as_far_as_the_axis(top):
    axis = result_axis("load", "g", (top,))
    scale = picture_scale(axis)
    assert scale.boxes <= 10
    assert scale.each * scale.boxes >= axis.high * (1 - 1e-9)
    assert scale.label.endswith(" g")


@given(st.lists(st.floats(0.01, 1e5), min_size=1, max_size=8))
def test_an_axis_with_room_holds_no_value_on_its_ends(values):
    axis = with_room(number_axis("length", "mm", values), values)
    assert axis.low <= min(values) and max(values) < axis.high
    assert axis.low == 0 or axis.low < min(values)
    steps = [b - a for a, b in itertools.pairwise(axis.ticks)]
    assert all(step == pytest.approx(steps[0], rel=1e-6) for step in steps)
    assert len(axis.labels) == len(axis.ticks)


def test_zero_stays_the_end_of_an_axis():
    assert with_room(number_axis("blades", "", (3, 12)), (3, 12)).ticks[0] == 0
    assert with_room(number_axis("blades", "", (0, 12)), (0, 12)).ticks[0] == 0
