"""The pinhole against published holes."""

import math

import pytest

from packgen.trials.models.pinhole import best_hole, image_height


@pytest.mark.parametrize(("length", "hole"), [(50, 0.315), (100, 0.446), (150, 0.546), (200, 0.630), (300, 0.772)])
def test_holes_by_rayleighs_rule(length, hole):
    # d = 1.9 sqrt(f lambda), 550 nm (alt-photo-process list, 1997; M. Young, Applied Optics 10 (1971) 2763).
    assert best_hole(length) == pytest.approx(hole, abs=5e-4)


def test_the_rule_of_the_smallest_disc_gives_its_published_hole():
    # sqrt(2.44 lambda f): 0.366 mm at 100 mm (henricvs blog, after M. Young).
    assert best_hole(100, math.sqrt(2.44)) == pytest.approx(0.366, abs=5e-4)


def test_the_sun_is_a_hundred_and_seventh_of_the_box():
    # The sun's width is 0.533 degrees, so its picture is about f / 107.5 (from memory).
    assert image_height(math.tan(math.radians(0.533)), 1.0, 107.5) == pytest.approx(1.0, rel=0.001)


def test_as_far_as_the_box_is_long_the_picture_is_as_large_as_the_thing():
    assert image_height(120, 200, 200) == 120
