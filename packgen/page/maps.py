"""A map on a page: land and sea, its net of degrees, places marked and named, a bar for its scale."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from packgen.page.artwork import Box
from packgen.page.desk import Desk
from packgen.page.look import BOLD, GUIDE, HAIR, MIDDLE, SOFT, THIN
from packgen.page.marks import Mark, Path_, Point, Stroke
from packgen.page.pen import Pen
from packgen.page.text import Style, fit
from packgen.pictures.world import MapView
from packgen.planning.places import MILE_KM

SEA = 0.97  # a faint tone that tells sea from land and takes a crayon over it
BAND = 1.5  # mm; the divided band round a map with a net
_NEAR = 0.9  # of a marker's size; markers nearer to each other than this are one


@dataclass(frozen=True, slots=True)
class Marked:
    """A place on a map: its name, degrees north and east, its `kind` (`life`, `work` or `home`), a work's `title`."""

    name: str
    lat: float
    lon: float
    kind: str = "work"
    title: str = ""


def draw_map(desk: Desk, pen: Pen, view: MapView, box: Box, *, net: bool, bold: bool,
             clear: Sequence[Box] = ()) -> None:  # fmt: skip
    """The map in a box of its own size. `net` draws its lines of degrees; in `clear` boxes no shore is drawn."""
    shift = (1.0, 0.0, 0.0, 1.0, box.x, box.y)
    frame = ((0.0, 0.0), (box.width, 0.0), (box.width, box.height), (0.0, box.height))
    if net:
        _band(pen, view, box)
    pen.box(box.x, box.y, box.width, box.height, fill=SEA, role="sea")
    marks: list[Mark] = [Path_(_steps(ring, True), None, 1.0, "land") for ring in view.land]
    coast = Stroke(BOLD if bold else MIDDLE, 0.2, cap=1)
    holes = [Box(hole.x - box.x, hole.y - box.y, hole.width, hole.height) for hole in clear]
    lines = [part for line in view.coast for part in _outside(line, holes)]
    marks += [Path_(_steps(line, False), coast, None, "coast") for line in lines]
    pen.group(marks, shift, frame)
    if net:
        _net(desk, pen, view, box)
    pen.box(box.x, box.y, box.width, box.height, Stroke(MIDDLE, 0.2), role="map-frame")


def _steps(points: Sequence[Point], closed: bool) -> tuple[tuple[str | float, ...], ...]:
    (x, y), *rest = points
    steps: tuple[tuple[str | float, ...], ...] = (("m", x, y), *(("l", px, py) for px, py in rest))
    return (*steps, ("z",)) if closed else steps


def _outside(line: Sequence[Point], holes: Sequence[Box]) -> list[list[Point]]:
    """The parts of a line that lie in none of the holes."""
    parts: list[list[Point]] = []
    for a, b in pairwise(line):
        for low, high in _left(a, b, holes):
            start = (a[0] + (b[0] - a[0]) * low, a[1] + (b[1] - a[1]) * low)
            end = (a[0] + (b[0] - a[0]) * high, a[1] + (b[1] - a[1]) * high)
            if parts and parts[-1][-1] == start:
                parts[-1].append(end)
            else:
                parts.append([start, end])
    return parts


def _left(a: Point, b: Point, holes: Sequence[Box]) -> list[tuple[float, float]]:
    """The stretches of a straight piece, as fractions of it, outside every hole (Liang and Barsky, 1984)."""
    kept = [(0.0, 1.0)]
    dx, dy = b[0] - a[0], b[1] - a[1]
    for hole in holes:
        low, high = 0.0, 1.0
        for step, room in ((-dx, a[0] - hole.x), (dx, hole.x + hole.width - a[0]), (-dy, a[1] - hole.y),
                           (dy, hole.y + hole.height - a[1])):  # fmt: skip
            if step == 0:
                high = -1.0 if room < 0 else high
            elif step < 0:
                low = max(low, room / step)
            else:
                high = min(high, room / step)
        if low < high:
            cut = [((s, min(e, low)), (max(s, high), e)) for s, e in kept]
            kept = [part for pair in cut for part in pair if part[0] < part[1]]
    return kept


def _net(desk: Desk, pen: Pen, view: MapView, box: Box) -> None:
    """Parallels and meridians, with their degrees at the left and at the foot."""
    style = desk.look.small.grey(SOFT)
    rise = desk.faces.metrics(style.face).cap * style.size / 2
    for tick in view.parallels:
        y = box.y + tick.at
        pen.line(box.x, y, box.x + box.width, y, HAIR, GUIDE, role="parallel")
        pen.text(box.x - BAND - 1.0, y - rise, tick.name, style, align="right", role="degree")
    last = -1e6
    for tick in view.meridians:
        x = box.x + tick.at
        pen.line(x, box.y, x, box.y + box.height, HAIR, GUIDE, role="meridian")
        wide = desk.faces.width(tick.name, style.face, style.size)
        if x - wide / 2 > last + 1.0 and box.x - 6.0 < x - wide / 2 and x + wide / 2 < box.x + box.width + 6.0:
            pen.text(x, box.y - BAND - style.size - 0.6, tick.name, style, align="centre", role="degree")
            last = x + wide / 2


def _band(pen: Pen, view: MapView, box: Box) -> None:
    """A band of dark and light pieces, each as long as a division of degrees, along all four sides of the map."""
    pen.box(box.x - BAND, box.y - BAND, box.width + 2 * BAND, box.height + 2 * BAND, Stroke(HAIR, 0.2), 1.0)
    for start, end in _pieces(view.west, view.per_degree * view.squeeze, box.width, view.division):
        for y in (box.y - BAND, box.y + box.height):
            pen.box(box.x + start, y, end - start, BAND, fill=0.35, role="division")
    for start, end in _pieces(view.south, view.per_degree, box.height, view.division):
        for x in (box.x - BAND, box.x + box.width):
            pen.box(x, box.y + start, BAND, end - start, fill=0.35, role="division")


def _pieces(first: float, scale: float, length: float, division: float) -> Iterator[tuple[float, float]]:
    """Where every second division begins and ends, in mm from an edge that is `first` degrees."""
    for n in range(math.floor(first / division), math.ceil((first + length / scale) / division)):
        start, end = ((n + k) * division for k in (0, 1))
        low, high = max(0.0, (start - first) * scale), min(length, (end - first) * scale)
        if n % 2 == 0 and high - low > 0.05:
            yield low, high


def together(view: MapView, places: Sequence[Marked], near: float) -> list[list[Marked]]:
    """The places in groups that lie less than `near` mm from each other's first on this map."""
    groups: list[list[Marked]] = []
    for place in places:
        at = view.place((place.lat, place.lon))
        for group in groups:
            if math.dist(at, view.place((group[0].lat, group[0].lon))) < near:
                group.append(place)
                break
        else:
            groups.append([place])
    return groups


@dataclass(frozen=True, slots=True)
class Label:
    """A name on a map: where it stands, its lines and how they are set."""

    box: Box
    lines: tuple[str, ...]
    style: Style


def labels_for(desk: Desk, view: MapView, box: Box, places: Sequence[Marked], size: float,
               taken: Sequence[Box] = ()) -> list[Label]:  # fmt: skip
    """The names of places on a map in that box, each where it hides no other and nothing `taken`.

    `size` is a marker's in mm.
    """
    groups = together(view, places, size * _NEAR)
    at = [(box.x + x, box.y + y) for x, y in (view.place((g[0].lat, g[0].lon)) for g in groups)]
    taken = [*taken, *(Box(x - size * 0.6, y - size * 0.6, size * 1.2, size * 1.2) for x, y in at)]
    style = desk.look.label
    found: list[Label] = []
    for group, (x, y) in zip(groups, at, strict=True):
        words = " · ".join(dict.fromkeys(place.name for place in group))
        fitted = fit(desk.faces, words, style, min(62.0, box.width * 0.45), 3 * style.leading, style.size * 0.75)
        wide = max(desk.faces.width(line, fitted.style.face, fitted.style.size) for line in fitted.lines)
        label = _free(box, (x, y), wide + 1.6, fitted.height + 0.6, size, taken)
        taken.append(label)
        found.append(Label(label, fitted.lines, fitted.style))
    return found


def mark_places(pen: Pen, view: MapView, box: Box, places: Sequence[Marked], labels: Sequence[Label],
                size: float) -> None:  # fmt: skip
    """The names on the map, and a marker for each place; places so near that one marker does have one."""
    for label in labels:
        ground = label.box
        pen.box(ground.x, ground.y, ground.width, ground.height, fill=1.0, corner=0.8, role="label-ground")
        pen.lines(ground.x + 0.8, ground.y + ground.height - 0.3, label.lines, label.style, align="centre",
                  width=ground.width - 1.6)  # fmt: skip
    for group in together(view, places, size * _NEAR):
        x, y = view.place((group[0].lat, group[0].lon))
        kinds = {place.kind for place in group}
        kind = next(kind for kind in ("life", "home", "work") if kind in kinds)
        draw_marker(pen, kind, box.x + x, box.y + y, size)


def draw_marker(pen: Pen, kind: str, x: float, y: float, size: float) -> None:
    """A star where somebody lived, a frame where a work hangs, a house where the family lives."""
    half = size / 2
    edge = Stroke(THIN, 1.0)
    if kind == "life":
        ends = [(half if k % 2 == 0 else half * 0.42, math.radians(90 + 36 * k)) for k in range(10)]
        pen.polygon([(x + r * math.cos(a), y + r * math.sin(a)) for r, a in ends], edge, 0.0, role="marker")
    elif kind == "home":
        low, roof = y - half * 0.8, y + half * 0.1
        pen.polygon([(x - half * 0.7, low), (x + half * 0.7, low), (x + half * 0.7, roof), (x, y + half),
                     (x - half * 0.7, roof)], edge, 0.0, role="marker")  # fmt: skip
    else:
        pen.box(x - half * 0.8, y - half * 0.8, half * 1.6, half * 1.6, edge, 0.0, role="marker")
        pen.box(x - half * 0.4, y - half * 0.4, half * 0.8, half * 0.8, None, 1.0, role="marker")


def _free(box: Box, at: Point, wide: float, high: float, size: float, taken: Sequence[Box]) -> Box:
    """A place for a label beside a marker: the one that covers least of what is there, and lies within the map."""
    x, y = at
    near = size * 0.75
    spots = [(x + near, y - high / 2), (x - near - wide, y - high / 2), (x - wide / 2, y + near),
             (x - wide / 2, y - near - high), (x + near * 0.6, y + near * 0.6), (x + near * 0.6, y - near * 0.6 - high),
             (x - near * 0.6 - wide, y + near * 0.6), (x - near * 0.6 - wide, y - near * 0.6 - high)]  # fmt: skip
    spots += [(x - wide / 2, y + near + k * high * 1.1) for k in (1, 2, 3)]
    spots += [(x - wide / 2, y - near - high - k * high * 1.1) for k in (1, 2, 3)]

    def cost(spot: Point) -> float:
        left = min(max(spot[0], box.x + 0.5), box.x + box.width - wide - 0.5)
        low = min(max(spot[1], box.y + 0.5), box.y + box.height - high - 0.5)
        moved = abs(left - spot[0]) + abs(low - spot[1])
        return moved * 5.0 + 100.0 * sum(_shared(Box(left, low, wide, high), other) for other in taken)

    best = min(range(len(spots)), key=lambda k: (cost(spots[k]) + k, k))
    left = min(max(spots[best][0], box.x + 0.5), box.x + box.width - wide - 0.5)
    low = min(max(spots[best][1], box.y + 0.5), box.y + box.height - high - 0.5)
    return Box(left, low, wide, high)


def _shared(a: Box, b: Box) -> float:
    """The area two boxes share in mm²."""
    across = min(a.x + a.width, b.x + b.width) - max(a.x, b.x)
    down = min(a.y + a.height, b.y + b.height) - max(a.y, b.y)
    return max(0.0, across) * max(0.0, down)


def scale_bar(desk: Desk, pen: Pen, view: MapView, x: float, y: float, longest: float) -> None:
    """A bar of a plain number of km, or miles, no longer than `longest` mm, in two parts, with its length over it."""
    miles = desk.family.units == "customary"
    unit_mm = (MILE_KM if miles else 1.0) / view.km_per_mm
    whole = max(step * 10**power for power in range(6) for step in (1, 2, 5) if step * 10**power * unit_mm <= longest)
    length = whole * unit_mm
    pen.box(x, y, length / 2, 1.6, Stroke(HAIR, 0.15), 0.15, role="scale")
    pen.box(x + length / 2, y, length / 2, 1.6, Stroke(HAIR, 0.15), 1.0, role="scale")
    style = desk.look.small
    unit = "miles" if miles else "km"
    pen.text(x, y + 2.4, "0", style, align="left")
    pen.text(x + length, y + 2.4, f"{whole} {unit}", style, align="centre", role="scale-words")


def north(desk: Desk, pen: Pen, x: float, y: float, size: float) -> None:
    """An arrow to the north standing on (x, y), and its letter on the left of it."""
    pen.polygon([(x, y + size), (x - size * 0.2, y), (x, y + size * 0.22)], Stroke(THIN, 0.15), 0.15)
    pen.polygon([(x, y + size), (x + size * 0.2, y), (x, y + size * 0.22)], Stroke(THIN, 0.15), 1.0)
    style = desk.look.small
    pen.text(x - size * 0.35, y + 0.4, desk.say("north"), style, align="right")
