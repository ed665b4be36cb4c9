"""The number of a loose sheet in its child's pack: a small tag at the foot, so that a dropped stack is soon in order.

A page is laid out before the pack's order is known. So the pen sets the tag's words first, and `numbered` sets them
again with the number.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from packgen.page.blocks import Kit
from packgen.page.marks import Group, Mark, Page, Text
from packgen.page.pen import Pen
from packgen.page.text import Style
from packgen.page.type import Faces

ROLE = "sheet-number"
_MOST_SIZE = 4.3  # mm; what suits the line at the foot of every level
_LEAST_SIZE = 2.6
_MOST_NUMBER = "888"  # as wide as any number a pack reaches


def tag_width(kit: Kit, words: str, room: float) -> float:
    """The width in mm that the tag takes with any number, at most `room`; 0 if there are no words."""
    return _wide(kit, *_fitted(kit, words, room)) if words else 0.0


def draw_tag(kit: Kit, pen: Pen, words: str, right: float, base: float, room: float) -> None:
    """Set the tag's words on a baseline, ending at `right`; `numbered` adds the number later."""
    if words:
        shown, style = _fitted(kit, words, room)
        pen.text(right, base, shown, style, align="right", role=ROLE)


def _fitted(kit: Kit, words: str, room: float) -> tuple[str, Style]:
    """The words and the style in which they take at most `room` mm: of a name that is too long the first part."""
    look = kit.look
    size = min(look.small.size, _MOST_SIZE)
    style = Style(look.strong.face, size, look.small.leading * size / look.small.size)
    for shown in (words, words.split()[0]):
        wide = _wide(kit, shown, style)
        if wide <= room:
            return shown, style
        if size * room / wide >= _LEAST_SIZE:
            return shown, style.at(size * room / wide)
    return shown, style.at(size * room / wide)


def _wide(kit: Kit, words: str, style: Style) -> float:
    return kit.faces.width(f"{words} {_MOST_NUMBER}", style.face, style.size)


def has_tag(page: Page) -> bool:
    """True if a page shows the number of its sheet."""
    return any(mark.role == ROLE for mark in _texts(page.marks))


def numbered(faces: Faces, page: Page, number: int, face: str) -> Page:
    """The page with the number of its sheet behind the tag's words, still ending at the same place."""
    return replace(page, marks=_numbered(faces, page.marks, number, face)) if has_tag(page) else page


def _numbered(faces: Faces, marks: tuple[Mark, ...], number: int, face: str) -> tuple[Mark, ...]:
    made: list[Mark] = []
    tag: list[Text] = []
    for mark in marks:
        if isinstance(mark, Group):  # a page that lies on its side is one
            made.append(replace(mark, marks=_numbered(faces, mark.marks, number, face)))
        elif isinstance(mark, Text) and mark.role == ROLE:
            tag.append(mark)
        else:
            made.append(mark)
    if tag:
        last = tag[-1]
        right = last.x + faces.width(last.text, last.face, last.size)
        pen = Pen(faces)
        words = f"{''.join(mark.text for mark in tag)} {number}"
        pen.text(right, last.y, words, Style(face, last.size, last.size), align="right", role=ROLE)
        made += pen.marks
    return tuple(made)


def printed_title(page: Page) -> str:
    """The title at the head of a page as it is printed, or nothing if it has none."""
    return " ".join(mark.text for mark in _texts(page.marks) if mark.role == "title").strip()


def _texts(marks: Iterable[Mark]) -> Iterator[Text]:
    for mark in marks:
        if isinstance(mark, Group):
            yield from _texts(mark.marks)
        elif isinstance(mark, Text):
            yield mark
