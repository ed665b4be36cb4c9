"""Pictures indoors: a mother reading by lamplight, and a table with a jug and lemons."""
# Points are set out by hand.
# fmt: off

from __future__ import annotations

import numpy as np
from PIL import Image

from .brush import OIL, Brush, painted
from .people import Face, face, hand_flat, strands
from .props import lugger
from .shapes import arc, blob, box, edges, oval, ribbon, shifted, spline
from .surface import Surface, halo, mix, ramp

INDOORS = (*OIL[:3], Brush(2.1, 10, 0.035, 0.022), Brush(1.0, 9, 0.04, 0.01))
GLOW, SHADE = "#ffdc98", "#4a2c3e"


def cat(s: Surface, fur: str, light: float) -> None:
    """A cat asleep, curled up, about 150 units wide, lying on y = 0."""
    dark = mix(fur, "#2c1c24", 0.55)
    s.fill(blob([-70, -4], [-76, -34], [-46, -64], [4, -70], [52, -56], [72, -26], [62, -2], [0, 4]), fur, flow=20,
           fine=0.6,
           form=(light, 0.7, 16), lights=(GLOW, SHADE), vary=0.14)
    for k in range(7):
        x = -40 + 15 * k
        s.fill(ribbon([[x, -66 + abs(k - 3) * 3], [x + 10, -48], [x + 8, -34]], [2, 5.5, 1]), dark, alpha=0.75,
               fine=0.8)
    s.fill(ribbon([[66, -16], [44, 4], [-6, 8], [-52, 2], [-66, -10]], [17, 18, 16, 13, 9]), mix(fur, dark, 0.25),
           fine=0.8,
           form=(light, 0.6, 6), lights=(GLOW, SHADE))
    for k in range(5):
        s.fill(ribbon([[40 - 22 * k, -3 + k * 0.8], [38 - 22 * k, 13 - k]], [6, 4], False), dark, alpha=0.7, fine=0.8)
    s.fill(oval(-50, -30, 27, 22, -14), mix(fur, "#fff0dc", 0.12), fine=0.9, form=(light, 0.6, 9), lights=(GLOW, SHADE))
    for x, lean in ((-66, -7), (-42, 5)):
        s.fill([[x - 9, -42], [x + lean, -66], [x + 10, -45]], fur, fine=1)
        s.fill([[x - 4, -45], [x + lean, -59], [x + 5, -46]], "#d88e80", fine=1)
    for x in (-62, -46):
        s.fill(ribbon([[x - 5, -30], [x, -27], [x + 5, -31]], [0.8, 1.8, 0.8]), "#2c1c24", fine=1)
    s.fill([[-59, -22], [-53, -23], [-56, -19]], "#b8605c", fine=1)
    for side in (-1, 1):
        s.fill(ribbon([[-56, -19], [-56 + side * 6, -16], [-56 + side * 8, -18]], 1), "#2c1c24", fine=1)
        for k in (-2, 2):
            s.fill(ribbon([[-56 + side * 8, -20], [-56 + side * 34, -20 + k * 2.4]], 0.8, False), "#f7ead8",
                   alpha=0.8, fine=1)


def _room(s: Surface) -> None:
    wall = halo((712, 340), 760, (0, "#c89a58"), (0.35, "#8c6248"), (0.7, "#543c48"), (1, "#302a40"))
    s.fill(box(-2, -2, 1002, 640), wall, flow=80, fine=0.25, vary=0.05)
    for i in range(22):
        x = 24 + 46 * i
        s.fill(box(x, -2, x + 14, 600), "#2c2238", alpha=0.10)
        for j in range(10):
            y = 26 + 58 * j + (29 if i % 2 else 0)
            s.fill(oval(x + 7, y, 5, 8), "#e8b878", alpha=0.26, fine=0.5)
            s.fill(ribbon([[x + 7, y + 6], [x + 7, y + 20]], 2, False), "#e8b878", alpha=0.18)
    s.fill(box(-2, 596, 1002, 616), "#5c4034", fine=0.6, vary=0.1)
    s.fill(box(-2, 614, 1002, 802), ramp((0, 614), (0, 802), (0, "#6a4838"), (1, "#3c2834")), flow=0, vary=0.1)
    for k in range(7):
        y = 622 + 26 * k
        s.fill(ribbon([[-5, y], [1005, y]], 2, False), "#2c1c28", alpha=0.5)
    s.fill(oval(520, 722, 400, 72), "#7c3238", fine=0.4, flow=0)
    for r, c in ((370, "#d0a058"), (346, "#3a4a68"), (316, "#a8503c"), (270, "#d0a058"), (254, "#7c3238")):
        s.fill(oval(520, 722, r, r * 0.18), c, fine=0.5, flow=0)
    s.fill(box(60, 70, 262, 372), "#4c362e", fine=0.7, flow=90, form=(0, 0.4, 6))
    s.fill(box(76, 86, 246, 356), ramp((0, 86), (0, 356), (0, "#1f2c54"), (1, "#4c628e")), fine=0.5, flow=20)
    rng = np.random.default_rng(2)
    for _ in range(26):
        s.fill(oval(rng.uniform(80, 242), rng.uniform(90, 300), 1.6, 1.6), "#f4ecd4", fine=1)
    s.fill(oval(196, 146, 24, 24), "#f2e6be", fine=1)
    s.fill(oval(206, 140, 22, 22), "#26345e", fine=1)
    s.fill(edges([[76, 330], [130, 300], [186, 322], [246, 296]], [[246, 296], [246, 356], [76, 356]]), "#1c2444",
           fine=0.6)
    s.fill(box(157, 86, 165, 356), "#5a4034", fine=0.8)
    s.fill(box(76, 216, 246, 224), "#5a4034", fine=0.8)
    for x0, x1, lean in ((40, 92, 1), (230, 284, -1)):
        s.fill(edges([[x0, 52], [x1, 52]], [[x1, 52], [x1 - 14 * lean * (lean > 0), 200],
               [x1 + (0 if lean > 0 else 12), 408]],
                     [[x1, 408], [x0, 408]], [[x0, 408], [x0 + 8, 220], [x0, 52]]), "#8c3c3c", flow=85, fine=0.5,
               form=(0, 0.6, 12), lights=(GLOW, SHADE), vary=0.1)
    s.fill(ribbon([[26, 52], [298, 52]], 9, False), "#b08850", fine=0.8)
    s.fill(box(426, 74, 596, 196), "#b08048", fine=0.8, form=(20, 0.6, 6), lights=(GLOW, SHADE))
    s.fill(box(438, 86, 584, 184), ramp((0, 86), (0, 184), (0, "#9cb4bc"), (0.6, "#dcd0b0"), (0.62, "#5c8890"),
           (1, "#3c6474")), fine=0.7)
    with s.at(512, 162, 0.42):
        lugger(s, "#5c3434", "#a8583c", False)


def _lamp(s: Surface) -> None:
    s.fill(box(690, 520, 704, 690), "#4c3028", fine=0.7, flow=90)
    s.fill(edges([[640, 690], [697, 660], [754, 690]], [[754, 690], [697, 704], [640, 690]]), "#4c3028", fine=0.7)
    s.fill(oval(697, 516, 112, 26), "#6c4630", fine=0.7, form=(-90, 0.6, 10), lights=(GLOW, SHADE))
    s.fill(oval(697, 510, 108, 22), "#a87448", fine=0.7, flow=0)
    s.fill(edges([[588, 512], [597, 600]], [[597, 600], [640, 560], [697, 606], [754, 560], [798, 598]],
           [[798, 598], [806, 512]],
                 [[806, 512], [697, 538], [588, 512]]), "#e4d4b0", fine=0.6, form=(-80, 0.7, 14),
                 lights=(GLOW, SHADE), flow=85)
    for x in (620, 664, 730, 776):
        s.fill(ribbon([[x, 530], [x + 3, 584]], [2, 5], False), "#8c7058", alpha=0.5, soft=2)
    s.fill(blob([660, 508], [668, 476], [697, 468], [726, 476], [734, 508], [697, 518]), "#3c6a72", fine=0.9,
           form=(-90, 0.7, 10),
           lights=(GLOW, SHADE))
    s.fill(box(684, 450, 710, 472), "#c89a4c", fine=0.9, form=(0, 0.5, 5))
    s.fill(edges([[684, 452], [676, 420], [688, 352]], [[688, 352], [706, 352]], [[706, 352], [718, 420],
           [710, 452]]), "#fff2bc", fine=0.9)
    s.fill(blob([697, 380], [707, 420], [697, 444], [687, 420]), "#ffffff", fine=1)
    s.fill(edges([[642, 432], [664, 360]], [[664, 360], [697, 352], [730, 360]], [[730, 360], [752, 432]],
           [[752, 432], [697, 448], [642, 432]]),
           halo((697, 404), 60, (0, "#fffbe0"), (0.6, "#ffe6a0"), (1, "#f0b45c")), fine=0.9)
    s.fill(ribbon([[640, 432], [697, 449], [754, 432]], 5), "#c07a3c", fine=0.9)
    s.fill(oval(758, 500, 28, 8), "#e8e0cc", fine=0.9)
    s.fill(edges([[738, 474], [742, 498]], [[742, 498], [757, 504], [772, 498]], [[772, 498], [776, 474]]), "#4c74a0",
           fine=0.9,
           form=(190, 0.6, 7), lights=(GLOW, SHADE))
    s.fill(ribbon([[774, 478], [788, 480], [772, 494]], 4), "#4c74a0", fine=0.9)


def _mother(s: Surface) -> None:
    s.fill(edges([[294, 640], [270, 400], [300, 262], [400, 224]], [[400, 224], [510, 250], [548, 400], [560, 640]],
           [[560, 640], [294, 640]]),
           "#3f5c50", fine=0.4, flow=80, form=(10, 0.7, 26), lights=(GLOW, SHADE), vary=0.08)
    for x, y in ((330, 320), (480, 310), (322, 400), (400, 262)):
        s.fill(oval(x, y, 4, 4), "#24382f", fine=0.8)
    s.fill(edges([[300, 700], [286, 600], [340, 500]], [[340, 500], [430, 520], [520, 500]], [[520, 500], [600, 590],
           [640, 706]],
                 [[640, 706], [470, 742], [300, 700]]), "#7c3a54", flow=70, fine=0.5, form=(10, 0.75, 26),
                 lights=(GLOW, SHADE), vary=0.06)
    for pts in ([[380, 540], [366, 620], [372, 716]], [[450, 560], [462, 640], [458, 728]], [[530, 550], [566, 630],
           [580, 712]]):
        s.fill(ribbon(pts, [3, 14, 8]), "#3c1c34", alpha=0.5, soft=5)
    s.fill(edges([[336, 520], [330, 440], [372, 386]], [[372, 386], [424, 398], [476, 386]], [[476, 386], [526, 440],
           [530, 520]],
                 [[530, 520], [430, 544], [336, 520]]), "#8a4460", flow=75, fine=0.5, form=(10, 0.75, 22),
                 lights=(GLOW, SHADE))
    s.fill(blob([366, 318], [366, 256], [424, 222], [482, 256], [484, 318], [424, 352]), "#4a2c22", fine=0.6)
    s.fill(oval(416, 222, 32, 26), "#5c3828", fine=0.6, form=(20, 0.6, 8), lights=(GLOW, SHADE))
    with s.at(428, 306, 0.52):
        face(s, Face(turn=0.5, light=20, lowered=True, shade=SHADE, glow=GLOW, smile=0.7, age=0.1))
    hair = ("#4a2c22", "#6c4430", "#3a2220", "#8c5c3c")
    for side in (-1.0, 1.0):
        s.fill(edges([[430, 250], [430 + side * 24, 258], [430 + side * 38, 300], [430 + side * 40, 332]],
                     [[430 + side * 40, 332], [430 + side * 56, 290], [430 + side * 40, 244], [430, 234]]), "#54342a",
                     fine=0.7)
        strands(s, spline([[430, 252], [429, 244], [428, 238]], steps=6),
               spline([[430 + side * 40, 330], [430 + side * 48, 300], [430 + side * 42, 270]], steps=6),
                hair, 60, 0.32 * side, 3, 1.8)
    s.fill(edges([[392, 366], [428, 388], [464, 366]], [[464, 366], [492, 396], [456, 424]], [[456, 424], [428, 404],
           [400, 424]],
                 [[400, 424], [364, 396], [392, 366]]), "#f0e4cc", fine=0.9, form=(10, 0.7, 6), lights=(GLOW, SHADE))


def _book(s: Surface) -> None:
    s.fill(edges([[366, 566], [430, 588], [446, 584]], [[446, 584], [520, 556], [566, 552]], [[566, 552], [548, 492]],
           [[548, 492], [500, 496], [440, 520]],
                 [[440, 520], [400, 508], [356, 508]], [[356, 508], [366, 566]]), "#8c3030", fine=0.9)
    for shape, tone in ((edges([[362, 502], [402, 498], [442, 516]], [[442, 516], [446, 578]],
           [[446, 578], [410, 560], [370, 560]], [[370, 560], [362, 502]]), "#f2e2bc"),
                        (edges([[442, 516], [492, 488], [542, 486]], [[542, 486], [558, 546]],
                        [[558, 546], [500, 552], [446, 578]], [[446, 578], [442, 516]]), "#fff2cc")):
        s.fill(shape, tone, fine=0.9, form=(0, 0.3, 8), vary=0.02)
    for k in range(5):
        s.fill(ribbon([[376 + 2 * k, 512 + 9.4 * k], [404, 511 + 9.4 * k], [432, 524 + 9.4 * k]], 1.6), "#7c6450",
               alpha=0.7, fine=1)
        if k > 2:
            s.fill(ribbon([[456, 528 + 9.4 * k], [494, 508 + 9.4 * k], [540 + 2 * k, 500 + 9.4 * k]], 1.6), "#7c6450",
                   alpha=0.7, fine=1)
    s.fill(edges([[458, 522], [496, 503], [538, 498]], [[538, 498], [544, 520]], [[544, 520], [500, 526], [462, 546]],
           [[462, 546], [458, 522]]), "#7fa4ac", fine=1)
    s.fill([[486, 532], [516, 522], [508, 534]], "#8c3c38", fine=1)
    s.fill([[498, 526], [506, 505], [516, 520]], "#e8d8b0", fine=1)
    for x, y, mirror in ((574, 540, False), (352, 548, True)):
        with s.at(x, y, 0.62, mirror=mirror):
            hand_flat(s, "#e2ab86", 10 if not mirror else 170, GLOW, SHADE)
    for x, y, c in ((500, 424, "#8a4460"), (356, 430, "#7c3a54")):
        s.fill(oval(x, y, 30, 30), c, fine=0.5, soft=2)
    s.fill(ribbon([[500, 418], [566, 462], [592, 542]], [50, 46, 34]), "#8a4460", fine=0.5, form=(10, 0.7, 12),
           lights=(GLOW, SHADE))
    s.fill(ribbon([[354, 424], [312, 484], [334, 548]], [50, 46, 34]), "#7c3a54", fine=0.5, form=(10, 0.7, 12),
           lights=(GLOW, SHADE))


def _children(s: Surface) -> None:
    s.fill(edges([[208, 724], [214, 560], [254, 476]], [[254, 476], [296, 480], [330, 486]], [[330, 486], [352, 580],
           [362, 724]], [[362, 724], [208, 724]]),
           "#d8d2d8", flow=85, fine=0.72, form=(0, 0.75, 20), lights=(GLOW, "#4c4a70"), vary=0.04)
    for pts in ([[262, 520], [246, 620], [248, 716]], [[300, 530], [302, 630], [300, 720]]):
        s.fill(ribbon(pts, [3, 12, 8]), "#6c6888", alpha=0.5, soft=4)
    s.fill(blob([244, 420], [238, 370], [284, 334], [334, 362], [334, 420], [322, 470], [258, 474]), "#b4803c",
           fine=0.6)
    with s.at(296, 410, 0.44):
        face(s, Face(turn=0.9, light=5, lowered=True, shade=SHADE, glow=GLOW, smile=1.0, age=0.0, brows="#8a5c30",
               jaw=1.1))
    hair = ("#b4803c", "#d8a854", "#8c5c30", "#e8c070")
    s.fill(edges([[310, 360], [280, 372], [264, 410], [268, 470]], [[268, 470], [238, 450], [236, 380], [284, 338]],
           [[284, 338], [320, 346], [328, 362], [310, 360]]),
           "#b4803c", fine=0.7)
    strands(s, spline([[318, 358], [296, 346], [270, 350]], steps=6), spline([[272, 476], [250, 480], [238, 460]],
           steps=6), hair, 120, -0.2, 5, 2)
    s.fill(blob([256, 352], [238, 336], [234, 356], [256, 366], [270, 350], [276, 334]), "#3c6c9a", fine=0.9)
    s.fill(ribbon([[318, 500], [352, 520], [378, 506]], [32, 28, 18]), "#e0d8da", fine=0.6, form=(0, 0.7, 8),
           lights=(GLOW, "#4c4a70"))
    with s.at(386, 502, 0.4, mirror=True):
        hand_flat(s, "#e8b48e", 170, GLOW, SHADE)
    for x in (612, 668):
        s.fill(ribbon([[x, 690], [x + (6 if x > 640 else -6), 752]], [9, 8], False), "#5c3c2c", fine=0.8)
    s.fill(oval(640, 692, 50, 14), "#8c5c3c", fine=0.8)
    s.fill(edges([[592, 694], [586, 620], [616, 572]], [[616, 572], [644, 566], [672, 578]], [[672, 578], [700, 630],
           [694, 694]],
                 [[694, 694], [640, 710], [592, 694]]), "#c8803c", fine=0.6, form=(-60, 0.7, 16),
                 lights=(GLOW, SHADE), flow=80)
    for k in range(5):
        s.fill(ribbon([[590 + k, 606 + 19 * k], [642, 614 + 19 * k], [694 - k, 606 + 19 * k]], 5), "#7c3c38",
               alpha=0.7, fine=0.7)
    s.fill(ribbon([[608, 596], [580, 632], [584, 668]], [26, 25, 22]), "#c8803c", fine=0.7, form=(-60, 0.6, 8),
           lights=(GLOW, SHADE))
    s.fill(ribbon([[680, 598], [702, 632], [700, 668]], [26, 25, 22]), "#b8743a", fine=0.7, form=(-60, 0.6, 8),
           lights=(GLOW, SHADE))
    s.fill(ribbon([[604, 690], [590, 730], [606, 764]], [32, 26, 22]), "#3c4664", fine=0.6, form=(-60, 0.6, 8),
           lights=(GLOW, SHADE))
    s.fill(ribbon([[676, 690], [694, 730], [684, 768]], [32, 26, 22]), "#3c4664", fine=0.6, form=(-60, 0.6, 8),
           lights=(GLOW, SHADE))
    for x, y in ((596, 770), (676, 774)):
        s.fill(blob([x - 18, y], [x - 8, y - 14], [x + 14, y - 12], [x + 18, y + 2], [x, y + 6]), "#3a2628", fine=0.9)
    s.fill(blob([612, 568], [606, 520], [640, 492], [676, 520], [672, 566], [642, 582]), "#4a2c24", fine=0.6,
           form=(-60, 0.6, 12),
           lights=(GLOW, SHADE))
    strands(s, spline([[640, 502], [644, 500], [650, 504]], steps=6), spline([[612, 566], [642, 582], [672, 562]],
           steps=6), ("#4a2c24", "#6c4430", "#8c5c3c"), 90, 0.05, 6, 2)
    s.fill(oval(609, 548, 7, 11), "#d89a74", fine=0.9)


def mother_reading_by_the_lamp(pixels: int) -> Image.Image:
    """Mother Reading by the Lamp: one lamp, one book, two children and a cat."""
    s = Surface(1000, 800, pixels, seed=61)
    _room(s)
    _mother(s)
    s.fill(blob([340, 560], [450, 596], [590, 556], [600, 620], [470, 660], [340, 622]), "#2c1028", alpha=0.45, soft=14)
    s.fill(blob([440, 640], [560, 610], [612, 680], [560, 720], [470, 724]), "#d88a90", alpha=0.25, soft=20)
    _lamp(s)
    _book(s)
    _children(s)
    with s.at(838, 742, 1.05):
        cat(s, "#c8904c", 200)
    s.fill(oval(420, 760, 26, 26), "#3c6a9a", fine=0.9, form=(-40, 0.7, 10), lights=(GLOW, SHADE))
    s.fill(ribbon(arc(420, 760, 25, 10, 200, 340), 5), "#e8c060", fine=0.9)
    s.fill(ribbon(arc(420, 760, 26, 12, 20, 160), 5), "#c04a34", fine=0.9)
    s.glow(697, 404, 420, "#ffb050", 0.42)
    s.glow(697, 404, 110, "#ffe8a8", 0.6)
    s.glow(470, 520, 150, "#ffd488", 0.28)
    far = np.clip(np.hypot((s.x - 620) / 640, (s.y - 470) / 480) - 0.5, 0, 1)
    s.darken(far * 1.0)
    return painted(s, INDOORS, relief=0.045, careful=0.6)


def jug_and_lemons(pixels: int) -> Image.Image:
    """Jug and Lemons on a Blue Cloth: window light from the left."""
    s = Surface(1000, 800, pixels, seed=63)
    light, glow, shade = 205.0, "#fff4d4", "#3c3058"
    s.fill(box(-2, -2, 1002, 480), halo((120, 80), 1050, (0, "#d8c8a4"), (0.4, "#a88c70"), (1, "#4c4048")), flow=60,
           vary=0.06)
    s.flow += (s.noise(240, 1, 2, seed=3) - 0.5) * 2.4
    s.fill(box(-2, 458, 1002, 802), ramp((0, 458), (0, 802), (0, "#7c5438"), (1, "#a4744c")), flow=0, vary=0.1)
    for k in range(5):
        s.fill(ribbon([[-5, 480 + 62 * k], [500, 484 + 64 * k], [1005, 478 + 66 * k]], 2), "#4c3028", alpha=0.5)
    cloth = edges([[70, 560], [240, 520], [470, 536], [720, 516], [940, 548]], [[940, 548], [986, 640], [930, 690]],
                  [[930, 690], [860, 676], [800, 740], [720, 716], [650, 806]], [[650, 806], [380, 806]],
                  [[380, 806], [330, 730], [260, 740], [180, 690], [90, 700], [70, 560]])
    s.fill(shifted(cloth, 10, 14), "#2c1c24", alpha=0.45, soft=10)
    s.fill(cloth, "#3f6ca8", flow=10, fine=0.4, vary=0.05, form=(light, 0.6, 24), lights=("#cfe4f4", "#141a44"))
    inside = s.mask(cloth, 1)
    for pts, wide in (([[140, 570], [240, 620], [300, 730]], 34), ([[330, 560], [400, 640], [430, 790]], 40),
           ([[600, 560], [590, 650], [560, 800]], 38),
                      ([[760, 550], [720, 630], [700, 730]], 32), ([[880, 560], [860, 620], [820, 700]], 28)):
        p = np.array(pts, float)
        s.fill(ribbon(p, [6, wide, wide * 0.6]), "#16265c", alpha=0.55, soft=8, clip=inside)
        s.fill(ribbon(shifted(p, -22, 4), [4, wide * 0.7, wide * 0.4]), "#a4c8e8", alpha=0.55, soft=7, clip=inside)
    for k, c in ((0, "#f0ead8"), (1, "#f0ead8"), (2, "#d8503c")):
        edge = spline([[84, 590 + 14 * k], [180, 676 + 10 * k], [264, 724 + 8 * k], [334, 716 + 10 * k],
               [390, 792 + 8 * k]])
        s.fill(ribbon(shifted(edge, 4, -22), 4.5, False), c, alpha=0.85, clip=inside, fine=0.7)
        edge = spline([[976, 640 - 12 * k], [926, 680 - 12 * k], [858, 664 - 10 * k], [800, 726 - 10 * k],
               [722, 702 - 10 * k], [650, 790 - 8 * k]])
        s.fill(ribbon(shifted(edge, -3, 4), 4.5, False), c, alpha=0.85, clip=inside, fine=0.7)
    s.fill(oval(420, 600, 190, 30, -3), "#141c48", alpha=0.55, soft=12)
    _jug(s, light, glow, shade)
    s.fill(oval(668, 664, 170, 30), "#10183c", alpha=0.6, soft=10)
    s.fill(oval(640, 636, 172, 46), "#efe6d2", fine=0.7, form=(light, 0.6, 14), lights=("#fffdf2", "#56587c"))
    s.fill(oval(640, 630, 150, 36), "#e2d6bc", fine=0.7, form=(20, 0.4, 10), lights=("#fffdf2", "#6a6a8c"))
    s.fill(ribbon(arc(640, 632, 160, 40, 0, 360), 3), "#3c6490", alpha=0.7, fine=0.9)
    for x, y, rx, ry, turn, seed in ((574, 592, 60, 47, -14, 1), (690, 600, 62, 48, 16, 2), (630, 540, 58, 46, 6, 3)):
        _lemon(s, x, y, rx, ry, turn, seed, light)
    s.fill(oval(860, 640, 70, 14), "#10183c", alpha=0.5, soft=7)
    _half_lemon(s, 846, 610, light)
    s.fill(oval(250, 660, 76, 14), "#10183c", alpha=0.5, soft=7)
    _lemon(s, 236, 628, 58, 44, -24, 4, light)
    for x, y, turn in ((190, 600, 205), (182, 616, 165), (712, 548, -28)):
        _leaf(s, x, y, turn)
    s.fill(ribbon([[496, 756], [560, 748], [642, 742]], [13, 17, 13], False), "#6c4630", fine=0.9, form=(-90, 0.6, 4))
    s.fill(edges([[640, 736], [740, 724], [806, 726]], [[806, 726], [760, 746], [642, 750]], [[642, 750], [640, 736]]),
           ramp((640, 730), (800, 740), (0, "#9aa4b0"), (0.5, "#eef2f2"), (1, "#8a94a4")), fine=0.9)
    s.fill(ribbon([[648, 754], [730, 748], [792, 736]], 5), "#10183c", alpha=0.4, soft=3)
    s.darken(np.clip((s.x - 520) / 900, 0, 1) * 0.4 + np.clip((s.y - 700) / 300, 0, 1) * 0.3)
    return painted(s, INDOORS, relief=0.04, canvas_strength=0.008, careful=0.62)


def _jug(s: Surface, light: float, glow: str, shade: str) -> None:
    s.fill(ribbon([[462, 296], [520, 276], [584, 300], [592, 384], [560, 446], [504, 478]], [30, 22, 21, 22, 24, 34]),
           "#e4dcc8", fine=0.7, form=(light, 0.7, 7),
           lights=(glow, shade))
    body = edges([[320, 232], [352, 300], [300, 400], [292, 500], [340, 594]], [[340, 594], [410, 606], [480, 594]],
                 [[480, 594], [530, 500], [520, 400], [472, 300], [500, 236]], [[500, 236], [410, 256], [320, 232]])
    s.fill(body, "#e4dcc8", flow=85, fine=0.5, vary=0.05, form=(light, 0.85, 34), lights=(glow, shade))
    inside = s.mask(body, 1)
    s.fill(edges([[500, 250], [470, 330], [520, 440], [500, 560], [470, 620]], [[470, 620], [580, 620], [580, 250],
           [500, 250]]), shade,
           alpha=0.62, soft=24, clip=inside)
    s.fill(ribbon(arc(410, 588, 72, 15, 180, 0), 13), "#d8cfba", fine=0.7, form=(light, 0.6, 6), lights=(glow, shade))
    s.fill(blob([380, 560], [470, 540], [520, 500], [510, 600], [420, 610]), "#5c86c0", alpha=0.3, soft=14, clip=inside)
    for y, sag in ((372, 20), (392, 21), (540, 22)):
        s.fill(ribbon(arc(408, y, 122, sag, 180, 0), 7), "#2f5a94", alpha=0.9, fine=0.8, clip=inside)
    for k in range(5):
        x = 318 + 46 * k
        y = 458 + 16 * (1 - ((x - 410) / 110) ** 2)
        for p in range(6):
            a = np.radians(60 * p)
            s.fill(oval(x + 13 * float(np.cos(a)), y + 13 * float(np.sin(a)), 9, 5.5, 60 * p), "#3c6cac", alpha=0.92,
                   fine=0.8, clip=inside)
        s.fill(oval(x, y, 5.5, 5.5), "#e8b040", fine=0.9, clip=inside)
        for side in (-1, 1):
            s.fill(ribbon([[x, y + 16], [x + side * 10, y + 34], [x + side * 20, y + 36]], [2, 6, 1]), "#4c8a6c",
                   fine=0.8, clip=inside)
    s.fill(oval(410, 238, 92, 24), "#efe8d4", fine=0.8, form=(light, 0.6, 8), lights=(glow, shade))
    s.fill(oval(412, 238, 80, 17), halo((470, 236), 150, (0, "#6c6078"), (1, "#3c3450")), fine=0.8)
    s.fill(edges([[356, 222], [318, 216], [282, 208]], [[282, 208], [296, 236], [330, 258]], [[330, 258], [344, 240],
           [356, 222]]), "#efe8d4",
           fine=0.9, form=(light, 0.5, 6), lights=(glow, shade))
    s.fill(edges([[350, 227], [322, 222], [298, 216]], [[298, 216], [318, 236], [350, 244]],
           [[350, 244], [350, 227]]), "#5a4e6a", fine=0.9)
    s.fill(ribbon([[338, 330], [318, 420], [324, 500]], [6, 22, 8]), "#fffdf4", alpha=0.75, soft=6, clip=inside)


def _lemon(s: Surface, x: float, y: float, rx: float, ry: float, turn: float, seed: int, light: float) -> None:
    t = np.linspace(0, 2 * np.pi, 90, endpoint=False)
    tip = np.exp(-((np.abs((t + np.pi) % (2 * np.pi) - np.pi) / 0.16) ** 2))
    r = 1 + 0.20 * tip + 0.10 * np.exp(-(((t - np.pi) / 0.2) ** 2))
    a = np.radians(turn)
    u, v = rx * r * np.cos(t), ry * r * np.sin(t)
    shape = np.column_stack([x + u * np.cos(a) - v * np.sin(a), y + u * np.sin(a) + v * np.cos(a)])
    s.fill(shape, "#e9bf34", flow=turn, fine=0.6, vary=0.08, form=(light, 0.9, ry * 0.5), lights=("#fff6b0", "#5a4a1c"))
    s.fill(oval(x + rx * 0.16, y + ry * 0.62, rx * 0.6, ry * 0.2, turn), "#9aa468", alpha=0.35, soft=6)
    s.fill(oval(x - rx * 0.34, y - ry * 0.42, rx * 0.2, ry * 0.13, turn), "#fffce0", alpha=0.9, soft=3)
    rng = np.random.default_rng(seed)
    for _ in range(26):
        d, e = rng.uniform(0, 6.28), rng.uniform(0.1, 0.85)
        s.fill(oval(x + rx * e * float(np.cos(d)), y + ry * e * float(np.sin(d)), 1.7, 1.4), "#b88a1c", alpha=0.5,
               fine=0.6)


def _half_lemon(s: Surface, x: float, y: float, light: float) -> None:
    s.fill(blob([x - 58, y - 10], [x - 30, y - 52], [x + 30, y - 46], [x + 60, y], [x + 40, y + 34],
           [x - 20, y + 36]), "#e0b02c", fine=0.7,
           form=(light, 0.8, 16), lights=("#fff6b0", "#5a4a1c"))
    s.fill(oval(x - 8, y - 2, 50, 42, -14), "#f0c83c", fine=0.8)
    s.fill(oval(x - 8, y - 2, 46, 38, -14), "#fbf2cc", fine=0.8)
    for k in range(9):
        a0, a1 = np.radians(40 * k + 4), np.radians(40 * k + 36)
        c, n = np.cos(np.radians(-14)), np.sin(np.radians(-14))
        pts = []
        for f, a in ((0.12, (a0 + a1) / 2), (0.8, a0 + 0.05), (0.92, (a0 + a1) / 2), (0.8, a1 - 0.05)):
            u, v = 42 * f * np.cos(a), 34 * f * np.sin(a)
            pts.append([x - 8 + u * c - v * n, y - 2 + u * n + v * c])
        s.fill(blob(*pts), mix("#f4dc6c", "#fff4a8", (k % 3) / 2.5), fine=0.9, vary=0.12)
    s.fill(oval(x - 8, y - 2, 3.6, 3, -14), "#fffbe4", fine=1)


def _leaf(s: Surface, x: float, y: float, turn: float) -> None:
    a = np.radians(turn)
    p = np.array([[0, 0], [24, -15], [58, -10], [78, 0], [54, 9], [22, 10]], float)
    q = np.column_stack([x + p[:, 0] * np.cos(a) - p[:, 1] * np.sin(a), y + p[:, 0] * np.sin(a) + p[:, 1] * np.cos(a)])
    s.fill(blob(*q), "#4c7c4c", fine=0.9, flow=turn, form=(205, 0.7, 7), lights=("#d8f0a8", "#1c2c44"))
    s.fill(ribbon([q[0], q[3]], [2.4, 0.6], False), "#a8c880", fine=1)
