from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from planning_studies import study

from packgen.faults import Said
from packgen.planning.weeks import Making
from packgen.planning.word_weeks import words_by_week
from packgen.reading.models import LEVELS, Study, Word

WEEKS = st.integers(1, 10)
NAMES = st.sampled_from(("quay", "wick", "gale", "ebb", "kite", "float", "chandler", "solder", "gauge", "fathom"))
FOR = st.sampled_from(((), ("first",), ("younger", "older"), ("older", "upper"), ("upper",)))


def word(name: str, *levels: str) -> Word:
    return Word(Said(name), Said("what it means"), tuple(Said(level) for level in levels))


def telling(titles: list[str], *words: Word) -> Study:
    """A study whose chapters have these titles, one a week, with these words."""
    found = study(len(titles), 0, 1, 1, words=0)
    assert found.book
    told = tuple(replace(c, title=Said(title)) for c, title in zip(found.book.chapters, titles, strict=True))
    return replace(found, book=replace(found.book, chapters=told), words=words)


def weeks_of(of: Study, made: dict[int, Making] | None = None) -> list[list[str]]:
    chapters = [(chapter,) for chapter in of.book.chapters] if of.book else []
    makings = [(made[w],) if made and w in made else () for w in range(len(chapters))]
    return [[str(word.word) for word in week] for week in words_by_week(of, chapters, [()] * len(chapters), makings)]


def test_a_word_comes_with_the_first_chapter_that_uses_it() -> None:
    of = telling(["A Cold Harbour", "The Float in the Pipe", "Gales", "The Float Again"], word("gale"), word("float"))
    assert weeks_of(of) == [[], ["float"], ["gale"], []]


def test_a_word_comes_with_the_making_that_uses_it() -> None:
    of = telling(["A", "B", "C"], word("challenge"))
    assert weeks_of(of, {2: Making("challenge", "Challenge 0", 0, 40)}) == [[], [], ["challenge"]]


def test_a_part_of_another_word_is_no_use_of_it() -> None:
    # "ebb" stands in no chapter here, though its letters do: it goes to the lightest week, the middle of the term
    assert weeks_of(telling(["Pebbles", "The Pier", "Webbing"], word("ebb"))) == [[], ["ebb"], []]


def test_a_word_of_the_life_comes_with_the_life() -> None:
    of = replace(telling(["A", "B", "C"], word("chandler", "older")), life=(("older", Said("A chandler's child.")),))
    assert weeks_of(of)[0] == ["chandler"]


def test_words_nothing_uses_are_spread_over_the_whole_term() -> None:
    of = telling(["A", "B", "C", "D", "E", "F"], *(word(name) for name in ("quay", "wick", "ebb")))
    assert weeks_of(of) == [[], ["quay"], [], ["wick"], [], ["ebb"]]


@settings(max_examples=60, deadline=None)
@given(st.lists(NAMES, min_size=1, max_size=10), st.lists(st.tuples(NAMES, FOR), max_size=12, unique_by=lambda w: w[0]))
def test_no_word_comes_after_its_chapter_or_is_lost(
    titles: list[str], words: list[tuple[str, tuple[str, ...]]]
) -> None:
    of = telling(titles, *(word(name, *levels) for name, levels in words))
    found = weeks_of(of)
    assert sorted(name for week in found for name in week) == sorted(name for name, _ in words)
    for w, week in enumerate(found):
        assert all(name not in titles or w <= titles.index(name) for name in week)


@settings(max_examples=60, deadline=None)
@given(WEEKS, st.lists(st.tuples(NAMES, FOR), max_size=10, unique_by=lambda w: w[0]))
def test_no_level_has_many_words_in_a_week(weeks: int, words: list[tuple[str, tuple[str, ...]]]) -> None:
    of = telling([f"Chapter {w}" for w in range(weeks)], *(word(name, *levels) for name, levels in words))
    planned = words_by_week(of, [(c,) for c in of.book.chapters] if of.book else [], [()] * weeks, [()] * weeks)
    for level in LEVELS:
        own = sum(not levels or level in levels for _, levels in words)
        counts = [sum(not one.levels or level in one.levels for one in week) for week in planned]
        assert max(counts) <= -(-own // weeks) + 1
