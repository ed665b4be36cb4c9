"""What is kept from build to build is the same thing again, and never in the way."""

from __future__ import annotations

import os
import time
from pathlib import Path

import pytest
from PIL import Image, ImageDraw

from packgen.pictures.cellar import Cellar
from packgen.pictures.line_art import LineArt, line_art, numbered, tone_shapes
from packgen.pictures.load import Store


@pytest.fixture
def picture(tmp_path: Path) -> Path:
    image = Image.new("RGB", (300, 220), (225, 205, 160))
    pen = ImageDraw.Draw(image)
    pen.ellipse((40, 40, 160, 170), fill=(170, 60, 40), outline=(20, 10, 10), width=4)
    pen.polygon([(180, 190), (230, 60), (280, 190)], fill=(40, 70, 130), outline=(20, 10, 10), width=4)
    image.save(tmp_path / "shapes.png")
    return tmp_path / "shapes.png"


def stores(tmp_path: Path) -> tuple[Store, Store]:
    """Two builds after each other that share a cellar."""
    cellar, work = tmp_path / "cellar", tmp_path / "work"
    cellar.mkdir(exist_ok=True)
    for name in ("one", "two"):
        (work / name).mkdir(parents=True, exist_ok=True)
    return Store(work / "one", Cellar(cellar)), Store(work / "two", Cellar(cellar))


def never() -> object:
    raise AssertionError("it was to be found, not made")


def test_a_value_comes_back_as_it_was(tmp_path: Path) -> None:
    value = (1, 2.5, 0.1 + 0.2, "é", ((("m", 0, 1e-17),), ()), True)
    Cellar(tmp_path).keep_value(value, "a", 3)
    assert Cellar(tmp_path).value("a", 3) == value
    assert Cellar(tmp_path).value("a", 4) is None


def test_line_art_is_made_once_for_all_builds(tmp_path: Path, picture: Path) -> None:
    first, second = stores(tmp_path)

    def arts(store: Store) -> list[LineArt]:
        return [line_art(store, picture, 1), tone_shapes(store, picture, 2, 3),
                numbered(store, picture, 1, 4)]  # fmt: skip

    made = arts(first)
    assert arts(second) == made
    for key in (("line art", 1, ""), ("tones", 2, 3, ""), ("numbered", 1, 4, "")):
        fresh = Store(tmp_path / "work", Cellar(tmp_path / "cellar"))
        fresh.keep_long(picture, key, never)


def test_a_prepared_picture_has_the_same_name_and_bytes_from_the_cellar(tmp_path: Path, picture: Path) -> None:
    first, second = (store.prepared(picture, 20, 15, grey=True) for store in stores(tmp_path))
    assert first.source.name == second.source.name and first.source.parent != second.source.parent
    assert first.source.read_bytes() == second.source.read_bytes()
    assert (first.width_px, first.height_px, first.dpi) == (second.width_px, second.height_px, second.dpi)


def test_what_is_broken_in_the_cellar_is_made_anew(tmp_path: Path, picture: Path) -> None:
    first, second = stores(tmp_path)
    wanted = first.prepared(picture, 20, 15).source.read_bytes()
    for kept in (tmp_path / "cellar").iterdir():
        kept.write_bytes(kept.read_bytes()[:-3])
    assert second.prepared(picture, 20, 15).source.read_bytes() == wanted


@pytest.mark.parametrize("text", [b"[1, 2", b"\xff\xfe", b"[" * 100_000, b""])
def test_a_value_that_is_no_value_is_not_there(tmp_path: Path, text: bytes) -> None:
    Cellar(tmp_path).keep_data(text, "value", "a")
    assert Cellar(tmp_path).value("a") is None


def test_another_picture_of_the_same_name_is_another_thing(tmp_path: Path, picture: Path) -> None:
    first, second = stores(tmp_path)
    before = line_art(first, picture, 1)
    Image.open(picture).transpose(Image.Transpose.FLIP_LEFT_RIGHT).save(picture)
    os.utime(picture, ns=(1, 1))
    assert line_art(second, picture, 1) != before


def test_a_cellar_that_cannot_be_written_is_none(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"")
    cellar = Cellar(tmp_path / "file")
    cellar.keep_value(1, "a")
    assert cellar.value("a") is None


def test_things_nobody_used_for_long_go(tmp_path: Path) -> None:
    Cellar(tmp_path).keep_value(1, "old")
    Cellar(tmp_path).keep_value(2, "used")
    old = time.time() - 100 * 24 * 3600
    for kept in tmp_path.iterdir():
        os.utime(kept, (old, old))
    assert Cellar(tmp_path).value("used") == 2
    Cellar(tmp_path).keep_value(3, "new")
    assert [Cellar(tmp_path).value(name) for name in ("old", "used", "new")] == [None, 2, 3]
