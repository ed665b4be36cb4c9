"""Who is asked what: a study's questions shared out over the ages, the easiest to the youngest.

In a talk of several ages the youngest answers first, so that nobody has taken the answer away (common practice).
"""

from __future__ import annotations

import math
from collections.abc import Sequence

EASY_AT_MOST = 3
WRITTEN = {"first": 0, "younger": 1, "older": 2, "upper": 3}
"""How many of a work's questions a level answers on the paper of a picture study; the others are for talking."""


def ease(question: str) -> int:
    """How many letters a question has: of two questions on one picture, the shorter is the easier to hold in mind.

    A rough measure, but the same in every language.
    """
    return sum(1 for letter in question if letter.isalnum())


def on_paper(look: Sequence[str], look_first: Sequence[str], level: str) -> tuple[str, ...]:
    """The questions that a picture study has on its page at a level: to write on, or to be asked aloud.

    >>> on_paper(["What is nearest?", "Where is the sun?"], [], "younger")
    ('What is nearest?',)
    """
    if level == "first":
        return tuple(look_first) or tuple(sorted(look, key=len)[:2])
    return tuple(look[: WRITTEN.get(level, 0)])


def shared_out(questions: Sequence[str], young: bool, old: bool) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The questions for the young and for the older ones; with one group only, it gets all.

    The easier half, three at most, goes to the young. Each group keeps the order of the study; none is lost.

    >>> shared_out(["Which boat is nearest, and how do you know?", "What is red?"], True, True)
    (('What is red?',), ('Which boat is nearest, and how do you know?',))
    """
    asked = tuple(dict.fromkeys(questions))
    if not (young and old):
        return (asked, ()) if young else ((), asked)
    count = min(EASY_AT_MOST, math.ceil(len(asked) / 2))
    easy = set(sorted(asked, key=ease)[:count])
    return tuple(q for q in asked if q in easy), tuple(q for q in asked if q not in easy)
