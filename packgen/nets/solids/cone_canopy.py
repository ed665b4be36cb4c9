"""A cone without its base, hung by strings from its rim."""

from __future__ import annotations

from dataclasses import replace

from packgen.nets.given import Given, Parameter, read
from packgen.nets.solid import Solid
from packgen.nets.solids import cone

TITLE = "cone canopy"
ABOUT = "A cone without its base, with string holes round its rim: a falling canopy, a lampshade."
PARAMETERS = (
    *cone.PARAMETERS,
    Parameter("strings", "count", "how many string holes its rim gets", 3, 16, required=False, default=4),
)


def build(given: Given) -> Solid:
    """The cone without its base."""
    got = read(TITLE, PARAMETERS, given)
    closed = cone.build({name: number for name, number, _ in got.sizes() if name != "strings"})
    return replace(
        closed,
        name="cone-canopy",
        title=TITLE,
        curved=closed.curved[:1],
        closed=False,
        rim_strings=got.count("strings"),
        sizes=got.sizes(),
    )
