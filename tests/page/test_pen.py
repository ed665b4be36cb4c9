"""The pen: text stands where its alignment says, shapes close, curves are round."""

import math

import pytest
from page_marks import FACES, box

from packgen.page.marks import Group, Line, Path_, Text
from packgen.page.pen import Pen, rounded
from packgen.page.text import Style

STYLE = Style("text", 4.0, 5.0, 0.3)


@pytest.mark.parametrize(("align", "share"), [("left", 0.0), ("centre", 0.5), ("right", 1.0)])
def test_text_is_set_from_its_anchor(align: str, share: float) -> None:
    pen = Pen(FACES)
    wide = pen.text(50.0, 20.0, "harbour", STYLE, align=align)
    (mark,) = pen.marks
    assert isinstance(mark, Text)
    assert (mark.x, mark.y) == pytest.approx((50.0 - share * wide, 20.0))
    assert (mark.size, mark.ink, mark.text) == (4.0, 0.3, "harbour")


def test_turned_text_is_centred_along_its_own_line() -> None:
    pen = Pen(FACES)
    wide = pen.text(50.0, 20.0, "harbour", STYLE, align="centre", angle=90.0)
    (mark,) = pen.marks
    assert isinstance(mark, Text) and (mark.x, mark.y) == pytest.approx((50.0, 20.0 - wide / 2))


def test_letters_of_two_faces_follow_one_another() -> None:
    pen = Pen(FACES)
    wide = pen.text(0.0, 0.0, "x田y", Style("text", 4.0, 5.0))
    first, second, third = pen.marks
    assert isinstance(first, Text) and isinstance(second, Text) and isinstance(third, Text)
    assert [m.text for m in (first, second, third)] == ["x", "田", "y"]
    assert box(first)[2] == pytest.approx(second.x) and box(second)[2] == pytest.approx(third.x)
    assert box(third)[2] == pytest.approx(wide) and not pen.lost


def test_letters_without_a_face_are_noted() -> None:
    pen = Pen(FACES)
    pen.text(0.0, 0.0, "aसb", STYLE)
    assert pen.lost == ["स"] and "".join(m.text for m in pen.marks if isinstance(m, Text)) == "ab"


def test_lines_of_text_go_down_by_their_leading() -> None:
    pen = Pen(FACES)
    foot = pen.lines(0.0, 100.0, ["one", "two", "three"], STYLE)
    assert foot == pytest.approx(85.0)
    ys = [m.y for m in pen.marks if isinstance(m, Text)]
    assert ys[0] - ys[1] == pytest.approx(5.0) and 95.0 < ys[0] < 100.0
    for mark in pen.marks:
        assert box(mark)[3] <= 100.0


def test_a_ring_is_round_to_a_thousandth() -> None:
    """Four cubic curves stray from a circle by 0.03 % at most."""
    pen = Pen(FACES)
    pen.ring(10.0, 20.0, 5.0)
    (mark,) = pen.marks
    assert isinstance(mark, Path_)
    at = (0.0, 0.0)
    for step in mark.steps:
        if step[0] == "c":
            x1, y1, x2, y2, x, y = map(float, step[1:])
            for t in (k / 10 for k in range(11)):
                px = (1 - t) ** 3 * at[0] + 3 * t * (1 - t) ** 2 * x1 + 3 * t * t * (1 - t) * x2 + t**3 * x
                py = (1 - t) ** 3 * at[1] + 3 * t * (1 - t) ** 2 * y1 + 3 * t * t * (1 - t) * y2 + t**3 * y
                assert math.hypot(px - 10.0, py - 20.0) == pytest.approx(5.0, rel=5e-4)
        if step[0] != "z":
            at = (float(step[-2]), float(step[-1]))


def test_a_corner_is_never_rounder_than_half_the_side() -> None:
    steps = rounded(0.0, 0.0, 10.0, 4.0, 50.0)
    xs = [float(n) for step in steps for n in step[1::2]]
    assert min(xs) == 0.0 and max(xs) == 10.0 and steps[0][:2] == ("m", 2.0)


def test_a_box_without_corners_has_four() -> None:
    assert rounded(1.0, 2.0, 3.0, 4.0, 0.0) == (
        ("m", 1.0, 2.0),
        ("l", 4.0, 2.0),
        ("l", 4.0, 6.0),
        ("l", 1.0, 6.0),
        ("z",),
    )


def test_an_arrow_ends_at_its_point() -> None:
    pen = Pen(FACES)
    pen.arrow(0.0, 0.0, 10.0, 0.0, head=2.0)
    shaft, head = pen.marks
    assert isinstance(shaft, Line) and shaft.x2 == pytest.approx(8.0)
    assert box(head)[2] == pytest.approx(10.0)


def test_polygons_close_unless_they_are_left_open() -> None:
    pen = Pen(FACES)
    pen.polygon([(0, 0), (1, 0), (1, 1)])
    pen.polygon([(0, 0), (1, 0)], closed=False)
    closed, open_ = pen.marks
    assert isinstance(closed, Path_) and isinstance(open_, Path_)
    assert closed.steps[-1] == ("z",) and open_.steps[-1] == ("l", 1, 0)


def test_a_group_keeps_its_marks_matrix_and_clip() -> None:
    pen = Pen(FACES)
    pen.group([Line(0, 0, 1, 1, None)], (1, 0, 0, 1, 5, 6), [(0, 0), (1, 0), (1, 1)])  # type: ignore[arg-type]
    (mark,) = pen.marks
    assert isinstance(mark, Group) and mark.matrix == (1, 0, 0, 1, 5, 6) and len(mark.clip) == 3
