"""Cut lines: all of the outline, each part once, and never along a fold."""

import itertools
import math

import pytest
from netcommon import EXAMPLES

from packgen.nets import build, unfold
from packgen.nets.cutting import chained
from packgen.nets.plane import joined


def lengths(cuts):
    total = 0.0
    for cut in cuts:
        points = (*cut.points, cut.points[0]) if cut.closed else cut.points
        total += sum(math.dist(a, b) for a, b in itertools.pairwise(points))
    return total


def test_segments_are_joined_into_one_closed_line():
    square = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)]
    sides = [(square[2], square[3]), (square[0], square[1]), (square[0], square[3]), (square[2], square[1])]
    (cut,) = chained(sides)
    assert cut.closed and sorted(cut.points) == sorted(square)


def test_lines_that_meet_three_at_a_point_stay_apart():
    star = [((0.0, 0.0), (1.0, 0.0)), ((0.0, 0.0), (0.0, 1.0)), ((0.0, 0.0), (-1.0, 0.0))]
    assert len(chained(star)) == 3


@pytest.mark.parametrize("name", [n for n in EXAMPLES if n not in ("bladed-wheel", "wound-strip")])
def test_the_cuts_are_the_outline_of_faces_and_tabs(name):
    """Where the outline does not touch itself, cutting it takes exactly its length."""
    for part in unfold(build(name, EXAMPLES[name])).parts:
        whole = joined(part.shapes)
        rings = sum(r.length for g in getattr(whole, "geoms", [whole]) for r in (g.exterior, *g.interiors))
        assert lengths(part.cuts) == pytest.approx(rings, rel=1e-3)


def test_a_wheel_is_cut_along_its_rim_and_its_slits():
    wheel = build("bladed-wheel", {"diameter": 120, "blades": 6, "blade": 12, "hub": 50})
    (part,) = unfold(wheel).parts
    assert lengths(part.cuts) == pytest.approx(math.pi * 120 + 6 * (60 - 25 + 12), rel=2e-3)
    assert [f.kind for f in part.folds] == ["valley"] * 6


@pytest.mark.parametrize("name", ["stepped-pyramid", "cone", "prism"])
def test_no_cut_runs_along_a_fold(name):
    for part in unfold(build(name, EXAMPLES[name])).parts:
        middles = [((f.start[0] + f.end[0]) / 2, (f.start[1] + f.end[1]) / 2) for f in part.folds]
        for cut in part.cuts:
            for a, b in zip(cut.points, cut.points[1:], strict=False):
                size = math.dist(a, b)
                for p in middles:
                    off = abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / size
                    along = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / size
                    assert off > 1e-3 or not 0 < along < size
