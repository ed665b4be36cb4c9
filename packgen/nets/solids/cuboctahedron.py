"""Eight triangles and six squares."""

from __future__ import annotations

from itertools import product

from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import hull_faces, standing
from packgen.nets.solid import Solid

TITLE = "cuboctahedron"
ABOUT = "Eight triangles and six squares, all edges equal: a lantern, a faceted bead."
PARAMETERS = (Parameter("edge", "length", "the length of every edge"),)


def build(given: Given) -> Solid:
    """The cuboctahedron, standing on one face."""
    got = read(TITLE, PARAMETERS, given)
    points: list[tuple[float, float, float]] = []
    for a, b in product((-1.0, 1.0), repeat=2):
        points += [(0.0, a, b), (a, b, 0.0), (b, 0.0, a)]
    return standing("cuboctahedron", TITLE, got.number("edge"), points, hull_faces(points))
