"""Six equal squares."""

from __future__ import annotations

from itertools import product

from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import hull_faces, standing
from packgen.nets.solid import Solid
from packgen.nets.vectors import Vector

TITLE = "cube"
ABOUT = "Six equal squares: a die, a toy block."
PARAMETERS = (Parameter("edge", "length", "the length of every edge"),)


def build(given: Given) -> Solid:
    """The cube, standing on one face."""
    got = read(TITLE, PARAMETERS, given)
    points: list[Vector] = [(x, y, z) for x, y, z in product((-1.0, 1.0), repeat=3)]
    return standing("cube", TITLE, got.number("edge"), points, hull_faces(points))
