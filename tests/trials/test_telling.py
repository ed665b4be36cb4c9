"""Sentences on results at each level."""

import pytest

from packgen.trials.plan import plan_trial
from packgen.trials.results import judge_results
from packgen.trials.telling import sentence
from packgen.units import quantity

PLAN = plan_trial(
    "canopy",
    {"load mass": quantity(20, "g"), "drop height": quantity(2, "m")},
    ("canopy side", [quantity(120, "mm"), quantity(180, "mm"), quantity(240, "mm")]),
    ("time to fall", "s"),
)
GOOD = judge_results(PLAN, [[0.70, 0.72], [0.80, 0.81], [0.93, 0.95]])


def test_each_level_has_its_own_sentence():
    assert sentence(GOOD, "first") == "240 mm took the longest."
    assert sentence(GOOD, "younger") == "The longest time to fall was 0.94 s, with 240 mm."
    assert sentence(GOOD, "older") == (
        "When the side of the canopy went from 120 mm to 240 mm, the mean time to fall went up from 0.71 s to 0.94 s."
    )
    upper = sentence(GOOD, "upper")
    assert upper.startswith(sentence(GOOD, "older"))
    assert "3 of 3 results lie in the band" in upper
    assert "R² = " in upper


def test_no_numbers_invite_to_try():
    assert "try it" in sentence(judge_results(PLAN, []), "older")


def test_one_number_is_only_told():
    assert sentence(judge_results(PLAN, [[0.7]]), "older") == "With 120 mm the time to fall was 0.7 s."


@pytest.mark.parametrize("level", ["younger", "older"])
def test_rows_that_cannot_be_told_apart_are_not_called_a_win(level):
    close = judge_results(PLAN, [[0.7, 0.9], [0.71, 0.95], [0.72, 0.93]])
    text = sentence(close, level)
    assert "close race" in text or "more trials are needed" in text


def test_words_are_compared_by_name():
    plan = plan_trial(None, {}, ("paper", ["silk", "crepe"]), ("time", "s"))
    text = sentence(judge_results(plan, [[1.0, 1.2], [3.0, 3.2]]), "older")
    assert text == "The mean time was longest with crepe (3.1 s) and shortest with silk (1.1 s)."


def test_what_goes_down_is_said_to_go_down_and_what_stays_to_stay():
    plan = plan_trial("rolling", {})
    down = judge_results(plan, [[2.4, 2.5], [1.7, 1.6], [1.2, 1.2]])
    assert "went down from 2.5" in sentence(down, "older")
    still = judge_results(plan, [[2.4], [2.4], [2.4]])
    assert "stayed at 2.4 s" in sentence(still, "older")


def test_a_bare_number_is_told_by_what_it_counts():
    wheel = plan_trial("wheel", {"wheel radius": quantity(60, "mm"), "axle radius": quantity(4, "mm"),
                                 "load mass": quantity(10, "g"), "flow": quantity(60, "ml/s")},
                       ("number of blades", [quantity(3), quantity(6)]), ("time to lift", "s"))  # fmt: skip
    assert sentence(judge_results(wheel, [[8.0], [7.0]]), "first") == "3 blades took the longest."
    dial = plan_trial("shadow-clock", {}, ("hour", [quantity(9), quantity(15)]), None, None, "metric", 50.4)
    assert "with hour 15" in sentence(judge_results(dial, [[30], [38]]), "younger")


def test_the_youngest_hear_of_a_close_race_too():
    plan = plan_trial(None, {}, ("paper", ["silk", "crepe"]), ("time", "s"))
    assert sentence(judge_results(plan, [[1.0, 1.2], [3.0, 3.2]]), "first") == "Crepe took the longest."
    assert "close race" in sentence(judge_results(plan, [[1.0, 1.4], [1.1, 1.5]]), "first")


def test_a_turn_is_told_and_no_line_is_put_through_it():
    hours = ("hour", [quantity(h) for h in (9, 12, 15)])
    dial = plan_trial("shadow-clock", {}, hours, None, None, "metric", 50.4)
    text = sentence(judge_results(dial, [[38], [0], [39]]), "upper")
    assert text.startswith(
        "When the hour went from 9 to 15, the angle from the noon line went down from 38° to 0° at 12,"
    )
    assert "and up again to 39°." in text and "Best fit" not in text
