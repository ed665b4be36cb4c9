"""The empty chart of a trial, with axes that hold what may come out and do not tell it."""

from __future__ import annotations

from packgen.page.chart import Chart
from packgen.page.desk import Desk
from packgen.page.trial_table import counted
from packgen.trials.ticks import Axis, word_axis
from packgen.trials.trial import TrialPlan


def strips_axis(plan: TrialPlan, own: str = "") -> Axis:
    """The axis of bar strips and picture graphs: a place for each row, numbers too, and one for the child's `own`."""
    return word_axis(plan.x_axis.title, [*(row.number for row in plan.rows), *((own,) if own else ())])


def trial_chart(desk: Desk, plan: TrialPlan, own: str = "") -> Chart:
    """The chart a level plots on: squares or strips to colour for the younger, points or bars for the rest.

    `own` is the name of the child's own design, if one is tried with the planned ones; on axes of numbers it gets a
    mark of its own.
    """
    blank = plan.y_axis.blank
    if desk.level != "younger":
        if plan.x_axis.words:
            key = desk.say("number_axis") if blank else ""
            return Chart(strips_axis(plan, own) if own else plan.x_axis, plan.y_axis, "bars", key=key, least=90.0)
        key = " ".join(desk.say(k) for k, wanted in (("number_axis", blank), ("own_mark", own)) if wanted)
        return Chart(plan.x_axis, plan.y_axis, "points", key=key, least=90.0)
    axis = strips_axis(plan, own)
    if counted(plan):
        key = desk.say("draw_squares", each=plan.pictures.label, unit=plan.measured.unit)
        return Chart(axis, plan.y_axis, "picture", plan.pictures, key=key, least=76.0)
    key = desk.say("draw_bars", repeats=plan.repeats(desk.level), blank=blank)
    return Chart(axis, plan.y_axis, "bars", key=key, least=76.0)
