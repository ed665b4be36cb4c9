"""How far two places are from each other."""

from __future__ import annotations

import math

from packgen.reading.models import Spot

EARTH_RADIUS_KM = 6371.0088  # mean radius R1 of the GRS 80 ellipsoid (H. Moritz, Geodetic Reference System 1980)
MILE_KM = 1.609344


def distance_km(one: Spot | None, other: Spot | None) -> float | None:
    """The distance over the ground in km, by the haversine formula; None if a place has no latitude and longitude.

    R. W. Sinnott, Virtues of the Haversine, Sky and Telescope 68 (1984), p. 159. On a sphere, so true to 0.6 %.
    """
    if one is None or other is None or None in (one.lat, one.lon, other.lat, other.lon):
        return None
    assert one.lat is not None and one.lon is not None and other.lat is not None and other.lon is not None
    low, high = math.radians(one.lat), math.radians(other.lat)
    half = math.sin((high - low) / 2) ** 2
    half += math.cos(low) * math.cos(high) * math.sin(math.radians(other.lon - one.lon) / 2) ** 2
    return 2 * EARTH_RADIUS_KM * math.asin(math.sqrt(min(1.0, half)))


def rough_distance(km: float, units: str) -> str:
    """A distance in words, no more exact than anybody needs: `about 320 km`, `about 200 miles`, `less than 1 km`.

    >>> rough_distance(318.4, "metric"), rough_distance(318.4, "customary")
    ('about 320 km', 'about 200 miles')
    """
    value, unit = (km / MILE_KM, "miles") if units == "customary" else (km, "km")
    if value < 1:
        return f"less than 1 {'mile' if unit == 'miles' else 'km'}"
    step = 10.0 ** max(0, math.floor(math.log10(value)) - 1)
    return f"about {round(value / step) * step:.0f} {unit}"
