"""What to have ready: the sheets of each child that a week's work is done on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from packgen.planning.people import Person
from packgen.planning.plan import PlanItem, Subject, key_of
from packgen.planning.weeks import SheetDue, Week
from packgen.reading.models import Study


@dataclass(frozen=True, slots=True)
class Ready:
    """A kind of sheet to have ready, and what those of this week are about (titles), if they are not about it all."""

    kind: str
    about: tuple[str, ...] = ()


def subject_title(subject: Subject) -> str:
    """The title of what a sheet is about; empty for the whole study."""
    return "" if isinstance(subject, Study) else str(subject.title)


def subject_key(subject: Subject) -> str:
    """How a plan of weeks names a subject: a work by its id, a making by its title, the study by nothing."""
    return key_of(subject)


def ready_for(person: Person, week: Week) -> tuple[Ready, ...]:
    """The sheets one person needs in a week, in the order of the week; every kind due if the pack is not known.

    A sheet of the whole study (a strip of tellings) is needed in every week that has a part of it.
    """
    found: dict[str, list[str]] = {}
    for due in week.due:
        if due.kind == "words" and not has_words(week, person.level):
            continue
        for title in _matching(person, due):
            found.setdefault(due.kind, [])
            if title and title not in found[due.kind]:
                found[due.kind].append(title)
    return tuple(Ready(kind, tuple(titles)) for kind, titles in found.items())


def _matching(person: Person, due: SheetDue) -> list[str]:
    """What the person's sheets for this are about; none if there is no such sheet in the pack."""
    if not person.items:
        return [due.about]
    own = [item for item in person.items if item.sheet == due.kind]
    if not own:
        return []
    whole = [item for item in own if isinstance(item.subject, Study)]
    if whole:
        return [due.about]
    return [subject_title(item.subject) for item in own if not due.about or subject_key(item.subject) == due.about]


def alike(persons: Sequence[Person], week: Week) -> tuple[tuple[tuple[Person, ...], tuple[Ready, ...]], ...]:
    """The persons in groups that need the same sheets in a week; those who need none are left out."""
    groups: dict[tuple[Ready, ...], list[Person]] = {}
    for person in persons:
        needed = ready_for(person, week)
        if needed:
            groups.setdefault(needed, []).append(person)
    return tuple((tuple(group), needed) for needed, group in groups.items())


def kinds_due(persons: Sequence[Person], week: Week) -> tuple[tuple[str, tuple[Person, ...]], ...]:
    """Each kind of sheet of a week with the persons who have it, in the order of the week."""
    found: dict[str, list[Person]] = {}
    for due in week.due:
        found.setdefault(due.kind, [])
    for person in persons:
        for ready in ready_for(person, week):
            found[ready.kind].append(person)
    return tuple((kind, tuple(group)) for kind, group in found.items() if group)


def weeks_of(item: PlanItem, weeks: Sequence[Week], level: str = "") -> tuple[int, ...]:
    """The numbers of the weeks that ask for a sheet; one about the whole study counts with each of its parts.

    With a level, words count only in weeks that have some for it.
    """
    whole = isinstance(item.subject, Study)
    return tuple(
        week.number
        for week in weeks
        if any(due.kind == item.sheet and (whole or due.about in ("", subject_key(item.subject))) for due in week.due)
        and (item.sheet != "words" or not level or has_words(week, level))
    )


def has_words(week: Week, level: str) -> bool:
    """True if one of the week's words is for the level."""
    return any(not word.levels or level in word.levels for word in week.words)


def in_no_week(person: Person, weeks: Sequence[Week]) -> tuple[PlanItem, ...]:
    """The person's sheets that no week asks for."""
    return tuple(item for item in person.items if not weeks_of(item, weeks, person.level))
