from pathlib import Path

import pytest
from picture_kinds import KINDS
from PIL import Image, ImageDraw

from packgen.pictures.finish import blank_window, is_plain, kept_half, kept_middle
from packgen.pictures.load import Store


@pytest.mark.parametrize("kind", KINDS)
def test_half_a_picture_is_about_half_and_lies_at_an_edge(six: dict[str, Path], store: Store, kind: str) -> None:
    left, top, width, height = kept_half(store, six[kind])
    assert 0.43 <= width * height <= 0.57
    assert (left in (0.0,) or left + width == pytest.approx(1)) and (top == 0 or top + height == pytest.approx(1))


def test_the_cut_goes_where_lines_cross_it(tmp_path: Path, store: Store) -> None:
    bars = Image.new("RGB", (300, 300), (240, 240, 240))
    pen = ImageDraw.Draw(bars)
    for k in range(12):
        pen.rectangle((0, 10 + 24 * k, 300, 20 + 24 * k), fill=(30, 60, 90))
    path = tmp_path / "bars.png"
    bars.save(path)
    assert kept_half(store, path)[3] == 1


def test_a_front_seen_straight_is_cut_upright(tmp_path: Path, store: Store) -> None:
    front = Image.new("RGB", (300, 300), (200, 210, 220))
    pen = ImageDraw.Draw(front)
    pen.polygon([(50, 120), (150, 40), (250, 120)], fill=(150, 60, 50))
    pen.rectangle((70, 120, 230, 280), fill=(220, 200, 170))
    pen.rectangle((130, 200, 170, 280), fill=(90, 60, 40))
    for x in (85, 185):
        pen.rectangle((x, 140, x + 30, 170), fill=(60, 80, 110))
    path = tmp_path / "front.png"
    front.save(path)
    assert kept_half(store, path)[3] == 1


@pytest.mark.parametrize("kind", KINDS)
def test_a_window_lies_inside_and_has_its_size(six: dict[str, Path], store: Store, kind: str) -> None:
    left, top, width, height = blank_window(store, six[kind], 0.35)
    assert (width, height) == (0.35, 0.35)
    assert left > 0 and top > 0 and left + width < 1 and top + height < 1


def test_the_middle_kept_holds_what_there_is_to_see(tmp_path: Path, store: Store) -> None:
    picture = Image.new("RGB", (400, 300), (230, 230, 220))
    pen = ImageDraw.Draw(picture)
    for k in range(10):
        pen.ellipse((230 + 5 * k, 150 + 5 * k, 370 - 5 * k, 280 - 5 * k), outline=(20, 20, 20), width=2)
    path = tmp_path / "corner.png"
    picture.save(path)
    left, top, width, height = kept_middle(store, path)
    assert left <= 300 / 400 <= left + width and top <= 215 / 300 <= top + height
    assert left > 0.2 and top > 0.2


def test_large_things_near_the_middle_count_and_not_texture(tmp_path: Path, store: Store) -> None:
    picture = Image.new("RGB", (400, 300), (200, 210, 220))
    pen = ImageDraw.Draw(picture)
    for x in range(240, 400, 6):  # waves in a corner
        for y in range(190, 300, 6):
            pen.line((x, y, x + 4, y + 2), fill=(120, 140, 170))
    pen.rectangle((120, 60, 200, 200), fill=(120, 50, 40))
    path = tmp_path / "tower.png"
    picture.save(path)
    left, top, width, _ = kept_middle(store, path, 0.46)
    assert left < 130 / 400 and left + width > 190 / 400 and top < 80 / 300


@pytest.mark.parametrize("kind", KINDS)
def test_a_picture_is_not_plain(six: dict[str, Path], store: Store, kind: str) -> None:
    assert not is_plain(store, six[kind])


def test_an_even_ground_is_plain(tmp_path: Path, store: Store) -> None:
    path = tmp_path / "even.png"
    Image.linear_gradient("L").resize((300, 200)).point(lambda v: 120 + v // 8).save(path)
    assert is_plain(store, path)
