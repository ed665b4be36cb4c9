"""The portraits of Tomasz Orrelin, an invented painter: himself, and a baker's daughter."""
# Points are set out by hand.
# fmt: off

from __future__ import annotations

import numpy as np
from PIL import Image

from .brush import painted
from .people import Face, face, hand_flat, strands
from .portraits import PORTRAIT
from .props import round_tree
from .shapes import blob, box, edges, oval, ribbon, spline
from .surface import Surface, halo, mix, ramp


def the_bakers_daughter(pixels: int) -> Image.Image:
    """The Baker's Daughter: a girl in a red headscarf behind a basket of loaves, morning light from the left."""
    s = Surface(800, 1000, pixels, seed=41)
    s.fill(box(-2, -2, 802, 1002), halo((180, 300), 900, (0, "#9fb59a"), (0.5, "#6f8d80"), (1, "#3c5a5c")), flow=50,
           vary=0.06)
    s.flow += (s.noise(200, 1, 2, seed=3) - 0.5) * 2.8
    _flowered_wall(s)
    light, glow, shade = 200.0, "#ffeec4", "#64384a"
    s.fill(edges([[110, 1040], [140, 850], [270, 738], [340, 696]], [[340, 696], [410, 704], [480, 696]],
                 [[480, 696], [566, 744], [676, 856], [706, 1040]]), "#e9dfc8", flow=80, vary=0.05,
                 form=(light, 0.7, 34),
           lights=("#fffdf0", "#4c5c84"))
    for x0, x1, x2 in ((250, 214, 206), (318, 300, 298), (500, 520, 520), (560, 606, 618)):
        s.fill(ribbon([[x0, 770], [x1, 880], [x2, 1000]], [3, 13, 9]), "#8e97a8", alpha=0.5, soft=5)
    s.fill(edges([[236, 1010], [254, 860], [300, 760]], [[300, 760], [410, 800], [528, 760]], [[528, 760], [566, 860],
           [580, 1010]]),
           "#35586e", flow=85, vary=0.06, form=(light, 0.6, 26), lights=("#b8d8d8", "#161c34"))
    for x in (300, 512):
        s.fill(ribbon([[x, 764], [x + (14 if x > 400 else -14), 700]], [34, 30], False), "#35586e",
               form=(light, 0.5, 8),
               lights=("#b8d8d8", "#161c34"))
    with s.at(410, 500, 1.34):
        face(s, Face(turn=-0.5, light=light, shade=shade, glow=glow, eyes="#6a4a2c", brows="#6b4424", lips="#c4605a",
               smile=0.8,
                     age=0.0, skin="#eab894", jaw=1.06))
    hair = ("#a8703a", "#c88e4a", "#8a5630", "#e0aa62")
    for side, seed in ((-1.0, 1), (1.0, 2)):
        end = spline([[398 + side * 92, 540], [398 + side * 106, 470], [398 + side * 88, 426]], steps=8)
        s.fill(edges([[400, 338], [400 + side * 60, 388], [400 + side * 92, 470], [400 + side * 88, 556]],
                     [[400 + side * 88, 556], [400 + side * 124, 440], [400 + side * 80, 330], [400, 310]]),
                     "#9a6636", fine=0.6)
        strands(s, spline([[400, 352], [398, 342], [396, 332]], steps=8), end, hair, 110, 0.3 * side, seed, 3.2)
        _plait(s, 404 + side * 116, 548, side, hair)
    _headscarf(s, light)
    with s.at(0, -22):
        s.fill(edges([[330, 676], [408, 716], [486, 676]], [[486, 676], [500, 734], [470, 770]],
               [[470, 770], [408, 742], [348, 770]],
                     [[348, 770], [318, 734], [330, 676]]), "#b8372e", vary=0.08, fine=0.7, form=(light, 0.75, 10),
               lights=("#ffb48c", "#3a1030"))
    _basket(s, light)
    s.darken(np.clip((s.x - 430) / 800, 0, 1) * 0.35)
    return painted(s, PORTRAIT, relief=0.045, careful=0.6)


def _plait(s: Surface, x: float, y: float, side: float, hair: tuple[str, ...]) -> None:
    for k in range(9):
        px, py = x + side * (3 * np.sin(k) + 2.2 * k), y + 21 * k
        for lean in (-1, 1):
            s.fill(oval(float(px) + lean * 8, py, 16 - 0.5 * k, 11, lean * 42), hair[(k + (lean > 0)) % 3], fine=0.8,
                   form=(200, 0.6, 4), lights=("#ffe6a8", "#4a2430"))
    bx, by = x + side * 22, y + 192
    for lean in (-1, 1):
        s.fill(blob([bx, by], [bx + lean * 26, by - 14], [bx + lean * 28, by + 10]), "#3a6f8a", fine=0.9,
               form=(200, 0.5, 5))
    s.fill(oval(bx, by, 7, 7), "#2c5a74", fine=0.9)
    s.fill(blob([bx - 9, by + 6], [bx + 9, by + 6], [bx + 7, by + 40], [bx, by + 50], [bx - 7, by + 40]), hair[0],
           fine=0.8,
           form=(200, 0.5, 4))


def _loaf(s: Surface, x: float, y: float, w: float, h: float, turn: float, light: float) -> None:
    s.fill(oval(x, y, w, h, turn, 0.04, int(x)), "#c07a38", flow=turn, fine=0.7, vary=0.1, form=(light, 0.8, h * 0.5),
           lights=("#ffe0a0", "#4a2020"))
    a = np.radians(turn)
    for k in (-0.5, 0.0, 0.5):
        cx, cy = x + w * k * float(np.cos(a)), y + w * k * float(np.sin(a)) - h * 0.2
        s.fill(ribbon([[cx - h * 0.35, cy + h * 0.3], [cx, cy - h * 0.1], [cx + h * 0.35, cy - h * 0.4]],
               [1, h * 0.24, 1]),
               "#f0cf94", fine=0.9)
        s.fill(ribbon([[cx - h * 0.32, cy + h * 0.38], [cx + 2, cy], [cx + h * 0.38, cy - h * 0.32]],
               [0.5, h * 0.1, 0.5]), "#7c421e",
               alpha=0.7, fine=0.9)


def _basket(s: Surface, light: float) -> None:
    for x, y, w, h, turn in ((300, 822, 96, 44, -24), (500, 820, 100, 44, 18), (400, 806, 92, 46, -4),
           (248, 866, 72, 40, 8),
                             (566, 866, 76, 40, -10), (410, 864, 108, 46, 6)):
        _loaf(s, x, y, w, h, turn, light)
    s.fill(edges([[160, 884], [410, 922], [652, 884]], [[652, 884], [640, 960], [620, 1040]],
           [[620, 1040], [196, 1040]],
                 [[196, 1040], [174, 960], [160, 884]]), "#8a6438", fine=0.6, form=(light, 0.6, 26))
    for row in range(5):
        y = 902 + 26 * row
        for k in range(17):
            x = 176 + 28 * k + (14 if row % 2 else 0)
            sag = 30 * (1 - ((x - 406) / 246) ** 2)
            if 168 + 4 * row < x < 646 - 4 * row:
                s.fill(oval(x, y + sag, 17, 10, 8 if row % 2 else -8), mix("#b98a4c", "#e6c27c", (k * 7 % 5) / 6),
                       fine=0.8,
                       form=(light, 0.6, 4), lights=("#fff0c0", "#42281c"))
    for k in range(20):
        x = 160 + 25.6 * k
        sag = 38 * (1 - ((x - 406) / 246) ** 2)
        s.fill(oval(x, 884 + sag, 17, 10, 35), "#caa060" if k % 2 else "#a87e44", fine=0.9, form=(light, 0.6, 4),
               lights=("#fff0c0", "#42281c"))
    with s.at(610, 878, 1.25):
        hand_flat(s, "#eab894", light, "#ffeec4", "#64384a")
    s.fill(ribbon([[690, 1040], [716, 950], [650, 880]], [150, 112, 58]), "#e9dfc8", fine=0.5, form=(light, 0.7, 18),
           vary=0.04,
           lights=("#fffdf0", "#4c5c84"))
    s.fill(ribbon([[636, 856], [644, 880], [634, 906]], [14, 16, 14]), "#35586e", fine=0.9, form=(light, 0.5, 5))


def tomasz_orrelin(pixels: int) -> Image.Image:
    """Tomasz Orrelin: the painter in a straw hat, before his orchard."""
    s = Surface(800, 1000, pixels, seed=43)
    s.fill(box(-2, -2, 802, 1002), ramp((0, 0), (0, 700), (0, "#a9c8d8"), (0.45, "#d8e2d0"), (0.7, "#d6cf94"),
           (1, "#a8a85c")),
           flow=8, vary=0.06)
    s.flow += (s.noise(220, 2, 2, seed=3) - 0.5) * 1.8
    s.fill(edges([[-10, 480], [200, 420], [460, 470], [820, 400]], [[820, 400], [820, 1010], [-10, 1010]]), "#8fa66a",
           flow=12, vary=0.1)
    s.fill(edges([[-10, 560], [260, 540], [560, 580], [820, 520]], [[820, 520], [820, 1010], [-10, 1010]]), "#7c9650",
           flow=-8, vary=0.12)
    for x, y, size in ((80, 560, 130), (700, 545, 150), (196, 500, 74), (600, 492, 80), (20, 690, 190),
           (772, 690, 200)):
        with s.at(x, y):
            from_tree(s, size, int(x))
    light, glow, shade = 215.0, "#fff0c0", "#6a3c40"
    s.fill(edges([[70, 1040], [104, 850], [256, 746], [336, 712]], [[336, 712], [412, 734], [494, 712]],
                 [[494, 712], [596, 750], [730, 856], [762, 1040]]), "#4c6a8a", flow=75, vary=0.06, form=(light, 0.65,
                 36),
           lights=("#cfe0e6", "#1a1c38"))
    for x0, x1, x2 in ((220, 172, 156), (290, 262, 254), (540, 580, 590), (620, 664, 676)):
        s.fill(ribbon([[x0, 780], [x1, 890], [x2, 1006]], [4, 15, 9]), "#22345a", alpha=0.45, soft=6)
    s.fill(edges([[344, 660], [484, 660]], [[484, 660], [476, 760], [416, 780], [354, 760], [344, 660]]), "#b98464")
    s.fill(edges([[330, 690], [412, 742], [500, 690]], [[500, 690], [524, 742], [470, 800]], [[470, 800], [414, 760],
           [362, 800]],
                 [[362, 800], [310, 746], [330, 690]]), "#ece2cc", fine=0.7, form=(light, 0.6, 9))
    with s.at(414, 510, 1.4):
        face(s, Face(turn=0.35, light=light, shade=shade, glow=glow, eyes="#5a5a34", brows="#5c4638", lips="#a8584c",
               smile=0.5,
                     age=0.6, skin="#d99e78", jaw=1.1))
    _beard(s, light)
    _straw_hat(s, light)
    s.fill(blob([310, 450], [414, 476], [520, 450], [506, 486], [414, 500], [322, 486]), "#4a2a30", alpha=0.34, soft=10)
    return painted(s, PORTRAIT, relief=0.045, careful=0.6)


def from_tree(s: Surface, size: float, seed: int) -> None:
    """An apple tree of the orchard, with fruit."""
    round_tree(s, size, "#5f8444", seed)
    rng = np.random.default_rng(seed)
    for _ in range(round(14 * s.strewn)):
        s.fill(oval(rng.normal(0, size * 0.15), -size * 0.7 + rng.normal(0, size * 0.1), size * 0.025, size * 0.025),
               "#c8402c", fine=0.8)


def _flowered_wall(s: Surface) -> None:
    """Wallpaper with sprigs."""
    rng = np.random.default_rng(6)
    for i in range(6):
        for j in range(8):
            x, y = 40 + 144 * i + (72 if j % 2 else 0), 50 + 118 * j
            if np.hypot(x - 400, y - 430) < 150:
                continue
            for k in range(5):
                a = np.radians(72 * k + rng.uniform(-8, 8))
                s.fill(oval(x + 11 * float(np.cos(a)), y + 11 * float(np.sin(a)), 8, 5, 72 * k), "#e4e2c4", alpha=0.5,
                       fine=0.7)
            s.fill(oval(x, y, 4.5, 4.5), "#d9a648", alpha=0.7, fine=0.7)
            s.fill(ribbon([[x + 4, y + 14], [x + 12, y + 30], [x + 6, y + 46]], [3, 2]), "#4d6f5c", alpha=0.6)


def _headscarf(s: Surface, light: float) -> None:
    """A red headscarf with dots."""
    s.fill(edges([[282, 500], [280, 350], [402, 262], [520, 348], [522, 500]], [[522, 500], [500, 396], [402, 348],
           [304, 396], [282, 500]]),
           "#b8372e", flow=30, vary=0.08, form=(light, 0.75, 22), lights=("#ffb48c", "#3a1030"), fine=0.6)
    for k in range(4):
        s.fill(ribbon([[296 + 10 * k, 480 - 20 * k], [330 + 14 * k, 372 - 12 * k], [402, 318 - 14 * k],
               [472 - 10 * k, 372 - 12 * k],
                       [508 - 8 * k, 480 - 20 * k]], [1, 4, 1]), "#7c1c28", alpha=0.4, soft=1.5)
    for k in range(30):
        a = np.radians(184 + (k % 10) * 19.2 + (k // 10) * 7)
        r = 0.8 + 0.11 * (k // 10)
        x, y = 402 + 124 * r * float(np.cos(a)), 470 + 180 * r * float(np.sin(a))
        if y < 470:
            s.fill(oval(x, y, 4.6, 4.6), "#f6e3b4", fine=0.9)


def _straw_hat(s: Surface, light: float) -> None:
    """A straw hat with a blue band."""
    straw = "#dcb868"
    s.fill(oval(414, 394, 250, 58, -3), mix(straw, "#5a3a2c", 0.4), fine=0.6, flow=0, form=(light, 0.6, 14))
    s.fill(edges([[298, 372], [306, 250], [414, 216], [524, 246], [534, 368]], [[534, 368], [416, 400], [298, 372]]),
           straw, flow=15,
           fine=0.6, vary=0.08, form=(light, 0.75, 26), lights=("#fff6d0", "#5a3434"))
    s.fill(edges([[296, 376], [300, 338]], [[300, 338], [416, 366], [532, 334]], [[532, 334], [536, 372]],
           [[536, 372], [416, 402], [296, 376]]),
           "#2f4a6c", fine=0.8, form=(light, 0.6, 12))
    s.fill(edges([[166, 404], [230, 424], [300, 376]], [[300, 376], [416, 404], [532, 372]], [[532, 372], [604, 408],
           [662, 382]],
                 [[662, 382], [560, 450], [414, 462], [262, 458], [166, 404]]), straw, flow=4, fine=0.7, vary=0.08,
           form=(light - 30, 0.75, 16), lights=("#fff6d0", "#5a3434"))
    for k in range(9):
        drop = 6 + 6 * k
        s.fill(ribbon([[190 + 6 * k, 404 + drop * 0.5], [300, 398 + drop], [414, 408 + drop], [530, 396 + drop],
               [640 - 8 * k, 392 + drop * 0.5]],
                      [0.6, 1.6, 0.6]), "#8a6234", alpha=0.5, fine=0.8)


def _beard(s: Surface, light: float) -> None:
    """A full beard, with the mouth in it."""
    beard = ("#6a5444", "#8a7460", "#b0a08c", "#54402f", "#cabfae")
    s.fill(edges([[318, 520], [322, 600], [352, 690], [426, 740], [496, 690], [526, 600], [530, 520]],
                 [[530, 520], [500, 566], [466, 576]], [[466, 576], [428, 566], [388, 576]], [[388, 576], [346, 566],
                 [318, 520]]),
           "#715c4a", fine=0.6, form=(light, 0.6, 20), lights=("#f0dcb8", "#2c1c24"))
    s.fill(oval(424, 596, 36, 14), "#a8584c", fine=1, soft=2, form=(-90, 0.4, 5))
    s.fill(ribbon([[388, 596], [424, 601], [460, 594]], [1.4, 3.4, 1.4]), "#4e1f2a", fine=1)
    top = spline([[322, 530], [346, 580], [392, 612], [428, 616], [464, 610], [504, 576], [526, 530]])
    low = spline([[326, 610], [352, 690], [396, 736], [426, 750], [458, 736], [500, 688], [524, 610]])
    strands(s, top, low, beard, 330, 0.06, 4, 3.6)
    for side in (-1.0, 1.0):
        strands(s, spline([[426, 572], [426 + side * 14, 570], [426 + side * 26, 574]]),
                spline([[426 + side * 46, 606], [426 + side * 62, 600], [426 + side * 70, 590]]), beard, 70,
                0.22 * side, 6, 3.2)
        strands(s, spline([[426 + side * 100 - 6, 420], [426 + side * 106 - 6, 430]]),
               spline([[426 + side * 102 - 6, 540], [426 + side * 110 - 6, 530]]),
                beard, 50, 0.05, 7, 3.2)
