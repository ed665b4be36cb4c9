"""The tide chart: pen, ink and a thin wash on paper."""
# Points are set out by hand.
# fmt: off

from __future__ import annotations

from itertools import pairwise

import numpy as np
from PIL import Image

from .lettering import letter
from .shapes import arc, blob, box, oval, ragged, ribbon
from .surface import Array, Surface, blur, rgb

INK = "#2b2a3a"


def _pen(s: Surface, points: object, width: float = 1.3, alpha: float = 0.9, smooth: bool = True,
       ink: str = INK) -> None:
    p = np.asarray(points, float)
    rng = np.random.default_rng(int(abs(p.sum())) % 9973)
    parts = []
    for a, b in pairwise(p):
        n = max(1, int(np.hypot(*(b - a)) / 26))
        parts.append(a + (b - a) * np.linspace(0, 1, n, endpoint=False)[:, None])
    q = np.vstack([*parts, p[-1:]])
    q = q + rng.normal(0, 0.35, q.shape)
    widths = width * rng.uniform(0.75, 1.2, 6)
    s.fill(ribbon(q, widths.tolist(), smooth), ink, alpha=alpha, vary=0.2)


def _hatch(s: Surface, mask: Array, step: float, angle: float, width: float = 0.9, alpha: float = 0.6) -> None:
    """Pen hatching inside a mask."""
    a = np.radians(angle)
    along = s.x * np.sin(a) - s.y * np.cos(a) + (s.noise(60, seed=8) - 0.5) * 2.5
    line = np.clip(1.2 - np.abs(((along / step) % 1) - 0.5) * 2 * step / width * 0.9, 0, 1)
    s.tint(line * mask * alpha * (0.5 + 0.7 * s.noise(14, seed=9)), rgb(INK))


def _tide(day: Array | np.ndarray) -> np.ndarray:  # type: ignore[type-arg]
    """Height in feet, in the manner of real tides: two a day, large at full and new moon."""
    swing = 5.2 + 2.6 * np.cos(2 * np.pi * (day - 3.0) / 14.76)
    return np.asarray(9 + swing * np.cos(2 * np.pi * day / 0.5175))


def _moon(s: Surface, x: float, y: float, r: float, phase: float) -> None:
    s.fill(oval(x, y, r, r), "#f8f0d8", vary=0.02)
    turn = np.cos(2 * np.pi * phase)
    side = 1.0 if phase % 1 < 0.5 else -1.0
    t = np.linspace(-np.pi / 2, np.pi / 2, 30)
    limb = np.column_stack([x - side * r * np.cos(t), y + r * np.sin(t)])
    inner = np.column_stack([x + side * r * turn * np.cos(t), y + r * np.sin(t)])
    s.fill(np.vstack([limb, inner[::-1]]), "#3a3c58", alpha=0.85, vary=0.25)
    _pen(s, np.vstack([oval(x, y, r, r), oval(x, y, r, r)[:1]]), 1.1)


def _float_gauge(s: Surface, x: float, y: float) -> None:
    """Her machine: a float in a pipe, a cord over a wheel, a pen on a turning drum."""
    s.fill(box(x, y + 46, x + 34, y + 186), "#e8dcc0", vary=0.06)
    s.fill(box(x + 2, y + 120, x + 32, y + 186), "#8fb0b4", alpha=0.7, vary=0.15)
    for dx in (0.0, 34.0):
        _pen(s, [[x + dx, y + 46], [x + dx, y + 186]], 1.8)
    s.fill(blob([x + 6, y + 112], [x + 17, y + 104], [x + 28, y + 112], [x + 28, y + 126], [x + 17, y + 132],
           [x + 6, y + 126]), "#b86a48")
    _pen(s, np.vstack([oval(x + 17, y + 118, 12, 13), oval(x + 17, y + 118, 12, 13)[:1]]), 1.3)
    _pen(s, [[x + 17, y + 105], [x + 17, y + 30]], 0.9)
    for r in (24.0, 3.0):
        _pen(s, np.vstack([oval(x + 41, y + 26, r, r), oval(x + 41, y + 26, r, r)[:1]]), 1.5)
    for k in range(6):
        a = np.pi / 3 * k
        _pen(s, [[x + 41, y + 26], [x + 41 + 23 * np.cos(a), y + 26 + 23 * np.sin(a)]], 0.8, smooth=False)
    _pen(s, [[x + 65, y + 26], [x + 65, y + 92]], 0.9)
    s.fill(box(x + 59, y + 92, x + 71, y + 108), "#6f6a72")
    _pen(s, [[x + 59, y + 92], [x + 71, y + 92], [x + 71, y + 108], [x + 59, y + 108], [x + 59, y + 92]], 1.1,
           smooth=False)
    _pen(s, [[x + 71, y + 100], [x + 100, y + 100]], 1.4)
    s.fill(box(x + 100, y + 58, x + 160, y + 150), "#f5edd6", vary=0.03)
    s.fill(oval(x + 130, y + 58, 30, 9), "#e6d8b4")
    _pen(s, np.vstack([oval(x + 130, y + 58, 30, 9), oval(x + 130, y + 58, 30, 9)[:1]]), 1.2)
    _pen(s, arc(x + 130, y + 150, 30, 9, 0, 180), 1.2)
    for dx in (100.0, 160.0):
        _pen(s, [[x + dx, y + 58], [x + dx, y + 150]], 1.4)
    t = np.linspace(0, 1, 60)
    _pen(s, np.column_stack([x + 101 + 57 * t, y + 104 + 22 * np.cos(t * 15)]), 1.2, ink="#8c3a34")
    _pen(s, [[x + 130, y + 159], [x + 130, y + 186]], 2)
    _pen(s, [[x - 14, y + 187], [x + 176, y + 187]], 1.8)
    _hatch(s, s.mask(box(x + 136, y + 62, x + 159, y + 152), 2), 5, 62, alpha=0.45)


def _rose(s: Surface, x: float, y: float, r: float) -> None:
    for ring in (r, r * 0.93, r * 0.56):
        _pen(s, np.vstack([oval(x, y, ring, ring), oval(x, y, ring, ring)[:1]]), 1.0)
    for k in range(16):
        a = np.pi / 8 * k - np.pi / 2
        long = r * (1.0 if k % 4 == 0 else 0.8 if k % 2 == 0 else 0.56)
        tip = np.array([x + long * np.cos(a), y + long * np.sin(a)])
        for side in (-1, 1):
            b = a + side * np.pi / 16
            foot = np.array([x + r * 0.17 * np.cos(b), y + r * 0.17 * np.sin(b)])
            s.fill([[x, y], tip, foot], "#3c4a66" if side > 0 else "#f3e8cc", alpha=0.95)
            _pen(s, [tip, foot], 0.8, smooth=False)
        _pen(s, [[x, y], tip], 0.7, smooth=False)
    for k in range(72):
        a = np.pi / 36 * k
        _pen(s, [[x + r * 0.93 * np.cos(a), y + r * 0.93 * np.sin(a)], [x + r * np.cos(a), y + r * np.sin(a)]], 0.7,
               smooth=False)
    for name, dx, dy in (("N", 0, -r - 6), ("E", r + 12, 6), ("S", 0, r + 18), ("W", -r - 12, 6)):
        letter(s, name, x + dx, y + dy, 13, INK, centred=True)


def _lamp_house(s: Surface, x: float, y: float, k: float) -> None:
    body = np.array([[-22, 0], [-18, -84], [18, -84], [22, 0], [-22, 0]]) * k + (x, y)
    s.fill(body, "#f4ead2", vary=0.02)
    _hatch(s, s.mask(np.array([[4, 0], [3, -84], [18, -84], [22, 0]]) * k + (x, y)), 3.4, 35, alpha=0.7)
    _pen(s, body, 1.4, smooth=False)
    for line in ([[-26, -84], [26, -84]], [[-24, -96], [24, -96]], [[-6, 0], [-5, -83]], [[7, 0], [6, -83]]):
        _pen(s, np.array(line, float) * k + (x, y), 1.0, smooth=False)
    for dx in range(-24, 25, 6):
        _pen(s, np.array([[dx, -84], [dx, -96]], float) * k + (x, y), 0.7, smooth=False)
    s.fill(np.array([[-13, -116], [13, -116], [13, -96], [-13, -96]], float) * k + (x, y), "#f0cf7a", alpha=0.8)
    for dx in (-13, -4, 4, 13):
        _pen(s, np.array([[dx, -96], [dx, -116]], float) * k + (x, y), 0.9, smooth=False)
    s.fill(np.array([[-17, -116], [17, -116], [0, -134]], float) * k + (x, y), "#a8564a", alpha=0.85)
    _pen(s, np.array([[-17, -116], [17, -116], [0, -134], [-17, -116]], float) * k + (x, y), 1.2, smooth=False)
    for sweep in (-24, -12, 0, 12):
        a = np.radians(sweep + 6)
        for side in (-1, 1):
            start, end = 22 * k, (58 + abs(sweep)) * k
            _pen(s, [[x + side * start * np.cos(a), y - 106 * k + start * np.sin(a)],
                     [x + side * end * np.cos(a), y - 106 * k + end * np.sin(a)]], 0.7, 0.6, False)
    s.fill(np.array([[-4, 0], [-4, -18], [0, -22], [5, -18], [5, 0]], float) * k + (x, y), "#5c4a44", alpha=0.9)
    rock = ragged([[x - 60 * k, y + 22 * k], [x - 40 * k, y], [x + 40 * k, y], [x + 66 * k, y + 22 * k]], 1.2, 4, 7)
    s.fill(rock, "#d8ccb0", vary=0.1)
    _hatch(s, s.mask(rock), 4, -50, alpha=0.5)
    _pen(s, rock[: len(rock) * 3 // 4], 1.1)


def tides_at_saltmere(pixels: int) -> Image.Image:
    """Tides at Saltmere: two weeks of tides drawn as one line, her machine, a compass rose and the lamp house."""
    s = Surface(1000, 700, pixels, seed=51)
    _paper(s)
    for inset, width in ((26, 2.2), (34, 0.9)):
        _pen(s, [[inset, inset], [1000 - inset, inset], [1000 - inset, 700 - inset], [inset, 700 - inset],
               [inset, inset]], width, smooth=False)
    letter(s, "TIDES AT SALTMERE", 516, 86, 31, INK, 3.2, centred=True)
    letter(s, "FOURTEEN DAYS IN MARCH 1864", 530, 116, 13.5, INK, centred=True)
    left, right, base, per_foot = 96.0, 940.0, 400.0, 11.6
    day = np.linspace(0, 14, 840)
    x = left + (right - left) * day / 14
    y = base - per_foot * _tide(day)
    _scales(s, left, right, base, per_foot)
    wash = np.zeros_like(s.x)
    depth = np.interp(s.x, x, y).astype(np.float32)
    wash[(s.y > depth) & (s.y < base) & (s.x > left) & (s.x < right)] = 1
    edge = np.clip(blur(wash, 2) * (1.2 - blur(wash, 5)) * 2.4, 0, 1)
    s.px *= 1 - (wash * (0.30 + 0.3 * s.noise(90, 2, 4, seed=12)) + 0.35 * edge * wash)[...,
           None] * (1 - rgb("#5d9aa8"))
    s.fill(ribbon(np.column_stack([x, y]), 1.9, False), INK, alpha=0.92, vary=0.15)
    _pen(s, [[left, 172], [left, base], [right, base]], 1.9, smooth=False)
    letter(s, "FEET", left - 48, 173, 10.5, INK)
    letter(s, "DAYS", 940 - 34, base + 36, 10.5, INK)
    top = int(np.argmin(y))
    _pen(s, [[x[top] + 4, y[top] - 3], [x[top] + 20, y[top] - 12]], 0.9)
    _float_gauge(s, 128, 448)
    letter(s, "MY MACHINE", 214, 658, 12, INK, centred=True)
    _lamp_house(s, 448, 604, 1.16)
    for row, words in enumerate(("THE LAMP HOUSE", "AS I MEAN TO", "BUILD IT")):
        letter(s, words, 536, 520 + 19 * row, 10, INK)
    t = np.linspace(320, 610, 40)
    for row in range(4):
        _pen(s, np.column_stack([t, 634 + 7 * row + 2.4 * np.sin(t / 9 + row * 2)]), 1.0, 0.7)
    _rose(s, 790, 548, 74)
    letter(s, "I. QUENBY", 866, 656, 12, INK)
    fibres = 1 + 0.030 * (s.noise(5, 3, 3, seed=20) - 0.5) + 0.03 * (s.noise(3, 1, 2, seed=21) - 0.5)
    s.px *= fibres[..., None]
    return Image.fromarray((np.clip(s.px, 0, 1) * 255).astype(np.uint8))


def _paper(s: Surface) -> None:
    """Old paper: its tone, two folds, two rings of a cup."""
    s.px[:] = rgb("#efe3c6")
    s.tint(s.noise(240, octaves=5, seed=2, contrast=1.6) * 0.25, "#d8bf8e")
    s.tint(np.clip(np.hypot((s.x - 500) / 560, (s.y - 350) / 400) - 0.78, 0, 1) * 0.9, "#b08a58")
    for x, y, r in ((880, 90, 46), (120, 610, 30)):
        ring = np.exp(-(((np.hypot(s.x - x, s.y - y) - r) / 3) ** 2)) * s.noise(50, seed=5)
        s.tint(ring * 0.28, "#8a6438")
    for x in (334, 667):
        s.tint(np.exp(-(((s.x - x) / 2.2) ** 2)) * 0.22, "#9a7c50")


def _scales(s: Surface, left: float, right: float, base: float, per_foot: float) -> None:
    """Days, feet and moons round the curve."""
    for k in range(15):
        px = left + (right - left) * k / 14
        _pen(s, [[px, 178], [px, base]], 0.6, 0.38, False)
        if k < 14:
            letter(s, str(k + 1), px + (right - left) / 28, base + 17, 10.5, INK, centred=True)
    for feet in range(0, 19, 3):
        py = base - per_foot * feet
        _pen(s, [[left, py], [right, py]], 0.6, 0.38, False)
        letter(s, str(feet), left - 26, py + 4.5, 10.5, INK)
    for k, label in ((1, "NEW"), (8.4, "HALF")):
        letter(s, label, left + (right - left) * (k + 0.5) / 14, 136, 9, INK, centred=True)
    for k in range(14):
        px = left + (right - left) * (k + 0.5) / 14
        _moon(s, px, 152, 10, (k - 1.0) / 29.5)
