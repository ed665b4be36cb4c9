"""Pulleys against printed advantages."""

import pytest

from packgen.trials.models.pulleys import advantage
from packgen.trials.plan import plan_trial
from packgen.units import quantity


def test_three_strands_make_it_three_times_easier_and_one_fixed_pulley_none():
    # asvabtestbank.com: block and tackle of three, advantage 3; single fixed pulley, 1.
    assert advantage(3) == 3
    assert advantage(1) == 1


def test_rubbing_takes_more_with_every_wheel():
    assert advantage(2, 0.9) == pytest.approx(0.9 + 0.81)
    assert advantage(4, 0.9) < 4


def test_no_loss_is_the_ideal():
    given = {"load mass": quantity(300, "g"), "loss at each wheel": quantity(0, "%")}
    expected = plan_trial("pulleys", given, ("strands", [quantity(3)]), ("weight that lifts it", "g")).rows[0].expected
    assert expected is not None
    assert expected.value == pytest.approx(100)


def test_what_is_gained_in_pull_is_paid_in_rope():
    plan = plan_trial("pulleys", {"lift height": quantity(200, "mm")}, ("strands", [quantity(1), quantity(4)]),
                      ("rope pulled", "mm"))  # fmt: skip
    assert [row.expected.value for row in plan.rows if row.expected] == [200, 800]
