"""The pictures of Isaure Quenby, an invented lamp-maker and painter: the harbour and its lamp house."""
# Points are set out by hand.
# fmt: off

from __future__ import annotations

import numpy as np
from PIL import Image

from .brush import painted
from .props import gull, house, lamp_house, lugger, person, pot, rowing_boat, smoke
from .shapes import blob, box, edges, oval, ragged, ribbon, shifted, spline
from .surface import Surface, mix, ramp


def _dusk_sky(s: Surface, horizon: float, sun: float) -> None:
    sky = ramp((0, 0), (0, horizon), (0, "#43569a"), (0.3, "#7478ae"), (0.55, "#b08aa4"), (0.78, "#e8a58a"),
           (1, "#f9cf86"))
    s.fill(box(-2, -2, s.width + 2, horizon + 40), sky, flow=4, fine=0.2, vary=0.08)
    s.glow(sun, horizon, 420, "#ffb45c", 0.75, squash=0.55)
    band = np.clip(s.noise(150, 5.5, 5, seed=1, contrast=2.2) - 0.42, 0, 1) * 1.7
    height = np.clip(1 - s.y / horizon, 0, 1)
    s.tint(band * np.clip(height * 1.6, 0, 0.6), "#565a96")
    clouds = s.noise(150, 5.5, 5, seed=1, contrast=2.2)
    above = round(9 * s.scale)
    under = np.clip(clouds - np.vstack([clouds[:1].repeat(above, 0), clouds[:-above]]), 0, 1)
    s.tint(under * 4.0 * np.clip(1.2 - abs(height - 0.35) * 1.6, 0, 1), "#ffc79a")
    s.flow += (s.noise(300, 3, 2, seed=2) - 0.5) * 1.1


def harbour_at_dusk(pixels: int) -> Image.Image:
    """The Harbour at Dusk: boats at rest, the lamp just lit."""
    s = Surface(1000, 738, pixels, seed=11)
    horizon = 352.0
    _dusk_sky(s, horizon, 640)
    _town(s, horizon)
    _quay_at_dusk(s)
    _water_at_dusk(s)
    with s.at(640, 610, 1.25, water=0.3, fade=0.5, fade_to="#1f2848"):
        rowing_boat(s, "#2f5a58", "#7c5c44")
    with s.at(640, 610, 1.25):
        rowing_boat(s, "#3c7470", "#8d6a4c")
    _rower(s)
    _near_corner(s)
    for x, y, size, tilt in ((470, 150, 15, 8), (520, 118, 11, -10), (706, 214, 9, 5), (424, 204, 8, 12)):
        gull(s, x, y, size, "#f6ece4", tilt)
    with s.at(470, 352, 0.42, fade=0.2, fade_to="#4a4470"):
        person(s, "#5a3f52", "#3c3854", "#2f2734", lantern=True)
    s.glow(480, 335, 26, "#ffd98a", 0.6)
    shadow = np.clip((s.y - 560) / 300, 0, 1) * 0.25 + np.clip((120 - s.y) / 260, 0, 1) * 0.15
    s.darken(shadow)
    return painted(s)


def rgb_dark(rng: np.random.Generator) -> str:
    """One of the dark blues of the evening water."""
    return ("#2a3560", "#38416c", "#434a78")[int(rng.integers(0, 3))]


def _rower(s: Surface) -> None:
    """The rower and the lantern in the near boat."""
    with s.at(618, 588, 0.86):
        s.fill(ribbon([[30, -26], [90, 2], [150, 38]], [3, 4, 9], False), "#b08a5e", fine=1)
        s.fill(ribbon([[-20, -26], [-80, 6], [-130, 44]], [3, 4, 9], False), "#a07c54", fine=1)
        s.fill(blob([-26, 2], [-27, -36], [-12, -58], [14, -58], [28, -36], [27, 2]), "#394a72", fine=1, flow=80,
               form=(20, 0.6, 8), lights=("#ffd898", "#221f3c"))
        s.fill(ribbon([[18, -48], [38, -36], [36, -22]], [12, 10, 8]), "#43557e", fine=1)
        s.fill(ribbon([[-16, -48], [-34, -34], [-26, -22]], [12, 10, 8]), "#303e64", fine=1)
        s.fill(oval(2, -72, 12, 14), "#cf9a74", fine=1, form=(20, 0.5, 5))
        s.fill(blob([-14, -74], [-12, -86], [2, -92], [16, -86], [17, -75], [2, -79]), "#8c3a34", fine=1)
        s.fill(blob([-10, -68], [-6, -58], [2, -54], [11, -58], [14, -68], [8, -64], [2, -66], [-4, -64]), "#8a6a50",
               fine=1)
        for x in (-3, 7):
            s.fill(oval(x, -73, 1.4, 1.8), "#2c2030", fine=1)
    with s.at(742, 566, 1.0):
        s.fill(ribbon([[0, 0], [0, -50]], 2.5, False), "#33283a", fine=1)
        s.fill(ribbon([[0, -48], [-14, -48]], 2, False), "#33283a", fine=1)
        s.fill(box(-20, -42, -8, -24), "#33283a", fine=1)
        s.fill(box(-18, -40, -10, -26), "#fff2b4", fine=1)
        s.fill([[-22, -42], [-6, -42], [-14, -49]], "#33283a", fine=1)
    s.glow(728, 534, 110, "#ffcf7e", 0.9)
    s.fill(ribbon([[728, 628], [732, 660], [726, 700]], [8, 16, 8]), "#ffcf86", alpha=0.5, soft=4)


def the_lamp_house_on_the_quay(pixels: int) -> Image.Image:
    """The Lamp House on the Quay: a bright windy morning after the gale."""
    s = Surface(780, 1000, pixels, seed=13)
    horizon = 640.0
    s.fill(box(-2, -2, 782, horizon + 4), ramp((0, 0), (0, horizon), (0, "#4f86bc"), (0.5, "#93bcd6"),
           (1, "#e6e6d2")), flow=10, vary=0.05)
    s.flow += (s.noise(260, 2, 2, seed=2) - 0.5) * 2.2
    _cumulus(s)
    s.fill(ragged([[470, 642], [540, 606], [640, 584], [720, 596], [785, 572], [785, 650], [470, 650]], 1.5, 3),
           "#7f9aa2", flow=8, vary=0.1)
    s.fill(box(-2, horizon, 782, 1002), ramp((0, horizon), (0, 1000), (0, "#6fa0aa"), (0.3, "#3f7f90"),
           (1, "#1f5468")), flow=-6,
           fine=0.35, vary=0.1)
    _waves(s, horizon)
    with s.at(656, 694, 0.62):
        lugger(s, "#8a3c34", "#c07a44", False)
    s.fill(ribbon([[590, 697], [650, 693], [730, 699]], [1, 5, 1]), "#f4f6ee", alpha=0.9)
    _quay_wall(s)
    with s.at(262, 706, 1.92):
        lamp_house(s, wall="#f2ead8", roof="#b0463a", dusk=-0.2, lit=False)
    s.fill(edges([[360, 700], [420, 694], [520, 706]], [[520, 706], [440, 716], [350, 712]]), "#5c5c70", alpha=0.5,
           soft=5)
    _spray(s)
    with s.at(96, 716, 0.86):
        house(s, -70, 0, 108, 96, "#d8c4a0", "#7c5a50", "01d", 0.6, True)
    smoke(s, 112, 600, 80, "#f0ece4", 1.0)
    _watchers(s)
    for x, y, size, tilt in ((560, 470, 26, 14), (640, 430, 18, -12), (110, 420, 20, 10), (690, 520, 13, 6),
           (60, 300, 14, -8)):
        gull(s, x, y, size, "#fbf8f0", tilt)
        s.fill(ribbon([[x - size * 0.9, y - size * 0.14], [x - size * 0.45, y - size * 0.32]], size * 0.07),
               "#6c7480", fine=0.9)
    pot(s, 36, 722, 40)
    s.fill(box(540, 670, 554, 714), "#5c4a40", fine=0.9, flow=90)
    _perched(s, 547, 670)
    _dog(s, 332, 726)
    return painted(s, relief=0.06)


def _cumulus(s: Surface) -> None:
    rng = np.random.default_rng(9)
    for x, y, size in ((120, 470, 92), (560, 330, 120), (700, 520, 86), (420, 540, 70), (60, 180, 84), (640, 90, 70)):
        for layer, (tone, dy) in enumerate((("#8fa4ba", 18), ("#c9d2d6", 6), ("#fdf8ea", -8))):
            for _ in range(11):
                dx = rng.normal(0, size * 0.75)
                lump = size * rng.uniform(0.24, 0.44) * (1 - abs(dx) / (size * 3.2))
                s.fill(oval(x + dx - 5 * layer, y + dy + rng.normal(0, size * 0.1) - lump * 0.3, max(lump, 6) * 1.2,
                       max(lump, 6), wobble=0.1,
                            seed=layer), tone, alpha=0.62, soft=4 + 2 * (2 - layer), flow=float(rng.uniform(-30, 30)))


def _waves(s: Surface, horizon: float) -> None:
    rng = np.random.default_rng(17)
    for k in range(0, 13, round(1 / s.strewn)):
        depth = (k / 12) ** 1.4
        y = horizon + 14 + 340 * depth
        high = 3 + 30 * depth
        x = -60.0 + rng.uniform(-60, 0)
        while x < 800:
            long = (50 + 190 * depth) * rng.uniform(0.8, 1.3)
            crest = [[x, y], [x + long * 0.3, y - high * 0.5], [x + long * 0.55, y - high],
                   [x + long * 0.8, y - high * 0.3], [x + long, y]]
            s.fill(edges(crest, [[x + long, y], [x + long * 0.5, y + high * 0.5], [x, y]]), mix("#2f7084", "#184a60",
                   rng.random()), flow=-12,
                   alpha=0.85, form=(250, 0.5, 3 + 7 * depth), lights=("#bfe6dc", "#12303f"))
            foam = spline(shifted(crest[:4], 0, -high * 0.1))
            s.fill(ribbon(foam, [0.6, 1.5 + 7 * depth, 1.0], False), "#f4f6ee", alpha=0.9, fine=0.6)
            for _ in range(int(3 + 5 * depth)):
                fx = x + long * rng.uniform(0.2, 0.7)
                s.fill(oval(fx, y - high * rng.uniform(-0.3, 0.7), 2 + 10 * depth, 1 + 2.4 * depth, -12), "#e6f0ea",
                       alpha=0.5)
            x += long * rng.uniform(0.75, 1.05)


def _spray(s: Surface) -> None:
    rng = np.random.default_rng(23)
    for k in range(420):
        a = rng.normal(-1.45, 0.42)
        r = 150 * rng.random() ** 1.3
        x, y = 596 + r * float(np.cos(a)), 850 + r * float(np.sin(a)) * 1.25 + rng.normal(0, 8)
        size = max(1.0, (13 if k < 200 else 5) * rng.uniform(0.4, 1.1) * (1 - r / 190))
        tone = "#d4e2e4" if k < 120 else "#fdfdf6"
        s.fill(oval(x, y, size * 0.8, size * 1.3, float(np.degrees(a)) + 90), tone, alpha=0.7, soft=size * 0.16,
               flow=float(np.degrees(a)))
    for _ in range(60):
        x = rng.uniform(-10, 600)
        s.fill(oval(x, 912 + rng.normal(0, 10) - x * 0.03, rng.uniform(12, 40), rng.uniform(4, 9)), "#eef4ee",
               alpha=0.7, soft=2, flow=0)


def _kite(s: Surface, x: float, y: float) -> None:
    s.fill([[x, y - 62], [x + 40, y - 10], [x - 16, y + 56], [x - 44, y - 18]], "#e2b13c", fine=0.9,
           form=(220, 0.4, 12))
    s.fill([[x, y - 62], [x + 40, y - 10], [x - 5, y - 14]], "#c8443a", fine=0.9)
    s.fill([[x - 16, y + 56], [x - 44, y - 18], [x - 5, y - 14]], "#c8443a", fine=0.9)
    s.fill(ribbon([[x, y - 62], [x - 16, y + 56]], 2.4, False), "#4c3428", fine=1)
    s.fill(ribbon([[x + 40, y - 10], [x - 44, y - 18]], 2.4, False), "#4c3428", fine=1)
    tail = spline([[x - 16, y + 56], [x + 14, y + 92], [x + 2, y + 130], [x + 36, y + 160], [x + 30, y + 196]])
    s.fill(ribbon(tail, 2, False), "#4c3428", fine=1)
    for k, c in ((14, "#3c6c9c"), (26, "#c8443a"), (38, "#3c6c9c"), (50, "#c8443a")):
        bx, by = tail[k]
        s.fill([[bx, by], [bx - 12, by - 8], [bx - 10, by + 8]], c, fine=1)
        s.fill([[bx, by], [bx + 12, by - 6], [bx + 11, by + 9]], c, fine=1)


def _perched(s: Surface, x: float, y: float) -> None:
    s.fill(blob([x - 18, y - 12], [x - 8, y - 22], [x + 8, y - 20], [x + 12, y - 8], [x + 2, y - 1], [x - 8, y - 2]),
           "#f6f2e8", fine=1,
           form=(220, 0.5, 5))
    s.fill(blob([x - 26, y - 8], [x - 8, y - 19], [x + 4, y - 14], [x - 8, y - 6]), "#8a94a2", fine=1)
    s.fill(oval(x + 11, y - 24, 7, 6.5), "#f8f4ea", fine=1)
    s.fill([[x + 16, y - 25], [x + 26, y - 22], [x + 16, y - 21]], "#e0a030", fine=1)
    s.fill(oval(x + 13, y - 25.5, 1.2, 1.2), "#20202c", fine=1)


def _dog(s: Surface, x: float, y: float) -> None:
    s.fill(blob([x - 22, y - 16], [x - 12, y - 24], [x + 10, y - 23], [x + 16, y - 14], [x + 6, y - 9],
           [x - 14, y - 9]), "#f0e8da", fine=1,
           form=(220, 0.5, 5))
    s.fill(blob([x - 10, y - 23], [x + 4, y - 23], [x + 2, y - 14], [x - 8, y - 14]), "#8a5a38", fine=1)
    for dx in (-16, -10, 6, 12):
        s.fill(ribbon([[x + dx, y - 12], [x + dx + 1, y]], 4, False), "#e6dccc", fine=1)
    s.fill(ribbon([[x - 21, y - 18], [x - 30, y - 26], [x - 29, y - 33]], [4, 3, 2]), "#f0e8da", fine=1)
    s.fill(oval(x + 19, y - 26, 8, 6.5), "#f0e8da", fine=1)
    s.fill(oval(x + 26, y - 24, 5, 3.5), "#e6dccc", fine=1)
    s.fill(blob([x + 12, y - 30], [x + 17, y - 31], [x + 15, y - 20], [x + 11, y - 22]), "#8a5a38", fine=1)
    s.fill(oval(x + 30, y - 25, 1.8, 1.6), "#2a2028", fine=1)
    s.fill(oval(x + 21, y - 28, 1.1, 1.1), "#2a2028", fine=1)


def _town(s: Surface, horizon: float) -> None:
    """Far hills, and the town on its slope."""
    for seed, top, colour in ((3, 60, "#8d7f9f"), (4, 36, "#6a668e")):
        rng = np.random.default_rng(seed)
        x = np.linspace(430, 1020, 12)
        y = horizon - top * (0.35 + 0.65 * np.sin((x - 430) / 590 * 2.2) ** 2) - rng.uniform(0, 10, 12)
        s.fill(np.vstack([np.column_stack([x, y]), [[1020, horizon + 2], [430, horizon + 2]]]),
               ramp((0, horizon - 70), (0, horizon), (0, colour), (1, mix(colour, "#e9a98e", 0.45))), flow=8, vary=0.1)
    hill = [[-10, 190], [60, 172], [150, 196], [240, 214], [330, 262], [410, 318], [450, horizon + 2],
           [-10, horizon + 2]]
    s.fill(ragged(hill, 2.5, 8), ramp((0, 170), (0, 350), (0, "#40486a"), (1, "#545068")), flow=30, fine=0.4, vary=0.16)
    rows = ((212, 36, 40), (250, 46, 48), (296, 58, 60), (350, 70, 74))
    walls = ("#a58e92", "#b89c8c", "#8e8598", "#c4a892", "#9a8a94")
    roofs = ("#5b4458", "#6d4a4c", "#474360", "#74504a")
    rng = np.random.default_rng(21)
    lit = ("10", "01d", "11", "0", "1d", "011")
    count = 0
    for y, w, h in rows:
        x = -20.0 + rng.uniform(0, 20)
        limit = 118 + (y - 200) * 1.95
        while x < limit:
            size = w * rng.uniform(0.85, 1.2)
            house(s, x, y + rng.uniform(-4, 8), size, h * rng.uniform(0.85, 1.15), walls[count % 5], roofs[count % 4],
                  lit[count % 6], 1.0, count % 3 == 1)
            if count % 4 == 1:
                smoke(s, x + size * 0.74, y - h - size * 0.4, 54, "#c9bccb")
            x += size * rng.uniform(0.98, 1.3)
            count += 1


def _quay_at_dusk(s: Surface) -> None:
    """The quay with the lamp house and the first of their reflections."""
    s.fill(blob([440, 352], [520, 349], [640, 350], [760, 352], [640, 353]), "#4a4560", alpha=0.6)
    s.fill(box(-5, 352, 1005, 392), ramp((0, 352), (0, 390), (0, "#d9a18c"), (1, "#8c7c96")), flow=0)
    quay_top = 352
    with s.at(604, quay_top - 2, 0.82):
        lamp_house(s, dusk=0.6)
    s.glow(604, quay_top - 188, 150, "#ffd98a", 0.85)
    s.glow(604, quay_top - 188, 46, "#fff2c0", 0.8)
    s.mirror(quay_top + 34, "#3b4568", 0.30, 1.05)
    s.fill([[-10, 350], [668, 350], [676, 358], [672, 386], [-10, 398]],
           ramp((0, 350), (0, 392), (0, "#a99a98"), (0.2, "#77707f"), (1, "#45455e")), flow=0, fine=0.7, vary=0.16)
    for row, y in enumerate((364, 374, 384)):
        s.fill(ribbon([[-5, y + 4], [300, y + 2], [674, y]], 1.2), "#3c3a52", alpha=0.5)
        for x in range(row * 11, 670, 24):
            s.fill(ribbon([[x, y], [x, y + 10]], 1.1, False), "#3c3a52", alpha=0.4)
    for x in (120, 250, 390, 508):
        s.fill(box(x, 338, x + 7, 352), "#35324a", fine=1)
        s.fill(oval(x + 3.5, 338, 5, 3), "#4b465c", fine=1)


def _water_at_dusk(s: Surface) -> None:
    """The harbour water, the two luggers and what the water makes of them."""
    water = (s.y > 388).astype(np.float32)
    s.fill(box(-5, 386, 1005, 745), ramp((0, 386), (0, 745), (0, "#6a6488"), (1, "#232c50")), alpha=0.34, flow=0,
           fine=0.25)
    s.fill(blob([660, 386], [1010, 384], [1010, 400], [640, 402]), "#f0b488", alpha=0.45, soft=5)
    for x, y0, y1, w, c, a in ((604, 392, 690, 30, "#ffd680", 0.75), (604, 392, 560, 12, "#fff0bc", 0.8),
                               (40, 398, 500, 9, "#ffcf7a", 0.5), (172, 398, 520, 9, "#ffcf7a", 0.5),
                               (264, 396, 480, 8, "#ffcf7a", 0.45), (352, 396, 500, 9, "#ffcf7a", 0.5)):
        s.fill(ribbon([[x, y0], [x + 2, (y0 + y1) / 2], [x, y1]], [w * 0.6, w, w * 0.5]), c, alpha=a, soft=w * 0.22,
               flow=0)
    for x, y, size, hull, sail, furled, flip in ((806, 436, 1.0, "#35546e", "#a4523c", True, False),
                                                 (330, 456, 1.12, "#6c3a3c", "#b4603e", False, True)):
        with s.at(x, y, size, mirror=flip, water=0.42, fade=0.35, fade_to="#39406a"):
            lugger(s, hull, sail, furled)
    s.ripple(water, 388, 15, 2.0)
    for x, y, size, hull, sail, furled, flip in ((806, 436, 1.0, "#35546e", "#a4523c", True, False),
                                                 (330, 456, 1.12, "#6c3a3c", "#b4603e", False, True)):
        with s.at(x, y, size, mirror=flip, fade=0.08, fade_to="#4a4470"):
            lugger(s, hull, sail, furled)
    rng = np.random.default_rng(5)
    for _ in range(150):
        y = 400 + 330 * rng.random() ** 1.3
        x = rng.uniform(0, 1000)
        long = (8 + 46 * (y - 390) / 350) * rng.uniform(0.5, 1.3)
        near = np.exp(-(((x - 604) / 110) ** 2)) + 0.55 * np.exp(-(((x - 860) / 200) ** 2))
        light = mix("#5d6a9a", "#ffc98a", float(np.clip(near, 0, 1))) if rng.random() < 0.6 else rgb_dark(rng)
        s.fill(ribbon([[x - long, y], [x, y + rng.uniform(-2, 2)], [x + long, y]], [0.4, 1.4 + 3.4 * (y - 390) / 350,
               0.4]),
               light, alpha=0.6, flow=0)


def _near_corner(s: Surface) -> None:
    """The corner of the near quay: pots, a coil of rope, a post."""
    s.fill([[-5, 640], [90, 648], [190, 676], [236, 745], [-5, 745]],
           ramp((0, 640), (0, 745), (0, "#877a80"), (0.25, "#5c566a"), (1, "#2c2c48")), flow=15, fine=0.6, vary=0.2)
    s.fill(ribbon([[-5, 640], [90, 648], [190, 676], [214, 704]], [3, 4, 4, 2]), "#cda893", alpha=0.8)
    pot(s, 46, 668, 58)
    pot(s, 106, 684, 48)
    s.fill(ribbon([[130, 690], [160, 684], [186, 694], [160, 702], [132, 694]], 5), "#b99a6c", fine=1)
    s.fill(box(190, 640, 204, 694), ramp((190, 0), (204, 0), (0, "#6d5a52"), (1, "#2e2838")), fine=1, flow=90)
    s.fill(ribbon([[200, 650], [300, 700], [420, 640], [516, 570]], 2.4), "#c0a27a", alpha=0.85, fine=1)


def _quay_wall(s: Surface) -> None:
    """The stone quay and its steps."""
    s.fill(edges([[-10, 700], [200, 692], [520, 702], [560, 708]], [[560, 708], [578, 780], [584, 880]],
           [[584, 880], [300, 910], [-10, 920]]),
           ramp((0, 700), (0, 900), (0, "#cbbfa8"), (0.12, "#a39a90"), (1, "#5c5e68")), flow=0, fine=0.5, vary=0.12,
           form=(210, 0.4, 16))
    rng = np.random.default_rng(4)
    for row in range(6):
        y = 728 + 30 * row
        s.fill(ribbon([[-5, y + 4], [280, y - 2], [574, y + 2]], 2), "#4c4c58", alpha=0.5)
        for k in range(14):
            x = 10 + 44 * k + (22 if row % 2 else 0)
            if x < 566:
                s.fill(ribbon([[x, y], [x + 1, y + 29]], 1.8, False), "#4c4c58", alpha=0.45)
                s.fill(box(x + 3, y + 3, x + 40, y + 26), ("#d8c8a8", "#8a8c96", "#b0a08c")[int(rng.integers(3))],
                       alpha=0.22, soft=3)
    for k in range(6):
        s.fill(edges([[410 + 26 * k, 704 + 26 * k], [470 + 20 * k, 702 + 26 * k]], [[470 + 20 * k, 702 + 26 * k],
               [474 + 20 * k, 728 + 26 * k]],
                     [[474 + 20 * k, 728 + 26 * k], [412 + 26 * k, 730 + 26 * k]]), mix("#d4c8b0", "#5c6470",
                     0.12 * k), fine=0.7)


def _watchers(s: Surface) -> None:
    """The woman, the boy with his kite, and the keeper on the gallery."""
    with s.at(450, 716, 0.98):
        person(s, "#b8443c", "#3c4a6c", "#4a3428")
        s.fill(edges([[8, -77], [26, -86], [50, -80]], [[50, -80], [34, -66], [12, -60]], [[12, -60], [8, -77]]),
               "#c8543f", fine=0.9,
               form=(230, 0.6, 5))
    with s.at(372, 724, 0.74):
        person(s, "#3c7a6c", "#6c5a48", "#8a5a30")
        s.fill(ribbon([[10, -70], [24, -84], [30, -98]], [6, 5, 4]), "#3c7a6c", fine=1)
    s.fill(ribbon(spline([[394, 652], [452, 560], [520, 380], [596, 236]]), 1.6, False), "#5c5448", alpha=0.9, fine=1)
    _kite(s, 610, 206)
    with s.at(276, 341, 0.30):
        person(s, "#2c3c5c", "#2c3450", "#8a8480")
