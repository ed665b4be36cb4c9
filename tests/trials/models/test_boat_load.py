"""The boat against a school sheet and Archimedes."""

import pytest

from packgen.trials.models.boat_load import depth_in_water, greatest_cargo
from packgen.trials.plan import plan_trial
from packgen.units import quantity


def test_a_hull_of_ten_by_five_by_two_centimetres_carries_a_hundred_grams():
    # Relation from a school sheet on aluminium boats (studylib): load = water pushed aside less the hull;
    # 100 ml is 100 g, 40 US cents of 2.500 g (US Mint).
    assert greatest_cargo(100, 50, 20, 0) == pytest.approx(100)
    assert greatest_cargo(100, 50, 20, 0) / 2.5 == pytest.approx(40)


def test_a_small_tray():
    # 100 x 60 x 20 mm, 6 g, fresh water: sinks above 114 g; 60 g in all lies 10.0 mm deep.
    assert greatest_cargo(100, 60, 20, 6) == pytest.approx(114)
    assert depth_in_water(60, 100, 60) == pytest.approx(10.0)


def test_an_empty_weightless_boat_floats_on_the_surface():
    assert depth_in_water(0, 100, 60) == 0


def test_salt_water_carries_more():
    plan = plan_trial("boat-load", {}, ("water", ["fresh", "salt"]))
    fresh, salt = (row.expected for row in plan.rows)
    assert fresh is not None
    assert salt is not None
    assert (salt.value + 5) / (fresh.value + 5) == pytest.approx(1.025)


def test_freeboard_is_gone_when_the_load_is_the_greatest():
    loads = ("load mass", [quantity(114, "g"), quantity(116, "g")])
    plan = plan_trial("boat-load", {"hull mass": quantity(5, "g")}, loads, ("freeboard", "mm"))
    assert plan.rows[0].expected is not None
    assert plan.rows[0].expected.value == pytest.approx(20 - 119 / 6)
    assert plan.rows[1].expected is None
    assert "sinks" in plan.rows[1].note


def test_a_folded_sheet_carries_most_with_sides_a_sixth_as_high():
    # The open box of greatest volume from a square sheet: h = side / 6 (any calculus text).
    def carried(height: float) -> float:
        expected = plan_trial("boat-load", {"sheet side": quantity(180, "mm"), "hull height": quantity(height, "mm")},
                              ("one weight", [quantity(2.5, "g")]), ("load carried", "g")).rows[0].expected  # fmt: skip
        assert expected is not None
        return expected.value

    assert carried(30) > carried(28)
    assert carried(30) > carried(32)
