"""Recipes are read with their options as written, and found by their place."""

from __future__ import annotations

from pathlib import Path

import pytest
from reading_files import is_case_of

from packgen.faults import Said
from packgen.reading import messages
from packgen.reading.models import Recipe
from packgen.reading.recipe import find_recipes, read_recipe

FULL = """\
pack: older
level: older
about: For children of 9 to 12.
type size: 13 pt
writing: 5 mm
grade: 6
trials: 3
events: 12
sheets:
  - biography
  - {sheet: challenge, trials: 4, columns: [first, second], chart: {ticks: 5, axis: time}}
  - sheet: timeline
    events: 8
    blank:
"""


def read(folder: Path, text: str, name: str = "older.yaml") -> Recipe:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    recipe, faults = read_recipe(path)
    assert [str(fault) for fault in faults] == []
    assert recipe is not None
    return recipe


def test_the_whole_recipe_is_read(tmp_path: Path) -> None:
    recipe = read(tmp_path, FULL)
    hash(recipe)
    assert (recipe.pack, recipe.level, recipe.writing, recipe.grade) == ("older", "older", 5.0, 6.0)
    assert (recipe.trials, recipe.events) == (3, 12)
    # 1 pt is 1/72 in (ISO 32000-1, 8.3.2.3), so 13 pt is 4.586 mm.
    assert recipe.type_size == pytest.approx(4.5861, abs=1e-4)
    assert [sheet.sheet for sheet in recipe.sheets] == ["biography", "challenge", "timeline"]


def test_options_are_plain_hashable_data_that_knows_its_place(tmp_path: Path) -> None:
    _, challenge, timeline = read(tmp_path, FULL).sheets
    assert challenge.options == (
        ("trials", "4"),
        ("columns", ("first", "second")),
        ("chart", (("ticks", "5"), ("axis", "time"))),
    )
    assert timeline.options == (("events", "8"), ("blank", ""))
    name, value = challenge.options[0]
    assert isinstance(value, Said)
    assert (name.at.line, value.at.line) == (11, 11)


@pytest.mark.parametrize("level", ["first", "younger", "older", "upper", "parent"])
def test_every_level_and_the_parents_is_known(level: str, tmp_path: Path) -> None:
    text = f"pack: {level}\nlevel: {level}\nsheets: [guide]\n"
    assert read(tmp_path, text, f"{level}.yaml").level == level


def test_unknown_sheets_are_told_if_the_caller_knows_the_sheets(tmp_path: Path) -> None:
    path = tmp_path / "older.yaml"
    path.write_text(FULL.replace("biography", "biografy"))
    recipe, (fault,) = read_recipe(path, ("biography", "challenge", "timeline"))
    assert is_case_of(fault, messages.UNKNOWN_SHEET)
    assert (fault.place.line, fault.place.column) == (10, 5)
    assert "`biography` meant" in fault.instead
    assert recipe is not None and len(recipe.sheets) == 2


@pytest.mark.parametrize("item", ["[biography]", "{trials: 3}", "{sheet: }", "{sheet: [a]}"])
def test_an_item_without_a_sheet_is_told(item: str, tmp_path: Path) -> None:
    path = tmp_path / "older.yaml"
    path.write_text(f"pack: older\nlevel: older\nsheets:\n  - {item}\n")
    _, (fault,) = read_recipe(path)
    assert is_case_of(fault, messages.NO_SHEET)


def test_sizes_out_of_reason_are_told(tmp_path: Path) -> None:
    path = tmp_path / "older.yaml"
    path.write_text(FULL.replace("13 pt", "130 pt").replace("5 mm", "5 m"))
    _, faults = read_recipe(path)
    assert [fault.place.line for fault in faults] == [4, 5]


def test_the_first_folder_wins(tmp_path: Path) -> None:
    for folder, names in (
        ("own", ["older.yaml", "ours.yml", ".hidden.yaml"]),
        ("packs", ["older.yaml", "first.yaml", "x.txt"]),
    ):
        (tmp_path / folder).mkdir()
        for name in names:
            (tmp_path / folder / name).touch()
    found = find_recipes([tmp_path / "own", tmp_path / "missing", tmp_path / "packs"])
    assert list(found) == ["first", "older", "ours"]
    assert found["older"] == tmp_path / "own" / "older.yaml"


def test_no_folder_gives_no_recipes() -> None:
    assert find_recipes([]) == {}
