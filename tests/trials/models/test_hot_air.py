"""The warm-air balloon against an engineering page."""

import pytest

from packgen.trials.models.hot_air import air_density, lift
from packgen.trials.plan import plan_trial
from packgen.units import quantity


def test_ten_cubic_metres_at_a_hundred_degrees():
    # engineeringtoolbox.com d_562: densities 0.946 and 1.205 kg/m³, 25.4 N or 2.6 kg (g 9.81).
    assert air_density(100) == pytest.approx(0.946, abs=0.001)
    assert air_density(20) == pytest.approx(1.205, abs=0.002)
    assert lift(10, 100, 20) / 1000 * 9.81 == pytest.approx(25.4, rel=0.01)
    assert lift(10, 100, 20) == pytest.approx(2600, rel=0.02)


def test_the_standard_atmosphere():
    # ISO 2533: 1.225 kg/m³ at 15 °C.
    assert air_density(15) == pytest.approx(1.225, abs=0.0005)


def test_air_as_cold_as_outside_lifts_nothing():
    assert lift(1.0, 15, 15) == 0


def test_a_small_heavy_balloon_stays_down():
    plan = plan_trial("hot-air", {"paper": quantity(80, "g/m²")}, ("balloon diameter", [quantity(0.5, "m")]))
    assert plan.rows[0].expected is None
    assert "too heavy to rise" in plan.rows[0].note
