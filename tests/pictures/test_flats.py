"""A drawing with flat fills: its lines are a line drawing, its fills tell what is one thing."""

from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from packgen.pictures.drawn import drawn_cells, shows_drawing
from packgen.pictures.flats import flat_pixels, line_pixels, things
from packgen.pictures.line_art import numbered
from packgen.pictures.load import Store

DRAWING = """<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 400" width="600" height="400">
<rect width="600" height="400" fill="#88aadd"/>
<g stroke="#000000" stroke-width="3">
<path fill="#c03030" d="M60,60L280,60 280,330 60,330Z"/>
<path fill="#c03030" d="M320,60L540,60 540,330 320,330Z"/>
<path fill="#30a040" d="M120,120L220,120 220,240 120,240Z"/>
<path fill="#e0c030" d="M420,150L434,150 434,164 420,164Z"/>
</g><path fill="#000000" stroke="none" d="M360,300L500,300 500,304 360,304Z"/></svg>"""


@pytest.fixture
def files(tmp_path: Path) -> tuple[Path, Path]:
    """A picture with a shadow over its right half, and the drawing of it."""
    drawing = tmp_path / "drawing.svg"
    drawing.write_text(DRAWING, encoding="utf-8")
    pixels = np.full((400, 600, 3), (136, 170, 221), float)
    pixels[60:330, 60:280] = pixels[60:330, 320:540] = (192, 48, 48)
    pixels[120:240, 120:220] = (48, 160, 64)
    pixels[:, 300:] *= 0.4
    picture = tmp_path / "picture.png"
    Image.fromarray(pixels.astype(np.uint8)).save(picture)
    return picture, drawing


def test_the_lines_of_a_filled_drawing_are_a_line_drawing(files: tuple[Path, Path]) -> None:
    store = Store(None)
    assert shows_drawing(store, files[1], lines=True) and not shows_drawing(store, files[1])
    lines = line_pixels(store, files[1], 600)
    assert lines.size == (600, 400)
    assert [lines.getpixel(at) for at in ((20, 20), (100, 100), (170, 180), (430, 302))] == [255, 255, 255, 0]


def test_what_has_one_fill_is_one_thing_however_it_is_lit(files: tuple[Path, Path]) -> None:
    store = Store(None)
    plane = drawn_cells(line_pixels(store, files[1], 600)).plane()
    flat = flat_pixels(store, files[1], (600, 400))
    assert flat is not None
    thing, fills = things(plane, flat)
    wall, other, door, sky = (thing[plane[y, x]] for x, y in ((80, 80), (500, 100), (170, 180), (20, 20)))
    assert wall == other and len({wall, door, sky}) == 3
    assert fills[wall] == pytest.approx((0xC0 / 255, 0x30 / 255, 0x30 / 255), abs=0.01)


def test_every_closed_area_of_a_filled_drawing_has_a_number_however_small(files: tuple[Path, Path]) -> None:
    art = numbered(Store(files[0].parent), files[0], 2, 8, files[1])
    assert len(art.regions) == 5 and all(region.number for region in art.regions)
    red = [region.number for region in art.regions if region.colour[0] > 0.7 and region.colour[1] < 0.3]
    assert len(red) == 2 and len(set(red)) == 1
