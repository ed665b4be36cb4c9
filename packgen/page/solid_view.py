"""A solid as it will stand when built: a small view from above and in front, hidden faces hidden."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, pi, radians, sin

from packgen.nets import Solid
from packgen.nets.solid import Curved, Disc, Mantle, Strip
from packgen.nets.vectors import Vector
from packgen.page.look import MIDDLE, THIN
from packgen.page.marks import Stroke
from packgen.page.pen import Pen

_TURN_DEG, _TILT_DEG = 32.0, 24.0
_PARTS = 48


def draw_solid(pen: Pen, solid: Solid, x: float, y: float, width: float, height: float) -> None:
    """Draw the solid as large as fits the rectangle, its faces in three greys by how they take the light."""
    faces = [(_seen_all(solid.corners(k)), True) for k in range(len(solid.faces))]
    faces += [(_seen_all(points), edged) for part in solid.curved for points, edged in _facets(part)]
    if not faces:
        return
    xs = [p[0] for face, _ in faces for p in face]
    ys = [p[1] for face, _ in faces for p in face]
    scale = min(width / max(max(xs) - min(xs), 1e-9), height / max(max(ys) - min(ys), 1e-9))
    left = x + (width - (max(xs) - min(xs)) * scale) / 2 - min(xs) * scale
    low = y + (height - (max(ys) - min(ys)) * scale) / 2 - min(ys) * scale
    # Painter's order: the farthest face first, so that nearer ones cover it.
    for face, edged in sorted(faces, key=lambda f: sum(p[2] for p in f[0]) / len(f[0]), reverse=True):
        points = [(left + px * scale, low + py * scale) for px, py, _ in face]
        shade = _shade(face)
        pen.polygon(points, Stroke(MIDDLE, 0.1) if edged else Stroke(THIN, shade), shade, role="view")
    for part in solid.curved:
        if isinstance(part, Mantle):
            for a, b in _sides(part):
                (x1, y1, _), (x2, y2, _) = _seen(a), _seen(b)
                pen.line(left + x1 * scale, low + y1 * scale, left + x2 * scale, low + y2 * scale, MIDDLE, 0.1, cap=1)


def _seen_all(points: Sequence[Vector]) -> list[Vector]:
    return [_seen(p) for p in points]


def _ring(radius: float, z: float) -> list[Vector]:
    return [(radius * cos(2 * pi * k / _PARTS), radius * sin(2 * pi * k / _PARTS), z) for k in range(_PARTS)]


def _facets(part: Curved) -> list[tuple[list[Vector], bool]]:
    """The flat pieces a curved part is drawn from, and whether their edges show."""
    if isinstance(part, Disc):
        return [(_ring(part.radius, part.z), True)]
    if isinstance(part, Strip):
        foot, top = _ring(part.former / 2, 0.0), _ring(part.former / 2, part.width)
        rims: list[tuple[list[Vector], bool]] = [(top, True)]
    else:
        foot, top = _ring(part.foot, part.z), _ring(part.top, part.z + part.height)
        rims = []
    quads = [([foot[k - 1], foot[k], top[k], top[k - 1]], False) for k in range(_PARTS)]
    return [*quads, *rims]


def _sides(mantle: Mantle) -> list[tuple[Vector, Vector]]:
    """The two lines of a curved side that stand out against the ground."""
    pairs = list(zip(_ring(mantle.foot, mantle.z), _ring(mantle.top, mantle.z + mantle.height), strict=True))
    return [
        max(pairs, key=lambda p: _seen(p[0])[0] + _seen(p[1])[0]),
        min(pairs, key=lambda p: _seen(p[0])[0] + _seen(p[1])[0]),
    ]


def _seen(point: Vector) -> Vector:
    """A point as seen: right, up, and how far away."""
    a, b = radians(_TURN_DEG), radians(_TILT_DEG)
    px, py, pz = point
    right = px * cos(a) - py * sin(a)
    away = px * sin(a) + py * cos(a)
    return right, pz * cos(b) + away * sin(b), away * cos(b) - pz * sin(b)


def _shade(face: list[Vector]) -> float:
    """A grey from 0.82 to 1 by the direction the face looks, in the frame of the view."""
    normal = [0.0, 0.0, 0.0]
    for (x1, y1, z1), (x2, y2, z2) in zip(face, face[1:] + face[:1], strict=True):
        normal[0] += (y1 - y2) * (z1 + z2)
        normal[1] += (z1 - z2) * (x1 + x2)
        normal[2] += (x1 - x2) * (y1 + y2)
    size = sum(n * n for n in normal) ** 0.5 or 1.0
    if normal[2] > 0:  # turned towards the eye whichever way round it was listed
        normal = [-n for n in normal]
    light = (normal[0] * -0.45 + normal[1] * 0.75 + normal[2] * -0.48) / size
    return 0.82 + 0.18 * max(0.0, min(1.0, light))
