"""Letters as skeletons: the strokes a child writes, read from strokes.py, and the geometry of lines of dots along them.

Everything is in x-heights: the small letters are 1 high. Accents are put together from Unicode's own decomposition.
"""

from __future__ import annotations

import itertools
import math
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache

from packgen.page import strokes_more as more
from packgen.page.marks import Point
from packgen.page.strokes import CAPITALS, FIGURES, MARKS, SIDES, SMALL

# A segment is two points (straight) or four (a cubic Bezier curve).
Segment = tuple[Point, ...]
Strokes = tuple[tuple[Segment, ...], ...]

_STEPS = 14
_CORNER = math.cos(math.radians(32))
_TALL_CARON = "dtlL"
_COMMA_BELOW = "kKlLnNrRG"
# A stroke shorter than this is a mere point, like the dot on an i.
_POINT = 0.05
# Nearer than this part of their distance, two dots would make a blot: the later one is left out.
_BLOT = 0.62


@dataclass(frozen=True, slots=True)
class Skeleton:
    """A letter as strokes in x-heights, from x = 0: its width, and the room its left and right sides want.

    The first `marked` strokes are worth showing where they start; accents and punctuation are not.
    """

    strokes: Strokes
    width: float
    left: float
    right: float
    marked: int = 0

    @property
    def advance(self) -> float:
        """The width with the room on both sides."""
        return self.left + self.width + self.right


def _arc(cx: float, cy: float, rx: float, ry: float, start: float, end: float) -> list[Segment]:
    """An elliptic arc as cubic curves of at most a quarter turn each (handles 4/3 tan(a/4), as usual)."""
    count = max(1, math.ceil(abs(end - start) / 90 - 1e-9))
    step = math.radians((end - start) / count)
    k = 4 / 3 * math.tan(step / 4)
    found: list[Segment] = []
    for n in range(count):
        a, b = math.radians(start) + n * step, math.radians(start) + (n + 1) * step
        ca, sa, cb, sb = math.cos(a), math.sin(a), math.cos(b), math.sin(b)
        unit = ((ca, sa), (ca - k * sa, sa + k * ca), (cb + k * sb, sb - k * cb), (cb, sb))
        found.append(tuple((cx + rx * x, cy + ry * y) for x, y in unit))
    return found


def _read_stroke(text: str) -> tuple[Segment, ...]:
    """The segments of one stroke in the notation of strokes.py."""
    groups: list[tuple[str, list[float]]] = []
    for token in text.split():
        if token.isalpha():
            groups.append((token, []))
        else:
            groups[-1][1].append(float(token))
    found: list[Segment] = []
    here = (0.0, 0.0)
    for name, n in groups:
        if name == "M":
            here = (n[0], n[1])
        elif name == "L":
            for x, y in zip(n[::2], n[1::2], strict=True):
                found.append((here, (x, y)))
                here = (x, y)
        elif name == "C":
            found.append((here, (n[0], n[1]), (n[2], n[3]), (n[4], n[5])))
            here = (n[4], n[5])
        else:
            found.extend(_arc(*n))
            here = found[-1][-1]
    return tuple(found)


def read_strokes(text: str) -> Strokes:
    """The strokes of a letter in the notation of strokes.py."""
    return tuple(_read_stroke(part) for part in text.split(";"))


def moved(strokes: Iterable[tuple[Segment, ...]], dx: float, dy: float) -> Strokes:
    """Strokes moved by (dx, dy)."""
    return tuple(tuple(tuple((x + dx, y + dy) for x, y in seg) for seg in stroke) for stroke in strokes)


def bounds(strokes: Iterable[tuple[Segment, ...]]) -> tuple[float, float, float, float]:
    """Left, bottom, right and top of the strokes."""
    xs, ys = zip(*(point for stroke in strokes for seg in stroke for point in _flat(seg)), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _flat(segment: Segment) -> list[Point]:
    """Points along a segment, both ends included."""
    if len(segment) == 2:
        return list(segment)
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = segment
    found = []
    for n in range(_STEPS + 1):
        t = n / _STEPS
        a, b, c, d = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3
        found.append((a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3))
    return found


@cache
def skeleton(letter: str) -> Skeleton | None:
    """The strokes of a letter (a base letter with its accents counts as one), or None if there are none for it."""
    table = {**SMALL, **CAPITALS, **FIGURES, **MARKS, **more.SPECIAL}
    if letter in table:
        strokes = read_strokes(table[letter][2:])
        return _built(table[letter][:2], strokes, 0 if letter in MARKS else len(strokes))
    base, accents = parted(letter)
    if not accents or base not in table:
        return None
    source = {"i": "ı", "j": "ȷ"}.get(base, base) if any(a in more.ABOVE for a in accents) else base
    strokes = read_strokes(table[source][2:])
    added = accents_on(base, strokes, accents)
    return _built(table[base][:2], strokes + added.strokes, len(strokes)) if added else None


def parted(letter: str) -> tuple[str, str]:
    """A letter's base and its accents (combining marks), by Unicode's canonical decomposition."""
    whole = unicodedata.normalize("NFD", letter)
    return whole[0], whole[1:]


@dataclass(frozen=True, slots=True)
class Accents:
    """The strokes of a letter's accents, and whether one stands over the letter, where an i has its dot."""

    strokes: Strokes
    above: bool


def accents_on(base: str, letter: Strokes, accents: str) -> Accents | None:
    """The accents in their places on a letter's strokes, the later over the earlier; None if one is not known."""
    found: Strokes = ()
    for accent in accents:
        added = _accent(accent, base, letter + found, letter)
        if added is None:
            return None
        found += added
    return Accents(found, any(accent in more.ABOVE for accent in accents))


def _built(sides: str, strokes: Strokes, marked: int) -> Skeleton:
    left, _, right, _ = bounds(strokes)
    return Skeleton(moved(strokes, -left, 0.0), right - left, SIDES[sides[0]], SIDES[sides[1]], marked)


def _accent(mark: str, base: str, so_far: Strokes, letter: Strokes) -> Strokes | None:
    """The strokes of an accent at its place on a letter, over accents already there; None if it is not known."""
    left, _, right, top = bounds(letter)
    middle = (left + right) / 2
    if mark == "\u030c" and base in _TALL_CARON:
        return moved(read_strokes(more.BESIDE_TALL), (right if base != "L" else middle) + 0.14, 2.0)
    if mark == "\u0328":
        return moved(read_strokes(more.OGONEK), right - 0.08, 0.0)
    if mark == "\u031b":
        return moved(read_strokes(more.HORN), right, top - 0.06)
    if mark == "\u0327" and base == "g":
        return moved(read_strokes(more.OVER_G), middle, top + 0.2)
    if mark == "\u0327" and base in _COMMA_BELOW:
        return moved(read_strokes(more.BELOW["\u0326"]), middle, 0.0)
    if mark in more.BELOW:
        return moved(read_strokes(more.BELOW[mark]), middle, 0.0)
    if mark in more.ABOVE:
        over = max(top, bounds(so_far)[3])
        return moved(read_strokes(more.ABOVE[mark]), middle, over + (0.24 if top < 1.9 else 0.14))
    return None


@cache
def dots(known: Skeleton, spacing: float) -> tuple[Point, ...]:
    """The dots of a letter, about `spacing` apart: one on every end and corner, none on top of another."""
    found: list[Point] = []
    drawn = [run for stroke in known.strokes for run in runs(stroke) if length(run) > _POINT]
    for pick_ends in (True, False):
        for run in drawn:
            places = _spaced(run, spacing)
            for dot in (places[0], places[-1]) if pick_ends else places[1:-1]:
                if all(math.dist(dot, other) > _BLOT * spacing for other in found):
                    found.append(dot)
    return tuple(found)


def points(known: Skeleton) -> list[Point]:
    """The strokes of a letter that are mere points, like the dot on an i."""
    return [stroke[0][0] for stroke in known.strokes if len(stroke) == 1 and length(stroke[0]) <= _POINT]


def runs(stroke: Sequence[Segment]) -> list[list[Point]]:
    """A stroke as lines of points, parted at its corners."""
    found: list[list[Point]] = []
    for segment in stroke:
        line = _flat(segment)
        if found and _smooth(found[-1], line):
            found[-1].extend(line[1:])
        else:
            found.append(line)
    return found


def _smooth(before: Sequence[Point], after: Sequence[Point]) -> bool:
    """True if one line of points goes on into the next without a corner."""
    (ax, ay), (bx, by) = before[-2], before[-1]
    (cx, cy), (dx, dy) = after[0], after[1]
    long = math.hypot(bx - ax, by - ay) * math.hypot(dx - cx, dy - cy)
    return long > 0 and ((bx - ax) * (dx - cx) + (by - ay) * (dy - cy)) / long > _CORNER


def _spaced(line: Sequence[Point], spacing: float) -> list[Point]:
    """Points at equal distances along a line, its ends included."""
    long = length(line)
    count = max(1, round(long / spacing))
    return [along(line, long * k / count)[0] for k in range(count + 1)]


def along(line: Sequence[Point], far: float) -> tuple[Point, Point]:
    """The point `far` along a line, and the direction there (length 1)."""
    for (ax, ay), (bx, by) in itertools.pairwise(line):
        step = math.hypot(bx - ax, by - ay)
        if step and far <= step + 1e-9:
            t = far / step
            return (ax + t * (bx - ax), ay + t * (by - ay)), ((bx - ax) / step, (by - ay) / step)
        far -= step
    (ax, ay), (bx, by) = line[-2], line[-1]
    step = math.hypot(bx - ax, by - ay) or 1.0
    return (bx, by), ((bx - ax) / step, (by - ay) / step)


def clear(run: Sequence[Point], others: Sequence[Point]) -> float:
    """How far along a line an arrow head stands: as near its start as leaves it clear of other strokes."""
    most = min(0.8, length(run) - 0.12)
    tries = [0.34 + 0.04 * k for k in range(12) if 0.34 + 0.04 * k <= most] or [most]

    def room(far: float) -> float:
        return min((math.dist(along(run, far)[0], other) for other in others), default=1.0)

    return next((far for far in tries if room(far) > 0.2), max(tries, key=room))


def dense(stroke: Sequence[Segment]) -> list[Point]:
    """Points close together along a stroke."""
    return [point for run in runs(stroke) for point in _spaced(run, 0.06)]


def length(line: Sequence[Point]) -> float:
    """The length of a line of points."""
    return sum(math.dist(a, b) for a, b in itertools.pairwise(line))
