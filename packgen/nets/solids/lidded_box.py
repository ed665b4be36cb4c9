"""A box and a lid that slides over it."""

from __future__ import annotations

from packgen.nets.errors import NetError
from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import BACK, floor, rectangle
from packgen.nets.solid import Face, Solid
from packgen.nets.solids import cuboid

TITLE = "box with lid"
ABOUT = "An open box and a lid that slides over it: a treasure chest, a paint box. Two pieces."
PARAMETERS = (
    *cuboid.PARAMETERS,
    Parameter("lid", "length", "how far the lid comes down over the box (a third of the height if left out)",
              required=False, also=("lid height",)),
)  # fmt: skip


def build(given: Given) -> Solid:
    """The box and its lid, the lid lifted off above it.

    The lid's corners swell by the fitting allowance on each side, so that it goes over the box at any scale.
    """
    got = read(TITLE, PARAMETERS, given)
    long, wide, high = got.number("length"), got.number("width"), got.number("height")
    rim = got.number("lid") if got.has("lid") else high / 3
    if rim > high:
        raise NetError(f"The lid ({rim:g} mm) is deeper than the box is high ({high:g} mm).",
                       f"Write a lid of {high:g} mm or less.", "lid")  # fmt: skip
    foot = 1.5 * high
    vertices = (
        *rectangle(long, wide, 0.0),
        *rectangle(long, wide, high),
        *rectangle(long, wide, foot),
        *rectangle(long, wide, foot + rim),
    )
    still = [(0.0, 0.0, 0.0)] * 8
    out = [(-1.0, -1.0, 0.0), (1.0, -1.0, 0.0), (1.0, 1.0, 0.0), (-1.0, 1.0, 0.0)]
    box = [Face(f"side {i + 1}", (i, (i + 1) % 4, (i + 1) % 4 + 4, i + 4), also=(n,))
           for i, n in enumerate(cuboid.ALSO)]  # fmt: skip
    cover = [Face(f"lid side {i + 1}", (i + 8, (i + 1) % 4 + 8, (i + 1) % 4 + 12, i + 12)) for i in range(4)]
    top = Face("lid", (12, 13, 14, 15), BACK, also=("top",))
    return Solid(
        "lidded-box", TITLE, vertices, (floor(4, 0), *box, top, *cover),
        closed=False, sizes=got.sizes(), swell=(*still, *out, *out),
    )  # fmt: skip
