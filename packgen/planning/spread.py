"""Spreads lessons and longer makings over weeks: whole numbers only, no dates and no study.

A lesson is what a week's talk is about (a chapter, or a work if there is no book). A making is a challenge, a model or
the book. The last week is kept for looking back. All of it is arithmetic of our own: balanced shares and even gaps.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise


@dataclass(frozen=True, slots=True)
class Slot:
    """Where a making goes: a week from 0 and its sitting from 0; None is another day of that week."""

    week: int
    sitting: int | None


@dataclass(frozen=True, slots=True)
class Layout:
    """Lessons by week, the places of each making (two if split), weeks for looking at works, and weeks left open."""

    lessons: tuple[tuple[int, ...], ...]
    makings: tuple[tuple[Slot, ...], ...]
    looks: tuple[int, ...]
    spare: tuple[int, ...]


def spaced(count: int, places: int) -> tuple[int, ...]:
    """Which of `places` places to take so that `count` things stand evenly, each in the middle of its share.

    Needs 0 <= count <= places; the numbers then differ from each other.

    >>> spaced(2, 8)
    (2, 6)
    """
    return tuple((2 * i + 1) * places // (2 * count) for i in range(count))


def shares(count: int, groups: int) -> tuple[tuple[int, ...], ...]:
    """The numbers 0..count-1 in order as `groups` runs whose lengths differ by one at most.

    >>> shares(5, 2)
    ((0, 1), (2, 3, 4))
    """
    edges = [g * count // groups for g in range(groups + 1)]
    return tuple(tuple(range(a, b)) for a, b in pairwise(edges))


@dataclass(frozen=True, slots=True)
class _Free:
    """How the weeks without a lesson are used: for makings, for looking at works, or not at all."""

    making: tuple[int, ...]
    looks: tuple[int, ...]
    spare: tuple[int, ...]
    splits: int


def lay_out(lessons: int, divisible: Sequence[bool], sittings: Sequence[int], loose: int = 0) -> Layout:
    """A balanced layout of the lessons and makings over the weeks.

    `divisible` has one entry a making, in the order they are to come: True if it may be spread over two weeks when
    there is time. `sittings` has the number of sittings of each week (1 or more); `loose` is the number of works no
    lesson deals with. Nothing is dropped, whatever the numbers: too many lessons share weeks, too many makings go on
    top of weeks that have a lesson. Raises ValueError if there are no weeks.
    """
    weeks = len(sittings)
    if not weeks:
        raise ValueError("there are no weeks to spread the study over")
    extra = [Slot(week, s) for week, count in enumerate(sittings) for s in range(1, count)]
    if lessons > weeks - 1:
        by_week = shares(lessons, weeks)
        free = _use([], len(divisible), sum(divisible), len(extra), loose)
    else:
        open_weeks = weeks - 1
        taught = {i * open_weeks // lessons: i for i in range(lessons)}
        by_week = tuple((taught[w],) if w in taught else () for w in range(weeks))
        idle = [w for w in range(open_weeks) if w not in taught]
        free = _use(idle, len(divisible), sum(divisible), len(extra), loose)
    slots = sorted([*extra, *(Slot(week, 0) for week in free.making)], key=_in_time)
    return Layout(by_week, _assign(divisible, free.splits, slots, weeks), free.looks, free.spare)


def _in_time(slot: Slot) -> tuple[int, int]:
    return slot.week, 10_000 if slot.sitting is None else slot.sitting


def _use(idle: list[int], makings: int, divisible: int, extra: int, loose: int) -> _Free:
    """Idle weeks go to makings that have no second sitting, then to splitting them, then to works, then stay open."""
    own = max(0, min(len(idle), makings - extra))
    left = len(idle) - own
    roomy = max(0, extra - makings)
    splits = min(divisible, roomy + left)
    own += max(0, splits - roomy)
    looks = min(loose, len(idle) - own)
    making = [idle[i] for i in spaced(own, len(idle))]
    rest = [week for week in idle if week not in making]
    looking = [rest[i] for i in spaced(looks, len(rest))]
    return _Free(tuple(making), tuple(looking), tuple(w for w in rest if w not in looking), splits)


def _assign(divisible: Sequence[bool], splits: int, slots: list[Slot], weeks: int) -> tuple[tuple[Slot, ...], ...]:
    lengths: list[int] = []
    for may_split in divisible:
        split = may_split and splits > 0
        splits -= split
        lengths.append(1 + split)
    units = sum(lengths)
    if units > len(slots):
        chosen = sorted([*slots, *_on_top(units - len(slots), slots, weeks)], key=_in_time)
    else:
        chosen = _in_gaps(lengths, slots)
    found = []
    for length in lengths:
        found.append(tuple(chosen[:length]))
        chosen = chosen[length:]
    return tuple(found)


def _in_gaps(lengths: list[int], slots: list[Slot]) -> list[Slot]:
    """Slots for makings with room to spare: evenly apart, the parts of a split one side by side.

    The last making is the book: it gets the last slot, as a book is made when there is most to put into it.
    """
    before, last = lengths[:-1], lengths[-1:]
    room = len(slots) - sum(last) - (sum(before) - len(before))
    chosen: list[Slot] = []
    shift = 0
    for start, length in zip(spaced(len(before), room), before, strict=True):
        chosen += slots[start + shift : start + shift + length]
        shift += length - 1
    return chosen + slots[len(slots) - sum(last) :]


def _on_top(count: int, slots: list[Slot], weeks: int) -> list[Slot]:
    """Weeks that take a making besides their lesson: the middle ones first, then the first and last, then all again."""
    taken = {slot.week for slot in slots}
    middle = [w for w in range(1, weeks - 1) if w not in taken]
    ends = [w for w in sorted({0, weeks - 1}) if w not in taken]
    found: list[Slot] = []
    for group in (middle, ends):
        picked = group if count >= len(group) else [group[i] for i in spaced(count, len(group))]
        found += [Slot(week, None) for week in picked]
        count -= len(picked)
    full, left = divmod(count, weeks)
    found += [Slot(week, None) for week in range(weeks) for _ in range(full)]
    return found + [Slot(week, None) for week in spaced(left, weeks)]
