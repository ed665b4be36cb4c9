import hashlib
import io
from pathlib import Path

import pypdfium2
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image, ImageDraw
from reportlab.pdfgen.canvas import Canvas

from packgen.faults import Place, Severity
from packgen.pictures.load import Store, aspect, check_picture, crop_for, faded

HERE = Place("study.yaml", 4, 9)


def photo(path: Path, size: tuple[int, int] = (1200, 800), kind: str = "JPEG") -> Path:
    across = Image.linear_gradient("L").resize(size)
    down = Image.linear_gradient("L").rotate(90).resize(size)
    noise = Image.effect_noise(size, 30)
    Image.merge("RGB", (across, down, noise)).save(path, kind)
    return path


@pytest.fixture
def own(tmp_path: Path) -> Store:
    folder = tmp_path / "prepared"
    folder.mkdir()
    return Store(folder)


def test_a_good_picture_has_no_faults(tmp_path: Path) -> None:
    info, faults = check_picture(photo(tmp_path / "a.jpg"), HERE)
    assert info is not None and (info.width_px, info.height_px, info.format) == (1200, 800, "JPEG")
    assert faults == ()


def test_a_fault_stands_where_the_parent_wrote_it(tmp_path: Path) -> None:
    info, faults = check_picture(tmp_path / "missing.png", HERE)
    assert info is None
    assert [(f.place, f.severity) for f in faults] == [(HERE, Severity.FAULT)]
    assert faults[0].instead


def test_a_truncated_jpeg_is_found_by_the_check(tmp_path: Path) -> None:
    path = photo(tmp_path / "cut.jpg")
    path.write_bytes(path.read_bytes()[:-4000])
    assert check_picture(path, HERE)[0] is None


def test_animated_and_tiny_pictures_are_warned_about(tmp_path: Path) -> None:
    path = tmp_path / "moves.gif"
    Image.new("L", (100, 100), 0).save(path, save_all=True, append_images=[Image.new("L", (100, 100), 255)])
    info, faults = check_picture(path, HERE)
    assert info is not None and [f.severity for f in faults] == [Severity.WARNING]
    dot = tmp_path / "dot.png"
    Image.new("L", (1, 1)).save(dot)
    info, faults = check_picture(dot, HERE)
    assert info is not None and "1 × 1 pixels" in faults[0].message


def test_a_jpeg_that_fits_is_passed_through_untouched(tmp_path: Path, own: Store) -> None:
    path = photo(tmp_path / "a.jpg")
    made = own.prepared(path, 100, 66.7)
    assert made.source.suffix == ".jpg"
    with Image.open(path) as before, Image.open(made.source) as after:
        assert before.tobytes() == after.tobytes()


def test_no_more_pixels_than_the_print_needs(tmp_path: Path, own: Store) -> None:
    made = own.prepared(photo(tmp_path / "a.jpg"), 25.4, 25.4 * 2 / 3)
    assert (made.width_px, made.height_px) == (300, 200)
    assert made.dpi == pytest.approx(1200)
    with Image.open(made.source) as image:
        assert image.size == (300, 200)


def test_the_largest_good_size_is_that_of_150_dots_an_inch(tmp_path: Path, own: Store) -> None:
    made = own.prepared(photo(tmp_path / "a.jpg"), 420, 280)
    # 1200 px at 150 an inch is 8 inches: 203.2 mm.
    assert (
        made.coarse and made.good_width == pytest.approx(203.2) and made.good_height == pytest.approx(800 / 150 * 25.4)
    )
    said = made.warning("The Harbour", HERE)
    assert said is not None and said.severity is Severity.WARNING and "203 × 135 mm" in said.instead
    assert own.prepared(photo(tmp_path / "a.jpg"), 200, 133.3).warning("The Harbour") is None


def test_a_photo_turned_by_its_camera_comes_out_upright(tmp_path: Path, own: Store) -> None:
    exif = Image.Exif()
    exif[274] = 6
    stored = Image.new("RGB", (300, 200), (20, 60, 200))
    stored.paste((220, 40, 30), (0, 0, 150, 200))
    path = tmp_path / "turned.jpg"
    stored.save(path, exif=exif, quality=95)
    assert aspect(path) == pytest.approx(200 / 300)
    with Image.open(own.prepared(path, 40, 60).source) as image:
        assert image.size == (200, 300)
        assert image.getpixel((100, 20))[0] > 180 and image.getpixel((100, 280))[2] > 180


def test_crop_grey_and_lighten_are_done(tmp_path: Path, own: Store) -> None:
    path = tmp_path / "halves.png"
    halves = Image.new("RGB", (400, 200), (0, 0, 0))
    halves.paste((200, 100, 50), (200, 0, 400, 200))
    halves.save(path)
    right = own.prepared(path, 50, 50, crop=(0.5, 0.0, 0.5, 1.0))
    with Image.open(right.source) as image:
        assert image.size == (200, 200) and image.convert("RGB").getpixel((10, 10)) == (200, 100, 50)
    with Image.open(own.prepared(path, 50, 25, grey=True).source) as image:
        assert image.mode == "L"
    with Image.open(own.prepared(path, 50, 25, lighten=0.5).source) as image:
        assert image.convert("RGB").getpixel((10, 10)) == (128, 128, 128)


def test_a_picture_is_made_once_for_its_content_and_options(tmp_path: Path, own: Store) -> None:
    first = photo(tmp_path / "a.png", kind="PNG")
    second = tmp_path / "copy.png"
    second.write_bytes(first.read_bytes())
    assert own.prepared(first, 60, 40) == own.prepared(second, 60, 40)
    assert own.prepared(first, 60, 40, grey=True) != own.prepared(first, 60, 40)
    assert len(list(own.folder.iterdir())) == 2


def test_the_same_picture_gives_the_same_bytes_in_any_folder(tmp_path: Path) -> None:
    path = photo(tmp_path / "a.png", kind="PNG")
    sums = set()
    for name in ("one", "two"):
        (tmp_path / name).mkdir()
        made = Store(tmp_path / name).prepared(path, 60, 40)
        sums.add((made.source.name, hashlib.sha256(made.source.read_bytes()).hexdigest()))
    assert len(sums) == 1


def test_flat_art_stays_sharp_and_photos_stay_small(tmp_path: Path, own: Store) -> None:
    flat = tmp_path / "flat.png"
    drawing = Image.new("RGB", (600, 400), (255, 255, 255))
    ImageDraw.Draw(drawing).ellipse((100, 100, 300, 300), fill=(200, 30, 30))
    drawing.save(flat)
    assert own.prepared(flat, 50, 33.3).source.suffix == ".png"
    assert own.prepared(photo(tmp_path / "b.png", kind="PNG"), 50, 33.3).source.suffix == ".jpg"


@pytest.mark.parametrize(
    ("mode", "colour"),
    [
        ("RGB", (200, 60, 40)),
        ("CMYK", (0, 180, 200, 40)),
        ("P", None),
        ("L", 90),
        ("I;16", 30000),
        ("RGBA", (30, 90, 160, 255)),
    ],
)
def test_colours_after_embedding_lie_within_six_of_255(tmp_path: Path, own: Store, mode: str, colour: object) -> None:
    green = Image.new("RGB", (300, 300), (60, 140, 80))
    image = green.quantize(8) if mode == "P" else Image.new(mode, (300, 300), colour)
    path = tmp_path / "plain.tif"
    image.save(path)
    want = {"RGB": (200, 60, 40), "P": (60, 140, 80), "L": (90,) * 3, "I;16": (117,) * 3, "RGBA": (30, 90, 160)}.get(
        mode
    )
    want = want or image.convert("RGB").getpixel((0, 0))
    held = io.BytesIO()
    canvas = Canvas(held, pagesize=(100, 100))
    canvas.drawImage(str(own.prepared(path, 35, 35).source), 0, 0, 100, 100)
    canvas.save()
    document = pypdfium2.PdfDocument(held.getvalue())
    seen = document[0].render().to_pil().convert("RGB").getpixel((50, 50))
    document.close()
    assert max(abs(a - b) for a, b in zip(seen, want, strict=True)) <= 6


def test_the_average_colour_is_of_the_part_asked_for(tmp_path: Path, own: Store) -> None:
    path = tmp_path / "halves.png"
    halves = Image.new("RGB", (400, 200), (0, 0, 0))
    halves.paste((255, 255, 255), (200, 0, 400, 200))
    halves.save(path)
    assert own.average_colour(path) == pytest.approx((0.5, 0.5, 0.5), abs=0.01)
    assert own.average_colour(path, (0.5, 0.0, 0.5, 1.0)) == pytest.approx((1, 1, 1), abs=0.01)


def test_the_palette_begins_with_what_covers_most(tmp_path: Path, own: Store) -> None:
    path = tmp_path / "flag.png"
    flag = Image.new("RGB", (300, 100), (20, 40, 160))
    flag.paste((220, 30, 30), (0, 0, 60, 100))
    flag.save(path)
    blue, red = own.palette(path, 2)
    assert blue[2] > 0.5 and red[0] > 0.7


def test_an_svg_is_drawn_at_the_pixels_asked_for(tmp_path: Path, own: Store) -> None:
    path = tmp_path / "shape.svg"
    path.write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 10"><rect width="10" height="10" fill="red"/></svg>'
    )
    made = own.prepared(path, 50.8, 25.4)
    assert (made.width_px, made.height_px) == (600, 300) and not made.coarse
    with Image.open(made.source) as image:
        assert image.getpixel((100, 100)) == (255, 0, 0) and image.getpixel((500, 100)) == (255, 255, 255)


def test_the_pixels_of_an_svg_have_its_shape(tmp_path: Path, own: Store) -> None:
    path = tmp_path / "wide.svg"
    path.write_text('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 10"><path d="M0 0H20V10H0Z"/></svg>')
    pixels = own.pixels(path, 400, grey=True)
    assert pixels.size == (400, 100) and pixels.getpixel((150, 50)) == 0 and pixels.getpixel((250, 50)) == 255


def test_fading_leaves_the_part_kept_as_it_is() -> None:
    dark = Image.new("RGB", (200, 100), (10, 20, 30))
    out = faded(dark, (0.25, 0.25, 0.5, 0.5))
    assert out.getpixel((100, 50)) == (10, 20, 30)
    assert min(out.getpixel((0, 50))) > 250
    assert out.getpixel((60, 50)) == (10, 20, 30)


@given(st.floats(0.2, 5), st.floats(0.2, 5), st.floats(0, 1), st.floats(0, 1))
def test_a_crop_has_the_aspect_of_its_box_and_lies_in_the_picture(
    own_aspect: float, box: float, x: float, y: float
) -> None:
    left, top, width, height = crop_for(own_aspect, box, (x, y))
    assert width * own_aspect / height == pytest.approx(box)
    assert max(width, height) == pytest.approx(1)
    assert left >= -1e-9 and left + width <= 1 + 1e-9 and top >= -1e-9 and top + height <= 1 + 1e-9
