"""Page numbers that run through a whole file of several parts: each page's own count is set again at its foot."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from packgen.page.marks import Group, Mark, Page, Text
from packgen.page.type import Faces

_ROLE = "foot"


def with_count(faces: Faces, page: Page, words: str) -> Page:
    """The page with `words` where its own count stood: the last words of its foot, ending at the same place."""
    feet = list(_feet(page.marks))
    if not feet:
        return page
    old = feet[-1]
    right = old.x + faces.width(old.text, old.face, old.size)
    new = replace(old, text=words, x=right - faces.width(words, old.face, old.size))
    return replace(page, marks=tuple(_swapped(page.marks, old, new)))


def _feet(marks: Sequence[Mark]) -> Iterable[Text]:
    for mark in marks:
        if isinstance(mark, Group):
            yield from _feet(mark.marks)
        elif isinstance(mark, Text) and mark.role == _ROLE:
            yield mark


def _swapped(marks: Sequence[Mark], old: Text, new: Text) -> Iterable[Mark]:
    for mark in marks:
        if mark is old:
            yield new
        elif isinstance(mark, Group):
            yield replace(mark, marks=tuple(_swapped(mark.marks, old, new)))
        else:
            yield mark
