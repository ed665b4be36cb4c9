"""A pyramid on a regular base."""

from __future__ import annotations

import math

from packgen.nets.given import Given, read
from packgen.nets.shapes import SIDES, base_choices, floor, gables, outer_radius, ring, rise, rise_choices
from packgen.nets.solid import Solid

TITLE = "pyramid"
ABOUT = "A regular base and sloping sides to one point: a roof, a spire, a monument."
PARAMETERS = (SIDES, *base_choices("base"), *rise_choices())


def build(given: Given) -> Solid:
    """The closed pyramid; slant² = height² + (inner radius of the base)²."""
    got = read(TITLE, PARAMETERS, given)
    n = got.count("sides")
    radius = outer_radius(got, n, "base")
    height = rise(got, radius * math.cos(math.pi / n))
    vertices = (*ring(n, radius, 0.0), (0.0, 0.0, height))
    return Solid("pyramid", TITLE, vertices, (floor(n, 0), *gables(n, 0, n)), sizes=got.sizes())
