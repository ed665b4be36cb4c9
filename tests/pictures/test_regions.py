import pytest
from PIL import Image, ImageChops, ImageDraw

from packgen.pictures.cells import rooms
from packgen.pictures.regions import Wanted, areas_of

FEW = Wanted(2, 20, 8, 0.05, 0.6)


def scene(grain: float) -> Image.Image:
    image = Image.new("RGB", (240, 180), (120, 170, 220))
    pen = ImageDraw.Draw(image)
    pen.rectangle((0, 120, 240, 180), fill=(90, 140, 70))
    pen.ellipse((30, 20, 80, 70), fill=(250, 220, 90))
    pen.rectangle((130, 70, 200, 140), fill=(180, 80, 60))
    pen.rectangle((155, 100, 175, 140), fill=(70, 50, 40))
    image = image.resize((480, 360), Image.Resampling.NEAREST)
    noise = Image.merge("RGB", [Image.effect_noise(image.size, grain)] * 3) if grain else None
    return image if noise is None else ImageChops.add(image, noise, 1, -128)


@pytest.mark.parametrize("grain", [0, 6])
def test_the_things_in_a_scene_are_its_areas(grain: float) -> None:
    areas = areas_of(scene(grain), FEW)
    assert areas.count == 5
    # Sky and grass each less what stands before them, sun, house and door: counted from the drawing above.
    want = sorted([240 * 120 - 1963 - 70 * 50, 240 * 60 - 70 * 20 + 0, 1963, 70 * 70 - 20 * 40, 20 * 40])
    for got, size in zip(sorted(areas.sizes()), want, strict=True):
        assert got == pytest.approx(4 * size, rel=0.12)


def test_a_plain_picture_with_grain_is_one_area() -> None:
    plain = Image.merge("RGB", [Image.effect_noise((200, 150), 10)] * 3)
    assert areas_of(plain, FEW).count <= 2


def test_a_sky_that_only_grows_paler_is_not_cut_into_bands() -> None:
    ramp = Image.linear_gradient("L").resize((480, 384)).point(lambda v: 120 + v // 3)
    sky = Image.merge("RGB", (ramp, ramp, Image.new("L", ramp.size, 230)))
    ImageDraw.Draw(sky).ellipse((144, 120, 288, 264), fill=(200, 60, 40))
    assert areas_of(sky, FEW).count <= 3


def test_every_area_holds_the_crayon_it_is_wanted_for() -> None:
    wanted = Wanted(2, 40, 30, 0.1, 0.6)
    plane = areas_of(scene(6), wanted).plane()
    # What is narrower than a tenth of the long side is gone: the door is 40 px wide, a tenth is 48.
    assert min(rooms(plane, int(plane.max()) + 1)) >= 0.8 * 0.1 * 480 / 2


def test_a_picture_of_a_few_pixels_is_one_area() -> None:
    assert areas_of(Image.effect_noise((3, 500), 50).convert("RGB"), FEW).count == 1
