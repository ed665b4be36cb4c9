"""A raw mesh made a clean surface: touching corners joined, faces turned outwards, flat, and as large as can be."""

from __future__ import annotations

import math
from collections.abc import Sequence

from packgen.nets.errors import NetError
from packgen.nets.mesh_text import RawMesh
from packgen.nets.tabs import distance, inside
from packgen.nets.vectors import Point, Vector, cross, dot, length, mean, minus, newell, times, unit

_JOIN = 1e-7
_FLAT = 1e-7
"""Parts of the mesh's size within which corners are one, and corners lie in one plane."""

Loop = tuple[int, ...]
Named = tuple[str, Loop]


def clean_surface(raw: RawMesh) -> tuple[tuple[Vector, ...], tuple[Named, ...]]:
    """Corners and named faces of a closed surface, each face flat and anticlockwise from outside.

    Faces that are not flat are cut into triangles; neighbours in one plane are joined. Raises NetError, naming the ends
    of the edge, if an edge has one face or more than two, and the corner if two fans of faces meet there.
    """
    size = max((math.dist(v, raw.vertices[0]) for v in raw.vertices), default=0.0)
    if size <= 0:
        raise NetError("The mesh has no size: all its corners lie in one place.", "Give a solid with some volume.")
    vertices, loops, groups = _joined(raw, size * _JOIN)
    flat: list[Loop] = []
    names: list[str] = []
    for loop, group in zip(loops, groups, strict=True):
        pieces = [loop] if _is_flat(vertices, loop, size * _FLAT) else triangles(vertices, loop)
        flat += pieces
        names += [group] * len(pieces)
    flat = _turned_outwards(vertices, flat)
    _check_fans(vertices, flat)
    flat, names = _merged(vertices, flat, names)
    return vertices, tuple(zip(_numbered(names), flat, strict=True))


def _joined(raw: RawMesh, near: float) -> tuple[tuple[Vector, ...], list[Loop], list[str]]:
    cells: dict[tuple[int, int, int], list[int]] = {}
    vertices: list[Vector] = []
    place: list[int] = []
    for v in raw.vertices:
        cell = tuple(math.floor(c / near / 4) for c in v)
        around = [
            i
            for dx in (-1, 0, 1)
            for dy in (-1, 0, 1)
            for dz in (-1, 0, 1)
            for i in cells.get((cell[0] + dx, cell[1] + dy, cell[2] + dz), ())
            if math.dist(vertices[i], v) <= near
        ]
        if around:
            place.append(around[0])
            continue
        place.append(len(vertices))
        cells.setdefault((cell[0], cell[1], cell[2]), []).append(len(vertices))
        vertices.append(v)
    loops, groups = [], []
    for raw_loop, group, line in zip(raw.loops, raw.groups, raw.lines, strict=True):
        loop = tuple(place[i] for i in raw_loop)
        loop = tuple(v for i, v in enumerate(loop) if v != loop[i - 1])
        if len(loop) < 3 or len(set(loop)) < len(loop) or length(newell([vertices[i] for i in loop])) < near * near:
            raise NetError(
                f"The face on line {line} of the mesh file has no area, or passes a corner twice.",
                "Take it out or mend it.",
            )
        loops.append(loop)
        groups.append(group)
    return tuple(vertices), loops, groups


def _is_flat(vertices: Sequence[Vector], loop: Loop, tolerance: float) -> bool:
    corners = [vertices[i] for i in loop]
    normal, centre = unit(newell(corners)), mean(corners)
    return all(abs(dot(normal, minus(p, centre))) <= tolerance for p in corners)


def triangles(vertices: Sequence[Vector], loop: Loop) -> list[Loop]:
    """A face cut into triangles by clipping ears, as seen along its normal."""
    normal = unit(newell([vertices[i] for i in loop]))
    side = unit(cross(normal, (1.0, 0.0, 0.0) if abs(normal[0]) < 0.8 else (0.0, 1.0, 0.0)))
    other = cross(normal, side)
    at: dict[int, Point] = {i: (dot(vertices[i], side), dot(vertices[i], other)) for i in loop}
    left = list(loop)
    out: list[Loop] = []
    while len(left) > 3:
        for k in range(len(left)):
            a, b, c = left[k - 1], left[k], left[(k + 1) % len(left)]
            turn = (at[b][0] - at[a][0]) * (at[c][1] - at[a][1]) - (at[b][1] - at[a][1]) * (at[c][0] - at[a][0])
            if turn > 0 and not any(inside(at[p], (at[a], at[b], at[c])) for p in left if p not in (a, b, c)):
                out.append((a, b, c))
                del left[k]
                break
        else:
            break
    return [*out, *((left[0], left[k], left[k + 1]) for k in range(1, len(left) - 1))]


def _turned_outwards(vertices: Sequence[Vector], loops: list[Loop]) -> list[Loop]:
    """All faces turned alike, from face to neighbour, then outwards by the sign of the volume, body by body."""
    beside: dict[tuple[int, int], list[tuple[int, bool]]] = {}
    for f, loop in enumerate(loops):
        for a, b in zip(loop, (*loop[1:], loop[0]), strict=True):
            beside.setdefault((min(a, b), max(a, b)), []).append((f, a < b))
    for (a, b), faces in beside.items():
        if len(faces) != 2:
            _refuse(vertices, a, b, len(faces))
    flip: dict[int, bool] = {}
    out = list(loops)
    for start in range(len(loops)):
        if start in flip:
            continue
        flip[start] = False
        body = [start]
        for f in body:
            loop = loops[f]
            for a, b in zip(loop, (*loop[1:], loop[0]), strict=True):
                one, two = beside[(min(a, b), max(a, b))]
                mine, other = (one, two) if one[0] == f else (two, one)
                turn = flip[f] ^ (mine[1] == other[1])
                if other[0] not in flip:
                    flip[other[0]] = turn
                    body.append(other[0])
                elif flip[other[0]] != turn:
                    raise NetError(
                        f"The surface has only one side: {_edge(vertices, a, b)} twists it.",
                        "Give a solid with an inside.",
                    )
        for f in body:
            out[f] = tuple(reversed(loops[f])) if flip[f] else loops[f]
        if _volume(vertices, [out[f] for f in body]) < 0:
            for f in body:
                out[f] = tuple(reversed(out[f]))
    return out


def _volume(vertices: Sequence[Vector], loops: Sequence[Loop]) -> float:
    total = 0.0
    for loop in loops:
        for k in range(1, len(loop) - 1):
            total += dot(vertices[loop[0]], cross(vertices[loop[k]], vertices[loop[k + 1]]))
    return total


def _edge(vertices: Sequence[Vector], a: int, b: int) -> str:
    one, two = (f"{v + 1} ({', '.join(f'{c:g}' for c in vertices[v])})" for v in (a, b))
    return f"the edge from corner {one} to corner {two}"


def _refuse(vertices: Sequence[Vector], a: int, b: int, count: int) -> None:
    if count == 1:
        raise NetError(
            f"The mesh is not closed: {_edge(vertices, a, b)} has a face on one side only.",
            "Add the missing face, or check that touching corners have the same coordinates.",
        )
    raise NetError(
        f"The mesh cannot be built: {_edge(vertices, a, b)} joins {count} faces.",
        "Every edge must join exactly two faces.",
    )


def _check_fans(vertices: Sequence[Vector], loops: Sequence[Loop]) -> None:
    """Raises NetError if the faces round a corner do not form one ring."""
    after: dict[int, dict[int, int]] = {}
    for loop in loops:
        n = len(loop)
        for k, v in enumerate(loop):
            after.setdefault(v, {})[loop[(k + 1) % n]] = loop[k - 1]
    for v, ring in after.items():
        start = here = next(iter(ring))
        steps = 0
        while steps == 0 or here != start:
            here = ring.get(here, start)
            steps += 1
        if steps < len(ring):
            shown = ", ".join(f"{c:g}" for c in vertices[v])
            raise NetError(
                f"At corner {v + 1} ({shown}) two parts of the mesh touch in one point only.",
                "Give each part a corner of its own, a little apart.",
            )


def _merged(vertices: Sequence[Vector], loops: list[Loop], names: list[str]) -> tuple[list[Loop], list[str]]:
    """Neighbours in one plane and one group joined, as long as the result is one simple loop."""
    faces: dict[int, Loop] = dict(enumerate(loops))
    normals = {f: unit(newell([vertices[i] for i in loop])) for f, loop in faces.items()}
    owner = {(a, b): f for f, loop in faces.items() for a, b in zip(loop, (*loop[1:], loop[0]), strict=True)}
    for a, b in sorted(owner):
        f, g = owner.get((a, b), -1), owner.get((b, a), -1)
        if a > b or f == g or min(f, g) < 0 or names[f] != names[g] or dot(normals[f], normals[g]) < 1 - 1e-12:
            continue
        joined = _join_loops(vertices, faces[f], faces[g], owner, f, g)
        if joined and _is_simple(vertices, joined, normals[f]):
            for edge in [e for e, o in owner.items() if o in (f, g)]:
                del owner[edge]
            faces[f] = joined
            del faces[g]
            for edge in zip(joined, (*joined[1:], joined[0]), strict=True):
                owner[edge] = f
    kept = sorted(faces)
    return [_without_straight(vertices, faces, f) for f in kept], [names[f] for f in kept]


def _join_loops(
    vertices: Sequence[Vector], one: Loop, two: Loop, owner: dict[tuple[int, int], int], f: int, g: int
) -> Loop | None:
    """The outline of two faces that share one unbroken row of edges; None if they share more."""
    n = len(one)
    shared = [k for k in range(n) if owner.get((one[(k + 1) % n], one[k])) == g]
    runs = [k for k in shared if (k - 1) % n not in shared]
    if len(runs) != 1 or len(shared) == n:
        return None
    start = runs[0]
    end = (start + len(shared)) % n
    rest = [one[(end + k) % n] for k in range(n - len(shared) + 1)]
    m = len(two)
    at = two.index(rest[-1])
    more = [two[(at + k) % m] for k in range(1, m - len(shared))]
    loop = tuple(rest + more)
    return loop if len(set(loop)) == len(loop) else None


def _is_simple(vertices: Sequence[Vector], loop: Loop, normal: Vector) -> bool:
    """True if no corner of the loop lies on or across another part of it."""
    side = unit(cross(normal, (1.0, 0.0, 0.0) if abs(normal[0]) < 0.8 else (0.0, 1.0, 0.0)))
    other = cross(normal, side)
    flat = [(dot(vertices[i], side), dot(vertices[i], other)) for i in loop]
    n = len(flat)
    tiny = 1e-9 * max(math.dist(flat[0], p) for p in flat)
    for i, p in enumerate(flat):
        for k in range(n):
            if i not in (k, (k + 1) % n) and distance(p, flat[k], flat[(k + 1) % n]) < tiny:
                return False
    return True


def _without_straight(vertices: Sequence[Vector], faces: dict[int, Loop], f: int) -> Loop:
    """The loop without corners at which only two faces meet in a straight line."""
    count: dict[int, int] = {}
    for loop in faces.values():
        for v in loop:
            count[v] = count.get(v, 0) + 1
    loop = faces[f]
    n = len(loop)
    out = []
    for k, v in enumerate(loop):
        a = unit(minus(vertices[v], vertices[loop[k - 1]]))
        b = unit(minus(vertices[loop[(k + 1) % n]], vertices[v]))
        if count[v] > 2 or length(minus(a, b)) > 1e-9:
            out.append(v)
    return tuple(out)


def _numbered(names: Sequence[str]) -> list[str]:
    """Names made single: 'face 1', 'face 2', or 'roof 1', 'roof 2' for faces of a group; a lone one keeps its name."""
    total: dict[str, int] = {}
    for name in names:
        total[name] = total.get(name, 0) + 1
    seen: dict[str, int] = {}
    out = []
    for name in names:
        seen[name] = seen.get(name, 0) + 1
        out.append(name if name and total[name] == 1 else f"{name or 'face'} {seen[name]}")
    return out


def scaled_to(vertices: Sequence[Vector], factor: float) -> tuple[Vector, ...]:
    """The corners, `factor` times as far apart, standing on z = 0 about the middle of their ground plan."""
    scaled = [times(v, factor) for v in vertices]
    low = [min(v[k] for v in scaled) for k in range(3)]
    high = [max(v[k] for v in scaled) for k in range(3)]
    x, y = (low[0] + high[0]) / 2, (low[1] + high[1]) / 2
    return tuple((v[0] - x, v[1] - y, v[2] - low[2]) for v in scaled)
