"""All packs of a plan made: the children's by many hands, then the parent's, which count what the others print."""

from __future__ import annotations

from collections.abc import Callable

from packgen.hands import hands, make_all
from packgen.making import Made, Sink, alike, is_parents, make
from packgen.workshop import Order, Workshop

Progress = Callable[[str, int, int], None]


def all_made(order: Order, shop: Workshop, sink: Sink | None, jobs: int | None,
             progress: Progress | None) -> tuple[Made, ...]:  # fmt: skip
    """Every pack made, in the plan's order: the children's, then the parent's, which count the runs of the others.

    Without a sink nothing is written; then children alike in all but their names are laid out once.
    """
    bar = _Bar(progress, sum(len(pack.items) for pack in shop.packs))
    children = [k for k, pack in enumerate(shop.packs) if not is_parents(pack)]
    model = {place: place for place in children} if sink else alike(shop, children)
    places = sorted(set(model.values()))
    made: dict[int, Made] = {}
    for place, one in make_all(order, shop, places, sink, hands(jobs, len(places)), bar.sheet):
        made[place] = one
        bar.pack_done(sum(len(shop.packs[k].items) for k in made))
    made |= {place: made[one].for_pack(shop.packs[place]) for place, one in model.items() if place != one}
    runs = tuple(run for _, one in sorted(made.items(), key=lambda pair: pair[0]) for run in one.runs)
    for place, pack in enumerate(shop.packs):
        if place not in made:
            made[place] = make(shop, pack, runs, sink, bar.sheet)
    bar.pack_done(bar.of)
    return tuple(made[k] for k in range(len(shop.packs)))


class _Bar:
    """How far the work is, counted in sheets."""

    def __init__(self, progress: Progress | None, of: int) -> None:
        self.progress, self.done, self.of = progress, 0, of

    def sheet(self, words: str) -> None:
        """A sheet is begun."""
        if self.progress:
            self.progress(words, self.done, self.of)
        self.done = min(self.done + 1, self.of)

    def pack_done(self, done: int) -> None:
        """So many sheets are done."""
        self.done = done
        if self.progress:
            self.progress("", done, self.of)
