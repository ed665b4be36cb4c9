"""Chooses the questions for looking and talking: the study's own first, then packgen's in turn.

The wording of packgen's own questions lies in the templates, by level; here they are only picked.
"""

from __future__ import annotations

from collections.abc import Sequence

HOW_MANY = {"first": 2, "younger": 3, "older": 3, "upper": 4}


def how_many(level: str) -> int:
    """How many questions suit a level in a few minutes (common practice); 3 for an unknown level."""
    return HOW_MANY.get(level, 3)


def choose(own: Sequence[str], bank: Sequence[str], count: int, turn: int) -> tuple[str, ...]:
    """`count` questions: as many of the study's own as there are, filled up from the bank.

    `turn` counts the pictures from 0: each takes the bank's questions on from where the one before stopped, so that
    none comes again until all have been asked. A question that is among the study's own is not asked twice. Fewer than
    `count` come back if there are not so many.

    >>> choose(["Who is nearest?"], ["What is light?", "What is far?"], 2, 1)
    ('Who is nearest?', 'What is far?')
    """
    mine = list(dict.fromkeys(str(question) for question in own))[:count]
    others = [question for question in dict.fromkeys(bank) if question not in mine]
    short = min(count - len(mine), len(others))
    start = turn * short
    return (*mine, *(others[(start + i) % len(others)] for i in range(short)))
