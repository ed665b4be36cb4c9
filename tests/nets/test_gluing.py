"""The order of gluing, the last face, and the steps told."""

import pytest
import shapely
from netcommon import EXAMPLES

from packgen.nets import build, lay_out, unfold
from packgen.nets.fold_back import worst_miss
from packgen.nets.gluing import TUCKED, letter
from packgen.nets.plane import shape


def net_of(name):
    return unfold(build(name, EXAMPLES[name]))


def test_letters_run_from_a_to_z_and_on():
    assert [letter(i) for i in (0, 1, 25, 26, 27, 51, 52, 701, 702)] == [
        "A", "B", "Z", "AA", "AB", "AZ", "BA", "ZZ", "AAA"]  # fmt: skip


@pytest.mark.parametrize("name", ["cuboid", "prism", "pyramid", "tower", "dodecahedron", "stepped-pyramid", "cone"])
def test_the_last_face_is_closed_last_and_hangs_by_one_fold_or_none(name):
    net = net_of(name)
    names = net.solid.names
    touches = [net.last in (names[j.tab.source], names[j.edge.source]) for j in net.joints]
    assert touches == sorted(touches) and any(touches)
    folds = sum(names[net.hinges[i].parent] == net.last or names[net.hinges[i].child] == net.last
                for i in range(len(net.hinges)))  # fmt: skip
    assert folds <= 1


@pytest.mark.parametrize("name", ["cuboid", "prism", "frustum", "tower", "antiprism"])
def test_the_last_face_is_tucked_in_by_few_tabs_or_laid_on_many(name):
    """Its tabs are all on it, or all on the faces round it, so that they can be reached until it closes."""
    net = net_of(name)
    late = [j for j in net.joints if net.last in (net.solid.names[j.tab.source], net.solid.names[j.edge.source])]
    own = {net.solid.names[j.tab.source] == net.last for j in late}
    assert own == {len(late) <= TUCKED}


@pytest.mark.parametrize("name", ["cuboid", "prism", "pyramid", "octahedron", "gabled-house"])
def test_early_joints_close_like_a_zip(name):
    """Each early joint inside one piece has its two edges meet in a corner of the solid that is closed by then."""
    net = net_of(name)
    done: set[frozenset[int]] = set()
    solid = net.solid
    for j in net.joints:
        face = solid.faces[j.tab.source].loop
        ends = {face[j.tab.at], face[(j.tab.at + 1) % len(face)]}
        if net.last in (solid.names[j.tab.source], solid.names[j.edge.source]):
            break
        one, two = j.tab.points, j.edge.points
        meet = any(abs(a[0] - b[0]) + abs(a[1] - b[1]) < 1e-6 for a in one for b in two)
        assert meet or any(ends & other for other in done)
        done.add(frozenset(ends))


def test_walls_carry_their_tabs_on_one_hand():
    """All roof tabs of the tower but the seam's neighbour hang on the same side of their triangle."""
    net = net_of("tower")
    roof = [t for p in net.parts for t in p.tabs if t.on_face.startswith("roof") and t.under.startswith("roof")]
    steps = {(int(t.under.split()[1]) - int(t.on_face.split()[1])) % 6 for t in roof}
    assert len(roof) == 6 and len(steps) == 1


def test_stages_tell_the_letters_and_the_last_face():
    *_, glue, close = net_of("cuboid").stages
    assert (glue.kind, glue.letters) == ("glue", ("A", "B", "C", "D"))
    assert (close.kind, close.letters, close.own) == ("close", ("E", "F", "G"), True) and close.face in ("base", "top")


def test_joints_of_one_kind_are_glued_in_one_stage():
    """The roof of a tower first, then its one seam, then the base."""
    glued = [s.letters for s in net_of("tower").stages if s.letters]
    assert glued == [tuple("ABCDEF"), ("G",), tuple("HIJKL")]


def test_every_joint_is_glued_in_exactly_one_stage():
    for name in ("stepped-pyramid", "truncated-icosahedron", "lidded-box", "cylinder"):
        net = net_of(name)
        letters = [x for s in net.stages for x in s.letters]
        assert sorted(letters) == sorted({j.letter for j in net.joints})


def test_many_joints_are_told_in_few_steps():
    assert len(net_of("truncated-icosahedron").stages) <= 14


def test_round_ends_are_told_as_teeth():
    kinds = [(s.kind, s.letters, s.face) for s in net_of("cylinder").stages]
    assert ("teeth", ("B",), "top") in kinds and ("close_teeth", ("C",), "base") in kinds and ("bend", (), "") in kinds


def test_valley_folds_are_told_only_where_there_are_some():
    assert [s.folds for s in net_of("cube").stages if s.folds] == [("mountain",)]
    assert [s.folds for s in net_of("stepped-pyramid").stages if s.folds] == [("mountain", "valley")]


def test_a_label_lies_well_inside_its_face():
    for name in ("stepped-pyramid", "bladed-wheel", "gabled-house"):
        for face in (f for p in net_of(name).parts for f in p.faces):
            whole = shape(face.points)
            assert whole.contains(
                shape([face.label, (face.label[0] + 0.1, face.label[1]), (face.label[0], face.label[1] + 0.1)])
            )


@pytest.mark.parametrize(("sides", "most"), [(6, 2), (7, 3), (8, 3), (9, 4)])
def test_small_hands_glue_every_other_edge_of_a_base_of_many_corners(sides: int, most: int) -> None:
    solid = build("tower", {"sides": sides, "side": 22.0, "height": 100.0, "roof": 40.0})
    usual, fewer = (lay_out(solid, 190.0, 260.0, "fit", small_hands=small).net for small in (False, True))
    assert len(usual.joints) - len(fewer.joints) == sides - 1 - most
    (part,) = fewer.parts
    base = next(f for f in part.faces if f.name == "base")
    assert sum("base" in (t.on_face, t.under) for t in part.tabs) == most
    assert len({x.text for x in part.letters}) == len(fewer.joints)  # no letter without its tab
    assert worst_miss(fewer) < 1e-6 and base.points
    cuts = shapely.union_all([shapely.LineString([*c.points, c.points[0]]) for c in part.cuts])
    whole = shapely.union_all([shapely.Polygon(x.points).buffer(0.001) for x in (*part.faces, *part.tabs)])
    assert whole.exterior.hausdorff_distance(cuts) < 0.01  # the cut runs round all that is left
