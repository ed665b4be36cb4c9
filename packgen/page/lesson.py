"""What a week's page of the guide is made from, and how long its parts take in words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from packgen.page.desk import Desk
from packgen.planning.days import WEEKDAYS
from packgen.planning.people import Person
from packgen.planning.weeks import Week

TALKED = ("recall", "life", "read", "tell", "look", "review")


@dataclass(frozen=True, slots=True)
class Lesson:
    """A week for these persons. `close` sets it with small pictures; `life_page` is where the life is told."""

    desk: Desk
    week: Week
    persons: tuple[Person, ...]
    close: bool = False
    life_page: str = ""

    def turned(self, key: str, turn: int = 0, **values: object) -> str:
        """One of a wording's lines, another each week."""
        lines = self.desk.say_lines(key, **values)
        return lines[(self.week.number - 1 + turn) % len(lines)]

    def at_table(self, name: str) -> bool:
        """True if a part of that name is done in a sitting."""
        return any(part.name == name for sitting in self.week.sittings for part in sitting.parts)

    def minutes(self, names: Iterable[str]) -> tuple[str, ...]:
        """How long parts take together, for the notes of a step; nothing on when, which the page's headings say."""
        wanted = frozenset(names)
        found = [(s, part) for s in self.week.sittings for part in s.parts if part.name in wanted]
        total = sum(part.minutes for _, part in found)
        total += sum(part.minutes for part in self.week.other if part.name in wanted)
        said = [self.desk.say("minutes", minutes=total)] if total else []
        days = dict.fromkeys(sitting.day for sitting, _ in found if sitting.day)
        if len(self.week.sittings) > 1:
            said += [WEEKDAYS[day.weekday()] for day in days]
        return tuple(said)

    @property
    def sheet_minutes(self) -> int:
        """Minutes the child with most to do has left at its own sheets when the sittings are over."""
        kinds = {making.kind for making in self.week.makings} | set(TALKED)
        held = sum(part.minutes for s in self.week.sittings for part in s.parts if part.name not in kinds)
        return max(0, self.week.sheet_minutes - held)

    @property
    def making_minutes(self) -> int:
        """Minutes of the makings that have no sitting."""
        return sum(making.minutes for making in self.week.makings if making.sitting is None)

    @property
    def before_minutes(self) -> int:
        """Minutes of what is read or told beforehand."""
        return sum(part.minutes for part in self.week.other if part.name in TALKED)
