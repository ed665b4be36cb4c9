"""A week's sheets by their printed titles: for each child the number at the sheet's foot, its title, its paper."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from packgen.page.blocks import Block, Prose, Row, Stack
from packgen.page.desk import Desk
from packgen.page.parents import capital, kind_name
from packgen.page.timetable import Pairs
from packgen.planning.people import Person, names_of
from packgen.planning.print_plan import NumberedSheet
from packgen.planning.ready import ready_for
from packgen.planning.weeks import Week

_ABREAST = 4  # as many columns of names as stand side by side
_ALL_TERM = ("telling", "words")


@dataclass(frozen=True, slots=True)
class Listed:
    """One line of a child's list: the number at the sheet's foot, or nothing, and its printed title in words."""

    number: str
    words: str


def sheets_of(desk: Desk, person: Person) -> tuple[NumberedSheet, ...]:
    """All sheets in a person's files, in the order of the files; none if the files are not known."""
    runs = [run for run in desk.print_runs if person.folder and run.path.startswith(f"{person.folder}/")]
    return tuple(sheet for run in runs if run.face != "backs" for sheet in run.sheets)


def sheets_in(desk: Desk, person: Person, week: Week) -> tuple[NumberedSheet, ...]:
    """A person's sheets for one week, by number: those that begin in it, and those that are gone on with."""
    found = [sheet for sheet in sheets_of(desk, person) if _wanted(person, week, sheet)]
    return tuple(sorted(found, key=lambda sheet: (sheet.number is None, sheet.number or 0)))


def _wanted(person: Person, week: Week, sheet: NumberedSheet) -> bool:
    if sheet.week == week.number:
        return True
    if sheet.kind == "telling":
        return bool(week.chapters)
    if sheet.kind == "words":
        return any(not word.levels or person.level in word.levels for word in week.words)
    going_on = [making for making in week.makings if making.part > 1 and making.kind == sheet.kind]
    return any(making.title in sheet.about for making in going_on)


def homeless(desk: Desk, person: Person) -> tuple[NumberedSheet, ...]:
    """A person's sheets that no week asks for."""
    asked = {sheet for week in desk.term.weeks for sheet in sheets_in(desk, person, week)}
    return tuple(sheet for sheet in sheets_of(desk, person) if sheet not in asked)


def listed(desk: Desk, sheets: Sequence[NumberedSheet]) -> tuple[Listed, ...]:
    """The sheets as lines: copies of one sheet together, and a set whose titles begin alike on one line.

    Where a title comes twice it is told what each is about.
    """
    groups: dict[tuple[str, str, str], list[NumberedSheet]] = {}
    for sheet in sheets:
        groups.setdefault(_set_of(sheet), []).append(sheet)
    titles = [sheet.title for group in groups.values() for sheet in group[:1]]
    lines = []
    for group in groups.values():
        number = _numbers([sheet.number for sheet in group if sheet.number is not None]) or _unnumbered(desk, group[0])
        lines.append(Listed(number, _words(desk, group, titles.count(group[0].title) > 1)))
    return tuple(lines)


def _unnumbered(desk: Desk, sheet: NumberedSheet) -> str:
    """What stands in place of a number: a word on what it is."""
    return desk.say("unnumbered_book" if sheet.kind == "fold-book" and not sheet.part else "unnumbered")


def _set_of(sheet: NumberedSheet) -> tuple[str, str, str]:
    """What sheets on one line have in common: all of the title, or what stands before its colon in a set of parts."""
    begin, colon, _ = sheet.title.partition(": ")
    return (begin, sheet.part, sheet.kind) if colon and sheet.part else (sheet.title, sheet.about, sheet.stock)


def _numbers(found: Sequence[int]) -> str:
    """Numbers in few letters: `3`, `6–8`, `3, 5`."""
    if len(found) > 2 and found[-1] - found[0] == len(found) - 1:
        return f"{found[0]}–{found[-1]}"
    return ", ".join(map(str, found))


def _words(desk: Desk, group: Sequence[NumberedSheet], twice: bool) -> str:
    sheet = group[0]
    subject = sheet.about.partition(": ")[2]
    title = f"{sheet.title}: {subject}" if twice and subject and subject not in sheet.title else sheet.title
    parts = dict.fromkeys(one.title.partition(": ")[2] for one in group)
    if len(parts) > 1:
        title = f"{sheet.title.partition(': ')[0]}: {', '.join(parts)}"
    notes = []
    if sheet.stock != "plain" and sheet.number is not None:
        notes.append(desk.say("note_card"))
    if len(group) > len(parts) and sheet.number is None:
        notes.append(desk.say("note_copies", count=len(group)))
    if sheet.pages > 2 and sheet.kind not in (*_ALL_TERM, "fold-book"):
        notes.append(desk.say("note_pages", count=sheet.pages))
    return f"{title} ({', '.join(notes)})" if notes else title


def week_lists(desk: Desk, persons: Sequence[Person], week: Week) -> Block | None:
    """What each child has ready, side by side; those with the same sheets together. None if nobody has any."""
    groups: dict[tuple[Listed, ...], list[Person]] = {}
    for person in persons:
        lines = _lines(desk, person, week)
        if lines:
            groups.setdefault(lines, []).append(person)
    if not groups:
        return None
    if len(persons) == 1:
        return Pairs(tuple((line.number, line.words) for line in next(iter(groups))), between=0.2)
    cells = [_column(group, lines) for lines, group in groups.items()]
    tried = [_abreast(cells, count) for count in range(1, min(_ABREAST, len(cells)) + 1)]
    return min(reversed(tried), key=lambda block: block.measure(desk.kit, desk.live_width).least)


def _abreast(cells: Sequence[Block], count: int) -> Block:
    """The lists in rows of so many side by side."""
    rows = [list(cells[k : k + count]) for k in range(0, len(cells), count)]
    rows[-1] += [Stack(())] * (count - len(rows[-1]))
    made = tuple(Row(tuple((1.0, cell) for cell in row), gutter=4.0, gap=1.6) for row in rows)
    return made[0] if len(made) == 1 else Stack(made)


def _lines(desk: Desk, person: Person, week: Week) -> tuple[Listed, ...]:
    if sheets_of(desk, person):
        return listed(desk, sheets_in(desk, person, week))
    # The files are not known, so the sheets go by what they are.
    return tuple(Listed("", capital(kind_name(desk, ready.kind))) for ready in ready_for(person, week))


def _column(group: Sequence[Person], lines: Sequence[Listed]) -> Block:
    rows = tuple((line.number, line.words) for line in lines)
    return Stack((Prose(names_of(group), "label", tight=True), Pairs(rows, gap=0.4, between=0.2)))


def numbers_for(desk: Desk, persons: Sequence[Person], kind: str, title: str) -> str:
    """Which sheets belong to a making, by their numbers: `Juno and Bram 13, Wilf 9`; nothing if they are not known."""
    groups: dict[str, list[Person]] = {}
    for person in persons:
        own = [s.number for s in sheets_of(desk, person) if s.kind == kind and title in s.about and s.number]
        if own:
            groups.setdefault(_numbers(sorted(own)), []).append(person)
    return " · ".join(f"{names_of(group)} {numbers}" for numbers, group in groups.items())
