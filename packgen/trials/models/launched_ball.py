"""A light ball thrown by a launcher, with the air counted or left out."""

from __future__ import annotations

import math
from dataclasses import dataclass

from packgen.trials.constants import AIR_DENSITY, GRAVITY
from packgen.trials.frame import WORD, BuildFault, ChallengeModel, Figure, Input, Result, Values
from packgen.units import quantity

SPHERE_DRAG = 0.47
"""Drag coefficient of a smooth ball at the speed of a toy launcher (NASA Glenn gives 0.07 to 0.5 for spheres)."""
_STEPS = 400


@dataclass(frozen=True, slots=True)
class Flight:
    """Where a ball comes down: m along the floor, seconds in the air, and its greatest height in m above the floor."""

    distance: float
    time: float
    top: float


def flight(speed: float, angle_deg: float, height: float, slowing: float = 0.0) -> Flight:
    """The flight of a ball from `height` m above the floor at `speed` m/s and an angle above the level.

    `slowing` is rho Cd A / (2 m) in 1/m; without it the parabola is exact: R = v cos a (v sin a + sqrt((v sin a)² +
    2 g h)) / g (OpenStax College Physics, section 3.4). With it the motion is followed in small steps (Runge-Kutta).
    """
    angle = math.radians(angle_deg)
    across, up = speed * math.cos(angle), speed * math.sin(angle)
    time = (up + math.sqrt(up**2 + 2 * GRAVITY * height)) / GRAVITY
    top = height + max(up, 0.0) ** 2 / (2 * GRAVITY)
    if slowing <= 0 or time == 0:
        return Flight(across * time, time, top)
    return _followed((0.0, height, across, up), time / _STEPS, slowing)


_State = tuple[float, float, float, float]


def _rate(state: _State, slowing: float) -> _State:
    _, _, across, up = state
    drag = slowing * math.hypot(across, up)
    return across, up, -drag * across, -GRAVITY - drag * up


def _moved(state: _State, rate: _State, step: float) -> _State:
    x, y, across, up = (s + step * r for s, r in zip(state, rate, strict=True))
    return x, y, across, up


def _followed(state: _State, step: float, slowing: float) -> Flight:
    """The flight in equal steps, the last one cut where it meets the floor."""
    time, top = 0.0, state[1]
    while True:
        k1 = _rate(state, slowing)
        k2 = _rate(_moved(state, k1, step / 2), slowing)
        k3 = _rate(_moved(state, k2, step / 2), slowing)
        k4 = _rate(_moved(state, k3, step), slowing)
        mean = tuple((a + 2 * b + 2 * c + d) / 6 for a, b, c, d in zip(k1, k2, k3, k4, strict=True))
        new = _moved(state, (mean[0], mean[1], mean[2], mean[3]), step)
        if new[1] <= 0 and new[3] < 0:
            part = state[1] / (state[1] - new[1]) if state[1] > new[1] else 1.0
            return Flight(state[0] + part * (new[0] - state[0]), time + part * step, top)
        state, time, top = new, time + step, max(top, new[1])


def _launch_speed(values: Values) -> float:
    if values.has("straight up height"):
        return math.sqrt(2 * GRAVITY * values.metres("straight up height"))
    return values.number("launch speed")


def _flight(values: Values) -> Flight:
    slowing = 0.0
    if values.word("air") == "counted":
        area = math.pi * values.metres("ball diameter") ** 2 / 4
        slowing = AIR_DENSITY * SPHERE_DRAG * area / (2 * values.kilograms("ball mass"))
    height = values.metres("launch height")
    return flight(_launch_speed(values), values.number("launch angle"), height, slowing)


def _figures(values: Values) -> tuple[Figure, ...]:
    bare = flight(_launch_speed(values), values.number("launch angle"), values.metres("launch height"))
    return (
        Figure("distance if there were no air", quantity(bare.distance, "m")),
        Figure("speed at the launch", quantity(_launch_speed(values), "m/s")),
    )


MODEL = ChallengeModel(
    title="Launched ball",
    about="A launcher throws a light ball. The angle and the speed say how far it goes; the air takes some of it away.",
    inputs=(
        Input(
            "launch angle",
            "angle",
            "above the level",
            0,
            90,
            45.0,
            also=("angle",),
            tries=(30, 45, 60),
            phrase="the angle of the launcher",
            ask="Which angle throws farthest?",
            picture="angle",
        ),
        Input(
            "launch speed",
            "speed",
            "the ball's speed as it leaves",
            0.5,
            20,
            4.0,
            also=("speed",),
            tries=(3, 4, 5),
            phrase="the speed of the launch",
            ask="Does it go twice as far when it is twice as fast?",
        ),
        Input(
            "straight up height",
            "length",
            "how high it goes when it is shot straight up; gives the speed",
            20,
            8000,
            unit="m",
            also=("height straight up",),
            tries=(500, 1000, 1500),
            phrase="the height it reaches straight up",
        ),
        Input(
            "launch height",
            "length",
            "from the floor to where the ball leaves",
            0,
            3000,
            0.0,
            also=("height",),
            tries=(0, 400, 800),
            phrase="the height of the launcher",
            ask="Does it go farther from higher up?",
            quiet=True,
            picture="up",
        ),
        Input(
            "ball mass",
            "mass",
            "the ball",
            0.2,
            500,
            3.0,
            also=("mass", "ball weight"),
            tries=(1, 3, 5),
            phrase="the weight of the ball",
            ask="Does a heavier ball go farther?",
        ),
        Input(
            "ball diameter",
            "length",
            "across the ball",
            5,
            250,
            40.0,
            also=("diameter", "ball size"),
            tries=(20, 30, 40),
            phrase="the size of the ball",
        ),
        Input(
            "air",
            WORD,
            "whether the air is counted",
            words=("counted", "left out"),
            default="counted",
            tries=("counted", "left out"),
            quiet=True,
        ),
    ),
    results=(
        Result(
            "distance",
            "length",
            "m",
            lambda v: _flight(v).distance * 1000,
            "the distance it flies",
            150,
            ("distance thrown", "range", "how far it goes", "flight distance", "distance flown"),
        ),
        Result(
            "time in the air",
            "time",
            "s",
            lambda v: _flight(v).time,
            "the time it stays in the air",
            0.15,
            ("time", "flight time"),
        ),
        Result(
            "greatest height",
            "length",
            "m",
            lambda v: _flight(v).top * 1000,
            "the greatest height",
            100,
            ("height", "how high it goes", "top height"),
        ),
    ),
    vary="launch angle",
    formula="without air: distance = v cos a (v sin a + √((v sin a)² + 2 g h)) / g, so v² sin 2a / g from the floor; "
    "air: drag ½ ρ C A v² against the motion, C = 0.47, followed in small steps",
    source="OpenStax College Physics, section 3.4; drag of a sphere, NASA Glenn Research Center, Shape Effects on Drag",
    spread=0.25,
    keep_same=(
        "the launcher",
        "the ball",
        "how far it is drawn back",
        "the angle of the launcher",
        "the height of the launcher",
    ),
    cautions=(
        "Use only soft, light balls of paper or foam. Never shoot stones, darts or hard things.",
        "Wear safety glasses to protect your eyes, and stand behind the launcher. Never aim at people or animals.",
        "Keep small balls away from children under three. They can choke on them.",
    ),
    faults_of_build=(
        BuildFault(
            "Each throw is different",
            "the launcher is drawn back by different amounts",
            "add a stop or a mark to draw back to",
        ),
        BuildFault(
            "The ball goes straight up or into the floor",
            "it is let go too early or too late",
            "move the stop that halts the arm",
        ),
        BuildFault("The launcher jumps", "it is light", "tape or clamp it to the table"),
    ),
    why_higher=("The launcher was drawn back further.", "The landing place was marked after a bounce."),
    why_lower=(
        "A light ball loses much to the air: try a heavier one of the same size.",
        "The arm rubs, or hits its stop early.",
    ),
    extension="Find two angles that throw equally far. What do they add up to?",
    one_of=(("launch speed", "straight up height"),),
    figures=_figures,
    tips=("To find the speed, shoot straight up beside a tape and write the height as `straight up height`.",),
    also=("catapult", "launcher", "ball launcher"),
)
