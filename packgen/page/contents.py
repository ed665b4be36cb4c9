"""A table of contents: titles, dotted lines, page numbers."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from packgen.page.blocks import Block, Kit, Row, Span, rigid
from packgen.page.look import HAIR, RULE
from packgen.page.marks import Group, Mark, Page, Text
from packgen.page.pen import Pen
from packgen.page.text import Style, wrap
from packgen.planning.print_plan import Begin

_NUMBER = 9.0  # the width of the column of page numbers
_DENT = 5.0
_APART = 0.7  # mm between lines
_HIGHEST = 190.0  # mm of two columns, which stay on one page
_MANY = 12  # entries from which on they stand in two columns


@dataclass(frozen=True, slots=True)
class Contents:
    """What begins on which page, one line under the other; parted between two that are not parts of one."""

    entries: tuple[Begin, ...]
    gap: float | None = None
    tight: bool = False

    def _lines(self, kit: Kit, entry: Begin, width: float) -> tuple[Style, float, tuple[str, ...]]:
        style = kit.look.body if entry.under else kit.look.strong
        dent = _DENT if entry.under else 0.0
        return style, dent, wrap(kit.faces, entry.title, style, width - _NUMBER - dent)

    def _height(self, kit: Kit, entry: Begin, width: float) -> float:
        style, _, lines = self._lines(kit, entry, width)
        return len(lines) * style.leading + _APART

    def measure(self, kit: Kit, width: float) -> Span:
        """As high as its lines."""
        return rigid(sum(self._height(kit, entry, width) for entry in self.entries))

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """Each title with a dotted line to its number."""
        y = top
        for entry in self.entries:
            style, dent, lines = self._lines(kit, entry, width)
            under = pen.lines(x + dent, y, lines, style)
            base = under + style.leading - pen.drop(style)
            number = str(entry.page) if entry.page else ""
            pen.text(x + width, base, number, style, align="right", role="contents")
            start = x + dent + kit.faces.width(lines[-1], style.face, style.size) + 1.5
            end = x + width - kit.faces.width(number, style.face, style.size) - 1.5
            if end > start:
                pen.line(start, base, end, base, HAIR, RULE, (0.01, 1.4), 1, "leader")
            y -= self._height(kit, entry, width)

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """Between two entries that are not parts of one."""
        used, fits = 0.0, 0
        for place, entry in enumerate(self.entries):
            if used > room + 1e-6:
                break
            fits = place if not entry.under else fits
            used += self._height(kit, entry, width)
        if not 0 < fits < len(self.entries):
            return None
        head, rest = self.entries[:fits], self.entries[fits:]
        return replace(self, entries=head), replace(self, entries=rest, gap=0.0)


def contents(kit: Kit, entries: Sequence[Begin], width: float) -> Block:
    """The entries as one block, in two even columns if there are many; more than stand on a page go on over it."""
    if len(entries) < _MANY:
        return Contents(tuple(entries))
    gutter = 8.0
    wide = (width - gutter) / 2
    starts = [k for k, entry in enumerate(entries) if k and not entry.under]

    def high(part: Sequence[Begin]) -> float:
        return Contents(tuple(part)).measure(kit, wide).least

    cut = min(starts, key=lambda k: (max(high(entries[:k]), high(entries[k:])), k))
    if max(high(entries[:cut]), high(entries[cut:])) > _HIGHEST:
        return Contents(tuple(entries))
    halves = (Contents(tuple(entries[:cut])), Contents(tuple(entries[cut:])))
    return Row(tuple((1.0, half) for half in halves), gutter=gutter)


def headings(page: Page) -> str:
    """All headings of a page run together without spaces, to find what begins on it."""

    def inside(marks: Iterable[Mark]) -> Iterable[str]:
        for mark in marks:
            if isinstance(mark, Group):
                yield from inside(mark.marks)
            elif isinstance(mark, Text) and mark.role in ("title", "heading"):
                yield "".join(mark.text.split())

    return "\n".join(inside(page.marks))


def page_of(pages: Sequence[Page], title: str, start: int = 0) -> int | None:
    """The place (from 0) of the first page from `start` on that has `title` among its headings; None if none has."""
    wanted = "".join(title.split())
    for place in range(start, len(pages)):
        if wanted in headings(pages[place]).replace("\n", ""):
            return place
    return None
