"""Sentences for the parent about a term plan: what was balanced, what takes longer, what is left open."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from packgen.planning.minutes import LESSON_UNDER_EIGHT
from packgen.planning.weeks import AwayWeek, Sitting, Week
from packgen.reading.models import Family, Study

_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip
_WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_MAKINGS = frozenset({"challenge", "model", "fold-book"})
LONG_CHAPTER = 30


@dataclass(frozen=True, slots=True)
class Facts:
    """What the notes are made from: the finished weeks and what they were made of."""

    study: Study
    family: Family | None
    weeks: tuple[Week, ...]
    allowed: int
    away: tuple[AwayWeek, ...]
    outside: tuple[date, ...]
    lessons: int


def plain_date(day: date) -> str:
    """A date in words, the same in every locale.

    >>> plain_date(date(2027, 3, 17))
    '17 March 2027'
    """
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


def _day(day: date) -> str:
    """A day of the term in a sentence: `Friday 26 February`."""
    return f"{_WEEKDAYS[day.weekday()]} {day.day} {_MONTHS[day.month - 1]}"


def _span(first: date, last: date) -> str:
    """`15 to 21 March 2027`, with as little said twice as may be."""
    if first.year != last.year:
        return f"{plain_date(first)} to {plain_date(last)}"
    month = "" if first.month == last.month else f" {_MONTHS[first.month - 1]}"
    return f"{first.day}{month} to {plain_date(last)}"


def listed(words: Sequence[str]) -> str:
    """Words as a list in a sentence.

    >>> listed(["a", "b", "c"])
    'a, b and c'
    """
    return f"{', '.join(words[:-1])} and {words[-1]}" if len(words) > 1 else "".join(words)


def week_list(numbers: Iterable[int]) -> str:
    """Weeks as a list in a sentence: `week 3`, `weeks 2, 4 and 5`."""
    found = [str(number) for number in sorted(set(numbers))]
    return f"week{'s' if len(found) > 1 else ''} {listed(found)}"


def counted(count: int, thing: str) -> str:
    """A number in words with its thing: `one week`, `nine weeks`, `13 weeks`."""
    number = _WORDS[count] if count < len(_WORDS) else str(count)
    return f"{number} {thing}{'' if count == 1 else 's'}"


def notes_on(facts: Facts) -> tuple[str, ...]:
    """The sentences for one plan, the calendar first, then what was balanced, then the minutes."""
    return (*_calendar(facts), *_balance(facts), *_makings(facts), *_minutes(facts), *_elsewhere(facts))


def _calendar(facts: Facts) -> Iterator[str]:
    term = facts.family.term if facts.family else None
    if not term:
        yield f"There is no term in the family file, so the plan ({counted(len(facts.weeks), 'week')}) has no dates."
        return
    if not any(week.dates for week in facts.weeks):
        yield "Every week of the term is a week away, so the weeks here have no dates: make the term longer."
    elif facts.away:
        days = [_span(week.starts, week.ends) for week in facts.away]
        away = "is a week away" if len(days) == 1 else "are weeks away"
        yield f"{listed(days)} {away}. That leaves {counted(len(facts.weeks), 'week')}."
    if facts.outside:
        one = len(facts.outside) == 1
        yield (
            f"{listed([plain_date(day) for day in facts.outside])} {'lies' if one else 'lie'} outside the term, "
            f"so {'it changes' if one else 'they change'} nothing."
        )


def _balance(facts: Facts) -> Iterator[str]:
    has_book = any(week.chapters for week in facts.weeks)
    thing = "chapter" if has_book else "work"
    shared = [w.number for w in facts.weeks if len(w.chapters if has_book else w.works) > 1 and facts.lessons]
    if facts.lessons > len(facts.weeks):
        has = "has" if len(shared) == 1 else "have"
        yield (
            f"{counted(facts.lessons, thing).capitalize()} in {counted(len(facts.weeks), 'week')}: {week_list(shared)} "
            f"{has} more than one.{' Read each chapter on an evening of its own.' if has_book else ''}"
        )
    elif facts.lessons == len(facts.weeks) > 1:
        yield f"Every week has a {thing}, so the last {thing} and the looking back share the last week."
    spare = [week.number for week in facts.weeks if week.spare]
    if spare:
        yield (
            f"There is more time than the study needs: {week_list(spare)} {'is' if len(spare) == 1 else 'are'} left "
            "open to catch up, finish a making or go out and look."
        )


def _makings(facts: Facts) -> Iterator[str]:
    on_top = [week for week in facts.weeks if any(making.sitting is None for making in week.makings)]
    if on_top:
        dated = " The calendar puts it on a Saturday; any free day will do." if on_top[0].dates else ""
        yield f"The making in {week_list(week.number for week in on_top)} needs an afternoon of its own.{dated}"
    crowded = [week for week in facts.weeks if len(week.makings) > 1]
    if crowded:
        days = [day for day in crowded[0].making_days if day] if len(crowded) == 1 else []
        which = f" ({listed([_day(day) for day in days])})" if len(set(days)) > 1 else ""
        yield (
            f"In {week_list(week.number for week in crowded)} there is more than one making: choose one, or make each "
            f"on a day of its own{which}."
        )
    for week in facts.weeks:
        for making in week.makings:
            if making.parts > 1 and making.part == 1:
                later = next(
                    w.number
                    for w in facts.weeks
                    for m in w.makings
                    if (m.kind, m.number, m.part) == (making.kind, making.number, 2)
                )
                when = "in the same week" if later == week.number else f"in week {later}"
                yield f"'{making.title}' is planned and built in week {week.number} and tested {when}."


def _minutes(facts: Facts) -> Iterator[str]:
    making: dict[int, list[int]] = {}
    talk: dict[int, list[int]] = {}
    for week in facts.weeks:
        for sitting in week.sittings:
            if sitting.minutes > facts.allowed:
                (making if _is_making(sitting) else talk).setdefault(sitting.minutes, []).append(week.number)
    if making:
        yield f"With a making, the sitting takes {_each(making)}."
    if talk:
        yield (
            f"The talk takes {_each(talk)}; {facts.allowed} minutes are planned. Stop when the time is up and go on "
            "another day."
        )
    young = [c.name for c in facts.family.children if c.age is not None and c.age < 8] if facts.family else []
    longest = max((s.minutes for week in facts.weeks for s in week.sittings if not _is_making(s)), default=0)
    if young and longest > LESSON_UNDER_EIGHT:
        yield (
            f"A sitting here can take {longest} minutes; under the age of eight {LESSON_UNDER_EIGHT} are enough, so "
            f"let {listed(young)} stop then."
        )


def _is_making(sitting: Sitting) -> bool:
    return any(part.name in _MAKINGS for part in sitting.parts)


def _each(by_minutes: dict[int, list[int]]) -> str:
    """`about 55 minutes in week 3, about 14 minutes in week 6`; longer times to the nearest five, being guesses."""
    rounded: dict[int, list[int]] = {}
    for takes, numbers in by_minutes.items():
        rounded.setdefault(round(takes / 5) * 5 if takes > 30 else takes, []).extend(numbers)
    by_length = sorted(rounded.items(), reverse=True)
    return ", ".join(f"about {takes} minutes in {week_list(numbers)}" for takes, numbers in by_length)


def _elsewhere(facts: Facts) -> Iterator[str]:
    """Chapters too long to read in one go."""
    long = [
        (week.number, part.minutes)
        for week in facts.weeks
        for part in (*week.other, *(p for s in week.sittings for p in s.parts))
        if part.name == "read" and part.minutes > LONG_CHAPTER
    ]
    if long:
        yield (
            f"The chapters of {week_list(number for number, _ in long)} are long, up to {max(m for _, m in long)} "
            "minutes: read them over several days."
        )
