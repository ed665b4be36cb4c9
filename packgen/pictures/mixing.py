"""How to mix a colour from five paints: a start for the parent and the child, who then adjust by eye.

Paints are taken as mixing by the theory of P. Kubelka and F. Munk (1931) with one constant: the ratio of absorption to
scattering, K/S = (1 - R)^2 / 2R for a reflectance R, adds up by parts, here in three bands of light.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import product

from packgen.pictures.colours import Colour, apart

# sRGB values of common school paints, as they look on white paper (common practice, no source).
PAINTS: dict[str, Colour] = {
    "yellow": (1.0, 0.83, 0.0), "red": (0.82, 0.09, 0.17), "blue": (0.10, 0.24, 0.64),
    "white": (0.98, 0.98, 0.97), "black": (0.10, 0.10, 0.10),
}  # fmt: skip
_MOST_PARTS, _MOST_PAINTS = 8, 4
_FIDDLY = (0.012, 0.02)  # what a further part, and a further paint, costs against likeness
_LIKE = 0.3


@dataclass(frozen=True, slots=True)
class Mix:
    """Parts of paints, most first, and the colour they make; `close` is False if that is only the nearest there is."""

    parts: tuple[tuple[str, int], ...]
    colour: Colour
    close: bool


def mix_for(colour: Colour) -> Mix:
    """The simplest mix that comes near a colour."""
    recipes = _recipes()

    def cost(recipe: tuple[tuple[int, ...], Colour]) -> float:
        parts, made = recipe
        return apart(made, colour) + _FIDDLY[0] * sum(parts) + _FIDDLY[1] * sum(p > 0 for p in parts)

    parts, made = min(recipes, key=cost)
    named = [(name, n) for name, n in zip(PAINTS, parts, strict=True) if n]
    return Mix(tuple(sorted(named, key=lambda p: -p[1])), made, apart(made, colour) < _LIKE)


def mixed(parts: dict[str, int]) -> Colour:
    """The colour that parts of paints make together. Raises KeyError for an unknown paint."""
    whole = sum(parts.values())
    red, green, blue = (
        _shown(sum(n * _ratio(PAINTS[name][band]) for name, n in parts.items()) / whole) for band in range(3)
    )
    return red, green, blue


@lru_cache(maxsize=1)
def _recipes() -> tuple[tuple[tuple[int, ...], Colour], ...]:
    out = []
    for parts in product(range(_MOST_PARTS + 1), repeat=len(PAINTS)):
        used = [n for n in parts if n]
        if 0 < sum(parts) <= _MOST_PARTS and len(used) <= _MOST_PAINTS and math.gcd(*used) == 1:
            out.append((parts, mixed(dict(zip(PAINTS, parts, strict=True)))))
    return tuple(out)


def _ratio(value: float) -> float:
    """K/S of an sRGB value (IEC 61966-2-1); no paint is quite black or quite white."""
    light = value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4
    light = min(0.98, max(0.01, light))
    return (1 - light) ** 2 / (2 * light)


def _shown(ratio: float) -> float:
    """The sRGB value of a K/S ratio."""
    light = 1 + ratio - math.sqrt(ratio * ratio + 2 * ratio)
    return 12.92 * light if light <= 0.0031308 else 1.055 * light ** (1 / 2.4) - 0.055
