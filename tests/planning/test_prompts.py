import doctest

from hypothesis import given
from hypothesis import strategies as st

from packgen.planning import prompts
from packgen.planning.prompts import choose, how_many

QUESTIONS = st.lists(st.sampled_from("abcdefgh"), max_size=8)


def test_its_examples_hold() -> None:
    assert doctest.testmod(prompts).failed == 0


def test_the_youngest_are_asked_fewest() -> None:
    assert how_many("first") < how_many("younger") <= how_many("older") < how_many("upper")
    assert how_many("no such level") == 3


@given(QUESTIONS, QUESTIONS, st.integers(0, 6), st.integers(0, 30))
def test_questions_are_never_asked_twice_and_the_studys_own_come_first(
    own: list[str], bank: list[str], count: int, turn: int
) -> None:
    found = choose(own, bank, count, turn)
    assert len(set(found)) == len(found) == min(count, len({*own, *bank}))
    mine = list(dict.fromkeys(own))[:count]
    assert list(found[: len(mine)]) == mine


def test_the_bank_is_asked_through_before_it_starts_again() -> None:
    asked = [question for turn in range(4) for question in choose([], list("abcdefgh"), 2, turn)]
    assert asked == list("abcdefgh")
