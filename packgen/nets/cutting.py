"""Where to cut, and where letters and names stand on a piece."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import pairwise

import shapely

from packgen.nets.net import Cut, FlatFace, Hinge, Joint, Letter, Segment, Tab
from packgen.nets.plane import shape
from packgen.nets.tabs import distance
from packgen.nets.vectors import Point

_GRAIN = 1e-4
"""Points nearer than this (mm) are the same place on the paper."""
LETTER_INSET = 1.7
"""How far inside its edge (mm) the middle of a glue letter stands: it shows on the model, so it hugs the seam."""


def _key(p: Point) -> tuple[int, int]:
    return round(p[0] / _GRAIN), round(p[1] / _GRAIN)


def cuts_of(faces: Iterable[FlatFace], hinges: Iterable[Hinge], tabs: Iterable[Tab]) -> tuple[Cut, ...]:
    """The cuts of a piece: every edge of a face where it is no fold and carries no tab, and the tabs' outer sides."""
    tabs = tuple(tabs)
    kept = {_pair(h.start, h.end) for h in hinges}
    kept |= {_pair(a, b) for t in tabs for a, b in pairwise(t.hinge)}
    short = [t.hinge for t in tabs if len(t.hinge) == 2]
    segments: dict[tuple[tuple[int, int], tuple[int, int]], Segment] = {}
    for face in faces:
        for a, b in zip(face.points, (*face.points[1:], face.points[0]), strict=True):
            if _pair(a, b) in kept:
                continue
            on = [h for h in short if all(distance(p, a, b) < _GRAIN for p in h)]
            for piece in [(a, on[0][0]), (on[0][1], b)] if on else [(a, b)]:
                if _key(piece[0]) != _key(piece[1]):
                    segments.setdefault(_pair(*piece), piece)
    for tab in tabs:
        for a, b in pairwise(tab.outer):
            segments.setdefault(_pair(a, b), (a, b))
    return chained(list(segments.values()))


def _pair(a: Point, b: Point) -> tuple[tuple[int, int], tuple[int, int]]:
    one, two = _key(a), _key(b)
    return (one, two) if one <= two else (two, one)


def chained(segments: Sequence[Segment]) -> tuple[Cut, ...]:
    """The segments joined end to end into lines as long as possible."""
    ends: dict[tuple[int, int], list[int]] = {}
    for i, (a, b) in enumerate(segments):
        ends.setdefault(_key(a), []).append(i)
        ends.setdefault(_key(b), []).append(i)
    unused = set(range(len(segments)))
    odd = [i for i in range(len(segments)) if any(len(ends[_key(p)]) != 2 for p in segments[i])]
    out: list[Cut] = []
    for start in (*odd, *range(len(segments))):
        if start not in unused:
            continue
        a, b = segments[start]
        if len(ends[_key(a)]) == 2 and len(ends[_key(b)]) != 2:
            a, b = b, a
        unused.discard(start)
        line = [a, b]
        while len(ends[_key(line[-1])]) == 2:
            onward = [i for i in ends[_key(line[-1])] if i in unused]
            if not onward:
                break
            unused.discard(onward[0])
            a, b = segments[onward[0]]
            line.append(b if _key(a) == _key(line[-1]) else a)
        closed = len(line) > 3 and _key(line[0]) == _key(line[-1])
        out.append(Cut(tuple(line[:-1] if closed else line), closed))
    return tuple(out)


def face_label(points: Sequence[Point]) -> Point:
    """A point well inside a face for its name: its middle if that lies inside, else the one farthest from its edges."""
    whole = shape(points)
    middle = whole.centroid
    circle = shapely.maximum_inscribed_circle(whole)
    if whole.contains(middle) and whole.exterior.distance(middle) > 0.7 * circle.length:
        return (middle.x, middle.y)
    return (circle.coords[0][0], circle.coords[0][1])


def letter_places(
    joint: Joint, part: int, faces: dict[int, tuple[Point, ...]], tabs: Sequence[Tab], inset: float = LETTER_INSET
) -> list[Letter]:
    """A joint's letters on one piece: in the middle of its tab, and `inset` mm inside the edge that meets it."""
    out = []
    if joint.tab.part == part:
        tab = next(t for t in tabs if t.letter == joint.letter)
        start, end = tab.hinge[0], tab.hinge[-1]
        tips = tab.outer[1:-1]
        x = sum(p[0] for p in tips) / len(tips)
        y = sum(p[1] for p in tips) / len(tips)
        at = ((x + (start[0] + end[0]) / 2) / 2, (y + (start[1] + end[1]) / 2) / 2)
        turn = math.degrees(math.atan2(end[1] - start[1], end[0] - start[0]))
        out.append(Letter(joint.letter, at, turn, "tab", tip_of(tab)))
    if joint.edge.part == part and joint.edge.source in faces:
        out.append(edge_letter(joint.letter, joint.edge.points, inset))
    return out


def tip_of(tab: Tab) -> float:
    """How far (mm) a letter in the middle of a tab may move either way along it."""
    tips = tab.outer[1:-1]
    return 0.4 * math.dist(tips[0], tips[-1]) if len(tips) > 1 else 0.0


def edge_letter(text: str, line: Sequence[Point], inset: float = LETTER_INSET) -> Letter:
    """A glue letter `inset` mm inside an edge that runs anticlockwise round its face."""
    (ax, ay), (bx, by) = line[0], line[-1]
    x, y = line[len(line) // 2] if len(line) > 2 else ((ax + bx) / 2, (ay + by) / 2)
    size = math.hypot(bx - ax, by - ay)
    at = (x - (by - ay) / size * inset, y + (bx - ax) / size * inset)
    return Letter(text, at, math.degrees(math.atan2(by - ay, bx - ax)), "edge", 0.3 * size)
