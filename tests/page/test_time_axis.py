"""The time axis: years in proportion, no year nought, labels that never overlap and lie as near as can be."""

from itertools import pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from packgen.page.time_axis import axis_for, spread, year_name

YEARS = st.floats(-3000, 2030)


@given(YEARS, st.floats(0, 4000), st.floats(80, 2000))
@settings(max_examples=100, deadline=None)
def test_an_axis_holds_its_years_fills_its_length_and_is_linear(first: float, span: float, length: float) -> None:
    axis = axis_for(first, first + span, length)
    assert axis.length == pytest.approx(length)
    assert axis.start <= first and first + span <= axis.end
    years = [year for year, _ in axis.ticks]
    for one, other in pairwise(years):
        assert axis.down(other) - axis.down(one) == pytest.approx((other - one) * axis.scale)


@given(YEARS, st.floats(0, 4000), st.floats(80, 2000))
@settings(max_examples=100, deadline=None)
def test_labels_stand_apart_and_small_ticks_can_be_told(first: float, span: float, length: float) -> None:
    axis = axis_for(first, first + span, length)
    assume(axis.step > 1)
    years = [year for year, _ in axis.ticks]
    assert all(axis.down(b) - axis.down(a) >= 7.0 for a, b in pairwise(years) if not a <= 1 <= b)
    between = axis.small_ticks
    small = sorted({*years, *between}) if between else []
    assert all(axis.down(b) - axis.down(a) >= 1.2 for a, b in pairwise(small) if not a <= 1 <= b)


@given(YEARS, st.floats(5, 4000))
@settings(max_examples=100, deadline=None)
def test_no_label_is_the_year_nought(first: float, span: float) -> None:
    names = [name for _, name in axis_for(first, first + span, 250.0).ticks]
    assert len(set(names)) == len(names)
    assert not {"0", "0 BC"} & set(names)


def test_years_are_named_as_people_say_them() -> None:
    """ISO 8601-1 counts 1 BC as year 0000, so 44 BC is -0043."""
    assert [year_name(y) for y in (1834, 1, 0, -43)] == ["1834", "1", "1 BC", "44 BC"]


def test_round_years_are_round_as_people_count_on_both_sides_of_christ() -> None:
    names = [name for _, name in axis_for(-62.0, 14.0, 250.0).ticks]
    assert "60 BC" in names and "10" in names
    assert all(int(name.split()[0]) % 5 == 0 or name in ("1 BC", "1") for name in names)


@given(st.lists(st.tuples(st.floats(0, 250), st.floats(4, 20)), min_size=1, max_size=12))
@settings(max_examples=100, deadline=None)
def test_labels_keep_order_apart_and_inside(items: list[tuple[float, float]]) -> None:
    items.sort()
    wanted, heights = [w for w, _ in items], [h for _, h in items]
    tops = spread(wanted, heights, 0.0, 250.0)
    if tops is None:
        assert sum(heights) + 1.2 * (len(items) - 1) > 250.0
        return
    assert tops[0] >= -1e-6 and tops[-1] + heights[-1] <= 250.0 + 1e-6
    for k in range(len(items) - 1):
        assert tops[k + 1] >= tops[k] + heights[k] + 1.2 - 1e-6


def test_labels_with_room_stand_in_the_middle_of_their_dates() -> None:
    assert spread([20.0, 100.0, 200.0], [10.0, 10.0, 10.0], 0.0, 250.0) == pytest.approx([15.0, 95.0, 195.0])


def test_two_labels_for_one_date_move_apart_equally() -> None:
    tops = spread([100.0, 100.0], [10.0, 10.0], 0.0, 250.0, gap=2.0)
    assert tops == pytest.approx([89.0, 101.0])
