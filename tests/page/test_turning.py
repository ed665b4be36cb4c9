import pytest
from page_marks import box, kit, of_role

from packgen.page.marks import Line, Path_
from packgen.page.turning import FIGURE_HEIGHT, draw_turn

KIT = kit("parent")
WIDE = 46.0


def crosses(short_edge: bool) -> tuple[tuple[float, float], tuple[float, float]]:
    """The places of the corner mark on the front and on the back, as fractions of the sheet."""
    pen = KIT.pen()
    draw_turn(pen, 0.0, 0.0, WIDE, short_edge, ("front", "back"), KIT.look.small)
    sheets = [box(m) for m in of_role(pen.marks, "turn") if isinstance(m, Path_) and m.fill is not None]
    heavy = [m for m in pen.marks if isinstance(m, Line) and m.stroke.width == 0.5]
    found = []
    for left, bottom, right, top in sheets:
        mine = [m for m in heavy if left < (m.x1 + m.x2) / 2 < right]
        x, y = (mine[0].x1 + mine[0].x2) / 2, (mine[0].y1 + mine[0].y2) / 2
        found.append(((x - left) / (right - left), (y - bottom) / (top - bottom)))
    return found[0], found[1]


def test_turned_on_the_long_edge_a_left_corner_comes_to_lie_right() -> None:
    (front_x, front_y), (back_x, back_y) = crosses(short_edge=False)
    assert back_x == pytest.approx(1 - front_x) and back_y == pytest.approx(front_y)


def test_turned_on_the_short_edge_a_top_corner_comes_to_lie_below() -> None:
    (front_x, front_y), (back_x, back_y) = crosses(short_edge=True)
    assert back_x == pytest.approx(front_x) and back_y == pytest.approx(1 - front_y, abs=0.01)


@pytest.mark.parametrize("short_edge", [True, False])
def test_the_figure_keeps_to_its_place(short_edge: bool) -> None:
    pen = KIT.pen()
    draw_turn(pen, 0.0, 0.0, WIDE, short_edge, ("front", "back"), KIT.look.small)
    boxes = [box(mark) for mark in pen.marks]
    assert min(b[0] for b in boxes) >= -1e-6 and max(b[2] for b in boxes) <= WIDE + 1e-6
    assert min(b[1] for b in boxes) >= -0.5 and max(b[3] for b in boxes) <= FIGURE_HEIGHT
