"""Pictures for the tests, drawn here: six of different kinds, as a study might hold them."""

from __future__ import annotations

import math
import random
from collections.abc import Callable

from PIL import Image, ImageChops, ImageDraw, ImageFilter

WIDE, HIGH = 480, 400


def _painted(image: Image.Image, seed: int) -> Image.Image:
    """The picture with the grain and soft edges of a painting."""
    noise = random.Random(seed)
    grain = Image.frombytes("L", (160, 134), bytes(noise.randrange(122, 135) for _ in range(160 * 134)))
    grain = grain.resize(image.size, Image.Resampling.BICUBIC)
    grainy = ImageChops.add(image.filter(ImageFilter.GaussianBlur(1)), Image.merge("RGB", (grain,) * 3), 1, -128)
    return grainy


def _sky(pen: ImageDraw.ImageDraw, top: tuple[int, int, int], low: tuple[int, int, int], height: int) -> None:
    for y in range(height):
        t = y / height
        pen.line((0, y, WIDE, y), fill=tuple(round(a + (b - a) * t) for a, b in zip(top, low, strict=True)))


def _portrait() -> Image.Image:
    image = Image.new("RGB", (HIGH, WIDE), (92, 110, 96))
    pen = ImageDraw.Draw(image)
    pen.rectangle((0, 300, 130, 480), fill=(120, 84, 50))
    pen.rectangle((24, 40, 110, 170), fill=(150, 170, 200), outline=(70, 50, 30), width=8)
    for shelf in range(3):
        for book in range(9):
            x, y = 286 + book * 13, 20 + shelf * 70
            colour = ((150, 60, 50), (60, 90, 120), (190, 160, 90), (80, 110, 70), (110, 70, 110))[
                (book + 2 * shelf) % 5
            ]
            pen.rectangle((x, y + 4 * (book % 3), x + 12, y + 60), fill=colour)
        pen.rectangle((284, 80 + shelf * 70, 400, 86 + shelf * 70), fill=(70, 50, 34))
    pen.polygon([(60, 480), (110, 330), (290, 330), (350, 480)], fill=(120, 40, 46))
    for k in range(14):
        x, y = 100 + (k * 37) % 210, 400 + (k * 53) % 70
        pen.ellipse((x, y, x + 16, y + 16), fill=(220, 190, 120))
    pen.polygon([(150, 330), (200, 400), (250, 330)], fill=(236, 228, 210))
    pen.rectangle((170, 270, 230, 345), fill=(206, 160, 128))
    pen.ellipse((115, 90, 285, 300), fill=(70, 44, 28))
    pen.ellipse((135, 120, 265, 300), fill=(226, 182, 148))
    for x in (165, 212):
        pen.ellipse((x, 190, x + 26, 206), fill=(250, 248, 240))
        pen.ellipse((x + 8, 190, x + 20, 206), fill=(40, 50, 70))
        pen.arc((x - 4, 172, x + 30, 200), 200, 340, fill=(60, 36, 24), width=5)
    pen.line([(200, 205), (192, 238), (206, 240)], fill=(170, 110, 84), width=4)
    pen.chord((176, 248, 226, 274), 0, 180, fill=(170, 60, 60))
    pen.ellipse((180, 360, 220, 384), fill=(220, 180, 70))
    return _painted(image, 1)


def _still_life() -> Image.Image:
    image = Image.new("RGB", (WIDE, HIGH), (84, 74, 66))
    pen = ImageDraw.Draw(image)
    pen.rectangle((0, 0, 200, 250), fill=(120, 106, 92))
    pen.rectangle((0, 250, WIDE, HIGH), fill=(130, 84, 48))
    for row in range(4):
        for column in range(7):
            x, y = 216 + column * 38, 8 + row * 38
            colour = ((150, 170, 180), (110, 130, 150), (190, 190, 180))[(row * 2 + column) % 3]
            pen.rectangle((x, y, x + 34, y + 34), fill=colour)
    pen.polygon([(30, 300), (400, 280), (460, 380), (60, 398)], fill=(220, 216, 200))
    for k in range(8):
        pen.line((60 + k * 48, 300 - k * 2, 90 + k * 48, 396), fill=(90, 120, 160), width=9)
    pen.polygon([(180, 320), (230, 300), (250, 398), (210, 398)], fill=(180, 176, 166))
    pen.ellipse((90, 90, 210, 330), fill=(60, 92, 130))
    pen.rectangle((125, 60, 175, 130), fill=(60, 92, 130))
    pen.ellipse((120, 50, 180, 74), fill=(30, 40, 60))
    pen.arc((180, 120, 260, 240), 270, 90, fill=(60, 92, 130), width=14)
    pen.ellipse((108, 150, 140, 260), fill=(130, 164, 196))
    for x, y, colour in (
        (250, 270, (200, 50, 40)),
        (310, 250, (226, 160, 50)),
        (360, 280, (150, 170, 60)),
        (290, 310, (214, 90, 50)),
    ):
        pen.ellipse((x - 34, y - 34, x + 34, y + 34), fill=colour)
        pen.ellipse((x - 22, y - 24, x - 4, y - 8), fill=tuple(min(255, v + 60) for v in colour))
        pen.line((x, y - 32, x + 6, y - 46), fill=(70, 50, 20), width=5)
    return _painted(image, 2)


def _landscape() -> Image.Image:
    image = Image.new("RGB", (WIDE, HIGH))
    pen = ImageDraw.Draw(image)
    _sky(pen, (90, 140, 200), (220, 230, 236), 200)
    pen.ellipse((60, 40, 190, 90), fill=(244, 244, 240))
    pen.ellipse((300, 60, 420, 100), fill=(240, 240, 238))
    pen.ellipse((380, 20, 430, 70), fill=(250, 220, 120))
    pen.polygon([(0, 190), (120, 110), (260, 190), (360, 130), (480, 190), (480, 230), (0, 230)], fill=(110, 120, 160))
    pen.rectangle((0, 200, WIDE, HIGH), fill=(150, 180, 90))
    pen.polygon([(0, 230), (200, 215), (480, 250), (480, 300), (0, 290)], fill=(196, 180, 90))
    pen.polygon([(200, 400), (250, 250), (262, 250), (330, 400)], fill=(220, 204, 170))
    pen.polygon([(330, 260), (480, 240), (480, 330), (360, 320)], fill=(100, 140, 70))
    for k in range(9):
        pen.polygon(
            [(k * 24, 330 + k * 4), (k * 24 + 14, 330 + k * 4), (k * 26 - 20, 400), (k * 26 - 40, 400)],
            fill=(120, 90, 60),
        )
    for k in range(12):
        pen.rectangle((340 + k * 12, 350, 346 + k * 12, 390), fill=(236, 226, 200))
    pen.rectangle((336, 362, 480, 368), fill=(236, 226, 200))
    for k in range(6):
        pen.polygon(
            [(20 + k * 70, 205), (44 + k * 70, 180 + (k % 2) * 6), (70 + k * 70, 205)], fill=(70, 110, 90 + 10 * k)
        )
    for x, y in ((60, 260), (120, 290), (400, 220), (440, 250), (90, 340)):
        pen.rectangle((x - 5, y, x + 5, y + 40), fill=(90, 60, 40))
        pen.ellipse((x - 30, y - 50, x + 30, y + 12), fill=(50, 96, 56))
    pen.rectangle((285, 200, 345, 245), fill=(230, 220, 200))
    pen.polygon([(278, 202), (315, 168), (352, 202)], fill=(170, 70, 50))
    pen.rectangle((305, 220, 320, 245), fill=(80, 50, 40))
    return _painted(image, 3)


def _animal() -> Image.Image:
    image = Image.new("RGB", (WIDE, HIGH), (176, 196, 190))
    pen = ImageDraw.Draw(image)
    pen.rectangle((0, 300, WIDE, HIGH), fill=(120, 150, 90))
    pen.ellipse((110, 140, 400, 340), fill=(200, 140, 80))
    pen.ellipse((60, 90, 220, 240), fill=(206, 146, 86))
    for ear in (((75, 120), (85, 40), (130, 95)), ((150, 95), (195, 40), (205, 120))):
        pen.polygon(ear, fill=(206, 146, 86))
        pen.polygon([(x * 0.7 + 42, y * 0.7 + 34) for x, y in ear], fill=(236, 180, 170))
    for x in (92, 152):
        pen.ellipse((x, 135, x + 34, 165), fill=(150, 190, 90))
        pen.ellipse((x + 12, 136, x + 22, 164), fill=(20, 20, 20))
    pen.polygon([(130, 178), (150, 178), (140, 192)], fill=(200, 90, 90))
    pen.arc((112, 180, 140, 208), 20, 160, fill=(60, 30, 20), width=4)
    pen.arc((140, 180, 168, 208), 20, 160, fill=(60, 30, 20), width=4)
    for k in range(5):
        pen.polygon([(230 + k * 32, 150), (244 + k * 32, 150), (238 + k * 32, 230)], fill=(120, 70, 36))
    pen.arc((340, 120, 460, 300), 250, 80, fill=(200, 140, 80), width=26)
    pen.ellipse((150, 300, 210, 345), fill=(240, 226, 206))
    pen.ellipse((300, 300, 360, 345), fill=(240, 226, 206))
    pen.ellipse((380, 320, 430, 368), fill=(180, 40, 60))
    for k in range(12):
        x, y = 30 + k * 38, (30, 60, 20)[k % 3]
        pen.rectangle((x + 8, y + 10, x + 12, 120), fill=(70, 120, 70))
        pen.ellipse((x - 4, y, x + 24, y + 26), fill=((220, 120, 90), (240, 220, 120), (150, 110, 170))[k % 3])
        pen.ellipse((x + 5, y + 8, x + 15, y + 18), fill=(90, 50, 40))
    for k in range(10):
        pen.polygon([(k * 48, 400), (k * 48 + 14, 350 - (k % 2) * 8), (k * 48 + 28, 400)], fill=(60, 110, 60))
    return _painted(image, 4)


def _line_drawing() -> Image.Image:
    image = Image.new("RGB", (WIDE * 2, HIGH * 2), (250, 246, 236))
    pen = ImageDraw.Draw(image)
    ink, thick = (34, 30, 40), 5
    pen.rectangle((260, 330, 640, 690), outline=ink, width=thick)
    pen.line([(230, 340), (450, 150), (670, 340), (230, 340)], fill=ink, width=thick, joint="curve")
    for x in (310, 500):
        pen.rectangle((x, 400, x + 90, 490), outline=ink, width=thick)
        pen.line((x + 45, 400, x + 45, 490), fill=ink, width=thick)
        pen.line((x, 445, x + 90, 445), fill=ink, width=thick)
    pen.rectangle((400, 540, 490, 690), outline=ink, width=thick)
    pen.ellipse((470, 610, 480, 622), fill=ink)
    pen.line((0, 690, 960, 690), fill=ink, width=thick)
    for k in range(3):
        x = 720 + k * 75
        pen.ellipse((x - 34, 440 + 20 * k, x + 34, 600), outline=ink, width=thick)
        pen.line((x, 600, x, 690), fill=ink, width=thick)
    for k in range(9):
        pen.ellipse((20 + 24 * k, 640, 44 + 24 * k, 690), outline=ink, width=4)
    for row in range(4):
        for column in range(10 - 2 * row):
            x, y = 262 + row * 38 + column * 38, 292 - row * 42
            pen.rectangle((x, y, x + 38, y + 42), outline=ink, width=4)
    for k in range(12):
        pen.rectangle((k * 80, 690, k * 80 + 80, 800), outline=ink, width=thick)
        pen.line((k * 80, 745, k * 80 + 80, 745), fill=ink, width=thick)
    pen.ellipse((70, 60, 190, 180), outline=ink, width=thick)
    for k in range(8):
        cos, sin = math.cos(k * math.pi / 4), math.sin(k * math.pi / 4)
        pen.line((130 + 75 * cos, 120 + 75 * sin, 130 + 105 * cos, 120 + 105 * sin), fill=ink, width=thick)
    return image


def _pattern() -> Image.Image:
    image = Image.new("RGB", (WIDE, HIGH), (226, 214, 180))
    pen = ImageDraw.Draw(image)
    colours = ((160, 60, 50), (50, 90, 130), (80, 130, 90), (200, 150, 60))
    for row in range(5):
        for column in range(6):
            x, y = 40 + column * 80, 40 + row * 80
            colour = colours[(row + column * 2) % 4]
            if (row + column) % 2:
                pen.polygon([(x, y - 34), (x + 34, y), (x, y + 34), (x - 34, y)], fill=colour)
                pen.ellipse((x - 12, y - 12, x + 12, y + 12), fill=(240, 236, 220))
            else:
                pen.ellipse((x - 32, y - 32, x + 32, y + 32), fill=colour)
                pen.rectangle((x - 10, y - 10, x + 10, y + 10), fill=colours[(row + column * 2 + 1) % 4])
    return _painted(image, 6)


KINDS: dict[str, Callable[[], Image.Image]] = {
    "portrait": _portrait, "still_life": _still_life, "landscape": _landscape,
    "animal": _animal, "line_drawing": _line_drawing, "pattern": _pattern,
}  # fmt: skip
