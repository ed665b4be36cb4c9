import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packgen.pictures.shapes import flattened, moved, signed_area, winding

SQUARE = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]
NUMBERS = st.floats(-50, 50)


def test_area_and_winding_have_the_sense_of_the_ring() -> None:
    assert signed_area(SQUARE) == 16 and signed_area(SQUARE[::-1]) == -16
    assert winding(SQUARE, (1, 1)) == 1 and winding(SQUARE[::-1], (1, 1)) == -1 and winding(SQUARE, (5, 1)) == 0


def test_a_closed_line_ends_where_it_began() -> None:
    line = flattened((("m", 0, 0), ("l", 2, 0), ("c", 2, 1, 1, 2, 0, 2), ("z",)))[0]
    assert line[0] == line[-1] == (0.0, 0.0)


@given(st.tuples(NUMBERS, NUMBERS, NUMBERS, NUMBERS), NUMBERS, NUMBERS)
def test_moving_changes_area_by_the_determinant(
    matrix: tuple[float, float, float, float], dx: float, dy: float
) -> None:
    a, b, c, d = matrix
    steps = (("m", 0, 0), *(("l", x, y) for x, y in SQUARE[1:]), ("z",))
    ring = flattened(moved(steps, (a, b, c, d, dx, dy)))[0]
    assert math.isclose(signed_area(ring), 16 * (a * d - b * c), abs_tol=1e-6)


def test_curves_keep_their_ends() -> None:
    line = flattened((("m", 1, 1), ("c", 2, 5, 7, 5, 9, 1)), 10)[0]
    assert line[0] == (1.0, 1.0) and line[-1] == pytest.approx((9, 1)) and len(line) == 11
