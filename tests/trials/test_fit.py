"""Means, medians and best fits."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packgen.trials.fit import best_fit, mean, median


def test_mean_and_median():
    # Arithmetic: the mean of 1.52, 1.61, 1.55 is 1.56.
    assert mean([1.52, 1.61, 1.55]) == pytest.approx(1.56)
    assert median([3, 1, 2]) == 2
    assert median([4, 1, 2, 3]) == 2.5


@given(st.floats(-50, 50), st.floats(-50, 50))
def test_points_on_a_line_give_the_line_again(slope, start):
    fit = best_fit([(x, slope * x + start) for x in (1.0, 2.0, 5.0, 9.0)])
    assert fit is not None
    assert fit.a == pytest.approx(slope, abs=1e-8)
    assert fit.b == pytest.approx(start, abs=1e-7)
    assert fit.at(3.0) == pytest.approx(3 * slope + start, abs=1e-7)


@given(st.floats(-3, 3), st.floats(0.01, 100))
def test_points_on_a_power_give_the_power_again(power, factor):
    fit = best_fit([(x, factor * x**power) for x in (1.0, 2.0, 5.0)], "power")
    assert fit is not None
    assert fit.kind == "power"
    assert fit.a == pytest.approx(power, abs=1e-7)
    assert fit.b == pytest.approx(factor, rel=1e-6)


def test_a_power_through_nought_becomes_a_line():
    fit = best_fit([(0.0, 1.0), (1.0, 2.0), (2.0, 3.0)], "power")
    assert fit is not None
    assert fit.kind == "line"


def test_too_few_points_or_all_at_one_place_have_no_fit():
    assert best_fit([(1, 1), (2, 2)]) is None
    assert best_fit([(1, 1), (1, 2), (1, 3)]) is None


def test_a_perfect_fit_explains_everything_and_a_bad_one_little():
    assert best_fit([(1, 1), (2, 2), (3, 3)]).r2 == pytest.approx(1)
    assert best_fit([(1, 1), (2, 5), (3, 1)]).r2 == pytest.approx(0)
    assert best_fit([(1, 2), (2, 2), (3, 2)]).r2 == 1
