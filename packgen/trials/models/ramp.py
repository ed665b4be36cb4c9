"""Pulling a load up a ramp."""

from __future__ import annotations

import math

from packgen.trials.constants import GRAVITY
from packgen.trials.frame import WORD, BuildFault, ChallengeModel, Figure, Input, Result, Values, WillNotWork
from packgen.units import quantity

# Common practice, no source: a wooden or card block on card, and a toy cart.
FRICTION = {"sliding": 0.30, "on wheels": 0.03}


def pull_needed(weight: float, length: float, height: float, friction: float = 0.0) -> float:
    """The pull along a ramp that moves a weight up it, in the weight's unit: W (sin a + mu cos a).

    With sin a = height / length. Without friction the ramp makes it length / height times easier.
    """
    sine = height / length
    return weight * (sine + friction * math.sqrt(1 - sine**2))


def _friction(values: Values) -> float:
    return values.number("friction") if values.has("friction") else FRICTION[values.word("load moves")]


def _checked_height(values: Values) -> float:
    height, length = values.metres("ramp height"), values.metres("ramp length")
    if height > length:
        raise WillNotWork(
            "a ramp cannot be higher than it is long", "lower `ramp height` or lengthen the ramp", "given"
        )
    return height


def _pull(values: Values) -> float:
    weight = values.kilograms("load mass") * GRAVITY
    return pull_needed(weight, values.metres("ramp length"), _checked_height(values), _friction(values))


def _mass(values: Values) -> float:
    return _pull(values) / GRAVITY * 1000


def _slides(values: Values) -> float:
    """The height in mm at which the load begins to move down by itself: tan a = mu."""
    return values.number("ramp length") * math.sin(math.atan(_friction(values)))


def _figures(values: Values) -> tuple[Figure, ...]:
    height = _checked_height(values)
    return (
        Figure("how many times easier without any rubbing", quantity(values.metres("ramp length") / height)),
        Figure("slope of the ramp", quantity(math.degrees(math.asin(height / values.metres("ramp length"))), "deg")),
    )


MODEL = ChallengeModel(
    title="Ramp",
    about="A ramp lets a small pull lift a heavy load, over a longer way. Rubbing takes part of the gain.",
    inputs=(
        Input(
            "ramp length",
            "length",
            "along the slope",
            100,
            10000,
            600.0,
            also=("length", "slope length"),
            tries=(400, 600, 800),
            phrase="the length of the ramp",
            ask="Which ramp is easiest to pull up?",
        ),
        Input(
            "ramp height",
            "length",
            "how much higher the upper end is",
            5,
            5000,
            200.0,
            also=("height",),
            tries=(100, 200, 300),
            phrase="the height of the ramp",
            ask="Which ramp is easiest to pull up?",
            picture="up",
        ),
        Input(
            "load mass",
            "mass",
            "what is pulled, with its cart",
            5,
            50000,
            500.0,
            also=("load", "mass"),
            tries=(250, 500, 750),
            phrase="the load",
            ask="Which load is hardest to pull?",
        ),
        Input(
            "load moves",
            WORD,
            "how the load moves",
            words=("sliding", "on wheels"),
            default="on wheels",
            also=("wheels", "moves"),
            phrase="the way the load moves",
            ask="Is it easier on wheels?",
            tries=("sliding", "on wheels"),
        ),
        Input(
            "friction",
            "count",
            "friction coefficient, if it is known",
            0,
            1.5,
            optional=True,
            also=("friction coefficient",),
        ),
    ),
    results=(
        Result("pull needed", "force", "N", _pull, "the pull needed", 0.1, ("pull", "force", "effort"), shape="power"),
        Result(
            "weight that pulls it up",
            "mass",
            "g",
            _mass,
            "the weight that pulls it up",
            5.0,
            ("mass", "weight", "load to pull it up", "counterweight"),
            same_question=True,
            shape="power",
        ),
        Result(
            "height where it slides",
            "length",
            "mm",
            _slides,
            "the height at which it slides down by itself",
            10.0,
            ("sliding height", "slip height", "height when it slips"),
            without=("ramp height", "load mass"),
            spread=0.35,
            shape="power",
        ),
    ),
    vary="ramp height",
    formula="pull = m g (height/length + μ √(1 − (height/length)²)); it slides by itself when tan(slope) = μ",
    source="ideal advantage length/height: school text on the ramp; μ = 0.3 sliding and 0.03 on wheels are common "
    "practice, no source",
    spread=0.20,
    keep_same=("the load", "the length of the ramp", "the height of the ramp", "the surface", "how fast you pull"),
    cautions=("A loaded cart runs back by itself. Keep fingers and toes out of its way.",),
    faults_of_build=(
        BuildFault(
            "The spring scale jumps about", "the load sticks and slips", "pull slowly and evenly, read while it moves"
        ),
        BuildFault("The ramp sags", "the board is thin", "put books under its middle"),
        BuildFault(
            "The cart turns off", "the axles are not square to the cart", "line them up with the edge of a card"
        ),
    ),
    why_higher=(
        "The load rubs more than usual, or the thread rubs on the edge of the ramp.",
        "It was pulled upwards, not along the ramp.",
    ),
    why_lower=("The scale was read while the load rolled back.", "The scale was not at zero before the trial."),
    extension="Pull the same load straight up. How many times easier was your best ramp?",
    figures=_figures,
    tips=("Pull along the ramp, not upwards.",),
    also=("inclined plane", "slope"),
    finds_out=True,
)
