"""A prism with a pyramid for a roof."""

from __future__ import annotations

from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import SIDES, base_choices, floor, gables, outer_radius, ring, walls
from packgen.nets.solid import Solid

TITLE = "tower"
ABOUT = "Upright walls and a pointed roof in one: a lamp tower, a turret, a dovecote."
PARAMETERS = (
    SIDES,
    *base_choices("side"),
    Parameter("height", "length", "the height of the walls", also=("wall height",)),
    Parameter("roof", "length", "the upright height of the roof above the walls", also=("roof height",)),
)


def build(given: Given) -> Solid:
    """The closed tower: base, side 1 to n, roof 1 to n."""
    got = read(TITLE, PARAMETERS, given)
    n = got.count("sides")
    radius = outer_radius(got, n, "side")
    wall = got.number("height")
    vertices = (*ring(n, radius, 0.0), *ring(n, radius, wall), (0.0, 0.0, wall + got.number("roof")))
    faces = (floor(n, 0), *walls(n, 0, n), *gables(n, n, 2 * n, "roof"))
    return Solid("tower", TITLE, vertices, faces, sizes=got.sizes())
