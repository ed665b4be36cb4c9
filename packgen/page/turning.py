"""How a stack of fronts is turned over for its backs: a small figure, about the long or the short edge."""

from __future__ import annotations

import math

from packgen.page.look import BOLD, GUIDE, HAIR, MIDDLE, SOFT
from packgen.page.marks import Stroke
from packgen.page.pen import Pen
from packgen.page.text import Style

_WIDE, _HIGH = 13.0, 18.0


def draw_turn(pen: Pen, x: float, y: float, width: float, short_edge: bool, words: tuple[str, str],
              style: Style) -> None:  # fmt: skip
    """A front and its back side by side, `width` mm wide in all, and between them the way the stack goes over.

    `words` name front and back. Figure and words together are FIGURE_HEIGHT mm high, from y upwards.
    """
    base = y + style.leading + 1.0
    for left, word, front in ((x, words[0], True), (x + width - _WIDE, words[1], False)):
        _sheet(pen, left, base, front, short_edge)
        pen.text(left + _WIDE / 2, y + 0.8, word, style.grey(SOFT), align="centre")
    _way(pen, x + _WIDE, x + width - _WIDE, base + _HIGH / 2, short_edge)


FIGURE_HEIGHT = _HIGH + 6.0


def _sheet(pen: Pen, x: float, y: float, front: bool, short_edge: bool) -> None:
    """A sheet: lines of print on the front, none yet on the back; a cross in the corner that moves with it."""
    pen.box(x, y, _WIDE, _HIGH, Stroke(MIDDLE, 0.2), 1.0 if front else 0.94, role="turn")
    for k in range(5 if front else 0):
        level = y + _HIGH - 4.0 - 2.6 * k
        pen.line(x + 2.0, level, x + _WIDE - (2.0 if k < 4 else 6.0), level, HAIR, GUIDE)
    # Turned like the page of a book, the left corner comes to lie right; like the page of a pad, the top one below.
    mark_x = x + (2.2 if front or short_edge else _WIDE - 2.2)
    mark_y = y + (_HIGH - 1.9 if front or not short_edge else 1.9)
    for way in (1, -1):
        pen.line(mark_x - 0.9, mark_y - 0.9 * way, mark_x + 0.9, mark_y + 0.9 * way, BOLD, 0.1)


def _way(pen: Pen, left: float, right: float, middle: float, short_edge: bool) -> None:
    """The edge the stack turns about, dashed, and an arrow round it."""
    centre = (left + right) / 2
    reach = min((right - left) / 2 - 3.0, 6.0)
    if short_edge:
        pen.line(centre - reach - 1.5, middle, centre + reach + 1.5, middle, HAIR, 0.3, (1.4, 1.0))
        points = [(centre + 2.2 * math.cos(a), middle + reach * math.sin(a)) for a in _angles(90, -60)]
    else:
        pen.line(centre, middle - reach - 1.5, centre, middle + reach + 1.5, HAIR, 0.3, (1.4, 1.0))
        points = [(centre + reach * math.cos(a), middle + 2.2 * math.sin(a)) for a in _angles(180, 30)]
    pen.polygon(points, Stroke(MIDDLE, 0.1), closed=False, role="turn")
    (x1, y1), (x2, y2) = points[-2], points[-1]
    size = math.hypot(x2 - x1, y2 - y1) or 1.0
    end = (x2 + (x2 - x1) / size * 2.2, y2 + (y2 - y1) / size * 2.2)
    pen.arrow(x2, y2, end[0], end[1], MIDDLE, 0.1, 2.2)


def _angles(first: float, last: float) -> list[float]:
    steps = 24
    return [math.radians(first + (last - first) * k / steps) for k in range(steps + 1)]
