"""The finished solid as a picture: as large as its place allows, nearer faces over farther ones."""

import pytest
from page_marks import box, kit

from packgen.nets import build
from packgen.page.marks import Path_
from packgen.page.solid_view import draw_solid

GIVEN: dict[str, dict[str, float]] = {
    "cuboid": {"length": 80.0, "width": 50.0, "height": 45.0},
    "tower": {"sides": 8, "across": 32.0, "height": 81.0, "roof": 13.0},
    "cone": {"diameter": 70.0, "height": 90.0},
    "cylinder": {"diameter": 40.0, "height": 60.0},
    "dodecahedron": {"edge": 30.0},
}


@pytest.mark.parametrize("name", GIVEN)
def test_a_view_fills_its_rectangle_and_stays_in_it(name: str) -> None:
    pen = kit("older").pen()
    draw_solid(pen, build(name, dict(GIVEN[name])), 10.0, 20.0, 60.0, 50.0)
    boxes = [box(mark) for mark in pen.marks]
    left, bottom = min(b[0] for b in boxes), min(b[1] for b in boxes)
    right, top = max(b[2] for b in boxes), max(b[3] for b in boxes)
    assert left >= 10.0 - 1e-6 and bottom >= 20.0 - 1e-6 and right <= 70.0 + 1e-6 and top <= 70.0 + 1e-6
    assert right - left == pytest.approx(60.0) or top - bottom == pytest.approx(50.0)


@pytest.mark.parametrize("name", GIVEN)
def test_faces_are_light_greys_and_the_one_seen_best_is_drawn_last(name: str) -> None:
    pen = kit("older").pen()
    draw_solid(pen, build(name, dict(GIVEN[name])), 0.0, 0.0, 60.0, 50.0)
    faces = [mark for mark in pen.marks if isinstance(mark, Path_) and mark.fill is not None]
    assert len(faces) >= 3
    assert all(isinstance(face.fill, float) and 0.8 <= face.fill <= 1.0 for face in faces)
    # Seen from above: what is drawn first lies lower or farther off than what is drawn over it.
    assert box(faces[-1])[3] > box(faces[0])[1]
