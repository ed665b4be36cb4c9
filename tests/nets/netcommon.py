"""Shared by the net tests: one example of every solid, generators of convex and hollow meshes, and proofs of a net."""

from __future__ import annotations

import math
import random

import shapely

from packgen.nets.fold_back import fold_back, laid_on
from packgen.nets.net import Net
from packgen.nets.solid import Solid
from packgen.nets.vectors import Vector, cross, dot, length, mean, minus, newell, times, turned, unit

EXAMPLES: dict[str, dict[str, float | str]] = {
    "antiprism": {"sides": 6, "side": 30},
    "bladed-wheel": {"diameter": 120, "blades": 8, "axle": 6},
    "bridge-pier": {"length": 100, "width": 30, "height": 50, "top": 24},
    "cone": {"diameter": 60, "height": 40},
    "cone-canopy": {"diameter": 120, "height": 40},
    "cube": {"edge": 30},
    "cuboctahedron": {"edge": 30},
    "cuboid": {"length": 80, "width": 60, "height": 40},
    "cylinder": {"diameter": 50, "height": 60},
    "dodecahedron": {"edge": 30},
    "frustum": {"sides": 6, "base": 40, "top": 20, "height": 50},
    "gabled-house": {"length": 70, "width": 50, "height": 40, "roof": 25},
    "icosahedron": {"edge": 30},
    "lidded-box": {"length": 80, "width": 60, "height": 40},
    "mesh": {
        "text": "OFF\n5 5 0\n0 0 0\n60 0 0\n60 60 0\n0 60 0\n30 30 50\n4 3 2 1 0\n3 0 1 4\n3 1 2 4\n3 2 3 4\n3 3 0 4\n"
    },
    "octahedron": {"edge": 40},
    "open-box": {"length": 80, "width": 60, "height": 40},
    "prism": {"sides": 8, "across": 52, "height": 61},
    "pyramid": {"sides": 4, "base": 60, "height": 50},
    "pyramid-canopy": {"sides": 6, "base": 40, "height": 30},
    "stepped-pyramid": {"steps": 3, "base": 80, "top": 30, "height": 45},
    "tetrahedron": {"edge": 40},
    "tower": {"sides": 6, "side": 25, "height": 60, "roof": 40},
    "truncated-cone": {"diameter": 120, "top diameter": 60, "height": 40},
    "truncated-icosahedron": {"edge": 15},
    "wound-strip": {"former": 20, "width": 40, "turns": 3},
}

Loop = tuple[int, ...]


def hull_of(points: list[Vector]) -> list[Loop]:
    """The triangles of the convex hull of points in general position, added one by one."""

    def normal(f: Loop) -> Vector:
        a, b, c = (points[i] for i in f)
        return cross(minus(b, a), minus(c, a))

    k = max(range(2, len(points)), key=lambda i: length(normal((0, 1, i))))
    flat = unit(normal((0, 1, k)))
    m = max(range(len(points)), key=lambda i: abs(dot(flat, minus(points[i], points[0]))))
    inside = mean([points[i] for i in (0, 1, k, m)])
    faces: set[Loop] = set()
    for f in ((0, 1, k), (0, 1, m), (0, k, m), (1, k, m)):
        faces.add(f if dot(normal(f), minus(points[f[0]], inside)) > 0 else (f[0], f[2], f[1]))
    for p in range(len(points)):
        seen = [f for f in faces if p not in f and dot(normal(f), minus(points[p], points[f[0]])) > 1e-12]
        edges = {(f[i], f[(i + 1) % 3]) for f in seen for i in range(3)}
        faces -= set(seen)
        faces |= {(a, b, p) for a, b in edges if (b, a) not in edges}
    return sorted(faces)


def sphere_points(count: int, seed: int, radius: float = 60.0) -> list[Vector]:
    """Random points on a sphere."""
    pick = random.Random(seed)
    out: list[Vector] = []
    while len(out) < count:
        p = (pick.gauss(0, 1), pick.gauss(0, 1), pick.gauss(0, 1))
        if length(p) > 0.1:
            out.append(times(p, radius / length(p)))
    return out


def off_text(points: list[Vector], loops: list[Loop]) -> str:
    """The mesh as an OFF file."""
    rows = [f"OFF\n{len(points)} {len(loops)} 0"]
    rows += [" ".join(repr(c) for c in p) for p in points]
    rows += [" ".join(str(n) for n in (len(loop), *loop)) for loop in loops]
    return "\n".join(rows)


def hull_text(count: int, seed: int) -> str:
    """A random convex hull as an OFF file."""
    points = sphere_points(count, seed)
    return off_text(points, hull_of(points))


def hollow_text(seed: int) -> str:
    """A non-convex mesh as an OFF file: a dented ball for even seeds, an extruded star for odd ones."""
    pick = random.Random(seed)
    if seed % 2 == 0:
        points = sphere_points(10 + seed % 9, seed)
        loops = hull_of(points)
        return off_text([times(p, pick.uniform(0.4, 1.0)) for p in points], loops)
    n = 4 + seed % 4
    radii = [pick.uniform(45, 60) if i % 2 else pick.uniform(15, 22) for i in range(2 * n)]
    plan = [(r * math.cos(math.pi * i / n), r * math.sin(math.pi * i / n)) for i, r in enumerate(radii)]
    tall = pick.uniform(20, 60)
    corners = [(x, y, 0.0) for x, y in plan] + [(x, y, tall) for x, y in plan]
    m = len(plan)
    loops = [tuple(reversed(range(m))), tuple(range(m, 2 * m))]
    loops += [(i, (i + 1) % m, m + (i + 1) % m, m + i) for i in range(m)]
    return off_text(corners, loops)


def is_convex(solid: Solid) -> bool:
    """True if every corner lies on or below the plane of every face."""
    for f in range(len(solid.faces)):
        n, at = solid.normal(f), solid.corners(f)[0]
        if any(dot(n, minus(v, at)) > 1e-6 for v in solid.vertices):
            return False
    return True


def worst_overlap(net: Net) -> float:
    """The largest area (mm²) shared by two faces or tabs of one piece."""
    worst = 0.0
    for part in net.parts:
        # rounded to 1e-6 mm: see packgen.nets.plane for what GEOS makes of edges that are apart by 1e-15
        shapes = [shapely.Polygon([(round(x, 6), round(y, 6)) for x, y in o.points]) for o in (*part.faces, *part.tabs)]
        for i, j in shapely.STRtree(shapes).query(shapes, predicate="intersects").T.tolist():
            if i < j:
                worst = max(worst, shapes[i].intersection(shapes[j]).area)
    return worst


def worst_miss(net: Net) -> float:
    """The farthest (mm) any corner of the folded net lies from its place in the solid."""
    worst = 0.0
    for part in range(len(net.parts)):
        folded = fold_back(net, part)
        root = next(iter(folded))
        for f, corners in laid_on(folded, root, net.solid.corners(root)).items():
            worst = max(worst, *(math.dist(a, b) for a, b in zip(corners, net.solid.corners(f), strict=True)))
    return worst


def tab_faults(net: Net) -> list[str]:
    """What is wrong with the tabs of a net of plane faces, once it is folded up in space: nothing, it should be.

    Each hinge must lie on the edge of the solid that it and its partner share; each tab, folded by the dihedral angle
    of its joint, must lie under the partner face: in its plane and inside its outline.
    """
    out = []
    solid = net.solid
    for j in net.joints:
        tab = next(t for t in net.parts[j.tab.part].tabs if t.letter == j.letter)
        face, under = solid.faces[j.tab.source].loop, solid.faces[j.edge.source].loop
        mine = [solid.vertices[face[(j.tab.at + k) % len(face)]] for k in (0, 1)]
        other = [solid.vertices[under[(j.edge.at + k) % len(under)]] for k in (1, 0)]
        if max(math.dist(a, b) for a, b in zip(mine, other, strict=True)) > 1e-9:
            out.append(f"{j.letter}: the two edges are not the same edge of the solid")
        flat = _in_space(net, j.tab.part, j.tab.source, tab.points)
        axis = unit(minus(mine[1], mine[0]))
        fold = math.pi - math.radians(j.dihedral_deg)
        bent = [tuple(a + b for a, b in zip(mine[0], turned(minus(p, mine[0]), axis, fold), strict=True)) for p in flat]
        normal, at = solid.normal(j.edge.source), other[0]
        if max(abs(dot(normal, minus(p, at))) for p in bent) > 1e-6:
            out.append(f"{j.letter}: the folded tab is not in the plane of {tab.under}")
        u = axis
        v = cross(normal, u)
        ring = [(dot(minus(p, at), u), dot(minus(p, at), v)) for p in solid.corners(j.edge.source)]
        shape = [(dot(minus(p, at), u), dot(minus(p, at), v)) for p in bent]
        if shapely.Polygon(shape).difference(shapely.Polygon(ring)).area > 1e-4:
            out.append(f"{j.letter}: the folded tab sticks out from under {tab.under}")
    return out


def _in_space(net: Net, part: int, source: int, points: tuple[tuple[float, float], ...]) -> list[Vector]:
    """Points on the paper, taken along with a face to its place in the solid."""
    face = next(f for f in net.parts[part].faces if f.source == source)
    corners = net.solid.corners(source)
    (ax, ay), (bx, by) = face.points[0], face.points[1]
    size = math.hypot(bx - ax, by - ay)
    c, s = (bx - ax) / size, (by - ay) / size
    u = unit(minus(corners[1], corners[0]))
    v = cross(unit(newell(corners)), u)
    out = []
    for x, y in points:
        along, up = c * (x - ax) + s * (y - ay), -s * (x - ax) + c * (y - ay)
        out.append(tuple(corners[0][k] + along * u[k] + up * v[k] for k in range(3)))
    return out
