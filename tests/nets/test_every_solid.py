"""What must hold for every solid of the catalogue, at its example's size."""

import math
from functools import cache

import pytest
from netcommon import EXAMPLES, is_convex, tab_faults, worst_miss, worst_overlap

from packgen.nets import build, catalogue, lay_out, unfold
from packgen.nets.shapes import defects
from packgen.nets.solid import edges_of


@cache
def net_of(name, youngest=False):
    return unfold(build(name, EXAMPLES[name]), youngest=youngest)


NAMES = [e.name for e in catalogue()]
PLANE = [n for n in NAMES if build(n, EXAMPLES[n]).faces]
CLOSED = [n for n in PLANE if build(n, EXAMPLES[n]).closed]


def test_every_solid_has_an_example_and_no_example_is_left_over():
    assert sorted(EXAMPLES) == sorted(NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_every_solid_is_described_with_its_parameters(name):
    entry = next(e for e in catalogue() if e.name == name)
    assert entry.title and len(entry.about) > 20 and entry.parameters
    assert all(p.help for p in entry.parameters)


@pytest.mark.parametrize("name", NAMES)
def test_face_names_are_single_and_drawings_have_an_upright(name):
    solid = build(name, EXAMPLES[name])
    assert len(set(solid.names)) == len(solid.names)
    for face in (f for part in net_of(name).parts for f in part.faces):
        assert math.hypot(*face.up) == pytest.approx(1)
        assert face.art.width > 0 and face.art.height > 0


@pytest.mark.parametrize("name", CLOSED)
def test_euler_and_descartes_hold(name):
    """V - E + F = 2; the angle defects of a closed solid sum to 720 degrees (Descartes; Wikipedia "Platonic solid")."""
    solid = build(name, EXAMPLES[name])
    assert len(solid.vertices) - len(edges_of(solid)) + len(solid.faces) == 2
    assert math.degrees(sum(defects(solid).values())) == pytest.approx(720, abs=1e-9)


@pytest.mark.parametrize("name", CLOSED)
def test_a_net_keeps_and_cuts_as_many_edges_as_a_spanning_tree(name):
    """A net in one piece keeps F - 1 edges as folds and has V - 1 joints (arXiv:1604.05004; check values G22, G24)."""
    solid = build(name, EXAMPLES[name])
    net = net_of(name)
    more = len(net.parts) - 1
    assert len(net.hinges) == len(solid.faces) - 1 - more
    assert len(net.joints) == len(solid.vertices) - 1 + more


@pytest.mark.parametrize("name", PLANE)
def test_folding_the_net_gives_the_solid_again(name):
    assert worst_miss(net_of(name)) < 1e-6


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("youngest", [False, True])
def test_no_face_or_tab_lies_over_another(name, youngest):
    assert worst_overlap(net_of(name, youngest)) < 1e-3


@pytest.mark.parametrize("name", PLANE)
def test_every_tab_lies_under_the_face_that_meets_it(name):
    assert tab_faults(net_of(name)) == []


@pytest.mark.parametrize("name", NAMES)
def test_every_joint_has_one_tab_and_a_letter_on_both_edges(name):
    net = net_of(name)
    letters = [x for p in net.parts for x in p.letters]
    for joint in net.joints:
        assert any(t.letter == joint.letter for t in net.parts[joint.tab.part].tabs)
        assert joint.letter not in {
            t.letter for t in net.parts[joint.edge.part].tabs if joint.edge.part != joint.tab.part
        }
        assert {x.on for x in letters if x.text == joint.letter} == {"tab", "edge"}
    straight = [j.letter for j in net.joints if len(j.tab.points) == 2]
    assert len(set(straight)) == len(straight)


@pytest.mark.parametrize("name", NAMES)
def test_every_joint_joins_edges_of_one_length(name):
    for joint in net_of(name).joints:
        one, two = (
            sum(math.dist(a, b) for a, b in zip(s.points, s.points[1:], strict=False)) for s in (joint.tab, joint.edge)
        )
        assert one == pytest.approx(two, rel=2e-3 if len(joint.tab.points) > 2 else 1e-9)


@pytest.mark.parametrize("name", NAMES)
def test_tabs_are_at_least_four_millimetres_deep(name):
    for part in net_of(name).parts:
        for tab in part.tabs:
            (ax, ay), (bx, by) = tab.hinge[0], tab.hinge[-1]
            size = math.dist(tab.hinge[0], tab.hinge[-1])
            depth = max(((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / size for x, y in tab.points)
            assert depth > 4 - 1e-6


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("area", [(190.0, 277.0), (195.9, 259.4)])
def test_it_fits_the_sheet_at_a_standard_scale(name, area):
    sheets = lay_out(build(name, EXAMPLES[name]), *area, "auto")
    for sheet in sheets.sheets:
        for x, y in (p for shape in (*sheet.faces, *sheet.tabs) for p in shape.points):
            assert -1e-6 < x < area[0] + 1e-6 and -1e-6 < y < area[1] + 1e-6


@pytest.mark.parametrize("name", NAMES)
def test_the_steps_begin_with_the_scissors_and_end_with_the_last_face(name):
    net = net_of(name)
    assert "cut" in [s.kind for s in net.stages[:2]]
    assert (net.stages[-1].kind in ("close", "close_teeth") and net.stages[-1].face == net.last) or not net.last
    assert bool(net.last) == net.solid.closed


@pytest.mark.parametrize("name", [n for n in PLANE if is_convex(build(n, EXAMPLES[n]))])
def test_convex_solids_have_only_mountain_folds(name):
    folds = [f for p in net_of(name).parts for f in p.folds]
    assert {f.kind for f in folds} == {"mountain"}
    assert all(0 < f.dihedral_deg < 180 for f in folds)
