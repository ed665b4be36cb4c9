"""Squared paper of true 5 mm squares, and bare axes that keep to their place."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st
from page_marks import box, drawn, kit, of_role

from packgen.page.marks import Line, Text
from packgen.page.sketching import SketchAxes, squared_paper


@given(st.floats(30, 190), st.floats(30, 240))
def test_squares_are_5_mm_and_whole(width: float, height: float) -> None:
    # DIN 16552, ruling 22: squares of 5 mm.
    pen = kit("older").pen()
    foot = squared_paper(pen, 10.0, 250.0, width, height)
    lines = [mark for mark in of_role(pen.marks, "square") if isinstance(mark, Line)]
    upright = sorted({mark.x1 for mark in lines if mark.x1 == mark.x2})
    level = sorted({mark.y1 for mark in lines if mark.y1 == mark.y2})
    for places in (upright, level):
        assert all(b - a == pytest.approx(5.0) for a, b in itertools.pairwise(places))
    assert min(upright) >= 10.0 - 1e-9 and max(upright) <= 10.0 + width + 1e-9
    assert level[0] == pytest.approx(foot) and 250.0 - height <= foot + 1e-9 < 250.0 - height + 5.0 + 1e-6


@pytest.mark.parametrize("level", ["older", "upper"])
def test_axes_have_titles_and_no_numbers(level: str) -> None:
    on = kit(level)
    axes = SketchAxes("number of blades on the wheel", "time to lift")
    marks = drawn(on, axes, 75.0, 60.0).marks
    said = " ".join(mark.text for mark in marks if isinstance(mark, Text))
    assert "number of blades" in said and "time to lift" in said and not any(c.isdigit() for c in said)
    for mark in marks:
        left, low, right, high = box(mark)
        assert left > -0.1 and right < 75.1 and low > -60.1 and high < 0.1
    assert axes.measure(on, 75.0).most == 90.0
