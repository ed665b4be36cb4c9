import random

import pytest
from PIL import Image, ImageChops, ImageFilter, ImageStat

from packgen.pictures.calm import calmed, grown, median, shrunk


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


@pytest.mark.parametrize("mode", ["L", "RGB"])
@pytest.mark.parametrize("size", [(1, 1), (2, 3), (3, 1), (40, 31)])
def test_the_median_is_that_of_a_rank_filter(mode: str, size: tuple[int, int]) -> None:
    noise = bytes(random.Random(7).randrange(256) for _ in range(size[0] * size[1] * len(mode)))
    image = Image.frombytes(mode, size, noise)
    assert median(image).tobytes() == image.filter(ImageFilter.MedianFilter(3)).tobytes()


@pytest.mark.parametrize("mode", ["L", "RGB"])
@pytest.mark.parametrize("reach", [1, 2, 3, 5, 8])
def test_growing_and_shrinking_are_those_of_a_rank_filter(mode: str, reach: int) -> None:
    noise = bytes(random.Random(7).randrange(256) for _ in range(23 * 12 * len(mode)))
    image = Image.frombytes(mode, (23, 12), noise)
    assert grown(image, reach).tobytes() == image.filter(ImageFilter.MaxFilter(2 * reach + 1)).tobytes()
    assert shrunk(image, reach).tobytes() == image.filter(ImageFilter.MinFilter(2 * reach + 1)).tobytes()
