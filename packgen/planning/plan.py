"""Who gets which sheets: a family, its recipes and a study become one plan a child, and one for the parent."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from packgen.faults import Said
from packgen.planning.load import Holder
from packgen.planning.weeks import SheetDue, TermPlan
from packgen.reading.models import Challenge, Child, Family, Model, Recipe, RecipeSheet, Study, Work

Subject = Study | Work | Challenge | Model

# Sheets that are used all through the term.
_ALL_TERM = frozenset({"telling", "words"})

# The levels in order of age; a missing text at one level is taken from the nearest that has one.
_ORDER = ("first", "younger", "older", "upper")


@dataclass(frozen=True, slots=True)
class PlanItem:
    """One sheet for one child: its kind, what it is about, its options, its week, and how many more copies."""

    sheet: str
    subject: Subject
    options: tuple[tuple[str, object], ...] = ()
    week: int | None = None


@dataclass(frozen=True, slots=True)
class PackPlan:
    """All sheets of one pack. `child` is None for the parent's. `folder` is the pack's folder under the output."""

    folder: str
    recipe: Recipe
    child: Child | None
    items: tuple[PlanItem, ...]


def default_family() -> Family:
    """The family assumed without a family file: one younger and one older child, not named."""
    children = (
        Child(Said(""), None, Said("younger")),
        Child(Said(""), None, Said("older")),
    )
    return Family(Said(""), children)


def life_at(study: Study, level: str) -> Said | None:
    """The life told for a level, or for the nearest level that was written (the simpler one if two are as near)."""
    written = dict(study.life)
    if not written:
        return None
    at = _ORDER.index(level) if level in _ORDER else 2
    return written[min(written, key=lambda name: (abs(_ORDER.index(name) - at), _ORDER.index(name)))]


def subjects(study: Study, per: str) -> tuple[Subject, ...]:
    """What a sheet kind is made for: the whole `study`, each `work` with a picture, each `challenge`, each `model`."""
    if per == "work":
        return tuple(work for work in study.works if work.image)
    if per == "challenge":
        return study.challenges
    if per == "model":
        return study.models
    return (study,)


def _chosen(line: RecipeSheet, found: Sequence[Subject]) -> Sequence[Subject]:
    """The subjects left by the recipe's `only` (an id or a title) and `most` (a count) options."""
    kind, options = str(line.sheet), {str(name): value for name, value in line.options}
    found = [s for s in found if not (isinstance(s, Work) and kind in {str(name) for name in s.leave_out})]
    only = options.get("only")
    if only:
        wanted = {str(w).lower() for w in (only if isinstance(only, tuple) else (only,))}
        found = [s for s in found if {str(getattr(s, "id", "")).lower(), str(getattr(s, "title", "")).lower()} & wanted]
    most = options.get("most")
    return best(kind, found, int(str(most))) if most is not None else found


# Sheets of works begin at different works, so that they do not all show the first; each at the same for all children.
_BEGINS = {"finish-the-picture": 1, "enlarging-grid": 2, "colour-by-number": 3}
_OF_DRAWINGS = frozenset({"colour-by-number", "finish-the-picture", "picture-study"})


def best(kind: str, found: Sequence[Subject], count: int) -> Sequence[Subject]:
    """The `count` subjects that suit a kind of sheet best, in the study's order; of several as good the first ones.

    Works with a drawing are best to study (a chart has none), to colour and to carry on, those with details to look
    closer at. Kinds of sheets take turns at the works. The one place where this is decided.
    """
    works = [subject for subject in found if isinstance(subject, Work)]
    if len(works) < len(found) or not works:
        return found[:count]
    begin = _BEGINS.get(kind, 0) % len(works)
    in_turn = [*works[begin:], *works[:begin]]
    if kind in _OF_DRAWINGS:
        in_turn.sort(key=lambda work: work.drawing is None)
    elif kind == "look-closer":
        in_turn.sort(key=lambda work: not work.details)
    chosen = {work.id for work in in_turn[:count]}
    return [work for work in works if work.id in chosen]


def key_of(subject: Subject) -> str:
    """How a plan of weeks names a subject: a work by its id, a making by its title, the study by nothing."""
    return "" if isinstance(subject, Study) else str(subject.id if isinstance(subject, Work) else subject.title)


def week_of(term: TermPlan, sheet: str, subject: Subject) -> int | None:
    """The week in which a sheet is first used, as the term plan says: the week that everything else names, too."""
    if sheet in _ALL_TERM:
        return None
    week = term.week_of(sheet, key_of(subject))
    return week.number if week else None


def plan_items(study: Study, child: Child | None, recipe: Recipe, kinds: Mapping[str, str],
               only: Sequence[str] = ()) -> tuple[PlanItem, ...]:  # fmt: skip
    """The sheets of a pack, without their weeks. `kinds` gives what each sheet kind is made for; `only` keeps some."""
    leave_out = {str(name) for name in child.leave_out} if child else set()
    items: list[PlanItem] = []
    for line in recipe.sheets:
        kind = str(line.sheet)
        if kind in leave_out or (only and kind not in only):
            continue
        options = tuple((str(name), value) for name, value in line.options)
        items += [PlanItem(kind, subject, options) for subject in _chosen(line, subjects(study, kinds[kind]))]
    return tuple(items)


def holder_of(folder: str, recipe: Recipe, items: Sequence[PlanItem]) -> Holder:
    """A child as the term plan knows it, from the sheets it will have."""
    return Holder(folder, recipe.level, frozenset(SheetDue(item.sheet, key_of(item.subject)) for item in items))


def plan_pack(study: Study, child: Child | None, recipe: Recipe, folder: str, kinds: Mapping[str, str],
              term: TermPlan, only: Sequence[str] = ()) -> PackPlan:  # fmt: skip
    """The plan of one pack, each sheet in the week of the term plan."""
    items = plan_items(study, child, recipe, kinds, only)
    dated = tuple(replace(item, week=week_of(term, item.sheet, item.subject)) for item in items)
    return PackPlan(folder, recipe, child, dated)
