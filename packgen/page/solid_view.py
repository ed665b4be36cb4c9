"""A solid as it will stand when built: a small view from above and in front, hidden faces hidden."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import cos, pi, radians, sin

from packgen.nets import Solid
from packgen.nets.net import Art
from packgen.nets.solid import Curved, Disc, Mantle, Strip, flat_loop, flat_up
from packgen.nets.vectors import Vector, cross, minus, unit
from packgen.page.look import MIDDLE, THIN
from packgen.page.marks import Mark, Point, Stroke
from packgen.page.pen import Pen

_TURN_DEG, _TILT_DEG = 32.0, 24.0
_PARTS = 48


Painter = Callable[[str, Art], tuple[tuple[Mark, ...], tuple[Point, ...]]]
"""What is drawn on a face, by its name and its upright box: marks in the box, and the outline to show them inside."""


def draw_solid(pen: Pen, solid: Solid, x: float, y: float, width: float, height: float,
               painter: Painter | None = None) -> None:  # fmt: skip
    """Draw the solid as large as fits the rectangle, its faces in three greys by how they take the light.

    With a `painter` the drawings on its plane faces are seen as they will be on the built model.
    """
    faces = [(_seen_all(solid.corners(k)), True, k) for k in range(len(solid.faces))]
    faces += [(_seen_all(points), edged, -1) for part in solid.curved for points, edged in _facets(part)]
    if not faces:
        return
    xs = [p[0] for face, _, _ in faces for p in face]
    ys = [p[1] for face, _, _ in faces for p in face]
    scale = min(width / max(max(xs) - min(xs), 1e-9), height / max(max(ys) - min(ys), 1e-9))
    left = x + (width - (max(xs) - min(xs)) * scale) / 2 - min(xs) * scale
    low = y + (height - (max(ys) - min(ys)) * scale) / 2 - min(ys) * scale
    # Painter's order: the farthest face first, so that nearer ones cover it.
    for face, edged, k in sorted(faces, key=lambda f: sum(p[2] for p in f[0]) / len(f[0]), reverse=True):
        points = [(left + px * scale, low + py * scale) for px, py, _ in face]
        shade = _shade(face)
        pen.polygon(points, None if edged else Stroke(THIN, shade), shade, role="view")
        if painter and k >= 0 and _faces_eye(face):
            _paint(pen, solid, k, (left, low, scale), painter)
        if edged:
            pen.polygon(points, Stroke(MIDDLE, 0.1), role="view")
    for part in solid.curved:
        for line in _outlines(part):
            row = [(left + px * scale, low + py * scale) for px, py, _ in _seen_all(line)]
            pen.polygon(row, Stroke(MIDDLE, 0.1, cap=1), closed=False, role="view")


def view_shape(solid: Solid) -> float:
    """The width of the solid's view for each mm of its height."""
    corners = [solid.corners(k) for k in range(len(solid.faces))]
    seen = [p for face in corners for p in _seen_all(face)]
    seen += [p for part in solid.curved for face, _ in _facets(part) for p in _seen_all(face)]
    xs, ys = [p[0] for p in seen], [p[1] for p in seen]
    return (max(xs) - min(xs)) / max(max(ys) - min(ys), 1e-9) if seen else 1.0


def _paint(pen: Pen, solid: Solid, face: int, place: tuple[float, float, float], painter: Painter) -> None:
    """Put a face's drawing where the face is seen: a plane seen from far away is that plane, sheared and shortened."""
    loop, (ux, uy) = flat_loop(solid, face), flat_up(solid, face)
    across = [px * uy - py * ux for px, py in loop]
    upward = [px * ux + py * uy for px, py in loop]
    near, foot = min(across), min(upward)
    outline = tuple((a - near, u - foot) for a, u in zip(across, upward, strict=True))
    box = Art((1, 0, 0, 1, 0, 0), max(across) - near, max(upward) - foot, outline)
    marks, clip = painter(solid.faces[face].name, box)
    if not marks:
        return
    corners = solid.corners(face)
    along = unit(minus(corners[1], corners[0]))
    other = cross(solid.normal(face), along)

    def seen(a: float, u: float) -> Point:
        px, py = a * uy + u * ux, -a * ux + u * uy
        spot = tuple(c + px * i + py * j for c, i, j in zip(corners[0], along, other, strict=True))
        right, up, _ = _seen((spot[0], spot[1], spot[2]))
        return place[0] + right * place[2], place[1] + up * place[2]

    (ox, oy), (rx, ry), (tx, ty) = seen(near, foot), seen(near + 1, foot), seen(near, foot + 1)
    pen.group(marks, (rx - ox, ry - oy, tx - ox, ty - oy, ox, oy), clip)


def _faces_eye(face: Sequence[Vector]) -> bool:
    """True if a face, listed anticlockwise from outside, shows its outside."""
    turns = zip(face, (*face[1:], face[0]), strict=True)
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in turns) > 1e-6


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


def _outlines(part: Curved) -> list[list[Vector]]:
    """The lines of a curved side that stand out: its two sides against the ground, and the nearer half of its rims."""
    if not isinstance(part, Mantle):
        return []
    foot, top = _ring(part.foot, part.z), _ring(part.top, part.z + part.height)
    seen = [_faces_eye(_seen_all((foot[k - 1], foot[k], top[k], top[k - 1]))) for k in range(_PARTS)]
    first = next((k for k in range(_PARTS) if seen[k] and not seen[k - 1]), None)
    if first is None:
        return [[*foot, foot[0]], [*top, top[0]]]
    count = next(n for n in range(1, _PARTS + 1) if not seen[(first + n) % _PARTS])
    shown = [(first - 1 + k) % _PARTS for k in range(count + 1)]
    sides = [[foot[k], top[k]] for k in (shown[0], shown[-1])]
    rims = [[foot[k] for k in shown], [top[k] for k in shown]] if part.top > 0 else [[foot[k] for k in shown]]
    return [*sides, *rims]


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
