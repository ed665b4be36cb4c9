"""From a model and what the parent wrote to a planned trial: rows, expected results, columns and axes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from packgen.faults import nearest
from packgen.trials.frame import (
    WORD,
    ChallengeModel,
    Figure,
    Input,
    TrialError,
    Values,
    WillNotWork,
    band,
    tidy,
)
from packgen.trials.given import (
    Reading,
    Value,
    as_values,
    checked,
    complete,
    in_system,
    planned_values,
    read_given,
    unknown_quantity,
)
from packgen.trials.measured import Measured, measured_by, written_unit
from packgen.trials.models import models
from packgen.trials.solving import Goal, nearest_first, solve
from packgen.trials.ticks import (
    Axis,
    blank_axis,
    number_axis,
    picture_scale,
    result_axis,
    with_room,
    word_axis,
)
from packgen.trials.trial import TRIALS, Changed, Column, Row, TrialPlan
from packgen.units import Quantity, unit

__all__ = ["TRIALS", "Changed", "Column", "Row", "TrialPlan", "find_model", "plan_trial", "trial_faults"]


def find_model(key: str) -> ChallengeModel:
    """The challenge model of that key or other name. Raises TrialError with the nearest one."""
    wanted = tidy(key)
    known = models()
    for model in known.values():
        if wanted == tidy(model.key) or wanted in (tidy(name) for name in model.also):
            return model
    names = {tidy(name): model.key for model in known.values() for name in (*model.also, model.key)}
    near = nearest(wanted, names)
    instead = f"did you mean `{names[near]}`?" if near else "choose one of: " + ", ".join(known)
    raise TrialError(f"there is no challenge model called {key!r}", f"{instead} (or leave out `model`)", "model")


def plan_trial(
    model_key: str | None,
    given: Mapping[str, Value | tuple[Value, ...]],
    change: tuple[str, Sequence[Value]] | None = None,
    measure: tuple[str, str | None] | None = None,
    trials: int | None = None,
    units: str = "metric",
    latitude: float | None = None,
    goal: Quantity | None = None,
) -> TrialPlan:
    """The planned trial for a challenge; without a model it has no expected results and an axis to be numbered.

    `change` is the name and the planned values (none: three sensible ones are taken); `measure` is what and unit as
    the parent wrote them; `units` is "metric" or "customary"; `goal` is the result that is asked for. Raises TrialError
    for the first thing that is wrong.
    """
    plan, problems = _plan(model_key, given, change, measure, trials, units, latitude, goal)
    if problems or plan is None:
        raise problems[0]
    return plan


def trial_faults(
    model_key: str | None,
    given: Mapping[str, Value | tuple[Value, ...]],
    change: tuple[str, Sequence[Value]] | None = None,
    measure: tuple[str, str | None] | None = None,
    trials: int | None = None,
    units: str = "metric",
    latitude: float | None = None,
    goal: Quantity | None = None,
) -> tuple[TrialError, ...]:
    """Everything wrong with a challenge at once; empty if `plan_trial` would plan it."""
    return tuple(_plan(model_key, given, change, measure, trials, units, latitude, goal)[1])


def _plan(
    model_key: str | None,
    given: Mapping[str, Value | tuple[Value, ...]],
    change: tuple[str, Sequence[Value]] | None,
    measure: tuple[str, str | None] | None,
    trials: int | None,
    units: str,
    latitude: float | None,
    goal: Quantity | None,
) -> tuple[TrialPlan | None, list[TrialError]]:
    if trials is not None and not 1 <= trials <= 20:
        return None, [TrialError(f"{trials} trials cannot be planned", "write a number from 1 to 20", "trials")]
    if not model_key:
        return _plan_freely(given, change, measure, trials, units), []
    try:
        model = find_model(model_key)
    except TrialError as problem:
        return None, [problem]
    given, change = _change_among_given(given, change)
    reading = read_given(model, given, units)
    item = _changed_input(model, change, reading)
    measured = measured_by(model, item.name if item else "", measure, units, reading.problems)
    if item is None:
        return None, reading.problems
    values = _values_to_try(item, change, reading, units)
    reading.values.pop(item.name, None)
    results = (measured.result,) if measured.result else model.results[:1]
    complete(model, reading, results, item.name, units, latitude)
    if reading.problems:
        return None, reading.problems
    wanted = _wanted(measured, goal, reading)
    if reading.problems:
        return None, reading.problems
    plan = _planned(model, measured, item, values, reading, trials, units)
    return (replace(plan, goal=_goal(plan, item, wanted)) if wanted else plan), []


def _wanted(measured: Measured, goal: Quantity | None, reading: Reading) -> Quantity | None:
    """The goal as a quantity of what is measured; a plain number is in the unit it is measured in."""
    if goal is None or measured.result is None or goal.dimension == measured.dimension:
        return goal if measured.result else None
    if goal.dimension == "count":
        name = measured.symbol
        there = unit(name)
        return Quantity(goal.value * there.factor + there.offset, measured.dimension, name)
    reading.problems.append(TrialError(
        f"`goal: {goal}` is not a {measured.what}", f"write it in {measured.unit or 'plain numbers'}", "goal"
    ))  # fmt: skip
    return None


def _goal(plan: TrialPlan, item: Input, wanted: Quantity) -> Goal:
    """Which values of what is changed give the result that is asked for, in the unit of the planned ones."""
    result = plan.measured.result
    assert result is not None and plan.changed is not None
    found, exact = solve(result, item, plan.values[0], wanted.value)
    planned = tuple(row.value.value for row in plan.rows if isinstance(row.value, Quantity))
    name = plan.changed.unit
    answers = tuple(
        a if isinstance(a, str) else Quantity(a, item.dimension, name) for a in nearest_first(found, planned)
    )
    return Goal(wanted, answers, exact)


def _change_among_given(
    given: Mapping[str, Value | tuple[Value, ...]], change: tuple[str, Sequence[Value]] | None
) -> tuple[Mapping[str, Value | tuple[Value, ...]], tuple[str, Sequence[Value]] | None]:
    """Several values written under `given` are the planned ones, unless something else has planned values."""
    several = {name: v for name, v in given.items() if isinstance(v, tuple) and len(v) > 1}
    if len(several) != 1:
        return given, change
    name, values = next(iter(several.items()))
    if change is not None and (change[1] or tidy(change[0]) != tidy(name)):
        return given, change
    return {n: v for n, v in given.items() if n != name}, (name, values)


def _changed_input(model: ChallengeModel, change: tuple[str, Sequence[Value]] | None, reading: Reading) -> Input | None:
    """The input that is changed; None, with the problem noted, if the model has none of that name."""
    if change is not None:
        item = model.input(change[0])
        if item is None:
            reading.problems.append(unknown_quantity(model, change[0], "change"))
        return item
    name = model.vary
    for group in model.one_of:
        if name in group:
            name = next((n for n in group if n in reading.values), name)
    return model.input(name)


def _values_to_try(
    item: Input, change: tuple[str, Sequence[Value]] | None, reading: Reading, units: str
) -> tuple[Value, ...]:
    """The planned values, checked; sensible ones if the parent planned none."""
    written = change[1] if change is not None else ()
    found: list[Value] = []
    for value in written:
        one = checked(item, value, "change", units)
        if isinstance(one, TrialError):
            reading.problems.append(one)
        elif one not in found:
            found.append(one)
    return tuple(found) if written else planned_values(item, reading.values.get(item.name), units)


def _planned(
    model: ChallengeModel,
    measured: Measured,
    item: Input,
    values: tuple[Value, ...],
    reading: Reading,
    trials: int | None,
    units: str,
) -> TrialPlan:
    each = tuple(as_values({**reading.values, item.name: value}) for value in values)
    rows = tuple(_row(model, measured, value, one) for value, one in zip(values, each, strict=True))
    words = item.dimension == WORD
    first = values[0]
    changed = Changed(item.name, item.said, first.unit if isinstance(first, Quantity) else "", words)
    y_axis = _result_axis(measured, rows)
    return TrialPlan(
        model=model,
        measured=measured,
        changed=changed,
        rows=rows,
        trials=trials,
        x_axis=_changed_axis(changed, values, item.whole),
        y_axis=y_axis,
        pictures=picture_scale(y_axis),
        keep_same=tuple(k for k in model.keep_same if k not in (item.said, f"the {item.name}")),
        cautions=model.cautions,
        advice=_advice(model, measured, rows, reading),
        assumed=tuple(reading.assumed),
        figures=_figures(model, item, rows, each, units),
        given=tuple(reading.values.items()),
        values=each,
        units=units,
    )


def _figures(
    model: ChallengeModel, item: Input, rows: tuple[Row, ...], each: tuple[Values, ...], units: str
) -> tuple[Figure, ...]:
    """The model's figures in the family's units, for the middle row or the highest the model asks for.

    What is another in another row says which row it holds for. None if the thing would not work at all.
    """
    if model.figures is None:
        return ()
    if model.figures_most:
        chosen = max(range(len(each)), key=lambda k: each[k].number(model.figures_most))
    else:
        chosen = len(each) // 2
    found, others = _figured(model, each[chosen]), [_figured(model, one) for one in each]
    at = f" with {item.name} {rows[chosen].label}" if item.dimension != WORD else f" with {rows[chosen].label}"
    said = []
    for k, figure in enumerate(found):
        varies = not model.figures_most and any(len(o) > k and o[k].value != figure.value for o in others)
        value = in_system(figure.value.value, figure.value.dimension, figure.value.unit, units, rounded=False)
        said.append(replace(figure, label=f"{figure.label}{at if varies else ''}", value=value))
    return tuple(said)


def _figured(model: ChallengeModel, values: Values) -> tuple[Figure, ...]:
    try:
        return model.figures(values) if model.figures else ()
    except WillNotWork:
        return ()


def _row(model: ChallengeModel, measured: Measured, value: Value, values: Values) -> Row:
    result = measured.result
    if result is None:
        return Row(str(value), value)
    try:
        number = result.of(values)
    except WillNotWork as why:
        return Row(str(value), value, None, f"{why.message}; {why.instead}")
    return Row(str(value), value, measured.expected(number, *band(result, number, model.spread)))


def _result_axis(measured: Measured, rows: tuple[Row, ...]) -> Axis:
    known = [row.expected for row in rows if row.expected is not None]
    if not known:
        return blank_axis(measured.what, measured.unit)
    ends = [end for e in known for end in (e.low, e.high)]
    whole = measured.result is not None and measured.result.whole
    return result_axis(measured.what, measured.unit, ends, whole)


def _changed_axis(changed: Changed, values: Sequence[Value], whole: bool = False) -> Axis:
    numbers = [v.to(changed.unit) for v in values if isinstance(v, Quantity)]
    if changed.words or len(numbers) < len(values):
        return word_axis(changed.name, [str(v) for v in values])
    return with_room(number_axis(changed.name, written_unit(changed.unit), numbers, whole=whole), numbers)


def _advice(model: ChallengeModel, measured: Measured, rows: tuple[Row, ...], reading: Reading) -> tuple[str, ...]:
    """What the guide should say before the trial: what was taken as usual, and what to expect of the numbers."""
    said = list(measured.notes)
    if reading.assumed:
        taken = ", ".join(f"{name} {value}".strip() for name, value in reading.assumed)
        said.append(f"Taken as usual because the study does not say: {taken}.")
    said += dict.fromkeys(f"{row.label}: {row.note}." for row in rows if row.note)
    known = sorted((row.expected for row in rows if row.expected is not None), key=lambda e: e.value)
    if len(known) > 1 and known[-1].low < known[0].high:
        said.append(
            "The expected results lie inside one another's spread: several trials of each, and values further apart, "
            "will show the difference."
        )
    return (*said, *model.tips)


def _plan_freely(
    given: Mapping[str, Value | tuple[Value, ...]],
    change: tuple[str, Sequence[Value]] | None,
    measure: tuple[str, str | None] | None,
    trials: int | None,
    units: str,
) -> TrialPlan:
    """A trial nobody has a formula for: the parent's own values if there are any, or three builds to compare."""
    given, change = _change_among_given(given, change)
    measured = measured_by(None, "", measure, units, [])
    values = tuple(dict.fromkeys(change[1])) if change else ()
    numbers = [v for v in values if isinstance(v, Quantity)]
    as_numbers = bool(values) and len({v.dimension for v in numbers}) == 1 and len(numbers) == len(values)
    changed = None
    if change is not None:
        changed = Changed(change[0], f"the {change[0]}", numbers[0].unit if as_numbers else "", not as_numbers)
    rows = tuple(Row(str(v), v) for v in values)
    if not rows:
        rows = tuple(Row(f"{which} build", None) for which in ("First", "Second", "Third"))
    if changed is not None and as_numbers:
        x_axis = _changed_axis(changed, values)
    else:
        x_axis = word_axis(changed.name if changed else "what was built", [row.label for row in rows])
    y_axis = blank_axis(measured.what, measured.unit)
    flat = tuple((n, v[0] if isinstance(v, tuple) else v) for n, v in given.items() if v != ())
    return TrialPlan(
        None, measured, changed, rows, trials, x_axis, y_axis, picture_scale(y_axis), given=flat, units=units
    )
