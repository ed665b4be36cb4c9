import doctest
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from planning_studies import study

from packgen.faults import Place, Said, Severity
from packgen.planning import reading_level
from packgen.planning.reading_level import (
    as_warnings,
    count,
    grade_of,
    hard_sentences,
    known_words,
    sentences,
    words,
)
from packgen.reading.models import Spot, Word, Work

HERE = Place("quenby.yaml", 7, 3)
PLAIN = "Isaure lived by the sea. She made lamps. The cold cracked them, so she tried a thick glass."
HARD = "The meticulous instrumentation necessitated extraordinarily sophisticated preparation by the manufacturer."


def test_its_examples_hold() -> None:
    assert doctest.testmod(reading_level).failed == 0


@pytest.mark.parametrize(
    ("of", "grade"),
    [
        # the lowest grade there can be, one word of one syllable (Wikipedia, "Flesch-Kincaid readability tests")
        ((1, 1, 1), -3.40),
        # the two example sentences there: 6 words of 6 syllables, and 13 words of 24 syllables
        ((6, 1, 6), -1.45),
        ((13, 1, 24), 11.26),
        # Green Eggs and Ham: 5.7 words a sentence, 1.02 syllables a word (the same page): -1.3
        ((5700, 1000, 5814), -1.33),
        # worked from the formula in PMC5890371, table 2
        ((100, 5, 130), 7.55),
        ((100, 8, 125), 4.035),
    ],
)
def test_the_grade_is_the_published_one(of: tuple[int, int, int], grade: float) -> None:
    assert grade_of(*of) == pytest.approx(grade, abs=0.006)


def test_a_plain_sentence_is_counted_right() -> None:
    found = count("The cat sat on the mat.")
    assert (found.words, found.sentences, found.syllables) == (6, 1, 6)
    assert found.grade == pytest.approx(-1.45)


def test_a_text_without_words_has_no_grade() -> None:
    assert count("").grade == 0.0
    assert count(" ... !").grade == 0.0


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("She made it c. 1851. It broke.", 2),
        ("Dr. Vane and Mrs. Ode met J. Quenby. Who won?", 2),
        ("It is 3.5 m long", 1),
        ("'Stop!' she said. 'Why?' he asked.", 2),
        ("One\n\nTwo", 2),
        ("Wait ... what", 1),
        ("She left at 4 p.m. Then it rained.", 2),
        ("It was I. They ran.", 2),
        ("", 0),
    ],
)
def test_sentences_end_where_a_reader_ends_them(text: str, parts: int) -> None:
    assert len(sentences(text)) == parts


def test_a_hyphen_parts_words_and_an_apostrophe_does_not() -> None:
    assert words("The lamp-maker's 1,200 lamps") == ("The", "lamp", "maker's", "1,200", "lamps")


@given(st.text(alphabet=st.sampled_from("abE .!?\n'\"1c"), max_size=60))
def test_no_word_is_lost_between_sentences(text: str) -> None:
    assert [word for sentence in sentences(text) for word in words(sentence)] == list(words(text))


def test_hard_sentences_carry_their_place_and_hardest_words() -> None:
    (found,) = hard_sentences([Said(PLAIN, HERE), Said(f"She sat. {HARD}", HERE)], 4)
    assert found.sentence == HARD
    assert found.place == HERE
    assert found.words == ("extraordinarily", "instrumentation", "sophisticated")
    assert found.grade > 12


def test_plain_text_is_not_called_hard() -> None:
    assert hard_sentences([PLAIN], 3) == ()


def test_a_long_sentence_of_short_words_is_hard_without_hard_words() -> None:
    long = "She " + "and then she took the lamp up to the top of the hill " * 3 + "at dusk."
    (found,) = hard_sentences([long], 4)
    assert found.words == ()
    assert "make two sentences" in as_warnings([found], 4)[0].instead


def test_a_very_short_sentence_needs_a_very_long_word_to_be_hard() -> None:
    assert hard_sentences(["She made beautiful lanterns."], 3) == ()
    assert len(hard_sentences(["She loved electricity."], 3)) == 1


def test_a_language_the_formula_is_not_made_for_is_let_be() -> None:
    assert hard_sentences([HARD], 1, language="de") == ()
    assert hard_sentences([HARD], 1, language="en-GB") != ()


def test_names_of_the_study_are_not_hard_words() -> None:
    named = replace(
        study(),
        study=Said("Andromeda Quillinghampton"),
        place=Spot(Said("Saltmere-Over-Ilverbury")),
        words=(Word(Said("phosphorescence"), Said("a cold glow")),),
        works=(Work(Said("a"), Said("The Illuminated Promontory"), image=Path("a.png")),),
    )
    known = known_words(named)
    easy = (
        "In Saltmere-Over-Ilverbury Andromeda Quillinghampton's Illuminated Promontory hung at last.",
        "She saw the phosphorescence on the waves at night.",
    )
    assert len(hard_sentences(easy, 3)) == 2
    assert hard_sentences(easy, 3, known) == ()


def test_a_title_makes_only_its_capital_words_known() -> None:
    named = replace(study(), works=(Work(Said("a"), Said("Harbour with extraordinary lanterns")),))
    assert "harbour" in known_words(named)
    assert "extraordinary" not in known_words(named)


def test_warnings_let_the_pages_build_and_say_what_to_write() -> None:
    (told,) = as_warnings(hard_sentences([Said(HARD, HERE)], 4), 4)
    assert told.severity is Severity.WARNING
    assert told.place == HERE
    assert "above grade 4" in told.message
    assert "extraordinarily" in told.instead


@given(st.lists(st.text(max_size=80), max_size=4), st.floats(-3, 15))
def test_any_text_can_be_judged_and_a_higher_ceiling_never_finds_more(texts: list[str], grade: float) -> None:
    low = hard_sentences(texts, grade)
    assert all(sentence.grade > grade for sentence in low)
    assert {s.sentence for s in hard_sentences(texts, grade + 2)} <= {s.sentence for s in low}
