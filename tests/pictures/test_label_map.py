from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from packgen.pictures.label_map import connected, neighbours, without_small


def grid(rows: list[list[int]]) -> Image.Image:
    return Image.frombytes("L", (len(rows[0]), len(rows)), bytes(v for row in rows for v in row))


GRIDS = st.integers(1, 9).flatmap(
    lambda width: st.lists(st.lists(st.integers(0, 2), min_size=width, max_size=width), min_size=1, max_size=9)
)


def flooded(rows: list[list[int]]) -> int:
    """How many areas there are, found pixel by pixel."""
    left = {(x, y) for y, row in enumerate(rows) for x in range(len(row))}
    count = 0
    while left:
        count += 1
        waiting = [left.pop()]
        while waiting:
            x, y = waiting.pop()
            for near in ((x + 1, y), (x - 1, y), (x, y + 1), (x, y - 1)):
                if near in left and rows[near[1]][near[0]] == rows[y][x]:
                    left.remove(near)
                    waiting.append(near)
    return count


@given(GRIDS)
def test_areas_are_those_a_flood_finds(rows: list[list[int]]) -> None:
    areas = connected(grid(rows))
    assert areas.count == flooded(rows)
    assert areas.image(areas.value).tobytes() == grid(rows).tobytes()
    assert sum(areas.sizes()) == len(rows) * len(rows[0])


@given(GRIDS)
def test_borders_are_shared_and_outlines_whole(rows: list[list[int]]) -> None:
    areas = connected(grid(rows))
    near = neighbours(areas)
    for area, others in enumerate(near.of):
        assert all(near.of[other][area].length == border.length for other, border in others.items())
    inner = sum(border.length for others in near.of for border in others.values())
    assert sum(near.outline) == inner + 2 * (len(rows) + len(rows[0]))


def test_contrast_is_summed_along_the_border() -> None:
    areas = connected(grid([[0, 0, 1, 1], [0, 0, 1, 1]]))
    border = neighbours(areas, bytes([0, 0, 7, 0, 0, 0, 9, 0])).of[0][1]
    assert (border.length, border.contrast) == (2, 16)


@given(GRIDS, st.integers(1, 12))
def test_no_small_area_is_left_while_it_has_a_neighbour(rows: list[list[int]], least: int) -> None:
    areas = without_small(connected(grid(rows)), least)
    assert areas.count == 1 or min(areas.sizes()) >= least
    assert sum(areas.sizes()) == len(rows) * len(rows[0])


def test_a_speck_goes_to_the_neighbour_with_most_border_and_its_value() -> None:
    areas = without_small(connected(grid([[5, 5, 5, 8], [5, 1, 5, 8], [5, 5, 5, 8]])), 2)
    assert sorted(areas.value) == [5, 8] and sorted(areas.sizes()) == [3, 9]
