"""The ISO form is told from plain text, and read to its limits."""

from __future__ import annotations

import pytest

from packgen.reading.calendar_days import Found
from packgen.reading.iso_dates import read_iso
from packgen.reading.messages import Misread
from packgen.reading.models import Day


@pytest.mark.parametrize(
    "text", ["1862-65", "c. 1851", "1862/65", "03/05/1834", "44 BC", "XXXX", "Y1834", "A/B/C", "we", "1834-05-3x"]
)
def test_what_is_not_in_the_iso_form_is_left_to_the_plain_reader(text: str) -> None:
    assert read_iso(text) is None


# Weeks: ISO 8601-1:2019; the three days are those of the standard calendar (checked against date.fromisocalendar).
@pytest.mark.parametrize(
    ("text", "day"),
    [("2025-W36-1", Day(2025, 9, 1)), ("2025-W01-1", Day(2024, 12, 30)), ("2020-W53-7", Day(2021, 1, 3))],
)
def test_week_dates_are_days(text: str, day: Day) -> None:
    assert read_iso(text) == Found(day, day)


def test_a_week_is_one_unknown_day_of_it() -> None:
    assert read_iso("2025-W36") == Found(Day(2025, 9, 1), Day(2025, 9, 7), spread=True)


def test_small_letters_and_marks_on_parts_are_read() -> None:
    assert read_iso("186x") == Found(Day(1860), Day(1869), spread=True)
    assert read_iso("?2004-06-~11") == Found(Day(2004, 6, 11), Day(2004, 6, 11), approximate=True, uncertain=True)


def test_years_before_1_with_unknown_digits_run_the_right_way() -> None:
    assert read_iso("-04XX") == Found(Day(-499), Day(-400), spread=True)
    assert read_iso("-1950S2") == Found(Day(-1999), Day(-1900), spread=True)


def test_sets_are_spans_or_one_unknown_moment() -> None:
    assert read_iso("{1667..1672}") == Found(Day(1667), Day(1672))
    assert read_iso("[1667,1670..1672]") == Found(Day(1667), Day(1672), spread=True)
    assert read_iso("[..1984]") == Found(None, Day(1984), spread=True)
    assert read_iso("[1984..]") == Found(Day(1984), None, spread=True)


@pytest.mark.parametrize("text", ["1834-02-30", "1834-13-01", "-0000", "1834/1833", "Y9E20", "2025-W60"])
def test_dates_in_the_iso_form_that_are_none_are_refused(text: str) -> None:
    with pytest.raises(Misread):
        read_iso(text)
