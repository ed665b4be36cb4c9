"""Eight equal triangles."""

from __future__ import annotations

from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import hull_faces, standing
from packgen.nets.solid import Solid

TITLE = "octahedron"
ABOUT = "Eight equal triangles: two square pyramids, base to base."
PARAMETERS = (Parameter("edge", "length", "the length of every edge"),)


def build(given: Given) -> Solid:
    """The octahedron, standing on one face."""
    got = read(TITLE, PARAMETERS, given)
    points = [(1.0, 0.0, 0.0), (-1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, -1.0, 0.0), (0.0, 0.0, 1.0), (0.0, 0.0, -1.0)]
    return standing("octahedron", TITLE, got.number("edge"), points, hull_faces(points))
