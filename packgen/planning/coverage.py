"""Which goal is met by whom in which week, and by whom in none: the record's table, week by week.

A sheet of the whole study, such as a strip of tellings, counts in every week that has a part of it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from packgen.planning.aims import AT_TABLE, DESIGN, aims_for
from packgen.planning.challenges import job_of
from packgen.planning.people import Person, by_level
from packgen.planning.ready import in_no_week, ready_for, subject_title
from packgen.planning.record import kind_key
from packgen.planning.weeks import TermPlan, Week
from packgen.reading.models import Challenge, Goal


@dataclass(frozen=True, slots=True)
class Covered:
    """One goal: `weeks` has (week, persons who meet it then); `gaps` are the persons who meet it in none.

    `later` are persons with a sheet for it that no week asks for. `spirit` names a framework, if the goal is packgen's.
    """

    text: str
    spirit: str
    weeks: tuple[tuple[int, tuple[Person, ...]], ...]
    later: tuple[Person, ...]
    gaps: tuple[Person, ...]

    def in_week(self, number: int) -> tuple[Person, ...]:
        """Those who meet the goal in a week."""
        return next((persons for week, persons in self.weeks if week == number), ())


@dataclass(frozen=True, slots=True)
class Coverage:
    """The goals that hold for some persons. `level` is empty if they are the family's own and hold for everybody."""

    level: str
    persons: tuple[Person, ...]
    goals: tuple[Covered, ...]


def coverage(goals: Sequence[Goal], persons: Sequence[Person], term: TermPlan) -> tuple[Coverage, ...]:
    """The family's own goals for everybody, or else packgen's aims for each level that somebody has."""
    everybody = tuple(persons)
    if goals:
        own = tuple(_covered(str(goal.text), "", goal.met_by, everybody, term) for goal in goals)
        return (Coverage("", everybody, own),)
    found = []
    for level, group in by_level(everybody):
        aims = tuple(_covered(aim.text, aim.spirit, aim.met_by, group, term) for aim in aims_for(level))
        found.append(Coverage(level, group, aims))
    return tuple(found)


def _covered(text: str, spirit: str, met_by: Iterable[str], persons: Sequence[Person], term: TermPlan) -> Covered:
    wanted = {kind_key(kind) for kind in met_by}
    weeks = []
    for week in term.weeks:
        meeting = tuple(person for person in persons if wanted & asked_in(person, week))
        if meeting:
            weeks.append((week.number, meeting))
    met = {person for _, meeting in weeks for person in meeting}
    loose = {p for p in persons if any(kind_key(item.sheet) in wanted for item in in_no_week(p, term.weeks))}
    later = tuple(person for person in persons if person in loose - met)
    gaps = tuple(person for person in persons if person not in met | loose)
    return Covered(text, spirit, tuple(weeks), later, gaps)


def asked_in(person: Person, week: Week) -> frozenset[str]:
    """What a week asks of a person, as keys: kinds of its sheets, DESIGN for a thing to design, the talk at table."""
    found = {part.name for part in week.parts} & AT_TABLE
    for ready in ready_for(person, week):
        found.add(kind_key(ready.kind))
        if ready.kind == "challenge":
            made = [item.subject for item in person.items if subject_title(item.subject) in ready.about]
            designed = [one for one in made if isinstance(one, Challenge) and job_of(one) == "design"]
            found |= {DESIGN} if designed or not person.items else set()
    return frozenset(found)


def runs_of(numbers: Sequence[int]) -> str:
    """Numbers with neighbours drawn together.

    >>> runs_of([1, 2, 3, 5, 8, 9])
    '1–3, 5, 8, 9'
    """
    runs: list[list[int]] = []
    for number in sorted(set(numbers)):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(f"{run[0]}–{run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs)
