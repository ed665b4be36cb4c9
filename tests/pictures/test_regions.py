import pytest
from PIL import Image, ImageChops, ImageDraw

from packgen.pictures.regions import Wanted, areas_of, softened

FEW = Wanted(2, 20, 8, 0.004, 2.0, 0.6)


def scene(grain: float) -> Image.Image:
    image = Image.new("RGB", (240, 180), (120, 170, 220))
    pen = ImageDraw.Draw(image)
    pen.rectangle((0, 120, 240, 180), fill=(90, 140, 70))
    pen.ellipse((30, 20, 80, 70), fill=(250, 220, 90))
    pen.rectangle((130, 70, 200, 140), fill=(180, 80, 60))
    pen.rectangle((155, 100, 175, 140), fill=(70, 50, 40))
    noise = Image.merge("RGB", [Image.effect_noise(image.size, grain)] * 3) if grain else None
    return image if noise is None else ImageChops.add(image, noise, 1, -128)


@pytest.mark.parametrize("grain", [0, 6])
def test_the_things_in_a_scene_are_its_areas(grain: float) -> None:
    areas = areas_of(scene(grain), FEW)
    assert areas.count == 5
    # Sky and grass each less what stands before them, sun, house and door: counted from the drawing above.
    want = sorted([240 * 120 - 1963 - 70 * 50, 240 * 60 - 70 * 20 + 0, 1963, 70 * 70 - 20 * 40, 20 * 40])
    for got, size in zip(sorted(areas.sizes()), want, strict=True):
        assert got == pytest.approx(size, rel=0.12)


def test_a_plain_picture_with_grain_is_one_area() -> None:
    plain = Image.merge("RGB", [Image.effect_noise((200, 150), 10)] * 3)
    assert areas_of(plain, FEW).count <= 2


def test_a_sky_that_only_grows_paler_is_not_cut_into_bands() -> None:
    ramp = Image.linear_gradient("L").resize((200, 160)).point(lambda v: 120 + v // 3)
    sky = Image.merge("RGB", (ramp, ramp, Image.new("L", ramp.size, 230)))
    ImageDraw.Draw(sky).ellipse((60, 50, 120, 110), fill=(200, 60, 40))
    assert areas_of(sky, FEW).count <= 3


def test_softening_fills_every_gap_with_the_nearest_number() -> None:
    numbers = Image.new("L", (60, 40), 0)
    numbers.paste(1, (0, 0, 20, 40))
    numbers.paste(2, (40, 0, 60, 40))
    out = softened(numbers, 1.5)
    assert out.getpixel((27, 20)) == 1 and out.getpixel((32, 20)) == 2
    assert out.getextrema() == (1, 2)


def test_softening_a_picture_without_numbers_ends() -> None:
    assert softened(Image.new("L", (20, 20), 0), 2.0).size == (20, 20)
