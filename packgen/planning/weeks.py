"""What a term plan is made of: sittings, weeks, weeks away and what is due in each, as frozen values.

A week runs from Monday to Sunday. Minutes are estimates; what they rest on stands in `packgen.planning.minutes`.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from packgen.reading.models import Chapter, Word, Work

MAKINGS = frozenset({"challenge", "model", "fold-book"})
READ_ALOUD = frozenset({"life", "read"})
TALK = frozenset({"recall", "tell", "look", "review"})


@dataclass(frozen=True, slots=True)
class Part:
    """One thing done, and about how long it takes.

    `name` is `recall`, `life`, `read`, `tell`, `look`, `review` or the kind of a sheet (`timeline`, `challenge`, ...).
    """

    name: str
    minutes: int
    title: str = ""


@dataclass(frozen=True, slots=True)
class Sitting:
    """One sitting at the table; `day` is None in a plan without dates."""

    day: date | None
    parts: tuple[Part, ...] = ()

    @property
    def minutes(self) -> int:
        """About how many minutes the sitting takes."""
        return sum(part.minutes for part in self.parts)


@dataclass(frozen=True, slots=True)
class Making:
    """A longer making: a challenge, a model or the book. `number` counts from 0 in the study's own list.

    `sitting` counts from 0 in the week's sittings; None means on another day of that week, because no sitting is free.
    A challenge that is planned and built in one week and tested in the next is two of these, part 1 and 2 of 2.
    """

    kind: str
    title: str
    number: int
    minutes: int
    sitting: int | None = None
    part: int = 1
    parts: int = 1


@dataclass(frozen=True, slots=True)
class SheetDue:
    """A sheet to have ready. `about` is the title of a chapter, challenge or model, the id of a work, or empty."""

    kind: str
    about: str = ""


@dataclass(frozen=True, slots=True)
class Load:
    """Minutes of one child's own sheets in a week: `talk` of those that go with the talk, `more` of the others.

    `folder` is the folder of the child's pack.
    """

    folder: str
    talk: int
    more: int


@dataclass(frozen=True, slots=True)
class Recalled:
    """Something dealt with before: `life`, `chapter`, `work`, `challenge`, `model` or `fold-book`, and its name."""

    kind: str
    title: str


@dataclass(frozen=True, slots=True)
class Week:
    """One week taught. `number` counts the weeks taught, from 1.

    `works` are looked at for the first time, `again` are met once more because a later chapter speaks of them. `other`
    is what is done at another time than the sittings. `spare` is True if nothing is planned but catching up.
    """

    number: int
    sittings: tuple[Sitting, ...]
    chapters: tuple[Chapter, ...] = ()
    works: tuple[Work, ...] = ()
    again: tuple[Work, ...] = ()
    makings: tuple[Making, ...] = ()
    words: tuple[Word, ...] = ()
    due: tuple[SheetDue, ...] = ()
    recall: tuple[Recalled, ...] = ()
    other: tuple[Part, ...] = ()
    review: bool = False
    spare: bool = False
    loads: tuple[Load, ...] = ()

    @property
    def dates(self) -> tuple[date, ...]:
        """The days of the sittings; empty in a plan without dates."""
        return tuple(sitting.day for sitting in self.sittings if sitting.day is not None)

    @property
    def making_days(self) -> tuple[date | None, ...]:
        """A day for each making: None for one that has a sitting, or in a plan without dates.

        The others come after the last sitting, the last of them on Saturday, each on a day of its own as far as the
        week reaches.
        """
        apart = [place for place, making in enumerate(self.makings) if making.sitting is None]
        found: list[date | None] = [None] * len(self.makings)
        if not self.dates or not apart:
            return tuple(found)
        last = self.dates[-1]
        after = [last + timedelta(days=k) for k in range(1, 7 - last.weekday())] or [last]
        to_saturday = after[:-1] if len(after) > len(apart) else after
        days = to_saturday[-len(apart) :]
        for place, making in enumerate(apart):
            found[making] = days[min(place, len(days) - 1)]
        return tuple(found)

    @property
    def reading_days(self) -> tuple[date, ...]:
        """The evenings on which the chapters are read aloud, each on its own, the last before the first sitting."""
        count = len(self.chapters) if self.dates else 0
        return tuple(self.dates[0] - timedelta(days=count - place) for place in range(count))

    @property
    def sheets(self) -> tuple[str, ...]:
        """The kinds of sheet to have ready, each once."""
        return tuple(dict.fromkeys(due.kind for due in self.due))

    @property
    def parts(self) -> tuple[Part, ...]:
        """Everything done in the week, at the table first."""
        return (*(part for sitting in self.sittings for part in sitting.parts), *self.other)

    @property
    def talk_minutes(self) -> int:
        """Minutes of the talk together: recalling, telling back, looking, looking back."""
        return sum(part.minutes for part in self.parts if part.name in TALK)

    @property
    def reading_minutes(self) -> int:
        """Minutes of reading aloud, and of telling the life."""
        return sum(part.minutes for part in self.parts if part.name in READ_ALOUD)

    @property
    def sheet_minutes(self) -> int:
        """Minutes of the child with most to do at its own sheets: the children work side by side."""
        return max((load.talk + load.more for load in self.loads), default=0)

    @property
    def making_minutes(self) -> int:
        """Minutes of the makings, all children together."""
        return sum(making.minutes for making in self.makings)

    @property
    def minutes(self) -> int:
        """About how many minutes the whole week takes: talk, reading, the longest child's sheets, and makings."""
        return self.talk_minutes + self.reading_minutes + self.sheet_minutes + self.making_minutes


@dataclass(frozen=True, slots=True)
class AwayWeek:
    """A calendar week of the term that is not taught; `starts` is its Monday."""

    starts: date

    @property
    def ends(self) -> date:
        """The Sunday of that week."""
        return self.starts + timedelta(days=6)


@dataclass(frozen=True, slots=True)
class TermPlan:
    """The study spread over the weeks.

    `minutes` is the time given for a sitting, `over` the numbers of the weeks with a sitting that takes longer. `notes`
    are sentences for the parent. `away` is empty without a term.
    """

    weeks: tuple[Week, ...]
    minutes: int
    away: tuple[AwayWeek, ...] = ()
    notes: tuple[str, ...] = ()
    over: tuple[int, ...] = ()

    @property
    def dated(self) -> bool:
        """True if the weeks have dates."""
        return any(week.dates for week in self.weeks)

    def is_sitting(self, day: date) -> bool:
        """True if there is a sitting on that day."""
        return any(day in week.dates for week in self.weeks)

    def week_on(self, day: date) -> Week | None:
        """The week with a sitting on that day, or None."""
        return next((week for week in self.weeks if day in week.dates), None)

    def week_of(self, kind: str, about: str = "") -> Week | None:
        """The first week in which a sheet is due, or None if it is not in the plan.

        Without `about`, or if nothing of that kind is about it, any sheet of the kind counts: a sheet made of the whole
        study, such as a page of all works, then stands in the week of its first part. Results belong to the week of
        their challenge.
        """
        kind = "challenge" if kind == "results" else kind
        of_kind = [(week, due) for week in self.weeks for due in week.due if due.kind == kind]
        exact = [week for week, due in of_kind if due.about == about]
        return exact[0] if exact else next((week for week, _ in of_kind), None)
