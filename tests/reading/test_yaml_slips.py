"""Slips of the pen that YAML cannot read: what is shown to write instead is right and can be pasted."""

from __future__ import annotations

import pytest
from reading_files import is_case_of

from packgen.reading import messages
from packgen.reading.yaml_tree import Mapping, parse_tree

CURES = {
    "note: He said: hello\n": 'note: "He said: hello"',
    "note: The Wave: a study # mine\n": 'note: "The Wave: a study"',
    'note: He said: "hello"\n': "note: 'He said: \"hello\"'",
    'note: It\'s so: "no"\n': "note: 'It''s so: \"no\"'",
    "facts:\n  - He said: no: never\n": '- "He said: no: never"',
    "timeline:\n  - {when: 1834, what: Born: at home, short: b}\n": '- {when: 1834, what: "Born: at home", short: b}',
    "facts: [one, x: y: z]\n": 'facts: [one, x: "y: z"]',
    "note: “The Wave: a study”\n": 'note: "The Wave: a study"',
    "note: @home\n": 'note: "@home"',
    "note: %x\n": 'note: "%x"',
    "note: `x`\n": 'note: "`x`"',
    "note: *emphasis* here\n": 'note: "*emphasis* here"',
    "note: & more\n": 'note: "& more"',
    "note: - he said\n": 'note: "- he said"',
    "note: ? why\n": 'note: "? why"',
    "note: ] x\n": 'note: "] x"',
    "note: , x\n": 'note: ", x"',
    "note: {% if x %}\n": 'note: "{% if x %}"',
    "note: | x\n": 'note: "| x"',
    "note: [sic] x\n": 'note: "[sic] x"',
    "note: {sic} x\n": 'note: "{sic} x"',
    'note: "C:\\pictures"\n': "note: 'C:\\pictures'",
    'note: "open\nborn: 1834\n': 'note: "open"',
    "note: 'It's late'\n": 'note: "It\'s late"',
    'note: "The Lamp" on the quay\n': "note: '\"The Lamp\" on the quay'",
    "place: {name: 'x}\n": 'place: {name: "x"}',
    "born:1834\nnote: x\n": "born: 1834",
    "note：x\nborn: 1834\n": "note: x",
    "works:\n  - title: x\n  held: y\n": "held: y",
}


@pytest.mark.parametrize("text", CURES)
def test_the_line_shown_is_the_line_to_write(text: str) -> None:
    tree = parse_tree(text, "f")
    assert len(tree.faults) == 1, [str(f) for f in tree.faults]
    assert CURES[text] in tree.faults[0].instead


@pytest.mark.parametrize("text", CURES)
def test_the_line_shown_reads_without_a_fault(text: str) -> None:
    (fault,) = parse_tree(text, "f").faults
    lines = text.split("\n")
    indent = lines[fault.place.line - 1][: len(lines[fault.place.line - 1]) - len(lines[fault.place.line - 1].lstrip())]
    lines[fault.place.line - 1] = ("    " if is_case_of(fault, messages.DASH_MISSING) else indent) + CURES[text]
    assert parse_tree("\n".join(lines), "f").faults == ()


def test_a_quote_left_open_is_told_where_it_opens_not_where_it_ends() -> None:
    tree = parse_tree('a: 1\nnote: "open\nborn: 1834\nlast: "x"\n', "f")
    assert [f.place.line for f in tree.faults] == [2]
    assert isinstance(tree.root, Mapping)
    assert [str(k) for k, _ in tree.root.pairs] == ["a", "note", "born", "last"]


@pytest.mark.parametrize("line", [1, 7, 30])
def test_a_slip_is_told_at_its_line_wherever_it_stands(line: int) -> None:
    lines = [f"k{i}: v" for i in range(40)]
    lines[line - 1] = "note: a: b"
    (fault,) = parse_tree("\n".join(lines), "f").faults
    assert (fault.place.line, fault.place.column) == (line, 8)


def test_a_line_left_out_to_read_on_is_remembered() -> None:
    assert parse_tree("a: 1\nstudy Isaure\nb: 2\n", "f").gaps
    assert not parse_tree("a: x: y\n", "f").gaps


def test_files_with_a_great_many_slips_come_to_an_end() -> None:
    tree = parse_tree("".join(f"k{i}: a: b\n" for i in range(500)), "f")
    assert 1 < len(tree.faults) <= 50
