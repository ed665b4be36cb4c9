"""Blades of a set are of one size, and fit round the hub."""

import pytest

from packgen.nets import build
from packgen.trials.blades import blade_width
from packgen.trials.plan import plan_trial
from packgen.units import quantity


@pytest.mark.parametrize("model", ["wheel", "bladed-rotor"])
@pytest.mark.parametrize("counts", [(3, 6, 12), (4, 8, 16), (3, 4, 5)])
def test_all_wheels_of_a_set_differ_in_the_number_of_blades_only(model, counts):
    given = {"wheel radius": quantity(60, "mm")} if model == "wheel" else {"rotor diameter": quantity(150, "mm")}
    given |= {} if model == "wheel" else {"wind speed": quantity(4, "m/s")}
    plan = plan_trial(model, given, ("number of blades", [quantity(n) for n in counts]))
    sizes = [{name: value for name, value in net.given if name != "blades"} for net in plan.nets]
    assert sizes[0] == sizes[1] == sizes[2]
    for net, count in zip(plan.nets, counts, strict=True):
        solid = build(net.solid, dict(net.given))
        assert sum(face.name.startswith("blade") for face in solid.faces) == count


@pytest.mark.parametrize("blades", range(3, 17))
def test_a_blade_takes_no_more_than_its_sector_of_the_hub(blades):
    width = blade_width(30, 60, blades)
    assert 0 < width <= 30 and blades * width < 2 * 3.15 * 30
