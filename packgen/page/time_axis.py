"""A linear time axis down the page: its ticks, its scale over one or more sheets, labels that do not collide.

Years are astronomical (1 BC is 0, 44 BC is -43) and may have a fraction; nothing here shows a year 0 to a reader.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

# Label steps in years that people count in.
_STEPS = (1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000, 2500, 5000, 10000, 20000, 50000, 100000)


def year_name(year: int) -> str:
    """An astronomical year as people say it: 1834, 44 BC. Years before AD 1000 carry AD where BC ones are near."""
    return str(year) if year > 0 else f"{1 - year} BC"


def _historical(start: float, end: float, step: int) -> list[int]:
    """The astronomical years from start to end that are round numbers as people count: ... 20 BC, 10 BC, 10, 20 ..."""
    years: list[int] = []
    for k in range(math.floor(start / step) - 1, math.ceil(end / step) + 2):
        year = k * step if k > 0 else 1 + k * step
        if start - 1e-9 <= year <= end + 1e-9 and k != 0:
            years.append(year)
    if step == 1 and start <= 0 <= end and 0 not in years:
        years.append(0)
    return sorted(set(years))


@dataclass(frozen=True, slots=True)
class TimeAxis:
    """The axis over all its sheets: from year `start` at the top to `end`, `scale` mm a year, a label each `step`."""

    start: float
    end: float
    scale: float
    step: int

    def down(self, year: float) -> float:
        """How many mm below the axis's beginning a year lies."""
        return (year - self.start) * self.scale

    @property
    def length(self) -> float:
        """The length of the axis in mm."""
        return (self.end - self.start) * self.scale

    @property
    def ticks(self) -> tuple[tuple[float, str], ...]:
        """Labelled ticks: year and what to write."""
        return tuple((float(year), year_name(year)) for year in _historical(self.start, self.end, self.step))

    @property
    def small_ticks(self) -> tuple[float, ...]:
        """Years between the labelled ones, where they are at least 1.6 mm apart."""
        for parts in (10, 5, 4, 2):
            if self.step % parts == 0 and self.step // parts * self.scale >= 1.6:
                labelled = {year for year, _ in self.ticks}
                every = _historical(self.start, self.end, self.step // parts)
                return tuple(float(y) for y in every if y not in labelled)
        return ()


def axis_for(first: float, last: float, length: float) -> TimeAxis:
    """An axis `length` mm long that holds the years `first` to `last`, its ends on round years; labels 14 mm apart."""
    span = max(last - first, 4.0)
    step = next((s for s in _STEPS if s * length / (span * 1.06) >= 14.0), _STEPS[-1])
    middle = (first + last) / 2
    low, high = min(first, middle - span / 2), max(last, middle + span / 2)
    room = span * 0.02
    start = _floor(low - room, step)
    end = _floor(high + room, step) + step
    if end - (high + room) > step - 1e-9:
        end -= step
    return TimeAxis(start, end, length / (end - start), step)


def _floor(year: float, step: int) -> float:
    """The last round year at or before one: a multiple of the step after Christ, one more than a multiple before."""
    if year >= step:
        return math.floor(year / step) * float(step)
    if year > 0:
        return 1.0 if step > 1 else math.floor(year) * 1.0
    return 1.0 + math.floor((year - 1) / step) * step


def spread(wanted: Sequence[float], heights: Sequence[float], low: float, high: float,
           gap: float = 1.2) -> list[float] | None:  # fmt: skip
    """Where to put labels: their tops in mm down the page, in order, none overlapping, as near as can be to where they
    are wanted (the middle of each). None if they do not all fit between `low` and `high`.

    The clusters of labels pushing against each other are merged and centred, which is the least-squares solution
    (pool adjacent violators).
    """
    total = sum(heights) + gap * max(0, len(heights) - 1)
    if total > high - low + 1e-9:
        return None
    clusters: list[tuple[float, float, list[int]]] = []  # wished top, height, members
    for k, (middle, height) in enumerate(zip(wanted, heights, strict=True)):
        top = min(max(middle - height / 2, low), high - height)
        clusters.append((top, height, [k]))
        while len(clusters) > 1 and clusters[-2][0] + clusters[-2][1] + gap > clusters[-1][0] + 1e-9:
            clusters[-2:] = [_merged(clusters[-2], clusters[-1], wanted, heights, low, high, gap)]
    tops = [0.0] * len(heights)
    for top, _, members in clusters:
        at = top
        for k in members:
            tops[k] = at
            at += heights[k] + gap
    return tops


def _merged(
    a: tuple[float, float, list[int]],
    b: tuple[float, float, list[int]],
    wanted: Sequence[float],
    heights: Sequence[float],
    low: float,
    high: float,
    gap: float,
) -> tuple[float, float, list[int]]:
    members = [*a[2], *b[2]]
    height = a[1] + gap + b[1]
    offset, sums = 0.0, 0.0
    for k in members:
        sums += wanted[k] - heights[k] / 2 - offset
        offset += heights[k] + gap
    top = min(max(sums / len(members), low), high - height)
    return top, height, members
