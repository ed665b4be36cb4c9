"""A strip for each chapter of the book: recall last week, tell the chapter back, draw, write."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from packgen.page.blocks import Block, Break, DrawBox, Kit, Lines, Prose, Row, Span, Stack, gap_of, shares
from packgen.page.desk import Desk, Laid, Sheet
from packgen.page.frame import Head
from packgen.page.look import RULE, THIN, Ruling
from packgen.page.marks import Stroke
from packgen.page.pen import Pen
from packgen.page.text import fit
from packgen.reading.models import Chapter

SHEET = Sheet(
    title="Telling",
    about="For each chapter read aloud a strip to recall, tell back, draw and write.",
)

# Lines for the adult who writes down what the child tells.
_ADULT = Ruling(3.0, 9.0, "one")


@dataclass(frozen=True, slots=True)
class _Strip:
    """A chapter's strip: a number on a folded tab, its title, and what is to be done, as high as its share."""

    number: int | None
    title: str
    note: str
    blocks: tuple[Block, ...]
    gap: float | None = None
    tight: bool = False

    def _head(self, kit: Kit) -> float:
        return max(9.0, kit.look.strong.leading * 1.25)

    def measure(self, kit: Kit, width: float) -> Span:
        """At least what its parts need; it grows without limit."""
        spans = [b.measure(kit, width - 8.0) for b in self.blocks]
        gaps = sum(gap_of(kit, b) for b in self.blocks[1:])
        return Span(self._head(kit) + sum(s.least for s in spans) + gaps + 7.0, 1e6, 1.0)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """The frame, its head, and its parts under it."""
        look = kit.look
        head = self._head(kit)
        pen.box(x, top - height, width, height, Stroke(THIN, RULE), corner=look.corner, role="strip")
        pen.polygon([(x, top), (x + head * 1.5, top), (x + head * 1.1, top - head), (x, top - head)],
                    Stroke(THIN, 0.3), 0.9, role="ornament")  # fmt: skip
        style = look.strong
        if self.number:
            pen.text(x + head * 0.6, top - head / 2 - style.size * 0.33, str(self.number), style, align="centre")
        note = kit.faces.width(self.note, look.small.face, look.small.size) if self.note else 0.0
        room = width - head * 1.5 - 8.0 - note
        fitted = fit(kit.faces, self.title, style, room, head * 1.1, style.size * 0.55)
        pen.lines(x + head * 1.5 + 2.0, top - (head - fitted.height) / 2, fitted.lines, fitted.style, role="heading")
        if self.note:
            pen.text(x + width - 4.0, top - head / 2 - look.small.size * 0.3, self.note, look.small, align="right")
        room = height - head - 7.0
        heights = shares(kit, self.blocks, width - 8.0, room)
        y = top - head - 3.5
        for k, (block, high) in enumerate(zip(self.blocks, heights, strict=True)):
            y -= gap_of(kit, block) if k else 0.0
            block.draw(kit, pen, x + 4.0, y, width - 8.0, high)
            y -= high

    def split(self, kit: Kit, width: float, room: float) -> None:
        """Never."""


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """Strips for all chapters, two on a page; nothing if there is no book."""
    book = desk.study.book
    if not book or not book.chapters:
        return ()
    author = f", {book.author}" if book.author else ""
    head = desk.head(desk.say("title"), f"{book.title}{author}", "book", date=False)
    strips = [_strip(desk, k, chapter) for k, chapter in enumerate(book.chapters, 1)]
    pages = desk.pages(head, _paged(desk, head, strips), name=head.title)
    sides = "one-sided" if desk.level == "first" else "two-sided-long-edge"
    return (Laid("telling", f"{SHEET.title}: {book.title}", pages, sides=sides),)


def _paged(desk: Desk, head: Head, strips: list[_Strip]) -> list[Block]:
    """The strips with page breaks, two to a page where two fit; a place left over is for the whole book."""
    if desk.level == "first":
        return list(strips)
    whole = _whole(desk)
    blocks: list[Block] = []
    waiting = list(strips)
    for page in range(len(strips)):
        here = waiting[:1]
        other = waiting[1] if len(waiting) > 1 else whole
        if _high(desk, (*here, other)) <= desk.room(head, page):
            here = [*here, other]
        blocks += [*([Break()] if page else []), *here]
        waiting = waiting[2:] if len(here) > 1 else waiting[1:]
        if not waiting:
            break
    return blocks


def _high(desk: Desk, strips: Sequence[_Strip]) -> float:
    spans = [strip.measure(desk.kit, desk.live_width) for strip in strips]
    return sum(span.least for span in spans) + sum(gap_of(desk.kit, strip) for strip in strips[1:])


def _strip(desk: Desk, number: int, chapter: Chapter) -> _Strip:
    week = next((w.number for w in desk.term.weeks if chapter in w.chapters), None)
    notes = [desk.say("pages_note", pages=chapter.pages)] if chapter.pages else []
    notes += [desk.say("week_note", number=week)] if week and desk.term.dated else []
    parts = {"first": _first, "younger": _younger}.get(desk.level, _older)
    return _Strip(number, str(chapter.title), " · ".join(notes), parts(desk, number))


def _whole(desk: Desk) -> _Strip:
    """The strip for the whole book, when the last chapter is told."""
    if desk.level == "younger":
        return _Strip(None, desk.say("whole_title"), "", _drawn(desk, "whole_draw", "whole_tell"))
    return _Strip(None, desk.say("whole_title"), "", _written(desk, "whole_draw", "whole_tell", "whole_ask"))


def _first(desk: Desk, number: int) -> tuple[Block, ...]:
    return (
        DrawBox(desk.say("draw"), least=84.0),
        Stack((Prose(desk.say("dictate"), "small"), Lines(4, 6, ruling=_ADULT, gap=0.5, grow=6.0))),
    )


def _younger(desk: Desk, number: int) -> tuple[Block, ...]:
    return _drawn(desk, "draw", "tell")


def _drawn(desk: Desk, draw: str, tell: str) -> tuple[Block, ...]:
    told = Stack((Prose(desk.say(tell), "strong", tight=True), Lines(2, 4, gap=1.0)))
    return (DrawBox(desk.say(draw), least=30.0), told)


def _older(desk: Desk, number: int) -> tuple[Block, ...]:
    recall: tuple[Block, ...] = ()
    if number > 1:
        recall = (Stack((Prose(desk.say("recall"), "label", tight=True), Lines(2, 2, gap=0.0))),)
    return (*recall, *_written(desk, "draw", "tell", "ask"))


def _written(desk: Desk, draw: str, tell: str, ask: str) -> tuple[Block, ...]:
    """Lines to tell on with a place to sketch beside them, and a question."""
    told = Stack((Prose(desk.say(tell), "label", tight=True), Lines(3, gap=0.0)), gap=3.0)
    sketch: Block = DrawBox(desk.say(draw), least=30.0)
    left_handed = bool(desk.child and desk.child.left_handed)
    cells = ((1.9, told), (1.0, sketch))
    question = Stack((Prose(desk.say(ask), "label", tight=True), Lines(2, 2, gap=0.0)), gap=3.0)
    return (Row(cells[::-1] if left_handed else cells, gutter=5.0, gap=3.0), question)
