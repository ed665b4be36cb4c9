"""Views of solids: what shows, and drawings seen on the faces that are turned to the eye."""

from __future__ import annotations

import pytest
from page_marks import kit, of_role

from packgen.nets import build, catalogue
from packgen.nets.net import Art
from packgen.page.marks import Group, Mark, Path_, Point
from packgen.page.pen import Pen
from packgen.page.solid_view import draw_solid

GIVEN = {
    "cone": {"diameter": 60.0, "height": 90.0},
    "cylinder": {"diameter": 50.0, "height": 60.0},
    "cone-canopy": {"diameter": 120.0, "height": 30.0},
    "tower": {"sides": 8.0, "across": 52.0, "height": 130.0, "roof": 24.0},
    "lidded-box": {"length": 80.0, "width": 50.0, "height": 45.0},
}


def view(name: str, **more: object) -> Pen:
    pen = kit("younger").pen()
    draw_solid(pen, build(name, GIVEN[name]), 0.0, 0.0, 70.0, 60.0, **more)  # type: ignore[arg-type]
    return pen


def points(path: Path_) -> list[Point]:
    return [(float(s[-2]), float(s[-1])) for s in path.steps if len(s) > 2]


@pytest.mark.parametrize("name", GIVEN)
def test_it_stays_in_its_place_and_fills_it_one_way(name: str) -> None:
    assert name in {e.name for e in catalogue()}
    at = [p for m in of_role(view(name).marks, "view") if isinstance(m, Path_) for p in points(m)]
    wide = max(x for x, _ in at) - min(x for x, _ in at)
    high = max(y for _, y in at) - min(y for _, y in at)
    assert min(x for x, _ in at) >= -0.01 and max(x for x, _ in at) <= 70.01
    assert wide == pytest.approx(70, abs=0.1) or high == pytest.approx(60, abs=0.1)


@pytest.mark.parametrize("name", ["cone", "cylinder", "cone-canopy"])
def test_a_round_solid_has_an_outline_at_its_foot(name: str) -> None:
    """An open line of many points, lowest in the middle: the nearer half of the rim."""
    lines = [points(m) for m in of_role(view(name).marks, "view") if isinstance(m, Path_) and m.fill is None]
    rims = [row for row in lines if len(row) > 8]
    assert rims
    foot = min(rims, key=lambda row: min(y for _, y in row))
    lowest = min(range(len(foot)), key=lambda k: foot[k][1])
    assert 0 < lowest < len(foot) - 1 or foot[0] == foot[-1]


def test_drawings_show_on_the_faces_turned_to_the_eye_and_on_no_others() -> None:
    asked: list[str] = []

    def painter(name: str, box: Art) -> tuple[tuple[Mark, ...], tuple[Point, ...]]:
        asked.append(name)
        pen = kit("younger").pen()
        pen.box(0.0, 0.0, box.width, box.height, fill=0.5)
        return tuple(pen.marks), box.outline

    pen = view("tower", painter=painter)
    walls = [n for n in asked if n.startswith("side")]
    assert "side 1" in asked and "base" not in asked and 3 <= len(walls) <= 5
    groups = [m for m in pen.marks if isinstance(m, Group)]
    assert len(groups) == len(asked)
    first = groups[asked.index("side 1")]
    assert first.clip and first.matrix[3] > 0  # up on the wall is up on the page
