"""Days that exist, and their places on the line of years."""

from __future__ import annotations

import datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.reading.calendar_days import (
    MONTHS,
    checked,
    day_words,
    days_in,
    first_moment,
    is_leap,
    last_moment,
    ordered,
    season,
    year_words,
)
from packgen.reading.messages import Misread
from packgen.reading.models import Day


@given(st.dates(datetime.date(1753, 1, 1)))
@settings(max_examples=150, deadline=None)
def test_days_lie_where_the_gregorian_calendar_has_them(day: datetime.date) -> None:
    length = 366 if is_leap(day.year) else 365
    expected = day.year + (day.timetuple().tm_yday - 1) / length
    assert first_moment(Day(day.year, day.month, day.day)) == pytest.approx(expected, abs=1e-12)
    assert checked("", day.year, day.month, day.day) == Day(day.year, day.month, day.day)


@given(st.integers(-3000, 3000), st.integers(1, 12), st.integers(1, 28))
@settings(max_examples=100, deadline=None)
def test_a_day_ends_where_the_next_begins_and_months_fill_the_year(year: int, month: int, day: int) -> None:
    assert last_moment(Day(year, month, day)) == first_moment(Day(year, month, day + 1)) or day == 28
    assert last_moment(Day(year, 12)) == last_moment(Day(year)) == first_moment(Day(year + 1))
    assert sum(days_in(year, m) for m in range(1, 13)) == (366 if is_leap(year) else 365)


def test_leap_days_of_the_old_calendar_are_let_pass() -> None:
    # 1700 was a leap year in Britain until the Calendar (New Style) Act 1750; 1800 and 1900 were none.
    assert checked("", 1700, 2, 29) == Day(1700, 2, 29)
    for year in (1800, 1900, 2100, 1899):
        with pytest.raises(Misread):
            checked("", year, 2, 29)
    assert checked("", 2000, 2, 29) == Day(2000, 2, 29)


def test_months_beyond_twelve_are_refused() -> None:
    with pytest.raises(Misread, match="no month 13"):
        checked("1862-13", 1862, 13)


def test_years_are_named_without_a_year_zero() -> None:
    # ISO 8601-1:2019: year 0000 is 1 BC, -0043 is 44 BC.
    assert [year_words(y) for y in (-43, -1, 0, 1, 14, 999, 1000, 1834)] == [
        "44 BC", "2 BC", "1 BC", "AD 1", "AD 14", "AD 999", "1000", "1834"
    ]  # fmt: skip
    assert year_words(-11999) == "12,000 BC"
    assert day_words(Day(-43, 3, 15)) == "15 March 44 BC"


def test_a_winter_runs_into_the_next_year() -> None:
    assert season("winter", 1862) == (Day(1862, 12), Day(1863, 2))
    assert season("spring", 1862) == (Day(1862, 3), Day(1862, 5))


def test_an_end_must_not_come_before_its_start() -> None:
    ordered(Day(1862), Day(1862, 5, 3))
    ordered(Day(1862, 5, 3), Day(1862))
    for start, end in ((Day(1863), Day(1862)), (Day(1862, 5), Day(1862, 4)), (Day(1862, 5, 3), Day(1862, 5, 2))):
        with pytest.raises(Misread):
            ordered(start, end)


def test_there_are_twelve_months() -> None:
    assert len(MONTHS) == 12
