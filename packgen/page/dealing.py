"""Dealing cards onto the places of a sheet so that cards that belong together do not lie side by side."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random
from zlib import crc32

Cell = tuple[int, int, int]
"""A place for a card: its page, its row and its column."""

_SIDE, _CORNER = 10, 1
"""What it counts when two cards that belong together share a side, and when they touch at a corner only."""
_TRIES = 12


def dealt(cards: Sequence[frozenset[str]], cells: Sequence[Cell]) -> tuple[int, ...]:
    """For each place the number of the card on it: mixed, and as few partners side by side as can be found.

    Cards with a letter in common belong together. The same cards are always dealt the same way.
    """
    random = Random(crc32(repr((cards_text(cards), tuple(cells))).encode()))
    near = _near(cells)
    best, least = list(range(len(cards))), 1 << 30
    for _ in range(_TRIES):
        order = list(range(len(cards)))
        random.shuffle(order)
        cost = _mended(order, cards, near)
        if cost < least:
            best, least = order, cost
        if not least:
            break
    return tuple(best)


def cards_text(cards: Sequence[frozenset[str]]) -> tuple[str, ...]:
    """The letters of each card in the order of the alphabet: the same text in every run."""
    return tuple(" ".join(sorted(card)) for card in cards)


def _near(cells: Sequence[Cell]) -> list[list[tuple[int, int]]]:
    """For each place those that touch it, and what it counts if a partner lies there."""
    found: list[list[tuple[int, int]]] = []
    for page, row, column in cells:
        mine = []
        for k, (other, high, across) in enumerate(cells):
            steps = abs(high - row), abs(across - column)
            if other == page and max(steps) == 1:
                mine.append((k, _SIDE if sum(steps) == 1 else _CORNER))
        found.append(mine)
    return found


def _cost(order: Sequence[int], cards: Sequence[frozenset[str]], near: Sequence[Sequence[tuple[int, int]]],
          place: int) -> int:  # fmt: skip
    """What the partners round a place count."""
    return sum(weight for k, weight in near[place] if cards[order[k]] & cards[order[place]])


def _mended(order: list[int], cards: Sequence[frozenset[str]], near: Sequence[Sequence[tuple[int, int]]]) -> int:
    """Swap cards as long as that parts partners; what is left counts (each pair once from either side)."""
    places = range(len(order))
    better = True
    while better:
        better = False
        for a in places:
            for b in places if _cost(order, cards, near, a) else ():
                before = _cost(order, cards, near, a) + _cost(order, cards, near, b)
                order[a], order[b] = order[b], order[a]
                if _cost(order, cards, near, a) + _cost(order, cards, near, b) < before:
                    better = True
                else:
                    order[a], order[b] = order[b], order[a]
    return sum(_cost(order, cards, near, place) for place in places)
