"""The stages of a challenge, by its job and by level, in our own words.

A thing to design follows the engineering design codes of the Next Generation Science Standards (NGSS Lead States, 2013;
K-2-ETS1, 3-5-ETS1 and MS-ETS1 with core ideas ETS1.A to ETS1.C: define, develop, optimise). A thing to find out follows
their practices of science (NGSS, appendix F: 1 asking questions, 2 models, 3 planning and carrying out investigations,
4 analysing data, 5 mathematics, 6 explanations). Each stage names what it is in the spirit of; the record shows it, so
that a parent can match it with a list of goals.
"""

from __future__ import annotations

from dataclasses import dataclass

FRAMEWORK = "Next Generation Science Standards, engineering design (ETS1)"
PRACTICES = "Next Generation Science Standards, practices of science (SEP, appendix F)"


@dataclass(frozen=True, slots=True)
class Stage:
    """One stage at one level: a key for the sheet's part, what it is called, what the child does, and the codes."""

    key: str
    title: str
    does: str
    in_spirit_of: tuple[str, ...]


def _stages(prefix: str, *parts: tuple[str, str, str, tuple[int, ...]]) -> tuple[Stage, ...]:
    return tuple(
        Stage(key, title, does, tuple(f"{prefix}{number}" for number in codes)) for key, title, does, codes in parts
    )


_DESIGN = {
    "first": _stages(
        "K-2-ETS1-",
        ("ask", "Look and draw", "Says what is wanted; draws what may happen; a grown-up writes.", (1, 2)),
        ("make", "Make it", "Gets the things ready and builds with a grown-up.", (2,)),
        ("try", "Try it", "Tries it, draws what happened and says what worked.", (3,)),
    ),
    "younger": _stages(
        "K-2-ETS1-",
        ("ask", "What is wanted?", "Puts the problem into own words after looking and asking.", (1,)),
        ("imagine", "Think of two ways", "Draws two different ideas quickly.", (2,)),
        ("draft", "Choose and draw", "Draws the chosen one and shows how its shape helps it work.", (2,)),
        ("make", "Make it", "Builds it from the drawing.", (2,)),
        ("try", "Try it out", "Tries two or more builds the same way and counts or measures.", (3,)),
        ("tell", "Look back", "Says what each build was good at and what it was not.", (3,)),
    ),
    "older": _stages(
        "3-5-ETS1-",
        ("ask", "Set the task", "Writes what must be achieved and the limits on materials, time or cost.", (1,)),
        (
            "imagine",
            "Several ideas",
            "Sketches several solutions and compares them with the task and the limits.",
            (2,),
        ),
        ("draft", "Design draft", "Draws the chosen one with sizes and materials.", (2,)),
        ("predict", "Predict", "Says what will happen and why, before trying.", (3,)),
        ("make", "Make it", "Builds it and notes what was changed on the way.", (2,)),
        (
            "try",
            "Fair test",
            "Changes one thing, measures one thing, keeps the rest the same; tries several times.",
            (3,),
        ),
        ("improve", "Look back", "Finds where it failed, and says what to improve next.", (3,)),
    ),
    "upper": _stages(
        "MS-ETS1-",
        ("ask", "Define", "States criteria and limits exactly enough to judge by, with the science behind them.", (1,)),
        ("imagine", "Weigh the options", "Rates rival designs against the criteria in a table.", (2,)),
        ("draft", "Design draft", "Draws the chosen one to scale with sizes, materials and a parts list.", (2,)),
        ("predict", "Model", "Predicts numbers or a curve from a rule or an earlier trial.", (4,)),
        ("make", "Make", "Builds it and keeps a log of changes.", (4,)),
        ("try", "Measure", "Repeats trials, takes means and ranges, and plots them.", (4,)),
        (
            "improve",
            "Compare and improve",
            "Finds the best parts of each design in the data, joins them, tests again, and "
            "says whether it now meets the criteria.",
            (3, 4),
        ),
    ),
}

_FIND_OUT = {
    "first": _stages(
        "SEP ",
        ("ask", "Look and guess", "Looks, wonders, and says what may happen; a grown-up writes.", (1, 3)),
        ("make", "Get it ready", "Gets the things ready with a grown-up.", (3,)),
        ("try", "Try it", "Tries it, draws what happened and compares it with the guess.", (3, 4)),
    ),
    "younger": _stages(
        "SEP ",
        ("ask", "Ask and guess", "Asks a question that a trial can answer, and guesses the answer.", (1, 3)),
        ("make", "Get it ready", "Sets up the trial by its steps.", (3,)),
        (
            "try",
            "Try it out",
            "Tries each one the same way, measures or counts, and shows the numbers as bars.",
            (3, 4),
        ),
        ("tell", "Look back", "Compares the numbers with the guess and says why they may be so.", (4, 6)),
    ),
    "older": _stages(
        "SEP ",
        (
            "ask",
            "Ask and predict",
            "Names what is changed, measured and kept the same, and predicts with a reason.",
            (1, 3),
        ),
        ("make", "Set it up", "Sets up the trial and draws it with its lengths.", (3,)),
        (
            "try",
            "Fair test",
            "Changes one thing, measures one thing, keeps the rest the same; tries several times.",
            (3,),
        ),
        ("tell", "Explain", "Reads the pattern off the chart, answers the question from it, and says why.", (4, 6)),
    ),
    "upper": _stages(
        "SEP ",
        ("ask", "Ask and model", "States the question and predicts a number or a curve from a rule.", (1, 2)),
        ("make", "Plan", "Plans the trial: what is measured how, and which errors it will have.", (3,)),
        ("try", "Measure", "Repeats trials, takes means and ranges, and plots them.", (3, 5)),
        (
            "tell",
            "Conclude",
            "Finds a rule in the data, tests it against the prediction, and says where it ends.",
            (4, 6),
        ),
    ),
}


def stages(level: str, job: str = "design") -> tuple[Stage, ...]:
    """The stages of a challenge at a level: "first", "younger", "older" or "upper". Raises KeyError.

    `job` is "design", or "find out".
    """
    return {"design": _DESIGN, "find out": _FIND_OUT}[job][level]
