import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from page_marks import box, drawn, kit, of_role, words_of

from packgen.page.bands import BandRow, Bands
from packgen.trials.ticks import blank_axis, result_axis

KIT = kit("parent")


@given(st.lists(st.tuples(st.floats(0.1, 50), st.floats(0, 0.6)), min_size=1, max_size=6), st.floats(90, 180))
@settings(max_examples=30, deadline=None)
def test_bars_lie_true_on_their_axis(values: list[tuple[float, float]], width: float) -> None:
    rows = tuple(BandRow(f"{k} mm", f"{v:.1f} s", v, v * (1 - s), v * (1 + s)) for k, (v, s) in enumerate(values))
    axis = result_axis("time", "s", [end for row in rows for end in (row.low, row.high)])
    pen = drawn(KIT, Bands(rows, axis, "width", "about"), width)
    marks = of_role(pen.marks, "band-value")
    grid = [box(mark)[0] for mark in of_role(pen.marks, "band-grid")]
    left, right = grid[0], grid[-1]
    for row, bar, mark in zip(rows, of_role(pen.marks, "band"), marks, strict=True):
        assert row.value is not None
        assert box(mark)[0] == pytest.approx(left + axis.place(row.value) * (right - left))
        assert box(bar)[0] == pytest.approx(left + axis.place(row.low) * (right - left), abs=1e-6)
        assert box(bar)[2] >= left + axis.place(row.high) * (right - left) - 1e-6
        assert left - 1e-6 <= box(bar)[0] and box(bar)[2] <= right + 0.61


def test_a_row_where_nothing_is_expected_says_why_and_has_no_bar() -> None:
    axis = result_axis("time", "s", [1.0, 2.0])
    rows = (BandRow("1 blade", "1.5 s (1 to 2 s)", 1.5, 1.0, 2.0), BandRow("none", "The wheel would not turn."))
    pen = drawn(KIT, Bands(rows, axis, "blades", "about"), 150.0)
    assert len(of_role(pen.marks, "band")) == 1
    assert "The wheel would not turn." in " ".join(words_of(pen.marks))


def test_an_axis_without_numbers_has_no_numbers_along_its_foot() -> None:
    bands = Bands((BandRow("First build", "nothing is expected"),), blank_axis("height", "cm"), "build", "about")
    assert not of_role(drawn(KIT, bands, 150.0).marks, "band-grid")


def test_rows_are_parted_with_the_head_again() -> None:
    axis = result_axis("time", "s", [1.0, 2.0])
    bands = Bands(tuple(BandRow(str(k), "1 s", 1.0, 0.5, 2.0) for k in range(9)), axis, "k", "about")
    parted = bands.split(KIT, 150.0, bands.measure(KIT, 150.0).least * 0.6)
    assert parted
    first, rest = parted
    assert isinstance(first, Bands) and isinstance(rest, Bands) and first.rows + rest.rows == bands.rows
    assert bands.split(KIT, 150.0, 3.0) is None
