"""A face larger than the sheet, cut up over several: the tiles together are the face, and their crosses agree."""

import math

import pytest
import shapely

from packgen.nets import build, lay_out, unfold
from packgen.nets.splitting import split_nets
from packgen.nets.tabs import TabRule
from packgen.nets.tiling import STRIP, tiled
from packgen.nets.unfold import Unfolding

A4 = (190.0, 277.0)


def big_box():
    work = Unfolding(build("cuboid", {"length": 300, "width": 200, "height": 150}), TabRule(), A4)
    return next(split_nets(work))


def test_what_fits_is_left_alone():
    net = unfold(build("cube", {"edge": 30}))
    assert tiled(net, A4) is net


def test_the_tiles_of_a_face_together_are_the_face():
    """All tiles of a piece still lie on the same paper before they are placed, so their union is the face."""
    net = tiled(big_box(), A4)
    base = [f for p in net.parts for f in p.faces if f.name == "base"]
    assert len(base) == 2
    whole = shapely.union_all([shapely.Polygon(f.points) for f in base])
    assert whole.area == pytest.approx(300 * 200, rel=1e-6)
    assert shapely.Polygon(base[0].whole).equals_exact(shapely.Polygon(base[1].whole), 1e-9)
    both = shapely.Polygon(base[0].points).intersection(shapely.Polygon(base[1].points))
    assert both.area == pytest.approx(STRIP * 200, rel=1e-3)


def test_crosses_of_a_shared_strip_fall_on_the_same_points_of_the_face():
    net = tiled(big_box(), A4)
    by_name = {}
    for overlap in (o for p in net.parts for o in p.overlaps):
        by_name.setdefault(overlap.text, []).append(overlap)
    assert by_name
    for one, two in by_name.values():
        assert all(math.dist(a, b) < 1e-6 for a, b in zip(one.crosses, two.crosses, strict=True))
        assert all(shapely.Polygon(one.points).contains(shapely.Point(c)) for c in one.crosses)


def test_every_tile_fits_the_sheet_and_its_piece_is_cut_all_round():
    net = tiled(big_box(), A4)
    for part in net.parts:
        xs, ys = zip(*part.corners, strict=True)
        sides = sorted((max(xs) - min(xs), max(ys) - min(ys)))
        assert sides[0] <= 190 + 1e-6 and sides[1] <= 277 + 1e-6
        cut = sum(math.dist(a, b) for c in part.cuts for a, b in zip(c.points, c.points[1:], strict=False))
        cut += sum(math.dist(c.points[-1], c.points[0]) for c in part.cuts if c.closed)
        outline = shapely.union_all([shapely.Polygon(s) for s in part.shapes])
        assert cut == pytest.approx(outline.length, rel=1e-3)


def test_every_joint_has_its_letter_on_tab_and_edge_though_cut_up():
    sheets = lay_out(build("cube", {"edge": 230}), *A4, "true")
    letters = {(x.text, x.on) for s in sheets.sheets for x in s.letters}
    for joint in sheets.net.joints:
        assert {(joint.letter, "tab"), (joint.letter, "edge")} <= letters
        assert 0 <= joint.tab.part < len(sheets.net.parts)


def test_a_drawing_runs_over_the_tiles_as_over_the_whole_face():
    net = tiled(big_box(), A4)
    for face in (f for p in net.parts for f in p.faces if f.name == "base"):
        assert sorted((face.art.width, face.art.height)) == pytest.approx([200, 300])


def test_the_steps_tell_to_join_the_strips_first():
    kinds = [s.kind for s in tiled(big_box(), A4).stages]
    assert kinds.index("strips") == kinds.index("cut") + 1 < kinds.index("glue")


def test_a_large_disc_is_tiled_with_its_letters():
    sheets = lay_out(build("cylinder", {"diameter": 230, "height": 60}), *A4, "true")
    discs = [f for s in sheets.sheets for f in s.faces if f.name == "base"]
    assert len(discs) > 1
    area = shapely.union_all([shapely.Polygon(f.whole) for f in discs[:1]]).area
    assert area == pytest.approx(math.pi * 115**2, rel=1e-3)
