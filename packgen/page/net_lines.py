"""The lines of a net: what a cut, a fold, a bend, a hole and a glue letter look like on card, and drawing them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import cos, dist, radians, sin

from packgen.nets.layout import NetSheet
from packgen.nets.net import Fold, Hole
from packgen.page.desk import Desk
from packgen.page.look import BOLD, HAIR, MIDDLE, SOFT, THIN
from packgen.page.marks import Mark, Point, Stroke
from packgen.page.net_labels import Placed, Spot
from packgen.page.pen import Pen

# Yoshizawa and Randlett's lines: a valley fold dashed, a mountain fold dash-dot; a cut is solid and wide.
VALLEY = Stroke(MIDDLE, 0.15, (2.4, 1.4))
MOUNTAIN = Stroke(MIDDLE, 0.15, (3.2, 1.0, 0.3, 1.0))
CUT = Stroke(BOLD, 0.0)
# Fine and pale, so that nobody creases them.
BEND = Stroke(HAIR, 0.45, (0.5, 1.5))
LAY = Stroke(HAIR, 0.45)
RING = Stroke(THIN, 0.0, (0.75, 0.6))
CROSS = Stroke(HAIR, 0.2)
TAB = 0.955
_EDGE_INK = 0.35
"""Of a letter beside an edge: it shows on the finished model, so it is paler than that on the tab."""
_SAME = 1e-3


def draw_lines(pen: Pen, sheet: NetSheet) -> None:
    """Draw the folds, bends, cuts and holes of a sheet, in the sheet's own mm."""
    for fold, points in rows_of(sheet.folds):
        stroke = MOUNTAIN if fold.kind == "mountain" else VALLEY
        if len(points) == 2:
            pen.line(*points[0], *points[1], stroke.width, stroke.ink, stroke.dash, role=f"fold-{fold.kind}")
        else:
            pen.polygon(points, stroke, closed=False, role=f"fold-{fold.kind}")
    for score in sheet.scores:
        pen.polygon(score, BEND, closed=False, role="bend")
    for lay in sheet.lays:
        pen.polygon(lay, LAY, closed=False, role="lay")
    for cut in sheet.cuts:
        pen.polygon(cut.points, CUT, closed=cut.closed, role="cut")
    for hole in sheet.holes:
        draw_hole(pen, hole)


def rows_of(folds: Sequence[Fold]) -> Iterator[tuple[Fold, list[Point]]]:
    """Folds of one kind that go on from each other as one line (a round rim), so that its dashes run through."""
    row: list[Point] = []
    last: Fold | None = None
    for fold in folds:
        if last and _goes_on(last, row, fold):
            row.append(fold.end)
            continue
        if last:
            yield last, row
        last, row = fold, [fold.start, fold.end]
    if last:
        yield last, row


def _goes_on(last: Fold, row: Sequence[Point], fold: Fold) -> bool:
    """True if a fold begins where a row of its kind ends, and nearly in its direction."""
    alike = (fold.kind, fold.on_tab) == (last.kind, last.on_tab)
    return alike and dist(row[-1], fold.start) < _SAME and _bends_little(row[-2], row[-1], fold.end)


def _bends_little(a: Point, b: Point, c: Point) -> bool:
    """True if a line turns by less than about 30 degrees at its middle point."""
    first, then = (b[0] - a[0], b[1] - a[1]), (c[0] - b[0], c[1] - b[1])
    size = dist(a, b) * dist(b, c)
    return size > 0 and (first[0] * then[0] + first[1] * then[1]) / size > cos(radians(30))


def draw_hole(pen: Pen, hole: Hole) -> None:
    """A hole as a dashed ring with a cross, a mark as a cross alone; a tip to snip off has its curve among the cuts."""
    x, y = hole.centre
    if hole.snip:
        return
    if hole.mark_only:
        reach = max(hole.across / 2, 1.2)
        stroke = Stroke(THIN, 0.0)
    else:
        pen.ring(x, y, hole.across / 2, RING, 1.0, role="hole")
        reach, stroke = hole.across / 2 + 1.6, CROSS
    pen.line(x - reach, y, x + reach, y, stroke.width, stroke.ink, role="mark")
    pen.line(x, y - reach, x, y + reach, stroke.width, stroke.ink, role="mark")


def draw_letter(desk: Desk, pen: Pen, placed: Placed, patched: bool) -> None:
    """A glue letter; `patched` on a white patch, where it stands on a drawing or on bend lines."""
    style = desk.look.strong.at(placed.size).grey(_EDGE_INK if placed.letter.on == "edge" else 0.1)
    inner = desk.kit.pen()
    spot = placed.spot
    if patched:
        patch(inner, spot)
    inner.text(0.0, -style.size * 0.34, placed.letter.text, style, align="centre", role="glue-letter")
    turned(pen, inner.marks, spot.at, spot.turn_deg)


def patch(pen: Pen, spot: Spot) -> None:
    """A white patch round the origin, a little larger than the letters on it need."""
    wide, high = spot.wide + 0.5, spot.high + 0.45
    pen.box(-wide, -high, 2 * wide, 2 * high, fill=1.0, corner=0.8, role="patch")


def turned(pen: Pen, marks: Sequence[Mark], at: Point, angle: float) -> None:
    """Put marks drawn about the origin at a point, turned."""
    c, s = cos(radians(angle)), sin(radians(angle))
    pen.group(marks, (c, s, -s, c, at[0], at[1]))


def draw_strips(desk: Desk, pen: Pen, sheet: NetSheet) -> None:
    """The names of the strips that two sheets share, and the crosses by which they are laid over each other."""
    style = desk.look.small.at(2.6).grey(SOFT)
    for overlap in sheet.overlaps:
        for x, y in overlap.crosses:
            pen.line(x - 2.5, y, x + 2.5, y, CROSS.width, CROSS.ink, role="cross")
            pen.line(x, y - 2.5, x, y + 2.5, CROSS.width, CROSS.ink, role="cross")
        (ax, ay), (bx, by) = overlap.crosses
        inner = desk.kit.pen()
        spot = Spot((0.0, 0.0), desk.faces.width(overlap.text, style.face, style.size) / 2, 1.2, 0.0)
        patch(inner, spot)
        inner.text(0.0, -style.size * 0.34, overlap.text, style, align="centre", role="strip")
        turned(pen, inner.marks, ((ax + bx) / 2, (ay + by) / 2), 90.0 if abs(bx - ax) < abs(by - ay) else 0.0)
