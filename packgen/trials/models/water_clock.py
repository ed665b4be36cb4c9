"""A vessel that runs empty through a small hole."""

from __future__ import annotations

import math

from packgen.trials.constants import GRAVITY
from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, Result, Values, WillNotWork
from packgen.units import quantity

SHARP_HOLE = 0.61
"""The share of the ideal flow that a sharp-edged round hole lets through (hydraulics texts, from memory)."""


def outflow_speed(level: float) -> float:
    """The speed in m/s of water leaving a hole `level` m below the surface: sqrt(2 g h) (Torricelli, 1643)."""
    return math.sqrt(2 * GRAVITY * level)


def time_between(vessel: float, hole: float, start: float, end: float, coefficient: float = 1.0) -> float:
    """Seconds for the level in a straight vessel to fall from `start` to `end`; diameters and levels in m.

    From A dh/dt = -c a sqrt(2 g h): t = (A / (c a)) sqrt(2/g) (sqrt(h1) - sqrt(h2)).
    """
    return (vessel / hole) ** 2 / coefficient * math.sqrt(2 / GRAVITY) * (math.sqrt(start) - math.sqrt(end))


def level_after(share: float, start: float, end: float) -> float:
    """The level after that share of the whole time, for marking the clock: the root of the level falls evenly."""
    return (math.sqrt(start) - share * (math.sqrt(start) - math.sqrt(end))) ** 2


def _time(values: Values) -> float:
    if values.number("end level") >= values.number("start level"):
        raise WillNotWork("the water cannot end higher than it starts", "lower `end level`", "given")
    if values.number("hole diameter") > values.number("vessel diameter") / 3:
        raise WillNotWork("the hole is so wide that the vessel just pours out", "make the hole smaller", "given")
    return time_between(
        values.metres("vessel diameter"),
        values.metres("hole diameter"),
        values.metres("start level"),
        values.metres("end level"),
        values.number("flow coefficient"),
    )


_STEPS = (30, 60, 120, 300, 600, 1800, 3600)
_MOST_MARKS = 8


def _figures(values: Values) -> tuple[Figure, ...]:
    """Where the water stands at every half minute on the way down; at longer steps if those would be too many."""
    start, end = values.number("start level"), values.number("end level")
    whole = _time(values)
    step = next((s for s in _STEPS if whole / s <= _MOST_MARKS + 1), _STEPS[-1])
    times = [step * k for k in range(1, _MOST_MARKS + 1) if step * k < whole]
    return tuple(
        Figure(
            f"{'filled to the highest mark, ' if k == 0 else ''}level after {_said(time)}",
            quantity(round(level_after(time / whole, start, end)), "mm"),
        )
        for k, time in enumerate(times)
    )


def _said(seconds: int) -> str:
    return f"{seconds} s" if seconds <= 300 else f"{seconds // 60} min"


MODEL = ChallengeModel(
    title="Water clock",
    about="Water runs out of a hole at the bottom of a straight vessel, fast while it is full and slowly at the end.",
    inputs=(
        Input(
            "start level",
            "length",
            "of the water above the hole at the start",
            10,
            2000,
            200.0,
            also=("water height", "level", "height", "water level"),
            tries=(50, 100, 200),
            phrase="the height of the water",
            ask="Does twice the water take twice as long?",
            picture="level",
            ask_first="Which one runs for longest?",
        ),
        Input(
            "end level", "length", "of the water above the hole at the end", 0, 1900, 0.0, quiet=True, tries=(0, 20, 50)
        ),
        Input(
            "hole diameter",
            "length",
            "across the hole",
            0.5,
            25,
            3.0,
            also=("hole", "hole size"),
            tries=(2, 3, 4),
            phrase="the size of the hole",
            ask="Which hole makes the slowest clock?",
            picture="hole",
            ask_first="Which one runs for longest?",
        ),
        Input(
            "vessel diameter",
            "length",
            "across the vessel, inside",
            15,
            600,
            80.0,
            also=("diameter", "bottle diameter", "vessel width"),
            tries=(60, 80, 100),
            phrase="the width of the vessel",
            ask="Which vessel makes the slowest clock?",
            picture="disc",
            ask_first="Which one runs for longest?",
        ),
        Input(
            "flow coefficient",
            "count",
            "0.61 for a clean sharp hole, up to 0.8 for a short pipe",
            0.4,
            1,
            SHARP_HOLE,
            also=("discharge coefficient",),
            quiet=True,
        ),
    ),
    results=(
        Result(
            "time to run down",
            "time",
            "s",
            _time,
            "the time it takes to run down",
            2.0,
            ("time", "time to empty", "emptying time", "running time", "time to run out"),
            shape="power",
        ),
    ),
    vary="start level",
    formula="t = (D/d)² / c · √(2/g) · (√h₁ − √h₂)",
    source="Torricelli's law; worked tank that falls from 9 ft to 4 ft in one hour and is empty after three "
    "(differential-equations text, problem 27 on p. 419, seen in a solution sheet)",
    spread=0.20,
    keep_same=("the vessel", "the size of the hole", "the height of the water", "the width of the vessel"),
    cautions=(
        "Only a grown-up makes the holes: with a drill on a block, or with a hot needle held with pliers.",
        "Never leave a young child alone with water. Wipe the floor at once.",
    ),
    faults_of_build=(
        BuildFault(
            "It drips instead of running", "the hole is very small or has a burr", "clear it with a pin from inside"
        ),
        BuildFault("It slows and stops early", "air cannot get in", "leave the top open"),
        BuildFault("The jet sprays", "the edge of the hole is rough", "trim the edge"),
    ),
    why_higher=(
        "The hole is smaller than it was measured to be: this counts twice over.",
        "A burr or a bubble blocks the hole.",
        "The end was taken at the last drip, not when the jet breaks.",
    ),
    why_lower=("The hole is wider, or slants, or water also leaks beside it.", "The vessel is narrower at the bottom."),
    extension="Mark the vessel each half minute. Why do the marks draw together towards the bottom?",
    figures=_figures,
    figures_most="start level",
    tips=(
        "Stop the watch when the jet breaks into drops, each time alike.",
        "Twice the height of water takes about 1.4 times as long, not twice: it runs out faster while it is high.",
    ),
    also=("water timer", "clepsydra"),
    finds_out=True,
)
