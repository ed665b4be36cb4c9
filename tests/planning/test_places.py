import doctest
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packgen.faults import Said
from packgen.planning import places
from packgen.planning.places import distance_km, rough_distance
from packgen.reading.models import Spot


def spot(lat: float | None, lon: float | None) -> Spot:
    return Spot(Said("somewhere"), lat, lon)


SPOTS = st.builds(spot, st.floats(-90, 90), st.floats(-180, 180))


def test_its_examples_hold() -> None:
    assert doctest.testmod(places).failed == 0


def test_los_angeles_to_new_york_is_as_published() -> None:
    # E. Williams, Aviation Formulary: LAX (33°57' N, 118°24' W) to JFK (40°38' N, 73°47' W) is 0.623585 radians.
    found = distance_km(spot(33 + 57 / 60, -(118 + 24 / 60)), spot(40 + 38 / 60, -(73 + 47 / 60)))
    assert found is not None and found / places.EARTH_RADIUS_KM == pytest.approx(0.623585, abs=2e-6)


def test_from_the_equator_to_a_pole_is_a_quarter_of_the_way_round() -> None:
    found = distance_km(spot(0, 10), spot(90, 77))
    assert found == pytest.approx(math.pi * places.EARTH_RADIUS_KM / 2)


@given(SPOTS, SPOTS)
def test_there_and_back_are_alike_and_at_most_half_the_way_round(one: Spot, other: Spot) -> None:
    there, back = distance_km(one, other), distance_km(other, one)
    assert there == pytest.approx(back) and there is not None
    assert 0 <= there <= math.pi * places.EARTH_RADIUS_KM + 1e-6


def test_a_place_known_by_name_only_has_no_distance() -> None:
    assert distance_km(spot(None, None), spot(1, 2)) is None
    assert distance_km(None, spot(1, 2)) is None


@pytest.mark.parametrize(("km", "units", "said"), [
    (0.4, "metric", "less than 1 km"), (1.0, "customary", "less than 1 mile"), (7.3, "metric", "about 7 km"),
    (99.7, "metric", "about 100 km"), (1234, "metric", "about 1200 km"), (1234, "customary", "about 770 miles"),
])  # fmt: skip
def test_distances_are_told_no_more_exactly_than_needed(km: float, units: str, said: str) -> None:
    assert rough_distance(km, units) == said
