"""From a challenge in a study to its planned trial, with the places of what is wrong."""

from __future__ import annotations

from functools import lru_cache

from packgen.faults import Fault, Place, Said
from packgen.reading.models import Challenge, Family, Given
from packgen.trials.frame import TrialError
from packgen.trials.given import Value
from packgen.trials.plan import TrialPlan, find_model, plan_trial, trial_faults
from packgen.units import Quantity, quantity

_LATITUDE = ("latitude", "lat")


@lru_cache(maxsize=256)
def planned_trial(
    challenge: Challenge, units: str, latitude: float | None
) -> tuple[TrialPlan | None, tuple[Fault, ...]]:
    """The planned trial of a challenge, or None and everything that is wrong with it, each with its place."""
    given = {str(g.name): _values(g) for g in challenge.given}
    if latitude is not None:  # a study is given away; where the family lives counts for the sun
        given = {name: value for name, value in given.items() if _plain(name) not in _LATITUDE}
    change = (str(challenge.change.name), _values(challenge.change)) if challenge.change else None
    spread = (change[0], change[1] if isinstance(change[1], tuple) else (change[1],)) if change else None
    measure = None
    if challenge.measure:
        measure = (str(challenge.measure.what), str(challenge.measure.unit) if challenge.measure.unit else None)
    model = str(challenge.model) if challenge.model else None
    asked = (model, given, spread, measure, challenge.trials, units, latitude, challenge.goal)
    problems = trial_faults(*asked)
    if problems:
        return None, tuple(_fault(challenge, problem) for problem in problems)
    return plan_trial(*asked), ()


def job_of(challenge: Challenge) -> str:
    """What a challenge asks of the children: "design", or "find out". The study may say so, else the model does."""
    if challenge.job:
        return str(challenge.job)
    if not challenge.model:
        return "design"
    try:
        return "find out" if find_model(str(challenge.model)).finds_out else "design"
    except TrialError:
        return "design"


def trial_of(challenge: Challenge, family: Family) -> tuple[TrialPlan | None, tuple[Fault, ...]]:
    """The planned trial of a challenge in a family's units and at its latitude."""
    latitude = family.place.lat if family.place else None
    return planned_trial(challenge, family.units, latitude)


def run_times(challenge: Challenge) -> tuple[float, ...]:
    """How many seconds one trial of each planned value should run; empty if no time is measured or none is known."""
    plan, _ = planned_trial(challenge, "metric", None)
    expected = [row.expected for row in plan.rows if row.expected] if plan else []
    if any(one.dimension != "time" for one in expected):
        return ()
    return tuple(quantity(one.value, one.unit).to("s") for one in expected)


def _values(given: Given) -> Value | tuple[Value, ...]:
    """One value, or all of several."""
    plain = tuple(value if isinstance(value, Quantity) else str(value) for value in given.values)
    return plain[0] if len(plain) == 1 else plain


def _fault(challenge: Challenge, problem: TrialError) -> Fault:
    message = problem.message[0].upper() + problem.message[1:]
    instead = problem.instead[0].upper() + problem.instead[1:]
    return Fault(_place(challenge, problem.about), f"{message.rstrip('.')}.", f"{instead.rstrip('.')}.")


def _place(challenge: Challenge, about: str) -> Place:
    """The place in the study that an error speaks of."""
    kind, _, name = about.partition(":")
    if kind == "given":
        wanted = _plain(name)
        for given in challenge.given:
            if _plain(str(given.name)) == wanted:
                return given.at
    if kind == "change" and challenge.change:
        return challenge.change.at
    if kind == "measure" and challenge.measure:
        return challenge.measure.at
    if kind == "model" and isinstance(challenge.model, Said):
        return challenge.model.at
    return challenge.at


def _plain(name: str) -> str:
    return " ".join(name.lower().replace("-", " ").replace("_", " ").split())
