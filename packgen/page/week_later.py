"""What is done later in a week of the guide: each child's own sheets, makings, jobs for the youngest."""

from __future__ import annotations

from collections.abc import Sequence

from packgen.page.blocks import Block, Boxed, Bullets, Prose
from packgen.page.lesson import TALKED, Lesson
from packgen.page.model_step import general_care_in_front, model_care, model_step
from packgen.page.parents import making_title
from packgen.page.timetable import Pairs, Step
from packgen.page.week_answers import answer_steps
from packgen.page.week_sheets import numbers_for
from packgen.page.week_talk import words_step
from packgen.planning.people import names_of
from packgen.planning.weeks import Making


def later_steps(lesson: Lesson) -> list[Block]:
    """Everything that is not done at the table, in the order it is likely to be done."""
    steps = [*_own_sheets(lesson), *words_step(lesson), *answer_steps(lesson)]
    steps += making_steps(lesson, at_table=False)
    return [*steps, *_beside(lesson), *_spare(lesson)]


def table_sheets(lesson: Lesson) -> list[Block]:
    """The sheets that are done in a sitting, if it holds any."""
    desk = lesson.desk
    kinds = {making.kind for making in lesson.week.makings} | set(TALKED)
    held = [part for sitting in lesson.week.sittings for part in sitting.parts if part.name not in kinds]
    if not held:
        return []
    minutes = desk.say("minutes", minutes=sum(part.minutes for part in held))
    return [Step(desk.say("sheets_word"), (Prose(desk.say("table_sheets", count=len(lesson.persons))),), (minutes,))]


def making_steps(lesson: Lesson, *, at_table: bool) -> list[Block]:
    """The makings that have a sitting of their own, or those that have not; after models what to take care of."""
    makings = [making for making in lesson.week.makings if (making.sitting is not None) is at_table]
    models = [making for making in makings if making.kind == "model"]
    others = [_making(lesson, making) for making in makings if making.kind != "model"]
    return [*(_model(lesson, making) for making in models), *_model_care(lesson, models), *others]


def _model(lesson: Lesson, making: Making) -> Step:
    model = lesson.desk.study.models[making.number]
    return model_step(lesson.desk, model, lesson.persons, _minutes(lesson, making), lesson.close)


def _model_care(lesson: Lesson, makings: Sequence[Making]) -> list[Block]:
    """The cautions of all models of a page in one box, each once."""
    desk = lesson.desk
    care = [words for m in makings for words in model_care(desk, desk.study.models[m.number], lesson.persons)]
    rules = [desk.say("care_rules")] if makings and general_care_in_front(desk) else []
    if not care and not rules:
        return []
    words = " ".join((*dict.fromkeys(care), *rules, desk.say("care_last")))
    return [Boxed(Prose(words), "caution", desk.say("care_title"), gap=2.0, pad=2.2)]


def _making(lesson: Lesson, making: Making) -> Step:
    """A challenge, whose key has all else, or the small book."""
    desk = lesson.desk
    again = making.kind == "challenge" and making.part > 1
    blocks: list[Block] = [
        Prose(making_title(desk, making), "strong", tight=True), Prose(_says(lesson, making), gap=0.3)
    ]  # fmt: skip
    numbers = numbers_for(desk, lesson.persons, making.kind, making.title) if making.kind == "challenge" else ""
    if numbers:
        blocks.append(Prose(desk.say("make_sheets", numbers=numbers), gap=0.6))
    if making.kind == "fold-book":
        blocks.append(Prose(desk.say("scissors"), "small", gap=0.6))
    return Step(desk.say("test_name" if again else "make_name"), tuple(blocks), _minutes(lesson, making))


def _minutes(lesson: Lesson, making: Making) -> tuple[str, ...]:
    """How long a making takes, and that it wants a day of its own if no sitting is free."""
    said = (lesson.desk.say("minutes", minutes=making.minutes),)
    return (*said, lesson.desk.say("make_day")) if making.sitting is None else said


def _says(lesson: Lesson, making: Making) -> str:
    desk = lesson.desk
    if making.kind == "fold-book":
        return desk.say("make_book")
    if making.part == 1:
        return desk.say("make_key" if making.parts == 1 else "make_first_half")
    return desk.say("test_key", week=first_week(lesson, making))


def first_week(lesson: Lesson, making: Making) -> int:
    """The week a making begins in."""
    same = (making.kind, making.number)
    return next(week.number for week in lesson.desk.term.weeks for m in week.makings if (m.kind, m.number) == same)


def _own_sheets(lesson: Lesson) -> list[Block]:
    minutes = lesson.sheet_minutes
    if not minutes:
        return []
    desk = lesson.desk
    return [
        Step(
            desk.say("sheets_word"),
            (Prose(desk.say("own_sheets", count=len(lesson.persons))),),
            (desk.say("minutes", minutes=minutes),),
        )
    ]


def _beside(lesson: Lesson) -> list[Block]:
    """What those do who do not write yet, while the others do."""
    desk, week = lesson.desk, lesson.week
    small = tuple(person for person in lesson.persons if person.level == "first")
    if not small or len(small) == len(lesson.persons) or week.spare:
        return []
    said = []
    if any(work.image for work in (*week.works, *week.again)):
        said.append(lesson.turned("beside_picture"))
    elif week.chapters:
        said.append(lesson.turned("beside_story"))
    if any(making.kind == "challenge" for making in week.makings):
        said.append(lesson.turned("beside_make"))
    if not said:
        return []
    rows = tuple((names_of(small) if not k else "", words) for k, words in enumerate(said))
    return [Step(desk.say("beside_name"), (Pairs(rows),))]


def _spare(lesson: Lesson) -> list[Block]:
    desk = lesson.desk
    if not lesson.week.spare:
        return []
    return [Step(desk.say("about_spare"), (Bullets(desk.say_lines("spare_how"), spread=0.2),))]
