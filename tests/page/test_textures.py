"""Textures: they cover their box, stay pale and fine, and are found by the words parents use."""

from __future__ import annotations

import pytest
from page_marks import box, kit

from packgen.page.marks import Line, Path_
from packgen.page.textures import TEXTURES, draw_texture, texture_named


@pytest.mark.parametrize("name", TEXTURES)
@pytest.mark.parametrize(("width", "height"), [(12.0, 60.0), (90.0, 30.0), (4.0, 4.0)])
def test_lines_are_fine_and_pale_and_cover_the_face(name: str, width: float, height: float) -> None:
    pen = kit("younger").pen()
    draw_texture(pen, name, width, height)
    strokes = [m.stroke for m in pen.marks if isinstance(m, Line | Path_)]
    assert len(strokes) == len(pen.marks) >= 2
    assert all(s and s.width < 0.2 and isinstance(s.ink, float) and s.ink >= 0.5 for s in strokes)
    boxes = [box(m) for m in pen.marks]
    assert max(b[3] for b in boxes) == pytest.approx(height) and min(b[1] for b in boxes) == 0.0
    assert min(b[0] for b in boxes) <= 0.0 and max(b[2] for b in boxes) >= width - 1e-9


@pytest.mark.parametrize(
    ("said", "name"),
    [("tiles", "tiles"), ("Tile", "tiles"), (" brick ", "bricks"), ("shingles", "slates"), ("wood", "planks")],
)
def test_a_texture_is_found_by_its_plain_words(said: str, name: str) -> None:
    assert texture_named(said) == name


def test_an_unknown_texture_has_no_name() -> None:
    assert texture_named("fur") == ""
