"""Faces and hands, large enough to look back at you. Drawn around (0, 0); a head is about 220 units high."""
# Points are set out by hand.
# fmt: off

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from .shapes import Floats, blob, edges, oval, ribbon
from .surface import Surface, mix


@dataclass(frozen=True, slots=True)
class Face:
    """What a face is like. `turn` -1 looks left, 1 right; `light` is the direction of the light in degrees."""

    skin: str = "#e2ab86"
    eyes: str = "#5b6f78"
    brows: str = "#5a3f30"
    lips: str = "#b25a50"
    turn: float = 0.4
    light: float = 20
    shade: str = "#5a3444"
    glow: str = "#ffe0a8"
    lowered: bool = False
    smile: float = 0.5
    age: float = 0.2
    jaw: float = 1.0


def _across(f: Face, x: float) -> float:
    """Where a feature `x` right of the middle lies when the head is turned."""
    far = np.sign(x) == np.sign(f.turn)
    return x * (1 - 0.2 * abs(f.turn) * (1 if far else -0.15)) + 17 * f.turn


def _eye(s: Surface, f: Face, side: int) -> None:
    x, y = _across(f, side * 33.0), -8.0
    w = 17.5 * (1 - 0.18 * abs(f.turn) * (side == np.sign(f.turn)))
    s.fill(oval(x, y - 2, w * 1.5, 16), f.shade, alpha=0.30, soft=6)
    dark = "#38242c"
    if f.lowered:
        s.fill(edges([[x - w, y + 1], [x, y - 9], [x + w, y + 1]], [[x + w, y + 1], [x, y + 8], [x - w, y + 1]]),
               mix(f.skin, f.shade, 0.12), fine=1)
        s.fill(ribbon([[x - w, y + 2], [x, y + 8.5], [x + w, y + 2]], [1.2, 3.6, 1.2]), dark, fine=1)
        s.fill(ribbon([[x - w, y - 3], [x, y - 10], [x + w, y - 3]], [0.5, 1.8, 0.5]), f.shade, alpha=0.7, fine=1)
    else:
        shape = edges([[x - w, y + 3], [x - 2, y - 8], [x + w, y + 1]], [[x + w, y + 1], [x + 1, y + 8.5],
               [x - w, y + 3]])
        s.fill(shape, mix("#efe4d6", f.shade, 0.12), fine=1, vary=0)
        inside = s.mask(s._placed(shape))
        look = x + 3.5 * f.turn
        s.fill(oval(look, y - 0.5, 9, 9.4), mix(f.eyes, "#181420", 0.45), fine=1, vary=0, clip=inside)
        s.fill(oval(look + 0.6, y + 1, 7, 7), f.eyes, fine=1, vary=0.15, clip=inside)
        s.fill(oval(look, y - 0.5, 4.1, 4.4), "#120e16", fine=1, clip=inside)
        s.fill(oval(x, y - 9.5, w, 5), "#3a2430", alpha=0.45, soft=1.5, clip=inside)
        gx = look + 3.2 * np.cos(np.radians(f.light))
        s.fill(oval(float(gx), y - 3.4, 2.1, 2.3), "#fffaf0", fine=1)
        s.fill(ribbon([[x - w - 1, y + 3], [x - 2, y - 8.2], [x + w + 1.5, y]], [1.4, 4.4, 1.8]), dark, fine=1)
        s.fill(ribbon([[x - w, y + 3.5], [x + 1, y + 9], [x + w, y + 1.5]], [0.6, 1.5, 0.6]), f.shade, alpha=0.7,
               fine=1)
        s.fill(ribbon([[x - w, y - 6], [x - 2, y - 15.5], [x + w, y - 8]], [0.5, 2, 0.6]), f.shade, alpha=0.55, fine=1)
    if f.age > 0.4:
        for k in (0, 1):
            s.fill(ribbon([[x - w * 0.8, y + 15 + 4 * k], [x, y + 19 + 4 * k], [x + w * 0.9, y + 13 + 4 * k]],
                   [0.4, 1.6, 0.4]),
                   f.shade, alpha=0.35 * f.age, fine=1)
    bx = _across(f, side * 35.0)
    inner, outer = (bx - side * 20, y - 20.5), (bx + side * 20, y - 18.0)
    s.fill(ribbon([inner, (bx - side * 2, y - 26), (bx + side * 10, y - 25), outer], [4.6, 5.4, 4, 1.4]), f.brows,
           alpha=0.9, fine=1, vary=0.2)


def _nose(s: Surface, f: Face) -> None:
    x = 17 * f.turn * 1.35
    lit = 1.0 if np.cos(np.radians(f.light)) >= 0 else -1.0
    s.fill(blob([x * 0.5 - lit * 7, -18], [x * 0.8 - lit * 11, 8], [x - lit * 15, 30], [x - lit * 3, 34],
           [x * 0.8 - lit * 3, 6]),
           f.shade, alpha=0.38, soft=3.2)
    s.fill(ribbon([[x * 0.6 + lit * 1, -22], [x * 0.8 + lit * 2, 6], [x + lit * 2, 26]], [4, 6, 9]), f.glow,
           alpha=0.42, soft=2.4)
    s.fill(oval(x, 29, 12.5, 9.5), f.skin, alpha=0.85, soft=2.5, form=(f.light, 0.5, 4), fine=0.9)
    s.fill(oval(x + lit * 3, 26, 4, 3.4), "#fff3dc", alpha=0.6, soft=1.5)
    for side in (-1, 1):
        s.fill(oval(x + side * 6.2, 36, 3.6, 2.1, side * 12), "#5c2c2c", alpha=0.85, fine=1)
        wing = [[x + side * 9, 22], [x + side * 14, 30], [x + side * 11, 37]]
        s.fill(ribbon(wing, [0.6, 2.2, 1.4]), f.shade, alpha=0.5 if side * lit < 0 else 0.3, fine=1)
    s.fill(blob([x - 13, 38], [x, 41], [x + 13, 38], [x + 6 - lit * 4, 48], [x - 6 - lit * 4, 48]), f.shade,
           alpha=0.28, soft=3)


def _mouth(s: Surface, f: Face) -> None:
    x, y, up = 17 * f.turn * 1.05, 60.0, 5.5 * f.smile
    w = 23.0
    s.fill(edges([[x - w, y - up], [x - 10, y - 6], [x - 4, y - 7.5], [x, y - 5.8], [x + 4, y - 7.5], [x + 10, y - 6],
           [x + w, y - up]],
                 [[x + w, y - up], [x + 9, y + 1.5], [x, y + 1.2], [x - 9, y + 1.5], [x - w, y - up]]),
           mix(f.lips, "#4a1c28", 0.28), fine=1, vary=0.1)
    s.fill(edges([[x - w + 3, y - up + 1], [x, y + 1.5], [x + w - 3, y - up + 1]], [[x + w - 3, y - up + 1],
           [x + 10, y + 9],
                 [x, y + 11], [x - 10, y + 9], [x - w + 3, y - up + 1]]), f.lips, fine=1, vary=0.1, form=(-90, 0.3, 4))
    s.fill(ribbon([[x - w - 1, y - up - 0.5], [x - 8, y + 1.4], [x, y + 0.6], [x + 8, y + 1.4],
           [x + w + 1, y - up - 0.5]],
                  [1.2, 2.2, 1.6, 2.2, 1.2]), "#4e1f2a", alpha=0.85, fine=1)
    s.fill(oval(x + 4, y + 6, 7, 2), "#ffe0cc", alpha=0.5, soft=1.2)
    s.fill(oval(x, y + 17, 16, 4.5), f.shade, alpha=0.3, soft=3)
    for side in (-1, 1):
        s.fill(oval(x + side * (w + 4), y - up, 3.5, 5), f.shade, alpha=0.3, soft=2)
        if f.age > 0.15:
            fold = [[x + side * 17, 33], [x + side * 27, 46], [x + side * 29, 58]]
            s.fill(ribbon(fold, [0.8, 2.4, 0.8]), f.shade, alpha=0.2 + 0.35 * f.age, soft=0.8)


def face(s: Surface, f: Face) -> None:
    """A face from brow to chin, with neck; hair and clothes come after."""
    lit = float(np.cos(np.radians(f.light)))
    s.fill(edges([[-32, 60], [-34, 110], [-52, 140]], [[-52, 140], [0, 152], [52, 140]], [[52, 140], [34, 110],
           [32, 60]]),
           mix(f.skin, f.shade, 0.18), fine=0.7, form=(f.light, 0.6, 14), lights=(f.glow, f.shade), flow=80)
    s.fill(blob([-34, 78], [0, 100], [34, 78], [36, 104], [6 - lit * 10, 124], [-36, 108]), f.shade, alpha=0.5, soft=6)
    j = f.jaw
    outline: Floats = blob([0, -110], [50, -98], [74, -52], [73, 0], [64 * j, 44], [40 * j, 84], [14, 101],
           [-14, 101], [-40 * j, 84],
                           [-64 * j, 44], [-73, 0], [-74, -52], [-50, -98])
    s.fill(outline, f.skin, fine=0.8, form=(f.light, 0.75, 26), lights=(f.glow, f.shade), flow=80, vary=0.06)
    inside = s.mask(s._placed(outline), 1.5)
    off = -1.0 if lit >= 0 else 1.0
    s.fill(blob([off * 40, -96], [off * 78, -40], [off * 78, 30], [off * 48, 92], [off * 34, 60], [off * 44, 10],
           [off * 36, -40]),
           f.shade, alpha=0.62, soft=13, clip=inside)
    s.fill(oval(-off * 30 + 10 * f.turn, -64, 34, 22), f.glow, alpha=0.38, soft=10, clip=inside)
    for side in (-1, 1):
        s.fill(oval(_across(f, side * 40), 30, 20, 15), mix(f.lips, f.skin, 0.35), alpha=0.5, soft=8, clip=inside)
    s.fill(oval(_across(f, -off * 42), 22, 15, 9), f.glow, alpha=0.45, soft=6, clip=inside)
    s.fill(oval(17 * f.turn, 84, 16, 8), f.glow, alpha=0.25, soft=5, clip=inside)
    if f.age > 0.4:
        for k in range(3):
            y = -74 + 12 * k
            s.fill(ribbon([[-36 + 12 * f.turn, y + 4], [12 * f.turn, y], [38 + 12 * f.turn, y + 4]], [0.4, 1.8, 0.4]),
                   f.shade,
                   alpha=0.4 * f.age, fine=1)
    for side in (-1, 1):
        _eye(s, f, side)
    _nose(s, f)
    _mouth(s, f)


def strands(s: Surface, start: Floats, end: Floats, colours: tuple[str, ...], count: int, bow: float, seed: int,
            width: float = 2.4) -> None:
    """Hair between two lines (point for point), each hair bowed sideways by `bow`."""
    rng = np.random.default_rng(seed)
    for _ in range(count):
        t = rng.random() * (len(start) - 1)
        i, frac = int(t), t - int(t)
        a = start[i] * (1 - frac) + start[min(i + 1, len(start) - 1)] * frac
        b = end[i] * (1 - frac) + end[min(i + 1, len(end) - 1)] * frac
        d = b - a
        middle = (a + b) / 2 + np.array([d[1], -d[0]]) * bow + rng.normal(0, 1.5, 2)
        s.fill(ribbon([a, middle, b], [width * 0.4, width, width * 0.4]), colours[int(rng.integers(0, len(colours)))],
               alpha=0.75, fine=0.75)


def fist(s: Surface, skin: str, light: float, glow: str, shade: str) -> None:
    """A hand closed round a handle at (0, 0), about 60 units wide, the wrist below."""
    s.fill(blob([-26, 6], [-24, -16], [0, -22], [24, -16], [28, 8], [24, 34], [20, 56], [-16, 56], [-22, 34]), skin,
           fine=0.9,
           form=(light, 0.6, 9), lights=(glow, shade))
    for k in range(4):
        x = -21 + 14 * k
        s.fill(oval(x, -2 + abs(k - 1.4) * 2, 8, 17, 6), mix(skin, glow, 0.12 * k), fine=1, form=(light, 0.6, 4),
               lights=(glow, shade))
        s.fill(ribbon([[x + 7.2, -14], [x + 7.8, 0], [x + 6.4, 12]], [0.8, 2.0, 0.8]), shade, alpha=0.6, fine=1)
    s.fill(ribbon([[26, 30], [20, 16], [4, 12], [-12, 15]], [15, 14, 13, 9]), mix(skin, glow, 0.15), fine=1,
           form=(light, 0.5, 4), lights=(glow, shade))
    s.fill(oval(-11, 14.5, 4.6, 3.6), mix(skin, "#fff0e0", 0.5), fine=1)


def hand_flat(s: Surface, skin: str, light: float, glow: str, shade: str) -> None:
    """A hand resting, fingers to the left, about 70 units long, the wrist at the right."""
    s.fill(blob([34, -14], [8, -18], [-10, -12], [-12, 10], [8, 16], [34, 12]), skin, fine=0.9, form=(light, 0.5, 7),
           lights=(glow, shade))
    for k in range(4):
        y = -12 + 7.4 * k
        reach = (36, 42, 40, 30)[k]
        s.fill(ribbon([[0, y], [-reach * 0.6, y + 1], [-reach, y + 4]], [9, 8.4, 6]), mix(skin, glow, 0.1), fine=1,
               form=(light, 0.5, 3), lights=(glow, shade))
        s.fill(ribbon([[4, y + 4], [-reach * 0.8, y + 5.5]], [0.6, 1.4], False), shade, alpha=0.5, fine=1)
    s.fill(ribbon([[20, -12], [2, -24], [-16, -26]], [12, 10, 7]), skin, fine=1, form=(light, 0.5, 4),
           lights=(glow, shade))
