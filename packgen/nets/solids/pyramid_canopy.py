"""A pyramid without its base, hung by its corners."""

from __future__ import annotations

from dataclasses import replace

from packgen.nets.given import Given
from packgen.nets.solid import Solid
from packgen.nets.solids import pyramid

TITLE = "pyramid canopy"
ABOUT = "A pyramid without its base, with string holes at the corners: a falling canopy, a lampshade."
PARAMETERS = pyramid.PARAMETERS


def build(given: Given) -> Solid:
    """The pyramid without its base."""
    closed = pyramid.build(given)
    return replace(closed, name="pyramid-canopy", title=TITLE, faces=closed.faces[1:], closed=False)
