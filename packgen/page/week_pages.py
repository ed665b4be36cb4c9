"""A week of the guide, in the order it is done: recall, read, tell back, look and talk, words, sheets, making."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from packgen.page.blocks import Block, Bullets, Prose, Row, Stack
from packgen.page.desk import Desk
from packgen.page.key_pages import key_heading
from packgen.page.looking import look_step
from packgen.page.model_step import model_step
from packgen.page.parents import (
    capital,
    chapter_titles,
    kind_name,
    making_title,
    minutes_of,
    other_minutes,
    part_name,
    table_minutes,
)
from packgen.page.timetable import IfRoom, Pairs, Sayings, Step
from packgen.planning.days import long_days
from packgen.planning.people import Person, by_level, names_of
from packgen.planning.ready import Ready, alike
from packgen.planning.weeks import Making, Recalled, Week
from packgen.reading.models import Word

MOST_RECALLED = 4
_BY_WORK = ("enlarging-grid", "finish-the-picture", "colour-by-number", "look-closer")


@dataclass(frozen=True, slots=True)
class Lesson:
    """What a week's page is made from. `close` sets it with small pictures; `apart` leaves models to a later page."""

    desk: Desk
    week: Week
    persons: tuple[Person, ...]
    close: bool = False
    apart: bool = False

    def turned(self, key: str, turn: int = 0, **values: object) -> str:
        """One of a wording's lines, another each week."""
        lines = self.desk.say_lines(key, **values)
        return lines[(self.week.number - 1 + turn) % len(lines)]


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
    """The days of the week's sittings, and how long they take."""
    other = other_minutes(week)
    parts = [long_days(week.dates), desk.say("week_table", minutes=table_minutes(week))]
    parts += [desk.say("week_other", minutes=other)] if other else []
    return " · ".join(part for part in parts if part)


def week_steps(lesson: Lesson, life_page: str) -> list[Block]:
    """Everything a week has, as steps."""
    desk, week = lesson.desk, lesson.week
    steps: list[Block] = []
    if week.number == 1:
        words = Prose(desk.say("life_step", page=life_page))
        steps.append(Step(part_name(desk, "life"), (words,), minutes_of(desk, week, ("life",))))
    steps += [*_recall(lesson), *_read(lesson), *_tell(lesson)]
    steps += look_step(desk, week, lesson.persons, lesson.close)
    steps += [*_words(lesson), *_ready(lesson, life_page), *_makings(lesson), *_beside(lesson), *_rest(lesson)]
    return steps


def keep(desk: Desk, persons: Sequence[Person]) -> Sayings:
    """Room for what was said, with everybody's name."""
    return Sayings(desk.say("keep_name"), tuple(person.name for person in persons))


def keep_if_room(desk: Desk, persons: Sequence[Person]) -> Block:
    """The same, where the page has room for it."""
    return IfRoom((keep(desk, persons),))


# The steps


def _recall(lesson: Lesson) -> list[Block]:
    desk, week = lesson.desk, lesson.week
    if week.number == 1 or not week.recall or not any(p.name == "recall" for s in week.sittings for p in s.parts):
        return []
    asked = [_recalled(lesson, item, turn) for turn, item in enumerate(week.recall[:MOST_RECALLED])]
    return [Step(part_name(desk, "recall"), (Bullets(tuple(asked), spread=0.15),), minutes_of(desk, week, ("recall",)))]


def _recalled(lesson: Lesson, item: Recalled, turn: int) -> str:
    key = {"fold-book": "recall_book"}.get(item.kind, f"recall_{item.kind}")
    return lesson.turned(key, turn, title=item.title)


def _read(lesson: Lesson) -> list[Block]:
    desk, week = lesson.desk, lesson.week
    if not week.chapters:
        return []
    blocks: list[Block] = []
    for chapter in week.chapters:
        pages = desk.say("read_pages", pages=chapter.pages) if chapter.pages else ""
        named = [str(work.title) for work in desk.study.works if work.id in chapter.works]
        speaks = desk.say("read_works", titles=", ".join(named)) if named else ""
        told = ". ".join(part for part in (capital(pages), speaks) if part)
        words = [Prose(str(chapter.title), "strong", gap=1.2, tight=bool(told))]
        blocks.append(Stack((*words, *([Prose(told, gap=0.0)] if told else [])), gap=1.2))
    if week == next((w for w in desk.term.weeks if w.chapters), None):
        blocks.append(Prose(desk.say("read_how"), "small", gap=0.8))
    return [Step(part_name(desk, "read"), tuple(blocks), minutes_of(desk, week, ("read",)))]


def _tell(lesson: Lesson) -> list[Block]:
    """How it is asked for, and what to listen for from each level."""
    desk, week = lesson.desk, lesson.week
    if not any(part.name == "tell" for sitting in week.sittings for part in sitting.parts):
        return []
    rows = tuple((names_of(group), lesson.turned(f"listen_{level}")) for level, group in by_level(lesson.persons))
    how = desk.say("tell_how" if week.chapters else "tell_work")
    blocks = (Prose(how, tight=True), Pairs(rows, gap=0.8))
    return [Step(part_name(desk, "tell"), blocks, minutes_of(desk, week, ("tell",)))]


def _words(lesson: Lesson) -> list[Block]:
    desk, week = lesson.desk, lesson.week
    if not week.words:
        return []
    rows = tuple((str(word.word), _meaning(lesson, word)) for word in week.words)
    half = -(-len(rows) // 2)
    plain = max(len(word) + len(means) for word, means in rows) <= 45 and len(rows) > 1
    pairs: Block = Row(((1.0, Pairs(rows[:half])), (1.0, Pairs(rows[half:]))), gutter=5.0) if plain else Pairs(rows)
    return [Step(desk.say("words_name"), (pairs,), minutes_of(desk, week, ("words",)))]


def _meaning(lesson: Lesson, word: Word) -> str:
    """What a word means, and whose word it is if it is not everybody's."""
    theirs = [p for p in lesson.persons if not word.levels or p.level in word.levels]
    if not theirs or len(theirs) == len(lesson.persons):
        return str(word.means)
    return f"{word.means} ({names_of(theirs)})"


def _ready(lesson: Lesson, life_page: str) -> list[Block]:
    """The sheets of the week for each child, those with the same ones on one line."""
    desk, week = lesson.desk, lesson.week
    groups = alike(lesson.persons, week)
    if not groups:
        return []
    rows = tuple((names_of(group), _sheet_words(lesson, needed)) for group, needed in groups)
    blocks: list[Block] = [Pairs(rows)]
    if any(due.kind == "timeline" for due in week.due) and desk.study.timeline:
        blocks.append(Prose(desk.say("timeline_hint", page=life_page), "small", gap=0.8))
    quiet = [due.kind for due in week.due if due.kind not in {making.kind for making in week.makings} | {"words"}]
    return [Step(desk.say("ready_name"), tuple(blocks), minutes_of(desk, week, quiet))]


def _sheet_words(lesson: Lesson, needed: Sequence[Ready]) -> str:
    said = []
    for ready in needed:
        name = kind_name(lesson.desk, ready.kind)
        if ready.kind == "telling":
            name = lesson.desk.say("strip_number", numbers=_strips(lesson)) if _strips(lesson) else name
        elif ready.kind in _BY_WORK and ready.about:
            name = f"{name} ({', '.join(ready.about)})"
        said.append(name)
    return capital(", ".join(said))


def _strips(lesson: Lesson) -> str:
    """The numbers of the week's chapters, as they stand on the telling strips."""
    book = lesson.desk.study.book
    numbers = [str(book.chapters.index(chapter) + 1) for chapter in lesson.week.chapters] if book else []
    return " + ".join(numbers)


def _makings(lesson: Lesson) -> list[Block]:
    """What a model comes out like, a pointer to the key of each challenge, and a word on the book."""
    desk, week = lesson.desk, lesson.week
    steps: list[Block] = []
    for making in week.makings:
        minutes = _making_minutes(lesson, making)
        if making.kind == "model" and not lesson.apart:
            steps.append(model_step(desk, desk.study.models[making.number], lesson.persons, minutes, lesson.close))
            continue
        name = desk.say("test_name" if making.kind == "challenge" and making.part > 1 else "make_name")
        blocks = [Prose(making_title(desk, making), "strong", tight=True), Prose(_making_says(lesson, making), gap=0.3)]
        if making.kind == "fold-book":
            blocks.append(Prose(desk.say("scissors"), "small", gap=0.6))
        steps.append(Step(name, tuple(blocks), minutes))
    return steps


def models_apart(lesson: Lesson) -> list[Block]:
    """The week's models, each under a heading of its own, for a page beside the week's."""
    desk = lesson.desk
    blocks: list[Block] = []
    for making in lesson.week.makings:
        if making.kind == "model":
            model = desk.study.models[making.number]
            blocks.append(key_heading(desk, str(model.title)))
            blocks.append(model_step(desk, model, lesson.persons, _making_minutes(lesson, making), False))
    return blocks


def _making_minutes(lesson: Lesson, making: Making) -> tuple[str, ...]:
    """How long a making takes, and that it wants a day of its own if no sitting is free."""
    said = [lesson.desk.say("minutes", minutes=making.minutes)]
    return (*said, lesson.desk.say("make_day")) if making.sitting is None else tuple(said)


def _making_says(lesson: Lesson, making: Making) -> str:
    desk = lesson.desk
    if making.kind == "fold-book":
        return desk.say("make_book")
    if making.kind == "model":
        return desk.say("make_model")
    if making.part == 1:
        return desk.say("make_key")
    return desk.say("test_key", week=first_week(desk, making))


def first_week(desk: Desk, making: Making) -> int:
    """The week a making begins in."""
    same = (making.kind, making.number)
    return next(week.number for week in desk.term.weeks for m in week.makings if (m.kind, m.number) == same)


def _beside(lesson: Lesson) -> list[Block]:
    """What those do who do not write yet, while the others do."""
    desk, week = lesson.desk, lesson.week
    small = tuple(person for person in lesson.persons if person.level == "first")
    if not small or len(small) == len(lesson.persons) or week.spare:
        return []
    making = [m for m in week.makings if m.kind == "challenge"]
    said = [lesson.turned("beside_talk")] if week.chapters or week.works else []
    said += [lesson.turned("beside_make")] if making else []
    if not said:
        return []
    rows = tuple((names_of(small) if not k else "", words) for k, words in enumerate(said))
    return [Step(desk.say("beside_name"), (Pairs(rows),))]


def _rest(lesson: Lesson) -> list[Block]:
    desk, week = lesson.desk, lesson.week
    if week.review:
        how = Bullets(desk.say_lines("review_how"), spread=0.2)
        return [Step(part_name(desk, "review"), (how,), minutes_of(desk, week, ("review",)))]
    return [Step(desk.say("about_spare"), (Bullets(desk.say_lines("spare_how"), spread=0.2),))] if week.spare else []
