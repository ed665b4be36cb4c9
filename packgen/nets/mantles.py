"""The exact developments of curved parts: ring sectors, rectangles and strips, their arcs as polygons.

Polygons have their corners on the true arc, and their sides leave it by no more than `TRUE` mm.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from packgen.nets.solid import Disc, Mantle, Solid, Strip
from packgen.nets.vectors import Point

TRUE = 0.02
"""How far (mm) a polygon may leave the arc it stands for: a fifth of what the manifest promises."""
_SCORE_EVERY = 9.0
"""How far apart (mm) the fine lines lie at the wider end of a mantle."""
_TIGHT = 4.0
"""How near (mm) two of them may come towards the point of a cone; where they come nearer, every other one ends."""


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
    """The exact development of a mantle that is no wider at its top than at its foot."""
    slant = mantle.slant
    difference = mantle.foot - mantle.top
    width = 2 * math.pi * mantle.foot
    if difference < 1e-9 * slant:
        return Development(0.0, 0.0, 0.0, width, slant)
    outer, inner = mantle.foot * slant / difference, mantle.top * slant / difference
    return Development(outer, inner, 2 * math.pi * difference / slant, width, slant)


@dataclass(frozen=True, slots=True)
class Sector:
    """A share of a mantle on paper: its four sides as lines of points, foot and right side running anticlockwise."""

    foot: tuple[Point, ...]
    right: tuple[Point, ...]
    head: tuple[Point, ...]
    left: tuple[Point, ...]

    @property
    def outline(self) -> tuple[Point, ...]:
        """The whole outline, anticlockwise."""
        row = [*self.foot, *self.right[1:], *self.head[1:], *self.left[1:]]
        return tuple(row[:-1])


def sector_of(dev: Development, share: float, teeth: tuple[int, int] = (8, 8)) -> Sector:
    """One share of the mantle, its foot and its head cut into so many equal pieces, for a tooth on each."""
    low, high = teeth
    if dev.angle == 0.0:
        w = dev.width * share / 2
        foot = _steps((-w, 0.0), (w, 0.0), low)
        top = _steps((w, dev.slant), (-w, dev.slant), high)
        return Sector(foot, (foot[-1], top[0]), top, (top[-1], foot[0]))
    half = dev.angle * share / 2
    foot = arcs(dev.outer, -math.pi / 2 - half, -math.pi / 2 + half, low)
    head: tuple[Point, ...] = ((0.0, 0.0),)
    if dev.inner > 0:
        head = arcs(dev.inner, -math.pi / 2 + half, -math.pi / 2 - half, high)
    return Sector(foot, (foot[-1], head[0]), head, (head[-1], foot[0]))


def _steps(start: Point, end: Point, n: int) -> tuple[Point, ...]:
    return tuple((start[0] + (end[0] - start[0]) * k / n, start[1] + (end[1] - start[1]) * k / n) for k in range(n + 1))


def arcs(radius: float, start: float, end: float, n: int) -> tuple[Point, ...]:
    """Points on an arc about the origin with n equal pieces, each ending on a point."""
    out: list[Point] = []
    for k in range(n):
        piece = arc((0.0, 0.0), radius, start + (end - start) * k / n, start + (end - start) * (k + 1) / n)
        out += piece if k == 0 else piece[1:]
    return tuple(out)


def generators(dev: Development, sector: Sector) -> list[tuple[Point, Point]]:
    """Fine lines to bend along, about 9 mm apart at the foot; on a cone fewer and fewer of them near the point."""
    out = []
    if dev.angle == 0.0:
        share = math.dist(sector.foot[0], sector.foot[-1])
        n = max(3, round(share / _SCORE_EVERY))
        for k in range(1, n):
            x = -share / 2 + share * k / n
            out.append(((x, 0.0), (x, dev.slant)))
        return out
    start = math.atan2(sector.foot[0][1], sector.foot[0][0])
    half = (-math.pi / 2 - start) % (2 * math.pi)
    n = max(3, round(2 * half * dev.outer / _SCORE_EVERY))
    step = 2 * half / n
    for k in range(1, n):
        a = -math.pi / 2 - half + step * k
        c, s = math.cos(a), math.sin(a)
        rank = k & -k  # of lines 1, 2, 3, 4 ... every other one ends, then every other of the rest: 4 lies 4 steps off
        low = max(dev.inner, 0.15 * dev.outer, min(0.7 * dev.outer, _TIGHT / (step * rank)))
        out.append(((dev.outer * c, dev.outer * s), (low * c, low * s)))
    return out


def strip_length(strip: Strip, card: float) -> float:
    """The length of a strip wound n times round a former of diameter D: pi n (D + n t), for card of thickness t.

    Turn k runs, at the middle of its thickness, round a circle of D + (2k - 1) t; the sum over n turns is that.
    """
    return math.pi * strip.turns * (strip.former + strip.turns * card)


def plain_shapes(solid: Solid, card: float) -> list[tuple[Point, ...]]:
    """The curved parts laid flat whole, without tabs."""
    out: list[tuple[Point, ...]] = []
    for part in solid.curved:
        if isinstance(part, Mantle):
            out.append(sector_of(development(part), 1.0).outline)
        elif isinstance(part, Disc):
            out.append(tuple(arc((0.0, 0.0), part.radius, 0.0, 2 * math.pi)[:-1]))
        else:
            long = strip_length(part, card)
            out.append(((0.0, 0.0), (long, 0.0), (long, part.width), (0.0, part.width)))
    return out
