"""How to mix a colour from five paints: a start for the parent and the child, who then adjust by eye.

Paints are taken as mixing by the weighted geometric mean of their reflectances, here in three bands of light (S. Burns,
"Subtractive color mixture computation", 2017). Some paints colour more strongly than others and count for more.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import product

from packgen.pictures.colours import Colour, apart

# sRGB values of common school paints as they look on white paper, and how strongly they colour (common practice, no
# source).
PAINTS: dict[str, Colour] = {
    "yellow": (1.0, 0.83, 0.0), "red": (0.85, 0.09, 0.19), "blue": (0.05, 0.33, 0.71),
    "white": (1.0, 1.0, 1.0), "black": (0.09, 0.09, 0.09),
}  # fmt: skip
_STRENGTH = {"yellow": 0.9, "red": 1.2, "blue": 1.4, "white": 1.0, "black": 1.8}
_DARKEST = 0.015
_MOST_PARTS, _MOST_WHITE, _MOST_PAINTS = 6, 12, 4
_FIDDLY = (0.008, 0.015)  # what a further part, and a further paint, costs against likeness
_HUE = 0.8
_LIKE = 0.3


@dataclass(frozen=True, slots=True)
class Mix:
    """Parts of paints, most first, and the colour they make; `close` is False if that is only the nearest there is."""

    parts: tuple[tuple[str, int], ...]
    colour: Colour
    close: bool


@lru_cache(maxsize=1 << 10)
def mix_for(colour: Colour) -> Mix:
    """The simplest mix that comes near a colour."""
    recipes = _recipes()

    def cost(recipe: tuple[tuple[int, ...], Colour]) -> float:
        parts, made = recipe
        hue = abs((made[0] - made[1]) - (colour[0] - colour[1])) + abs((made[1] - made[2]) - (colour[1] - colour[2]))
        return apart(made, colour) + _HUE * hue + _FIDDLY[0] * sum(parts) + _FIDDLY[1] * sum(p > 0 for p in parts)

    parts, made = min(recipes, key=cost)
    named = [(name, n) for name, n in zip(PAINTS, parts, strict=True) if n]
    return Mix(tuple(sorted(named, key=lambda p: -p[1])), made, apart(made, colour) < _LIKE)


def mixed(parts: dict[str, int]) -> Colour:
    """The colour that parts of paints make together. Raises KeyError for an unknown paint."""
    strength = {name: n * _STRENGTH[name] for name, n in parts.items()}
    whole = sum(strength.values())
    red, green, blue = (
        _shown(math.exp(sum(n * math.log(_light(PAINTS[name][band])) for name, n in strength.items()) / whole))
        for band in range(3)
    )
    return red, green, blue


@lru_cache(maxsize=1)
def _recipes() -> tuple[tuple[tuple[int, ...], Colour], ...]:
    out = []
    ranges = [range((_MOST_WHITE if name == "white" else _MOST_PARTS) + 1) for name in PAINTS]
    for parts in product(*ranges):
        used = [n for n in parts if n]
        coloured = sum(parts) - parts[list(PAINTS).index("white")]
        if used and coloured <= _MOST_PARTS and len(used) <= _MOST_PAINTS and math.gcd(*used) == 1:
            out.append((parts, mixed(dict(zip(PAINTS, parts, strict=True)))))
    return tuple(out)


def _light(value: float) -> float:
    """The reflectance of an sRGB value (IEC 61966-2-1); no paint is quite black."""
    light = value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4
    return max(_DARKEST, light)


def _shown(light: float) -> float:
    """The sRGB value of a reflectance."""
    return 12.92 * light if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055
