"""Encodings, control characters, and files that are no text."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from reading_files import is_case_of

from packgen.reading import messages
from packgen.reading.text_file import MAX_BYTES, clean, decode, read_text

TEXT = "study: Zoë\nnote: 北斎\n"


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-32"])
def test_unicode_files_with_or_without_a_mark_are_read(encoding: str) -> None:
    assert decode(TEXT.encode(encoding), "f") == (TEXT, ())


@pytest.mark.parametrize("encoding", ["utf-16-le", "utf-16-be"])
def test_utf16_without_a_mark_is_told_by_its_zeros(encoding: str) -> None:
    assert decode(TEXT.encode(encoding), "f") == (TEXT, ())


def test_another_encoding_is_a_fault_at_its_first_letter() -> None:
    text, (fault,) = decode("study: x\nnote: Le café bleu\n".encode("cp1252"), "f")
    assert text is None
    assert (fault.place.line, fault.place.column) == (2, 13)
    assert "`café`" in fault.message


def test_line_ends_of_every_system_are_one() -> None:
    assert clean("a\r\nb\rc\nd", "f")[0] == "a\nb\nc\nd"
    assert clean("a\u2028b\x85c", "f")[0] == "a b c"


def test_control_characters_are_told_by_place_and_taken_out() -> None:
    text, faults = clean("ab\nc\x07d\ud800\x00", "f")
    assert text == "ab\nc d  "
    assert [(f.place.line, f.place.column) for f in faults] == [(2, 2), (2, 4), (2, 5)]
    assert "U+0007" in faults[0].message


def test_a_file_full_of_control_characters_gives_a_few_lines_only() -> None:
    assert len(clean("\x01" * 5000, "f")[1]) <= 20


@pytest.mark.parametrize("start", [b"PK\x03\x04", b"%PDF-1.7", b"\x89PNG\r\n", b"{\\rtf1", b"\xd0\xcf\x11\xe0"])
def test_files_of_other_programs_are_told_for_what_they_are(start: bytes) -> None:
    text, (fault,) = decode(start + b"rest", "f")
    assert text is None
    assert is_case_of(fault, messages.NOT_TEXT)


def test_a_huge_file_is_refused_without_being_read_whole(tmp_path: Path) -> None:
    path = tmp_path / "study.yaml"
    with path.open("wb") as file:
        file.truncate(50 * MAX_BYTES)
    _, (fault,) = read_text(path)
    assert is_case_of(fault, messages.TOO_LARGE)


def test_a_name_no_system_allows_is_a_missing_file() -> None:
    _, (fault,) = read_text(Path("a\0b"))
    assert is_case_of(fault, messages.NO_FILE)


@given(st.binary(max_size=200))
@settings(max_examples=200, deadline=None)
def test_any_bytes_are_text_or_are_told_why(data: bytes) -> None:
    text, faults = decode(data, "f")
    assert text is not None or faults
    if text is not None:
        assert "\r" not in text
        text.encode("utf-8")
