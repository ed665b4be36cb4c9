"""A house with a gabled roof."""

from __future__ import annotations

from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import floor, rectangle
from packgen.nets.solid import Face, Solid

TITLE = "gabled house"
ABOUT = "Four walls, two of them with a pointed gable, and a roof of two slopes: a house, a barn, a chapel."
PARAMETERS = (
    Parameter("length", "length", "along the ridge"),
    Parameter("width", "length", "across the gables"),
    Parameter("height", "length", "the height of the walls at the eaves", also=("wall height",)),
    Parameter("roof", "length", "the upright height of the ridge above the eaves", also=("roof height",)),
)


def build(given: Given) -> Solid:
    """The closed house: sides 1 and 3 carry the eaves, sides 2 and 4 the gables; roof 1 slopes to the front."""
    got = read(TITLE, PARAMETERS, given)
    long, wide, wall = got.number("length"), got.number("width"), got.number("height")
    ridge = wall + got.number("roof")
    vertices = (
        *rectangle(long, wide, 0.0),
        *rectangle(long, wide, wall),
        (-long / 2, 0.0, ridge),
        (long / 2, 0.0, ridge),
    )
    faces = (
        floor(4, 0),
        Face("side 1", (0, 1, 5, 4), also=("front",), label="wall 1"),
        Face("side 2", (1, 2, 6, 9, 5), also=("right",), label="gable 1"),
        Face("side 3", (2, 3, 7, 6), also=("back",), label="wall 2"),
        Face("side 4", (3, 0, 4, 8, 7), also=("left",), label="gable 2"),
        Face("roof 1", (4, 5, 9, 8)),
        Face("roof 2", (6, 7, 8, 9)),
    )
    return Solid("gabled-house", TITLE, vertices, faces, sizes=got.sizes())
