"""What a trial measures: the parent's words matched with what a model can predict."""

from __future__ import annotations

import math
from dataclasses import dataclass

from packgen.faults import nearest
from packgen.trials.frame import ChallengeModel, Expected, Result, TrialError, example_of, tidy
from packgen.trials.given import known_unit, unit_for
from packgen.units import Quantity, unit


@dataclass(frozen=True, slots=True)
class Measured:
    """What is measured, in the parent's words and unit, and the model's result for it (None: nothing is expected).

    `unit` may be a word of the family's own, such as pennies, if the thing is counted. `symbol` is the unit packgen
    reckons in; `notes` are for the guide.
    """

    what: str
    unit: str
    symbol: str = ""
    result: Result | None = None
    notes: tuple[str, ...] = ()

    @property
    def title(self) -> str:
        """What and unit, as over an axis: "time to fall (s)"."""
        return f"{self.what} ({self.unit})" if self.unit else self.what

    @property
    def dimension(self) -> str:
        """The dimension of what is measured."""
        return self.result.dimension if self.result else unit(self.symbol).dimension

    def expected(self, value: float, low: float, high: float) -> Expected:
        """An expectation in base units, in the unit that is measured in."""
        middle, lowest, highest = (Quantity(n, self.dimension).to(self.symbol) for n in (value, low, high))
        if self.result is not None and self.result.whole:
            lowest, highest = float(math.floor(lowest)), float(math.ceil(highest))
        return Expected(middle, lowest, highest, self.dimension, self.unit)


def measured_by(
    model: ChallengeModel | None,
    changed: str,
    measure: tuple[str, str | None] | None,
    units: str,
    problems: list[TrialError],
) -> Measured:
    """What the parent's `measure` means for a model; a unit that cannot be is added to `problems`.

    Without a `measure` it is the model's first result that the `changed` input has a say in.
    """
    if model is None:
        what, written = measure or ("result", None)
        symbol = known_unit(written) if written else None
        return Measured(what, written_unit(symbol or written or ""), symbol or "")
    if measure is None:
        usual = next((r for r in model.results if changed not in r.without), model.result)
        symbol = unit_for(usual.unit, units)
        return Measured(usual.name, written_unit(symbol), symbol, usual)
    what, written = measure
    symbol = known_unit(written) if written else None
    result, notes = _matched(model, what, written, symbol)
    if result is None:
        known = ", ".join(r.name for r in model.results)
        note = f"The model cannot say what “{what}” should come to; it knows: {known}."
        return Measured(what, written_unit(symbol or written or ""), symbol or "", None, (*notes, note))
    if written and symbol is None and result.dimension == "count":
        return Measured(what, written, "", result, notes)
    if written and (symbol is None or unit(symbol).dimension != result.dimension):
        problems.append(TrialError(
            f"“{what}” is {example_of(result.dimension)}; it cannot be measured in `{written}`",
            f"write `unit: {unit_for(result.unit, units) or 'a word for what is counted'}`", "measure",
        ))  # fmt: skip
    shown = symbol or unit_for(result.unit, units)
    return Measured(what, written_unit(shown), shown, result, notes)


def written_unit(symbol: str) -> str:
    """A unit as a child writes it."""
    return "°" if symbol == "deg" else symbol


def _matched(
    model: ChallengeModel, what: str, written: str | None, symbol: str | None
) -> tuple[Result | None, tuple[str, ...]]:
    """The model's result for the parent's words, by name, then by what is counted, by unit, by likeness."""
    exact = model.find_result(what)
    counted = [r for r in model.results if r.dimension == "count"]
    if written and symbol is None:
        named = next((r for r in counted if tidy(written) in r.also), None)
        if exact is None or exact.dimension != "count":
            return (named or (counted[0] if counted else exact)), ()
    if exact is not None:
        return exact, ()
    if symbol is not None:
        same = [r for r in model.results if r.dimension == unit(symbol).dimension]
        near = _nearest(same, what) or (same[0] if same else None)
    else:
        near = _nearest(model.results, what)
    if near is None:
        return None, ()
    return near, (f"“{what}” is taken to be the {near.name} of the model.",)


def _nearest(results: tuple[Result, ...] | list[Result], what: str) -> Result | None:
    names = {name: r for r in reversed(results) for name in (r.name, *r.also)}
    found = nearest(tidy(what), names)
    return names[found] if found else None
