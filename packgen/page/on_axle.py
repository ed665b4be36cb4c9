"""A flat wheel with a hole in its middle as it stands in use: upright, on its stick."""

from __future__ import annotations

import math
from dataclasses import replace

from packgen.nets import Solid
from packgen.nets.solid import Face
from packgen.nets.vectors import Vector

_OUT = 0.8  # how far the stick stands out on each side, as a share of the wheel's radius
_SIDES = 10


def on_its_stick(solid: Solid) -> Solid | None:
    """The solid turned so that its hole lies level, with a stick through the hole; None if it has no such hole."""
    if len(solid.drills) != 1 or not solid.vertices or solid.closed:
        return None
    drill = solid.drills[0]
    mx, my, mz = drill.at
    # z becomes the direction of the stick, towards the reader's left; what was y points up.
    turned = [(-(z - mz), x - mx, y - my) for x, y, z in solid.vertices]
    reach = max(math.hypot(x - mx, y - my) for x, y, _ in solid.vertices)
    faces = list(solid.faces)
    for near in (False, True):
        start, end = (0.0, _OUT * reach) if near else (-_OUT * reach, 0.0)
        faces += _stick(turned, start, end, drill.across / 2)
    return replace(solid, vertices=tuple(turned), faces=tuple(faces), drills=(), swell=())


def _stick(vertices: list[Vector], start: float, end: float, radius: float) -> list[Face]:
    """The sides and the ends of a piece of stick along x; its corners are added to the vertices."""
    first = len(vertices)
    for x in (start, end):
        for k in range(_SIDES):
            turn = 2 * math.pi * k / _SIDES
            vertices.append((x, radius * math.cos(turn), radius * math.sin(turn)))
    sides = [
        Face(
            "stick",
            (first + k, first + (k + 1) % _SIDES, first + _SIDES + (k + 1) % _SIDES, first + _SIDES + k),
        )
        for k in range(_SIDES)
    ]
    ends = [
        Face("stick", tuple(first + k for k in reversed(range(_SIDES)))),
        Face("stick", tuple(first + _SIDES + k for k in range(_SIDES))),
    ]
    return [*sides, *ends]
