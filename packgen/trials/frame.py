"""The values a challenge model is made of, and the words for what is wrong with a parent's `given`.

All numbers are in the base units of `packgen.units.BASE` (mm, g, s, deg, ...) unless a name says otherwise. A model
never sees a parent's unit: `Values` hands it metres and kilograms where its formula wants them.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from packgen.units import BASE, Quantity

WORD = "word"
_EXAMPLES = {
    "length": "60 mm", "mass": "20 g", "time": "5 s", "angle": "30 deg", "temperature": "20 °C", "volume": "250 ml",
    "speed": "3 m/s", "force": "2 N", "frequency": "440 Hz", "grammage": "80 g/m²", "count": "4", "percent": "40 %",
    "density": "1.2 kg/m³", "flow": "60 ml/s",
}  # fmt: skip
_ARTICLES = {"angle": "an angle", "count": "a plain number", "percent": "a percentage", "flow": "a flow of water"}


def example_of(dimension: str) -> str:
    """What a value of that dimension looks like, e.g. "a length such as 60 mm"."""
    return f"{_ARTICLES.get(dimension, 'a ' + dimension)} such as {_EXAMPLES[dimension]}"


class TrialError(ValueError):
    """Something in a challenge cannot be used.

    `about` says which part, for whoever knows the file's lines: "model", "given", "given:NAME", "change", "measure".
    """

    def __init__(self, message: str, instead: str, about: str = "model") -> None:
        super().__init__(message)
        self.message, self.instead, self.about = message, instead, about


class WillNotWork(TrialError):
    """The numbers are allowed, but the thing would not work: the load is too heavy, the boat sinks by itself."""


@dataclass(frozen=True, slots=True)
class Input:
    """A quantity (or a choice of words) that a challenge's `given` may hold.

    `low`, `high`, `default` and `tries` are in base units; a `default` of None means the parent must give it. `tries`
    are the values to try when a parent names this as the thing to change and plans none. `unit` is the metric unit to
    show it in; `phrase` and `ask` are its child's words ("the side of the canopy"; "Which canopy falls most slowly?"),
    `ask_first` those for the youngest where they are simpler. `picture` is how these see it drawn (a name in
    packgen.page.values_drawn; "": by its dimension). A `whole` one is counted; a `quiet` one is taken as usual without
    a word, because it matters little. A `clock` one is an hour of the day, so 9:30 may be written.
    """

    name: str
    dimension: str
    help: str
    low: float = 0.0
    high: float = 0.0
    default: float | str | None = None
    words: tuple[str, ...] = ()
    also: tuple[str, ...] = ()
    unit: str = ""
    tries: tuple[float | str, ...] = ()
    phrase: str = ""
    ask: str = ""
    optional: bool = False
    whole: bool = False
    quiet: bool = False
    clock: bool = False
    picture: str = ""
    ask_first: str = ""

    @property
    def needed(self) -> bool:
        """True if the model cannot do without a value from the parent."""
        return self.default is None and not self.optional

    @property
    def shown_unit(self) -> str:
        """The metric unit this is shown in."""
        return self.unit or BASE.get(self.dimension, "")

    @property
    def said(self) -> str:
        """The quantity as a child would say it, with its article."""
        return self.phrase or f"the {self.name}"


@dataclass(frozen=True, slots=True)
class Values:
    """Checked values by name, in base units."""

    pairs: tuple[tuple[str, float | str], ...]

    def get(self, name: str) -> float | str | None:
        """The value of that name, or None if there is none."""
        return next((value for key, value in self.pairs if key == name), None)

    def number(self, name: str) -> float:
        """The number of that name in its base unit. Raises KeyError if it was not given."""
        value = self.get(name)
        if value is None or isinstance(value, str):
            raise KeyError(name)
        return value

    def word(self, name: str) -> str:
        """The word chosen for that name. Raises KeyError if it was not given."""
        value = self.get(name)
        if not isinstance(value, str):
            raise KeyError(name)
        return value

    def metres(self, name: str) -> float:
        """A length in m."""
        return self.number(name) / 1000

    def kilograms(self, name: str) -> float:
        """A mass in kg."""
        return self.number(name) / 1000

    def has(self, name: str) -> bool:
        """True if there is a value of that name."""
        return self.get(name) is not None

    def changed(self, name: str, value: float | str) -> Values:
        """These values with one of them replaced or added."""
        return Values((*((k, v) for k, v in self.pairs if k != name), (name, value)))


@dataclass(frozen=True, slots=True)
class Result:
    """Something a child can measure, and its formula.

    `of` gives the expected number in the base unit of `dimension` and may raise WillNotWork. `phrase` is the child's
    wording; `{input name}` is filled in, and a part in [brackets] falls away when that input is the one changed.
    `least` is the smallest half-width of the expected band (what a hand and an eye can tell, base unit). `without`
    names inputs this result does not need. `slips` are (factor, hint) pairs for a number that came out a known
    multiple of the expected one. `spread` replaces the model's where this is harder or easier to measure. `shape` is
    the best-fit curve to try (line or power); with `same_question` an input's `ask` serves for this result too.
    """

    name: str
    dimension: str
    unit: str
    of: Callable[[Values], float]
    phrase: str
    least: float = 0.0
    also: tuple[str, ...] = ()
    without: tuple[str, ...] = ()
    slips: tuple[tuple[float, str], ...] = ()
    spread: float | None = None
    whole: bool = False
    shape: str = "line"
    same_question: bool = False


@dataclass(frozen=True, slots=True)
class Expected:
    """What a trial should give: a number and the band a careful home trial falls in, all in `unit`."""

    value: float
    low: float
    high: float
    dimension: str
    unit: str

    @property
    def text(self) -> str:
        """The expectation as the guide prints it: "1.6 s (1.3 to 1.9 s)"."""
        digits = figures_for(self.high - self.low, max(abs(self.low), abs(self.high)))
        if self.dimension == "count" and self.high - self.low >= 1:
            digits = 0
        unit = f" {self.unit}" if self.unit and self.unit not in ("°", "°C", "°F", "%") else self.unit
        value, low, high = (plain(number, digits) for number in (self.value, self.low, self.high))
        return f"{value}{unit} ({low} to {high}{unit})"


@dataclass(frozen=True, slots=True)
class BuildFault:
    """A common fault of the build: what is seen, what usually causes it, what to try."""

    symptom: str
    cause: str
    remedy: str


@dataclass(frozen=True, slots=True)
class Figure:
    """A number worth printing beside the build, worked out from the given values: the best hole, a mirror's length."""

    label: str
    value: Quantity


@dataclass(frozen=True, slots=True)
class NetFor:
    """The solid that builds the model: its name in the nets catalogue and its `given` values."""

    solid: str
    given: tuple[tuple[str, Quantity], ...]
    holes: str = ""


@dataclass(frozen=True, slots=True)
class ChallengeModel:
    """The physics of one kind of challenge, with what a guide should know about it.

    `results[0]` is what is measured unless the parent names another; `vary` is changed unless the parent names
    another. `spread` is the typical half-width of a home trial as a fraction of the value (common practice, no
    source). In each group of `one_of` exactly one quantity is used; the first has the default, if any. With `finds_out`
    the job is to find something out: there is little to design, so the children's pages ask for no ideas.
    `model_solid` gives the net for one row, knowing them all, so that the nets of a set differ in one thing only.
    """

    title: str
    about: str
    inputs: tuple[Input, ...]
    results: tuple[Result, ...]
    vary: str
    formula: str
    source: str
    spread: float
    keep_same: tuple[str, ...]
    cautions: tuple[str, ...]
    faults_of_build: tuple[BuildFault, ...]
    why_higher: tuple[str, ...]
    why_lower: tuple[str, ...]
    extension: str
    one_of: tuple[tuple[str, ...], ...] = ()
    figures: Callable[[Values], tuple[Figure, ...]] | None = None
    figures_most: str = ""
    """The input whose highest planned value the figures hold for; those of the middle row if empty."""
    model_solid: Callable[[Values, tuple[Values, ...]], NetFor | None] | None = None
    tips: tuple[str, ...] = ()
    also: tuple[str, ...] = ()
    finds_out: bool = False
    key: str = ""

    @property
    def result(self) -> Result:
        """What is measured unless the parent names something else."""
        return self.results[0]

    @property
    def why_different(self) -> tuple[str, ...]:
        """Every usual reason for a result outside the expected band."""
        return self.why_higher + self.why_lower

    def compute(self, values: Values) -> float:
        """The expected number of `result`, in its base unit. Raises WillNotWork."""
        return self.results[0].of(values)

    def input(self, name: str) -> Input | None:
        """The input of that name or one of its other names, or None."""
        wanted = tidy(name)
        return next((i for i in self.inputs if wanted == i.name or wanted in i.also), None)

    def find_result(self, what: str) -> Result | None:
        """The result a parent's `measure` means, or None if the model does not know it."""
        wanted = tidy(what)
        return next((r for r in self.results if wanted == r.name or wanted in r.also), None)

    def question(
        self,
        level: str,
        what: Result | None = None,
        change: Input | None = None,
        texts: tuple[tuple[str, str], ...] = (),
    ) -> str:
        """The question of the trial at a child's level ("first", "younger", "older", "upper").

        `texts` holds how each given value reads, e.g. (("drop height", "2 m"),).
        """
        result = what or self.result
        changed = change or self.input(self.vary) or self.inputs[0]
        if level in ("first", "younger") and changed.ask and (result is self.result or result.same_question):
            return (changed.ask_first if level == "first" else "") or changed.ask
        return question_in_words(level, fill(result.phrase, texts, changed.name), changed.said)


def question_in_words(level: str, measured: str, changed: str) -> str:
    """A question at a level from two phrases, e.g. "the time it takes to fall" and "the side of the canopy"."""
    if level in ("first", "younger"):
        return f"What happens to {measured} when you change {changed}?"
    if level == "older":
        return f"How does {changed} change {measured}?"
    return f"How does {measured} depend on {changed}?"


def fill(phrase: str, texts: tuple[tuple[str, str], ...], changed: str) -> str:
    """A phrase with its {names} filled in; a [part] goes if it speaks of the changed input or of one not known."""
    known = {name: text for name, text in texts if name != changed}

    def part(match: re.Match[str]) -> str:
        names = re.findall(r"\{([^}]*)\}", match[1])
        return match[1] if all(name in known for name in names) else ""

    kept = re.sub(r"\[([^\]]*)\]", part, phrase)
    return re.sub(r"\{([^}]*)\}", lambda m: known.get(m[1], m[1]), kept)


def tidy(name: str) -> str:
    """A parent's name for something, in the form names are compared in."""
    return " ".join(name.lower().replace("-", " ").replace("_", " ").split())


def figures_for(width: float, size: float) -> int:
    """How many decimals show a band of that width without pretending to more: the band's first figure, from 0 to 4."""
    step = width if width > 0 else size or 1.0
    decimals = 0
    while step < 5 and decimals < 4:
        step, decimals = step * 10, decimals + 1
    return decimals


def plain(number: float, decimals: int) -> str:
    """A number with that many decimals, without a minus sign on zero."""
    text = f"{number:.{decimals}f}"
    return text.lstrip("-") if float(text) == 0 else text


def band(result: Result, value: float, spread: float) -> tuple[float, float]:
    """The band around an expected value in base units: the typical spread, and never narrower than `least`."""
    half = max(abs(value) * (spread if result.spread is None else result.spread), result.least)
    low, high = value - half, value + half
    return (max(low, 0.0) if value >= 0 and result.dimension != "temperature" else low), high
