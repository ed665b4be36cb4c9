"""Solving for the value that gives a wanted result: checked against published figures and by going back."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.trials.plan import plan_trial, trial_faults
from packgen.units import quantity


def _pendulum(goal, **more):
    lengths = ("length", [quantity(200, "mm"), quantity(400, "mm"), quantity(600, "mm")])
    given = {"amplitude": quantity(1, "deg"), **more}
    return plan_trial("pendulum", given, lengths, ("time of one swing", "s"), goal=goal)


def test_the_pendulum_that_beats_seconds_has_the_published_length():
    # The seconds pendulum (a swing of two seconds) is 0.994 m at 45° (Encyclopaedia Britannica, rounded);
    # 993.6 mm = g / pi^2 with g = 9.8062 m/s2 there (from memory).
    plan = _pendulum(quantity(2, "s"))
    (answer,) = plan.goal.answers
    assert answer.to("mm") == pytest.approx(993.6, abs=0.6) and answer.unit == "mm" and plan.goal.exact


@settings(max_examples=25, deadline=None)
@given(st.floats(0.6, 5.0))
def test_the_answer_gives_the_goal_again(seconds):
    plan = _pendulum(quantity(seconds, "s"))
    (answer,) = plan.goal.answers
    values = plan.values[0].changed("length", answer.value)
    assert plan.measured.result.of(values) == pytest.approx(seconds, rel=1e-6)


def test_a_result_that_two_values_give_has_both():
    # In a vacuum complementary angles throw equally far (OpenStax University Physics 1, section 4.3, figure 4.15).
    given = {"launch speed": quantity(5, "m/s"), "ball mass": quantity(50, "g"), "ball diameter": quantity(20, "mm")}
    angles = ("launch angle", [quantity(20, "deg"), quantity(70, "deg")])
    plan = plan_trial("launched-ball", given, angles, ("distance", "m"), goal=quantity(1.6, "m"))
    assert len(plan.goal.answers) == 2
    assert sum(a.to("deg") for a in plan.goal.answers) == pytest.approx(90, abs=3)


def test_of_counted_things_the_nearest_is_given():
    given = {"wheel radius": quantity(60, "mm"), "load mass": quantity(10, "g"), "lift height": quantity(500, "mm")}
    blades = ("number of blades", [quantity(3), quantity(6), quantity(12)])
    plan = plan_trial("wheel", given, blades, ("time to lift", "s"), goal=quantity(7, "s"))
    (answer,) = plan.goal.answers
    assert answer.value.is_integer()
    off = [abs(plan.measured.result.of(plan.values[0].changed("number of blades", float(n))) - 7) for n in (2, 3, 4, 6)]
    best = abs(plan.measured.result.of(plan.values[0].changed("number of blades", answer.value)) - 7)
    assert best <= min(off)


def test_a_goal_out_of_reach_has_no_answer_and_a_wrong_unit_is_an_error():
    assert _pendulum(quantity(60, "s")).goal.answers == ()
    given, change = {}, ("length", [quantity(200, "mm")])
    (fault,) = trial_faults("pendulum", given, change, ("time of one swing", "s"), goal=quantity(3, "g"))
    assert fault.about == "goal" and "time of one swing" in fault.message and "s" in fault.instead


def test_a_plain_number_is_in_the_unit_that_is_measured_in():
    assert _pendulum(quantity(2)).goal.answers[0].value == pytest.approx(
        _pendulum(quantity(2, "s")).goal.answers[0].value
    )


def test_conditions_are_all_that_the_result_depends_on():
    names = [name for name, _ in _pendulum(None).conditions]
    assert "amplitude" in names and "latitude" in names
    assert "bob mass" not in names and "swings" not in names and "length" not in names
    given = {"wheel radius": quantity(60, "mm")}
    plan = plan_trial("wheel", given, ("number of blades", [quantity(3), quantity(6)]))
    names = {name for name, _ in plan.conditions}
    assert names == {"wheel radius", "axle radius", "load mass", "lift height", "flow", "water drop", "stream depth"}
