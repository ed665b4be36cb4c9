"""From what a parent wrote in `given` and `change` to checked values; every fault found is kept, not only the first."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping

from packgen.faults import nearest
from packgen.trials.frame import (
    WORD,
    ChallengeModel,
    Input,
    Result,
    TrialError,
    Values,
    example_of,
    tidy,
)
from packgen.units import BASE, Quantity, quantity, unit

Value = Quantity | str

CUSTOMARY = {
    "mm": "in", "cm": "in", "m": "ft", "km": "mi", "g": "oz", "kg": "lb", "m/s": "ft/s", "km/h": "mph", "ml": "fl oz",
    "l": "cup", "°C": "°F", "ml/s": "gal/min",
}  # fmt: skip
"""The customary unit a family that does not use metric units reads instead; a unit not named here is kept."""

_HALVES_FROM = 4.0  # inches; from there on half inches are exact enough, and easier to find on a ruler
_FINENESS = {"in": 0.25, "ft": 0.5, "oz": 0.25, "gal/min": 0.1, "°F": 1.0}


def unit_for(metric: str, units: str) -> str:
    """The unit to show in a family's system ("metric" or "customary")."""
    return CUSTOMARY.get(metric, metric) if units == "customary" else metric


def in_system(value: float, dimension: str, metric: str, units: str, rounded: bool = True) -> Quantity:
    """A value in base units as a quantity of the family's system, rounded to what a ruler or scale there shows.

    Less than a tenth of an inch or an ounce stays metric: nobody reads a hole of 0.02 in.
    """
    name = unit_for(metric, units)
    base = Quantity(value, dimension, name)
    if name == metric:
        return base
    number = base.to(name)
    if name in ("in", "oz") and 0 < abs(number) < 0.1:
        return Quantity(value, dimension, metric)
    if not rounded or number == 0:
        return base
    fine = 10.0 ** (math.floor(math.log10(abs(number))) - 1)
    if name == "in" and abs(number) >= _HALVES_FROM:
        fine = 0.5
    elif abs(number) >= 4 * _FINENESS.get(name, math.inf):
        fine = _FINENESS[name]
    elif name == "in" and number >= 0.3:
        fine = 0.125
    return quantity(round(number / fine) * fine, name)


class Reading:
    """What was understood so far while a challenge is checked, and what was wrong; filled in as the check goes on."""

    __slots__ = ("assumed", "problems", "tried", "values")

    def __init__(self) -> None:
        self.values: dict[str, Value] = {}
        self.assumed: list[tuple[str, Value]] = []
        self.problems: list[TrialError] = []
        self.tried: set[str] = set()


def checked(item: Input, value: Value, about: str, units: str) -> Value | TrialError:
    """The value if it suits the input (a word in the model's spelling), or what is wrong with it."""
    if item.dimension == WORD:
        return _checked_word(item, value, about)
    if item.clock:
        value = _hour(value)
    if isinstance(value, str):
        return TrialError(f"`{item.name}` needs {example_of(item.dimension)}, not {value!r}",
                          f"write `{item.name}: {_example(item, units)}`", about)  # fmt: skip
    if value.dimension == "count" and item.dimension in ("angle", "percent"):
        value = Quantity(value.value, item.dimension, BASE[item.dimension])
    if value.dimension != item.dimension:
        got = "a number without a unit" if value.dimension == "count" else f"{value}"
        return TrialError(f"`{item.name}` needs {example_of(item.dimension)}, not {got}",
                          f"write `{item.name}: {_example(item, units)}`", about)  # fmt: skip
    slack = 1e-9 * max(abs(item.low), abs(item.high))
    if not item.low - slack <= value.value <= item.high + slack:
        return TrialError(f"`{item.name}: {value}` is outside what this model knows",
                          f"choose {range_text(item, units)}, or leave out `model` to plan the trial without "
                          "expected results", about)  # fmt: skip
    if item.whole and not float(value.value).is_integer():
        return TrialError(f"`{item.name}` is counted, so {value} cannot be right", "write a whole number", about)
    return value


def _hour(value: Value) -> Value:
    """An hour of the day as a plain number: 9:30, also where it was read as 9 min 30 s, and 9.5 h are 9.5."""
    if isinstance(value, Quantity):
        if value.dimension == "time":
            return quantity(value.value / (3600 if value.unit == "h" else 60))
        return value
    found = re.fullmatch(r"\s*(\d{1,2})[:.]([0-5]\d)\s*", value)
    return quantity(int(found[1]) + int(found[2]) / 60) if found else value


def _checked_word(item: Input, value: Value, about: str) -> str | TrialError:
    wanted = tidy(str(value))
    for word in item.words:
        if tidy(word) == wanted:
            return word
    near = nearest(wanted, item.words)
    instead = f"did you mean `{near}`?" if near else "choose one of: " + ", ".join(item.words)
    return TrialError(f"`{item.name}` cannot be {str(value)!r}", instead, about)


def _example(item: Input, units: str) -> str:
    """A value the parent could write for that input."""
    first = item.tries[0] if item.tries else item.default
    number = first if isinstance(first, int | float) else item.low
    return str(in_system(float(number), item.dimension, item.shown_unit, units))


def range_text(item: Input, units: str = "metric") -> str:
    """The values an input allows, in words: "40 mm to 2000 mm", or its choice of words."""
    if item.dimension == WORD:
        return ", ".join(item.words)
    low = in_system(item.low, item.dimension, item.shown_unit, units, rounded=False)
    high = in_system(item.high, item.dimension, item.shown_unit, units, rounded=False)
    return f"{low} to {high}"


def read_given(model: ChallengeModel, given: Mapping[str, Value | tuple[Value, ...]], units: str) -> Reading:
    """The given values by the model's names, with a problem for each that the model cannot use."""
    reading = Reading()
    for name, written in given.items():
        about = f"given:{name}"
        item = model.input(name)
        if item is None:
            reading.problems.append(unknown_quantity(model, name, about))
            meant = _near_input(model, name)
            reading.tried |= {meant.name} if meant else set()
            continue
        reading.tried.add(item.name)
        many = written if isinstance(written, tuple) else (written,)
        if len(many) != 1:
            reading.problems.append(TrialError(
                f"`{name}` has {len(many)} values", f"write the values to try under `change: {{{name}: [...]}}`", about
            ))  # fmt: skip
            continue
        if item.name in reading.values:
            reading.problems.append(TrialError(f"`{item.name}` is given twice", "keep one of the two", about))
            continue
        keep(reading, item, checked(item, many[0], about, units))
    for group in model.one_of:
        both = [name for name in group if name in reading.values]
        if len(both) > 1:
            reading.problems.append(TrialError(
                f"`{both[0]}` and `{both[1]}` are both given, but the model uses only one of them",
                f"keep one of `{both[0]}` and `{both[1]}`", f"given:{both[1]}",
            ))  # fmt: skip
    return reading


def keep(reading: Reading, item: Input, found: Value | TrialError) -> None:
    """Adds a checked value, or its problem."""
    if isinstance(found, TrialError):
        reading.problems.append(found)
    else:
        reading.values[item.name] = found


def unknown_quantity(model: ChallengeModel, name: str, about: str) -> TrialError:
    """The problem of a name the model does not know, with the nearest one it does."""
    near = _near_input(model, name)
    known = "his model knows: " + ", ".join(i.name for i in model.inputs)
    instead = f"did you mean `{near.name}`? T{known}" if near else f"t{known}"
    return TrialError(f"`{model.key}` has no quantity called `{name}`", instead, about)


def _near_input(model: ChallengeModel, name: str) -> Input | None:
    near = nearest(tidy(name), [n for i in model.inputs for n in (i.name, *i.also)])
    return model.input(near) if near else None


def complete(
    model: ChallengeModel, reading: Reading, results: Iterable[Result], changed: str, units: str, latitude: float | None
) -> None:
    """Fills in what the parent left out, and notes a problem for what the model cannot do without."""
    groups = {name: group for group in model.one_of for name in group}
    spared = {name for result in results for name in result.without}
    present = {*reading.values, *reading.tried, changed}
    for item in model.inputs:
        group = groups.get(item.name, ())
        if item.name in present or item.optional or any(n in present for n in group):
            continue
        if item.name == "latitude" and latitude is not None:
            reading.values[item.name] = Quantity(latitude, "angle", "deg")
        elif item.default is not None:
            if group and item.name != group[0]:
                continue
            assume(reading, item, units, item.quiet or item.name in spared)
        elif item.name not in spared and (not group or item.name == group[0]):
            reading.problems.append(_missing(item, group, model, units))


def assume(reading: Reading, item: Input, units: str, quietly: bool) -> None:
    """Takes the usual value for an input, round in the family's system, and remembers it unless quietly."""
    default = item.default
    if isinstance(default, str):
        reading.values[item.name] = default
    elif default is not None:
        reading.values[item.name] = in_system(default, item.dimension, item.shown_unit, units)
    if not quietly:
        reading.assumed.append((item.name, reading.values[item.name]))


def _missing(item: Input, group: tuple[str, ...], model: ChallengeModel, units: str) -> TrialError:
    if item.name == "latitude":
        return TrialError(
            "the model needs the latitude of the place where it will stand",
            "write `place: {name: ..., lat: 50.4, lon: -4.9}` in the family file, or `latitude: 50.4 deg` in `given`",
            "given",
        )
    either = " or ".join(f"`{name}`" for name in group) if group else f"`{item.name}`"
    instead = f"write `{item.name}: {_example(item, units)}` in `given`"
    return TrialError(f"the model `{model.key}` needs {either} ({item.help})", instead, "given")


def as_values(values: Mapping[str, Value]) -> Values:
    """The values in base units, as a model's formula takes them."""
    return Values(tuple((name, v if isinstance(v, str) else v.value) for name, v in values.items()))


def planned_values(item: Input, base: Value | None, units: str) -> tuple[Value, ...]:
    """Three sensible values to try: around the given one if there is one, or the model's own."""
    if item.dimension == WORD:
        words = tuple(t for t in item.tries if isinstance(t, str)) or item.words[:3]
        return words if base is None or base in words else (str(base), *words[:2])
    if not isinstance(base, Quantity) or base.value == 0:
        return _without_base(item, units)
    if (
        item.tries
        and any(abs(base.value - float(t)) < 1e-9 for t in item.tries)
        and unit_for(item.shown_unit, units) == item.shown_unit == base.unit
    ):
        return tuple(Quantity(float(t), item.dimension, item.shown_unit) for t in item.tries)
    return _around(item, base)


def _without_base(item: Input, units: str) -> tuple[Value, ...]:
    """The model's values to try; around its usual one, or a small part of its range, if it names none."""
    if item.tries:
        return tuple(in_system(float(t), item.dimension, item.shown_unit, units) for t in item.tries)
    if isinstance(item.default, int | float) and item.default > 0:
        return _around(item, in_system(item.default, item.dimension, item.shown_unit, units))
    width = item.high - item.low
    return tuple(
        in_system(item.low + share * width, item.dimension, item.shown_unit, units) for share in (0.1, 0.2, 0.3)
    )


def _around(item: Input, base: Quantity) -> tuple[Value, ...]:
    """The given value with a smaller and a larger one, round in the unit it was written in and inside the range."""
    centre = base.to(base.unit)
    fine = 1.0 if item.whole else _step(abs(centre) / 3 or 1.0)
    if abs(centre) >= 8 * _FINENESS.get(base.unit, math.inf):
        fine = max(fine, _FINENESS[base.unit])
    low = quantity(round(centre * 2 / 3 / fine) * fine, base.unit)
    high = quantity(round(centre * 4 / 3 / fine) * fine, base.unit)
    if item.whole and centre < 3:
        low, high = quantity(centre + 1, base.unit), quantity(centre + 2, base.unit)
    found = [q for q in (low, base, high) if item.low <= q.value <= item.high]
    distinct = {q.value: q for q in found}
    return tuple(distinct[v] for v in sorted(distinct))


def _step(x: float) -> float:
    """A tenth to a half of x, as 1, 2 or 5 times a power of ten: fine enough to round a value that far away."""
    power = 10.0 ** math.floor(math.log10(x))
    part = x / power
    return (0.1 if part < 2 else 0.2 if part < 5 else 0.5) * power


def known_unit(name: str) -> str | None:
    """The symbol of a unit packgen knows, or None for a word of the family's own such as pennies."""
    try:
        return unit(name).symbol
    except KeyError:
        return None
