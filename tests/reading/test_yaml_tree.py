"""The tree of a YAML text: everything is text with its place, and hostile files stop at limits."""

from __future__ import annotations

import unicodedata
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from reading_files import is_case_of

from packgen.reading import messages
from packgen.reading.yaml_tree import MAX_DEPTH, Leaf, Listing, Mapping, Node, parse_tree, read_tree


def root(text: str) -> Mapping:
    tree = parse_tree(text, "f")
    assert isinstance(tree.root, Mapping), tree.faults
    assert tree.faults == (), [str(fault) for fault in tree.faults]
    return tree.root


def plain(node: Node | None) -> object:
    """The tree as lists and dicts."""
    if isinstance(node, Listing):
        return [plain(item) for item in node.items]
    if isinstance(node, Mapping):
        return {str(key): plain(value) for key, value in node.pairs}
    return str(node.text) if node else None


@pytest.mark.parametrize(
    "value", ["010", "no", "Yes", "12:30", "1:30:00", "1862-1865", "1834-05-03", "1_000", "0x1F", "1e3", "50%"]
)
def test_values_stay_as_written(value: str) -> None:
    assert plain(root(f"a: {value}\n")) == {"a": value}


def test_places_count_lines_and_columns_from_one() -> None:
    tree = root("a: one\nb:\n  - two\n  - {c: three}\n")
    two = tree.find("b")
    assert isinstance(two, Listing)
    assert (two.items[0].at.line, two.items[0].at.column) == (3, 5)
    three = two.items[1]
    assert isinstance(three, Mapping)
    assert (three.pairs[0][0].at.column, three.pairs[0][1].at.column) == (6, 9)
    assert (tree.pairs[0][0].at.line, tree.pairs[0][1].at.column) == (1, 4)


def test_an_empty_value_stands_at_its_key() -> None:
    value = root("a:\nb: c\n").find("a")
    assert isinstance(value, Leaf)
    assert value.is_nothing
    assert (value.at.line, value.at.column) == (1, 1)


def test_quoted_nothing_is_something() -> None:
    assert not any(isinstance(v, Leaf) and v.is_nothing for _, v in root("a: 'null'\nb: ''\nc: '~'\n").pairs)


def test_repeats_and_merges_are_resolved() -> None:
    text = "base: &base {a: 1, b: 2}\nuse: {<<: *base, b: 3}\nmany: {<<: [*base, {c: 4}]}\nsame: *base\n"
    assert plain(root(text)) == {
        "base": {"a": "1", "b": "2"},
        "use": {"b": "3", "a": "1"},
        "many": {"a": "1", "b": "2", "c": "4"},
        "same": {"a": "1", "b": "2"},
    }


def test_keys_in_two_spellings_are_one_key_given_twice() -> None:
    tree = parse_tree("duplex shift: 1\nb: 2\nduplex-shift: 3\n", "f")
    assert is_case_of(tree.faults[0], messages.TWICE)
    assert tree.faults[0].place.line == 3
    assert "line 1" in tree.faults[0].message


def test_wide_spaces_from_web_pages_indent_as_spaces_do() -> None:
    assert plain(root("a:\n\u00a0\u00a0b:\u00a0c\n")) == {"a": {"b": "c"}}


def test_a_no_break_space_inside_text_stays() -> None:
    assert plain(root("a: 80\u00a0mm\n")) == {"a": "80\u00a0mm"}


@pytest.mark.parametrize(
    "text", ["a: b # note\n", "a: 'x #3'\n", "a: b#3\n", "a: http://x.y/#z\n", "a: |\n  no #3\n", "# #1\na: b\n"]
)
def test_true_notes_and_harmless_signs_are_not_warned_of(text: str) -> None:
    root(text)


@pytest.mark.parametrize(("text", "column"), [("a: no #3\n", 7), ("colour: #ff0000\n", 9), ("- x\n", 0)])
def test_a_value_cut_by_a_sign_is_warned_of(text: str, column: int) -> None:
    faults = [f for f in parse_tree(text, "f").faults if is_case_of(f, messages.HASH_CUT)]
    assert [f.place.column for f in faults] == ([column] if column else [])


def test_several_slips_are_told_in_one_go_at_their_places_in_the_file() -> None:
    text = 'a: x: y\nb: @z\nc: [1, 2\nd: "open\ne:\n\t- f\ng: 1\ng: 2\n'
    tree = parse_tree(text, "f")
    wanted = ["COLON_IN_VALUE", "BAD_START", "FLOW_OPEN", "QUOTE_OPEN", "TAB", "TWICE"]
    faults = sorted(tree.faults, key=lambda f: f.place)
    assert [is_case_of(f, getattr(messages, name)) for f, name in zip(faults, wanted, strict=True)] == [True] * 6
    assert [f.place.line for f in faults] == [1, 2, 3, 4, 6, 8]
    assert plain(tree.root) == {"a": "x: y", "b": "@z", "c": ["1", "2"], "d": "open", "e": ["f"], "g": "1"}


def test_places_after_a_mended_slip_are_those_of_the_parents_own_line() -> None:
    tree = parse_tree("a: {when: 1834, what: He said: hello, short: b}\n", "f")
    flow = tree.root.find("a") if isinstance(tree.root, Mapping) else None
    assert isinstance(flow, Mapping)
    assert [(str(k), k.at.column) for k, _ in flow.pairs] == [("when", 5), ("what", 17), ("short", 39)]


BOMB = "a: &a [x,x,x,x,x,x,x,x,x,x]\n" + "".join(
    f"{chr(98 + i)}: &{chr(98 + i)} [{','.join(['*' + chr(97 + i)] * 10)}]\n" for i in range(9)
)
LONG = "a: &a " + "x" * 100_000 + "\nb: [" + "*a, " * 1000 + "]\n"


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (BOMB, messages.TOO_MUCH),
        (LONG, messages.TOO_MUCH),
        ("a: &a [*a]\n", messages.CYCLE),
        ("a: &a {b: *a}\n", messages.CYCLE),
        ("a: " + "[" * 30 + "]" * 30 + "\n", messages.TOO_DEEP),
        ("a: " + "[" * 900 + "]" * 900 + "\n", messages.TOO_DEEP),
        ("a: " + "{a: " * 900 + "1" + "}" * 900 + "\n", messages.TOO_DEEP),
        ("[" * 100_000, messages.TOO_DEEP),
        ("- " * 50_000, messages.TOO_DEEP),
        ("? " * 50_000, messages.TOO_DEEP),
        ("".join(" " * i + "a:\n" for i in range(1200)), messages.TOO_DEEP),
    ],
)
def test_files_that_unfold_without_end_stop_at_a_limit(text: str, message: messages.Message) -> None:
    tree = parse_tree(text, "f")
    assert tree.root is None
    assert any(is_case_of(fault, message) for fault in tree.faults), [str(f) for f in tree.faults]


def test_depth_up_to_the_limit_is_read() -> None:
    deep = MAX_DEPTH - 2
    root("a: " + "[" * deep + "x" + "]" * deep + "\n")


def test_python_tags_are_never_obeyed(tmp_path: Path) -> None:
    target = tmp_path / "made"
    tree = parse_tree(f"a: !!python/object/apply:os.mkdir [{target}]\nb: !!python/name:os.system x\n", "f")
    assert not target.exists()
    assert [is_case_of(f, messages.TAGGED) for f in tree.faults] == [True, True]


def test_standard_tags_are_told_too_since_they_drop_the_first_word() -> None:
    assert is_case_of(parse_tree("a: !!str 5\n", "f").faults[0], messages.TAGGED)


def test_a_missing_file_gives_no_tree(tmp_path: Path) -> None:
    assert read_tree(tmp_path / "none.yaml", "").root is None


TOKENS = st.sampled_from([
    'a', 'b: ', '- ', ': ', '\n', '\n  ', '\n    ', '"', "'", '[', ']', '{', '}', ', ', '#', ' #x', '@', '%',
    '`', '|', '>', '&x ', '*x', '!y ', '? ', '\t', '---\n', '...\n', '<<: ', '“', '”', '12:30', '\\', 'é',
    '\n- ', 'key: value\n', '\x07', '\xa0', '\u2028', '\r\n', '~', 'null',
])  # fmt: skip


@given(st.one_of(st.lists(TOKENS, max_size=30).map("".join), st.text(max_size=120)))
@settings(max_examples=600, deadline=None)
def test_any_text_gives_a_tree_or_a_fault_inside_the_file(text: str) -> None:
    tree = parse_tree(text, "f")
    assert tree.root is not None or tree.faults
    for fault in tree.faults:
        assert fault.instead
        assert fault.place.line <= len(text.splitlines()) + 1


@given(
    st.recursive(
        st.text(st.characters(codec="utf-8", exclude_categories=["C", "Z"]), min_size=1, max_size=12).filter(
            lambda t: t.isprintable()
        ),
        lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.sampled_from("abcdefg"), inner, max_size=4),
        max_leaves=15,
    )
)
@settings(max_examples=150, deadline=None)
def test_what_is_written_in_quotes_is_read_as_it_stands(value: object) -> None:
    def write(value: object) -> str:
        if isinstance(value, dict):
            return "{" + ", ".join(f"{k}: {write(v)}" for k, v in value.items()) + "}"
        if isinstance(value, list):
            return "[" + ", ".join(map(write, value)) + "]"
        return "'" + str(value).replace("'", "''") + "'"

    def normal(value: object) -> object:
        if isinstance(value, dict):
            return {k: normal(v) for k, v in value.items()}
        return [normal(v) for v in value] if isinstance(value, list) else unicodedata.normalize("NFC", str(value))

    assert plain(root(f"top: {write(value)}\n")) == {"top": normal(value)}
