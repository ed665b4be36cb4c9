import pytest
from picture_kinds import KINDS
from PIL import Image, ImageDraw

from packgen.pictures.drawn import drawn_areas, drawn_ink, is_drawing, marks
from packgen.pictures.regions import Wanted

ALL = Wanted(1, 60, 30, 0.02, 0.6)


def rooms() -> Image.Image:
    image = Image.new("L", (400, 300), 245)
    pen = ImageDraw.Draw(image)
    pen.rectangle((50, 50, 350, 250), outline=20, width=5)
    pen.line((150, 50, 150, 250), fill=20, width=5)
    pen.line((150, 150, 350, 150), fill=20, width=5)
    pen.line((70, 100, 120, 100), fill=20, width=5)  # a stroke that parts nothing
    return image


@pytest.mark.parametrize("kind", KINDS)
def test_only_the_line_drawing_is_taken_for_one(kind: str) -> None:
    image = KINDS[kind]()
    image.thumbnail((560, 560))
    assert is_drawing(image.convert("RGB")) == (kind == "line_drawing")


def test_a_silhouette_and_bare_paper_are_no_drawings() -> None:
    dark = Image.new("RGB", (200, 200), "white")
    ImageDraw.Draw(dark).ellipse((50, 50, 120, 150), fill="black")
    assert not is_drawing(dark)
    assert not is_drawing(Image.new("RGB", (200, 200), "white"))


def test_the_paper_between_strokes_meets_in_their_middle() -> None:
    areas = drawn_areas(rooms(), ALL)
    # The ground around, and three rooms 100 x 200, 200 x 100 and 200 x 100 px from stroke to stroke.
    assert areas.count == 4
    inner = sorted(areas.sizes())[:3]
    assert all(abs(size - 20_000) < 1_200 for size in inner)


def test_areas_over_the_limit_are_joined_smallest_first() -> None:
    areas = drawn_areas(rooms(), Wanted(1, 3, 2, 0.02, 0.6))
    assert areas.count <= 3 and max(areas.sizes()) > 55_000


def test_an_area_too_narrow_to_colour_is_joined_to_its_neighbour() -> None:
    # The rooms are 100 px across, the paper round them 50; a crayon that wants 120 px finds one area.
    assert drawn_areas(rooms(), Wanted(1, 60, 30, 0.3, 0.6)).count < 4


def test_a_narrow_area_joins_the_neighbour_whose_colour_it_has() -> None:
    image = Image.new("L", (300, 200), 245)
    pen = ImageDraw.Draw(image)
    for x in (100, 130):
        pen.line((x, 0, x, 200), fill=20, width=5)
    painted = Image.new("RGB", image.size, (200, 60, 50))
    painted.paste((40, 90, 200), (0, 0, 130, 200))
    sizes = sorted(drawn_areas(image, Wanted(1, 60, 30, 0.2, 0.6), painted).sizes())
    assert sizes == pytest.approx([130 * 200, 170 * 200], rel=0.05)


def test_all_that_is_drawn_stays_as_ink_without_specks() -> None:
    image = rooms()
    image.putpixel((20, 20), 0)
    inked = drawn_ink(image)
    assert inked.getpixel((95, 100)) == 255 and inked.getpixel((50, 60)) == 255 and inked.getpixel((20, 20)) == 0


def test_marks_are_what_is_darker_than_the_paper() -> None:
    shown = marks(rooms())
    assert shown.getpixel((95, 100)) == 255 and shown.getpixel((20, 20)) == 0
