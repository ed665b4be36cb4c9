"""What a making needs in words: each item with its amount, from the same count as the shopping list's."""

from __future__ import annotations

import re
from collections.abc import Sequence

from packgen.page.desk import Desk
from packgen.page.parents import persons as everybody
from packgen.planning.amounts import Amount, amount, shown
from packgen.planning.people import MOST_NAMED, Person
from packgen.planning.print_plan import RunInfo
from packgen.planning.shopping import Maker, needs_of
from packgen.reading.models import Material

# A tool, the words of a step that need it, and the words of a list that have it.
_TOOLS = (
    ("scissors", r"\bscissors\b|\bsnip\b", r"scissors|knife"),
    ("pencil", r"\bpencil\b", r"pencil"),
    ("ruler", r"\bruler\b", r"\bruler|tape measure"),
    ("stopwatch", r"\bthe watch\b|\bstopwatch\b|\btime how long\b", r"watch|timer|phone"),
    ("scales", r"\bweighs?\b", r"scales|balance"),
    ("tape", r"\btape (?:the|it|one|over|foil|them|a|round)\b", r"\b(?:sticky|masking|parcel|clear|wide|duct) \w*"),
    ("punch", r"\bpunch\b", r"punch"),
    ("needle", r"\bneedle\b", r"needle|punch|pricker|\bpin\b"),
)
_MAKINGS = frozenset({"challenge", "model"})


def needed_by_all(desk: Desk, kind: str, number: int, persons: Sequence[Person]) -> tuple[str, ...]:
    """What a challenge or model (`number` in the study's list) takes for all its makers, as on the shopping list.

    The same people are counted, with the same spare. Card that comes printed is left out: it lies in the folder.
    """
    needs = needs_of(desk.study, makers_of(desk, persons), kind, number, _customary(desk))
    listed = tuple(_said(desk, need.material, need.amounts) for need in needs if not need.printed)
    making = desk.study.challenges[number] if kind == "challenge" else desk.study.models[number]
    return (*listed, *_told(desk, " ".join(map(str, (*making.steps, *making.caution))), " ".join(listed)))


def _told(desk: Desk, steps: str, listed: str) -> tuple[str, ...]:
    """The tools that steps and cautions speak of and the list has not."""
    steps, listed = steps.lower(), listed.lower()
    found: list[str] = []
    for key, told, has in _TOOLS:
        if re.search(told, steps) and not re.search(has, " ".join((listed, *found))):
            found.append(desk.say(f"tool_{key}"))
    return tuple(found)


def needed_words(desk: Desk, materials: Sequence[Material], makers: int = 1) -> tuple[str, ...]:
    """The materials with the amounts as the study gives them, for so many makers; what is shared counts once."""
    return tuple(_words(desk, material, 1 if material.shared else max(1, makers)) for material in materials)


def makers_of(desk: Desk, persons: Sequence[Person]) -> tuple[Maker, ...]:
    """The persons as the shopping list counts them; one whose pack is not at hand is taken to make everything."""
    titles = [
        *(("challenge", c.title) for c in desk.study.challenges),
        *(("model", m.title) for m in desk.study.models),
    ]
    found = []
    for person in _each(desk, persons):
        printed = tuple((str(title), _card(desk.runs, person, kind, str(title))) for kind, title in titles)
        own = tuple((title, sheets) for title, sheets in printed if sheets)
        found.append(Maker(person.name, person.kinds or _MAKINGS, person.age, person.glue, person.level, own))
    return tuple(found)


def _each(desk: Desk, persons: Sequence[Person]) -> Sequence[Person]:
    """The children one by one where the pages speak of groups: all of a level that is among the persons."""
    children = everybody(desk)
    if len(children) <= MOST_NAMED:
        return persons
    levels = {person.level for person in persons}
    return [child for child in children if child.level in levels]


def _card(runs: Sequence[RunInfo], person: Person, kind: str, title: str) -> int:
    """How many sheets of card come out of the printer for a person's making."""
    return sum(
        sheet.pages * run.copies
        for run in runs
        if run.path.startswith(f"{person.folder}/") and run.stock == "card" and run.sides == "one-sided"
        for sheet in run.sheets
        if sheet.kind == kind and title in sheet.about
    )


def _customary(desk: Desk) -> bool:
    return desk.family.units == "customary"


def _words(desk: Desk, material: Material, times: int) -> str:
    given = material.amount
    return _said(desk, material, () if given is None else (amount(given * times, str(material.unit or "")),))


def _said(desk: Desk, material: Material, amounts: Sequence[Amount]) -> str:
    """`2 sheets of card` as `card, 2 sheets` would part at the wrong comma, so: `card (2 sheets)`."""
    said = " and ".join(shown(one, _customary(desk)) for one in amounts)
    return f"{material.item} ({said})" if said and said != "1" else str(material.item)
