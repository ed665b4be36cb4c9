"""Twenty equal triangles."""

from __future__ import annotations

import math
from itertools import product

from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import hull_faces, standing
from packgen.nets.solid import Solid

TITLE = "icosahedron"
ABOUT = "Twenty equal triangles: nearly a globe."
PARAMETERS = (Parameter("edge", "length", "the length of every edge"),)


def build(given: Given) -> Solid:
    """The icosahedron, standing on one face."""
    got = read(TITLE, PARAMETERS, given)
    phi = (1 + math.sqrt(5)) / 2
    points: list[tuple[float, float, float]] = []
    for a, b in product((-1.0, 1.0), (-phi, phi)):
        points += [(0.0, a, b), (a, b, 0.0), (b, 0.0, a)]
    return standing("icosahedron", TITLE, got.number("edge"), points, hull_faces(points))
