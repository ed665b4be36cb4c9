"""Skeletons: accents in their places, dots that follow the strokes."""

import itertools
import math
import string

import pytest

from packgen.page.letters import dot_spacing
from packgen.page.skeleton import dots, length, points, runs, skeleton


def test_an_accent_takes_the_place_of_the_dot_on_an_i() -> None:
    dotted, accented = skeleton("i"), skeleton("í")
    assert dotted and accented
    assert len(points(dotted)) == 1 and not points(accented)


@pytest.mark.parametrize("x_height", [10.0, 5.0])
@pytest.mark.parametrize("letter", string.ascii_letters + string.digits + "éßøÅ&")
def test_dots_follow_the_stroke_without_blots_or_holes(letter: str, x_height: float) -> None:
    known = skeleton(letter)
    assert known
    spacing = dot_spacing(x_height) / x_height
    placed = dots(known, round(spacing, 4))
    for a, b in itertools.combinations(placed, 2):
        assert math.dist(a, b) > 0.6 * spacing
    for run in (run for stroke in known.strokes for run in runs(stroke)):
        if length(run) > 0.05:
            for point in run:
                assert min(math.dist(point, dot) for dot in placed) < 1.15 * spacing
