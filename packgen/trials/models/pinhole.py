"""A pinhole viewer: how large the picture is, and which hole makes it sharpest."""

from __future__ import annotations

import math

from packgen.trials.constants import GREEN_LIGHT
from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, Result, Values
from packgen.units import quantity

RAYLEIGH = 1.9
"""The factor in d = k sqrt(f lambda). Rayleigh's rule has 1.9; the rule of the smallest disc has sqrt(2.44) = 1.562
(M. Young, Applied Optics 10 (1971) 2763). Published factors differ, so the one used is said."""


def best_hole(length: float, factor: float = RAYLEIGH) -> float:
    """The hole in mm that makes the sharpest picture of far things in a box `length` mm long, for green light."""
    return factor * math.sqrt(length * GREEN_LIGHT)


def image_height(height: float, distance: float, length: float) -> float:
    """The height of the picture: object height x box length / distance (similar triangles). Any one unit."""
    return height * length / distance


def _image(values: Values) -> float:
    return image_height(
        values.number("object height"), values.number("object distance"), values.number("screen distance")
    )


def _hole(values: Values) -> float:
    return best_hole(values.number("screen distance"), values.number("hole factor"))


def _figures(values: Values) -> tuple[Figure, ...]:
    # Rules differ by a fifth (see RAYLEIGH) and nobody can measure such a hole closer: one place is enough.
    return (Figure("hole for the sharpest picture (the tip of a pin)",
                   quantity(round(_hole(values), 1), "mm")),)  # fmt: skip


MODEL = ChallengeModel(
    title="Pinhole viewer",
    about="Light through a small hole draws an upside-down picture on a screen of thin paper. A longer box draws a "
    "larger, fainter one.",
    inputs=(
        Input(
            "screen distance",
            "length",
            "from the hole to the screen",
            20,
            2000,
            150.0,
            also=("box length", "length", "box depth"),
            tries=(100, 150, 200),
            phrase="the distance from the hole to the screen",
            ask="How far from the hole is the picture biggest?",
        ),
        Input(
            "object height",
            "length",
            "of what is looked at (a window, a lamp)",
            10,
            20000,
            1000.0,
            also=("window height", "lamp height", "height"),
            tries=(500, 1000, 1500),
            phrase="the height of what you look at",
        ),
        Input(
            "object distance",
            "length",
            "from the hole to what is looked at",
            200,
            100000,
            3000.0,
            unit="m",
            also=("distance",),
            tries=(2000, 3000, 4000),
            phrase="the distance of what you look at",
            ask="From where is the picture biggest?",
        ),
        Input(
            "hole factor",
            "count",
            "1.9 by Rayleigh's rule, 1.56 by the rule of the smallest disc",
            1,
            2.5,
            RAYLEIGH,
            quiet=True,
        ),
    ),
    results=(
        Result(
            "picture height",
            "length",
            "mm",
            _image,
            "the height of the picture",
            2.0,
            ("image height", "height of the picture", "image size", "picture size"),
            without=("hole factor",),
        ),
        Result(
            "sharpest hole",
            "length",
            "mm",
            _hole,
            "the hole that makes the sharpest picture",
            0.1,
            ("best hole", "hole", "hole diameter", "hole size"),
            without=("object height", "object distance"),
            spread=0.3,
            shape="power",
        ),
    ),
    vary="screen distance",
    formula="picture height = object height · screen distance / object distance; "
    "sharpest hole = 1.9 √(screen distance · 0.00055 mm)",
    source="Lord Rayleigh's rule d = 1.9 √(f λ); M. Young, Applied Optics 10 (1971) 2763",
    spread=0.15,
    keep_same=("what you look at", "the distance of what you look at", "the hole"),
    cautions=(
        "Never look at the sun, nor through the hole towards the sun. It can blind you. "
        "Look at a window, a lamp or a tree.",
        "Only a grown-up uses the pin and the craft knife.",
    ),
    faults_of_build=(
        BuildFault(
            "No picture", "light leaks in, or the room is too bright", "tape every edge; put a coat over head and box"
        ),
        BuildFault(
            "The picture is blurred",
            "the hole is large or ragged",
            "make it in foil with the point of a pin, flat on card",
        ),
        # Eyes see sharp from about 250 mm on, a child's from nearer (common practice, no source).
        BuildFault(
            "The paper itself looks blurred",
            "the eye is too near the screen",
            "keep 150 to 250 mm between the eye hole and the screen, or use a longer box",
        ),
        BuildFault("The picture is dim", "the hole is very small or the box long", "look at something brighter"),
    ),
    why_higher=("The box or the distance was measured from the front of the box, not from the hole.",),
    why_lower=("The edges of the picture are faint and were not counted in.", "The distance was more than measured."),
    extension="Make three holes in foil, small, middle, large. What do you gain and lose with each?",
    figures=_figures,
    tips=("Draw a scale in mm on the screen before it goes in. Read the picture off it through the eye hole.",),
    also=("pinhole viewer", "pinhole camera", "camera obscura"),
)
