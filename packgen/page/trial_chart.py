"""The empty chart of a trial, with axes that hold what may come out and do not tell it."""

from __future__ import annotations

from packgen.page.chart import Chart
from packgen.page.desk import Desk
from packgen.page.trial_table import counted
from packgen.trials.ticks import Axis, word_axis
from packgen.trials.trial import TrialPlan


def strips_axis(plan: TrialPlan) -> Axis:
    """The axis of bar strips and picture graphs: a place for each row, numbers too."""
    return word_axis(plan.x_axis.title, [row.number for row in plan.rows])


def trial_chart(desk: Desk, plan: TrialPlan) -> Chart:
    """The chart a level plots on: squares or strips to colour for the younger, points or bars for the rest."""
    blank = plan.y_axis.blank
    if desk.level != "younger":
        kind = "bars" if plan.x_axis.words else "points"
        return Chart(plan.x_axis, plan.y_axis, kind, key=desk.say("number_axis") if blank else "", least=90.0)
    axis = strips_axis(plan)
    if counted(plan):
        key = desk.say("draw_squares", each=plan.pictures.label, unit=plan.measured.unit)
        return Chart(axis, plan.y_axis, "picture", plan.pictures, key=key, least=76.0)
    key = desk.say("draw_bars", repeats=plan.repeats(desk.level), blank=blank)
    return Chart(axis, plan.y_axis, "bars", key=key, least=76.0)
