"""About how long each part of a study takes: the assumptions, written out so that the guide can print them.

A home's own pace is the better figure; these only keep a plan honest. Pages of a chapter are counted from what the
parent wrote (`11-19`).
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass

from packgen.reading.models import Challenge, Chapter

MINUTES_A_PAGE = 2
UNKNOWN_CHAPTER = 10
LESSON_UNDER_EIGHT = 20  # C. M. Mason, Home Education (1886), p. 142: lessons seldom over 20 minutes under age eight


@dataclass(frozen=True, slots=True)
class Assumed:
    """Minutes taken for one part of the work, and what the figure rests on."""

    part: str
    minutes: int
    why: str


ASSUMED = (
    Assumed("recall", 1, "two or three questions about last week (common practice)"),
    Assumed("life", 5, "a short account, told once (common practice)"),
    Assumed(
        "read", MINUTES_A_PAGE, "a page read aloud; 10 minutes for a chapter without page numbers (common practice)"
    ),
    Assumed("tell", 5, "telling back takes 5 to 10 minutes (common practice)"),
    Assumed("look", 4, "three or four quiet minutes, then the picture is covered (C. M. Mason, Home Education, 1886)"),
    Assumed("review", 10, "each child shows two sheets and says why (common practice)"),
    Assumed("biography", 10, "drawing or writing after the life is told (common practice)"),
    Assumed("timeline", 15, "cutting and gluing, or reading off and reckoning (common practice)"),
    Assumed("telling", 5, "one drawing or a few lines (common practice)"),
    Assumed("picture-study", 5, "a small drawing from memory, or lines of composition (common practice)"),
    Assumed("words", 5, "copying takes 5 minutes at six and up to 15 at ten (common practice)"),
    Assumed("enlarging-grid", 20, "a square at a time (common practice)"),
    Assumed("finish-the-picture", 15, "drawing on from the given part (common practice)"),
    Assumed("colour-by-number", 30, "mixing takes longer than painting (common practice)"),
    Assumed("look-closer", 10, "four details to find, and tones to match (common practice)"),
    Assumed("matching-game", 15, "cutting the cards, and a game (common practice)"),
    Assumed("where-in-the-world", 15, "colouring, or marking and measuring (common practice)"),
    Assumed("challenge", 40, "15 to plan and draw, 25 to build, all at once; testing is added (common practice)"),
    Assumed(
        "test",
        2,
        "a trial of one child, or a minute and what it should run; they test in turn, 3 times each if the study does "
        "not say (common practice)",
    ),
    Assumed("model", 40, "10 to cut, 10 to score and fold, 20 to glue (common practice)"),
    Assumed("fold-book", 40, "10 to fold and cut, 30 to fill and glue (common practice)"),
)
MINUTES = {assumed.part: assumed.minutes for assumed in ASSUMED}
UNKNOWN_SHEET = 10
SET_UP = 1  # minutes to set up a trial and write down what came out (common practice)
ROUNDED_TO = 5


def of_sheet(kind: str) -> int:
    """Minutes for a sheet of that kind; 10 for a kind without a figure of its own."""
    return MINUTES.get(kind, UNKNOWN_SHEET)


def of_chapter(chapter: Chapter) -> int:
    """Minutes to read a chapter aloud, from its pages if they are given."""
    pages = page_count(chapter.pages or "")
    return pages * MINUTES_A_PAGE if pages else UNKNOWN_CHAPTER


def page_count(said: str) -> int:
    """How many pages `11-19`, `11–19, 24` or `pp. 121-9` are; 0 if no number is there.

    >>> page_count("11-19")
    9
    """
    total = 0
    for first, last in re.findall(r"(\d{1,6})(?:\s*[-–—]\s*(\d{1,6}))?", said):
        # 121-9 is short for 121-129
        end = first[: len(first) - len(last)] + last if last and len(last) < len(first) else last
        total += int(end) - int(first) + 1 if end and int(end) >= int(first) else 1
    return total


def of_testing(challenge: Challenge, runs: Sequence[float] = ()) -> int:
    """Minutes for one child to test: trials times planned values, rounded up to 5.

    3 trials and 2 values are taken if the study says neither. `runs` are the expected times of one trial of each value
    in seconds, if that is what is measured: a trial then takes a minute to set up besides, if that is longer.
    """
    trials = challenge.trials or 3
    if runs:
        each = sum(max(MINUTES["test"], SET_UP + seconds / 60) for seconds in runs)
    else:
        each = MINUTES["test"] * (len(challenge.change.values) if challenge.change and challenge.change.values else 2)
    return math.ceil(trials * each / ROUNDED_TO - 1e-9) * ROUNDED_TO
