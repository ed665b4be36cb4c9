"""The term on one page: a row for each week with its dates, those away in their place; then what to know about it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from packgen.page.blocks import Block, Break, Bullets, Prose, Row, Stack
from packgen.page.desk import Desk, Laid, Sheet
from packgen.page.look import PALE, SOFT, TINT
from packgen.page.parents import (
    book_words,
    capital,
    chapter_titles,
    kind_name,
    making_words,
    part_name,
    shortened,
    spoken_of,
)
from packgen.page.table import Cell, Column, Table
from packgen.page.text import Style
from packgen.page.timetable import IfRoom, Pairs, Sayings, Step
from packgen.planning.coverage import runs_of
from packgen.planning.days import WEEKDAYS, months_between, short_days, short_span
from packgen.planning.load import Span, takes
from packgen.planning.minutes import ASSUMED, Assumed
from packgen.planning.notes import listed, week_list
from packgen.planning.people import Person
from packgen.planning.printed_items import sheets_of_week
from packgen.planning.ready import kinds_due
from packgen.planning.weeks import MAKINGS, AwayWeek, Making, Week

SHEET = Sheet(
    title="Term plan",
    about="The weeks of the term with their dates, what is read, looked at and made in each, and how long it takes.",
    levels=("parent",),
)

_PARTS = ("talk", "read", "sheets", "make")
_USUAL = " (common practice)"
_MINUTES = 12.0  # the width of a column of minutes


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The plan with what to do before it and what it takes; then what to know, and what the minutes rest on."""
    everybody = spoken_of(desk)
    head = desk.head(desk.say("title"), _subject(desk), "strip", date=False)
    blocks = [_table(desk, everybody), _legend(desk, everybody), _before(desk, everybody), _takes(desk, everybody)]
    pace = Step(desk.say("pace_title"), (Prose(desk.say("pace_subject"), "small"), _pace(desk)), gap=3.0, wide=True)
    kept = Sayings(desk.say("changes_name"), ())
    changes = IfRoom((kept,))
    name = desk.say("plan_word")
    alone = not _has_contents(desk)
    # On whole leaves: without what the minutes rest on if that fills them, else with room for changes on the last page.
    for after in ((pace, changes), (changes,), (pace, Break(), kept)):
        pages = desk.pages(head, [*blocks, *_notes(desk), *after], name=name, ruler=alone, loosen=2.0)
        if len(pages) == 1 or len(pages) % 2 == 0:
            break
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
    columns = [Column(desk.say("week"), -12.0, align="centre", names=True)]
    columns += [Column(desk.say("date"), -15.5)] if desk.term.dated else []
    columns.append(Column(desk.say("read"), 1.0))
    columns += [Column(desk.say("look"), 1.0)] if any(week.works or week.again for week in weeks) else []
    columns += [Column(desk.say("make"), 1.0)] if any(week.makings for week in weeks) else []
    columns += [Column(desk.say("sheets"), 1.2)] if any(week.due for week in weeks) else []
    group = desk.say("time")
    columns += [Column(desk.say(f"time_{part}"), -_MINUTES, group=group, align="centre") for part in _timed(desk)]
    columns += [Column(desk.say("done"), -11.0, align="centre")]
    heads = [column.head for column in columns]
    rows = [_row(desk, entry, heads, everybody) for entry in _entries(desk)]
    if len(weeks) > 1:
        rows.append(_sum(desk, heads))
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
    makings = "\n".join(_making(desk, m, day) for m, day in zip(entry.makings, entry.making_days, strict=True))
    cells: dict[str, str | Cell] = {
        desk.say("week"): Cell(str(entry.number), "strong"),
        desk.say("date"): short_days(entry.dates),
        desk.say("read"): _read(desk, entry),
        desk.say("look"): "\n".join(_looked(desk, entry)),
        desk.say("make"): Cell(makings, bold, PALE) if makings else "",
        desk.say("sheets"): _sheets(desk, entry, everybody),
        **{desk.say(f"time_{part}"): _minutes(desk, entry, part) for part in _timed(desk)},
        desk.say("done"): Cell(box=True),
    }  # fmt: skip
    return tuple(cells[head] for head in heads)


def _making(desk: Desk, making: Making, day: date | None) -> str:
    """A making, and the day the calendar has it on if that is not a sitting's."""
    words = making_words(desk, making)
    return f"{words}\n{WEEKDAYS[day.weekday()][:3]} {short_days([day])}" if day else words


def _timed(desk: Desk) -> list[str]:
    """The parts of a week that take time in this term."""
    return [part for part in _PARTS if any(_of_part(week, part) for week in desk.term.weeks)]


def _of_part(week: Week, part: str) -> int:
    each = {"talk": week.talk_minutes, "read": week.reading_minutes, "sheets": week.sheet_minutes}
    return each.get(part, week.making_minutes)


def _minutes(desk: Desk, week: Week, part: str) -> str | Cell:
    """Minutes of a part; heavy where the talk takes longer than a sitting."""
    minutes = _of_part(week, part)
    over = part == "talk" and minutes > desk.term.minutes * max(1, len(week.sittings))
    return Cell(str(minutes), "label" if over else "") if minutes else ""


def _sum(desk: Desk, heads: Sequence[str]) -> tuple[str | Cell, ...]:
    """The minutes of the whole term."""
    said = {desk.say(f"time_{part}"): str(sum(_of_part(week, part) for week in desk.term.weeks))
            for part in _timed(desk)}  # fmt: skip
    said[heads[1]] = desk.say("all_weeks")
    return tuple(Cell(said.get(head, ""), "label", PALE) for head in heads)


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
    """Each child's sheets by their numbers; else the kinds, with letters in brackets where not everybody has it."""
    numbered = [(person, _numbers(desk, person, week)) for person in everybody]
    if any(numbers for _, numbers in numbered):
        return "\n".join(desk.say("numbers", name=p.name, numbers=numbers) for p, numbers in numbered if numbers)
    if not any(person.items for person in everybody):
        return capital(", ".join(kind_name(desk, kind) for kind in week.sheets if kind not in MAKINGS))
    said = []
    for kind, group in kinds_due(everybody, week):
        if kind in MAKINGS:
            continue  # it has a column of its own
        marks = "" if len(group) == len(everybody) else f" ({'·'.join(person.mark for person in group)})"
        said.append(f"{kind_name(desk, kind)}{marks}")
    return capital(", ".join(said))


def _numbers(desk: Desk, person: Person, week: Week) -> str:
    """The numbers of a person's sheets in a week, and a word for a book, which has none."""
    own = sheets_of_week(person, week, desk.runs)
    numbers = runs_of([sheet.number for sheet in own if sheet.number is not None])
    books = ["book"] if any(sheet.kind == "fold-book" and sheet.number is None for sheet in own) else []
    return ", ".join(filter(None, [numbers, *(desk.say(word) for word in books)]))


def _legend(desk: Desk, everybody: Sequence[Person]) -> Block:
    style = desk.look.small.grey(SOFT)
    if any(run.sheets for run in desk.runs):
        return Prose(desk.say("by_number"), style, gap=1.2)
    if len(everybody) < 2 or not any(person.items for person in everybody):
        return Prose(desk.say("no_marks"), style, gap=1.2)
    marks = ", ".join(desk.say("mark", mark=person.mark, name=person.name) for person in everybody)
    return Prose(desk.say("marks", marks=marks), style, gap=1.2)


def _has_contents(desk: Desk) -> bool:
    """True if the parent's file begins with its contents: they say what to do first, and have the ruler."""
    return any(str(line.sheet) == "contents" for line in desk.recipe.sheets)


def _before(desk: Desk, everybody: Sequence[Person]) -> Block:
    """What to do before the first week: the book and the calendar, and without a page of contents all the rest."""
    book = book_words(desk)
    said = [desk.say("before_book", book=book)] if book else []
    if not _has_contents(desk):
        said += [desk.say("before_print"), desk.say("before_shop"), desk.say("before_folders", count=len(everybody))]
    said += [desk.say("before_calendar")] if desk.term.dated else []
    step = Step(desk.say("before_name"), (Bullets(tuple(said), "box", spread=0.2),), gap=3.0)
    return Stack((step,) if said else ())


def _takes(desk: Desk, everybody: Sequence[Person]) -> Block:
    """What a week takes, part by part; what may be left out is said."""
    found = takes(desk.term)
    longer = week_list(number for number, _ in found.longer) if found.longer else ""
    rows = [(desk.say("takes_talk_name"), desk.say("takes_talk", minutes=found.sitting, longer=longer))]
    if found.reading:
        double = [week.number for week in desk.term.weeks if len(week.chapters) > 1]
        two = week_list(double) if double and len(double) < len(desk.term.weeks) else ""
        words = desk.say("takes_read", minutes=_span(found.reading), two=two)
        rows.append((desk.say("takes_read_name"), words))
    if found.own:
        names = {person.folder: person.name for person in everybody}
        own = [(names.get(folder, ""), _span(span)) for folder, span in found.own]
        named = "; ".join(desk.say("takes_child", name=name, minutes=span) for name, span in own if name)
        most = max(span.high for _, span in found.own)
        more = listed([kind_name(desk, kind) for kind in found.more])
        rows.append((desk.say("takes_sheets_name"), desk.say("takes_sheets", named=named, most=most, more=more)))
    if found.making:
        weeks, spent = week_list(found.making_weeks), _span(found.making)
        words = desk.say("takes_make", count=found.makings, minutes=spent, weeks=weeks)
        rows.append((desk.say("takes_make_name"), words))
    return Step(desk.say("takes_name"), (Pairs(tuple(rows)),), gap=3.0)


def _span(span: Span) -> str:
    return str(span.low) if span.low == span.high else f"{span.low}–{span.high}"


def _notes(desk: Desk) -> list[Block]:
    notes = tuple(str(note) for note in desk.term.notes)
    return [Step(desk.say("notes_name"), (Bullets(notes, spread=0.2),), gap=3.0)] if notes else []


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
    """The assumed minutes and what they rest on, in two columns; that most are common practice is said once."""
    rows = []
    for assumed in _parts(desk):
        why = assumed.why.removesuffix(_USUAL)
        rows.append((_part_name(desk, assumed.part), f"{desk.say('minutes', minutes=assumed.minutes)}: {why}"))
    half = -(-len(rows) // 2)
    columns = (Pairs(tuple(part), "small", most=0.4) for part in (rows[:half], rows[half:]) if part)
    return Row(tuple((1.0, column) for column in columns), gutter=6.0, gap=1.0)
