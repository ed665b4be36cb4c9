"""What to print: every file in the order that changes the paper least, with its setting and whose folder it is for."""

from __future__ import annotations

import re

from packgen.page.blocks import Art, Block, Bullets, Prose, Row
from packgen.page.desk import Desk, Laid, Sheet
from packgen.page.look import SOFT
from packgen.page.parents import capital, kind_name, persons, stock_name
from packgen.page.pen import Pen
from packgen.page.table import Cell, Column, Table
from packgen.page.timetable import Step
from packgen.page.turning import FIGURE_HEIGHT, draw_turn
from packgen.planning.coverage import runs_of
from packgen.planning.print_plan import ONE_SIDED, PARENT, PrintPlan, PrintStep, RunInfo, plan_printing
from packgen.planning.printed_items import printed_name

SHEET = Sheet(
    title="Print plan",
    about="Every file of the output in the order to print it: setting, paper, copies, and into whose folder it goes.",
    levels=("parent",),
)

_OWN = frozenset({"contents", "guide", "term-plan", "shopping-list", "print-plan", "record"})
_SHORT = "two-sided-short-edge"
_FIGURE = 46.0


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The plan of all print runs, this guide's with them."""
    plan = plan_printing(desk.runs)
    subject = desk.say("subject", files=len(plan.steps), sheets=sum(step.paper for step in plan.steps),
                       colour=sum(count.colour_pages for count in plan.paper))  # fmt: skip
    head = desk.head(desk.say("title"), subject, "letter", date=False)
    own = next((step.run for step in plan.steps if step.run.path.startswith(f"{PARENT}/")), None)
    leaf = 1 if own and own.sides == ONE_SIDED else 2  # pages on the first sheet of paper
    file, more = (own.path, own.pages > leaf) if own else (f"{PARENT}/guide.pdf", True)
    first = Bullets(desk.say_lines("first_steps", file=file, leaf=leaf, more=more), "number", spread=0.2)
    blocks: list[Block] = [Step(desk.say("first_name"), (first,))]
    blocks += _turning(desk, plan)
    blocks += _tables(desk, plan) or [Prose(desk.say("nothing"))]
    pages = desk.pages(head, blocks, name=desk.say("plan_word"), loosen=2.0)
    return (Laid("print-plan", SHEET.title, pages, sides="two-sided-long-edge"),)


# Turning the stack over


def _turning(desk: Desk, plan: PrintPlan) -> list[Block]:
    """For printers that print one side: how to turn the fronts, for each way that is needed."""
    flips = dict.fromkeys(step.run.flip == _SHORT for step in plan.steps if step.run.face == "backs")
    if not flips:
        return []
    figures = tuple((-_FIGURE, _figure(desk, short)) for short in sorted(flips))
    gutter = 10.0
    how = Prose(desk.say("turn_how"), tight=True)
    return [Step(desk.say("turn_name"), (how, Row((*figures, (1.0, Prose(""))), gutter=gutter, gap=2.0)))]


def _figure(desk: Desk, short_edge: bool) -> Block:
    words = (desk.say("front"), desk.say("back"))
    title = desk.say("turn_short_name" if short_edge else "turn_long_name")
    style = desk.look.small

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        pen.text(x, y + height - pen.drop(desk.look.label), title, desk.look.label)
        draw_turn(pen, x, y, width, short_edge, words, style)

    return Art(paint, FIGURE_HEIGHT + desk.look.label.leading)


# The tables


def _tables(desk: Desk, plan: PrintPlan) -> list[Block]:
    """A table for each paper, under which paper to put in and how much of it."""
    tables: list[Block] = []
    for count in plan.paper:
        rows = tuple(_row(desk, step) for step in plan.steps if step.run.stock == count.stock)
        stock = stock_name(desk, count.stock)
        words = capital(desk.say("load", stock=stock, sheets=count.sheets))
        tables.append(Step(words, (_table(desk, rows),), gap=3.5, wide=True, on=desk.say("load_on", stock=stock)))
    return tables


def _table(desk: Desk, rows: tuple[tuple[str | Cell, ...], ...]) -> Table:
    columns = (
        Column("", -8.0),
        Column(desk.say("number"), -9.0, align="centre"),
        Column(desk.say("file"), 1.5),
        Column(desk.say("holds"), 1.45),
        Column(desk.say("setting"), 1.45),
        Column(desk.say("paper_head"), -15.0, align="centre"),
        Column(desk.say("after"), 0.9),
    )
    return Table(columns, rows, least=8.0, most=11.5, style="small", grow=0.6, pad=1.0)


def _row(desk: Desk, step: PrintStep) -> tuple[str | Cell, ...]:
    run = step.run
    paper = str(step.paper) if run.face != "backs" else desk.say("same_sheets")
    return (
        Cell(box=True),
        Cell(str(step.number), "label"),
        Cell("\n".join(in_lines(run.path)), "label"),
        _holds(desk, run),
        ", ".join(_setting(desk, step)),
        Cell(paper, "label" if run.face != "backs" else desk.look.small.grey(SOFT)),
        _after(desk, run),
    )


def in_lines(path: str, most: int = 22) -> list[str]:
    """A path in lines of at most `most` letters where it can be, parted after its own slashes and hyphens."""
    lines = [""]
    for part in re.findall(r"[^/-]*[/-]?", path):
        if lines[-1] and len(lines[-1]) + len(part) > most:
            lines.append("")
        lines[-1] += part
    return lines


def _holds(desk: Desk, run: RunInfo) -> str:
    """The numbers of the sheets in a run, with the titles of those that have none; kinds if they are not known."""
    if not run.child and all(kind in _OWN for kind in run.kinds):
        return capital(desk.say("own"))
    numbers = [sheet.number for sheet in run.sheets if sheet.number is not None]
    said = [desk.say("held_sheets", numbers=runs_of(numbers), one=len(numbers) == 1)] if numbers else []
    unnumbered = [sheet for sheet in run.sheets if sheet.number is None]
    said += dict.fromkeys(kind_name(desk, s.kind) if s.kind == "fold-book" else printed_name(s) for s in unnumbered)
    if said:
        return capital(", ".join(said))
    return capital(", ".join(kind_name(desk, kind) for kind in run.kinds))


def _setting(desk: Desk, step: PrintStep) -> list[str]:
    """The setting, pages, copies and colour of a run in words."""
    run = step.run
    said = [capital(step.setting), desk.say("pages", pages=run.pages)]
    if run.face == "backs":
        said.insert(0, capital(desk.say("turn_short" if run.flip == _SHORT else "turn_long")))
        said[1] = step.setting
    if run.copies > 1:
        said.append(desk.say("copies", copies=run.copies))
    if run.colour_pages:
        said.append(desk.say("colour", pages=run.colour_pages))
    return said


def _after(desk: Desk, run: RunInfo) -> str:
    """Into whose folder it goes; fronts wait for their backs. What is cut or folded waits for its week."""
    name = "" if run.face == "fronts" else _owner(desk, run)
    return desk.say("file_to_folder", name=name) if name else ""


def _owner(desk: Desk, run: RunInfo) -> str:
    folder = run.path.partition("/")[0]
    return next((person.name for person in persons(desk) if person.folder == folder), "")
