"""Moments on a time axis: when they were in years, the axis with its ticks, and the points on it."""

from __future__ import annotations

from dataclasses import dataclass

from packgen.page.desk import Desk
from packgen.page.look import BLACK, HAIR, HEAVY, MIDDLE, THIN
from packgen.page.marks import Stroke
from packgen.page.pen import Pen
from packgen.page.time_axis import TimeAxis
from packgen.reading.models import Day, Event, When


@dataclass(frozen=True, slots=True)
class Moment:
    """An event on the axis: when it began and ended in years, what stands beside it."""

    start: float
    end: float
    when: str
    words: str
    open: bool
    event: Event

    @property
    def lasted(self) -> bool:
        """True if it is drawn as a bar, not as a point."""
        return self.end - self.start >= 1.0


def years_of(when: When) -> tuple[float, float]:
    """Where an event begins and ends on the axis. A date known to the year stands at that year's own mark.

    A moment known only to lie in some years stands in their middle; an open end or beginning is left out.
    """
    first, last = when.start or when.end, when.end or when.start
    assert first is not None and last is not None
    start, end = year_of(first), year_of(last)
    if when.spread:
        start = end = (start + end) / 2
    return start, end if when.is_span else start


def year_of(day: Day) -> float:
    """A date as a year with its fraction."""
    return day.year + ((day.month or 1) - 1) / 12 + ((day.day or 1) - 1) / 372


def draw_axis(desk: Desk, pen: Pen, axis: TimeAxis, begin: float, end: float, line: float, top: float) -> None:
    """The axis from `begin` to `end` mm along it, its beginning at `top`, with its years on the left."""
    pen.line(line, top, line, top - (end - begin), HEAVY, BLACK, role="axis")
    small = desk.look.small
    for year in axis.small_ticks:
        at = axis.down(year)
        if begin - 0.01 <= at <= end + 0.01:
            pen.line(line - 1.4, top - at + begin, line, top - at + begin, HAIR, BLACK, role="small-tick")
    for year, name in axis.ticks:
        at = axis.down(year)
        if begin - 0.01 <= at <= end + 0.01:
            pen.line(line - 3.0, top - at + begin, line, top - at + begin, MIDDLE, BLACK, role="year-tick")
            pen.text(line - 4.2, top - at + begin - small.size * 0.33, name, small, align="right", role="year")


def draw_dot(pen: Pen, mark: Moment, x: float, y: float) -> None:
    """The point of an event: full if the date is sure, open if it is about."""
    if mark.open:
        pen.ring(x, y, 1.3, Stroke(MIDDLE, 0.0, (0.8, 0.5)), 1.0, role="event")
    else:
        pen.ring(x, y, 1.1, Stroke(THIN, 0.0), 0.0, role="event")
