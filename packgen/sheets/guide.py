"""The parent's guide: contents, how a week goes, the person at a glance, and each week by its moments."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from packgen.page.blocks import Block, Break
from packgen.page.contents import Entry, page_of
from packgen.page.desk import Desk, Laid, Section, Sheet
from packgen.page.flow import DoesNotFit, paginate
from packgen.page.guide_front import first_blocks, how_to_blocks, life_blocks
from packgen.page.key_pages import key_blocks, key_title
from packgen.page.lesson import Lesson
from packgen.page.marks import Page
from packgen.page.parents import height_of
from packgen.page.parents import persons as everybody
from packgen.page.timetable import Step
from packgen.page.week_pages import Moments, keep_if_room, week_moments, week_subject, week_title
from packgen.planning.people import Person
from packgen.planning.print_plan import NumberedSheet
from packgen.planning.weeks import Week
from packgen.reading.models import Challenge

SHEET = Sheet(
    title="Guide",
    about="Contents, what to read, ask and have ready in each week, and the key to each challenge.",
    levels=("parent",),
)


@dataclass(frozen=True, slots=True)
class _Part:
    """Something that the contents name: a heading of the guide's own pages, or another part of the same file."""

    title: str
    page: int = 0
    under: bool = False
    own: bool = True


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The whole guide as one sheet of many pages.

    Page numbers are those of the file, so the first pages are laid out again when the pages of all others are known.
    """
    persons = everybody(desk)
    start = _start(desk)
    parts = _parts(desk, persons)
    blank = [Entry(part.title, part.page, part.under) for part in parts]
    front = _pages(desk, _front(desk, persons, blank))
    life = page_of(front, desk.say("life_title"))
    life_page = str(start + life) if life is not None else ""
    weeks = [_week(desk, week, persons, life_page) for week in desk.term.weeks]
    pages = _pages(desk, [*_front(desk, persons, blank), *weeks])
    final = _pages(desk, _front(desk, persons, _entries(pages, parts, start)))
    pages = (*final, *pages[len(final) :])
    return (Laid("guide", SHEET.title, pages, sides="two-sided-long-edge", colour=True),)


def _pages(desk: Desk, sections: Sequence[Section]) -> tuple[Page, ...]:
    return desk.sections(sections, name=desk.say("guide_word"), loosen=3.0)


# Contents


def _own_sheets(desk: Desk) -> list[NumberedSheet]:
    """The parts of the file this guide is in, in their order; none as long as they are not known."""
    runs = [run for run in desk.runs if run.path.startswith(f"{desk.pack.folder}/") and run.face != "backs"]
    return [
        replace(sheet, first=2 * sheet.first - 1) if run.face == "fronts" else sheet
        for run in runs for sheet in run.sheets
    ]  # fmt: skip


def _start(desk: Desk) -> int:
    """The number of the guide's first page in its file."""
    return next((sheet.first for sheet in _own_sheets(desk) if sheet.kind == "guide"), 1)


def _parts(desk: Desk, persons: Sequence[Person]) -> list[_Part]:
    """What the contents name, in the order of the file."""
    own = [_Part(desk.say("how_title")), _Part(desk.say("life_title"))]
    for week in desk.term.weeks:
        own.append(_Part(week_title(desk, week)))
        own += [_Part(key_title(desk, challenge), under=True) for challenge in _begun(desk, week)]
    others = _own_sheets(desk)
    before = [_Part(s.title, s.first, own=False) for s in others if s.kind != "guide" and s.first < _start(desk)]
    after = [
        _Part(s.title if not s.part else s.about, s.first, bool(s.part), own=False)
        for s in others if s.kind != "guide" and s.first > _start(desk)
    ]  # fmt: skip
    return [*before, *own, *after]


def _entries(pages: Sequence[Page], parts: Sequence[_Part], start: int) -> list[Entry]:
    """The parts with their pages; the guide's own come in the order of the contents."""
    entries: list[Entry] = []
    at = 0
    for part in parts:
        number = part.page
        if part.own:
            found = page_of(pages, part.title, at)
            at = at if found is None else found
            number = 0 if found is None else start + found
        entries.append(Entry(part.title, number, part.under))
    return entries


# The front pages


def _front(desk: Desk, persons: tuple[Person, ...], entries: Sequence[Entry]) -> list[Section]:
    """Contents, how a week goes, the person at a glance: each on pages of its own, or together where there is room."""
    head = desk.head(desk.say("title"), desk.say("subject"), "letter", date=False)
    how_name, life_name = desk.say("how_title"), desk.say("life_title")
    first, how = first_blocks(desk, persons, entries), how_to_blocks(desk)
    life_head = desk.head(life_name, desk.say("life_subject"), "fan", date=False)
    life = life_blocks(desk, persons, desk.room(life_head, 0))
    both = [*first, Step(how_name, tuple(how), wide=True)]
    sections = [Section(head, tuple(both))]
    if height_of(desk, both) > desk.room(head, 0):
        how_head = desk.head(how_name, desk.say("how_subject"), "strip", date=False)
        sections = [Section(head, tuple(first)), Section(how_head, tuple(how))]
    return [*sections, Section(life_head, tuple(life))]


# The weeks


def _begun(desk: Desk, week: Week) -> list[Challenge]:
    """The challenges that begin in a week."""
    return [
        desk.study.challenges[making.number] for making in week.makings
        if making.kind == "challenge" and making.part == 1
    ]  # fmt: skip


def _week(desk: Desk, week: Week, persons: tuple[Person, ...], life_page: str) -> Section:
    """A week: before, at the table and later, with room for what was said, then the keys of what begins in it."""
    head = desk.head(week_title(desk, week), week_subject(desk, week), _emblem(week), date=False)
    lesson = Lesson(desk, week, persons, life_page=life_page)
    blocks = _moments(lesson, desk.room(head, 0), desk.room(head, 1))
    for challenge in _begun(desk, week):
        blocks += [Break(), *key_blocks(desk, challenge, persons, desk.room(head, 1))]
    return Section(head, tuple(blocks))


def _moments(lesson: Lesson, first: float, next_: float) -> list[Block]:
    """The moments on as few pages as they take, parted between two of them where that costs no page more.

    `first` and `next_` are the heights of the week's first page and of the others.
    """
    desk = lesson.desk
    kept = keep_if_room(desk, lesson.persons)
    near, far = (week_moments(replace(lesson, close=close)) for close in (True, False))
    for moments in (far, near):
        if height_of(desk, moments.all) <= first:
            return [*moments.all, kept]
    for moments in (far, near):
        for before, after in moments.halves:
            if height_of(desk, before) <= first and height_of(desk, after) <= next_:
                left = first - height_of(desk, before), next_ - height_of(desk, after)
                return [*before, *([kept] if left[0] > left[1] else []), Break(), *after, kept]

    def count(moments: Moments) -> int:
        try:
            return len(paginate(desk.kit, moments.all, desk.live_width, lambda k: first if k == 0 else next_))
        except DoesNotFit:  # the desk tells what is too high for a page
            return len(moments.all)

    return [*min(far, near, key=count).all, kept]


def _emblem(week: Week) -> str:
    """A week of making has another emblem than a week of reading."""
    kinds = {making.kind for making in week.makings}
    if "challenge" in kinds:
        return "wheel"
    if "model" in kinds:
        return "house"
    return "book" if week.chapters else "sun" if week.review else "bird"
