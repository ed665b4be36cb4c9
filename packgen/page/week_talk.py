"""What is talked of in a week of the guide: recall, read, tell back, look, words, look back."""

from __future__ import annotations

from packgen.page.blocks import Block, Bullets, Prose, Row, Stack
from packgen.page.lesson import Lesson
from packgen.page.looking import look_step
from packgen.page.parents import capital, part_name
from packgen.page.timetable import Pairs, Step
from packgen.page.week_sheets import sheets_of
from packgen.planning.people import by_level, names_of
from packgen.planning.plan import life_at
from packgen.planning.weeks import Recalled
from packgen.reading.models import LEVELS, Word

MOST_RECALLED = 4


def talk_steps(lesson: Lesson) -> list[Block]:
    """Everything that is done together at the table, in order."""
    steps = [*_recall(lesson)]
    steps += life_step(lesson) if lesson.at_table("life") else []
    steps += read_step(lesson) if lesson.at_table("read") else []
    steps += _tell_and_look(lesson)
    return [*steps, *_review(lesson)]


def _tell_and_look(lesson: Lesson) -> list[Block]:
    """A chapter is told back before a picture is looked at; without one it is the picture that is told."""
    tell, look = _tell(lesson), look_step(lesson.desk, lesson.week, lesson.persons, lesson.close)
    return [*tell, *look] if lesson.week.chapters else [*look, *tell]


def life_step(lesson: Lesson) -> list[Block]:
    """In the first week the life is told."""
    desk = lesson.desk
    if lesson.week.number != 1:
        return []
    words = Prose(desk.say("life_step", page=lesson.life_page, names=_life_names(lesson)))
    return [Step(part_name(desk, "life"), (words,), lesson.minutes(("life",)))]


def _life_names(lesson: Lesson) -> str:
    """Those whose wording of the life suits all at one table: the youngest but the smallest; none if there is one."""
    told = {level: str(life_at(lesson.desk.study, level) or "") for level, _ in by_level(lesson.persons)}
    if len(set(told.values())) < 2:
        return ""
    level, group = next(((lv, g) for lv, g in by_level(lesson.persons) if lv != "first"), by_level(lesson.persons)[0])
    return names_of([person for lv, g in by_level(lesson.persons) if told[lv] == told[level] for person in g] or group)


def read_step(lesson: Lesson) -> list[Block]:
    """What to read aloud: the book by its title, the chapter, its pages."""
    desk, week = lesson.desk, lesson.week
    if not week.chapters or not desk.study.book:
        return []
    blocks: list[Block] = [Prose(desk.say("read_from", book=desk.study.book.title), tight=True)]
    for chapter in week.chapters:
        number = desk.study.book.chapters.index(chapter) + 1
        pages = desk.say("read_pages", pages=chapter.pages) if chapter.pages else ""
        named = [str(work.title) for work in desk.study.works if work.id in chapter.works]
        speaks = desk.say("read_works", titles=", ".join(named)) if named else ""
        told = " ".join(f"{part.rstrip('.')}." for part in (capital(pages), speaks) if part)
        title = Prose(desk.say("read_chapter", number=number, title=chapter.title), "strong", tight=bool(told))
        blocks.append(Stack((title, *([Prose(told, gap=0.0)] if told else [])), gap=0.8))
    beside = _at_hand(lesson)
    if beside:
        blocks.append(Prose(desk.say("read_sheets", numbers=beside), "small", gap=0.8))
    if week == next((w for w in desk.term.weeks if w.chapters), None):
        blocks.append(Prose(desk.say("read_how"), "small", gap=0.8))
    return [Step(part_name(desk, "read"), tuple(blocks), lesson.minutes(("read",)))]


def _at_hand(lesson: Lesson) -> str:
    """The sheets that the older have at hand while they listen: what was last time, and words to guess at."""
    desk, week = lesson.desk, lesson.week
    said = []
    for person in lesson.persons:
        kinds = ("telling", "words") if any(person.level in (w.levels or LEVELS) for w in week.words) else ("telling",)
        numbers = [s.number for s in sheets_of(desk, person) if s.kind in kinds and s.number and not person.young]
        said += [f"{person.name} {', '.join(map(str, sorted(numbers)))}"] if numbers else []
    return " · ".join(said)


def words_step(lesson: Lesson) -> list[Block]:
    """The week's words and what they mean."""
    desk, week = lesson.desk, lesson.week
    levels = {person.level for person in lesson.persons}
    wanted = [word for word in week.words if not (word.levels and levels) or levels & set(word.levels)]
    if not wanted:
        return []
    rows = tuple((str(word.word), _meaning(lesson, word)) for word in wanted)
    half = -(-len(rows) // 2)
    plain = max(len(word) + len(means) for word, means in rows) <= 45 and len(rows) > 1
    pairs: Block = Row(((1.0, Pairs(rows[:half])), (1.0, Pairs(rows[half:]))), gutter=5.0) if plain else Pairs(rows)
    return [Step(desk.say("words_name"), (pairs,))]


def _recall(lesson: Lesson) -> list[Block]:
    desk, week = lesson.desk, lesson.week
    if week.number == 1 or not week.recall or not lesson.at_table("recall"):
        return []
    asked = tuple(_recalled(lesson, item, turn) for turn, item in enumerate(week.recall[:MOST_RECALLED]))
    return [Step(part_name(desk, "recall"), (Bullets(asked, spread=0.1),), lesson.minutes(("recall",)))]


def _recalled(lesson: Lesson, item: Recalled, turn: int) -> str:
    key = {"fold-book": "recall_book"}.get(item.kind, f"recall_{item.kind}")
    made = lesson.desk.say("recall_if_made") if _by_choice(lesson, item) else ""
    return lesson.turned(key, turn, title=item.title, made=made)


def _by_choice(lesson: Lesson, item: Recalled) -> bool:
    """True for a making that shares its week with another: one of them may have been left out."""
    weeks = [w for w in lesson.desk.term.weeks if any(m.title == item.title and m.kind == item.kind for m in w.makings)]
    return any(len(week.makings) > 1 for week in weeks)


def _tell(lesson: Lesson) -> list[Block]:
    """How it is asked for, and what to listen for from each level."""
    desk, week = lesson.desk, lesson.week
    if not lesson.at_table("tell"):
        return []
    kind, how = ("listen", "tell_how") if week.chapters else ("listen_work", "tell_work")
    rows = tuple((names_of(group), lesson.turned(f"{kind}_{level}")) for level, group in by_level(lesson.persons))
    return [
        Step(
            part_name(desk, "tell"), (Prose(desk.say(how), tight=True), Pairs(rows, gap=0.6)), lesson.minutes(("tell",))
        )
    ]


def _meaning(lesson: Lesson, word: Word) -> str:
    """What a word means, and whose word it is if it is not everybody's."""
    theirs = [p for p in lesson.persons if not word.levels or p.level in word.levels]
    if not theirs or len(theirs) == len(lesson.persons):
        return str(word.means)
    return f"{word.means} ({names_of(theirs)})"


def _review(lesson: Lesson) -> list[Block]:
    desk = lesson.desk
    if not lesson.week.review:
        return []
    how = Bullets(desk.say_lines("review_how"), spread=0.15)
    return [Step(part_name(desk, "review"), (how,), lesson.minutes(("review",)))]
