"""Lifting a load with a rope over one or more pulleys."""

from __future__ import annotations

from packgen.trials.constants import GRAVITY
from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, Result, Values
from packgen.units import quantity


def advantage(strands: float, kept: float = 1.0) -> float:
    """How many times easier it gets with that many strands holding the load: n if nothing rubs.

    Each wheel passes on the share `kept` of the pull, so the strands pull with kept, kept², ... kept^n.
    """
    return sum(kept ** (i + 1) for i in range(round(strands)))


def _gain(values: Values) -> float:
    return advantage(values.number("strands"), 1 - values.number("loss at each wheel") / 100)


def _mass(values: Values) -> float:
    return values.number("load mass") / _gain(values)


def _pull(values: Values) -> float:
    return _mass(values) / 1000 * GRAVITY


def _rope(values: Values) -> float:
    return values.number("strands") * values.number("lift height")


def _figures(values: Values) -> tuple[Figure, ...]:
    return (
        Figure("how many times easier if nothing rubbed", quantity(values.number("strands"))),
        Figure("how many times easier with rubbing", quantity(_gain(values))),
    )


MODEL = ChallengeModel(
    title="Pulleys",
    about="Each strand of rope that holds the load carries a share of it, so more strands make it lighter to lift and "
    "longer to pull.",
    inputs=(
        Input(
            "strands",
            "count",
            "strands of rope that hold the load",
            1,
            8,
            2.0,
            whole=True,
            also=("supporting strands", "ropes", "number of pulleys", "pulleys"),
            tries=(1, 2, 3),
            phrase="the number of strands",
            ask="With how many strands is it lightest?",
            picture="dots",
            ask_first="Which one is light to pull?",
        ),
        Input(
            "load mass",
            "mass",
            "what is lifted, with its pulley",
            5,
            50000,
            200.0,
            also=("load", "mass"),
            tries=(100, 200, 300),
            phrase="the load",
            ask="Which load is hardest to lift?",
        ),
        Input(
            "loss at each wheel",
            "percent",
            "what rubbing takes at each wheel: 5 to 20 % (common practice, no source)",
            0,
            50,
            10.0,
            also=("loss", "friction"),
        ),
        Input(
            "lift height",
            "length",
            "how far the load is lifted",
            20,
            5000,
            200.0,
            also=("height", "lift"),
            tries=(100, 200, 300),
            phrase="the height of the lift",
        ),
    ),
    results=(
        Result(
            "pull needed",
            "force",
            "N",
            _pull,
            "the pull needed",
            0.1,
            ("pull", "force", "effort"),
            without=("lift height",),
            shape="power",
        ),
        Result(
            "weight that lifts it",
            "mass",
            "g",
            _mass,
            "the weight that lifts it",
            5.0,
            ("mass", "weight", "counterweight"),
            without=("lift height",),
            same_question=True,
            shape="power",
        ),
        Result(
            "rope pulled",
            "length",
            "mm",
            _rope,
            "the length of rope you pull[ to lift it {lift height}]",
            10.0,
            ("rope", "length of rope", "string pulled"),
            without=("load mass", "loss at each wheel"),
            spread=0.05,
        ),
    ),
    vary="strands",
    formula="pull = load · g / (e + e² + ... + eⁿ) with e = 1 − loss; rope pulled = n · lift",
    source="ideal advantage is the number of strands that hold the load: school text on pulleys (aptitude-test "
    "preparation page: three strands, 3; one fixed pulley, 1)",
    spread=0.20,
    keep_same=("the load", "the rope", "the height of the lift", "how fast you pull"),
    cautions=(
        "Never hang from it or lift anything over a person.",
        "Keep fingers out of the wheels.",
        "A rope can loop round a neck. Take it down afterwards.",
    ),
    faults_of_build=(
        BuildFault("It stays where it is let go", "the wheels rub", "wax the axle or use a smooth spool on a pencil"),
        BuildFault("The strands twist together", "they hang too close", "spread them with a second hook"),
        BuildFault("The rope jumps off", "the wheel has no rim", "glue card discs to both sides"),
    ),
    why_higher=(
        "The wheels rub more than usual: thin thread on a fat, smooth spool is best.",
        "The weight of the lower pulley was left out.",
    ),
    why_lower=("The scale was read while the load came down.",),
    extension="How much rope did each extra strand cost? Multiply pull and rope: what do you find?",
    figures=_figures,
    tips=("Read the scale while the load moves up slowly.",),
    also=("pulley", "block and tackle"),
    finds_out=True,
)
