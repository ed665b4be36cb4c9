"""A heron at first light."""
# Points are set out by hand.
# fmt: off

from __future__ import annotations

import numpy as np
from PIL import Image

from .brush import painted
from .shapes import blob, box, edges, oval, ragged, ribbon, spline
from .surface import Surface, mix, ramp


def heron_at_the_weir(pixels: int) -> Image.Image:
    """Heron at the Weir: first light, mist on the pool, one bird standing still."""
    s = Surface(760, 1000, pixels, seed=73)
    s.fill(box(-2, -2, 762, 1002), ramp((0, 0), (0, 560), (0, "#8ab0b8"), (0.45, "#d8d8b8"), (0.8, "#f4d8a0"),
           (1, "#e8c898")), flow=5, vary=0.05)
    s.flow += (s.noise(260, 2.4, 2, seed=2) - 0.5) * 1.8
    s.glow(560, 420, 330, "#ffe8a8", 0.6)
    rng = np.random.default_rng(12)
    _misty_trees(s, rng)
    s.fill(box(-2, 512, 762, 1002), ramp((0, 512), (0, 1000), (0, "#f0dcae"), (0.2, "#b4c4a8"), (0.6, "#5c8c8c"),
           (1, "#264c5c")), flow=0, vary=0.06)
    s.mirror(520, "#5c8484", 0.34, 1.0)
    s.tint(np.clip((s.y - 620) / 420, 0, 1) * 0.7, "#24505e")
    water = (s.y > 522).astype(np.float32)
    s.ripple(water, 522, 20, 1.5)
    s.tint(np.exp(-(((s.y - 522) / 26) ** 2)) * (0.3 + 0.6 * s.noise(200, 5, 3, seed=6)), "#fbf0d4")
    for _ in range(120):
        y = 540 + 450 * rng.random() ** 1.2
        x = rng.uniform(0, 760)
        long = 10 + 70 * (y - 520) / 480 * rng.uniform(0.4, 1.2)
        glint = np.exp(-(((x - 560) / 130) ** 2))
        s.fill(ribbon([[x - long, y], [x, y + 1.5], [x + long, y]], [0.4, 1.6 + 3 * (y - 520) / 480, 0.4]),
               mix("#3c7480", "#ffe9b4", float(np.clip(glint + rng.normal(0, 0.2), 0, 1))), alpha=0.6, flow=0)
    with s.at(352, 872, 1.0, water=0.55, fade=0.5, fade_to="#24505e"):
        _heron(s)
    for r in (46, 84, 128):
        t = np.radians(np.linspace(10, 170, 40))
        ring = np.column_stack([352 + r * 1.4 * np.cos(t), 876 + r * 0.2 * np.sin(t)])
        s.fill(ribbon(ring, [0.6, 3.4, 0.6], False), "#d8e6d0", alpha=0.6, flow=0)
        s.fill(ribbon(ring * (1, -1) + (0, 1752), [0.4, 2.2, 0.4], False), "#d8e6d0", alpha=0.4, flow=0)
    for x, y, rx in ((60, 902, 80), (650, 938, 110), (250, 966, 60)):
        s.fill(oval(x, y + 8, rx, rx * 0.2), "#173440", alpha=0.5, soft=6)
        s.fill(blob([x - rx, y], [x - rx * 0.6, y - rx * 0.34], [x + rx * 0.3, y - rx * 0.4], [x + rx, y - 2],
               [x + rx * 0.3, y + rx * 0.16], [x - rx * 0.6, y + rx * 0.14]),
               "#7a8078", flow=10, fine=0.6, vary=0.12, form=(310, 0.8, 12), lights=("#fbeac0", "#1c2c40"))
        s.fill(blob([x - rx * 0.7, y - rx * 0.2], [x - rx * 0.2, y - rx * 0.34], [x + rx * 0.3, y - rx * 0.3],
               [x, y - rx * 0.16]), "#7c9450", alpha=0.7, soft=2)
    with s.at(352, 872):
        _heron(s)
    _reeds(s, rng)
    for x, y in ((520, 706), (606, 628)):
        for a in (20, 160, -24, 204):
            s.fill(oval(x + 15 * float(np.cos(np.radians(a))), y + 12 * float(np.sin(np.radians(a))), 17, 3.6, a),
                   "#eef4f0", alpha=0.75, fine=1)
        s.fill(ribbon([[x + 7, y - 6], [x - 10, y + 8], [x - 34, y + 26]], [4, 5, 2]), "#2c7ca0", fine=1)
    return painted(s, relief=0.055)


def _misty_trees(s: Surface, rng: np.random.Generator) -> None:
    """Three rows of trees, each nearer and darker."""
    for depth, (y, tone) in enumerate(((420, "#a8c0a8"), (460, "#86a894"), (505, "#5f8a7c"))):
        for k in range(13):
            x = -40 + 70 * k + rng.uniform(-24, 24)
            if 480 < x < 640 and depth == 2:
                continue
            r = rng.uniform(46, 88) * (1 + 0.15 * depth)
            s.fill(ragged(oval(x, y - r * 0.35, r * 0.8, r * 0.95, wobble=0.12, seed=k + 20 * depth), 2.4, k, 7),
                   mix(tone, "#f0dca8", 0.12 * (k % 3)),
                   flow=70, form=(320, 0.5, 14), lights=("#fbeab4", "#2c4c5c"), alpha=0.92)


def _heron(s: Surface) -> None:
    light, lit, shade = 315.0, "#fff6dc", "#2c3c5c"
    for x, bend in ((-12, -6), (22, 8)):
        s.fill(ribbon([[x, -190], [x + bend, -100], [x + bend * 0.3, 0]], [11, 6.5, 5.5]), "#6c6048", fine=0.9)
        s.fill(oval(x + bend, -100, 6, 8), "#6c6048", fine=0.9)
    s.fill(edges([[-118, -176], [-70, -280], [24, -330], [66, -300]], [[66, -300], [72, -230], [34, -186]],
           [[34, -186], [-40, -172], [-118, -176]]),
           "#8494a6", flow=35, fine=0.6, vary=0.08, form=(light, 0.8, 38), lights=(lit, shade))
    s.fill(blob([-100, -172], [-40, -206], [30, -226], [66, -240], [58, -196], [-30, -172]), shade, alpha=0.5, soft=12)
    s.fill(blob([-60, -270], [0, -312], [50, -302], [30, -282], [-20, -262]), "#c4d0d8", alpha=0.55, soft=9)
    s.fill(edges([[-150, -150], [-96, -220], [0, -286], [30, -270]], [[30, -270], [16, -210], [-50, -176]],
           [[-50, -176], [-100, -156], [-150, -150]]),
           "#6c7c92", flow=35, fine=0.6, form=(light, 0.6, 16), lights=(lit, shade))
    for k in range(11):
        x, y = 14 - 14 * k, -262 + 9.6 * k
        s.fill(blob([x, y], [x - 26, y + 22], [x - 52, y + 40], [x - 40, y + 18], [x - 14, y - 4]),
               mix("#5c6c84", "#98a8b8", (k % 3) / 3), fine=0.8,
               flow=35, form=(light, 0.5, 5), lights=(lit, shade))
    for k in range(5):
        s.fill(ribbon([[-92 - 8 * k, -196 + 6 * k], [-126 - 5 * k, -168 + 5 * k], [-160 - 2 * k, -142 + 6 * k]],
               [9, 8, 2]), "#2f3a50", fine=0.8)
    neck = spline([[28, -262], [52, -306], [92, -340], [96, -404], [46, -446], [26, -498], [58, -538]])
    s.fill(ribbon(neck, [84, 64, 44, 34, 30, 28, 30], False), "#d4d6d4", fine=0.6, flow=80, form=(light, 0.75, 12),
           lights=(lit, shade))
    for k in range(10):
        x, y = neck[16 + 6 * k]
        s.fill(ribbon([[x + 4, y - 5], [x + 9, y + 3], [x + 8, y + 12]], [1, 4.4, 1]), "#3c465c", alpha=0.85, fine=1)
    for k in range(9):
        x = 48 + 5.5 * k
        s.fill(ribbon([[x, -318 + 4 * k], [x + 8 - 2 * k, -270 + 5 * k], [x - 2 - 3 * k, -222 + 6 * k]],
               [4, 6.5, 0.5]), mix("#eef0ea", "#a0acb8", (k % 3) / 3), fine=0.9)
    s.fill(blob([32, -530], [44, -560], [78, -566], [106, -548], [100, -530], [60, -518]), "#eceae2", fine=0.8,
           form=(light, 0.6, 8), lights=(lit, shade))
    s.fill(edges([[96, -556], [150, -548], [206, -536]], [[206, -536], [150, -532], [98, -530]],
           [[98, -530], [96, -556]]), "#e0a438", fine=1,
           form=(light, 0.5, 5), lights=("#fff0b0", "#6c4420"))
    s.fill(ribbon([[98, -542], [150, -540], [204, -536]], 1.6), "#7c5424", fine=1)
    s.fill(edges([[96, -556], [70, -562], [44, -556], [10, -528], [-30, -506]], [[-30, -506], [6, -538], [40, -570],
           [76, -574], [96, -556]]), "#26304a", fine=1)
    s.fill(ribbon([[40, -556], [0, -524], [-44, -510]], [6, 4, 1]), "#26304a", fine=1)
    s.fill(oval(88, -546, 6, 6), "#f2cc3c", fine=1)
    s.fill(oval(89.5, -546, 3, 3.2), "#16141c", fine=1)
    s.fill(oval(90.6, -547.4, 1.1, 1.1), "#ffffff", fine=1)


def _reeds(s: Surface, rng: np.random.Generator) -> None:
    for k in range(round(110 * s.strewn)):
        left = k % 3 != 0
        x = rng.uniform(-20, 190) if left else rng.uniform(600, 785)
        foot = rng.uniform(900, 1010)
        tall = rng.uniform(180, 460) * (1.0 if left else 0.75)
        lean = rng.normal(14 if left else -14, 24)
        s.fill(ribbon([[x, foot], [x + lean * 0.3, foot - tall * 0.55], [x + lean * 1.6, foot - tall]], [8, 6, 1]),
               ("#3f6c4c", "#5c8a50", "#8aa85c", "#2c5048", "#b8b468")[int(rng.integers(5))], flow=88, fine=0.85,
               vary=0.1)
    for x, y in ((48, 600), (104, 540), (152, 660), (690, 680), (736, 620)):
        s.fill(ribbon([[x, 960], [x + 3, 800], [x, y]], [6, 5, 4]), "#6c8a50", fine=0.8)
        s.fill(ribbon([[x, y + 6], [x, y - 30], [x + 1, y - 66]], [15, 18, 13]), "#6c4028", fine=0.8,
               form=(310, 0.8, 5), lights=("#f0c088", "#24182c"))
        s.fill(ribbon([[x + 1, y - 64], [x + 1, y - 92]], [4, 1], False), "#a88c58", fine=0.8)
