"""The keys of a challenge and of the materials, steps and cautions of anything made, each described once."""

from __future__ import annotations

from typing import Any

from packgen.reading.fields import Key, Many, Notes, Record, making
from packgen.reading.models import JOBS, Challenge, Material, Measure
from packgen.reading.study_shapes import Change, GivenValues, amount
from packgen.reading.values import any_quantity, choice, identifier, name, prose, whole, yes_no

MAX_MATERIALS = 200


MEASURE: Record[Measure] = Record(
    "a measurement",
    "What is measured in each trial.",
    (
        Key("what", name(), "What is measured.", "time to lift", required=True),
        Key("unit", name(40), "In which unit it is written down.", "s"),
    ),
    making(Measure),
    alone="what",
)


def _material(values: dict[str, Any], notes: Notes) -> Material:
    amount, unit = values.pop("amount", (None, None))
    values.setdefault("unit", unit)
    return Material(amount=amount, **values)


MATERIAL: Record[Material] = Record(
    "a material",
    "Something to have ready.",
    (
        Key("item", name(), "What it is.", "card", required=True),
        Key("amount", amount(), "How much, for each child; for all together if it is shared.", 2),
        Key("unit", name(40), "What the amount counts.", "sheet"),
        Key("shared", yes_no(), "Yes if one amount serves all children.", True),
        Key("instead", name(), "A household thing that does as well.", "an old postcard"),
    ),
    _material,
    alone="item",
)

STEPS = Many(prose(1000), 60)
CAUTION = Many(name(), 20)
MATERIALS = Many(MATERIAL, MAX_MATERIALS)
_JOB = choice(JOBS, {"find-out": "find out", "investigate": "find out", "investigation": "find out"})
CHALLENGE: Record[Challenge] = Record(
    "a challenge",
    "A thing to design, build and try out.",
    (
        Key("title", name(), "The challenge's title.", "A wheel the stream can turn", required=True),
        Key(
            "brief", prose(2000), "What is to be built, and what it must do.", "Build a wheel that lifts a clip.", True
        ),
        Key("model", identifier(), "A challenge model of the catalogue, which gives expected results.", "wheel"),
        Key("given", GivenValues(), "Quantities that stay as they are.", {"wheel radius": "60 mm"}),
        Key("change", Change(), "The one thing to change, alone or with its planned values.", "number of blades"),
        Key("measure", MEASURE, "What is measured, and in which unit.", {"what": "time to lift", "unit": "s"}),
        Key("keep_same", Many(name(), 30), "What must stay the same in every trial.", ["the tap", "the thread"]),
        Key("trials", whole(1, 20), "How many trials of each value; the pack decides if left out.", 4),
        Key("materials", MATERIALS, "What is needed.", [{"item": "card", "amount": 2, "unit": "sheet"}]),
        Key("caution", CAUTION, "What to be careful of.", ["water"], aliases=("cautions",)),
        Key("steps", STEPS, "How to begin, if the children need to know.", ["Cut the disc."]),
        Key("extension", prose(1000), "What to try next.", "Make it lift two clips."),
        Key("job", _JOB, "design, or find out; the model decides if left out.", "find out"),
        Key("goal", any_quantity(), "The result that is asked for; the guide says what gives it.", "15 s"),
        Key("brief_first", prose(200), "The brief in a few words, for the youngest.", "Make a wheel. Water turns it."),
    ),
    making(Challenge),
)
