"""From a challenge as written to its planned trial: values in place, faults at their lines, the sun at home."""

from packgen.faults import Place, Said
from packgen.planning.challenges import planned_trial, run_times, trial_of
from packgen.reading.models import Challenge, Child, Family, Given, Measure, Spot
from packgen.units import quantity

AT = Place("study.yaml", 12, 5)


def given(name: str, *values: tuple[float, str] | str, line: int = 1) -> Given:
    found = tuple(Said(v) if isinstance(v, str) else quantity(*v) for v in values)
    return Given(Said(name), found, Place("study.yaml", line, 9))


def pendulum(*more: Given, change: Given | None = None, measure: Measure | None = None) -> Challenge:
    return Challenge(
        Said("A pendulum"), Said("Swing."), Said("pendulum", Place("study.yaml", 13, 9)),
        (given("swings", (10, ""), line=14), *more), change, measure, trials=3, at=AT,
    )  # fmt: skip


def test_planned_values_become_the_rows_of_the_trial() -> None:
    change = given("length", (250, "mm"), (500, "mm"), (1000, "mm"))
    plan, faults = planned_trial(pendulum(change=change), "metric", None)
    assert not faults and plan
    assert [row.number for row in plan.rows] == ["250", "500", "1000"]
    assert plan.repeats("older") == 3


def test_what_is_wrong_is_told_at_the_line_of_the_value() -> None:
    wrong = given("length", (500, "g"), line=15)
    plan, faults = planned_trial(pendulum(wrong), "metric", None)
    assert plan is None
    assert [(fault.place.line, bool(fault.instead)) for fault in faults] == [(15, True)]


def test_an_unknown_model_is_told_at_the_model() -> None:
    wrong = Challenge(Said("C"), Said("B."), Said("pendulun", Place("study.yaml", 13, 9)), at=AT)
    plan, faults = planned_trial(wrong, "metric", None)
    assert plan is None and faults[0].place == Place("study.yaml", 13, 9)
    assert "pendulum" in faults[0].instead


def test_several_slips_are_told_at_once() -> None:
    slips = (given("length", (500, "g"), line=15), given("colour", "red", line=16))
    _, faults = planned_trial(pendulum(*slips), "metric", None)
    assert [fault.place.line for fault in faults] == [15, 16]


def test_a_challenge_without_a_model_is_planned_too() -> None:
    change = given("number of blades", (3, ""), (6, ""))
    free = Challenge(Said("C"), Said("B."), change=change, measure=Measure(Said("time"), Said("s")))
    plan, faults = planned_trial(free, "metric", None)
    assert plan and not faults
    assert plan.measured.unit == "s" and [row.number for row in plan.rows] == ["3", "6"]


def test_the_familys_latitude_counts_for_the_sun() -> None:
    clock = Challenge(Said("A shadow clock"), Said("B."), Said("shadow-clock"), (given("latitude", (10, "deg")),))
    child = (Child(Said("Juno"), 11, Said("older")),)
    here = Family(Said("F"), child, place=Spot(Said("Saltmere"), 50.4, -4.9))
    there = Family(Said("F"), child, place=Spot(Said("Elsewhere"), 20.0, 0.0))
    plans = [trial_of(clock, family)[0] for family in (here, there)]
    assert all(plans) and plans[0] != plans[1]


def test_the_time_of_a_trial_is_known_where_a_time_is_measured() -> None:
    made = pendulum(change=given("length", (250, "mm"), (1000, "mm")), measure=Measure(Said("time"), Said("s")))
    # ten swings take 10 x 2 pi sqrt(l / g), with g = 9.80665 m/s2 (standard gravity, CGPM 1901): 10.03 s and 20.06 s
    assert [round(seconds) for seconds in run_times(made)] == [10, 20]
    wheel = Challenge(Said("C"), Said("B."), Said("pendulun", Place("study.yaml", 13, 9)), at=AT)
    assert run_times(wheel) == ()
