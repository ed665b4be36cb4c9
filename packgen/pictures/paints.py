"""Which paints a picture is painted with, and which of them each of its things gets."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from packgen.pictures.colours import Colour, apart, main_colours, nearest_colour

_TOLD_APART = 0.3  # of `apart`: paints nearer than this are hard to tell apart in a key
_BARELY = 0.18  # and these too, but two things beside each other are told by it
_SPOT = 0.004  # of the picture: a thing smaller than this has no paint of its own
_BESIDE = 3.0  # how much farther apart things count that lie beside each other
_SMALL = 0.4  # how much the size of the smaller counts: a small thing rather takes a paint not quite its own


def paints_for(colours: list[Colour], weights: list[float], count: int, least: float = _TOLD_APART) -> list[Colour]:
    """At most that many paints for the colours, the lightest first, each told from the others at a glance."""
    while True:
        paints = main_colours(colours, weights, count)
        near = min((apart(a, b) for k, a in enumerate(paints) for b in paints[:k]), default=least)
        if near >= least or len(paints) <= 2:
            return sorted(paints, key=lambda c: (-_light(c), c))
        count = len(paints) - 1


def painted_things(colours: list[Colour], sizes: list[float], beside: Mapping[int, Iterable[int]],
                   count: int) -> tuple[list[int], list[Colour]]:  # fmt: skip
    """The paint of each thing, and the paints, at most so many, the lightest first.

    Things are given one paint two groups by two, those most alike and smallest first, those that lie beside each
    other last. Small ones take the nearest of the paints of the others.
    """
    small = _SPOT * sum(sizes)
    groups = {k: [k] for k in range(len(colours)) if sizes[k] >= small}
    means, weights = dict(enumerate(colours)), {k: max(1.0, size) ** 0.7 for k, size in enumerate(sizes)}
    near = {k: set(beside.get(k, ())) & set(groups) for k in groups}
    while len(groups) > 1:
        far = {(a, b): apart(means[a], means[b]) for a in groups for b in groups if a < b}
        if len(groups) <= count and all(far[pair] >= _told(pair, near) for pair in far):
            break
        pairs = far if len(groups) > count else {pair: d for pair, d in far.items() if d < _told(pair, near)}

        def cost(pair: tuple[int, int]) -> tuple[float, tuple[int, int]]:
            least = min(weights[k] for k in pair) ** _SMALL
            return pairs[pair] * least * (_BESIDE if pair[1] in near[pair[0]] else 1.0), pair  # noqa: B023

        a, b = min(pairs, key=cost)
        whole = weights[a] + weights[b]
        means[a] = _mixed(means[a], weights[a] / whole, means[b])
        weights[a] = whole
        groups[a] += groups.pop(b)
        near[a] |= near.pop(b)
        near = {k: {a if other == b else other for other in others} - {k} for k, others in near.items()}
    order = sorted(groups, key=lambda k: (-_light(means[k]), means[k]))
    paint = {thing: index for index, k in enumerate(order) for thing in groups[k]}
    paints = [means[k] for k in order]
    return [paint[k] if k in paint else nearest_colour(colours[k], paints) for k in range(len(colours))], paints


def _told(pair: tuple[int, int], near: Mapping[int, set[int]]) -> float:
    """How far apart two paints are to be: less if else two things beside each other would have one."""
    return _BARELY if pair[1] in near[pair[0]] else _TOLD_APART


def _mixed(one: Colour, share: float, other: Colour) -> Colour:
    red, green, blue = (a * share + b * (1 - share) for a, b in zip(one, other, strict=True))
    return red, green, blue


def _light(colour: Colour) -> float:
    return 2 * colour[0] + 3 * colour[1] + colour[2]
