"""The water clock against a textbook problem."""

import math

import pytest

from packgen.trials.models.water_clock import level_after, outflow_speed, time_between


@pytest.mark.parametrize(("level", "speed"), [(0.05, 0.9903), (0.10, 1.4005), (0.20, 1.9806), (0.30, 2.4257)])
def test_the_speed_of_the_jet(level, speed):
    # Torricelli: sqrt(2 g h).
    assert outflow_speed(level) == pytest.approx(speed, abs=5e-5)


def test_a_tank_that_falls_from_nine_to_four_feet_in_an_hour_is_empty_after_three():
    # Differential-equations text, problem 27, p. 419 (solution sheet "Toricellis Law", scribd 198934744).
    first = time_between(1.0, 0.01, 9.0, 4.0)
    assert time_between(1.0, 0.01, 9.0, 0.0) / first == pytest.approx(3.0)


def test_the_formula_of_a_published_demonstration():
    # Wolfram Demonstrations, "Time to Drain a Tank Using Torricelli's Law": t = sqrt(2 h / g) (r / a)², with h 2 m,
    # r 2.5 m, a 0.01 m.
    assert time_between(5.0, 0.02, 2.0, 0.0) == pytest.approx(math.sqrt(2 * 2 / 9.80665) * 250**2)


def test_a_kitchen_vessel():
    # 80 mm across, 3 mm hole, 0.20 m: 143.62 s ideal, 235.44 s with 0.61; half height after 0.29289 of the time.
    whole = time_between(0.080, 0.003, 0.20, 0.0)
    assert whole == pytest.approx(143.62, abs=0.01)
    assert time_between(0.080, 0.003, 0.20, 0.0, 0.61) == pytest.approx(235.44, abs=0.01)
    assert time_between(0.080, 0.003, 0.20, 0.10) / whole == pytest.approx(0.29289, abs=1e-5)


def test_the_levels_at_tenths_of_the_time_are_the_squares():
    levels = [level_after(k / 10, 1.0, 0.0) for k in range(11)]
    assert levels == pytest.approx([1, 0.81, 0.64, 0.49, 0.36, 0.25, 0.16, 0.09, 0.04, 0.01, 0])


def test_no_water_takes_no_time():
    assert time_between(0.08, 0.003, 0.0, 0.0) == 0
