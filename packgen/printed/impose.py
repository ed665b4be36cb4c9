"""Pages on printed sheets: straight through, or as a small book folded from the family's paper."""

from __future__ import annotations

from dataclasses import dataclass

from packgen.folding import plan_fold
from packgen.folding.slots import Flip, FoldPlan, FoldSheet
from packgen.page.desk import Laid
from packgen.page.marks import Group, Line, Mark, Page, Stroke
from packgen.reading.models import Printer

_TICK = Stroke(0.25, 0.35)
_SLIT = Stroke(0.35, 0.25)


@dataclass(frozen=True, slots=True)
class Imposed:
    """The sides to print, in order, and the duplex setting they were made for. `plan` is set for folded books."""

    sides: tuple[Page, ...]
    duplex: str
    plan: FoldPlan | None = None


def duplex_for(wanted: str, printer: Printer) -> str:
    """The duplex setting for a run that wants `wanted`, on this printer.

    A printer that can only flip on the short edge gets every two-sided run so; its backs are then turned by `impose`.
    """
    if wanted == "one-sided":
        return "one-sided"
    return "two-sided-short-edge" if printer.sides == "two-sided-short-edge" else wanted


def impose(laid: Laid, paper: tuple[float, float], printer: Printer) -> Imposed:
    """The printed sides of one laid sheet. Two-sided sheets begin on a recto and end on a verso (blank if need be)."""
    if laid.fold:
        return _folded(laid, paper, printer)
    duplex = duplex_for(laid.sides, printer)
    if laid.sides == "one-sided":
        return Imposed(laid.pages, duplex)
    pages = list(laid.pages)
    if len(pages) % 2:
        last = pages[-1]
        pages.append(Page(last.width, last.height, (), last.title))
    return Imposed(tuple(_back(p, laid.sides, duplex, printer) if k % 2 else p for k, p in enumerate(pages)), duplex)


def _back(page: Page, wanted: str, duplex: str, printer: Printer) -> Page:
    """A back as it must be printed: turned if the flip differs from the one wanted, moved by the printer's shift."""
    matrix = (-1.0, 0.0, 0.0, -1.0, page.width, page.height) if wanted != duplex else (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
    return _moved(page, matrix, printer)


def _moved(page: Page, matrix: tuple[float, float, float, float, float, float], printer: Printer) -> Page:
    """The page under a matrix, less the printer's front-to-back shift."""
    right, up = printer.duplex_shift
    a, b, c, d, e, f = matrix
    placed = (a, b, c, d, e - right, f - up)
    if placed == (1.0, 0.0, 0.0, 1.0, 0.0, 0.0) or not page.marks:
        return page
    return Page(page.width, page.height, (Group(page.marks, placed),), page.title)


def _folded(laid: Laid, paper: tuple[float, float], printer: Printer) -> Imposed:
    assert laid.fold is not None
    # The scheme's own flip, unless the printer can do only the one on the short edge.
    wanted: Flip | None = "two-sided-short-edge" if printer.sides == "two-sided-short-edge" else None
    plan = plan_fold(laid.fold.scheme, len(laid.pages), *paper, caliper=printer.caliper,
                     two_sided_flip=wanted, panels=laid.fold.panels, margin=printer.margin)  # fmt: skip
    sides: list[Page] = []
    for sheet in plan.sheets:
        sides.append(_side(laid, plan, sheet, front=True))
        if plan.sides != "one-sided":
            back = _side(laid, plan, sheet, front=False)
            sides.append(_moved(back, (1.0, 0.0, 0.0, 1.0, 0.0, 0.0), printer))
    return Imposed(tuple(sides), plan.sides, plan)


def _side(laid: Laid, plan: FoldPlan, sheet: FoldSheet, *, front: bool) -> Page:
    """One side of a folded sheet: its pages in their cells, ticks at its edges, slits where scissors go."""
    marks: list[Mark] = []
    for slot in sheet.front if front else sheet.back:
        page = laid.pages[slot.page - 1] if 0 < slot.page <= len(laid.pages) else None
        if page and page.marks:
            clip = ((0.0, 0.0), (page.width, 0.0), (page.width, page.height), (0.0, page.height))
            marks.append(Group(page.marks, slot.matrix, clip))
    ticks = sheet.front_ticks if front else sheet.back_ticks
    marks += [Line(t.x1, t.y1, t.x2, t.y2, _TICK, "fold-tick") for t in ticks]
    if front:
        marks += [Line(c.x1, c.y1, c.x2, c.y2, _SLIT, "slit") for c in sheet.inner_cuts]
    return Page(plan.sheet_width, plan.sheet_height, tuple(marks), laid.title)
