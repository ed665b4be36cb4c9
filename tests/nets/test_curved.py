"""Teeth and seams of round solids."""

import math

import pytest

from packgen.nets import NetError, build, unfold
from packgen.nets.curved import tooth_count, tooth_depth
from packgen.nets.plane import joined, shape, shared
from packgen.nets.tabs import TabRule, distance


def mantle_of(name, given, **more):
    return unfold(build(name, given), **more).parts[0]


@pytest.mark.parametrize("radius", [7.5, 15, 30, 75, 150])
def test_teeth_are_narrow_enough_to_follow_the_rim(radius):
    """A chord c leaves its circle by r - sqrt(r² - c²/4): about 0.6 mm at most here, and c <= 12 mm."""
    chord = 2 * radius * math.sin(math.pi / tooth_count(radius))
    assert chord <= 12 + 1e-9
    assert radius - math.sqrt(radius**2 - chord**2 / 4) < 0.65


def test_folded_in_the_teeth_do_not_meet():
    """Folded on to the disc, a tooth's tip lies on a circle smaller by its depth: all tips together must be shorter."""
    part = mantle_of("cylinder", {"diameter": 40, "height": 50})
    teeth = [t for t in part.tabs if t.letter == "B"]
    depth = tooth_depth("cylinder", 20, TabRule())
    tips = sum(math.dist(t.points[1], t.points[2]) for t in teeth)
    assert tips < 2 * math.pi * (20 - depth)


def test_teeth_hang_on_the_whole_rim():
    part = mantle_of("truncated-cone", {"diameter": 80, "top diameter": 50, "height": 40})
    for text, diameter in (("B", 50), ("C", 80)):
        hinge = sum(
            math.dist(a, b) for t in part.tabs if t.letter == text for a, b in zip(t.hinge, t.hinge[1:], strict=False)
        )
        assert hinge == pytest.approx(math.pi * diameter, rel=1e-3)


@pytest.mark.parametrize("height", [3, 10, 40, 200])
def test_the_seam_tab_finds_room_on_flat_and_steep_cones(height):
    part = mantle_of("cone-canopy", {"diameter": 120, "height": height})
    seam = part.tabs[0]
    assert shared(shape(seam.points), joined([part.faces[0].points])) < 1e-3
    assert math.dist(seam.hinge[0], seam.hinge[-1]) >= math.hypot(60, height) / 2 - 1e-9


def test_the_rim_folds_by_the_slope_of_the_side():
    """A cone as high as its radius stands at 45 degrees on its base."""
    part = mantle_of("cone", {"diameter": 80, "height": 40})
    seam, *rim = part.folds
    assert {round(f.dihedral_deg, 9) for f in rim} == {45.0} and seam.dihedral_deg == 180
    assert {f.kind for f in part.folds} == {"mountain"} and (seam.start, seam.end) == part.tabs[0].hinge


def test_bend_lines_of_a_cone_never_crowd_at_its_point():
    """Any two of them are at least 3 mm apart where they end, though there are some twenty at the foot."""
    part = mantle_of("cone", {"diameter": 70, "height": 90})
    tips = [s[-1] for s in part.scores]
    assert 18 <= len(tips) <= 30
    for k, tip in enumerate(tips):
        for other in part.scores[:k] + part.scores[k + 1 :]:
            assert distance(tip, other[0], other[-1]) > 3.0


def test_score_lines_run_from_foot_to_head():
    part = mantle_of("cylinder", {"diameter": 50, "height": 60})
    lines = [s for s in part.scores if math.dist(s[0], s[-1]) == pytest.approx(60)]
    assert len(lines) == len(part.scores) and 15 <= len(lines) <= 22


def test_the_discs_are_as_large_as_the_solid():
    net = unfold(build("cylinder", {"diameter": 50, "height": 60}))
    base = next(f for p in net.parts for f in p.faces if f.name == "base")
    assert all(math.hypot(*p) == pytest.approx(25) for p in base.points)


def test_a_rim_too_small_for_teeth_is_refused():
    with pytest.raises(NetError, match=r"12\.0 mm across on paper") as caught:
        unfold(build("cylinder", {"diameter": 12, "height": 60}))
    assert caught.value.instead


def test_a_wound_strip_is_marked_at_every_turn():
    part = mantle_of("wound-strip", {"former": 20, "width": 30, "turns": 4}, card=0.5)
    marks = [s[0][0] for s in part.lays]
    steps = [b - a for a, b in zip([0, *marks], marks, strict=False)]
    assert steps == pytest.approx([math.pi * (20 + (2 * k + 1) * 0.5) for k in range(3)])
