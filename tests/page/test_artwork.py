"""Places for works of art, pages on their side, and what is cut out of a line on a map."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packgen.page.artwork import Box, Lining, centred, draw_line_art, largest, within
from packgen.page.maps import _outside
from packgen.page.marks import Group, Line, Page, Path_, Stroke
from packgen.page.pen import Pen
from packgen.page.sideways import upright
from packgen.page.type import Faces
from packgen.pictures.line_art import LineArt

SIDES = st.floats(1, 400)
SQUARE = (("m", 0.0, 0.0), ("l", 1.0, 0.0), ("l", 1.0, 0.5), ("l", 0.0, 0.5), ("z",))


@given(st.floats(0.05, 20), SIDES, SIDES)
def test_the_largest_rectangle_touches_two_sides_and_keeps_its_shape(shape: float, width: float, height: float) -> None:
    wide, high = largest(shape, width, height)
    assert wide / high == pytest.approx(shape)
    assert wide <= width * (1 + 1e-9) and high <= height * (1 + 1e-9)
    assert wide == pytest.approx(width) or high == pytest.approx(height)


@given(st.floats(0.1, 10), SIDES, SIDES, st.floats(0, 1))
def test_a_centred_picture_lies_within_its_box(shape: float, width: float, height: float, down: float) -> None:
    box = Box(10.0, 20.0, width, height)
    found = centred(shape, box, down)
    assert found.x >= box.x - 1e-6 and found.y >= box.y - 1e-6
    assert found.x + found.width <= box.x + width + 1e-6 and found.y + found.height <= box.y + height + 1e-6


def test_parts_of_a_box_are_counted_from_its_upper_left_corner() -> None:
    assert Box(10, 20, 100, 50).part((0.5, 0.0, 0.5, 0.4)) == Box(60, 50, 50, 20)


def test_a_part_of_a_part_is_a_part_of_the_whole() -> None:
    assert within((0.5, 0.5, 0.5, 0.5), (0.2, 0.4, 0.4, 0.2)) == pytest.approx((0.4, 0.5, 0.2, 0.1))


def test_line_art_fills_its_box_and_a_part_of_it_is_enlarged_to_fill_it_too() -> None:
    art = LineArt(1.0, 0.5, (SQUARE,), (), ())
    for crop, wide in (((0.0, 0.0, 1.0, 1.0), 100.0), ((0.5, 0.0, 0.5, 0.5), 200.0)):
        pen = Pen(Faces())
        draw_line_art(pen, art, Box(10.0, 20.0, 100.0, 50.0), Lining(), crop=crop)
        (group,) = pen.marks
        assert isinstance(group, Group) and group.clip[0] == (10.0, 20.0) and group.clip[2] == (110.0, 70.0)
        (shape,) = group.marks
        assert isinstance(shape, Path_)
        xs = [float(step[1]) for step in shape.steps if len(step) > 1]
        ys = [float(step[2]) for step in shape.steps if len(step) > 1]
        assert max(xs) - min(xs) == pytest.approx(wide)
        assert max(ys) == pytest.approx(70.0) and max(xs) == pytest.approx(110.0)  # the upper right corner stays


def test_a_page_on_its_side_is_read_from_the_right_and_loses_nothing() -> None:
    """What lay at the lower left of the sideways page lies at the lower right of the upright one."""
    page = Page(297.0, 210.0, (Line(10.0, 20.0, 110.0, 20.0, Stroke(0.3)),), "wide")
    (turned,) = upright((page,))
    assert (turned.width, turned.height, turned.title) == (210.0, 297.0, "wide")
    (group,) = turned.marks
    assert isinstance(group, Group)
    a, b, c, d, e, f = group.matrix
    assert (a * 10 + c * 20 + e, b * 10 + d * 20 + f) == (190.0, 10.0)
    assert (a * 110 + c * 20 + e, b * 110 + d * 20 + f) == (190.0, 110.0)
    assert a * d - b * c == 1.0  # turned, not mirrored


POINT = st.tuples(st.floats(0, 100), st.floats(0, 100))


@given(
    st.lists(POINT, min_size=2, max_size=6), st.lists(st.tuples(POINT, st.floats(1, 40), st.floats(1, 40)), max_size=3)
)
def test_what_is_left_of_a_line_lies_outside_the_holes_and_on_the_line(
    line: list[tuple[float, float]], holes: list[tuple[tuple[float, float], float, float]]
) -> None:
    boxes = [Box(x, y, wide, high) for (x, y), wide, high in holes]
    whole = sum(math.dist(a, b) for a, b in pairwise(line))
    parts = _outside(line, boxes)
    assert sum(math.dist(a, b) for part in parts for a, b in pairwise(part)) <= whole + 1e-6
    for part in parts:
        for (x0, y0), (x1, y1) in pairwise(part):
            x, y = (x0 + x1) / 2, (y0 + y1) / 2
            assert not any(
                b.x + 1e-6 < x < b.x + b.width - 1e-6 and b.y + 1e-6 < y < b.y + b.height - 1e-6 for b in boxes
            )
