"""The launched ball against printed ranges, and with the air taken away."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.trials.models.canopy import fall_time
from packgen.trials.models.launched_ball import flight


def test_twenty_metres_a_second_at_forty_five_and_thirty_degrees():
    # Two worked pages (a mathematics dataset, g 9.81; scienceaq.com, g 9.8): 40.8 m and 35.3 m.
    assert flight(20, 45, 0).distance == pytest.approx(40.8, abs=0.05)
    assert flight(20, 30, 0).distance == pytest.approx(35.3, abs=0.05)


@pytest.mark.parametrize(("speed", "metres"), [(30, 91.8), (40, 163), (50, 255)])
def test_the_ranges_of_the_textbook_figure(speed, metres):
    # OpenStax College Physics, figure 3.38 (g = 9.80), from memory of the figure.
    assert flight(speed, 45, 0).distance == pytest.approx(metres, rel=0.002)


@pytest.mark.parametrize(
    ("speed", "angle", "distance", "top", "time"),
    [(5, 45, 2.5493, 0.6373, 0.7210), (5, 30, 2.2078, 0.3187, 0.5099), (5, 60, 2.2078, 0.9560, 0.8831),
     (10, 45, 10.1972, 2.5493, 1.4421)],
)  # fmt: skip
def test_range_height_and_time_of_the_parabola(speed, angle, distance, top, time):
    # R = v² sin 2a / g, H = (v sin a)² / 2g, t = 2 v sin a / g (OpenStax College Physics, section 3.4).
    found = flight(speed, angle, 0)
    assert found.distance == pytest.approx(distance, abs=1e-4)
    assert found.top == pytest.approx(top, abs=1e-4)
    assert found.time == pytest.approx(time, abs=1e-4)


def test_from_a_height_and_off_a_table():
    assert flight(5, 45, 1.0).distance == pytest.approx(3.3177, abs=1e-4)
    assert flight(2, 0, 0.8).distance == pytest.approx(0.8078, abs=1e-4)


@settings(max_examples=15, deadline=None)
@given(st.floats(1, 15), st.floats(5, 85), st.floats(0, 3))
def test_next_to_no_air_gives_the_parabola_again(speed, angle, height):
    bare, near = flight(speed, angle, height), flight(speed, angle, height, 1e-9)
    assert near.distance == pytest.approx(bare.distance, rel=2e-4, abs=1e-5)
    assert near.time == pytest.approx(bare.time, rel=2e-4)


@settings(max_examples=15, deadline=None)
@given(st.floats(1, 15), st.floats(0, 85), st.floats(0.01, 3), st.floats(0.001, 1.0))
def test_air_always_shortens_the_flight(speed, angle, height, slowing):
    bare, aired = flight(speed, angle, height), flight(speed, angle, height, slowing)
    assert aired.distance < bare.distance
    assert aired.top <= bare.top + 1e-9


def test_straight_down_with_air_agrees_with_the_falling_canopy():
    # The same physics twice: a ball let go at 2 m with the drag of a canopy falls as the canopy does.
    steady = 3.0
    assert flight(1e-9, 0, 2.0, 9.80665 / steady**2).time == pytest.approx(fall_time(2.0, steady), rel=1e-3)
