"""A wheel with blades in a stream of water that winds up a load on its axle."""

from __future__ import annotations

import math

from packgen.trials.blades import blade_width
from packgen.trials.constants import GRAVITY
from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, NetFor, Result, Values, WillNotWork
from packgen.units import quantity

HOME_SHARE = 0.44
"""What a wheel with flat blades makes of the push in theory: Smeaton's undershot wheels gave about 0.22 of the water's
power (Phil. Trans. 51, 1759) where the theory of de Borda (1767) allows 0.5 at the best speed."""


def share_of_power(speed_ratio: float, caught: float) -> float:
    """The share of the stream's power a wheel takes whose blades move at `speed_ratio` times the stream's speed.

    The push on the blades is rho Q' (v - u), where Q' is the water that catches up with a blade before the blade has
    left the stream: Q' = Q min(1, N (1 - u/v)) with N from `blades_in_stream`. Many blades give de Borda's law (1767),
    0.5 at u = v/2; a single one (N = 1) gives Parent's (1704), 8/27 at u = v/3.
    """
    slip = 1 - speed_ratio
    return 2 * speed_ratio * slip * min(1.0, caught * slip)


def blades_in_stream(blades: float, radius: float, depth: float) -> float:
    """How many blades stand in the stream on average; a blade does so over an arc of 2 acos(1 - depth/R).

    Same length unit for radius and depth.
    """
    return blades * math.acos(max(-1.0, 1 - depth / radius)) / math.pi


def jet_speed(drop: float) -> float:
    """The speed in m/s of water that has fallen `drop` m: sqrt(2 g h) (Torricelli)."""
    return math.sqrt(2 * GRAVITY * drop)


def rim_speed(stream: float, pull: float, full_push: float, caught: float) -> float:
    """The steady speed in m/s of blades that pull with `pull` N in a stream of `stream` m/s.

    `full_push` is the push in N on blades held still that catch all the water; `caught` is N of `share_of_power`.
    Solves pull = full_push s min(1, N s) for the slip s = 1 - u/v; 0 or less if the wheel stands still.
    """
    held = pull / full_push
    slip = held if caught * held >= 1 else math.sqrt(held / caught)
    return stream * (1 - slip)


def _rim(values: Values) -> float:
    stream = jet_speed(values.metres("water drop"))
    caught = blades_in_stream(
        values.number("number of blades"), values.number("wheel radius"), values.number("stream depth")
    )
    full_push = HOME_SHARE * values.number("flow") / 1000 * stream
    pull = values.kilograms("load mass") * GRAVITY * values.number("axle radius") / values.number("wheel radius")
    rim = rim_speed(stream, pull, full_push, caught)
    if rim < 0.03 * stream:
        raise WillNotWork(
            "the load is too heavy for this wheel: expect it not to turn",
            "take a lighter load, a thinner axle, a larger wheel, more blades or more water",
            "given",
        )
    return rim


def _lift_speed(values: Values) -> float:
    return _rim(values) * values.number("axle radius") / values.number("wheel radius")


def _time(values: Values) -> float:
    return values.metres("lift height") / _lift_speed(values)


def _turns(values: Values) -> float:
    return _rim(values) / (2 * math.pi * values.metres("wheel radius")) * 60


def _figures(values: Values) -> tuple[Figure, ...]:
    gain = values.number("wheel radius") / values.number("axle radius")
    single = blades_in_stream(1, values.number("wheel radius"), values.number("stream depth"))
    return (
        Figure("how many times wheel and axle multiply the push", quantity(gain)),
        Figure("blades that keep one in the stream at all times", quantity(math.ceil(1 / single - 1e-9))),
        Figure("speed of the water on the blades", quantity(jet_speed(values.metres("water drop")), "m/s")),
    )


def _net(values: Values, rows: tuple[Values, ...]) -> NetFor | None:
    """The wheel as a card disc with its blades cut and folded up, where so many fit on one.

    The blades of all rows are of one size, the widest that leaves the wheel with most of them firm.
    """
    radius, blades = values.number("wheel radius"), values.number("number of blades")
    most = max(row.number("number of blades") for row in rows)
    if blades < 3 or most > 16 or values.number("axle radius") > 0.3 * radius:
        return None
    axle = quantity(2 * values.number("axle radius"), "mm")
    blade = quantity(blade_width(radius / 2, radius, most), "mm")
    sizes = (("radius", quantity(radius, "mm")), ("blades", quantity(blades)), ("axle", axle))
    return NetFor("bladed-wheel", (*sizes, ("blade", blade), ("hub", quantity(radius, "mm"))))


MODEL = ChallengeModel(
    title="A wheel that water turns",
    about="Water from a tap or a jug strikes the blades of a wheel; a thread on its axle winds up a load.",
    inputs=(
        Input(
            "wheel radius",
            "length",
            "from the axle to the tip of a blade",
            15,
            500,
            also=("radius", "blade radius"),
            tries=(40, 60, 80),
            phrase="the size of the wheel",
            ask="Which wheel lifts the load fastest?",
            picture="disc",
            ask_first="Which wheel is fast?",
        ),
        Input(
            "axle radius",
            "length",
            "the stick the thread winds on, from its middle",
            1,
            60,
            4.0,
            also=("axle", "spindle radius"),
            tries=(3, 5, 8),
            phrase="the thickness of the axle",
            ask="Which axle lifts the load fastest?",
            picture="disc",
            ask_first="Which one is fast?",
        ),
        Input(
            "number of blades",
            "count",
            "the blades, evenly spaced",
            2,
            36,
            8.0,
            also=("blades", "blade count"),
            tries=(4, 8, 12),
            phrase="the number of blades",
            ask="How many blades lift the load fastest?",
            whole=True,
            picture="blades",
            ask_first="Which wheel is fast?",
        ),
        Input(
            "load mass",
            "mass",
            "what hangs on the thread (a paper clip is about 1 g)",
            0.1,
            2000,
            1.0,
            also=("load", "mass"),
            tries=(1, 5, 10),
            phrase="the load",
            ask="Which load takes longest to lift?",
            picture="weight",
            ask_first="Which one is hard to lift?",
        ),
        Input(
            "lift height",
            "length",
            "how far the load is lifted",
            50,
            3000,
            300.0,
            also=("height", "lift"),
            tries=(200, 300, 400),
            phrase="the height of the lift",
        ),
        Input(
            "flow",
            "flow",
            "the water, by filling a measuring jug for ten seconds",
            5,
            500,
            60.0,
            also=("water flow", "flow of water", "tap"),
            tries=(40, 60, 80),
            phrase="the flow of water",
            ask="Does more water lift the load faster?",
        ),
        Input(
            "water drop",
            "length",
            "from the spout to the blade",
            20,
            1000,
            150.0,
            also=("fall of water", "drop height", "drop"),
            tries=(100, 150, 200),
            phrase="the drop of the water",
            ask="Does water from higher up lift the load faster?",
            picture="up",
            ask_first="Is it faster from high up?",
        ),
        Input(
            "stream depth",
            "length",
            "the thickness of the stream where it meets the blades",
            2,
            50,
            8.0,
            also=("stream width", "stream thickness"),
        ),
    ),
    results=(
        Result(
            "time to lift",
            "time",
            "s",
            _time,
            "the time it takes to lift the load[ {lift height}]",
            0.3,
            ("time", "lift time", "lifting time", "time to lift the load"),
            shape="power",
        ),
        Result(
            "turns in a minute",
            "frequency",
            "rpm",
            _turns,
            "the number of turns in a minute",
            2 / 60,
            ("turns", "turns per minute", "speed", "turning speed", "rpm"),
            without=("lift height",),
        ),
    ),
    vary="number of blades",
    formula="push = 0.44 · ρ Q (v − u) · min(1, N (1 − u/v)), with v = √(2 g H) and N blades in the stream at a time; "
    "steady when push · R = m g r; time = lift height · R / (u · r)",
    source="push of a stream on one flat blade (A. Parent, 1704) and on many (J.-C. de Borda, 1767); 0.44 from "
    "J. Smeaton's measured undershot wheels (Phil. Trans. 51, 1759), from memory; all three discussed in D. Capecchi, "
    "Advances in Historical Studies 2 (2013) 131",
    spread=0.40,
    keep_same=(
        "the flow of water",
        "the thread",
        "the load",
        "the height of the lift",
        "where the water meets the wheel",
    ),
    cautions=(
        "Never leave a young child alone with water. Empty the tub afterwards and wipe the floor.",
        "Skewers have points. Cut them off or cap them with clay.",
    ),
    faults_of_build=(
        BuildFault(
            "It turns without the load but not with it",
            "the thread slips on the axle",
            "tape the end of the thread down, wind one turn by hand",
        ),
        BuildFault(
            "It stops at one place",
            "the blades are not evenly spaced or one is bent",
            "turn the wheel until it hangs at rest; bend or trim that blade",
        ),
        BuildFault(
            "It wobbles and rubs", "the holes for the axle are wide or not in line", "line them with a piece of straw"
        ),
        BuildFault("The card goes soft", "water soaks in", "cover it with tape or wax before the trial"),
    ),
    why_higher=(
        "The axle rubs: this is the usual reason and can double the time.",
        "Some of the water misses the blades or splashes back on the next one.",
    ),
    why_lower=(
        "The tap was opened further than for the other trials.",
        "The stream met the blades farther down, where it falls faster.",
    ),
    extension="Change the axle: a thicker one winds more thread each turn. When does it stop helping?",
    figures=_figures,
    model_solid=_net,
    tips=("Measure the flow: how much water runs into a jug in ten seconds, divided by ten.",),
    also=("water wheel", "waterwheel"),
)
