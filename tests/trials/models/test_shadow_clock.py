"""The shadow clock's expected angles and what cannot be."""

import pytest

from packgen.trials.frame import TrialError
from packgen.trials.plan import plan_trial
from packgen.units import quantity


def test_two_hours_from_noon_at_a_northern_latitude():
    # lorem-ipsum.co.uk/sundial.php, table for latitude 54.8: 2 h 25.26, 3 h 39.25 degrees.
    plan = plan_trial("shadow-clock", {}, ("hour", [quantity(14), quantity(9)]), latitude=54.8)
    assert [round(row.expected.value, 2) for row in plan.rows if row.expected] == [25.26, 39.25]


def test_the_family_latitude_is_needed():
    with pytest.raises(TrialError, match="latitude") as caught:
        plan_trial("shadow-clock", {})
    assert "lat" in caught.value.instead


def test_south_of_the_equator_the_angles_are_as_large():
    north = plan_trial("shadow-clock", {}, latitude=33.87)
    south = plan_trial("shadow-clock", {}, latitude=-33.87)
    assert [r.expected for r in north.rows] == [r.expected for r in south.rows]


def test_hours_may_be_written_as_on_a_clock():
    plan = plan_trial("shadow-clock", {}, ("hour", ["9:30", quantity(10, "h"), quantity(11, "min")]), latitude=50.0)
    assert [row.number for row in plan.rows] == ["9.5", "10", "11"]


def test_no_sun_at_midnight():
    plan = plan_trial("shadow-clock", {}, ("hour", [quantity(12), quantity(23)]), latitude=50.0)
    assert plan.rows[0].expected is not None
    assert plan.rows[1].expected is None
    assert "never up" in plan.rows[1].note


def test_the_equator_is_told():
    plan = plan_trial("shadow-clock", {}, latitude=1.0)
    assert all("equator" in row.note for row in plan.rows)


def test_the_style_stands_at_the_latitude():
    plan = plan_trial("shadow-clock", {}, latitude=-37.8)
    assert plan.figures[0].value.to("deg") == pytest.approx(37.8)
