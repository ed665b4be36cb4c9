"""The record: goals by week with the gaps shown, the stages of designing, and each child's portfolio with a cover."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from packgen.page.blocks import Block, Bullets, Prose
from packgen.page.desk import Desk, Laid, Section, Sheet
from packgen.page.look import PALE, SOFT
from packgen.page.parents import capital, kind_name, spoken_of
from packgen.page.portfolio import cover_page
from packgen.page.table import Cell, Column, Table
from packgen.page.timetable import IfRoom, Sayings, Step
from packgen.planning.aims import BANDS
from packgen.planning.challenges import job_of
from packgen.planning.coverage import Coverage, Covered, coverage, runs_of
from packgen.planning.days import short_days
from packgen.planning.people import Person, by_level, names_of
from packgen.planning.plan import PlanItem
from packgen.planning.print_plan import NumberedSheet
from packgen.planning.printed_items import pages_printed, printed_for, printed_name
from packgen.planning.ready import subject_key, subject_title, weeks_of
from packgen.planning.record import ChildRecord, ChildSheets, SheetGiven, make_record
from packgen.planning.results import outcome_of
from packgen.planning.weeks import MAKINGS
from packgen.reading.models import Challenge
from packgen.trials.stages import FRAMEWORK, PRACTICES, stages

SHEET = Sheet(
    title="Record",
    about="Which goals are met in which week, where the gaps are, and a cover and a dated list for each portfolio.",
    levels=("parent",),
)

_FRAMEWORKS = {"design": FRAMEWORK, "find out": PRACTICES}
_STAGE_ROWS = (6.2, 7.5)  # mm
MOST_COLUMNS = 14  # more weeks than this do not stand side by side


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The record of everybody, then a portfolio for each child whose sheets are known."""
    everybody = spoken_of(desk)
    found = coverage(desk.family.goals, everybody, desk.term)
    head = desk.head(desk.say("title"), desk.say("subject"), "frame", date=False)
    goals: list[Block] = [block for group in found for block in _goals(desk, group)] or [Prose(desk.say("no_goals"))]
    room = IfRoom((Sayings(desk.say("besides_name"), (), most=8),))
    # on whole leaves, if the lower or the higher rows of the stages come out so
    for least in _STAGE_ROWS:
        blocks = [*goals, *_stages(desk, everybody, least), *_sources(desk, found), room]
        pages = desk.pages(head, blocks, name=desk.say("record_word"), loosen=2.0)
        if len(pages) == 1 or len(pages) % 2 == 0:
            break
    laid = [Laid("record", SHEET.title, pages, sides="two-sided-long-edge")]
    for person in everybody:
        if person.items:
            laid.append(_portfolio(desk, person))
    return tuple(laid)


# Goals


def _goals(desk: Desk, group: Coverage) -> list[Block]:
    """A table of goals and weeks, with a legend under it."""
    if not group.goals:
        return []
    title = desk.say("goals_own")
    if group.level:
        title = desk.say("goals_level", names=names_of(group.persons), ages=BANDS[group.level])
    wide = len(desk.term.weeks) <= MOST_COLUMNS
    table = _by_week(desk, group) if wide else _listed(desk, group)
    marks = ", ".join(desk.say("mark", mark=person.mark, name=person.name) for person in group.persons)
    gaps = any(goal.gaps or goal.later for goal in group.goals)
    legend = desk.say("marks" if len(group.persons) > 1 else "one_mark", marks=marks, gaps=gaps)
    blocks: list[Block] = [Prose(legend, desk.look.small.grey(SOFT), tight=True)]
    return [Step(title, (*blocks, replace(table, gap=1.2)), gap=4.0, wide=True)]


def _sources(desk: Desk, found: Sequence[Coverage]) -> list[Block]:
    """What packgen's own aims and stages rest on, once, at the end."""
    spirits = dict.fromkeys(goal.spirit for group in found for goal in group.goals if goal.spirit)
    jobs = {job_of(challenge) for challenge in desk.study.challenges}
    frameworks = [framework for job, framework in _FRAMEWORKS.items() if job in jobs]
    if not spirits and not frameworks:
        return []
    words = desk.say("sources", spirits="; ".join(spirits), frameworks="; ".join(frameworks))
    return [Prose(words, desk.look.small.grey(SOFT), gap=3.0)]


def _by_week(desk: Desk, group: Coverage) -> Table:
    """Goals down, weeks across, and who meets the goal then; a last column for gaps, if there are any."""
    numbers = [week.number for week in desk.term.weeks]
    cell = max(8.0, min(13.0, 92.0 / max(1, len(numbers))))
    columns = [Column(desk.say("goal"), 1.0)]
    columns += [Column(str(n), -cell, group=desk.say("weeks"), align="centre") for n in numbers]
    gaps = any(goal.gaps or goal.later for goal in group.goals)
    columns += [Column(desk.say("gap"), -19.0, align="centre")] if gaps else []
    rows = []
    for goal in group.goals:
        row: list[str | Cell] = [Cell(goal.text, "body")]
        row += [_met(desk, group, goal.in_week(number)) for number in numbers]
        rows.append((*row, _gap(desk, group, goal)) if gaps else tuple(row))
    return Table(tuple(columns), tuple(rows), least=8.0, most=14.0, style="small", pad=1.1)


def _met(desk: Desk, group: Coverage, meeting: Sequence[Person]) -> str | Cell:
    if not meeting:
        return ""
    everybody = len(meeting) == len(group.persons)
    alone = len(group.persons) == 1
    words = "•" if alone else desk.say("all") if everybody else " ".join(person.mark for person in meeting)
    return Cell(words, desk.look.label.grey(SOFT), PALE)


def _gap(desk: Desk, group: Coverage, goal: Covered) -> str | Cell:
    """Who has no sheet for a goal; who has one that no week asks for."""
    said = []
    if goal.gaps:
        everybody = len(goal.gaps) == len(group.persons)
        word = desk.say("none" if len(group.persons) == 1 else "all")
        said.append(word if everybody else " ".join(person.mark for person in goal.gaps))
    if goal.later:
        said.append(desk.say("later", marks=" ".join(person.mark for person in goal.later)))
    return Cell("\n".join(said), "label")


def _listed(desk: Desk, group: Coverage) -> Table:
    """For a long term: a column of weeks for each person."""
    columns = [Column(desk.say("goal"), 1.6)]
    columns += [Column(person.name, 1.0, group=desk.say("met_in")) for person in group.persons]
    rows = []
    for goal in group.goals:
        cells: list[str | Cell] = [Cell(goal.text, "body")]
        for person in group.persons:
            weeks = runs_of([number for number, meeting in goal.weeks if person in meeting])
            none = desk.say("gap").lower() if person in goal.gaps else desk.say("later", marks="").strip()
            cells.append(Cell(weeks, "small", PALE) if weeks else Cell(none, "label"))
        rows.append(tuple(cells))
    return Table(tuple(columns), tuple(rows), least=8.0, most=14.0, style="small", pad=1.2)


# The stages of designing


def _stages(desk: Desk, everybody: Sequence[Person], least: float) -> list[Block]:
    """For each level and job of its challenges: the stages and their codes, room for a date; rows `least` mm high."""
    if not desk.study.challenges:
        return []
    blocks: list[Block] = []
    makers = [person for person in everybody if "challenge" in person.kinds or not person.items]
    for job in _FRAMEWORKS:
        if not any(job_of(challenge) == job for challenge in desk.study.challenges):
            continue
        note = _stage_note(desk, _weeks_of_job(desk, job))
        for level, group in by_level(makers):
            key = "stages_name" if job == "design" else "stages_name_find_out"
            notes = (note,) if note else ()
            table = _stage_table(desk, level, job, least)
            blocks.append(Step(desk.say(key, names=names_of(group)), (table,), notes, gap=4.0, wide=True))
    return [*blocks, Prose(desk.say("results_hint"), "small", gap=3.0)]


def _weeks_of_job(desk: Desk, job: str) -> list[int]:
    """The numbers of the weeks with challenges of a job."""
    made = [(week.number, making) for week in desk.term.weeks for making in week.makings if making.kind == "challenge"]
    return [number for number, making in made if job_of(desk.study.challenges[making.number]) == job]


def _stage_table(desk: Desk, level: str, job: str, least: float) -> Table:
    """The stages of a level for a job, with the codes they are in the spirit of."""
    columns = (
        Column(desk.say("stage"), -32.0, names=True),
        Column(desk.say("stage_does"), 1.0),
        Column(desk.say("stage_codes"), -23.0),
        Column(desk.say("stage_seen"), -21.0),
    )
    fine = desk.look.small.grey(SOFT)
    rows = tuple(
        (Cell(stage.title, "label"), stage.does, Cell(", ".join(stage.in_spirit_of), fine), "")
        for stage in stages(level, job)
    )
    return Table(columns, rows, least=least, most=least * 1.6, style="small", pad=0.8)


def _stage_note(desk: Desk, numbers: Sequence[int]) -> str:
    """In which weeks the challenges are; empty if they are in none."""
    if not numbers:
        return ""
    return desk.say("stage_week" if len(set(numbers)) == 1 else "stage_weeks", weeks=runs_of(numbers))


# Portfolios


def _portfolio(desk: Desk, person: Person) -> Laid:
    """A cover, and on its back the dated list of what is in the folder."""
    title = desk.say("portfolio_title", name=person.name)
    found = printed_for(person.items, desk.runs, person.folder)
    sheets = tuple(_given(desk, person, item, printed) for item, printed in found)
    record = make_record(desk.family.goals, [ChildSheets(person.name, person.level, sheets)], desk.term)
    child = record.children[0]
    pages = pages_printed(desk.runs, person.folder)
    cover = cover_page(desk, person, record.sheets, pages, title)
    head = desk.head(title, desk.say("portfolio_subject", count=record.sheets, pages=pages), "book", date=False)
    blocks: list[Block] = [_list(desk, child)]
    if child.gaps:
        gaps = Bullets(tuple(goal.text for goal in child.gaps), style="small", spread=0.2)
        blocks.append(Step(desk.say("gaps_name"), (gaps,), gap=3.0))
    blocks.append(Sayings(desk.say("best_name"), (), most=4))
    name = desk.say("portfolio_word", name=person.name)
    listed = desk.sections((Section(head, tuple(blocks)),), name=name, loosen=2.0)
    return Laid("record", title, (cover, *listed), sides="two-sided-long-edge", part="portfolio")


def _given(desk: Desk, person: Person, item: PlanItem, printed: Sequence[NumberedSheet]) -> SheetGiven:
    """One sheet of a folder, with what came out of it where the family has written that down."""
    kind = capital(kind_name(desk, item.sheet))
    about = subject_title(item.subject)
    whole = next((sheet for sheet in printed if not sheet.part), None)
    if item.sheet in MAKINGS:
        # a making goes by its own title, as in the weeks; the book has that of the study, so it goes by what it is
        title = about or kind
    else:
        title = printed_name(whole) if whole else desk.say("sheet_about", kind=kind, about=about) if about else kind
    done, came_out = _outcome(desk, person, item)
    numbers = tuple(sheet.number for sheet in printed if sheet.number)
    weeks = weeks_of(item, desk.term.weeks, person.level)
    designed = isinstance(item.subject, Challenge) and job_of(item.subject) == "design"
    return SheetGiven(item.sheet, title, subject_key(item.subject), numbers, weeks, designed, done, came_out)


def _list(desk: Desk, child: ChildRecord) -> Table:
    """A line for each sheet by week, with places for the day it was done and for what came out."""
    columns = [Column(desk.say("list_week"), -12.0, align="centre", names=True)]
    columns += [Column(desk.say("list_date"), -15.5)] if desk.term.dated else []
    numbered = any(entry.sheet.numbers for entry in child.entries)
    columns += [Column(desk.say("list_number"), -14.0, align="centre")] if numbered else []
    columns += [
        Column(desk.say("list_sheet"), 1.5),
        Column("", -7.5, align="centre"),
        Column(desk.say("list_done"), -19.0),
        Column(desk.say("list_note"), 1.0),
    ]
    planned = {week.number: short_days(week.dates[:1]) for week in desk.term.weeks}
    rows: list[tuple[str | Cell, ...]] = []
    for entry in child.entries:
        done = entry.sheet.done
        row: list[str | Cell] = [Cell(runs_of(entry.sheet.weeks), "label")]
        row += [planned.get(entry.week or 0, "")] if desk.term.dated else []
        row += [runs_of(entry.sheet.numbers)] if numbered else []
        tick = Cell("✓", "strong") if done else Cell(box=True)
        row += [entry.sheet.title, tick, short_days([done]) if done else ""]
        rows.append((*row, entry.sheet.result))
    return Table(tuple(columns), tuple(rows), least=6.6, most=11.0, style="small", grow=0.6, pad=0.9)


def _outcome(desk: Desk, person: Person, item: PlanItem) -> tuple[date | None, str]:
    """The day a challenge was tried and what its numbers say, where the family has written them down."""
    if not isinstance(item.subject, Challenge):
        return None, ""
    found = outcome_of(desk.study, desk.family, person.name, item.subject)
    return (found.done, found.told(person.level)) if found else (None, "")
