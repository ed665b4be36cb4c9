"""A street by night, after rain."""
# Points are set out by hand.
# fmt: off

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from PIL import Image

from .brush import painted
from .props import house
from .shapes import blob, box, edges, oval, ribbon
from .surface import Array, Surface, mix, ramp


def lamplighters_lane(pixels: int) -> Image.Image:
    """Lamplighters' Lane, after Rain: a street by night and its light on wet stones."""
    s = Surface(800, 1000, pixels, seed=79)
    s.fill(box(-2, -2, 802, 660), ramp((0, 0), (0, 560), (0, "#141d44"), (0.5, "#2c3f74"), (1, "#6c6a92")), flow=20,
           vary=0.06)
    s.flow += (s.noise(200, 1, 2, seed=2) - 0.5) * 3.0
    rng = np.random.default_rng(3)
    for _ in range(38):
        x, y, r = rng.uniform(160, 640), rng.uniform(10, 300), rng.uniform(1.6, 4)
        s.glow(x, y, 13 * r / 2, "#c8d8ff", 0.35)
        s.fill(oval(x, y, r, r), "#f4f2da", fine=0.9)
    s.fill(oval(470, 130, 36, 36), "#f6ecc4", fine=0.8)
    s.glow(470, 130, 170, "#d8dcff", 0.5)
    s.fill(blob([300, 152], [390, 132], [480, 146], [580, 138], [520, 160], [400, 168]), "#3c4c80", alpha=0.75, soft=6)
    for x, w, h, wall, roof in ((322, 66, 130, "#50507c", "#2c2c54"), (384, 60, 160, "#5c5880", "#34305c"),
           (440, 64, 126, "#4c4c78", "#2c2c54")):
        house(s, x, 600, w, h, wall, roof, "10", 1)
    s.fill(box(396, 356, 424, 480), "#4c4c78", fine=0.6)
    s.fill([[390, 356], [430, 356], [410, 290]], "#2c2c54", fine=0.6)
    s.fill(oval(410, 390, 10, 10), "#ffe6a0", fine=0.9)
    _row(s, 1.0, rng)
    _row(s, -1.0, rng)
    street = np.array([[352, 596], [462, 596], [844, 1010], [-30, 1010]], float)
    s.fill(street, ramp((0, 596), (0, 1000), (0, "#7c7494"), (0.4, "#454470"), (1, "#20224a")), flow=0, fine=0.4,
           vary=0.08)
    for side in (-1.0, 1.0):
        s.fill(np.array([[407 + side * 55, 596], [407 + side * 92, 596], [407 + side * 640, 1010], [407 + side * 436,
               1010]]), "#54507c", flow=50 * side, fine=0.4, vary=0.12)
        s.fill(ribbon([[407 + side * 55, 596], [407 + side * 436, 1010]], [2, 12], False), "#8c84a4", alpha=0.8)
    inside = s.mask(street)
    _cobbles(s, inside, rng)
    lamps = ((214, 716, 1.0), (606, 716, 1.0), (318, 628, 0.42), (497, 628, 0.42))
    for x, y, k in lamps:
        s.fill(ribbon([[x, y + 6], [x + (407 - x) * 0.1, y + 110 * k], [x + (407 - x) * 0.12, y + 270 * k]],
               [16 * k, 44 * k, 18 * k]), "#ffc468", alpha=0.42,
               soft=9 * k, flow=90)
        s.fill(ribbon([[x, y + 6], [x + (407 - x) * 0.08, y + 160 * k]], [8 * k, 14 * k], False), "#ffeab0",
               alpha=0.5, soft=4 * k, flow=90)
    for x, y0, y1, w in ((120, 830, 950, 34), (696, 840, 960, 34), (407, 606, 700, 30)):
        s.fill(ribbon([[x, y0], [x, y1]], [w, w * 0.7], False), "#ffb85c", alpha=0.32, soft=8, flow=90)
    s.ripple(inside, 596, 5, 0.5, seed=14)
    _walkers(s)
    for x, y, k in lamps:
        _street_lamp(s, x, y, k)
    _black_cat(s)
    return painted(s, relief=0.065)


def _row(s: Surface, side: float, rng: np.random.Generator) -> None:
    """One side of the street in perspective, houses growing towards us."""
    edge = [92, 128, 178, 250, 352, 470]
    walls = ("#6c5c84", "#84688a", "#5c6490", "#8c6c7c", "#6c5478")
    for k in range(5):
        near, far = 407 + side * edge[k + 1], 407 + side * edge[k]
        foot_n, foot_f = 596 + (edge[k + 1] - 92) * 0.86, 596 + (edge[k] - 92) * 0.86
        kind = k + (2 if side > 0 else 0)
        tall = (1.28, 1.46, 1.2, 1.38, 1.5, 1.24, 1.42)[kind]
        top_n, top_f = 596 - edge[k + 1] * tall, 596 - edge[k] * tall
        s.fill([[far, foot_f], [near, foot_n], [near, top_n], [far, top_f]],
               ramp((407, 0), (407 + side * 400, 0), (0, mix(walls[kind % 5], "#ffcf8c", 0.35)),
               (1, walls[kind % 5])), flow=90, fine=0.5, vary=0.1)
        s.fill([[far, top_f], [near, top_n], [near, top_n - (near - far) * side * 0.5], [far + (near - far) * 0.2,
               top_f - (near - far) * side * 0.42]],
               ("#2c2a54", "#3c2c50", "#28305c")[kind % 3], flow=25 * side, fine=0.5, vary=0.12)
        at = _on_wall((far, near), (top_f, top_n), (foot_f, foot_n))
        for i in range(2):
            for j in range(3):
                u0, u1 = 0.18 + 0.42 * i, 0.18 + 0.42 * i + 0.24
                v0, v1 = 0.12 + 0.28 * j, 0.12 + 0.28 * j + 0.16
                if j == 2 and i == 0:
                    v1 = 1.0
                lit = rng.random() < 0.55
                if j == 2 and i == 0:
                    s.fill([at(u0, v0), at(u1, v0), at(u1, v1), at(u0, v1)], ("#3c5c54", "#7c3c40",
                           "#34446c")[kind % 3], fine=0.8)
                    continue
                s.fill([at(u0 - 0.03, v0 - 0.012), at(u1 + 0.03, v0 - 0.012), at(u1 + 0.03, v1 + 0.012),
                       at(u0 - 0.03, v1 + 0.012)], "#2a2444", fine=0.8)
                s.fill([at(u0, v0), at(u1, v0), at(u1, v1), at(u0, v1)], "#ffd27c" if lit else "#39487c", fine=0.8,
                       vary=0.1)
                middle = (u0 + u1) / 2
                s.fill(ribbon([at(middle, v0), at(middle, v1)], 1 + 0.012 * edge[k], False), "#2a2444", fine=0.9)
                s.fill(ribbon([at(u0, (v0 + v1) / 2), at(u1, (v0 + v1) / 2)], 1 + 0.012 * edge[k], False), "#2a2444",
                       fine=0.9)
                if lit and k > 1:
                    x, y = at(middle, (v0 + v1) / 2)
                    s.glow(x, y, 0.16 * edge[k], "#ffb85c", 0.3)


def _on_wall(
    x: tuple[float, float], top: tuple[float, float], foot: tuple[float, float]
) -> Callable[[float, float], list[float]]:
    """From fractions along and down a wall to its point in the picture; pairs are (far end, near end)."""

    def at(along: float, down: float) -> list[float]:
        upper = top[0] + (top[1] - top[0]) * along
        lower = foot[0] + (foot[1] - foot[0]) * along
        return [x[0] + (x[1] - x[0]) * along, upper + (lower - upper) * down]

    return at


def _street_lamp(s: Surface, x: float, y: float, k: float) -> None:
    with s.at(x, y, k):
        s.fill(ribbon([[0, 6], [0, -40], [0, -290]], [15, 8, 6]), "#14142c", fine=0.9)
        s.fill(oval(0, 4, 16, 7), "#14142c", fine=0.9)
        s.fill(ribbon([[-20, -262], [20, -262]], 4, False), "#14142c", fine=0.9)
        s.fill([[-15, -292], [15, -292], [24, -346], [-24, -346]], "#ffe6a0", fine=0.9)
        s.fill(oval(0, -318, 9, 15), "#fffbe6", fine=1, soft=2)
        for x0, x1 in ((-15, -24), (15, 24), (0, 0)):
            s.fill(ribbon([[x0, -292], [x1, -346]], 3, False), "#14142c", fine=1)
        s.fill([[-30, -346], [30, -346], [12, -368], [-12, -368]], "#14142c", fine=0.9)
        s.fill(oval(0, -370, 5, 7), "#14142c", fine=0.9)
    s.glow(x, y - 318 * k, 250 * k, "#ffb650", 0.55)
    s.glow(x, y - 318 * k, 80 * k, "#fff0c0", 0.7)


def _walkers(s: Surface) -> None:
    with s.at(404, 786, 1.3, water=0.5, fade=0.4, fade_to="#24264e"):
        _pair(s)
    with s.at(404, 786, 1.3):
        _pair(s)


def _pair(s: Surface) -> None:
    lights = ("#ffca80", "#12122c")
    s.fill(blob([-40, -2], [-38, -40], [-30, -78], [-8, -78], [-4, -40], [-2, -2], [-20, 1]), "#7c3048", fine=0.9,
           form=(200, 0.7, 6), lights=lights, flow=85)
    s.fill(oval(-19, -90, 9, 11), "#4a2c28", fine=0.9)
    s.fill(oval(-19, -100, 6, 6), "#4a2c28", fine=0.9)
    s.fill(blob([4, -30], [2, -78], [14, -86], [28, -78], [30, -30], [16, -26]), "#26345c", fine=0.9,
           form=(340, 0.7, 6), lights=lights, flow=85)
    for x in (10, 23):
        s.fill(ribbon([[x, -32], [x + 1, 0]], [10, 7], False), "#1c2444", fine=0.9)
    s.fill(oval(16, -92, 7, 8), "#c88c68", fine=0.9)
    s.fill(oval(16, -97, 9, 8.6), "#3a2a2c", fine=0.9)
    s.fill(oval(16, -102, 14, 4), "#14142c", fine=0.9)
    s.fill(box(8, -118, 24, -102), "#14142c", fine=0.9)
    s.fill(ribbon([[4, -72], [-6, -60], [-14, -66]], [7, 6, 5]), "#26345c", fine=0.9)
    s.fill(ribbon([[0, -64], [0, -150]], 2.6, False), "#14142c", fine=1)
    s.fill(edges([[-66, -122], [-50, -160], [0, -180], [50, -160], [66, -122]], [[66, -122], [44, -130], [22, -122]],
           [[22, -122], [0, -131], [-22, -122]],
                 [[-22, -122], [-44, -130], [-66, -122]]), "#b8392f", fine=0.9, form=(250, 0.7, 14),
                 lights=("#ffd090", "#2c1030"))
    for x in (-22, 22):
        s.fill(ribbon([[0, -180], [x * 0.8, -156], [x, -122]], [1, 2, 1]), "#6c1c28", alpha=0.7, fine=0.9)


def _black_cat(s: Surface) -> None:
    """A cat with its back up."""
    s.fill(ribbon([[640, 830], [646, 800], [672, 792], [690, 806], [694, 832]], [7, 9, 13, 12, 6]), "#14122a", fine=0.9)
    s.fill(oval(640, 800, 12, 11), "#14122a", fine=1)
    s.fill([[631, 794], [632, 780], [640, 790]], "#14122a", fine=1)
    s.fill([[642, 790], [650, 780], [650, 796]], "#14122a", fine=1)
    for dx in (644, 652, 684, 692):
        s.fill(ribbon([[dx, 800], [dx, 838]], 5.4, False), "#14122a", fine=1)
    s.fill(ribbon([[692, 812], [714, 800], [712, 776]], [5, 5, 3]), "#14122a", fine=1)
    for dx in (-4, 3):
        s.fill(oval(640 + dx, 799, 1.8, 1.8), "#f2d860", fine=1)


def _cobbles(s: Surface, inside: Array, rng: np.random.Generator) -> None:
    """Wet stones, row upon row."""
    for row in range(30):
        depth = (row / 29) ** 1.9
        y = 602 + 396 * depth
        tall, wide = 3 + 22 * depth, 8 + 50 * depth
        half = 56 + 380 * (y - 596) / 414
        x = 407 - half - (wide / 2 if row % 2 else 0)
        while x < 407 + half:
            s.fill(oval(x + wide / 2, y, wide * 0.46, tall * 0.46), mix("#3a3a68", "#8a84a8", rng.uniform(0, 0.5)),
                   alpha=0.6, flow=0, clip=inside,
                   form=(270, 0.6, 2 + 4 * depth), lights=("#c8c0dc", "#10122c"))
            x += wide
