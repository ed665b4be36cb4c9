"""Print runs: sheets that want the same paper and the same printer setting become one file."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from packgen.page.desk import Laid
from packgen.page.marks import Page
from packgen.page.sheet_number import has_tag, numbered
from packgen.page.type import Faces
from packgen.printed.impose import Imposed, impose
from packgen.reading.models import Printer

_STOCKS = ("plain", "card")


@dataclass(frozen=True, slots=True)
class RunSheet:
    """A sheet in a run: its pages are `first` to `last` of the file, counting from 1."""

    laid: Laid
    first: int
    last: int
    imposed: Imposed


@dataclass(frozen=True, slots=True)
class PrintRun:
    """One file to print in one go. `name` is the file's name without folder."""

    name: str
    stock: str
    sides: str
    pages: tuple[Page, ...]
    sheets: tuple[RunSheet, ...]
    half: str = ""
    copies: int = 1
    flip: str = ""

    @property
    def paper_sheets(self) -> int:
        """How many sheets of paper one copy of the run takes."""
        return len(self.pages) if self.sides == "one-sided" else (len(self.pages) + 1) // 2


def print_runs(
    laids: Sequence[Laid], paper: tuple[float, float], printer: Printer, *, name: str = ""
) -> tuple[PrintRun, ...]:
    """The runs of one pack in the order to print them: plain paper first, books after it, card last.

    `name` names the run if all is to be one file (the parent's guide). On a printer that prints one side only, each
    two-sided run becomes two files, fronts and backs.
    """
    laids = handed_out(laids)
    groups: dict[tuple[int, str, str, str], list[tuple[Laid, Imposed]]] = {}
    for laid in laids:
        imposed = impose(laid, paper, printer)
        book = laid.kind if laid.fold else ""
        key = (_STOCKS.index(laid.stock), book, imposed.duplex, laid.stock)
        groups.setdefault(key, []).append((laid, imposed))
    runs: list[PrintRun] = []
    for (_, book, duplex, stock), members in sorted(groups.items(), key=lambda item: (item[0][0], bool(item[0][1]))):
        run = _run(name or book or stock, stock, duplex, members)
        runs.extend(_halves(run) if duplex != "one-sided" and printer.sides == "one-sided" else [run])
    if name:
        return tuple(replace(r, name=f"{name}{r.half and '-' + r.half}.pdf") for r in runs)
    return tuple(replace(r, name=f"{k}-{r.name}-{r.half or r.sides}.pdf") for k, r in enumerate(runs, 1))


def handed_out(laids: Sequence[Laid]) -> list[Laid]:
    """The sheets in the order they are handed out; a set stays together."""
    return sorted(laids, key=lambda laid: laid.week or 0)


def with_numbers(laids: Sequence[Laid], faces: Faces, face: str) -> list[Laid]:
    """The sheets in the order they are handed out, those that show a number with theirs on each page, from 1.

    `face` is the face the number is set in.
    """
    made: list[Laid] = []
    number = 0
    for laid in handed_out(laids):
        if any(map(has_tag, laid.pages)):
            number += 1
            pages = tuple(numbered(faces, page, number, face) for page in laid.pages)
            made.append(replace(laid, pages=pages, number=number))
        else:
            made.append(laid)
    return made


def _run(name: str, stock: str, duplex: str, members: Sequence[tuple[Laid, Imposed]]) -> PrintRun:
    pages: list[Page] = []
    sheets: list[RunSheet] = []
    for laid, imposed in members:
        first = len(pages) + 1
        pages.extend(imposed.sides)
        sheets.append(RunSheet(laid, first, len(pages), imposed))
    return PrintRun(name, stock, duplex, tuple(pages), tuple(sheets))


def _halves(run: PrintRun) -> list[PrintRun]:
    """The fronts and the backs of a two-sided run, for a printer that prints one side at a time."""
    halves = []
    for offset, half in ((0, "fronts"), (1, "backs")):
        sheets = tuple(replace(s, first=(s.first + 1) // 2, last=(s.last + 1) // 2) for s in run.sheets)
        halves.append(
            replace(run, pages=run.pages[offset::2], sheets=sheets, sides="one-sided", half=half, flip=run.sides)
        )
    return halves
