"""Days of the calendar: which exist, and where on the line of years they lie.

Years are astronomical, as in ISO 8601-1:2019 (year 0 is 1 BC). Leap years follow the Gregorian rule; up to 1752, when
Britain changed over (Calendar (New Style) Act 1750), every fourth year is one too, so that a 29 February 1700 out of
an old letter can be read.
"""

from __future__ import annotations

from dataclasses import dataclass

from packgen.reading import messages
from packgen.reading.messages import Misread
from packgen.reading.models import Day

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip
# Meteorological seasons of the north; a winter is named after the year it begins in (common practice, no source).
SEASONS = {"spring": (3, 5), "summer": (6, 8), "autumn": (9, 11), "winter": (12, 2)}
LAST_JULIAN_YEAR = 1752
_LENGTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


@dataclass(frozen=True, slots=True)
class Found:
    """A date that was read, before it is joined with the words it was read from. Fields as in `When`."""

    start: Day | None
    end: Day | None
    approximate: bool = False
    uncertain: bool = False
    spread: bool = False


def is_leap(year: int) -> bool:
    """True if the year has a 29 February."""
    return year % 4 == 0 and (year % 100 != 0 or year % 400 == 0 or year <= LAST_JULIAN_YEAR)


def days_in(year: int, month: int) -> int:
    """The days of a month, 1 to 12."""
    return 29 if month == 2 and is_leap(year) else _LENGTHS[month - 1]


def checked(text: str, year: int, month: int | None = None, day: int | None = None) -> Day:
    """The day, if there is such a day. Raises Misread if there is not."""
    if month is not None and not 1 <= month <= 12:
        raise Misread(messages.NO_SUCH_MONTH, month=f"{month:02d}", text=text)
    if month is not None and day is not None and not 1 <= day <= days_in(year, month):
        name = MONTHS[month - 1]
        words = {"month": name, "year": year_words(year), "days": days_in(year, month)}
        raise Misread(messages.NO_SUCH_DAY, text=f"{day} {name} {year_words(year)}", **words)
    return Day(year, month, day)


def first_moment(day: Day) -> float:
    """The start of a day, month or year, in years: 1834 begins at 1834.0."""
    before = sum(days_in(day.year, month) for month in range(1, day.month or 1)) + (day.day or 1) - 1
    return day.year + before / (366 if is_leap(day.year) else 365)


def last_moment(day: Day) -> float:
    """The end of a day, month or year, in years: 1834 ends at 1835.0."""
    if day.month is None:
        return day.year + 1.0
    before = sum(days_in(day.year, month) for month in range(1, day.month)) + (day.day or days_in(day.year, day.month))
    return day.year + before / (366 if is_leap(day.year) else 365)


def year_words(year: int) -> str:
    """A year as a reader knows it: 1834, AD 14, 44 BC; there is no year 0. Long numbers get commas."""
    if year < 1:
        return f"{_number(1 - year)} BC"
    return str(year) if 1000 <= year <= 9999 else f"AD {_number(year)}"


def day_words(day: Day) -> str:
    """A day, month or year as a reader knows it: 3 May 1834, May 1834, 1834."""
    parts = [str(day.day)] if day.day else []
    parts += [MONTHS[day.month - 1]] if day.month else []
    return " ".join([*parts, year_words(day.year)])


def season(name: str, year: int) -> tuple[Day, Day]:
    """The first and last month of a season."""
    first, last = SEASONS[name]
    return Day(year, first), Day(year + (last < first), last)


def ordered(start: Day, end: Day) -> None:
    """Raises Misread if the end lies before the start."""
    if first_moment(start) >= last_moment(end):
        raise Misread(messages.BACKWARDS, start=day_words(start), end=day_words(end))


def _number(number: int) -> str:
    return f"{number:,}" if number > 9999 else str(number)
