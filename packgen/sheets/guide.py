"""The parent's guide: how to use the pack, the person at a glance, and a page or an opening for each week."""

from __future__ import annotations

from dataclasses import replace

from packgen.page.blocks import Block, Break
from packgen.page.desk import Desk, Laid, Section, Sheet
from packgen.page.guide_front import how_to_blocks, life_blocks
from packgen.page.key_pages import key_blocks
from packgen.page.parents import height_of
from packgen.page.parents import persons as everybody
from packgen.page.timetable import Step
from packgen.page.week_pages import Lesson, keep, keep_if_room, models_apart, week_steps, week_subject, week_title
from packgen.planning.people import Person
from packgen.planning.weeks import Week

SHEET = Sheet(
    title="Guide",
    about="What to ask, read, show and have ready in each week, and the key to each challenge.",
    levels=("parent",),
)


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The whole guide as one sheet of many pages."""
    persons = everybody(desk)
    name = desk.say("guide_word")
    life = desk.say("life_title")
    weeks = [_week(desk, week, persons, life) for week in desk.term.weeks]
    pages = desk.sections((*_front(desk, persons, life), *weeks), name=name, loosen=3.0)
    return (Laid("guide", SHEET.title, pages, sides="two-sided-long-edge", colour=True),)


def _front(desk: Desk, persons: tuple[Person, ...], life: str) -> list[Section]:
    """How to use the pack and the person at a glance, each on pages of its own, or on one if there is little to say."""
    head = desk.head(desk.say("title"), desk.say("subject"), "letter", date=False)
    how, glance = how_to_blocks(desk, persons), life_blocks(desk, persons)
    both = [*how, Step(life, tuple(glance), wide=True)]
    if height_of(desk, both) <= desk.room(head, 0):
        return [Section(head, tuple(both))]
    life_head = desk.head(life, desk.say("life_subject"), "fan", date=False)
    return [Section(head, tuple(how)), Section(life_head, tuple(glance), opening=True)]


def _week(desk: Desk, week: Week, persons: tuple[Person, ...], life: str) -> Section:
    """A week: its page with room for what was said, then the keys of the challenges that begin in it."""
    head = desk.head(week_title(desk, week), week_subject(desk, week), _emblem(week), date=False)
    blocks = _week_page(Lesson(desk, week, persons), life, desk.room(head, 0))
    for making in week.makings:
        if making.kind == "challenge" and making.part == 1:
            blocks += [Break(), *key_blocks(desk, desk.study.challenges[making.number], persons, desk.room(head, 1))]
    return Section(head, tuple(blocks), opening=True, more=(keep(desk, persons),))


def _week_page(lesson: Lesson, life: str, room: float) -> list[Block]:
    """All steps on one page, set closer if need be; else the models go on a page of their own beside it."""
    kept = keep_if_room(lesson.desk, lesson.persons)
    for close in (False, True):
        steps = week_steps(replace(lesson, close=close), life)
        if height_of(lesson.desk, steps) <= room:
            return [*steps, kept]
    models = models_apart(lesson)
    if not models:
        return [*week_steps(lesson, life), kept]
    return [*week_steps(replace(lesson, apart=True), life), kept, Break(), *models, kept]


def _emblem(week: Week) -> str:
    """A week of making has another emblem than a week of reading."""
    kinds = {making.kind for making in week.makings}
    if "challenge" in kinds:
        return "wheel"
    if "model" in kinds:
        return "house"
    return "book" if week.chapters else "sun" if week.review else "bird"
