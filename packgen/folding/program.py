"""Fold programs: how a small book is folded, as data.

A program says how the sheet is divided into panels and what is done with it, step by step, as it lies on the table. All
places are fractions of the sheet, x to the right and y upwards from its lower left corner as it lies there. Which page
stands on which panel, on which side and which way up, is never written down: `layers` folds the sheet in memory and
`derive` reads it.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

Edge = Literal["left", "right", "top", "bottom"]
Spine = Literal["left", "right", "top", "bottom", "none"]
Crease = Literal["valley", "mountain"]
Side = Literal["front", "back"]
Cell = tuple[int, int]  # column from the left and row from the bottom, seen from the front, counted from 0


class FoldError(ValueError):
    """A fold that cannot be made. `message` says why in plain words, `instead` what to ask for."""

    def __init__(self, message: str, instead: str) -> None:
        super().__init__(message)
        self.message = message
        self.instead = instead


@dataclass(frozen=True, slots=True)
class Fold:
    """Bring everything beyond the line at `at` to its other side: over the rest (valley) or under it (mountain).

    `moving` names the part that moves and so the line's direction: left and right fold about an upright line.
    """

    at: Fraction
    moving: Edge
    kind: Crease = "valley"
    say: str = ""


@dataclass(frozen=True, slots=True)
class Unfold:
    """Undo the last folds (0: all of them). Creases and cuts stay."""

    folds: int = 0
    say: str = ""


@dataclass(frozen=True, slots=True)
class TurnOver:
    """Turn the whole pile over like a page of a book (about the upright middle line)."""

    say: str = ""


@dataclass(frozen=True, slots=True)
class Cut:
    """Cut through every layer along a straight line. A slit starts at a fold, so that no edge of the sheet opens."""

    x1: Fraction
    y1: Fraction
    x2: Fraction
    y2: Fraction
    kind: Literal["cut", "slit"] = "cut"
    say: str = ""


@dataclass(frozen=True, slots=True)
class CutAndStack:
    """Cut the pile right across at `at` and lay the moving part, unturned, on top of the other."""

    at: Fraction
    moving: Edge
    say: str = ""


@dataclass(frozen=True, slots=True)
class Close:
    """Open the sheet out flat and close the strip (or ring) of panels that the cuts have left, panel on panel.

    The walk starts at `first`, goes on to `second`, and each panel comes to lie under the one before. `face` tells
    whether the first panel's printed face looks up (it is the cover) or down (it is pasted inside a cover).
    """

    first: Cell
    second: Cell
    face: Literal["up", "down"] = "up"
    say: str = ""


@dataclass(frozen=True, slots=True)
class Fasten:
    """Staple or sew through the spine."""

    say: str = ""


@dataclass(frozen=True, slots=True)
class Trim:
    """Cut open the folded edges that are not the spine (binders call them bolts)."""

    edges: tuple[Edge, ...]
    say: str = ""


@dataclass(frozen=True, slots=True)
class Glue:
    """Join the sheets: the flap of each goes behind the first panel of the next."""

    say: str = ""


Step = Fold | Unfold | TurnOver | Cut | CutAndStack | Close | Fasten | Trim | Glue


@dataclass(frozen=True, slots=True)
class Program:
    """One way of folding a sheet.

    columns, rows: shares of the sheet, from the left and from the bottom of its front; each must add up to 1.
    orientation: how the paper is turned, for printing and on the table.
    laid: the side that looks up when the first step begins (`back`: turned over like a page of a book).
    faces: 1 if only the front is printed, else 2.
    spine: where it lies in the finished book with page 1 up; `none` for a book without one.
    head: the edge of the finished book that is the top of page 1.
    reads: `leaf by leaf` from the top of the finished pile to the bottom (pile after pile, from the top left, where the
        folded sheet has more than one); `side by side` along all fronts and then back along the backs; `opened out`:
        what is seen first, then the whole inside laid flat, then the rest.
    assembly: `single` sheet; `nested` sheets, one inside the other; `joined` end to end.
    blank: panel faces that carry no page (column, row, side).
    glue_flap: width in mm of a strip kept free at the right end of every sheet that is joined to another.
    """

    columns: tuple[Fraction, ...]
    rows: tuple[Fraction, ...]
    orientation: Literal["landscape", "portrait"]
    steps: tuple[Step, ...]
    spine: Spine
    laid: Side = "front"
    faces: Literal[1, 2] = 2
    head: Edge = "top"
    reads: Literal["leaf by leaf", "side by side", "opened out"] = "leaf by leaf"
    assembly: Literal["single", "nested", "joined"] = "single"
    blank: tuple[tuple[int, int, Side], ...] = ()
    glue_flap: float = 0.0

    def __post_init__(self) -> None:
        for shares in (self.columns, self.rows):
            if sum(shares) != 1 or min(shares) <= 0:
                raise ValueError("the panels of a fold program must fill the sheet exactly")

    @property
    def panels(self) -> int:
        """The number of panels side by side, by which a scheme of several programs is chosen."""
        return len(self.columns)

    @property
    def pages_per_sheet(self) -> int:
        """The number of panel faces of one sheet that carry a page."""
        return self.faces * len(self.columns) * len(self.rows) - len(self.blank)


@dataclass(frozen=True, slots=True)
class Scheme:
    """A named way of making a book: a title, a sentence about it, and its program, or one for each number of panels.

    usual_panels: the most panels on a sheet unless more are asked for (0: as many as the pages need).
    """

    title: str
    about: str
    programs: tuple[Program, ...]
    usual_panels: int = 0

    @property
    def grows(self) -> bool:
        """True if more pages only mean more sheets."""
        return any(program.assembly != "single" for program in self.programs)

    @property
    def most_pages(self) -> int | None:
        """The most pages the book can have, or None if there is no limit."""
        return None if self.grows else max(program.pages_per_sheet for program in self.programs)


def equal(count: int) -> tuple[Fraction, ...]:
    """That many equal shares of a sheet."""
    return (Fraction(1, count),) * count


HALF = Fraction(1, 2)
QUARTER = Fraction(1, 4)
