"""Cautions once: those of the study stand for the model's on the same danger."""

import pytest

from packgen.planning.care import besides, dangers
from packgen.trials.models import models


def test_the_same_danger_is_told_once():
    own = ["Points of sticks are cut off or capped.", "Never leave a young child alone with water."]
    more = ["Skewers have points: cut them off or cap them with clay.", "Keep fingers out of the wheels."]
    assert besides(own, more) == ("Keep fingers out of the wheels.",)


def test_a_caution_with_one_danger_more_is_kept():
    own = ["Never leave a young child alone with water."]
    more = ["Keep scissors and water away from the baby."]
    assert besides(own, more) == tuple(more)
    assert besides([], more) == tuple(more)


def test_a_danger_without_a_word_in_the_table_is_always_told():
    assert dangers("A loaded cart runs back by itself.") == frozenset()
    assert besides(["Anything."], ["A loaded cart runs back by itself."]) == ("A loaded cart runs back by itself.",)


@pytest.mark.parametrize("key", models())
def test_no_model_says_a_danger_twice(key):
    said = models()[key].cautions
    for k, words in enumerate(said):
        assert besides(said[:k], (words,)) == (words,)
