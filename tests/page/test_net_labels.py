"""Letters on nets: places that keep apart, inside their outline."""

from __future__ import annotations

import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.page.net_labels import Spot

spots = st.builds(
    Spot,
    st.tuples(st.floats(-8, 8), st.floats(-8, 8)),
    st.floats(0.5, 6),
    st.floats(0.5, 3),
    st.floats(-180, 180),
)


def area(spot: Spot) -> shapely.Polygon:
    return shapely.Polygon(spot.rim)


@given(spots, spots)
@settings(max_examples=200, deadline=None)
def test_places_are_apart_if_they_share_nothing(one: Spot, two: Spot) -> None:
    shared = area(one).intersection(area(two)).area
    if shared > 1e-6:
        assert not one.apart(two)
    elif area(one).distance(area(two)) > 1e-6:
        assert one.apart(two)


@given(spots)
@settings(max_examples=100, deadline=None)
def test_a_place_within_an_outline_keeps_its_distance(spot: Spot) -> None:
    outline = ((-9.0, -7.0), (9.0, -7.0), (9.0, 7.0), (0.0, 3.0), (-9.0, 7.0))
    if spot.within(outline, 0.5):
        whole = shapely.Polygon(outline)
        assert whole.contains(area(spot)) and whole.exterior.distance(area(spot)) > 0.45


@given(spots, st.tuples(st.floats(-8, 8), st.floats(-8, 8)), st.floats(0.1, 4))
@settings(max_examples=100, deadline=None)
def test_a_place_off_a_circle_keeps_clear_of_it(spot: Spot, centre: tuple[float, float], radius: float) -> None:
    gap = area(spot).distance(shapely.Point(centre))
    if abs(gap - radius) > 1e-6:
        assert spot.off(centre, radius) == (gap > radius)
