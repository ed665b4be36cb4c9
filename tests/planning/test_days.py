import doctest
from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from packgen.planning import days
from packgen.planning.days import long_days, months_between, short_days, short_span


def test_its_examples_hold() -> None:
    assert doctest.testmod(days).failed == 0


@given(st.dates(date(1900, 1, 1), date(2100, 1, 1)))
def test_a_day_has_its_own_weekday_and_date(day: date) -> None:
    # strftime has the names in English in the C locale, in which tests run
    assert long_days([day]) == f"{day:%A} {day.day} {day:%B} {day.year}"
    assert short_days([day]) == f"{day.day} {day:%b}"


def test_no_days_are_no_words() -> None:
    assert long_days([]) == "" and short_days([]) == ""


@given(st.dates(date(1900, 1, 1), date(2100, 1, 1)), st.integers(1, 40))
def test_a_span_names_both_its_ends(first: date, length: int) -> None:
    last = first + timedelta(days=length)
    words = short_span(first, last)
    assert words.startswith(str(first.day)) and words.endswith(short_days([last]))


def test_a_week_across_two_months_names_both() -> None:
    assert short_span(date(2027, 3, 29), date(2027, 4, 4)) == "29 Mar – 4 Apr"
    assert short_span(date(2027, 3, 15), date(2027, 3, 21)) == "15–21 Mar"


def test_a_term_across_the_year_names_both_years() -> None:
    assert months_between(date(2026, 11, 2), date(2027, 1, 18)) == "November 2026 to January 2027"
    assert months_between(date(2027, 5, 2), date(2027, 5, 30)) == "May 2027"
