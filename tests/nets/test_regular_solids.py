"""Regular and half-regular solids against published tables.

Areas, volumes, dihedral angles and radii: CRC Standard Mathematical Tables, 30th ed., 13.1 (geom.uiuc.edu), except for
the cuboctahedron and the truncated icosahedron, whose sizes are from memory (areas recomputed from their faces).
"""

import math

import pytest

from packgen.nets import build
from packgen.nets.shapes import defects, surface, volume
from packgen.nets.solid import edges_of
from packgen.nets.vectors import mean

TABLE = {  # name: V, E, F, area, volume, dihedral angles, radius of the corners, defect at a corner; for edge 1
    "tetrahedron": (4, 6, 4, 1.732051, 0.117851, {70.5288}, 0.612372, 180),
    "cube": (8, 12, 6, 6.0, 1.0, {90.0}, 0.866025, 90),
    "octahedron": (6, 12, 8, 3.464102, 0.471405, {109.4712}, 0.707107, 120),
    "dodecahedron": (20, 30, 12, 20.645729, 7.663119, {116.5651}, 1.401259, 36),
    "icosahedron": (12, 30, 20, 8.660254, 2.181695, {138.1897}, 0.951057, 60),
    "cuboctahedron": (12, 24, 14, 9.464102, 2.357023, {125.2644}, 1.0, 60),
    "truncated-icosahedron": (60, 90, 32, 72.607253, 55.287731, {138.1897, 142.6226}, 2.478019, 12),
}
EDGE = 30.0


@pytest.mark.parametrize("name", TABLE)
def test_counts_are_the_published_ones(name):
    solid = build(name, {"edge": EDGE})
    assert (len(solid.vertices), len(edges_of(solid)), len(solid.faces)) == TABLE[name][:3]


@pytest.mark.parametrize("name", TABLE)
def test_area_and_volume_are_the_published_ones(name):
    solid = build(name, {"edge": EDGE})
    assert surface(solid) / EDGE**2 == pytest.approx(TABLE[name][3], abs=1e-6)
    assert volume(solid) / EDGE**3 == pytest.approx(TABLE[name][4], abs=1e-6)


@pytest.mark.parametrize("name", TABLE)
def test_dihedral_angles_are_the_published_ones(name):
    found = {round(math.degrees(e.dihedral), 4) for e in edges_of(build(name, {"edge": EDGE}))}
    assert found == TABLE[name][5]


@pytest.mark.parametrize("name", TABLE)
def test_corners_lie_on_the_published_sphere(name):
    solid = build(name, {"edge": EDGE})
    centre = mean(solid.vertices)
    for v in solid.vertices:
        assert math.dist(v, centre) / EDGE == pytest.approx(TABLE[name][6], abs=1e-6)


@pytest.mark.parametrize("name", TABLE)
def test_angle_defect_at_every_corner_is_720_by_the_corners(name):
    """720 / V degrees at each corner of these solids (Descartes; Wikipedia "Platonic solid" copies)."""
    for defect in defects(build(name, {"edge": EDGE})).values():
        assert math.degrees(defect) == pytest.approx(TABLE[name][7], abs=1e-9)


@pytest.mark.parametrize("name", TABLE)
def test_every_edge_has_the_length_asked_for_and_the_solid_stands_level(name):
    solid = build(name, {"edge": EDGE})
    assert all(e.length == pytest.approx(EDGE) for e in edges_of(solid))
    assert min(v[2] for v in solid.vertices) == pytest.approx(0)
    assert solid.normal(0) == pytest.approx((0, 0, -1))


@pytest.mark.parametrize(("p", "q", "name"), [(3, 3, "tetrahedron"), (4, 3, "cube"), (3, 4, "octahedron"),
                                              (5, 3, "dodecahedron"), (3, 5, "icosahedron")])  # fmt: skip
def test_dihedral_follows_its_formula(p, q, name):
    """sin(angle / 2) = cos(pi / q) / sin(pi / p) for faces of p sides, q at a corner (Wikipedia "Platonic solid")."""
    edge = edges_of(build(name, {"edge": EDGE}))[0]
    assert math.sin(edge.dihedral / 2) == pytest.approx(math.cos(math.pi / q) / math.sin(math.pi / p))
