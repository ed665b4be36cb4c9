"""A stretched string: its pitch by length, pull and thickness."""

from __future__ import annotations

import math

from packgen.trials.constants import GRAVITY
from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, Result, Values
from packgen.trials.notes import SCALE, pitch
from packgen.units import quantity


def string_pitch(length: float, pull: float, mass_per_metre: float) -> float:
    """The pitch in Hz of a string `length` m long under `pull` N with that many kg a metre: (1/2L) sqrt(T/mu)."""
    return math.sqrt(pull / mass_per_metre) / (2 * length)


def stopped_length(open_length: float, ratio: float) -> float:
    """The length that sounds `ratio` times higher than the open string: open length / ratio."""
    return open_length / ratio


def fret(open_length: float, steps: float) -> float:
    """The distance of a fret from the nut, that many half steps up: S (1 - 2^(-n/12))."""
    return open_length * (1 - 2 ** (-steps / 12))


def _pitch(values: Values) -> float:
    pull = values.kilograms("hanging mass") * GRAVITY
    return string_pitch(values.metres("string length"), pull, values.kilograms("mass of one metre"))


def _figures(values: Values) -> tuple[Figure, ...]:
    length = values.number("string length")
    steps = ((note, stopped_length(length, pitch(note) / pitch("C4"))) for note in SCALE[1:])
    names = ("second", "third", "fourth", "fifth", "sixth", "seventh", "octave")
    return tuple(
        Figure(f"length for the {name} of the scale", quantity(round(found, 1), "mm"))
        for name, (_, found) in zip(names, steps, strict=True)
    )


MODEL = ChallengeModel(
    title="Strings",
    about="A string stretched over two bridges sounds higher when it is shorter, tighter or thinner. Half the length "
    "sounds an octave higher.",
    inputs=(
        Input(
            "string length",
            "length",
            "between the bridges",
            50,
            3000,
            600.0,
            also=("length", "sounding length"),
            tries=(300, 400, 600),
            phrase="the length of the string",
            ask="Which string sounds highest?",
        ),
        Input(
            "hanging mass",
            "mass",
            "the weight that stretches the string",
            20,
            20000,
            1000.0,
            also=("weight", "load mass", "tension mass", "load"),
            tries=(500, 1000, 2000),
            phrase="the weight that stretches it",
            ask="Does a tighter string sound higher?",
        ),
        Input(
            "mass of one metre",
            "mass",
            "one metre of the string, weighed (fishing line 0.4 mm thick: 0.14 g)",
            0.02,
            60,
            0.3,
            also=("string mass", "mass per metre", "mass of a metre"),
            tries=(0.15, 0.3, 0.6),
            phrase="the thickness of the string",
            ask="Which string sounds lowest, thin or thick?",
        ),
    ),
    results=(
        Result(
            "pitch",
            "frequency",
            "Hz",
            _pitch,
            "the pitch it sounds",
            4.0,
            ("frequency", "note", "tone"),
            shape="power",
            slips=((2.0, "That is an octave too high: pluck it in the middle."),),
        ),
    ),
    vary="string length",
    formula="f = √(m g / μ) / 2L",
    source="Mersenne's law; worked string of 0.64 m at 330 Hz in University of British Columbia, Physics 420",
    spread=0.12,
    keep_same=("the string", "the weight that stretches it", "the length of the string", "where you pluck"),
    cautions=(
        "Wear safety glasses to protect your eyes: a string can snap. Hang the weight low, above a cushion.",
        "Never wind fishing line round your fingers. It cuts.",
    ),
    faults_of_build=(
        BuildFault("It buzzes", "it touches the board", "raise the bridges"),
        BuildFault(
            "The pitch sinks slowly", "the string still stretches or the knot slips", "wait some minutes, then tune"
        ),
        BuildFault("It is very quiet", "nothing sounds with it", "stand it on a box or a tin"),
    ),
    why_higher=(
        "Rubbing over the bridge keeps part of the pull on the sounding side.",
        "It was pressed down hard, which stretches it.",
    ),
    why_lower=("Rubbing over the bridge takes part of the weight.", "The string is thicker than the one weighed."),
    extension="Put the bridge at the lengths of the scale and play a tune.",
    figures=_figures,
    tips=("A tuner on a telephone shows the pitch in Hz.",),
    also=("string", "monochord", "stringed instrument"),
    finds_out=True,
)
