"""A planned trial: the rows, columns and axes that a sheet draws and a guide tells."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from packgen.trials.frame import ChallengeModel, Expected, Figure, NetFor, Values, WillNotWork, question_in_words
from packgen.trials.given import Value
from packgen.trials.measured import Measured, written_unit
from packgen.trials.solving import Goal
from packgen.trials.ticks import Axis, PictureScale
from packgen.units import Quantity

TRIALS = {"first": 1, "younger": 3, "older": 3, "upper": 5}
"""How often each row is tried when neither the study nor the recipe says (three or more: common practice)."""


@dataclass(frozen=True, slots=True)
class Changed:
    """What the trial changes: its name, child's phrase, and the unit of its values ("" for words)."""

    name: str
    phrase: str
    unit: str
    words: bool

    @property
    def title(self) -> str:
        """The heading of its column: "canopy side (mm)"."""
        return f"{self.name} ({written_unit(self.unit)})" if self.unit else self.name


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the trial table. `label` has its unit, `number` has not. `note` says why nothing is expected."""

    label: str
    value: Value | None
    expected: Expected | None = None
    note: str = ""

    @property
    def number(self) -> str:
        """The value as it stands under a heading that has the unit."""
        if isinstance(self.value, Quantity):
            return f"{self.value.to(self.value.unit):.6g}"
        return self.label


@dataclass(frozen=True, slots=True)
class Column:
    """One column of the trial table: `kind` is value, guess, trial, middle, mean or range."""

    kind: str
    title: str


@dataclass(frozen=True, slots=True)
class TrialPlan:
    """A planned trial: what the challenge sheet draws and what the guide tells.

    The child's pages may use everything except `rows[..].expected`, `rows[..].note`, `goal`, `advice` and `assumed`.
    """

    model: ChallengeModel | None
    measured: Measured
    changed: Changed | None
    rows: tuple[Row, ...]
    trials: int | None
    x_axis: Axis
    y_axis: Axis
    pictures: PictureScale
    keep_same: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    advice: tuple[str, ...] = ()
    assumed: tuple[tuple[str, Value], ...] = ()
    figures: tuple[Figure, ...] = ()
    given: tuple[tuple[str, Value], ...] = ()
    values: tuple[Values, ...] = ()
    units: str = "metric"
    goal: Goal | None = None

    @property
    def conditions(self) -> tuple[tuple[str, Value], ...]:
        """Everything the expected results depend on besides what is changed, with its value, in the model's order.

        What makes no difference to the result that is measured is left out, and so is what the sun's place settles.
        """
        result = self.measured.result
        if self.model is None or result is None:
            return ()
        spared = {*result.without, *((self.changed.name,) if self.changed else ())}
        said = {name: value for name, value in self.given if name not in spared}
        return tuple((i.name, said[i.name]) for i in self.model.inputs if i.name in said and self._counts(i.name))

    def _counts(self, name: str) -> bool:
        """True unless a tenth more of a quantity leaves every row's result as it is."""
        result = self.measured.result
        assert result is not None
        for values in self.values:
            value = values.get(name)
            if not isinstance(value, float | int) or not value:
                return True
            try:
                before, after = (result.of(v) for v in (values, values.changed(name, value * 1.1)))
            except WillNotWork:
                return True
            if abs(after - before) > 1e-9 * max(abs(before), abs(after)):
                return True
        return not self.values

    @property
    def nets(self) -> tuple[NetFor | None, ...]:
        """The net to build for each row, at the sizes of that row; None where the model has none."""
        if self.model is None or self.model.model_solid is None:
            return (None,) * len(self.rows)
        return tuple(_net(self.model.model_solid, values, self.values) for values in self.values)

    def named(self, row: Row) -> str:
        """A row by what it is: "120 mm", "cone"; a bare number by what it counts: "3 blades", "hour 9"."""
        if self.changed is None or not isinstance(row.value, Quantity) or self.changed.unit:
            return row.label
        counted = self.changed.name.removeprefix("number of ")
        return f"{row.label} {counted}" if counted != self.changed.name else f"{counted} {row.label}"

    def question(self, level: str) -> str:
        """The question of the trial in words for a level ("first", "younger", "older", "upper")."""
        texts = tuple((name, str(value)) for name, value in self.given)
        if self.model is not None and self.measured.result is not None and self.changed is not None:
            return self.model.question(level, self.measured.result, self.model.input(self.changed.name), texts)
        if level in ("first", "younger"):
            return self._plain_question(level)
        if self.changed is None:
            return f"Which build is best? Compare the {self.measured.what} of each."
        return question_in_words(level, f"the {self.measured.what}", self.changed.phrase)

    def _plain_question(self, level: str) -> str:
        """The question in a young child's words where no model has one."""
        name = self.changed.name if self.changed else "one"
        counted = name.removeprefix("number of ")
        asked = f"How many {counted} are best?" if counted != name else f"Which {name} is best?"
        return asked if level == "first" else f"{asked} Test each one to find out."

    def repeats(self, level: str) -> int:
        """How often each row is tried: what the parent asked, or what is usual at that level."""
        return self.trials or TRIALS[level]

    def columns(self, level: str) -> tuple[Column, ...]:
        """The columns of the table at a level, from left to right; `first` has no table, so no columns."""
        if level == "first":
            return ()
        unit = f" ({self.measured.unit})" if self.measured.unit else ""
        count = self.repeats(level)
        name = "Try" if level == "younger" else "Trial"
        tries = tuple(Column("trial", f"{name} {i + 1}{unit}") for i in range(count))
        value = Column("value", self.changed.title if self.changed else "what was built")
        if level == "younger":
            return (value, *tries, *((Column("middle", "The middle one"),) if count >= 3 else ()))
        ends = (Column("mean", f"Mean{unit}"),) if count > 1 else ()
        if level == "upper" and count > 1:
            ends = (*ends, Column("range", f"Range{unit}"))
        return (value, Column("guess", f"My guess{unit}"), *tries, *ends)


def _net(
    solid: Callable[[Values, tuple[Values, ...]], NetFor | None], values: Values, rows: tuple[Values, ...]
) -> NetFor | None:
    try:
        return solid(values, rows)
    except WillNotWork:
        return None
