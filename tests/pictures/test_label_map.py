from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from packgen.pictures.label_map import connected, from_plane


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
def test_a_plane_gives_its_map_and_the_map_its_plane(rows: list[list[int]]) -> None:
    plane = connected(grid(rows)).plane()
    assert plane.shape == (len(rows), len(rows[0]))
    assert (from_plane(plane).plane() == plane).all() and from_plane(plane).count == int(plane.max()) + 1
