"""Results of the children: matched with the study's challenges and rows, with places for what is odd."""

from __future__ import annotations

from pathlib import Path

from packgen.faults import Severity
from packgen.planning.results import Outcome, outcome_of, outcomes, result_faults
from packgen.reading.family import read_family
from packgen.reading.models import Family, Study
from packgen.reading.study import read_study

STUDY = """\
study: Isaure Quenby
kind: inventor
in_short: Lamp-maker who measured the tides.
challenges:
  - title: A soft landing
    brief: Make a canopy.
    model: canopy
    given: {load mass: 20 g, drop height: 2 m}
    change: {canopy side: [120 mm, 180 mm, 240 mm]}
    measure: {what: time to fall, unit: s}
    trials: 3
  - {title: A boat, brief: Build a boat.}
"""
FAMILY = "family: Ferrar\nchildren: [{name: Juno, age: 11}, {name: Bram, age: 8}]\nresults:\n"
SOFT = "  - challenge: A soft landing\n    child: Juno\n    trials:\n"


def read(folder: Path, results: str) -> tuple[Study, Family]:
    """The study, and a family with these results."""
    (folder / "study.yaml").write_text(STUDY)
    (folder / "family.yaml").write_text(FAMILY + results)
    study, wrong = read_study(folder / "study.yaml")
    family, more = read_family(folder / "family.yaml", ("younger", "older"))
    assert study and family and not wrong and not more
    return study, family


def only(folder: Path, results: str) -> Outcome:
    (outcome,) = outcomes(*read(folder, results))
    return outcome


def test_rows_are_found_by_their_words_number_or_another_unit(tmp_path: Path) -> None:
    outcome = only(tmp_path, SOFT + "      12 cm: [0.70, 0.72]\n      180: [0.8]\n      240 mm: [0.93, 0.95]\n")
    assert [row.answer for row in outcome.summary.rows] == [0.71, 0.8, 0.94]
    assert outcome.told("younger") == "The longest time to fall was 0.94 s, with 240 mm."


def test_a_missed_trial_does_not_count(tmp_path: Path) -> None:
    row = only(tmp_path, SOFT + "      120 mm: [0.70, -, 0.72]\n").summary.rows[0]
    assert (row.answer, row.how) == (0.71, "mean")


def test_a_row_the_trial_does_not_have_is_a_fault_that_names_the_rows(tmp_path: Path) -> None:
    (fault,) = result_faults(*read(tmp_path, SOFT + "      300 mm: [1.0]\n"))
    assert fault.severity is Severity.FAULT and fault.place.line == 7
    assert fault.instead == "Its rows are: 120 mm, 180 mm, 240 mm."


def test_the_line_of_a_design_of_ones_own_is_judged_by_itself(tmp_path: Path) -> None:
    results = SOFT + "      120 mm: [0.70, 0.72]\n      My own: [0.5, 1.0, 2.25]\n"
    outcome = only(tmp_path, results)
    assert not result_faults(*read(tmp_path, results))
    assert [row.answer for row in outcome.summary.rows] == [0.71, None, None]
    younger, older = outcome.own_at("younger"), outcome.own_at("older")
    assert younger and older and (younger.answer, older.answer) == (1.0, 1.25)
    (again,) = result_faults(*read(tmp_path, results + "      mine: [0.9]\n"))
    assert again.severity is Severity.FAULT and again.place.line == 9


def test_a_row_written_twice_in_two_units_is_a_fault(tmp_path: Path) -> None:
    (fault,) = result_faults(*read(tmp_path, SOFT + "      120 mm: [0.7]\n      12 cm: [0.8]\n"))
    assert fault.severity is Severity.FAULT and "line 7" in fault.message and fault.place.line == 8


def test_numbers_that_cannot_be_are_pointed_out_where_they_stand(tmp_path: Path) -> None:
    faults = result_faults(*read(tmp_path, SOFT + "      120 mm: [0.70, 72 g, -1]\n      180 mm: [80 ms, 0.81]\n"))
    assert {fault.severity for fault in faults} == {Severity.WARNING}
    assert [(f.place.line, f.place.column) for f in faults] == [(7, 22), (7, 28), (8, 16)]
    assert "not a time to fall in s" in faults[0].message and "less than nothing" in faults[1].message
    assert "0.8 s" in faults[2].message


def test_decimal_commas_that_split_the_numbers_are_noticed(tmp_path: Path) -> None:
    faults = result_faults(*read(tmp_path, SOFT + "      120 mm: [0,70, 0,72, 0,71]\n"))
    assert any("6 numbers" in fault.message and "point" in fault.instead for fault in faults)


def test_results_of_another_study_are_let_be(tmp_path: Path) -> None:
    other = SOFT.replace("A soft landing", "The magic lantern") + "      120 mm: [0.7]\n"
    study, family = read(tmp_path, other)
    assert outcomes(study, family) == () and result_faults(study, family) == ()
    same_title = SOFT + "      9 V: [0.7]\n    study: Tomasz Orrelin\n"
    assert result_faults(*read(tmp_path, same_title)) == ()


def test_a_misspelt_title_is_told_with_the_nearest(tmp_path: Path) -> None:
    near = SOFT.replace("A soft landing", "A soft landng") + "      120 mm: [0.7]\n"
    (told,) = result_faults(*read(tmp_path, near))
    assert told.severity is Severity.WARNING and "A soft landing" in told.instead
    own = SOFT.replace("A soft landing", "The magic lantern") + "      1: [0.7]\n    study: isaure quenby\n"
    (told,) = result_faults(*read(tmp_path, own))
    assert "A soft landing, A boat" in told.instead


def test_the_outcome_of_one_child_for_one_challenge(tmp_path: Path) -> None:
    study, family = read(tmp_path, SOFT + "      120 mm: [0.7]\n    done: 2027-02-24\n")
    soft, boat = study.challenges
    found = outcome_of(study, family, "juno", soft)
    assert found and found.done and found.done.isoformat() == "2027-02-24"
    assert outcome_of(study, family, "Bram", soft) is None and outcome_of(study, family, "Juno", boat) is None


def test_a_trial_without_a_formula_takes_results_too(tmp_path: Path) -> None:
    boat = "  - {challenge: a boat, child: Bram, trials: {First build: 12, Second build: [15, 18]}}\n"
    study, family = read(tmp_path, boat)
    assert [row.answer for row in outcomes(study, family)[0].summary.rows] == [12, 16.5, None]
    assert result_faults(study, family) == ()
