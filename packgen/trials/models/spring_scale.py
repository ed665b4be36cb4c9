"""A spring or rubber band that stretches under a load: a scale to weigh with."""

from __future__ import annotations

from packgen.trials.constants import GRAVITY
from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, Result, Values
from packgen.units import quantity


def stretch(load: float, stiffness: float) -> float:
    """How far a spring stretches under a load: F / k (Hooke). N and N/mm give mm."""
    return load / stiffness


def _stiffness(values: Values) -> float:
    """N/mm from the load and stretch the family measured first."""
    return values.kilograms("first load") * GRAVITY / values.number("first stretch")


def _stretch(values: Values) -> float:
    return stretch(values.kilograms("load mass") * GRAVITY, _stiffness(values))


def _figures(values: Values) -> tuple[Figure, ...]:
    return (Figure("stretch for every 10 g", quantity(stretch(0.01 * GRAVITY, _stiffness(values)), "mm")),)


MODEL = ChallengeModel(
    title="Spring scale",
    about="A spring stretches twice as far under twice the load, so its stretch weighs things.",
    inputs=(
        Input(
            "load mass",
            "mass",
            "what hangs on the spring",
            1,
            20000,
            100.0,
            also=("load", "mass", "weight"),
            tries=(50, 100, 150),
            phrase="the load",
            ask="Which load stretches it most?",
        ),
        Input("first load", "mass", "a load tried first, to know the spring", 1, 20000, 100.0, also=("test load",)),
        Input("first stretch", "length", "how far that load stretched it", 0.5, 1000, 20.0, also=("test stretch",)),
    ),
    results=(Result("stretch", "length", "mm", _stretch, "the stretch", 2.0, ("extension", "the stretch")),),
    vary="load mass",
    formula="stretch = load · first stretch / first load (Hooke's law)",
    source="Hooke's law; worked spring of 5000 N/m that stretches 2 mm under 10 N and 5 mm under 25 N (physics "
    "question page)",
    spread=0.12,
    keep_same=("the spring", "where you measure from", "the hook"),
    cautions=(
        "Wear safety glasses to protect your eyes, and keep faces away. A rubber band or spring can fly off.",
        "Keep small weights away from children under three. They can choke on them.",
    ),
    faults_of_build=(
        BuildFault("It does not go back", "it was stretched too far", "take a stronger spring or lighter loads"),
        BuildFault(
            "The marks are not evenly spaced",
            "a rubber band is not a true spring",
            "keep to small loads, or use a coil of wire",
        ),
    ),
    why_higher=("A rubber band creeps: read it soon after hanging the load.",),
    why_lower=(
        "The first reading was taken with the hook already loaded.",
        "A rubber band grows stiffer when it is warm or long.",
    ),
    extension="Mark the scale in grams and weigh something unknown. Then check it in the kitchen.",
    figures=_figures,
    tips=("Hang a known load first and write its stretch as `first stretch`.",),
    also=("spring", "rubber band scale", "spring balance"),
    finds_out=True,
)
