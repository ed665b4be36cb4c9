"""A painting as a line drawing: the outlines of what it is composed of, one thing over another, as SVG.

The painting's own code is run on a surface that keeps the shapes instead of painting them. Shadows, glows and all that
lets something else show through is left out; shapes of one colour that grow together, like the leaves of a tree, are
one shape.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

import numpy as np
from PIL import Image
from shapely import MultiPolygon, Point, Polygon, make_valid, unary_union
from shapely.geometry.base import BaseGeometry

from .shapes import Floats, Points
from .surface import Array, Colour, Surface, rgb

_PIXELS = 90  # of the surface underneath, which is only there to be measured
_SOLID, _SHARP = 0.84, 3.0  # what is thinner paint or softer than this has no outline
_ALIKE = 0.19  # of the colour's range: shapes nearer than this that overlap are one
_LIGHT, _VEIL, _SOFT = 0.9, 0.6, 6.0  # nor has a veil, unless it is nearly white, like a cloud
_GROUND = 40_000.0  # square units: two shapes so large, like a wall and a table, stay two
_ACROSS = 9  # places each way, of which the colour of a shape that changes is the mean
_BACK = 12  # shapes, among which a cloud looks for its other parts
_LEAVES, _LUMPS = (
    60,
    8,
)  # shapes, among which what has grown from so many looks for more of it, like the leaves of a tree
_SPECK, _DOT = 80.0, 5.0  # square units: what is smaller than a speck is a dot if it is dark, and else left out
_DARK = 0.42
_HOLE = 500.0  # square units; smaller gaps in what has grown together are closed
_ROUND = 2.5  # units, by which the edge of what has grown together is evened
_KEPT = 0.85  # of the ground, or the evening is not worth it
_MANY = 6  # shapes, from which on that is done
_LONG = 240.0  # units round it: a stripe is longer
_NARROW, _BESIDE = 14.0, 5.0  # units: stripes are narrower, and so near each other
_LINE = 9.0  # units: a shape thinner than this on the average is drawn as a line
_SHORT = 9.0  # units: a line shorter than this is left out
_WIDTH = 2.6  # units, of the drawn line; a picture's long side is 1000
_CLOSE = 0.6  # units: an outline may be simplified by so much


@dataclass(slots=True)
class _Shape:
    ground: BaseGeometry
    colour: Array
    grown: int = 1

    def evened(self) -> BaseGeometry:
        """The ground, without the ragged edge and the gaps of what has grown together from many."""
        if self.grown < _MANY:
            return self.ground
        whole = self.ground.buffer(_ROUND).buffer(-2 * _ROUND).buffer(_ROUND)
        if whole.area < _KEPT * self.ground.area:  # it was all thin
            return self.ground
        parts = (Polygon(part.exterior, [r for r in part.interiors if Polygon(r).area > _HOLE])
                 for part in _polygons(whole))  # fmt: skip
        return unary_union(list(parts))


class Outline(Surface):
    """A surface that keeps the outlines of what is painted on it."""

    strewn = 0.25

    def __init__(self, width: float, height: float, pixels: int, seed: int) -> None:
        super().__init__(width, height, _PIXELS, seed)
        self.shapes: list[_Shape] = []
        self._masks: list[tuple[Array, BaseGeometry]] = []

    def mask(self, shape: Points, soft: float = 0.0) -> Array:
        """The mask, whose shape is kept to cut others by."""
        made = super().mask(shape, soft)
        self._masks.append((made, _ground(shape)))
        return made

    def fill(self, shape: Points, colour: Colour, alpha: float = 1.0, *, soft: float = 0.0, clip: Array | None = None,
             **how: Any) -> None:  # fmt: skip
        """Keep the shape, if it hides what lies under it."""
        pale = clip is None and not callable(colour) and float(rgb(colour).min()) > _LIGHT and soft >= _SHARP
        thick, sharp = (_VEIL, _SOFT) if pale else (_SOLID, _SHARP)
        if alpha * self.frame.alpha < thick or soft * self.frame.size > sharp:
            return
        ground = _ground(self._placed(shape)).intersection(_ground(_whole(self.width, self.height)))
        if clip is not None:
            ground = ground.intersection(next(known for mask, known in self._masks if mask is clip))
        if ground.is_empty or ground.area < 1:
            return
        new = _Shape(ground, self._colour(colour, ground))
        stripe = next((shape for shape in self.shapes[:-4:-1] if _stripes(shape.ground, ground)), None)
        if stripe:
            stripe.ground = unary_union([stripe.ground, ground]).buffer(_BESIDE).buffer(-_BESIDE)
            return
        for back in range(1, min(len(self.shapes), _BACK if pale else _LEAVES) + 1):
            last = self.shapes[-back]
            if not pale and back > 1 and last.grown < _LUMPS:
                continue
            if float(np.abs(last.colour - new.colour).max()) < _ALIKE and _grown_together(last.ground, ground):
                self._grow(back, ground)
                return
        self.shapes.append(new)

    def _grow(self, back: int, ground: BaseGeometry) -> None:
        """Join the ground to the shape so many from the end; it still hides what was painted after that shape."""
        shape = self.shapes[-back]
        shape.ground = unary_union([shape.ground, ground])
        shape.grown += 1
        for over in self.shapes[len(self.shapes) - back + 1 :]:
            over.ground = over.ground.difference(ground).buffer(0)

    def _colour(self, colour: Colour, ground: BaseGeometry) -> Array:
        if not callable(colour):
            return rgb(colour)
        left, low, right, top = ground.bounds
        grid = [Point(x, y) for x in np.linspace(left, right, _ACROSS) for y in np.linspace(low, top, _ACROSS)]
        inside = [point for point in grid if ground.contains(point)] or [ground.representative_point()]
        found = []
        for point in inside:
            here = (np.array([[v]], np.float32) for v in self._unplaced(point.x, point.y))
            found.append(np.asarray(colour(*here)[0, 0], np.float32))
        return np.asarray(np.mean(found, axis=0), np.float32)

    def _unplaced(self, x: float, y: float) -> tuple[float, float]:
        f = self.frame
        return (x - f.x) / (f.size * f.left_right), (y - f.y) / (f.size * f.upside)

    def svg(self) -> str:
        """The drawing: shapes in their plain colours with a black outline, in the order in which they were painted."""
        paths = [path for shape in self.shapes for path in _paths(shape)]
        size = f'viewBox="0 0 {self.width:g} {self.height:g}" width="{self.width:g}" height="{self.height:g}"'
        style = f'stroke="#000000" stroke-width="{_WIDTH:g}" stroke-linejoin="round"'
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" {size}>\n'
            f'<rect width="{self.width:g}" height="{self.height:g}" fill="#ffffff"/>\n'
            f"<g {style}>\n" + "\n".join(paths) + "\n</g></svg>\n"
        )


def _whole(width: float, height: float) -> Floats:
    return np.array([[-9, -9], [width + 9, -9], [width + 9, height + 9], [-9, height + 9]], float)


def _ground(shape: Points) -> BaseGeometry:
    return make_valid(Polygon(np.asarray(shape, float))).buffer(0)


def _grown_together(one: BaseGeometry, other: BaseGeometry) -> bool:
    if min(one.area, other.area) > _GROUND:
        return False
    return bool(one.intersection(other).area > 0.02 * min(one.area, other.area))


def _stripes(one: BaseGeometry, other: BaseGeometry) -> bool:
    """True if two narrow shapes lie along each other: stripes of a cloth, which are drawn as one."""
    if one.is_empty or max(2 * part.area / part.length for part in (one, other)) > _NARROW:
        return False
    if min(part.length for part in (one, other)) < _LONG:
        return False
    return bool(one.intersection(other.buffer(3 * _BESIDE)).area > _KEPT * one.area)


def _polygons(ground: BaseGeometry) -> list[Polygon]:
    if isinstance(ground, Polygon):
        return [] if ground.is_empty else [ground]
    return list(ground.geoms) if isinstance(ground, MultiPolygon) else []


def _paths(shape: _Shape) -> Iterator[str]:
    dark = float(shape.colour @ (0.299, 0.587, 0.114)) < _DARK
    for part in _polygons(shape.evened()):
        if 4 * part.area / part.length < _LINE:
            if part.length / 2 > _SHORT:
                yield f'<path fill="#000000" stroke="none" d="{_line(part)}"/>'
        elif part.area >= _SPECK:
            yield f'<path fill="{_hex(shape.colour)}" d="{_line(part)}"/>'
        elif part.area >= _DOT and dark:
            yield f'<path fill="#000000" stroke="none" d="{_line(part)}"/>'


def _hex(colour: Array) -> str:
    return "#" + "".join(f"{round(float(np.clip(band, 0, 1)) * 255):02x}" for band in colour)


def _line(part: Polygon) -> str:
    simple = part.simplify(_CLOSE)
    holes = [ring for ring in simple.interiors if Polygon(ring).area > _SPECK]
    return "".join(_ring(list(ring.coords)[:-1]) for ring in (simple.exterior, *holes))


def _ring(points: Sequence[tuple[float, ...]]) -> str:
    return "M" + " ".join(f"{x:.1f},{y:.1f}" for x, y, *_ in points) + "Z"


@contextmanager
def _instead(names: dict[str, Any], **others: Any) -> Iterator[None]:
    before = {name: names[name] for name in others if name in names}
    names.update({name: other for name, other in others.items() if name in before})
    yield
    names.update(before)


def drawing(painting: Callable[[int], Image.Image]) -> str:
    """The line drawing of a painting, given by the function that paints it."""
    with _instead(painting.__globals__, Surface=Outline, painted=lambda surface, *how, **more: surface):
        surface: Any = painting(_PIXELS)
    return str(surface.svg())
