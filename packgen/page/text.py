"""Breaking text into lines and fitting it into boxes. Nothing is ever cut off: what cannot fit is said."""

from __future__ import annotations

from dataclasses import dataclass

from packgen.page.type import Faces


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
    """The lines of a text at most `width` mm wide; line feeds start new lines; words too wide are broken."""
    lines: list[str] = []
    for paragraph in text.split("\n"):
        lines.extend(_wrap_one(faces, paragraph, style, width))
    return tuple(lines)


def _wrap_one(faces: Faces, text: str, style: Style, width: float) -> list[str]:
    words = [piece for word in text.split() for piece in _pieces(faces, word, style, width)]
    space = faces.width(" ", style.face, style.size)
    lines: list[list[str]] = [[]]
    used = 0.0
    for word in words:
        wide = faces.width(word, style.face, style.size)
        if lines[-1] and used + space + wide > width + 1e-6:
            lines.append([])
            used = 0.0
        used += (space if lines[-1] else 0.0) + wide
        lines[-1].append(word)
    return [" ".join(line) for line in lines]


def _pieces(faces: Faces, word: str, style: Style, width: float) -> list[str]:
    """A word cut so that each piece fits the width: after its own hyphens and slashes first, then anywhere."""
    if faces.width(word, style.face, style.size) <= width + 1e-6 or len(word) < 2:
        return [word]
    pieces: list[str] = []
    rest = word
    while rest and faces.width(rest, style.face, style.size) > width + 1e-6:
        cut = len(rest) - 1
        while cut > 1 and faces.width(rest[:cut], style.face, style.size) > width:
            cut -= 1
        soft = max((rest.rfind(mark, 1, cut) for mark in "-/–—_.?&="), default=-1)
        cut = soft + 1 if soft >= cut // 2 else cut
        pieces.append(rest[:cut])
        rest = rest[cut:]
    return [*pieces, rest] if rest else pieces


def widest_word(faces: Faces, text: str, style: Style) -> float:
    """The width in mm of the widest word of a text."""
    return max((faces.width(word, style.face, style.size) for word in text.split()), default=0.0)


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
