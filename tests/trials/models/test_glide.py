"""The glider against NASA's worked glide."""

import math

import pytest

from packgen.trials.models.glide import glide_angle_deg, glide_distance, glide_speed


def test_ten_metres_along_for_two_down_is_a_ratio_of_five():
    # NASA Glenn, "Glider problem" / "Vector balance of forces": 2 m down and 10 m along, 11.31 degrees, L/D = 5.
    assert glide_distance(2.0, 5.0) == 10.0
    assert glide_angle_deg(5.0) == pytest.approx(11.31, abs=0.005)


@pytest.mark.parametrize(("ratio", "angle"), [(4, 14.04), (6, 9.46), (8, 7.13), (10, 5.71)])
def test_the_angle_is_that_of_one_in_the_ratio(ratio, angle):
    # tan a = 1 / (L/D) (NASA Glenn, "Gliding").
    assert glide_angle_deg(ratio) == pytest.approx(angle, abs=0.005)


def test_six_metres_from_one_and_a_half():
    assert glide_distance(1.5, 4.0) == 6.0


def test_four_times_the_weight_glides_twice_as_fast_and_a_flat_glide_carries_the_whole_weight():
    one = glide_speed(0.005, 0.02, 0.5, 5.0)
    assert glide_speed(0.02, 0.02, 0.5, 5.0) == pytest.approx(2 * one)
    level = glide_speed(0.005, 0.02, 0.5, 1e9)
    assert 0.5 * 1.225 * level**2 * 0.02 * 0.5 == pytest.approx(0.005 * 9.80665)
    assert level > one
    assert math.isfinite(level)
