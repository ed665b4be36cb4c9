"""Tabs: their depth, their slopes, the allowance for the card's thickness, and their rounded corners."""

import math

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from netcommon import hull_text

from packgen.nets import build, unfold
from packgen.nets.layout import PLAY, lid_allowance
from packgen.nets.plane import shape
from packgen.nets.solid import edges_of
from packgen.nets.tabs import TabRule, caps, ghost_of, rounded, setback, trapezoid


def depth_of(tab):
    (ax, ay), (bx, by) = tab.hinge[0], tab.hinge[-1]
    size = math.dist(tab.hinge[0], tab.hinge[-1])
    return max(((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / size for x, y in tab.points)


@pytest.mark.parametrize("card", [0.1, 0.25, 0.5])
def test_setback_is_the_thickness_at_a_right_angle(card):
    """Two faces of thickness t that meet at an inner angle d: inner corner t / tan(d / 2) from the edge (geometry)."""
    assert setback(card, math.pi / 2) == pytest.approx(card)
    assert setback(card, math.pi / 3) == pytest.approx(card * math.sqrt(3))
    assert setback(card, math.pi) == setback(card, 1.5 * math.pi) == 0


@given(st.floats(0.05, 1.0), st.floats(0.2, 3.0))
@settings(max_examples=40, deadline=None)
def test_setback_is_where_the_inner_surfaces_meet(card, dihedral):
    """The point that far along one face, `card` below it, is `card` below the other face too."""
    x = setback(card, dihedral)
    below = (x, card)
    other = abs(below[0] * math.sin(dihedral) - below[1] * math.cos(dihedral))
    assert other == pytest.approx(card, rel=1e-9)


@pytest.mark.parametrize("card", [0.25, 1.0])
def test_tabs_keep_the_setback_from_the_folds_inside(card):
    """In a box each tab's tips stay the card's thickness clear of the next fold: 90 degrees, so exactly t or more."""
    net = unfold(build("cuboid", {"length": 60, "width": 30, "height": 9}), card=card)
    tabs = [t for p in net.parts for t in p.tabs]
    assert tabs
    for tab in tabs:
        size = math.dist(tab.hinge[0], tab.hinge[-1])
        limit = {60: 30, 30: 60, 9: 60}[round(size)]
        assert depth_of(tab) <= max(limit, 9) - card + 1e-9


def test_a_lid_grows_by_two_thicknesses_and_the_play():
    """Its wall and the tab behind the wall lie inside the lid's outer size, on each side."""
    assert lid_allowance(0.25) == pytest.approx(2 * 0.25 + PLAY)
    box = build("lidded-box", {"length": 80, "width": 60, "height": 40})
    sized = box.scaled(0.5, lid_allowance(0.3))
    wide = {f.name: [v[0] for v in sized.corners(i)] for i, f in enumerate(sized.faces)}
    assert max(wide["base"]) - min(wide["base"]) == pytest.approx(40)
    assert max(wide["lid"]) - min(wide["lid"]) == pytest.approx(40 + 2 * (0.6 + PLAY))


def test_depth_grows_with_the_edge_and_the_card():
    assert TabRule(0.25).depth(10) == 6 and TabRule(0.25).depth(32) == 8 and TabRule(0.25).depth(300) == 11
    assert TabRule(0.5).depth(10) > TabRule(0.25).depth(10)
    assert TabRule(0.25, youngest=True).depth(32) == 10


def test_where_there_is_room_ends_slope_at_45_degrees():
    net = unfold(build("open-box", {"length": 80, "width": 60, "height": 40}))
    for tab in (t for p in net.parts for t in p.tabs):
        size, tip = math.dist(tab.hinge[0], tab.hinge[-1]), math.dist(tab.points[1], tab.points[2])
        assert tip == pytest.approx(size - 2 * depth_of(tab))


def test_a_tab_keeps_to_the_free_angle_beside_it():
    square = ((0.0, 0.0), (40.0, 0.0), (40.0, 40.0), (0.0, 40.0))
    ghost, _ = ghost_of(square, 0, (0.0, 0.0), (40.0, 0.0), (0.0,) * 4)
    usual, most = caps(ghost, (math.radians(30), math.pi), (True, False))
    assert math.degrees(usual[0]) == pytest.approx(27) and math.degrees(most[0]) == pytest.approx(27)
    assert math.degrees(usual[1]) == pytest.approx(45) and math.degrees(most[1]) == pytest.approx(75)


def test_a_tab_beside_a_very_narrow_gap_begins_farther_along():
    shape = trapezoid((0.0, 0.0), (100.0, 0.0), (math.radians(8), math.radians(45)), 5.0)
    assert shape[0][0] > 25 and shape[0][1] == 0
    assert shape[1] == pytest.approx((5 / math.tan(math.radians(8)), -5))
    assert shape[-1] == (100, 0)


def test_tabs_for_the_youngest_have_no_sharp_outer_corners():
    shape = trapezoid((0.0, 0.0), (40.0, 0.0), (math.pi / 4, math.pi / 4), 8.0)
    soft = rounded(shape)
    assert soft[0] == shape[0] and soft[-1] == shape[-1]
    for a, b, c in zip(soft, soft[1:], soft[2:], strict=False):
        turn = math.atan2(c[1] - b[1], c[0] - b[0]) - math.atan2(b[1] - a[1], b[0] - a[0])
        assert abs((turn + math.pi) % (2 * math.pi) - math.pi) < math.radians(20)


def test_tabs_on_needle_thin_triangles_are_still_found():
    """A spire of 24 by 260 mm: the tab begins where the narrow side is wide enough."""
    net = unfold(build("pyramid", {"sides": 7, "base": 22, "height": 258}))
    assert all(depth_of(t) > 4 - 1e-6 for p in net.parts for t in p.tabs)


def test_each_pair_of_cut_edges_gets_exactly_one_tab():
    solid = build("mesh", {"text": hull_text(11, 5), "longest": 300})
    net = unfold(solid)
    kept = {frozenset((h.parent, h.child)) for h in net.hinges}
    edges = [frozenset((e.left, e.right)) for e in edges_of(solid)]
    assert sum(len(p.tabs) for p in net.parts) == len([e for e in edges if e not in kept])


ROOMY = [
    ("tower", {"sides": 8, "across": 52, "height": 132, "roof": 24}),
    ("gabled-house", {"length": 72, "width": 50, "height": 28, "roof": 24}),
    ("prism", {"sides": 6, "side": 30, "height": 60}),
    ("cuboid", {"length": 80, "width": 50, "height": 45}),
    ("icosahedron", {"edge": 40}),
]


@pytest.mark.parametrize(("name", "given"), ROOMY)
def test_no_sliver_is_left_between_a_tab_and_the_next_cut(name, given):
    """Scissors need 3 mm of waste (common practice, no source), or cuts that part at 30 degrees where they meet."""
    for part in unfold(build(name, given)).parts:
        for tab in part.tabs:
            whole = shape(tab.points)
            for face in part.faces:
                other = shape(face.points)
                if face.name == tab.on_face or whole.distance(other) > 2.99:
                    continue
                ends = [p for p in (tab.hinge[0], tab.hinge[-1]) if other.distance(shapely.Point(p)) < 1e-3]
                assert ends, (tab.letter, face.name)
                away = whole.difference(shapely.MultiPoint(ends).buffer(6.0))
                assert away.distance(other) > 2.9, (tab.letter, face.name)
