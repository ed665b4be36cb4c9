"""Laying cut-outs: each once at its exact size, in order, none over another, turned only where that saves a sheet."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.pictures.cutouts import PackedSheet, Piece, pack

WIDE, HIGH = 190.0, 250.0
SIZES = st.tuples(
    st.sampled_from([30.0, 42.5, 60.0, 88.0]) | st.floats(10, 190),
    st.sampled_from([25.0, 40.0, 60.0]) | st.floats(10, 250),
)
PIECES = st.lists(SIZES, min_size=1, max_size=12).map(
    lambda sizes: [Piece(f"{i:02}", width, height) for i, (width, height) in enumerate(sizes)]
)


def names(sheets: tuple[PackedSheet, ...]) -> list[str]:
    return [p.piece.name for s in sheets for p in s.placed]


@settings(deadline=None, max_examples=40)
@given(PIECES, st.sampled_from([0.0, 3.0]), st.booleans())
def test_every_piece_lies_once_in_its_order_at_its_exact_size(pieces: list[Piece], gap: float, turn: bool) -> None:
    sheets = pack(pieces, WIDE, HIGH, gap, turn=turn)
    assert names(sheets) == [p.name for p in pieces]
    for sheet in sheets:
        for a in sheet.placed:
            assert (a.wide, a.high) in ((a.piece.width, a.piece.height), (a.piece.height, a.piece.width))
            assert a.x >= 0 and a.y >= 0 and a.x + a.wide <= WIDE + 1e-6
            assert a.y + a.high <= sheet.used_height + 1e-6 <= HIGH + 2e-6
            for b in sheet.placed:
                apart_x = max(a.x, b.x) - min(a.x + a.wide, b.x + b.wide)
                apart_y = max(a.y, b.y) - min(a.y + a.high, b.y + b.high)
                assert a is b or max(apart_x, apart_y) >= gap - 1e-6


@settings(deadline=None, max_examples=40)
@given(PIECES)
def test_pieces_are_read_in_order_row_by_row(pieces: list[Piece]) -> None:
    for sheet in pack(pieces, WIDE, HIGH, 3.0):
        places = [(p.y, p.x) for p in sheet.placed]
        assert places == sorted(places)
        rows = {p.y for p in sheet.placed}
        for y in rows:  # a cut from edge to edge frees each row: nothing of it reaches into the next
            foot = max(p.y + p.high for p in sheet.placed if p.y == y)
            assert all(other >= foot - 1e-6 for other in rows if other > y)


def test_equal_cards_fill_the_sheet() -> None:
    (sheet,) = pack([Piece(str(i), 60, 40) for i in range(18)], 180, 240)
    assert sheet.used_height == 240


def test_rows_are_even_where_that_costs_little() -> None:
    (sheet,) = pack([Piece("A", 60, 70), *(Piece(n, 60, 72) for n in "BCD")], 190, 250)
    assert [p.y for p in sheet.placed].count(0.0) == 2  # two and two, not one and three


def test_pieces_that_may_be_turned_save_a_sheet() -> None:
    tall = [Piece(n, 100, 170) for n in "ABC"]
    assert len(pack(tall, WIDE, HIGH, 3.0)) == 3
    turned = pack(tall, WIDE, HIGH, 3.0, turn=True)
    assert len(turned) == 2 and any(p.turned for s in turned for p in s.placed)


def test_turning_never_takes_more_paper_and_turns_no_more_than_it_needs() -> None:
    pieces = [Piece(n, 60, 80) for n in "ABC"]
    (upright,), (free,) = pack(pieces, WIDE, HIGH, 3.0), pack(pieces, WIDE, HIGH, 3.0, turn=True)
    assert not any(p.turned for p in upright.placed) and free.used_height <= upright.used_height
    square = pack([Piece(n, 60, 60) for n in "ABC"], WIDE, HIGH, 3.0, turn=True)
    assert not any(p.turned for s in square for p in s.placed)


def test_a_piece_that_fits_only_on_its_side_is_turned() -> None:
    (sheet,) = pack([Piece("wide", 240, 100)], WIDE, HIGH)
    assert sheet.placed[0].turned


def test_a_piece_larger_than_the_sheet_is_named() -> None:
    with pytest.raises(ValueError, match="wide one"):
        pack([Piece("wide one", 260, 20)], 190, 250)


def test_nothing_takes_no_sheet() -> None:
    assert pack([], 190, 250) == ()
