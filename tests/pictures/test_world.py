import math
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.pictures.world import MapView, km_between, map_for

SALTMERE = (50.4, -4.9)  # invented; its place in the sea off Cornwall's coast is not


def on_land(view: MapView, spot: tuple[float, float]) -> bool:
    x, y = view.place(spot)
    inside = False
    for ring in view.land:
        for (x0, y0), (x1, y1) in zip(ring, [*ring[1:], ring[0]], strict=True):
            if (y0 > y) != (y1 > y) and x < x0 + (y - y0) / (y1 - y0) * (x1 - x0):
                inside = not inside
    return inside


WORLD = map_for([], 270, 180)


# Places any atlas shows (from memory), well away from a coast.
@pytest.mark.parametrize(
    ("spot", "land"),
    [
        ((23, 10), True), ((48.86, 2.35), True), ((-23, 134), True), ((40, -100), True), ((-10, -55), True),
        ((65, 100), True), ((66, 178), True), ((73, -40), True),
        ((40, -40), False), ((0, -150), False), ((-30, 80), False), ((35, 18), False), ((-45, 180), False),
    ],
)  # fmt: skip
def test_land_and_sea_lie_where_they_are(spot: tuple[float, float], land: bool) -> None:
    assert on_land(WORLD, spot) is land


def test_distances_agree_with_a_published_one() -> None:
    # Land's End to John o' Groats, 50 03 59 N 005 42 53 W to 58 38 38 N 003 04 12 W: 968.9 km by the haversine formula
    # (C. Veness, "Calculate distance, bearing and more between latitude/longitude points"; from memory).
    start = (50 + 3 / 60 + 59 / 3600, -(5 + 42 / 60 + 53 / 3600))
    end = (58 + 38 / 60 + 38 / 3600, -(3 + 4 / 60 + 12 / 3600))
    assert km_between(start, end) == pytest.approx(968.9, abs=0.1)
    # A quarter of a circle of the mean radius 6371.0088 km.
    assert km_between((0, 0), (0, 90)) == pytest.approx(math.pi / 2 * 6371.0088)
    assert km_between((12, 34), (12, 34)) == 0


def test_the_scale_is_true_north_and_south_and_along_the_middle() -> None:
    view = map_for([SALTMERE], 180, 120)
    (x0, y0), (x1, y1) = view.place((50.0, -5.0)), view.place((51.0, -5.0))
    assert (y1 - y0) * view.km_per_mm == pytest.approx(km_between((50, -5), (51, -5)))
    middle = view.south + view.height / view.per_degree / 2
    (x0, _), (x1, _) = view.place((middle, -5.0)), view.place((middle, -4.0))
    assert (x1 - x0) * view.km_per_mm == pytest.approx(km_between((middle, -5), (middle, -4)), rel=1e-4)


SPOTS = st.lists(st.tuples(st.floats(-85, 85), st.floats(-180, 180)), min_size=1, max_size=4)


@settings(deadline=None, max_examples=12)
@given(SPOTS, st.floats(80, 190), st.floats(80, 240))
def test_every_spot_is_on_the_map_and_the_map_in_its_room(
    spots: list[tuple[float, float]], width: float, height: float
) -> None:
    view = map_for(spots, width, height)
    assert view.width <= width + 1e-6 and view.height <= height + 1e-6
    assert max(view.width / width, view.height / height) > 0.99
    for spot in spots:
        x, y = view.place(spot)
        assert -1e-6 <= x <= view.width + 1e-6 and -1e-6 <= y <= view.height + 1e-6
    for line in (*view.land, *view.coast):
        assert all(-1e-6 <= x <= view.width + 1e-6 and -1e-6 <= y <= view.height + 1e-6 for x, y in line)


def test_near_spots_are_shown_large_and_far_ones_on_the_whole_world() -> None:
    near, far = (
        map_for([SALTMERE, (48.86, 2.34)], 180, 120),
        map_for([(35.7, 139.7), (48.9, 2.3), (40.7, -74)], 180, 120),
    )
    assert near.km_per_mm < 25 < 150 < far.km_per_mm
    assert far.meridians[0].name == "180°" and far.width == pytest.approx(180)


def test_spots_on_both_sides_of_the_date_line_stay_together() -> None:
    view = map_for([(-36.8, 174.8), (-13.8, -171.8)], 180, 120)
    (x0, _), (x1, _) = view.place((-36.8, 174.8)), view.place((-13.8, -171.8))
    assert 0 < x0 < x1 < view.width
    assert (x1 - x0) / view.per_degree / view.squeeze == pytest.approx(360 - 174.8 - 171.8)
    assert on_land(view, (-38.5, 176))


def test_lines_of_the_net_are_named_and_not_crowded() -> None:
    for spots in ([SALTMERE], [(69.6, 18.9)], [(0, 0), (0, 170)]):
        view = map_for(spots, 180, 120)
        for ticks in (view.parallels, view.meridians):
            places = [tick.at for tick in ticks]
            assert len(ticks) >= 2 and all(b - a > 8.9 for a, b in pairwise(places))
    names = {tick.name for tick in map_for([(0, 0)], 180, 120).meridians}
    assert "0°" in names and {name[-1] for name in names} == {"°", "E", "W"}


def test_a_step_asked_for_is_kept() -> None:
    view = map_for([SALTMERE], 180, 120, step=2)
    assert all(tick.degrees % 2 == 0 for tick in view.parallels) and len(view.parallels) >= 5


def test_an_impossible_place_is_refused() -> None:
    with pytest.raises(ValueError, match="latitude"):
        map_for([(120, 0)], 100, 100)


def test_the_coast_is_not_drawn_along_the_maps_edge() -> None:
    view = map_for([SALTMERE], 180, 120)
    for line in view.coast:
        for (x0, y0), (x1, y1) in pairwise(line):
            assert not (x0 == x1 and x0 in (0, view.width)) and not (y0 == y1 and y0 in (0, view.height))
