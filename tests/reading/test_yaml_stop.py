"""Indents and text columns of a line."""

from __future__ import annotations

from packgen.reading.yaml_stop import Stop, indent_of, text_column


def test_an_indent_counts_spaces_and_a_text_column_dashes_too() -> None:
    assert (indent_of("  - a: b"), text_column("  - a: b")) == (2, 4)
    assert (indent_of("a"), text_column("a")) == (0, 0)


def test_a_stop_shows_the_line_around_it() -> None:
    stop = Stop(["a: b", "c: d"], "x", 1, 3, 0, 0)
    assert (stop.text, stop.before, stop.letter) == ("c: d", "c: ", "d")
