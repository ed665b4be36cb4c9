"""Results come home as the children wrote them, in the family file or in a file of their own."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import jsonschema
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from reading_files import CHILD, is_case_of, read_text

from packgen.faults import Fault
from packgen.reading import messages
from packgen.reading.models import ChildResults, Family
from packgen.reading.schema import family_schema, results_schema

ONE = "results:\n  - challenge: A wheel\n    child: Juno\n    trials:\n"


def results(folder: Path, text: str) -> tuple[tuple[ChildResults, ...], tuple[Fault, ...]]:
    """The results of a family file with these lines, and the faults found."""
    family, faults = read_text(folder, "family", CHILD + text)
    assert isinstance(family, Family)
    return family.results, faults


def rows(folder: Path, text: str) -> dict[str, tuple[str, ...]]:
    """The rows of the one result with these lines, which must be without a fault."""
    (found,), faults = results(folder, ONE + text)
    assert faults == ()
    return {str(row.label): tuple(map(str, row.tried)) for row in found.trials}


def test_numbers_stay_as_the_child_wrote_them(tmp_path: Path) -> None:
    found = rows(tmp_path, "      3: [9.80, '10,2 s', it tore, 010]\n      120 mm: 1.4\n")
    assert found == {"3": ("9.80", "10,2 s", "it tore", "010"), "120 mm": ("1.4",)}


@pytest.mark.parametrize("mark", ["-", "–", "x", "X", "missed", "~", "''"])
def test_a_missed_trial_may_be_marked_in_any_usual_way(tmp_path: Path, mark: str) -> None:
    assert rows(tmp_path, f"      6: [7.1, {mark}, 7.4]\n") == {"6": ("7.1", "", "7.4")}


@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        ("7.1, 7.4, -", ("7.1", "7.4", "")),
        ("7.1 7.4 -", ("7.1", "7.4", "")),
        ("7,1; 7,4", ("7,1", "7,4")),
        ("7,1 7,4", ("7,1", "7,4")),
        ("7.1 s, 7.4 s", ("7.1 s", "7.4 s")),
        ("7,1", ("7,1",)),
        ("7.1 s", ("7.1 s",)),
        ("it fell over, twice", ("it fell over, twice",)),
    ],
)
def test_a_row_may_be_written_in_one_line(tmp_path: Path, text: str, numbers: tuple[str, ...]) -> None:
    assert rows(tmp_path, f"      6: {text}\n") == {"6": numbers}


NUMBERS = st.lists(st.decimals(0, 999, places=2).map(str), min_size=1, max_size=8)


@given(NUMBERS)
@settings(max_examples=40, deadline=None)
def test_a_row_in_one_line_is_the_row_as_a_list(tmp_path_factory: pytest.TempPathFactory, numbers: list[str]) -> None:
    folder = tmp_path_factory.getbasetemp()
    as_list = rows(folder, f"      6: [{', '.join(numbers)}]\n")
    assert as_list == {"6": tuple(numbers)}
    for between in (", ", "; ", " ; "):
        assert rows(folder, f"      6: {between.join(numbers)}\n") == as_list


def test_each_row_knows_its_place_and_the_day_is_kept(tmp_path: Path) -> None:
    (found,), _ = results(tmp_path, ONE + "      3: [9.8, -]\n      6: [7.1]\n    done: 24 February 2027\n")
    assert [row.at.line for row in found.trials] == [7, 8]
    assert found.trials[0].tried[0].at.column > found.trials[0].at.column
    assert found.done == date(2027, 2, 24)


def test_a_file_of_its_own_holds_the_results(tmp_path: Path) -> None:
    (tmp_path / "spring.yaml").write_text(ONE + "      3: [9.8, 10.2]\n")
    (found,), faults = results(tmp_path, "results: spring.yaml\n")
    assert faults == () and str(found.child) == "Juno"
    assert Path(found.at.file).name == "spring.yaml"


def test_a_fault_in_a_file_of_results_is_told_with_that_file(tmp_path: Path) -> None:
    (tmp_path / "spring.yaml").write_text(ONE.replace("child", "kind"))
    _, faults = results(tmp_path, "results: spring.yaml\n")
    assert faults and {Path(fault.place.file).name for fault in faults} == {"spring.yaml"}


def test_a_file_of_results_cannot_name_itself(tmp_path: Path) -> None:
    (tmp_path / "spring.yaml").write_text("results: spring.yaml\n")
    _, faults = results(tmp_path, "results: spring.yaml\n")
    assert len(faults) == 1 and is_case_of(faults[0], messages.TEXT_FOR_KEYS)


def test_a_child_is_known_by_its_name_in_any_spelling_and_told_if_unknown(tmp_path: Path) -> None:
    (found,), _ = results(tmp_path, ONE.replace("Juno", "juno") + "      3: 9.8\n")
    assert found.child == "Juno"
    none, faults = results(tmp_path, ONE.replace("Juno", "June") + "      3: 9.8\n")
    assert none == () and "Is `Juno` meant?" in faults[0].instead


def test_a_child_that_could_not_be_read_causes_no_second_fault(tmp_path: Path) -> None:
    text = "family: Ferrar\nchildren: [{name: Juno, age: 11}, {name: Bram, age: eight}]\n"
    _, faults = read_text(tmp_path, "family", text + ONE.replace("Juno", "Bram") + "      3: 9.8\n")
    assert len(faults) == 1


def test_two_studies_may_have_a_challenge_of_one_title(tmp_path: Path) -> None:
    row = "challenge: A wheel, child: Juno, trials: {6: 7}"
    found, faults = results(tmp_path, f"results: [{{{row}, study: One}}, {{{row}, study: Two}}]\n")
    assert len(found) == 2 and faults == ()


def test_the_schemas_know_results_in_both_places() -> None:
    data = {"results": [{"challenge": "A wheel", "child": "Juno", "trials": {"3": [9.8, "-", None], "6": "7.1, 7.4"}}]}
    jsonschema.Draft202012Validator.check_schema(results_schema())
    jsonschema.Draft202012Validator(results_schema()).validate(data)
    family = {"family": "Ferrar", "children": ["Juno"]}
    check = jsonschema.Draft202012Validator(family_schema())
    check.validate({**family, **data})
    check.validate({**family, "results": "results.yaml"})
    with pytest.raises(jsonschema.ValidationError):
        check.validate({**family, "results": [{"challenge": "A wheel", "trials": {}}]})
