"""Planned values drawn for the youngest: true to one another, named in plain words, none where that says nothing."""

import pytest
from page_marks import kit

from packgen.page.values_drawn import NAMES, PICTURES, draw_value, shown_values
from packgen.trials.models import models
from packgen.trials.plan import plan_trial
from packgen.units import quantity


def _lengths(*numbers):
    return plan_trial("pendulum", {}, ("length", [quantity(n, "mm") for n in numbers]))


def test_three_lengths_are_short_middle_and_long_and_true_to_one_another():
    shown = shown_values(_lengths(600, 200, 400))
    assert [one.key for one in shown] == ["short", "middle", "long"]
    assert [one.share for one in shown] == pytest.approx([1 / 3, 2 / 3, 1])
    assert [one.label for one in shown] == ["200 mm", "400 mm", "600 mm"]


def test_a_thread_is_as_long_as_its_share():
    longest = []
    for one in shown_values(_lengths(200, 400, 800)):
        pen = kit("first").pen()
        draw_value(pen, one, 0.0, 0.0, 40.0, 30.0)
        (thread,) = [mark for mark in pen.marks if getattr(mark, "role", "") == "value"]
        longest.append(abs(thread.y2 - thread.y1))
    assert [long / longest[-1] for long in longest] == pytest.approx([0.25, 0.5, 1])


def test_of_many_values_the_least_the_middle_and_the_greatest_are_shown():
    assert [one.text for one in shown_values(_lengths(100, 200, 300, 400, 500))] == ["100", "300", "500"]
    assert shown_values(_lengths(100)) == ()


def test_blades_are_counted_out_and_words_stay_words():
    plan = plan_trial("wheel", {"wheel radius": quantity(60, "mm")}, ("number of blades", [quantity(3), quantity(12)]))
    assert [(one.text, one.count, one.key) for one in shown_values(plan)] == [("3", 3, ""), ("12", 12, "")]
    plan = plan_trial(
        "rolling", {"ramp length": quantity(1, "m"), "ramp height": quantity(100, "mm")}, ("what rolls", [])
    )
    assert all(one.picture == "" and one.text for one in shown_values(plan))


def test_an_hour_of_the_day_is_not_drawn():
    assert shown_values(plan_trial("shadow-clock", {"latitude": quantity(50, "deg")})) == ()


@pytest.mark.parametrize("key", models())
def test_every_picture_an_input_names_can_be_drawn_inside_its_cell(key):
    for item in models()[key].inputs:
        assert item.picture in ("", *PICTURES)
    assert set(NAMES) <= set(PICTURES)
