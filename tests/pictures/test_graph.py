import numpy as np
import pytest

from packgen.pictures.graph import Graph, Room


def lab(plane: np.ndarray, colours: list[tuple[float, float, float]]) -> np.ndarray:
    return np.array(colours, np.float32)[plane]


def graph(plane: np.ndarray, colours: list[tuple[float, float, float]], step: float = 40.0) -> Graph:
    steps = np.zeros(plane.shape, np.float32)
    other = plane[:, 1:] != plane[:, :-1]
    steps[:, 1:][other] = step
    steps[:, :-1][other] = step
    other = plane[1:] != plane[:-1]
    steps[1:][other] = step
    steps[:-1][other] = step
    return Graph(plane, lab(plane, colours), steps, np.ones(plane.shape, np.float32), 0.6)


STRIPES = np.repeat(np.array([[0, 1, 2, 3]], np.int32), 60, 0).repeat(30, 1)
GREYS = [(20.0, 0, 0), (30.0, 0, 0), (80.0, 0, 0), (88.0, 0, 0)]


def groups(made: Graph) -> list[int]:
    return made.planed()[30, ::30].tolist()


def test_the_most_alike_neighbours_are_joined_first() -> None:
    made = graph(STRIPES, GREYS)
    made.join_alike(2)
    one, two, three, four = groups(made)
    assert one == two != three == four and made.left == 2


def test_a_border_without_a_step_is_none_however_far_colours_lie_apart() -> None:
    soft = graph(STRIPES, [(v, 0, 0) for v in (10.0, 35.0, 60.0, 85.0)], step=4.0)
    soft.join_alike(3)
    assert soft.left == 1


def test_a_narrow_area_goes_to_the_neighbour_it_is_most_like() -> None:
    plane = STRIPES.copy()
    plane[:, 60:84] = 1  # stripe 2 is left 6 px wide, beside stripe 3
    made = graph(plane, GREYS)
    made.join_narrow(Room(6))
    one, two, _, four = groups(made)
    assert made.left == 3 and made.planed()[30, 87] == four and one != two


def test_a_narrow_ring_takes_what_lies_in_it() -> None:
    plane = np.zeros((120, 120), np.int32)
    plane[40:80, 40:80] = 1
    plane[48:72, 48:72] = 2
    made = graph(plane, [(20.0, 0, 0), (60.0, 0, 0), (90.0, 0, 0)])
    made.join_narrow(Room(15))
    assert made.left == 2 and made.planed()[60, 60] == made.planed()[44, 60] != made.planed()[5, 5]


def test_borders_add_up_when_areas_are_joined() -> None:
    made = graph(STRIPES, GREYS)
    made.join(1, 2)
    assert set(made.near[2]) == {0, 3} and made.near[0][2].length == made.near[2][0].length == 60
    assert made.size[2] == 2 * 30 * 60 and made.clear(0, 2) > made.clear(2, 3) > 0


def test_no_more_are_left_than_asked_for() -> None:
    made = graph(STRIPES, GREYS)
    made.join_smallest(2)
    assert made.left == 2 and len(made.alive()) == 2
    assert sum(made.size[area] for area in made.alive()) == pytest.approx(STRIPES.size)


def test_what_stands_out_clearly_all_round_may_be_narrower() -> None:
    plane = np.zeros((120, 120), np.int32)
    plane[50:70, 50:70] = 1
    for colour, kept in ((90.0, 2), (24.0, 1)):
        made = graph(plane, [(20.0, 0, 0), (colour, 0, 0)])
        made.join_narrow(Room(12, clear_part=0.75))
        assert made.left == kept
