"""Four equal triangles."""

from __future__ import annotations

from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import hull_faces, standing
from packgen.nets.solid import Solid

TITLE = "tetrahedron"
ABOUT = "Four equal triangles: the simplest solid there is."
PARAMETERS = (Parameter("edge", "length", "the length of every edge"),)


def build(given: Given) -> Solid:
    """The tetrahedron, standing on one face."""
    got = read(TITLE, PARAMETERS, given)
    points = [(1.0, 1.0, 1.0), (1.0, -1.0, -1.0), (-1.0, 1.0, -1.0), (-1.0, -1.0, 1.0)]
    return standing("tetrahedron", TITLE, got.number("edge"), points, hull_faces(points))
