"""What a fold step says: plain sentences from the same program as the figures."""

from __future__ import annotations

from fractions import Fraction

from packgen.folding.program import CutAndStack, Edge, Fold

Bounds = tuple[Fraction, Fraction, Fraction, Fraction]

SCISSORS = "Cut away from your fingers."
NEEDLE = "A grown-up staples, or helps with the needle."

TURN = "Turn the whole pile over like the page of a book."
PUSH = "Hold both ends and push them together until the slit opens wide."
WIND = "Open the sheet out. Begin at page 1: fold it on page 2, and go on forth and back along the whole strip."
COVERS = "Seen from above it is a fan. Paste the first and the last leaf to two covers of card."
GLUE = "Put glue on the flap at the end of each sheet and stick it behind the first panel of the next sheet."
TRIM_FLAP = "Cut the flap off the last sheet."
FAN = "Fold forth and back along the lines like a fan: behind at the dash-dot lines, over at the dashed ones."
FAN_READY = "Seen from above it is a fan. It folds up flat, with page 1 on top."

_OPPOSITE: dict[Edge, Edge] = {"left": "right", "right": "left", "top": "bottom", "bottom": "top"}
_OPEN_AGAIN = " Press it flat, then open it again."


def lay(sheets: int, page: int, where: str, *, printed_one_side: bool) -> str:
    """How to lay the sheets down. `page` is the first of those that look up, `where` its place."""
    if sheets > 1:
        return (
            f"Keep the {sheets} sheets in the order they were printed and turn the pile over: "
            f"page {page} looks up, at the {where}."
        )
    side = "the printed side up" if printed_one_side else f"page {page} looking up"
    return f"Lay the sheet down with {side}, " + (f"page {page} " if printed_one_side else "") + f"at the {where}."


def lay_strip(sheets: int) -> str:
    """How to lay down what becomes a concertina."""
    if sheets == 1:
        return "Lay the sheet down with page 1 at the left."
    return f"Lay the {sheets} sheets side by side in their order, page 1 at the left."


def fold(step: Fold, bounds: Bounds, *, opened: bool) -> str:
    """Which edge goes where, and which kind of fold it makes."""
    edges = dict(zip(("left", "bottom", "right", "top"), bounds, strict=True))
    lands = 2 * step.at - edges[step.moving]
    other = _OPPOSITE[step.moving]
    middle = (edges[step.moving] + edges[other]) / 2
    to_middle = lands in (middle, Fraction(1, 2))
    to = f"the {other} edge" if lands == edges[other] else "the middle" if to_middle else "where the arrow ends"
    way = {"top": "down", "bottom": "up", "left": "over", "right": "over"}[step.moving]
    if step.kind == "mountain":
        way = "behind"
    return f"Fold the {step.moving} edge {way} to {to}. Make a {step.kind} fold." + (_OPEN_AGAIN if opened else "")


def cut(lines: int, layers: int, *, opened: bool) -> str:
    """How to cut along lines that end inside the paper."""
    what = "the heavy line and stop where it ends" if lines == 1 else f"the {lines} heavy lines and stop where they end"
    through = ", through all the layers" if layers > 1 else ""
    return f"Cut along {what}{through}." + (" Open the sheet out again." if opened else "")


def cut_and_stack(step: CutAndStack) -> str:
    """How to cut a pile across and lay the parts together."""
    other = _OPPOSITE[step.moving]
    return f"Cut right across along the line. Lay the {step.moving} part on the {other} part, the same way up."


def fasten(sections: int) -> str:
    """How to fasten the spine."""
    each = " Do the same with each of the other sections." if sections > 1 else ""
    return f"Open the book at its middle and put two staples through the fold, or sew it.{each}"


def trim(edges: tuple[Edge, ...]) -> str:
    """Which folded edges to cut open."""
    many = "edges" if len(edges) > 1 else "edge"
    return f"Cut the {' and the '.join(edges)} {many} open along the fold, so that every page turns."


def star(leaves: int) -> str:
    """What a ring of panels looks like when pushed together."""
    return f"Go on until {leaves} leaves stand round the middle, seen here from above. Lay them round to page 1."


def finished(spine: str, page: int, sections: int) -> str:
    """What the finished book looks like; `page` lies on top (0: none, it is covered)."""
    if not page:
        return "Ready: page 1 is inside the front cover."
    if sections > 1:
        return f"Lay the {sections} sections on one another in their order. Page {page} is on top."
    at = {"left": "the fold at the left", "right": "the fold at the right", "top": "the fold at the top"}.get(spine)
    return f"Ready: page {page} is on top" + (f", {at}." if at else ".")


def place_word(x: float, y: float, *, columns: int, rows: int) -> str:
    """Where on the sheet something lies (x and y from 0 to 1), such as `lower left`."""
    across = "left" if x < 0.4 else "right" if x > 0.6 else "middle"
    up = ("lower" if y < 0.4 else "upper" if y > 0.6 else "") if rows > 1 else ""
    return f"{up} {across}".strip() if columns > 1 else (up or "middle")
