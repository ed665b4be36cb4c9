"""Prisms, pyramids, houses and the like: sizes a parent can check with a ruler, against published figures."""

import math

import pytest

from packgen.nets import NetError, build
from packgen.nets.shapes import surface, volume
from packgen.nets.solid import edges_of


def edge_lengths(solid):
    return {round(e.length, 6) for e in edges_of(solid)}


def same_corners(one, two):
    return all(math.dist(a, b) < 1e-9 for a, b in zip(one.vertices, two.vertices, strict=True))


def test_great_pyramid_has_the_published_slope_and_edges():
    """280 high on a base of 440 royal cubits: slope 51.843 degrees (51 degrees 51 minutes read), edge 418.57, apex
    angle of a face 63.417 degrees (Petrie's sizes, via Wikipedia "Great Pyramid of Giza"; regentsprep.org).
    """
    solid = build("pyramid", {"sides": 4, "base": 440, "height": 280})
    base, side = solid.normal(0), solid.normal(1)
    slope = 180 - math.degrees(math.acos(sum(a * b for a, b in zip(base, side, strict=True))))
    assert slope == pytest.approx(51.843, abs=5e-4)
    edge = min(edge_lengths(solid))
    assert edge == pytest.approx(418.57, abs=5e-3)
    assert pytest.approx(44 / 7) == 4 * 440 / 280
    assert 2 * math.asin(220 / edge) == pytest.approx(math.radians(63.417), abs=1e-5)


def test_pyramid_from_its_slant_is_the_pyramid_from_its_height():
    """Slant of a square pyramid: sqrt(h² + b²/4) (check value G37, standard formula)."""
    one = build("pyramid", {"sides": 4, "base": 60, "height": 40})
    two = build("pyramid", {"sides": 4, "base": 60, "slant height": 50})
    assert same_corners(one, two)


def test_pyramid_with_equal_edges_has_the_published_slope():
    """All edges 1: height 0.707107, area 1 + sqrt(3) (check value G39, derived)."""
    solid = build("pyramid", {"sides": 4, "base": 1, "height": 0.7071067811865476})
    assert edge_lengths(solid) == {1.0}
    assert surface(solid) == pytest.approx(1 + math.sqrt(3))


def test_prism_across_flats_across_corners_and_side_agree():
    """A regular hexagon of side a is a sqrt(3) across its flats and 2 a across its corners."""
    given = {"sides": 6, "height": 50}
    by_side = build("prism", given | {"side": 20})
    by_flats = build("prism", given | {"across": 20 * math.sqrt(3)})
    by_corners = build("prism", given | {"across corners": 40})
    assert same_corners(by_side, by_flats)
    assert same_corners(by_side, by_corners)


def test_across_of_an_odd_base_runs_from_a_side_to_the_opposite_corner():
    """An equilateral triangle of side a is a sqrt(3) / 2 high."""
    one = build("prism", {"sides": 3, "side": 40, "height": 50})
    two = build("prism", {"sides": 3, "across": 20 * math.sqrt(3), "height": 50})
    assert same_corners(one, two)


def test_side_one_faces_the_front_and_stands_upright():
    for name in ("prism", "frustum", "tower", "cuboid"):
        given = {"prism": {"sides": 5, "side": 20, "height": 30}, "cuboid": {"length": 40, "width": 30, "height": 20},
                 "frustum": {"sides": 5, "base": 20, "top": 10, "height": 30},
                 "tower": {"sides": 5, "side": 20, "height": 30, "roof": 20}}[name]  # fmt: skip
        solid = build(name, given)
        front = solid.normal(next(i for i, f in enumerate(solid.faces) if f.name == "side 1"))
        assert front[1] < -0.5 and front[0] == pytest.approx(0)


def test_uniform_antiprism_of_three_sides_is_an_octahedron():
    """The triangular antiprism with equal edges is the octahedron (dihedral 109.4712 degrees, CRC tables)."""
    solid = build("antiprism", {"sides": 3, "side": 30})
    assert edge_lengths(solid) == {30.0}
    assert {round(math.degrees(e.dihedral), 4) for e in edges_of(solid)} == {109.4712}


def test_gabled_house_has_the_volume_of_its_body_and_roof():
    solid = build("gabled-house", {"length": 90, "width": 60, "height": 40, "roof": 30})
    assert volume(solid) == pytest.approx(90 * 60 * 40 + 90 * 60 * 30 / 2)


def test_stepped_pyramid_has_the_volume_of_its_steps():
    solid = build("stepped-pyramid", {"steps": 3, "base": 90, "top": 30, "height": 60})
    assert volume(solid) == pytest.approx(20 * (90**2 + 60**2 + 30**2))


def test_bridge_pier_has_the_plan_asked_for():
    solid = build("bridge-pier", {"length": 100, "width": 30, "height": 50, "nose": 20})
    assert volume(solid) == pytest.approx(50 * (60 * 30 + 2 * 20 * 30 / 2))


def test_tower_roof_rises_above_its_walls():
    solid = build("tower", {"sides": 4, "side": 30, "height": 50, "roof": 20})
    assert max(v[2] for v in solid.vertices) == 70
    assert volume(solid) == pytest.approx(30 * 30 * 50 + 30 * 30 * 20 / 3)


def test_wheel_blades_turn_up_by_the_angle_asked_for():
    solid = build("bladed-wheel", {"radius": 60, "blades": 6, "blade": 15, "fold": 60})
    folds = [e for e in edges_of(solid) if e.right >= 0]
    assert len(folds) == 6
    assert all(math.degrees(e.dihedral) == pytest.approx(240) for e in folds)
    assert max(v[2] for v in solid.vertices) == pytest.approx(15 * math.sin(math.radians(60)))


def test_wheel_laid_flat_is_a_whole_disc():
    """The blades and the wheel together cover the disc: pi r², less what the polygon leaves out of it."""
    solid = build("bladed-wheel", {"diameter": 120, "blades": 8})
    assert surface(solid) == pytest.approx(math.pi * 60**2, rel=1e-3)


@pytest.mark.parametrize(
    ("name", "given", "word"),
    [
        ("pyramid", {"sides": 4, "base": 60, "slant": 30}, "too short"),
        ("pyramid", {"sides": 4, "base": 60, "slant": 40, "height": 50}, "shorter than its height"),
        ("pyramid", {"sides": 4, "base": 60, "slant": 55, "height": 40}, "do not agree"),
        ("frustum", {"sides": 4, "base": 60, "top": 60, "height": 40}, "smaller than its base"),
        ("stepped-pyramid", {"steps": 3, "base": 60, "top": 80, "height": 40}, "smaller than the base"),
        ("bridge-pier", {"length": 60, "width": 30, "height": 40, "nose": 30}, "nothing of a pier"),
        ("bridge-pier", {"length": 90, "width": 30, "height": 40, "top": 40}, "wider at the top"),
        ("lidded-box", {"length": 60, "width": 30, "height": 40, "lid": 50}, "deeper than the box"),
        ("bladed-wheel", {"radius": 60, "blades": 12, "blade": 40}, "do not fit"),
        ("bladed-wheel", {"radius": 60, "blades": 6, "hub": 3}, "must be larger than the axle"),
        ("truncated-cone", {"diameter": 60, "top diameter": 70, "height": 40}, "must be smaller"),
        ("cone", {"diameter": 60, "slant": 20}, "too short"),
    ],
)
def test_impossible_sizes_are_refused_with_what_to_write(name, given, word):
    with pytest.raises(NetError, match=word) as caught:
        build(name, given)
    assert caught.value.instead
