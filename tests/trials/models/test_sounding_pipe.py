"""Pipes against tables of pitches and lengths."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packgen.trials.constants import sound_speed
from packgen.trials.models.sounding_pipe import pipe_length, pipe_pitch
from packgen.trials.notes import pitch


@pytest.mark.parametrize(
    ("note", "stopped", "open_"),
    [("C4", 327.8, 655.5), ("D4", 292.0, 584.0), ("E4", 260.1, 520.3), ("F4", 245.5, 491.1), ("G4", 218.8, 437.5),
     ("A4", 194.9, 389.8), ("B4", 173.6, 347.2), ("C5", 163.9, 327.8)],
)  # fmt: skip
def test_lengths_of_a_scale_at_twenty_degrees(note, stopped, open_):
    # c/4f and c/2f (encyclopaedia article on the pan flute) with 343 m/s (engineeringtoolbox d_520), no correction.
    assert pipe_length(pitch(note), 343.0, True) == pytest.approx(stopped, abs=0.06)
    assert pipe_length(pitch(note), 343.0, False) == pytest.approx(open_, abs=0.06)


def test_a_wavelength_of_a_published_table():
    # B. H. Suits, Physics of Music: at 345 m/s C4 is 132 cm long, A4 78.4, C5 65.9; a stopped pipe is a quarter.
    for note, wave in (("C4", 1320), ("A4", 784), ("C5", 659)):
        assert 4 * pipe_length(pitch(note), 345.0, True) == pytest.approx(wave, rel=0.002)


def test_the_air_beyond_the_end_takes_three_millimetres_from_a_ten_millimetre_bore():
    # 0.61 r for an open end (acoustics texts, from memory): 3.05 mm for r = 5 mm; 0.3 of the bore gives 3.0.
    assert pipe_length(440, 343, True) - pipe_length(440, 343, True, 5) == pytest.approx(3.05)


def test_a_stopped_pipe_sounds_an_octave_lower():
    assert pipe_pitch(200, 343, False) == pytest.approx(2 * pipe_pitch(200, 343, True))


def test_sound_at_twenty_degrees():
    assert sound_speed(20) == pytest.approx(343.2, abs=0.05)


@given(st.floats(60, 4000), st.booleans(), st.floats(0, 5))
def test_cutting_to_length_gives_the_note_again(frequency, stopped, radius):
    length = pipe_length(frequency, 343.0, stopped, radius)
    assert pipe_pitch(length, 343.0, stopped, radius) == pytest.approx(frequency)
