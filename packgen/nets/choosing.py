"""Which flat net is best: without overlaps, in few pieces, right for the sheet, and neat to look at."""

from __future__ import annotations

import math

from packgen.nets.develop import Flat, develop, overlaps, separate, wedges
from packgen.nets.forests import Allowed, Forest, Graph, candidates
from packgen.nets.tabs import LEAST_DEPTH, LEAST_TIP, clear
from packgen.nets.vectors import Point, area, hull, rotation

_MANY = 60
"""A solid with more faces than this gets fewer tries, so that it still takes a few seconds at most."""
_ENOUGH = 8
"""With so many belts and stars that fit the sheet, no others are tried."""
_NARROW = math.radians(60)
"""A wedge of waste narrower than this is hard to cut out, the more so the narrower."""
_TAB_ROOM = 18.0
"""The room (mm) tabs on both sides of a net may take of the sheet."""


def any_gap(graph: Graph, v: int, edge: int) -> bool:
    """True if the faces round a corner can lie flat with one edge cut, whether or not a tab fits between."""
    return graph.gap[v] > -1e-9


def room_for_tab(graph: Graph, v: int, edge: int) -> bool:
    """True if a tab of the least depth fits between the two sides of the only cut at a corner."""
    room = graph.edges[edge].length - LEAST_TIP - LEAST_DEPTH / math.tan(math.radians(75))
    return room > 0 and clear(graph.gap[v]) >= 1.05 * math.atan2(LEAST_DEPTH, room)


def ranked(graph: Graph, allowed: Allowed, sheet: tuple[float, float]) -> list[Flat]:
    """Flat nets without overlaps: fewest pieces first, then those that fit the sheet, the neatest of them first."""
    effort = 24 if len(graph.areas) <= _MANY else 8
    clean: list[tuple[int, Flat, float]] = []
    worst: list[tuple[int, int, Forest]] = []
    good = 0
    for n, candidate in enumerate(candidates(graph, allowed, effort)):
        if good >= _ENOUGH and candidate.neat == 0:
            break
        flat = develop(graph, candidate.kept)
        clashes = overlaps(graph, flat)
        if clashes:
            worst.append((flat.parts + len(clashes), n, candidate.kept))
        else:
            clean.append((n, flat, candidate.neat))
            good += flat.parts == 1 and _fits_with_tabs(flat, sheet)
    fewest = min((flat.parts for _, flat, _ in clean), default=len(graph.areas))
    for _, n, kept in sorted(worst, key=lambda w: w[:2])[:4]:
        mended = _parted(graph, kept, fewest)
        if mended:
            clean.append((1000 + n, mended, 0.0))
    keys = {n: _key(graph, flat, sheet, neat) for n, flat, neat in clean}
    return [flat for n, flat, _ in sorted(clean, key=lambda c: (keys[c[0]], c[0]))]


def _key(graph: Graph, flat: Flat, sheet: tuple[float, float], neat: float) -> tuple[float, ...]:
    fit = -round(fit_of(flat, sheet), 6)
    return (
        (flat.parts, 0, untidiness(graph, flat) - neat, fit) if _fits_with_tabs(flat, sheet) else (flat.parts, 1, fit)
    )


def _fits_with_tabs(flat: Flat, sheet: tuple[float, float]) -> bool:
    return min(sheet) > 2 * _TAB_ROOM and fit_of(flat, (sheet[0] - _TAB_ROOM, sheet[1] - _TAB_ROOM)) >= 1


def untidiness(graph: Graph, flat: Flat) -> float:
    """How irregular a net looks: how many of its faces differ in their distance from its middle, its longest arm, and
    how many narrow wedges of waste have to be cut out of it.

    Faces that mirror or turn into each other lie equally far from the middle, so that symmetric nets score low.
    """
    arms = [0] * len(flat.points)
    for h in flat.hinges:
        arms[h.child] = arms[h.parent] + 1
    score = 0.0
    for part in range(flat.parts):
        faces = flat.faces_of(part)
        middles = {f: _middle(flat.points[f]) for f in faces}
        total = sum(graph.areas[f] for f in faces)
        x = sum(middles[f][0] * graph.areas[f] for f in faces) / total
        y = sum(middles[f][1] * graph.areas[f] for f in faces) / total
        unit = math.sqrt(total) / 50
        score += len({round(math.hypot(mx - x, my - y) / unit) for mx, my in middles.values()})
    narrow = sum(1 - gap / _NARROW for gap in wedges(flat) if gap < _NARROW)
    return score + 0.4 * max(arms, default=0) + 0.5 * narrow


def _middle(points: tuple[Point, ...]) -> Point:
    return sum(p[0] for p in points) / len(points), sum(p[1] for p in points) / len(points)


def _parted(graph: Graph, kept: Forest, most: int) -> Flat | None:
    """The net cut into pieces until nothing overlaps; None if that takes more pieces than `most`."""
    flat = develop(graph, kept)
    clashes = overlaps(graph, flat)
    while clashes and flat.parts <= most:
        fewer = separate(graph, flat, clashes)
        if fewer == flat.kept:
            return None
        flat = develop(graph, fewer)
        clashes = overlaps(graph, flat)
    return None if clashes else flat


def fit_of(flat: Flat, sheet: tuple[float, float]) -> float:
    """About how many times its size a net could be printed on one sheet of that area."""
    best, boxes = math.inf, 0.0
    for part in range(flat.parts):
        corners = hull(p for f in flat.faces_of(part) for p in flat.points[f])
        ratio, box = fit_hull(corners, sheet)
        best = min(best, ratio)
        boxes += box
    if flat.parts > 1:
        best = min(best, math.sqrt(0.9 * sheet[0] * sheet[1] / boxes))
    return best


def fit_hull(corners: tuple[Point, ...], sheet: tuple[float, float]) -> tuple[float, float]:
    """How many times its size a hull fits into a sheet, at its best angle, and the area of its box there."""
    best = (0.0, math.inf)
    for angle in _angles(corners):
        c, s, *_ = rotation(angle)
        xs = [c * x - s * y for x, y in corners]
        ys = [s * x + c * y for x, y in corners]
        w, h = max(xs) - min(xs), max(ys) - min(ys)
        ratio = max(min(sheet[0] / w, sheet[1] / h), min(sheet[0] / h, sheet[1] / w))
        if ratio > best[0] + 1e-9:
            best = (ratio, w * h)
    return best


def _angles(corners: tuple[Point, ...]) -> list[float]:
    """The turns worth trying: none first, then those that lay an edge of the hull level, then every 15 degrees."""
    turns = {0.0}
    for a, b in zip(corners, (*corners[1:], corners[0]), strict=True):
        turns.add(round(-math.atan2(b[1] - a[1], b[0] - a[0]) % (math.pi / 2), 9))
    row = sorted(turns)
    step = -(-len(row) // 24)
    return row[::step] + [math.radians(d) for d in (15, 30, 45, 60, 75)]


def outline_area(points: tuple[Point, ...]) -> float:
    """The area inside an outline (square mm)."""
    return abs(area(points))
