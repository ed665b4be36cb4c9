"""The spring against worked examples."""

import pytest

from packgen.trials.models.spring_scale import stretch
from packgen.trials.plan import plan_trial
from packgen.units import quantity


def test_a_spring_of_five_thousand_newtons_a_metre():
    # qammunity.org: 10 N for 2 mm is 5000 N/m, so 25 N gives 5 mm.
    assert stretch(10, 5.0) == pytest.approx(2)
    assert stretch(25, 5.0) == pytest.approx(5)


def test_a_wheel_spring():
    # engineeringtoolbox.com d_1853: 500 kg and 0.1 m, 4905 N and 49 050 N/m (g 9.81).
    assert stretch(500 * 9.81, 49.05) == pytest.approx(100)


def test_no_load_no_stretch():
    assert stretch(0, 5.0) == 0


def test_the_first_load_comes_out_as_it_was_measured():
    given = {"first load": quantity(100, "g"), "first stretch": quantity(23, "mm")}
    expected = plan_trial("spring-scale", given, ("load mass", [quantity(100, "g")])).rows[0].expected
    assert expected is not None
    assert expected.value == pytest.approx(23)
