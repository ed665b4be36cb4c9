"""The children as the parent's pages speak of them: a name each, a short mark, a level, and what they work on."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace

from packgen.planning.plan import PackPlan, PlanItem, key_of
from packgen.reading.models import LEVELS, Child, Family

PARENT = "parent"
YOUNG = ("first", "younger")
LONGEST_MARK = 5

MOST_NAMED = 24
"""Children the parent's pages speak of one by one; of more, those who have the same sheets are spoken of together."""


@dataclass(frozen=True, slots=True)
class Person:
    """A child, or a pack nobody is named for. `mark` is one or more letters that no other person has.

    `items` is empty if the pack is not built; `age` is None if the family did not say; `named` is False if the name is
    only what the pack is called.
    """

    name: str
    mark: str
    level: str
    age: int | None = None
    glue: bool = True
    items: tuple[PlanItem, ...] = ()
    folder: str = ""
    named: bool = True

    def __hash__(self) -> int:
        return hash((self.name, self.mark, self.folder))  # enough, and does not go through all that is in the pack

    @property
    def kinds(self) -> frozenset[str]:
        """The kinds of sheet in the pack."""
        return frozenset(item.sheet for item in self.items)

    @property
    def young(self) -> bool:
        """True for the levels whose sheets are drawn, glued and told more than written."""
        return self.level in YOUNG


def people(
    family: Family, packs: Sequence[PackPlan], called: Callable[[str], str] = str.capitalize
) -> tuple[Person, ...]:
    """Everybody a pack is for, in the family's order; the family's children if no pack of theirs is built.

    A child without a name goes by what `called` makes of the name of its recipe. Names that come twice are numbered.
    """
    found = [_of_pack(pack, called) for pack in packs if pack.recipe.level != PARENT]
    if not found:
        found = [_of_child(child, called) for child in family.children]
    return _marked(_numbered(found))


def _of_pack(pack: PackPlan, called: Callable[[str], str]) -> Person:
    known = _of_child(pack.child, called) if pack.child else Person(called(str(pack.recipe.pack)), "", "", named=False)
    return replace(known, level=pack.recipe.level, items=pack.items, folder=pack.folder)


def _of_child(child: Child, called: Callable[[str], str]) -> Person:
    name = str(child.name).strip()
    pack = str(child.pack)
    return Person(name or called(pack), "", _level(pack), child.age, child.glue, named=bool(name))


def _level(pack: str) -> str:
    """The level of a pack that is not at hand, from its name."""
    return pack if pack in LEVELS else "younger"


def _numbered(found: Sequence[Person]) -> list[Person]:
    names = [person.name for person in found]
    numbered: list[Person] = []
    for place, person in enumerate(found):
        twice = names.count(person.name) > 1
        number = names[: place + 1].count(person.name)
        numbered.append(replace(person, name=f"{person.name} {number}") if twice else person)
    return numbered


def _marked(found: Sequence[Person]) -> tuple[Person, ...]:
    """Each person with the fewest first letters that nobody else's name begins with, or else all with numbers."""
    marks = [_mark(person.name, [other.name for other in found if other is not person]) for person in found]
    if len({mark.casefold() for mark in marks}) < len(marks) or max(map(len, marks), default=0) > LONGEST_MARK:
        marks = [str(number) for number in range(1, len(found) + 1)]
    return tuple(replace(person, mark=mark) for person, mark in zip(found, marks, strict=True))


def _mark(name: str, others: Sequence[str]) -> str:
    """The shortest beginning of a name that no other has; all of it if another begins with it."""
    for letters in range(1, len(name)):
        begin = name[:letters].casefold()
        if not name[:letters].endswith(" ") and not any(other.casefold().startswith(begin) for other in others):
            return name[:letters]
    return name


def in_groups(found: Sequence[Person], called: Callable[[str, int], str]) -> tuple[Person, ...]:
    """One person to speak of for all who have a level and the same sheets, if there are more than can be named.

    `called` makes its name of the level and of how many there are. Its folder and age are those of the first.
    """
    if len(found) <= MOST_NAMED:
        return tuple(found)
    groups: dict[tuple[object, ...], list[Person]] = {}
    for person in found:
        sheets = tuple((item.sheet, key_of(item.subject)) for item in person.items)
        groups.setdefault((person.level, person.glue, sheets), []).append(person)
    spoken = [
        replace(group[0], name=called(group[0].level, len(group)), age=None, named=False) for group in groups.values()
    ]
    return _marked(_numbered(spoken))


def by_level(found: Iterable[Person]) -> tuple[tuple[str, tuple[Person, ...]], ...]:
    """The levels that somebody has, the youngest first, each with its persons."""
    persons = tuple(found)
    levels = [level for level in LEVELS if any(person.level == level for person in persons)]
    return tuple((level, tuple(person for person in persons if person.level == level)) for level in levels)


def names_of(found: Iterable[Person]) -> str:
    """The persons' names as a list: `Juno, Bram and Wilf`."""
    names = [person.name for person in found]
    return f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else "".join(names)
