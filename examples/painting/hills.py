"""The orchard hills: fields in strips, fruit trees, a cart."""
# Points are set out by hand.
# fmt: off

from __future__ import annotations

import numpy as np
from PIL import Image

from .brush import painted
from .props import gull, house, round_tree
from .shapes import Floats, blob, box, edges, oval, ragged, ribbon, spline
from .surface import Surface, mix, ramp


def _furrows(s: Surface, shape: Floats, colours: tuple[str, str], angle: float, step: float, seed: int) -> None:
    """A field with rows: stripes that follow the lie of the land."""
    inside = s.mask(shape, 1.0)
    a = np.radians(angle)
    across = s.x * np.sin(a) - s.y * np.cos(a) + 9 * (s.noise(180, seed=seed) - 0.5)
    stripe = 0.5 + 0.5 * np.sin(2 * np.pi * across / step)
    s.fill(shape, colours[0], flow=angle, fine=0.45, vary=0.1)
    s.tint(inside * stripe * (0.4 + 0.5 * s.noise(60, seed=seed + 1)), colours[1])


def the_orchard_hills(pixels: int) -> Image.Image:
    """The Orchard Hills: fields in strips, a cart on the road, an orchard in fruit."""
    s = Surface(1000, 760, pixels, seed=71)
    s.fill(box(-2, -2, 1002, 330), ramp((0, 0), (0, 310), (0, "#5c9ccc"), (0.6, "#a8d0dc"), (1, "#f4ecc8")), flow=5,
           vary=0.05)
    s.flow += (s.noise(240, 2.6, 2, seed=2) - 0.5) * 2.0
    s.glow(830, 120, 240, "#fff2b0", 0.6)
    s.fill(oval(830, 112, 34, 34), "#fff6cc", soft=1)
    rng = np.random.default_rng(9)
    _clouds(s, rng)
    for pts, c in (([[-10, 300], [150, 250], [330, 282], [520, 236], [760, 276], [1010, 240]], "#8fb0c4"),
                   ([[-10, 330], [200, 286], [420, 320], [640, 270], [860, 310], [1010, 282]], "#88ac9c")):
        top = spline(pts)
        s.fill(np.vstack([top, [[1010, 420], [-10, 420]]]), c, flow=8, vary=0.08)
    s.fill(box(-2, 340, 1002, 762), "#8cb45c", flow=12, vary=0.1)
    with s.at(648, 292, 0.34, fade=0.2, fade_to="#a8c4c4"):
        house(s, -60, 0, 90, 76, "#f2e6cc", "#b05a44", "00d", 0.5)
        s.fill(box(40, -150, 84, 0), "#f2e6cc")
        s.fill([[34, -150], [90, -150], [62, -220]], "#8a4a40")
        house(s, 96, 4, 110, 70, "#ecdcb8", "#a04c3c", "0d", 0.5, True)
    for x in range(470, 640, 17):
        with s.at(x, 306 + 6 * np.sin(x), 1):
            round_tree(s, 24, "#5c8a5c", x)
    _fields(s)
    meadow = edges([[-10, 570], [220, 500], [480, 470], [760, 486], [1010, 540]], [[1010, 540], [1010, 770],
           [-10, 770]])
    s.fill(meadow, ramp((0, 480), (0, 760), (0, "#a4c45c"), (1, "#4f8440")), flow=12, fine=0.4, vary=0.12)
    _road(s)
    _cart(s, 578, 548, 0.62)
    for x, y, size, seed in ((70, 566, 150, 3), (220, 532, 128, 4), (346, 512, 108, 5), (450, 500, 92, 6),
           (120, 690, 214, 7), (330, 632, 180, 8),
                             (470, 590, 128, 12), (850, 560, 134, 10), (950, 640, 190, 11), (770, 520, 100, 13)):
        _fruit_tree(s, x, y, size, seed)
    s.fill(oval(214, 716, 60, 12), "#2c5030", alpha=0.5, soft=5)
    _ladder_and_picker(s)
    _grass(s, rng)
    for x, y, size in ((400, 160, 10), (424, 150, 8), (450, 166, 8)):
        gull(s, x, y, size, "#4c5c70", 6)
    return painted(s, relief=0.06)


def _clouds(s: Surface, rng: np.random.Generator) -> None:
    """Small clouds of fair weather."""
    for x, y, size in ((190, 110, 80), (520, 70, 64), (640, 190, 50), (60, 210, 50)):
        for layer, (tone, dy) in enumerate((("#b4c8d4", 10), ("#e6ecea", 2), ("#fffaf0", -6))):
            for _ in range(10):
                dx = rng.normal(0, size * 0.8)
                lump = max(5.0, size * rng.uniform(0.18, 0.34) * (1 - abs(dx) / (size * 3)))
                s.fill(oval(x + dx - 3 * layer, y + dy - lump * 0.3, lump * 1.4, lump), tone, alpha=0.6, soft=4, flow=0)


def _fields(s: Surface) -> None:
    """Fields in strips, with hedges between."""
    strips = (
        (edges([[-10, 350], [200, 330], [420, 352]], [[420, 352], [330, 420], [-10, 440]]), ("#d8c060", "#b89440"),
        -6, 11),
        (edges([[420, 352], [600, 318], [760, 330]], [[760, 330], [640, 400], [330, 424]], [[330, 424], [420, 352]]),
        ("#7cae54", "#4f8a44"), -22, 10),
        (edges([[760, 330], [900, 310], [1010, 322]], [[1010, 322], [1010, 430], [640, 404]],
        [[640, 404], [760, 330]]), ("#c8743c", "#9a5434"), -14, 12),
        (edges([[-10, 440], [180, 424], [340, 420]], [[340, 420], [290, 500], [200, 560], [-10, 580]],
        [[-10, 580], [-10, 440]]), ("#8ab85c", "#5c9448"), -30, 14),
        (edges([[1010, 420], [820, 410], [640, 402]], [[640, 402], [720, 470], [1010, 540]],
        [[1010, 540], [1010, 420]]), ("#e0cc74", "#c09c48"), 14, 14),
    )
    for number, (shape, colours, angle, step) in enumerate(strips):
        _furrows(s, shape, colours, angle, step, 20 + 2 * number)
    for pts in ([[-10, 440], [180, 424], [340, 420]], [[640, 402], [820, 410], [1010, 424]], [[420, 352], [380, 392],
           [330, 422]],
                [[760, 330], [700, 372], [640, 402]]):
        for k, (x, y) in enumerate(spline(pts, steps=9)):
            s.fill(ragged(oval(x, y, 12, 8), 1.2, k, 3), mix("#3f6c44", "#6c9450", (k % 3) / 3), flow=30,
                   form=(300, 0.6, 4),
                   lights=("#eef0a0", "#1c3048"))


def _road(s: Surface) -> None:
    """The road from the front to the village."""
    road = edges([[560, 770], [600, 660], [520, 580], [556, 508], [620, 440], [690, 400], [712, 352], [690, 320],
           [672, 296]],
                 [[672, 296], [677, 295]], [[677, 295], [698, 318], [722, 352], [704, 404], [650, 446], [606, 512],
                 [602, 576], [726, 660], [760, 770]], [[760, 770], [560, 770]])
    s.fill(road, ramp((0, 290), (0, 770), (0, "#f0e0b4"), (1, "#d8b888")), flow=80, fine=0.4, vary=0.1)
    for off in (0.36, 0.64):
        left = np.array([[560, 770], [600, 660], [520, 580], [556, 508], [620, 440], [690, 400]], float)
        right = np.array([[760, 770], [726, 660], [602, 576], [606, 512], [650, 446], [704, 404]], float)
        s.fill(ribbon(left * (1 - off) + right * off, [16, 10, 7, 5, 3, 1.4]), "#b08c62", alpha=0.6, soft=1.4)


def _grass(s: Surface, rng: np.random.Generator) -> None:
    """Grass and flowers in front."""
    for k in range(round(300 * s.strewn)):
        x, y = rng.uniform(-5, 1005), 640 + 125 * rng.random()
        if 560 < x < 770:
            continue
        s.fill(ribbon([[x, y + 12], [x + rng.normal(0, 3), y - rng.uniform(2, 16)]], [2.4, 0.6], False),
               ("#7cb04c", "#3f7038", "#c8d468", "#5c9440")[k % 4], flow=90, fine=0.5)
    for k in range(round(70 * s.strewn)):
        x, y = rng.uniform(-5, 1005), 668 + 90 * rng.random()
        if not 552 < x < 775:
            s.fill(oval(x, y, 3.4, 2.8), ("#f6f0dc", "#e05040", "#f2c840")[k % 3], fine=0.8)


def _fruit_tree(s: Surface, x: float, y: float, size: float, seed: int) -> None:
    s.fill(oval(x + size * 0.16, y + 4, size * 0.42, size * 0.075), "#2c5030", alpha=0.55, soft=size * 0.03)
    with s.at(x, y):
        round_tree(s, size, "#5c9044", seed, lit="#f2ee9c")
    rng = np.random.default_rng(seed + 50)
    for _ in range(int((10 + size / 9) * s.strewn)):
        a, r = rng.uniform(0, 6.28), size * 0.3 * float(np.sqrt(rng.random()))
        s.fill(oval(x + r * float(np.cos(a)), y - size * 0.7 + r * 0.8 * float(np.sin(a)), size * 0.024 + 0.8,
               size * 0.024 + 0.8),
               "#d8452f" if rng.random() < 0.75 else "#e8b040", fine=0.8, form=(230, 0.5, 2))


def _cart(s: Surface, x: float, y: float, k: float) -> None:
    with s.at(x, y, k):
        s.fill(oval(20, 4, 110, 10), "#6c5030", alpha=0.5, soft=4)
        s.fill(blob([60, -40], [76, -58], [110, -60], [128, -50], [126, -34], [92, -28], [66, -30]), "#8a5a38",
               fine=0.9, form=(300, 0.6, 6))
        s.fill(blob([120, -52], [136, -84], [150, -86], [166, -70], [160, -62], [144, -66], [134, -44]), "#8a5a38",
               fine=0.9, form=(300, 0.6, 5))
        s.fill(ribbon([[122, -54], [134, -80], [146, -90]], [9, 7, 4]), "#3c2820", fine=1)
        for lx in (72, 82, 112, 122):
            s.fill(ribbon([[lx, -34], [lx + 2, -16], [lx, 2]], [8, 6, 5]), "#6c4428", fine=0.9)
        s.fill([[-60, -54], [50, -50], [44, -24], [-52, -26]], "#3c6c9c", fine=0.9)
        for k2 in range(12):
            s.fill(oval(-48 + 8.4 * k2, -56 - 6 * (k2 % 3), 8, 7), ("#d8452f", "#e8b040", "#c83828")[k2 % 3],
                   fine=0.9, form=(300, 0.5, 3))
        s.fill(ribbon([[44, -40], [110, -44]], 4, False), "#5c4030", fine=0.9)
        for r, c in ((24, "#4c3020"), (19, "#c8b48c"), (5, "#4c3020")):
            s.fill(oval(-10, -20, r, r), c, fine=0.9)
        for spoke in range(6):
            a = np.pi / 6 * spoke
            s.fill(ribbon([[-10 - 20 * np.cos(a), -20 - 20 * np.sin(a)], [-10 + 20 * np.cos(a),
                   -20 + 20 * np.sin(a)]], 3, False), "#4c3020", fine=0.9)
        s.fill(blob([-26, -56], [-28, -86], [-14, -100], [0, -86], [0, -56]), "#f0e4cc", fine=0.9, form=(300, 0.5, 5))
        s.fill(oval(-13, -108, 9, 10), "#d8a078", fine=0.9)
        s.fill(oval(-13, -115, 18, 5), "#dcb868", fine=0.9)
        s.fill(oval(-13, -119, 9, 6), "#dcb868", fine=0.9)


def _ladder_and_picker(s: Surface) -> None:
    for dx in (0.0, 18.0):
        s.fill(ribbon([[180 + dx, 716], [206 + dx, 560]], 4.4, False), "#c89c60", fine=0.9)
    for k in range(7):
        f = (k + 0.6) / 7
        s.fill(ribbon([[180 + 26 * f, 716 - 156 * f], [198 + 26 * f, 716 - 156 * f]], 3.4, False), "#a87c48", fine=0.9)
    with s.at(204, 654, 0.72):
        s.fill(ribbon([[-8, -40], [-12, -20], [-6, 0]], [11, 10, 9]), "#4c5070", fine=0.9)
        s.fill(ribbon([[8, -42], [14, -30], [8, -16]], [11, 10, 9]), "#4c5070", fine=0.9)
        s.fill(blob([-16, -38], [-16, -72], [0, -84], [16, -72], [15, -38]), "#f0e6d0", fine=0.9, form=(300, 0.6, 6))
        s.fill(ribbon([[10, -76], [26, -92], [34, -112]], [9, 8, 6]), "#f0e6d0", fine=0.9)
        s.fill(ribbon([[-10, -74], [-22, -92], [-24, -110]], [9, 8, 6]), "#f0e6d0", fine=0.9)
        s.fill(oval(0, -92, 10, 11), "#c88c64", fine=0.9)
        s.fill(blob([-12, -92], [-10, -106], [2, -108], [12, -98], [10, -92]), "#b8392f", fine=0.9)
    s.fill(blob([236, 712], [240, 690], [276, 690], [280, 712], [258, 718]), "#a87c48", fine=0.9, form=(300, 0.6, 6))
    for k in range(7):
        s.fill(oval(242 + 5.6 * k, 688 - 4 * (k % 2), 6, 5.6), ("#d8452f", "#e8b040", "#c83828")[k % 3], fine=0.9,
               form=(300, 0.5, 3))
