"""A cone with its top cut off."""

from __future__ import annotations

from packgen.nets.errors import NetError
from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import rise, rise_choices
from packgen.nets.solid import Disc, Mantle, Solid
from packgen.nets.solids import cylinder

TITLE = "truncated cone"
ABOUT = "A cone with its top cut off: a lighthouse tower, a bucket, a lampshade."
PARAMETERS = (
    *cylinder.ACROSS,
    Parameter("top diameter", "length", "across the round top", also=("top",)),
    *rise_choices("the edge of the top"),
)


def build(given: Given) -> Solid:
    """The closed truncated cone: base, mantle and top.

    With radii R > r and slant s the mantle is a ring sector from R s / (R - r) to r s / (R - r), 360 (R - r) / s
    degrees wide.
    """
    got = read(TITLE, PARAMETERS, given)
    radius = got.number("radius") if got.has("radius") else got.number("diameter") / 2
    top = got.number("top diameter") / 2
    if top >= radius * (1 - 1e-9):
        raise NetError(
            f"The top diameter ({2 * top:g} mm) must be smaller than the diameter ({2 * radius:g} mm).",
            "Swap the two, or use a cylinder if they are equal.",
            "top diameter",
        )
    height = rise(got, radius - top)
    parts = (
        Mantle("mantle", radius, top, height, label="curved side"),
        Disc("base", radius, 0.0),
        Disc("top", top, height, True),
    )
    return Solid("truncated-cone", TITLE, curved=parts, sizes=got.sizes())
