"""Planning a trial from what a parent wrote, with and without a model."""

import pytest

from packgen.trials.frame import TrialError
from packgen.trials.plan import TRIALS, find_model, plan_trial, trial_faults
from packgen.units import quantity

CANOPY = {"load mass": quantity(20, "g"), "drop height": quantity(2, "m")}


def test_planned_values_become_rows_in_the_unit_they_were_written_in():
    sides = [quantity(12, "cm"), quantity(18, "cm"), quantity(24, "cm")]
    plan = plan_trial("canopy", CANOPY, ("canopy side", sides), ("time to fall", "s"))
    assert [row.label for row in plan.rows] == ["12 cm", "18 cm", "24 cm"]
    assert [row.number for row in plan.rows] == ["12", "18", "24"]
    assert plan.x_axis.title == "canopy side (cm)"
    assert plan.measured.title == "time to fall (s)"
    assert all(row.expected and row.expected.unit == "s" for row in plan.rows)


def test_the_question_is_worded_for_the_level():
    plan = plan_trial("canopy", CANOPY)
    assert plan.question("younger") == "Which canopy falls most slowly?"
    assert plan.question("older") == "How does the side of the canopy change the time it takes to fall 2 m?"
    assert plan.question("upper") == "How does the time it takes to fall 2 m depend on the side of the canopy?"
    height = plan_trial(
        "canopy", {"load mass": quantity(20, "g"), "canopy side": quantity(200, "mm")}, ("drop height", [])
    )
    assert height.question("older") == "How does the height of the drop change the time it takes to fall?"


def test_columns_grow_with_the_level():
    plan = plan_trial("canopy", CANOPY, trials=4)
    assert plan.columns("first") == ()
    assert [c.kind for c in plan.columns("younger")] == ["value", *["trial"] * 4, "middle"]
    assert [c.kind for c in plan.columns("older")] == ["value", "guess", *["trial"] * 4, "mean"]
    assert [c.kind for c in plan.columns("upper")] == ["value", "guess", *["trial"] * 4, "mean", "range"]
    assert plan.columns("older")[2].title == "Trial 1 (s)"


def test_the_number_of_trials_is_the_parents_or_the_levels():
    assert plan_trial("canopy", CANOPY, trials=2).repeats("older") == 2
    assert {level: plan_trial("canopy", CANOPY).repeats(level) for level in TRIALS} == TRIALS
    assert TRIALS["older"] >= 3
    with pytest.raises(TrialError, match="0 trials"):
        plan_trial("canopy", CANOPY, trials=0)


def test_values_left_out_are_taken_around_the_given_one():
    plan = plan_trial("canopy", {**CANOPY, "canopy side": quantity(30, "cm")}, ("canopy side", []))
    assert [row.label for row in plan.rows] == ["20 cm", "30 cm", "40 cm"]
    counted = plan_trial("wheel", {"wheel radius": quantity(60, "mm"), "number of blades": quantity(6)})
    assert [row.label for row in counted.rows] == ["4", "6", "8"]


def test_several_values_under_given_are_the_planned_ones():
    sides = (quantity(100, "mm"), quantity(200, "mm"))
    plan = plan_trial("canopy", {**CANOPY, "canopy side": sides})
    assert [row.label for row in plan.rows] == ["100 mm", "200 mm"]
    named = plan_trial("canopy", {**CANOPY, "canopy side": sides}, ("canopy side", []))
    assert named.rows == plan.rows


def test_a_word_can_be_changed():
    plan = plan_trial("canopy", {**CANOPY, "canopy side": quantity(200, "mm")}, ("shape", ["flat", "Square Pyramid"]))
    assert [row.label for row in plan.rows] == ["flat", "square-pyramid"]
    assert plan.x_axis.words
    assert plan.x_axis.labels == ("flat", "square-pyramid")
    with pytest.raises(TrialError, match="cannot be 'cube'") as caught:
        plan_trial("canopy", CANOPY, ("canopy", ["cube"]))
    assert "hemisphere" in caught.value.instead


def test_a_round_canopy_is_changed_by_its_width_if_that_is_what_is_given():
    plan = plan_trial("canopy", {**CANOPY, "canopy": "hemisphere", "canopy diameter": quantity(300, "mm")})
    assert plan.changed.name == "canopy diameter"
    with pytest.raises(TrialError, match="both given"):
        plan_trial("canopy", {**CANOPY, "canopy side": quantity(1, "ft"), "canopy diameter": quantity(300, "mm")})


def test_an_unknown_model_names_the_nearest():
    with pytest.raises(TrialError) as caught:
        plan_trial("pendulm", {})
    assert "pendulum" in caught.value.instead
    assert caught.value.about == "model"
    assert find_model("Water Wheel").key == "wheel"
    with pytest.raises(TrialError) as other:
        find_model("sun dail")
    assert "shadow-clock" in other.value.instead
    assert find_model("cup_rotor").key == "cup-rotor"


def test_every_fault_is_found_at_once_and_none_twice():
    faults = trial_faults(
        "canopy",
        {"lod mass": quantity(5, "g"), "canopy side": quantity(5, "g"), "drop height": quantity(90, "m")},
        ("colour", ["red"]),
        ("time to fall", "kg"),
    )
    assert [f.about for f in faults] == [
        "given:lod mass",
        "given:canopy side",
        "given:drop height",
        "change",
        "measure",
    ]
    assert "did you mean `load mass`" in faults[0].instead
    assert "a length such as 60 mm" in faults[1].message
    assert "0.3 m to 20 m" in faults[2].instead
    assert all(f.message and f.instead for f in faults)
    assert trial_faults("canopy", CANOPY) == ()


def test_a_missing_value_is_asked_for_with_an_example():
    with pytest.raises(TrialError, match="needs `load mass`") as caught:
        plan_trial("canopy", {"drop height": quantity(2, "m")})
    assert "load mass: 5 g" in caught.value.instead


def test_a_number_without_a_unit_is_told_apart():
    with pytest.raises(TrialError, match="a number without a unit"):
        plan_trial("canopy", {**CANOPY, "canopy side": quantity(200)})
    plan = plan_trial("launched-ball", {"launch angle": quantity(40)}, ("launch speed", []))
    assert dict(plan.given)["launch angle"] == quantity(40, "deg")


def test_blades_are_counted_whole():
    with pytest.raises(TrialError, match="counted"):
        plan_trial("wheel", {"wheel radius": quantity(60, "mm"), "number of blades": quantity(4.5)})


def test_a_measure_in_the_parents_words_finds_the_result():
    exact = plan_trial("canopy", CANOPY, measure=("time in the air", "s"))
    assert exact.measured.result.name == "time to fall"
    by_unit = plan_trial("canopy", CANOPY, measure=("until it lands", "s"))
    assert by_unit.measured.result.name == "time to fall"
    assert any("until it lands" in a for a in by_unit.advice)
    pennies = plan_trial("boat-load", {}, measure=("load", "pennies"))
    assert pennies.measured.result.name == "weights carried"
    assert pennies.measured.title == "load (pennies)"


def test_a_measure_the_model_cannot_predict_has_no_expectation():
    plan = plan_trial("canopy", CANOPY, measure=("wobbles", None))
    assert plan.measured.result is None
    assert plan.y_axis.blank
    assert all(row.expected is None for row in plan.rows)
    assert any("wobbles" in a for a in plan.advice)


def test_another_unit_of_the_same_kind_is_used_for_the_expectation():
    cm = plan_trial("pinhole", {}, measure=("picture height", "cm")).rows[0].expected
    mm = plan_trial("pinhole", {}, measure=("picture height", "mm")).rows[0].expected
    assert cm is not None
    assert mm is not None
    assert cm.value == pytest.approx(mm.value / 10)


def test_results_that_can_hardly_be_told_apart_are_announced():
    near = plan_trial("canopy", CANOPY, ("canopy side", [quantity(200, "mm"), quantity(205, "mm")]))
    far = plan_trial("canopy", CANOPY, ("canopy side", [quantity(100, "mm"), quantity(600, "mm")]))
    assert any("values further apart" in a for a in near.advice)
    assert not any("values further apart" in a for a in far.advice)


def test_what_was_taken_as_usual_is_said():
    plan = plan_trial("boat-load", {"hull length": quantity(120, "mm")})
    assert any("hull width 60 mm" in a for a in plan.advice)
    assert ("hull length", quantity(120, "mm")) not in plan.assumed


def test_without_a_model_the_parents_values_make_the_rows():
    plan = plan_trial(None, {}, ("wing span", [quantity(10, "cm"), quantity(20, "cm")]), ("flight", "m"), 3)
    assert [row.label for row in plan.rows] == ["10 cm", "20 cm"]
    assert plan.y_axis.blank
    assert not plan.x_axis.blank
    assert plan.question("older") == "How does the wing span change the flight?"
    words = plan_trial(None, {}, ("paper", ["silk", "crepe"]))
    assert words.x_axis.labels == ("silk", "crepe")


def test_without_anything_there_are_three_builds_to_compare():
    plan = plan_trial(None, {})
    assert [row.label for row in plan.rows] == ["First build", "Second build", "Third build"]
    assert plan.x_axis.words
    assert plan.question("upper") == "Which build is best? Compare the result of each."
    assert [c.kind for c in plan.columns("younger")] == ["value", "trial", "trial", "trial", "middle"]


def test_the_childs_parts_never_tell_the_answer():
    plan = plan_trial("canopy", CANOPY)
    answers = {f"{row.expected.value:.2f}" for row in plan.rows if row.expected}
    shown = [plan.question(level) for level in TRIALS]
    shown += [c.title for level in TRIALS for c in plan.columns(level)]
    shown += [*plan.x_axis.labels, *plan.y_axis.labels, *plan.keep_same, *plan.cautions, plan.pictures.label]
    assert not any(answer in text for answer in answers for text in shown)


def test_every_planned_value_has_its_net_if_the_model_has_one():
    sides = [quantity(120, "mm"), quantity(180, "mm"), quantity(240, "mm")]
    plan = plan_trial("canopy", {**CANOPY, "canopy": "square-pyramid"}, ("canopy side", sides))
    assert [dict(net.given)["base"] for net in plan.nets if net] == sides
    assert plan_trial("pendulum", {}).nets == (None, None, None)
    assert plan_trial(None, {}).nets == (None, None, None)
    folded = plan_trial("boat-load", {"sheet side": quantity(100, "mm")}, ("hull height", [quantity(60, "mm")]))
    assert folded.nets == (None,)


def test_a_customary_family_reads_inches_and_feet():
    plan = plan_trial("periscope", {}, units="customary")
    assert plan.measured.unit == "in"
    assert plan.changed.unit == "in"
    assert all(f.value.unit in ("in", "ft") for f in plan.figures)
