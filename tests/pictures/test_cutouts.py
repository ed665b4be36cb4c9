import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.pictures.cutouts import Piece, backs, pack

WIDE, HIGH = 190.0, 250.0
SIZES = st.tuples(
    st.sampled_from([30.0, 42.5, 60.0, 88.0]) | st.floats(10, 190),
    st.sampled_from([25.0, 40.0, 60.0]) | st.floats(10, 250),
)
PIECES = st.lists(SIZES, min_size=1, max_size=16).map(
    lambda sizes: [Piece(f"{i:02}", width, height) for i, (width, height) in enumerate(sizes)]
)


@settings(deadline=None)
@given(PIECES, st.sampled_from([0.0, 3.0]))
def test_every_piece_lies_once_at_its_exact_size_and_none_overlap(pieces: list[Piece], gap: float) -> None:
    sheets = pack(pieces, WIDE, HIGH, gap)
    assert sorted(p.piece.name for s in sheets for p in s.placed) == [p.name for p in pieces]
    for sheet in sheets:
        for a in sheet.placed:
            assert a.piece in pieces
            assert a.x >= 0 and a.y >= 0 and a.x + a.piece.width <= WIDE + 1e-6
            assert a.y + a.piece.height <= sheet.used_height + 1e-6 <= HIGH + 2e-6
            for b in sheet.placed:
                apart_x = max(a.x, b.x) - min(a.x + a.piece.width, b.x + b.piece.width)
                apart_y = max(a.y, b.y) - min(a.y + a.piece.height, b.y + b.piece.height)
                assert a is b or max(apart_x, apart_y) >= gap - 1e-6


@settings(deadline=None)
@given(PIECES)
def test_the_cuts_in_their_order_free_every_piece(pieces: list[Piece]) -> None:
    for sheet in pack(pieces, WIDE, HIGH):
        rest = [(0.0, 0.0, max(c.x2 for c in sheet.cuts), sheet.used_height)]
        for cut in sheet.cuts:
            after = []
            for x1, y1, x2, y2 in rest:
                if cut.y1 == cut.y2 and y1 + 1e-6 < cut.y1 < y2 - 1e-6 and cut.x1 <= x1 + 1e-6 and cut.x2 >= x2 - 1e-6:
                    after += [(x1, y1, x2, cut.y1), (x1, cut.y1, x2, y2)]
                elif (
                    cut.x1 == cut.x2 and x1 + 1e-6 < cut.x1 < x2 - 1e-6 and cut.y1 <= y1 + 1e-6 and cut.y2 >= y2 - 1e-6
                ):
                    after += [(x1, y1, cut.x1, y2), (cut.x1, y1, x2, y2)]
                else:
                    after.append((x1, y1, x2, y2))
            rest = after
        for placed in sheet.placed:
            want = (placed.x, placed.y, placed.x + placed.piece.width, placed.y + placed.piece.height)
            assert any(r == pytest.approx(want, abs=1e-6) for r in rest)


def test_equal_cards_fill_the_sheet_and_share_their_cuts() -> None:
    (sheet,) = pack([Piece(str(i), 60, 40) for i in range(18)], 180, 240)
    assert sheet.used_height == 240
    # 3 x 6 cards: 7 level cuts, and in each of 6 rows 4 upright ones.
    assert len(sheet.cuts) == 7 + 6 * 4


def test_mixed_sizes_save_paper() -> None:
    pieces = [
        Piece(f"{i}", *size) for i, size in enumerate([(90, 120), (90, 60), (90, 58), (60, 80), (60, 40), (60, 38)] * 2)
    ]
    sheets = pack(pieces, 190, 250)
    used = sum(s.used_height for s in sheets) * 190
    assert sum(p.width * p.height for p in pieces) / used > 0.7


def test_the_same_pieces_lie_the_same_way() -> None:
    pieces = [Piece(str(i), 20 + 7 * (i % 5), 30 + 9 * (i % 4)) for i in range(15)]
    assert pack(pieces, 190, 250) == pack(list(reversed(pieces)), 190, 250)


@settings(deadline=None)
@given(PIECES)
def test_turning_the_paper_over_twice_gives_the_front(pieces: list[Piece]) -> None:
    for sheet in pack(pieces, WIDE, HIGH):
        again = backs(backs(sheet, WIDE), WIDE)
        assert [(p.piece, p.y) for p in again.placed] == [(p.piece, p.y) for p in sheet.placed]
        assert [p.x for p in again.placed] == pytest.approx([p.x for p in sheet.placed])


def test_a_piece_larger_than_the_sheet_is_named() -> None:
    with pytest.raises(ValueError, match="wide one"):
        pack([Piece("wide one", 200, 20)], 190, 250)
