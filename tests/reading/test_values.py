"""Single values: what is understood, and what is refused with a way out."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from packgen.faults import Fault, Place, Said
from packgen.reading import messages
from packgen.reading.fields import Notes, One
from packgen.reading.values import (
    any_quantity,
    choice,
    fraction,
    identifier,
    is_isbn,
    known_name,
    language,
    link,
    measure,
    name,
    number,
    prose,
    type_size,
    whole,
    yes_no,
)
from packgen.reading.yaml_tree import Leaf

AT = Place("f", 2, 3)


def read(shape: One[Any], text: str) -> tuple[Any, list[Fault]]:
    notes = Notes(Path("."))
    return shape.read(Leaf(Said(text, AT)), notes), notes.faults


@pytest.mark.parametrize("word", ["yes", "Yes", "TRUE", "on", "y", "ja", "oui", "sí", "да", "1", "“yes”"])
def test_yes_is_understood_in_the_usual_words(word: str) -> None:
    assert read(yes_no(), word) == (True, [])


@pytest.mark.parametrize("word", ["no", "No", "FALSE", "off", "n", "nein", "non", "нет", "0"])
def test_no_is_understood_in_the_usual_words(word: str) -> None:
    assert read(yes_no(), word) == (False, [])


def test_what_is_neither_is_told() -> None:
    value, (fault,) = read(yes_no(), "maybe")
    assert value is None
    assert fault.place == AT


def test_a_choice_is_understood_in_any_spelling_and_hints_at_the_nearest() -> None:
    sides = choice(("one-sided", "two-sided-long-edge"), {"simplex": "one-sided"}, {"double": "two-sided-long-edge"})
    for text in ("one-sided", "One Sided", "one_sided", "simplex"):
        assert read(sides, text) == ("one-sided", [])
    assert "`one-sided` meant" in read(sides, "one-sidde")[1][0].instead
    assert "`two-sided-long-edge` meant" in read(sides, "double")[1][0].instead
    assert "one-sided, two-sided-long-edge" in read(sides, "?")[1][0].instead


@pytest.mark.parametrize(("text", "value"), [("3", 3), ("010", 10), ("3.0", 3), ("1 000", 1000)])
def test_whole_numbers_are_read(text: str, value: int) -> None:
    assert read(whole(0, 2000), text) == (value, [])


@pytest.mark.parametrize("text", ["3.5", "-1", "2001", "three", "1e400"])
def test_other_numbers_are_refused(text: str) -> None:
    assert read(whole(0, 2000), text)[0] is None


def test_limits_name_both_ends() -> None:
    assert "0 mm to 25 mm" in read(measure("length", 0, 25), "3 cm")[1][0].message
    assert read(number(-5, 20), "30")[1][0].instead == "Write a value between -5 and 20."


@pytest.mark.parametrize(("text", "value"), [("0.25", 0.25), ("25 %", 0.25), ("25%", 0.25), ("1/4", 0.25), ("1", 1)])
def test_shares_are_fractions_or_percentages(text: str, value: float) -> None:
    assert read(fraction(), text) == (value, [])


def test_names_stand_on_one_line_and_prose_keeps_its_lines() -> None:
    assert read(name(), "The\nHarbour  at Dusk")[0] == "The Harbour at Dusk"
    assert read(prose(), "One.\n\nTwo.")[0] == "One.\n\nTwo."
    assert read(identifier(), "“harbour-at-dusk”")[0] == "harbour-at-dusk"


def test_long_texts_are_counted() -> None:
    assert "has 201 letters" in read(name(), "x" * 201)[1][0].message
    assert read(name(), "x" * 200)[1] == []


def test_curly_quotes_in_speech_are_left_alone() -> None:
    assert read(name(), "“Look” and “see”")[1] == []
    assert read(prose(), "“I must have light.”")[1] == []


@pytest.mark.parametrize(
    "text", ["https://example.org", "http://example.org/a?b=c#d", "HTTPS://EXAMPLE.ORG/x", "https://example.org:8080/x"]
)
def test_web_addresses_are_links(text: str) -> None:
    assert read(link(), text) == (text, [])


def test_a_web_address_without_its_scheme_is_shown_whole() -> None:
    assert "https://www.example.org/x" in read(link(), "www.example.org/x")[1][0].instead


def test_a_link_with_a_name_before_the_host_is_refused() -> None:
    assert read(link(), "https://example.org@evil.example")[0] is None


@pytest.mark.parametrize(
    ("text", "good"), [("en", True), ("pt-BR", True), ("zh-Hant-TW", True), ("English", False), ("e", False)]
)
def test_languages_are_tags(text: str, good: bool) -> None:
    assert (read(language(), text)[0] == text) is good


def test_quantities_and_type_sizes_are_read() -> None:
    assert read(any_quantity(), "6")[0].dimension == "count"
    assert read(type_size(2, 15), "72/6 pt")[0] == pytest.approx(12 * 25.4 / 72)
    assert read(type_size(2, 15), "100 pt")[0] is None


def test_known_names_are_given_back_as_they_are_known() -> None:
    known = ("enlarging-grid", "fold-book")
    assert known_name(Said("Enlarging grid", AT), known, messages.UNKNOWN_SHEET) == "enlarging-grid"
    assert known_name(Said("anything", AT), (), messages.UNKNOWN_SHEET) == "anything"
    with pytest.raises(messages.Misread) as caught:
        known_name(Said("fold-bok", AT), known, messages.UNKNOWN_SHEET)
    assert "`fold-book` meant" in caught.value.instead


@pytest.mark.parametrize(
    ("text", "fits"),
    [
        ("978-0-306-40615-7", True),  # the example of the ISBN Users' Manual, in 13 digits
        ("0-306-40615-2", True),  # and in 10
        ("ISBN 9780306406157", True),
        ("978-0-306-40615-8", False),
        ("0-8044-2957-X", True),  # ten standing for X: the usual example of a check digit X (from memory)
        ("0-8044-2957-0", False),
        ("12345", False),
    ],
)
def test_an_isbn_is_known_by_its_check_digit(text: str, fits: bool) -> None:
    assert is_isbn(text) is fits
