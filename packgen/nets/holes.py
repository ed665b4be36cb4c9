"""String holes and marks on a net: at the corners, in the base, at the apex, or where the solid itself asks for one."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import shapely

from packgen.faults import nearest
from packgen.nets.cutting import face_label
from packgen.nets.errors import NetError, raise_all
from packgen.nets.mantles import development
from packgen.nets.net import Cut, FlatFace, Hole, Net, Part
from packgen.nets.plane import joined
from packgen.nets.shapes import defects
from packgen.nets.solid import Disc, Drill, Face, Mantle, Solid, edges_of
from packgen.nets.steps import stages_for
from packgen.nets.tabs import distance, inner_angle, inside
from packgen.nets.vectors import Point, Vector, mean, minus, newell, unit

PLACES = ("corners", "base", "apex")
RIM = 3.0
"""The least card left between a hole and an edge (mm): a hole nearer tears out (common practice, no source)."""
INSET = 10.0
"""How far from the edges (mm) the middle of a hole for a string lies where there is room: a pull does not tear it out,
and a punch reaches it (common practice, no source).
"""


@dataclass(frozen=True, slots=True)
class Drilling:
    """Holes wanted: at the `corners`, in the `base` or at the `apex`; `across` in mm on paper; or a mark only."""

    where: str
    across: float = 3.0
    mark_only: bool = False


def drilled(net: Net, wanted: Sequence[Drilling]) -> Net:
    """The net with its holes and marks. Raises NetError for an unknown place or a hole with no room."""
    parts = [list(p.holes) for p in net.parts]
    cuts: list[list[Cut]] = [list(p.cuts) for p in net.parts]
    wrong: list[NetError] = []
    for number, wish in enumerate(wanted, 1):
        try:
            for part, hole in _holes(net, wish):
                parts[part].append(hole)
                if hole.snip:
                    cuts[part] += _snips(net.parts[part], hole)
        except NetError as fault:
            wrong.append(NetError(fault.message, fault.instead, f"hole {number}"))
    raise_all(wrong)
    for drill in net.solid.drills:
        part, face = _find(net, drill.face)
        parts[part].append(Hole(_on_paper(net.solid, face, drill), drill.across, False, "axle"))
    made = replace(
        net,
        parts=tuple(replace(p, holes=tuple(h), cuts=tuple(c)) for p, h, c in zip(net.parts, parts, cuts, strict=True)),
    )
    if any(not h.mark_only for holes in parts for h in holes):
        made = replace(made, stages=stages_for(made))
    return made


def _holes(net: Net, wish: Drilling) -> Iterator[tuple[int, Hole]]:
    """The holes or marks of one wish, with their pieces. Raises NetError for an unknown place, or too little room."""
    where = wish.where.strip().lower()
    where = {"corner": "corners", "top": "apex", "bases": "base"}.get(where, where)
    if where not in PLACES:
        near = nearest(where, PLACES)
        hint = f"Did you mean '{near}'? " if near else ""
        raise NetError(f"There is no place '{wish.where}' for a hole.", f"{hint}Write corners, base or apex.")
    if not (wish.across > 0 and math.isfinite(wish.across)):
        raise NetError("A hole must be more than 0 mm across.", "Write for example 3 mm.")
    tips = [] if where != "apex" else _tips(net)
    if not tips or wish.mark_only:
        for part, centre in tips or _centres(net, where, wish):
            yield part, Hole(centre, wish.across, wish.mark_only, where)
        return
    reach = _snip(net, wish)
    for part, centre in tips:
        yield part, Hole(centre, 2 * reach, False, where, snip=True)


def _tips(net: Net) -> list[tuple[int, Point]]:
    """Where the point of a pointed solid lies on each piece that has a part of it; empty if its top is flat."""
    solid = net.solid
    if solid.curved:
        return [
            (p, part.tabs[0].hinge[-1])
            for p, part in enumerate(net.parts)
            for f in part.faces
            if isinstance(c := solid.curved[f.source], Mantle) and c.top == 0 and part.tabs
        ]
    top = max(v[2] for v in solid.vertices)
    highest = [i for i, v in enumerate(solid.vertices) if v[2] > top - 1e-6 * (1 + abs(top))]
    if len(highest) > 1:
        return []
    out: dict[tuple[int, int, int], tuple[int, Point]] = {}
    for p, part in enumerate(net.parts):
        for f in part.faces:
            loop = solid.faces[f.source].loop
            if highest[0] in loop:
                at = (f.whole or f.points)[loop.index(highest[0])]
                out.setdefault((p, round(at[0] * 1e3), round(at[1] * 1e3)), (p, at))
    return list(out.values())


def _snip(net: Net, wish: Drilling) -> float:
    """How far from the point of the solid to snip, along its surface (mm), for a hole of that width.

    The faces round a point of total face angle w meet a circle of radius s about it in an arc of length w s; rolled or
    folded up, that arc is about the rim of a hole w s / pi across.
    """
    solid = net.solid
    if solid.curved:
        mantle = next(c for c in solid.curved if isinstance(c, Mantle))
        whole, side = development(mantle).angle, mantle.slant
    else:
        top = max(range(len(solid.vertices)), key=lambda i: solid.vertices[i][2])
        whole = 2 * math.pi - defects(solid)[top]
        side = min(math.dist(solid.vertices[top], solid.vertices[v]) for v in _beside(solid, top))
    reach = wish.across * math.pi / whole
    if reach > side / 3:
        raise NetError(
            f"A hole of {wish.across:g} mm at the point would take {reach:.0f} mm off the tip of the {solid.title}.",
            "Make the hole smaller, or the model larger.",
        )
    return reach


def _beside(solid: Solid, top: int) -> list[int]:
    """The corners that share an edge with one."""
    found = [f.loop for f in solid.faces if top in f.loop]
    return [loop[(loop.index(top) + turn) % len(loop)] for loop in found for turn in (1, -1)]


def _snips(part: Part, hole: Hole) -> list[Cut]:
    """The curve along which a tip is snipped off: a circle about it, as far as it lies on card."""
    card = joined(part.shapes)
    ring = shapely.Point(hole.centre).buffer(hole.across / 2, quad_segs=24).exterior.intersection(card)
    if ring.geom_type == "MultiLineString":
        ring = shapely.line_merge(ring)
    lines = (tuple((x, y) for x, y in line.coords) for line in getattr(ring, "geoms", [ring]))
    return [Cut(line) for line in lines if len(line) > 1]


def _centres(net: Net, where: str, wish: Drilling) -> list[tuple[int, Point]]:
    if net.solid.curved:
        return _round(net, where, wish)
    if where == "corners":
        return _corners(net, wish)
    if where == "base":
        part, face = _find(net, _level_face(net.solid, low=True).name)
        return [(part, _middle(face, wish))]
    part, face = _find(net, _level_face(net.solid, low=False).name)
    return [(part, _middle(face, wish))]


def _level_face(solid: Solid, low: bool) -> Face:
    """The face a hole in the base (or the top) goes into. Raises NetError if there is none."""
    sign = -1 if low else 1
    level = [
        f for i, f in enumerate(solid.faces) if sign * unit(newell(solid.corners(i)))[2] > 0.99 or f.name == "wheel"
    ]
    if not level:
        raise NetError(
            f"The {solid.title} has no {'base' if low else 'flat top'} for a hole.", "Choose corners or another place."
        )
    return min(level, key=lambda f: -sign * mean([solid.vertices[v] for v in f.loop])[2])


def _find(net: Net, name: str) -> tuple[int, FlatFace]:
    return next((p, f) for p, part in enumerate(net.parts) for f in part.faces if f.name == name)


def _middle(face: FlatFace, wish: Drilling) -> Point:
    x = sum(p[0] for p in face.points) / len(face.points)
    y = sum(p[1] for p in face.points) / len(face.points)
    at = (x, y) if inside((x, y), face.points) else face.label
    _check(face, at, wish)
    return at


def _check(face: FlatFace, at: Point, wish: Drilling) -> None:
    room = min(distance(at, a, b) for a, b in zip(face.points, (*face.points[1:], face.points[0]), strict=True))
    if not wish.mark_only and (room < wish.across / 2 + 1.0 or not inside(at, face.points)):
        raise NetError(
            f"A hole of {wish.across:g} mm does not fit on '{face.name}'.", "Make it smaller, or the model larger."
        )


def _corners(net: Net, wish: Drilling) -> list[tuple[int, Point]]:
    """One hole at each corner of the open rim, in the face whose rim edge starts there; else at the base's corners."""
    solid = net.solid
    rims = [e for e in edges_of(solid) if e.right < 0]
    if rims:
        chosen = [(solid.faces[e.left].name, e.left_at) for e in rims]
    else:
        base = _level_face(solid, low=True)
        chosen = [(base.name, i) for i in range(len(base.loop))]
    out = []
    for name, i in chosen:
        part, face = _find(net, name)
        at = _in_corner(face.points, i, _inset(face.points, wish))
        _check(face, at, wish)
        out.append((part, at))
    return out


def _inset(points: Sequence[Point], wish: Drilling) -> float:
    """How far from both edges at a corner a hole lies: INSET, but at most a third of the way to the face's middle."""
    turns = zip(points, (*points[1:], points[0]), strict=True)
    middle = face_label(points)
    room = min(distance(middle, a, b) for a, b in turns)
    return max(wish.across / 2 + RIM, min(INSET, room / 3))


def _in_corner(points: Sequence[Point], i: int, keep: float) -> Point:
    """The point `keep` mm from both edges at a corner."""
    here, after = points[i], points[(i + 1) % len(points)]
    half = inner_angle(points, i) / 2
    turn = math.atan2(after[1] - here[1], after[0] - here[0]) + half
    reach = keep / math.sin(half)
    return (here[0] + reach * math.cos(turn), here[1] + reach * math.sin(turn))


def _on_paper(solid: Solid, face: FlatFace, drill: Drill) -> Point:
    """The place on a laid-out face of a point in space on that face."""
    corners = [solid.vertices[v] for v in solid.faces[face.source].loop]
    normal = unit(newell(corners))
    u = unit(minus(corners[1], corners[0]))
    v = (normal[1] * u[2] - normal[2] * u[1], normal[2] * u[0] - normal[0] * u[2], normal[0] * u[1] - normal[1] * u[0])
    w: Vector = minus(drill.at, corners[0])
    x, y = sum(a * b for a, b in zip(w, u, strict=True)), sum(a * b for a, b in zip(w, v, strict=True))
    (ax, ay), (bx, by) = face.points[0], face.points[1]
    size = math.hypot(bx - ax, by - ay)
    c, s = (bx - ax) / size, (by - ay) / size
    return (ax + c * x - s * y, ay + s * x + c * y)


def _round(net: Net, where: str, wish: Drilling) -> list[tuple[int, Point]]:
    """Holes on curved solids: spread evenly round the rim, in the middle of the base, at the point of a cone."""
    solid = net.solid
    discs = [(p, f, part) for p, f, part in _curved_faces(net) if isinstance(part, Disc)]
    mantles = [(p, f, part) for p, f, part in _curved_faces(net) if isinstance(part, Mantle)]
    if where == "base":
        low = [(p, f.label) for p, f, part in discs if isinstance(part, Disc) and not part.upward]
        if not low:
            raise NetError(f"The {solid.title} has no base for a hole.", "Choose corners or another place.")
        return low[:1]
    if where == "apex":
        tops = [(p, f.label) for p, f, part in discs if isinstance(part, Disc) and part.upward]
        if not tops:
            raise NetError(f"The {solid.title} has no point and no top for a hole.", "Choose corners or another place.")
        return tops
    if discs and solid.closed:
        p, face, part = discs[0]
        assert isinstance(part, Disc)
        reach = part.radius - max(wish.across / 2 + RIM, min(INSET, part.radius / 3))
        if reach < wish.across:
            raise NetError(f"A hole of {wish.across:g} mm does not fit on '{face.name}'.", "Make the hole smaller.")
        turns = [math.pi / 4 + math.pi / 2 * k for k in range(4)]
        return [(p, (face.label[0] + reach * math.cos(t), face.label[1] + reach * math.sin(t))) for t in turns]
    return _rim_holes(net, mantles, wish)


def _curved_faces(net: Net) -> list[tuple[int, FlatFace, object]]:
    return [(p, f, net.solid.curved[f.source]) for p, part in enumerate(net.parts) for f in part.faces]


def _rim_holes(net: Net, mantles: Sequence[tuple[int, FlatFace, object]], wish: Drilling) -> list[tuple[int, Point]]:
    """Holes evenly round an open rim, half a step from the seam, each as far from the edge as a hole in a corner."""
    out: list[tuple[int, Point]] = []
    n, count = net.solid.rim_strings, len(mantles)
    for k, (p, _, mantle) in enumerate(mantles):
        assert isinstance(mantle, Mantle)
        dev = development(mantle)
        if mantle.top > 0 or dev.angle == 0:
            raise NetError(f"The {net.solid.title} has no corners for holes.", "Choose base or apex.")
        apex = net.parts[p].tabs[0].hinge[-1]
        share = dev.angle / count
        (x, y) = net.parts[p].tabs[0].hinge[0]
        right = math.atan2(y - apex[1], x - apex[0])
        reach = dev.outer - max(wish.across / 2 + RIM, min(INSET, dev.outer / 6))
        for i in range(n):
            turn = dev.angle * (i + 0.5) / n - share * k
            if 0 <= turn < share:
                a = right - share + turn
                out.append((p, (apex[0] + reach * math.cos(a), apex[1] + reach * math.sin(a))))
    return out
