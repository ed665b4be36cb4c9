"""A paper glider let go from a height: how far, how long and how fast it glides."""

from __future__ import annotations

import math

from packgen.trials.constants import AIR_DENSITY, GRAVITY
from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, Result, Values
from packgen.units import quantity


def glide_distance(height: float, ratio: float) -> float:
    """How far over the ground a glider comes from that height: the glide ratio is distance over height."""
    return height * ratio


def glide_angle_deg(ratio: float) -> float:
    """The angle of the path below the level: tan a = height / distance = 1 / ratio (NASA Glenn, "Gliding")."""
    return math.degrees(math.atan(1 / ratio))


def glide_speed(mass: float, area: float, lift_coefficient: float, ratio: float) -> float:
    """The steady speed in m/s along the path of a mass in kg with a wing of `area` m².

    Lift carries the weight across the path: 1/2 rho v² S CL = m g cos a (NASA Glenn, "Vector balance of forces").
    """
    weight = mass * GRAVITY * math.cos(math.atan(1 / ratio))
    return math.sqrt(2 * weight / (AIR_DENSITY * area * lift_coefficient))


def _distance(values: Values) -> float:
    return glide_distance(values.number("launch height"), values.number("glide ratio"))


def _speed(values: Values) -> float:
    area = values.metres("wing span") * values.metres("wing depth")
    coefficient = values.number("lift coefficient")
    return glide_speed(values.kilograms("mass"), area, coefficient, values.number("glide ratio"))


def _time(values: Values) -> float:
    height = values.metres("launch height")
    return math.hypot(height, glide_distance(height, values.number("glide ratio"))) / _speed(values)


def _figures(values: Values) -> tuple[Figure, ...]:
    return (
        Figure("angle of the path below the level", quantity(glide_angle_deg(values.number("glide ratio")), "deg")),
    )


_BODY = ("mass", "wing span", "wing depth", "lift coefficient")

MODEL = ChallengeModel(
    title="Glide",
    about="A glider let go from a height comes down along a slanting line. How far it comes for each metre of height "
    "is its glide ratio.",
    inputs=(
        Input(
            "launch height",
            "length",
            "from the hand to the floor",
            300,
            30000,
            1500.0,
            unit="m",
            also=("height", "drop height", "starting height"),
            tries=(1000, 1500, 2000),
            phrase="the height of the launch",
            ask="From which height does it glide farthest?",
            picture="up",
            ask_first="Which one flies far?",
        ),
        Input(
            "glide ratio",
            "count",
            "metres forward for one metre down; a paper glider makes about 3 to 6",
            1,
            20,
            4.0,
            also=("lift to drag", "l/d"),
            tries=(3, 4, 6),
            phrase="the glide ratio",
        ),
        Input(
            "mass",
            "mass",
            "the whole glider",
            0.5,
            500,
            5.0,
            also=("glider mass", "weight", "load mass"),
            tries=(5, 6, 8),
            phrase="the weight of the glider",
            ask="Does a heavier glider fly faster?",
        ),
        Input(
            "wing span",
            "length",
            "from tip to tip",
            50,
            3000,
            200.0,
            also=("span",),
            tries=(150, 200, 250),
            phrase="the span of the wings",
            ask="Which wings stay up longest?",
        ),
        Input(
            "wing depth",
            "length",
            "from front edge to back edge",
            15,
            800,
            100.0,
            also=("chord", "wing chord"),
            tries=(60, 80, 100),
            phrase="the depth of the wings",
            ask="Which wings stay up longest?",
        ),
        Input("lift coefficient", "count", "about 0.5 for a flat paper wing", 0.2, 1.2, 0.5, quiet=True),
    ),
    results=(
        Result(
            "distance flown",
            "length",
            "m",
            _distance,
            "the distance it flies",
            200,
            ("distance", "flight distance", "how far it flies", "length of flight"),
            without=_BODY,
        ),
        Result(
            "time in the air",
            "time",
            "s",
            _time,
            "the time it stays in the air",
            0.2,
            ("time", "flight time", "time to land"),
        ),
        Result(
            "flying speed",
            "speed",
            "m/s",
            _speed,
            "the speed it flies at",
            0.3,
            ("speed", "glide speed"),
            without=("launch height",),
            shape="power",
        ),
    ),
    vary="launch height",
    formula="distance = glide ratio · height; tan(angle) = 1 / glide ratio; ½ ρ v² S C = m g cos(angle)",
    source="NASA Glenn Research Center, Gliding and Vector Balance of Forces for a Glider; lift coefficient and glide "
    "ratio of paper gliders are common practice, no source",
    spread=0.35,
    keep_same=(
        "the glider",
        "the height of the launch",
        "the way it is let go",
        "still air",
        "the weight of the glider",
    ),
    cautions=(
        "Fly only where nobody stands, and never towards a face. Points of paper can hurt eyes.",
        "Only a grown-up launches from a stair or a chair.",
    ),
    faults_of_build=(
        BuildFault("It dives", "the nose is heavy", "bend the back edges of the wings up a little"),
        BuildFault("It climbs, stops and drops", "the tail is heavy", "put a paper clip on the nose"),
        BuildFault(
            "It turns to one side", "one wing is bent or wider", "hold it in front of your eyes and match the wings"
        ),
    ),
    why_higher=(
        "It was thrown instead of let go, so the throw paid for part of the way.",
        "A draught carried it along.",
    ),
    why_lower=("It stalled or turned, so part of the height was lost.", "The wings are creased or not alike."),
    extension="Move a paper clip along the body and find the place that gives the longest flight.",
    figures=_figures,
    tips=("Let it go level, without a push, and measure to where it first touches the floor.",),
    also=("glider", "paper glider"),
)
