"""Scales: the standard ones, a scale as a parent writes it, and a scale in words.

ISO 5455:1979 recommends 1, 2 and 5 times powers of ten: 50:1 to 2:1, true size, 1:2 to 1:10000, and lets the range be
extended at either end by powers of ten.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator

from packgen.nets.errors import NetError

AUTO, FIT, TRUE_SIZE = "auto", "fit", "true"
_TRUE = ("true", "true size", "full size", "life size", "actual size", "1:1")


def read_scale(text: str) -> str | float:
    """`auto`, `fit`, or a ratio of paper to real thing (0.01 for 1:100). Raises NetError for anything else."""
    said = " ".join(str(text).strip().lower().split())
    if said in ("", AUTO):
        return AUTO
    if said in (FIT, "fit to page", "fit the page"):
        return FIT
    if said in _TRUE:
        return 1.0
    found = re.fullmatch(r"(?:scale )?(\d+(?:\.\d+)?) ?[:/] ?(\d[\d ,]*(?:\.\d+)?)", said)
    if found:
        up, down = float(found[1]), float(re.sub(r"[ ,]", "", found[2]))
        if up > 0 and down > 0:
            return up / down
    raise NetError(f"'{text}' is no scale.", "Write auto, fit, true, or a ratio such as 1:50.", "scale")


def standard_scales(most: float = 50.0) -> Iterator[float]:
    """The standard scales from `most` downwards, without end, as ratios of paper to real thing."""
    power = math.floor(math.log10(most)) + 1
    while True:
        for digit in (5, 2, 1):
            ratio = digit * 10.0**power if power >= 0 else digit / 10.0**-power
            if ratio <= most * (1 + 1e-9):
                yield ratio
        power -= 1


def larger_scales(ratio: float) -> Iterator[float]:
    """The standard scales above a ratio, upwards, without end."""
    power = math.floor(math.log10(ratio))
    while True:
        for digit in (1, 2, 5):
            value = digit * 10.0**power if power >= 0 else digit / 10.0**-power
            if value > ratio * (1 + 1e-9):
                yield value
        power += 1


def next_down(ratio: float) -> float:
    """The largest standard scale not above a ratio."""
    return next(standard_scales(ratio))


def scale_words(ratio: float, fit: bool = False) -> str:
    """The scale for a caption: 'true size', '1:100', '2:1', or 'fit (1:3.7)'."""
    if fit:
        return f"fit ({_colon(ratio)})" if abs(ratio - 1) > 1e-9 else "fit (true size)"
    return "true size" if abs(ratio - 1) < 1e-9 else _colon(ratio)


def _colon(ratio: float) -> str:
    more = max(ratio, 1 / ratio)
    shown = f"{more:.6g}" if more < 1e6 else f"{more:.0f}"
    return f"{shown}:1" if ratio > 1 + 1e-9 else f"1:{shown}"


def fitting_scales(most: float) -> Iterator[float]:
    """Ratios from `most` downwards whose larger side has two figures: 1:3.7, 1:3.8 ... or 2.4:1, 2.3:1 ..."""
    if most > 1:
        step = math.floor(min(most, 99) * 10)
        while step > 10:
            yield step / 10
            step -= 1
        most = 1.0
    power = math.floor(math.log10(1 / most) + 1e-12)
    digits = math.ceil(1 / most / 10.0**power * 10 - 1e-9)
    while power < 9:
        while digits < 100:
            yield 1 / (digits / 10 * 10.0**power)
            digits += 1
        digits, power = 10, power + 1


def real_length(value: float) -> str:
    """A real length in words: '60 mm', '5.2 m', '1.2 km'."""
    if value >= 1e6:
        return f"{value / 1e6:.4g} km"
    return f"{value / 1000:.4g} m" if value >= 1000 else f"{value:.4g} mm"
