"""Outlines as arrays of points. Units: the long side of a picture is about 1000, x to the right, y down."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Points = Sequence[Sequence[float]] | Floats


def spline(points: Points, closed: bool = False, steps: int = 14) -> Floats:
    """A smooth line through the points (Catmull-Rom), closed or open."""
    p = np.asarray(points, float)
    ends = (p[-1:], p[:2]) if closed else (2 * p[:1] - p[1:2], 2 * p[-1:] - p[-2:-1])
    p = np.vstack([ends[0], p, ends[1]])
    t = np.linspace(0, 1, steps, endpoint=False)[:, None]
    parts = []
    for a, b, c, d in zip(p[:-3], p[1:-2], p[2:-1], p[3:], strict=True):
        parts.append(0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t**2 + (3 * b - a - 3 * c + d) * t**3))
    if not closed:
        parts.append(p[-2][None])
    return np.vstack(parts)


def blob(*points: Sequence[float]) -> Floats:
    """A closed smooth outline through the points."""
    return spline(points, closed=True)


def edges(*curves: Points) -> Floats:
    """An outline of smooth edges that meet at corners: each edge is the points it runs through."""
    return np.vstack([spline(c) if len(c) > 2 else np.asarray(c, float) for c in curves])


def shifted(points: Points, dx: float, dy: float) -> Floats:
    """The points moved."""
    return np.asarray(points, float) + np.array([dx, dy])


def oval(x: float, y: float, rx: float, ry: float, turn: float = 0.0, wobble: float = 0.0, seed: int = 0) -> Floats:
    """An ellipse, turned by `turn` degrees; `wobble` makes it uneven, as a hand would."""
    t = np.linspace(0, 2 * np.pi, 72, endpoint=False)
    r = np.ones_like(t)
    if wobble:
        rng = np.random.default_rng(seed)
        for k in range(2, 7):
            r += wobble / k * rng.normal() * np.cos(k * t + rng.uniform(0, 6.3))
    u, v = rx * r * np.cos(t), ry * r * np.sin(t)
    a = np.radians(turn)
    return np.column_stack([x + u * np.cos(a) - v * np.sin(a), y + u * np.sin(a) + v * np.cos(a)])


def box(left: float, top: float, right: float, bottom: float) -> Floats:
    """A rectangle."""
    return np.array([[left, top], [right, top], [right, bottom], [left, bottom]], float)


def ribbon(points: Points, widths: float | Sequence[float], smooth: bool = True) -> Floats:
    """The outline of a line whose full width runs through `widths` from end to end."""
    p = spline(points) if smooth and len(points) > 2 else np.asarray(points, float)
    w = np.atleast_1d(np.asarray(widths, float))
    along = np.linspace(0, 1, len(p))
    half = np.interp(along, np.linspace(0, 1, len(w)), w) / 2 if len(w) > 1 else np.full(len(p), w[0] / 2)
    d = np.gradient(p, axis=0)
    n = np.column_stack([-d[:, 1], d[:, 0]]) / np.maximum(np.hypot(d[:, 0], d[:, 1]), 1e-9)[:, None]
    return np.vstack([p + n * half[:, None], (p - n * half[:, None])[::-1]])


def arc(x: float, y: float, rx: float, ry: float, start: float, end: float, steps: int = 24) -> Floats:
    """Points of an elliptic arc from `start` to `end` degrees (0 right, 90 down)."""
    t = np.radians(np.linspace(start, end, steps))
    return np.column_stack([x + rx * np.cos(t), y + ry * np.sin(t)])


def ragged(points: Points, size: float, seed: int, every: float = 6.0) -> Floats:
    """The outline with a rough edge, as of leaves or rock."""
    p = np.asarray(points, float)
    p = np.vstack([p, p[:1]])
    out = []
    rng = np.random.default_rng(seed)
    for a, b in pairwise(p):
        n = max(1, int(np.hypot(*(b - a)) / every))
        out.append(a + (b - a) * np.linspace(0, 1, n, endpoint=False)[:, None])
    q = np.vstack(out)
    return np.asarray(q + rng.normal(0, size, q.shape))
