"""A weight swinging on a thread, with the correction for wide swings."""

from __future__ import annotations

import math

from packgen.trials.constants import gravity_at
from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, Result, Values
from packgen.units import quantity


def small_swing(length: float, gravity: float) -> float:
    """Seconds for one swing there and back of a thread of `length` m, for small swings: 2 pi sqrt(L/g)."""
    return 2 * math.pi * math.sqrt(length / gravity)


def amplitude_factor(amplitude_deg: float) -> float:
    """How many times longer a swing of that amplitude takes than a very small one.

    Exact: 1 / agm(1, cos(a/2)), the arithmetic-geometric mean (Gauss; T. F. Carvalhaes and P. Suppes, American Journal
    of Physics 76 (2008) 1150).
    """
    a, b = 1.0, math.cos(math.radians(amplitude_deg) / 2)
    while abs(a - b) > 1e-15:
        a, b = (a + b) / 2, math.sqrt(a * b)
    return 1 / a


def _one(values: Values) -> float:
    gravity = gravity_at(values.number("latitude"))
    return small_swing(values.metres("length"), gravity) * amplitude_factor(values.number("amplitude"))


def _many(values: Values) -> float:
    return _one(values) * values.number("swings")


def _in_a_minute(values: Values) -> float:
    return 60 / _one(values)


def _figures(values: Values) -> tuple[Figure, ...]:
    beat = gravity_at(values.number("latitude")) / math.pi**2
    return (Figure("length that swings once in two seconds", quantity(round(beat * 1000), "mm")),)


_HALF = (0.5, "That is close to half of it: was each way counted as a swing? One swing is there and back.")

MODEL = ChallengeModel(
    title="Pendulum",
    about="A weight on a thread swings to and fro. How long one swing takes depends on the length of the thread, "
    "hardly at all on how wide it swings, and not on the weight.",
    inputs=(
        Input(
            "length",
            "length",
            "from the fixed point to the middle of the weight",
            50,
            10000,
            also=("thread length", "string length", "pendulum length"),
            tries=(250, 500, 1000),
            phrase="the length of the thread",
            ask="Which thread swings most slowly?",
            picture="thread",
            ask_first="Which one swings slowly?",
        ),
        Input(
            "amplitude",
            "angle",
            "how far to the side it is let go",
            1,
            90,
            10.0,
            also=("angle", "swing angle", "release angle", "starting angle"),
            tries=(10, 20, 40),
            phrase="the width of the swing",
            ask="Does a wide swing take longer?",
        ),
        Input(
            "bob mass",
            "mass",
            "the weight on the thread (makes no difference)",
            1,
            10000,
            20.0,
            also=("mass", "weight", "load mass", "load"),
            tries=(10, 20, 40),
            phrase="the weight on the thread",
            ask="Does a heavier weight swing more slowly?",
            quiet=True,
            picture="weight",
            ask_first="Is a heavy one slow?",
        ),
        Input(
            "swings",
            "count",
            "how many swings are timed together",
            1,
            100,
            10.0,
            also=("number of swings",),
            tries=(5, 10, 20),
            phrase="the number of swings timed",
            whole=True,
        ),
        Input("latitude", "angle", "the family's latitude, for the pull of the Earth", -90, 90, 45.0, quiet=True),
    ),
    results=(
        Result(
            "time for the swings",
            "time",
            "s",
            _many,
            "the time for [{swings} ]swings",
            0.2,
            ("time", "time for ten swings", "time for 10 swings", "time of ten swings", "swing time", "time to swing"),
            slips=(_HALF, (0.1, "That is close to the time of a single swing.")),
            shape="power",
        ),
        Result(
            "time of one swing",
            "time",
            "s",
            _one,
            "the time of one swing",
            0.02,
            ("period", "one swing"),
            slips=(_HALF, (10.0, "That is close to the time of ten swings: divide it by ten.")),
            spread=0.05,
            shape="power",
        ),
        Result(
            "swings in a minute",
            "count",
            "",
            _in_a_minute,
            "the number of swings in a minute",
            1.0,
            ("swings per minute", "number of swings"),
            whole=True,
            slips=((2.0, "That is close to twice as many: one swing is there and back."),),
            shape="power",
        ),
    ),
    vary="length",
    formula="T = 2π √(L/g), times 1 + a²/16 + 11a⁴/3072 + ... for a swing of a radians to each side",
    source="OpenStax College Physics, section 16.4; amplitude by the arithmetic-geometric mean (Carvalhaes and Suppes, "
    "Am. J. Phys. 76 (2008) 1150); gravity by latitude from WGS 84",
    spread=0.04,
    keep_same=(
        "the weight on the thread",
        "the width of the swing",
        "the number of swings timed",
        "the length of the thread",
    ),
    cautions=(
        "Keep faces out of the way of the swing. Tie the weight on well.",
        "A long thread can loop round a neck. Take it down afterwards.",
    ),
    faults_of_build=(
        BuildFault(
            "It swings in a circle",
            "it was pushed, not let go",
            "hold the weight still to one side and open the fingers",
        ),
        BuildFault(
            "It stops soon",
            "the knot slides or the weight is light and wide",
            "pinch the thread in a clip; use a small heavy weight",
        ),
        BuildFault("Times jump about", "only one swing is timed", "time ten swings and divide by ten"),
    ),
    why_higher=(
        "The length was measured to the top of the weight, not to its middle.",
        "Eleven swings were counted: begin with zero, not one.",
    ),
    why_lower=(
        "Nine swings were counted: the first return is one.",
        "Half swings were counted.",
        "The thread slipped and grew shorter.",
    ),
    extension="Hang it in a doorway on 1.3 m of thread. Make it beat once a second each way, and time something.",
    figures=_figures,
    tips=("Count zero as you let go: zero, one, two ... ten.",),
    finds_out=True,
)
