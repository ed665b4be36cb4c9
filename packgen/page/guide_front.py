"""The guide's first pages: how the pack is used, and the person at a glance."""

from __future__ import annotations

from collections.abc import Sequence

from packgen.page.blocks import Block, Break, Bullets, Prose, Row, Stack
from packgen.page.contents import Entry, contents
from packgen.page.desk import Desk
from packgen.page.looking import thumb
from packgen.page.parents import MAKINGS, height_of, part_name
from packgen.page.rhythm import Panel, Rhythm
from packgen.page.table import Cell, Column, Table
from packgen.page.timetable import Pairs, Step
from packgen.page.week_sheets import homeless, listed
from packgen.planning import minutes
from packgen.planning.life import chosen_events, years_between
from packgen.planning.people import Person, by_level, names_of
from packgen.planning.plan import life_at
from packgen.planning.print_plan import RunInfo, fresh_sheets
from packgen.reading.dates import plain

MOST_DATES = 24
_PORTRAIT = 46.0


def first_blocks(desk: Desk, persons: Sequence[Person], entries: Sequence[Entry]) -> list[Block]:
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


def how_to_blocks(desk: Desk) -> list[Block]:
    """How a week goes."""
    return [
        Step(desk.say("each_name"), (Bullets(desk.say_lines("each_steps"), "number", spread=0.2),)),
        Step(desk.say("rhythm_name"), (_rhythm(desk),), (desk.say("rhythm_minutes", minutes=desk.term.minutes),)),
        Step(desk.say("habits_name"), (Bullets(desk.say_lines("habits"), spread=0.2),)),
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
    """The parts a sitting has in this study: reading only with a book, looking only with works."""
    names = ["recall", *(["read"] if desk.study.book else []), "tell", *(["look"] if desk.study.works else [])]
    panels = [Panel(part_name(desk, name), _panel_minutes(desk, name), desk.say(f"rhythm_{name}")) for name in names]
    sheets = desk.say("minutes", minutes=_sheet_minutes(desk))
    return Rhythm((*panels, Panel(desk.say("sheets_word"), sheets, desk.say("rhythm_sheets"))))


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
    columns += [Column(desk.say("who_paper"), 1.0, desk.say("who_unit"))] if printed else []
    rows: list[tuple[str | Cell, ...]] = []
    for person in persons:
        name = person.name if person.age is None else desk.say("age", name=person.name, age=person.age)
        runs = _runs_of(desk, person)
        paper = f"{len(runs)} · {sum(fresh_sheets(run) for run in runs)}"
        rows.append((name, desk.say(f"how_{person.level}"), *([paper] if printed else [])))
    return Table(tuple(columns), tuple(rows), least=8.0, grow=0.0, pad=1.1)


def _runs_of(desk: Desk, person: Person) -> list[RunInfo]:
    """The print runs of a person's folder."""
    return [run for run in desk.print_runs if person.folder and run.path.startswith(f"{person.folder}/")]


# The person at a glance


def life_blocks(desk: Desk, persons: Sequence[Person], room: float = 1e6) -> list[Block]:
    """What to tell about the person, and what to look up: on one page of that height, or parted between the two."""
    study = desk.study
    facts = Pairs(tuple(_facts(desk)))
    first: Block = Stack((Prose(str(study.in_short), "strong"), *([facts] if facts.rows else [])), gap=2.0)
    if study.portrait:
        first = Row((thumb(desk, study.portrait, study.portrait_said, _PORTRAIT, _PORTRAIT), (1.0, first)), gutter=6.0)
    told: list[Block] = [first]
    for name, text in _told(desk, persons):
        told.append(Step(name, tuple(Prose(part, gap=1.2) for part in text.split("\n") if part.strip())))
    looked_up: list[Block] = []
    for name, items in (("in_the_way", study.obstacles), ("worth_knowing", study.facts)):
        if items:
            looked_up.append(Step(desk.say(name), (Bullets(tuple(map(str, items)), spread=0.15),)))
    looked_up += _dates(desk)
    parted = bool(looked_up) and height_of(desk, [*told, *looked_up]) > room >= height_of(desk, told)
    return [*told, *([Break()] if parted else []), *looked_up]


def _facts(desk: Desk) -> list[tuple[str, str]]:
    study = desk.study
    rows = [(desk.say("born"), plain(study.born))] if study.born else []
    if study.died:
        rows.append((desk.say("died"), plain(study.died) + _age(desk)))
    if study.place:
        rows.append((desk.say("lived"), str(study.place.name)))
    if study.book:
        rows.append((desk.say("book"), desk.say("book_words", title=study.book.title, author=study.book.author)))
    return rows


def _age(desk: Desk) -> str:
    """How old the person became, where both dates are known to the year."""
    study = desk.study
    sure = [w for w in (study.born, study.died) if w and w.start and not (w.is_span or w.spread or w.approximate)]
    if len(sure) < 2 or not (sure[0].start and sure[1].start):
        return ""
    low, high = years_between(sure[0].start, sure[1].start)
    years = str(low) if low == high else f"{low} or {high}"
    return f", {desk.say('age_at_death', years=years)}"


def _told(desk: Desk, persons: Sequence[Person]) -> list[tuple[str, str]]:
    """The wordings of the life that this family needs, each under whom it is for."""
    found: dict[str, list[Person]] = {}
    for level, group in by_level(persons):
        text = life_at(desk.study, level)
        if text:
            found.setdefault(str(text), []).extend(group)
    if not persons:
        return [(desk.say("tell_all"), str(text)) for _, text in desk.study.life]
    if len(found) == 1:
        return [(desk.say("tell_all"), next(iter(found)))]
    return [(desk.say("tell_to", names=names_of(group)), text) for text, group in found.items()]


def _dates(desk: Desk) -> list[Block]:
    """The dates of the life in two columns."""
    events = chosen_events(desk.study, MOST_DATES)
    if not events:
        return []
    rows = tuple((plain(event.when), str(event.short or event.what)) for event in events)
    half = -(-len(rows) // 2)
    if len(rows) < 6:
        return [Step(desk.say("dates_name"), (Pairs(rows, most=0.4),))]
    cells = tuple((1.0, Pairs(part, "small", most=0.42)) for part in (rows[:half], rows[half:]))
    return [Step(desk.say("dates_name"), (Row(cells, gutter=6.0),))]
