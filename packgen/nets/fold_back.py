"""A net folded up again: where each face comes to lie in space, from the paper and the fold angles alone."""

from __future__ import annotations

import math

from packgen.nets.net import Net
from packgen.nets.vectors import Point, Vector, cross, minus, newell, plus, turned, unit


def fold_back(net: Net, part: int, share: float = 1.0) -> dict[int, tuple[Vector, ...]]:
    """The corners in space of each plane face of a piece, folded by `share` of its angles (1 is all the way).

    The first face stays on the paper, z = 0, its printed side up; the others follow along their hinges. Keys are the
    faces' places in the solid. Nothing but the net is used, so that it can prove the net right.
    """
    piece = net.parts[part]
    hinges = [h for h in net.hinges if h.part == part]
    children = {h.child for h in hinges}
    on_paper = {f.source: f.points for f in piece.faces}
    root = next(f.source for f in piece.faces if f.source not in children)
    moves: dict[int, list[tuple[Vector, Vector, float]]] = {root: []}
    for h in hinges:
        start, along = _raised(h.start), unit(minus(_raised(h.end), _raised(h.start)))
        moves[h.child] = [(start, along, h.fold * share), *moves[h.parent]]
    return {f: tuple(_folded(_raised(p), moves[f]) for p in on_paper[f]) for f in moves}


def _raised(p: Point) -> Vector:
    return (p[0], p[1], 0.0)


def _folded(p: Vector, moves: list[tuple[Vector, Vector, float]]) -> Vector:
    """The point turned about each hinge in turn, the nearest first: seen from outside, what lies right goes down."""
    for start, along, angle in moves:
        p = plus(start, turned(minus(p, start), along, angle))
    return p


Folded = dict[int, tuple[Vector, ...]]


def laid_on(points: Folded, face: int, target: tuple[Vector, ...]) -> Folded:
    """The folded faces moved rigidly so that one of them lies on its corners in the solid."""
    here = points[face]
    a, b = _frame(here), _frame(target)

    def move(p: Vector) -> Vector:
        d = minus(p, here[0])
        local = tuple(sum(x * y for x, y in zip(d, axis, strict=True)) for axis in a)
        out = target[0]
        for size, axis in zip(local, b, strict=True):
            out = (out[0] + size * axis[0], out[1] + size * axis[1], out[2] + size * axis[2])
        return out

    return {f: tuple(move(p) for p in corners) for f, corners in points.items()}


def _frame(corners: tuple[Vector, ...]) -> tuple[Vector, Vector, Vector]:
    """Three axes: along the first edge, square to it in the face, and out of the face."""
    u = unit(minus(corners[1], corners[0]))
    w = unit(newell(corners))
    return u, unit(cross(w, u)), w


def worst_miss(net: Net) -> float:
    """The farthest (mm) any corner of the folded net lies from its place in the solid; needs one true face a piece."""
    worst = 0.0
    for part in range(len(net.parts)):
        folded = fold_back(net, part)
        root = next(iter(folded))
        for f, corners in laid_on(folded, root, net.solid.corners(root)).items():
            worst = max(worst, *(math.dist(a, b) for a, b in zip(corners, net.solid.corners(f), strict=True)))
    return worst
