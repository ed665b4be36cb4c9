"""Breaking text into lines and fitting it into boxes. Nothing is ever cut off: what cannot fit is said."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from packgen.page.type import Faces

# A text of at most so many lines is evened, at the first of these parts of its width that will do.
_SHORT = 4
_NARROWER = (0.97, 0.94, 0.91, 0.88, 0.84, 0.8, 0.75, 0.7)


@dataclass(frozen=True, slots=True)
class Style:
    """A way of setting text: face, em in mm, distance between baselines in mm, ink, and extra space between words."""

    face: str
    size: float
    leading: float
    ink: float = 0.0

    def at(self, size: float) -> Style:
        """The same style at another size, its leading in proportion."""
        return Style(self.face, size, self.leading * size / self.size, self.ink)

    def grey(self, ink: float) -> Style:
        """The same style in another ink."""
        return Style(self.face, self.size, self.leading, ink)

    def in_face(self, face: str) -> Style:
        """The same style in another face."""
        return Style(face, self.size, self.leading, self.ink)


def wrap(faces: Faces, text: str, style: Style, width: float) -> tuple[str, ...]:
    """The lines of a text at most `width` mm wide; line feeds start new lines; words too wide are broken.

    A short text does not end with a word alone on its last line, if as many lines can be filled more evenly.
    """
    return _wrapped(faces, text, style.face, style.size, width)


# A text is wrapped when its page is broken, again when the page is filled, and again when it is drawn.
@lru_cache(maxsize=1 << 14)
def _wrapped(faces: Faces, text: str, face: str, size: float, width: float) -> tuple[str, ...]:
    return tuple(line for paragraph in text.split("\n") for line in _evened(faces, paragraph, face, size, width))


def _evened(faces: Faces, text: str, face: str, size: float, width: float) -> list[str]:
    """The lines of one paragraph; of a short one a little narrower if that saves its last word from standing alone."""
    lines = _wrap_one(faces, text, face, size, width)
    if not 2 <= len(lines) <= _SHORT or " " in lines[-1]:
        return lines
    least = _widest(faces, text, face) * size
    for part in _NARROWER:
        if width * part < least:
            break
        tried = _wrap_one(faces, text, face, size, width * part)
        if len(tried) > len(lines):
            break
        if " " in tried[-1]:
            return tried
    return lines


def _wrap_one(faces: Faces, text: str, face: str, size: float, width: float) -> list[str]:
    space = faces.width(" ", face, size)
    lines: list[list[str]] = [[]]
    used = 0.0
    for word in _whole_or_cut(faces, text, face, size, width):
        wide = faces.width(word, face, size)
        if lines[-1] and used + space + wide > width + 1e-6:
            lines.append([])
            used = 0.0
        used += (space if lines[-1] else 0.0) + wide
        lines[-1].append(word)
    return [" ".join(line) for line in lines]


def _whole_or_cut(faces: Faces, text: str, face: str, size: float, width: float) -> Iterator[str]:
    """The words of a text, those too wide in pieces."""
    for word in text.split():
        if len(word) < 2 or faces.width(word, face, size) <= width + 1e-6:
            yield word
        else:
            yield from _pieces(faces, word, face, size, width)


def _pieces(faces: Faces, word: str, face: str, size: float, width: float) -> Iterator[str]:
    """A word cut so that each piece fits the width: after its own hyphens and slashes first, then anywhere."""
    wides = [faces.width(letter, face, size) for letter in word]
    start = 0
    while start < len(word):
        cut, used = start, 0.0
        while cut < len(word) and used + wides[cut] <= width + 1e-6:
            used += wides[cut]
            cut += 1
        cut = max(cut, start + 1)
        if cut < len(word):
            soft = max(word.rfind(mark, start + 1, cut) for mark in "-/–—_.?&=")
            cut = soft + 1 if soft - start >= (cut - start) // 2 else cut
        yield word[start:cut]
        start = cut


def widest_word(faces: Faces, text: str, style: Style) -> float:
    """The width in mm of the widest word of a text."""
    return _widest(faces, text, style.face) * style.size


@lru_cache(maxsize=1 << 14)
def _widest(faces: Faces, text: str, face: str) -> float:
    return max((faces.width(word, face, 1.0) for word in text.split()), default=0.0)


@dataclass(frozen=True, slots=True)
class Fitted:
    """Lines at the size that fits, and whether they do fit at the smallest size allowed."""

    lines: tuple[str, ...]
    style: Style
    fits: bool

    @property
    def height(self) -> float:
        """The height of the lines in mm, from the top of the first line's leading to the last."""
        return len(self.lines) * self.style.leading


def fit(faces: Faces, text: str, style: Style, width: float, height: float, floor: float) -> Fitted:
    """The text at the largest size from `style.size` down to `floor` (mm) at which it fits width x height.

    Words are not broken while a smaller size keeps them whole. `fits` is False if it does not fit even at the floor;
    the lines are then those at the floor, complete.
    """
    size = style.size
    while True:
        tried = style.at(size)
        lines = wrap(faces, text, tried, width)
        whole = widest_word(faces, text, tried) <= width + 1e-6
        if len(lines) * tried.leading <= height + 1e-6 and (whole or size <= floor):
            return Fitted(lines, tried, True)
        if size <= floor:
            return Fitted(lines, tried, False)
        size = max(floor, size * 0.95)
