"""Which printed sheets belong to which planned sheet: by their kind, and the title of what they are about."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from packgen.planning.people import Person
from packgen.planning.plan import PlanItem
from packgen.planning.print_plan import NumberedSheet, RunInfo
from packgen.planning.ready import has_words, subject_title
from packgen.planning.weeks import Week


def printed_for(
    items: Sequence[PlanItem], runs: Iterable[RunInfo], folder: str
) -> tuple[tuple[PlanItem, tuple[NumberedSheet, ...]], ...]:
    """The planned sheets of a pack that are in its files, each with its printed sheets in the order of their numbers.

    A sheet about a work or a making is known by the title in its full name; of two titles that fit, the longer counts.
    Where no full name of a kind has a title in it, all of that kind count as printed. All are, if no run is known.
    """
    own = [run for run in runs if run.path.startswith(f"{folder}/")]
    if not own:
        return tuple((item, ()) for item in items)
    kinds = {kind for run in own for kind in run.kinds}
    sheets = {id(sheet): sheet for run in own if run.face != "backs" for sheet in run.sheets}.values()
    found: list[tuple[PlanItem, tuple[NumberedSheet, ...]]] = []
    for kind in dict.fromkeys(item.sheet for item in items):
        same = [item for item in items if item.sheet == kind]
        held = _held(same, [sheet for sheet in sheets if sheet.kind == kind])
        known = any(held)
        found += [(item, own) for item, own in zip(same, held, strict=True) if (own if known else kind in kinds)]
    order = {id(item): place for place, item in enumerate(items)}
    return tuple(sorted(found, key=lambda pair: order[id(pair[0])]))


def _held(items: Sequence[PlanItem], sheets: Sequence[NumberedSheet]) -> list[tuple[NumberedSheet, ...]]:
    """The sheets of each of some planned sheets of one kind."""
    held: list[list[NumberedSheet]] = [[] for _ in items]
    for sheet in sheets:
        fitting = [k for k, item in enumerate(items) if subject_title(item.subject) in sheet.about]
        if fitting:
            held[max(fitting, key=lambda k: len(subject_title(items[k].subject)))].append(sheet)
    return [tuple(sorted(own, key=lambda sheet: sheet.number or 0)) for own in held]


def sheets_of_week(person: Person, week: Week, runs: Iterable[RunInfo]) -> tuple[NumberedSheet, ...]:
    """A person's printed sheets for one week, by number: those that begin in it, and those that are gone on with."""
    own = [run for run in runs if person.folder and run.path.startswith(f"{person.folder}/") and run.face != "backs"]
    found = [sheet for run in own for sheet in run.sheets if _wanted(person, week, sheet)]
    return tuple(sorted(found, key=lambda sheet: (sheet.number is None, sheet.number or 0)))


def _wanted(person: Person, week: Week, sheet: NumberedSheet) -> bool:
    if sheet.week == week.number:
        return True
    if sheet.kind == "telling":
        return bool(week.chapters)
    if sheet.kind == "words":
        return has_words(week, person.level)
    going_on = [making for making in week.makings if making.part > 1 and making.kind == sheet.kind]
    return any(making.title in sheet.about for making in going_on)


def printed_name(sheet: NumberedSheet) -> str:
    """What a sheet is called: the title printed at its head, and what it is about if the title does not say so."""
    about = sheet.about.partition(": ")[2]
    if not about or about in sheet.title or sheet.part:
        return sheet.title
    return f"{sheet.title}{'' if sheet.title.endswith(('?', '!')) else ':'} {about}"


def pages_printed(runs: Iterable[RunInfo], folder: str) -> int:
    """How many printed pages a pack has, all copies together."""
    return sum(run.pages * run.copies for run in runs if run.path.startswith(f"{folder}/"))
