from pathlib import Path

from packgen.pictures.svg import vector_picture
from packgen.pictures.svg_pixels import drawn

HOLE = b"""<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><rect width="20" height="20" fill="#00f"/>
<path d="M22 2h16v16h-16z M26 6v8h8v-8z" fill="#f00"/><path d="M0 10h20" stroke="#fff" stroke-width="4"/></svg>"""


def test_fills_holes_and_strokes_show_where_they_should() -> None:
    image = drawn(vector_picture(HOLE, Path("hole.svg")), 80, 40)
    assert image.size == (80, 40)
    assert image.getpixel((10, 6)) == (0, 0, 255)
    assert image.getpixel((10, 20)) == (255, 255, 255)
    assert image.getpixel((48, 8)) == (255, 0, 0)
    assert image.getpixel((60, 20)) == (255, 255, 255)
