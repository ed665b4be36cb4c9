"""A week of the guide by its moments: before, at the table, later in the week, to keep."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from packgen.page.blocks import Block
from packgen.page.desk import Desk
from packgen.page.lesson import Lesson
from packgen.page.model_step import model_things
from packgen.page.moments import Moment
from packgen.page.needed import needed_by_all
from packgen.page.parents import capital, chapter_titles, kind_name, making_title, shortened, table_minutes
from packgen.page.timetable import IfRoom, Pairs, Sayings, Step
from packgen.page.week_later import later_steps, making_steps, table_sheets
from packgen.page.week_sheets import week_lists
from packgen.page.week_talk import life_step, read_step, talk_steps
from packgen.planning.days import long_days
from packgen.planning.notes import LONG_CHAPTER
from packgen.planning.people import Person
from packgen.planning.weeks import Making, Week

_MOST_NOTES = 12  # lines; more would only be empty


@dataclass(frozen=True, slots=True)
class Moments:
    """A week's blocks by moment, each with its heading; empty where nothing is to be done."""

    before: tuple[Block, ...]
    table: tuple[Block, ...]
    later: tuple[Block, ...]

    @property
    def all(self) -> tuple[Block, ...]:
        """Every block, in the order of the week."""
        return (*self.before, *self.table, *self.later)

    @property
    def halves(self) -> tuple[tuple[tuple[Block, ...], tuple[Block, ...]], ...]:
        """The ways to part the week between two moments, the better first."""
        return ((*self.before, *self.table), self.later), (self.before, (*self.table, *self.later))


def week_title(desk: Desk, week: Week) -> str:
    """The week's number, and what it is about in a few words."""
    about = chapter_titles(week)
    if not about and week.makings:
        about = " · ".join(dict.fromkeys(making_title(desk, making) for making in week.makings))
    if not about and week.works:
        about = " · ".join(str(work.title) for work in week.works)
    if not about:
        about = desk.say("about_review" if week.review else "about_spare" if week.spare else "about_life")
    if week.number > 1 and week.due and not (week.chapters or week.makings or week.works or week.review):
        about = capital(", ".join(kind_name(desk, kind) for kind in week.sheets))
    return desk.say("week_title", number=week.number, about=about)


def week_subject(desk: Desk, week: Week) -> str:
    """The days of the week's sittings; without dates what is read or looked at beside the title's own."""
    return long_days(week.dates)


def week_moments(lesson: Lesson) -> Moments:
    """Everything a week has."""
    return Moments(tuple(_before(lesson)), tuple(_table(lesson)), tuple(_later(lesson)))


def keep(desk: Desk, persons: Sequence[Person]) -> Sayings:
    """Room for what was said, with everybody's name."""
    return Sayings(desk.say("keep_name"), tuple(person.name for person in persons))


def notes_if_room(desk: Desk) -> Block:
    """Lines for what the parent wants to remember for the sitting, where the page has room for them."""
    return IfRoom((Sayings(desk.say("notes_name"), (), most=_MOST_NOTES),))


def _headed(name: str, note: str, steps: Sequence[Block]) -> list[Block]:
    """Steps under the heading of their moment; nothing if there are none."""
    if not steps:
        return []
    first, *others = steps
    return [Moment(name, note), replace(first, gap=1.6) if isinstance(first, Step) else first, *others]


def _before(lesson: Lesson) -> list[Block]:
    """What is read beforehand, laid ready, and found or bought."""
    desk = lesson.desk
    steps = [] if lesson.at_table("life") else life_step(lesson)
    steps += [] if lesson.at_table("read") else read_step(lesson)
    lists = week_lists(desk, lesson.persons, lesson.week)
    if lists:
        steps.append(Step(desk.say("ready_name"), (lists,), (desk.say("ready_note"),), wide=True))
    things = _things(lesson)
    if things:
        note = desk.say("find_note", count=len(lesson.persons))
        steps.append(Step(desk.say("find_name"), (Pairs(things, most=0.3),), (note,)))
    note = (
        desk.say("before_aloud", minutes=lesson.before_minutes, evenings=_evenings(lesson))
        if lesson.before_minutes
        else desk.say("before_note")
    )
    return _headed(desk.say("moment_before"), note, steps)


def _evenings(lesson: Lesson) -> int:
    """Over how many evenings the chapters of a week are read: one each where all are too long for one evening."""
    chapters = len(lesson.week.chapters)
    return chapters if chapters > 1 and lesson.before_minutes > LONG_CHAPTER else 1


def _table(lesson: Lesson) -> list[Block]:
    """What is done together, with the minutes of just that; longer sittings than planned are said."""
    desk, week = lesson.desk, lesson.week
    steps = [*talk_steps(lesson), *table_sheets(lesson), *making_steps(lesson, at_table=True)]
    minutes = table_minutes(week)
    key = "table_over" if week.number in desk.term.over else "table_note"
    note = desk.say(key, minutes=minutes, planned=desk.term.minutes) if minutes else ""
    return _headed(desk.say("moment_table"), note, steps)


def _later(lesson: Lesson) -> list[Block]:
    desk = lesson.desk
    parts = [("later_sheets", lesson.sheet_minutes), ("later_making", lesson.making_minutes)]
    note = ", ".join(desk.say(key, minutes=minutes, count=len(lesson.persons)) for key, minutes in parts if minutes)
    return _headed(desk.say("moment_later"), note, later_steps(lesson))


def _things(lesson: Lesson) -> tuple[tuple[str, str], ...]:
    """What each making of the week needs, for all who take part in it; a challenge of two weeks in its first."""
    rows = []
    for making in lesson.week.makings:
        words = _needed(lesson, making)
        if words and making.part == 1:
            rows.append((shortened(making_title(lesson.desk, making), 34), words))
    return tuple(rows)


def _needed(lesson: Lesson, making: Making) -> str:
    desk = lesson.desk
    if making.kind == "fold-book":
        return desk.say("book_things")
    if making.kind == "model":
        return ", ".join(model_things(desk, making.number, lesson.persons))
    return ", ".join(needed_by_all(desk, making.kind, making.number, lesson.persons))
