"""A path for the youngest: numbered places to draw in, one after the other, joined by arrows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from packgen.page.blocks import Kit
from packgen.page.desk import Desk
from packgen.page.frame import Head
from packgen.page.look import BOLD, HEAVY, SOFT
from packgen.page.marks import Page, Stroke
from packgen.page.pen import Pen
from packgen.page.text import fit

_RING = 9.0  # mm, the radius of a number's ring
_GAP = 9.0  # mm between two places; the arrow is seen in it
_SIDE = 26.0  # mm, from the left edge to the places


@dataclass(frozen=True, slots=True)
class Stop:
    """A place on the path: what is drawn there, and the year for whoever reads it aloud."""

    words: str
    when: str


def path_page(desk: Desk, head: Head, stops: Sequence[Stop], name: str) -> tuple[Page, list[Stop]]:
    """A page with the path, and those stops whose words do not fit."""
    crowded: list[Stop] = []

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        crowded.extend(_path(desk.kit, pen, stops, (x, y, width, height)))

    return desk.free_page(paint, head, name=name), crowded


def _path(kit: Kit, pen: Pen, stops: Sequence[Stop], place: tuple[float, float, float, float]) -> list[Stop]:
    """Draw the stops down a rectangle (x, y, width, height); returns those whose words do not fit."""
    x, y, width, height = place
    count = len(stops)
    high = (height - _GAP * (count - 1)) / count
    crowded = []
    for k, stop in enumerate(stops):
        top = y + height - k * (high + _GAP)
        _number(kit, pen, k + 1, x + _RING, top - _RING - 1.0)
        if k + 1 < count:
            pen.arrow(x + _RING, top - 2 * _RING - 4.0, x + _RING, top - high - _GAP + 2.0, HEAVY * 1.6, 0.3, 7.0)
        if not _box(kit, pen, stop, (x + _SIDE, top - high, width - _SIDE, high)):
            crowded.append(stop)
    return crowded


def _number(kit: Kit, pen: Pen, number: int, x: float, y: float) -> None:
    style = kit.look.title
    pen.ring(x, y, _RING, Stroke(BOLD, 0.2), 1.0, role="stop")
    cap = kit.faces.metrics(style.face).cap * style.size
    pen.text(x, y - cap / 2, str(number), style, align="centre", role="stop-number")


def _box(kit: Kit, pen: Pen, stop: Stop, box: tuple[float, float, float, float]) -> bool:
    """A place to draw in with its words along the top and the year beside them; False if the words do not fit."""
    x, y, wide, high = box
    look = kit.look
    pen.box(x, y, wide, high, Stroke(look.frame, 0.2), corner=look.corner, role="drawbox")
    year = look.small.grey(SOFT)
    aside = kit.faces.width(stop.when, year.face, year.size)
    words = fit(kit.faces, stop.words, look.strong, wide - 14.0 - aside, 2.1 * look.strong.leading, look.small.size)
    top = y + high - 2.5
    pen.lines(x + 5.0, top, words.lines, words.style)
    pen.text(x + wide - 5.0, top - pen.drop(words.style), stop.when, year, align="right")
    return words.fits
