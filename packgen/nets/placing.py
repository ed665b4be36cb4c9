"""Which side of each joint carries the tab, and how deep each tab is, so that nothing collides on the paper."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import shapely

from packgen.nets.develop import Corners, Flat, corners_by_place, place_key
from packgen.nets.forests import Graph
from packgen.nets.plane import TOUCH, shape, shared
from packgen.nets.tabs import (
    APART,
    LEAST_DEPTH,
    WIDE,
    Site,
    TabRule,
    alone,
    caps,
    ghost_of,
    setback,
    tab_shape,
)
from packgen.nets.vectors import Point

Prefer = Callable[[int], int]
"""Which face should carry the tab of an inner edge."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A tab in its place: the inner edge it closes, its site and its outline."""

    edge: int
    site: Site
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Placing:
    """The tabs placed, and the joints that found no room."""

    tabs: tuple[Placed, ...]
    failed: tuple[int, ...]


def keeps_of(graph: Graph, card: float) -> list[list[float]]:
    """For each face, the distance a tab under it keeps from each of its edges."""
    keeps = [[0.0] * len(face.loop) for face in graph.solid.faces]
    for e in graph.edges:
        keeps[e.left][e.left_at] = keeps[e.right][e.right_at] = setback(card, e.dihedral)
    return keeps


def has_room(graph: Graph, rule: TabRule) -> list[bool]:
    """For each inner edge, whether either side could carry a tab of 4 mm with nothing beside it on the paper."""
    keeps = keeps_of(graph, rule.card)
    out = []
    for e in graph.edges:
        sites = (alone(e, graph.loops[f], at, keeps[f]) for f, at in ((e.left, e.left_at), (e.right, e.right_at)))
        out.append(any(tab_shape(s, LEAST_DEPTH) for s in sites))
    return out


def sites_of(graph: Graph, flat: Flat, rule: TabRule) -> dict[int, tuple[Site, Site]]:
    """For each cut inner edge, the two places where its tab could hang."""
    keeps = keeps_of(graph, rule.card)
    loops = graph.loops
    corners = corners_by_place(flat)
    out: dict[int, tuple[Site, Site]] = {}
    for i, e in enumerate(graph.edges):
        if i in flat.kept:
            continue
        pair = []
        for f, at, g, g_at in ((e.left, e.left_at, e.right, e.right_at), (e.right, e.right_at, e.left, e.left_at)):
            points = flat.points[f]
            start, end = points[at], points[(at + 1) % len(points)]
            ghost, keep = ghost_of(loops[g], g_at, start, end, keeps[g])
            gaps, own = _gaps(corners, flat.part_of[f], start, end, (g, g_at, len(loops[g])))
            usual, most = caps(ghost, gaps, own)
            wedges = _wedge(gaps[0], own[0]), _wedge(gaps[1], own[1])
            pair.append(Site(f, at, g, start, end, ghost, keep, usual, most, wedges))
        out[i] = (pair[0], pair[1])
    return out


def _wedge(gap: float, whole: bool) -> tuple[float, float]:
    """What a tab keeps away from at one of its corners: the next cut edge, or the middle of the gap between the two."""
    return (gap, 1.0) if whole else (gap / 2, 0.5)


def _near(corners: Corners, part: int, p: Point) -> list[tuple[int, int, float, float]]:
    _, x, y = place_key(part, p)
    return [c for dx in (-1, 0, 1) for dy in (-1, 0, 1) for c in corners.get((part, x + dx, y + dy), ())]


def _gaps(
    corners: Corners, part: int, start: Point, end: Point, partner: tuple[int, int, int]
) -> tuple[tuple[float, float], tuple[bool, bool]]:
    """The free angle beside an edge at its start and end, and whether it ends at the partner edge."""
    along = math.atan2(end[1] - start[1], end[0] - start[0])
    back = along + math.pi
    near_start = min((_angle(along - last), f, i) for f, i, _, last in _near(corners, part, start))
    near_end = min((_angle(first - back), f, i) for f, i, first, _ in _near(corners, part, end))
    g, g_at, n = partner
    own_start = near_start[1:] == (g, (g_at + 1) % n)
    own_end = near_end[1:] == (g, g_at)
    return (near_start[0], near_end[0]), (own_start, own_end)


def _angle(a: float) -> float:
    a %= 2 * math.pi
    return 0.0 if a > 2 * math.pi - 1e-6 else a


class _Board:
    """The paper of one net: its faces, and the tabs put down so far."""

    def __init__(self, flat: Flat) -> None:
        self.flat = flat
        self.shapes = [shape(points) for points in flat.points]
        self.trees = {}
        for part in range(flat.parts):
            faces = flat.faces_of(part)
            self.trees[part] = (faces, shapely.STRtree([self.shapes[f] for f in faces]))
        self.tabs: dict[int, tuple[Site, tuple[Point, ...], shapely.Polygon]] = {}

    def clear_of_faces(self, site: Site, tab: shapely.Polygon) -> bool:
        """True if a tab meets no face of its piece by more than a touch."""
        faces, tree = self.trees[self.flat.part_of[site.face]]
        return all(shared(self.shapes[faces[k]], tab) < TOUCH for k in tree.query(tab, predicate="intersects").tolist())

    def apart(self, edge: int, site: Site, tab: shapely.Polygon, least: float) -> bool:
        """True if a tab keeps so far (mm) from the faces and tabs that share no corner with its edge on the paper."""
        if least <= 0:
            return True
        faces, tree = self.trees[self.flat.part_of[site.face]]
        ends = shapely.MultiPoint([site.start, site.end])
        near = (faces[k] for k in tree.query(tab, predicate="dwithin", distance=least - 1e-6).tolist())
        if any(f != site.face and self.shapes[f].distance(ends) > TOUCH for f in near):
            return False
        part = self.flat.part_of[site.face]
        for other, (there, _, placed) in self.tabs.items():
            if other == edge or self.flat.part_of[there.face] != part:
                continue
            if (
                placed.distance(tab) < least - 1e-6
                and shapely.MultiPoint([there.start, there.end]).distance(ends) > TOUCH
            ):
                return False
        return True

    def blockers(self, edge: int, site: Site, tab: shapely.Polygon) -> list[int]:
        """The joints whose tabs are in the way of a tab."""
        part = self.flat.part_of[site.face]
        left, bottom, right, top = tab.bounds
        out = []
        for other, (there, _, placed) in self.tabs.items():
            if other == edge or self.flat.part_of[there.face] != part:
                continue
            a, b, c, d = placed.bounds
            if a < right and c > left and b < top and d > bottom and shared(placed, tab) > TOUCH:
                out.append(other)
        return out

    def put(self, edge: int, site: Site, points: tuple[Point, ...]) -> None:
        """Puts a tab down, in place of any other of that joint."""
        self.tabs[edge] = (site, points, shape(points))


def place_tabs(graph: Graph, flat: Flat, rule: TabRule, prefer: Prefer) -> Placing:
    """A tab for each cut inner edge where there is room, on the preferred face if it can be."""
    board = _Board(flat)
    sites = sites_of(graph, flat, rule)
    options = {i: _options(board, pair, prefer(i)) for i, pair in sites.items()}
    failed: list[int] = []
    for i in sorted(options, key=lambda i: (len(options[i]), i)):
        if not _settle(board, options, i):
            failed.append(i)
    for i in sorted(board.tabs):
        _grow(board, i, rule)
    tabs = tuple(Placed(i, site, points) for i, (site, points, _) in sorted(board.tabs.items()))
    return Placing(tabs, tuple(failed))


def _options(board: _Board, pair: tuple[Site, Site], preferred: int) -> list[tuple[Site, tuple[Point, ...]]]:
    out = []
    for site in sorted(pair, key=lambda s: s.face != preferred):
        shapes = (tab_shape(site, LEAST_DEPTH, apart) for apart in APART)
        found = next((points for points in shapes if points and board.clear_of_faces(site, shape(points))), None)
        if found:
            out.append((site, found))
    return out


def _settle(board: _Board, options: dict[int, list[tuple[Site, tuple[Point, ...]]]], edge: int) -> bool:
    """Put down a tab of the least depth; tabs in its way change sides if they can."""
    for site, points in options[edge]:
        if not board.blockers(edge, site, shape(points)):
            board.put(edge, site, points)
            return True
    for site, points in options[edge]:
        blocking = board.blockers(edge, site, shape(points))
        saved = {b: board.tabs.pop(b) for b in blocking}
        board.put(edge, site, points)
        if all(_turn_over(board, options, b, old[0]) for b, old in saved.items()):
            return True
        for b in (edge, *blocking):
            board.tabs.pop(b, None)
        board.tabs.update(saved)
    return False


def _turn_over(board: _Board, options: dict[int, list[tuple[Site, tuple[Point, ...]]]], edge: int, old: Site) -> bool:
    for site, points in options[edge]:
        if site is not old and not board.blockers(edge, site, shape(points)):
            board.put(edge, site, points)
            return True
    return False


def _grow(board: _Board, edge: int, rule: TabRule) -> None:
    """Deepen a tab towards the depth it should have, in steps, while it keeps clear; a narrow tab between wide cuts is
    easier for small hands than a deep one beside a sliver.
    """
    site, _, _ = board.tabs[edge]
    want = rule.depth(site.length)
    for apart in (WIDE, *APART):
        for step in (1.0, 0.75) if apart == WIDE else (1.0, 0.75, 0.5, 0.25, 0.0):
            points = tab_shape(site, LEAST_DEPTH + (want - LEAST_DEPTH) * step, apart)
            if points is None:
                continue
            tab = shape(points)
            if board.clear_of_faces(site, tab) and not board.blockers(edge, site, tab) and (
                board.apart(edge, site, tab, apart)
            ):  # fmt: skip
                board.put(edge, site, points)
                return
