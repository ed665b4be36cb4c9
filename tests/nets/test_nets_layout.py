"""Nets on sheets: scale, place, split, and what is said when it does not go."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from netcommon import EXAMPLES, tab_faults, worst_miss, worst_overlap

from packgen.nets import NetError, build, lay_out, unfold
from packgen.nets.plane import joined

A4 = (190.0, 277.0)
LETTER = (195.9, 259.4)


def inside(sheets, area):
    return all(
        -1e-6 <= x <= area[0] + 1e-6 and -1e-6 <= y <= area[1] + 1e-6
        for sheet in sheets.sheets
        for shape in (*sheet.faces, *sheet.tabs)
        for x, y in shape.points
    )


def test_the_lamp_house_gets_the_largest_standard_scale_that_fits():
    """5.2 m across and 6.1 m high: its walls go round 8 x 2.154 m, so at 1:100 they are 172 mm and at 1:50 345 mm."""
    sheets = lay_out(build("prism", {"sides": 8, "across": 5200, "height": 6100}), *A4, "auto")
    assert sheets.scale_text == "1:100" and len(sheets.sheets) == 1
    wall = next(f for f in sheets.sheets[0].faces if f.name == "side 3")
    sides = sorted(math.dist(a, b) for a, b in zip(wall.points, (*wall.points[1:], wall.points[0]), strict=True))
    assert sides[3] == pytest.approx(61.0)
    assert sides[0] == pytest.approx(52 * math.tan(math.pi / 8))
    assert "across: 5.2 m (on the model 52 mm)" in sheets.real_size


def test_auto_does_not_enlarge_what_can_be_built_at_true_size():
    assert lay_out(build("cube", {"edge": 20}), *A4).scale_text == "true size"


def test_auto_enlarges_what_would_be_too_small_to_fold():
    assert lay_out(build("cube", {"edge": 3}), *A4).scale_text == "2:1"


def test_auto_takes_more_sheets_where_one_would_be_too_small():
    sheets = lay_out(build("antiprism", {"sides": 20, "side": 9}), *A4)
    assert len(sheets.sheets) >= 1 and sheets.ratio >= 0.5


def test_auto_takes_a_few_sheets_more_where_most_edges_would_be_too_short_for_fingers():
    """A ball of 32 faces with edges of 18 mm: on one sheet of A4 it would be half as large, its edges 9 mm."""
    sheets = lay_out(build("truncated-icosahedron", {"edge": 18}), *A4)
    assert sheets.scale_text == "true size" and 1 < len(sheets.sheets) <= 4


def test_fit_is_as_large_as_the_sheet_allows():
    sheets = lay_out(build("cube", {"edge": 5200}), *A4, "fit")
    assert sheets.scale_text.startswith("fit (1:") and len(sheets.sheets) == 1
    xs = [p[0] for s in (*sheets.sheets[0].faces, *sheets.sheets[0].tabs) for p in s.points]
    ys = [p[1] for s in (*sheets.sheets[0].faces, *sheets.sheets[0].tabs) for p in s.points]
    assert (max(xs) - min(xs)) / 190 > 0.9 or (max(ys) - min(ys)) / 277 > 0.9


@pytest.mark.parametrize("area", [A4, LETTER, (277.0, 190.0)])
@pytest.mark.parametrize("scale", ["1:50", "1:25", "1:72"])
def test_the_scale_asked_for_is_the_scale_given(area, scale):
    sheets = lay_out(build("tower", {"sides": 6, "side": 1500, "height": 4000, "roof": 2500}), *area, scale)
    assert sheets.scale_text == scale
    assert sheets.ratio == pytest.approx(1 / float(scale[2:]))
    assert inside(sheets, area)
    assert worst_miss(sheets.net) < 1e-6 and worst_overlap(sheets.net) < 1e-3 and tab_faults(sheets.net) == []


def test_what_does_not_fit_one_sheet_is_split_with_a_letter_on_both_edges_of_every_joint():
    sheets = lay_out(build("tower", {"sides": 6, "side": 60, "height": 160, "roof": 90}), *A4, "true")
    assert len(sheets.sheets) > 1 and inside(sheets, A4)
    letters = [(x.text, x.on) for s in sheets.sheets for x in s.letters]
    for joint in sheets.net.joints:
        assert letters.count((joint.letter, "tab")) == 1 and letters.count((joint.letter, "edge")) == 1
    assert sorted(i for s in sheets.sheets for i in s.parts) == list(range(len(sheets.net.parts)))


@pytest.mark.parametrize("name", ["cone", "cylinder", "truncated-cone", "cone-canopy"])
def test_round_solids_too_large_for_a_sheet_come_in_sectors(name):
    given = {
        k: (v if k == "strings" else (2.2 if name == "truncated-cone" else 3.2) * v) for k, v in EXAMPLES[name].items()
    }
    sheets = lay_out(build(name, given), *A4, "true")
    assert inside(sheets, A4) and worst_overlap(sheets.net) < 1e-3
    mantles = [f for p in sheets.net.parts for f in p.faces if f.name.startswith("mantle")]
    assert len(mantles) > 1
    for joint in (j for j in sheets.net.joints if j.dihedral_deg == 180):
        assert math.dist(*joint.tab.points) == pytest.approx(math.dist(*joint.edge.points))


def test_pieces_on_a_sheet_keep_room_for_the_scissors():
    for name in ("cylinder", "lidded-box", "truncated-icosahedron"):
        sheets = lay_out(build(name, EXAMPLES[name]), *A4)
        for sheet in sheets.sheets:
            shapes = [joined(sheets.net.parts[i].shapes) for i in sheet.parts]
            for i, one in enumerate(shapes):
                assert all(one.distance(two) > 3.5 for two in shapes[:i])


def test_too_many_sheets_names_a_scale_that_works():
    house = build("gabled-house", {"length": 9000, "width": 6000, "height": 4000, "roof": 3000})
    with pytest.raises(NetError) as caught:
        lay_out(house, *A4, "1:10")
    assert "more than 12 sheets" in caught.value.message
    scale = caught.value.instead.removeprefix("Write scale: ").rstrip(".")
    assert len(lay_out(house, *A4, scale).sheets) <= 12


def test_too_small_to_fold_names_a_scale_that_works():
    house = build("gabled-house", {"length": 900, "width": 600, "height": 400, "roof": 300})
    with pytest.raises(NetError) as caught:
        lay_out(house, *A4, "1:200")
    assert "narrower than 4 mm" in caught.value.message and "1:200" in caught.value.message
    scale = caught.value.instead.removeprefix("Write scale: ").rstrip(".")
    assert lay_out(house, *A4, scale).ratio > 1 / 200


def test_a_round_end_too_small_to_glue_names_a_scale_that_works():
    post = build("cylinder", {"diameter": 100, "height": 900})
    with pytest.raises(NetError) as caught:
        lay_out(post, *A4, "1:10")
    assert "10.0 mm across" in caught.value.message
    assert lay_out(post, *A4, caught.value.instead.removeprefix("Write scale: ").rstrip(".")).sheets


def test_a_sheet_too_small_for_any_net_is_refused():
    with pytest.raises(NetError, match="too small for a net"):
        lay_out(build("cube", {"edge": 30}), 20, 277)


def test_a_net_can_be_laid_out_as_well_as_a_solid():
    net = unfold(build("cube", {"edge": 30}), card=0.4, youngest=True)
    sheets = lay_out(net, *A4)
    assert sheets.net.card == 0.4 and sheets.net.youngest
    assert sheets == lay_out(build("cube", {"edge": 30}), *A4, card=0.4, youngest=True)


def test_lengths_on_paper_are_true_to_the_scale():
    """Every edge of every face is the real edge times the ratio, far within the 0.1 mm that is promised."""
    for name in ("gabled-house", "frustum", "cuboctahedron", "stepped-pyramid"):
        solid = build(name, EXAMPLES[name])
        sheets = lay_out(solid, *A4, "fit")
        for face in (f for s in sheets.sheets for f in s.faces):
            corners = solid.corners(face.source)
            n = len(corners)
            for i in range(n):
                real = math.dist(corners[i], corners[(i + 1) % n])
                assert math.dist(face.points[i], face.points[(i + 1) % n]) == pytest.approx(real * sheets.ratio)


def test_drawings_stand_upright_on_the_built_model():
    """On every wall of the tower the drawing's up is the wall's up: from its lower edge to its upper edge."""
    sheets = lay_out(build("tower", {"sides": 5, "side": 25, "height": 60, "roof": 40}), *A4)
    for face in (f for s in sheets.sheets for f in s.faces if f.name.startswith("side")):
        art = face.art
        assert (art.width, art.height) == (pytest.approx(25), pytest.approx(60))
        a, b, c, d, e, f = art.matrix
        corner = (a * 0 + c * art.height + e, b * 0 + d * art.height + f)
        assert corner == pytest.approx(face.points[3]) and (e, f) == pytest.approx(face.points[0])
        assert a * d - b * c == pytest.approx(1)


def test_letters_stand_the_right_way_up():
    for sheet in lay_out(build("dodecahedron", {"edge": 30}), *A4).sheets:
        assert all(-90 < x.turn_deg <= 90 for x in sheet.letters)


def test_tabs_know_the_edge_they_meet_on_their_sheet():
    sheet = lay_out(build("cuboid", {"length": 80, "width": 60, "height": 40}), *A4).sheets[0]
    for tab in sheet.tabs:
        assert math.dist(*tab.edge) == pytest.approx(math.dist(tab.hinge[0], tab.hinge[-1]))
        assert any(math.dist(tab.edge[0], p) < 1e-9 for f in sheet.faces if f.name == tab.under for p in f.points)


def test_blades_and_glue_come_with_a_caution():
    sheets = lay_out(build("cube", {"edge": 30}), *A4)
    assert any("craft knife is for an adult" in c for c in sheets.cautions)
    assert any("hot glue gun burns" in c for c in sheets.cautions)
    assert sheets.printed_side == "outside"


def test_a_wound_strip_keeps_its_size_and_is_tiled_if_long():
    sheets = lay_out(build("wound-strip", {"former": 60, "width": 40, "turns": 4}), *A4)
    assert sheets.scale_text == "true size"
    assert sum(len(s.overlaps) for s in sheets.sheets) >= 2


@given(st.floats(10, 200), st.floats(10, 200), st.floats(10, 200), st.sampled_from([A4, LETTER]))
@settings(max_examples=12, deadline=None)
def test_any_box_is_laid_out_whole_or_refused(length, width, height, area):
    solid = build("cuboid", {"length": length, "width": width, "height": height})
    try:
        sheets = lay_out(solid, *area)
    except NetError as fault:
        assert fault.instead
        return
    assert inside(sheets, area) and worst_overlap(sheets.net) < 1e-3
    assert {f.name for s in sheets.sheets for f in s.faces} == set(solid.names)
