"""The table of a trial, to fill in or filled in: a row for each planned value, its trials in lines that can be read."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from packgen.page.desk import Desk
from packgen.page.table import Cell, Column, Table
from packgen.page.text import widest_word
from packgen.reading.models import Challenge
from packgen.trials.trial import TrialPlan

# A cell to write a number into is at least so wide and high (mm): three figures and a point in a hand of that age.
_WIDE = {"younger": 20.0, "older": 16.0, "upper": 14.0}
_HIGH = {"younger": 15.5, "older": 13.0, "upper": 12.0}
_HIGH_IN_LINES = {"younger": 12.5, "older": 9.5, "upper": 9.0}
_FEW = 3  # rows; more of them are lower, so that the chart stays on the page
_MOST_NAME = 0.3
_PAD = 1.6


def with_repeats(desk: Desk, challenge: Challenge, plan: TrialPlan) -> TrialPlan:
    """The plan tried as often as the study says, else as the recipe's line for the sheet does."""
    if challenge.trials is not None or desk.option("trials") is None:
        return plan
    return replace(plan, trials=max(1, min(20, desk.count("trials", 3))))


def counted(plan: TrialPlan) -> bool:
    """True if the result is counted (coins, turns), so that it can be tallied and shown as squares."""
    result = plan.measured.result
    return result.whole if result else bool(plan.measured.unit and not plan.measured.symbol)


@dataclass(frozen=True, slots=True)
class Line:
    """One row of the table: its trials ("" to write in), and the cells worked out from them by kind of column."""

    label: str
    tried: tuple[str, ...]
    worked: tuple[tuple[str, str | Cell], ...] = ()


def empty_lines(plan: TrialPlan, level: str, own: str = "") -> tuple[Line, ...]:
    """A line to fill in for each planned value, and one for the child's `own` design, if there is one."""
    names = (*(row.number for row in plan.rows), *((own,) if own else ()))
    return tuple(Line(name, ("",) * plan.repeats(level)) for name in names)


def trial_table(desk: Desk, plan: TrialPlan, lines: Sequence[Line], kinds: Sequence[str], share: float = 1.0) -> Table:
    """The table of some lines; `kinds` are the kinds of its columns besides the trials, in order, as in the plan.

    Trials that do not fit beside each other stand under each other in their row, each with its small number. `share`
    makes rows lower that nobody writes in.
    """
    level = desk.level
    count = max(len(line.tried) for line in lines)
    name = _name_column(desk, plan, lines)
    before = [_column(desk, plan, kind) for kind in kinds if kind == "guess"]
    after_kinds = [kind for kind in kinds if kind in ("middle", "mean", "range")]
    after = [_column(desk, plan, kind) for kind in after_kinds]
    room = desk.live_width + name.share - (len(before) + len(after)) * (_WIDE[level] + 2.0)
    in_line = max(1, math.floor(room / _WIDE[level]))
    deep = math.ceil(count / in_line)
    across = math.ceil(count / deep)
    columns = (name, *before, *_trial_columns(desk, plan, count, across, deep), *after)
    rows: list[tuple[str | Cell, ...]] = []
    for line in lines:
        worked = dict(line.worked)
        own: list[str | Cell] = [line.label, *(worked.get("guess", "") for _ in before)]
        ends: list[str | Cell] = [worked.get(kind, "") for kind in after_kinds]
        rows += _rows(own, line.tried, ends, across, deep)
    least = (_HIGH if deep == 1 and len(lines) <= _FEW else _HIGH_IN_LINES)[level] * share
    return Table(columns, tuple(rows), least=least, most=least * (1.4 if deep == 1 else 1.25), style="body")


def _rows(own: list[str | Cell], tried: Sequence[str], ends: list[str | Cell], across: int,
          deep: int) -> list[tuple[str | Cell, ...]]:  # fmt: skip
    """The rows of one planned value: one, or as many as its trials need, joined at both ends."""
    if deep == 1:
        return [(*own, *tried, *([""] * (across - len(tried))), *ends)]
    rows: list[tuple[str | Cell, ...]] = []
    for k in range(deep):
        cells: list[str | Cell] = [
            Cell(tried[n], corner="" if tried[n] else str(n + 1)) if n < len(tried) else Cell(crossed=True)
            for n in range(k * across, (k + 1) * across)
        ]
        first, last = (own, ends) if k == 0 else ([Cell(joined=True)] * len(own), [Cell(joined=True)] * len(ends))
        rows.append((*first, *cells, *last))
    return rows


def _trial_columns(desk: Desk, plan: TrialPlan, count: int, across: int, deep: int) -> list[Column]:
    unit = plan.measured.unit
    if deep == 1:
        return [Column(f"{desk.say('try_word')} {k}", 0.9, unit) for k in range(1, count + 1)]
    group = desk.say("tries_group", count=count, unit=unit)
    return [Column("", 0.9, group=group) for _ in range(across)]


def _column(desk: Desk, plan: TrialPlan, kind: str) -> Column:
    """The column for the guess or for what is worked out."""
    return Column(desk.say(f"column_{kind}"), 1.0, plan.measured.unit)


def _name_column(desk: Desk, plan: TrialPlan, lines: Sequence[Line]) -> Column:
    """The column of the planned values, as wide as its longest word needs, if that is not too much."""
    changed = plan.changed
    head = changed.name if changed else desk.say("design")
    strong, label = desk.look.strong, desk.look.label
    wide = max(widest_word(desk.faces, line.label, strong) for line in lines)
    wide = max(wide, widest_word(desk.faces, head, label), desk.live_width * 0.13)
    return Column(head, -min(wide + 2 * _PAD + 1.0, desk.live_width * _MOST_NAME), changed.unit if changed else "",
                  names=True)  # fmt: skip
