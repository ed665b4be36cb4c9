"""The busiest ten years of a timeline, and its longest stretch without an event."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from packgen.reading.models import Event

TEN = 10
_LEAST = 4  # events; of fewer nothing is told


@dataclass(frozen=True, slots=True)
class Stretch:
    """Years of a timeline, and how many events begin in them."""

    first: int
    last: int
    count: int = 0


def _years(events: Sequence[Event]) -> list[tuple[int, int]]:
    """The first and the last year of each event in the order of time; none if one lies before the year 1."""
    days = [(e.when.start or e.when.end, e.when.end or e.when.start) for e in events]
    years = sorted((start.year, end.year) for start, end in days if start and end)
    return years if len(years) >= _LEAST and years[0][0] > 0 else []


def busiest(events: Sequence[Event]) -> Stretch | None:
    """The ten years in which most events begin, the earliest of several; None if there are few events."""
    starts = [start for start, _ in _years(events)]
    if not starts:
        return None
    inside = {first: [year for year in starts if first <= year < first + TEN] for first in starts}
    first = max(inside, key=lambda year: (len(inside[year]), -year))
    return Stretch(first, first + TEN - 1, len(inside[first]))


def longest_gap(events: Sequence[Event]) -> Stretch | None:
    """The longest stretch from the end of one event to the beginning of the next; None if there are few events."""
    years = _years(events)
    gaps, until = [], years[0][1] if years else 0
    for (_, end), (start, _) in pairwise(years):
        until = max(until, end)
        gaps.append(Stretch(until, start))
    return max(gaps, key=lambda gap: (gap.last - gap.first, -gap.first), default=None)
