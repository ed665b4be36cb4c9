"""An upright cylinder."""

from __future__ import annotations

from packgen.nets.given import Given, Parameter, read
from packgen.nets.solid import Disc, Mantle, Solid

TITLE = "cylinder"
ABOUT = "A round tin with both ends: a drum, a column, a boiler."
ACROSS = (
    Parameter("diameter", "length", "across the round base", group="round base"),
    Parameter("radius", "length", "half of the diameter", group="round base"),
)
PARAMETERS = (*ACROSS, Parameter("height", "length", "how tall it stands"))


def build(given: Given) -> Solid:
    """The closed cylinder: base, mantle (a rectangle pi times the diameter long) and top."""
    got = read(TITLE, PARAMETERS, given)
    radius = got.number("radius") if got.has("radius") else got.number("diameter") / 2
    height = got.number("height")
    parts = (
        Mantle("mantle", radius, radius, height, label="curved side"),
        Disc("base", radius, 0.0),
        Disc("top", radius, height, True),
    )
    return Solid("cylinder", TITLE, curved=parts, sizes=got.sizes())
