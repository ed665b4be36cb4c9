"""Strings against a worked page and a table of frets."""

import pytest

from packgen.trials.models.strings import fret, stopped_length, string_pitch


def test_a_string_of_sixty_four_centimetres():
    # University of British Columbia, Physics 420: L 0.64 m, 330 Hz, wave speed 422 m/s; at 350 Hz L is 0.603 m.
    assert string_pitch(0.64, 422.0**2, 1.0) == pytest.approx(330, abs=0.5)
    assert string_pitch(0.603, 422.4**2, 1.0) == pytest.approx(350, abs=0.5)


def test_half_the_length_sounds_an_octave_higher_and_four_times_the_pull_too():
    one = string_pitch(0.6, 10.0, 0.001)
    assert string_pitch(0.3, 10.0, 0.001) == pytest.approx(2 * one)
    assert string_pitch(0.6, 40.0, 0.001) == pytest.approx(2 * one)


@pytest.mark.parametrize(("steps", "place"), [(1, 36.482), (5, 163.050), (7, 216.177), (12, 325.000)])
def test_frets_of_a_scale_of_six_hundred_and_fifty(steps, place):
    # S (1 - 2^(-n/12)), the ratio 0.94387 read on jiskha.com.
    assert fret(650, steps) == pytest.approx(place, abs=1e-3)


def test_no_pull_no_pitch():
    assert string_pitch(0.6, 0.0, 0.001) == 0


def test_lengths_of_a_scale_on_six_hundred_and_fifty():
    # Equal steps: G4 433.82, A4 386.49, C5 325.00 mm.
    assert stopped_length(650, 2 ** (7 / 12)) == pytest.approx(433.82, abs=0.01)
    assert stopped_length(650, 2 ** (9 / 12)) == pytest.approx(386.49, abs=0.01)
    assert stopped_length(650, 2) == 325
