"""The enlarging grid: an exact enlargement on every paper, read off the finished PDF; letters, numbers and help."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import pytest
from art_desks import LEVELS, MM, SHEETS_OF_PAPER, art_desk, picture, placed, read_back, said, work

from packgen.page.look import GUIDE, HAIR
from packgen.page.marks import Page, Picture, Text
from packgen.sheets.enlarging_grid import lay_out

SHAPES = {"wide": (900, 200), "landscape": (400, 300), "upright": (300, 400), "tall": (180, 900)}


def grid_pages(level: str, shape: str = "landscape", **wishes: object) -> tuple[Page, ...]:
    (laid,) = lay_out(art_desk("enlarging-grid", level, [work(path=picture(*SHAPES[shape]))], **wishes))  # type: ignore[arg-type]
    return laid.pages


def steps(pages: tuple[Page, ...], width: float, grey: float) -> list[float]:
    """The sides of the squares between lines of that width and grey, in mm, read from the PDF; whole squares only."""
    found: list[float] = []
    with read_back(pages) as pdf:
        for page in pdf.pages:
            lines = [
                line for line in page.lines
                if abs(line["linewidth"] / MM - width) < 0.01 and abs(_grey(line["stroking_color"]) - grey) < 0.01
            ]  # fmt: skip
            for axis, across in (("x0", "x1"), ("top", "bottom")):
                at = sorted({round(line[axis] / MM, 3) for line in lines if abs(line[axis] - line[across]) < 1e-3})
                found += [b - a for a, b in pairwise(at) if b - a > 1.0]
    side = max(found, default=0.0)
    return [step for step in found if step > side - 0.5]


def _grey(colour: object) -> float:
    parts = colour if isinstance(colour, (tuple, list)) else (colour,)
    return float(parts[0]) if parts and parts[0] is not None else -1.0


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("level", LEVELS)
def test_the_printed_ratio_is_that_of_the_squares_in_the_pdf(level: str, shape: str, paper: str) -> None:
    pages = grid_pages(level, shape, paper=paper)
    small, large = steps(pages, HAIR, 0.0), steps(pages, 0.25, GUIDE)
    assert small and large
    assert max(small) - min(small) < 0.02 and max(large) - min(large) < 0.02
    words = " ".join(said(page) for page in pages)
    ratio = large[0] / small[0]
    assert abs(ratio - float(Fraction(round(ratio * 2), 2))) < 0.01  # a plain enlargement: 3:2, 2:1, 5:2, 3:1 ...
    if level in ("older", "upper"):
        exact = Fraction(round(ratio * 2), 2)
        assert f"{exact.numerator} : {exact.denominator}" in words
        assert f"{round(small[0] * 2) / 2:g} mm" in words and f"{round(large[0] * 400) / 400:g} mm" in words


def test_upper_has_more_squares_than_younger() -> None:
    assert len(steps(grid_pages("upper"), 0.25, GUIDE)) > len(steps(grid_pages("younger"), 0.25, GUIDE))


def test_older_has_about_six_by_eight_squares() -> None:
    letters = {p.mark.text for page in grid_pages("older") for p in placed(page, "axis") if isinstance(p.mark, Text)}
    assert letters == set("ABCDEFGH") | set("123456")


@pytest.mark.parametrize("left_handed", [False, True])
def test_numbers_stand_where_the_drawing_hand_does_not_lie(left_handed: bool) -> None:
    (page, *_) = grid_pages("older", left_handed=left_handed)
    across = [p.box for p in placed(page, "grid-print")]
    middle = (min(b[0] for b in across) + max(b[2] for b in across)) / 2
    numbers = [p.box[0] for p in placed(page, "axis") if isinstance(p.mark, Text) and p.mark.text.isdigit()]
    assert numbers and all((x > middle) is left_handed for x in numbers)


def test_some_squares_are_there_to_trace_for_the_younger_and_fill_them_exactly() -> None:
    copy = grid_pages("younger", "upright")[-1]
    frame = placed(copy, "grid-frame")[0].box
    traced = [p.box for p in placed(copy) if isinstance(p.mark, Picture)]
    side = steps((copy,), 0.25, GUIDE)[0]
    assert 1 <= len(traced) <= 6
    for left, low, right, top in traced:
        assert abs((right - left) - side) < 0.02 and abs((top - low) - side) < 0.02
        assert abs(((left - frame[0]) / side) - round((left - frame[0]) / side)) < 1e-3


def test_older_children_get_empty_squares() -> None:
    assert not [p for p in placed(grid_pages("older", "upright")[-1]) if isinstance(p.mark, Picture)]


def test_help_in_lines_is_drawn_only_inside_its_squares() -> None:
    copy = grid_pages("younger", "upright", options=[("help", "lines")])[-1]
    drawn = placed(copy, "line-art", "line-art-ink")
    side = steps((copy,), 0.25, GUIDE)[0]
    assert drawn and all(p.clip and abs(p.clip[2] - p.clip[0] - side) < 0.02 for p in drawn)


@pytest.mark.parametrize("shape", SHAPES)
def test_one_page_is_enough_if_asked(shape: str) -> None:
    (page,) = grid_pages("older", shape, options=[("pages", "one")])
    assert placed(page, "grid-print") and placed(page, "grid-copy")


def test_everything_lies_within_the_margins() -> None:
    for level in LEVELS:
        for page in grid_pages(level, "wide", paper="Letter"):
            for p in placed(page):
                assert p.clip or (p.box[0] > 10 and p.box[2] < page.width - 10), p.mark


def test_a_wrong_share_of_drawn_squares_is_a_fault() -> None:
    desk = art_desk("enlarging-grid", "younger", options=[("drawn", "half")])
    assert lay_out(desk)
    assert any("drawn" in fault.message for fault in desk.faults)


def test_a_picture_too_small_to_draw_from_is_told(tmp_path: Path) -> None:
    desk = art_desk("enlarging-grid", "older", [work(path=picture(20, 15))])
    assert lay_out(desk) == ()
    assert any("too small" in fault.message for fault in desk.faults)
