"""Two slanted mirrors in a box: seeing over a wall, and how much of it."""

from __future__ import annotations

import math

from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, Result, Values
from packgen.units import quantity


def mirror_length(width: float) -> float:
    """The length of a mirror that crosses a tube at 45 degrees: width x sqrt(2)."""
    return width * math.sqrt(2)


def view_height(opening: float, path: float, distance: float) -> float:
    """The height seen through an opening from an eye `path` behind it of something `distance` before it.

    Similar triangles: opening x (path + distance) / path. Any one unit.
    """
    return opening * (path + distance) / path


def _view(values: Values) -> float:
    return view_height(values.number("tube width"), values.number("tube length"), values.number("wall distance"))


def _figures(values: Values) -> tuple[Figure, ...]:
    width = values.number("tube width")
    over = Figure("how much higher you see than you stand", quantity(values.number("tube length") - width, "mm"))
    return (Figure("length of each mirror", quantity(round(mirror_length(width), 1), "mm")), over)


MODEL = ChallengeModel(
    title="Periscope",
    about="Two mirrors at half a right angle, facing each other, let you look over a wall. The longer the tube, the "
    "smaller the view.",
    inputs=(
        Input(
            "tube length",
            "length",
            "of the whole box, top to bottom",
            100,
            4000,
            400.0,
            also=("length", "height", "box height", "box length"),
            tries=(300, 400, 600),
            phrase="the length of the tube",
            ask="Which periscope shows most?",
        ),
        Input(
            "tube width",
            "length",
            "across the box, as wide as its windows",
            15,
            400,
            60.0,
            also=("width", "box width", "window height"),
            tries=(40, 60, 80),
            phrase="the width of the tube",
            ask="Which periscope shows most?",
        ),
        Input(
            "wall distance",
            "length",
            "from the upper window to a wall with a scale on it",
            200,
            50000,
            2000.0,
            unit="m",
            also=("distance",),
            tries=(1000, 2000, 3000),
            phrase="the distance of the wall",
            ask="From where do you see most of the wall?",
        ),
    ),
    results=(
        Result(
            "height of wall seen",
            "length",
            "mm",
            _view,
            "the height of wall you see",
            20.0,
            ("view", "view height", "height seen", "field of view", "how much is seen"),
        ),
    ),
    vary="tube length",
    formula="mirror length = width · √2; height seen = width · (tube length + distance) / tube length",
    source="law of reflection and similar triangles (OpenStax College Physics, section 25.2); geometry worked out here",
    spread=0.20,
    keep_same=(
        "the width of the tube",
        "the distance of the wall",
        "the length of the tube",
        "where you hold your eye",
    ),
    cautions=(
        "Mirror edges are sharp. Tape them all round, or use mirror card.",
        "Never point it at the sun.",
        "Do not walk while looking through it.",
    ),
    faults_of_build=(
        BuildFault(
            "You see the inside of the box",
            "a mirror is not at half a right angle",
            "fold a square corner in half as a gauge",
        ),
        BuildFault("The picture is tilted", "one mirror leans sideways", "turn it until an upright edge looks upright"),
        BuildFault(
            "The picture is cut off", "the mirror is short", "make it as long as 1.41 times the width of the tube"
        ),
    ),
    why_higher=("The eye was moved up and down while looking.",),
    why_lower=(
        "The mirror does not fill the window.",
        "The eye was held away from the lower window, which makes the way longer.",
    ),
    extension="Turn the upper mirror to face backwards. What happens to up and down?",
    figures=_figures,
    tips=("Tape a paper scale to the wall and read the highest and the lowest mark you can see.",),
    also=("mirror box", "looking over walls"),
)
