import doctest
from collections import Counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.planning import spread
from packgen.planning.spread import lay_out, lesson_shares, spaced

LESSONS = st.integers(0, 20)
DIVISIBLE = st.lists(st.booleans(), max_size=8)
SITTINGS = st.lists(st.integers(1, 3), min_size=1, max_size=15)
LOOSE = st.integers(0, 6)


def test_its_examples_hold() -> None:
    assert doctest.testmod(spread).failed == 0


@given(st.integers(0, 30), st.integers(1, 40))
def test_spaced_places_are_different_and_in_range(count: int, places: int) -> None:
    count = min(count, places)
    found = spaced(count, places)
    assert len(set(found)) == count
    assert list(found) == sorted(found)
    assert all(0 <= place < places for place in found)


@given(st.integers(0, 60), st.integers(1, 20))
def test_lessons_are_in_order_and_balanced_and_the_last_week_has_no_more_than_others(count: int, weeks: int) -> None:
    found = lesson_shares(count, weeks)
    assert [i for group in found for i in group] == list(range(count))
    assert len(found) == weeks
    assert max(map(len, found)) - min(map(len, found)) <= 1
    assert len(found[-1]) == min(map(len, found))


def test_a_few_makings_on_top_of_full_weeks_stand_apart() -> None:
    for weeks, makings in ((8, 3), (12, 4), (9, 2)):
        layout = lay_out(weeks, [False] * makings, [1] * weeks)
        places = [slots[0].week for slots in layout.makings]
        gaps = [b - a for a, b in zip([-1, *places], [*places, weeks], strict=True)]
        assert min(gaps) > 1 and max(gaps) - min(gaps) <= 3, places


def test_where_two_makings_share_a_week_they_are_the_short_ones() -> None:
    # nine makings and eight weeks: one week has two, and that is not one of the long
    takes = [100, 40, 100, 40, 100, 40, 40, 100, 40]
    layout = lay_out(8, [False] * 9, [1] * 8, takes=takes)
    weeks = [slots[0].week for slots in layout.makings]
    double = next(week for week in weeks if weeks.count(week) > 1)
    assert [takes[k] for k, week in enumerate(weeks) if week == double] == [40, 40]


@settings(max_examples=150)
@given(LESSONS, DIVISIBLE, SITTINGS, LOOSE)
def test_no_lesson_and_no_making_is_ever_lost(
    lessons: int, divisible: list[bool], sittings: list[int], loose: int
) -> None:
    layout = lay_out(lessons, divisible, sittings, loose)
    assert [i for week in layout.lessons for i in week] == list(range(lessons))
    assert len(layout.lessons) == len(sittings)
    assert len(layout.makings) == len(divisible)
    for slots, may_split in zip(layout.makings, divisible, strict=True):
        assert len(slots) in ((1, 2) if may_split else (1,))


@settings(max_examples=150)
@given(LESSONS, DIVISIBLE, SITTINGS, LOOSE)
def test_no_two_things_take_the_same_sitting(
    lessons: int, divisible: list[bool], sittings: list[int], loose: int
) -> None:
    layout = lay_out(lessons, divisible, sittings, loose)
    taken = Counter(slot for slots in layout.makings for slot in slots if slot.sitting is not None)
    assert all(count == 1 for count in taken.values())
    assert all(slot.sitting < sittings[slot.week] for slot in taken)
    first = {slot.week for slot in taken if slot.sitting == 0}
    with_lesson = {week for week, numbers in enumerate(layout.lessons) if numbers}
    assert not first & with_lesson
    assert not (first | with_lesson) & set(layout.looks)
    assert not (first | with_lesson | set(layout.looks)) & set(layout.spare)


@settings(max_examples=150)
@given(LESSONS, DIVISIBLE, SITTINGS, LOOSE)
def test_makings_go_on_top_only_when_no_week_is_left(
    lessons: int, divisible: list[bool], sittings: list[int], loose: int
) -> None:
    layout = lay_out(lessons, divisible, sittings, loose)
    on_top = [slot for slots in layout.makings for slot in slots if slot.sitting is None]
    if on_top:
        assert not layout.spare
        assert not layout.looks
        used = {slot for slots in layout.makings for slot in slots if slot.sitting}
        before = sittings[:-1] or sittings  # the last week is kept for looking back
        assert len(used) == sum(before) - len(before)


@settings(max_examples=100)
@given(DIVISIBLE, st.integers(2, 15))
def test_makings_come_in_order_and_their_number_a_week_is_balanced(divisible: list[bool], weeks: int) -> None:
    layout = lay_out(weeks, divisible, [1] * weeks)
    order = [slot.week for slots in layout.makings for slot in slots]
    assert order == sorted(order)
    counts = Counter(order)
    assert max(counts.values(), default=0) - min(counts.get(week, 0) for week in range(weeks - 1)) <= 1


@settings(max_examples=100)
@given(LESSONS, DIVISIBLE, st.lists(st.integers(1, 3), min_size=2, max_size=15), LOOSE)
def test_nothing_is_made_after_the_looking_back(
    lessons: int, divisible: list[bool], sittings: list[int], loose: int
) -> None:
    layout = lay_out(lessons, divisible, sittings, loose)
    assert all(slot.week < len(sittings) - 1 for slots in layout.makings for slot in slots)


def test_a_split_challenge_is_tested_at_the_next_making_after_it_was_built() -> None:
    layout = lay_out(4, [True, False], [2] * 6)
    built, tested = layout.makings[0]
    between = [slot for slot in layout.makings[1] if (built.week, 1) < (slot.week, 1) < (tested.week, 1)]
    assert tested.week == built.week + 1
    assert not between


def test_the_book_is_made_last() -> None:
    layout = lay_out(5, [True, False, False], [1] * 12)
    assert layout.makings[-1][0].week > max(slot.week for slots in layout.makings[:-1] for slot in slots)


def test_a_term_without_weeks_is_refused() -> None:
    with pytest.raises(ValueError, match="no weeks"):
        lay_out(1, [], [])
