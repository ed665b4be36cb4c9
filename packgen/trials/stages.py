"""The stages of designing and making a thing, by level, in our own words.

Each stage names the published performance expectations it is in the spirit of: the engineering design codes of the
Next Generation Science Standards (NGSS Lead States, 2013; K-2-ETS1, 3-5-ETS1 and MS-ETS1 with core ideas ETS1.A to
ETS1.C: define, develop, optimise). They are named in the record so that a parent can match them with a list of goals.
"""

from __future__ import annotations

from dataclasses import dataclass

FRAMEWORK = "Next Generation Science Standards, engineering design (ETS1)"


@dataclass(frozen=True, slots=True)
class Stage:
    """One stage at one level: a key for the sheet's part, what it is called, what the child does, and the codes."""

    key: str
    title: str
    does: str
    in_spirit_of: tuple[str, ...]


def _stages(band: str, *parts: tuple[str, str, str, tuple[int, ...]]) -> tuple[Stage, ...]:
    return tuple(
        Stage(key, title, does, tuple(f"{band}-ETS1-{number}" for number in codes)) for key, title, does, codes in parts
    )


_STAGES = {
    "first": _stages(
        "K-2",
        ("ask", "Look and ask", "Says what is wanted and what is in the way.", (1,)),
        ("draft", "Draw it", "Draws what it could look like; a grown-up writes the names of the parts.", (2,)),
        ("make", "Make it", "Builds it with a grown-up.", (2,)),
        ("try", "Try it", "Tries it and draws before and after.", (3,)),
        ("tell", "Tell about it", "Shows it and says what worked.", (3,)),
    ),
    "younger": _stages(
        "K-2",
        ("ask", "What is wanted?", "Puts the problem into own words after looking and asking.", (1,)),
        ("imagine", "Think of two ways", "Draws two different ideas quickly.", (2,)),
        ("draft", "Choose and draw", "Draws the chosen one and shows how its shape helps it work.", (2,)),
        ("make", "Make it", "Builds it from the drawing.", (2,)),
        ("try", "Try two", "Tries two builds the same way and counts or measures.", (3,)),
        ("tell", "Which was better?", "Says what each build was good at and what it was not.", (3,)),
    ),
    "older": _stages(
        "3-5",
        ("ask", "Set the task", "Writes what must be achieved and the limits on materials, time or cost.", (1,)),
        (
            "imagine",
            "Several ideas",
            "Sketches several solutions and compares them with the task and the limits.",
            (2,),
        ),
        ("draft", "Design draft", "Draws the chosen one with sizes and materials.", (2,)),
        ("predict", "Predict", "Says what will happen and why, before trying.", (3,)),
        ("make", "Make", "Builds it and notes what was changed on the way.", (2,)),
        (
            "try",
            "Fair test",
            "Changes one thing, measures one thing, keeps the rest the same; tries several times.",
            (3,),
        ),
        ("improve", "Look back", "Finds where it failed, and says what to better next.", (3,)),
    ),
    "upper": _stages(
        "MS",
        ("ask", "Define", "States criteria and limits exactly enough to judge by, with the science behind them.", (1,)),
        ("imagine", "Weigh the options", "Rates rival designs against the criteria in a table.", (2,)),
        ("draft", "Design draft", "Draws the chosen one to scale with sizes, materials and a parts list.", (2,)),
        ("predict", "Model", "Predicts numbers or a curve from a rule or an earlier trial.", (4,)),
        ("make", "Make", "Builds it and keeps a log of changes.", (4,)),
        ("try", "Measure", "Repeats trials, takes means and ranges, and plots them.", (4,)),
        ("compare", "Compare", "Finds the best parts of each design in the data, and joins them.", (3,)),
        ("improve", "Improve", "Changes the design, tests again, and says whether it now meets the criteria.", (3, 4)),
    ),
}


def stages(level: str) -> tuple[Stage, ...]:
    """The stages of a design challenge at a level: "first", "younger", "older" or "upper". Raises KeyError."""
    return _STAGES[level]
