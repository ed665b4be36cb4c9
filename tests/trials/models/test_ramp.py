"""The ramp against a printed table."""

import math

import pytest

from packgen.trials.models.ramp import pull_needed
from packgen.trials.plan import plan_trial
from packgen.units import quantity


@pytest.mark.parametrize(("height", "effort"), [(45, 30), (30, 20), (22.5, 15), (18, 12)])
def test_a_load_of_sixty_on_a_ramp_of_ninety(height, effort):
    # interactagram.com, ramp page: load 60 and length 90 give efforts 30, 20, 15, 12 (advantage 2, 3, 4, 5).
    assert pull_needed(60, 90, height) == pytest.approx(effort)


@pytest.mark.parametrize(("degrees", "advantage"), [(5, 11.4737), (10, 5.7588), (15, 3.8637), (20, 2.9238), (30, 2.0)])
def test_the_ideal_advantage_is_one_over_the_sine(degrees, advantage):
    assert 1 / pull_needed(1, 1, math.sin(math.radians(degrees))) == pytest.approx(advantage, abs=5e-5)


def test_a_level_ramp_needs_only_what_rubbing_takes():
    assert pull_needed(10, 1, 0) == 0
    assert pull_needed(10, 1, 0, 0.3) == pytest.approx(3)


def test_it_slides_at_the_slope_whose_tangent_is_the_friction():
    # tan a = mu: 0.1763 at 10 degrees, 0.3640 at 20.
    plan = plan_trial(
        "ramp",
        {"ramp length": quantity(1, "m")},
        ("friction", [quantity(0.1763), quantity(0.3640)]),
        ("height where it slides", "mm"),
    )
    found = [row.expected.value for row in plan.rows if row.expected]
    assert found == pytest.approx([1000 * math.sin(math.radians(a)) for a in (10, 20)], rel=1e-3)


def test_a_ramp_higher_than_long_is_told_not_counted():
    plan = plan_trial("ramp", {"ramp length": quantity(20, "cm")}, ("ramp height", [quantity(30, "cm")]))
    assert plan.rows[0].expected is None
    assert "higher than it is long" in plan.rows[0].note
