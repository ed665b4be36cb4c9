"""Room for the means: a sum for each row with as many places as trials."""

import dataclasses

import pytest
from page_marks import drawn, of_role
from trial_desks import trial_desk

from packgen.page.blocks import Stack
from packgen.page.challenge_set import ChallengeSet
from packgen.page.working import working_out


def _made(trials):
    desk, challenge, plan = trial_desk("older")
    return ChallengeSet(desk, challenge, dataclasses.replace(plan, trials=trials), (), "design")


@pytest.mark.parametrize("trials", [2, 3, 5])
def test_each_row_has_a_blank_for_each_trial_the_sum_and_the_mean(trials):
    made = _made(trials)
    marks = drawn(made.desk.kit, Stack(tuple(working_out(made))), 180.0).marks
    assert len(of_role(marks, "blank")) == len(made.plan.rows) * (trials + 2)
    assert min(mark.x2 - mark.x1 for mark in of_role(marks, "blank")) >= 10
    assert max(mark.x2 for mark in of_role(marks, "blank")) <= drawn_right(marks)


def drawn_right(marks):
    return max(mark.x2 for mark in of_role(marks, "baseline")) + 0.01


@pytest.mark.parametrize("trials", [1, 20])
def test_there_is_no_sum_where_there_is_nothing_to_add_or_too_much(trials):
    made = _made(trials)
    marks = drawn(made.desk.kit, Stack(tuple(working_out(made))), 180.0).marks
    assert not of_role(marks, "blank") and of_role(marks, "baseline")
