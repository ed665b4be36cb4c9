"""The stages of a design challenge by level."""

import re

import pytest

from packgen.trials.stages import stages

# NGSS engineering design (NGSS Lead States, 2013): K-2-ETS1-1..3, 3-5-ETS1-1..3, MS-ETS1-1..4.
_CODES = {"first": ("K-2", 3), "younger": ("K-2", 3), "older": ("3-5", 3), "upper": ("MS", 4)}


@pytest.mark.parametrize("level", _CODES)
def test_every_expectation_of_the_band_is_met_by_a_stage(level):
    band, count = _CODES[level]
    met = {code for stage in stages(level) for code in stage.in_spirit_of}
    assert met == {f"{band}-ETS1-{n}" for n in range(1, count + 1)}


@pytest.mark.parametrize("level", _CODES)
def test_stages_begin_with_asking_and_hold_a_draft_and_a_trial(level):
    keys = [stage.key for stage in stages(level)]
    assert keys[0] == "ask"
    assert {"make", "try"} <= set(keys) and ("draft" in keys or level == "first")
    assert len(keys) == len(set(keys))
    assert all(re.fullmatch(r"[A-Z].*\.", stage.does) for stage in stages(level))


@pytest.mark.parametrize("level", _CODES)
def test_what_is_to_be_found_out_has_no_ideas_and_goes_by_the_practices_of_science(level):
    keys = [stage.key for stage in stages(level, "find out")]
    assert keys[0] == "ask" and "try" in keys and not {"imagine", "draft", "predict", "improve"} & set(keys)
    # NGSS, appendix F: practice 1 is asking questions, 3 planning and carrying out investigations, 4 analysing data.
    codes = {code for stage in stages(level, "find out") for code in stage.in_spirit_of}
    assert {"SEP 1", "SEP 3"} <= codes <= {f"SEP {n}" for n in range(1, 9)}


def test_only_the_older_plan_fair_tests_and_an_unknown_level_is_an_error():
    # 3-5-ETS1-3 asks for fair tests with controlled variables; K-2-ETS1-3 for comparing two objects.
    assert "keeps the rest the same" in next(s.does for s in stages("older") if s.key == "try")
    assert "two" in next(s.does for s in stages("younger") if s.key == "try")
    with pytest.raises(KeyError):
        stages("adult")
