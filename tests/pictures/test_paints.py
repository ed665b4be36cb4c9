"""Paints: told apart, one for a thing, another for what lies beside it."""

from hypothesis import given
from hypothesis import strategies as st

from packgen.pictures.colours import apart
from packgen.pictures.paints import painted_things, paints_for

COLOURS = st.lists(st.tuples(*[st.floats(0, 1)] * 3), min_size=1, max_size=14)


@given(COLOURS, st.integers(2, 12))
def test_paints_are_few_and_told_apart(colours: list[tuple[float, float, float]], count: int) -> None:
    paint, paints = painted_things(colours, [100.0] * len(colours), {}, count)
    assert len(paints) <= count and set(paint) == set(range(len(paints)))
    for k, one in enumerate(paints):
        assert all(apart(one, other) >= 0.3 for other in paints[:k])


def test_grass_and_the_tree_in_it_keep_two_greens() -> None:
    sky, grass, tree = (0.6, 0.8, 0.9), (0.36, 0.56, 0.27), (0.3, 0.47, 0.26)
    assert len(set(painted_things([sky, grass, tree], [300, 260, 50], {1: {2}, 2: {1}}, 10)[0])) == 3
    assert len(set(painted_things([sky, grass, tree], [300, 260, 50], {}, 10)[0])) == 2


def test_a_spot_of_red_takes_no_paint_from_the_sky_and_the_hills() -> None:
    colours = [(0.62, 0.79, 0.85), (0.36, 0.56, 0.27), (0.85, 0.27, 0.18)]
    paint, paints = painted_things(colours, [700, 299, 1], {}, 8)
    assert len(paints) == 2 and paint[0] != paint[1]


def test_paints_of_a_picture_are_told_apart() -> None:
    greens = [(0.3, 0.5 + 0.01 * k, 0.3) for k in range(12)]
    paints = paints_for([*greens, (0.9, 0.2, 0.2)], [1.0] * 13, 12)
    assert len(paints) == 2
