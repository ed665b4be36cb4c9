"""Values in the family's system of units."""

import pytest

from packgen.trials.frame import Input
from packgen.trials.given import CUSTOMARY, in_system, planned_values, range_text, unit_for
from packgen.units import quantity, unit

SIDE = Input("side", "length", "a side", 40, 2000, tries=(120, 180, 240))


def test_a_metric_family_keeps_metric_units():
    assert unit_for("mm", "metric") == "mm"
    assert in_system(120, "length", "mm", "metric") == quantity(120, "mm")


def test_a_customary_family_reads_round_inches_ounces_and_feet():
    assert str(in_system(120, "length", "mm", "customary")) == "4.5 in"
    assert str(in_system(2000, "length", "m", "customary")) == "6.5 ft"
    assert str(in_system(20, "mass", "g", "customary")) == "0.71 oz"
    assert str(in_system(60, "temperature", "°C", "customary")) == "140°F"


def test_what_no_ruler_shows_stays_metric():
    assert str(in_system(0.5, "length", "mm", "customary")) == "0.5 mm"
    assert str(in_system(1, "mass", "g", "customary")) == "1 g"


def test_every_customary_unit_has_the_dimension_of_its_metric_one():
    assert all(unit(a).dimension == unit(b).dimension for a, b in CUSTOMARY.items())


def test_values_to_try_lie_around_the_given_one_and_in_range():
    assert [str(v) for v in planned_values(SIDE, quantity(30, "cm"), "metric")] == ["20 cm", "30 cm", "40 cm"]
    assert [str(v) for v in planned_values(SIDE, quantity(8, "in"), "customary")] == ["5.25 in", "8 in", "10.75 in"]
    assert [str(v) for v in planned_values(SIDE, quantity(2, "m"), "metric")] == ["1.35 m", "2 m"]
    assert [str(v) for v in planned_values(SIDE, None, "metric")] == ["120 mm", "180 mm", "240 mm"]


def test_small_counts_stay_apart():
    cups = Input("cups", "count", "cups", 1, 12, 4.0, whole=True)
    assert [v.value for v in planned_values(cups, quantity(1), "metric")] == [1, 2, 3]
    assert [v.value for v in planned_values(cups, quantity(3), "metric")] == [2, 3, 4]


@pytest.mark.parametrize(("units", "text"), [("metric", "40 mm to 2000 mm"), ("customary", "1.575 in to 78.74 in")])
def test_a_range_is_told_in_the_familys_units(units, text):
    assert range_text(SIDE, units) == text
