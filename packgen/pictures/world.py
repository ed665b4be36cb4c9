"""Where in the world: a map of the land round given spots, as polygons in mm, from open coastline data.

Equirectangular: a degree of latitude is as long everywhere, a degree of longitude true to it along the middle parallel
(J. P. Snyder, "Map projections: a working manual", USGS 1987, section 12). A map that shows nearly all longitudes
shows the whole world. Coordinates are (latitude, longitude) in degrees, north and east positive.
"""

from __future__ import annotations

import json
import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from pathlib import Path

Point = tuple[float, float]
Spot = tuple[float, float]

_DATA = Path(__file__).resolve().parent / "data"
_COARSE, _FINE = "land-110m.json", "land-50m.json"
_CLOSE = 3.0  # mm to a degree; a map as close as this shows that the coarse shore is coarse
EARTH_KM = 6371.0088  # mean radius R1 (IUGG 1980; GRS 80)
_DEGREE_KM = math.radians(1) * EARTH_KM
_MARGIN = 1.6  # a map is so much wider than the spots on it lie apart,
_LEAST = 12.0  # and shows at least so many degrees of latitude, below which this coastline is too coarse
_WORLD = 200.0  # a map wider than so many degrees shows the whole world
_STEPS = (1, 2, 5, 10, 20, 30, 60)
_APART = 13.0  # mm; lines of the net lie at least so far apart, so that their names do not run together
_DIVISIONS = (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0)
_DIVIDED = 2.4  # mm; the divisions of the edge are at least so long,
_HALF = 1.5  # and a place is set halfway between two of them if a half is at least so long
_HALVES = {1.0: 0.5, 2.0: 1.0, 10.0: 5.0}  # divisions whose halves are numbers a child reads
_SPECK = 0.3  # mm; smaller islands are left out


@dataclass(frozen=True, slots=True)
class Tick:
    """A parallel or meridian: degrees, where it lies in mm along its axis, and its name, such as 50° N."""

    degrees: float
    at: float
    name: str


@dataclass(frozen=True, slots=True)
class MapView:
    """A map from (0, 0) to (width, height) mm, y upwards. `land` are polygons cut off at its edge, `coast` their shore.

    `west` and `south` are the degrees of its lower left corner, `per_degree` the mm of a degree of latitude, `squeeze`
    how much shorter a degree of longitude is. Longitudes run on past 180 where the map does. `step` is the degrees
    between the lines of the net.
    """

    width: float
    height: float
    west: float
    south: float
    per_degree: float
    squeeze: float
    land: tuple[tuple[Point, ...], ...]
    coast: tuple[tuple[Point, ...], ...]
    parallels: tuple[Tick, ...]
    meridians: tuple[Tick, ...]
    step: float

    def place(self, spot: Spot) -> Point:
        """Where a spot lies on the map in mm; outside it if the map does not show it."""
        east = (spot[1] - self.west) % 360
        return east * self.per_degree * self.squeeze, (spot[0] - self.south) * self.per_degree

    @property
    def division(self) -> float:
        """The degrees between the marks on the map's edge: as fine as can be told apart, and a part of the step."""
        across = self.per_degree * self.squeeze
        parts = (d for d in _DIVISIONS if abs(self.step / d - round(self.step / d)) < 1e-9)
        return next((d for d in parts if d * across >= _DIVIDED), self.step)

    @property
    def exact(self) -> float:
        """The degrees to which a place can be set on the map by hand: a division of its edge, or half of one."""
        half = _HALVES.get(self.division, self.division)
        return half if half * self.per_degree * self.squeeze >= _HALF else self.division

    @property
    def km_per_mm(self) -> float:
        """The scale north and south everywhere, and east and west along the middle parallel."""
        return _DEGREE_KM / self.per_degree


def km_between(a: Spot, b: Spot) -> float:
    """The shortest way over the round earth in km (haversine formula, on a sphere)."""
    (lat1, lon1), (lat2, lon2) = ((math.radians(v) for v in spot) for spot in (a, b))
    half = math.sin((lat2 - lat1) / 2) ** 2 + math.cos(lat1) * math.cos(lat2) * math.sin((lon2 - lon1) / 2) ** 2
    return 2 * EARTH_KM * math.asin(min(1.0, math.sqrt(half)))


def map_for(spots: Sequence[Spot], width: float, height: float, step: float | None = None, *,
            least: float = _LEAST) -> MapView:  # fmt: skip
    """A map no larger than width x height mm that shows all the spots, or the whole world if they lie far apart.

    `step` is the degrees between the lines of its net, chosen for its scale if not given; the map shows at least
    `least` degrees of latitude. Raises ValueError for an
    impossible coordinate. The same map is made once.
    """
    return _map_for(tuple(spots), width, height, step, least)


@lru_cache(maxsize=64)
def _map_for(spots: tuple[Spot, ...], width: float, height: float, step: float | None, least: float) -> MapView:
    for lat, lon in spots:
        if not (-90 <= lat <= 90 and -180 <= lon <= 360):
            raise ValueError(f"{lat}, {lon} is no place: latitude is -90 to 90, longitude -180 to 180")
    west, south, east, north = _bounds(spots, width / height, least)
    squeeze = _squeeze((south + north) / 2, east - west)
    per_degree = min(width / ((east - west) * squeeze), height / (north - south))
    width, height = (east - west) * squeeze * per_degree, (north - south) * per_degree
    across = per_degree * squeeze

    def placed(ring: Sequence[Point], turn: float) -> list[Point]:
        return [((lon + turn - west) * across, (lat - south) * per_degree) for lon, lat in ring]

    shore = _land(_FINE if per_degree > _CLOSE else _COARSE)
    rings = [
        placed(ring, turn) for ring, box in shore for turn in (-360.0, 0.0, 360.0)
        if _reaches(placed(box, turn), width, height)
    ]  # fmt: skip
    land = tuple(tuple(cut) for ring in rings if len(cut := _cut_off(ring, width, height)) > 2)
    coast = tuple(line for ring in rings for line in _shore(ring, width, height))
    step = step or _step(across)
    parallels = tuple(Tick(d, (d - south) * per_degree, _named(d, "N", "S")) for d in _between(south, north, step))
    meridians = tuple(
        Tick(_turned(d), (d - west) * across, _named(_turned(d), "E", "W")) for d in _between(west, east, step)
    )
    return MapView(width, height, west, south, per_degree, squeeze, land, coast, parallels, meridians, step)


def _bounds(spots: Sequence[Spot], aspect: float, least: float) -> tuple[float, float, float, float]:
    """West, south, east, north of a map of about that aspect; east minus west is at most 360."""
    if not spots:
        return -180.0, -60.0, 180.0, 85.0
    west, span = _arc([lon for _, lon in spots])
    south, north = min(lat for lat, _ in spots), max(lat for lat, _ in spots)
    middle = (south + north) / 2
    squeeze = math.cos(math.radians(max(-70.0, min(70.0, middle))))
    high = max((north - south) * _MARGIN, least)
    wide = max(span * _MARGIN, high * aspect / squeeze)
    high = max(high, wide * squeeze / aspect)
    if wide > _WORLD or high > 130:
        near_edge = any(abs(_turned(lon)) > 170 for _, lon in spots)
        centre = _turned(west + span / 2) if near_edge else 0.0
        return centre - 180, min(-60.0, south - 8), centre + 180, max(85.0, min(90.0, north + 8))
    centre = west + span / 2
    south = max(-90.0, min(90.0 - high, middle - high / 2))
    return centre - wide / 2, south, centre + wide / 2, south + high


def _arc(longitudes: Iterable[float]) -> tuple[float, float]:
    """The shortest arc that holds all the longitudes: its western end and its span, over the date line if need be."""
    order = sorted({_turned(lon) for lon in longitudes})
    gaps = [(b - a, b) for a, b in pairwise(order)] + [(order[0] + 360 - order[-1], order[0])]
    gap, west = max(gaps)
    return west, (360 - gap) % 360


def _squeeze(middle: float, span: float) -> float:
    """The length of a degree of longitude over one of latitude; the whole world is drawn true along 30 degrees."""
    return math.cos(math.radians(30.0 if span >= 360 else max(-70.0, min(70.0, middle))))


def _turned(lon: float) -> float:
    return (lon + 180) % 360 - 180


def _step(per_degree: float) -> int:
    return next((step for step in _STEPS if step * per_degree >= _APART), _STEPS[-1])


def _between(low: float, high: float, step: float) -> list[float]:
    first = math.ceil(low / step - 1e-9)
    return [i * step for i in range(first, math.floor(high / step + 1e-9) + 1)]


def _named(degrees: float, above: str, below: str) -> str:
    number = f"{abs(degrees):g}°"
    return number if degrees == 0 or abs(degrees) == 180 else f"{number} {above if degrees > 0 else below}"


@lru_cache(maxsize=2)
def _land(name: str) -> tuple[tuple[tuple[Point, ...], tuple[Point, Point]], ...]:
    """The rings of all land as (longitude, latitude), unbroken over the date line, each with two corners of its box.

    Read from TopoJSON, quantised arcs.
    """
    data = json.loads((_DATA / name).read_text("utf-8"))
    (sx, sy), (tx, ty) = data["transform"]["scale"], data["transform"]["translate"]
    arcs: list[list[Point]] = []
    for arc in data["arcs"]:
        x = y = 0
        line = []
        for dx, dy in arc:
            x, y = x + dx, y + dy
            line.append((x * sx + tx, y * sy + ty))
        arcs.append(line)
    polygons = [polygon for shape in data["objects"]["land"]["geometries"] for polygon in shape["arcs"]]
    rings = (_unbroken(_ring(ring, arcs)) for polygon in polygons for ring in polygon)
    return tuple((ring, _corners(ring)) for ring in rings)


def _corners(ring: Sequence[Point]) -> tuple[Point, Point]:
    """The south-western and the north-eastern corner of the box round a ring."""
    lons, lats = [lon for lon, _ in ring], [lat for _, lat in ring]
    return (min(lons), min(lats)), (max(lons), max(lats))


def _ring(numbers: Sequence[int], arcs: Sequence[list[Point]]) -> list[Point]:
    out: list[Point] = []
    for number in numbers:
        line = arcs[number] if number >= 0 else arcs[~number][::-1]
        out.extend(line[1:] if out else line)
    return out


def _unbroken(ring: list[Point]) -> tuple[Point, ...]:
    """The ring with longitudes that run on past 180; one that goes round a pole is led over it."""
    out, turn = [ring[0]], 0.0
    for (before, _), (lon, lat) in pairwise(ring):
        turn += -360 if lon - before > 180 else 360 if lon - before < -180 else 0
        out.append((lon + turn, lat))
    if abs(turn) == 360:
        pole = -90.0 if out[-1][1] < 0 else 90.0
        out += [(out[-1][0], pole), (out[0][0], pole)]
    return tuple(out)


def _reaches(box: Sequence[Point], width: float, height: float) -> bool:
    """Whether a ring with a box of these corners is large enough to be drawn, and within the map."""
    (left, low), (right, top) = box
    large = max(right - left, top - low) >= _SPECK
    return large and right > 0 and left < width and top > 0 and low < height


def _cut_off(ring: Sequence[Point], width: float, height: float) -> list[Point]:
    """The polygon within the map (I. Sutherland and G. Hodgman, "Reentrant polygon clipping", 1974)."""
    points = list(ring)
    for axis, edge, keep_above in ((0, 0.0, True), (0, width, False), (1, 0.0, True), (1, height, False)):
        out: list[Point] = []
        for a, b in zip(points, points[1:] + points[:1], strict=True):
            a_in, b_in = (a[axis] >= edge, b[axis] >= edge) if keep_above else (a[axis] <= edge, b[axis] <= edge)
            if a_in:
                out.append(a)
            if a_in != b_in:
                out.append(_crossing(a, b, axis, edge))
        points = out
        if not points:
            break
    return points


def _crossing(a: Point, b: Point, axis: int, edge: float) -> Point:
    t = (edge - a[axis]) / (b[axis] - a[axis])
    other = a[1 - axis] + t * (b[1 - axis] - a[1 - axis])
    return (edge, other) if axis == 0 else (other, edge)


def _shore(ring: Sequence[Point], width: float, height: float) -> list[tuple[Point, ...]]:
    """The parts of a ring that lie within the map, as lines, so that the map's edge is not drawn as a shore."""
    lines: list[list[Point]] = []
    inside = [0 <= x <= width and 0 <= y <= height for x, y in (*ring, ring[0])]
    for (a, a_in), (b, b_in) in pairwise(zip((*ring, ring[0]), inside, strict=True)):
        if max(a[0], b[0]) < 0 or max(a[1], b[1]) < 0 or min(a[0], b[0]) > width or min(a[1], b[1]) > height:
            continue  # most pieces lie far away
        piece = (a, b) if a_in and b_in and a != b else _piece(a, b, width, height)
        if piece is None:
            continue
        if lines and lines[-1][-1] == piece[0]:
            lines[-1].append(piece[1])
        else:
            lines.append(list(piece))
    return [tuple(line) for line in lines]


def _piece(a: Point, b: Point, width: float, height: float) -> tuple[Point, Point] | None:
    """The part of a straight piece within the map, or None (Liang and Barsky, 1984)."""
    low, high = 0.0, 1.0
    dx, dy = b[0] - a[0], b[1] - a[1]
    for step, room in ((-dx, a[0]), (dx, width - a[0]), (-dy, a[1]), (dy, height - a[1])):
        if step == 0:
            if room < 0:
                return None
        elif step < 0:
            low = max(low, room / step)
        else:
            high = min(high, room / step)
    if low >= high:
        return None
    start = a if low == 0 else (a[0] + low * dx, a[1] + low * dy)
    end = b if high == 1 else (a[0] + high * dx, a[1] + high * dy)
    return start, end
