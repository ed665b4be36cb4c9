"""The ornament family: everything is a piece of folded paper, drawn from flat facets in three greys.

Each emblem is a list of facets in a square of 1 x 1; a facet is a polygon and how much light falls on it (0 white to 2
in shade). They are our own drawings. A sheet's emblem tells sheets apart at a glance and carries no meaning by colour.
"""

from __future__ import annotations

from packgen.page.look import MIDDLE, THIN
from packgen.page.marks import Stroke
from packgen.page.pen import Pen

Facet = tuple[tuple[tuple[float, float], ...], int]

_SHADE = (1.0, 0.93, 0.82)

EMBLEMS: dict[str, tuple[Facet, ...]] = {
    "boat": (
        (((0.5, 0.30), (0.5, 0.92), (0.18, 0.42)), 0),
        (((0.5, 0.30), (0.5, 0.92), (0.82, 0.42)), 2),
        (((0.02, 0.46), (0.5, 0.30), (0.98, 0.46), (0.76, 0.08), (0.24, 0.08)), 1),
        (((0.02, 0.46), (0.5, 0.30), (0.24, 0.08)), 0),
    ),
    "dart": (
        (((0.02, 0.62), (0.98, 0.90), (0.36, 0.44)), 0),
        (((0.36, 0.44), (0.98, 0.90), (0.40, 0.10)), 2),
        (((0.40, 0.10), (0.98, 0.90), (0.66, 0.26)), 1),
        (((0.36, 0.44), (0.40, 0.10), (0.52, 0.33)), 1),
    ),
    "book": (
        (((0.5, 0.20), (0.5, 0.80), (0.06, 0.90), (0.06, 0.30)), 0),
        (((0.5, 0.20), (0.5, 0.80), (0.94, 0.90), (0.94, 0.30)), 1),
        (((0.06, 0.30), (0.5, 0.20), (0.5, 0.10), (0.06, 0.20)), 2),
        (((0.94, 0.30), (0.5, 0.20), (0.5, 0.10), (0.94, 0.20)), 2),
    ),
    "box": (
        (((0.5, 0.04), (0.5, 0.54), (0.08, 0.74), (0.08, 0.24)), 1),
        (((0.5, 0.04), (0.5, 0.54), (0.92, 0.74), (0.92, 0.24)), 2),
        (((0.5, 0.54), (0.92, 0.74), (0.5, 0.94), (0.08, 0.74)), 0),
    ),
    "frame": (
        (((0.06, 0.06), (0.94, 0.06), (0.76, 0.24), (0.24, 0.24)), 2),
        (((0.94, 0.06), (0.94, 0.94), (0.76, 0.76), (0.76, 0.24)), 1),
        (((0.94, 0.94), (0.06, 0.94), (0.24, 0.76), (0.76, 0.76)), 0),
        (((0.06, 0.94), (0.06, 0.06), (0.24, 0.24), (0.24, 0.76)), 1),
    ),
    "fan": (
        (((0.5, 0.10), (0.02, 0.52), (0.18, 0.74)), 0),
        (((0.5, 0.10), (0.18, 0.74), (0.38, 0.90)), 2),
        (((0.5, 0.10), (0.38, 0.90), (0.62, 0.90)), 0),
        (((0.5, 0.10), (0.62, 0.90), (0.82, 0.74)), 2),
        (((0.5, 0.10), (0.82, 0.74), (0.98, 0.52)), 0),
    ),
    "wheel": (
        (((0.5, 0.5), (0.5, 0.98), (0.02, 0.98)), 0),
        (((0.5, 0.5), (0.02, 0.98), (0.02, 0.5)), 2),
        (((0.5, 0.5), (0.02, 0.5), (0.02, 0.02)), 0),
        (((0.5, 0.5), (0.02, 0.02), (0.5, 0.02)), 2),
        (((0.5, 0.5), (0.5, 0.02), (0.98, 0.02)), 0),
        (((0.5, 0.5), (0.98, 0.02), (0.98, 0.5)), 2),
        (((0.5, 0.5), (0.98, 0.5), (0.98, 0.98)), 0),
        (((0.5, 0.5), (0.98, 0.98), (0.5, 0.98)), 2),
    ),
    "bird": (
        (((0.02, 0.60), (0.34, 0.50), (0.22, 0.70)), 2),
        (((0.22, 0.70), (0.34, 0.50), (0.62, 0.30), (0.50, 0.60)), 0),
        (((0.34, 0.50), (0.62, 0.30), (0.40, 0.12)), 1),
        (((0.50, 0.60), (0.62, 0.30), (0.98, 0.18)), 2),
        (((0.36, 0.66), (0.50, 0.60), (0.62, 0.30), (0.80, 0.94)), 1),
    ),
    "house": (
        (((0.10, 0.08), (0.50, 0.08), (0.50, 0.52), (0.10, 0.52)), 0),
        (((0.50, 0.08), (0.92, 0.16), (0.92, 0.58), (0.50, 0.52)), 2),
        (((0.10, 0.52), (0.50, 0.52), (0.30, 0.92)), 1),
        (((0.50, 0.52), (0.92, 0.58), (0.70, 0.94), (0.30, 0.92)), 0),
    ),
    "letter": (
        (((0.04, 0.18), (0.96, 0.18), (0.5, 0.54)), 1),
        (((0.04, 0.18), (0.5, 0.54), (0.04, 0.82)), 0),
        (((0.96, 0.18), (0.5, 0.54), (0.96, 0.82)), 2),
        (((0.04, 0.82), (0.96, 0.82), (0.5, 0.46)), 0),
    ),
    "strip": (
        (((0.04, 0.24), (0.27, 0.40), (0.27, 0.88), (0.04, 0.72)), 0),
        (((0.27, 0.40), (0.50, 0.24), (0.50, 0.72), (0.27, 0.88)), 2),
        (((0.50, 0.24), (0.73, 0.40), (0.73, 0.88), (0.50, 0.72)), 0),
        (((0.73, 0.40), (0.96, 0.24), (0.96, 0.72), (0.73, 0.88)), 2),
    ),
    "sun": (
        (((0.5, 0.98), (0.36, 0.64), (0.64, 0.64)), 0),
        (((0.98, 0.5), (0.64, 0.64), (0.64, 0.36)), 2),
        (((0.5, 0.02), (0.64, 0.36), (0.36, 0.36)), 2),
        (((0.02, 0.5), (0.36, 0.36), (0.36, 0.64)), 0),
        (((0.36, 0.36), (0.64, 0.36), (0.64, 0.64), (0.36, 0.64)), 1),
    ),
}


def emblem(pen: Pen, name: str, x: float, y: float, size: float, weight: float = MIDDLE) -> None:
    """Draw an emblem in the square with its lower left corner at (x, y)."""
    edge = Stroke(weight, 0.15)
    for points, light in EMBLEMS[name]:
        placed = [(x + px * size, y + py * size) for px, py in points]
        pen.polygon(placed, edge, _SHADE[light], role="ornament")


def folded_strip(pen: Pen, x: float, y: float, width: float, height: float, fold: float = 0.0) -> None:
    """A strip of paper folded to and fro, from (x, y) to the right: the rule under a heading.

    Every other panel is in shade; `fold` is about how wide a panel is (as high as the strip if not given).
    """
    count = max(2, round(width / (fold or height * 1.7)))
    step = width / count
    lean = height * 0.45
    edge = Stroke(THIN, 0.35)
    for k in range(count):
        low, high = (0.0, lean) if k % 2 == 0 else (lean, 0.0)
        left, right = x + k * step, x + (k + 1) * step
        rise = height - lean
        points = [(left, y + low), (right, y + high), (right, y + high + rise), (left, y + low + rise)]
        pen.polygon(points, edge, _SHADE[0 if k % 2 == 0 else 2], role="ornament")


def folded_corner(pen: Pen, x: float, y: float, size: float, corner: str = "ne") -> None:
    """A turned-down paper corner at (x, y), the outer corner of a box: `corner` is ne, nw, se or sw."""
    across = -size if "e" in corner else size
    down = -size if "n" in corner else size
    pen.polygon([(x + across, y), (x, y + down), (x + across, y + down)], Stroke(THIN, 0.2), _SHADE[2], role="ornament")
