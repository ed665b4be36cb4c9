"""A beam on a pivot: what balances what, and how far out."""

from __future__ import annotations

from packgen.trials.constants import GRAVITY
from packgen.trials.frame import BuildFault, ChallengeModel, Input, Result, Values


def balancing(load: float, load_arm: float, effort_arm: float) -> float:
    """The effort that balances a load, in the load's unit: effort x effort arm = load x load arm (Archimedes)."""
    return load * load_arm / effort_arm


def _mass(values: Values) -> float:
    return balancing(values.number("load mass"), values.number("load distance"), values.number("effort distance"))


def _force(values: Values) -> float:
    return _mass(values) / 1000 * GRAVITY


def _distance(values: Values) -> float:
    return values.number("load mass") * values.number("load distance") / values.number("effort mass")


def _coins(values: Values) -> float:
    return _mass(values) / values.number("one weight")


MODEL = ChallengeModel(
    title="Lever and balance",
    about="A beam on a pivot balances when load times distance is the same on both sides.",
    inputs=(
        Input(
            "load mass",
            "mass",
            "what is to be lifted or balanced",
            0.5,
            200000,
            also=("load", "mass"),
            tries=(20, 40, 60),
            phrase="the load",
            ask="Which load is hardest to lift?",
        ),
        Input(
            "load distance",
            "length",
            "from the pivot to the load",
            5,
            5000,
            100.0,
            also=("load arm",),
            tries=(50, 100, 150),
            phrase="the distance from the pivot to the load",
            ask="Where is the load easiest to lift?",
        ),
        Input(
            "effort distance",
            "length",
            "from the pivot to the push or the weights",
            5,
            5000,
            200.0,
            also=("effort arm", "push distance"),
            tries=(100, 150, 200),
            phrase="the distance from the pivot to the push",
            ask="Where do you need to push least?",
        ),
        Input(
            "effort mass",
            "mass",
            "the weight that is moved along the beam",
            0.5,
            200000,
            20.0,
            also=("effort", "counterweight", "weight"),
            tries=(10, 20, 40),
            phrase="the weight on the other side",
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
            phrase="the size of one weight",
        ),
    ),
    results=(
        Result(
            "weight that balances",
            "mass",
            "g",
            _mass,
            "the weight that balances it",
            1.0,
            ("mass", "effort", "balancing mass", "weight", "counterweight", "weight to balance", "effort mass"),
            without=("effort mass", "one weight"),
            shape="power",
        ),
        Result(
            "number of weights",
            "count",
            "",
            _coins,
            "the number of weights that balance it",
            1.0,
            ("coins", "number of coins", "pennies", "number of pennies", "washers", "number of washers"),
            without=("effort mass",),
            whole=True,
            same_question=True,
            shape="power",
        ),
        Result(
            "push needed",
            "force",
            "N",
            _force,
            "the push needed",
            0.1,
            ("force", "effort force", "push"),
            without=("effort mass", "one weight"),
            same_question=True,
            shape="power",
        ),
        Result(
            "distance that balances",
            "length",
            "mm",
            _distance,
            "the distance from the pivot where it balances",
            5.0,
            ("distance", "balance distance", "balancing distance"),
            without=("effort distance", "one weight"),
            shape="power",
        ),
    ),
    vary="effort distance",
    formula="effort × effort distance = load × load distance",
    source="OpenStax College Physics for AP Courses, section 9.3 and example 9.3",
    spread=0.10,
    keep_same=("the beam", "the pivot", "the load", "where the load sits"),
    cautions=(
        "A loaded beam can tip. Keep fingers from under it and heavy loads low.",
        "Coins and washers are small parts. Keep them away from children under three.",
    ),
    faults_of_build=(
        BuildFault(
            "The empty beam does not balance",
            "the pivot is not under its middle",
            "move the beam, or put a lump of clay on the light end",
        ),
        BuildFault(
            "It tips all at once and never rests",
            "the weights sit above the beam",
            "hang them below, or widen the pivot a little",
        ),
        BuildFault("It stays where you put it", "the pivot rubs", "use a pencil or a folded card edge"),
    ),
    why_higher=(
        "The distance was measured to the edge of the weights, not to their middle.",
        "The pivot rubs, so some extra weight did not tip it.",
    ),
    why_lower=(
        "The beam was heavier on the side of the weights before anything was put on it.",
        "The load slid towards the pivot.",
    ),
    extension="Build a balance that weighs letters: mark the beam where 5, 10 and 20 g balance.",
    tips=("Balance the empty beam first.",),
    also=("balance", "seesaw", "see-saw"),
    finds_out=True,
)
