"""The portraits: four people looking out of their pictures."""
# Points are set out by hand.
# fmt: off

from __future__ import annotations

import numpy as np
from PIL import Image

from .brush import OIL, Brush, painted
from .people import Face, face, fist, strands
from .props import lamp_house, lugger
from .shapes import blob, box, edges, oval, ribbon, shifted, spline
from .surface import Surface, halo, ramp

PORTRAIT = (*OIL[:3], Brush(2.1, 11, 0.03, 0.02), Brush(1.0, 10, 0.035, 0.008))


def self_portrait_with_a_lantern(pixels: int) -> Image.Image:
    """Self-portrait with a Lantern: light from below on the right, the night harbour in the window."""
    s = Surface(800, 1000, pixels, seed=31)
    s.fill(box(-2, -2, 802, 1002), halo((600, 640), 760, (0, "#a87848"), (0.4, "#6c4a40"), (1, "#2e2636")), flow=60,
           vary=0.1)
    s.flow += (s.noise(260, 1, 2, seed=3) - 0.5) * 2.4
    _night_window(s)
    light, glow, shade = 28.0, "#ffdc9c", "#55303e"
    with s.at(0, -24):
        s.fill(edges([[160, 1040], [186, 840], [282, 742], [350, 712]], [[350, 712], [420, 728], [490, 712]],
                     [[490, 712], [584, 748], [676, 850], [700, 1040]]), "#3d5a80", flow=75, fine=0.5, vary=0.07,
               form=(light, 0.7, 34), lights=(glow, "#1c1c38"))
        for x0, x1, x2 in ((290, 270, 262), (352, 344, 350), (474, 486, 480), (540, 556, 562)):
            s.fill(ribbon([[x0, 780], [x1, 880], [x2, 1036]], [3, 11, 7]), "#22304e", alpha=0.55, soft=5)
            s.fill(ribbon([[x0 + 16, 790], [x1 + 18, 890], [x2 + 16, 1036]], [2, 8, 5]), "#86a0b8", alpha=0.4, soft=4)
    s.fill(blob([306, 530], [298, 410], [340, 306], [424, 282], [512, 308], [556, 410], [548, 526], [520, 580],
           [430, 600], [334, 584]),
           "#3a2420", flow=80, fine=0.5)
    s.fill(oval(410, 268, 62, 44), "#452b24", form=(light, 0.5, 14), fine=0.6, lights=(glow, "#1c1420"))
    with s.at(424, 500, 1.36):
        face(s, Face(turn=0.42, light=light, shade=shade, glow=glow, eyes="#4f7680", smile=0.45, age=0.25, jaw=0.98))
    hair = ("#3a221e", "#5a3628", "#704630", "#2c1a1a", "#8a5a3a")
    part = spline([[438, 356], [430, 350], [426, 344]], steps=8)
    for a, seed in ((spline([[330, 548], [316, 470], [330, 420]], steps=8), 1),
           (spline([[534, 540], [548, 468], [532, 420]], steps=8), 2)):
        side = -1.0 if seed == 1 else 1.0
        s.fill(edges([[432, 350], [432 + side * 50, 392], [432 + side * 88, 458], [432 + side * 94, 560]],
                     [[432 + side * 94, 560], [432 + side * 130, 440], [432 + side * 96, 322], [432 + side * 30, 292],
                     [432, 300], [432, 350]]),
               "#4a2c24", flow=60 * side, fine=0.6)
        strands(s, part, a, hair, 110, 0.34 * side, seed, 3.2)
        strands(s, spline([[432, 312], [430, 304], [428, 298]], steps=8), shifted(a, side * 12, -30), hair, 70,
                0.42 * side, seed + 5, 3.2)
    strands(s, spline([[352, 270], [372, 246], [400, 232]]), spline([[402, 304], [450, 300], [470, 268]]), hair, 60,
           0.3, 9, 3)
    s.fill(oval(537, 560, 4.5, 7), "#e9b04a", fine=1)
    s.fill(oval(318, 566, 4, 7), "#b98438", fine=1)
    _scarf(s, light)
    _brushes(s, light)
    _raised_lantern(s, glow, shade)
    s.glow(634, 838, 330, "#ffb85c", 0.55)
    s.glow(634, 838, 90, "#ffe6a0", 0.75)
    s.darken(np.clip(np.hypot((s.x - 470) / 520, (s.y - 600) / 640) - 0.62, 0, 1) * 0.8)
    return painted(s, PORTRAIT, relief=0.042, careful=0.62)


def _lantern(s: Surface, x: float, y: float, body: bool = False) -> None:
    """A lantern hanging at (x, y): first its ring, later its body in front of the sleeve."""
    metal = "#4a3428"
    if not body:
        s.fill(ribbon([[x - 44, y + 40], [x - 46, y - 40], [x, y - 66], [x + 46, y - 40], [x + 44, y + 40]], 5),
               metal, fine=1)
        return
    s.fill(ribbon([[x - 44, y + 40], [x - 46, y - 30], [x - 30, y - 52]], 5), metal, fine=1)
    s.fill(ribbon([[x + 44, y + 40], [x + 46, y - 30], [x + 30, y - 52]], 5), metal, fine=1)
    s.fill(edges([[x - 50, y + 44], [x, y - 14], [x + 50, y + 44]], [[x + 50, y + 44], [x, y + 54],
           [x - 50, y + 44]]), "#8a6038",
           fine=0.9, form=(200, 0.6, 10))
    s.fill(box(x - 44, y + 44, x + 44, y + 152), halo((x, y + 100), 60, (0, "#fffbe0"), (0.5, "#ffdf8c"),
           (1, "#e69a3c")), fine=0.9)
    s.fill(blob([x, y + 72], [x + 12, y + 100], [x, y + 122], [x - 12, y + 100]), "#fffef0", fine=1)
    for dx in (-44, -15, 15, 44):
        s.fill(ribbon([[x + dx, y + 44], [x + dx, y + 152]], 5, False), metal, fine=1)
    for dy in (44, 98, 152):
        s.fill(ribbon([[x - 48, y + dy], [x, y + dy + 5], [x + 48, y + dy]], 6), metal, fine=1)
    s.fill(edges([[x - 54, y + 154], [x, y + 164], [x + 54, y + 154]], [[x + 54, y + 154], [x + 48, y + 180],
           [x, y + 188],
                 [x - 48, y + 180], [x - 54, y + 154]]), "#7a5230", fine=0.9, form=(-90, 0.5, 8))


def isaure_quenby(pixels: int) -> Image.Image:
    """Isaure Quenby in her later years, by daylight, in front of the sea; as painted by a friend."""
    s = Surface(800, 1000, pixels, seed=37)
    s.fill(box(-2, -2, 802, 1002), ramp((0, 0), (0, 560), (0, "#86aecb"), (0.55, "#c6d6d8"), (1, "#f0e2c4")), flow=6,
           vary=0.07)
    _sea_behind(s)
    light, glow, shade = 205.0, "#fff0d0", "#6a4a5c"
    _cloak(s, light)
    s.fill(blob([300, 520], [296, 400], [344, 306], [424, 284], [504, 308], [550, 402], [548, 520], [510, 580],
           [430, 596], [340, 580]),
           "#8d8a92", flow=80)
    with s.at(418, 504, 1.36):
        face(s, Face(turn=-0.4, light=light, shade=shade, glow=glow, eyes="#4f7680", brows="#8c8288", lips="#b0665c",
               smile=0.7,
                     age=0.85, skin="#e4b394"))
    hair = ("#a8a4a8", "#c9c5c4", "#e6e2dc", "#86828c", "#f2eee6")
    part = spline([[412, 356], [410, 349], [408, 342]], steps=8)
    for side, seed in ((-1.0, 1), (1.0, 2)):
        end = spline([[412 + side * 104, 552], [412 + side * 120, 470], [412 + side * 100, 426]], steps=8)
        s.fill(edges([[412, 350], [412 + side * 56, 388], [412 + side * 92, 456], [412 + side * 96, 566]],
                     [[412 + side * 96, 566], [412 + side * 136, 440], [412 + side * 98, 322], [412 + side * 30, 294],
                     [412, 302]]),
               "#99959c", flow=60 * side, fine=0.6)
        strands(s, part, end, hair, 120, 0.34 * side, seed, 3.2)
        strands(s, spline([[412, 314], [410, 306], [408, 300]], steps=8), shifted(end, side * 12, -30), hair, 80,
               0.42 * side, seed + 5, 3.2)
    s.fill(edges([[288, 476], [298, 330], [414, 256], [536, 326], [554, 476]], [[554, 476], [526, 362], [412, 306]],
                 [[412, 306], [312, 362], [288, 476]]), "#f0ead8", flow=20, fine=0.8, vary=0.1, form=(light, 0.7, 14),
           lights=("#fffaf0", "#56587c"))
    for k in range(13):
        a = np.radians(196 + 12.4 * k)
        s.fill(oval(419 + 128 * float(np.cos(a)), 470 + 170 * float(np.sin(a)), 13, 12), "#faf6ea", fine=0.9,
               form=(light, 0.6, 5), lights=("#ffffff", "#56587c"))
    with s.at(0, -32):
        s.fill(edges([[348, 676], [418, 716], [486, 676]], [[486, 676], [488, 736], [452, 776]],
               [[452, 776], [418, 744], [384, 776]],
                     [[384, 776], [346, 736], [348, 676]]), "#f2ecdc", fine=0.9, form=(light, 0.6, 8))
        s.fill(oval(418, 750, 16, 20), "#caa052", fine=1, form=(light, 0.6, 5))
        s.fill(oval(418, 750, 10, 14), "#3f6f7c", fine=1, form=(light, 0.6, 4))
    return painted(s, PORTRAIT, relief=0.045, careful=0.6)


def _night_window(s: Surface) -> None:
    """The window, with the lamp house far off."""
    s.fill(box(50, 90, 292, 470), "#4a3830", flow=90, fine=0.7, form=(0, 0.4, 8))
    s.fill(box(70, 110, 272, 450), ramp((0, 110), (0, 380), (0, "#26355e"), (0.6, "#4d5f8c"), (1, "#a8888c")),
           fine=0.6, flow=0)
    s.fill(box(70, 372, 272, 450), ramp((0, 372), (0, 450), (0, "#6f7698"), (1, "#2c3a60")), flow=0)
    with s.at(206, 376, 0.52):
        lamp_house(s, dusk=0.9)
    s.glow(206, 258, 70, "#ffdf94", 0.8)
    s.fill(ribbon([[206, 384], [208, 416], [204, 446]], [9, 16, 10]), "#ffdb8c", alpha=0.7, soft=2, flow=0)
    s.fill(oval(112, 158, 15, 15), "#f4ecd2", fine=0.9)
    for edge in (box(166, 110, 176, 450), box(70, 272, 272, 281)):
        s.fill(edge, "#5a443a", fine=0.9)


def _brushes(s: Surface, light: float) -> None:
    """Three brushes in a pocket."""
    for x, lean, tip in ((244, -16, "#c0472e"), (262, 2, "#e8e0cc"), (279, 16, "#3f8a80")):
        s.fill(ribbon([[x, 906], [x + lean, 806]], [5, 4], False), "#b98a52", fine=1)
        s.fill(ribbon([[x + lean, 808], [x + lean * 1.12, 790]], 6.4, False), "#b8b4b0", fine=1)
        s.fill(edges([[x + lean * 1.12 - 4, 792], [x + lean * 1.2 - 5, 778], [x + lean * 1.3, 762]],
                     [[x + lean * 1.3, 762], [x + lean * 1.2 + 5, 778], [x + lean * 1.12 + 4, 792]]), tip, fine=1)
    s.fill(edges([[220, 884], [262, 876], [304, 886]], [[304, 886], [302, 950], [292, 972]], [[292, 972], [260, 980],
           [228, 970]],
                 [[228, 970], [222, 930], [220, 884]]), "#33507a", fine=0.8, form=(light, 0.5, 8))
    s.fill(ribbon([[222, 892], [262, 884], [303, 894]], 3), "#8aa2ba", alpha=0.7, fine=0.9)


def _scarf(s: Surface, light: float) -> None:
    """The spotted scarf."""
    with s.at(0, -24):
        s.fill(edges([[340, 672], [424, 716], [512, 672]], [[512, 672], [598, 736], [560, 800]],
               [[560, 800], [430, 838], [302, 786]],
                     [[302, 786], [276, 738], [340, 672]]), "#c8862e", flow=12, fine=0.7, vary=0.16,
                     form=(light, 0.75, 16),
               lights=("#fff0b8", "#4a2430"))
        for k in range(5):
            s.fill(ribbon([[330 + 1 * k, 694 + 18 * k], [424, 734 + 19 * k], [526 + 8 * k, 694 + 19 * k]], [1, 5, 1]),
                   "#8a4c22",
                   alpha=0.5, soft=1.6)
        rng = np.random.default_rng(8)
        for k in range(36):
            x = 312 + 21 * (k % 12) + rng.uniform(-4, 4)
            y = 716 + 26 * (k // 12) + (1 - ((x - 430) / 130) ** 2) * 42 + (k % 2) * 11 + rng.uniform(-3, 3)
            s.fill(oval(x, y, 4.2, 4.2), "#f6e6b8" if k % 3 else "#8c3a2e", fine=0.9)


def _sea_behind(s: Surface) -> None:
    """Clouds, the sea, an island with the lamp house, a boat."""
    clouds = s.noise(150, 3.4, 4, seed=2, contrast=2)
    s.tint(np.clip(clouds - 0.5, 0, 1) * 1.5 * np.clip((520 - s.y) / 300, 0, 1), "#fbf6ea")
    s.flow += (s.noise(300, 2, 2, seed=3) - 0.5) * 1.4
    s.fill(box(-2, 548, 802, 1002), ramp((0, 548), (0, 800), (0, "#93b4b8"), (0.5, "#4f8590"), (1, "#315f70")),
           flow=0, vary=0.12)
    s.fill(edges([[-5, 548], [60, 520], [150, 506]], [[150, 506], [230, 532], [262, 550]], [[262, 550], [-5, 552]]),
           "#8ba395",
           flow=10, vary=0.16)
    with s.at(132, 512, 0.5, fade=0.12, fade_to="#c6d6d8"):
        lamp_house(s, dusk=0.0, lit=False)
    rng = np.random.default_rng(3)
    for _ in range(90):
        x, y = rng.uniform(0, 800), 556 + 300 * rng.random() ** 1.4
        long = 8 + (y - 550) * 0.12
        s.fill(ribbon([[x - long, y], [x, y - 2], [x + long, y]], [0.5, 2.4, 0.5]), ("#d9e6dc", "#2f6070",
               "#86b4b4")[int(rng.integers(3))],
               alpha=0.6, flow=0)
    with s.at(690, 590, 0.62, fade=0.15, fade_to="#c6d6d8"):
        lugger(s, "#7c3f3c", "#b4643c", False)


def _cloak(s: Surface, light: float) -> None:
    """A red cloak over a dark dress."""
    with s.at(0, -32):
        s.fill(edges([[120, 1050], [150, 860], [270, 750], [340, 700]], [[340, 700], [420, 704], [492, 700]],
                     [[492, 700], [590, 756], [690, 870], [716, 1050]]), "#4c4a66", flow=75, vary=0.07,
                     form=(light, 0.65, 34),
               lights=("#d8d0e0", "#191a30"))
        s.fill(edges([[120, 1050], [150, 850], [270, 748], [342, 706]], [[342, 706], [380, 800], [400, 1050]]),
               "#7d3b42", flow=70,
               vary=0.07, form=(light, 0.7, 24), lights=("#f2b890", "#2a1428"))
        s.fill(edges([[490, 706], [590, 750], [694, 866], [720, 1050]], [[720, 1050], [470, 1050]],
               [[470, 1050], [452, 800], [490, 706]]),
               "#6d3038", flow=105, vary=0.07, form=(light, 0.7, 24), lights=("#f2b890", "#2a1428"))
        for x0, x1, x2 in ((250, 206, 190), (310, 282, 276), (566, 606, 622), (520, 540, 548)):
            s.fill(ribbon([[x0, 780], [x1, 890], [x2, 1046]], [4, 14, 9]), "#3a1424", alpha=0.45, soft=6)
            s.fill(ribbon([[x0 + 20, 786], [x1 + 22, 894], [x2 + 20, 1046]], [2, 9, 5]), "#c8736a", alpha=0.35, soft=4)
        for side, x in ((-1, 366), (1, 466)):
            for k in range(10):
                y = 760 + 29 * k
                s.fill(ribbon([[x + side * (14 - 2 * k), y], [x + side * (2 - 2 * k), y + 16]], [3, 1.6], False),
                       "#d9a05c", fine=0.9)


def _raised_lantern(s: Surface, glow: str, shade: str) -> None:
    """A hand and sleeve holding up the lantern."""
    _lantern(s, 634, 700)
    with s.at(634, 640, 1.18):
        fist(s, "#e0a67e", 80, glow, shade)
    s.fill(edges([[560, 1010], [566, 860], [598, 716]], [[598, 716], [634, 704], [668, 716]], [[668, 716], [716, 850],
           [742, 1010]]),
           "#456690", flow=85, fine=0.5, vary=0.12, form=(100, 0.5, 24), lights=(glow, "#1c1c38"))
    s.fill(ribbon([[594, 722], [634, 710], [674, 722]], 22), "#e6dcc8", fine=0.8, form=(80, 0.4, 6))
    _lantern(s, 634, 740, body=True)
