"""String holes and marks."""

import math

import pytest
import shapely

from packgen.nets import Drilling, NetError, build, lay_out, unfold
from packgen.nets.holes import INSET, RIM, drilled
from packgen.nets.plane import joined
from packgen.nets.tabs import distance


def holes_of(name, given, *wishes, scale="true"):
    sheets = lay_out(build(name, given), 190, 277, scale, holes=wishes)
    return [(h, s) for s in sheets.sheets for h in s.holes]


def test_a_canopy_gets_one_hole_at_each_corner_clear_of_the_edges():
    found = holes_of("pyramid-canopy", {"sides": 6, "base": 40, "height": 30}, Drilling("corners", 4))
    assert len(found) == 6
    for hole, sheet in found:
        room = min(
            distance(hole.centre, a, b)
            for c in sheet.cuts
            for a, b in zip(c.points, (*c.points[1:], c.points[0]), strict=True)
        )
        assert room >= 4 / 2 + RIM - 1e-9 or room >= 4 / 2 + 1


def test_each_hole_lies_in_a_different_face():
    net = drilled(unfold(build("pyramid-canopy", {"sides": 5, "base": 60, "height": 30})), [Drilling("corners", 3)])
    at = [h.centre for p in net.parts for h in p.holes]
    assert len(at) == 5 and len({(round(x, 3), round(y, 3)) for x, y in at}) == 5


@pytest.mark.parametrize("diameter", [120, 300])
def test_a_cone_canopy_gets_its_holes_evenly_round_the_rim(diameter):
    """Also when the mantle comes in several sectors: all at the same distance from the tip."""
    found = holes_of("cone-canopy", {"diameter": diameter, "height": 40, "strings": 6}, Drilling("corners", 3))
    assert len(found) == 6
    slant = math.hypot(diameter / 2, 40)
    for hole, sheet in found:
        tips = [p for f in sheet.faces for p in f.points]
        assert any(math.dist(hole.centre, p) == pytest.approx(slant - INSET) for p in tips)


def test_a_closed_solid_is_marked_at_the_corners_of_its_base():
    assert len(holes_of("pyramid", {"sides": 4, "base": 60, "height": 40}, Drilling("corners", 3))) == 4


def test_a_hole_in_the_base_is_in_its_middle():
    ((hole, sheet),) = holes_of("prism", {"sides": 6, "side": 25, "height": 40}, Drilling("base", 5, mark_only=True))
    base = next(f for f in sheet.faces if f.name == "base")
    assert hole.mark_only and all(math.dist(hole.centre, p) == pytest.approx(25) for p in base.points)


@pytest.mark.parametrize(
    ("name", "given"),
    [("cone", {"diameter": 70, "height": 90}), ("pyramid", {"sides": 5, "base": 60, "height": 70})],
)
def test_a_hole_at_the_point_is_made_by_snipping_off_the_tip(name, given):
    """Folded or rolled up, the curve is the rim of a hole of that width: an arc of pi d in all (geometry)."""
    net = drilled(unfold(build(name, given)), [Drilling("apex", 6)])
    before = unfold(build(name, given))
    curves = [c for one, two in zip(net.parts, before.parts, strict=True) for c in one.cuts[len(two.cuts) :]]
    holes = [h for p in net.parts for h in p.holes]
    assert all(h.snip for h in holes) and len(holes) == len(curves) >= 1
    on_faces = 0.0
    for part in net.parts:
        faces = joined([f.points for f in part.faces])
        for hole in part.holes:
            ring = shapely.Point(hole.centre).buffer(hole.across / 2, quad_segs=64).exterior
            on_faces += ring.intersection(faces).length
    assert on_faces == pytest.approx(math.pi * 6, rel=1e-3)


def test_a_tip_is_snipped_before_anything_is_glued():
    kinds = [s.kind for s in lay_out(build("cone", {"diameter": 60, "height": 40}), 190, 277,
                                     holes=[Drilling("apex", 4)]).stages]  # fmt: skip
    assert kinds.index("snip") < kinds.index("glue")


def test_a_hole_that_would_take_the_tip_off_is_refused():
    with pytest.raises(NetError, match="off the tip"):
        lay_out(build("cone", {"diameter": 40, "height": 90}), 190, 277, "true", holes=[Drilling("apex", 20)])


def test_a_flat_topped_solid_gets_its_apex_hole_in_the_top():
    ((hole, sheet),) = holes_of("cuboid", {"length": 80, "width": 60, "height": 30}, Drilling("apex", 6))
    top = next(f for f in sheet.faces if f.name == "top")
    assert all(math.dist(hole.centre, p) == pytest.approx(50) for p in top.points)


def test_a_wheel_brings_its_own_axle_hole_to_scale():
    ((hole, _),) = holes_of("bladed-wheel", {"diameter": 240, "blades": 6, "axle": 8}, scale="1:2")
    assert hole.where == "axle" and hole.across == pytest.approx(4)


def test_an_open_canopy_gets_its_holes_last_and_marks_need_no_stage():
    canopy = build("pyramid-canopy", {"sides": 4, "base": 60, "height": 30})
    assert lay_out(canopy, 190, 277, holes=[Drilling("corners", 3)]).stages[-1].kind == "string"
    assert lay_out(canopy, 190, 277, holes=[Drilling("corners", 3, mark_only=True)]).stages[-1].kind == "glue"


def test_a_closed_solid_gets_its_holes_while_the_card_is_flat():
    *early, last = lay_out(build("cube", {"edge": 40}), 190, 277, holes=[Drilling("base", 5)]).stages
    assert "punch" in [s.kind for s in early] and last.kind == "close" and last.thread


def test_holes_lie_ten_millimetres_in_where_there_is_room():
    found = holes_of("pyramid-canopy", {"sides": 4, "base": 150, "height": 60}, Drilling("corners", 3))
    assert len(found) == 4
    for hole, sheet in found:
        rims = [(a, b) for c in sheet.cuts for a, b in zip(c.points, (*c.points[1:], c.points[0]), strict=True)]
        assert min(distance(hole.centre, a, b) for a, b in rims) == pytest.approx(INSET)


@pytest.mark.parametrize(
    ("name", "given", "wish", "word"),
    [
        ("cube", {"edge": 30}, Drilling("cornres", 3), "no place"),
        ("cube", {"edge": 30}, Drilling("base", 0), "more than 0"),
        ("cube", {"edge": 30}, Drilling("base", 29), "does not fit"),
        ("cone-canopy", {"diameter": 90, "height": 40}, Drilling("base", 3), "no base"),
        ("pyramid-canopy", {"sides": 4, "base": 20, "height": 20}, Drilling("corners", 12), "does not fit"),
    ],
)
def test_holes_that_cannot_be_are_refused(name, given, wish, word):
    with pytest.raises(NetError, match=word) as caught:
        lay_out(build(name, given), 190, 277, "true", holes=[wish])
    assert caught.value.instead and caught.value.about == "hole 1"
