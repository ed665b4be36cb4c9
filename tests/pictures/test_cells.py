import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from packgen.pictures.cells import eased, edge_distance, in_order, middles, nearest_of, parted, rooms, without_thin

PLANES = st.tuples(st.integers(2, 14), st.integers(2, 14)).flatmap(
    lambda shape: arrays(np.int32, shape, elements=st.integers(0, 3))
)


def blocks() -> np.ndarray:
    """Three areas of 40 x 60 px side by side, a bar of 4 px through them."""
    plane = np.repeat(np.repeat(np.array([[0, 1, 2]], np.int32), 60, 0), 40, 1)
    plane[28:32] = 3
    return plane


@given(PLANES)
@settings(max_examples=60)
def test_pieces_are_connected_and_keep_to_their_areas(plane: np.ndarray) -> None:
    pieces = parted(plane)
    assert set(np.unique(pieces)) == set(range(int(pieces.max()) + 1))
    for piece in range(int(pieces.max()) + 1):
        assert len(np.unique(plane[pieces == piece])) == 1
    across = pieces[:, 1:] != pieces[:, :-1]
    assert (across == (plane[:, 1:] != plane[:, :-1])).all()


@given(PLANES)
def test_numbers_in_order_keep_the_areas(plane: np.ndarray) -> None:
    ordered = in_order(plane)
    assert int(ordered.max()) + 1 == len(np.unique(plane))
    assert (np.unique(plane)[ordered] == plane).all()


def test_room_is_the_radius_of_the_largest_circle() -> None:
    plane = np.zeros((60, 100), np.int32)
    plane[:, 60:] = 1
    assert rooms(plane, 3) == pytest.approx([30, 20, 0], abs=1)
    (x, y, room), (other, *_) = middles(plane)
    assert (y, room) == pytest.approx((30, 30), abs=1.5) and 28 <= x <= 32 and other == pytest.approx(80, abs=1.5)


def test_a_middle_is_clear_of_what_is_marked() -> None:
    plane, marked = np.zeros((60, 60), np.int32), np.zeros((60, 60), bool)
    marked[:, 20:24] = True
    ((x, _, room),) = middles(plane, marked)
    assert x > 24 + 15 and room == pytest.approx(18, abs=1.5)


def test_the_nearest_known_number_fills_a_gap() -> None:
    plane = np.array([[1, 0, 0, 0, 0, 2]] * 3, np.int32)
    assert nearest_of(plane, plane > 0).tolist() == [[1, 1, 1, 2, 2, 2]] * 3
    assert (nearest_of(plane, plane > 7) == plane).all()


def test_what_is_thin_goes_to_both_its_sides() -> None:
    left = without_thin(blocks(), 3)
    assert int(left.max()) + 1 == 3
    assert left[29, 5] == left[5, 5] and left[31, 100] == left[55, 100] != left[5, 5]


def test_easing_rounds_corners_and_leaves_straight_edges() -> None:
    plane = np.zeros((60, 60), np.int32)
    plane[15:45, 15:45] = 1
    round_one = eased(plane, 2.5)
    assert round_one[30, 15] == 1 and round_one[30, 14] == 0 and round_one[15, 15] == 0
    assert (round_one == 1).sum() == pytest.approx(900, rel=0.05)


def test_distances_count_from_the_frame_too() -> None:
    far = edge_distance(np.zeros((41, 41), np.int32))
    assert far[0, 0] == 0.5 and far[20, 20] == pytest.approx(20.5, abs=0.6)
