"""The record: which sheet met which goal for which child, week by week, and where the gaps are.

The goals are the family's own; a family that lists none gets packgen's short list for each child's level. Home-school
rules that ask for a log and samples of work (such as Florida Statutes 1002.41) are served by dated lines with titles;
nothing here is legal advice.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from packgen.planning.aims import AT_TABLE, DESIGN, aims_for
from packgen.planning.weeks import TermPlan
from packgen.reading.models import Goal


@dataclass(frozen=True, slots=True)
class SheetGiven:
    """One sheet a child has in its pack. `about` is as in `SheetDue`: a title, the id of a work, or empty.

    `numbers` are those at the foot of its pages, `weeks` those the child uses it in (if not given, those of the plan).
    `designed` is True for a challenge to design something. `done` is the day it was finished and `result` a sentence on
    what came out, once the family has written that down.
    """

    kind: str
    title: str
    about: str = ""
    numbers: tuple[int, ...] = ()
    weeks: tuple[int, ...] = ()
    designed: bool = False
    done: date | None = None
    result: str = ""


@dataclass(frozen=True, slots=True)
class ChildSheets:
    """A child, the level of its recipe, and its sheets in the order of its pack."""

    child: str
    level: str
    sheets: tuple[SheetGiven, ...]


@dataclass(frozen=True, slots=True)
class Entry:
    """A sheet in the record with its week, and the day it belongs to: when done, else the week's first sitting."""

    sheet: SheetGiven
    week: int | None
    day: date | None


@dataclass(frozen=True, slots=True)
class GoalMet:
    """One goal for one child with the entries that meet it, in order of time.

    Without an entry it is a gap, but for a goal that the talk `at_table` meets.
    """

    id: str
    text: str
    spirit: str
    entries: tuple[Entry, ...]
    at_table: bool = False

    @property
    def gap(self) -> bool:
        """True if nothing in this study meets the goal."""
        return not self.entries and not self.at_table

    @property
    def weeks(self) -> tuple[int, ...]:
        """The weeks in which the goal is met, each once."""
        return tuple(sorted({entry.week for entry in self.entries if entry.week is not None}))


@dataclass(frozen=True, slots=True)
class ChildRecord:
    """One child's record: all its sheets in order of time, and each goal with what met it."""

    child: str
    level: str
    entries: tuple[Entry, ...]
    goals: tuple[GoalMet, ...]

    @property
    def gaps(self) -> tuple[GoalMet, ...]:
        """The goals that no sheet of this study meets."""
        return tuple(goal for goal in self.goals if goal.gap)

    def in_week(self, week: int | None) -> tuple[Entry, ...]:
        """The entries of one week; None gives the sheets that belong to no week."""
        return tuple(entry for entry in self.entries if entry.week == week)


@dataclass(frozen=True, slots=True)
class Record:
    """Every child's record. `own_goals` is True if the goals are the family's."""

    children: tuple[ChildRecord, ...]
    own_goals: bool

    @property
    def sheets(self) -> int:
        """How many sheets are recorded, all children together."""
        return sum(len(child.entries) for child in self.children)


def make_record(goals: Sequence[Goal], children: Iterable[ChildSheets], plan: TermPlan) -> Record:
    """The record of all children over the term. Every sheet given is in it exactly once for its child.

    A goal is met by a sheet whose kind stands in `met_by`; case, spaces and a plural `s` do not matter.
    """
    return Record(tuple(_of_child(goals, child, plan) for child in children), bool(goals))


def _of_child(goals: Sequence[Goal], child: ChildSheets, plan: TermPlan) -> ChildRecord:
    entries = tuple(sorted((_entry(sheet, plan) for sheet in child.sheets), key=_when))
    own = [(str(goal.id), str(goal.text), "", tuple(map(str, goal.met_by))) for goal in goals]
    wanted = own or [(aim.id, aim.text, aim.spirit, aim.met_by) for aim in aims_for(child.level)]
    talked = {part.name for week in plan.weeks for part in week.parts} & AT_TABLE
    met = tuple(
        GoalMet(name, text, spirit, tuple(e for e in entries if _meets(e.sheet, met_by)), bool(talked & set(met_by)))
        for name, text, spirit, met_by in wanted
    )
    return ChildRecord(child.child, child.level, entries, met)


def _entry(sheet: SheetGiven, plan: TermPlan) -> Entry:
    own = next((week for week in plan.weeks if week.number in sheet.weeks), None)
    week = own or plan.week_of(sheet.kind, sheet.about)
    planned = week.dates[0] if week and week.dates else None
    return Entry(sheet, week.number if week else None, sheet.done or planned)


def _when(entry: Entry) -> tuple[bool, int]:
    return entry.week is None, entry.week or 0


def kind_key(written: str) -> str:
    """The form in which kinds of sheet are compared: `Fold book`, `fold-books` and `fold_book` are one.

    >>> kind_key("Fold books")
    'fold-book'
    """
    return "-".join(written.casefold().replace("-", " ").replace("_", " ").split()).removesuffix("s")


def _meets(sheet: SheetGiven, met_by: Iterable[str]) -> bool:
    asked = {kind_key(sheet.kind), *([DESIGN] if sheet.designed else [])}
    return bool(asked & {kind_key(kind) for kind in met_by})
