"""Names in recipes and families held against what there is."""

from pathlib import Path

import pytest

from packgen.checking import Order, check
from packgen.faults import Place, Said
from packgen.known_names import family_faults, parts, recipe_faults, study_faults
from packgen.reading.models import Child, Family, Goal, Recipe, RecipeSheet, Study, Work

AT = Place("packs/older.yaml", 9, 20)


def said(text: str) -> Said:
    return Said(text, AT)


def faults_of(sheet: str, **options: str) -> list[str]:
    line = RecipeSheet(said(sheet), tuple((said(name), said(value)) for name, value in options.items()), AT)
    found = recipe_faults(Recipe(said("older"), "older", (line,)))
    assert all(fault.place == AT and fault.instead for fault in found)
    return [f"{fault.message} {fault.instead}" for fault in found]


@pytest.mark.parametrize(
    ("sheet", "options", "word"),
    [
        ("biografy", {}, '"biography"'),
        ("words", {"mots": "3"}, '"most"'),
        ("timeline", {"form": "sing"}, "draw, glue, read"),
        ("picture-study", {"most": "many"}, "most: 2"),
        ("picture-study", {"most": "-1"}, "most: 2"),
        ("picture-study", {"most": "1.5"}, "most: 2"),
    ],
)
def test_a_slip_in_a_recipe_is_told_with_what_there_is(sheet: str, options: dict[str, str], word: str) -> None:
    (told,) = faults_of(sheet, **options)
    assert word in told


def test_what_a_sheet_knows_is_no_fault() -> None:
    assert faults_of("picture-study", most="2", only="harbour-at-dusk", plate="no") == []


def test_a_familys_names_are_held_against_sheets_and_their_parts() -> None:
    child = Child(said("Juno"), 11, said("older"), leave_out=(said("teling"),), extra=((said("design-drafts"), 2),))
    goal = Goal(said("g"), said("Makes"), (said("chalenge"),))
    told = [fault.instead for fault in family_faults(Family(said("F"), (child,), goals=(goal,)))]
    assert [word.split('"')[1] for word in told] == ["telling", "design-draft", "challenge"]
    assert {"design-draft", "cut-outs", "cards"} <= set(parts())


def test_a_works_left_out_sheets_are_held_against_what_there_is() -> None:
    works = (Work(said("a"), said("A"), leave_out=(said("look-closer"), said("look-closr"))),)
    study = Study(said("Isaure Quenby"), said("artist"), said("Painted."), Path(), works=works)
    (told,) = study_faults(study)
    assert told.place == AT and '"look-closer"' in told.instead


def test_a_wrong_key_at_the_top_does_not_hide_what_is_wrong_below(tmp_path: Path) -> None:
    (tmp_path / "study.yaml").write_text(
        "study: Isaure Quenby\nkind: potter\ntimeline:\n  - {when: the day after, what: Makes a lamp}\n"
        "works:\n  - {title: The Harbour, image: nowhere.png}\nchallenges:\n"
        "  - {title: A weight, brief: Let it swing., model: pendulim}\n"
        "models:\n  - {title: The lamp house, solid: prizm}\n  - {title: A cube, solid: cube, given: {edge: 3 kg}}\n"
        "  - {title: A cone, solid: cone, given: {diameter: 3 furlongs}}\n"
    )
    (tmp_path / "family.yaml").write_text("paper: A3\nchildren: [{name: Juno, pack: elder}]\n")
    told = check(Order(tmp_path / "study.yaml", tmp_path / "family.yaml"))
    where = [(Path(fault.place.file).name, fault.place.line) for fault in told]
    assert where.count(("study.yaml", 1)) == 1  # in_short is missing
    assert {line for file, line in where if file == "study.yaml"} == {1, 2, 4, 6, 8, 10, 11, 12}
    assert {line for file, line in where if file == "family.yaml"} == {1, 2}
    assert where.count(("study.yaml", 12)) == 1  # a value that was misread is not told as missing too
