"""Twelve equal pentagons."""

from __future__ import annotations

import math
from itertools import product

from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import hull_faces, standing
from packgen.nets.solid import Solid
from packgen.nets.vectors import Vector

TITLE = "dodecahedron"
ABOUT = "Twelve equal pentagons: a calendar ball with a face for each month."
PARAMETERS = (Parameter("edge", "length", "the length of every edge"),)


def build(given: Given) -> Solid:
    """The dodecahedron, standing on one face."""
    got = read(TITLE, PARAMETERS, given)
    phi = (1 + math.sqrt(5)) / 2
    points: list[Vector] = [(x, y, z) for x, y, z in product((-1.0, 1.0), repeat=3)]
    for a, b in product((-1 / phi, 1 / phi), (-phi, phi)):
        points += [(0.0, a, b), (a, b, 0.0), (b, 0.0, a)]
    return standing("dodecahedron", TITLE, got.number("edge"), points, hull_faces(points))
