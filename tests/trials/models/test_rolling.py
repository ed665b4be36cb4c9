"""Rolling against a worked cylinder and the textbook accelerations."""

import math

import pytest

from packgen.trials.models.rolling import ROUNDNESS, acceleration, speed_after


def test_a_solid_cylinder_down_a_long_hill():
    # Worked on jiskha.com (9 April 2012): solid cylinder, 40 m down a 30 degree slope, 16.2 m/s.
    assert speed_after(40 * math.sin(math.radians(30)), ROUNDNESS["solid cylinder"]) == pytest.approx(16.2, abs=0.05)


def test_a_solid_cylinder_from_two_metres():
    # OpenStax College Physics, rotational kinetic energy: 2.00 m high incline, v = sqrt(4 g h / 3) = 5.11 m/s, from
    # memory of the printed figure.
    assert speed_after(2.0, ROUNDNESS["solid cylinder"]) == pytest.approx(5.11, abs=0.01)


@pytest.mark.parametrize(("shape", "rate"), [("ball", 1.2164), ("solid cylinder", 1.1353), ("tube", 0.8515)])
def test_a_ten_degree_slope(shape, rate):
    # 5/7, 2/3 and 1/2 of g sin a (any mechanics text).
    assert acceleration(math.sin(math.radians(10)), ROUNDNESS[shape]) == pytest.approx(rate, abs=1e-4)


def test_something_that_slides_without_rolling_has_the_whole_of_gravity():
    assert acceleration(1.0, 0.0) == pytest.approx(9.80665)


def test_speed_from_the_acceleration_is_speed_from_the_height():
    rate = acceleration(0.2, 0.4)
    assert math.sqrt(2 * rate * 3.0) == pytest.approx(speed_after(0.6, 0.4))
