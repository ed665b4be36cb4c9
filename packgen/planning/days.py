"""Dates of sittings in words, the same in every locale."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from packgen.planning.notes import listed
from packgen.reading.calendar_days import MONTHS

WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def long_days(days: Sequence[date]) -> str:
    """Days with weekday, month and year, the year once; empty for none.

    >>> long_days([date(2027, 2, 1), date(2027, 2, 3)])
    'Monday 1 February and Wednesday 3 February 2027'
    """
    if not days:
        return ""
    words = [f"{WEEKDAYS[day.weekday()]} {day.day} {MONTHS[day.month - 1]}" for day in days]
    return f"{listed(words)} {days[-1].year}"


def short_days(days: Sequence[date]) -> str:
    """Days for a narrow column, each month once.

    >>> short_days([date(2027, 2, 22), date(2027, 2, 24)]), short_days([date(2027, 3, 29), date(2027, 4, 2)])
    ('22, 24 Feb', '29 Mar, 2 Apr')
    """
    words: list[str] = []
    for place, day in enumerate(days):
        last = place + 1 == len(days) or days[place + 1].month != day.month
        words.append(f"{day.day} {MONTHS[day.month - 1][:3]}" if last else str(day.day))
    return ", ".join(words)


def short_span(first: date, last: date) -> str:
    """From one day to another, for a narrow column: `15–21 Mar`, `29 Mar – 4 Apr`."""
    if first.month == last.month:
        return f"{first.day}–{short_days([last])}"
    return f"{short_days([first])} – {short_days([last])}"


def months_between(first: date, last: date) -> str:
    """A term in words: `February to April 2027`, `November 2026 to January 2027`, `May 2027`.

    >>> months_between(date(2027, 2, 3), date(2027, 4, 7))
    'February to April 2027'
    """
    if (first.year, first.month) == (last.year, last.month):
        return f"{MONTHS[first.month - 1]} {first.year}"
    year = "" if first.year == last.year else f" {first.year}"
    return f"{MONTHS[first.month - 1]}{year} to {MONTHS[last.month - 1]} {last.year}"
