"""The canopy against published figures, and in its limits."""

import math

import pytest

from packgen.trials.frame import Values
from packgen.trials.models.canopy import CLOTH, CUP, MODEL, PLATE, drag_area, fall_time, steady_speed
from packgen.trials.plan import plan_trial
from packgen.units import quantity


def _values(**given: float | str) -> Values:
    usual: dict[str, float | str] = {"canopy": "flat", "load mass": 20.0, "canopy mass": 0.0, "drop height": 2000.0,
                                     "air density": 1.225}  # fmt: skip
    return Values(tuple({**usual, **{k.replace("_", " "): v for k, v in given.items()}}.items()))


def _round(diameter: float, coefficient: float) -> float:
    return coefficient * math.pi * diameter**2 / 4


def test_a_hobby_rocket_page_lands_at_three_metres_a_second():
    # Worked example on xrokets.com: 62.3 g, Cd 0.75, air 1.22 kg/m³, 3 m/s needs a canopy of 0.435 m (17 in); g 9.81.
    assert steady_speed(0.0623, _round(0.435, 0.75), 1.22) == pytest.approx(3.0, rel=0.005)


# v = sqrt(2 m g / (rho Cd A)): NASA Glenn, "Terminal Velocity"; Cd 1.42 cupped and 0.38 rounded hemisphere, 1.17 plate:
# Aeronautical Engineer's Data Book, fig. 5.13(b), p. 95. Speeds and times worked out from those.
@pytest.mark.parametrize(
    ("grams", "coefficient", "diameter", "speed", "seconds"),
    [
        (10, 1.42, 0.30, 1.2630, 1.6728),
        (20, 1.42, 0.40, 1.3396, 1.5877),
        (10, 1.17, 0.30, 1.3914, 1.5358),
        (10, 0.38, 0.30, 2.4415, 0.9917),
        (50, 1.42, 0.50, 1.6945, 1.3001),
    ],
)
def test_speed_and_time_follow_the_published_coefficients(grams, coefficient, diameter, speed, seconds):
    found = steady_speed(grams / 1000, _round(diameter, coefficient))
    assert found == pytest.approx(speed, abs=5e-5)
    assert fall_time(2.0, found) == pytest.approx(seconds, abs=1e-4)


def test_the_coefficients_are_the_published_ones():
    # Hollow hemisphere 1.42 and square plate 1.17: Aeronautical Engineer's Data Book, fig. 5.13(b). Cloth 0.75:
    # J. Potvin, Parks College Parachute Research Group.
    assert (CUP, PLATE, CLOTH) == (1.42, 1.17, 0.75)


@pytest.mark.parametrize(("height", "seconds"), [(1.0, 0.4516), (2.0, 0.6387), (3.0, 0.7822)])
def test_without_drag_it_falls_freely(height, seconds):
    # t = sqrt(2 h / g) with g = 9.80665 (3rd CGPM, 1901).
    assert fall_time(height, 1e4) == pytest.approx(seconds, abs=1e-4)


def test_a_very_long_fall_takes_distance_over_steady_speed_and_a_short_run_up():
    # acosh(e^x) tends to x + ln 2.
    assert fall_time(5000.0, 1.2) == pytest.approx(5000 / 1.2 + 1.2 / 9.80665 * math.log(2), rel=1e-9)


def test_twice_the_area_falls_slower_by_the_root_of_two_and_four_times_the_load_twice_as_fast():
    # Trends of the terminal-velocity formula (NASA Glenn).
    one = steady_speed(0.02, 0.05)
    assert steady_speed(0.02, 0.10) == pytest.approx(one / math.sqrt(2))
    assert steady_speed(0.08, 0.05) == pytest.approx(2 * one)


def test_a_square_canopy_has_the_area_of_its_square_and_a_round_one_of_its_circle():
    assert drag_area(_values(canopy_side=200.0)) == pytest.approx(0.75 * 0.04)
    assert drag_area(_values(canopy_diameter=200.0)) == pytest.approx(0.75 * math.pi * 0.01)


def test_a_cone_lies_between_the_plate_and_the_hollow_hemisphere():
    flat_plate = _round(0.2, PLATE)
    cup = _round(0.2, CUP)
    shallow = drag_area(_values(canopy="cone", canopy_diameter=200.0, canopy_height=1.0))
    deep = drag_area(_values(canopy="cone", canopy_diameter=200.0, canopy_height=150.0))
    assert flat_plate < shallow < 1.02 * flat_plate
    assert deep == pytest.approx(cup)


def test_a_pyramid_canopy_has_a_net_of_its_size():
    net = MODEL.model_solid(_values(canopy="square-pyramid", canopy_side=180.0), ())
    assert net is not None
    assert net.solid == "pyramid-canopy"
    assert dict(net.given)["base"] == quantity(180, "mm")
    assert dict(net.given)["height"] == quantity(90, "mm")
    assert MODEL.model_solid(_values(canopy_side=180.0), ()) is None


def test_each_planned_side_has_a_longer_fall():
    plan = plan_trial(
        "canopy",
        {"load mass": quantity(20, "g"), "drop height": quantity(2, "m")},
        ("canopy side", [quantity(120, "mm"), quantity(180, "mm"), quantity(240, "mm")]),
    )
    times = [row.expected.value for row in plan.rows if row.expected]
    assert times == sorted(times)
    assert len(set(times)) == 3
