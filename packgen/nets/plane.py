"""Shapes in the plane for measuring overlaps: the only place where points become shapely polygons.

Points are rounded first. Unrounded, two triangles that merely share an edge, its ends apart by 1e-15, can come out of
GEOS 3.14 with one whole triangle as their intersection; rounded, their shared corners are the very same numbers.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

import shapely

from packgen.nets.vectors import Point

GRAIN = 1e-6
"""Points on paper are rounded to this (mm) before shapes are compared."""
TOUCH = 1e-3
"""Two shapes on paper that share less than this (square mm) only touch."""
_FIGURES = 8
_HAIR = 1e-5


def snapped(points: Iterable[Point], digits: int = 6) -> list[Point]:
    """The points rounded to so many digits after the decimal point."""
    return [(round(x, digits) + 0.0, round(y, digits) + 0.0) for x, y in points]


def shape(points: Iterable[Point]) -> shapely.Polygon:
    """The polygon with these corners, rounded."""
    return shapely.Polygon(snapped(points))


def joined(outlines: Iterable[Sequence[Point]]) -> shapely.Geometry:
    """All the outlines as one shape.

    They are grown by a hair first and shrunk again, so that no slit of rounding is left where an edge lies along a part
    of another. Shrunk with mitred corners, GEOS 3.14 loses some shapes whole.
    """
    grown = [shape(o).buffer(_HAIR, join_style="mitre") for o in outlines]
    whole = shapely.union_all(grown)
    back = whole.buffer(-_HAIR, quad_segs=1)
    back = back if back.area > 0.99 * whole.area else whole
    return back if back.is_valid else shapely.make_valid(back, method="structure", keep_collapsed=False)


def shrunk(points: Sequence[Point], by: float) -> tuple[Point, ...]:
    """The outline moved inwards by so much (mm); empty if nothing is left of it. Of several parts left, the largest."""
    whole = shape(points).buffer(0)
    left, soft = whole.buffer(-by, join_style="mitre"), whole.buffer(-by)
    if left.area < 0.9 * soft.area:  # see `joined` for what GEOS makes of some mitred corners
        left = soft
    parts = [part for part in getattr(left, "geoms", [left]) if not part.is_empty]
    if not parts:
        return ()
    ring = max(parts, key=lambda part: part.area).exterior.coords
    return tuple((x, y) for x, y in ring)[:-1]


def shared(a: shapely.Geometry, b: shapely.Geometry) -> float:
    """The area (square mm) two shapes share."""
    return float(a.intersection(b).area)


def overlapping(outlines: Sequence[Sequence[Point]], skip: set[tuple[int, int]]) -> list[tuple[int, int]]:
    """The pairs of outlines, by place, that share more than rounding can make; `skip` is passed over."""
    size = max(max(abs(x), abs(y)) for o in outlines for x, y in o)
    digits = _FIGURES - math.ceil(math.log10(size)) if size > 0 else _FIGURES
    rows = [snapped((*o, o[0]), digits) for o in outlines]
    rings = shapely.linearrings(
        [p for row in rows for p in row], indices=[k for k, row in enumerate(rows) for _ in row]
    )
    shapes = shapely.polygons(rings)
    left, right = shapely.STRtree(shapes).query(shapes, predicate="intersects").tolist()
    pairs = [(i, j) for i, j in zip(left, right, strict=True) if i < j and (i, j) not in skip]
    if not pairs:
        return []
    common = shapely.area(shapely.intersection(shapes[[i for i, _ in pairs]], shapes[[j for _, j in pairs]]))
    areas = shapely.area(shapes)
    least = 10.0**-_FIGURES * size * size
    return [
        (i, j)
        for (i, j), area in zip(pairs, common.tolist(), strict=True)
        if area > least + 1e-6 * min(areas[i], areas[j])
    ]
