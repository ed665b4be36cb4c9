"""Faces and the measuring of text: which face has a letter, and how wide a run of letters is.

The one place besides the writer that knows reportlab, whose font reader does the measuring. It is loaded with the first
face: a check of plain letters needs none. Sizes and widths are mm.
"""

from __future__ import annotations

import hashlib
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from packgen.faults import WorkFailed
from packgen.resources import folder

if TYPE_CHECKING:
    from reportlab.pdfbase.ttfonts import TTFont

# The face of each role, and the faces that step in where it lacks a letter.
_FILES = {
    "early": "Andika-Regular.ttf",
    "early-bold": "Andika-Bold.ttf",
    "text": "FiraSans-Regular.ttf",
    "text-bold": "FiraSans-Bold.ttf",
    "text-italic": "FiraSans-Italic.ttf",
    "display": "PackgenDisplay-Regular.ttf",
    "han": "DroidSansFallbackFull.ttf",
}
_STEP_IN = {
    "early": ("text", "han"),
    "early-bold": ("text-bold", "han"),
    "text": ("early", "han"),
    "text-bold": ("early-bold", "han"),
    "text-italic": ("text", "early", "han"),
    "display": ("early-bold", "text-bold", "han"),
}
ROLES = tuple(_STEP_IN)


@dataclass(frozen=True, slots=True)
class Metrics:
    """Heights of a face as parts of its em: capitals, x-height, ascenders and (positive) descenders."""

    cap: float
    x: float
    ascent: float
    descent: float


# Read off the OS/2 and hhea tables of the shipped font files; ascent is the height of d and l, not the line gap.
_METRICS = {
    "early": Metrics(0.725, 0.508, 0.79, 0.235),
    "early-bold": Metrics(0.725, 0.508, 0.79, 0.235),
    "text": Metrics(0.689, 0.527, 0.745, 0.205),
    "text-bold": Metrics(0.689, 0.527, 0.745, 0.205),
    "text-italic": Metrics(0.689, 0.527, 0.745, 0.205),
    "display": Metrics(0.70, 0.50, 0.74, 0.21),
}
_PLAIN = Metrics(0.70, 0.53, 0.78, 0.22)

_MOST_WIDTHS = 100_000  # measured texts kept; a family's build has some 10 000

# Letters that draw nothing, or that every face treats as a space.
_BLANK = {0x20, 0xA0, 0x2009, 0x200A, 0x202F}


class Faces:
    """The shipped faces and a family's own fonts, with measured widths kept for the whole build."""

    def __init__(self, extra: Iterable[Path] = ()) -> None:
        self._cover: dict[str, frozenset[int]] = {}
        self._widths: dict[tuple[str, str], float] = {}
        self._extra = tuple(self._register_extra(path) for path in extra)

    def covers(self, text: str, face: str) -> bool:
        """True if every letter of the text is in the face itself."""
        return self._covered(face).issuperset(map(ord, text))

    def missing(self, text: str, face: str) -> tuple[str, ...]:
        """The letters that neither the face nor those stepping in for it can draw, each once, in order."""
        chain = self._chain(face)
        return tuple(dict.fromkeys(c for c in text if not any(ord(c) in self._covered(f) for f in chain)))

    def runs(self, text: str, face: str) -> tuple[tuple[str, str], ...]:
        """The text cut into (face, letters) runs, each wholly inside its face. Letters in none are left out.

        A space stays with the run before it, so that a line does not change face for it.
        """
        if self.covers(text, face):
            return ((face, text),)
        chain = self._chain(face)
        runs: list[tuple[str, str]] = []
        for letter in text:
            here = runs[-1][0] if runs else None
            if here and letter == " ":
                found: str | None = here
            else:
                found = next((f for f in chain if ord(letter) in self._covered(f)), None)
            if found is None:
                continue
            if found == here:
                runs[-1] = (found, runs[-1][1] + letter)
            else:
                runs.append((found, letter))
        return tuple(runs)

    def width(self, text: str, face: str, size: float) -> float:
        """The width of one line of text in mm at an em of `size` mm."""
        known = self._widths.get((face, text))
        if known is None:
            known = sum(self._font(f).stringWidth(part, 1000) / 1000 for f, part in self.runs(text, face))
            if len(self._widths) > _MOST_WIDTHS:
                self._widths.clear()
            self._widths[face, text] = known
        return known * size

    def metrics(self, face: str) -> Metrics:
        """The heights of a face as parts of its em."""
        return _METRICS.get(face, _PLAIN)

    def _chain(self, face: str) -> tuple[str, ...]:
        return (face, *_STEP_IN.get(face, ()), *self._extra)

    def _covered(self, face: str) -> frozenset[int]:
        if face not in self._cover:
            self._cover[face] = frozenset(self._font(face).face.charToGlyph) | (_BLANK & {0x20, 0xA0})
        return self._cover[face]

    @staticmethod
    def _font(face: str) -> TTFont:
        return font(face)

    @staticmethod
    def _register_extra(path: Path) -> str:
        from reportlab.pdfbase.ttfonts import TTFError

        try:
            name = "own-" + hashlib.sha256(path.read_bytes()).hexdigest()[:12]
            _register(name, path)
            face = font(name).face
            face.makeSubset(sorted(face.charToGlyph))  # a broken letter is better found now than in a half-made file
        except Exception as error:  # on a broken font reportlab's reader fails with whatever comes
            why = str(error) if isinstance(error, (OSError, TTFError)) else "it is broken"
            raise WorkFailed(f"The font {path} cannot be read: {why}. Give a TrueType font (.ttf).") from error
        return name


_registered: dict[str, TTFont] = {}


def font(face: str) -> TTFont:
    """The reportlab font of a face, registered under the face's own name on first use."""
    known = _registered.get(face)
    if known is None:
        from reportlab.pdfbase import pdfmetrics

        if face in _FILES:
            _register(face, folder("fonts") / _FILES[face])
        known = _registered[face] = pdfmetrics.getFont(face)
    return known


def _register(name: str, path: Path) -> None:
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    if name not in pdfmetrics.getRegisteredFontNames():
        pdfmetrics.registerFont(TTFont(name, str(path)))


def script_names(letters: Iterable[str]) -> tuple[str, ...]:
    """The scripts of some letters in plain words, e.g. ("Arabic", "Hebrew"); for messages."""
    names = (unicodedata.name(letter, "UNKNOWN").split()[0].capitalize() for letter in letters)
    return tuple(dict.fromkeys(names))


def is_right_to_left(text: str) -> bool:
    """True if the text has letters of a script that runs from right to left, which packgen cannot set."""
    return any(unicodedata.bidirectional(letter) in ("R", "AL") for letter in text)
