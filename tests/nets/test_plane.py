"""Overlaps are measured on rounded points."""

import pytest

from packgen.nets.plane import overlapping, shape, shared


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
