"""A box without a top."""

from __future__ import annotations

from dataclasses import replace

from packgen.nets.given import Given
from packgen.nets.solid import Solid
from packgen.nets.solids import cuboid

TITLE = "open box"
ABOUT = "A box without a top: a tray, a trough, a boat's hold."
PARAMETERS = cuboid.PARAMETERS


def build(given: Given) -> Solid:
    """The cuboid without its top."""
    closed = cuboid.build(given)
    return replace(closed, name="open-box", title=TITLE, faces=closed.faces[:-1], closed=False)
