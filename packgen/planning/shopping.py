"""The shopping list: what all challenges and models need together, for all children, with something to spare.

Amounts in a study are per child, or for everybody if marked `shared`. The youngest (level `first`) work beside the
others with what these have; they have tools of their own, and materials only if no older child makes the thing. What is
used up is added up; what is used again (scissors, a stopwatch) is needed once, as much as the most demanding making
takes. Card that comes printed, with the template on it, is not bought a second time. A tenth more is allowed for things
used up, from five of a thing on, and paper gets a twentieth, two sheets at least (common practice).
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date

from packgen.planning import household
from packgen.planning.amounts import Amount, added, amount, largest, shown, singular, to_buy
from packgen.planning.household import Tool
from packgen.planning.load import BESIDE
from packgen.planning.print_plan import PaperCount
from packgen.planning.weeks import TermPlan
from packgen.reading.models import Challenge, Child, Material, Model, Study

SPARE = 0.1
SPARE_FROM = 5  # of things that are counted
PAPER_SPARE = 0.05
LEAST_PAPER_SPARE = 2
SMALL_PARTS_UNDER = 3  # small parts are dangerous under 36 months (16 CFR 1501.2)


@dataclass(frozen=True, slots=True)
class Maker:
    """A child and the kinds of sheet it has: it takes part in challenges or models if it has sheets for them.

    `printed` has, for the title of a challenge or model, how many sheets of card come out of the printer for it.
    """

    name: str
    kinds: frozenset[str]
    age: int | None = None
    glue: bool = True
    level: str = ""
    printed: tuple[tuple[str, int], ...] = ()


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
    day. `printed` is True if some of it comes out of the printer and is not counted here.
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
    printed: bool = False


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

    `kit` is what every table needs for sheets and models, whether the study names it or not. `beside` are the names of
    the youngest, for whom no materials are counted in some making.
    """

    items: tuple[Item, ...]
    kit: tuple[Tool, ...]
    paper: tuple[PaperItem, ...]
    customary: bool
    notes: tuple[str, ...]
    beside: tuple[str, ...] = ()

    def shown(self, amounts: Iterable[Amount]) -> str:
        """Amounts in words, in the family's units: `1.4 m`, `2 rolls and 3 sheets`."""
        return " and ".join(shown(one, self.customary) for one in amounts)


def maker(child: Child, kinds: Collection[str]) -> Maker:
    """A child as a maker: the kinds of its recipe without those it leaves out."""
    return Maker(str(child.name), frozenset(kinds) - {str(kind) for kind in child.leave_out}, child.age, child.glue)


@dataclass(frozen=True, slots=True)
class Need:
    """What one making takes of a material for all who make it, with a spare as in the shopping list.

    `amounts` is empty if the study gives none, or if all of it comes printed; `printed` is then True.
    """

    material: Material
    amounts: tuple[Amount, ...]
    printed: bool = False


def needs_of(
    study: Study, makers: Sequence[Maker], kind: str, number: int, customary: bool = False
) -> tuple[Need, ...]:
    """What a challenge or model (`number` in the study's own list) takes: the count the shopping list adds up."""
    found = []
    for want in _wanted(study, makers):
        if (want.kind, want.number) == (kind, number):
            total = next(iter(_by_making([want])))
            name = str(want.material.item)
            again = household.is_kept(name)
            amounts = tuple(to_buy(one, 0.0 if again else _spare(name, one), customary) for one in total)
            found.append(Need(want.material, amounts, any(want.printed) and not total))
    return tuple(found)


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
    items = [item for item in items if not (item.printed and not item.total)]
    items.sort(key=lambda item: (item.week is None, item.week or 0, item.name.casefold()))
    kit, items = _kit(study, makers, items)
    beside = dict.fromkeys(makers[place].name for want in wanted for place in want.beside)
    return ShoppingList(
        tuple(items), kit, tuple(map(_paper, paper)), customary, _notes(items, makers), tuple(filter(None, beside))
    )


@dataclass(frozen=True, slots=True)
class _Wanted:
    """A material of one making, and the places in the list of makers of those who take it.

    `beside` are the places of those who work beside them; `printed` has the sheets of card that a maker has printed.
    """

    kind: str
    number: int
    title: str
    material: Material
    takers: tuple[int, ...]
    beside: tuple[int, ...] = ()
    printed: tuple[int, ...] = ()

    @property
    def amount(self) -> tuple[Amount, ...]:
        """The amount for one child, or for all if it is shared; empty if the study gives none."""
        given = self.material.amount
        return () if given is None else (amount(given, str(self.material.unit or "")),)

    def amount_for(self, place: int) -> tuple[Amount, ...]:
        """The amount for the child at that place in the list of makers, without what is printed for it."""
        have = self.printed[self.takers.index(place)] if self.printed else 0
        left = (replace(one, value=one.value - have) for one in self.amount)
        return tuple(one for one in left if one.value > 0 or not have)


def _wanted(study: Study, makers: Sequence[Maker]) -> Iterable[_Wanted]:
    kinds: dict[str, Sequence[Challenge | Model]] = {"challenge": study.challenges, "model": study.models}
    for kind, makings in kinds.items():
        takers = tuple(place for place, maker in enumerate(makers) if kind in maker.kinds)
        for number, making in enumerate(makings):
            for material in making.materials if takers else ():
                yield _of_making(kind, number, making, material, makers, takers)


def _of_making(kind: str, number: int, making: Challenge | Model, material: Material, makers: Sequence[Maker],
               takers: tuple[int, ...]) -> _Wanted:  # fmt: skip
    """A material with those who take it: all for a tool, else without the youngest if there are others."""
    older = tuple(place for place in takers if makers[place].level != BESIDE)
    item, title = str(material.item), str(making.title)
    if older and not household.is_kept(item) and not material.shared:
        own, beside = older, tuple(place for place in takers if place not in older)
    else:
        own, beside = takers, ()
    sheets = tuple(dict(makers[place].printed).get(title, 0) for place in own)
    of_card = household.is_card(item) and singular(str(material.unit or "")) in ("", "sheet") and not material.shared
    return _Wanted(kind, number, title, material, own, beside, sheets if of_card and any(sheets) else ())


def _item(wanted: Sequence[_Wanted], makers: Sequence[Maker], plan: TermPlan, customary: bool) -> Item:
    name = str(wanted[0].material.item)
    again = household.is_kept(name)
    gather = largest if again else added
    each = []
    for place, maker in enumerate(makers):
        own = [w for w in wanted if not w.material.shared and place in w.takers]
        amounts = gather(one for w in own for one in w.amount_for(place))
        if own and (amounts or not any(w.printed for w in own)):
            each.append(Share(maker.name, amounts))
    shared = [w for w in wanted if w.material.shared]
    total = gather(_one_roll([one for making in _by_making(wanted) for one in making], wanted))
    uses = tuple(dict.fromkeys(Use(w.kind, w.title, _week(w, plan)) for w in wanted))
    first = min((use.week for use in uses if use.week is not None), default=None)
    dates = next((week.dates for week in plan.weeks if week.number == first), ())
    return Item(
        name=name,
        shared=gather(_one_roll([one for making in _by_making(shared) for one in making], wanted)),
        each=tuple(each),
        total=total,
        buy=tuple(to_buy(one, 0.0 if again else _spare(name, one), customary) for one in total),
        instead=_instead(name, wanted),
        uses=uses,
        week=first,
        by=dates[0] if dates else None,
        again=again,
        printed=any(w.printed for w in wanted),
    )


def _one_roll(amounts: Sequence[Amount], wanted: Sequence[_Wanted]) -> list[Amount]:
    """The amounts, where of a roll or reel that all share only the most at once counts: it lasts for all makings."""
    own = {one.of for w in wanted if not w.material.shared for one in w.amount}
    lasting = {one.of for one in amounts if household.is_container(one.of)} - own
    return [*largest(one for one in amounts if one.of in lasting), *(one for one in amounts if one.of not in lasting)]


def _spare(name: str, total: Amount) -> float:
    """The share to have more of: none of what is bought whole, of a few things, or of water."""
    few = not total.measured and total.value < SPARE_FROM
    return 0.0 if few or household.is_container(total.of) or household.from_the_tap(name) else SPARE


def _instead(name: str, wanted: Sequence[_Wanted]) -> str:
    """What may stand in for a thing: the study's own words, with the making they are for unless they are for all."""
    own = {w.title: str(w.material.instead) for w in wanted if w.material.instead}
    if not own:
        return household.stand_in(name)
    if len(set(own.values())) == 1 and len(own) == len({w.title for w in wanted}):
        return next(iter(own.values()))
    return "; ".join(f"{words} (for {title})" for title, words in own.items())


def _by_making(wanted: Sequence[_Wanted]) -> Iterable[tuple[Amount, ...]]:
    """What each making takes of an item at once: the shared amount and every child's."""
    makings: dict[tuple[str, int], list[Amount]] = {}
    for w in wanted:
        amounts = w.amount if w.material.shared else [one for place in w.takers for one in w.amount_for(place)]
        makings.setdefault((w.kind, w.number), []).extend(amounts)
    return (added(amounts) for amounts in makings.values())


def _week(wanted: _Wanted, plan: TermPlan) -> int | None:
    made = (w.number for w in plan.weeks for m in w.makings if (m.kind, m.number) == (wanted.kind, wanted.number))
    return next(made, None)


def _paper(count: PaperCount) -> PaperItem:
    spare = max(LEAST_PAPER_SPARE, math.ceil(count.sheets * PAPER_SPARE)) if count.sheets else 0
    return PaperItem(count.stock, count.sheets, count.sheets + spare, count.pages, count.colour_pages)


def _kit(study: Study, makers: Sequence[Maker], items: Sequence[Item]) -> tuple[tuple[Tool, ...], list[Item]]:
    """The standing kit without what the list names anyway, and the list with as many of those as the kit asks for."""
    kinds = {kind for maker in makers for kind in maker.kinds}
    makings: list[Challenge | Model] = [*(study.challenges if "challenge" in kinds else ())]
    makings += study.models if "model" in kinds else ()
    told = " ".join(str(words) for making in makings for words in (*making.steps, *making.caution))
    holes = "model" in kinds and any(not hole.mark_only for model in study.models for hole in model.holes)
    kit = household.kit([maker.kinds for maker in makers], [maker.glue for maker in makers], told, holes)
    left, found = [], list(items)
    for tool in kit:
        same = next((k for k, item in enumerate(found) if singular(item.name) in _kit_words(tool.name)), None)
        if same is None:
            left.append(tool)
        else:
            found[same] = _at_least(found[same], tool.count)
    return tuple(left), found


def _at_least(item: Item, count: int) -> Item:
    """A tool of the list, as many of it as the children need over all their sheets."""
    if not item.again or len(item.total) != 1 or item.total[0].of or item.total[0].value >= count:
        return item
    total = (replace(item.total[0], value=float(count)),)
    return replace(item, total=total, buy=total)


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
