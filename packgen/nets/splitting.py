"""Nets too large for a sheet, split at folds into pieces that fit; every split becomes a glued joint with a letter."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from packgen.nets.develop import Flat, develop
from packgen.nets.forests import Forest, Graph, graph_of
from packgen.nets.net import Net
from packgen.nets.packing import fits
from packgen.nets.solid import Solid
from packgen.nets.tabs import TabRule
from packgen.nets.unfold import finished_net, fit_hull, nets_of, placed_tabs, ranked_flats, tight_edges
from packgen.nets.vectors import hull

_SECTORS = (1, 2, 3, 4, 6, 8, 12)


def split_nets(solid: Solid, card: float, youngest: bool, area: tuple[float, float]) -> Iterator[Net]:
    """Nets whose pieces fit the area, but for single faces that are larger than it. Few pieces first, at least one."""
    if solid.curved:
        yield from _curved(solid, card, youngest, area)
        return
    rule = TabRule(card, youngest)
    graph = graph_of(solid)
    graph = replace(graph, must=frozenset(tight_edges(graph, rule)))
    longest = max((e.length for e in graph.edges), default=0.0)
    flats = ranked_flats(graph, area)
    for deep in (rule.depth(longest), 1.6 * rule.depth(longest)):
        inner = (area[0] - 2 * deep, area[1] - 2 * deep)
        options = []
        for n, flat in enumerate(flats[:4]):
            kept = cut_to_fit(graph, flat.kept, inner)
            options.append((develop(graph, kept).parts, n, kept))
        for _, _, kept in sorted(options, key=lambda o: o[:2])[:2]:
            found = placed_tabs(graph, develop(graph, kept), rule, _large(graph, develop(graph, kept), inner))
            if found:
                yield finished_net(graph, *found, rule)


def _curved(solid: Solid, card: float, youngest: bool, area: tuple[float, float]) -> Iterator[Net]:
    for sectors in _SECTORS:
        net = next(nets_of(solid, card=card, youngest=youngest, tabs=True, area=area, sectors=sectors))
        if all(fits(p, *area) for p in net.parts if p.tabs) or sectors == _SECTORS[-1]:
            yield net
            if all(fits(p, *area) for p in net.parts):
                return
    yield next(nets_of(solid, card=card, youngest=youngest, tabs=True, area=area))


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
    best, choice = (-1, 0.0, 0.0), -1
    for i in sorted(flat.kept - graph.must):
        e = graph.edges[i]
        if e.left not in faces:
            continue
        one = _side(graph, flat.kept - {i}, e.left)
        two = faces - one
        sizes = [sum(graph.areas[f] for f in side) for side in (one, two)]
        ok = [_fits(flat, side, area) for side in (one, two)]
        fitting = max((s for s, k in zip(sizes, ok, strict=True) if k), default=0.0)
        score = (sum(ok), round(fitting or min(sizes), 3), -round(e.length, 6))
        if score > best:
            best, choice = score, i
    return choice


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
