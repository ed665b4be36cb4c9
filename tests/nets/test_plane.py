"""Overlaps are measured on rounded points."""

import pytest

from packgen.nets import build, unfold
from packgen.nets.plane import joined, overlapping, shape, shared, shrunk
from packgen.nets.vectors import area


def test_triangles_that_share_an_edge_up_to_rounding_do_not_overlap():
    """Unrounded, GEOS 3.14 calls one of these two wholly covered by the other (their shared ends differ by 1e-15)."""
    one = ((59.99999999999999, 34.64101615137754), (20.000000000000007, 34.64101615137754), (40.0, 0.0))
    two = ((59.99999999999999, 34.64101615137754), (40.0, -3.552713678800501e-15), (79.99999999999999, 0.0))
    assert shared(shape(one), shape(two)) == 0
    assert overlapping([one, two], set()) == []


@pytest.mark.parametrize("size", [1e-3, 1.0, 1e3, 1e6])
def test_overlaps_are_found_at_any_size(size):
    one = ((0.0, 0.0), (size, 0.0), (size, size), (0.0, size))
    two = tuple((x + 0.99 * size, y) for x, y in one)
    apart = tuple((x + size, y) for x, y in one)
    assert overlapping([one, two], set()) == [(0, 1)]
    assert overlapping([one, two], {(0, 1)}) == []
    assert overlapping([one, apart], set()) == []


def test_no_piece_is_lost_when_its_faces_and_tabs_are_joined():
    """Shrinking with mitred corners, GEOS 3.14 makes nothing at all of a face with a rounded tab."""
    for name, given in (
        ("tower", {"sides": 6, "side": 60, "height": 160, "roof": 90}),
        ("cone", {"diameter": 90, "height": 80}),
    ):
        for part in unfold(build(name, given), youngest=True).parts:
            whole = joined(part.shapes)
            assert whole.geom_type == "Polygon"
            assert whole.area == pytest.approx(sum(abs(area(s)) for s in part.shapes), rel=1e-4)


def test_an_outline_moves_inwards_and_vanishes_where_it_is_too_narrow():
    moved = shrunk(((0.0, 0.0), (20.0, 0.0), (20.0, 10.0), (0.0, 10.0)), 1.5)
    assert sorted(moved) == [(1.5, 1.5), (1.5, 8.5), (18.5, 1.5), (18.5, 8.5)]
    assert shrunk(((0.0, 0.0), (20.0, 0.0), (20.0, 2.0), (0.0, 2.0)), 1.5) == ()
