"""The order of gluing: neighbours on the cut-out first, like a zip, and one face with reachable tabs last."""

from __future__ import annotations

from collections.abc import Sequence

from packgen.nets.develop import Flat
from packgen.nets.forests import Graph
from packgen.nets.vectors import minus

TUCKED = 4
"""A last face with up to this many tabs carries them itself and is tucked in; with more it lies on a ring of tabs."""


ROUND = 6
"""A level face with so many corners or more, such as the base of a tower, holds by every other edge."""


def letter(number: int) -> str:
    """A, B, ... Z, AA, AB, ...: the letters of the joints in the order of gluing, from 0."""
    out = ""
    number += 1
    while number:
        number, rest = divmod(number - 1, 26)
        out = chr(65 + rest) + out
    return out


def last_face(graph: Graph, flat: Flat) -> int:
    """The face to close last: one that hangs by a single fold or none, the base if possible, else the largest.

    An open solid needs none: -1.
    """
    solid = graph.solid
    if not solid.closed:
        return -1
    folds = [0] * len(solid.faces)
    for h in flat.hinges:
        folds[h.parent] += 1
        folds[h.child] += 1
    leaves = [f for f, n in enumerate(folds) if n <= 1]
    ends = {"base": 2, "top": 1, "lid": 1}
    return max(leaves, key=lambda f: (ends.get(solid.faces[f].name, 0), round(graph.areas[f], 6), -f))


def preference(graph: Graph, flat: Flat, last: int) -> dict[int, int]:
    """For each cut inner edge, the face that should carry its tab.

    The last face carries its own if they are few. Elsewhere the tab hangs on the side that runs upwards along the edge,
    so that all walls carry it on the same hand, and at level edges on the steeper face.
    """
    solid = graph.solid
    cut = [i for i in range(len(graph.edges)) if i not in flat.kept]
    own = sum(last in (graph.edges[i].left, graph.edges[i].right) for i in cut)
    out: dict[int, int] = {}
    for i in cut:
        e = graph.edges[i]
        rise = minus(solid.vertices[e.b], solid.vertices[e.a])[2]
        if last in (e.left, e.right):
            other = e.right if e.left == last else e.left
            out[i] = last if own <= TUCKED else other
        elif abs(rise) > 0.05 * e.length:
            out[i] = e.left if rise > 0 else e.right
        else:
            steep = [abs(solid.normal(f)[2]) for f in (e.left, e.right)]
            out[i] = e.left if (round(steep[0], 6), e.left) <= (round(steep[1], 6), e.right) else e.right
    return out


def spare(graph: Graph, flat: Flat) -> frozenset[int]:
    """The cut inner edges that need no tab: every other one round a level face of many corners, from its fold on.

    For small hands, which tire of a ring of small tabs (common practice, no source).
    """
    solid = graph.solid
    out: set[int] = set()
    for f in (f for f, face in enumerate(solid.faces) if len(face.loop) >= ROUND and abs(solid.normal(f)[2]) > 0.99):
        own = [(i, e) for i, e in enumerate(graph.edges) if f in (e.left, e.right)]
        sides = [(e.left_at if e.left == f else e.right_at, i) for i, e in own]
        first = next((at for at, i in sides if i in flat.kept), 0)
        corners = len(solid.faces[f].loop)
        out |= {i for at, i in sides if i not in flat.kept and (at - first) % corners % 2}
    return frozenset(out)


def rounds(graph: Graph, flat: Flat) -> list[list[int]]:
    """For each piece, the inner edges met on a walk round its outline, -1 for open rims."""
    twin: dict[tuple[int, int], tuple[int, int]] = {}
    name: dict[tuple[int, int], int] = {}
    for i, e in enumerate(graph.edges):
        one, two = (e.left, e.left_at), (e.right, e.right_at)
        name[one] = name[two] = i
        if i in flat.kept:
            twin[one], twin[two] = two, one
    sizes = [len(f.loop) for f in graph.solid.faces]
    left = {(f, i) for f, n in enumerate(sizes) for i in range(n) if (f, i) not in twin}
    out: list[list[int]] = [[] for _ in range(flat.parts)]
    for start in sorted(left):
        if start not in left:
            continue
        here = start
        while here in left:
            left.discard(here)
            out[flat.part_of[here[0]]].append(name.get(here, -1))
            f, i = here
            here = (f, (i + 1) % sizes[f])
            while here in twin:
                f, i = twin[here]
                here = (f, (i + 1) % sizes[f])
    return out


def order(graph: Graph, flat: Flat, last: int) -> list[int]:
    """The cut inner edges in the order of gluing."""
    late = {i for i, e in enumerate(graph.edges) if i not in flat.kept and last >= 0 and last in (e.left, e.right)}
    out: list[int] = []
    rest: list[int] = []
    for walk in rounds(graph, flat):
        done, left = _zip(walk, late)
        out += done
        rest += left
    for i in rest:
        if i >= 0 and i not in late and i not in out:
            out.append(i)
    return out + [i for i in dict.fromkeys(rest) if i in late]


def _zip(walk: Sequence[int], late: set[int]) -> tuple[list[int], list[int]]:
    """The joints that close between neighbours, in order, and what is left of the walk."""
    done: list[int] = []
    stack: list[int] = []
    for i in walk:
        if stack and stack[-1] == i >= 0 and i not in late:
            stack.pop()
            done.append(i)
        else:
            stack.append(i)
    while len(stack) > 1 and stack[0] == stack[-1] >= 0 and stack[0] not in late:
        done.append(stack[0])
        stack = stack[1:-1]
    return done, stack
