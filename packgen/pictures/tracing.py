"""Areas into smooth outlines: each border between two areas once, as curves that meet where three areas meet.

The borders of the pixels form a net of points. All of it is smoothed together, so that neighbours keep one common
border; the picture's frame stays where it is. Smoothing alternates a step in and a step out, which leaves small shapes
their size (G. Taubin, "A signal processing approach to fair surface design", SIGGRAPH 1995).
"""

from __future__ import annotations

import math
from collections import defaultdict
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from packgen.pictures.label_map import LabelMap
from packgen.pictures.shapes import Point, Step, Steps, curve_points

_IN, _OUT = 0.5, -0.51
_CORNER = math.cos(math.radians(50))  # a sharper turn than this stays a corner
_OUTSIDE = -1
_TRIES = 8


@dataclass(frozen=True, slots=True)
class Chain:
    """A border between two areas (-1 is outside the picture) from one meeting point to the next, or round and closed.

    `line` holds the points as smoothed, `steps` the curve through them that is drawn. Pixel units, y downwards.
    """

    areas: tuple[int, int]
    line: tuple[Point, ...]
    steps: Steps

    @property
    def closed(self) -> bool:
        """Whether the chain goes round and meets only itself."""
        return self.line[0] == self.line[-1]

    @property
    def framing(self) -> bool:
        """Whether the chain lies along the picture's frame."""
        return _OUTSIDE in self.areas


def traced(areas: LabelMap, passes: int, tolerance: float, apart: bool = True) -> list[Chain]:
    """The borders of the areas. No two cross: those that would are followed more closely, then left unsmoothed.

    That they are `apart` need not be looked at for shapes that are only filled.
    """
    net = _Net(areas)
    stiff: set[int] = set()
    frozen: set[int] = set()
    places = net.smoothed(passes, frozen)
    for _ in range(_TRIES):
        chains = [_chain(net, i, places, tolerance, i in stiff) for i in range(len(net.chains))]
        wrong = _crossing(chains) | _turned_over(net, chains) if apart else set()
        if not wrong:
            return chains
        if wrong <= stiff:
            frozen |= wrong
            places = net.smoothed(passes, frozen)
        stiff |= wrong
    places = net.smoothed(0, frozen)
    return [_chain(net, i, places, tolerance, True) for i in range(len(net.chains))]


class _Net:
    """The pixel borders as points, neighbours and chains between meeting points."""

    def __init__(self, areas: LabelMap) -> None:
        self.width, self.height = areas.width, areas.height
        self.sides: dict[tuple[int, int], tuple[int, int]] = {}
        self.near: dict[int, list[int]] = defaultdict(list)
        self._edges(areas)
        self.chains = self._walked()

    def _edges(self, areas: LabelMap) -> None:
        across = self.width + 1
        above = [_OUTSIDE] * self.width
        for y in range(self.height + 1):
            row = [_OUTSIDE] * self.width if y == self.height else _spread(areas.rows[y], self.width)
            for x in range(self.width):
                if above[x] != row[x]:
                    self._edge(y * across + x, y * across + x + 1, above[x], row[x])
            if y < self.height:
                ends = [(_OUTSIDE, 0), *((area, end) for _, end, area in areas.rows[y])]
                after = [*(area for _, _, area in areas.rows[y]), _OUTSIDE]
                for (left, x), right in zip(ends, after, strict=True):
                    self._edge(y * across + x, (y + 1) * across + x, left, right)
            above = row

    def _edge(self, a: int, b: int, one: int, two: int) -> None:
        self.near[a].append(b)
        self.near[b].append(a)
        self.sides[(a, b)] = (one, two) if one < two else (two, one)

    def side(self, a: int, b: int) -> tuple[int, int]:
        return self.sides[(a, b) if a < b else (b, a)]

    def _walked(self) -> list[list[int]]:
        used: set[tuple[int, int]] = set()
        chains = []
        meeting = [a for a in self.near if len(self.near[a]) != 2]
        for a in [*meeting, *self.near]:
            for b in self.near[a]:
                if (a, b) not in used:
                    chains.append(self._walk(a, b, used))
        return chains

    def _walk(self, a: int, b: int, used: set[tuple[int, int]]) -> list[int]:
        chain = [a, b]
        used |= {(a, b), (b, a)}
        while len(self.near[chain[-1]]) == 2 and chain[-1] != a:
            here = chain[-1]
            one, two = self.near[here]
            to = two if one == chain[-2] else one
            used |= {(here, to), (to, here)}
            chain.append(to)
        return chain

    def smoothed(self, passes: int, frozen: set[int]) -> dict[int, Point]:
        """Where each point lies after that many passes in and out; those on the frame and of frozen chains stay."""
        across = self.width + 1
        names = list(self.near)
        index = {name: i for i, name in enumerate(names)}
        spots = np.array([(n % across, n // across) for n in names], dtype=float)
        inside = ((spots > 0) & (spots < (self.width, self.height))).all(axis=1)
        still = {name for chain in frozen for name in self.chains[chain]}
        alike: dict[int, list[int]] = defaultdict(list)  # points with as many neighbours are moved together
        for i in np.flatnonzero(inside).tolist():
            if names[i] not in still:
                alike[len(self.near[names[i]])].append(i)
        groups = [
            (np.array(own), np.array([[index[other] for other in self.near[names[i]]] for i in own]).T)
            for own in alike.values()
        ]
        for _ in range(passes):
            for factor in (_IN, _OUT):
                before = spots.copy()
                for own, others in groups:
                    middle = sum(before[column] for column in others) / len(others)
                    spots[own] = before[own] + factor * (middle - before[own])
        return {name: (x, y) for name, (x, y) in zip(names, spots.tolist(), strict=True)}


def _spread(row: list[tuple[int, int, int]], width: int) -> list[int]:
    out = [0] * width
    for start, end, area in row:
        out[start:end] = [area] * (end - start)
    return out


def _chain(net: _Net, index: int, places: dict[int, Point], tolerance: float, stiff: bool) -> Chain:
    names = net.chains[index]
    areas = net.side(names[0], names[1])
    points = [places[name] for name in names]
    if _OUTSIDE in areas or stiff:
        kept = simplified(points, 0.01 if _OUTSIDE in areas else tolerance / 8)
        steps: Steps = (("m", *kept[0]), *(("l", *p) for p in kept[1:]))
    else:
        kept = simplified(points, tolerance)
        steps = curve(kept)
    return Chain(areas, tuple(kept), steps)


def simplified(points: list[Point], tolerance: float) -> list[Point]:
    """The points without those that lie within `tolerance` of the line without them (Douglas and Peucker, 1973)."""
    last = len(points) - 1
    if points[0] == points[-1] and last > 2:
        far = max(range(last), key=lambda i: math.dist(points[0], points[i]))
        spans = [(0, far), (far, last)]
    else:
        far, spans = 0, [(0, last)]
    keep = {0, far, last}
    while spans:
        start, end = spans.pop()
        if end - start < 2:
            continue
        apart = _off(points[start + 1 : end], points[start], points[end])
        most = max(apart)
        if most > tolerance:
            middle = start + 1 + apart.index(most)
            keep.add(middle)
            spans += [(start, middle), (middle, end)]
    if points[0] == points[-1] and len(keep) == 3 and last > 2:  # a ring must keep some ground
        apart = _off(points[:last], points[0], points[far])
        keep.add(max(range(last), key=lambda i: (apart[i], i)))
    return [points[i] for i in sorted(keep)]


def _off(points: list[Point], a: Point, b: Point) -> list[float]:
    """How far each point lies from the straight piece between two others."""
    (ax, ay), dx, dy = a, b[0] - a[0], b[1] - a[1]
    square = dx * dx + dy * dy
    long = math.sqrt(square)
    out = []
    for x, y in points:
        px, py = x - ax, y - ay
        along = px * dx + py * dy
        if along <= 0 or not square:
            out.append(math.hypot(px, py))
        elif along >= square:
            out.append(math.hypot(px - dx, py - dy))
        else:
            out.append(abs(px * dy - py * dx) / long)
    return out


def curve(points: list[Point]) -> Steps:
    """A smooth curve through the points as cubic steps; sharp turns stay corners, and it never swings out far."""
    closed, count = points[0] == points[-1], len(points)
    steps: list[Step] = [("m", *points[0])]
    leave = [(0.0, 0.0)] * count
    for i in range(count):
        before = points[i - 1] if i else points[-2] if closed else points[0]
        after = points[i + 1] if i < count - 1 else points[1] if closed else points[-1]
        leave[i] = _direction(before, points[i], after)
    for (a, out), (b, into) in zip(
        zip(points, leave, strict=True), zip(points[1:], leave[1:], strict=True), strict=False
    ):
        third = math.dist(a, b) / 3
        straight = ((b[0] - a[0]) / (3 * third or 1), (b[1] - a[1]) / (3 * third or 1))
        (ox, oy), (ix, iy) = (d if d != (0.0, 0.0) else straight for d in (out, into))
        steps.append(("c", a[0] + ox * third, a[1] + oy * third, b[0] - ix * third, b[1] - iy * third, *b))
    return tuple(steps)


def _direction(before: Point, at: Point, after: Point) -> Point:
    """The curve's direction at a point, as a unit vector; (0, 0) at a corner or an end, where it has two."""
    ax, ay, bx, by = at[0] - before[0], at[1] - before[1], after[0] - at[0], after[1] - at[1]
    la, lb = math.hypot(ax, ay), math.hypot(bx, by)
    if not la or not lb or (ax * bx + ay * by) / (la * lb) < _CORNER:
        return 0.0, 0.0
    # The chord: it follows the longer neighbour, so that a long straight piece does not swell beside a short one.
    dx, dy = ax + bx, ay + by
    long = math.hypot(dx, dy) or 1.0
    return dx / long, dy / long


def rings(chains: list[Chain], count: int) -> list[Steps]:
    """The closed outline of each area, made of the chains around it; holes included, for even-odd filling."""
    around: list[list[Chain]] = [[] for _ in range(count)]
    for chain in chains:
        for area in chain.areas:
            if area != _OUTSIDE:
                around[area].append(chain)
    return [tuple(step for ring in _rings(own) for step in ring) for own in around]


def _rings(own: list[Chain]) -> list[Steps]:
    out: list[Steps] = [(*chain.steps, ("z",)) for chain in own if chain.closed]
    at: dict[Point, list[Chain]] = defaultdict(list)
    waiting = [chain for chain in own if not chain.closed]
    for chain in waiting:
        at[chain.line[0]].append(chain)
        at[chain.line[-1]].append(chain)
    while waiting:
        first = waiting[0]
        steps, end = list(first.steps), first.line[-1]
        _take(first, waiting, at)
        while end != first.line[0]:
            following = at[end][0]
            forwards = following.line[0] == end
            steps.extend((following.steps if forwards else backwards(following.steps))[1:])
            end = following.line[-1] if forwards else following.line[0]
            _take(following, waiting, at)
        out.append((*steps, ("z",)))
    return out


def _take(chain: Chain, waiting: list[Chain], at: dict[Point, list[Chain]]) -> None:
    for place in (waiting, at[chain.line[0]], at[chain.line[-1]]):
        place[:] = [other for other in place if other is not chain]


def backwards(steps: Steps) -> Steps:
    """One open subpath run from its end to its beginning."""
    ends = [(float(step[-2]), float(step[-1])) for step in steps]
    out: list[Step] = [("m", *ends[-1])]
    for step, before in zip(reversed(steps[1:]), reversed(ends[:-1]), strict=True):
        out.append(("c", *step[3:5], *step[1:3], *before) if step[0] == "c" else ("l", *before))
    return tuple(out)


def _crossing(chains: list[Chain]) -> set[int]:
    """The chains that cross another or themselves, found among short straight pieces sorted into squares."""
    squares: dict[tuple[int, int], list[tuple[int, int, Point, Point]]] = defaultdict(list)
    found: set[int] = set()
    for index, chain in enumerate(chains):
        line = drawn_line(chain.steps, 4)
        for piece, (a, b) in enumerate(pairwise(line)):
            for key in _squares(a, b):
                for other, other_piece, c, d in squares[key]:
                    if (other, other_piece) != (index, piece) and cross(a, b, c, d):
                        found |= {index, other}
                squares[key].append((index, piece, a, b))
    return found


def _turned_over(net: _Net, chains: list[Chain]) -> set[int]:
    """The chains at meeting points where smoothing has changed the order in which they leave, all round the point."""
    leaving: dict[int, list[tuple[float, float, int]]] = defaultdict(list)
    across = net.width + 1
    for index, (names, chain) in enumerate(zip(net.chains, chains, strict=True)):
        line = drawn_line(chain.steps, 4)
        for (at, to), (a, b) in (((names[0], names[1]), line[:2]), ((names[-1], names[-2]), (line[-1], line[-2]))):
            if len(net.near[at]) > 2:
                before = math.atan2(to // across - at // across, to % across - at % across)
                leaving[at].append((before, math.atan2(b[1] - a[1], b[0] - a[0]), index))
    found: set[int] = set()
    for around in leaving.values():
        after = [angle for _, angle, _ in sorted(around)]
        falls = sum(x > y for x, y in pairwise([*after, after[0]]))
        if falls != 1:
            found |= {index for _, _, index in around}
    return found


def drawn_line(steps: Steps, pieces: int) -> list[Point]:
    """The one subpath of the steps as a polyline."""
    line: list[Point] = []
    for step in steps:
        numbers = [float(v) for v in step[1:]]
        if step[0] == "c":
            line.extend(curve_points(line[-1], numbers, pieces))
        elif step[0] != "z":
            line.append((numbers[0], numbers[1]))
    return line


def _squares(a: Point, b: Point) -> list[tuple[int, int]]:
    side = 6.0
    xs = range(int(min(a[0], b[0]) // side), int(max(a[0], b[0]) // side) + 1)
    ys = range(int(min(a[1], b[1]) // side), int(max(a[1], b[1]) // side) + 1)
    return [(x, y) for x in xs for y in ys]


def cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether two straight pieces cross inside both; touching at an end does not count."""
    one, two = _turn(a, b, c), _turn(a, b, d)
    if one * two >= 0:
        return False
    return _turn(c, d, a) * _turn(c, d, b) < 0


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
