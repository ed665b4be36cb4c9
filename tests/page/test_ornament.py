"""The ornament: every emblem stays in its square, is told from the others by its form alone, and has no colour."""

import pytest
from page_marks import FACES, box

from packgen.page.marks import Path_
from packgen.page.ornament import EMBLEMS, emblem, folded_corner, folded_strip
from packgen.page.pen import Pen


@pytest.mark.parametrize("name", EMBLEMS)
def test_an_emblem_stays_in_its_square_and_fills_most_of_it(name: str) -> None:
    pen = Pen(FACES)
    emblem(pen, name, 10.0, 20.0, 15.0)
    boxes = [box(mark) for mark in pen.marks]
    left, bottom = min(b[0] for b in boxes), min(b[1] for b in boxes)
    right, top = max(b[2] for b in boxes), max(b[3] for b in boxes)
    assert left >= 10.0 and bottom >= 20.0 and right <= 25.0 and top <= 35.0
    assert max(right - left, top - bottom) >= 0.7 * 15.0


@pytest.mark.parametrize("name", EMBLEMS)
def test_an_emblem_is_made_of_flat_pieces_in_greys(name: str) -> None:
    pen = Pen(FACES)
    emblem(pen, name, 0.0, 0.0, 10.0)
    assert len(pen.marks) >= 3
    for mark in pen.marks:
        assert isinstance(mark, Path_) and isinstance(mark.fill, float) and mark.stroke
        assert isinstance(mark.stroke.ink, float)


def test_no_two_emblems_are_the_same_drawing() -> None:
    outlines = [tuple(points for points, _ in facets) for facets in EMBLEMS.values()]
    assert len(set(outlines)) == len(outlines)


def test_a_strip_runs_from_end_to_end_in_its_height() -> None:
    pen = Pen(FACES)
    folded_strip(pen, 5.0, 50.0, 100.0, 3.0)
    boxes = sorted(box(mark) for mark in pen.marks)
    assert boxes[0][0] == pytest.approx(5.0) and max(b[2] for b in boxes) == pytest.approx(105.0)
    assert min(b[1] for b in boxes) >= 50.0 - 1e-9 and max(b[3] for b in boxes) <= 53.0 + 1e-9


@pytest.mark.parametrize(("corner", "inside"), [("ne", (8, 8)), ("nw", (0, 8)), ("se", (8, 0)), ("sw", (0, 0))])
def test_a_turned_corner_lies_inside_its_box(corner: str, inside: tuple[float, float]) -> None:
    pen = Pen(FACES)
    folded_corner(pen, 10.0 if "e" in corner else 0.0, 10.0 if "n" in corner else 0.0, 2.0, corner)
    assert box(pen.marks[0])[:2] == inside
