"""The other way round: which value of what is changed gives the result that a challenge asks for."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable
from dataclasses import dataclass

from packgen.trials.frame import WORD, Input, Result, Values, WillNotWork
from packgen.units import Quantity

_STEPS = 400
_HALVINGS = 80
_MOST = 3
_ONE_OF_THEM = 0.005  # a counted value whose result is so near the goal (as a fraction) gives it


@dataclass(frozen=True, slots=True)
class Goal:
    """The result that is asked for, and the values of what is changed that give it, the likeliest first.

    `exact` is False if no value gives it and `answers` holds the one that comes nearest (counted things and words).
    Without answers nothing within the model's range comes to it.
    """

    wanted: Quantity
    answers: tuple[Quantity | str, ...]
    exact: bool = True


def solve(result: Result, item: Input, values: Values, wanted: float) -> tuple[tuple[float | str, ...], bool]:
    """The values of an input at which a result is `wanted` (base units), and whether they give it exactly.

    Numbers come in rising order, found where the result passes `wanted` between two of many steps over the whole
    allowed range, then by halving. Of counted things and words it is the one that comes nearest.
    """

    def at(value: float | str) -> float | None:
        try:
            return result.of(values.changed(item.name, value))
        except (WillNotWork, ValueError, ZeroDivisionError, OverflowError):
            return None

    if item.dimension == WORD:
        return _nearest(at, item.words, wanted)
    if item.whole:
        return _nearest(at, tuple(float(n) for n in range(math.ceil(item.low), math.floor(item.high) + 1)), wanted)
    places = _places(item.low, item.high)
    found = [(place, number) for place in places if (number := at(place)) is not None]
    answers: list[float | str] = []
    for (low, below), (high, above) in itertools.pairwise(found):
        if below == wanted or (below - wanted) * (above - wanted) < 0:
            answers.append(_halved(at, low, high, wanted))
    return tuple(answers), True


def nearest_first(answers: tuple[float | str, ...], planned: tuple[float, ...]) -> tuple[float | str, ...]:
    """The answers with those that lie among the planned values first, at most three."""
    middle = sum(planned) / len(planned) if planned else 0.0
    return tuple(sorted(answers, key=lambda a: 0.0 if isinstance(a, str) else abs(a - middle)))[:_MOST]


def _places(low: float, high: float) -> list[float]:
    """Many values from low to high, evenly spread by their ratio where the range spans more than a factor of ten."""
    if low > 0 and high / low > 10:
        return [low * (high / low) ** (k / _STEPS) for k in range(_STEPS + 1)]
    return [low + (high - low) * k / _STEPS for k in range(_STEPS + 1)]


def _halved(at: Callable[[float | str], float | None], low: float, high: float, wanted: float) -> float:
    below = (at(low) or 0.0) - wanted
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        here = at(middle)
        if here is None:
            break
        if (here - wanted) * below > 0:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def _nearest(
    at: Callable[[float | str], float | None], choices: tuple[float | str, ...], wanted: float
) -> tuple[tuple[float | str, ...], bool]:
    found = [(abs(number - wanted), choice) for choice in choices if (number := at(choice)) is not None]
    if not found:
        return (), True
    off, best = min(found, key=lambda pair: pair[0])
    return (best,), off <= _ONE_OF_THEM * abs(wanted)
