"""A light balloon filled with warm air."""

from __future__ import annotations

import math

from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, Result, Values, WillNotWork
from packgen.units import quantity


def air_density(celsius: float) -> float:
    """The density of dry air in kg/m³ at sea-level pressure: p / (R T) = 101325 / (287.05 T)."""
    return 101325 / (287.05 * (celsius + 273.15))


def lift(volume: float, inside: float, outside: float) -> float:
    """What warm air lifts, in g for a volume in m³: the difference of the densities times the volume."""
    return 1000 * volume * (air_density(outside) - air_density(inside))


def _skin(values: Values) -> float:
    area = math.pi * values.metres("balloon diameter") ** 2
    return area * values.number("paper")


def _spare(values: Values) -> float:
    volume = math.pi * values.metres("balloon diameter") ** 3 / 6
    spare = lift(volume, values.number("inside temperature"), values.number("outside temperature")) - _skin(values)
    if spare <= 0:
        raise WillNotWork(
            "the balloon is too heavy to rise", "make it larger, take lighter paper, or fly it on a cold day", "given"
        )
    return spare


def _figures(values: Values) -> tuple[Figure, ...]:
    return (Figure("mass of the balloon's paper", quantity(_skin(values), "g")),)


MODEL = ChallengeModel(
    title="Warm-air balloon",
    about="Warm air is lighter than cold. A large bag of thin paper filled from a hair dryer lifts its own weight and "
    "a little more.",
    inputs=(
        Input(
            "balloon diameter",
            "length",
            "across the full balloon, taken as a ball",
            300,
            6000,
            1000.0,
            unit="m",
            also=("diameter", "width"),
            tries=(800, 1000, 1200),
            phrase="the width of the balloon",
            ask="Which balloon lifts most?",
            picture="disc",
        ),
        Input(
            "inside temperature",
            "temperature",
            "of the air inside; a hair dryer makes 50 to 70 °C",
            20,
            100,
            60.0,
            also=("air temperature",),
            tries=(50, 60, 70),
            phrase="the warmth of the air inside",
            ask="Does warmer air lift more?",
        ),
        Input(
            "outside temperature",
            "temperature",
            "of the room or the morning",
            -30,
            40,
            15.0,
            tries=(5, 15, 20),
            phrase="the cold outside",
            ask="Does it lift more on a cold day?",
        ),
        Input(
            "paper",
            "grammage",
            "tissue paper is about 17 g/m²",
            5,
            80,
            17.0,
            also=("skin", "paper weight", "grammage"),
            tries=(14, 17, 20),
            phrase="the weight of the paper",
        ),
    ),
    results=(
        Result(
            "load lifted",
            "mass",
            "g",
            _spare,
            "the load it lifts",
            5.0,
            ("lift", "load", "mass lifted", "spare lift", "mass"),
            shape="power",
        ),
    ),
    vary="balloon diameter",
    formula="lift = π D³/6 · (ρ outside − ρ inside) − π D² · paper; ρ = p / (R T)",
    source="The Engineering ToolBox, Hot Air Balloons: Lifting Weights (10 m³ at 100 °C in air of 20 °C lifts 2.6 kg)",
    spread=0.40,
    keep_same=(
        "the paper",
        "the warmth of the air inside",
        "how long it is filled",
        "the width of the balloon",
        "no wind",
    ),
    cautions=(
        "Use only a hair dryer, held by a grown-up. Never use a flame, a candle or a heat gun.",
        "Keep the paper off the nozzle. Stop if it smells hot.",
    ),
    faults_of_build=(
        BuildFault("It turns over", "the mouth is light", "put a ring of card round the mouth"),
        BuildFault("It sinks at once", "the air cools through holes and seams", "glue the seams again; fill it longer"),
    ),
    why_higher=("The day was colder, or the air inside warmer, than was written.",),
    why_lower=(
        "Glue and seams weigh more than the paper alone.",
        "It never filled to a full ball.",
        "The air inside is cooler at the bottom than at the top.",
    ),
    extension="How large must it be to lift an egg in a basket of card?",
    figures=_figures,
    tips=("Fly it early on a cold, still morning.",),
    also=("hot air balloon", "warm air balloon", "balloon"),
)
