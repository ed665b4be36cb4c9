"""Tidied text, keys in one spelling, and names fit for folders."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.reading.names import key_form, slug, snippet, tidy, unquoted


def test_text_is_composed_and_free_of_invisible_marks() -> None:
    assert tidy("Zoe\u0308") == "Zoë"
    assert tidy("har\u00adbour \u200b\ufeff\u202eat  dusk\t ") == "harbour at dusk"
    assert tidy("one\n\n\n\n  two ") == "one\n\ntwo"


def test_joiners_that_scripts_need_stay() -> None:
    assert tidy("می\u200cخواهم") == "می\u200cخواهم"


def test_keys_are_the_same_in_any_spelling() -> None:
    forms = {
        key_form(key) for key in ("duplex shift", "duplex-shift", "duplex_shift", "Duplex  Shift", "“duplex shift”")
    }
    assert forms == {"duplex shift"}


@pytest.mark.parametrize(
    ("name", "folder"),
    [
        ("Juno", "juno"), ("Isaure Quenby", "isaure-quenby"), ("Zoë", "zoe"), ("D'Arcy", "darcy"), ("Жанна", "жанна"),
        ("Ελένη", "ελενη"), ("葛飾 北斎", "葛飾-北斎"), ("がく", "がく"), ("Nguyễn Văn", "nguyen-van"),
        ("../../x", "x"),
        ("CON", "con-1"), ("Parent", "parent-1"), ("  ", "x"), ("???", "x"), ("a/b\\c:d", "a-b-c-d"), ("Maß", "mass"),
    ],
)  # fmt: skip
def test_names_of_any_script_make_folders(name: str, folder: str) -> None:
    made = slug(name)
    if name == "Ελένη":  # whether Greek keeps its accents is free; its letters are not
        made = "".join(c for c in unicodedata.normalize("NFD", made) if not unicodedata.combining(c))
    assert made == folder


@given(st.text(max_size=200))
@settings(max_examples=300, deadline=None)
def test_a_folder_is_always_one_safe_name(text: str) -> None:
    made = slug(text)
    assert 0 < len(made) <= 62
    assert not set(made) & set('/\\:*?"<>|. \n\t\0')
    assert not made.startswith("-")
    assert slug(made) in (made, f"{made}-1")


def test_quotes_of_any_kind_come_off_in_pairs_only() -> None:
    assert unquoted("“c. 1851”") == "c. 1851"
    assert unquoted('"x"') == unquoted("«x»") == "x"
    assert unquoted("'tis") == "'tis"
    assert unquoted('""') == '""'


def test_snippets_are_short_and_on_one_line() -> None:
    assert snippet("one\ntwo") == "one two"
    assert len(snippet("x" * 500)) == 60
