"""Pitches against a published table."""

import pytest

from packgen.trials.notes import NOTES, SCALE, pitch


@pytest.mark.parametrize(
    ("note", "hertz"),
    [("C4", 261.63), ("D4", 293.66), ("E4", 329.63), ("F4", 349.23), ("G4", 392.00), ("A4", 440.0), ("B4", 493.88),
     ("C5", 523.25)],
)  # fmt: skip
def test_pitches_of_the_scale(note, hertz):
    # B. H. Suits, Physics of Music, Michigan Technological University; OEIS A329207; A4 = 440 Hz, ISO 16.
    assert pitch(note) == pytest.approx(hertz, abs=0.005)


def test_an_octave_doubles_and_notes_rise():
    assert pitch("C6") == pytest.approx(2 * pitch("C5"))
    pitches = [pitch(n) for n in NOTES]
    assert pitches == sorted(pitches)
    assert NOTES[:8] == SCALE
