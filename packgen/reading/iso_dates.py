"""Dates in ISO 8601-2:2019 (also known as EDTF): all of level 1, and of level 2 what a study can need.

Level 2 here: marks on single parts (`2004-06?-11`), exponents and significant digits (`Y17E8`, `1950S2`), and sets of
years (`[1667..1672]`). Also ISO 8601-1 times of day, which are left out, and week dates.
"""

from __future__ import annotations

import datetime
import re

from packgen.reading import messages
from packgen.reading.calendar_days import Found, checked, ordered, season
from packgen.reading.messages import Misread
from packgen.reading.models import Day

_MARK = "[?~%]?"
_YEAR = r"(?P<year>-?\d{4}|-?\d{1,3}X{1,3}|Y-?\d{1,12})(?:E(?P<power>\d{1,2}))?(?:S(?P<digits>\d{1,2}))?"
_TIME = r"(?:T\d\d(?::?\d\d(?::?\d\d(?:[.,]\d+)?)?)?(?:Z|[+-]\d\d(?::?\d\d)?)?)?"
_DATE = re.compile(
    rf"{_MARK}{_YEAR}{_MARK}(?:-{_MARK}(?P<month>\d\d|XX){_MARK}(?:-{_MARK}(?P<day>\d\d|XX){_MARK}{_TIME})?)?"
)
_WEEK = re.compile(r"(\d{4})-?W(\d\d)(?:-?(\d))?")
_SET = re.compile(r"[\[{](?P<inside>[^\[\]{}]+)[\]}]")
_SEASONS = {21: "spring", 22: "summer", 23: "autumn", 24: "winter"}
_LONGEST_YEAR = 10**11


def read_iso(text: str) -> Found | None:
    """The date, or None if the text is not in the ISO form. Raises Misread if it is, and there is no such date."""
    if not re.fullmatch(r"[0-9XxYyEeSsWwTtZz?~%./,:+\[\]{}-]+", text):
        return None
    text = text.upper()
    if re.fullmatch(r"\d{4}/\d{1,2}(/\d{1,2})?|\d{1,2}/.*", text):
        return None
    if "/" in text:
        return _interval(text)
    if text[0] in "[{":
        return _set(text)
    return _single(text)


def _single(text: str) -> Found | None:
    week = _WEEK.fullmatch(text)
    if week:
        return _week(text, *(int(part or 0) for part in week.groups()))
    match = _DATE.fullmatch(text)
    if not match:
        return None
    year = match["year"]
    if year[0] == "Y" and len(year.lstrip("Y-")) < 5 and not match["power"]:
        return None
    flags = "".join(c for c in text if c in "?~%")
    approximate, uncertain = "~" in flags or "%" in flags, "?" in flags or "%" in flags
    days = _days(text, match)
    if days is None:
        return None
    return Found(*days, approximate, uncertain, spread=days[0] != days[1])


def _days(text: str, match: re.Match[str]) -> tuple[Day, Day] | None:
    """The first and last day, month or year that the digits allow; None for `1862-65`, which is a span of years."""
    first, last = _years(text, match)
    month = match["month"]
    if first != last or month is None or month == "XX":
        return Day(first), Day(last)
    number = int(month)
    if number in _SEASONS and match["day"] is None:
        return season(_SEASONS[number], first)
    day = match["day"]
    if day is None and not 1 <= number <= 12:
        return None
    only = checked(text, first, number, None if day in (None, "XX") else int(day))
    return only, only


def _years(text: str, match: re.Match[str]) -> tuple[int, int]:
    year = match["year"].lstrip("Y")
    if year == "-0000":
        raise Misread(messages.NO_YEAR_ZERO)
    if "X" in year:
        ends = sorted((int(year.replace("X", "0")), int(year.replace("X", "9"))))
        return ends[0], ends[1]
    number = int(year) * 10 ** int(match["power"] or 0)
    if abs(number) > _LONGEST_YEAR:
        raise Misread(messages.TOO_BIG, text=text)
    if match["digits"] is None:
        return number, number
    unsure = 10 ** max(len(str(abs(number))) - int(match["digits"]), 0)
    low = abs(number) // unsure * unsure
    return (low, low + unsure - 1) if number >= 0 else (-low - unsure + 1, -low)


def _week(text: str, year: int, week: int, day: int) -> Found:
    try:
        start = datetime.date.fromisocalendar(year, week, day or 1)
        end = datetime.date.fromisocalendar(year, week, day or 7)
    except ValueError:
        raise Misread(messages.NOT_DATE, text=text, hint=f" The year {year} has no such week or day.") from None
    first, last = (Day(d.year, d.month, d.day) for d in (start, end))
    return Found(first, last, spread=first != last)


def _interval(text: str) -> Found | None:
    """`A/B`, where a side may be empty (unknown) or `..` (open)."""
    left, _, right = text.partition("/")
    if "/" in right or (left in ("", "..") and right in ("", "..")):
        return None
    found = [None if side in ("", "..") else _single(side) for side in (left, right)]
    if any(f is None and side not in ("", "..") for f, side in zip(found, (left, right), strict=True)):
        return None
    start = found[0].start if found[0] else None
    end = found[1].end if found[1] else None
    if start and end:
        ordered(start, end)
    approximate = any(f.approximate for f in found if f)
    uncertain = any(f.uncertain for f in found if f)
    return Found(start, end, approximate, uncertain)


def _set(text: str) -> Found | None:
    """`[A, B]` or `[A..B]`: one of them; `{A..B}`: all of them."""
    match = _SET.fullmatch(text)
    if not match:
        return None
    inside = match["inside"]
    if inside.startswith("..") or inside.endswith(".."):
        only = _single(inside.strip("."))
        if only is None:
            return None
        before = inside.startswith("..")
        return Found(None if before else only.start, only.end if before else None, spread=text[0] == "[")
    parts = [_single(part) for part in re.split(r",|\.\.", inside)]
    starts = [part.start for part in parts if part and part.start]
    ends = [part.end for part in parts if part and part.end]
    if len(starts) != len(parts) or len(ends) != len(parts):
        return None
    ordered(starts[0], ends[-1])
    return Found(starts[0], ends[-1], spread=text[0] == "[" and starts[0] != ends[-1])
