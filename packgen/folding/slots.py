"""The values a planned fold is made of: slots for pages, lines to fold and cut along, sheets, and the whole plan."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from packgen.folding.program import Program, Side, Spine

Sides = Literal["one-sided", "two-sided-long-edge", "two-sided-short-edge"]
Flip = Literal["two-sided-long-edge", "two-sided-short-edge"]
Matrix = tuple[float, float, float, float, float, float]
LineKind = Literal["valley", "mountain", "cut", "slit"]


@dataclass(frozen=True, slots=True)
class Slot:
    """One page's cell on a printed side, mm from the lower left of that side as its PDF page is seen upright.

    page: counts from 1; 0 is a blank that fills up the book. rotation_deg: anticlockwise turn of the page in its cell.
    creep: how far the page's content moves toward its spine. spine: the edge of the page, as it is read, at the spine.
    clear: (left, bottom, right, top) of the page, as it is read, that a glue flap will cover.
    """

    page: int
    x: float
    y: float
    width: float
    height: float
    rotation_deg: Literal[0, 90, 180, 270]
    creep: float
    spine: Spine
    clear: tuple[float, float, float, float] = (0.0, 0.0, 0.0, 0.0)

    @property
    def page_width(self) -> float:
        """The width of the page as it is read."""
        return self.height if self.rotation_deg in (90, 270) else self.width

    @property
    def page_height(self) -> float:
        """The height of the page as it is read."""
        return self.width if self.rotation_deg in (90, 270) else self.height

    @property
    def matrix(self) -> Matrix:
        """(a, b, c, d, e, f): page mm to side mm, creep included: x' = a x + c y + e, y' = b x + d y + f."""
        place: Matrix = {
            0: (1.0, 0.0, 0.0, 1.0, self.x, self.y),
            90: (0.0, 1.0, -1.0, 0.0, self.x + self.width, self.y),
            180: (-1.0, 0.0, 0.0, -1.0, self.x + self.width, self.y + self.height),
            270: (0.0, -1.0, 1.0, 0.0, self.x, self.y + self.height),
        }[self.rotation_deg]
        along = {"left": (-1, 0), "right": (1, 0), "top": (0, 1), "bottom": (0, -1), "none": (0, 0)}[self.spine]
        dx, dy = along[0] * self.creep, along[1] * self.creep
        a, b, c, d, e, f = place
        return a, b, c, d, e + a * dx + c * dy, f + b * dx + d * dy


@dataclass(frozen=True, slots=True)
class FoldLine:
    """A line to fold or cut along, in mm of the side it is seen on."""

    x1: float
    y1: float
    x2: float
    y2: float
    kind: LineKind


@dataclass(frozen=True, slots=True)
class FoldSheet:
    """One sheet of paper: the slots of its two sides, its lines as seen on the front, and ticks for both sides.

    `back` is empty if only the front is printed. Ticks are the ends of the lines, at the sheet's edges. `inner_cuts`
    are the cut lines that end inside the sheet: drawn whole on the front, for ticks do not tell where to stop.
    """

    front: tuple[Slot, ...]
    back: tuple[Slot, ...]
    fold_lines: tuple[FoldLine, ...]
    cut_lines: tuple[FoldLine, ...]
    front_ticks: tuple[FoldLine, ...]
    back_ticks: tuple[FoldLine, ...]
    inner_cuts: tuple[FoldLine, ...] = ()
    signature: int = 0


@dataclass(frozen=True, slots=True)
class FoldPlan:
    """A whole book on its sheets.

    page_width and page_height: the trimmed page (the largest, where panels differ). pages: those asked for; book_pages:
    with the blanks that fill the last sheet. sheet_width and sheet_height: as turned for printing. sides: the duplex
    setting it is planned for. signatures: the number of sheets in each section. creep_per_sheet: the caliper by which
    each nested leaf moves toward the spine, 0 where nothing is nested. laid: the side that looks up for the first step.
    """

    scheme: str
    title: str
    program: Program
    page_width: float
    page_height: float
    pages: int
    book_pages: int
    sheet_width: float
    sheet_height: float
    sides: Sides
    sheets: tuple[FoldSheet, ...]
    signatures: tuple[int, ...]
    caliper: float
    creep_per_sheet: float
    laid: Side

    @property
    def fold_lines(self) -> tuple[FoldLine, ...]:
        """The lines to fold on the first sheet's front (every sheet's, unless sheets are joined end to end)."""
        return self.sheets[0].fold_lines

    @property
    def cut_lines(self) -> tuple[FoldLine, ...]:
        """The lines to cut on the first sheet's front."""
        return self.sheets[0].cut_lines

    @property
    def creep_most(self) -> float:
        """The furthest that any page is moved toward its spine."""
        return max(slot.creep for sheet in self.sheets for slot in (*sheet.front, *sheet.back))


def natural_flip(width: float, height: float) -> Flip:
    """The duplex setting that turns a sheet of that shape about its upright middle line, so that backs stay upright.

    A page is turned about its long or its short edge as if bound there (IPP 1.1 `sides`, kept by RFC 8011).
    """
    return "two-sided-short-edge" if width > height else "two-sided-long-edge"
