"""The term on one page: a row for each week with its dates, those away in their place; then what to know about it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from packgen.page.blocks import Block, Bullets, Prose
from packgen.page.desk import Desk, Laid, Section, Sheet
from packgen.page.look import PALE, SOFT, TINT
from packgen.page.parents import (
    capital,
    chapter_titles,
    height_of,
    kind_name,
    making_words,
    other_minutes,
    part_name,
    persons,
    shortened,
    table_minutes,
)
from packgen.page.table import Cell, Column, Table
from packgen.page.text import Style
from packgen.page.timetable import IfRoom, Pairs, Sayings, Step
from packgen.planning.days import months_between, short_days, short_span
from packgen.planning.minutes import ASSUMED, Assumed
from packgen.planning.people import Person
from packgen.planning.ready import kinds_due
from packgen.planning.weeks import AwayWeek, Week

SHEET = Sheet(
    title="Term plan",
    about="The weeks of the term with their dates, what is read, looked at and made in each, and how long it takes.",
    levels=("parent",),
)


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The plan, and on its back the minutes it rests on."""
    everybody = persons(desk)
    head = desk.head(desk.say("title"), _subject(desk), "strip", date=False)
    blocks = [_table(desk, everybody), _legend(desk, everybody), *_notes(desk)]
    name = desk.say("plan_word")
    changes = IfRoom((Sayings(desk.say("changes_name"), ()),))
    pace = Step(desk.say("pace_title"), (Prose(desk.say("pace_subject"), "small"), _pace(desk)), wide=True)
    if height_of(desk, [*blocks, pace]) <= desk.room(head, 0):
        sections: tuple[Section, ...] = (Section(head, (*blocks, pace, changes)),)
    else:
        pace_head = desk.head(desk.say("pace_title"), desk.say("pace_subject"), "sun", date=False)
        sections = (Section(head, (*blocks, changes)), Section(pace_head, (_pace(desk),)))
        if len(desk.sections(sections[:1], name=name)) % 2 == 0:  # its own page would have an empty back
            small = Step(desk.say("pace_name"), (Pairs(tuple(_pace_rows(desk)), "small"),))
            sections = (Section(head, (*blocks, IfRoom((small, changes)))),)
    pages = desk.sections(sections, name=name, loosen=2.0)
    return (Laid("term-plan", SHEET.title, pages, sides="two-sided-long-edge"),)


def _subject(desk: Desk) -> str:
    days = [day for week in desk.term.weeks for day in week.dates]
    months = months_between(days[0], days[-1]) if days else ""
    return desk.say("subject", months=months, weeks=len(desk.term.weeks), minutes=desk.term.minutes)


# The table


def _table(desk: Desk, everybody: Sequence[Person]) -> Block:
    """A row for each week, columns only for what the study has."""
    weeks = desk.term.weeks
    small = "small"
    columns = [Column(desk.say("week"), -14.0, align="centre", names=True)]
    columns += [Column(desk.say("date"), -19.0)] if desk.term.dated else []
    columns.append(Column(desk.say("read"), 1.0))
    columns += [Column(desk.say("look"), 1.0)] if any(week.works or week.again for week in weeks) else []
    columns += [Column(desk.say("make"), 1.0)] if any(week.makings for week in weeks) else []
    columns += [Column(desk.say("sheets"), 1.15)] if any(week.due for week in weeks) else []
    columns += [Column(desk.say("time"), -18.0, desk.say("time_unit"), align="centre")]
    columns += [Column(desk.say("done"), -12.0, align="centre")]
    heads = [column.head for column in columns]
    rows = [_row(desk, entry, heads, everybody) for entry in _entries(desk)]
    return Table(tuple(columns), tuple(rows), least=8.5, most=13.0, style=small, pad=1.3)


def _entries(desk: Desk) -> list[Week | AwayWeek]:
    """The weeks taught and the weeks away, in order of time."""

    def when(entry: Week | AwayWeek) -> tuple[date, int]:
        if isinstance(entry, AwayWeek):
            return entry.starts, 0
        return (entry.dates[0] if entry.dates else date.max), entry.number

    return sorted((*desk.term.weeks, *desk.term.away), key=when)


def _row(
    desk: Desk, entry: Week | AwayWeek, heads: Sequence[str], everybody: Sequence[Person]
) -> tuple[str | Cell, ...]:
    if isinstance(entry, AwayWeek):
        return _away(desk, entry, heads)
    bold = Style(desk.look.label.face, desk.look.small.size, desk.look.small.leading)
    over = entry.number in desk.term.over
    makings = "\n".join(making_words(desk, making) for making in entry.makings)
    other = other_minutes(entry)
    cells: dict[str, str | Cell] = {
        desk.say("week"): Cell(str(entry.number), "strong"),
        desk.say("date"): short_days(entry.dates),
        desk.say("read"): _read(desk, entry),
        desk.say("look"): "\n".join(_looked(desk, entry)),
        desk.say("make"): Cell(makings, bold, PALE) if makings else "",
        desk.say("sheets"): _sheets(desk, entry, everybody),
        desk.say("time"): Cell(f"{table_minutes(entry)} + {other}" if other else f"{table_minutes(entry)}",
                               bold if over else ""),
        desk.say("done"): Cell(box=True),
    }  # fmt: skip
    return tuple(cells[head] for head in heads)


def _away(desk: Desk, entry: AwayWeek, heads: Sequence[str]) -> tuple[str | Cell, ...]:
    """A week away: tinted all along."""
    said = {desk.say("date"): short_span(entry.starts, entry.ends), desk.say("read"): desk.say("away")}
    return tuple(Cell(said.get(head, ""), "small", TINT) for head in heads)


def _read(desk: Desk, week: Week) -> str | Cell:
    titles = chapter_titles(week)
    more = desk.say("review") if week.review else desk.say("spare") if week.spare else ""
    if titles:
        return "\n".join([*(shortened(str(chapter.title)) for chapter in week.chapters), *([more] if more else [])])
    return Cell(more, desk.look.small.grey(SOFT)) if more else ""


def _looked(desk: Desk, week: Week) -> list[str]:
    again = (desk.say("again", title=shortened(str(work.title))) for work in week.again)
    return [*(shortened(str(work.title)) for work in week.works), *again]


def _sheets(desk: Desk, week: Week, everybody: Sequence[Person]) -> str:
    """The kinds of sheet of the week; letters in brackets where not everybody has it."""
    if not any(person.items for person in everybody):
        return capital(", ".join(kind_name(desk, kind) for kind in week.sheets))
    said = []
    for kind, group in kinds_due(everybody, week):
        marks = "" if len(group) == len(everybody) else f" ({'·'.join(person.mark for person in group)})"
        said.append(f"{kind_name(desk, kind)}{marks}")
    return capital(", ".join(said))


def _legend(desk: Desk, everybody: Sequence[Person]) -> Block:
    style = desk.look.small.grey(SOFT)
    if len(everybody) < 2 or not any(person.items for person in everybody):
        return Prose(desk.say("no_marks"), style, gap=1.2)
    marks = ", ".join(desk.say("mark", mark=person.mark, name=person.name) for person in everybody)
    return Prose(desk.say("marks", marks=marks), style, gap=1.2)


def _notes(desk: Desk) -> list[Block]:
    notes = [str(note) for note in desk.term.notes]
    notes += [desk.say("calendar")] if desk.term.dated else []
    return [Step(desk.say("notes_name"), (Bullets(tuple(notes), spread=0.2),), gap=3.0)] if notes else []


# What the minutes rest on


def _parts(desk: Desk) -> list[Assumed]:
    """The assumptions this study makes use of."""
    used = {part.name for week in desk.term.weeks for s in week.sittings for part in s.parts}
    used |= {part.name for week in desk.term.weeks for part in week.other}
    used |= {"test"} if "challenge" in used else set()
    return [assumed for assumed in ASSUMED if assumed.part in used]


def _part_name(desk: Desk, part: str) -> str:
    name = capital(part_name(desk, part))
    if part == "read":
        return desk.say("pace_page", name=name)
    return desk.say("pace_test") if part == "test" else name


def _pace(desk: Desk) -> Block:
    """The assumed minutes, with a column for a family's own."""
    columns = (
        Column(desk.say("pace_part"), 1.1, names=True),
        Column(desk.say("pace_minutes"), -18.0, align="centre"),
        Column(desk.say("pace_why"), 2.2),
        Column(desk.say("pace_own"), -32.0),
    )
    rows = tuple((_part_name(desk, a.part), str(a.minutes), capital(a.why), "") for a in _parts(desk))
    return Table(columns, rows, least=9.0, most=15.0)


def _pace_rows(desk: Desk) -> list[tuple[str, str]]:
    return [(_part_name(desk, a.part), f"{desk.say('minutes', minutes=a.minutes)}: {a.why}") for a in _parts(desk)]
