"""The parent's guide: the person at a glance, and each week by its moments, with the keys of its challenges."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from packgen.page.blocks import Block, Break
from packgen.page.contents import page_of
from packgen.page.desk import Desk, Laid, Section, Sheet
from packgen.page.flow import DoesNotFit, paginate
from packgen.page.guide_front import life_blocks
from packgen.page.key_pages import key_blocks, key_title
from packgen.page.lesson import Lesson
from packgen.page.marks import Page
from packgen.page.parents import height_of
from packgen.page.parents import spoken_of as everybody
from packgen.page.week_pages import Moments, keep, notes_if_room, week_moments, week_subject, week_title
from packgen.planning.people import Person
from packgen.planning.print_plan import Begin
from packgen.planning.weeks import Week
from packgen.reading.models import Challenge

SHEET = Sheet(
    title="Guide",
    about="The person at a glance, what to read, ask and have ready in each week, and the key to each challenge.",
    levels=("parent",),
)


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The whole guide as one sheet of many pages."""
    persons = everybody(desk)
    life = desk.say("life_title")
    life_head = desk.head(life, desk.say("life_subject"), "fan", date=False)
    told = Section(life_head, tuple(life_blocks(desk, persons, desk.room(life_head, 0))))
    weeks = [_week(desk, week, persons, str(_start(desk))) for week in desk.term.weeks]
    pages = desk.sections([told, *weeks], name=desk.say("guide_word"), loosen=3.0)
    begins = _begins(pages, [Begin(life, 1), *_parts(desk)])
    return (Laid("guide", SHEET.title, pages, sides="two-sided-long-edge", colour=True, begins=begins),)


def _start(desk: Desk) -> int:
    """The number of the guide's first page in its file; 1 as long as that is not known."""
    runs = [run for run in desk.runs if run.path.startswith(f"{desk.pack.folder}/") and run.face != "backs"]
    for run in runs:
        for sheet in run.sheets:
            if sheet.kind == "guide":
                return 2 * sheet.first - 1 if run.face == "fronts" else sheet.first
    return 1


def _parts(desk: Desk) -> list[Begin]:
    """What begins in the guide, in order, the pages still to be found."""
    found: list[Begin] = []
    for week in desk.term.weeks:
        found.append(Begin(week_title(desk, week), 0))
        found += [Begin(key_title(desk, challenge), 0, True) for challenge in _begun(desk, week)]
    return found


def _begins(pages: Sequence[Page], parts: Sequence[Begin]) -> tuple[Begin, ...]:
    """The parts with the pages they begin on, each looked for from where the one before it begins."""
    begins: list[Begin] = []
    at = 0
    for part in parts:
        found = page_of(pages, part.title, at)
        if found is not None:
            at = found
            begins.append(replace(part, page=found + 1))
    return tuple(begins)


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

    Room to keep what was said is at the end of every week. `first` and `next_` are the heights of the week's first
    page and of the others.
    """
    desk = lesson.desk
    kept = keep(desk, lesson.persons)
    near, far = (week_moments(replace(lesson, close=close)) for close in (True, False))
    for moments in (far, near):
        if height_of(desk, [*moments.all, kept]) <= first:
            return [*moments.all, kept]
    for moments in (far, near):
        for before, after in moments.halves:
            if height_of(desk, before) <= first and height_of(desk, [*after, kept]) <= next_:
                return [*before, notes_if_room(desk), Break(), *after, kept]
    for moments in (far, near):
        for k in range(len(moments.table) - 1, 1, -1):  # after a whole step: the first block is the moment's heading
            before, after = (*moments.before, *moments.table[:k]), (*moments.table[k:], *moments.later)
            if height_of(desk, before) <= first and height_of(desk, [*after, kept]) <= next_:
                return [*before, notes_if_room(desk), Break(), *after, kept]

    def count(moments: Moments) -> int:
        blocks = [*moments.all, kept]
        try:
            return len(paginate(desk.kit, blocks, desk.live_width, lambda k: first if k == 0 else next_))
        except DoesNotFit:  # the desk tells what is too high for a page
            return len(blocks)

    best = min(far, near, key=count)
    if count(best) > 2 and _each_on_a_page(desk, far, kept, first, next_):
        return [*far.before, notes_if_room(desk), Break(), *far.table, Break(), *far.later, kept]
    return [*best.all, kept]


def _each_on_a_page(desk: Desk, moments: Moments, kept: Block, first: float, next_: float) -> bool:
    """True if each moment of a week has a page that it fits: better than three pages parted anywhere."""
    parts = ((moments.before, first), (moments.table, next_), ((*moments.later, kept), next_))
    return all(part and height_of(desk, part) <= room for part, room in parts)


def _emblem(week: Week) -> str:
    """A week of making has another emblem than a week of reading."""
    kinds = {making.kind for making in week.makings}
    if "challenge" in kinds:
        return "wheel"
    if "model" in kinds:
        return "house"
    return "book" if week.chapters else "sun" if week.review else "bird"
