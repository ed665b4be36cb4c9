"""Shapes: what a vector picture is made of. Frozen values, ready to be scaled to mm and laid on a page.

Steps are ("m", x, y), ("l", x, y), ("c", x1, y1, x2, y2, x, y) and ("z",); y runs upwards; the fill rule is even-odd.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

Ink = float | tuple[float, float, float]
Point = tuple[float, float]
Step = tuple[str | float, ...]
Steps = tuple[Step, ...]


@dataclass(frozen=True, slots=True)
class Shape:
    """Steps with a fill and a stroke, either of which may be missing; lengths are in the picture's own units."""

    steps: Steps
    fill: Ink | None = None
    stroke: Ink | None = None
    stroke_width: float = 0.0
    dash: tuple[float, ...] = ()
    round_cap: bool = False
    round_join: bool = False


@dataclass(frozen=True, slots=True)
class VectorPicture:
    """A picture of shapes in a rectangle from (0, 0) to (width, height), in its own units, y upwards.

    Shapes may reach beyond the rectangle: clip to it when drawing. `left_out` tells what could not be taken over.
    """

    width: float
    height: float
    shapes: tuple[Shape, ...]
    left_out: tuple[str, ...] = ()

    @property
    def aspect(self) -> float:
        """Width over height."""
        return self.width / self.height

    def placed(self, x: float, y: float, width: float) -> VectorPicture:
        """The picture scaled to that width in mm, its lower left corner at (x, y): steps and widths are then in mm."""
        scale = width / self.width
        shapes = tuple(
            replace(
                shape,
                steps=moved(shape.steps, (scale, 0.0, 0.0, scale, x, y)),
                stroke_width=shape.stroke_width * scale,
                dash=tuple(length * scale for length in shape.dash),
            )
            for shape in self.shapes
        )
        return VectorPicture(width, self.height * scale, shapes, self.left_out)


def moved(steps: Steps, matrix: tuple[float, float, float, float, float, float]) -> Steps:
    """The steps under (a, b, c, d, e, f): x' = a x + c y + e, y' = b x + d y + f."""
    a, b, c, d, e, f = matrix
    out: list[Step] = []
    for step in steps:
        numbers = [float(v) for v in step[1:]]
        pairs = zip(numbers[::2], numbers[1::2], strict=True)
        out.append((step[0], *(v for x, y in pairs for v in (a * x + c * y + e, b * x + d * y + f))))
    return tuple(out)


def flattened(steps: Steps, pieces: int = 8) -> list[list[Point]]:
    """The subpaths as polylines, each curve in that many pieces; a closed one ends where it began."""
    out: list[list[Point]] = []
    line: list[Point] = []
    for step in steps:
        kind, numbers = step[0], [float(v) for v in step[1:]]
        if kind == "m":
            line = [(numbers[0], numbers[1])]
            out.append(line)
        elif kind == "l":
            line.append((numbers[0], numbers[1]))
        elif kind == "c":
            line.extend(curve_points(line[-1], numbers, pieces))
        elif line and line[-1] != line[0]:
            line.append(line[0])
    return [line for line in out if len(line) > 1]


def curve_points(start: Point, numbers: list[float], pieces: int) -> list[Point]:
    """Points along a cubic curve from `start`, without `start` itself; `numbers` are x1, y1, x2, y2, x, y."""
    x0, y0 = start
    x1, y1, x2, y2, x3, y3 = numbers
    out = []
    for i in range(1, pieces + 1):
        t = i / pieces
        u = 1 - t
        a, b, c, d = u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t
        out.append((a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3))
    return out


def signed_area(ring: list[Point]) -> float:
    """The area a closed polyline surrounds, positive when it runs anticlockwise (y upwards)."""
    return sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(ring, [*ring[1:], ring[0]], strict=True)) / 2


def winding(ring: list[Point], point: Point) -> int:
    """How often a closed polyline goes round a point, anticlockwise counted positive."""
    px, py = point
    turns = 0
    for (x0, y0), (x1, y1) in zip(ring, [*ring[1:], ring[0]], strict=True):
        if (y0 <= py) != (y1 <= py):
            side = (x1 - x0) * (py - y0) - (px - x0) * (y1 - y0)
            if y1 > y0 and side > 0:
                turns += 1
            elif y1 < y0 and side < 0:
                turns -= 1
    return turns
