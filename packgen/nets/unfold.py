"""Solids unfolded: the forest of folds chosen, tabs placed, letters and steps added."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from packgen.nets import curved
from packgen.nets.cutting import cuts_of, face_label, letter_places
from packgen.nets.develop import Flat, develop, overlaps, separate
from packgen.nets.errors import NetError
from packgen.nets.forests import Allowed, Forest, Graph, candidates, graph_of
from packgen.nets.gluing import last_face, letter, order, preference
from packgen.nets.net import MOUNTAIN, VALLEY, FlatFace, Fold, Joint, Net, Part, Side, Tab
from packgen.nets.placing import Placing, least_room, place_tabs
from packgen.nets.shapes import surface
from packgen.nets.solid import FLAT, Solid, flat_loop, flat_up
from packgen.nets.steps import cautions_for, steps_for
from packgen.nets.tabs import CLEAR, LEAST_DEPTH, LEAST_TIP, TabRule, rounded
from packgen.nets.vectors import Point, bounds, hull, moved, rotation
from packgen.nets.vectors import area as shoelace

A4_LIVE = (190.0, 277.0)
"""The sheet a net is shaped for if none is named: A4 less 10 mm all round."""
_TRIES = 6
_REPAIRS = 40


class TooSmall(NetError):
    """A tab would be narrower than 4 mm; `factor` is about how many times larger the solid has to be."""

    def __init__(self, message: str, instead: str, factor: float) -> None:
        super().__init__(message, instead)
        self.factor = factor


def unfold(
    solid: Solid,
    *,
    card: float = 0.25,
    youngest: bool = False,
    tabs: bool = True,
    area: tuple[float, float] = A4_LIVE,
) -> Net:
    """The net of a solid at its own size, shaped for a sheet of `area` (mm), with tabs unless told otherwise.

    `card` is the card's thickness in mm. Faces and tabs of a piece never overlap; it is as few pieces as that allows.
    Raises NetError if a tab would be narrower than 4 mm, or the solid is not a clean surface.
    """
    return next(nets_of(solid, card=card, youngest=youngest, tabs=tabs, area=area))


def nets_of(
    solid: Solid, *, card: float, youngest: bool, tabs: bool, area: tuple[float, float], sectors: int = 1
) -> Iterator[Net]:
    """Nets of a solid, the best first; at least one, or NetError is raised."""
    if solid.curved:
        yield curved.unfold_curved(solid, TabRule(card, youngest), sectors)
        return
    rule = TabRule(card, youngest)
    graph = graph_of(solid)
    if not tabs:
        for flat in ranked(graph, _any_gap, area)[:_TRIES]:
            yield finished_net(graph, flat, Placing((), ()), rule)
        return
    graph = replace(graph, must=frozenset(tight_edges(graph, rule)))
    found = False
    for flat, placing in _tabbed(graph, rule, area):
        found = True
        yield finished_net(graph, flat, placing, rule)
    if not found:
        raise _too_small(graph, rule)


def _any_gap(graph: Graph, v: int, edge: int) -> bool:
    return graph.gap[v] > -1e-9


def _room_for_tab(graph: Graph, v: int, edge: int) -> bool:
    """True if a tab of the least depth fits between the two sides of the only cut at a corner."""
    room = graph.edges[edge].length - LEAST_TIP - LEAST_DEPTH / math.tan(math.radians(75))
    return room > 0 and graph.gap[v] >= math.atan2(LEAST_DEPTH, room) + CLEAR + math.radians(1)


def tight_edges(graph: Graph, rule: TabRule) -> list[int]:
    """The inner edges on which no tab of 4 mm fits on either side."""
    return [i for i, room in enumerate(least_room(graph, rule)) if room < LEAST_DEPTH]


def ranked(graph: Graph, allowed: Allowed, area: tuple[float, float]) -> list[Flat]:
    """Flat nets without overlaps, fewest pieces first, then those that can be printed largest."""
    effort = 24 if len(graph.areas) <= 60 else 10
    clean: list[tuple[int, float, int, Flat]] = []
    worst: list[tuple[int, int, Forest]] = []
    for n, kept in enumerate(candidates(graph, allowed, effort)):
        flat = develop(graph, kept)
        clashes = overlaps(flat)
        if clashes:
            worst.append((flat.parts + len(clashes), n, kept))
            continue
        clean.append((flat.parts, -fit_of(flat, area) * (1.02 if n < 4 else 1.0), n, flat))
    fewest = min((c[0] for c in clean), default=len(graph.areas))
    for _, n, kept in sorted(worst, key=lambda w: w[:2])[:4]:
        flat = _parted(graph, kept, fewest)
        if not overlaps(flat):
            clean.append((flat.parts, -fit_of(flat, area), 1000 + n, flat))
    return [c[3] for c in sorted(clean, key=lambda c: (c[0], round(c[1], 6), c[2]))]


def _parted(graph: Graph, kept: Forest, most: int) -> Flat:
    """The net cut into pieces until nothing overlaps, or more pieces than `most` are needed."""
    flat = develop(graph, kept)
    clashes = overlaps(flat)
    while clashes and flat.parts <= most:
        fewer = separate(graph, flat, clashes)
        if fewer == flat.kept:
            break
        flat = develop(graph, fewer)
        clashes = overlaps(flat)
    return flat


def fit_of(flat: Flat, area: tuple[float, float]) -> float:
    """About how many times its size a net could be printed on one sheet of that area."""
    best, boxes = math.inf, 0.0
    for part in range(flat.parts):
        corners = hull(p for f in flat.faces_of(part) for p in flat.points[f])
        ratio, box = fit_hull(corners, area)
        best = min(best, ratio)
        boxes += box
    if flat.parts > 1:
        best = min(best, math.sqrt(0.9 * area[0] * area[1] / boxes))
    return best


def fit_hull(corners: tuple[Point, ...], area: tuple[float, float]) -> tuple[float, float]:
    """How many times its size a hull fits into an area, at its best angle, and the area of its box there."""
    best = (0.0, math.inf)
    for angle in angles_of(corners):
        left, bottom, right, top = bounds(moved(rotation(angle), p) for p in corners)
        w, h = right - left, top - bottom
        ratio = max(min(area[0] / w, area[1] / h), min(area[0] / h, area[1] / w))
        if ratio > best[0] + 1e-9:
            best = (ratio, w * h)
    return best


def angles_of(corners: tuple[Point, ...]) -> list[float]:
    """The turns worth trying: none first, then those that lay an edge of the hull level, then every 15 degrees."""
    out = [0.0]
    for a, b in zip(corners, (*corners[1:], corners[0]), strict=True):
        turn = -math.atan2(b[1] - a[1], b[0] - a[0]) % (math.pi / 2)
        if all(abs(turn - other) > 1e-6 for other in out):
            out.append(turn)
    return sorted(out[:25], key=lambda a: (a > 0, a)) + [math.radians(d) for d in (15, 30, 45, 60, 75)]


def ranked_flats(graph: Graph, area: tuple[float, float]) -> list[Flat]:
    """Flat nets with room for tabs at their tightest corners, the best first."""
    return ranked(graph, _room_for_tab, area)


def largest_fit(solid: Solid, area: tuple[float, float], card: float) -> float:
    """The largest ratio at which a solid's net, without tabs, could fit one sheet of that area: an upper estimate."""
    if solid.curved:
        shapes = [fit_hull(hull(s), area)[0] for s in curved.plain_shapes(solid, card)]
        return min(*shapes, math.sqrt(area[0] * area[1] / paper_area(solid, card)))
    return max(fit_of(flat, area) for flat in ranked(graph_of(solid), _any_gap, area)[:_TRIES])


def paper_area(solid: Solid, card: float) -> float:
    """The area of card a solid needs, without its tabs (square mm)."""
    return surface(solid) + sum(abs(shoelace(s)) for s in curved.plain_shapes(solid, card))


def placed_tabs(
    graph: Graph, flat: Flat, rule: TabRule, large: frozenset[int] = frozenset()
) -> tuple[Flat, Placing] | None:
    """Tabs on a flat net, in more pieces if that is what it takes; None if it cannot be. `large` faces get none if
    possible.
    """
    return _mended(graph, flat, _placed(graph, flat, rule, large), rule, large)


def _tabbed(graph: Graph, rule: TabRule, area: tuple[float, float]) -> Iterator[tuple[Flat, Placing]]:
    row = ranked_flats(graph, area)
    tried: list[tuple[int, int, Flat, Placing]] = []
    good = 0
    for n, flat in enumerate(row[: 3 * _TRIES]):
        if good and flat.parts > row[0].parts:
            break
        placing = _placed(graph, flat, rule)
        if not placing.failed:
            good += 1
            yield flat, placing
            if good == _TRIES:
                return
        else:
            tried.append((flat.parts * 2 + len(placing.failed), n, flat, placing))
    if good:
        return
    for _, _, flat, placing in sorted(tried, key=lambda t: t[:2])[:3]:
        mended = _mended(graph, flat, placing, rule)
        if mended:
            yield mended
            return


def _placed(graph: Graph, flat: Flat, rule: TabRule, large: frozenset[int] = frozenset()) -> Placing:
    prefer = preference(graph, flat, last_face(graph, flat))
    for i, f in prefer.items():
        e = graph.edges[i]
        other = e.right if e.left == f else e.left
        if f in large and other not in large:
            prefer[i] = other
    return place_tabs(graph, flat, rule, prefer.__getitem__)


def _mended(
    graph: Graph, flat: Flat, placing: Placing, rule: TabRule, large: frozenset[int] = frozenset()
) -> tuple[Flat, Placing] | None:
    """More pieces, until every joint has room for its tab: the shortest fold beside a failed joint is cut."""
    for _ in range(_REPAIRS):
        if not placing.failed:
            return flat, placing
        failed = graph.edges[placing.failed[0]]
        beside = [
            i
            for i, e in enumerate(graph.edges)
            if i in flat.kept and i not in graph.must and {e.a, e.b} & {failed.a, failed.b}
        ]
        if not beside:
            return None
        cut = min(beside, key=lambda i: (round(graph.edges[i].length, 6), i))
        flat = develop(graph, flat.kept - {cut})
        placing = _placed(graph, flat, rule, large)
    return None


def _too_small(graph: Graph, rule: TabRule) -> TooSmall:
    room = least_room(graph, rule)
    i = min(range(len(room)), key=lambda i: (room[i], graph.edges[i].length, i))
    e = graph.edges[i]
    names = f"'{graph.solid.faces[e.left].name}' and '{graph.solid.faces[e.right].name}'"
    factor = 1.25
    if room[i] < LEAST_DEPTH:
        factor = max(1.1, min(10.0, 4.5 / min(e.length, _reach(graph, e.left), _reach(graph, e.right))))
    return TooSmall(
        f"The {graph.solid.title} is too small to fold: between {names} (an edge of {e.length:.1f} mm on paper) a tab "
        f"would be narrower than {LEAST_DEPTH:g} mm.",
        f"Make it about {factor:.1f} times larger.",
        factor,
    )


def _reach(graph: Graph, f: int) -> float:
    """The width of the largest strip inside a face, roughly: twice its area by its outline."""
    loop = flat_loop(graph.solid, f)
    return 2 * graph.areas[f] / sum(math.dist(a, b) for a, b in zip(loop, (*loop[1:], loop[0]), strict=True))


@dataclass(frozen=True, slots=True)
class _Lettered:
    tabs: dict[int, list[Tab]]
    folds: dict[int, list[Fold]]
    joints: tuple[Joint, ...]


def finished_net(graph: Graph, flat: Flat, placing: Placing, rule: TabRule) -> Net:
    """The finished net of flat faces and placed tabs."""
    solid = graph.solid
    last = last_face(graph, flat) if placing.tabs else -1
    lettered = _letter(graph, flat, placing, rule, order(graph, flat, last))
    parts = []
    for part in range(flat.parts):
        faces = tuple(_flat_face(solid, f, flat.points[f]) for f in flat.faces_of(part))
        folds = [
            Fold(h.start, h.end, MOUNTAIN if h.fold > 0 else VALLEY, 180 - math.degrees(h.fold))
            for h in flat.hinges
            if h.part == part and abs(h.fold) >= FLAT
        ]
        tabs = tuple(lettered.tabs.get(part, ()))
        letters = tuple(
            x for j in lettered.joints for x in letter_places(j, part, {f.source: f.points for f in faces}, tabs)
        )
        folded = {(f.start, f.end) for f in lettered.folds.get(part, ())}
        flat_hinges = tuple(t.hinge for t in tabs if (t.hinge[0], t.hinge[-1]) not in folded)
        cuts = cuts_of(faces, tuple(h for h in flat.hinges if h.part == part), tabs)
        parts.append(Part(faces, (*folds, *lettered.folds.get(part, ())), cuts, tabs, letters, flat_hinges))
    name = solid.faces[last].name if last >= 0 else ""
    net = Net(solid, tuple(parts), lettered.joints, flat.hinges, name, rule.card, rule.youngest)
    net = _upright(net)
    return replace(net, steps=steps_for(net), cautions=cautions_for(net))


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
            (site.start, site.end),
            text,
            solid.faces[site.face].name,
            solid.faces[under].name,
            meets if part == other_part else (),
        )
        tabs.setdefault(part, []).append(tab)
        if not e.flat:
            kind = MOUNTAIN if e.fold > 0 else VALLEY
            folds.setdefault(part, []).append(Fold(site.start, site.end, kind, math.degrees(e.dihedral), True))
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
    """Each piece turned so that most of its faces stand upright on the paper, if they agree at all."""
    for i, part in enumerate(net.parts):
        x = y = 0.0
        for f in part.faces:
            weight = f.art.width * f.art.height
            x, y = x + f.up[0] * weight, y + f.up[1] * weight
        total = sum(f.art.width * f.art.height for f in part.faces)
        up = (x, y) if math.hypot(x, y) > 0.2 * total else part.faces[0].up
        net = net.moved(i, rotation(math.pi / 2 - math.atan2(up[1], up[0])))
    return net
