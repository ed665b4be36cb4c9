"""Ink sketches: lines where a picture has edges, none where it is plain, dark sides first, the same each time."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image, ImageDraw

from packgen.pictures.load import Store
from packgen.pictures.shapes import flattened, signed_area
from packgen.pictures.sketch import sketch


def _drawn(
    path: Path, dark: tuple[int, int, int] = (40, 50, 60), light: tuple[int, int, int] = (220, 220, 210)
) -> Path:
    image = Image.new("RGB", (900, 600), light)
    ImageDraw.Draw(image).rectangle((300, 150, 700, 450), fill=dark)
    image.save(path)
    return path


def test_a_plain_picture_has_no_lines(tmp_path: Path) -> None:
    Image.new("RGB", (300, 200), (120, 130, 140)).save(tmp_path / "plain.png")
    art = sketch(Store(tmp_path), tmp_path / "plain.png", 2)
    assert art.ink == () and art.regions == () and len(art.outlines) == 1


@pytest.mark.parametrize("level", [1, 2, 3])
def test_a_line_runs_round_a_dark_square_on_its_dark_side(tmp_path: Path, level: int) -> None:
    art = sketch(Store(tmp_path), _drawn(tmp_path / "square.png"), level)
    xs = [float(v) for steps in art.ink for step in steps for v in step[1::2]]
    ys = [float(v) for steps in art.ink for step in steps for v in step[2::2]]
    # The square reaches from 1/3 to 7/9 of the width and from 1/4 to 3/4 of the height.
    assert min(xs) == pytest.approx(1 / 3, abs=0.012) and max(xs) == pytest.approx(7 / 9, abs=0.012)
    assert min(ys) == pytest.approx(600 / 900 / 4, abs=0.012) and max(ys) == pytest.approx(600 / 900 * 3 / 4, abs=0.012)
    assert not any(0.4 < x < 0.7 and 0.22 < y < 0.44 for x, y in zip(xs, ys, strict=True))


def test_an_edge_in_the_dark_is_drawn_as_well_as_one_in_the_light(tmp_path: Path) -> None:
    store = Store(tmp_path)
    assert sketch(store, _drawn(tmp_path / "dim.png", (14, 14, 16), (40, 40, 44)), 2).ink
    assert sketch(store, _drawn(tmp_path / "bright.png", (200, 200, 205), (250, 250, 250)), 2).ink


def test_finer_sketches_have_finer_lines(tmp_path: Path) -> None:
    path, store = _drawn(tmp_path / "square.png"), Store(tmp_path)
    thick = []
    for level in (1, 2, 3):
        rings = [ring for steps in sketch(store, path, level).ink for ring in flattened(steps, 4)]
        outer, *inner = sorted((abs(signed_area(ring)) for ring in rings), reverse=True)
        thick.append(outer - sum(inner))  # the line round a square lies between two rings
    assert thick[0] > thick[1] > thick[2] > 0


def test_every_kind_of_picture_is_sketched_within_its_frame(six: dict[str, Path], store: Store) -> None:
    for path in six.values():
        art = sketch(store, path, 2)
        assert len(art.ink) > 3
        for steps in art.ink:
            assert steps[0][0] == "m" and steps[-1] == ("z",)
            assert all(-0.01 <= float(v) <= 1.01 for step in steps for v in step[1::2])
            assert all(-0.01 <= float(v) <= art.height + 0.01 for step in steps for v in step[2::2])


def test_the_same_picture_gives_the_same_sketch(tmp_path: Path) -> None:
    path = _drawn(tmp_path / "square.png")
    assert sketch(Store(tmp_path), path, 2) == sketch(Store(tmp_path), path, 2)
