"""A flat-bottomed boat: what it carries and how high its sides stand out of the water."""

from __future__ import annotations

from packgen.trials.constants import SEA_WATER_DENSITY, WATER_DENSITY
from packgen.trials.frame import WORD, BuildFault, ChallengeModel, Figure, Input, NetFor, Result, Values, WillNotWork
from packgen.units import quantity

_DENSITY = {"fresh": WATER_DENSITY, "salt": SEA_WATER_DENSITY}


def greatest_cargo(length: float, width: float, height: float, hull: float, density: float = WATER_DENSITY) -> float:
    """The cargo in g that sinks a box of those mm to its rim, level: water pushed aside less the hull (Archimedes)."""
    return density / 1e6 * length * width * height - hull


def depth_in_water(total: float, length: float, width: float, density: float = WATER_DENSITY) -> float:
    """How deep in mm a box of that plan lies in the water with a total mass of `total` g."""
    return total / (density / 1e6 * length * width)


def _plan(values: Values) -> tuple[float, float, float]:
    """Length, width and height of the hull in mm. A square sheet folded up on all sides loses its height twice."""
    height = values.number("hull height")
    if not values.has("sheet side"):
        return values.number("hull length"), values.number("hull width"), height
    side = values.number("sheet side") - 2 * height
    if side <= 0:
        raise WillNotWork("the sides are so high that no bottom is left", "lower `hull height`", "given")
    return side, side, height


def _cargo(values: Values) -> float:
    cargo = greatest_cargo(*_plan(values), values.number("hull mass"), _DENSITY[values.word("water")])
    if cargo <= 0:
        raise WillNotWork("the hull is too heavy to float", "make it larger or lighter", "given")
    return cargo


def _weights(values: Values) -> float:
    return _cargo(values) / values.number("one weight")


def _freeboard(values: Values) -> float:
    length, width, height = _plan(values)
    total = values.number("hull mass") + values.number("load mass")
    above = height - depth_in_water(total, length, width, _DENSITY[values.word("water")])
    if above <= 0:
        raise WillNotWork("with this load it sinks", "take a lighter `load mass` or a larger boat", "given")
    return above


def _figures(values: Values) -> tuple[Figure, ...]:
    length, width, _ = _plan(values)
    one = depth_in_water(10, length, width, _DENSITY[values.word("water")])
    return (Figure("how much deeper every 10 g presses it", quantity(one, "mm")),)


def _net(values: Values, rows: tuple[Values, ...]) -> NetFor | None:
    """The hull as an open box."""
    length, width, height = _plan(values)
    sizes = (("length", length), ("width", width), ("height", height))
    return NetFor("open-box", tuple((name, quantity(size, "mm")) for name, size in sizes))


MODEL = ChallengeModel(
    title="Boat load",
    about="A boat with a flat bottom floats until its load pushes its rim under. It carries as much as the water it "
    "pushes aside weighs.",
    inputs=(
        Input(
            "hull length",
            "length",
            "of the bottom",
            20,
            1000,
            100.0,
            also=("length", "boat length"),
            tries=(80, 100, 120),
            phrase="the length of the boat",
            ask="Which boat carries most?",
        ),
        Input(
            "hull width",
            "length",
            "of the bottom",
            20,
            1000,
            60.0,
            also=("width", "boat width"),
            tries=(40, 60, 80),
            phrase="the width of the boat",
            ask="Which boat carries most?",
        ),
        Input(
            "hull height",
            "length",
            "of the sides",
            3,
            400,
            20.0,
            also=("height", "side height", "boat height", "depth"),
            tries=(10, 20, 30),
            phrase="the height of the sides",
            ask="Which boat carries most?",
            picture="up",
        ),
        Input(
            "sheet side",
            "length",
            "side of a square sheet (foil) whose edges are folded up",
            40,
            1000,
            also=("foil side", "sheet size", "foil size"),
            tries=(100, 150, 200),
            phrase="the size of the sheet",
            ask="Which boat carries most?",
        ),
        Input(
            "hull mass",
            "mass",
            "the empty boat",
            0.1,
            5000,
            5.0,
            also=("boat mass", "mass of the boat"),
            tries=(5, 10, 20),
            phrase="the weight of the empty boat",
        ),
        Input(
            "load mass",
            "mass",
            "the load for measuring how high the sides stand",
            0,
            100000,
            50.0,
            also=("load", "cargo"),
            tries=(20, 40, 60),
            phrase="the load",
            ask="How low does it sink with each load?",
        ),
        Input(
            "water",
            WORD,
            "fresh or salt",
            words=("fresh", "salt"),
            default="fresh",
            tries=("fresh", "salt"),
            phrase="the water",
            ask="Does it carry more in salt water?",
            quiet=True,
        ),
        Input(
            "one weight",
            "mass",
            "one of the coins or washers used as weights",
            0.2,
            500,
            2.5,
            also=("coin mass", "one coin", "washer mass"),
            tries=(2.5, 5.0),
        ),
    ),
    results=(
        Result(
            "load carried",
            "mass",
            "g",
            _cargo,
            "the load it carries",
            3.0,
            ("load", "cargo", "mass carried", "greatest load", "weight carried", "mass"),
            without=("load mass", "one weight"),
        ),
        Result(
            "weights carried",
            "count",
            "",
            _weights,
            "the number of weights it carries",
            2.0,
            (
                "coins",
                "number of coins",
                "coins carried",
                "pennies",
                "number of pennies",
                "washers",
                "number of weights",
                "weights",
            ),
            without=("load mass",),
            whole=True,
            same_question=True,
        ),
        Result(
            "freeboard",
            "length",
            "mm",
            _freeboard,
            "the height of its sides above the water",
            2.0,
            ("height above water", "side above water", "rim above water"),
            without=("one weight",),
        ),
    ),
    vary="hull height",
    formula="load = ρ · length · width · height − hull; freeboard = height − (hull + load) / (ρ · length · width)",
    source="Archimedes' principle; worked box hull in a school sheet on foil boats (10 × 5 × 2 cm carries 100 g less "
    "its own mass)",
    spread=0.25,
    keep_same=("the sheet", "the length of the boat", "the width of the boat", "the height of the sides", "the water"),
    cautions=(
        "Never leave a young child alone with water. Empty the tub afterwards and wipe the floor.",
        "Coins and washers are small parts. Keep them away from children under three.",
        "The edges of foil can cut. Fold them over.",
    ),
    faults_of_build=(
        BuildFault(
            "It tips over",
            "the load lies to one side or high up",
            "spread it flat and lay the first ones in the corners",
        ),
        BuildFault("It leaks at the corners", "they are cut", "fold the corners in, do not cut them"),
        BuildFault("The sides lean in", "the foil is thin", "fold a rim all round"),
    ),
    why_higher=("The sides lean outwards, so the boat is larger at the rim than at the bottom.",),
    why_lower=("It tipped before it was full: the usual reason.", "The sides bent inwards.", "Water leaked in."),
    extension="From one sheet, which height of the sides carries most? (A sixth of the sheet's side.)",
    one_of=(("hull length", "sheet side"),),
    figures=_figures,
    model_solid=_net,
    tips=("Lay the weights gently, first in the corners, then in the middle.",),
    also=("boat", "raft", "foil boat"),
)
