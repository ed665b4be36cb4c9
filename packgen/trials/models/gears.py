"""Toothed wheels turning one another."""

from __future__ import annotations

from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, Result, Values, WillNotWork
from packgen.units import quantity


def driven_turns(turns: float, driver: float, driven: float) -> float:
    """How often the driven wheel turns: turns x driver teeth / driven teeth. Wheels between them change nothing."""
    return turns * driver / driven


def _turns(values: Values) -> float:
    turns = driven_turns(values.number("driver turns"), values.number("driver teeth"), values.number("driven teeth"))
    first, second = values.has("second driver teeth"), values.has("second driven teeth")
    if first != second:
        raise WillNotWork(
            "a second pair of wheels needs both its numbers of teeth",
            "give `second driver teeth` and `second driven teeth`, or neither",
            "given",
        )
    if first:
        turns = driven_turns(turns, values.number("second driver teeth"), values.number("second driven teeth"))
    return turns


def _figures(values: Values) -> tuple[Figure, ...]:
    return (
        Figure("how many times harder the last wheel pushes", quantity(values.number("driver turns") / _turns(values))),
    )


MODEL = ChallengeModel(
    title="Gears",
    about="Toothed wheels that mesh pass their turning on. A small wheel that drives a large one turns it slowly and "
    "strongly.",
    inputs=(
        Input(
            "driver teeth",
            "count",
            "teeth of the wheel with the crank",
            4,
            200,
            12.0,
            whole=True,
            also=("driving teeth", "teeth of the driver"),
            tries=(8, 12, 16),
            phrase="the number of teeth on the wheel you turn",
            ask="Which wheel makes the other turn fastest?",
            picture="disc",
            ask_first="Which wheel turns fast?",
        ),
        Input(
            "driven teeth",
            "count",
            "teeth of the wheel that is turned",
            4,
            200,
            24.0,
            whole=True,
            also=("teeth of the driven wheel", "teeth"),
            tries=(12, 24, 36),
            phrase="the number of teeth on the second wheel",
            ask="Which second wheel turns fastest?",
            picture="disc",
            ask_first="Which wheel turns fast?",
        ),
        Input(
            "driver turns",
            "count",
            "how often the crank is turned",
            1,
            200,
            12.0,
            also=("turns", "crank turns"),
            tries=(6, 12, 18),
            phrase="the number of turns of the crank",
        ),
        Input(
            "middle teeth",
            "count",
            "a wheel between the two (changes only the way round)",
            4,
            200,
            whole=True,
            optional=True,
            also=("idler teeth",),
            tries=(8, 12, 16),
            phrase="the wheel in the middle",
            ask="Does a wheel in the middle change the turns?",
        ),
        Input(
            "second driver teeth",
            "count",
            "a second pair: the small wheel on the driven axle",
            4,
            200,
            whole=True,
            optional=True,
            tries=(8, 12, 16),
        ),
        Input(
            "second driven teeth",
            "count",
            "a second pair: the wheel it turns",
            4,
            200,
            whole=True,
            optional=True,
            tries=(12, 24, 36),
        ),
    ),
    results=(
        Result(
            "turns of the last wheel",
            "count",
            "",
            _turns,
            "the number of turns of the last wheel",
            0.5,
            ("turns", "turns counted", "turns of the driven wheel", "number of turns", "driven turns"),
            shape="power",
        ),
    ),
    vary="driven teeth",
    formula="turns of the last wheel = turns of the crank · driver teeth / driven teeth (again for a second pair)",
    source="gear ratio of 12 with 9 teeth is 4 : 3: school text on gears (aptitude-test preparation page)",
    spread=0.03,
    keep_same=("the number of turns of the crank", "the number of teeth on the wheel you turn", "how fast you turn"),
    cautions=("Keep fingers away from where the teeth meet. Hold the crank, not the wheels.",),
    faults_of_build=(
        BuildFault(
            "The teeth slip past one another",
            "the wheels stand too far apart",
            "bring the axles closer until the teeth just touch the bottom of the gaps",
        ),
        BuildFault(
            "They jam at one place",
            "one tooth is bent or the axle is not in the middle",
            "mark the place and trim that tooth",
        ),
        BuildFault("Card teeth bend", "one sheet is too thin", "glue two or three layers, or use corrugated card"),
    ),
    why_higher=("The count began with one instead of zero.",),
    why_lower=("Teeth slipped.", "The last part of a turn was not counted: turn the crank until the mark is up again."),
    extension="Make a wheel turn the same way round as the crank. How many wheels does it need?",
    figures=_figures,
    tips=("Mark one tooth of each wheel to count turns.",),
    also=("gear wheels", "cog wheels", "cogs"),
    finds_out=True,
)
