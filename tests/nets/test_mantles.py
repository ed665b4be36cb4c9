"""Developments of cones, cut-off cones, cylinders and strips against published worked examples."""

import itertools
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.nets.mantles import TRUE, arc, development, sector_of, strip_length
from packgen.nets.solid import Mantle, Strip
from packgen.nets.vectors import area


@pytest.mark.parametrize(
    ("r", "h", "slant", "angle", "lateral"),
    [
        (3, 4, 5, 216, 47.12),  # calculatorsconversion.com table (its two right rows)
        (6, 8, 10, 216, None),
        (5, 12, 13, 138.4615, None),  # 360 r / s, Dr. Math FAQ "Building a Cone", case 1
        (8, 15, 17, 169.4118, None),
        (30, 40, 50, 216, 4712.389),  # textbook formula pi r s
        (50, 120, 130, 138.4615, 20420.352),
        (40, 90, 98.4886, 146.2098, 12376.440),
    ],
)
def test_cone_develops_into_the_published_sector(r, h, slant, angle, lateral):
    dev = development(Mantle("mantle", r, 0.0, h))
    assert (dev.outer, dev.inner) == (pytest.approx(slant, abs=5e-5), 0)
    assert math.degrees(dev.angle) == pytest.approx(angle, abs=5e-5)
    if lateral:
        assert dev.angle / 2 * dev.outer**2 == pytest.approx(lateral, rel=2e-4)


def test_cone_with_a_right_angled_tip_has_the_published_sector():
    """0.7071 x 360 = 254.6 degrees (anvilfire.com "Cones")."""
    assert math.degrees(development(Mantle("mantle", 40, 0.0, 40)).angle) == pytest.approx(254.6, abs=0.05)


@pytest.mark.parametrize(
    ("r", "top", "h", "outer", "inner", "angle"),
    [
        (4, 2.5, 4, 11.39, 7.12, 126.4),  # ceemrr.com Geometry 2, "The Net of a Frustum": diameters 8 and 5, height 4
        (60, 30, 40, 100, 50, 216),  # outer = R s / (R - r) and so on, Dr. Math 65796
        (60, 40, 48, 156, 104, 138.4615),
        (50, 30, 40, 111.8034, 67.0820, 160.9969),
    ],
)
def test_cut_off_cone_develops_into_the_published_ring_sector(r, top, h, outer, inner, angle):
    dev = development(Mantle("mantle", r, top, h))
    digits = 5e-3 if r == 4 else 5e-5
    assert dev.outer == pytest.approx(outer, abs=digits)
    assert dev.inner == pytest.approx(inner, abs=digits)
    assert math.degrees(dev.angle) == pytest.approx(angle, abs=10 * digits)


def test_cylinder_develops_into_a_rectangle_pi_diameters_wide():
    """Diameter 50 gives 157.08 mm, radius 30 gives 188.4956 mm (pi d)."""
    assert development(Mantle("mantle", 25, 25, 60)).width == pytest.approx(157.08, abs=5e-3)
    assert development(Mantle("mantle", 30, 30, 60)).width == pytest.approx(188.4956, abs=5e-5)


@given(st.floats(2, 300), st.floats(0, 0.99), st.floats(1, 400), st.integers(1, 8))
@settings(max_examples=60, deadline=None)
def test_polygons_keep_to_the_true_arcs_and_area(foot, share, height, sectors):
    """Lateral area pi (R + r) s (textbook); every corner on its arc, every side within a fifth of 0.1 mm of it."""
    mantle = Mantle("mantle", foot, foot * share, height)
    dev = development(mantle)
    sector = sector_of(dev, 1 / sectors)
    whole = math.pi * (mantle.foot + mantle.top) * mantle.slant / sectors
    slack = TRUE * (dev.outer + dev.inner) * dev.angle / sectors
    assert abs(area(sector.outline) - whole) <= slack + 1e-6
    for line, radius in ((sector.foot, dev.outer), (sector.head, dev.inner)):
        for a, b in itertools.pairwise(line):
            assert math.hypot(*a) == pytest.approx(radius)
            assert radius - math.hypot((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) <= TRUE + 1e-9


def test_an_arc_ends_where_it_should():
    points = arc((10.0, 0.0), 5.0, 0.0, math.pi / 2)
    assert points[0] == pytest.approx((15, 0)) and points[-1] == pytest.approx((10, 5))


@given(st.integers(1, 30), st.floats(5, 100), st.floats(0.1, 0.6))
@settings(max_examples=40, deadline=None)
def test_strip_is_as_long_as_its_turns(turns, former, card):
    """Each turn is as long as the circle through the middle of its thickness: pi (D + (2k - 1) t) for turn k."""
    by_turns = sum(math.pi * (former + (2 * k - 1) * card) for k in range(1, turns + 1))
    assert strip_length(Strip("strip", former, 20, turns), card) == pytest.approx(by_turns)
