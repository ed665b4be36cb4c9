"""Nets too large for a sheet, split at folds into pieces that fit; every split becomes a glued joint with a letter."""

from __future__ import annotations

from collections.abc import Iterator

from packgen.nets.choosing import fit_hull
from packgen.nets.develop import Flat, develop
from packgen.nets.forests import Forest, Graph
from packgen.nets.net import Net
from packgen.nets.packing import fits
from packgen.nets.unfold import Unfolding
from packgen.nets.vectors import hull

_SECTORS = (1, 2, 3, 4, 6, 8, 12)


def split_nets(work: Unfolding) -> Iterator[Net]:
    """Nets whose pieces fit the sheet, but for single faces that are larger than it. Few pieces first, at least one."""
    if work.solid.curved:
        yield from _curved(work)
        return
    graph, area = work.graph, work.area
    deep = work.rule.depth(max((e.length for e in graph.edges), default=0.0))
    for margin in (deep, 1.6 * deep):
        inner = (area[0] - 2 * margin, area[1] - 2 * margin)
        options = [cut_to_fit(graph, flat.kept, inner) for flat in work.flats[:3]]
        flats = sorted((develop(graph, kept) for kept in options), key=lambda f: f.parts)
        net = work.with_tabs(flats[0], _large(graph, flats[0], inner)) if flats else None
        if net:
            yield net


def _curved(work: Unfolding) -> Iterator[Net]:
    for sectors in _SECTORS:
        net = work.curved_net(sectors)
        if all(fits(p, *work.area) for p in net.parts if p.tabs):
            yield net
            return
    yield work.curved_net(1)


def _large(graph: Graph, flat: Flat, area: tuple[float, float]) -> frozenset[int]:
    """Faces so large that a tab on them might push them off the sheet."""
    out = set()
    for f, points in enumerate(flat.points):
        if fit_hull(hull(points), area)[0] < 1:
            out.add(f)
    return frozenset(out)


def cut_to_fit(graph: Graph, kept: Forest, area: tuple[float, float]) -> Forest:
    """The folds left when each piece too large for the area is cut until only single faces are too large.

    Each cut parts off the largest piece that fits; if neither side fits, the two are made as equal as can be.
    """
    done: set[frozenset[int]] = set()
    while True:
        flat = develop(graph, kept)
        for part in range(flat.parts):
            faces = frozenset(flat.faces_of(part))
            if len(faces) > 1 and faces not in done and not _fits(flat, faces, area):
                cut = _best_cut(graph, flat, faces, area)
                if cut < 0:
                    done.add(faces)
                    continue
                kept = kept - {cut}
                break
        else:
            return kept


def _fits(flat: Flat, faces: frozenset[int], area: tuple[float, float]) -> bool:
    return fit_hull(hull(p for f in faces for p in flat.points[f]), area)[0] >= 1


def _best_cut(graph: Graph, flat: Flat, faces: frozenset[int], area: tuple[float, float]) -> int:
    """The fold whose cut parts off the largest side that fits; if none does, the most even one; -1 if none may go."""
    whole = sum(graph.areas[f] for f in faces)
    sides: list[tuple[float, float, int, frozenset[int]]] = []
    for i in sorted(flat.kept - graph.must):
        e = graph.edges[i]
        if e.left not in faces:
            continue
        one = _side(graph, flat.kept - {i}, e.left)
        for side in (one, faces - one):
            sides.append((-round(sum(graph.areas[f] for f in side), 3), round(e.length, 6), i, side))
    sides.sort(key=lambda s: s[:3])
    for size, _, i, side in sides:
        if -size <= area[0] * area[1] and _fits(flat, side, area):
            return i
    return min(sides, key=lambda s: (abs(whole + 2 * s[0]), s[1], s[2]), default=(0.0, 0.0, -1, faces))[2]


def _side(graph: Graph, kept: Forest, start: int) -> frozenset[int]:
    seen, queue = {start}, [start]
    for f in queue:
        for i in graph.at_face[f]:
            if i in kept:
                e = graph.edges[i]
                g = e.right if e.left == f else e.left
                if g not in seen:
                    seen.add(g)
                    queue.append(g)
    return frozenset(seen)
