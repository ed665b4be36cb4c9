"""Dates in ISO 8601-2 and in plain words, and the words they are printed in."""

from __future__ import annotations

import math
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.faults import Place, Said, Severity
from packgen.reading.calendar_days import days_in, first_moment, last_moment
from packgen.reading.dates import as_years, doubt, ordinal, plain, read_day, read_when
from packgen.reading.messages import Misread
from packgen.reading.models import Day, When

DAYS = st.integers(-9999, 9999).flatmap(
    lambda y: st.one_of(
        st.just(Day(y)),
        st.integers(1, 12).map(lambda m: Day(y, m)),
        st.integers(1, 12).flatmap(lambda m: st.integers(1, days_in(y, m)).map(lambda d: Day(y, m, d))),
    )
)


@st.composite
def whens(draw: st.DrawFn) -> When:
    """Any date the reader can give: a day, a span, an unknown moment, known on both sides or on one."""
    start, end = sorted((draw(DAYS), draw(DAYS)), key=lambda d: (d.year, first_moment(d), last_moment(d)))
    shape = draw(st.sampled_from(["day", "span", "spread", "before", "after", "since", "until"]))
    sides = {"day": (start, start), "before": (None, end), "until": (None, end), "after": (start, None)}
    first, last = sides.get(shape, (start, None) if shape == "since" else (start, end))
    spread = shape in ("spread", "before", "after") and first != last
    return When(Said(""), first, last, draw(st.booleans()), draw(st.booleans()), spread)


def fields(when: When) -> tuple[object, ...]:
    return (when.start, when.end, when.approximate, when.uncertain, when.spread)


@given(whens())
@settings(max_examples=300, deadline=None)
def test_what_is_printed_reads_as_the_same_date(when: When) -> None:
    if when.start and when.end and first_moment(when.start) > last_moment(when.end):
        return
    assert fields(read_when(plain(when))) == fields(when), plain(when)


# Examples of the Library of Congress' EDTF specification (ISO 8601-2:2019, levels 0 to 2).
@pytest.mark.parametrize(
    ("text", "start", "end", "flags"),
    [
        ("1985-04-12", Day(1985, 4, 12), Day(1985, 4, 12), ""),
        ("1985-04", Day(1985, 4), Day(1985, 4), ""),
        ("1985-04-12T23:20:30Z", Day(1985, 4, 12), Day(1985, 4, 12), ""),
        ("1964/2008", Day(1964), Day(2008), ""),
        ("2004-02-01/2005-02", Day(2004, 2, 1), Day(2005, 2), ""),
        ("Y170000002", Day(170000002), Day(170000002), ""),
        ("Y-170000002", Day(-170000002), Day(-170000002), ""),
        ("1984?", Day(1984), Day(1984), "?"),
        ("2004-06~", Day(2004, 6), Day(2004, 6), "~"),
        ("2004-06-11%", Day(2004, 6, 11), Day(2004, 6, 11), "~?"),
        ("201X", Day(2010), Day(2019), "S"),
        ("20XX", Day(2000), Day(2099), "S"),
        ("2004-XX", Day(2004), Day(2004), ""),
        ("1985-04-XX", Day(1985, 4), Day(1985, 4), ""),
        ("1985-04/..", Day(1985, 4), None, ""),
        ("../1985-04-12", None, Day(1985, 4, 12), ""),
        ("/1985-04-12", None, Day(1985, 4, 12), ""),
        ("1985/", Day(1985), None, ""),
        ("-1985", Day(-1985), Day(-1985), ""),
        ("Y-17E7", Day(-170000000), Day(-170000000), ""),
        ("1950S2", Day(1900), Day(1999), "S"),
        ("[1667..1672]", Day(1667), Day(1672), "S"),
        ("2004-06-~01/2004-06-~20", Day(2004, 6, 1), Day(2004, 6, 20), "~"),
        ("2001-21", Day(2001, 3), Day(2001, 5), "S"),
        ("2001-22", Day(2001, 6), Day(2001, 8), "S"),
    ],
)
def test_the_standards_own_examples_are_read(text: str, start: Day | None, end: Day | None, flags: str) -> None:
    when = read_when(text)
    assert (when.start, when.end) == (start, end)
    assert (when.approximate, when.uncertain, when.spread) == ("~" in flags, "?" in flags, "S" in flags)


@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("1834", "1834"), ("c. 1851", "about 1851"), ("ca 1851", "about 1851"), ("circa 1851", "about 1851"),
        ("about 1851", "about 1851"), ("around 1851", "about 1851"), ("1851~", "about 1851"), ("~1851", "about 1851"),
        ("1834?", "perhaps 1834"), ("1834%", "perhaps about 1834"), ("probably 1834", "perhaps 1834"),
        ("1862-1865", "1862–1865"), ("1862–65", "1862–1865"), ("1862-65", "1862–1865"), ("1862/1865", "1862–1865"),
        ("from 1862 to 1865", "1862–1865"), ("1862 — 1865", "1862–1865"), ("1834-35", "1834–1835"),
        ("c. 1287–c. 1212 BC", "about 1287–1212 BC"), ("c. 287-212 BC", "about 287–212 BC"), ("44 BC", "44 BC"),
        ("44 BCE", "44 BC"), ("44 b.c.", "44 BC"), ("-0043", "44 BC"), ("AD 14", "AD 14"), ("14 CE", "AD 14"),
        ("10 BC – 10 AD", "10 BC–AD 10"), ("14–37 AD", "AD 14–37"), ("12,000 BC", "12,000 BC"),
        ("3 May 1834", "3 May 1834"), ("May 3, 1834", "3 May 1834"), ("the 3rd of May 1834", "3 May 1834"),
        ("1834 May 3", "3 May 1834"), ("3 Sep. 1834", "3 September 1834"), ("25/12/1834", "25 December 1834"),
        ("12/25/1834", "25 December 1834"), ("1834/05/03", "3 May 1834"), ("3-7 May 1834", "3–7 May 1834"),
        ("May–June 1834", "May–June 1834"), ("3 May - 7 June 1834", "3 May – 7 June 1834"), ("May 1834", "May 1834"),
        ("1860s", "1860s"), ("the 1860’s", "1860s"), ("186X", "1860s"), ("18XX", "1800s"),
        ("early 1860s", "early 1860s"),
        ("mid-1860s", "mid 1860s"), ("late 1860s", "late 1860s"), ("19th century", "19th century"),
        ("early 19th century", "early 19th century"), ("1st century BC", "1st century BC"), ("440s BC", "440s BC"),
        ("before 1850", "before 1850"), ("after c. 1850", "after about 1850"), ("since 1985", "since 1985"),
        ("1985-present", "since 1985"), ("1985–", "since 1985"), ("until 1850", "until 1850"),
        ("1985/..", "since 1985"),
        ("summer of 1862", "summer 1862"), ("fall 1862", "autumn 1862"), ("early 1862", "early 1862"),
        ("between 1862 and 1865", "between 1862 and 1865"), ("1862 or 1863", "1862 or 1863"), ("“1834”", "1834"),
        ("(c. 1851)", "about 1851"), ("476", "AD 476"), ("1 200 BC", "1200 BC"),
    ],
)  # fmt: skip
def test_plain_forms_are_understood_and_printed_in_one_way(text: str, printed: str) -> None:
    assert plain(read_when(text)) == printed


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("31 February 1834", "no such day as 31 February 1834"), ("1834-02-30", "no such day"),
        ("29 February 1900", "no such day"), ("31 June 44 BC", "no such day as 31 June 44 BC"),
        ("0", "no year 0"), ("0 BC", "no year 0"), ("AD 0", "no year 0"), ("-0", "no year 0"), ("-0000", "no year 0"),
        ("1865-1862", "before the start"), ("212-287 BC", "before the start"), ("1862-05/1862-04", "before the start"),
        ("03/05/1834", "3 May 1834 or 5 March 1834"), ("3.5.1834", "two ways"), ("1862-5", "May 1862 or 1862-1865"),
        ("1862-13", "no month 13"), ("1862-00", "no month 00"), ("1834-13-01", "no month 13"), ("-44", "44 BC"),
        ("44", "any century"), ("'44", "any century"), ("60s", "any century"), ("18341", "too many digits"),
        ("Febuary 1834", "February meant"), ("hello", "not a date"), ("", "not a date"), ("May", "not a date"),
        ("XXXX", "not a date"), ("2025-W54-1", "no such week"), ("../..", "not a date"), ("/", "not a date"),
        ("18340503", "too many digits"), ("9" * 12 + " BC", "beyond any size"), ("x" * 500, "not a date"),
        ("Y99999999999E9", "beyond any size"), ("1834-1835-1836", "not a date"),
    ],
)  # fmt: skip
def test_what_is_no_date_is_told_why(text: str, words: str) -> None:
    with pytest.raises(Misread) as caught:
        read_when(text)
    assert words in f"{caught.value} {caught.value.instead}"
    assert caught.value.instead


def test_there_is_no_year_zero_between_bc_and_ad() -> None:
    # 10 BC to AD 10 is 19 years (BC + AD - 1); 44 BC to AD 14 is 57 years: ISO 8601-1:2019, year 0000 is 1 BC.
    def years(text: str) -> int:
        start = read_when(text).start
        assert start is not None
        return start.year

    assert years("AD 10") - years("10 BC") == 19
    assert years("AD 14") - years("44 BC") == 57
    assert years("0000") == years("1 BC") == 0
    assert years("-0001") == years("2 BC")
    assert years("AD 1") - years("1 BC") == 1


def test_the_century_is_counted_from_its_first_year() -> None:
    assert (read_when("19th century").start, read_when("19th century").end) == (Day(1801), Day(1900))
    assert (read_when("1st century BC").start, read_when("1st century BC").end) == (Day(-99), Day(0))


def test_years_on_the_axis_are_those_of_the_calendar() -> None:
    assert as_years(read_when("1834")) == (1834.0, 1835.0)
    assert as_years(read_when("44 BC")) == (-43.0, -42.0)
    assert as_years(read_when("1862-1865")) == (1862.0, 1866.0)
    assert as_years(read_when("1 January 1834")) == (1834.0, pytest.approx(1834 + 1 / 365))
    assert as_years(read_when("31 December 1836"))[1] == 1837.0
    assert as_years(read_when("July 1834"))[0] == pytest.approx(1834 + 181 / 365)
    assert as_years(read_when("since 1985")) == (1985.0, math.inf)
    assert as_years(read_when("/1985")) == (-math.inf, 1986.0)
    assert as_years(read_when("before 1850")) == (-math.inf, 1850.0)
    assert as_years(read_when("after 1850")) == (1851.0, math.inf)


def test_times_beyond_the_named_centuries_are_said_in_years() -> None:
    long_ago = When(Said(""), Day(-9900), Day(0), spread=True)
    assert plain(long_ago) == "between 9901 BC and 1 BC"
    assert plain(read_when("Y-170000S3")) == "between 171,000 BC and 170,001 BC"


@given(
    st.sampled_from(["spring", "summer", "autumn", "winter", "early", "mid", "late"]),
    st.integers(-5000, 5000).filter(lambda y: y not in range(100)),
)
@settings(max_examples=100, deadline=None)
def test_seasons_and_parts_of_years_keep_their_names(part: str, year: int) -> None:
    text = f"{part} {year}" if year > 0 else f"{part} {-year} BC"
    assert plain(read_when(text)) == text.replace(f" {year}", f" AD {year}" if 0 < year < 1000 else f" {year}")


@given(st.sampled_from(["", "early ", "mid ", "late "]), st.integers(1, 500), st.sampled_from(["", " BC"]))
@settings(max_examples=150, deadline=None)
def test_decades_and_centuries_keep_their_names(part: str, number: int, era: str) -> None:
    # A hundred years such as the 1800s has the same name for its parts; 10s to 90s need an era to be told apart.
    decade = f"{part}{number * 10}s{era or (' AD' if number < 10 else '')}"
    century = f"{part}{ordinal(number % 99 + 1)} century{era}"
    for text in (decade, century):
        found = read_when(text)
        assert fields(read_when(plain(found))) == fields(found)
        assert number % 10 == 0 or plain(found) == text


@given(whens())
@settings(max_examples=100, deadline=None)
def test_the_axis_never_runs_backwards(when: When) -> None:
    if when.start and when.end and first_moment(when.start) > last_moment(when.end):
        return
    low, high = as_years(when)
    assert low < high


@given(st.text(max_size=100))
@settings(max_examples=300, deadline=None)
def test_any_text_is_a_date_or_is_told_why(text: str) -> None:
    try:
        when = read_when(text)
    except Misread as misread:
        assert misread.instead
    else:
        assert fields(read_when(plain(when))) == fields(when)


@given(st.text("0123456789XYS?~%-/.[], –cadebst' MayJunspring", max_size=24))
@settings(max_examples=500, deadline=None)
def test_texts_that_are_nearly_dates_never_break_the_reader(text: str) -> None:
    try:
        when = read_when(text)
    except Misread:
        return
    assert fields(read_when(plain(when))) == fields(when)


def test_a_date_keeps_the_words_and_the_place_it_was_written_at() -> None:
    said = Said("c. 1851", Place("study.yaml", 3, 9))
    assert read_when(said).said is said


def test_a_day_of_a_term_must_be_one_full_day() -> None:
    assert read_day("2027-02-03") == read_day("3 February 2027") == date(2027, 2, 3)
    for text in ("2027-02", "2027", "2027-02-03/2027-02-05", "44 BC", "before 3 May 2027"):
        with pytest.raises(Misread):
            read_day(text)


@pytest.mark.parametrize("text", ["1901-02", "1920-24", "2001-21"])
def test_an_iso_month_that_may_be_two_years_is_doubted(text: str) -> None:
    fault = doubt(Said(text, Place("study.yaml", 3, 9)))
    assert fault is not None
    assert fault.severity is Severity.WARNING
    assert fault.place.line == 3


@pytest.mark.parametrize("text", ["1862-05", "1834-12", "1834-35", "1834-05-03", "1862-1865", "hello"])
def test_other_dates_are_not_doubted(text: str) -> None:
    assert doubt(text) is None


def test_ordinals_follow_english_use() -> None:
    assert [ordinal(n) for n in (1, 2, 3, 4, 11, 12, 13, 21, 111)] == [
        "1st", "2nd", "3rd", "4th", "11th", "12th", "13th", "21st", "111th"
    ]  # fmt: skip
