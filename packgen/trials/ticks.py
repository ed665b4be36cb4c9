"""Axes a child can read: round steps, room above, and nothing on them that gives the answer away.

Round steps follow P. S. Heckbert, "Nice Numbers for Graph Labels", Graphics Gems (1990), pp. 61-63.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from packgen.trials.frame import plain

_HEADROOM = 1.3
_NEARLY = 1e-9


def nice_number(x: float, rounded: bool) -> float:
    """The round number (1, 2, 5 or 10 times a power of ten) nearest to x > 0, or the first not below it."""
    power = 10.0 ** math.floor(math.log10(x))
    part = x / power
    steps = ((1.5, 1.0), (3.0, 2.0), (7.0, 5.0)) if rounded else ((1 + 1e-9, 1.0), (2 + 1e-9, 2.0), (5 + 1e-9, 5.0))
    for limit, nice in steps:
        if part < limit:
            return nice * power
    return 10.0 * power


def nice_ticks(low: float, high: float, count: int = 5, whole: bool = False) -> tuple[float, ...]:
    """Tick values with a round step that begin at or below `low` and end at or above `high`, about `count` of them.

    `whole` keeps the step a whole number, for things that are counted.
    """
    if not (math.isfinite(low) and math.isfinite(high)):
        raise ValueError("an axis needs finite ends")
    if high - low <= _NEARLY * max(abs(low), abs(high), 1e-6):
        high = low + (abs(low) if abs(low) > 1e-12 else 1.0)
    step = nice_number(nice_number(high - low, False) / max(count - 1, 1), True)
    if whole:
        step = max(1.0, step)
    first = math.floor(low / step + _NEARLY)
    last = math.ceil(high / step - _NEARLY)
    decimals = decimals_of(step)
    return tuple(round(i * step, decimals) for i in range(first, last + 1))


def decimals_of(step: float) -> int:
    """How many decimals a tick of that step needs."""
    return max(0, -math.floor(math.log10(step) + _NEARLY))


@dataclass(frozen=True, slots=True)
class Axis:
    """One axis of a chart: what and unit for its title, ticks with their labels, and `minor` lines between two ticks.

    A `blank` axis has evenly spaced ticks without labels, for a child to number. With `words` the ticks stand at 1,
    2, 3 ... and the labels are the words.
    """

    what: str
    unit: str
    ticks: tuple[float, ...]
    labels: tuple[str, ...]
    minor: int = 5
    blank: bool = False
    words: bool = False

    @property
    def low(self) -> float:
        """Where the axis begins."""
        return self.ticks[0] - (0.5 if self.words else 0.0)

    @property
    def high(self) -> float:
        """Where the axis ends."""
        return self.ticks[-1] + (0.5 if self.words else 0.0)

    @property
    def title(self) -> str:
        """What the axis shows, with its unit: "time to fall (s)"."""
        return f"{self.what} ({self.unit})" if self.unit else self.what

    def place(self, value: float) -> float:
        """Where a value lies along the axis, 0 at its beginning and 1 at its end."""
        return (value - self.low) / (self.high - self.low)


def number_axis(
    what: str, unit: str, values: Iterable[float], count: int = 9, whole: bool = False, headroom: float = 1.0
) -> Axis:
    """An axis that holds all the values, from zero where that leaves them readable, with head-room above.

    Zero is left out only if every value lies in the upper half of the axis, is planned (no head-room asked) and not
    negative.
    """
    found = tuple(values)
    low, high = min(found), max(found)
    if low < 0:
        low, high = low * headroom, max(high * headroom, 0.0)
    elif headroom > 1 or low <= 0.5 * high:
        low, high = 0.0, high * headroom
    ticks = nice_ticks(low, high, count, whole)
    step = ticks[1] - ticks[0]
    decimals = decimals_of(step)
    leading = round(step / 10.0 ** math.floor(math.log10(step) + _NEARLY))
    minor = {1: 5, 2: 4, 5: 5}.get(leading, 5)
    if whole:
        minor = int(min(minor, round(step))) if round(step) % min(minor, max(1, round(step))) == 0 else 1
    return Axis(what, unit, ticks, tuple(plain(t, decimals) for t in ticks), minor)


def with_room(axis: Axis, values: Iterable[float]) -> Axis:
    """The axis with one more step at an end on which a value lies, so that it can be plotted; zero stays the end."""
    found = tuple(values)
    step, decimals = axis.ticks[1] - axis.ticks[0], decimals_of(axis.ticks[1] - axis.ticks[0])
    ticks = list(axis.ticks)
    if min(found) <= ticks[0] + _NEARLY * step and ticks[0] != 0:
        ticks.insert(0, round(ticks[0] - step, decimals))
    if max(found) >= ticks[-1] - _NEARLY * step and ticks[-1] != 0:
        ticks.append(round(ticks[-1] + step, decimals))
    return replace(axis, ticks=tuple(ticks), labels=tuple(plain(t, decimals) for t in ticks))


def result_axis(what: str, unit: str, highs: Sequence[float], whole: bool = False, count: int = 9) -> Axis:
    """The axis for what a child measures: from zero, past the top of every band by a third, then rounded up.

    So even the highest bar leaves room for a surprise, and the ticks do not point at the answer.
    """
    return number_axis(what, unit, (0.0, *highs), count, whole, _HEADROOM)


def word_axis(what: str, words: Sequence[str]) -> Axis:
    """An axis with one place for each word."""
    return Axis(what, "", tuple(float(i + 1) for i in range(len(words))), tuple(words), 1, words=True)


def blank_axis(what: str, unit: str, steps: int = 10) -> Axis:
    """An axis of equal steps without numbers, for when nobody knows the range before the trial."""
    return Axis(what, unit, tuple(float(i) for i in range(steps + 1)), ("",) * (steps + 1), 1, blank=True)


@dataclass(frozen=True, slots=True)
class PictureScale:
    """A scale for a picture graph or bar strips: one picture stands for `each` units, `boxes` of them in a strip.

    `each` is 0 if there is no expectation and the family chooses.
    """

    each: float
    unit: str
    boxes: int

    @property
    def label(self) -> str:
        """One picture's worth in words and figures, e.g. "0.5 s", or "" if it is open."""
        if not self.each:
            return ""
        return f"{plain(self.each, decimals_of(self.each))} {self.unit}".strip()


def picture_scale(axis: Axis, most: int = 10) -> PictureScale:
    """The scale of a picture graph that reaches as far as a result axis, with at most `most` pictures in a strip."""
    if axis.blank or axis.words:
        return PictureScale(0.0, axis.unit, most)
    each = nice_number(axis.high / most * (1 - _NEARLY), False)
    if all(float(t).is_integer() for t in axis.ticks) and axis.ticks[1] - axis.ticks[0] >= 1 and axis.unit == "":
        each = max(1.0, each)
    return PictureScale(each, axis.unit, min(most, math.ceil(axis.high / each - _NEARLY)))
