"""The first pages of the parent's file: what is in it, what to do before the first week, how a week goes."""

from __future__ import annotations

from collections.abc import Sequence

from packgen.page.blocks import Block, Bullets
from packgen.page.contents import contents
from packgen.page.desk import Desk
from packgen.page.model_step import general_care
from packgen.page.parents import MAKINGS, part_name, table_minutes
from packgen.page.rhythm import Panel, Rhythm
from packgen.page.table import Cell, Column, Table
from packgen.page.timetable import Pairs, Step
from packgen.page.week_sheets import homeless, listed
from packgen.planning import minutes
from packgen.planning.people import Person
from packgen.planning.print_plan import Begin, RunInfo, fresh_sheets


def first_blocks(desk: Desk, persons: Sequence[Person], entries: Sequence[Begin]) -> list[Block]:
    """What is in the file, what to do before the first week, and who has what."""
    steps = [*_book_steps(desk), *desk.say_lines("before_steps", example=_example(desk, persons))]
    return [
        Step(desk.say("contents_name"), (contents(desk.kit, entries, desk.live_width),), wide=True),
        Step(desk.say("before_name"), (Bullets(tuple(steps), "number", spread=0.2),), wide=True),
        *([Step(desk.say("who_name"), (_who(desk, persons),), wide=True)] if persons else []),
        *_homeless(desk, persons),
    ]


def _example(desk: Desk, persons: Sequence[Person]) -> str:
    """What stands at the foot of one child's sheet."""
    named = next((person.name for person in persons if person.named), "")
    return f"{named or desk.say('foot_sheet')} 3"


def _book_steps(desk: Desk) -> list[str]:
    """To get the book, named as a library wants it."""
    book = desk.study.book
    if not book:
        return []
    named = desk.say("book_words", title=book.title, author=book.author)
    pages = [str(chapter.pages) for chapter in book.chapters if chapter.pages]
    return [desk.say("get_book", book=named, count=len(book.chapters), pages=bool(pages))]


def how_to_blocks(desk: Desk, persons: Sequence[Person] = ()) -> list[Block]:
    """How a week goes, and the rules for whatever is cut and glued."""
    care = general_care(desk, persons)
    return [
        Step(desk.say("each_name"), (Bullets(desk.say_lines("each_steps"), "number", spread=0.2),)),
        Step(desk.say("rhythm_name"), (_rhythm(desk),), (desk.say("rhythm_minutes", minutes=_table_minutes(desk)),)),
        Step(desk.say("habits_name"), (Bullets(desk.say_lines("habits"), spread=0.2),)),
        *([Step(desk.say("rules_name"), (Bullets(care, spread=0.2),))] if care else []),
    ]


def _homeless(desk: Desk, persons: Sequence[Person]) -> list[Block]:
    """Sheets that no week asks for: they are to be named all the same."""
    rows = []
    for person in persons:
        lines = listed(desk, homeless(desk, person))
        if lines:
            rows.append((person.name, ", ".join(f"{line.number} {line.words}".strip() for line in lines)))
    return [Step(desk.say("any_week_name"), (Pairs(tuple(rows)),), (desk.say("any_week_note"),))] if rows else []


def _rhythm(desk: Desk) -> Block:
    """The parts a week has in this study: reading only with a book, before the sitting if that has no room for it."""
    talk = ["recall", "tell", *(["look"] if desk.study.works else [])]
    reading = ["read"] if desk.study.book else []
    before = not any(part.name == "read" for week in desk.term.weeks for s in week.sittings for part in s.parts)
    names = [*reading, *talk] if before else [talk[0], *reading, *talk[1:]]
    said = {"read": "rhythm_read_before" if before else "rhythm_read"}
    panels = [
        Panel(part_name(desk, name), _panel_minutes(desk, name), desk.say(said.get(name, f"rhythm_{name}")))
        for name in names
    ]
    sheets = desk.say("minutes", minutes=_sheet_minutes(desk))
    return Rhythm((*panels, Panel(desk.say("sheets_word"), sheets, desk.say("rhythm_sheets"))))


def _table_minutes(desk: Desk) -> str:
    """How long the sittings of a week take, from the shortest to the longest."""
    found = [table_minutes(week) for week in desk.term.weeks if table_minutes(week)] or [desk.term.minutes]
    return str(min(found)) if min(found) == max(found) else f"{min(found)}–{max(found)}"


def _panel_minutes(desk: Desk, name: str) -> str:
    """A part's minutes; reading takes as long as the chapters do."""
    known = minutes.MINUTES[name]
    if name != "read" or not desk.study.book:
        return desk.say("minutes", minutes=known)
    chapters = [minutes.of_chapter(chapter) for chapter in desk.study.book.chapters] or [known]
    low, high = min(chapters), max(chapters)
    return desk.say("minutes", minutes=str(low) if low == high else f"{low}–{high}")


def _sheet_minutes(desk: Desk) -> str:
    kinds = {due.kind for week in desk.term.weeks for due in week.due} - set(MAKINGS)
    takes = [minutes.of_sheet(kind) for kind in kinds] or [minutes.UNKNOWN_SHEET]
    return str(min(takes)) if min(takes) == max(takes) else f"{min(takes)}–{max(takes)}"


def _who(desk: Desk, persons: Sequence[Person]) -> Block:
    """Each child, how it works at its level, and what is printed for it."""
    printed = any(_runs_of(desk, person) for person in persons)
    columns = [Column(desk.say("who_child"), 0.75, names=True), Column(desk.say("who_how"), 2.4)]
    columns += [Column(desk.say("who_paper"), 1.0)] if printed else []
    rows: list[tuple[str | Cell, ...]] = []
    for person in persons:
        name = person.name if person.age is None else desk.say("age", name=person.name, age=person.age)
        runs = _runs_of(desk, person)
        paper = desk.say("who_files", files=len(runs), sheets=sum(fresh_sheets(run) for run in runs))
        rows.append((name, desk.say(f"how_{person.level}"), *([paper] if printed else [])))
    return Table(tuple(columns), tuple(rows), least=8.0, grow=0.0, pad=1.1)


def _runs_of(desk: Desk, person: Person) -> list[RunInfo]:
    """The print runs of a person's folder."""
    return [run for run in desk.print_runs if person.folder and run.path.startswith(f"{person.folder}/")]
