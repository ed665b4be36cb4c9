"""Pipes that sound when blown: the pitch of a length, and the lengths of a scale."""

from __future__ import annotations

from packgen.trials.constants import sound_speed
from packgen.trials.frame import WORD, BuildFault, ChallengeModel, Figure, Input, Result, Values, WillNotWork
from packgen.trials.notes import NOTES, SCALE, pitch
from packgen.units import quantity

END = 0.61
"""The air beyond an open end swings too: each open end adds 0.61 of the radius, 0.3 of the bore (acoustics texts)."""


def pipe_length(frequency: float, speed: float, stopped: bool, radius: float = 0.0) -> float:
    """The length in mm that sounds at `frequency` Hz: c/4f if one end is stopped, c/2f if open, less the ends.

    `speed` in m/s, `radius` of the bore in mm.
    """
    return 1000 * speed / ((4 if stopped else 2) * frequency) - END * radius * (1 if stopped else 2)


def pipe_pitch(length: float, speed: float, stopped: bool, radius: float = 0.0) -> float:
    """The pitch in Hz of a pipe `length` mm long; the inverse of `pipe_length`."""
    sounding = length + END * radius * (1 if stopped else 2)
    return 1000 * speed / ((4 if stopped else 2) * sounding)


def _pitch(values: Values) -> float:
    if values.number("bore") > values.number("pipe length"):
        raise WillNotWork("a pipe wider than it is long has no clear note", "take a narrower or longer pipe", "given")
    return pipe_pitch(values.number("pipe length"), *_pipe(values))


def _pipe(values: Values) -> tuple[float, bool, float]:
    return sound_speed(values.number("air temperature")), values.word("ends") == "stopped", values.number("bore") / 2


def _length(values: Values) -> float:
    length = pipe_length(pitch(values.word("note")), *_pipe(values))
    if length < values.number("bore"):
        raise WillNotWork("a pipe wider than it is long has no clear note", "take a narrower pipe", "given")
    return length


def _figures(values: Values) -> tuple[Figure, ...]:
    lengths = ((note, pipe_length(pitch(note), *_pipe(values))) for note in SCALE)
    return tuple(Figure(f"pipe for {note}", quantity(round(length, 1), "mm")) for note, length in lengths if length > 0)


MODEL = ChallengeModel(
    title="Sounding pipes",
    about="Blown across its end, a pipe sounds a note. The shorter the pipe, the higher the note; a stopped pipe "
    "sounds an octave lower than an open one of the same length.",
    inputs=(
        Input(
            "pipe length",
            "length",
            "inside, from the open end to the stopper or the other end",
            20,
            3000,
            200.0,
            also=("length", "straw length", "tube length"),
            tries=(120, 160, 200),
            phrase="the length of the pipe",
            ask="Which pipe sounds highest?",
        ),
        Input(
            "bore",
            "length",
            "the width inside the pipe",
            2,
            120,
            10.0,
            also=("diameter", "pipe diameter", "width"),
            tries=(6, 10, 16),
            phrase="the width of the pipe",
            ask="Does a wider pipe sound lower?",
        ),
        Input(
            "ends",
            WORD,
            "one end stopped, or both open",
            words=("stopped", "open"),
            default="stopped",
            also=("end", "pipe ends"),
            tries=("stopped", "open"),
            phrase="the far end of the pipe",
            ask="Which sounds lower, a stopped or an open pipe?",
        ),
        Input(
            "note",
            WORD,
            "the note to build",
            words=NOTES,
            default="C4",
            also=("notes",),
            tries=("C4", "E4", "G4"),
            phrase="the note",
            ask="Which note needs the longest pipe?",
        ),
        Input(
            "air temperature",
            "temperature",
            "warm air sounds higher",
            -20,
            45,
            20.0,
            also=("temperature",),
            tries=(0, 15, 30),
            quiet=True,
        ),
    ),
    results=(
        Result(
            "pitch",
            "frequency",
            "Hz",
            _pitch,
            "the pitch of the note",
            4.0,
            ("frequency", "note", "tone", "pitch of the note"),
            without=("note",),
            shape="power",
            slips=(
                (2.0, "That is an octave too high: blow more softly."),
                (3.0, "That is an overtone: blow more softly."),
            ),
        ),
        Result(
            "length of the pipe",
            "length",
            "mm",
            _length,
            "the length of the pipe",
            3.0,
            ("length", "pipe length", "cut length"),
            without=("pipe length",),
        ),
    ),
    vary="pipe length",
    formula="stopped: f = c / 4(L + 0.61 r); open: f = c / 2(L + 1.22 r); c = 331.3 √(1 + t/273.15) m/s",
    source="pan-flute and pipe acoustics (encyclopaedia article; end correction 0.3 of the bore for each open end); "
    "pitches from A = 440 Hz (ISO 16; B. H. Suits, Physics of Music, Michigan Technological University)",
    spread=0.05,
    keep_same=("the width of the pipe", "the far end of the pipe", "how you blow", "the length of the pipe"),
    cautions=(
        "Blow only your own pipes. Sand or tape the ends smooth.",
        "Rest between notes. Long blowing makes you dizzy.",
        "Only a grown-up uses the saw and the knife.",
    ),
    faults_of_build=(
        BuildFault(
            "Only a hiss",
            "the breath misses the far edge",
            "rest the pipe on the lower lip, blow across as over a bottle",
        ),
        BuildFault("It jumps to a high note", "blown too hard", "blow softly and evenly"),
        BuildFault("The note wobbles", "the stopper leaks", "press in clay or wax"),
    ),
    why_higher=("The stopper sits further in, so the pipe is shorter inside than outside.", "It was blown hard."),
    why_lower=(
        "The lip covers part of the opening: this can lower the note by a half-step or more.",
        "The stopper leaks.",
    ),
    extension="Build the scale from the table of lengths and tune each pipe by pushing its stopper.",
    figures=_figures,
    tips=(
        "Cut a little long, then shorten: a pipe cannot be made longer again.",
        "A tuner on a telephone shows the pitch in Hz.",
    ),
    also=("pipes", "pan pipes", "panpipe", "straw pipe"),
    finds_out=True,
)
