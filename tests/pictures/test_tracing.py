import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image, ImageDraw
from shapely import LineString, Polygon, make_valid
from shapely.strtree import STRtree

from packgen.pictures.label_map import LabelMap, connected
from packgen.pictures.shapes import flattened
from packgen.pictures.tracing import Chain, backwards, curve, drawn_line, rings, simplified, traced

GRIDS = st.integers(3, 12).flatmap(
    lambda width: st.lists(st.lists(st.integers(0, 2), min_size=width, max_size=width), min_size=3, max_size=12)
)


def areas_in(rows: list[list[int]]) -> LabelMap:
    data = bytes(v for row in rows for v in row)
    return connected(Image.frombytes("L", (len(rows[0]), len(rows)), data))


def ground(steps: tuple[tuple[str | float, ...], ...]) -> float:
    """The area an outline surrounds by the even-odd rule."""
    shape = Polygon()
    for line in flattened(steps, 6):
        if len(line) > 3:
            shape = shape.symmetric_difference(make_valid(Polygon(line)))
    return float(shape.area)


def crossings(chains: list[Chain]) -> int:
    lines = [LineString(drawn_line(chain.steps, 6)) for chain in chains]
    tree = STRtree(lines)
    return sum(lines[i].crosses(lines[j]) for i in range(len(lines)) for j in tree.query(lines[i]) if i < j)


@settings(max_examples=25, deadline=None)
@given(GRIDS)
def test_unsmoothed_outlines_surround_exactly_their_pixels(rows: list[list[int]]) -> None:
    areas = areas_in(rows)
    for outline, size in zip(rings(traced(areas, 0, 0.0), areas.count), areas.sizes(), strict=True):
        straight = tuple(step if step[0] != "c" else ("l", *step[5:]) for step in outline)
        assert ground(straight) == pytest.approx(size, abs=1e-6)


@settings(max_examples=25, deadline=None)
@given(GRIDS)
def test_smoothed_outlines_never_cross_and_share_out_the_whole_picture(rows: list[list[int]]) -> None:
    areas = areas_in(rows)
    chains = traced(areas, 12, 0.4)
    assert crossings(chains) == 0
    assert all(LineString(drawn_line(chain.steps, 6)).is_simple for chain in chains)
    whole = sum(ground(outline) for outline in rings(chains, areas.count))
    assert whole == pytest.approx(areas.width * areas.height, rel=1e-6)


@settings(max_examples=25, deadline=None)
@given(GRIDS)
def test_each_border_is_drawn_once(rows: list[list[int]]) -> None:
    chains = traced(areas_in(rows), 4, 0.4)
    ends = [(chain.areas, frozenset((chain.line[0], chain.line[-1])), len(chain.line)) for chain in chains]
    lines = {(areas, frozenset(chain.line)) for (areas, _, _), chain in zip(ends, chains, strict=True)}
    assert len(lines) == len(chains)


def test_a_circle_comes_out_round_and_keeps_its_size() -> None:
    image = Image.new("L", (120, 120), 0)
    ImageDraw.Draw(image).ellipse((20, 20, 99, 99), fill=1)
    areas = connected(image)
    (circle,) = (chain for chain in traced(areas, 20, 0.4) if not chain.framing)
    line = drawn_line(circle.steps, 8)
    assert circle.closed and line[0] == line[-1]
    assert all(math.dist(point, (60, 60)) == pytest.approx(40, abs=1.2) for point in line)


def test_a_square_keeps_its_straight_sides() -> None:
    image = Image.new("L", (100, 100), 0)
    image.paste(1, (20, 20, 80, 80))
    (square,) = (chain for chain in traced(connected(image), 20, 0.4) if not chain.framing)
    middle = [y for x, y in drawn_line(square.steps, 8) if 35 < x < 65]
    assert all(min(abs(y - 20), abs(y - 80)) < 0.6 for y in middle)


def test_the_frame_stays_straight() -> None:
    chains = traced(areas_in([[0, 1, 2], [1, 1, 2], [1, 0, 0]]), 10, 0.4)
    for chain in chains:
        if chain.framing:
            assert all(x in (0.0, 3.0) or y in (0.0, 3.0) for x, y in chain.line)


def test_running_a_line_backwards_twice_gives_it_again() -> None:
    steps = (("m", 0.0, 0.0), ("l", 1.0, 2.0), ("c", 2.0, 3.0, 4.0, 3.0, 5.0, 0.0))
    assert backwards(backwards(steps)) == steps
    assert backwards(steps)[0] == ("m", 5.0, 0.0)


@given(st.lists(st.tuples(st.integers(0, 50), st.integers(0, 50)), min_size=2, max_size=30))
def test_simplifying_keeps_the_ends_and_stays_near(points: list[tuple[int, int]]) -> None:
    kept = simplified(points, 0.5)
    assert kept[0] == points[0] and kept[-1] == points[-1]
    if len(set(kept)) > 1:
        line = LineString(kept)
        assert all(line.distance(LineString([p, p]).centroid) <= 0.5 + 1e-6 for p in points)


def test_a_curve_goes_through_its_points() -> None:
    points = [(0.0, 0.0), (4.0, 1.0), (8.0, 0.0), (9.0, 6.0)]
    steps = curve(points)
    assert [tuple(step[-2:]) for step in steps] == points
