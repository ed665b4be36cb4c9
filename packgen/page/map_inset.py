"""A small map on a map: places that lie too near each other on it, drawn larger with a bar of their own."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations, product
from math import dist

from packgen.page.artwork import Box
from packgen.page.desk import Desk
from packgen.page.look import MIDDLE, THIN
from packgen.page.maps import Marked, draw_map, labels_for, mark_places, scale_bar, together
from packgen.page.marks import Point, Stroke
from packgen.page.pen import Pen
from packgen.pictures.world import MapView, map_for

TELLABLE = 8.0  # mm; places nearer to each other cannot be measured or lettered
_STRIP = 8.0  # mm under the small map, for its bar
_LARGEST = (62.0, 46.0)  # mm, the strip included
_PART = (0.42, 0.5)  # of the map's width and height, at most
_LEAST = 1.0  # degrees of latitude; the shore is too coarse to be shown larger
_SIZES = (1.0, 0.85, 0.7)  # of that, tried in turn
_CLEAR = 6.5  # mm between the small map and a place on the large one
_BESIDE = 3.0  # mm between it and a line from place to place
_EDGE = 2.0  # mm between the small map and the edge of the large one
_DASH = (1.2, 1.0)


@dataclass(frozen=True, slots=True)
class Inset:
    """A small map: its view, the `box` it takes on the large map with its strip, and the part of that it shows."""

    view: MapView
    places: tuple[Marked, ...]
    box: Box
    part: Box

    def taken(self, x: float, y: float) -> tuple[Box, Box]:
        """Where no name may stand: its box and the part it shows, where the large map begins at (x, y)."""
        part = self.part
        return self.placed(x, y), Box(part.x + x, part.y + y, part.width, part.height)

    def placed(self, x: float, y: float) -> Box:
        """The box it takes where the large map begins at (x, y)."""
        return Box(self.box.x + x, self.box.y + y, self.box.width, self.box.height)


def inset_for(view: MapView, places: Sequence[Marked]) -> Inset | None:
    """A small map of the first places that lie too near each other, if it parts them and the large one has room for it.

    Its boxes are in mm from the lower left corner of the large map. It is as large as its place allows.
    """
    crowd = next((group for group in together(view, places, TELLABLE) if len(group) > 1), None)
    if crowd is None:
        return None
    for middles, size in product((False, True), _SIZES):  # a smaller one in a corner rather than one in the way
        wide, high = (min(most, part * side) * size for most, part, side in zip(
            _LARGEST, _PART, (view.width, view.height), strict=True))  # fmt: skip
        small = map_for([(p.lat, p.lon) for p in crowd], wide, high - _STRIP, least=_LEAST)
        spots = [small.place((p.lat, p.lon)) for p in crowd]
        if min(dist(a, b) for a, b in combinations(spots, 2)) < TELLABLE:
            continue
        part = _part(view, small)
        box = _free(view, places, (small.width, small.height + _STRIP), part, middles)
        if box:
            return Inset(small, tuple(crowd), box, part)
    return None


def _free(view: MapView, places: Sequence[Marked], size: tuple[float, float], part: Box, middles: bool) -> Box | None:
    """The corner of the large map, or middle of an edge, that hides least of the shore: clear of all places and ways.

    A way is the straight line from the first place to another, which is to be drawn and measured.
    """
    spots = [view.place((p.lat, p.lon)) for p in places]
    taken = [part, *(_round(spot, _CLEAR) for spot in spots)]
    for spot in spots[1:]:
        steps = max(1, round(dist(spots[0], spot) / _BESIDE))
        taken += [_round(_between(spots[0], spot, k / steps), _BESIDE) for k in range(steps + 1)]
    free = [box for box in _along_edges(view, *size, middles) if not any(_meet(box, other) for other in taken)]
    return min(free, key=lambda box: _shore_in(view, box), default=None)


def _between(a: Point, b: Point, part: float) -> Point:
    return a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part


def _shore_in(view: MapView, box: Box) -> int:
    """How many points of the shore a box hides."""
    return sum(box.x < x < box.x + box.width and box.y < y < box.y + box.height for line in view.coast for x, y in line)


def draw_inset(desk: Desk, pen: Pen, inset: Inset, x: float, y: float, size: float) -> None:
    """The small map on the large one that begins at (x, y), and a dashed box round what it shows; markers of `size`."""
    box, part = inset.placed(x, y), inset.part
    pen.box(x + part.x, y + part.y, part.width, part.height, Stroke(THIN, 0.2, _DASH), role="inset-part")
    pen.box(box.x, box.y, box.width, box.height, fill=1.0, role="inset-ground")
    ground = Box(box.x, box.y + _STRIP, inset.view.width, inset.view.height)
    labels = labels_for(desk, inset.view, ground, inset.places, size)
    bold = desk.level in ("first", "younger")
    draw_map(desk, pen, inset.view, ground, net=False, bold=bold, clear=[label.box for label in labels])
    mark_places(pen, inset.view, ground, inset.places, labels, size)
    scale_bar(desk, pen, inset.view, box.x + 3.0, box.y + 1.4, box.width * 0.55)
    pen.box(box.x, box.y, box.width, box.height, Stroke(MIDDLE, 0.2), role="inset-frame")


def _part(view: MapView, small: MapView) -> Box:
    """What the small map shows, as a box on the large one."""
    x, y = view.place((small.south, small.west))
    scale = view.per_degree / small.per_degree
    return Box(x, y, small.width / small.squeeze * view.squeeze * scale, small.height * scale)


def _round(at: tuple[float, float], reach: float) -> Box:
    return Box(at[0] - reach, at[1] - reach, 2 * reach, 2 * reach)


def _along_edges(view: MapView, wide: float, high: float, middles: bool) -> tuple[Box, ...]:
    """Boxes in the corners, or at the middle of the upper and the lower edge."""
    right, top = view.width - wide - _EDGE, view.height - high - _EDGE
    lefts = ((_EDGE + right) / 2,) if middles else (_EDGE, right)
    return tuple(Box(left, low, wide, high) for low in (_EDGE, top) for left in lefts)


def _meet(a: Box, b: Box) -> bool:
    return a.x < b.x + b.width and b.x < a.x + a.width and a.y < b.y + b.height and b.y < a.y + a.height
