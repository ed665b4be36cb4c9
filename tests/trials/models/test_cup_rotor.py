"""The cup rotor against the old instrument makers."""

import pytest

from packgen.trials.models.cup_rotor import drag_balance_factor, turns_per_second

FOOT, MILE = 0.3048, 1609.344


def test_a_wheel_of_one_and_an_eighth_feet_turns_five_hundred_times_a_mile():
    # A nineteenth-century treatise on meteorological instruments: diameter 1.12 ft, a mile of wind is 500 turns
    # (cups at a third of the wind, T. R. Robinson).
    assert turns_per_second(MILE, 1.12 * FOOT / 2, 3.0) == pytest.approx(500, rel=0.002)


def test_one_foot_across_takes_nine_feet_and_a_half_of_wind_for_a_turn():
    # The same treatise: 1 ft across, 3.1416 ft round, 9.42 ft of wind in a turn.
    assert 1 / turns_per_second(1.0, 0.5, 3.0) == pytest.approx(9.42, abs=0.005)


def test_ten_centimetre_arms_in_five_metres_a_second():
    # Cups at a third of the wind: 159.15 turns a minute.
    assert 60 * turns_per_second(5.0, 0.10, 3.0) == pytest.approx(159.15, abs=0.01)


def test_the_drags_of_two_cups_balance_near_a_third():
    # Drag coefficients 1.42 and 0.38 (Aeronautical Engineer's Data Book, fig. 5.13) give 3.14; Robinson (1845) held 3.
    assert drag_balance_factor() == pytest.approx(3.143, abs=0.001)
    assert drag_balance_factor() == pytest.approx(3.0, rel=0.05)
