"""The shopping list: what all challenges and models need together, for all children, with something to spare.

Amounts in a study are per child, or for everybody if marked `shared`. What is used up is added up; what is used again
(scissors, a stopwatch) is needed once, as much as the most demanding making takes. A tenth more is allowed for things
used up, and paper gets a twentieth, two sheets at least (common practice).
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date

from packgen.planning import household
from packgen.planning.amounts import Amount, added, amount, largest, shown, singular, to_buy
from packgen.planning.print_plan import PaperCount
from packgen.planning.weeks import TermPlan
from packgen.reading.models import Challenge, Child, Material, Model, Study

SPARE = 0.1
PAPER_SPARE = 0.05
LEAST_PAPER_SPARE = 2
SMALL_PARTS_UNDER = 3  # small parts are dangerous under 36 months (16 CFR 1501.2)


@dataclass(frozen=True, slots=True)
class Maker:
    """A child and the kinds of sheet it has: it takes part in challenges or models if it has sheets for them."""

    name: str
    kinds: frozenset[str]
    age: int | None = None
    glue: bool = True


@dataclass(frozen=True, slots=True)
class Share:
    """What one child uses of an item, over all its makings."""

    child: str
    amounts: tuple[Amount, ...]


@dataclass(frozen=True, slots=True)
class Use:
    """A making that needs an item, and the week it falls in (None if the plan does not have it)."""

    kind: str
    title: str
    week: int | None


@dataclass(frozen=True, slots=True)
class Item:
    """One line of the list. Amounts of unlike kinds (2 m and 1 reel) stand apart.

    `total` is the shared amount and every child's share; of a thing used again it is the most that one making takes.
    `buy` is the total with a spare allowance, in handy amounts. Without any amount in the study, both are empty: some
    of it is needed. `again` is True for a thing that is used again. `week` is the first week it is needed in, `by` the
    day.
    """

    name: str
    shared: tuple[Amount, ...]
    each: tuple[Share, ...]
    total: tuple[Amount, ...]
    buy: tuple[Amount, ...]
    instead: str
    uses: tuple[Use, ...]
    week: int | None
    by: date | None
    again: bool


@dataclass(frozen=True, slots=True)
class PaperItem:
    """Sheets of one stock: as printed, and to buy with spare; colour pages are those to print in colour."""

    stock: str
    sheets: int
    buy: int
    pages: int
    colour_pages: int


@dataclass(frozen=True, slots=True)
class ShoppingList:
    """Items by the week they are needed in, then by name; paper by stock; notes of caution for the parent.

    `kit` is what every table needs for sheets and models, whether the study names it or not.
    """

    items: tuple[Item, ...]
    kit: tuple[str, ...]
    paper: tuple[PaperItem, ...]
    customary: bool
    notes: tuple[str, ...]

    def shown(self, amounts: Iterable[Amount]) -> str:
        """Amounts in words, in the family's units: `1.4 m`, `2 rolls and 3 sheets`."""
        return " and ".join(shown(one, self.customary) for one in amounts)


def maker(child: Child, kinds: Collection[str]) -> Maker:
    """A child as a maker: the kinds of its recipe without those it leaves out."""
    return Maker(str(child.name), frozenset(kinds) - {str(kind) for kind in child.leave_out}, child.age, child.glue)


def shopping_list(
    study: Study,
    makers: Sequence[Maker],
    plan: TermPlan,
    paper: Iterable[PaperCount] = (),
    customary: bool = False,
) -> ShoppingList:
    """All materials of the study's challenges and models for these children, with the paper of the real print runs."""
    wanted = tuple(_wanted(study, makers))
    names = dict.fromkeys(singular(want.material.item) for want in wanted)
    items = [_item([w for w in wanted if singular(w.material.item) == name], makers, plan, customary) for name in names]
    items.sort(key=lambda item: (item.week is None, item.week or 0, item.name.casefold()))
    return ShoppingList(tuple(items), _kit(makers, names), tuple(map(_paper, paper)), customary, _notes(items, makers))


@dataclass(frozen=True, slots=True)
class _Wanted:
    """A material of one making, and the places in the list of makers of those who take part in it."""

    kind: str
    number: int
    title: str
    material: Material
    takers: tuple[int, ...]

    @property
    def amount(self) -> tuple[Amount, ...]:
        """The amount for one child, or for all if it is shared; empty if the study gives none."""
        given = self.material.amount
        return () if given is None else (amount(given, str(self.material.unit or "")),)


def _wanted(study: Study, makers: Sequence[Maker]) -> Iterable[_Wanted]:
    kinds: dict[str, Sequence[Challenge | Model]] = {"challenge": study.challenges, "model": study.models}
    for kind, makings in kinds.items():
        takers = tuple(place for place, maker in enumerate(makers) if kind in maker.kinds)
        for number, making in enumerate(makings):
            for material in making.materials if takers else ():
                yield _Wanted(kind, number, str(making.title), material, takers)


def _item(wanted: Sequence[_Wanted], makers: Sequence[Maker], plan: TermPlan, customary: bool) -> Item:
    name = str(wanted[0].material.item)
    again = household.is_kept(name)
    gather = largest if again else added
    each = []
    for place, maker in enumerate(makers):
        own = [w for w in wanted if not w.material.shared and place in w.takers]
        if own:
            each.append(Share(maker.name, gather(one for w in own for one in w.amount)))
    total = gather(one for making in _by_making(wanted) for one in making)
    uses = tuple(dict.fromkeys(Use(w.kind, w.title, _week(w, plan)) for w in wanted))
    first = min((use.week for use in uses if use.week is not None), default=None)
    dates = next((week.dates for week in plan.weeks if week.number == first), ())
    return Item(
        name=name,
        shared=gather(one for w in wanted if w.material.shared for one in w.amount),
        each=tuple(each),
        total=total,
        buy=tuple(to_buy(one, 0.0 if again or household.is_container(one.of) else SPARE, customary) for one in total),
        instead=next((str(w.material.instead) for w in wanted if w.material.instead), household.stand_in(name)),
        uses=uses,
        week=first,
        by=dates[0] if dates else None,
        again=again,
    )


def _by_making(wanted: Sequence[_Wanted]) -> Iterable[tuple[Amount, ...]]:
    """What each making takes of an item at once: the shared amount and every child's."""
    makings: dict[tuple[str, int], list[Amount]] = {}
    for w in wanted:
        times = 1 if w.material.shared else len(w.takers)
        makings.setdefault((w.kind, w.number), []).extend([*w.amount] * times)
    return (added(amounts) for amounts in makings.values())


def _week(wanted: _Wanted, plan: TermPlan) -> int | None:
    made = (w.number for w in plan.weeks for m in w.makings if (m.kind, m.number) == (wanted.kind, wanted.number))
    return next(made, None)


def _paper(count: PaperCount) -> PaperItem:
    spare = max(LEAST_PAPER_SPARE, math.ceil(count.sheets * PAPER_SPARE)) if count.sheets else 0
    return PaperItem(count.stock, count.sheets, count.sheets + spare, count.pages, count.colour_pages)


def _kit(makers: Sequence[Maker], listed: Collection[str]) -> tuple[str, ...]:
    """The standing kit for the kinds of sheet these children have, without what the list names anyway."""
    kinds = {kind for maker in makers for kind in maker.kinds}
    kit = household.kit(kinds, any(maker.glue for maker in makers), not all(maker.glue for maker in makers))
    return tuple(name for name in kit if not _kit_words(name) & set(listed))


def _kit_words(name: str) -> set[str]:
    """What a thing of the kit may be called on the list: `a ruler` is a ruler, `scissors with blunt ends` scissors."""
    plain = name.split(" with ")[0].split(",")[0]
    return {singular(word.removeprefix("an ").removeprefix("a ")) for word in plain.split(" or ")}


def _notes(items: Sequence[Item], makers: Sequence[Maker]) -> tuple[str, ...]:
    small = [item.name for item in items if household.is_small(item.name)]
    youngest = [maker.name for maker in makers if maker.age is not None and maker.age < SMALL_PARTS_UNDER]
    notes: list[str] = []
    if small and youngest:
        notes.append(f"Keep these small things away from {', '.join(youngest)}: {', '.join(small)}.")
    if any(singular(item.name).endswith(("magnet", "button cell", "battery")) for item in items):
        notes.append("Magnets and button cells are dangerous if swallowed: count them out and count them back in.")
    return tuple(notes)


def with_paper(found: ShoppingList, paper: Iterable[PaperCount]) -> ShoppingList:
    """The same list with the paper of the print runs, for when these are known only later."""
    return replace(found, paper=tuple(map(_paper, paper)))
