"""A spinning disc or drum of pictures seen through slots."""

from __future__ import annotations

from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, Result, Values
from packgen.units import quantity


def pictures_a_second(slots: float, turns_a_second: float) -> float:
    """How many pictures pass in a second: slots x turns."""
    return slots * turns_a_second


def turns_for(pictures: float, wanted: float) -> float:
    """Turns in a second that show `wanted` pictures a second; the inverse of `pictures_a_second`."""
    return wanted / pictures


def _turns(values: Values) -> float:
    return turns_for(values.number("pictures"), values.number("pictures a second"))


def _counted(values: Values) -> float:
    return _turns(values) * values.number("counting time")


def _seen(values: Values) -> float:
    return pictures_a_second(values.number("pictures"), values.number("turning speed"))


def _figures(values: Values) -> tuple[Figure, ...]:
    return (
        Figure("angle from one picture to the next", quantity(360 / values.number("pictures"), "deg")),
        Figure("speed at which it begins to move", quantity(_turns(values) * 60, "rpm")),
    )


MODEL = ChallengeModel(
    title="Spinning picture disc",
    about="Pictures on a disc or in a drum, each a little further on than the last, seem to move when about ten "
    "of them pass the eye in a second.",
    inputs=(
        Input(
            "pictures",
            "count",
            "pictures, and slots, around the disc",
            3,
            36,
            12.0,
            whole=True,
            also=("number of pictures", "slots", "frames", "number of frames"),
            tries=(6, 8, 12),
            phrase="the number of pictures",
            ask="How fast must it spin before the pictures move?",
            ask_first="Which one seems to move?",
        ),
        Input(
            "pictures a second",
            "count",
            "how many make smooth motion: about 10",
            4,
            30,
            10.0,
            quiet=True,
            also=("frame rate",),
            tries=(8, 10, 12),
            phrase="the number of pictures in a second",
        ),
        Input("counting time", "time", "how long turns are counted", 2, 120, 10.0, also=("time",), tries=(5, 10, 20)),
        Input(
            "turning speed",
            "frequency",
            "how fast it is spun",
            0.1,
            20,
            1.0,
            unit="rpm",
            also=("speed", "spin"),
            tries=(0.5, 1, 2),
            phrase="the speed of the spin",
            ask="At which speed does it look best?",
        ),
    ),
    results=(
        Result(
            "turns counted",
            "count",
            "",
            _counted,
            "the number of turns[ in {counting time}] at which it moves smoothly",
            2.0,
            ("turns", "number of turns", "spins"),
            without=("turning speed",),
            shape="power",
        ),
        Result(
            "turning speed",
            "frequency",
            "rpm",
            _turns,
            "the speed at which it moves smoothly",
            5 / 60,
            ("speed", "turns per minute", "turns in a minute"),
            without=("turning speed", "counting time"),
            same_question=True,
            shape="power",
        ),
        Result(
            "pictures seen in a second",
            "count",
            "",
            _seen,
            "the number of pictures that pass in a second",
            1.0,
            ("pictures", "frames a second", "frame rate"),
            without=("pictures a second", "counting time"),
        ),
    ),
    vary="pictures",
    formula="pictures a second = slots · turns a second; about 10 a second look like motion",
    source="motion is seen from about 10 pictures a second (Real-time 3D Character Animation, ch. 8)",
    spread=0.30,
    keep_same=("the disc", "the light", "how far away you look", "the speed of the spin", "the number of pictures"),
    cautions=(
        "Flicker can bring on a fit in some people. Stop if anyone feels unwell. Never use a flashing lamp.",
        "Only a grown-up uses the pin and the knife.",
    ),
    faults_of_build=(
        BuildFault("Everything is a smear", "the slots are wide", "make them 3 to 4 mm wide"),
        BuildFault(
            "The pictures drift round", "there is one slot more or fewer than pictures", "use as many slots as pictures"
        ),
        BuildFault("It is dark", "the slots side is light", "blacken the side you look at, light the pictures"),
    ),
    why_higher=("The pictures differ too much from one to the next, so it needs more speed.",),
    why_lower=(
        "The pictures differ little from one to the next, so it moves sooner.",
        "It slowed down while turns were counted.",
    ),
    extension="Make one picture fewer than slots. Which way does the drawing walk?",
    figures=_figures,
    tips=("Mark the edge with a sticker to count turns; film it to be sure.",),
    also=("spinning disc", "picture wheel", "picture drum"),
)
