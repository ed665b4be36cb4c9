"""The bladed rotor against rules of thumb for wind rotors."""

import pytest

from packgen.trials.models.bladed_rotor import best_tip_ratio, turns_per_second


def test_two_blades_like_six_and_four_blades_three_times_the_wind():
    # Textbook problem (zookal.com): best tip speed ratio 4 pi / n, 6.3 for two blades, 3.1 for four.
    assert best_tip_ratio(2) == pytest.approx(6.3, abs=0.05)
    assert best_tip_ratio(4) == pytest.approx(3.1, abs=0.05)


def test_thirty_centimetres_across_with_tips_at_the_speed_of_the_wind():
    # rpm = 60 lambda v / (2 pi R) (kleinwindanlagen.de): 0.30 m across, lambda 1, 3 m/s gives 191 turns a minute.
    assert 60 * turns_per_second(1.0, 3.0, 0.15) == pytest.approx(191, abs=0.5)


def test_no_wind_turns_nothing():
    assert turns_per_second(5.0, 0.0, 0.15) == 0
