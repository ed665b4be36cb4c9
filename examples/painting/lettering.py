"""Hand lettering: capitals and figures as pen strokes, for the drawings that carry words."""
# Points are set out by hand.
# fmt: off

from __future__ import annotations

import numpy as np

from .shapes import ribbon
from .surface import Surface

# Each letter stands on a grid 4 wide and 6 high, y down; strokes are runs of two-figure points.
_STROKES = {
    "A": "06 20 46;14 34", "B": "00 06 26 36 45 44 33 23 03;23 32 31 20 00", "C": "41 30 10 01 05 16 36 45",
    "D": "00 06 26 44 42 20 00", "E": "40 00 06 46;03 33", "F": "40 00 06;03 33", "G": "41 30 10 01 05 16 36 45 43 23",
    "H": "00 06;40 46;03 43", "I": "10 16", "J": "40 45 36 16 05", "K": "00 06;40 03 46", "L": "00 06 46",
    "M": "06 00 23 40 46", "N": "06 00 46 40", "O": "10 01 05 16 36 45 41 30 10", "P": "06 00 30 41 42 33 03",
    "Q": "10 01 05 16 36 45 41 30 10;24 46", "R": "06 00 30 41 42 33 03;23 46",
    "S": "41 30 10 01 02 13 33 44 45 36 16 05",
    "T": "00 40;20 26", "U": "00 05 16 36 45 40", "V": "00 26 40", "W": "00 16 22 36 40", "X": "00 46;40 06",
    "Y": "00 23 40;23 26", "Z": "00 40 06 46", "0": "10 01 05 16 36 45 41 30 10", "1": "01 10 16",
    "2": "01 10 30 41 42 06 46",
    "3": "01 10 30 41 42 33 23;33 44 45 36 16 05", "4": "30 04 44;30 36", "5": "40 00 02 32 43 45 36 16 05",
    "6": "40 10 01 05 16 36 45 44 33 13 04", "7": "00 40 16", "8": "13 02 01 10 30 41 42 33 13 04 05 16 36 45 44 33",
    "9": "43 13 02 01 10 30 41 45 36 06", ".": "06 05", "-": "13 33", "'": "10 01", "&": "46 11 20 31 04 16 26 43",
}


def _advance(character: str) -> float:
    return 0.55 if character in "I1.'" else 0.9


def width(text: str, height: float) -> float:
    """How long the text is when its capitals are `height` high."""
    return sum(_advance(c) for c in text) * height


def letter(s: Surface, text: str, x: float, y: float, height: float, ink: str, pen: float = 0.0, slant: float = 0.12,
           centred: bool = False) -> None:
    """Write the text with its baseline at y, starting at (or centred on) x."""
    rng = np.random.default_rng(len(text) * 97 + int(x))
    pen = pen or height * 0.085
    x -= width(text, height) / 2 if centred else 0
    for character in text:
        for stroke in _STROKES.get(character, "").split(";"):
            points = np.array([[int(p[0]) * 0.62 / 4, int(p[1]) / 6 - 1] for p in stroke.split()], float)
            if not len(points):
                continue
            points[:, 0] -= points[:, 1] * slant
            points += rng.normal(0, 0.012, points.shape)
            corner = character in "AEFHIKLMNTVWXYZ147"
            s.fill(ribbon(points * height + (x, y), [pen * 0.8, pen * 1.1, pen * 0.8], not corner), ink, fine=1,
                   vary=0.15)
        x += height * _advance(character)
