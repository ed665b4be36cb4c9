"""A wheel on its stick: upright, with the stick through its hole; what has no hole for an axle has no stick."""

import pytest

from packgen.nets import build
from packgen.page.on_axle import on_its_stick
from packgen.units import quantity


def test_the_wheel_stands_and_its_stick_runs_through_its_middle() -> None:
    solid = build("bladed-wheel", {"radius": quantity(60, "mm"), "blades": quantity(6), "axle": quantity(8, "mm")})
    shown = on_its_stick(solid)
    assert shown is not None
    wheel = [shown.vertices[v] for v in shown.faces[0].loop]
    assert max(abs(x) for x, _, _ in wheel) < 1e-9
    assert max(z for _, _, z in wheel) - min(z for _, _, z in wheel) == pytest.approx(120, abs=1)
    stick = [p for k, face in enumerate(shown.faces) if face.name == "stick" for p in shown.corners(k)]
    assert min(x for x, _, _ in stick) < -20 and max(x for x, _, _ in stick) > 20
    assert max((y * y + z * z) ** 0.5 for _, y, z in stick) == pytest.approx(4)


def test_a_box_has_no_stick() -> None:
    assert on_its_stick(build("cube", {"edge": quantity(40, "mm")})) is None
