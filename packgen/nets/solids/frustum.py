"""A pyramid with its top cut off."""

from __future__ import annotations

import math

from packgen.nets.errors import NetError
from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import SIDES, base_choices, floor, lid, outer_radius, ring, rise, rise_choices, walls
from packgen.nets.solid import Solid

TITLE = "frustum"
ABOUT = "A pyramid with its top cut off: a plinth, a lampshade with a lid, a bucket with flat sides."
PARAMETERS = (
    SIDES,
    *base_choices("base"),
    Parameter("top", "length", "the top, measured the same way as the base"),
    *rise_choices("the edge of the top"),
)


def build(given: Given) -> Solid:
    """The closed frustum; the top is measured as the base is (side, across or corners)."""
    got = read(TITLE, PARAMETERS, given)
    n = got.count("sides")
    radius = outer_radius(got, n, "base")
    said = next(got.number(name) for name in ("base", "across", "corners") if got.has(name))
    top = got.number("top")
    if top >= said * (1 - 1e-9):
        raise NetError(
            f"The top of the frustum ({top:g} mm) must be smaller than its base ({said:g} mm).",
            "Write a smaller top, or use a prism if they are equal.",
            "top",
        )
    upper = radius * top / said
    height = rise(got, (radius - upper) * math.cos(math.pi / n))
    vertices = (*ring(n, radius, 0.0), *ring(n, upper, height))
    return Solid("frustum", TITLE, vertices, (floor(n, 0), *walls(n, 0, n), lid(n, n)), sizes=got.sizes())
