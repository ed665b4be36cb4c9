"""A bridge pier with a pointed nose up and down the stream."""

from __future__ import annotations

from packgen.nets.errors import NetError
from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import floor, lid, walls
from packgen.nets.solid import Solid

TITLE = "bridge pier"
ABOUT = "A pier whose pointed ends part the stream, upright or narrowing upwards."
PARAMETERS = (
    Parameter("length", "length", "from point to point, along the stream"),
    Parameter("width", "length", "across the stream, at the foot"),
    Parameter("height", "length", "how tall it stands"),
    Parameter("nose", "length", "how long each pointed end is (half the width if left out)", required=False),
    Parameter("top", "length", "the width at the top, if it narrows upwards", required=False, also=("top width",)),
)


def build(given: Given) -> Solid:
    """The closed pier. Its top has the shape of its foot, so that every side stays flat."""
    got = read(TITLE, PARAMETERS, given)
    long, wide = got.number("length"), got.number("width")
    nose = got.number("nose") if got.has("nose") else wide / 2
    top = got.number("top") if got.has("top") else wide
    if 2 * nose >= long:
        raise NetError(
            f"Two noses of {nose:g} mm leave nothing of a pier {long:g} mm long.",
            f"Write a nose of less than {long / 2:g} mm.",
            "nose",
        )
    if top > wide:
        raise NetError(
            f"The pier is wider at the top ({top:g} mm) than at the foot ({wide:g} mm).", "Swap the two.", "top"
        )
    half, y, k = long / 2 - nose, wide / 2, top / wide
    plan = [(-half, -y), (half, -y), (long / 2, 0.0), (half, y), (-half, y), (-long / 2, 0.0)]
    vertices = (*((x, y, 0.0) for x, y in plan), *((x * k, y * k, got.number("height")) for x, y in plan))
    return Solid("bridge-pier", TITLE, vertices, (floor(6, 0), *walls(6, 0, 6), lid(6, 6)), sizes=got.sizes())
