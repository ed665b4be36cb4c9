import doctest

from hypothesis import given
from hypothesis import strategies as st

from packgen.planning import asking
from packgen.planning.asking import EASY_AT_MOST, ease, shared_out

QUESTIONS = st.lists(st.text(max_size=30), max_size=9)


def test_its_examples_hold() -> None:
    assert doctest.testmod(asking).failed == 0


@given(QUESTIONS, st.booleans(), st.booleans())
def test_no_question_is_lost_or_asked_twice(questions: list[str], young: bool, old: bool) -> None:
    for_young, for_old = shared_out(questions, young, old)
    assert sorted((*for_young, *for_old)) == sorted(set(questions))


@given(QUESTIONS)
def test_the_young_get_the_easier_ones_and_not_many(questions: list[str]) -> None:
    for_young, for_old = shared_out(questions, True, True)
    assert len(for_young) <= EASY_AT_MOST
    if for_young and for_old:
        assert max(map(ease, for_young)) <= min(map(ease, for_old))


def test_one_group_alone_gets_all() -> None:
    assert shared_out(["a?", "b?"], True, False) == (("a?", "b?"), ())
    assert shared_out(["a?", "b?"], False, True) == ((), ("a?", "b?"))
