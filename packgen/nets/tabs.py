"""Glue tabs: how deep and how slanted each may be, and which side of each joint carries it.

A tab is a trapezoid on one of the two edges of a joint. On paper it must keep clear of every face and tab of its piece;
on the finished solid it lies under the face that meets it, so it must also fit inside that face. Its ends slope at 45
degrees where there is room (common practice in card modelling, no source).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from packgen.nets.errors import NetError
from packgen.nets.solid import FLAT, Edge
from packgen.nets.vectors import Point, all_moved, onto

LEAST_DEPTH = 4.0
"""A tab narrower than this (mm) cannot be folded and glued by hand."""
LEAST_TIP = 2.0
"""The outer edge of a tab is at least this long (mm)."""
APART = (3.0, 2.0, 1.0, 0.0)
"""How far (mm) the cut lines beside a tab should lie from each other, the best first: a child's scissors need 3 mm of
waste to turn in (common practice, no source). 0 is where the geometry allows no more.
"""
WIDE = 5.0
"""So far (mm) they lie where a tab keeps its depth for all that: no narrow slot to cut out."""
CLEAR = math.radians(3)
_WEDGE = math.radians(30)
"""Cut lines that meet at this angle or more may start from one point: the waste between them is no sliver."""
_STEEPEST = math.radians(75)
_USUAL = math.radians(45)
_SLIVER = math.radians(18)


def clear(angle: float) -> float:
    """What is left of an angle when a little room is kept at one side: 3 degrees, or a fifth of a narrow one."""
    return angle - min(CLEAR, 0.2 * angle)


@dataclass(frozen=True, slots=True)
class TabRule:
    """What tabs depend on besides the edge: the card's thickness in mm and who builds it.

    For the `youngest` tabs are deeper and round, for `small_hands` the teeth on round rims are fewer and wider, and a
    level face of many corners is held by every other edge.
    """

    card: float = 0.25
    youngest: bool = False
    small_hands: bool = False

    def depth(self, edge: float) -> float:
        """The depth a tab should have: a quarter of its edge, between limits that grow with the card's thickness.

        From 5 + 4 t to 9 + 8 t mm for card of thickness t, 2 mm more for the youngest (common practice: 6 to 10 mm).
        """
        more = 2.0 if self.youngest else 0.0
        return max(5 + 4 * self.card, min(edge / 4, 9 + 8 * self.card)) + more


def setback(card: float, dihedral: float) -> float:
    """How far a tab inside the solid keeps from a neighbouring fold, in mm: t / tan(dihedral / 2).

    The outside of the card is at true size. Two faces of thickness t that meet at an inner angle d have their inner
    surfaces meet t / tan(d / 2) in from the edge, measured along either face; nothing inside can lie closer. It is t
    for a right angle, and 0 for flat and hollow edges. Raises NetError for faces that lie on each other.
    """
    if dihedral >= math.pi - FLAT:
        return 0.0
    if dihedral < FLAT:
        raise NetError("Two faces of the solid lie on each other.", "Leave out one of them, or part them.", "mesh")
    return card / math.tan(dihedral / 2)


@dataclass(frozen=True, slots=True)
class Site:
    """One side of a joint where a tab could hang: from `start` to `end` as its face runs round, outside to the right.

    `ghost` is the face it would lie under, laid over it, and `keep` the distance it must keep from each of the ghost's
    edges (the first is the joint itself). The angles are the usual and the steepest allowed at either end. `wedges` are
    the angles from the edge to what the tab shares a corner with on the paper, at its start and end, and how much of
    the room to be left there is this tab's to leave: 1 beside a cut edge, half where both sides may carry tabs.
    """

    face: int
    at: int
    under: int
    start: Point
    end: Point
    ghost: tuple[Point, ...]
    keep: tuple[float, ...]
    usual: tuple[float, float]
    most: tuple[float, float]
    wedges: tuple[tuple[float, float], tuple[float, float]] = ((math.pi, 1.0), (math.pi, 1.0))

    @property
    def length(self) -> float:
        """The length of the edge."""
        return math.dist(self.start, self.end)


def ghost_of(
    loop: Sequence[Point], at: int, start: Point, end: Point, keeps: Sequence[float]
) -> tuple[tuple[Point, ...], tuple[float, ...]]:
    """The other face laid over the tab's place, beginning with the joint, and its distances to keep."""
    n = len(loop)
    move = onto(loop[at], loop[(at + 1) % n], end, start)
    placed = all_moved(move, loop)
    return tuple(placed[(at + k) % n] for k in range(n)), tuple(keeps[(at + k) % n] for k in range(n))


def inner_angle(loop: Sequence[Point], i: int) -> float:
    """The angle inside a loop at its corner i."""
    here, after, before = loop[i], loop[(i + 1) % len(loop)], loop[i - 1]
    a = math.atan2(after[1] - here[1], after[0] - here[0])
    b = math.atan2(before[1] - here[1], before[0] - here[0])
    return (b - a) % (2 * math.pi)


def trapezoid(start: Point, end: Point, angles: tuple[float, float], depth: float) -> tuple[Point, ...]:
    """A tab's outline from near `start` outwards and back to near `end`, inside the two angles.

    At an angle under 18 degrees the tab would taper to a sliver; there it begins farther along the edge, at 60 degrees.
    """
    return _outline(start, end, (_end(angles[0], depth), _end(angles[1], depth)), depth)


def _outline(
    start: Point, end: Point, ends: tuple[tuple[float, float], tuple[float, float]], depth: float
) -> tuple[Point, ...]:
    """The tab whose sides begin and arrive so far along the edge from its start, and from its end."""
    size = math.dist(start, end)
    ux, uy = (end[0] - start[0]) / size, (end[1] - start[1]) / size
    (p, a), (q, b) = ends
    return (
        (start[0] + ux * p, start[1] + uy * p),
        (start[0] + ux * a + uy * depth, start[1] + uy * a - ux * depth),
        (end[0] - ux * b + uy * depth, end[1] - uy * b - ux * depth),
        (end[0] - ux * q, end[1] - uy * q),
    )


def _end(angle: float, depth: float, wedge: tuple[float, float] = (math.pi, 1.0), apart: float = 0.0) -> tuple[
    float, float
]:  # fmt: skip
    """How far along its edge a tab begins, and where its side arrives at its depth.

    A side that leaves a narrow wedge of waste beside a cut line at the angle g moves along the edge until it keeps
    `apart` from that line: a point x along and y deep lies x sin g - y cos g from it.
    """
    tip = depth / math.tan(angle)
    foot = tip - depth / math.tan(math.radians(60)) if angle < _SLIVER else 0.0
    g, share = wedge
    if apart > 0 and g - angle < _WEDGE * share:
        foot = max(foot, share * apart / math.sin(g))
        tip = max(tip, (share * apart + depth * math.cos(g)) / math.sin(g), foot + depth / math.tan(_STEEPEST))
    return foot, tip


def tab_shape(site: Site, depth: float, apart: float = 0.0) -> tuple[Point, ...] | None:
    """The tab of that depth, its ends as near 45 degrees as fits; None if it cannot be that deep.

    Looks at the edge's length, the angles, the face it lies under, and the cut lines from its own corners, from which
    it keeps `apart` mm; not at its other neighbours on the paper.
    """
    tip = max(LEAST_TIP, min(site.length / 4, 6.0))
    for blend in (0.0, 0.25, 0.5, 0.75, 1.0):
        angles = _blended(site, blend)
        if min(angles) <= math.radians(1):
            return None
        ends = _end(angles[0], depth, site.wedges[0], apart), _end(angles[1], depth, site.wedges[1], apart)
        left = site.length - ends[0][1] - ends[1][1]
        if left >= (tip if blend < 1.0 else LEAST_TIP):
            shape = _outline(site.start, site.end, ends, depth)
            if _fits_under(site, shape):
                return shape
    return None


def _blended(site: Site, blend: float) -> tuple[float, float]:
    first = site.usual[0] + (max(site.most[0], site.usual[0]) - site.usual[0]) * blend
    second = site.usual[1] + (max(site.most[1], site.usual[1]) - site.usual[1]) * blend
    return first, second


def _fits_under(site: Site, shape: Sequence[Point]) -> bool:
    ghost = site.ghost
    n = len(ghost)
    tips = shape[1], shape[-2]
    for k in range(1, n):
        a, b = ghost[k], ghost[(k + 1) % n]
        for p in tips:
            if distance(p, a, b) < site.keep[k] - 1e-9:
                return False
        if n > 3 and any(_cross(a, b, s, t) for s, t in pairwise(shape) if s != a and t != b):
            return False
    return all(inside(p, ghost) for p in tips)


def distance(p: Point, a: Point, b: Point) -> float:
    """How far a point lies from the stretch between two others."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    along = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)
    along = max(0.0, min(1.0, along))
    return math.hypot(p[0] - a[0] - along * dx, p[1] - a[1] - along * dy)


def inside(p: Point, loop: Sequence[Point]) -> bool:
    """True if a point lies inside a loop (even-odd rule)."""
    found = False
    for a, b in zip(loop, (*loop[1:], loop[0]), strict=True):
        if (a[1] > p[1]) != (b[1] > p[1]) and p[0] < (b[0] - a[0]) * (p[1] - a[1]) / (b[1] - a[1]) + a[0]:
            found = not found
    return found


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    """True if two stretches properly cross."""

    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    tiny = 1e-9
    return side(a, b, c) * side(a, b, d) < -tiny and side(c, d, a) * side(c, d, b) < -tiny


def alone(edge: Edge, loop: Sequence[Point], at: int, keeps: Sequence[float]) -> Site:
    """The site an edge would have with nothing beside it on the paper: only the face it goes under counts."""
    start, end = (0.0, 0.0), (edge.length, 0.0)
    ghost, keep = ghost_of(loop, at, start, end, keeps)
    usual, most = caps(ghost, (math.pi, math.pi), (False, False))
    return Site(edge.left, edge.left_at, edge.right, start, end, ghost, keep, usual, most)


def caps(
    ghost: Sequence[Point], gaps: tuple[float, float], own: tuple[bool, bool]
) -> tuple[tuple[float, float], tuple[float, float]]:
    """The usual and the steepest angles at the start and the end of a tab.

    `gaps` are the free angles on the paper beside the edge; `own` is True where the gap ends at the edge this tab will
    meet, which never carries a tab itself, so that all of it is free. Under the other face a tab takes half of each
    corner, and more of a narrow one, where a second tab under the same tip does no harm.
    """
    usual, most = [], []
    corners = inner_angle(ghost, 1), inner_angle(ghost, 0)
    for corner, gap, whole in zip(corners, gaps, own, strict=True):
        free = clear(gap)
        under = max(corner / 2, min(_SLIVER, 0.8 * corner))
        usual.append(min(_USUAL, under, free if whole else free / 2))
        most.append(min(_STEEPEST, clear(corner), free))
    return (usual[0], usual[1]), (most[0], most[1])


def rounded(shape: Sequence[Point], radius: float = 5.0) -> tuple[Point, ...]:
    """The tab with its two outer corners rounded, for small fingers. The radius shrinks to fit the tab (mm)."""
    first, a, b, last = shape
    limit = min(math.dist(first, a), math.dist(a, b), math.dist(b, last)) / 2
    out: list[Point] = [first]
    for before, corner, after in ((first, a, b), (a, b, last)):
        out += _arc(before, corner, after, radius, limit)
    return (*out, last)


def _arc(before: Point, corner: Point, after: Point, radius: float, limit: float) -> list[Point]:
    ux, uy = before[0] - corner[0], before[1] - corner[1]
    vx, vy = after[0] - corner[0], after[1] - corner[1]
    lu, lv = math.hypot(ux, uy), math.hypot(vx, vy)
    half = math.acos(max(-1.0, min(1.0, (ux * vx + uy * vy) / lu / lv))) / 2
    reach = min(radius / math.tan(half), 0.9 * limit)
    p = (corner[0] + ux / lu * reach, corner[1] + uy / lu * reach)
    q = (corner[0] + vx / lv * reach, corner[1] + vy / lv * reach)
    steps = 5
    out = []
    for k in range(steps + 1):
        t = k / steps
        w = (1 - t) ** 2, 2 * t * (1 - t), t * t
        out.append((w[0] * p[0] + w[1] * corner[0] + w[2] * q[0], w[0] * p[1] + w[1] * corner[1] + w[2] * q[1]))
    return out
