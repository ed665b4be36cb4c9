"""An upright cone."""

from __future__ import annotations

from packgen.nets.given import Given, read
from packgen.nets.shapes import rise, rise_choices
from packgen.nets.solid import Disc, Mantle, Solid
from packgen.nets.solids import cylinder

TITLE = "cone"
ABOUT = "A round base and one point: a hat, a tent, a turret roof."
PARAMETERS = (*cylinder.ACROSS, *rise_choices())


def build(given: Given) -> Solid:
    """The closed cone: a mantle (a sector of radius slant and angle 360 r / slant degrees) and a base."""
    got = read(TITLE, PARAMETERS, given)
    radius = got.number("radius") if got.has("radius") else got.number("diameter") / 2
    height = rise(got, radius)
    return Solid(
        "cone",
        TITLE,
        curved=(Mantle("mantle", radius, 0.0, height, label="curved side"), Disc("base", radius, 0.0)),
        sizes=got.sizes(),
    )
