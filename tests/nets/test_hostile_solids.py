"""Solids and mesh files that broke the net engine when the fuzz targets fed it with them: each is told in words."""

from __future__ import annotations

from typing import Any

import pytest

from packgen.nets import NetError, build, lay_out

SLIVER = """\
v 12 0 0
v 0 18 0
v 0 0 0
v 0.75 0 1
v 0 1.125 1
v 0 0 1
f 3 2 1
f 4 5 6
f 1 2 5 4
f 2 3 6 5
f 3 1 4 6
"""
POINTED = SLIVER.replace("v 12 0 0", "v 0 4 0").replace("v 0 18 0", "v 0 3 0").replace("v 0 0 0\n", "v 1 0 0\n", 1)
POINTED = (
    POINTED.replace("v 0.75 0 1", "v 0 1 1").replace("v 0 1.125 1", "v 0 0.75 1").replace("v 0 0 1\n", "v 0.25 0 1\n")
)
DOUBLED = """\
v 0 0 0
v 30 0 0
v 30 20 0
v 0 20 0
v 0 0 25
v 0 0 25
v 30 0 25
v 30 20 25
v 0 20 25
f 1 4 3 2
f 5 6 7 8
f 1 2 6 5
f 2 3 7 6
f 3 4 8 7
f 4 1 5 8
"""


@pytest.mark.parametrize(("name", "given", "area", "scale", "youngest", "card"), [
    ("icosahedron", {"edge": 75.0}, (95.0, 171.0), "2:1", True, 0.05),
    ("mesh", {"text": SLIVER}, (60.0, 84.0), "auto", False, 0.25),
    ("mesh", {"text": DOUBLED}, (60.0, 84.0), "auto", False, 0.25),
    ("cube", {"edge": 3.5e-246}, (60.0, 60.0), "auto", False, 0.05),
    ("cube", {"edge": 1e300}, (60.0, 60.0), "auto", False, 0.05),
])  # fmt: skip
def test_what_cannot_be_made_of_paper_is_told(
    name: str, given: dict[str, Any], area: tuple[float, float], scale: str, youngest: bool, card: float
) -> None:
    with pytest.raises(NetError) as told:
        lay_out(build(name, given), *area, scale, youngest=youngest, card=card)
    assert told.value.message and told.value.instead


def test_a_net_of_thin_faces_is_laid_out() -> None:
    made = lay_out(build("mesh", {"text": POINTED}), 60.0, 84.0)
    assert made.sheets and all(0 <= x <= 60 and 0 <= y <= 84 for s in made.sheets for f in s.faces for x, y in f.points)
