"""A raw mesh becomes a clean closed surface, or the edge that spoils it is named."""

import pytest
from netcommon import hull_text, off_text

from packgen.nets import NetError, build, unfold
from packgen.nets.shapes import surface, volume
from packgen.nets.solid import edges_of

CORNERS = [(0.0, 0.0, 0.0), (60.0, 0.0, 0.0), (60.0, 40.0, 0.0), (0.0, 40.0, 0.0),
           (0.0, 0.0, 30.0), (60.0, 0.0, 30.0), (60.0, 40.0, 30.0), (0.0, 40.0, 30.0)]  # fmt: skip
BOX = [(3, 2, 1, 0), (4, 5, 6, 7), (0, 1, 5, 4), (1, 2, 6, 5), (2, 3, 7, 6), (3, 0, 4, 7)]


def mesh(points, loops, **more):
    return build("mesh", {"text": off_text(points, loops), **more})


def refusal(points, loops):
    with pytest.raises(NetError) as caught:
        mesh(points, loops)
    return caught.value


def triangled(loops):
    return [t for a, b, c, d in loops for t in ((a, b, c), (a, c, d))]


def test_a_box_of_triangles_becomes_six_faces():
    solid = mesh(CORNERS, triangled(BOX))
    assert len(solid.faces) == 6 and len(edges_of(solid)) == 12
    assert volume(solid) == pytest.approx(60 * 40 * 30) and surface(solid) == pytest.approx(2 * (2400 + 1800 + 1200))


def test_corners_that_touch_are_joined():
    loose = [CORNERS[v] for loop in BOX for v in loop]
    solid = mesh(loose, [tuple(range(4 * i, 4 * i + 4)) for i in range(6)])
    assert len(solid.vertices) == 8


def test_faces_turned_the_wrong_way_are_turned_round():
    for mixed in ([tuple(reversed(loop)) for loop in BOX], [BOX[0][::-1], *BOX[1:]]):
        assert volume(mesh(CORNERS, mixed)) == pytest.approx(60 * 40 * 30)


def test_faces_that_are_not_flat_are_cut_into_triangles():
    bent = [*CORNERS[:6], (60.0, 40.0, 38.0), CORNERS[7]]
    solid = mesh(bent, BOX)
    assert sum(len(f.loop) == 3 for f in solid.faces) == 2
    assert all(abs(e.length) > 0 for e in edges_of(solid))


def test_corners_in_the_middle_of_a_straight_edge_are_dropped():
    points = [*CORNERS, (30.0, 0.0, 0.0)]
    loops = [(3, 2, 1, 8, 0), BOX[1], (0, 8, 1, 5, 4), *BOX[3:]]
    assert len(edges_of(mesh(points, loops))) == 12


def test_a_missing_face_names_an_open_edge():
    fault = refusal(CORNERS, BOX[:-1])
    assert "not closed" in fault.message and "one side only" in fault.message
    assert "corner 1 (0, 0, 0)" in fault.message or "corner 4 (0, 40, 0)" in fault.message


def test_an_edge_of_three_faces_is_named():
    fault = refusal([*CORNERS, (30.0, -20.0, 10.0)], [*BOX, (0, 1, 8), (1, 0, 8)])
    assert "joins 4 faces" in fault.message and "corner 1 (0, 0, 0) to corner 2 (60, 0, 0)" in fault.message


def test_two_parts_that_touch_in_a_point_are_refused():
    moved = [(x + 60, y + 40, z + 30) for x, y, z in CORNERS]
    fault = refusal([*CORNERS, *moved], [*BOX, *(tuple(v + 8 for v in loop) for loop in BOX)])
    assert "touch in one point" in fault.message and "(60, 40, 30)" in fault.message


def test_a_face_without_area_is_refused_by_its_line():
    assert "no area" in refusal(CORNERS, [*BOX, (0, 1, 0)]).message


def test_a_one_sided_surface_is_refused():
    """The six-corner projective plane: ten triangles, every edge joins two, but it has no inside (M. Brehm)."""
    points = [
        (0.0, 0.0, 0.0),
        (10.0, 0.0, 1.0),
        (3.0, 9.0, 2.0),
        (-8.0, 6.0, 5.0),
        (-8.0, -6.0, 7.0),
        (3.0, -9.0, 11.0),
    ]
    loops = [
        (0, 1, 2),
        (0, 2, 3),
        (0, 3, 4),
        (0, 4, 5),
        (0, 5, 1),
        (1, 2, 4),
        (2, 3, 5),
        (3, 4, 1),
        (4, 5, 2),
        (5, 1, 3),
    ]
    assert "only one side" in refusal(points, loops).message


def test_the_size_is_set_by_height_or_longest_measure():
    assert max(v[2] for v in mesh(CORNERS, BOX, height=90.0).vertices) == pytest.approx(90)
    assert mesh(CORNERS, BOX, longest=120.0).sizes[0] == ("height", pytest.approx(60), "length")
    assert max(v[2] for v in mesh(CORNERS, BOX, up="y").vertices) == pytest.approx(40)


def test_groups_name_the_faces():
    text = "".join(f"v {x} {y} {z}\n" for x, y, z in CORNERS)
    text += "g roof\nf 5 6 7 8\ng wall\n" + "".join(f"f {' '.join(str(v + 1) for v in loop)}\n" for loop in BOX[2:])
    solid = build("mesh", {"text": text + "g\nf 4 3 2 1\n"})
    assert solid.names == ("roof", "wall 1", "wall 2", "wall 3", "wall 4", "face 1")


def test_a_mesh_in_two_bodies_gets_a_piece_for_each():
    moved = [(x + 100, y, z) for x, y, z in CORNERS]
    solid = mesh([*CORNERS, *moved], [*BOX, *(tuple(v + 8 for v in loop) for loop in BOX)])
    assert len(unfold(solid).parts) == 2


def test_a_ring_with_a_hole_through_it_can_be_unfolded():
    """A square ring: not a ball, so its defects do not sum to 720 degrees, but it can be built all the same."""

    def square(r, z):
        return [(-r, -r, z), (r, -r, z), (r, r, z), (-r, r, z)]

    points = [tuple(map(float, p)) for p in (*square(40, 0), *square(15, 0), *square(40, 25), *square(15, 25))]
    loops = []
    for i in range(4):
        j = (i + 1) % 4
        loops += [
            (i, j, 8 + j, 8 + i),
            (4 + j, 4 + i, 12 + i, 12 + j),
            (8 + i, 8 + j, 12 + j, 12 + i),
            (j, i, 4 + i, 4 + j),
        ]
    assert len(unfold(mesh(points, loops)).joints) > 10


def test_random_hulls_keep_their_corners():
    assert len(build("mesh", {"text": hull_text(12, 3)}).vertices) == 12
