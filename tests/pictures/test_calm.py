from PIL import Image, ImageChops, ImageStat

from packgen.pictures.calm import calmed


def test_grain_is_flattened_and_the_edge_stays_sharp() -> None:
    halves = Image.new("RGB", (120, 80), (80, 80, 80))
    halves.paste((180, 180, 180), (60, 0, 120, 80))
    grainy = ImageChops.add(halves, Image.merge("RGB", [Image.effect_noise((120, 80), 24)] * 3), 1, -128)
    calm = calmed(grainy, 3, 2)
    assert calm.size == grainy.size
    before, after = (ImageStat.Stat(im.crop((5, 5, 50, 75))).stddev[0] for im in (grainy, calm))
    assert after < before / 3
    assert calm.getpixel((56, 40))[0] < 110 and calm.getpixel((64, 40))[0] > 150


def test_a_plain_picture_is_left_alone() -> None:
    plain = Image.new("RGB", (30, 20), (12, 200, 90))
    assert calmed(plain, 3, 2).tobytes() == plain.tobytes()
