"""Two equal bases, one turned against the other, joined by triangles."""

from __future__ import annotations

import math

from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import SIDES, base_choices, floor, lid, outer_radius, ring
from packgen.nets.solid import Face, Solid

TITLE = "antiprism"
ABOUT = "Two equal bases turned half a side against each other, with a belt of triangles: a lantern, a drum."
PARAMETERS = (
    SIDES,
    *base_choices("side"),
    Parameter("height", "length", "how tall it stands (as if all edges were equal, if left out)", required=False),
)


def build(given: Given) -> Solid:
    """The closed antiprism.

    With all edges equal to a, the height is a sqrt(1 - 1 / (4 cos²(pi / 2n))): each upper corner lies half a side round
    from two lower ones at the same outer radius, and at distance a from both.
    """
    got = read(TITLE, PARAMETERS, given)
    n = got.count("sides")
    radius = outer_radius(got, n, "side")
    edge = 2 * radius * math.sin(math.pi / n)
    height = got.number("height") if got.has("height") else edge * math.sqrt(1 - 0.25 / math.cos(math.pi / 2 / n) ** 2)
    vertices = (*ring(n, radius, 0.0), *ring(n, radius, height, math.pi / n))
    belt = []
    for i in range(n):
        belt.append(Face(f"side {2 * i + 1}", (i, (i + 1) % n, n + i)))
        belt.append(Face(f"side {2 * i + 2}", ((i + 1) % n, n + (i + 1) % n, n + i)))
    return Solid("antiprism", TITLE, vertices, (floor(n, 0), *belt, lid(n, n)), sizes=got.sizes())
