"""Cones, cut-off cones, cylinders and wound strips as nets: exact developments with tooth tabs and fine score lines."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

from packgen.nets.cutting import LETTER_INSET, cuts_of, edge_letter, tip_of
from packgen.nets.errors import TooSmall
from packgen.nets.gluing import letter
from packgen.nets.mantles import Development, Sector, arcs, development, generators, sector_of, strip_length
from packgen.nets.net import MOUNTAIN, FlatFace, Fold, Joint, Letter, Net, Part, Side, Stage, Tab
from packgen.nets.plane import TOUCH, joined, shape, shared
from packgen.nets.solid import Disc, Mantle, Solid, Strip
from packgen.nets.steps import cautions_for, stages_for
from packgen.nets.tabs import LEAST_DEPTH, LEAST_TIP, TabRule, rounded, trapezoid
from packgen.nets.vectors import Point

Line = tuple[Point, ...]
_TOOTH, _WIDE_TOOTH = 12.0, 20.0
_STRAY, _WIDE_STRAY = 0.6, 1.2
"""A straight-hinged tooth may leave the round rim by this much (mm), and is no wider than `_TOOTH`; for small hands
it may be wider, as their card gives way (common practice, no source)."""


def tooth_count(radius: float, small_hands: bool = False) -> int:
    """How many teeth go round a rim: about 12 mm wide, narrower where a wider one would leave the curve by 0.6 mm.

    A chord c of a circle of radius r leaves it by about c² / 8r. For small hands both limits are nearly twice as large.
    """
    if radius <= 0:
        return 1
    most, stray = (_WIDE_TOOTH, _WIDE_STRAY) if small_hands else (_TOOTH, _STRAY)
    wide = min(most, math.sqrt(8 * stray * radius))
    return max(6, math.ceil(2 * math.pi * radius / wide))


def tooth_depth(title: str, radius: float, rule: TabRule) -> float:
    """The depth of the teeth on a rim (mm). Raises TooSmall if the rim is too small for any."""
    depth = min(rule.depth(0.0), 0.55 * radius)
    if depth < LEAST_DEPTH - 1e-9:
        raise TooSmall(
            f"The {title} is too small to glue: a round end {2 * radius:.1f} mm across on paper leaves no room for "
            f"tabs of {LEAST_DEPTH:g} mm.",
            "Make it larger.",
            LEAST_DEPTH / (0.55 * radius),
        )
    return depth


def _teeth(line: Line, n: int, radius: float, depth: float, youngest: bool) -> list[tuple[Line, Line]]:
    """Outline and hinge of each tooth on a rim that runs anticlockwise: narrower outwards, so that they meet inside."""
    per = (len(line) - 1) // n
    out = []
    for k in range(n):
        hinge = line[k * per : (k + 1) * per + 1]
        wide = math.dist(hinge[0], hinge[-1])
        inset = min(wide * depth / (2 * radius) + 0.3, (wide - LEAST_TIP / 2) / 2)
        slope = math.atan2(depth, inset)
        tooth = trapezoid(hinge[0], hinge[-1], (slope, slope), depth)
        outer = rounded(tooth, 1.5) if youngest else tooth
        out.append((outer + tuple(reversed(hinge[1:-1])), hinge))
    return out


def unfold_curved(solid: Solid, rule: TabRule, sectors: int) -> Net:
    """The net of a solid made of curved parts: each mantle in so many equal sectors, each disc whole.

    Raises TooSmall if a seam or a rim leaves no room for tabs of 4 mm.
    """
    if isinstance(solid.curved[0], Strip):
        return _wound(solid, solid.curved[0], rule)
    builder = _Builder(solid, rule, sectors)
    for source, part in enumerate(solid.curved):
        if isinstance(part, Mantle):
            builder.mantle(source, part)
    net = Net(solid, tuple(builder.parts), tuple(builder.joints), (), builder.last, rule.card, rule.youngest)
    return replace(net, stages=stages_for(net), cautions=cautions_for(net))


class _Builder:
    """Collects the pieces and joints of a curved solid."""

    def __init__(self, solid: Solid, rule: TabRule, sectors: int) -> None:
        self.solid, self.rule, self.sectors = solid, rule, sectors
        self.parts: list[Part] = []
        self.joints: list[Joint] = []
        self.last = ""
        self.letters = 0

    def mantle(self, source: int, mantle: Mantle) -> None:
        """Adds a mantle in its sectors, with its seams, and the discs that close it."""
        dev = development(mantle)
        seams = [self._letter() for _ in range(self.sectors)]
        rims = self._rims(mantle)
        small = self.rule.small_hands
        low, high = (max(1, math.ceil(tooth_count(r, small) / self.sectors)) for r in (mantle.foot, mantle.top))
        sector = sector_of(dev, 1 / self.sectors, (low, high))
        first = len(self.parts)
        teeth = self._rim_tabs(mantle, sector, (low, high), rims)
        for k in range(self.sectors):
            self.parts.append(self._piece(source, mantle, dev, sector, teeth, (seams[k], seams[k - 1]), k))
            follow = first + (k + 1) % self.sectors
            sides = Side(first + k, source, -1, sector.right), Side(follow, source, -1, sector.left)
            self.joints.append(Joint(seams[k], *sides, 180.0))
        for text, disc, at_foot in rims:
            line, n = (sector.foot, low) if at_foot else (sector.head, high)
            self._disc(text, disc, [Side(first + k, source, -1, line) for k in range(self.sectors)], n)

    def _letter(self) -> str:
        self.letters += 1
        return letter(self.letters - 1)

    def _rims(self, mantle: Mantle) -> list[tuple[str, int, bool]]:
        """The discs that close the mantle, the base last: letter, place, and whether it is at the foot."""
        found = [(i, not part.upward) for i, part in enumerate(self.solid.curved) if isinstance(part, Disc)]
        out = [(self._letter(), i, foot) for i, foot in sorted(found, key=lambda x: x[1])]
        if out:
            self.last = self.solid.curved[out[-1][1]].name
        return out

    def _rim_tabs(
        self, mantle: Mantle, sector: Sector, teeth: tuple[int, int], rims: list[tuple[str, int, bool]]
    ) -> tuple[list[Tab], list[Fold]]:
        tabs: list[Tab] = []
        folds: list[Fold] = []
        for text, disc, at_foot in rims:
            line, radius, n = (sector.foot, mantle.foot, teeth[0]) if at_foot else (sector.head, mantle.top, teeth[1])
            depth = tooth_depth(self.solid.title, radius, self.rule)
            slope = math.degrees(math.atan2(mantle.height, mantle.foot - mantle.top))
            angle = slope if at_foot else 180 - slope
            for points, hinge in _teeth(line, n, radius, depth, self.rule.youngest):
                tabs.append(Tab(points, hinge, text, mantle.name, self.solid.curved[disc].name))
                folds += [Fold(a, b, MOUNTAIN, angle, True) for a, b in pairwise(hinge)]
        return tabs, folds

    def _piece(
        self,
        source: int,
        mantle: Mantle,
        dev: Development,
        sector: Sector,
        teeth: tuple[list[Tab], list[Fold]],
        seams: tuple[str, str],
        k: int,
    ) -> Part:
        name, follow = (mantle.name if self.sectors == 1 else f"{mantle.name} {i + 1}" for i in (k, self._next(k)))
        middle = dev.slant / 2 if dev.angle == 0.0 else -(dev.outer + dev.inner) / 2
        face = FlatFace(name, sector.outline, (0.0, middle), (0.0, 1.0), source)
        tabs = [self._seam(dev, sector, teeth[0], seams[0], (name, follow))]
        tabs += [replace(t, on_face=name) for t in teeth[0]]
        letters = (*(_on_tab(t) for t in tabs), edge_letter(seams[1], sector.left))
        start, end = tabs[0].hinge
        folds = (Fold(start, end, MOUNTAIN, 180.0, True), *teeth[1])
        scores = tuple(generators(dev, sector))
        return Part((face,), folds, cuts_of((face,), (), tabs), tuple(tabs), letters, scores)

    def _next(self, k: int) -> int:
        return (k + 1) % self.sectors

    def _seam(self, dev: Development, sector: Sector, teeth: list[Tab], text: str, names: tuple[str, str]) -> Tab:
        """The tab along the right side: as deep as it should be, drawn back from the head until it meets nothing."""
        taken = joined((sector.outline, *(t.points for t in teeth)))
        start, end = sector.right
        want = min(self.rule.depth(dev.slant), dev.slant / 3)
        for depth in (want, 0.75 * want, LEAST_DEPTH):
            for back in (0.0, 0.1, 0.2, 0.35, 0.5):
                tip = (end[0] + (start[0] - end[0]) * back, end[1] + (start[1] - end[1]) * back)
                room = math.dist(start, tip) - 2 * depth
                if depth < LEAST_DEPTH or room < LEAST_TIP:
                    continue
                points = trapezoid(start, tip, (math.pi / 4, math.pi / 4), depth)
                if shared(shape(points), taken) < TOUCH:
                    outer = rounded(points) if self.rule.youngest else points
                    edge = sector.left if self.sectors == 1 else ()
                    return Tab(outer, (points[0], points[-1]), text, *names, edge)
        raise TooSmall(
            f"The {self.solid.title} is too small to glue: its seam of {dev.slant:.1f} mm on paper leaves no room for "
            f"a tab of {LEAST_DEPTH:g} mm.",
            "Make it larger.",
            1.25,
        )

    def _disc(self, text: str, source: int, rims: list[Side], n: int) -> None:
        """A disc whose rim has as many steps as the teeth that meet it, and its joints with them."""
        disc = self.solid.curved[source]
        assert isinstance(disc, Disc)
        total = n * self.sectors
        rim = arcs(disc.radius, -math.pi / 2, 1.5 * math.pi, total)[:-1]
        face = FlatFace(disc.name, rim, (0.0, 0.0), (0.0, 1.0), source)
        part = len(self.parts)
        letters = []
        for turn in (math.pi / 4, 3 * math.pi / 4, 5 * math.pi / 4, 7 * math.pi / 4):
            reach = disc.radius - LETTER_INSET
            at = (math.cos(turn) * reach, math.sin(turn) * reach)
            letters.append(Letter(text, at, math.degrees(turn) + 90, "edge"))
        self.parts.append(Part((face,), (), cuts_of((face,), (), ()), (), tuple(letters)))
        whole, per = (*rim, rim[0]), len(rim) // self.sectors
        angle = self._angle(disc)
        for k, side in enumerate(rims):
            points = whole[k * per : (k + 1) * per + 1]
            self.joints.append(Joint(text, side, Side(part, source, -1, points), angle))

    def _angle(self, disc: Disc) -> float:
        mantle = next(c for c in self.solid.curved if isinstance(c, Mantle))
        slope = math.degrees(math.atan2(mantle.height, mantle.foot - mantle.top))
        return 180 - slope if disc.upward else slope


def _on_tab(tab: Tab) -> Letter:
    outer = tab.outer
    x, y = sum(p[0] for p in outer) / len(outer), sum(p[1] for p in outer) / len(outer)
    (ax, ay), (bx, by) = tab.hinge[0], tab.hinge[-1]
    return Letter(tab.letter, (x, y), math.degrees(math.atan2(by - ay, bx - ax)), "tab", tip_of(tab))


def _wound(solid: Solid, strip: Strip, rule: TabRule) -> Net:
    long = strip_length(strip, rule.card)
    points = ((0.0, 0.0), (long, 0.0), (long, strip.width), (0.0, strip.width))
    face = FlatFace(strip.name, points, (long / 2, strip.width / 2), (0.0, 1.0), 0)
    turns = [math.pi * k * (strip.former + k * rule.card) for k in range(1, math.ceil(strip.turns - 1e-9))]
    lays = tuple(((x, 0.0), (x, strip.width)) for x in turns)
    part = Part((face,), (), cuts_of((face,), (), ()), lays=lays)
    stages = (
        Stage("cut", count=1),
        Stage("bend"),
        Stage("wind", count=len(turns), size=strip.former),
        Stage("wind_close", count=len(turns)),
    )
    net = Net(solid, (part,), (), (), "", rule.card, rule.youngest, stages)
    return replace(net, cautions=cautions_for(net))
