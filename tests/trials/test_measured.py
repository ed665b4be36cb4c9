"""Matching what a parent measures with what a model can say."""

import pytest

from packgen.trials.frame import TrialError
from packgen.trials.measured import measured_by, written_unit
from packgen.trials.models import models

BOAT = models()["boat-load"]


def _measured(what, unit=None, units="metric"):
    problems: list[TrialError] = []
    found = measured_by(BOAT, "hull height", (what, unit) if what else None, units, problems)
    return found, problems


def test_nothing_said_is_the_usual_result_in_the_familys_unit():
    found, problems = _measured(None)
    assert (found.what, found.unit) == ("load carried", "g")
    assert _measured(None, units="customary")[0].unit == "oz"
    assert not problems


def test_without_a_model_the_parents_words_stand():
    found = measured_by(None, "", ("wobbles", "wobbles"), "metric", [])
    assert found.title == "wobbles (wobbles)"
    assert found.result is None
    assert measured_by(None, "", None, "metric", []).what == "result"


def test_a_unit_of_the_familys_own_is_a_count():
    found, problems = _measured("load", "marbles")
    assert found.result.name == "weights carried"
    assert found.unit == "marbles"
    assert not problems


def test_a_wrong_unit_names_a_right_one():
    _, problems = _measured("freeboard", "g")
    assert "mm" in problems[0].instead
    assert problems[0].about == "measure"


def test_whole_things_are_expected_between_whole_numbers():
    found, _ = _measured("weights carried", "coins")
    expected = found.expected(46.0, 34.5, 57.5)
    assert (expected.low, expected.high) == (34, 58)


@pytest.mark.parametrize(("symbol", "written"), [("deg", "°"), ("mm", "mm")])
def test_a_unit_is_written_as_a_child_does(symbol, written):
    assert written_unit(symbol) == written
