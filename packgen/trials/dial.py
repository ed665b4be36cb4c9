"""A horizontal sun dial for a place: hour angles, the style, and where its lines lie on a plate.

Lines follow tan X = sin(latitude) tan(15 degrees x hours from noon) (North American Sundial Society, FAQ); the style
stands over the noon line at the latitude's angle and points to the pole of the sky.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

_TILT = 23.44
"""The tilt of the Earth's axis in degrees, for the longest day."""


@dataclass(frozen=True, slots=True)
class HourLine:
    """One hour's line: the clock's hour (of 24), its angle from the noon line (clockwise positive), its ends in mm."""

    hour: int
    angle_deg: float
    start: tuple[float, float]
    end: tuple[float, float]


@dataclass(frozen=True, slots=True)
class Dial:
    """A dial to draw and cut: mm, y upwards from the plate's lower left corner.

    The top of the plate points to true north, or to true south where `southern`. `foot` is where the style meets the
    plate; `gnomon` is the upright triangle as (along the noon line from the foot, height) points.
    """

    width: float
    depth: float
    southern: bool
    style_deg: float
    foot: tuple[float, float]
    lines: tuple[HourLine, ...]
    gnomon: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class FlatGnomon:
    """The gnomon as it is cut from a sheet, in mm from the lower left of its place.

    Two mirror images of its triangle share the style, so that it is folded there, glued to a stiff double sheet, and
    stands on a tab to each side of the noon line. `halves` begin at the foot; `base` is how long it stands there.
    """

    base: float
    halves: tuple[tuple[tuple[float, float], ...], ...]
    tabs: tuple[tuple[tuple[float, float], ...], ...]
    style: tuple[tuple[float, float], tuple[float, float]]
    outline: tuple[tuple[float, float], ...]


def hour_angle(latitude: float, hour: float, offset: float = 0.0) -> float:
    """The angle in degrees of an hour's line from the line of the sun's noon, clockwise positive, from -180 to 180.

    `hour` is clock time (12 is noon); `offset` is the place's longitude less its time zone's, east positive. South of
    the equator the hours run the other way, so the angles change sign.
    """
    turned = math.radians(15 * (hour - 12) + offset)
    slope = math.sin(math.radians(latitude))
    return math.degrees(math.atan2(slope * math.sin(turned), math.cos(turned)))


def longest_half_day(latitude: float) -> float:
    """Hours from noon to sunset on the longest day; 12 where the sun does not set."""
    cosine = -math.tan(math.radians(min(abs(latitude), 89.9))) * math.tan(math.radians(_TILT))
    return 12.0 if cosine <= -1 else math.degrees(math.acos(cosine)) / 15


def dial(
    latitude: float, offset: float = 0.0, width: float = 180.0, depth: float = 180.0, margin: float = 12.0
) -> Dial:
    """A dial for a latitude on a plate of that size. Raises ValueError within 3 degrees of the equator.

    Every whole hour at which the sun can be up on the longest day gets a line. The gnomon's base is as long as the
    plate allows and its height at most two thirds of the plate's depth.
    """
    if abs(latitude) < 3:
        raise ValueError("so near the equator all hour lines of a flat dial fall on one another")
    foot = (width / 2, margin + (depth - 2 * margin) * 0.22)
    half = longest_half_day(latitude)
    hours = [h for h in range(24) if abs(h - 12 + offset / 15) <= half + 1e-9]
    lines = []
    for hour in hours:
        angle = hour_angle(latitude, hour, offset)
        start, end = _ends(foot, angle, width, depth, margin)
        lines.append(HourLine(hour, angle, start, end))
    slope = math.tan(math.radians(abs(latitude)))
    base = min(depth - margin - foot[1], 2 / 3 * depth / slope)
    gnomon = ((0.0, 0.0), (base, 0.0), (base, base * slope))
    return Dial(width, depth, latitude < 0, abs(latitude), foot, tuple(lines), gnomon)


def _ends(
    foot: tuple[float, float], angle_deg: float, width: float, depth: float, margin: float
) -> tuple[tuple[float, float], tuple[float, float]]:
    """A line from near the foot to the margin of the plate in a direction clockwise from straight up."""
    dx, dy = math.sin(math.radians(angle_deg)), math.cos(math.radians(angle_deg))
    room = []
    if abs(dx) > 1e-12:
        room.append(((width - margin if dx > 0 else margin) - foot[0]) / dx)
    if abs(dy) > 1e-12:
        room.append(((depth - margin if dy > 0 else margin) - foot[1]) / dy)
    reach = min(room)
    near = min(0.12 * depth, 0.5 * reach)
    return (foot[0] + near * dx, foot[1] + near * dy), (foot[0] + reach * dx, foot[1] + reach * dy)


def flat_gnomon(made: Dial, width: float, height: float, tab: float = 9.0) -> FlatGnomon:
    """The dial's gnomon laid flat, as large as fits a place of that size, and never larger than the dial's own."""
    found: FlatGnomon | None = None
    for turned in (False, True):
        share = next((k / 50 for k in range(50, 4, -1) if _fits(_flat(made, k / 50, tab, turned), width, height)), 0.1)
        flat = _flat(made, share, tab, turned)
        if found is None or flat.base > found.base + 1e-9:
            found = flat
    assert found is not None
    return found


def _fits(flat: FlatGnomon, width: float, height: float) -> bool:
    return max(x for x, _ in flat.outline) <= width and max(y for _, y in flat.outline) <= height


def _flat(made: Dial, share: float, tab: float, turned: bool) -> FlatGnomon:
    """The gnomon at a share of its size with the style level, or upright if turned."""
    angle = math.radians(made.style_deg)
    base = made.gnomon[1][0] * share
    foot, tip = (0.0, 0.0), (base / math.cos(angle), 0.0)
    heels = [(base * math.cos(angle), side * base * math.sin(angle)) for side in (-1.0, 1.0)]
    halves = tuple((foot, heel, tip) for heel in heels)
    tabs = tuple(_tab(heel, side, tab) for heel, side in zip(heels, (-1.0, 1.0), strict=True))
    outline = (*tabs[0], tip, *reversed(tabs[1][1:]))
    left, low = (min(p[0] for p in outline), min(p[1] for p in outline))
    high = max(p[1] for p in outline)

    def place(p: tuple[float, float]) -> tuple[float, float]:
        return (high - p[1], p[0] - left) if turned else (p[0] - left, p[1] - low)

    def places(points: tuple[tuple[float, float], ...]) -> tuple[tuple[float, float], ...]:
        return tuple(place(p) for p in points)

    return FlatGnomon(base, tuple(places(h) for h in halves), tuple(places(t) for t in tabs),
                      (place(foot), place(tip)), places(outline))  # fmt: skip


def _tab(heel: tuple[float, float], side: float, tab: float) -> tuple[tuple[float, float], ...]:
    """The tab along the edge from the foot to a heel, its ends slanted: foot, outer corners, heel."""
    long = math.hypot(*heel)
    dx, dy = heel[0] / long, heel[1] / long
    nx, ny = -side * dy, side * dx  # away from the triangle
    slant = min(0.7 * tab, 0.3 * long)
    near = (slant * dx + tab * nx, slant * dy + tab * ny)
    far = ((long - slant) * dx + tab * nx, (long - slant) * dy + tab * ny)
    return ((0.0, 0.0), near, far, heel)
