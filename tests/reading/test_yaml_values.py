"""Values in quotes, and slips inside brackets."""

from __future__ import annotations

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st
from reading_files import is_case_of

from packgen.reading import messages
from packgen.reading.yaml_tree import parse_tree
from packgen.reading.yaml_values import quoted


def test_quotes_are_those_that_change_least() -> None:
    assert quoted("it's") == '"it\'s"'
    assert quoted('a "b"') == "'a \"b\"'"
    assert quoted('it\'s "b"') == "'it''s \"b\"'"


@given(st.text(st.characters(codec="utf-8", exclude_categories=["C", "Z"]), min_size=1, max_size=30))
@settings(max_examples=200, deadline=None)
def test_any_text_in_quotes_reads_as_itself(text: str) -> None:
    assert yaml.load(f"a: {quoted(text)}\n", Loader=yaml.BaseLoader) == {"a": text}


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("a: {b: x: y, c: d}\n", messages.COLON_IN_VALUE),
        ("a: [b, 'c' d]\n", messages.QUOTE_INSIDE),
        ("a: {b: @c}\n", messages.BAD_START),
        ("a: [b, c\nd: e\n", messages.FLOW_OPEN),
        ("a: {b: c\n", messages.FLOW_OPEN),
        ("a: {b: 'c}\n", messages.QUOTE_OPEN),
        ("term:{a: b, c: d}\n", messages.COLON_NO_SPACE),
    ],
)
def test_slips_inside_brackets_are_told_for_what_they_are(text: str, message: messages.Message) -> None:
    (fault,) = parse_tree(text, "f").faults
    assert is_case_of(fault, message), str(fault)
