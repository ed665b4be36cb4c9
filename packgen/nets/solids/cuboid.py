"""A box with six sides, closed."""

from __future__ import annotations

from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import floor, lid, rectangle
from packgen.nets.solid import Face, Solid

TITLE = "cuboid"
ABOUT = "A closed box: a house block, a brick, a chest."
PARAMETERS = (
    Parameter("length", "length", "the longer side of the base, left to right"),
    Parameter("width", "length", "the other side of the base, front to back"),
    Parameter("height", "length", "how tall it stands"),
)
ALSO = ("front", "right", "back", "left")


def build(given: Given) -> Solid:
    """The closed cuboid; sides 1 to 4 are the front, right, back and left."""
    got = read(TITLE, PARAMETERS, given)
    long, wide, high = got.number("length"), got.number("width"), got.number("height")
    vertices = (*rectangle(long, wide, 0.0), *rectangle(long, wide, high))
    sides = [
        Face(f"side {i + 1}", (i, (i + 1) % 4, (i + 1) % 4 + 4, i + 4), also=(name,)) for i, name in enumerate(ALSO)
    ]
    return Solid("cuboid", TITLE, vertices, (floor(4, 0), *sides, lid(4, 4)), sizes=got.sizes())
