"""The term plan as an iCalendar text that phones and calendar programs read (RFC 5545).

An all-day entry a sitting, one for each making on a day of its own, one for each chapter read on an earlier evening,
and one before the first week; each with an alarm the evening before that says what to have ready. The text depends on
the plan alone: the stamp is the term's first day, and an entry keeps its identifier when the plan is made again, so
that a calendar moves it instead of showing it twice.
"""

from __future__ import annotations

import unicodedata
import uuid
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Protocol

from packgen.planning.people import Person, names_of
from packgen.planning.print_plan import RunInfo
from packgen.planning.printed_items import printed_name, sheets_of_week
from packgen.planning.ready import Ready, alike
from packgen.planning.weeks import MAKINGS, READ_ALOUD, Making, Part, Sitting, TermPlan, Week
from packgen.reading.models import Challenge, Family, Model, Study

MEDIA_TYPE = "text/calendar"
LINE_OCTETS = 75
BEFORE = 14  # days to borrow or order the book, and to print
EVENING = 6  # hours before the day begins: six in the evening
_OURS = uuid.uuid5(uuid.NAMESPACE_DNS, "term-plan.packgen.invalid")
_ABOUT_WORKS = frozenset({"enlarging-grid", "finish-the-picture", "colour-by-number", "look-closer", "picture-study"})


class Say(Protocol):
    """Gives a wording of the term plan by its key."""

    def __call__(self, key: str, **values: object) -> str:
        """The wording filled in."""


@dataclass(frozen=True, slots=True)
class Event:
    """One all-day event. `key` makes its identifier: the same key, the same event in a calendar.

    `evening` is what the alarm of the evening before says, or that of the same evening; without it there is no alarm.
    """

    day: date
    key: str
    summary: str
    description: str = ""
    evening: str = ""
    same_evening: bool = False


def calendar_text(study: Study, family: Family | None, plan: TermPlan, persons: Sequence[Person], say: Say,
                  runs: Sequence[RunInfo] = ()) -> str:  # fmt: skip
    """The whole calendar, ready to be written as UTF-8; empty if the plan has no dates: it needs one event.

    With the print runs, sheets go by their numbers and printed titles, else by their kinds.
    """
    events = events_of(study, family, plan, persons, say, runs)
    if not events:
        return ""
    term = family.term if family else None
    return as_icalendar(events, str(study.study), term.starts if term else events[0].day)


def events_of(study: Study, family: Family | None, plan: TermPlan, persons: Sequence[Person],
              say: Say, runs: Sequence[RunInfo] = ()) -> tuple[Event, ...]:  # fmt: skip
    """The entries in order of time: before the first week, each sitting with a date, each making apart from them."""
    whose = f"{family.family}/{family.term.starts.year}" if family and family.term else ""
    maker = _Entries(study, f"{study.study}/{whose}", tuple(persons), say, tuple(runs))
    found = [event for week in plan.weeks for event in maker.of_week(week)]
    if not found:
        return ()
    first = min(event.day for event in found)
    return tuple(sorted([maker.before(first), *found], key=lambda event: event.day))


@dataclass(frozen=True, slots=True)
class _Entries:
    """Makes the entries of one study; `key` begins their identifiers."""

    study: Study
    key: str
    persons: tuple[Person, ...]
    say: Say
    runs: tuple[RunInfo, ...] = ()

    def before(self, first: date) -> Event:
        """What to do before the first week."""
        said = [self.say("before_book", book=self.say("book_named", book=self.study.book))] if self.study.book else []
        said += [self.say("before_print"), self.say("before_shop")]
        day = first - timedelta(days=BEFORE)
        return Event(day, f"{self.key}/before", self.say("ics_before"), "\n".join(said), said[0])

    def of_week(self, week: Week) -> Iterator[Event]:
        """The entries of one week."""
        ready = alike(self.persons, week)
        for place, sitting in enumerate(week.sittings, start=1):
            if sitting.day is None:
                continue
            about = self._about(week, sitting)
            title = self.say("ics_sitting", number=week.number, about=about)
            text = self._description(week, sitting, ready if place == 1 else ())
            key = f"{self.key}/{week.number}/{place}"
            yield Event(sitting.day, key, title, text, self._evening(week, sitting, title, ready if place == 1 else ()))
        early = [part for part in week.other if part.name == "read"]
        for place, (part, day) in enumerate(zip(early[:-1], week.reading_days, strict=False), start=1):
            title = self.say("ics_read", what=self._part(week, part))
            yield Event(day, f"{self.key}/{week.number}/read/{place}", title, evening=title, same_evening=True)
        for making, free in zip(week.makings, week.making_days, strict=True):
            if free is not None:
                yield self._making(making, free)

    def _about(self, week: Week, sitting: Sitting) -> str:
        """What the sitting is named after: its making, else the week's chapters or works, else looking back."""
        making = [self._title(making) for making in week.makings if making.sitting == week.sittings.index(sitting)]
        named = making or [str(c.title) for c in week.chapters] or [str(work.title) for work in week.works]
        return ", ".join(named) or self.say("review" if week.review else "spare")

    def _title(self, making: Making) -> str:
        """A making by its title, and what of it is done if it takes two days."""
        title = self.say("the_book") if making.kind == "fold-book" else making.title
        if making.parts == 1:
            return title
        return f"{title} ({self.say('stage_build' if making.part == 1 else 'stage_test')})"

    def _description(
        self, week: Week, sitting: Sitting, ready: Sequence[tuple[tuple[Person, ...], tuple[Ready, ...]]]
    ) -> str:
        """In the order it is done: what was read beforehand, what is done at the table, whose sheets, what is made."""
        early = [part for part in week.other if part.name in READ_ALOUD] if sitting is week.sittings[0] else []
        evenings = sum(part.name == "read" for part in early)
        said = [self.say("ics_early", what=self._part(week, part)) for part in early]
        said += [self.say("ics_evenings", count=evenings)] if evenings > 1 else []
        table = [part for part in sitting.parts if part.name not in MAKINGS]
        if table:
            minutes = sum(part.minutes for part in table)
            said.append(self.say("ics_table", minutes=minutes, what="; ".join(self._part(week, p) for p in table)))
        if ready:
            kinds = [(names_of(group), self._sheets(needed)) for group, needed in ready]
            said += [self.say("ics_sheets", names=names, sheets=own) for names, own in self._printed(week) or kinds]
        said += [self.say("ics_then", what=self._part(week, part)) for part in sitting.parts if part.name in MAKINGS]
        return "\n".join(dict.fromkeys(filter(None, said)))

    def _part(self, week: Week, part: Part) -> str:
        """A part with its title and minutes; what is read with its pages."""
        if part.name in MAKINGS:
            title = self.say("the_book") if part.name == "fold-book" else part.title
            return self.say("ics_part", name=title, title="", minutes=part.minutes)
        key = (
            f"part_{part.name}"
            if part.name in ("recall", "life", "read", "tell", "look", "review")
            else _kind(part.name)
        )
        pages = next((str(c.pages) for c in week.chapters if str(c.title) == part.title and c.pages), "")
        titled = part.title if part.name in ("read", "tell", "look") else ""
        if part.name == "read" and pages:
            titled = self.say("ics_pages", title=part.title, pages=pages)
        return self.say("ics_part", name=self.say(key), title=titled, minutes=part.minutes)

    def _printed(self, week: Week) -> list[tuple[str, str]]:
        """Each child with its sheets by the number at their foot and the printed title, those of makings left out."""
        said = []
        for person in self.persons:
            own = [sheet for sheet in sheets_of_week(person, week, self.runs) if sheet.kind not in MAKINGS]
            names = "; ".join(f"{sheet.number or ''} {printed_name(sheet)}".strip() for sheet in own)
            said += [(person.name, names)] if names else []
        return said

    def _sheets(self, needed: Sequence[Ready]) -> str:
        """The sheets of some children whose files are not known, by their kinds, those of makings left out."""
        said = []
        for ready in needed:
            if ready.kind not in MAKINGS:
                about = f" ({', '.join(ready.about)})" if ready.about and ready.kind in _ABOUT_WORKS else ""
                said.append(f"{self.say(_kind(ready.kind))}{about}")
        return ", ".join(said)

    def _evening(self, week: Week, sitting: Sitting, title: str,
                 ready: Sequence[tuple[tuple[Person, ...], tuple[Ready, ...]]]) -> str:  # fmt: skip
        """What to see to on the evening before: reading, sheets, things for a making."""
        said = [self.say("ics_tomorrow", title=title)]
        if sitting is week.sittings[0]:
            early = [part for part in week.other if part.name in READ_ALOUD]
            read = [part for part in early if part.name == "read"]
            # where there are more chapters, those before the last have evenings of their own
            early = [part for part in early if part.name != "read" or part is read[-1]]
            said += [self.say("ics_early", what=self._part(week, part)) for part in early]
        kinds = dict.fromkeys(r.kind for _, needed in ready for r in needed if r.kind not in MAKINGS)
        printed = [f"{name}: {sheets}" for name, sheets in self._printed(week)] if ready else []
        if printed or kinds:
            things = printed or [", ".join(self.say(_kind(kind)) for kind in kinds)]
            said += [self.say("ics_ready", things=one) for one in things]
        for making in week.makings:
            if making.sitting is not None and week.sittings[making.sitting] is sitting:
                said += self._needs(making)
        return "\n".join(said)

    def _making(self, making: Making, day: date) -> Event:
        """A making on a day of its own: any free day of the week will do."""
        title = self.say("ics_make", title=self._title(making), minutes=making.minutes)
        text = [self.say("ics_make_when"), *self._needs(making)]
        key = f"{self.key}/{making.kind}/{making.number}/{making.part}"
        return Event(
            day, key, title, "\n".join(text), "\n".join([self.say("ics_tomorrow", title=title), *self._needs(making)])
        )

    def _needs(self, making: Making) -> list[str]:
        """What to have ready for a making."""
        makings: dict[str, Sequence[Challenge | Model]] = {
            "challenge": self.study.challenges,
            "model": self.study.models,
        }
        if making.kind not in makings:
            return [self.say("ics_ready", things=self.say("ics_need_book"))]
        things = [str(material.item) for material in makings[making.kind][making.number].materials]
        things += [self.say("ics_need_model")] if making.kind == "model" else []
        return [self.say("ics_ready", things=", ".join(dict.fromkeys(things)))] if things else []


def _kind(kind: str) -> str:
    return f"kind_{kind.replace('-', '_')}"


def as_icalendar(events: Iterable[Event], name: str, stamp: date) -> str:
    """Events as one VCALENDAR: lines end in CRLF, none is over 75 octets; `stamp` is every DTSTAMP (midnight UTC)."""
    lines = [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:-//packgen//term plan//EN",
        "CALSCALE:GREGORIAN",
        f"X-WR-CALNAME:{escaped(name)}",
    ]
    for event in events:
        lines += [
            "BEGIN:VEVENT",
            f"UID:{uuid.uuid5(_OURS, event.key)}",
            f"DTSTAMP:{_basic(stamp)}T000000Z",
            f"DTSTART;VALUE=DATE:{_basic(event.day)}",
            # DTEND is the first day after the event (RFC 5545, section 3.6.1)
            f"DTEND;VALUE=DATE:{_basic(event.day + timedelta(days=1))}",
            f"SUMMARY:{escaped(event.summary)}",
            *([f"DESCRIPTION:{escaped(event.description)}"] if event.description else []),
            "TRANSP:TRANSPARENT",
            *_alarm(event),
            "END:VEVENT",
        ]
    return "".join(f"{folded(line)}\r\n" for line in [*lines, "END:VCALENDAR"])


def _alarm(event: Event) -> list[str]:
    """An alarm the evening before (RFC 5545, section 3.6.6): so long before the day begins."""
    if not event.evening:
        return []
    said = f"DESCRIPTION:{escaped(event.evening)}"
    return [
        "BEGIN:VALARM",
        "ACTION:DISPLAY",
        said,
        f"TRIGGER:{f'PT{24 - EVENING}H' if event.same_evening else f'-PT{EVENING}H'}",
        "END:VALARM",
    ]


def _basic(day: date) -> str:
    return f"{day.year:04}{day.month:02}{day.day:02}"


def escaped(text: str) -> str:
    """Text as a TEXT value (RFC 5545, section 3.3.11): backslash, semicolon, comma and line break are escaped.

    Other control characters may not stand in a calendar and are left out.
    """
    marked = "\n".join(text.splitlines())
    marked = marked.replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,").replace("\n", "\\n")
    return "".join(c for c in marked if c == "\t" or unicodedata.category(c) != "Cc")


def folded(line: str) -> str:
    """A content line cut into lines of at most 75 octets, each further one begun by a space (RFC 5545, section 3.1).

    No character is cut in two.
    """
    lines: list[str] = []
    current, size = "", 0
    for character in line:
        octets = len(character.encode("utf-8"))
        if size + octets > LINE_OCTETS:
            lines.append(current)
            current, size = " ", 1
        current += character
        size += octets
    return "\r\n".join([*lines, current])
