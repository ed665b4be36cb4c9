"""Plain dates: what the two sides of a span may leave out, and which readings are refused as doubtful."""

from __future__ import annotations

import pytest

from packgen.reading.calendar_days import Found
from packgen.reading.messages import Misread
from packgen.reading.models import Day
from packgen.reading.plain_dates import read_plain


@pytest.mark.parametrize(
    ("text", "start", "end"),
    [
        ("3-7 May 1834", Day(1834, 5, 3), Day(1834, 5, 7)), ("3 May – 7 June 1834", Day(1834, 5, 3), Day(1834, 6, 7)),
        ("3 May 1834 - 7 June", Day(1834, 5, 3), Day(1834, 6, 7)), ("May to June 1834", Day(1834, 5), Day(1834, 6)),
        ("May 1834 – 3 June 1835", Day(1834, 5), Day(1835, 6, 3)), ("1862–5", Day(1862), Day(1865)),
        ("1862-65", Day(1862), Day(1865)), ("287–212 BC", Day(-286), Day(-211)), ("27 BC – AD 14", Day(-26), Day(14)),
        ("AD 14–37", Day(14), Day(37)), ("AD 114-17", Day(114), Day(117)),
        ("3–7 May 44 BC", Day(-43, 5, 3), Day(-43, 5, 7)),
        ("1860s to 1870s", Day(1860), Day(1879)), ("spring – summer 1862", Day(1862, 3), Day(1862, 8)),
        ("from 1862 until 1865", Day(1862), Day(1865)), ("12000–10000 BC", Day(-11999), Day(-9999)),
    ],
)  # fmt: skip
def test_a_side_may_leave_out_what_the_other_says(text: str, start: Day, end: Day) -> None:
    assert read_plain(text) == Found(start, end)


def test_doubt_on_either_side_is_doubt_of_the_whole() -> None:
    assert read_plain("c. 287–c. 212 BC").approximate
    assert read_plain("1862 – c. 1865").approximate
    assert read_plain("1862?–1865").uncertain
    assert not read_plain("1862–1865").uncertain


@pytest.mark.parametrize("text", ["1862-5", "03/05/1834", "27 BC – 14", "44", "1898–02", "10 000"])
def test_what_has_two_readings_is_refused(text: str) -> None:
    with pytest.raises(Misread):
        read_plain(text)


def test_a_day_in_figures_is_read_if_only_one_order_is_possible() -> None:
    assert read_plain("25.12.1834") == read_plain("12/25/1834") == Found(Day(1834, 12, 25), Day(1834, 12, 25))
    assert read_plain("5/5/1834") == Found(Day(1834, 5, 5), Day(1834, 5, 5))


def test_fall_is_autumn_and_a_season_is_one_unknown_moment() -> None:
    assert (
        read_plain("Fall 1862") == read_plain("the autumn of 1862") == Found(Day(1862, 9), Day(1862, 11), spread=True)
    )
