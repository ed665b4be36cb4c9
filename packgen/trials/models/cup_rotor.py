"""Cups on arms that the wind turns: a wind measurer."""

from __future__ import annotations

import math

from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, Result, Values
from packgen.units import quantity


def turns_per_second(wind: float, arm: float, factor: float) -> float:
    """Turns in a second: the cups go round at wind / factor, and one turn is 2 pi arm. Any one length unit."""
    return wind / factor / (2 * math.pi * arm)


def drag_balance_factor(cupped: float = 1.42, rounded: float = 0.38) -> float:
    """Wind speed over cup speed for two cups whose drags balance: (x + 1)/(x - 1) with x = sqrt(cupped / rounded).

    Drag coefficients of a hollow hemisphere from the Aeronautical Engineer's Data Book, fig. 5.13(b).
    """
    x = math.sqrt(cupped / rounded)
    return (x + 1) / (x - 1)


def _rate(values: Values) -> float:
    return turns_per_second(values.number("wind speed"), values.metres("arm"), values.number("factor"))


def _counted(values: Values) -> float:
    return _rate(values) * values.number("counting time")


def _figures(values: Values) -> tuple[Figure, ...]:
    around = 2 * math.pi * values.metres("arm")
    return (Figure("wind that goes by in one turn", quantity(around * values.number("factor"), "m")),)


MODEL = ChallengeModel(
    title="Cups that the wind turns",
    about="Cups on arms go round at about a third of the speed of the wind, so counting turns measures the wind.",
    inputs=(
        Input(
            "arm",
            "length",
            "from the axle to the middle of a cup",
            15,
            1500,
            100.0,
            also=("arm length", "radius", "arm radius"),
            tries=(60, 100, 140),
            phrase="the length of the arms",
            ask="Which arms turn fastest?",
            ask_first="Which one spins fast?",
        ),
        Input(
            "wind speed",
            "speed",
            "the wind, or a fan at a marked distance",
            0.5,
            25,
            10 / 3.6,
            unit="km/h",
            also=("wind", "air speed"),
            tries=(10 / 3.6, 15 / 3.6, 20 / 3.6),
            phrase="the speed of the wind",
            ask="Which wind turns it fastest?",
        ),
        Input(
            "factor",
            "count",
            "speed of the wind over speed of the cups: 3 is usual, 2 to 3.5 are found",
            1.5,
            6,
            3.0,
            also=("cup factor",),
            quiet=True,
        ),
        Input(
            "number of cups",
            "count",
            "the cups (makes little difference)",
            2,
            12,
            4.0,
            also=("cups",),
            whole=True,
            quiet=True,
            tries=(2, 3, 4),
            phrase="the number of cups",
            ask="How many cups turn fastest?",
            picture="blades",
            ask_first="Which one spins fast?",
        ),
        Input(
            "counting time",
            "time",
            "how long the turns are counted",
            5,
            600,
            30.0,
            also=("time", "counted for"),
            tries=(15, 30, 60),
        ),
    ),
    results=(
        Result(
            "turns counted",
            "count",
            "",
            _counted,
            "the number of turns[ in {counting time}]",
            3.0,
            ("turns", "number of turns", "spins", "number of spins"),
            whole=True,
            shape="power",
        ),
        Result(
            "turns in a minute",
            "frequency",
            "rpm",
            _rate,
            "the number of turns in a minute",
            6 / 60,
            ("turns per minute", "turning speed", "speed", "rpm"),
            without=("counting time",),
            same_question=True,
            shape="power",
        ),
    ),
    vary="arm",
    formula="turns = wind · time / (factor · 2π · arm)",
    source="T. R. Robinson (1845): the middles of the cups move at a third of the wind; later work found factors "
    "from 2 to a little over 3 (encyclopaedia article on the cup rotor)",
    spread=0.30,
    keep_same=("the speed of the wind", "the cups", "the length of the arms", "the axle", "how long you count"),
    cautions=(
        "Keep fingers and hair away from the fan. A grown-up sets it up.",
        "The pin has a point. Push a lump of clay on it.",
    ),
    faults_of_build=(
        BuildFault(
            "It does not start", "the axle rubs or the cups are heavy", "put a bead under the hub, use lighter cups"
        ),
        BuildFault(
            "It rocks to and fro",
            "the cups do not all face the same way round",
            "turn each to follow the one in front",
        ),
        BuildFault("It hums and shakes", "one arm is longer", "measure each arm from the axle again"),
    ),
    why_higher=("The wind came in gusts.", "The fan stood nearer than for the other trials."),
    why_lower=(
        "The axle rubs.",
        "The cups are small for their arms, so rubbing holds them back.",
        "A fan blows on one side only, so some cups are out of the wind.",
    ),
    extension="Mark one cup, count turns in ten seconds out of doors, and make a table that reads the wind from them.",
    figures=_figures,
    tips=("Colour one cup so that turns can be counted.",),
    also=("wind cups", "anemometer"),
)
