"""Twelve pentagons and twenty hexagons."""

from __future__ import annotations

import math
from itertools import product

from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import hull_faces, standing
from packgen.nets.solid import Solid

TITLE = "truncated icosahedron"
ABOUT = "Twelve pentagons and twenty hexagons: a sewn ball. Patient work, from edges of about 15 mm."
PARAMETERS = (Parameter("edge", "length", "the length of every edge"),)


def build(given: Given) -> Solid:
    """The truncated icosahedron, standing on one face."""
    got = read(TITLE, PARAMETERS, given)
    phi = (1 + math.sqrt(5)) / 2
    points: list[tuple[float, float, float]] = []
    for x, y, z in ((0.0, 1.0, 3 * phi), (1.0, 2 + phi, 2 * phi), (phi, 2.0, 2 * phi + 1)):
        signs = {(a * x, b * y, c * z) for a, b, c in product((-1, 1), repeat=3)}
        for p, q, r in sorted(signs):
            points += [(p, q, r), (q, r, p), (r, p, q)]
    points = sorted({(p + 0.0, q + 0.0, r + 0.0) for p, q, r in points})
    return standing("truncated-icosahedron", TITLE, got.number("edge"), points, hull_faces(points))
