"""Numbers and measures as people write them."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.reading.measures import (
    read_degrees,
    read_length,
    read_number,
    read_quantity,
    read_size,
    read_type_size,
    starts_with_number,
    wants,
)
from packgen.reading.messages import Misread
from packgen.units import BASE, UNITS, quantity


# Exact by definition: NIST SP 811 (2008), appendix B.8 (inch, foot, yard, pound, ounce, US fluid ounce).
@pytest.mark.parametrize(
    ("text", "value", "dimension"),
    [
        ("80 mm", 80, "length"), ("8 cm", 80, "length"), ("8cm", 80, "length"), ("1.5 m", 1500, "length"),
        ("1,5 m", 1500, "length"), ("1 200 mm", 1200, "length"), ("1,200 mm", 1200, "length"),
        ("0,500 m", 500, "length"), ("1.234,5 mm", 1234.5, "length"), ("1,234.5 mm", 1234.5, "length"),
        ("3 1/4 in", 82.55, "length"), ("3¼ in", 82.55, "length"), ('3-1/4"', 82.55, "length"),
        ("½ in", 12.7, "length"), ("5' 3\"", 1600.2, "length"), ("5 ft 3 in", 1600.2, "length"),
        ("5’ 3”", 1600.2, "length"), ("1 yd", 914.4, "length"), ("1 mile", 1609344, "length"),
        ("1 m 20 cm", 1200, "length"), ("−5 mm", -5, "length"), ("010 mm", 10, "length"), ("8 in.", 203.2, "length"),
        ("about 8 cm", 80, "length"), ("10 MM", 10, "length"), ("80\u00a0mm", 80, "length"),
        ("250 g", 250, "mass"), ("2 lb 3 oz", 2 * 453.59237 + 3 * 28.349523125, "mass"), ("0.5 kg", 500, "mass"),
        ("1 min 30 s", 90, "time"), ("1 h 5 min", 3900, "time"), ("20 °C", 20, "temperature"),
        ("68 °F", 20, "temperature"), ("1 fl oz", 29.5735295625, "volume"), ("60 rpm", 1, "frequency"),
        ("50 %", 50, "percent"), ("12", 12, "count"), ("5 mph", 2.2352, "speed"), ("30°", 30, "angle"),
    ],
)  # fmt: skip
def test_quantities_come_out_in_their_base_unit(text: str, value: float, dimension: str) -> None:
    read = read_quantity(text)
    assert read.dimension == dimension
    assert read.value == pytest.approx(value, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "seconds"), [("1:30", 90), ("0:05", 5), ("1:02:03", 3723), ("1:30.5", 90.5), ("90 s", 90), ("1.5 min", 90)]
)
def test_a_clock_reading_is_a_time_where_a_time_is_wanted(text: str, seconds: float) -> None:
    assert read_quantity(text, "time").value == seconds


@pytest.mark.parametrize(
    ("text", "dimension", "words"),
    [
        ("12", "length", ["no unit", "80 mm", "cm", "in"]), ("90", "time", ["no unit", "30 s"]),
        ("250 g", "length", ["a mass", "a length"]), ("12 mm", "count", ["a length", "without a unit"]),
        ("12 mmm", "length", ["unit `mmm`", "`mm` meant"]), ("12 metters", "length", ["`meters` meant"]),
        ("5 sek", "time", ["`sec` meant"]), ("wide", "length", ["not a length"]), ("", "length", ["not a length"]),
        ("10-12 mm", "length", ["not a length"]), ("20 cm 1 m", "length", ["not a length"]),
        ("1/0 in", "length", ["not a number"]), ("1e999 mm", "length", ["beyond any size"]),
        ("nan mm", "length", ["not a length"]), ("inf", "length", ["not a length"]), ("1:75", "time", ["not a time"]),
        ("5 °C 3 °C", "temperature", ["not a temperature"]), ("5 ft 3 g", "length", ["not a length"]),
        ("٣ mm", "length", ["not a length"]), ("9" * 100, "length", ["not a number"]),
    ],
)  # fmt: skip
def test_what_is_no_such_measure_is_told_why(text: str, dimension: str, words: list[str]) -> None:
    with pytest.raises(Misread) as caught:
        read_quantity(text, dimension)
    told = f"{caught.value} {caught.value.instead}"
    assert all(word in told for word in words), told


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("010", 10), ("1_000", 1000), ("1 000", 1000), ("1,000,000", 1000000), ("½", 0.5), ("3 1/2", 3.5),
        ("3½", 3.5), ("1.5", 1.5), ("1,5", 1.5), ("-3", -3), ("+3", 3), ("1e3", 1000), (".5", 0.5), ("007", 7),
    ],
)  # fmt: skip
def test_numbers_are_read_as_people_mean_them(text: str, number: float) -> None:
    assert read_number(text) == number


@pytest.mark.parametrize(
    "text", ["", "x", "1 2", "1..2", "--1", "0x10", "1/0", "twelve", "1e400", "nan", "infinity", "1-2"]
)
def test_what_is_no_number_is_refused(text: str) -> None:
    with pytest.raises(Misread):
        read_number(text)


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("420 x 310 mm", (420, 310)), ("42 × 31 cm", (420, 310)), ("16 x 12 in", (406.4, 304.8)),
        ("420 mm x 310 mm", (420, 310)), ('16" x 12"', (406.4, 304.8)), ("16 in by 12 in", (406.4, 304.8)),
        ("8½ × 11 in", (215.9, 279.4)), ("8 1/2 x 11 in", (215.9, 279.4)), ("1.2 m x 80 cm", (1200, 800)),
        ("42x31cm", (420, 310)), ("42cmx31cm", (420, 310)), ("420X310 mm", (420, 310)), ("420 * 310 mm", (420, 310)),
        ("42 cm high x 31 cm wide", (310, 420)), ("H 42 cm × W 31 cm", (310, 420)), ("c. 42 x 31 cm", (420, 310)),
        ("42,5 x 31,2 cm", (425, 312)), ("2 ft 3 in x 1 ft 6 in", (685.8, 457.2)), ("50 cm across", (500, 500)),
        ("diameter 50 cm", (500, 500)), ("1 200 x 900 mm", (1200, 900)), ("16 x 12 inches", (406.4, 304.8)),
    ],
)  # fmt: skip
def test_sizes_are_width_and_height(text: str, size: tuple[float, float]) -> None:
    assert read_size(text) == pytest.approx(size)


@pytest.mark.parametrize(
    "text", ["420 x 310", "420 mm", "big", "40 x 30 x 20 cm", "0 x 5 mm", "10 x -5 cm", "x", "5 x mm"]
)
def test_what_is_no_size_is_refused(text: str) -> None:
    with pytest.raises(Misread):
        read_size(text)


@pytest.mark.parametrize(
    ("text", "letters", "degrees"),
    [
        ("50.4", "NS", 50.4), ("-4.9", "EW", -4.9), ("50.4 N", "NS", 50.4), ("50.4 S", "NS", -50.4),
        ("50° 24' N", "NS", 50.4), ("50°24'36\"S", "NS", -50.41), ("4.9W", "EW", -4.9), ("N 50.4", "NS", 50.4),
        ("50,4", "NS", 50.4), ("-0° 30'", "NS", -0.5), ("0", "NS", 0),
    ],
)  # fmt: skip
def test_places_on_the_earth_are_degrees(text: str, letters: str, degrees: float) -> None:
    assert read_degrees(text, letters) == pytest.approx(degrees)


@pytest.mark.parametrize(
    ("text", "letters"), [("91", "NS"), ("-181", "EW"), ("north", "NS"), ("50 E", "NS"), ("50° 75'", "NS")]
)
def test_places_off_the_earth_are_refused(text: str, letters: str) -> None:
    with pytest.raises(Misread):
        read_degrees(text, letters)


def test_type_sizes_may_be_points() -> None:
    # 1 pt is 1/72 in: ISO 32000-1, 8.3.2.3.
    assert read_type_size("72 pt") == pytest.approx(25.4)
    assert read_type_size("13pt.") == pytest.approx(13 * 25.4 / 72)
    assert read_type_size("4.2 mm") == 4.2
    with pytest.raises(Misread):
        read_type_size("13")


@given(
    st.sampled_from(sorted({u.symbol for u in UNITS.values() if u.symbol})),
    st.floats(0.001, 9999).map(lambda x: float(f"{x:.4g}")),
)
@settings(max_examples=200, deadline=None)
def test_what_is_printed_reads_as_the_same_quantity(symbol: str, number: float) -> None:
    written = quantity(number, symbol)
    read = read_quantity(str(written), written.dimension)
    assert read.value == pytest.approx(written.value, rel=1e-3, abs=1e-9)
    assert (read.dimension, read.unit) == (written.dimension, written.unit)


@given(st.sampled_from(sorted(UNITS)), st.integers(1, 999))
@settings(max_examples=150, deadline=None)
def test_every_name_of_a_unit_is_read(name: str, number: int) -> None:
    read = read_quantity(f"{number} {name}")
    assert read.dimension == UNITS[name].dimension
    assert read.value == pytest.approx(quantity(number, name).value)


@given(st.text(max_size=90), st.sampled_from([None, *BASE]))
@settings(max_examples=300, deadline=None)
def test_any_text_is_a_quantity_or_is_told_why(text: str, dimension: str | None) -> None:
    for read in (lambda: read_quantity(text, dimension).value, lambda: read_length(text), lambda: read_number(text)):
        try:
            assert math.isfinite(read())
        except Misread as misread:
            assert misread.instead


@given(st.text("0123456789 .,/-½x×mcingflbsoz'\"°NSEW:%e_", max_size=20))
@settings(max_examples=500, deadline=None)
def test_texts_that_are_nearly_measures_never_break_the_reader(text: str) -> None:
    for read in (read_quantity, read_size, read_type_size, lambda t: read_degrees(t, "NS")):
        try:
            read(text)
        except Misread as misread:
            assert misread.instead


def test_every_dimension_has_words_for_messages() -> None:
    for dimension in BASE:
        words, example = wants(dimension)
        assert words.startswith("a")
        assert read_quantity(example.split(",")[0].split(" or ")[0], dimension).dimension == dimension


def test_a_word_is_told_from_a_measure() -> None:
    assert starts_with_number("60 mm")
    assert starts_with_number("½ in")
    assert not starts_with_number("hemisphere")
