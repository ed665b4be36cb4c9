"""Dealing cards: every card once, partners apart wherever the places allow it, the same way every time."""

from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.page.dealing import dealt


def cells(count: int, across: int) -> list[tuple[int, int, int]]:
    return [(0, k // across, k % across) for k in range(count)]


@settings(max_examples=30, deadline=None)
@given(st.integers(3, 8), st.integers(2, 4), st.integers(2, 4))
def test_every_card_is_dealt_once_and_no_partner_lies_beside_it(works: int, sets: int, across: int) -> None:
    cards = [frozenset("ABCDEFGH"[work]) for work, _ in product(range(works), range(sets))]
    order = dealt(cards, cells(len(cards), across))
    assert sorted(order) == list(range(len(cards)))
    for k, card in enumerate(order):
        for other in ([k + 1] if (k + 1) % across else []) + [k + across]:
            if other < len(order):
                assert not cards[card] & cards[order[other]]


def test_pages_are_no_neighbours() -> None:
    cards = [frozenset("A"), frozenset("A"), frozenset("B"), frozenset("B")]
    places = [(0, 0, 0), (0, 0, 1), (1, 0, 0), (1, 0, 1)]
    order = dealt(cards, places)
    assert not cards[order[0]] & cards[order[1]] and not cards[order[2]] & cards[order[3]]


def test_the_same_cards_are_dealt_the_same_way() -> None:
    cards = [frozenset("ABCD"[k % 4]) for k in range(12)]
    assert dealt(cards, cells(12, 3)) == dealt(cards, cells(12, 3))
