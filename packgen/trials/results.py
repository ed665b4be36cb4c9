"""What the children's numbers say: means, ranges, how they lie to the expected band, and kind words about slips."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from packgen.trials.fit import Fit, best_fit, mean, median
from packgen.trials.frame import Expected, TrialError, tidy
from packgen.trials.plan import Row, TrialPlan
from packgen.trials.ticks import Axis, blank_axis, result_axis
from packgen.units import UNITS, Quantity, unit

Entry = Quantity | float | int | str | None
LARGEST = 1e12
"""More than any trial at home can give in any unit."""
_SET_ASIDE = " It is not counted until that is clear."
FAR, WILD = 4.0, 30.0
"""A number this many times too large or too small is asked about (far) or not counted until it is clear (wild)."""


@dataclass(frozen=True, slots=True)
class Tried:
    """One trial as written. `value` is in the plan's unit, None if no number can be read; only `used` ones count."""

    text: str
    value: float | None
    used: bool
    hint: str = ""


@dataclass(frozen=True, slots=True)
class RowResult:
    """One row of the table, filled in.

    `answer` is the mean, or the median if a trial failed (`how` says which: mean, median or none). `verdict` is
    "inside", "above" or "below" the expected band, or "" where nothing was expected.
    """

    row: Row
    tried: tuple[Tried, ...]
    answer: float | None
    how: str
    lowest: float | None
    highest: float | None
    verdict: str

    @property
    def range(self) -> float | None:
        """The largest number less the smallest."""
        if self.lowest is None or self.highest is None:
            return None
        return self.highest - self.lowest


@dataclass(frozen=True, slots=True)
class ResultSummary:
    """A child's results against the plan: rows, kind hints for the parent, a best fit, an axis that holds all."""

    plan: TrialPlan
    rows: tuple[RowResult, ...]
    hints: tuple[str, ...]
    fit: Fit | None
    y_axis: Axis

    @property
    def points(self) -> tuple[tuple[float, float], ...]:
        """(x, y) for each row with an answer: x in the unit of the changed quantity, or 1, 2, 3 ... for words."""
        return tuple((row_place(self.plan, i), r.answer) for i, r in enumerate(self.rows) if r.answer is not None)

    def with_middles(self) -> ResultSummary:
        """The same with the middle number of each row as its answer, as the younger find it, in place of the mean."""
        return replace(self, rows=tuple(_middled(row) for row in self.rows))


def turning(summary: ResultSummary) -> RowResult | None:
    """The row at which the results turn, in between the first and the last planned number; None if they do not.

    A turn must stand out from both ends by more than the trials within one row differ, and by a fifth of all.
    """
    known = [row for row in summary.rows if row.answer is not None]
    if len(known) < 3 or summary.plan.changed is None or summary.plan.x_axis.words:
        return None
    known.sort(key=lambda row: row.row.value.value if isinstance(row.row.value, Quantity) else 0.0)
    answers = [row.answer or 0.0 for row in known]
    noise = max(max(row.range or 0.0 for row in known), 0.2 * (max(answers) - min(answers)))
    for turned in (min(known[1:-1], key=_answer), max(known[1:-1], key=_answer)):
        steps = [_answer(turned) - answers[0], _answer(turned) - answers[-1]]
        if steps[0] * steps[1] > 0 and min(map(abs, steps)) > noise:
            return turned
    return None


def _answer(row: RowResult) -> float:
    return row.answer or 0.0


def _middled(row: RowResult) -> RowResult:
    used = [t.value for t in row.tried if t.used and t.value is not None]
    if not used:
        return row
    middle = median(used)
    return replace(row, answer=middle, how="median", verdict=verdict(row.row.expected, middle))


def judge_results(plan: TrialPlan, numbers: Mapping[str, Sequence[Entry]] | Sequence[Sequence[Entry]]) -> ResultSummary:
    """What a child's numbers say. `numbers` has a sequence for each row: in the rows' order, or by the rows' labels.

    An entry is a number in the plan's unit, a quantity, or the text as written ("1,52", "1.5 s", "it tore"); None is
    a trial not made. Raises TrialError if a label is not one of the plan's rows or there are more rows than planned.
    """
    rows, hints = [], []
    for row, entries in zip(plan.rows, _by_row(plan, numbers), strict=True):
        judged = _judge_row(plan, row, entries)
        rows.append(judged)
        hints += [f"{row.label}, trial {i + 1}: {t.hint}" for i, t in enumerate(judged.tried) if t.hint]
    fit = _fit(plan, rows)
    return ResultSummary(plan, tuple(rows), tuple(hints), fit, _axis(plan, rows))


def _by_row(
    plan: TrialPlan, numbers: Mapping[str, Sequence[Entry]] | Sequence[Sequence[Entry]]
) -> list[Sequence[Entry]]:
    if not isinstance(numbers, Mapping):
        if len(numbers) > len(plan.rows):
            raise TrialError(
                f"there are results for {len(numbers)} rows, but the trial has {len(plan.rows)}",
                "give one list of numbers for each of: " + ", ".join(row.label for row in plan.rows),
                "results",
            )
        return [*numbers, *([()] * (len(plan.rows) - len(numbers)))]
    found: dict[int, Sequence[Entry]] = {}
    for label, entries in numbers.items():
        index = row_of(plan, label)
        if index is None:
            raise TrialError(
                f"the trial has no row {label!r}",
                "its rows are: " + ", ".join(row.label for row in plan.rows),
                f"results:{label}",
            )
        found[index] = entries
    return [found.get(i, ()) for i in range(len(plan.rows))]


def row_of(plan: TrialPlan, label: str) -> int | None:
    """Which of the plan's rows (from 0) a label means: its words, its number, or the same quantity in another unit."""
    return next((i for i, row in enumerate(plan.rows) if _same(row, label)), None)


def _same(row: Row, label: str) -> bool:
    """True if a label means that row: its words, its number, or the same quantity in another unit ("18 cm")."""
    if tidy(label) in (tidy(row.label), tidy(row.number)):
        return True
    if not isinstance(row.value, Quantity):
        return False
    read = _read(label)
    if read is None or not read[1] or unit(read[1]).dimension != row.value.dimension:
        return False
    there = unit(read[1])
    return math.isclose(read[0] * there.factor + there.offset, row.value.value, rel_tol=1e-6)


_NUMBER = re.compile(r"^\s*([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+))\s*(.*?)\s*$")


def _read(text: str) -> tuple[float, str] | None:
    """The number and the unit's symbol ("" without one) in a text such as "1,5 s"; None if it is not a number."""
    match = _NUMBER.match(text.replace("−", "-"))
    if match is None:
        return None
    name = match[2]
    if name and name not in UNITS and name.lower() not in UNITS:
        return None
    return float(match[1].replace(",", ".")), unit(name).symbol if name else ""


def _judge_row(plan: TrialPlan, row: Row, entries: Sequence[Entry]) -> RowResult:
    tried = [_tried(plan, entry) for entry in entries]
    usable = [t.value for t in tried if t.used and t.value is not None]
    tried = [_doubted(plan, row, t, usable) for t in tried]
    used = [t.value for t in tried if t.used and t.value is not None]
    made = [t for t in tried if t.text]
    if not used:
        return RowResult(row, tuple(tried), None, "none", None, None, "")
    failed = len(used) < len(made)
    answer = median(used) if failed else mean(used)
    how = "median" if failed else "mean"
    return RowResult(row, tuple(tried), answer, how, min(used), max(used), verdict(row.expected, answer))


def verdict(expected: Expected | None, answer: float) -> str:
    """Where an answer lies to its band: "inside", "above", "below", or "" where nothing is expected."""
    if expected is None:
        return ""
    slack = 1e-9 * max(abs(expected.low), abs(expected.high))
    if answer > expected.high + slack:
        return "above"
    return "below" if answer < expected.low - slack else "inside"


def _tried(plan: TrialPlan, entry: Entry) -> Tried:
    """One entry as a number in the plan's unit, with a hint if it cannot be one."""
    measured = plan.measured
    if entry is None or (isinstance(entry, str) and not entry.strip()):
        return Tried("", None, False)
    if isinstance(entry, Quantity):
        if entry.dimension == "count":
            return _possible(plan, str(entry), entry.value)
        return _in_plan_unit(plan, str(entry), entry)
    if isinstance(entry, str):
        read = _read(entry)
        if read is None:
            own = re.match(rf"^\s*([\d.,]+)\s*{re.escape(measured.unit)}\s*$", entry) if measured.unit else None
            read = _read(own[1]) if own else None
        if read is None:
            return Tried(entry, None, False)
        if read[1]:
            there = unit(read[1])
            return _in_plan_unit(plan, entry, Quantity(read[0] * there.factor + there.offset, there.dimension))
        return _possible(plan, entry, read[0])
    return _possible(plan, f"{entry:g}", float(entry))


def _in_plan_unit(plan: TrialPlan, text: str, entry: Quantity) -> Tried:
    if entry.dimension != plan.measured.dimension or (plan.measured.unit and not plan.measured.symbol):
        hint = f"{text} is not a {plan.measured.what} in {plan.measured.unit or 'numbers'}. Which number was meant?"
        return Tried(text, None, False, hint)
    return _possible(plan, text, entry.to(plan.measured.symbol))


def _possible(plan: TrialPlan, text: str, value: float) -> Tried:
    """Sets aside, kindly, what cannot be: endless numbers, less than nothing, no time at all, half a coin."""
    result = plan.measured.result
    if not math.isfinite(value) or abs(value) > LARGEST:
        return Tried(text, None, False, f"{text} is not a number that can be drawn. Which one was meant?")
    never_negative = result is not None and result.dimension != "temperature"
    if never_negative and value < 0:
        return Tried(text, None, False, f"{text} is less than nothing. Is the minus sign a smudge?")
    if never_negative and value == 0 and plan.measured.dimension == "time":
        return Tried(text, None, False, f"{text} means no time at all. Did the watch start?")
    if result is not None and result.whole and not value.is_integer():
        return Tried(text, value, True, f"{text} is not a whole number, and this is counted. Is it a mean already?")
    return Tried(text, value, True)


def _doubted(plan: TrialPlan, row: Row, tried: Tried, others: Sequence[float]) -> Tried:
    """The same trial with a hint if its number is many times too large or too small, or a known slip."""
    if tried.value is None or not tried.used or tried.hint:
        return tried
    expected = row.expected
    if expected is not None and expected.value > 0 and verdict(expected, tried.value) != "inside":
        for factor, hint in plan.measured.result.slips if plan.measured.result else ():
            if abs(tried.value / (expected.value * factor) - 1) < 0.12:
                slipped = any(abs(other / expected.value - 1) < abs(factor - 1) / 2 for other in others)
                return Tried(tried.text, tried.value, not slipped, hint + (_SET_ASIDE if slipped else ""))
    middle = median(others) if len(others) >= 3 else None
    reference = expected.value if expected is not None else middle
    if reference is None or reference <= 0 or tried.value <= 0:
        return tried
    ratio = tried.value / reference
    if 1 / FAR < ratio < FAR:
        return tried
    alone = middle is not None and middle > 0 and not 1 / FAR < tried.value / middle < FAR
    wild = not 1 / WILD < ratio < WILD
    left_out = _SET_ASIDE if alone or wild else ""
    return Tried(tried.text, tried.value, not (alone or wild), _meant(plan, tried, reference) + left_out)


def _meant(plan: TrialPlan, tried: Tried, reference: float) -> str:
    """A guess at what a number far from all others was meant to be."""
    value = tried.value or 0.0
    unit_text = f" {plan.measured.unit}".rstrip()
    read = _read(tried.text)
    if read and read[1] and read[1] != plan.measured.symbol and 0.6 < read[0] / reference < 1.6:
        return f"{tried.text} is far from what was expected. Was {read[0]:g}{unit_text} meant?"
    if plan.measured.symbol:
        here = unit(plan.measured.symbol)
        for other in {u.symbol: u for u in UNITS.values() if u.dimension == here.dimension}.values():
            meant = value * other.factor / here.factor
            if other.symbol != here.symbol and not other.offset and 0.6 < meant / reference < 1.6:
                return f"{tried.text} would fit if it were in {other.symbol}: that is {meant:.3g}{unit_text}."
    for power in (-3, -2, -1, 1, 2, 3):
        meant = value * 10.0**power
        if 0.6 < meant / reference < 1.6:
            return (
                f"{tried.text} is far from what was expected. Is the point in the right place: {meant:.3g}{unit_text}?"
            )
    return f"{tried.text} is far from what was expected. It is worth trying that one again."


def row_place(plan: TrialPlan, index: int) -> float:
    """Where a row lies on the axis of what is changed: its value in that unit, or 1, 2, 3 ... for words."""
    value = plan.rows[index].value
    if plan.changed is None or plan.x_axis.words or not isinstance(value, Quantity):
        return float(index + 1)
    return value.to(plan.changed.unit)


def _fit(plan: TrialPlan, rows: Sequence[RowResult]) -> Fit | None:
    if plan.changed is None or plan.x_axis.words:
        return None
    points = [(row_place(plan, i), r.answer) for i, r in enumerate(rows) if r.answer is not None]
    return best_fit(points, plan.measured.result.shape if plan.measured.result else "line")


def _axis(plan: TrialPlan, rows: Sequence[RowResult]) -> Axis:
    """The plan's axis, or a longer one if the results (used or not too wild) run past it."""
    found = [v for r in rows for v in (r.lowest, r.highest) if v is not None]
    if not found:
        return plan.y_axis if not plan.y_axis.blank else blank_axis(plan.measured.what, plan.measured.unit)
    if not plan.y_axis.blank and plan.y_axis.low <= min(found) and max(found) <= plan.y_axis.high:
        return plan.y_axis
    known = [end for r in plan.rows if r.expected for end in (r.expected.low, r.expected.high)]
    whole = plan.measured.result is not None and plan.measured.result.whole
    return result_axis(plan.measured.what, plan.measured.unit, [*known, *found], whole)
