from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packgen.faults import Place
from packgen.pictures.load import check_picture
from packgen.pictures.opening import PictureError
from packgen.pictures.shapes import VectorPicture
from packgen.pictures.svg import read_svg, vector_picture
from packgen.pictures.svg_xml import SvgError

NAMED = Path("drawing.svg")


def drawing(body: str, head: str = 'viewBox="0 0 100 50"') -> VectorPicture:
    return vector_picture(f'<svg xmlns="http://www.w3.org/2000/svg" {head}>{body}</svg>'.encode(), NAMED)


def test_y_runs_upwards_from_the_lower_left_corner() -> None:
    picture = drawing('<path d="M10 40 L20 30"/>', 'viewBox="0 10 100 50"')
    assert picture.shapes[0].steps == (("m", 10, 20), ("l", 20, 30))
    assert (picture.width, picture.height) == (100, 50)


def test_fill_stroke_and_dashes_are_read_and_scaled() -> None:
    picture = drawing(
        '<g transform="scale(2)" stroke="steelblue" stroke-linecap="round">'
        '<line x1="0" y1="0" x2="5" y2="0" stroke-width="3" stroke-dasharray="2,1" fill="none"/></g>'
    )
    (shape,) = picture.shapes
    # steelblue is rgb(70, 130, 180): W3C, SVG 1.1, section 4.4.
    assert shape.stroke == pytest.approx((70 / 255, 130 / 255, 180 / 255))
    assert (shape.fill, shape.stroke_width, shape.dash, shape.round_cap) == (None, 6, (4, 2), True)


def test_opacity_is_laid_over_white() -> None:
    picture = drawing(
        '<rect width="9" height="9" fill="rgba(255, 0, 0, 50%)"/><circle r="4" fill="#000" opacity=".25"/>'
    )
    assert picture.shapes[0].fill == pytest.approx((1, 0.5, 0.5), abs=0.01)
    assert picture.shapes[1].fill == pytest.approx((0.75, 0.75, 0.75))


def test_a_shading_becomes_its_mean_colour_and_is_said() -> None:
    stops = '<linearGradient id="a"><stop stop-color="#000"/><stop offset="1" stop-color="#fff"/></linearGradient>'
    picture = drawing(f'<defs>{stops}</defs><rect width="9" height="9" style="fill: url(#a)"/>')
    assert picture.shapes[0].fill == pytest.approx((0.5, 0.5, 0.5))
    assert any("shading" in said for said in picture.left_out)


def test_copies_are_drawn_where_they_are_used() -> None:
    picture = drawing('<defs><rect id="r" width="4" height="4"/></defs><use href="#r" x="10" y="5"/>')
    assert picture.shapes[0].steps[0] == ("m", 10, 45)


def test_a_copy_of_itself_ends() -> None:
    picture = drawing('<g id="g"><use href="#g" x="1"/><rect width="1" height="1"/></g>')
    assert 1 < len(picture.shapes) < 20


def test_copies_cannot_multiply_without_end() -> None:
    levels = "".join(f'<g id="g{i}">' + f'<use href="#g{i + 1}"/>' * 12 + "</g>" for i in range(7))
    with pytest.raises(SvgError, match="more shapes"):
        drawing(levels + '<rect id="g7" width="1" height="1"/>')


def test_letters_pictures_and_clips_are_left_out_and_said(tmp_path: Path) -> None:
    path = tmp_path / "mixed.svg"
    path.write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="10mm"><text>Saltmere</text>'
        '<image href="file:///etc/hostname"/><g clip-path="url(#c)"><path d="M0 0h9v9z"/></g></svg>'
    )
    info, faults = check_picture(path, Place("study.yaml", 3, 1))
    assert info is not None and info.vector and info.aspect == pytest.approx(2, rel=0.02)
    assert len(faults) == 3 and all("left out" in fault.message for fault in faults)
    assert len(read_svg(path).shapes) == 1


def test_a_picture_placed_at_a_width_is_in_mm() -> None:
    placed = drawing('<rect width="100" height="50" stroke="red" stroke-width="2"/>').placed(20, 30, 50)
    assert (placed.width, placed.height) == (50, 25)
    assert placed.shapes[0].steps[0] == ("m", 20, 55) and placed.shapes[0].stroke_width == 1


@pytest.mark.parametrize("text", ["<svg/>", "<svg><text>only letters</text></svg>", "<svg>", "<html/>"])
def test_a_drawing_with_nothing_to_draw_is_refused(tmp_path: Path, text: str) -> None:
    path = tmp_path / "empty.svg"
    path.write_text(text)
    with pytest.raises(PictureError) as caught:
        read_svg(path)
    assert "plain SVG" in caught.value.instead


def test_an_impossible_size_is_refused() -> None:
    with pytest.raises(PictureError):
        drawing('<rect width="1" height="1"/>', 'width="100000" height="100000"')
    with pytest.raises(PictureError):
        drawing('<rect width="1" height="1"/>', 'width="0" height="10"')


@given(st.text(max_size=30), st.text(max_size=30), st.text("0123456789.,-% abcmr()#", max_size=20))
def test_odd_values_are_passed_over_not_stumbled_over(fill: str, move: str, number: str) -> None:
    root = ("fill", fill), ("transform", move), ("stroke-width", number), ("stroke-dasharray", number)
    plain = " ".join(f'{key}="{"".join(c for c in value if c.isalnum() or c in "#(),.% -")}"' for key, value in root)
    try:
        drawing(f'<rect width="5" height="5" stroke="black" {plain}/>')
    except SvgError as error:
        assert str(error)
