"""The frame of a fair test: change one thing, measure one thing, keep the rest the same."""

from __future__ import annotations

from packgen.page.blocks import Block, Boxed, Prose
from packgen.page.desk import Desk
from packgen.page.table import Column, Table
from packgen.reading.models import Challenge
from packgen.trials.trial import TrialPlan

_MOST_NAMED = 6


def fair_frame(desk: Desk, challenge: Challenge, plan: TrialPlan, own: bool = False) -> Block:
    """Three cells side by side, with the planned values under what is changed, and that of an `own` design."""
    values = [row.label for row in plan.rows]
    changed = plan.changed.name if plan.changed else desk.say("design")
    if plan.changed and len(values) <= _MOST_NAMED:
        changed += "\n" + ", ".join((*values, *((desk.say("own_too"),) if own else ())))
    keep = "\n".join(f"•\u00a0{words}" for words in kept_same(challenge, plan)) or desk.say("rest")
    columns = (Column(desk.say("change"), 1.0), Column(desk.say("measure"), 1.0), Column(desk.say("keep"), 1.4))
    return Table(columns, ((changed, plan.measured.title, keep),), least=desk.look.body.leading * 2, grow=0.0)


def fair_note(desk: Desk, challenge: Challenge, plan: TrialPlan) -> Block:
    """The same in one or two sentences, for the younger."""
    changed = plan.changed.phrase if plan.changed else ""
    words = desk.say("fair_note", changed=changed, keep=kept_same(challenge, plan))
    return Boxed(Prose(words, "small"), "note")


def kept_same(challenge: Challenge, plan: TrialPlan) -> tuple[str, ...]:
    """What stays the same: what the study says, else what the model knows to matter."""
    return tuple(map(str, challenge.keep_same)) or plan.keep_same
