"""A flat wheel whose blades are cut into it and folded up."""

from __future__ import annotations

import math

from packgen.nets.errors import NetError
from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import BACK
from packgen.nets.solid import Drill, Face, Solid
from packgen.nets.vectors import Vector

TITLE = "bladed wheel"
ABOUT = "A flat round wheel with blades cut into it and folded up: a water wheel, a wind wheel, a whirligig."
PARAMETERS = (
    Parameter("diameter", "length", "across the wheel", group="wheel size"),
    Parameter("radius", "length", "half of the diameter", group="wheel size", also=("wheel radius",)),
    Parameter("blades", "count", "how many blades", 3, 16),
    Parameter("blade", "length", "how wide each blade is (as wide as leaves a firm wheel, if left out)", required=False,
              also=("blade width",)),
    Parameter("hub", "length", "across the middle that stays whole (0.4 of the diameter, if left out)", required=False,
              also=("hub diameter",)),
    Parameter("axle", "length", "across the hole for the axle", required=False, default=4.0, also=("axle diameter",)),
    Parameter("fold", "angle", "how far the blades are folded up", 10, 90, required=False, default=90.0,
              also=("blade angle",)),
)  # fmt: skip
_SHARE = 0.75
"""A blade takes at most this part of its sector at the hub, so that the wheel stays firm."""


def build(given: Given) -> Solid:
    """The wheel: one flat face named 'wheel', and blade 1 to n standing up from it on the printed side."""
    got = read(TITLE, PARAMETERS, given)
    radius = got.number("radius") if got.has("radius") else got.number("diameter") / 2
    n = got.count("blades")
    hub = got.number("hub") / 2 if got.has("hub") else 0.4 * radius
    axle = got.number("axle")
    if not axle / 2 < hub < 0.9 * radius:
        raise NetError(
            f"The hub ({2 * hub:g} mm) must be larger than the axle ({axle:g} mm) and well inside the wheel "
            f"({2 * radius:g} mm).",
            f"Write a hub of about {0.8 * radius:.0f} mm.",
            "hub",
        )
    widest = hub * math.tan(min(_SHARE * 2 * math.pi / n, math.radians(60)))
    blade = got.number("blade") if got.has("blade") else min(widest, 0.45 * radius)
    if blade > widest * (1 + 1e-9):
        raise NetError(
            f"{n} blades of {blade:g} mm do not fit round a hub of {2 * hub:g} mm.",
            f"Write a blade of at most {math.floor(widest * 10) / 10:g} mm, or fewer blades.",
            "blade",
        )
    vertices, faces = _cut(radius, hub, blade, n, math.radians(got.number("fold")))
    drill = Drill("wheel", (0.0, 0.0, 0.0), axle)
    return Solid("bladed-wheel", TITLE, tuple(vertices), tuple(faces), closed=False, sizes=got.sizes(), drills=(drill,))


def _cut(radius: float, hub: float, blade: float, n: int, fold: float) -> tuple[list[Vector], list[Face]]:
    """Each blade is the strip beside a slit from the rim to the hub, folded on the line at its other side."""
    vertices: list[Vector] = []
    wheel: list[int] = []
    blades: list[Face] = []
    lean = math.asin(blade / radius)
    step = 2 * math.acos(1 - 0.02 / radius)
    for k in range(n):
        a = 2 * math.pi * k / n
        out, side = (math.cos(a), math.sin(a)), (-math.sin(a), math.cos(a))
        slit = [(radius * out[0], radius * out[1]), (hub * out[0], hub * out[1])]
        root = (hub * out[0] + blade * side[0], hub * out[1] + blade * side[1])
        rim = [(radius * math.cos(t), radius * math.sin(t)) for t in _turns(a, a + lean, step)]
        rest = [(radius * math.cos(t), radius * math.sin(t)) for t in _turns(a + lean, a + 2 * math.pi / n, step)]
        start = len(vertices)
        vertices += [(x, y, 0.0) for x, y in (*slit, root, *rest[:-1])]
        wheel += range(start, len(vertices))
        lifted = [_lifted(p, root, side, fold) for p in (slit[1], *rim[:-1])]
        first = len(vertices)
        vertices += lifted
        blades.append(Face(f"blade {k + 1}", (*range(first, len(vertices)), start + 3, start + 2), (*out, 0.0)))
    return vertices, [Face("wheel", tuple(wheel), BACK), *blades]


def _turns(start: float, end: float, step: float) -> list[float]:
    n = max(1, math.ceil((end - start) / step))
    return [start + (end - start) * k / n for k in range(n + 1)]


def _lifted(p: tuple[float, float], root: tuple[float, float], side: tuple[float, float], fold: float) -> Vector:
    """A point of a blade turned up about its fold line, which runs through `root`, square to `side`."""
    away = (root[0] - p[0]) * side[0] + (root[1] - p[1]) * side[1]
    foot = (p[0] + away * side[0], p[1] + away * side[1])
    flat = away * math.cos(fold)
    return (foot[0] - flat * side[0], foot[1] - flat * side[1], away * math.sin(fold))
