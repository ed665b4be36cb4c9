"""Units: factors as published, and every unit there and back."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packgen.units import BASE, MM_PER_POINT, UNITS, quantity, unit

# NIST Special Publication 811 (2008), appendix B.8; all exact by definition.
NIST = [
    (1, "in", 25.4), (1, "ft", 304.8), (1, "yd", 914.4), (1, "mi", 1_609_344.0), (1, "lb", 453.592_37),
    (1, "oz", 453.592_37 / 16), (1, "lbf", 4.448_221_615_260_5), (1, "km/h", 1 / 3.6), (1, "mph", 0.447_04),
    (1, "ft/s", 0.304_8), (212, "°F", 100.0), (32, "°F", 0.0), (-40, "°F", -40.0), (1, "fl oz", 29.573_529_562_5),
    (1, "cup", 236.588_236_5), (1, "tbsp", 14.786_764_781_25), (1, "tsp", 4.928_921_593_75),
]  # fmt: skip


@pytest.mark.parametrize(("value", "name", "base"), NIST)
def test_factors_are_those_of_nist(value: float, name: str, base: float) -> None:
    assert quantity(value, name).value == pytest.approx(base, rel=1e-12, abs=1e-9)


def test_a_gallon_a_minute_is_231_cubic_inches_a_minute() -> None:
    assert quantity(1, "gal/min").value == pytest.approx(231 * 2.54**3 / 60, rel=1e-12)


def test_a_point_is_a_72nd_of_an_inch() -> None:
    """PostScript and PDF (ISO 32000-1, 8.3.2.3)."""
    assert pytest.approx(25.4) == MM_PER_POINT * 72


@given(st.sampled_from(sorted(UNITS)), st.floats(-1e6, 1e6))
def test_every_unit_comes_back(name: str, value: float) -> None:
    there = quantity(value, name)
    assert there.to(name) == pytest.approx(value, rel=1e-9, abs=1e-6)
    assert there.dimension in BASE


def test_a_quantity_is_written_in_the_unit_it_was_given_in() -> None:
    assert [str(quantity(v, u)) for v, u in ((3.25, "in"), (80, "mm"), (20, "deg"), (4, ""), (12345, "mm"))] == [
        "3.25 in", "80 mm", "20°", "4", "12345 mm",
    ]  # fmt: skip


def test_lengths_are_not_given_in_grams() -> None:
    with pytest.raises(ValueError, match="length cannot be given in g"):
        quantity(1, "mm").to("g")


def test_letters_case_counts_only_where_it_must() -> None:
    assert unit("MM") is unit("mm") and unit("L") is unit("l") and unit("N").dimension == "force"
    assert math.isclose(quantity(1, "Inches").value, 25.4)
