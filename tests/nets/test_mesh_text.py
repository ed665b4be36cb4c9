"""OBJ and OFF files as people's programs write them, and broken ones."""

import pytest

from packgen.nets import NetError
from packgen.nets.mesh_text import read_mesh

TETRAHEDRON = "OFF\n4 4 6\n0 0 0\n1 0 0\n0 1 0\n0 0 1\n3 0 2 1\n3 0 1 3\n3 1 2 3\n3 0 3 2\n"


def test_an_off_file_is_read():
    raw = read_mesh(TETRAHEDRON)
    assert raw.vertices[3] == (0, 0, 1) and raw.loops[0] == (0, 2, 1) and len(raw.loops) == 4


def test_off_counts_may_stand_on_the_first_line_and_comments_anywhere():
    text = "# made by hand\nOFF 4 4 6\n0 0 0\n1 0 0 # a corner\n\n0 1 0\n0 0 1\n3 0 2 1 255 0 0\n"
    text += "3 0 1 3\n3 1 2 3\n3 0 3 2\n"
    assert read_mesh(text).loops == read_mesh(TETRAHEDRON).loops


def test_an_obj_file_is_read_with_its_groups_textures_and_negative_numbers():
    text = (
        "mtllib lamp.mtl\nv 0 0 0\nv 1 0 0 1.0\nv 0 1 0\nv 0 0 1\nvt 0 0\nvn 0 0 1\ng roof\nusemtl red\n"
        "f 1/1/1 3/1/1 2/1/1\nf 1//1 2//1 4//1\no Back_wall\nf 2 3 \\\n 4\nf -4 -1 -2\n"
    )
    raw = read_mesh(text)
    assert raw.loops == ((0, 2, 1), (0, 1, 3), (1, 2, 3), (0, 3, 2))
    assert raw.groups == ("roof", "roof", "back wall", "back wall")


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("", "empty"),
        ("# nothing\n", "empty"),
        ("OFF\n", "does not say how many"),
        ("OFF\n4 4 6\n0 0 0\n", "ends before"),
        ("OFF\n-1 4 6\n0 0 0\n", "promises"),
        (TETRAHEDRON.replace("0 0 1\n", "0 0 up\n", 1), "Line 6 .* 'up'"),
        (TETRAHEDRON.replace("0 0 1\n", "0 0\n", 1), "Line 6 .* three numbers"),
        (TETRAHEDRON.replace("0 0 1\n", "0 0 nan\n", 1), "'nan'"),
        (TETRAHEDRON.replace("3 1 2 3", "3 1 2 9"), "Line 9 .* not there"),
        (TETRAHEDRON.replace("3 1 2 3", "4 1 2 3"), "fewer corners"),
        ("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n", "1 faces"),
        ("v 0 0\n", "three numbers"),
        ("v 0 0 0\nf 1 2 x\n", "'x'|not there"),
        ("hello\n", "0 faces"),
    ],
)
def test_broken_files_are_refused_by_line(text, word):
    with pytest.raises(NetError, match=word) as caught:
        read_mesh(text)
    assert caught.value.instead


def test_a_mesh_of_thousands_of_faces_is_refused():
    rows = "".join(f"f {1 + i % 3} {2 + i % 2} 4\n" for i in range(2000))
    with pytest.raises(NetError, match="too many to cut out"):
        read_mesh("v 0 0 0\nv 1 0 0\nv 0 1 0\nv 0 0 1\n" + rows)
