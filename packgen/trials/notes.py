"""The notes of a scale and their pitch."""

from __future__ import annotations

_STEPS = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}

SCALE = ("C4", "D4", "E4", "F4", "G4", "A4", "B4", "C5")
"""A major scale from middle C."""

NOTES = (*SCALE, "D5", "E5", "F5", "G5", "A5", "B5", "C6")


def pitch(note: str) -> float:
    """The pitch in Hz of a white note such as "C4", in equal steps from A4 = 440 Hz (ISO 16): 440 x 2^(n/12)."""
    steps = _STEPS[note[0]] - 9 + 12 * (int(note[1:]) - 4)
    return 440.0 * 2 ** (steps / 12)
