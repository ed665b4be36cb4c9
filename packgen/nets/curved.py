"""Cones, cut-off cones, cylinders and wound strips laid flat: exact developments, with tooth tabs and fine score lines.

Arcs stand as polygons whose corners lie on the true arc and whose sides leave it by no more than `TRUE` mm.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass, replace

from packgen.nets.cutting import cuts_of, edge_letter
from packgen.nets.gluing import letter
from packgen.nets.net import MOUNTAIN, FlatFace, Fold, Joint, Letter, Net, Part, Side, Tab
from packgen.nets.solid import Disc, Mantle, Solid, Strip
from packgen.nets.steps import cautions_for, steps_for
from packgen.nets.tabs import CLEAR, LEAST_DEPTH, LEAST_TIP, TabRule, rounded, trapezoid
from packgen.nets.vectors import Point

TRUE = 0.02
"""How far (mm) a polygon may leave the arc it stands for: a fifth of what the manifest promises."""
_SCORE_EVERY = 8.0


def arc(centre: Point, radius: float, start: float, end: float) -> list[Point]:
    """Points on an arc from one angle to another (radians), true to TRUE mm."""
    step = 2 * math.acos(max(0.5, 1 - TRUE / radius)) if radius > 0 else math.pi
    n = max(1, math.ceil(abs(end - start) / step - 1e-9))
    return [
        (centre[0] + radius * math.cos(a), centre[1] + radius * math.sin(a))
        for a in (start + (end - start) * k / n for k in range(n + 1))
    ]


@dataclass(frozen=True, slots=True)
class Development:
    """A mantle laid flat: a ring sector, or a rectangle if `angle` is 0. Lengths in mm, the angle in radians.

    Cone and cut-off cone of radii R > r and slant s: outer = R s / (R - r), inner = r s / (R - r),
    angle = 2 pi (R - r) / s. Cylinder: width 2 pi r, height h. (Dr. Math FAQ "Building a Cone"; Dr. Math 65796.)
    """

    outer: float
    inner: float
    angle: float
    width: float
    slant: float


def development(mantle: Mantle) -> Development:
    """The exact development of a mantle. One that is wider at its top is developed upside down."""
    slant = mantle.slant
    difference = abs(mantle.foot - mantle.top)
    width = 2 * math.pi * max(mantle.foot, mantle.top)
    if difference < 1e-9 * slant:
        return Development(0.0, 0.0, 0.0, width, slant)
    big, small = max(mantle.foot, mantle.top), min(mantle.foot, mantle.top)
    return Development(
        big * slant / difference, small * slant / difference, 2 * math.pi * difference / slant, width, slant
    )


@dataclass(frozen=True, slots=True)
class _Sector:
    """A share of a mantle on paper: its four sides as lines of points, foot and right side running anticlockwise."""

    foot: tuple[Point, ...]
    right: tuple[Point, ...]
    head: tuple[Point, ...]
    left: tuple[Point, ...]

    @property
    def outline(self) -> tuple[Point, ...]:
        row = [*self.foot, *self.right[1:], *self.head[1:], *self.left[1:]]
        return tuple(row[:-1])


def _sector(dev: Development, share: float, teeth: int) -> _Sector:
    """One share of the mantle, its foot cut into a whole number of steps for each tooth."""
    if dev.angle == 0.0:
        w = dev.width * share / 2
        foot = _steps((-w, 0.0), (w, 0.0), teeth)
        top = _steps((w, dev.slant), (-w, dev.slant), teeth)
        return _Sector(foot, (foot[-1], top[0]), top, (top[-1], foot[0]))
    half = dev.angle * share / 2
    foot = _arcs(dev.outer, -math.pi / 2 - half, -math.pi / 2 + half, teeth)
    head: tuple[Point, ...] = ((0.0, 0.0),)
    if dev.inner > 0:
        head = _arcs(dev.inner, -math.pi / 2 + half, -math.pi / 2 - half, teeth)
    return _Sector(foot, (foot[-1], head[0]), head, (head[-1], foot[0]))


def _steps(start: Point, end: Point, n: int) -> tuple[Point, ...]:
    return tuple((start[0] + (end[0] - start[0]) * k / n, start[1] + (end[1] - start[1]) * k / n) for k in range(n + 1))


def _arcs(radius: float, start: float, end: float, n: int) -> tuple[Point, ...]:
    out: list[Point] = []
    for k in range(n):
        piece = arc((0.0, 0.0), radius, start + (end - start) * k / n, start + (end - start) * (k + 1) / n)
        out += piece if k == 0 else piece[1:]
    return tuple(out)


def tooth_count(radius: float) -> int:
    """How many teeth go round a rim: about 12 mm wide, narrower where a wider one would leave the curve by 0.6 mm."""
    wide = min(12.0, math.sqrt(8 * 0.6 * radius))
    return max(6, math.ceil(2 * math.pi * radius / wide))


def tooth_depth(radius: float, rule: TabRule) -> float:
    """The depth of the teeth on a rim (mm). Raises NetError if the rim is too small for any."""
    depth = min(rule.depth(0.0), 0.55 * radius)
    if depth < LEAST_DEPTH - 1e-9:
        factor = LEAST_DEPTH / (0.55 * radius)
        raise Cramped(f"a round end of {2 * radius:.1f} mm across leaves no room for glue tabs of 4 mm.", factor)
    return depth


class Cramped(Exception):
    """A curved part too small to glue; `factor` is how many times larger it has to be."""

    def __init__(self, message: str, factor: float) -> None:
        super().__init__(message)
        self.factor = factor


Line = tuple[Point, ...]


def _teeth(line: Line, n: int, radius: float, depth: float, youngest: bool) -> list[tuple[Line, Line]]:
    """Outline and hinge of each tooth on a rim that runs anticlockwise: narrower outwards, so that they meet inside."""
    per = (len(line) - 1) // n
    out = []
    for k in range(n):
        hinge = line[k * per : (k + 1) * per + 1]
        wide = math.dist(hinge[0], hinge[-1])
        inset = min(wide * depth / (2 * radius) + 0.3, (wide - LEAST_TIP / 2) / 2)
        slope = math.atan2(depth, inset)
        shape = trapezoid(hinge[0], hinge[-1], (slope, slope), depth)
        outer = rounded(shape, 1.5) if youngest else shape
        out.append((outer + tuple(reversed(hinge[1:-1])), hinge))
    return out


def unfold_curved(solid: Solid, rule: TabRule, sectors: int) -> Net:
    """The net of a solid made of curved parts: each mantle in so many equal sectors, each disc whole."""
    if isinstance(solid.curved[0], Strip):
        return _wound(solid, solid.curved[0], rule)
    builder = _Builder(solid, rule, sectors)
    for source, part in enumerate(solid.curved):
        if isinstance(part, Mantle):
            builder.mantle(source, part)
    net = Net(solid, tuple(builder.parts), tuple(builder.joints), (), builder.last, rule.card, rule.youngest)
    return replace(net, steps=steps_for(net), cautions=cautions_for(net))


class _Builder:
    """Collects the pieces and joints of a curved solid."""

    def __init__(self, solid: Solid, rule: TabRule, sectors: int) -> None:
        self.solid, self.rule, self.sectors = solid, rule, sectors
        self.parts: list[Part] = []
        self.joints: list[Joint] = []
        self.last = ""
        self.letters = 0

    def mantle(self, source: int, mantle: Mantle) -> None:
        dev = development(mantle)
        share = 1 / self.sectors
        seams = [self._letter() for _ in range(self.sectors)]
        rims = self._rims(mantle)
        n = max(1, math.ceil(tooth_count(mantle.foot) / self.sectors))
        sector = _sector(dev, share, n)
        first = len(self.parts)
        for k in range(self.sectors):
            self.parts.append(self._piece(source, mantle, dev, sector, n, seams[k], seams[k - 1], rims, k))
            follow = first + (k + 1) % self.sectors
            self.joints.append(
                Joint(seams[k], Side(first + k, source, -1, sector.right), Side(follow, source, -1, sector.left), 180.0)
            )
        for text, disc_source, at_foot in rims:
            self._disc(text, disc_source, at_foot, first, source, sector, n)

    def _letter(self) -> str:
        self.letters += 1
        return letter(self.letters - 1)

    def _rims(self, mantle: Mantle) -> list[tuple[str, int, bool]]:
        """The discs that close the mantle, the base last: letter, place, and whether it is at the foot."""
        found = []
        for i, part in enumerate(self.solid.curved):
            if isinstance(part, Disc):
                at_foot = abs(part.z - mantle.z) < abs(part.z - mantle.z - mantle.height)
                found.append((i, at_foot))
        out = [(self._letter(), i, foot) for i, foot in sorted(found, key=lambda x: x[1])]
        if out:
            self.last = self.solid.curved[out[-1][1]].name
        return out

    def _piece(
        self, source: int, mantle: Mantle, dev: Development, sector: _Sector, n: int, seam: str, before: str,
        rims: list[tuple[str, int, bool]], k: int,
    ) -> Part:  # fmt: skip
        name = mantle.name if self.sectors == 1 else f"{mantle.name} {k + 1}"
        middle_ = dev.slant / 2 if dev.angle == 0.0 else -(dev.outer + dev.inner) / 2
        face = FlatFace(name, sector.outline, (0.0, middle_), (0.0, 1.0), source)
        follow = name if self.sectors == 1 else f"{mantle.name} {(k + 1) % self.sectors + 1}"
        tabs = [self._seam(dev, sector, seam, name, follow)]
        folds: list[Fold] = []
        for text, disc, at_foot in rims:
            line, radius = (sector.foot, mantle.foot) if at_foot else (sector.head, mantle.top)
            depth = tooth_depth(radius, self.rule)
            for points, hinge in _teeth(line, n, radius, depth, self.rule.youngest):
                tabs.append(Tab(points, hinge, text, name, self.solid.curved[disc].name))
                angle = _rim_angle(mantle, at_foot)
                folds += [Fold(a, b, MOUNTAIN, angle, True) for a, b in itertools.pairwise(hinge)]
        letters = [*(_on_tab(t) for t in tabs), edge_letter(before, sector.left)]
        scores = (sector.right, *_generators(dev, sector, mantle))
        cuts = cuts_of((face,), (), tuple(tabs))
        return Part((face,), tuple(folds), cuts, tuple(tabs), tuple(letters), scores)

    def _seam(self, dev: Development, sector: _Sector, text: str, name: str, under: str) -> Tab:
        start, end = sector.right
        gap = 2 * math.pi - dev.angle / self.sectors - CLEAR if dev.angle else math.pi
        usual = math.radians(45)
        angles = (usual, min(usual, gap) if dev.inner == 0 and dev.angle else usual)
        depth = min(self.rule.depth(dev.slant), (dev.slant - LEAST_TIP) / sum(1 / math.tan(a) for a in angles))
        if min(angles) < math.radians(5) or depth < LEAST_DEPTH:
            raise Cramped(f"its seam of {dev.slant:.1f} mm leaves no room for a glue tab of 4 mm.", 1.25)
        points = trapezoid(start, end, angles, depth)
        return Tab(rounded(points) if self.rule.youngest else points, (start, end), text, name, under, sector.left
                   if self.sectors == 1 else ())  # fmt: skip

    def _disc(self, text: str, source: int, at_foot: bool, first: int, mantle: int, sector: _Sector, n: int) -> None:
        disc = self.solid.curved[source]
        assert isinstance(disc, Disc)
        total = n * self.sectors
        rim = _arcs(disc.radius, -math.pi / 2, 1.5 * math.pi, total)[:-1]
        per = len(rim) // total
        face = FlatFace(disc.name, rim, (0.0, 0.0), (0.0, 1.0), source)
        part = len(self.parts)
        letters = []
        for k in range(4):
            turn = math.pi / 2 * k + math.pi / 4
            x, y = math.cos(turn) * (disc.radius - 3.0), math.sin(turn) * (disc.radius - 3.0)
            letters.append(Letter(text, (x, y), math.degrees(turn) + 90, "edge"))
        self.parts.append(Part((face,), (), cuts_of((face,), (), ()), (), tuple(letters)))
        whole = (*rim, rim[0])
        for k in range(self.sectors):
            line = sector.foot if at_foot else sector.head
            piece = whole[k * n * per : (k + 1) * n * per + 1]
            angle = 90.0
            self.joints.append(Joint(text, Side(first + k, mantle, -1, line), Side(part, source, -1, piece), angle))


def _rim_angle(mantle: Mantle, at_foot: bool) -> float:
    """The angle inside the solid, in degrees, between its side and its flat end."""
    slope = math.degrees(math.atan2(mantle.height, mantle.foot - mantle.top))
    return slope if at_foot else 180 - slope


def _on_tab(tab: Tab) -> Letter:
    outer = tab.outer
    x, y = sum(p[0] for p in outer) / len(outer), sum(p[1] for p in outer) / len(outer)
    (ax, ay), (bx, by) = tab.hinge[0], tab.hinge[-1]
    return Letter(tab.letter, (x, y), math.degrees(math.atan2(by - ay, bx - ax)), "tab")


def _generators(dev: Development, sector: _Sector, mantle: Mantle) -> list[tuple[Point, Point]]:
    """Fine score lines about 8 mm apart at the foot, from foot to head; on a cone they stop short of the point."""
    share = math.dist(sector.foot[0], sector.foot[-1]) if dev.angle == 0 else 0.0
    out = []
    if dev.angle == 0.0:
        n = max(3, round(share / _SCORE_EVERY))
        for k in range(1, n):
            x = -share / 2 + share * k / n
            out.append(((x, 0.0), (x, dev.slant)))
        return out
    start = math.atan2(sector.foot[0][1], sector.foot[0][0])
    half = (-math.pi / 2 - start) % (2 * math.pi)
    n = max(3, round(2 * half * dev.outer / _SCORE_EVERY))
    low = max(dev.inner, 0.12 * dev.outer)
    for k in range(1, n):
        a = -math.pi / 2 - half + 2 * half * k / n
        c, s = math.cos(a), math.sin(a)
        out.append(((dev.outer * c, dev.outer * s), (low * c, low * s)))
    return out


def strip_length(strip: Strip, card: float) -> float:
    """The length of a strip wound n times round a former of diameter D: pi n (D + n t), for card of thickness t.

    Turn k runs, at the middle of its thickness, round a circle of D + (2k - 1) t; the sum over n turns is that.
    """
    return math.pi * strip.turns * (strip.former + strip.turns * card)


def _wound(solid: Solid, strip: Strip, rule: TabRule) -> Net:
    long = strip_length(strip, rule.card)
    points = ((0.0, 0.0), (long, 0.0), (long, strip.width), (0.0, strip.width))
    face = FlatFace(strip.name, points, (long / 2, strip.width / 2), (0.0, 1.0), 0)
    turns = [math.pi * k * (strip.former + k * rule.card) for k in range(1, math.ceil(strip.turns - 1e-9))]
    scores = tuple(((x, 0.0), (x, strip.width)) for x in turns)
    part = Part((face,), (), cuts_of((face,), (), ()), (), (), scores)
    last = "last turn" if strip.turns > 1 else "whole turn"
    steps = (
        "Cut out the strip along the solid lines. The printed side will be the outside.",
        "Draw it over the edge of a table, so that it bends evenly.",
        f"Wind it tightly round a former {strip.former:.4g} mm across, starting at the left end. The fine lines show "
        "where each turn ends.",
        f"Spread glue on the back of the {last}, close it and hold it until it sticks. Slide the former out.",
    )
    net = Net(solid, (part,), (), (), "", rule.card, rule.youngest, steps)
    return replace(net, cautions=cautions_for(net))


def plain_shapes(solid: Solid, card: float) -> list[tuple[Point, ...]]:
    """The curved parts laid flat whole, without tabs."""
    out: list[tuple[Point, ...]] = []
    for part in solid.curved:
        if isinstance(part, Mantle):
            out.append(_sector(development(part), 1.0, 8).outline)
        elif isinstance(part, Disc):
            out.append(tuple(arc((0.0, 0.0), part.radius, 0.0, 2 * math.pi)[:-1]))
        else:
            long = strip_length(part, card)
            out.append(((0.0, 0.0), (long, 0.0), (long, part.width), (0.0, part.width)))
    return out
