"""A rotor with slanted blades that faces the wind."""

from __future__ import annotations

import math

from packgen.trials.blades import blade_width
from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, NetFor, Result, Values
from packgen.units import quantity


def best_tip_ratio(blades: float) -> float:
    """The tip speed over wind speed that suits a number of blades best: 4 pi / n (textbook rule of thumb)."""
    return 4 * math.pi / blades


def turns_per_second(tip_ratio: float, wind: float, radius: float) -> float:
    """Turns in a second of a rotor whose tips move at tip_ratio times the wind; wind in m/s, radius in m."""
    return tip_ratio * wind / (2 * math.pi * radius)


def _tip_ratio(values: Values) -> float:
    if values.has("tip speed ratio"):
        return values.number("tip speed ratio")
    return best_tip_ratio(values.number("number of blades")) * values.number("share of the best") / 100


def _rate(values: Values) -> float:
    return turns_per_second(_tip_ratio(values), values.number("wind speed"), values.metres("rotor diameter") / 2)


def _counted(values: Values) -> float:
    return _rate(values) * values.number("counting time")


def _figures(values: Values) -> tuple[Figure, ...]:
    return (Figure("speed of the tips", quantity(_tip_ratio(values) * values.number("wind speed"), "m/s")),)


def _net(values: Values, rows: tuple[Values, ...]) -> NetFor | None:
    """The rotor as a card disc with its blades cut and folded up to a slant, where so many fit on one.

    The blades of all rows are of one size, the widest that leaves the rotor with most of them firm.
    """
    blades, most = values.number("number of blades"), max(row.number("number of blades") for row in rows)
    if blades < 3 or most > 16:
        return None
    across = values.number("rotor diameter")
    blade, hub = blade_width(0.2 * across, across / 2, most), quantity(0.4 * across, "mm")
    sizes = (("diameter", quantity(across, "mm")), ("blades", quantity(blades)), ("fold", quantity(35, "deg")))
    return NetFor("bladed-wheel", (*sizes, ("blade", quantity(blade, "mm")), ("hub", hub)))


MODEL = ChallengeModel(
    title="Blades that the wind turns",
    about="A rotor with slanted blades faces the wind and spins. Fewer blades like to spin faster, many blades push "
    "harder.",
    inputs=(
        Input(
            "rotor diameter",
            "length",
            "across the whole rotor",
            40,
            3000,
            200.0,
            also=("diameter", "rotor width"),
            tries=(120, 160, 200),
            phrase="the width of the rotor",
            ask="Which rotor spins fastest?",
            picture="disc",
            ask_first="Which one spins fast?",
        ),
        Input(
            "number of blades",
            "count",
            "the blades, evenly spaced",
            2,
            16,
            4.0,
            also=("blades", "blade count"),
            whole=True,
            tries=(2, 3, 4),
            phrase="the number of blades",
            ask="How many blades spin fastest?",
            picture="blades",
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
            "share of the best",
            "percent",
            "how near card blades come to the best speed: 30 to 50 % is usual (common practice, no source)",
            5,
            100,
            40.0,
            quiet=True,
        ),
        Input(
            "tip speed ratio",
            "count",
            "tip speed over wind speed, if it is known",
            0.1,
            12,
            optional=True,
            also=("tip ratio",),
        ),
        Input(
            "counting time",
            "time",
            "how long the turns are counted",
            2,
            600,
            10.0,
            also=("time", "counted for"),
            tries=(5, 10, 20),
        ),
    ),
    results=(
        Result(
            "turns in a minute",
            "frequency",
            "rpm",
            _rate,
            "the number of turns in a minute",
            10 / 60,
            ("turns per minute", "turning speed", "speed", "rpm"),
            without=("counting time",),
            shape="power",
        ),
        Result(
            "turns counted",
            "count",
            "",
            _counted,
            "the number of turns[ in {counting time}]",
            3.0,
            ("turns", "number of turns", "spins", "number of spins"),
            whole=True,
            same_question=True,
            shape="power",
        ),
    ),
    vary="number of blades",
    formula="turns a second = λ · wind / (π · diameter), with λ = 0.4 · 4π / number of blades for card blades",
    source="best tip speed ratio 4π/n: textbook rule for wind rotors; the share card blades reach is common practice",
    spread=0.50,
    keep_same=("the speed of the wind", "the width of the rotor", "the slant of the blades", "the axle"),
    cautions=(
        "Keep fingers, hair and scarves away from the fan. A grown-up sets it up.",
        "The pin has a point. Push a lump of clay on it.",
    ),
    faults_of_build=(
        BuildFault(
            "It does not start",
            "all blades lie flat to the wind",
            "slant each blade the same way, about as steep as a half-open door",
        ),
        BuildFault(
            "It wobbles",
            "the blades are not evenly spaced or not equally heavy",
            "hang it on its pin: trim the blade that sinks",
        ),
        BuildFault("It starts and stops", "the hub rubs on the stick", "put a bead on each side of the hub"),
    ),
    why_higher=(
        "The blades lie flatter to their path than usual, so they spin faster without a load.",
        "The fan stood nearer.",
    ),
    why_lower=("The axle rubs.", "The blades bend back in the wind.", "The slant is very steep."),
    extension="Hang a paper clip on a thread round the axle. Which number of blades lifts most?",
    figures=_figures,
    model_solid=_net,
    tips=("Colour one blade; film it and play it slowly to count the turns.",),
    also=("pinwheel", "windmill", "wind rotor"),
)
