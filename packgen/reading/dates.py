"""Dates: what a parent wrote -> `When`, and back to the words a reader knows."""

from __future__ import annotations

import math
import re
from datetime import date

from packgen.faults import Fault, Said, place_of
from packgen.reading import messages
from packgen.reading.calendar_days import (
    MONTHS,
    SEASONS,
    day_words,
    first_moment,
    last_moment,
    season,
    year_words,
)
from packgen.reading.iso_dates import read_iso
from packgen.reading.messages import Misread
from packgen.reading.models import Day, When
from packgen.reading.names import snippet, tidy, unquoted
from packgen.reading.plain_dates import read_plain

_MAX_LETTERS = 80


def read_when(said: str) -> When:
    """The date or span a text names, in ISO 8601-2 or in plain words. Raises Misread with what to write instead."""
    text = _normal(said)
    if not text or len(text) > _MAX_LETTERS:
        raise Misread(messages.NOT_DATE, text=snippet(text), hint="")
    if found := re.fullmatch(r"-(\d{1,3})", text):
        number = int(found[1])
        if number == 0:
            raise Misread(messages.NO_YEAR_ZERO)
        raise Misread(messages.MINUS_YEAR, text=text, number=number, iso=number - 1)
    read = read_iso(text) or read_plain(text)
    kept = said if isinstance(said, Said) else Said(said)
    return When(kept, read.start, read.end, read.approximate, read.uncertain, read.spread)


def read_day(said: str) -> date:
    """One full day, as for a term. Raises Misread if it is less or more than that."""
    when = read_when(said)
    day = when.start
    if day != when.end or day is None or not day.month or not day.day or not 1 <= day.year <= 9999:
        raise Misread(messages.NOT_FULL_DATE, text=snippet(said))
    try:
        return date(day.year, day.month, day.day)
    except ValueError:
        raise Misread(messages.NOT_FULL_DATE, text=snippet(said)) from None


def doubt(said: str) -> Fault | None:
    """A warning if a date in the ISO form may have been meant as years: `1901-02`, `1920-24`."""
    found = re.fullmatch(r"(\d\d)(\d\d)-(\d\d)", _normal(said))
    if not found or int(found[3]) <= int(found[2]):
        return None
    try:
        when = read_when(said)
    except Misread:
        return None
    if when.is_span:
        return None
    years = f"{found[1]}{found[2]}-{found[1]}{found[3]}"
    return messages.SAID_TWO_WAYS.fault(place_of(said), text=snippet(said), one=plain(when), two=years)


def as_years(when: When) -> tuple[float, float]:
    """The earliest start and the latest end in fractional astronomical years; -inf and inf where open or unknown.

    1834 gives (1834.0, 1835.0) and 44 BC (-43.0, -42.0). What is before 1850 ends at 1850.0.
    """
    start, end = when.start, when.end
    if when.spread and start is None and end is not None:
        return -math.inf, first_moment(end)
    if when.spread and end is None and start is not None:
        return last_moment(start), math.inf
    return (first_moment(start) if start else -math.inf, last_moment(end) if end else math.inf)


def plain(when: When) -> str:
    """The date in the words of a printed page: `about 1851`, `1862–1865`, `44 BC`, `early 1860s`.

    Reading it again gives the same date, though not the same `said`.
    """
    sure = ("perhaps " if when.uncertain else "") + ("about " if when.approximate else "")
    start, end = when.start, when.end
    if start is None or end is None:
        only = start or end
        if only is None:
            return str(when.said)
        if when.spread:
            return f"{'before' if start is None else 'after'} {sure}{day_words(only)}"
        return f"{'until' if start is None else 'since'} {sure}{day_words(only)}"
    if start == end:
        return sure + day_words(start)
    return sure + (_range_words(start, end) if when.spread else _span_words(start, end))


def _normal(said: str) -> str:
    """The text with one kind of dash, hyphen and space, and without quotes around it."""
    text = unquoted(tidy(said.replace("\u00a0", " ").replace("\u202f", " ").replace("\u2009", " ")))
    text = re.sub("[\u2010\u2011\u2212]", "-", text).removeprefix("'")
    text = text[1:-1] if text[:1] == "(" and text[-1:] == ")" else text
    return re.sub("[\u2012\u2014\u2015]", "–", " ".join(text.split())).rstrip(".,;")


def _span_words(start: Day, end: Day) -> str:
    """From one day to another, saying once what both share."""
    if start.month is None and end.month is None:
        first, last = year_words(start.year), year_words(end.year)
        if first.endswith(" BC") and last.endswith(" BC"):
            first = first.removesuffix(" BC")
        elif first.startswith("AD ") and last.startswith("AD "):
            last = last.removeprefix("AD ")
        return f"{first}–{last}"
    year = year_words(end.year)
    if start.year == end.year and start.month and end.month:
        if not start.day and not end.day:
            return f"{MONTHS[start.month - 1]}–{MONTHS[end.month - 1]} {year}"
        if start.day and end.day and start.month == end.month:
            return f"{start.day}–{end.day} {MONTHS[start.month - 1]} {year}"
        if start.day and end.day:
            return f"{start.day} {MONTHS[start.month - 1]} – {end.day} {MONTHS[end.month - 1]} {year}"
    return f"{day_words(start)} – {day_words(end)}"


def _range_words(start: Day, end: Day) -> str:
    """One unknown moment between two: by its name if the range has one, such as a decade or a season."""
    if start.month is None and end.month is None:
        named = _years_name(start.year, end.year)
        if named:
            return named
        if end.year == start.year + 1:
            return f"{year_words(start.year)} or {year_words(end.year)}"
    elif start.month and end.month and not start.day and not end.day:
        for name in SEASONS:
            if season(name, start.year) == (start, end):
                return f"{name} {year_words(start.year)}"
        part = {(1, 4): "early", (5, 8): "mid", (9, 12): "late"}.get((start.month, end.month))
        if part and start.year == end.year:
            return f"{part} {year_words(start.year)}"
    return f"between {day_words(start)} and {day_words(end)}"


def _years_name(first: int, last: int) -> str | None:
    """The name of a decade, a hundred years or a century, or of an early, middle or late part of one."""
    for part in ("", "early ", "mid ", "late "):
        for name in _names_near(first):
            found = read_plain(part + name)
            if found.start == Day(first) and found.end == Day(last):
                return part + name
    return None


def _names_near(year: int) -> list[str]:
    """The names of the decade, the hundred years and the century a year may lie in; none in times without number."""
    if not -9900 < year <= 9900:
        return []
    if year < 1:
        decade, century = (1 - year) // 10 * 10, -year // 100 + 1
        return [f"{decade}s BC"] * (decade >= 10) + [f"{ordinal(century)} century BC"]
    decade, hundred = year // 10 * 10, year // 100 * 100
    names = [f"{decade}s" + " AD" * (decade < 100)] * (decade >= 10) + [f"{hundred}s"] * (hundred >= 100)
    return [*names, f"{ordinal((year - 1) // 100 + 1)} century"]


def ordinal(number: int) -> str:
    """1st, 2nd, 3rd, 4th, 11th ..."""
    if number % 100 in (11, 12, 13):
        return f"{number}th"
    return f"{number}{ {1: 'st', 2: 'nd', 3: 'rd'}.get(number % 10, 'th') }"
