"""Breaking and fitting text: nothing is lost, nothing is wider than its measure."""

from hypothesis import given, settings
from hypothesis import strategies as st
from page_marks import FACES

from packgen.page.text import Style, fit, widest_word, wrap

STYLE = Style("text", 4.0, 5.5)
WORDS = st.lists(st.text(alphabet="abcdefgh-/é", min_size=1, max_size=14), min_size=1, max_size=25).map(" ".join)


def bare(text: str) -> str:
    return "".join(text.split())


@given(WORDS, st.floats(6.0, 180.0))
@settings(max_examples=80, deadline=None)
def test_no_letter_is_lost_and_no_line_is_too_wide(text: str, width: float) -> None:
    lines = wrap(FACES, text, STYLE, width)
    assert bare("".join(lines)) == bare(text)
    assert all(FACES.width(line, "text", 4.0) <= width + 1e-6 for line in lines)


@given(WORDS, st.floats(20.0, 120.0), st.floats(5.0, 60.0))
@settings(max_examples=60, deadline=None)
def test_what_is_said_to_fit_fits_and_what_does_not_is_whole_at_the_floor(text: str, wide: float, high: float) -> None:
    fitted = fit(FACES, text, STYLE, wide, high, 2.0)
    assert bare("".join(fitted.lines)) == bare(text)
    assert 2.0 - 1e-9 <= fitted.style.size <= 4.0
    if fitted.fits:
        assert fitted.height <= high + 1e-6
        assert all(FACES.width(line, "text", fitted.style.size) <= wide + 1e-6 for line in fitted.lines)
    else:
        assert fitted.style.size == 2.0


def test_words_stay_whole_while_a_smaller_size_keeps_them_so() -> None:
    word = "Featherstonehaugh"
    room = FACES.width(word, "text", 3.0)
    fitted = fit(FACES, word, STYLE, room, 50.0, 2.0)
    assert fitted.lines == (word,) and fitted.style.size <= 3.0


def test_a_word_too_wide_is_broken_after_its_own_hyphen_first() -> None:
    width = FACES.width("Featherstonehaugh-Chol", "text", 4.0)
    assert wrap(FACES, "Featherstonehaugh-Cholmondeley", STYLE, width)[0] == "Featherstonehaugh-"


def test_line_feeds_begin_lines_and_empty_ones_stay() -> None:
    assert wrap(FACES, "one\n\ntwo three", STYLE, 100.0) == ("one", "", "two three")


def test_the_leading_follows_the_size() -> None:
    assert STYLE.at(2.0).leading == 2.75
    assert STYLE.grey(0.3).ink == 0.3 and STYLE.in_face("early").face == "early"


def test_the_widest_word_of_nothing_is_nothing() -> None:
    assert widest_word(FACES, "", STYLE) == 0.0
    assert widest_word(FACES, "a harbour b", STYLE) == FACES.width("harbour", "text", 4.0)


def test_a_short_text_does_not_end_with_a_word_alone() -> None:
    style = Style("text", 4.0, 5.0)
    text = "Measure it and reckon the distance with the bar."
    width = FACES.width("Measure it and reckon the distance with the", "text", 4.0) + 0.5
    lines = wrap(FACES, text, style, width)
    assert len(lines) == 2 and len(lines[1].split()) >= 2 and " ".join(lines) == text


def test_a_word_that_must_stand_alone_takes_no_further_line() -> None:
    style = Style("text", 4.0, 5.0)
    assert wrap(FACES, "two words", style, FACES.width("words", "text", 4.0) + 0.5) == ("two", "words")
