"""A load falling under a canopy, from rest through the run-up to its steady speed."""

from __future__ import annotations

import math

from packgen.trials.constants import AIR_DENSITY, GRAVITY
from packgen.trials.frame import WORD, BuildFault, ChallengeModel, Figure, Input, NetFor, Result, Values
from packgen.units import quantity

# Drag coefficients. Flat cloth: about 0.75 on the area of the cloth (J. Potvin, Parks College Parachute Research
# Group, "Calculating the descent rate of a round parachute"). Hollow hemisphere, open side to the stream, 1.42, and
# flat plate 1.17, both on the area of the mouth (Aeronautical Engineer's Data Book, fig. 5.13(b)).
CLOTH, PLATE, CUP = 0.75, 1.17, 1.42


def steady_speed(mass: float, drag_area: float, density: float = AIR_DENSITY) -> float:
    """The steady speed in m/s of a mass in kg whose drag coefficient times area is `drag_area` in m².

    v = sqrt(2 W / (rho Cd A)): NASA Glenn Research Center, "Terminal Velocity".
    """
    return math.sqrt(2 * mass * GRAVITY / (density * drag_area))


def fall_time(height: float, speed: float) -> float:
    """Seconds to fall `height` m from rest with a steady speed of `speed` m/s and drag growing as the speed squared.

    From dv/dt = g (1 - v²/V²): t = (V/g) acosh(exp(g h / V²)). For a long fall exp overflows, so acosh(e^x) is
    written as x + ln(1 + sqrt(1 - e^-2x)), which is the same number.
    """
    x = GRAVITY * height / speed**2
    return speed / GRAVITY * (x + math.log1p(math.sqrt(-math.expm1(-2 * x))))


def drag_area(values: Values) -> float:
    """Drag coefficient times area in m² of the canopy described.

    A stiff cone or pyramid lies between the flat plate and the hollow hemisphere by its depth; no single published
    figure covers every depth.
    """
    shape = values.word("canopy")
    width = values.metres("canopy diameter" if values.has("canopy diameter") else "canopy side")
    is_square = shape == "square-pyramid" or (shape == "flat" and not values.has("canopy diameter"))
    mouth = width**2 if is_square else math.pi * width**2 / 4
    if shape == "flat":
        return CLOTH * mouth
    if shape == "hemisphere":
        return CUP * mouth
    depth = min(1.0, _depth(values) / (width / 2))
    return (PLATE + (CUP - PLATE) * depth) * mouth


def _depth(values: Values) -> float:
    """The depth of a cone or pyramid canopy in m; half the width if none is given, as deep as a hemisphere."""
    if values.has("canopy height"):
        return values.metres("canopy height")
    return values.metres("canopy diameter" if values.has("canopy diameter") else "canopy side") / 2


def _speed(values: Values) -> float:
    mass = values.kilograms("load mass") + values.kilograms("canopy mass")
    return steady_speed(mass, drag_area(values), values.number("air density"))


def _time(values: Values) -> float:
    return fall_time(values.metres("drop height"), _speed(values))


def _figures(values: Values) -> tuple[Figure, ...]:
    steady = Figure("steady speed under the canopy", quantity(_speed(values), "m/s"))
    if not values.has("drop height"):
        return (steady,)
    no_canopy = math.sqrt(2 * values.metres("drop height") / GRAVITY)
    return (
        steady,
        Figure("time to fall without any canopy or air", quantity(no_canopy, "s")),
    )


def _net(values: Values, rows: tuple[Values, ...]) -> NetFor | None:
    shape = values.word("canopy")
    width = values.number("canopy diameter" if values.has("canopy diameter") else "canopy side")
    height = quantity(_depth(values) * 1000, "mm")
    if shape == "square-pyramid":
        given = (("sides", quantity(4)), ("base", quantity(width, "mm")), ("height", height))
        return NetFor("pyramid-canopy", given, "corners")
    if shape == "cone":
        return NetFor("cone-canopy", (("diameter", quantity(width, "mm")), ("height", height)), "corners")
    return None


MODEL = ChallengeModel(
    title="Fall under a canopy",
    about="A load hangs below a canopy and falls from a known height. It speeds up until the air holds it back as "
    "hard as it is pulled down, then falls at a steady speed.",
    inputs=(
        Input(
            "canopy",
            WORD,
            "the shape of the canopy",
            words=("flat", "cone", "hemisphere", "square-pyramid"),
            default="flat",
            also=("shape", "canopy shape"),
            tries=("flat", "cone", "square-pyramid"),
            phrase="the shape of the canopy",
            ask="Which shape of canopy falls most slowly?",
            ask_first="Which one comes down slowly?",
        ),
        Input(
            "canopy side",
            "length",
            "side of a square canopy",
            40,
            2000,
            also=("side", "canopy width", "width"),
            tries=(120, 180, 240),
            phrase="the side of the canopy",
            ask="Which canopy falls most slowly?",
            picture="square",
            ask_first="Which one comes down slowly?",
        ),
        Input(
            "canopy diameter",
            "length",
            "width across a round canopy",
            40,
            2000,
            also=("diameter",),
            tries=(150, 225, 300),
            phrase="the width of the canopy",
            ask="Which canopy falls most slowly?",
            picture="disc",
            ask_first="Which one comes down slowly?",
        ),
        Input(
            "canopy height",
            "length",
            "how deep a cone or pyramid is (half its width if left out)",
            5,
            2000,
            also=("depth", "canopy depth"),
            optional=True,
            tries=(40, 80, 120),
            phrase="the depth of the canopy",
            ask="Which canopy falls most slowly?",
            picture="up",
            ask_first="Which one comes down slowly?",
        ),
        Input(
            "load mass",
            "mass",
            "the load, best weighed together with the canopy",
            0.5,
            2000,
            also=("load", "mass", "weight"),
            tries=(5, 10, 20),
            phrase="the load",
            ask="Does a heavier load fall faster?",
        ),
        Input(
            "canopy mass",
            "mass",
            "the canopy, if weighed apart from the load",
            0,
            500,
            0.0,
            phrase="the mass of the canopy",
            quiet=True,
        ),
        Input(
            "drop height",
            "length",
            "from the load's feet to the floor",
            300,
            20000,
            also=("height", "drop"),
            unit="m",
            tries=(1000, 1500, 2000),
            phrase="the height of the drop",
            ask="How much longer is the fall from higher up?",
            picture="up",
        ),
        Input(
            "air density",
            "density",
            "1.225 at sea level, about 1.06 at 1500 m",
            0.6,
            1.5,
            AIR_DENSITY,
            tries=(1.0, 1.1, 1.225),
            quiet=True,
        ),
    ),
    results=(
        Result(
            "time to fall",
            "time",
            "s",
            _time,
            "the time it takes to fall[ {drop height}]",
            0.15,
            ("time", "fall time", "falling time", "time in the air", "drop time", "time to land"),
            shape="power",
        ),
        Result(
            "steady speed",
            "speed",
            "m/s",
            _speed,
            "the steady speed of the fall",
            0.1,
            ("speed", "falling speed", "terminal velocity", "fall speed", "landing speed"),
            without=("drop height",),
            shape="power",
        ),
    ),
    vary="canopy side",
    formula="steady speed v = √(2 m g / (ρ C A)); time to fall h from rest t = (v/g) · arcosh(e^(g h / v²))",
    source="NASA Glenn Research Center, Terminal Velocity; C = 0.75 on the cloth's area for a flat sheet (J. Potvin, "
    "Parks College Parachute Research Group), 1.42 on the mouth's area for a hollow hemisphere and 1.17 for a flat "
    "plate (Aeronautical Engineer's Data Book, fig. 5.13); cone and pyramid lie between the two by their depth",
    spread=0.20,
    keep_same=("the load", "the height of the drop", "the length of the strings", "how you let go", "still air"),
    cautions=(
        "Only a grown-up makes drops from a stair or a chair. Never lean out of a window or over a rail.",
        "Keep the landing place clear. Look up only from the side.",
        "Strings can loop round a neck. Put them away afterwards.",
    ),
    faults_of_build=(
        BuildFault(
            "It drops like a stone", "the canopy did not open", "hold it open by its middle and let go, do not throw"
        ),
        BuildFault(
            "It swings from side to side",
            "air spills out at one edge, then the other",
            "cut a small hole in the very middle",
        ),
        BuildFault("It turns over or tilts", "the strings are not equally long", "tie all strings again at one length"),
        BuildFault(
            "The strings tangle", "they are longer than the canopy is wide", "shorten them to the canopy's width"
        ),
    ),
    why_higher=(
        "It swung or slid sideways, so it fell by a longer way, or a draught held it up.",
        "The load is lighter than was written down: weigh it with the canopy and strings.",
    ),
    why_lower=(
        "The canopy opened late, or never fully, so the first part was a free fall.",
        "The watch was started late: a hand needs about a fifth of a second.",
        "More than the planned weight hangs on it: weigh load, canopy and strings together.",
    ),
    extension="Find the load that makes two different canopies fall side by side. How much heavier is the one?",
    one_of=(("canopy side", "canopy diameter"),),
    figures=_figures,
    model_solid=_net,
    tips=("Press modelling clay on the knot as the load: it is easily made heavier or lighter.",),
)
