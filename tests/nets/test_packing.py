"""Pieces on sheets: inside, apart, and as few sheets as a plain look would find."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.nets.net import FlatFace, Part
from packgen.nets.packing import GAP, fits, pack
from packgen.nets.plane import joined
from packgen.nets.vectors import all_moved, bounds


def card(width, height):
    points = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))
    return Part((FlatFace("face", points, (width / 2, height / 2), (0.0, 1.0), 0),))


def test_a_piece_may_be_turned_to_fit():
    assert fits(card(250, 100), 190, 277)
    assert not fits(card(250, 200), 190, 277)


def test_a_strip_longer_than_the_sheet_is_not_laid_aslant():
    assert not fits(card(20, 290), 190, 277)


def test_four_quarters_go_on_one_sheet():
    spots = pack([card(90, 132)] * 4, 190, 277, 1)
    assert spots and {s.sheet for s in spots} == {0}


def test_pieces_that_need_two_sheets_are_refused_one():
    assert pack([card(180, 200)] * 2, 190, 277, 1) is None
    assert pack([card(180, 200)] * 2, 190, 277, 2)


def test_a_lone_piece_is_centred():
    (spot,) = pack([card(100, 50)], 190, 277, 1)
    left, bottom, right, top = bounds(all_moved(spot.move, card(100, 50).corners))
    assert (left, bottom) == pytest.approx((190 - right, 277 - top))


@given(st.lists(st.tuples(st.floats(5, 150), st.floats(5, 200)), min_size=1, max_size=9))
@settings(max_examples=25, deadline=None)
def test_pieces_lie_inside_and_apart(sizes):
    parts = [card(w, h) for w, h in sizes]
    spots = pack(parts, 190, 277, 20)
    assert spots is not None
    placed = [(s.sheet, joined([all_moved(s.move, p.corners)])) for s, p in zip(spots, parts, strict=True)]
    for i, (sheet, shape) in enumerate(placed):
        left, bottom, right, top = shape.bounds
        assert left > -1e-6 and bottom > -1e-6 and right < 190 + 1e-6 and top < 277 + 1e-6
        assert shape.area == pytest.approx(math.prod(sizes[i]), rel=1e-5)
        assert all(shape.distance(other) > GAP - 0.5 for n, other in placed[:i] if n == sheet)
