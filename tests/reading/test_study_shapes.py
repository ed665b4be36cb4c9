"""Given values, the one thing to change, amounts and scales."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from packgen.reading.fields import Notes
from packgen.reading.models import Given
from packgen.reading.study_shapes import Change, GivenValues, Life, amount, is_date, scale
from packgen.reading.yaml_tree import Mapping, Node, parse_tree
from packgen.units import Quantity


def node(text: str) -> Node:
    tree = parse_tree(f"x: {text}\n", "f")
    assert isinstance(tree.root, Mapping)
    return tree.root.pairs[0][1]


def read(shape: Any, text: str) -> tuple[Any, list[str]]:
    notes = Notes(Path("."))
    return shape.read(node(text), notes), [fault.message for fault in notes.faults]


def values(text: str) -> tuple[Any, ...]:
    given, faults = read(GivenValues(), text)
    assert faults == []
    return tuple(given[0].values)


@pytest.mark.parametrize(
    ("text", "value", "dimension"),
    [
        ("{radius: 60 mm}", 60, "length"), ("{sides: 8}", 8, "count"), ("{load: 2 lb}", 907.18474, "mass"),
        ("{run time: 1:30}", 90, "time"), ("{slope: 30 deg}", 30, "angle"), ("{share: 25 %}", 25, "percent"),
    ],
)  # fmt: skip
def test_given_quantities_have_units(text: str, value: float, dimension: str) -> None:
    (given,) = values(text)
    assert (given.value, given.dimension) == (pytest.approx(value), dimension)


@pytest.mark.parametrize("word", ["hemisphere", "1:50", "6-bladed", "none of these", "yes"])
def test_given_words_stay_words(word: str) -> None:
    assert values(f"{{shape: {word}}}") == (word,)


def test_a_list_of_given_values_is_kept_in_order() -> None:
    given = values("{side: [120 mm, 180 mm, 24 cm]}")
    assert [v.value for v in given if isinstance(v, Quantity)] == [120, 180, 240]


def test_a_wrong_unit_is_told_and_the_other_values_are_read() -> None:
    given, faults = read(GivenValues(), "{radius: 60 mmm, sides: 8, empty: }")
    assert [g.name for g in given] == ["sides"]
    assert len(faults) == 2


@pytest.mark.parametrize(
    ("text", "name", "count"),
    [
        ("number of blades", "number of blades", 0), ("{blades: [4, 6, 8]}", "blades", 3), ("{blades: 4}", "blades", 1),
        ("{blades: }", "blades", 0), ("{what: blades, values: [4, 6]}", "blades", 2), ("{what: blades}", "blades", 0),
    ],
)  # fmt: skip
def test_the_thing_to_change_is_a_name_with_or_without_values(text: str, name: str, count: int) -> None:
    change, faults = read(Change(), text)
    assert faults == []
    assert isinstance(change, Given)
    assert (change.name, len(change.values)) == (name, count)


def test_two_things_to_change_are_one_fault() -> None:
    change, faults = read(Change(), "{blades: [4, 6], radius: [5 cm]}")
    assert change is None
    assert len(faults) == 1
    assert len(read(Change(), "[blades, radius]")[1]) == 1


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("2", 2, None),
        ("1.2 m", 1.2, "m"),
        ("2 sheets", 2, "sheets"),
        ("½ cup", 0.5, "cup"),
        ("1 1/2 cups", 1.5, "cups"),
    ],
)
def test_amounts_are_numbers_with_any_unit(text: str, value: float, unit: str | None) -> None:
    assert read(amount(), text) == ((value, unit), [])


@pytest.mark.parametrize("text", ["some", "0", "-1", "a little"])
def test_amounts_of_nothing_are_refused(text: str) -> None:
    assert read(amount(), text)[0] is None


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("auto", "auto"),
        ("Fit", "fit"),
        ("true", "true"),
        ("full size", "true"),
        ("1:100", "1:100"),
        ("1 : 50", "1:50"),
        ("1/20", "1:20"),
    ],
)
def test_scales_are_words_or_ratios(text: str, value: str) -> None:
    assert read(scale(), text) == (value, [])


@pytest.mark.parametrize("text", ["big", "1:0", "100", "0:1", "1:100:2"])
def test_other_scales_are_refused(text: str) -> None:
    assert read(scale(), text)[0] is None


def test_a_life_is_in_the_order_of_the_levels() -> None:
    assert [level for level, _ in read(Life(), "{upper: b, first: a}")[0]] == ["first", "upper"]
    assert len(read(Life(), "{oldest: b}")[1]) == 1


def test_dates_are_told_from_words() -> None:
    assert is_date("c. 1851")
    assert not is_date("ebb")
