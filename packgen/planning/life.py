"""Ages and intervals in a life, worked out from dates that may be known only to the year."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from packgen.reading.dates import as_years
from packgen.reading.models import Day, Event, Study, When

_UNITS = ("nought", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
          "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen")  # fmt: skip
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_OUT = 5  # years; how far an "about" date may be out, as the question for the oldest supposes


@dataclass(frozen=True, slots=True)
class YearsQuestion:
    """Something to read off a timeline; `low` to `high` years is right, or what `said` says if it is no whole number.

    `kind` is age, between, lasted or life, and for the oldest also lives, exact, ages, unsure, share, gap or rate.
    """

    kind: str
    what: str
    other: str = ""
    low: int = 0
    high: int = 0
    said: str = ""

    @property
    def answer(self) -> str:
        """The right answer in words: one number, or a range where the dates leave it open."""
        if self.said:
            return self.said
        if self.low == self.high:
            return str(self.low)
        return f"{self.low} or {self.high}" if self.high - self.low == 1 else f"{self.low} to {self.high}"


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
    a year, and how far two years lie apart; the age at death only if month and day are known. Nothing is asked whose
    answer stands in the words it is asked with.
    """
    questions: list[YearsQuestion] = []
    born, died = _sure(study.born), _sure(study.died)
    if born and died and len(set(years_between(born, died))) == 1:
        questions.append(YearsQuestion("life", "", "", *years_between(born, died)))
    sure = [(event, day) for event in events if (day := _sure(event.when))]
    if born:
        lived = [(e, d) for e, d in _lived(born, died, sure) if not _gives_away(e.what, d.year - born.year)]
        for event, day in lived[:: max(1, len(lived) // 3)][:3]:
            questions.append(_exactly("age", day.year - born.year, _quoted(event)))
    bars = [(e, years) for e, years in _bars(events) if not _gives_away(e.what, years)]
    questions += [_exactly("lasted", years, _quoted(event)) for event, years in bars[:1]]
    return questions + _between(sure)


def _between(sure: Sequence[tuple[Event, Day]]) -> list[YearsQuestion]:
    """How many years from the second sure event to the last but one, if there are enough."""
    if len(sure) < 4:
        return []
    (first, a), (second, b) = sure[1], sure[-2]
    return [_exactly("between", b.year - a.year, _quoted(first), _quoted(second))]


def _exactly(kind: str, years: int, what: str = "", other: str = "") -> YearsQuestion:
    return YearsQuestion(kind, what, other, years, years)


def source_questions(study: Study, events: Sequence[Event]) -> list[YearsQuestion]:
    """Questions for the oldest: what the dates leave open, what part of a life a thing took, gaps and rate."""
    born, died = _sure(study.born), _sure(study.died)
    sure = [(event, day) for event in events if (day := _sure(event.when))]
    asked: list[YearsQuestion] = []
    if born and died:
        lived = years_between(born, died)
        asked.append(YearsQuestion("life" if lived[0] == lived[1] else "lives", "", "", *lived))
    if born:
        asked += _ages(born, _lived(born, died, sure)) + _unsure(born, events)
    asked += _share(born, died, events) or _between(sure)
    if len(sure) > 3:
        years = sorted(day.year for _, day in sure)
        gap = max(b - a for a, b in pairwise(years))
        asked.append(_exactly("gap", gap))
    starts = sorted(int(as_years(event.when)[0]) for event in events if event.when.start)
    if len(starts) > 3 and starts[-1] - starts[0] >= 20:
        rate = len(starts) * 10 / (starts[-1] - starts[0])
        asked.append(YearsQuestion("rate", "", said=f"{rate:.1f}".removesuffix(".0")))
    return asked


def _ages(born: Day, lived: Sequence[tuple[Event, Day]]) -> list[YearsQuestion]:
    """An age known to the day, and one that a year leaves open between two."""
    ages = [(event, years_between(born, day)) for event, day in lived]
    asked: list[YearsQuestion] = []
    exact = [(e, age) for e, age in ages if age[0] == age[1] and not _gives_away(e.what, age[0])]
    open_ = [(e, age) for e, age in ages if age[0] < age[1] and not _gives_away(e.what, *age)]
    if exact:
        event, age = exact[len(exact) // 2]
        asked.append(YearsQuestion("exact", _quoted(event), "", *age))
    if open_:
        event, age = open_[len(open_) // 2]
        asked.append(YearsQuestion("ages", _quoted(event), "", *age))
    return asked


def _unsure(born: Day, events: Sequence[Event]) -> list[YearsQuestion]:
    """How old somebody may have been at an "about" date, if it may be some years out either way."""
    about = [e for e in events if e.when.approximate and e.when.start and e.when.start == e.when.end]
    late = [(e, e.when.start.year - born.year) for e in about if e.when.start]
    late = [(e, years) for e, years in late if years > _OUT + 1 and not _gives_away(e.what, years)]
    if not late:
        return []
    event, years = late[len(late) // 2]
    return [YearsQuestion("unsure", _quoted(event), str(_OUT), years - _OUT - 1, years + _OUT)]


def _share(born: Day | None, died: Day | None, events: Sequence[Event]) -> list[YearsQuestion]:
    """What part of a life the longest bar takes, in percent."""
    bars = [(event, years) for event, years in _bars(events) if years > 0]
    if not bars or not born or not died:
        return []
    event, years = max(bars, key=lambda bar: bar[1])
    low, high = (round(100 * years / lived) for lived in reversed(years_between(born, died)) if lived)
    return [YearsQuestion("share", _quoted(event), said=f"{low} %" if low == high else f"{low} to {high} %")]


def _lived(born: Day, died: Day | None, sure: Sequence[tuple[Event, Day]]) -> list[tuple[Event, Day]]:
    """The sure events after the year of birth and before that of death."""
    return [(e, d) for e, d in sure if d.year > born.year and (not died or d.year < died.year)]


def _bars(events: Sequence[Event]) -> list[tuple[Event, int]]:
    """The events that lasted from one sure year to another, with the years between."""
    found = []
    for event in events:
        start, end = event.when.start, event.when.end
        if event.when.is_span and start and end and not event.when.approximate:
            found.append((event, end.year - start.year))
    return found


def _quoted(event: Event) -> str:
    """What happened, as it is put between quotation marks."""
    return str(event.what).rstrip(". ")


def _gives_away(words: str, *numbers: int) -> bool:
    """True if words say one of the numbers, in digits or in words."""
    said = set(re.findall(r"\w+", re.sub(r"[-\u2010\u2011]", "", words.lower())))
    return any(bool(said & {str(number), _in_words(number)}) for number in numbers)


def _in_words(number: int) -> str:
    """A number below a hundred in words without a hyphen: twentyone. A larger one in digits."""
    if number < len(_UNITS):
        return _UNITS[number] if number >= 0 else str(number)
    if number >= 100:
        return str(number)
    return _TENS[number // 10 - 2] + (_UNITS[number % 10] if number % 10 else "")


def timeline_questions(study: Study, events: Sequence[Event], level: str) -> list[YearsQuestion]:
    """The questions that a timeline of these events prints at a level: as many as its page has lines for."""
    return source_questions(study, events)[:7] if level == "upper" else age_questions(study, events)[:5]
