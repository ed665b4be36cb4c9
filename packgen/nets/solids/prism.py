"""An upright prism on a regular base."""

from __future__ import annotations

from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import SIDES, base_choices, floor, lid, outer_radius, ring, walls
from packgen.nets.solid import Solid

TITLE = "prism"
ABOUT = "Upright walls on a regular base of 3 to 24 sides: a lamp house, a column, a pencil box."
PARAMETERS = (SIDES, *base_choices("side"), Parameter("height", "length", "how tall it stands"))


def build(given: Given) -> Solid:
    """The closed prism; side 1 faces the front, the others follow anticlockwise seen from above."""
    got = read(TITLE, PARAMETERS, given)
    n = got.count("sides")
    radius = outer_radius(got, n, "side")
    vertices = (*ring(n, radius, 0.0), *ring(n, radius, got.number("height")))
    return Solid("prism", TITLE, vertices, (floor(n, 0), *walls(n, 0, n), lid(n, n)), sizes=got.sizes())
