"""The term plan as an iCalendar text that phones and calendar programs read (RFC 5545).

One all-day event a sitting. The text depends on the plan alone: the stamp is the term's first day, and an event keeps
its identifier when the plan is made again, so that a calendar moves it instead of showing it twice.
"""

from __future__ import annotations

import unicodedata
import uuid
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from packgen.planning.weeks import Sitting, TermPlan, Week
from packgen.reading.models import Family, Study

MEDIA_TYPE = "text/calendar"
LINE_OCTETS = 75
_OURS = uuid.uuid5(uuid.NAMESPACE_DNS, "term-plan.packgen.invalid")
_SAID = {
    "recall": "Recall last week", "life": "Tell the life", "read": "Read", "tell": "Tell back", "look": "Look at",
    "review": "Look back over the study", "biography": "The life sheet", "timeline": "The timeline",
    "telling": "Draw or write", "picture-study": "The picture sheet", "words": "The words",
    "enlarging-grid": "The enlarging grid", "finish-the-picture": "Finish the picture", "challenge": "Challenge",
    "model": "Model", "fold-book": "Make the book", "colour-by-number": "Colour by number",
    "look-closer": "Look closer", "matching-game": "The matching game", "where-in-the-world": "The map",
}  # fmt: skip
_TITLED = frozenset({"read", "tell", "look", "challenge", "model"})


@dataclass(frozen=True, slots=True)
class Event:
    """One all-day event. `key` makes its identifier: the same key, the same event in a calendar."""

    day: date
    key: str
    summary: str
    description: str = ""


def calendar_text(study: Study, family: Family | None, plan: TermPlan) -> str:
    """The whole calendar, ready to be written as UTF-8; empty if the plan has no dates: it needs one event."""
    events = events_of(study, family, plan)
    if not events:
        return ""
    term = family.term if family else None
    return as_icalendar(events, str(study.study), term.starts if term else events[0].day)


def events_of(study: Study, family: Family | None, plan: TermPlan) -> tuple[Event, ...]:
    """An event for each sitting with a date, in order of time."""
    whose = f"{family.family}/{family.term.starts.year}" if family and family.term else ""
    return tuple(
        Event(
            sitting.day,
            f"{study.study}/{whose}/{week.number}/{place}",
            f"{study.study}, week {week.number}: {_about(week, sitting)}",
            _description(week, sitting),
        )
        for week in plan.weeks
        for place, sitting in enumerate(week.sittings, start=1)
        if sitting.day is not None
    )


def _about(week: Week, sitting: Sitting) -> str:
    """What the sitting is named after: its making, else the week's chapters or works, else looking back."""
    making = [making.title for making in week.makings if making.sitting == week.sittings.index(sitting)]
    named = making or [str(c.title) for c in week.chapters] or [str(work.title) for work in week.works]
    if named:
        return ", ".join(named)
    return "looking back" if week.review else "time to catch up"


def _description(week: Week, sitting: Sitting) -> str:
    parts = [_said(part.name, part.title, part.minutes) for part in sitting.parts]
    later = [_said(part.name, part.title, part.minutes) for part in week.other]
    return "\n".join([*parts, *(["At another time this week:", *later] if later else [])])


def _said(name: str, title: str, minutes: int) -> str:
    words = _SAID.get(name, name.replace("-", " ").capitalize())
    about = f": {title}" if title and name in _TITLED else ""
    return f"{words}{about} ({minutes} min)"


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
            "END:VEVENT",
        ]
    return "".join(f"{folded(line)}\r\n" for line in [*lines, "END:VCALENDAR"])


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
