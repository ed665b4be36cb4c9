"""A finished net from flat faces and placed tabs: pieces, letters, folds, cuts and the way up."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from packgen.nets.cutting import cuts_of, face_label, letter_places
from packgen.nets.develop import Flat
from packgen.nets.forests import Graph
from packgen.nets.gluing import last_face, letter, order, spare
from packgen.nets.net import MOUNTAIN, VALLEY, FlatFace, Fold, Joint, Net, Part, Side, Tab
from packgen.nets.placing import Placing
from packgen.nets.solid import FLAT, Solid, flat_loop, flat_up
from packgen.nets.steps import cautions_for, stages_for
from packgen.nets.tabs import TabRule, rounded
from packgen.nets.vectors import Point, area, moved, rotation


@dataclass(frozen=True, slots=True)
class _Lettered:
    tabs: dict[int, list[Tab]]
    folds: dict[int, list[Fold]]
    joints: tuple[Joint, ...]


def finished_net(graph: Graph, flat: Flat, placing: Placing, rule: TabRule) -> Net:
    """The finished net of flat faces and placed tabs."""
    solid = graph.solid
    last = last_face(graph, flat) if placing.tabs else -1
    unneeded = spare(graph, flat) if rule.small_hands else frozenset()
    row = [i for i in order(graph, flat, last) if i not in unneeded]
    lettered = _letter(graph, flat, placing, rule, row)
    parts = []
    for part in range(flat.parts):
        faces = tuple(_flat_face(solid, f, flat.points[f]) for f in flat.faces_of(part))
        folds = [
            Fold(h.start, h.end, MOUNTAIN if h.fold > 0 else VALLEY, 180 - math.degrees(h.fold))
            for h in flat.hinges
            if h.part == part and abs(h.fold) >= FLAT
        ]
        tabs = tuple(lettered.tabs.get(part, ()))
        outlines = {f.source: f.points for f in faces}
        letters = tuple(x for j in lettered.joints for x in letter_places(j, part, outlines, tabs))
        folded = {(f.start, f.end) for f in lettered.folds.get(part, ())}
        flat_hinges = tuple(t.hinge for t in tabs if (t.hinge[0], t.hinge[-1]) not in folded)
        cuts = cuts_of(faces, tuple(h for h in flat.hinges if h.part == part), tabs)
        parts.append(Part(faces, (*folds, *lettered.folds.get(part, ())), cuts, tabs, letters, lays=flat_hinges))
    name = solid.faces[last].name if last >= 0 else ""
    net = Net(solid, tuple(parts), lettered.joints, flat.hinges, name, rule.card, rule.youngest)
    net = _upright(net)
    return replace(net, stages=stages_for(net), cautions=cautions_for(net))


def _letter(graph: Graph, flat: Flat, placing: Placing, rule: TabRule, row: list[int]) -> _Lettered:
    solid = graph.solid
    by_edge = {t.edge: t for t in placing.tabs}
    tabs: dict[int, list[Tab]] = {}
    folds: dict[int, list[Fold]] = {}
    joints: list[Joint] = []
    for i in row:
        if i not in by_edge:
            continue
        placed, e = by_edge[i], graph.edges[i]
        site = placed.site
        under, under_at = (e.right, e.right_at) if (site.face, site.at) == (e.left, e.left_at) else (e.left, e.left_at)
        text = letter(len(joints))
        other = flat.points[under]
        meets = (other[under_at], other[(under_at + 1) % len(other)])
        part, other_part = flat.part_of[site.face], flat.part_of[under]
        points = rounded(placed.points) if rule.youngest else placed.points
        tab = Tab(
            points,
            (points[0], points[-1]),
            text,
            solid.faces[site.face].name,
            solid.faces[under].name,
            meets if part == other_part else (),
        )
        tabs.setdefault(part, []).append(tab)
        if not e.flat:
            kind = MOUNTAIN if e.fold > 0 else VALLEY
            folds.setdefault(part, []).append(Fold(points[0], points[-1], kind, math.degrees(e.dihedral), True))
        joints.append(
            Joint(
                text,
                Side(part, site.face, site.at, (site.start, site.end)),
                Side(other_part, under, under_at, meets),
                math.degrees(e.dihedral),
            )
        )
    return _Lettered(tabs, folds, tuple(joints))


def _flat_face(solid: Solid, f: int, points: tuple[Point, ...]) -> FlatFace:
    loop = flat_loop(solid, f)
    up = flat_up(solid, f)
    turn = math.atan2(points[1][1] - points[0][1], points[1][0] - points[0][0])
    turn -= math.atan2(loop[1][1] - loop[0][1], loop[1][0] - loop[0][0])
    return FlatFace(solid.faces[f].name, points, face_label(points), moved(rotation(turn), up), f)


def _upright(net: Net) -> Net:
    """Each piece turned so that as much of it as can be stands upright on the paper; level faces count least."""
    for i, part in enumerate(net.parts):
        weights: dict[int, tuple[float, Point]] = {}
        for f in part.faces:
            level = abs(net.solid.normal(f.source)[2]) > 0.99
            size = abs(area(f.points)) * (1e-3 if level else 1.0)
            key = round(f.up_deg) % 360
            weights[key] = (weights.get(key, (0.0, f.up))[0] + size, weights.get(key, (0.0, f.up))[1])
        _, up = max(weights.values(), key=lambda w: round(w[0], 3))
        net = net.moved(i, rotation(math.pi / 2 - math.atan2(up[1], up[0])))
    return net
