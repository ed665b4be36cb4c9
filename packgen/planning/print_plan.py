"""The print plan: every print run in the order that changes the paper least, and what to do with what comes out.

A run is one file printed in one go. On a printer that prints one side only, a two-sided run is two files, fronts and
backs; the backs go onto the same sheets, so they follow at once and take no new paper.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

ONE_SIDED = "one-sided"
PARENT = "parent"  # the folder of the parent's own files
_TURNS = {
    "two-sided-long-edge": "Turn the stack over about its long edge, as you turn a page of a tall book",
    "two-sided-short-edge": "Turn the stack over about its short edge, as you turn a page of a pad bound at the top",
}
_SETTINGS = {
    ONE_SIDED: "one side only",
    "two-sided-long-edge": "both sides, flip on the long edge",
    "two-sided-short-edge": "both sides, flip on the short edge",
}
_FIRST_STOCK = "plain"


@dataclass(frozen=True, slots=True)
class Begin:
    """What begins on a page, counted from 1; `under` marks a part of what begins before it."""

    title: str
    page: int
    under: bool = False


@dataclass(frozen=True, slots=True)
class NumberedSheet:
    """A loose sheet of a child as the guide names it: `title` is what is printed at its head, `number` its number.

    `kind` and `part` say which sheet it is, `about` is its full name (a work's or challenge's title in it), `week` the
    week it is first used. `number` counts a child's sheets in the order they are handed out, and stands at the foot of
    each page as "Juno 12"; it is None for books, which show none. `first` is its first
    page in its file, `pages` how many it has, `begins` what begins on which of them.
    """

    child: str
    number: int | None
    title: str
    kind: str
    about: str
    part: str = ""
    week: int | None = None
    stock: str = field(default="plain", compare=False)
    first: int = field(default=0, compare=False)
    pages: int = field(default=0, compare=False)
    begins: tuple[Begin, ...] = ()


@dataclass(frozen=True, slots=True)
class RunInfo:
    """One print run: a file, who it is for, and what it is printed on.

    `pages` and `colour_pages` (pages with colour on them) are counted in the file, `sheets_of_paper` for one copy.
    `face` is `fronts` or `backs` for the two halves of a two-sided run on a one-sided printer, whose `sides` is then
    `one-sided` and whose `flip` is the setting a two-sided printer would have; their names differ in that word only.
    `after` are sentences on what to cut or
    fold. `child` is empty for the parent's runs. `sheets` are the sheets in the run, in the order they are printed.
    """

    path: str
    child: str
    stock: str
    sides: str
    copies: int
    pages: int
    sheets_of_paper: int
    kinds: tuple[str, ...] = ()
    after: tuple[str, ...] = ()
    colour_pages: int = 0
    face: str = ""
    flip: str = ""
    sheets: tuple[NumberedSheet, ...] = ()


@dataclass(frozen=True, slots=True)
class PrintStep:
    """One run in its place. `load` is True if the paper has to be changed first; `paper` is the fresh sheets it takes.

    `setting` names the printer's setting; `turn` says how to put the stack back before this run, if it is backs.
    """

    number: int
    run: RunInfo
    load: bool
    paper: int
    setting: str
    turn: str = ""


@dataclass(frozen=True, slots=True)
class PaperCount:
    """Paper and pages of one stock over all runs; colour pages are counted apart (and are in `pages` too)."""

    stock: str
    sheets: int
    pages: int
    colour_pages: int


@dataclass(frozen=True, slots=True)
class PrintPlan:
    """Every run once, in order, with the paper it takes."""

    steps: tuple[PrintStep, ...]
    paper: tuple[PaperCount, ...]

    @property
    def paper_changes(self) -> int:
        """How often another paper is loaded after the first."""
        return max(0, sum(step.load for step in self.steps) - 1)


def plan_printing(runs: Iterable[RunInfo]) -> PrintPlan:
    """The runs with the fewest changes of paper: plain paper first, then each other stock in turn.

    Within a stock the parent's come first, as the plan itself is in them; the children keep the order they came in, and
    a child's files the order of their names; numbers in names count as numbers. Backs follow their fronts. What runs
    of the same stock share is loaded once.
    """
    given = list(runs)
    ordered = sorted(given, key=lambda run: _order(run, _firsts(given)))
    steps: list[PrintStep] = []
    for number, run in enumerate(ordered, start=1):
        load = not steps or steps[-1].run.stock != run.stock
        steps.append(PrintStep(number, run, load, fresh_sheets(run), setting(run.sides), turn(run)))
    return PrintPlan(tuple(steps), count_paper(given))


def _firsts(runs: Sequence[RunInfo]) -> dict[str, int]:
    return {child: place for place, child in enumerate(dict.fromkeys(run.child for run in runs))}


def _order(run: RunInfo, firsts: dict[str, int]) -> tuple[object, ...]:
    face = {"fronts": 0, "backs": 1}.get(run.face, 0)
    folder, slash, name = run.path.rpartition("/")
    base = folder + slash + (name.replace("backs", "fronts") if run.face == "backs" else name)
    own = folder.split("/")[0] == PARENT
    return run.stock != _FIRST_STOCK, run.stock, not own, firsts[run.child], _natural(base), face, run.path


def _natural(path: str) -> tuple[tuple[int, int | str], ...]:
    """A name's parts with numbers as numbers, so that 10 comes after 9."""
    return tuple((0, int(part)) if part.isdecimal() else (1, part) for part in re.split(r"(\d+)", path) if part)


def setting(sides: str) -> str:
    """The printer's setting in words. Unknown keywords are given as they are."""
    return _SETTINGS.get(sides, sides)


def turn(run: RunInfo) -> str:
    """How to put printed fronts back for their backs; empty for any other run.

    Printers differ in which way they take paper, so one sheet is tried first.
    """
    if run.face != "backs":
        return ""
    about = _TURNS.get(run.flip, _TURNS["two-sided-long-edge"])
    return f"{about}, and put it back. Try one sheet first: a pencil cross on a corner shows where it lands."


def fresh_sheets(run: RunInfo) -> int:
    """New sheets of paper the run takes, all copies together; none for backs."""
    return 0 if run.face == "backs" else run.sheets_of_paper * run.copies


def count_paper(runs: Iterable[RunInfo]) -> tuple[PaperCount, ...]:
    """Sheets, pages and colour pages of each stock over all runs and copies, plain paper first."""
    found: dict[str, list[RunInfo]] = {}
    for run in runs:
        found.setdefault(run.stock, []).append(run)
    return tuple(
        PaperCount(
            stock,
            sum(fresh_sheets(run) for run in found[stock]),
            sum(run.pages * run.copies for run in found[stock]),
            sum(run.colour_pages * run.copies for run in found[stock]),
        )
        for stock in sorted(found, key=lambda stock: (stock != _FIRST_STOCK, stock))
    )
