"""How long a week takes: at the table, reading aloud, each child at its own sheets, and making.

The sitting is done together, and so is reading. Sheets are done side by side, so that they take as long as the child
who has most to do. In a making all build at once; then each tests in turn, with one watch and one tap.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from packgen.planning import minutes
from packgen.planning.challenges import run_times
from packgen.planning.weeks import MAKINGS, Load, SheetDue, TermPlan, Week
from packgen.reading.models import Challenge

# What belongs to the talk of the week; the other sheets are for a child who wants more.
OF_THE_TALK = frozenset({"biography", "telling", "picture-study", "words", "timeline"})
BESIDE = "first"  # the level that works beside the others in a challenge


@dataclass(frozen=True, slots=True)
class Holder:
    """A child as the plan of weeks knows it: its folder, its level, and the sheets it has."""

    folder: str
    level: str
    sheets: frozenset[SheetDue]

    def has(self, due: SheetDue) -> bool:
        """True if the child has a sheet for this; one about the whole study serves for every part of it."""
        return due in self.sheets or SheetDue(due.kind) in self.sheets

    def learns(self, week: Week) -> bool:
        """True if one of the week's words is for the child's level."""
        return any(not self.level or not word.levels or self.level in word.levels for word in week.words)


def load_of(holder: Holder, week: Week) -> Load:
    """The minutes of one child's own sheets in a week: those that go with the talk, and those for who wants more."""
    talk = more = 0
    for due in week.due:
        if due.kind in MAKINGS or not holder.has(due) or (due.kind == "words" and not holder.learns(week)):
            continue
        if due.kind in OF_THE_TALK:
            talk += minutes.of_sheet(due.kind)
        else:
            more += minutes.of_sheet(due.kind)
    return Load(holder.folder, talk, more)


def making_minutes(holders: Iterable[Holder], due: SheetDue, challenge: Challenge | None, part: int, parts: int) -> int:
    """Minutes of a making for all together: a challenge is built by all at once and tested by each in turn.

    `challenge` is None for a model or the book. The youngest work beside the others, so they count only if they are
    alone. Of a challenge in two parts, the first is building, the second testing.
    """
    building = minutes.of_sheet(due.kind)
    if challenge is None:
        return building
    testing = minutes.of_testing(challenge, run_times(challenge)) * max(1, len(who_test(holders, due)))
    if parts == 1:
        return building + testing
    return building if part == 1 else testing


def who_test(holders: Iterable[Holder], due: SheetDue) -> tuple[Holder, ...]:
    """Those who test a build of their own in a challenge: all but the youngest, or these if there are no others."""
    found = tuple(holder for holder in holders if holder.has(due))
    return tuple(holder for holder in found if holder.level != BESIDE) or found


def longest(loads: Sequence[Load]) -> int:
    """Minutes of the child with most to do, all its sheets together; 0 without any."""
    return max((load.talk + load.more for load in loads), default=0)


@dataclass(frozen=True, slots=True)
class Span:
    """From the least to the most minutes."""

    low: int
    high: int


@dataclass(frozen=True, slots=True)
class Takes:
    """What a term takes. `longer` are the weeks (with minutes) whose talk does not fit into their sittings.

    `own` has a span for each folder, over the weeks in which that child has sheets; `makings` counts them, and
    `making_weeks` are theirs. A span is None if there is nothing of the kind.
    """

    sitting: int
    longer: tuple[tuple[int, int], ...]
    reading: Span | None
    own: tuple[tuple[str, Span], ...]
    makings: int
    making: Span | None
    making_weeks: tuple[int, ...]
    more: tuple[str, ...]


def takes(plan: TermPlan) -> Takes:
    """What the weeks of a plan take: at the table, reading, each child at its sheets, and making."""
    longer = tuple(
        (week.number, week.talk_minutes)
        for week in plan.weeks
        if week.talk_minutes > plan.minutes * max(1, len(week.sittings))
    )
    folders = dict.fromkeys(load.folder for week in plan.weeks for load in week.loads)
    own = []
    for folder in folders:
        found = [load.talk + load.more for week in plan.weeks for load in week.loads if load.folder == folder]
        if span := _span(minutes for minutes in found if minutes):
            own.append((folder, span))
    makings = [making for week in plan.weeks for making in week.makings]
    return Takes(
        plan.minutes,
        longer,
        _span(week.reading_minutes for week in plan.weeks if week.chapters),
        tuple(own),
        len({(making.kind, making.number) for making in makings}),
        _span(making.minutes for making in makings),
        tuple(week.number for week in plan.weeks if week.makings),
        tuple(dict.fromkeys(due.kind for week in plan.weeks for due in week.due if _by_choice(due.kind))),
    )


def _by_choice(kind: str) -> bool:
    return kind not in OF_THE_TALK and kind not in MAKINGS


def _span(minutes: Iterable[int]) -> Span | None:
    found = list(minutes)
    return Span(min(found), max(found)) if found else None
