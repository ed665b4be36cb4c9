"""The lever against textbook examples."""

import pytest

from packgen.trials.models.lever import balancing
from packgen.trials.plan import plan_trial
from packgen.units import quantity


def test_a_wheelbarrow_with_a_load_of_forty_five_kilograms():
    # OpenStax College Physics for AP Courses, example 9.3, p. 377: arms 7.50 cm and 1.02 m, load 45.0 kg, g = 9.80;
    # mechanical advantage 13.6, effort 32.4 N.
    assert balancing(45.0, 0.075, 1.02) * 9.80 == pytest.approx(32.4, abs=0.05)
    assert pytest.approx(13.6) == 1.02 / 0.075


def test_a_wheelbarrow_with_a_load_of_fifty_five_kilograms():
    # Same book, problem 9.21: 5.50 cm, 1.02 m, 55.0 kg; advantage 18.5, effort 29.1 N.
    assert balancing(55.0, 0.055, 1.02) * 9.80 == pytest.approx(29.1, abs=0.05)


def test_two_newtons_at_thirty_balance_five_at_twelve():
    assert balancing(5.0, 0.12, 0.30) == pytest.approx(2.0)


def test_equal_arms_balance_equal_loads():
    assert balancing(7.0, 0.2, 0.2) == 7.0


def test_the_distance_that_balances_undoes_the_weight_that_balances():
    given = {"load mass": quantity(40, "g"), "load distance": quantity(90, "mm")}
    mass = plan_trial("lever", given, ("effort distance", [quantity(120, "mm")])).rows[0].expected
    assert mass is not None
    back = plan_trial("lever", given, ("effort mass", [quantity(mass.value, "g")])).rows[0].expected
    assert back is not None
    assert back.value == pytest.approx(120)


def test_a_balance_is_a_lever():
    plan = plan_trial("balance", {"load mass": quantity(40, "g")})
    assert plan.model is not None
    assert plan.model.key == "lever"
