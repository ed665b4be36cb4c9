"""Blades cut into a card disc and folded up."""

from __future__ import annotations

import math

FIRM = 0.75
"""The most of a blade's sector at the hub that may be cut away, so that the disc stays firm."""
LONGEST = 0.45
"""The widest blade as a part of the disc's radius."""


def blade_width(hub_radius: float, radius: float, blades: float) -> float:
    """The width in whole mm (tenths below 2 mm) of the widest blade of which so many fit round a hub; sizes in mm."""
    sector = min(FIRM * 2 * math.pi / blades, math.radians(60))
    width = min(hub_radius * math.tan(sector), LONGEST * radius)
    return math.floor(width) if width >= 2 else math.floor(width * 10) / 10
