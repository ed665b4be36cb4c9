"""A week's sheets by their printed titles, parted by when they are wanted: the table, other days, a making."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from packgen.page.blocks import Block, Prose, Row, Stack
from packgen.page.desk import Desk
from packgen.page.look import SOFT
from packgen.page.parents import MAKINGS, capital, kind_name
from packgen.page.timetable import Pairs
from packgen.planning.people import Person, names_of
from packgen.planning.print_plan import NumberedSheet
from packgen.planning.printed_items import sheets_of_week
from packgen.planning.ready import ready_for
from packgen.planning.weeks import Week

_ABREAST = 4  # as many columns of names as stand side by side
_ALL_TERM = ("telling", "words")
_AT_TABLE = ("telling", "picture-study")
_WHEN = ("table", "days", "making")  # when sheets are wanted, in the order of a week
_OF_A_WORK = ("picture-study", "finish-the-picture", "look-closer", "colour-by-number", "enlarging-grid")


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
    """A person's sheets for one week, by number; those of a picture that is looked at once more are among them."""
    begun = sheets_of_week(person, week, desk.print_runs)
    shown = [sheet for sheet in sheets_of(desk, person) if sheet.kind == "picture-study" and sheet not in begun]
    again = [sheet for sheet in shown if any(str(work.title) in sheet.about for work in week.again)]
    return tuple(sorted((*begun, *again), key=lambda sheet: (sheet.number is None, sheet.number or 0)))


def homeless(desk: Desk, person: Person) -> tuple[NumberedSheet, ...]:
    """A person's sheets that no week asks for."""
    asked = {sheet for week in desk.term.weeks for sheet in sheets_in(desk, person, week)}
    return tuple(sheet for sheet in sheets_of(desk, person) if sheet not in asked)


def listed(desk: Desk, sheets: Sequence[NumberedSheet], week: Week | None = None) -> tuple[Listed, ...]:
    """The sheets as lines: copies of one sheet together, and a set whose titles begin alike on one line.

    A sheet on a work or a making is told by it; one used before `week` says from when it is.
    """
    groups: dict[tuple[str, str, str], list[NumberedSheet]] = {}
    for sheet in sheets:
        groups.setdefault(_set_of(sheet), []).append(sheet)
    lines = []
    for group in groups.values():
        number = _numbers([sheet.number for sheet in group if sheet.number is not None]) or _unnumbered(desk, group[0])
        lines.append(Listed(number, _words(desk, group, week)))
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


def _words(desk: Desk, group: Sequence[NumberedSheet], week: Week | None) -> str:
    sheet = group[0]
    subject = sheet.about.partition(": ")[2]
    told = sheet.kind in _OF_A_WORK or (sheet.kind in ("challenge", "model") and sheet.part in ("", "steps"))
    title = f"{sheet.title}: {subject}" if told and subject and subject not in sheet.title else sheet.title
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
    if week and sheet.week and sheet.week < week.number and sheet.kind not in _ALL_TERM:
        notes.append(desk.say("note_from", week=sheet.week))
    return f"{title} ({', '.join(notes)})" if notes else title


_Lists = tuple[tuple[Listed, ...], ...]  # a child's lines, as many tuples as there are times of use


def week_lists(desk: Desk, persons: Sequence[Person], week: Week) -> Block | None:
    """What each child has ready, side by side; those with the same sheets together. None if nobody has any."""
    groups: dict[_Lists, list[Person]] = {}
    for person in persons:
        lists = _lists(desk, person, week)
        if any(lists):
            groups.setdefault(lists, []).append(person)
    if not groups:
        return None
    cells = [(names_of(group) if len(persons) > 1 else "", lists) for lists, group in groups.items()]
    tried = [_abreast(desk, cells, count) for count in range(1, min(_ABREAST, len(cells)) + 1)]
    return min(reversed(tried), key=lambda block: block.measure(desk.kit, desk.live_width).least)


def _abreast(desk: Desk, cells: Sequence[tuple[str, _Lists]], count: int) -> Block:
    """The lists in rows of so many side by side."""
    made = tuple(_side_by_side(desk, cells[k : k + count], count) for k in range(0, len(cells), count))
    return made[0] if len(made) == 1 else Stack(made)


def _side_by_side(desk: Desk, cells: Sequence[tuple[str, _Lists]], count: int) -> Block:
    """Names over columns; under them what is wanted at the table, on other days and for a making."""

    def row(blocks: Sequence[Block], gap: float) -> Block:
        blank = [Stack(())] * (count - len(blocks))
        return Row(tuple((1.0, block) for block in (*blocks, *blank)), gutter=4.0, gap=gap)

    named = any(name for name, _ in cells)
    blocks: list[Block] = [row([Prose(name, "label", tight=True) for name, _ in cells], 0.0)] if named else []
    for place, when in enumerate(_WHEN):
        lists = [parts[place] for _, parts in cells]
        if any(lists):
            blocks.append(Prose(desk.say(f"ready_{when}"), desk.look.small.grey(SOFT), gap=0.8, tight=True))
            blocks.append(row([Pairs(tuple((o.number, o.words) for o in lines), between=0.2) for lines in lists], 0.1))
    return Stack(tuple(blocks), gap=1.6)


def _lists(desk: Desk, person: Person, week: Week) -> _Lists:
    """A person's lines by when they are wanted, as `_WHEN` has it."""
    if not sheets_of(desk, person):
        # The files are not known, so the sheets go by what they are.
        ready = [(r.kind, Listed("", capital(kind_name(desk, r.kind)))) for r in ready_for(person, week)]
        return tuple(tuple(one for kind, one in ready if _when(week, kind) == when) for when in _WHEN)
    sheets = sheets_in(desk, person, week)
    return tuple(listed(desk, [s for s in sheets if _when(week, s.kind) == when], week) for when in _WHEN)


def _when(week: Week, kind: str) -> str:
    """When a kind of sheet is wanted in a week."""
    if kind in (*MAKINGS, "results"):
        return "making"
    seated = {part.name for sitting in week.sittings for part in sitting.parts}
    return "table" if kind in _AT_TABLE or kind in seated else "days"


def numbers_for(desk: Desk, persons: Sequence[Person], kind: str, title: str) -> str:
    """Which sheets belong to a making, by their numbers: `Juno and Bram 13, Wilf 9`; nothing if they are not known."""
    groups: dict[str, list[Person]] = {}
    for person in persons:
        own = [s.number for s in sheets_of(desk, person) if s.kind == kind and title in s.about and s.number]
        if own:
            groups.setdefault(_numbers(sorted(own)), []).append(person)
    return " · ".join(f"{names_of(group)} {numbers}" for numbers, group in groups.items())
