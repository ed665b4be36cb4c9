"""The pendulum against textbooks, and in its limits."""

import pytest

from packgen.trials.models.pendulum import amplitude_factor, small_swing
from packgen.trials.plan import plan_trial
from packgen.units import quantity


def test_half_a_second_takes_six_centimetres():
    # OpenStax College Physics, chapter 16, problem 22: T = 0.500 s gives L = 6.21 cm (g = 9.80).
    assert small_swing(0.0621, 9.80) == pytest.approx(0.500, abs=0.0005)


def test_a_metre_and_eleven_centimetres():
    # Worked on jiskha.com: L = 1.11 m gives 2.114 s (g = 9.81).
    assert small_swing(1.11, 9.81) == pytest.approx(2.114, abs=0.001)


@pytest.mark.parametrize(("length", "seconds"), [(0.25, 1.00320), (0.5, 1.41875), (1.0, 2.00641), (2.0, 2.83749)])
def test_small_swings_under_standard_gravity(length, seconds):
    # T = 2 pi sqrt(L/g), g = 9.80665.
    assert small_swing(length, 9.80665) == pytest.approx(seconds, abs=5e-5)


# Exact factor 1/agm(1, cos(a/2)), as tabulated with the series 1 + a²/16 + 11 a⁴/3072 in texts on the pendulum.
@pytest.mark.parametrize(
    ("degrees", "factor"),
    [(5, 1.000476), (10, 1.001907), (15, 1.004301), (20, 1.007669), (30, 1.017409), (45, 1.039973), (60, 1.073182),
     (90, 1.180341)],
)  # fmt: skip
def test_wide_swings_take_longer_by_the_exact_factor(degrees, factor):
    assert amplitude_factor(degrees) == pytest.approx(factor, abs=1e-6)


def test_the_smallest_swing_needs_no_correction():
    assert amplitude_factor(0) == 1.0
    assert amplitude_factor(1) == pytest.approx(1.0, abs=2e-5)


def test_the_weight_makes_no_difference():
    plan = plan_trial("pendulum", {"length": quantity(0.5, "m")}, ("bob mass", [quantity(10, "g"), quantity(1, "kg")]))
    first, second = (row.expected for row in plan.rows)
    assert first is not None
    assert second is not None
    assert first.value == second.value


def test_it_swings_faster_at_the_pole_than_at_the_equator():
    # Normal gravity 9.78033 at the equator and 9.83218 at the pole (WGS 84).
    at = [plan_trial("pendulum", {}, latitude=lat).rows[0].expected for lat in (0.0, 90.0)]
    assert at[0] is not None
    assert at[1] is not None
    assert at[0].value / at[1].value == pytest.approx((9.83218 / 9.78033) ** 0.5, rel=1e-5)


def test_swings_in_a_minute_and_time_of_ten_agree():
    ten = plan_trial("pendulum", {}, measure=("time for ten swings", "s")).rows[0].expected
    minute = plan_trial("pendulum", {}, measure=("swings in a minute", None)).rows[0].expected
    assert ten is not None
    assert minute is not None
    assert minute.value * ten.value == pytest.approx(600)
