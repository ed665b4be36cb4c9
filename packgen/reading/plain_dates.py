"""Dates as people write them: `c. 1851`, `3 May 1834`, `1862-65`, `44 BC`, `early 1860s`, `before 1850`."""

from __future__ import annotations

import re
from dataclasses import replace

from packgen.faults import nearest
from packgen.reading import messages
from packgen.reading.calendar_days import MONTHS, Found, checked, day_words, ordered, season
from packgen.reading.messages import Misread
from packgen.reading.models import Day

_ABOUT = re.compile(
    r"(?:circa|cca|ca|c|approx(?:imately)?|about|abt|around|roughly|some ?time around|the)(?:\.\s*|\s+|(?=\d))|[~≈]\s*"
)
_MAYBE = re.compile(r"(?:perhaps|possibly|probably|maybe|presumably)\s+")
_BEFORE = re.compile(r"(?:before|prior to|not later than|pre)[ -]+(.+)|(.+?) or (?:before|earlier)")
_AFTER = re.compile(r"(?:after|not before|post)[ -]+(.+)|(.+?) or (?:after|later)")
_SINCE = re.compile(
    r"(?:since|from) (.+?)(?: onwards?| on)?"
    r"|(.+?)(?: onwards?| on|\s*(?:[-–]| to | until | till )\s*(?:the present|present|now|today|))"
)
_UNTIL = re.compile(r"(?:until|till|up to|to) (.+)")
_BETWEEN = re.compile(r"(?:between|either) (.+?) (?:and|or) (.+)")
_OR = re.compile(r"(\S.*?) or (\S.*)")
_ERAS = (
    (re.compile(r"(?<![a-z])b\.? ?c\.?(?: ?e\.?)?(?![a-z])"), "bc"),
    (re.compile(r"(?<![a-z])(?:a\.? ?d\.?|c\. ?e\.?|ce)(?![a-z])"), "ad"),
)
_MONTH = "(?P<month>" + "|".join(f"{name[:3]}(?:{name[3:]})?" for name in map(str.lower, MONTHS)) + r"|sept)\.?"
_DAY = r"(?:the )?(?P<day>\d{1,2})(?:st|nd|rd|th|\.)?"
_YEAR = r"(?:(?P<ad>ad|bc) ?)?(?P<year>\d{1,3}(?:,\d{3})+|\d{1,12})(?: ?(?P<era>bc|ad))?"
_PART = r"(?:(?P<part>early|mid|middle|late)(?: in)?[ -]+(?:of )?(?:the )?)"
_SEASON = "(?P<season>spring|summer|autumn|fall|winter)"
_LINK = r"(?:,? (?:of )?|-)"
_FORMS = tuple(
    re.compile(form)
    for form in (
        _YEAR,
        rf"{_MONTH}{_LINK}{_YEAR}",
        rf"{_DAY}(?: of)?[ -]?{_MONTH}{_LINK}{_YEAR}",
        rf"{_MONTH} {_DAY},? {_YEAR}",
        rf"(?P<year>\d{{3,4}}),? {_MONTH}(?: {_DAY})?",
        rf"{_PART}?(?:in )?(?:the )?{_SEASON}(?:,? (?:of |in )?){_YEAR}",
        rf"{_PART}?(?:the )?(?P<decade>\d{{1,4}}0)['’]?s(?: (?P<era>bc|ad))?",
        rf"{_PART}?(?:the )?(?P<century>\d{{1,2}})(?:st|nd|rd|th)[ -](?:century|cent|c)\.?(?: (?P<era>bc|ad))?",
        rf"{_PART}{_YEAR}",
        rf"{_DAY}(?: of)?[ -]?{_MONTH}",
        rf"{_MONTH} {_DAY}",
        _MONTH,
        _DAY,
        _SEASON,
    )
)
_NUMERIC = re.compile(r"(\d{1,4})([./-])(\d{1,2})\2(\d{1,4})")
_THIRDS = {"early": (0, 33), "mid": (33, 66), "middle": (33, 66), "late": (66, 100)}
_TENTHS = {"early": (0, 4), "mid": (4, 7), "middle": (4, 7), "late": (7, 10)}
_MONTHS_OF = {"early": (1, 4), "mid": (5, 8), "middle": (5, 8), "late": (9, 12)}


def read_plain(text: str) -> Found:
    """The date. Raises Misread with what to write instead."""
    words = text.casefold().replace("''", "'")
    for pattern, era in _ERAS:
        words = pattern.sub(era, words)
    words = re.sub(r"(^|[-–] ?)(\d{1,3}(?: \d{3})+)(?= ?(?:bc|ad))", lambda m: m[0].replace(" ", ""), words)
    return _whole(" ".join(words.split()), text)


def _whole(words: str, text: str) -> Found:
    """A moment, a span, or a time known on one side only."""
    words, about, maybe = _qualified(words)
    found = _moment(words) or _one_sided(words, text) or _span(words, text)
    if found is None:
        raise Misread(messages.NOT_DATE, text=text, hint=_month_hint(words))
    return replace(found, approximate=found.approximate or about, uncertain=found.uncertain or maybe)


def _qualified(words: str) -> tuple[str, bool, bool]:
    """The words without what makes them approximate or uncertain."""
    about = maybe = False
    while True:
        stripped = words.strip(" ,;")
        if found := _ABOUT.match(stripped):
            about = about or found.group().strip() != "the"
            stripped = stripped[found.end() :]
        elif found := _MAYBE.match(stripped):
            maybe, stripped = True, stripped[found.end() :]
        elif found := re.search(r"\s*(?:\(\?\)|\?|%|~)$", stripped):
            about = about or found.group().strip() in ("%", "~")
            maybe = maybe or found.group().strip() != "~"
            stripped = stripped[: found.start()]
        if stripped == words:
            return words, about, maybe
        words = stripped


def _one_sided(words: str, text: str) -> Found | None:
    """A time known on one side only, or lying between two dates."""
    sides = ((_BEFORE, True, True), (_AFTER, True, False), (_UNTIL, False, True), (_SINCE, False, False))
    for pattern, spread, end_known in sides:
        found = pattern.fullmatch(words)
        inner = _qualified_moment(next(group for group in found.groups() if group is not None)) if found else None
        if inner:
            start, end = (None, inner.end) if end_known else (inner.start, None)
            return replace(inner, start=start, end=end, spread=spread)
    found = _BETWEEN.fullmatch(words) or _OR.fullmatch(words)
    both = _joined(found[1], found[2], text) if found else None
    return replace(both, spread=both.start != both.end) if both else None


def _qualified_moment(words: str) -> Found | None:
    words, about, maybe = _qualified(words)
    found = _moment(words)
    return replace(found, approximate=about, uncertain=maybe) if found else None


def _span(words: str, text: str) -> Found | None:
    """From one date to another, whichever of the usual marks stands between them."""
    words = re.sub("^from ", "", words)
    if found := re.fullmatch(r"(\d{3})(\d)-(\d)", words):
        month = int(found[3])
        one = f"{MONTHS[month - 1]} {found[1]}{found[2]}" if month else f"{found[1]}{found[2]}"
        two = f"{found[1]}{found[2]}-{found[1]}{found[3]}"
        raise Misread(messages.YEARS_OR_MONTH, text=text, one=one, two=two)
    for mark in (" – ", "–", " - ", " to ", " until ", " till ", " through ", "-", "/"):
        for place in re.finditer(re.escape(mark), words):
            both = _joined(words[: place.start()].strip(), words[place.end() :].strip(), text)
            if both is not None:
                return both
    return None


def _joined(left: str, right: str, text: str) -> Found | None:
    """A span of two sides, each leaving to the other what they share: `3-7 May 1834`, `1862-65`, `287-212 BC`."""
    left, about, maybe = _qualified(left)
    right, about_end, maybe_end = _qualified(right)
    if not _has_form(left) or not _has_form(right):
        return None
    digits = re.search(r"(\d{3,4})(?: ad)?$", left)
    if digits and re.fullmatch(r"\d{1,3}", right) and len(right) < len(digits[1]):
        right = digits[1][: len(digits[1]) - len(right)] + right
        _not_a_month(digits[1], right, text)
    era_left, era_right = (found[0] if (found := re.search("bc|ad", side)) else "" for side in (left, right))
    era_end = era_left if era_left == "ad" and not era_right else ""
    end = _moment(right, era=era_end)
    start = _moment(left, end.end if end else None, "" if era_left else era_right)
    if end is None and start:
        end = _moment(right, start.start, era_end)
    if not start or not end or not start.start or not end.end:
        return None
    ordered(start.start, end.end)
    return Found(start.start, end.end, about or about_end, maybe or maybe_end)


def _has_form(words: str) -> bool:
    return _NUMERIC.fullmatch(words) is not None or any(form.fullmatch(words) for form in _FORMS)


def _not_a_month(start: str, end: str, text: str) -> None:
    """Raises Misread for `1862-13`: no month, and no later year of the same century."""
    if int(end) < int(start) and "-" in text:
        raise Misread(messages.NO_SUCH_MONTH, month=end[-2:], text=text)


def _moment(words: str, near: Day | None = None, era: str = "") -> Found | None:
    """One date, or None if the words are none. `near` and `era` give what the other side of a span may leave out."""
    if found := _NUMERIC.fullmatch(words):
        return _numeric(words, found[1], found[3], found[4])
    for form in _FORMS:
        if found := form.fullmatch(words):
            if form.pattern == _YEAR and near and near.day and len(words) <= 2:
                continue  # in `3-7 May 1834` the 3 is a day
            parts = found.groupdict()
            if made := _made(words, parts, near, parts.get("era") or parts.get("ad") or era):
                return made
    return None


def _made(words: str, parts: dict[str, str | None], near: Day | None, era: str) -> Found | None:
    """A date from the parts of a form."""
    part = parts.get("part")
    if decade := parts.get("decade"):
        return _decade(decade, part, era)
    if century := parts.get("century"):
        return _century(int(century), part, era)
    month = _month_number(parts.get("month"))
    day = int(parts.get("day") or 0) or None
    if digits := parts.get("year"):
        year = _year(digits, era)
    elif near is None:
        return None
    else:
        year = near.year
        month = month or (near.month if day else None)
        if day and not month:
            return None
    if name := parts.get("season"):
        return Found(*season(name.replace("fall", "autumn"), year), spread=True)
    if part:
        first, last = _MONTHS_OF[part]
        return Found(Day(year, first), Day(year, last), spread=True)
    only = checked(words, year, month, day)
    return Found(only, only)


def _month_number(name: str | None) -> int | None:
    return next((i for i, month in enumerate(MONTHS, 1) if name and month.lower().startswith(name[:3])), None)


def _year(digits: str, era: str) -> int:
    """The astronomical year of the digits. Raises Misread for year 0 and for years of the wrong length."""
    plain = digits.replace(",", "")
    number = int(plain)
    if number == 0:
        raise Misread(messages.NO_YEAR_ZERO)
    if era:
        if len(plain) > 11:
            raise Misread(messages.TOO_BIG, text=digits)
        return 1 - number if era == "bc" else number
    if len(plain) < 3:
        raise Misread(messages.SHORT_YEAR, text=digits, two=f"{number:02d}", number=number)
    if len(plain) > 4:
        raise Misread(messages.LONG_YEAR, text=digits, number=digits)
    return number


def _decade(digits: str, part: str | None, era: str) -> Found:
    """`1860s`; `1800s` is the whole hundred years."""
    number = int(digits)
    if number < 100 and not era:
        raise Misread(messages.SHORT_YEAR, text=f"{digits}s", two=f"{digits}s", number=number)
    length, parts = (100, _THIRDS) if number % 100 == 0 and number else (10, _TENTHS)
    first, last = parts[part] if part else (0, length)
    if era == "bc":
        # The 440s BC run from 449 down to 440 BC, which are the astronomical years -448 to -439.
        first, last = 1 - (number + length - 1) + first, 1 - (number + length - 1) + last - 1
    else:
        first, last = number + first, number + last - 1
    return Found(Day(first), Day(last), spread=True)


def _century(number: int, part: str | None, era: str) -> Found | None:
    """The 19th century is 1801 to 1900, the 1st century BC is 100 to 1 BC."""
    if number == 0:
        return None
    low = 1 - 100 * number if era == "bc" else 100 * (number - 1) + 1
    first, last = _THIRDS[part] if part else (0, 100)
    return Found(Day(low + first), Day(low + last - 1), spread=True)


def _numeric(words: str, a: str, b: str, c: str) -> Found | None:
    """Days in figures: year first as in ISO, or last, if only one order is possible."""
    if len(a) == 4:
        only = checked(words, int(a), int(b), int(c))
        return Found(only, only)
    if len(c) != 4 or len(a) > 2:
        return None
    first, second, year = int(a), int(b), int(c)
    if first <= 12 and second <= 12 and first != second:
        one, two = (day_words(checked(words, year, m, d)) for d, m in ((first, second), (second, first)))
        raise Misread(messages.DAY_OR_MONTH, text=words, one=one, two=two)
    day, month = (second, first) if second > 12 else (first, second)
    only = checked(words, year, month, day)
    return Found(only, only)


def _month_hint(words: str) -> str:
    for word in re.findall(r"[a-z]{4,}", words):
        if found := nearest(word, [m.lower() for m in MONTHS]):
            return f" Is {found.capitalize()} meant?" if found != word else ""
    return ""
