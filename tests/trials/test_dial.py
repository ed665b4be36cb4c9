"""The sun dial against published tables."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packgen.trials.dial import dial, flat_gnomon, hour_angle, longest_half_day


@pytest.mark.parametrize(
    ("hours", "angle"),
    [(0.5, 6.14), (1, 12.35), (1.5, 18.70), (2, 25.26), (2.5, 32.09), (3, 39.25), (3.5, 46.80), (4, 54.76),
     (4.5, 63.12), (5, 71.85), (5.5, 80.85), (6, 90.0)],
)  # fmt: skip
def test_a_published_table_for_a_northern_latitude(hours, angle):
    # lorem-ipsum.co.uk/sundial.php, latitude 54.8.
    assert hour_angle(54.8, 12 + hours) == pytest.approx(angle, abs=0.006)
    assert hour_angle(54.8, 12 - hours) == pytest.approx(-angle, abs=0.006)


def test_one_hour_at_forty_degrees():
    # algebra.com question 204355: 9.7724 degrees.
    assert hour_angle(40, 13) == pytest.approx(9.7724, abs=5e-5)


@pytest.mark.parametrize(("hour", "angle"), [(11, 1.278), (12, -0.043), (13, -1.371), (15, -5.018), (18, -95.775)])
def test_a_southern_latitude_with_a_longitude_offset(hour, angle):
    # Rosetta Code, "Horizontal sundial calculations": latitude -4.95, half a degree from the meridian. That page takes
    # the half degree as making the sun early, which is east of the meridian here.
    assert hour_angle(-4.95, hour, 0.5) == pytest.approx(angle, abs=6e-4)


@pytest.mark.parametrize(
    ("latitude", "angles"),
    [(40, (9.77, 20.36, 32.73, 48.07, 67.37)), (51.5, (11.84, 24.32, 38.05, 53.58, 71.10)),
     (33.87, (8.49, 17.84, 29.13, 43.99, 64.32)), (60, (13.06, 26.57, 40.89, 56.31, 72.81))],
)  # fmt: skip
def test_the_formula_of_the_dial_makers(latitude, angles):
    # tan X = tan h sin latitude, 15 degrees an hour (North American Sundial Society, FAQ).
    assert [hour_angle(latitude, 13 + i) for i in range(5)] == pytest.approx(list(angles), abs=0.006)


def test_at_the_pole_the_hours_are_even_and_on_the_equator_there_are_none():
    assert hour_angle(90, 15) == pytest.approx(45)
    assert hour_angle(0, 15) == pytest.approx(0)
    with pytest.raises(ValueError, match="equator"):
        dial(1.0)


def test_the_longest_day():
    # Declination 23.44 degrees: 6 h on the equator, 12 h beyond the polar circle.
    assert longest_half_day(0) == pytest.approx(6)
    assert longest_half_day(70) == 12
    assert longest_half_day(51.5) == pytest.approx(8.2, abs=0.05)


@given(
    st.floats(3, 75), st.sampled_from((1, -1)), st.floats(-20, 20), st.sampled_from(((180.0, 180.0), (190.0, 260.0)))
)
def test_lines_lie_on_the_plate_at_their_angles_and_the_gnomon_stands_at_the_latitude(latitude, half, offset, size):
    found = dial(latitude * half, offset, *size)
    for line in found.lines:
        for x, y in (line.start, line.end):
            assert -1e-6 <= x - 12 <= size[0] - 24 + 1e-6
            assert -1e-6 <= y - 12 <= size[1] - 24 + 1e-6
        dx, dy = line.end[0] - found.foot[0], line.end[1] - found.foot[1]
        turned = math.degrees(math.atan2(dx, dy)) - line.angle_deg
        assert (turned + 180) % 360 - 180 == pytest.approx(0, abs=1e-6)
        assert math.hypot(dx, dy) > 15
    (x0, y0), (x1, _), (x2, y2) = found.gnomon
    assert (x0, y0) == (0, 0)
    assert x1 == x2 > 0
    assert math.degrees(math.atan2(y2, x2)) == pytest.approx(latitude)
    assert found.foot[1] + x1 <= size[1] - 12 + 1e-6


def test_hours_run_with_the_clock_in_the_north_and_against_it_in_the_south():
    north = {line.hour: line.angle_deg for line in dial(50).lines}
    south = {line.hour: line.angle_deg for line in dial(-50).lines}
    assert north[15] > 0 > north[9]
    assert south[15] == pytest.approx(-north[15])
    assert dial(-50).southern
    assert not dial(50).southern


def test_east_of_its_meridian_the_sun_is_early():
    # Four minutes of time for each degree of longitude.
    assert hour_angle(50, 12, 7.5) == pytest.approx(hour_angle(50, 12.5))


@given(st.floats(4, 74), st.floats(60, 190), st.floats(40, 140))
def test_a_flat_gnomon_fits_its_place_and_folds_to_the_latitude(latitude, width, height):
    made = dial(latitude, 0.0, 175, 125)
    flat = flat_gnomon(made, width, height)
    assert flat.base <= made.gnomon[1][0] + 1e-9
    assert all(-1e-9 <= x <= width + 1e-9 and -1e-9 <= y <= height + 1e-9 for x, y in flat.outline)
    for foot, heel, tip in flat.halves:
        assert math.dist(foot, heel) == pytest.approx(flat.base)
        assert math.dist(heel, tip) == pytest.approx(flat.base * math.tan(math.radians(latitude)))
        assert math.dist(foot, tip) == pytest.approx(flat.base / math.cos(math.radians(latitude)))


def test_the_tabs_lie_along_the_foot_and_outside_the_gnomon():
    made = dial(50.4, 0.0, 175, 125)
    flat = flat_gnomon(made, 130, 105, 9.0)
    for tab, half in zip(flat.tabs, flat.halves, strict=True):
        assert tab[0] == pytest.approx(half[0]) and tab[-1] == pytest.approx(half[1])
        (x1, y1), (x2, y2), tip = half
        side = (x2 - x1) * (tip[1] - y1) - (y2 - y1) * (tip[0] - x1)
        for x, y in tab[1:3]:
            off = (x2 - x1) * (y - y1) - (y2 - y1) * (x - x1)
            assert off * side < 0 and abs(off) / flat.base == pytest.approx(9.0)
