"""What the solids are made from: rings of corners, walls between them, and the sizes of regular polygons.

A ring runs anticlockwise seen from above and its first edge faces the front (towards -y), so `side 1` is the front.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import pairwise

from packgen.nets.errors import NetError
from packgen.nets.given import Parameter, Read
from packgen.nets.solid import Face, Solid, edges_of, flat_loop
from packgen.nets.vectors import Vector, area, cross, dot, mean, minus, newell, times, unit

UP: Vector = (0.0, 0.0, 1.0)
BACK: Vector = (0.0, 1.0, 0.0)


def ring(sides: int, radius: float, z: float, turn: float = 0.0) -> list[Vector]:
    """The corners of a level regular polygon by its outer radius; `turn` in radians from side 1 at the front."""
    start = -math.pi / 2 - math.pi / sides + turn
    return [
        (radius * math.cos(start + 2 * math.pi * i / sides), radius * math.sin(start + 2 * math.pi * i / sides), z)
        for i in range(sides)
    ]


def rectangle(length: float, width: float, z: float) -> list[Vector]:
    """The corners of a level rectangle about the axis, `length` along x, from the front left."""
    x, y = length / 2, width / 2
    return [(-x, -y, z), (x, -y, z), (x, y, z), (-x, y, z)]


def walls(n: int, lower: int, upper: int, name: str = "side", first: int = 1) -> list[Face]:
    """Faces between two rings of n corners whose indices start at `lower` and `upper`."""
    return [
        Face(f"{name} {i + first}", (lower + i, lower + (i + 1) % n, upper + (i + 1) % n, upper + i)) for i in range(n)
    ]


def gables(n: int, lower: int, apex: int, name: str = "side") -> list[Face]:
    """Triangles from a ring of n corners starting at `lower` to one apex above it."""
    return [Face(f"{name} {i + 1}", (lower + i, lower + (i + 1) % n, apex)) for i in range(n)]


def floor(n: int, lower: int, name: str = "base") -> Face:
    """The ring of n corners starting at `lower`, seen from below."""
    return Face(name, tuple(reversed(range(lower, lower + n))), BACK)


def lid(n: int, upper: int, name: str = "top") -> Face:
    """The ring of n corners starting at `upper`, seen from above."""
    return Face(name, tuple(range(upper, upper + n)), BACK)


SIDES = Parameter("sides", "count", "how many sides the base has", 3, 24)


def base_choices(name: str, required: bool = True) -> tuple[Parameter, ...]:
    """The three ways to say how large a regular base is; `name` is the length of one of its sides."""
    return (
        Parameter(name, "length", "the length of one side of the base", group="base size", required=required),
        Parameter(
            "across",
            "length",
            "the base from one flat side to the opposite one (from a side to the opposite corner if the number is odd)",
            group="base size",
            required=required,
            also=("across flats",),
        ),
        Parameter(
            "corners",
            "length",
            "the base from corner to opposite corner (twice the outer radius)",
            group="base size",
            required=required,
            also=("across corners",),
        ),
    )


def outer_radius(got: Read, sides: int, name: str) -> float:
    """The outer radius of the regular base, from its side, across or corners."""
    if got.has("across"):
        half = got.number("across")
        return half / 2 / math.cos(math.pi / sides) if sides % 2 == 0 else half / (1 + math.cos(math.pi / sides))
    if got.has("corners"):
        return got.number("corners") / 2
    return got.number(name) / 2 / math.sin(math.pi / sides)


def rise_choices(to: str = "the apex") -> tuple[Parameter, Parameter]:
    """The two ways to say how high a sloping side reaches. They may stand together if they agree."""
    return (
        Parameter("height", "length", f"the upright height from the base to {to}", group="rise", together=True),
        Parameter(
            "slant",
            "length",
            f"the height of one side along its slope, from the middle of its foot to {to}",
            group="rise",
            also=("slant height",),
            together=True,
        ),
    )


def rise(got: Read, run: float) -> float:
    """The upright height, from the height or the slant; `run` is how far the slope goes inwards.

    Raises NetError if the slant cannot be, or both are given and do not agree (slant² = height² + run²).
    """
    if not got.has("slant"):
        return got.number("height")
    slant = got.number("slant")
    if got.has("height"):
        height = got.number("height")
        right = math.hypot(height, run)
        if slant < height:
            raise NetError(
                f"The slant of the {got.title} ({slant:g} mm) is shorter than its height ({height:g} mm).",
                f"Leave out the slant: with this base and height it is {right:.1f} mm.",
                "slant",
            )
        if abs(slant - right) > 0.005 * right:
            raise NetError(
                f"The slant ({slant:g} mm), the height ({height:g} mm) and the base of the {got.title} do not agree.",
                f"Leave out the slant: with this base and height it is {right:.1f} mm.",
                "slant",
            )
        return height
    if slant <= run * (1 + 1e-9):
        raise NetError(
            f"A slant of {slant:g} mm is too short for the {got.title}: its side must reach {run:.4g} mm inwards.",
            f"Write a slant of more than {run:.4g} mm, or give the height.",
            "slant",
        )
    return math.sqrt(slant * slant - run * run)


def outward(points: Sequence[Vector], loops: Iterable[Sequence[int]]) -> list[tuple[int, ...]]:
    """The loops, each turned to run anticlockwise seen from outside, for a solid that surrounds its middle."""
    centre = mean(points)
    out = []
    for loop in loops:
        corners = [points[i] for i in loop]
        outside = dot(newell(corners), minus(mean(corners), centre)) > 0
        out.append(tuple(loop) if outside else tuple(reversed(loop)))
    return out


def hull_faces(points: Sequence[Vector]) -> list[tuple[int, ...]]:
    """The faces of a small convex solid from its corners: for each triple all points of its plane, if none lies beyond.

    Meant for regular solids of up to some sixty corners.
    """
    size = max(math.hypot(*p) for p in points)
    tol = 1e-9 * size
    found: dict[frozenset[int], tuple[int, ...]] = {}
    n = len(points)
    for i in range(n):
        near = sorted((j for j in range(n) if j != i), key=lambda j: (math.dist(points[i], points[j]), j))[:6]
        for x, j in enumerate(near):
            for k in near[x + 1 :]:
                normal = unit(cross(minus(points[j], points[i]), minus(points[k], points[i])))
                level = dot(normal, points[i])
                if level < 0:
                    normal, level = times(normal, -1), -level
                if level > tol and all(dot(normal, p) < level + tol for p in points):
                    on = [m for m, p in enumerate(points) if abs(dot(normal, p) - level) <= tol]
                    found.setdefault(frozenset(on), _round(points, on, normal))
    return sorted(found.values(), key=lambda loop: (len(loop), [round(-mean([points[v] for v in loop])[2], 6)], loop))


def _round(points: Sequence[Vector], on: list[int], normal: Vector) -> tuple[int, ...]:
    centre = mean([points[i] for i in on])
    u = unit(minus(points[on[0]], centre))
    v = cross(normal, u)

    def angle(i: int) -> float:
        w = minus(points[i], centre)
        return math.atan2(dot(w, v), dot(w, u)) % (2 * math.pi)

    return tuple(sorted(on, key=angle))


def standing(name: str, title: str, edge: float, points: Sequence[Vector], loops: Sequence[tuple[int, ...]]) -> Solid:
    """A solid of unit-like corners, made to have edges of length `edge` and turned to stand on its last face."""
    one = math.dist(points[loops[0][0]], points[loops[0][1]])
    scaled = [times(p, edge / one) for p in points]
    down = unit(newell([scaled[i] for i in loops[-1]]))
    first = unit(minus(scaled[loops[-1][0]], scaled[loops[-1][1]]))
    side = cross(times(down, -1), first)
    placed = [(dot(p, first), dot(p, side), -dot(p, down)) for p in scaled]
    low = min(p[2] for p in placed)
    placed = [(x, y, z - low) for x, y, z in placed]
    rest = sorted(loops[:-1], key=lambda loop: _from_below(placed, loop))
    faces = [Face("base", tuple(loops[-1]), BACK)]
    for i, loop in enumerate(rest):
        level = abs(unit(newell([placed[v] for v in loop]))[2]) > 0.999
        faces.append(Face("top" if level else f"side {i + 1}", loop, BACK if level else UP))
    return Solid(name, title, tuple(placed), tuple(faces), sizes=(("edge", edge, "length"),))


def _from_below(points: Sequence[Vector], loop: Sequence[int]) -> tuple[float, float]:
    x, y, z = mean([points[i] for i in loop])
    return (round(z, 6), round((math.atan2(y, x) + math.pi / 2 + 1e-9) % (2 * math.pi), 6))


def surface(solid: Solid) -> float:
    """The area of all plane faces in square mm."""
    return sum(area(flat_loop(solid, f)) for f in range(len(solid.faces)))


def volume(solid: Solid) -> float:
    """The volume inside the plane faces in cubic mm (divergence theorem)."""
    total = 0.0
    for face in solid.faces:
        corners = [solid.vertices[v] for v in face.loop]
        for b, c in pairwise(corners):
            total += dot(corners[0], cross(b, c)) / 6
    return total


def defects(solid: Solid) -> dict[int, float]:
    """For each corner of a closed solid, how much less than a full turn its face angles make (radians)."""
    edges_of(solid)
    out = {v: 2 * math.pi for face in solid.faces for v in face.loop}
    for face in solid.faces:
        n = len(face.loop)
        for i, v in enumerate(face.loop):
            here = solid.vertices[v]
            a = unit(minus(solid.vertices[face.loop[i - 1]], here))
            b = unit(minus(solid.vertices[face.loop[(i + 1) % n]], here))
            turn = math.acos(max(-1.0, min(1.0, dot(a, b))))
            if dot(cross(b, a), newell([solid.vertices[w] for w in face.loop])) < 0:
                turn = 2 * math.pi - turn
            out[v] -= turn
    return out
