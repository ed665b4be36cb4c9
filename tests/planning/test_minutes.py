import doctest

import pytest
from planning_studies import challenge, study

from packgen.planning import minutes
from packgen.planning.minutes import MINUTES, of_chapter, of_sheet, of_testing, page_count


def test_its_examples_hold() -> None:
    assert doctest.testmod(minutes).failed == 0


@pytest.mark.parametrize(
    ("said", "pages"),
    [("11-19", 9), ("11–19", 9), ("11 to 19", 2), ("pp. 121-9", 9), ("7", 1), ("7, 9-10", 3), ("19-11", 1), ("", 0),
     ("the first part", 0)],
)  # fmt: skip
def test_pages_are_counted_as_a_parent_writes_them(said: str, pages: int) -> None:
    assert page_count(said) == pages


def test_reading_takes_two_minutes_a_page_and_ten_for_an_unknown_chapter() -> None:
    told = study(chapters=1, pages="11-19").book
    untold = study(chapters=1, pages="").book
    assert told is not None and untold is not None
    assert of_chapter(told.chapters[0]) == 18
    assert of_chapter(untold.chapters[0]) == 10


def test_testing_counts_trials_and_values() -> None:
    # 4 trials x 3 values x 2 min = 24, rounded up to 25
    assert of_testing(challenge("A wheel", trials=4, values=3)) == 25
    # 6 trials x 4 values x 2 min = 48, rounded up to 50
    assert of_testing(challenge("A wheel", trials=6, values=4)) == 50
    # neither given: 3 trials of 2 values
    assert of_testing(challenge("A wheel")) == 15


def test_what_runs_long_takes_its_time_to_test() -> None:
    # 103, 146 and 179 s and a minute to set up each time: 3 x (163 + 206 + 239) s = 30.4 min, rounded up to 35
    assert of_testing(challenge("A clock of water", trials=3, values=3), (103, 146, 179)) == 35
    # a run of seconds is within the two minutes that any trial takes: 3 x 3 x 2 = 18
    assert of_testing(challenge("A wheel", trials=3, values=3), (9, 7, 6)) == 20


def test_looking_stays_within_what_the_tradition_allows() -> None:
    # C. M. Mason, Home Education (1886), pp. 309-310: three or four minutes of looking
    assert 3 <= MINUTES["look"] <= 4
    # usual times: telling back 5 to 10 minutes, copying 5 to 15 (common practice, no source)
    assert 5 <= MINUTES["tell"] <= 10
    assert 5 <= MINUTES["words"] <= 15


def test_an_unknown_sheet_has_a_figure_too() -> None:
    assert of_sheet("a-sheet-of-next-year") == 10


def test_every_assumption_says_what_it_rests_on() -> None:
    assert all(assumed.why.endswith(")") and "(" in assumed.why for assumed in minutes.ASSUMED)
