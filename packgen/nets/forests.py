"""Which edges of a solid stay folds: candidate forests over its faces, the neat ones first.

A forest of folds makes a net of as many pieces as it has trees. All candidates come in a fixed order from fixed
directions and a fixed sequence of numbers, so that the same solid always gives the same net.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial

from packgen.nets.shapes import defects
from packgen.nets.solid import Edge, Solid, edges_of, flat_loop
from packgen.nets.tabs import inner_angle
from packgen.nets.vectors import Point, Vector, area, dot, minus, unit

Forest = frozenset[int]
"""Which inner edges stay folds, by their place in `Graph.edges`."""


@dataclass(frozen=True, slots=True)
class Graph:
    """A solid's faces and inner edges, made ready for choosing folds.

    `around[v]` are the inner edges that end at corner v if faces surround it wholly, and `gap[v]` how much less than a
    full turn they make. `loops` are the faces, each in a plane of its own, `convex` whether each is. `must` are
    edges that are too short for a tab on either side and have to stay folds.
    """

    solid: Solid
    edges: tuple[Edge, ...]
    rims: tuple[Edge, ...]
    at_face: tuple[tuple[int, ...], ...]
    around: dict[int, tuple[int, ...]]
    gap: dict[int, float]
    areas: tuple[float, ...]
    loops: tuple[tuple[Point, ...], ...]
    convex: tuple[bool, ...]
    must: Forest = frozenset()


def graph_of(solid: Solid) -> Graph:
    """The graph of a solid's faces. Raises NetError if the solid is not closed or not a clean surface."""
    every = edges_of(solid)
    inner = tuple(e for e in every if e.right >= 0)
    rims = tuple(e for e in every if e.right < 0)
    at_face: list[list[int]] = [[] for _ in solid.faces]
    ends: dict[int, list[int]] = {}
    for i, e in enumerate(inner):
        at_face[e.left].append(i)
        at_face[e.right].append(i)
        ends.setdefault(e.a, []).append(i)
        ends.setdefault(e.b, []).append(i)
    open_ends = {v for e in rims for v in (e.a, e.b)}
    gap = defects(solid)
    loops = tuple(flat_loop(solid, f) for f in range(len(solid.faces)))
    return Graph(
        solid,
        inner,
        rims,
        tuple(tuple(sorted(es, key=lambda i: (-round(inner[i].length, 6), i))) for es in at_face),
        {v: tuple(es) for v, es in ends.items() if v not in open_ends},
        gap,
        tuple(area(loop) for loop in loops),
        loops,
        tuple(all(inner_angle(loop, i) < math.pi + 1e-9 for i in range(len(loop))) for loop in loops),
    )


Allowed = Callable[[Graph, int, int], bool]
"""May corner v have edge i as its only cut? (The two edges then lie `gap[v]` apart on the paper.)"""


class _Growing:
    """A forest being grown: refuses what would close a ring of folds or leave a cut too tight to glue."""

    def __init__(self, graph: Graph, allowed: Allowed) -> None:
        self.graph, self.allowed = graph, allowed
        self.kept: set[int] = set()
        self.tree = list(range(len(graph.solid.faces)))

    def root(self, f: int) -> int:
        """The face that stands for the tree a face belongs to."""
        while self.tree[f] != f:
            self.tree[f] = self.tree[self.tree[f]]
            f = self.tree[f]
        return f

    def add(self, i: int) -> bool:
        """True if the edge could be kept as a fold."""
        e = self.graph.edges[i]
        a, b = self.root(e.left), self.root(e.right)
        if a == b or not all(self._room(v, i) for v in (e.a, e.b)):
            return False
        self.tree[a] = b
        self.kept.add(i)
        return True

    def _room(self, v: int, i: int) -> bool:
        cut = [j for j in self.graph.around.get(v, ()) if j not in self.kept and j != i]
        return len(cut) != 1 or self.allowed(self.graph, v, cut[0])


@dataclass(frozen=True, slots=True)
class Candidate:
    """A forest to try, and how much neater than others nets of its kind look."""

    kept: Forest
    neat: float


def candidates(graph: Graph, allowed: Allowed, effort: int = 24) -> Iterator[Candidate]:
    """Forests to try, each only once: belts and stars first, then long folds, steepest edges, and varied ones."""
    seen: set[Forest] = set()
    for make, neat in _recipes(graph, effort):
        growing = _Growing(graph, allowed)
        for i in sorted(graph.must):
            growing.add(i)
        make(growing)
        for i in _by_length(graph):
            growing.add(i)
        forest = frozenset(growing.kept)
        if forest not in seen:
            seen.add(forest)
            yield Candidate(forest, neat)


def _by_length(graph: Graph) -> list[int]:
    return sorted(range(len(graph.edges)), key=lambda i: (not graph.edges[i].flat, -round(graph.edges[i].length, 6), i))


Recipe = Callable[[_Growing], None]


def _recipes(graph: Graph, effort: int) -> Iterator[tuple[Recipe, float]]:
    level = {f for f in range(len(graph.areas)) if abs(graph.solid.normal(f)[2]) > 0.9}
    faces = sorted(range(len(graph.areas)), key=lambda f: (-round(graph.areas[f], 6), f))
    if 0 < len(level) < len(graph.areas):
        walls = sorted(set(range(len(graph.areas))) - level)
        steep = sum(abs(graph.solid.normal(f)[2]) for f in walls) < 0.5 * len(walls)
        for f in walls[: max(effort, 4)]:
            yield partial(_belt, middle=f, level=level), 6.0 if steep else 3.0
    for f in faces[: max(effort, 4)]:
        yield partial(_star, root=f), 3.0 if f in level else 1.0
    yield _long, 1.0
    for direction in _DIRECTIONS[: max(6, effort // 2)]:
        yield partial(_steep, direction=direction), 0.0
    for round_ in range(effort):
        yield partial(_varied, round_=round_), 0.0


def _long(growing: _Growing) -> None:
    """The longest folds, without more: what every recipe is filled up with."""


def _belt(growing: _Growing, middle: int, level: set[int]) -> None:
    """A belt of the upright faces on either side of one of them, and the level faces hung on that one."""
    graph = growing.graph
    queue, seen = [middle], {middle}
    for f in queue:
        for i in graph.at_face[f]:
            e = graph.edges[i]
            other = e.right if e.left == f else e.left
            if other not in seen and other not in level and growing.add(i):
                seen.add(other)
                queue.append(other)
    for i in graph.at_face[middle]:
        growing.add(i)


def _star(growing: _Growing, root: int) -> None:
    queue, seen = [root], {root}
    for f in queue:
        for i in growing.graph.at_face[f]:
            e = growing.graph.edges[i]
            other = e.right if e.left == f else e.left
            if other not in seen and growing.add(i):
                seen.add(other)
                queue.append(other)


def _steep(growing: _Growing, direction: Vector) -> None:
    """Keep folds but for the steepest edge up from each corner (Schlickenrieder's steepest-edge cut tree, 1997)."""
    graph = growing.graph
    steepest: dict[int, tuple[float, int]] = {}
    for i, e in enumerate(graph.edges):
        along = unit(minus(graph.solid.vertices[e.b], graph.solid.vertices[e.a]))
        rise = dot(along, direction)
        for v, up in ((e.a, rise), (e.b, -rise)):
            if up > steepest.get(v, (-2.0, 0))[0]:
                steepest[v] = (up, i)
    cut = {i for up, i in steepest.values() if up > 0}
    for i in _by_length(graph):
        if i not in cut:
            growing.add(i)


def _varied(growing: _Growing, round_: int) -> None:
    graph = growing.graph
    longest = max(e.length for e in graph.edges) if graph.edges else 1.0
    weight = [e.length / longest + 0.8 * _noise(round_, i) for i, e in enumerate(graph.edges)]
    for i in sorted(range(len(weight)), key=lambda i: (-weight[i], i)):
        growing.add(i)


def _noise(round_: int, i: int) -> float:
    """A fixed number from 0 to 1 for a round and an edge (Knuth's multiplicative hash)."""
    x = (round_ * 7919 + i * 104729 + 12345) * 2654435761 & 0xFFFFFFFF
    return ((x ^ (x >> 15)) * 2246822519 & 0xFFFFFFFF) / 0xFFFFFFFF


def _spread(count: int) -> Sequence[Vector]:
    """Directions spread evenly over the sphere (Fibonacci spiral)."""
    golden = math.pi * (3 - math.sqrt(5))
    out = []
    for k in range(count):
        z = 1 - (2 * k + 1) / count
        r = math.sqrt(1 - z * z)
        out.append((r * math.cos(golden * k), r * math.sin(golden * k), z))
    return out


_DIRECTIONS: tuple[Vector, ...] = (
    (0.0, 0.0, 1.0), (0.0, 0.0, -1.0), (0.01, 0.02, 0.9), (0.9, 0.013, 0.021), (0.017, 0.9, 0.03), (-0.9, 0.02, 0.05),
    *_spread(26),
)  # fmt: skip
