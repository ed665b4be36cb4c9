from pathlib import Path

import pytest
from PIL import Image, ImageDraw

from packgen.pictures.closer import (
    KINDS,
    built_on,
    composition_lines,
    details,
    eye_line,
    tone_spots,
    tone_strip,
)
from packgen.pictures.load import Store


def test_the_golden_section_divides_as_the_whole_to_the_larger_part() -> None:
    # MathWorld, "Golden Ratio": 1.6180339887.
    larger = composition_lines("golden")[1][0][0]
    assert 1 / larger == pytest.approx(1.6180339887, abs=1e-9)
    assert larger / (1 - larger) == pytest.approx(1.6180339887, abs=1e-9)


@pytest.mark.parametrize("kind", KINDS)
def test_composition_lines_run_from_edge_to_edge(kind: str) -> None:
    for start, end in composition_lines(kind):
        for x, y in (start, end):
            assert min(x, y, 1 - x, 1 - y) == 0


def test_an_unknown_kind_names_the_known_ones() -> None:
    with pytest.raises(ValueError, match="thirds"):
        composition_lines("halves")
    assert eye_line(0.4) == ((0.0, 0.4), (1.0, 0.4))


def test_the_details_are_where_there_is_something_to_see(tmp_path: Path, store: Store) -> None:
    picture = Image.new("RGB", (600, 400), (180, 190, 200))
    pen = ImageDraw.Draw(picture)
    places = ((60, 60), (450, 50), (80, 280), (460, 290))
    for n, (x, y) in enumerate(places):  # four different things
        for k in range(6):
            box = (x + 6 * k, y + 5 * k, x + 80 - 6 * k, y + 70 - 5 * k)
            if n % 2:
                pen.rectangle(box, outline=(20, 20, 40), width=2 + n)
            else:
                pen.chord(box, 90 * n, 90 * n + 180, fill=(20, 20, 40) if k % 2 else (240, 240, 240))
    path = tmp_path / "four.png"
    picture.save(path)
    found = details(store, path)
    assert len(found) == 4
    for (left, top, width, height), (x, y) in zip(found, ((100, 95), (490, 85), (120, 315), (500, 325)), strict=True):
        assert width * 600 == pytest.approx(height * 400, rel=0.05)
        assert left < x / 600 < left + width and top < y / 400 < top + height


@pytest.mark.parametrize("kind", ["portrait", "still_life", "landscape", "animal"])
def test_details_lie_in_the_picture_and_apart(six: dict[str, Path], store: Store, kind: str) -> None:
    found = details(store, six[kind], aspect=1.3)
    assert len(found) == 4
    for i, (left, top, width, height) in enumerate(found):
        assert left >= 0 and top >= 0 and left + width <= 1.001 and top + height <= 1.001
        assert all(abs(left - a) > width * 0.6 or abs(top - b) > height * 0.6 for a, b, _, _ in found[:i])


def test_details_of_a_pattern_are_not_four_times_the_same(tmp_path: Path, store: Store) -> None:
    picture = Image.new("RGB", (480, 360), (230, 225, 210))
    pen = ImageDraw.Draw(picture)
    for x in range(30, 480, 60):
        for y in range(30, 360, 60):
            pen.ellipse((x - 20, y - 20, x + 20, y + 20), outline=(20, 40, 90), width=5)
    path = tmp_path / "pattern.png"
    picture.save(path)
    assert len(details(store, path, side=1 / 6)) <= 2


def test_a_plain_picture_has_no_details(tmp_path: Path, store: Store) -> None:
    path = tmp_path / "plain.png"
    Image.new("RGB", (100, 100), (9, 99, 199)).save(path)
    assert details(store, path) == ()


def test_the_middle_tone_is_that_of_half_lightness() -> None:
    # CIE 1976 L* = 65 is luminance 0.3405, as sRGB 158 of 255; L* = 30 is 0.0624, 71 (IEC 61966-2-1; worked by hand).
    strip = tone_strip(5)
    assert strip[0] == pytest.approx(1, abs=1e-6)
    assert round(strip[2] * 255) == 158 and round(strip[-1] * 255) == 71
    assert list(strip) == sorted(strip, reverse=True)


def test_a_picture_built_on_thirds_says_so_and_one_without_lines_nothing(tmp_path: Path, store: Store) -> None:
    thirds, even = tmp_path / "thirds.png", tmp_path / "even.png"
    picture = Image.new("L", (300, 300), 200)
    pen = ImageDraw.Draw(picture)
    pen.rectangle((0, 200, 300, 300), fill=60)
    pen.rectangle((100, 0, 105, 300), fill=40)
    picture.save(thirds)
    Image.effect_noise((300, 300), 60).save(even)
    assert built_on(store, thirds)[0] == "thirds" and "golden" not in built_on(store, thirds)
    assert built_on(store, even) == () and len(built_on(store, even, 2)) == 2


def test_places_of_even_tone_have_the_tone_they_are_given(tmp_path: Path, store: Store) -> None:
    greys = tone_strip(4)
    picture = Image.new("L", (320, 240))
    for k, grey in enumerate(greys):
        picture.paste(round(255 * grey), (80 * k, 0, 80 * k + 80, 240))
    path = tmp_path / "steps.png"
    picture.save(path)
    spots = tone_spots(store, path, greys)
    assert sorted(spot.tone for spot in spots) == [0, 1, 2, 3]
    assert all(80 * spot.tone < spot.x * 320 < 80 * spot.tone + 80 for spot in spots)


def test_a_tone_the_picture_has_not_is_left_out(tmp_path: Path, store: Store) -> None:
    path = tmp_path / "white.png"
    Image.new("L", (320, 240), 255).save(path)
    assert [spot.tone for spot in tone_spots(store, path, tone_strip(5))] == [0]
