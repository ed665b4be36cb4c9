"""Points, vectors and rigid movements of the plane and of space, as plain tuples. Lengths in mm, angles in radians."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

Point = tuple[float, float]
Vector = tuple[float, float, float]
Matrix = tuple[float, float, float, float, float, float]
"""(a, b, c, d, e, f): x' = a x + c y + e, y' = b x + d y + f, as in page.marks.Group."""

UNMOVED: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


def plus(a: Vector, b: Vector) -> Vector:
    """a + b."""
    return (a[0] + b[0], a[1] + b[1], a[2] + b[2])


def minus(a: Vector, b: Vector) -> Vector:
    """a - b."""
    return (a[0] - b[0], a[1] - b[1], a[2] - b[2])


def times(a: Vector, factor: float) -> Vector:
    """The vector, `factor` times as long."""
    return (a[0] * factor, a[1] * factor, a[2] * factor)


def dot(a: Vector, b: Vector) -> float:
    """The scalar product."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a: Vector, b: Vector) -> Vector:
    """The vector product."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def length(a: Vector) -> float:
    """The length of a vector."""
    return math.hypot(*a)


def unit(a: Vector) -> Vector:
    """The vector of length 1 in the same direction; the zero vector stays as it is."""
    size = math.hypot(*a)
    return (a[0] / size, a[1] / size, a[2] / size) if size else a


def mean(points: Iterable[Vector]) -> Vector:
    """The middle of some points."""
    all_points = list(points)
    n = len(all_points)
    return (sum(p[0] for p in all_points) / n, sum(p[1] for p in all_points) / n, sum(p[2] for p in all_points) / n)


def newell(points: Sequence[Vector]) -> Vector:
    """Twice the area vector of a loop of points: normal to its best plane (Newell's method, any number of corners)."""
    x = y = z = 0.0
    for a, b in zip(points, (*points[1:], points[0]), strict=True):
        x += (a[1] - b[1]) * (a[2] + b[2])
        y += (a[2] - b[2]) * (a[0] + b[0])
        z += (a[0] - b[0]) * (a[1] + b[1])
    return (x, y, z)


def turned(a: Vector, axis: Vector, angle: float) -> Vector:
    """The vector turned about a unit axis through the origin, right-handed (Rodrigues' formula)."""
    c, s = math.cos(angle), math.sin(angle)
    along = dot(axis, a) * (1 - c)
    side = cross(axis, a)
    return (
        a[0] * c + side[0] * s + axis[0] * along,
        a[1] * c + side[1] * s + axis[1] * along,
        a[2] * c + side[2] * s + axis[2] * along,
    )


def moved(matrix: Matrix, p: Point) -> Point:
    """The point after the movement."""
    a, b, c, d, e, f = matrix
    return (a * p[0] + c * p[1] + e, b * p[0] + d * p[1] + f)


def all_moved(matrix: Matrix, points: Iterable[Point]) -> tuple[Point, ...]:
    """Each of the points after the movement."""
    a, b, c, d, e, f = matrix
    return tuple((a * x + c * y + e, b * x + d * y + f) for x, y in points)


def then(first: Matrix, second: Matrix) -> Matrix:
    """The movement that does `first`, then `second`."""
    a, b, c, d, e, f = first
    g, h, i, j, k, m = second
    return (g * a + i * b, h * a + j * b, g * c + i * d, h * c + j * d, g * e + i * f + k, h * e + j * f + m)


def shift(dx: float, dy: float) -> Matrix:
    """A movement without turning."""
    return (1.0, 0.0, 0.0, 1.0, dx, dy)


def rotation(angle: float) -> Matrix:
    """A turn about the origin, anticlockwise. Quarter turns are exact."""
    quarters = angle / (math.pi / 2)
    if abs(quarters - round(quarters)) < 1e-12:
        c, s = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))[round(quarters) % 4]
    else:
        c, s = math.cos(angle), math.sin(angle)
    return (c, s, -s, c, 0.0, 0.0)


def onto(start: Point, end: Point, new_start: Point, new_end: Point) -> Matrix:
    """The rigid movement that takes `start` to `new_start` and the direction of `end` to that of `new_end`."""
    ux, uy = end[0] - start[0], end[1] - start[1]
    wx, wy = new_end[0] - new_start[0], new_end[1] - new_start[1]
    scale = math.hypot(ux, uy) * math.hypot(wx, wy)
    c, s = (ux * wx + uy * wy) / scale, (ux * wy - uy * wx) / scale
    size = math.hypot(c, s)
    c, s = c / size, s / size
    x, y = c * start[0] - s * start[1], s * start[0] + c * start[1]
    return (c, s, -s, c, new_start[0] - x, new_start[1] - y)


def area(points: Sequence[Point]) -> float:
    """The area of a loop of points, negative if it runs clockwise (the shoelace formula)."""
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, (*points[1:], points[0]), strict=True)) / 2


def bounds(points: Iterable[Point]) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of some points."""
    all_points = list(points)
    xs, ys = [p[0] for p in all_points], [p[1] for p in all_points]
    return min(xs), min(ys), max(xs), max(ys)


def hull(points: Iterable[Point]) -> tuple[Point, ...]:
    """The convex hull, anticlockwise (Andrew's monotone chain)."""
    ordered = sorted(set(points))
    if len(ordered) < 3:
        return tuple(ordered)

    def half(row: Iterable[Point]) -> list[Point]:
        out: list[Point] = []
        for p in row:
            while len(out) > 1 and _turn(out[-2], out[-1], p) <= 0:
                out.pop()
            out.append(p)
        return out[:-1]

    return tuple(half(ordered) + half(reversed(ordered)))


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
