"""Pictures on a page: their own shape kept, inside their place, grey for a printer without colour, lines as lines."""

import sys
from pathlib import Path

import pypdfium2
import pytest
from page_marks import box, of_role
from PIL import Image

from packgen.page.blocks import DrawBox
from packgen.page.desk import Desk
from packgen.page.marks import Group, Page, Path_, Picture
from packgen.page.pictured import Beside, PictureBlock, place_picture
from packgen.pictures.load import Store
from packgen.writing.pdf import Document, pdf_bytes

sys.path.insert(0, str(Path(__file__).parents[1] / "sheets"))
from study_desks import words_desk

SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 40"><rect width="60" height="40" fill="#204080"/></svg>'


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    at = words_desk("older", [("ebb", "out")])
    at.store = Store(tmp_path / "store")
    (tmp_path / "store").mkdir()
    return at


@pytest.fixture
def teal(tmp_path: Path) -> Path:
    Image.new("RGB", (600, 400), "teal").save(tmp_path / "teal.png")
    return tmp_path / "teal.png"


@pytest.mark.parametrize(("width", "height"), [(100.0, 200.0), (100.0, 50.0), (100.0, 30.0)])
def test_a_picture_is_never_stretched_or_cut(desk: Desk, teal: Path, width: float, height: float) -> None:
    pen = desk.kit.pen()
    PictureBlock(desk, teal, least=20.0).draw(desk.kit, pen, 0.0, 0.0, width, height)
    (picture,) = [m for m in pen.marks if isinstance(m, Picture)]
    assert picture.width / picture.height == pytest.approx(1.5)
    assert picture.width <= width + 1e-9 and picture.height <= height + 1e-9
    assert picture.x + picture.width / 2 == pytest.approx(width / 2)


def test_a_picture_asks_for_no_more_height_than_its_width_gives(desk: Desk, teal: Path) -> None:
    span = PictureBlock(desk, teal, least=50.0).measure(desk.kit, 90.0)
    assert span.most == pytest.approx(60.0) and span.least == 50.0


def test_a_picture_beside_a_box_is_as_high_as_the_box(desk: Desk, teal: Path) -> None:
    for right in (False, True):
        pen = desk.kit.pen()
        Beside(desk, teal, DrawBox(), right=right).draw(desk.kit, pen, 0.0, 0.0, 150.0, 50.0)
        (picture,) = [m for m in pen.marks if isinstance(m, Picture)]
        (frame,) = of_role(pen.marks, "drawbox")
        assert picture.height == pytest.approx(50.0) and box(frame)[1] == pytest.approx(-50.0)
        assert (picture.x > box(frame)[2]) == right
        assert max(box(frame)[2], picture.x + picture.width) == pytest.approx(150.0)


def test_a_printer_without_colour_gets_a_grey_picture(desk: Desk, teal: Path) -> None:
    from dataclasses import replace

    from packgen.reading.models import Printer

    desk.family = replace(desk.family, printer=Printer(colour=False))
    pen = desk.kit.pen()
    place_picture(desk, pen, teal, 0.0, 0.0, 60.0, 40.0)
    (picture,) = [m for m in pen.marks if isinstance(m, Picture)]
    with Image.open(picture.source) as image:
        red, green, blue = image.convert("RGB").getpixel((0, 0))  # type: ignore[misc]
    assert red == green == blue


def test_a_coarse_picture_is_warned_of(desk: Desk, tmp_path: Path) -> None:
    Image.new("RGB", (100, 66), "teal").save(tmp_path / "small.png")
    place_picture(desk, desk.kit.pen(), tmp_path / "small.png", 0.0, 0.0, 150.0, 99.0)
    assert len(desk.faults) == 1 and "coarse" in desk.faults[0].message


def test_a_drawing_stays_lines_shown_only_in_its_place(desk: Desk, tmp_path: Path) -> None:
    (tmp_path / "d.svg").write_text(SVG, encoding="utf-8")
    pen = desk.kit.pen()
    place_picture(desk, pen, tmp_path / "d.svg", 10.0, 20.0, 60.0, 40.0, framed=False)
    (group,) = pen.marks
    assert isinstance(group, Group) and group.clip == ((10.0, 20.0), (70.0, 20.0), (70.0, 60.0), (10.0, 60.0))
    (shape,) = group.marks
    assert isinstance(shape, Path_)
    assert box(shape) == pytest.approx((10.0, 20.0, 70.0, 60.0), abs=1e-6)
    assert shape.fill == pytest.approx((0x20 / 255, 0x40 / 255, 0x80 / 255))


def test_grey_lines_have_the_lightness_of_their_colour(desk: Desk, tmp_path: Path) -> None:
    """Luma of ITU-R BT.601: 0.299 R + 0.587 G + 0.114 B."""
    (tmp_path / "d.svg").write_text(SVG, encoding="utf-8")
    pen = desk.kit.pen()
    place_picture(desk, pen, tmp_path / "d.svg", 0.0, 0.0, 60.0, 40.0, framed=False, grey=True)
    (group,) = pen.marks
    assert isinstance(group, Group) and isinstance(group.marks[0], Path_)
    assert group.marks[0].fill == pytest.approx((0.299 * 0x20 + 0.587 * 0x40 + 0.114 * 0x80) / 255)


@pytest.mark.parametrize("crop", [None, (0.25, 0.25, 0.5, 0.5)])
@pytest.mark.parametrize("kind", ["photo.jpg", "plain.png", "turned.jpg"])
def test_a_pixel_of_a_picture_stands_within_a_fifth_of_a_millimetre_in_the_pdf(
    desk: Desk, tmp_path: Path, kind: str, crop: tuple[float, float, float, float] | None
) -> None:
    """A red square from (700, 300) to (800, 400) in a picture 1200 x 900, found again in the rendered page."""
    image = Image.new("RGB", (1200, 900), "white")
    image.paste("red", (700, 300, 800, 400))
    path = tmp_path / kind
    if kind == "turned.jpg":
        exif = Image.Exif()
        exif[0x0112] = 6  # to be turned a quarter clockwise (EXIF 2.3, 4.6.4)
        image.transpose(Image.Transpose.ROTATE_90).save(path, exif=exif, quality=95)
    else:
        image.save(path, **({"quality": 95} if path.suffix == ".jpg" else {}))
    pen = desk.kit.pen()
    place_picture(desk, pen, path, 20.0, 100.0, 120.0, 90.0, crop=crop, framed=False)
    data = pdf_bytes(Document("A title", (Page(210.0, 297.0, tuple(pen.marks), "A page"),)))
    shown = pypdfium2.PdfDocument(data)[0].render(scale=600 / 72).to_pil().convert("RGB")
    red = shown.split()[1].point([255] * 128 + [0] * 128).getbbox()
    left, top, wide, high = crop or (0.0, 0.0, 1.0, 1.0)
    want = [20 + 120 * (x / 1200 - left) / wide for x in (700, 800)]
    want += [297 - 190 + 90 * (y / 900 - top) / high for y in (300, 400)]
    assert red is not None
    found = [at * 25.4 / 600 for at in (red[0], red[2], red[1], red[3])]
    assert found == pytest.approx(want, abs=0.2)
