"""Slips of whole lines are told once, where they are, and the rest of the file is read as it was meant."""

from __future__ import annotations

import pytest
from reading_files import is_case_of

from packgen.reading import messages
from packgen.reading.yaml_tree import Leaf, Listing, Mapping, Node, parse_tree

GOOD = """\
place:
    name: Saltmere
    lat: 50
    lon: 4
works:
  - title: One
    medium: oil
    look:
      - Why?
      - Where?
    held: Saltmere
  - title: Two
    medium: ink
facts:
  - bees
  - wind
note: end
"""


def plain(node: Node | None) -> object:
    if isinstance(node, Listing):
        return [plain(item) for item in node.items]
    if isinstance(node, Mapping):
        return {str(key): plain(value) for key, value in node.pairs}
    return str(node.text) if isinstance(node, Leaf) else None


@pytest.mark.parametrize(
    ("good", "broken", "message"),
    [
        ("    lat: 50", "  lat: 50", messages.INDENT),
        ("    lat: 50", "   lat: 50", messages.INDENT),
        ("    lat: 50", "      lat: 50", messages.INDENT_VALUE),
        ("    medium: oil", "  medium: oil", messages.DASH_MISSING),
        ("    medium: oil", "   medium: oil", messages.DASH_MISSING),
        ("    medium: oil", "medium: oil", messages.INDENT),
        ("    medium: oil", "     medium: oil", messages.INDENT_VALUE),
        ("    look:", "  look:", messages.DASH_MISSING),
        ("    held: S", "  held: S", messages.DASH_MISSING),
        ("    held: S", "   held: S", messages.DASH_MISSING),
        ("works:", " works:", messages.INDENT),
        ("facts:", " facts:", messages.INDENT),
        ("  - wind", " - wind", messages.INDENT),
        ("  - wind", "    wind", None),
        ("note: end", " note: end", messages.INDENT),
        ("note: end", "note:end", messages.COLON_NO_SPACE),
        ("facts:", "facts", messages.NO_COLON),
    ],
)
def test_a_line_that_starts_in_the_wrong_place_is_one_fault(
    good: str, broken: str, message: messages.Message | None
) -> None:
    assert GOOD.count(good) == 1
    tree = parse_tree(GOOD.replace(good, broken), "f")
    if message is None:  # YAML takes it for more of the line above; nothing can be told
        return
    assert [is_case_of(fault, message) for fault in tree.faults] == [True], [str(fault) for fault in tree.faults]
    assert tree.faults[0].place.line == GOOD[: GOOD.index(good)].count("\n") + 1
    if good != "    medium: oil" or broken != "medium: oil":
        assert plain(tree.root) == plain(parse_tree(GOOD, "f").root)


def test_a_first_line_further_right_than_the_rest_is_one_fault() -> None:
    tree = parse_tree("# a note\n  study: x\nkind: y\n", "f")
    (fault,) = tree.faults
    assert is_case_of(fault, messages.INDENT)
    assert fault.place.line == 2
    assert plain(tree.root) == {"study": "x", "kind": "y"}


def test_a_list_whose_key_is_missing_is_one_fault() -> None:
    tree = parse_tree("note: x\n  - a: 1\n    b: 2\n  - c: 3\nborn: y\n", "f")
    assert len(tree.faults) == 1
    assert plain(tree.root)["born"] == "y"  # type: ignore[index]


def test_keys_whose_own_key_is_missing_are_one_fault() -> None:
    tree = parse_tree("portrait: x\n  title: a\n  chapters: b\nborn: y\n", "f")
    (fault,) = tree.faults
    assert is_case_of(fault, messages.INDENT_VALUE)
    assert tree.gaps


def test_an_item_that_lost_its_dash_is_one_fault() -> None:
    tree = parse_tree("works:\n  - title: x\n  The Wave\n  - title: y\n", "f")
    (fault,) = tree.faults
    assert is_case_of(fault, messages.DASH_MISSING_ITEM)
    assert '- "The Wave"' in fault.instead


def test_tabs_on_many_lines_are_one_fault() -> None:
    tree = parse_tree("facts:\n\t- one\n\t- two\nworks:\n\t- three\n", "f")
    assert len(tree.faults) == 1
    assert "2 more lines" in tree.faults[0].message


def test_lines_of_an_item_indented_too_little_are_one_fault() -> None:
    tree = parse_tree("works:\n  - title: x\n  held: y\n  medium: z\n  - title: w\n", "f")
    assert [is_case_of(f, messages.DASH_MISSING) for f in tree.faults] == [True]
