"""Comparing words: each quantity of every model has some that are English, and none says "the more length"."""

import re

import pytest

from packgen.trials.comparing import ends_in_words, the_more
from packgen.trials.models import models


@pytest.mark.parametrize(
    ("phrase", "begins"),
    [
        ("the length of the thread", "The longer the thread"),
        ("the number of blades", "The more blades"),
        ("the height of the drop", "The higher the drop"),
        ("the weight on the thread", "The heavier the weight on the thread"),
        ("the distance from the pivot to the load", "The greater the distance from the pivot to the load"),
        ("the arm length", "The longer the arm"),
        ("the glide ratio", "The greater the glide ratio"),
    ],
)
def test_a_quantity_has_its_own_word_for_more(phrase: str, begins: str) -> None:
    assert the_more(phrase) == begins


def test_every_quantity_of_every_model_begins_a_sentence_without_the_more_of_a_length() -> None:
    for model in models().values():
        for item in model.inputs:
            said = the_more(item.said)
            assert re.match(r"The [a-z]+(er|re) ", said), said
            assert "the the" not in said and "The more the" not in said


@pytest.mark.parametrize(
    ("what", "dimension", "counted", "words"),
    [
        ("time to fall", "time", False, ("the longest", "the shortest", "how much longer")),
        ("load carried", "mass", False, ("the heaviest", "the lightest", "how much heavier")),
        ("distance flown", "length", False, ("the farthest", "the nearest", "how much farther")),
        ("coins", "count", True, ("the most", "the least", "how many more")),
        ("pull needed", "force", False, ("the largest", "the smallest", "how much larger")),
    ],
)
def test_the_ends_and_the_difference_are_named_by_what_is_measured(
    what: str, dimension: str, counted: bool, words: tuple[str, str, str]
) -> None:
    assert ends_in_words(what, dimension, counted) == words
