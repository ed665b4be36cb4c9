"""The children as the parent's pages speak of them: a name each, a short mark, a level, and what they work on."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from packgen.planning.plan import PackPlan, PlanItem
from packgen.reading.models import LEVELS, Family

PARENT = "parent"
YOUNG = ("first", "younger")


@dataclass(frozen=True, slots=True)
class Person:
    """A child, or a pack nobody is named for. `mark` is one or more letters that no other person has.

    `items` is empty if the pack is not built; `age` is None if the family did not say.
    """

    name: str
    mark: str
    level: str
    age: int | None = None
    glue: bool = True
    items: tuple[PlanItem, ...] = ()
    folder: str = ""

    @property
    def kinds(self) -> frozenset[str]:
        """The kinds of sheet in the pack."""
        return frozenset(item.sheet for item in self.items)

    @property
    def young(self) -> bool:
        """True for the levels whose sheets are drawn, glued and told more than written."""
        return self.level in YOUNG


def people(family: Family, packs: Sequence[PackPlan]) -> tuple[Person, ...]:
    """Everybody a pack is for, in the family's order; the family's children if no pack of theirs is built.

    A pack without a name goes by the name of its recipe. Names that come twice are numbered.
    """
    found = [_of_pack(pack) for pack in packs if pack.recipe.level != PARENT]
    if not found:
        found = [
            Person(str(child.name) or str(child.pack).capitalize(), "", _level(str(child.pack)), child.age, child.glue)
            for child in family.children
        ]
    return _marked(_numbered(found))


def _of_pack(pack: PackPlan) -> Person:
    child = pack.child
    name = str(child.name) if child else ""
    return Person(
        name or str(pack.recipe.pack).capitalize(),
        "",
        pack.recipe.level,
        child.age if child else None,
        child.glue if child else True,
        pack.items,
        pack.folder,
    )


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
    """The persons with the fewest first letters of their names that tell them apart, or else a number."""
    names = [person.name for person in found]
    for letters in range(1, 4):
        marks = [name[:letters].strip() for name in names]
        if len({mark.casefold() for mark in marks}) == len(marks):
            return tuple(replace(p, mark=mark) for p, mark in zip(found, marks, strict=True))
    return tuple(replace(person, mark=str(number)) for number, person in enumerate(found, 1))


def by_level(found: Iterable[Person]) -> tuple[tuple[str, tuple[Person, ...]], ...]:
    """The levels that somebody has, the youngest first, each with its persons."""
    persons = tuple(found)
    levels = [level for level in LEVELS if any(person.level == level for person in persons)]
    return tuple((level, tuple(person for person in persons if person.level == level)) for level in levels)


def names_of(found: Iterable[Person]) -> str:
    """The persons' names as a list: `Juno, Bram and Wilf`."""
    names = [person.name for person in found]
    return f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else "".join(names)
