"""Ages and intervals in a life, reckoned from dates that may be known only to the year."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from packgen.reading.dates import as_years
from packgen.reading.models import Day, Event, Study, When


@dataclass(frozen=True, slots=True)
class YearsQuestion:
    """Something to read off a timeline: `kind` is age, between, lasted or life; `low` to `high` years is right."""

    kind: str
    what: str
    other: str = ""
    low: int = 0
    high: int = 0

    @property
    def answer(self) -> str:
        """The right answer in words: one number, or a range where the dates leave it open."""
        return str(self.low) if self.low == self.high else f"{self.low} or {self.high}"


def years_between(earlier: Day, later: Day) -> tuple[int, int]:
    """The least and the most whole years from one date to a later one.

    Years are astronomical, so there is no year 0 to trip over: 10 BC to AD 10 is 19 years. Where a month or day is not
    known, the anniversary may or may not have come round, and the two differ by one.
    """
    years = later.year - earlier.year
    known = [(a, b) for a, b in ((earlier.month, later.month), (earlier.day, later.day)) if a and b]
    if earlier.month and later.month and earlier.month != later.month:
        exact = years - (later.month < earlier.month)
        return exact, exact
    if len(known) == 2:
        exact = years - ((later.month or 0, later.day or 0) < (earlier.month or 0, earlier.day or 0))
        return exact, exact
    return max(0, years - 1), years


def chosen_events(study: Study, most: int | None = None) -> tuple[Event, ...]:
    """The dated events that a timeline of at most `most` has, in order of time; None takes all.

    The first and last stay, then those with a short wording, spread evenly.
    """
    dated = [event for event in study.timeline if event.when.start or event.when.end]
    if most is not None and len(dated) > most:
        ends = (0, len(dated) - 1)
        rank = sorted(range(len(dated)), key=lambda k: (k not in ends, not dated[k].short, _bits(k)))
        dated = [dated[k] for k in sorted(rank[:most])]
    return tuple(sorted(dated, key=_when))


def _when(event: Event) -> tuple[float, float]:
    start, end = as_years(event.when)
    return start, end if event.when.is_span else start


def _bits(number: int) -> int:
    """The number with its binary digits reversed: an order that spreads over a range."""
    return int(f"{number:016b}"[::-1], 2)


def _sure(when: When | None) -> Day | None:
    """The date of a moment known at least to its year."""
    if when is None or when.approximate or when.uncertain or when.spread or when.is_span:
        return None
    return when.start


def age_questions(study: Study, events: Sequence[Event]) -> list[YearsQuestion]:
    """Questions on ages and intervals that the dates given can answer, the most telling first.

    Each has one right answer, also where dates are known to the year only: asked is the age that somebody comes to in
    a year, and how far two years lie apart; the age at death only if month and day are known.
    """
    questions: list[YearsQuestion] = []
    born, died = _sure(study.born), _sure(study.died)
    if born and died and len(set(years_between(born, died))) == 1:
        questions.append(YearsQuestion("life", "", "", *years_between(born, died)))
    sure = [(event, day) for event in events if (day := _sure(event.when))]
    if born:
        lived = [(e, d) for e, d in sure if d.year > born.year and (not died or d.year <= died.year)]
        for event, day in lived[:: max(1, len(lived) // 3)][:3]:
            if not (died and day.year == died.year):
                questions.append(YearsQuestion("age", str(event.what), "", *[day.year - born.year] * 2))
    for event in events:
        start, end = event.when.start, event.when.end
        if event.when.is_span and start and end and not event.when.approximate:
            questions.append(YearsQuestion("lasted", str(event.what), "", end.year - start.year, end.year - start.year))
            break
    if len(sure) > 3:
        (first, a), (second, b) = sure[1], sure[-2]
        questions.append(YearsQuestion("between", str(first.what), str(second.what), *[b.year - a.year] * 2))
    return questions


def timeline_questions(study: Study, events: Sequence[Event], level: str) -> list[YearsQuestion]:
    """The questions that a timeline of these events prints at a level: as many as its page has lines for."""
    return age_questions(study, events)[: 5 if level == "older" else 6]
