"""Spreads lessons and longer makings over weeks: whole numbers only, no dates and no study.

A lesson is what a week's talk is about (a chapter, or a work if there is no book). A making is a challenge, a model or
the book. The last week is kept for looking back: nothing is made in it. All of it is arithmetic of our own: balanced
shares and even gaps.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


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


@dataclass(frozen=True, slots=True)
class _Free:
    """How the weeks without a lesson are used: for makings, for looking at works, or not at all."""

    making: tuple[int, ...]
    looks: tuple[int, ...]
    spare: tuple[int, ...]
    splits: int


def lesson_shares(count: int, weeks: int) -> tuple[tuple[int, ...], ...]:
    """The lessons in order over weeks that cannot have one each: the weeks between the first and last take the rest.

    The first week tells the life, the last looks back over the study, so these get no more than the others.

    >>> lesson_shares(5, 4)
    ((0,), (1,), (2, 3), (4,))
    """
    each, more = divmod(count, weeks)
    inner = list(range(1, weeks - 1))
    fuller = {inner[place] for place in spaced(more, len(inner))} if more <= len(inner) else {0, *inner}
    found: list[tuple[int, ...]] = []
    begin = 0
    for week in range(weeks):
        end = begin + each + (week in fuller)
        found.append(tuple(range(begin, end)))
        begin = end
    return tuple(found)


def lay_out(lessons: int, divisible: Sequence[bool], sittings: Sequence[int], loose: int = 0,
            takes: Sequence[int] = ()) -> Layout:  # fmt: skip
    """A balanced layout of the lessons and makings over the weeks.

    `divisible` has one entry a making, in the order they are to come: True if it may be spread over two weeks when
    there is time; `takes` how long each lasts, all the same if not given. `sittings` has the number of sittings of each
    week (1 or more); `loose` is the number of works no lesson deals with. Nothing is dropped, whatever the numbers: too
    many lessons share weeks, too many makings go on top of weeks that have a lesson. Raises ValueError if there are no
    weeks.
    """
    weeks = len(sittings)
    if not weeks:
        raise ValueError("there are no weeks to spread the study over")
    # nothing is made after the looking back, so the last week takes no making; one week alone takes them all
    making_weeks = weeks - 1 or 1
    extra = [Slot(week, s) for week, count in enumerate(sittings[:making_weeks]) for s in range(1, count)]
    if lessons > weeks - 1:
        by_week = lesson_shares(lessons, weeks)
        free = _use([], len(divisible), sum(divisible), len(extra), loose)
    else:
        open_weeks = weeks - 1
        taught = {i * open_weeks // lessons: i for i in range(lessons)}
        by_week = tuple((taught[w],) if w in taught else () for w in range(weeks))
        idle = [w for w in range(open_weeks) if w not in taught]
        free = _use(idle, len(divisible), sum(divisible), len(extra), loose)
    slots = sorted([*extra, *(Slot(week, 0) for week in free.making)], key=_in_time)
    if len(divisible) + free.splits > len(slots):
        placed = _on_top(list(takes) or [1] * len(divisible), slots, by_week[:making_weeks])
    else:
        placed = _assign(divisible, free.splits, slots)
    return Layout(by_week, placed, free.looks, free.spare)


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


def _assign(divisible: Sequence[bool], splits: int, slots: list[Slot]) -> tuple[tuple[Slot, ...], ...]:
    lengths: list[int] = []
    for may_split in divisible:
        split = may_split and splits > 0
        splits -= split
        lengths.append(1 + split)
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


def _on_top(takes: Sequence[int], slots: list[Slot], lessons: Sequence[Sequence[int]]) -> tuple[tuple[Slot, ...], ...]:
    """A place for each making where there are more than free sittings: the weeks (of `lessons`) are loaded evenly.

    The free sittings are all taken; what is left goes on top of weeks, in order, so that first the numbers and then
    the minutes of the weeks differ as little as they can.
    """
    weeks = len(lessons)
    free = [[slot for slot in slots if slot.week == week] for week in range(weeks)]
    found: list[tuple[Slot, ...]] = []
    for week, count in enumerate(_counts(takes, [len(own) for own in free], [len(own) for own in lessons])):
        own = free[week][:count]
        found += [(slot,) for slot in own] + [(Slot(week, None),)] * (count - len(own))
    return tuple(found)


def _counts(takes: Sequence[int], free: Sequence[int], lessons: Sequence[int]) -> list[int]:
    """How many makings each week takes, in order: at least as many as it has free sittings.

    By dynamic programming over the weeks: `best[n]` is the least cost of the first n makings in the weeks so far. Of
    layouts with loads as even, the one with the evenest pace counts.
    """
    base, more = divmod(len(takes) - sum(free), len(free))
    longest = max(takes, default=1)
    upto = [0]
    for one in takes:
        upto.append(upto[-1] + one)
    best: dict[int, tuple[tuple[int, int], tuple[int, ...]]] = {0: ((0, 0), ())}
    for week, (own, taught) in enumerate(zip(free, lessons, strict=True)):
        after: dict[int, tuple[tuple[int, int], tuple[int, ...]]] = {}
        for done, (cost, counts) in best.items():
            for count in (own + base, own + base + 1)[: 1 + (more > 0)]:
                if (end := done + count) > len(takes):
                    continue
                # a lesson weighs half a making
                load = upto[end] - upto[done] + longest * taught // 2
                # how far from an even pace, in halves of a making's share of the weeks
                ahead = 2 * end * len(free) - (2 * week + 1) * len(takes)
                tried = ((cost[0] + load * load, cost[1] + ahead * ahead), (*counts, count))
                if end not in after or tried[0] < after[end][0]:
                    after[end] = tried
        best = after
    return list(best[len(takes)][1])
