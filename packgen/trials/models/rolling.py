"""Round things rolling down a ramp."""

from __future__ import annotations

import math

from packgen.trials.constants import GRAVITY
from packgen.trials.frame import WORD, BuildFault, ChallengeModel, Figure, Input, Result, Values, WillNotWork
from packgen.units import quantity

# Moment of inertia over m r² (any mechanics text, e.g. OpenStax College Physics, figure 10.12).
ROUNDNESS = {"ball": 2 / 5, "hollow ball": 2 / 3, "solid cylinder": 1 / 2, "tube": 1.0}


def acceleration(sine: float, roundness: float) -> float:
    """The acceleration in m/s² of something rolling down a slope without slipping: g sin a / (1 + I/(m r²))."""
    return GRAVITY * sine / (1 + roundness)


def speed_after(drop: float, roundness: float) -> float:
    """The speed in m/s after rolling down by `drop` m from rest: sqrt(2 g h / (1 + I/(m r²)))."""
    return math.sqrt(2 * GRAVITY * drop / (1 + roundness))


def _steepness(values: Values) -> float:
    sine = values.number("ramp height") / values.number("ramp length")
    if sine > 0.6:
        raise WillNotWork("the ramp is so steep that it would slide or jump, not roll", "lower `ramp height`", "given")
    return sine


def _time(values: Values) -> float:
    rate = acceleration(_steepness(values), ROUNDNESS[values.word("shape")])
    return math.sqrt(2 * values.metres("ramp length") / rate)


def _speed(values: Values) -> float:
    _steepness(values)
    return speed_after(values.metres("ramp height"), ROUNDNESS[values.word("shape")])


def _figures(values: Values) -> tuple[Figure, ...]:
    rate = acceleration(_steepness(values), ROUNDNESS[values.word("shape")])
    first = rate / 2
    return (
        Figure("way rolled in the first second", quantity(first, "m")),
        Figure("way rolled in two seconds, if the ramp were long enough", quantity(4 * first, "m")),
    )


MODEL = ChallengeModel(
    title="Rolling down",
    about="A ball or a roller runs down a gentle ramp, faster and faster. Neither its weight nor its size matters, "
    "but a hollow one is slower than a solid one.",
    inputs=(
        Input(
            "ramp length",
            "length",
            "the way it rolls, along the slope",
            200,
            10000,
            1000.0,
            also=("length", "slope length"),
            tries=(500, 1000, 1500),
            phrase="the length of the ramp",
            ask="Does twice the way take twice the time?",
        ),
        Input(
            "ramp height",
            "length",
            "how much higher the start is than the end",
            5,
            3000,
            100.0,
            also=("height",),
            tries=(50, 100, 200),
            phrase="the height of the ramp",
            ask="From which ramp does it come down fastest?",
            picture="up",
            ask_first="Which ramp is fast?",
        ),
        Input(
            "shape",
            WORD,
            "what rolls",
            words=tuple(ROUNDNESS),
            default="ball",
            also=("what rolls", "roller"),
            tries=("ball", "solid cylinder", "tube"),
            phrase="the shape of what rolls",
            ask="Which one wins the race?",
        ),
        Input(
            "mass",
            "mass",
            "its weight (makes no difference)",
            0.5,
            5000,
            20.0,
            also=("ball mass", "load mass"),
            quiet=True,
            tries=(5, 20, 50),
            phrase="the weight of the ball",
            ask="Does a heavy one roll faster?",
        ),
    ),
    results=(
        Result(
            "time to roll down",
            "time",
            "s",
            _time,
            "the time it takes to roll down",
            0.2,
            ("time", "rolling time", "time to the bottom"),
            shape="power",
        ),
        Result(
            "speed at the bottom",
            "speed",
            "m/s",
            _speed,
            "the speed at the bottom",
            0.1,
            ("speed", "final speed"),
            same_question=True,
            shape="power",
        ),
    ),
    vary="ramp height",
    formula="a = g · (height/length) / (1 + k); t = √(2 · length / a); k = 2/5 ball, 1/2 solid cylinder, 2/3 hollow "
    "ball, 1 tube",
    source="OpenStax College Physics, sections 10.3 and 10.4",
    spread=0.15,
    keep_same=(
        "the length of the ramp",
        "the height of the ramp",
        "the shape of what rolls",
        "the surface",
        "how you let go",
    ),
    cautions=(
        "Marbles are small parts, and people slip on them. Count them before and after.",
        "Stop the ball with a cushion, not with a hand.",
    ),
    faults_of_build=(
        BuildFault(
            "It runs off the side", "the ramp is twisted", "fold up the edges of the card, or use two rulers as rails"
        ),
        BuildFault("It hops at the start", "it was pushed", "hold it back with a ruler and lift the ruler"),
        BuildFault("It stops on the way", "the ramp sags", "put a book under its middle"),
    ),
    why_higher=(
        "The surface is soft or rough.",
        "The ball runs between two rails, which makes it turn faster and roll slower.",
    ),
    why_lower=("It was pushed at the start.", "The watch was started late: a hand needs about a fifth of a second."),
    extension="Put bells or marks where it is after each second. How do the gaps grow?",
    figures=_figures,
    tips=("Let it go with a ruler: lift it away, do not push.",),
    also=("rolling ball", "marble run", "rolling race"),
    finds_out=True,
)
