import doctest

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packgen.planning import syllables as module
from packgen.planning.syllables import syllables

# Counts of the CMU Pronouncing Dictionary (0.7b): a random draw of common English words, and words of this trade.
PRONOUNCED = {
    1: "base bugs catch could failed freeze grant mean ones prompt push risk rows sends shall sheet stop thing through "
       "trees waived what wheels works yields lamp lamps waves makes looked played watched tide boats quay friend",
    2: "action adjust advance ahead angle appear background body builder careful color column comply detail driven "
       "easy echo extends failing final follows fully given icons items likely looking lower missing modern offer "
       "partial percent power printing questions refers report sample select sentence shorter sizes storage success "
       "visit horses houses washes wanted needed people little table apple harbor lantern machine",
    3: "allowing arguments candidates compliance corruption determine examples exception expensive inherits inspection "
       "messages outdated parallel potential procedure services updated visible volatile pyramid inventor invention "
       "parachute violin piano idea area radio media",
    4: "acknowledgment arbitrary authority available inconsistent limitations perpetual repeatedly terminated utility",
    5: "collaborator configurations organization repositories representations temporarily electricity",
}  # fmt: skip
ALL = [(word, count) for count, words in PRONOUNCED.items() for word in words.split()]


def test_its_examples_hold() -> None:
    assert doctest.testmod(module).failed == 0


def test_nine_words_in_ten_agree_with_a_pronouncing_dictionary() -> None:
    wrong = [(word, syllables(word), count) for word, count in ALL if syllables(word) != count]
    assert len(wrong) <= len(ALL) // 10, wrong


def test_no_word_of_the_dictionary_is_more_than_one_off() -> None:
    assert [word for word, count in ALL if abs(syllables(word) - count) > 1] == []


@pytest.mark.parametrize(("accented", "plain"), [("café", "cafe"), ("Müller", "muller"), ("naïvely", "naively")])
def test_accents_do_not_change_the_count(accented: str, plain: str) -> None:
    assert syllables(accented) == syllables(plain)


@given(st.text(max_size=40))
def test_any_text_has_a_syllable_and_no_more_than_its_letters(text: str) -> None:
    assert 1 <= syllables(text) <= max(1, 2 * len(text) + 1)
