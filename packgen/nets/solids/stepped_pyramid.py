"""A pyramid of steps on a square or other regular base."""

from __future__ import annotations

from packgen.nets.errors import NetError
from packgen.nets.given import Given, Parameter, read
from packgen.nets.shapes import BACK, base_choices, floor, lid, outer_radius, ring
from packgen.nets.solid import Face, Solid

TITLE = "stepped pyramid"
ABOUT = "Steps that grow smaller upwards: a temple, a plinth, a cake."
PARAMETERS = (
    Parameter("steps", "count", "how many steps", 2, 8),
    Parameter("sides", "count", "how many sides the base has", 3, 12, required=False, default=4),
    *base_choices("base"),
    Parameter("top", "length", "the topmost step, measured the same way as the base"),
    Parameter("height", "length", "how tall it stands in all"),
)


def build(given: Given) -> Solid:
    """The closed stepped pyramid: all rises equal, all treads equal. Each tread is cut at its corners into n faces."""
    got = read(TITLE, PARAMETERS, given)
    n, steps = got.count("sides"), got.count("steps")
    radius = outer_radius(got, n, "base")
    said = next(got.number(name) for name in ("base", "across", "corners") if got.has(name))
    top = got.number("top")
    if top >= said * (1 - 1e-9):
        raise NetError(
            f"The top step ({top:g} mm) must be smaller than the base ({said:g} mm).", "Write a smaller top.", "top"
        )
    vertices = []
    faces = [floor(n, 0)]
    for k in range(steps):
        r = radius + (radius * top / said - radius) * k / (steps - 1)
        vertices += ring(n, r, got.number("height") * k / steps) + ring(n, r, got.number("height") * (k + 1) / steps)
        for i in range(n):
            j, low = (i + 1) % n, 2 * n * k
            faces.append(Face(f"riser {k + 1} side {i + 1}", (low + i, low + j, low + n + j, low + n + i)))
            if k < steps - 1:
                high = low + n
                loop = (high + i, high + j, high + n + j, high + n + i)
                faces.append(Face(f"tread {k + 1} side {i + 1}", loop, BACK))
    faces.append(lid(n, 2 * n * steps - n))
    return Solid("stepped-pyramid", TITLE, tuple(vertices), tuple(faces), sizes=got.sizes())
