"""The mean of a row and the best-fit line or curve through the rows, as an upper child draws it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Fit:
    """A best fit through measured points: y = a x + b (line) or y = b x^a (power), with R² of the plotted points."""

    kind: str
    a: float
    b: float
    r2: float

    def at(self, x: float) -> float:
        """The fitted value at x (x > 0 for a power)."""
        return self.a * x + self.b if self.kind == "line" else self.b * x**self.a


def mean(numbers: Sequence[float]) -> float:
    """The mean of one or more numbers."""
    return math.fsum(numbers) / len(numbers)


def median(numbers: Sequence[float]) -> float:
    """The middle number, or the mean of the two in the middle."""
    ordered = sorted(numbers)
    half = len(ordered) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2


def _least_squares(points: Sequence[tuple[float, float]]) -> tuple[float, float] | None:
    """Slope and intercept of the least-squares line, or None if all x are the same."""
    mx, my = mean([x for x, _ in points]), mean([y for _, y in points])
    across = math.fsum((x - mx) ** 2 for x, _ in points)
    if across <= 1e-18 * max(1.0, mx * mx):
        return None
    slope = math.fsum((x - mx) * (y - my) for x, y in points) / across
    return slope, my - slope * mx


def best_fit(points: Sequence[tuple[float, float]], shape: str = "line") -> Fit | None:
    """The best fit of that shape through three or more points; None if there are fewer or they do not allow it.

    A power is fitted as a line through the logarithms, so it needs positive numbers; otherwise a line is taken.
    """
    if len(points) < 3:
        return None
    power = shape == "power" and all(x > 0 and y > 0 for x, y in points)
    found = _least_squares([(math.log(x), math.log(y)) for x, y in points] if power else points)
    if found is None:
        return None
    slope, start = found
    try:
        fit = Fit("power", slope, math.exp(start), 0.0) if power else Fit("line", slope, start, 0.0)
        r2 = _r2(fit, points)
    except OverflowError:
        return best_fit(points)
    return Fit(fit.kind, fit.a, fit.b, r2)


def _r2(fit: Fit, points: Sequence[tuple[float, float]]) -> float:
    """The share of the scatter in y that the fit explains; 1 if there is no scatter at all."""
    my = mean([y for _, y in points])
    total = math.fsum((y - my) ** 2 for _, y in points)
    rest = math.fsum((y - fit.at(x)) ** 2 for x, y in points)
    return 1.0 if total == 0 else max(0.0, 1 - rest / total)
