"""Constants against their published values."""

import pytest

from packgen.trials.constants import AIR_DENSITY, GRAVITY, gravity_at, sound_speed


def test_standard_values():
    # 3rd CGPM (1901); ISO 2533, sea level.
    assert GRAVITY == 9.80665
    assert AIR_DENSITY == 1.225


@pytest.mark.parametrize(("latitude", "gravity"), [(0, 9.78033), (45, 9.80620), (90, 9.83218), (-45, 9.80620)])
def test_normal_gravity(latitude, gravity):
    # WGS 84.
    assert gravity_at(latitude) == pytest.approx(gravity, abs=6e-6)


def test_speed_of_sound():
    # 343 m/s at 20 °C (engineeringtoolbox d_520); 340.3 m/s at 15 °C (standard atmosphere).
    assert sound_speed(20) == pytest.approx(343, abs=0.5)
    assert sound_speed(15) == pytest.approx(340.3, abs=0.1)
