"""Faces laid flat along a forest of folds, and whether any of them lie over each other."""

from __future__ import annotations

import math
from collections import deque
from dataclasses import dataclass

from packgen.nets.forests import Forest, Graph
from packgen.nets.net import Hinge
from packgen.nets.plane import overlapping
from packgen.nets.tabs import inner_angle
from packgen.nets.vectors import Point, all_moved, onto


@dataclass(frozen=True, slots=True)
class Flat:
    """Faces laid flat: where each lies, in which piece, and the folds that hold the pieces together."""

    points: tuple[tuple[Point, ...], ...]
    part_of: tuple[int, ...]
    parts: int
    hinges: tuple[Hinge, ...]
    kept: Forest

    def faces_of(self, part: int) -> list[int]:
        """The faces of a piece."""
        return [f for f, p in enumerate(self.part_of) if p == part]


def develop(graph: Graph, kept: Forest) -> Flat:
    """The faces laid flat along the folds kept. Pieces are numbered from the one with the largest face down."""
    n = len(graph.solid.faces)
    loops = graph.loops
    placed: list[tuple[Point, ...] | None] = [None] * n
    part_of = [-1] * n
    hinges: list[Hinge] = []
    part = 0
    for root in sorted(range(n), key=lambda f: (-round(graph.areas[f], 6), f)):
        if placed[root] is not None:
            continue
        placed[root], part_of[root] = loops[root], part
        queue = deque([root])
        while queue:
            f = queue.popleft()
            for i in graph.at_face[f]:
                e = graph.edges[i]
                g, f_at, g_at = (e.right, e.left_at, e.right_at) if e.left == f else (e.left, e.right_at, e.left_at)
                if i not in kept or placed[g] is not None:
                    continue
                points = placed[f]
                assert points is not None
                start, end = points[f_at], points[(f_at + 1) % len(points)]
                loop = loops[g]
                placed[g] = all_moved(onto(loop[g_at], loop[(g_at + 1) % len(loop)], end, start), loop)
                part_of[g] = part
                hinges.append(Hinge(part, f, g, start, end, e.fold))
                queue.append(g)
        part += 1
    return Flat(tuple(p or () for p in placed), tuple(part_of), part, tuple(hinges), kept)


def overlaps(graph: Graph, flat: Flat) -> list[tuple[int, int]]:
    """The pairs of faces of one piece that lie over each other by more than rounding."""
    joined = {(min(h.parent, h.child), max(h.parent, h.child)) for h in flat.hinges}
    joined = {(f, g) for f, g in joined if graph.convex[f] and graph.convex[g]}
    out: list[tuple[int, int]] = []
    for part in range(flat.parts):
        faces = flat.faces_of(part)
        place = {f: k for k, f in enumerate(faces)}
        skip = {(place[f], place[g]) for f, g in joined if f in place and g in place}
        out += [(faces[i], faces[j]) for i, j in overlapping([flat.points[f] for f in faces], skip)]
    return out


Corners = dict[tuple[int, int, int], list[tuple[int, int, float, float]]]


def place_key(part: int, p: Point) -> tuple[int, int, int]:
    """A name for a place on a piece, the same for points nearer than a ten thousandth of a millimetre or so."""
    return part, round(p[0] * 1e4), round(p[1] * 1e4)


def corners_by_place(flat: Flat) -> Corners:
    """At each place of each piece the face corners that meet there: face, corner, and the two directions it fills."""
    out: Corners = {}
    for f, points in enumerate(flat.points):
        for i, here in enumerate(points):
            after = points[(i + 1) % len(points)]
            first = math.atan2(after[1] - here[1], after[0] - here[0])
            item = (f, i, first, first + inner_angle(points, i))
            out.setdefault(place_key(flat.part_of[f], here), []).append(item)
    return out


def wedges(flat: Flat) -> list[float]:
    """The angles (radians) of waste between two faces of a piece that meet at one point."""
    out = []
    for corners in corners_by_place(flat).values():
        if len(corners) < 2:
            continue
        row = sorted((first % (2 * math.pi), (last - first) % (2 * math.pi)) for _, _, first, last in corners)
        for (first, wide), (after, _) in zip(row, (*row[1:], row[0]), strict=True):
            gap = (after - first - wide) % (2 * math.pi)
            if 1e-6 < gap < 2 * math.pi - 1e-6:
                out.append(gap)
    return out


def separate(graph: Graph, flat: Flat, clashes: list[tuple[int, int]]) -> Forest:
    """The folds without the one edge that parts the most clashing faces (the shortest of equals)."""
    count: dict[int, int] = {}
    for f, g in clashes:
        for i in path(graph, flat.kept, f, g):
            if i not in graph.must:
                count[i] = count.get(i, 0) + 1
    if not count:
        return flat.kept
    best = min(count, key=lambda i: (-count[i], round(graph.edges[i].length, 6), i))
    return flat.kept - {best}


def path(graph: Graph, kept: Forest, start: int, end: int) -> list[int]:
    """The folds between two faces of a piece, in order; empty if they are not joined."""
    came: dict[int, tuple[int, int]] = {start: (-1, -1)}
    queue = deque([start])
    while queue:
        f = queue.popleft()
        if f == end:
            break
        for i in graph.at_face[f]:
            e = graph.edges[i]
            g = e.right if e.left == f else e.left
            if i in kept and g not in came:
                came[g] = (f, i)
                queue.append(g)
    out: list[int] = []
    f = end
    while f in came and came[f][0] >= 0:
        f, i = came[f]
        out.append(i)
    return out[::-1]
