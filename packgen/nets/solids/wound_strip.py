"""A strip wound on a former."""

from __future__ import annotations

from packgen.nets.given import Given, Parameter, read
from packgen.nets.solid import Solid, Strip

TITLE = "wound strip"
ABOUT = "A strip of card wound several times round a former: a strong tube, a roller, a coil. True size is best."
PARAMETERS = (
    Parameter("former", "length", "across the round thing it is wound on", also=("former diameter", "diameter")),
    Parameter("width", "length", "the width of the strip: how long the tube gets"),
    Parameter("turns", "count", "how many times it goes round", 1, 40, whole=False),
)


def build(given: Given) -> Solid:
    """The strip; its length follows from the former, the turns and the thickness of the card."""
    got = read(TITLE, PARAMETERS, given)
    strip = Strip("strip", got.number("former"), got.number("width"), got.number("turns"))
    return Solid("wound-strip", TITLE, curved=(strip,), closed=False, sizes=got.sizes(), made_to_size=True)
