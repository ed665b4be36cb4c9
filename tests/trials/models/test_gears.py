"""Gears against printed ratios."""

import pytest

from packgen.trials.models.gears import driven_turns
from packgen.trials.plan import plan_trial
from packgen.units import quantity


def test_twelve_teeth_driving_nine():
    # asvabtestbank.com: 12 teeth with 9 teeth is 4 : 3.
    assert driven_turns(3, 12, 9) == pytest.approx(4)


def test_forty_and_eight_teeth():
    assert driven_turns(300, 8, 40) == pytest.approx(60)


def test_a_compound_pair_multiplies():
    # 36:12 and 40:10 is 12.
    given = {"driver teeth": quantity(12), "driven teeth": quantity(36), "second driver teeth": quantity(10),
             "second driven teeth": quantity(40)}  # fmt: skip
    expected = plan_trial("gears", given, ("driver turns", [quantity(12)])).rows[0].expected
    assert expected is not None
    assert expected.value == pytest.approx(1)


def test_a_wheel_in_the_middle_changes_nothing():
    # asvabtestbank.com: idlers change only the way round.
    plan = plan_trial("gears", {}, ("middle teeth", [quantity(8), quantity(16)]))
    first, second = (row.expected for row in plan.rows)
    assert first is not None
    assert first == second


def test_equal_wheels_turn_alike():
    assert driven_turns(7, 24, 24) == 7


def test_half_a_second_pair_is_told():
    plan = plan_trial("gears", {"second driver teeth": quantity(10)})
    assert all(row.expected is None and "both" in row.note for row in plan.rows)
