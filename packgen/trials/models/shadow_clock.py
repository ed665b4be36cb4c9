"""A flat sun dial: where the shadow falls at each hour, for the family's own latitude."""

from __future__ import annotations

from packgen.trials.dial import hour_angle, longest_half_day
from packgen.trials.frame import BuildFault, ChallengeModel, Figure, Input, Result, Values, WillNotWork
from packgen.units import quantity


def _angle(values: Values) -> float:
    latitude, hour = values.number("latitude"), values.number("hour")
    offset = values.number("longitude offset")
    if abs(latitude) < 3:
        raise WillNotWork(
            "so near the equator the hour lines of a flat dial fall on one another",
            "stand the dial upright, facing the pole",
            "given",
        )
    if abs(hour - 12 + offset / 15) > longest_half_day(latitude):
        raise WillNotWork("the sun is never up at that hour here", "choose an hour nearer noon", "change")
    return abs(hour_angle(latitude, hour, offset))


def _figures(values: Values) -> tuple[Figure, ...]:
    latitude, offset = values.number("latitude"), values.number("longitude offset")
    late = Figure("the sun's noon comes later than the clock's by", quantity(-4 * offset, "min"))
    return (Figure("angle of the style above the plate", quantity(abs(latitude), "deg")), *((late,) if offset else ()))


MODEL = ChallengeModel(
    title="Shadow clock",
    about="The shadow of a slanted edge that points to the pole of the sky falls along one line for each hour, all "
    "year round. The lines depend on the latitude.",
    inputs=(
        Input(
            "hour",
            "count",
            "the hour by the sun, 0 to 24",
            0,
            24,
            15.0,
            also=("hours", "time", "time of day", "hour of the day"),
            tries=(9, 10, 11, 12, 13, 14, 15),
            phrase="the hour",
            ask="Where does the shadow point at each hour?",
            clock=True,
            ask_first="Where does the shadow fall?",
        ),
        Input(
            "latitude",
            "angle",
            "degrees north; south of the equator negative",
            -75,
            75,
            also=("lat",),
            tries=(30, 45, 60),
            phrase="the latitude",
        ),
        Input(
            "longitude offset",
            "angle",
            "longitude of the place less that of its time zone, east positive",
            -30,
            30,
            0.0,
            also=("longitude correction",),
            quiet=True,
        ),
    ),
    results=(
        Result(
            "angle from the noon line",
            "angle",
            "deg",
            _angle,
            "the angle between the shadow and the noon line",
            3.0,
            ("angle", "shadow angle", "hour angle", "direction of the shadow"),
        ),
    ),
    vary="hour",
    formula="tan X = sin(latitude) · tan(15° · hours from noon); the style stands at the angle of the latitude",
    source="North American Sundial Society, FAQ (sundials.org)",
    spread=0.06,
    keep_same=("the place of the dial", "the way it points", "a level plate"),
    cautions=(
        "Never look at the sun, not even for a moment or through a hole or glass. Watch the shadow only.",
        "Wear a hat and sun cream.",
    ),
    faults_of_build=(
        BuildFault(
            "All shadows are wrong by the same angle",
            "the dial does not point true north (south of the equator: true south)",
            "turn it until the shadow is right at the sun's noon",
        ),
        BuildFault(
            "Right at noon, wrong morning and evening",
            "the style has the wrong angle or leans to one side",
            "check it with a set square against the noon line",
        ),
        BuildFault("Wrong by an hour", "the clock is on summer time", "take one hour off the clock"),
    ),
    why_higher=(
        "The clock is not the sun: time zone, summer time and the season move it by minutes to an hour or more.",
        "A compass points to magnetic north, not to true north.",
    ),
    why_lower=("The plate is not level.", "The clock is not the sun: time zone, summer time and season move it."),
    extension="Mark the shadow at the same clock time once a week. Over a year it draws a loop: why?",
    figures=_figures,
    tips=(
        "Find true north from the shortest shadow of an upright stick.",
        "The sun and the clock differ by up to 16 minutes over the year, besides the time zone.",
    ),
    also=("sundial", "sun dial", "sun clock"),
    finds_out=True,
)
