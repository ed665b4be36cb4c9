import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packgen.pictures.shapes import flattened, signed_area
from packgen.pictures.svg_paths import ellipse_steps, for_even_odd, path_steps, rectangle_steps, times, transform


def test_the_arc_of_the_standard_lies_on_its_circle() -> None:
    # W3C, SVG 1.1, section 8.3.8, example arcs01: a150,150 0 1,0 150,-150 from (150, 200) is three quarters of a circle
    # of radius 150 round (300, 200).
    line = flattened(path_steps("M300,200 h-150 a150,150 0 1,0 150,-150 z"), 16)[0]
    on_arc = [p for p in line if p != (300.0, 200.0)]
    assert len(on_arc) > 40
    assert all(math.dist(p, (300, 200)) == pytest.approx(150, abs=0.05) for p in on_arc)
    assert abs(signed_area(line)) == pytest.approx(0.75 * math.pi * 150**2, rel=2e-3)


def test_flags_of_arcs_may_stand_close_together() -> None:
    assert path_steps("M0 0a10 10 0 0120 0") == path_steps("M0 0 a 10 10 0 0 1 20 0")
    assert path_steps("M0 0a10 10 0 01.5.5") == path_steps("M0,0 A 10,10 0 0,1 0.5,0.5")


def test_relative_and_absolute_commands_agree() -> None:
    small = path_steps("m10 10 l5 0 h5 v5 c1 1 2 2 3 0 s2 -2 3 0 q1 2 2 0 t2 0 z l1 1")
    large = path_steps("M10 10 L15 10 H20 V15 C21 16 22 17 23 15 S25 13 26 15 Q27 17 28 15 T30 15 Z L11 11")
    assert [s[0] for s in small] == [s[0] for s in large]
    for one, two in zip(small, large, strict=True):
        assert [float(v) for v in one[1:]] == pytest.approx([float(v) for v in two[1:]])


def test_more_pairs_after_a_move_are_lines() -> None:
    assert path_steps("M0 0 1 1 2 0") == (("m", 0, 0), ("l", 1, 1), ("l", 2, 0))


@pytest.mark.parametrize("data", ["", "L10 10", "M1", "nonsense", "M0 0 L1", "M0 0 A1 1 0 2 0 3 3", "M1e999 0"])
def test_a_mistake_ends_the_path_before_it(data: str) -> None:
    assert all(step[0] == "m" for step in path_steps(data))


@given(st.text("MmLlHhVvCcSsQqTtAaZz0123456789.,- eE", max_size=60))
def test_any_text_gives_finite_steps(data: str) -> None:
    for step in path_steps(data):
        assert all(math.isfinite(float(v)) for v in step[1:])


def test_transforms_are_done_from_the_right() -> None:
    a, b, c, d, e, f = transform("translate(10 20) rotate(90) scale(2)")
    # (1, 0) is scaled to (2, 0), turned to (0, 2), moved to (10, 22).
    assert (a + e, b + f) == pytest.approx((10, 22))
    assert (c + e, d + f) == pytest.approx((8, 20))
    assert transform("rotate(90 5 5)")[4:] == pytest.approx((10, 0))
    assert transform("skewX(45)") == pytest.approx((1, 0, 1, 1, 0, 0))
    assert transform("nothing(1) scale()") == (1, 0, 0, 1, 0, 0)
    assert times((2, 0, 0, 2, 1, 1), (1, 0, 0, 1, 3, 0)) == (2, 0, 0, 2, 7, 1)


def test_ellipses_and_round_corners_have_their_area() -> None:
    assert abs(signed_area(flattened(ellipse_steps(3, 4, 20, 10), 16)[0])) == pytest.approx(math.pi * 200, rel=2e-3)
    area = abs(signed_area(flattened(rectangle_steps(0, 0, 40, 30, 5, 5), 16)[0]))
    assert area == pytest.approx(40 * 30 - (4 - math.pi) * 25, rel=2e-3)
    assert abs(signed_area(flattened(rectangle_steps(0, 0, 40, 30, 0, 9))[0])) == 1200


SQUARE, INNER, INNER_BACK = "M0 0h10v10h-10z", "M2 2h6v6h-6z", "M2 2v6h6v-6z"


def test_a_ring_run_the_other_way_stays_a_hole() -> None:
    # W3C, SVG 1.1, section 11.3: by the non-zero rule a ring in the same direction is no hole, in the other it is one.
    assert len(for_even_odd(path_steps(SQUARE + INNER_BACK))) == 1
    assert len(for_even_odd(path_steps(SQUARE + INNER))) == 2


def test_no_step_is_lost_when_a_shape_is_taken_apart() -> None:
    steps = path_steps(SQUARE + INNER + "M20 0h5v5h-5z" + INNER_BACK)
    assert sum(len(part) for part in for_even_odd(steps)) == len(steps)
