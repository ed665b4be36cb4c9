"""Solids unfolded: the net chosen, tabs placed, and more pieces made where that is the only way."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from functools import cached_property

from packgen.nets.assembling import finished_net
from packgen.nets.choosing import any_gap, fit_hull, fit_of, outline_area, ranked, room_for_tab
from packgen.nets.curved import unfold_curved
from packgen.nets.develop import Flat, develop
from packgen.nets.errors import TooSmall
from packgen.nets.forests import Graph, graph_of
from packgen.nets.gluing import last_face, preference
from packgen.nets.mantles import plain_shapes
from packgen.nets.net import Net
from packgen.nets.placing import Placing, has_room, place_tabs
from packgen.nets.shapes import surface
from packgen.nets.solid import Solid
from packgen.nets.tabs import LEAST_DEPTH, TabRule
from packgen.nets.vectors import hull

A4_LIVE = (190.0, 277.0)
"""The sheet a net is shaped for if none is named: A4 less 10 mm all round."""
_TRIES = 4
_REPAIRS = 40


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
    work = Unfolding(solid, TabRule(card, youngest), area)
    return next(work.nets() if tabs else work.bare_nets())


class Unfolding:
    """The work of unfolding one solid at paper size for one sheet. Its parts are made when first asked for."""

    def __init__(self, solid: Solid, rule: TabRule, area: tuple[float, float]) -> None:
        self.solid, self.rule, self.area = solid, rule, area

    @cached_property
    def graph(self) -> Graph:
        """The faces and edges; edges on which no tab of 4 mm fits on either side must stay folds."""
        graph = graph_of(self.solid)
        tight = (i for i, room in enumerate(has_room(graph, self.rule)) if not room)
        return replace(graph, must=frozenset(tight))

    @cached_property
    def flats(self) -> list[Flat]:
        """Flat nets with room for tabs at their tightest corners, the best first."""
        return ranked(self.graph, room_for_tab, self.area)

    def bare_nets(self) -> Iterator[Net]:
        """Nets without tabs, the best first."""
        if self.solid.curved:
            yield self.curved_net(1)
            return
        graph = graph_of(self.solid)
        for flat in ranked(graph, any_gap, self.area)[:_TRIES]:
            yield finished_net(graph, flat, Placing((), ()), self.rule)

    def nets(self) -> Iterator[Net]:
        """Nets with tabs, the best first; at least one. Raises TooSmall if no tab of 4 mm fits somewhere."""
        if self.solid.curved:
            yield self.curved_net(1)
            return
        found = False
        for flat, placing in self._tabbed():
            found = True
            yield finished_net(self.graph, flat, placing, self.rule)
        if not found:
            raise self._too_small()

    def curved_net(self, sectors: int) -> Net:
        """The net of a solid of curved parts, each mantle in that many sectors.

        A mantle so flat that its two sides lie too near each other for a tab between them comes in two halves.
        """
        try:
            return unfold_curved(self.solid, self.rule, sectors)
        except TooSmall:
            if sectors > 1:
                raise
            return unfold_curved(self.solid, self.rule, 2)

    def with_tabs(self, flat: Flat, large: frozenset[int]) -> Net | None:
        """A net with tabs, in more pieces if that is what it takes; None if it cannot be. `large` faces get none if
        possible.
        """
        found = self._mended(flat, self._placed(flat, large), large)
        return finished_net(self.graph, *found, self.rule) if found else None

    def _tabbed(self) -> Iterator[tuple[Flat, Placing]]:
        tried: list[tuple[int, int, Flat, Placing]] = []
        good = 0
        for n, flat in enumerate(self.flats[: 2 * _TRIES]):
            if good and flat.parts > self.flats[0].parts:
                return
            placing = self._placed(flat)
            if not placing.failed:
                good += 1
                yield flat, placing
                if good == _TRIES:
                    return
            else:
                tried.append((flat.parts * 2 + len(placing.failed), n, flat, placing))
        if good:
            return
        for _, _, flat, placing in sorted(tried, key=lambda t: t[:2])[:2]:
            mended = self._mended(flat, placing)
            if mended:
                yield mended
                return

    def _placed(self, flat: Flat, large: frozenset[int] = frozenset()) -> Placing:
        prefer = preference(self.graph, flat, last_face(self.graph, flat))
        for i, f in prefer.items():
            e = self.graph.edges[i]
            other = e.right if e.left == f else e.left
            if f in large and other not in large:
                prefer[i] = other
        return place_tabs(self.graph, flat, self.rule, prefer.__getitem__)

    def _mended(self, flat: Flat, placing: Placing, large: frozenset[int] = frozenset()) -> tuple[Flat, Placing] | None:
        """More pieces, until every joint has room for its tab: the shortest fold beside a failed joint is cut."""
        graph = self.graph
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
            placing = self._placed(flat, large)
        return None

    def _too_small(self) -> TooSmall:
        graph = self.graph
        room = has_room(graph, self.rule)
        i = min(range(len(room)), key=lambda i: (room[i], graph.edges[i].length, i))
        e = graph.edges[i]
        names = f"'{self.solid.faces[e.left].name}' and '{self.solid.faces[e.right].name}'"
        factor = 1.25
        if not room[i]:
            factor = max(1.1, min(10.0, 4.5 / min(e.length, _reach(graph, e.left), _reach(graph, e.right))))
        return TooSmall(
            f"The {self.solid.title} is too small to fold: between {names} (an edge of {e.length:.1f} mm on paper) a "
            f"tab would be narrower than {LEAST_DEPTH:g} mm.",
            f"Make it about {factor:.1f} times larger.",
            factor,
        )


def _reach(graph: Graph, f: int) -> float:
    """The width of the largest strip inside a face, roughly: twice its area by its outline."""
    loop = graph.loops[f]
    return 2 * graph.areas[f] / sum(math.dist(a, b) for a, b in zip(loop, (*loop[1:], loop[0]), strict=True))


def largest_fit(solid: Solid, area: tuple[float, float], card: float) -> float:
    """The largest ratio at which a solid's net, without tabs, could fit one sheet of that area: an upper estimate."""
    if solid.curved:
        shapes = [fit_hull(hull(s), area)[0] for s in plain_shapes(solid, card)]
        return min(*shapes, math.sqrt(area[0] * area[1] / paper_area(solid, card)))
    graph = graph_of(solid)
    size = math.sqrt(area[0] * area[1] / sum(graph.areas))
    small = (area[0] / size / 100, area[1] / size / 100)
    return max(fit_of(flat, area) for flat in ranked(graph, any_gap, small)[:_TRIES])


def paper_area(solid: Solid, card: float) -> float:
    """The area of card a solid needs, without its tabs (square mm)."""
    return surface(solid) + sum(outline_area(s) for s in plain_shapes(solid, card))
