"""Ages and intervals, on lives whose dates are known."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packgen.faults import Said
from packgen.planning.life import age_questions, chosen_events, timeline_questions, years_between
from packgen.reading.dates import read_when
from packgen.reading.models import Day, Event, Study


def event(when: str, what: str = "Something", short: str = "") -> Event:
    return Event(read_when(Said(when)), Said(what), Said(short) if short else None)


def study(*events: Event, born: str = "", died: str = "") -> Study:
    return Study(
        Said("Isaure Quenby"), Said("inventor"), Said("Invented."), Path(), timeline=events,
        born=read_when(Said(born)) if born else None, died=read_when(Said(died)) if died else None,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("born", "died", "ages"),
    [
        # Augustus, 23 September 63 BC to 19 August AD 14: in his 76th year, less 35 days (Suetonius, Augustus 100)
        (Day(-62, 9, 23), Day(14, 8, 19), (75, 75)),
        # Leonardo da Vinci, 15 April 1452 to 2 May 1519, aged 67 (Encyclopaedia Britannica)
        (Day(1452, 4, 15), Day(1519, 5, 2), (67, 67)),
        # Michael Faraday, 22 September 1791 to 25 August 1867, aged 75 (Encyclopaedia Britannica)
        (Day(1791, 9, 22), Day(1867, 8, 25), (75, 75)),
        # of dates known to the year the birthday may or may not have come round
        (Day(1834), Day(1902), (67, 68)),
        (Day(1834, 5), Day(1902, 11), (68, 68)),
        (Day(1834, 11), Day(1902, 5), (67, 67)),
        (Day(1834, 5), Day(1902, 5), (67, 68)),
        (Day(1834, 5, 3), Day(1902, 5, 3), (68, 68)),
        (Day(1834, 5, 3), Day(1902, 5, 2), (67, 67)),
    ],
)
def test_years_lived(born: Day, died: Day, ages: tuple[int, int]) -> None:
    assert years_between(born, died) == ages


def test_there_is_no_year_nought_between_10_bc_and_ad_10() -> None:
    assert years_between(Day(-9, 1, 1), Day(10, 1, 1)) == (19, 19)


@given(st.dates(), st.dates())
def test_whole_years_are_those_of_the_calendar(one: object, other: object) -> None:
    from datetime import date

    assert isinstance(one, date) and isinstance(other, date)
    early, late = sorted((one, other))
    low, high = years_between(Day(early.year, early.month, early.day), Day(late.year, late.month, late.day))
    years = late.year - early.year - ((late.month, late.day) < (early.month, early.day))
    assert (low, high) == (years, years)


def test_a_short_timeline_keeps_its_ends_and_the_events_with_short_words() -> None:
    events = [event(str(1800 + k), short="short" if k % 3 == 0 else "") for k in range(20)]
    chosen = chosen_events(study(*events), 6)
    assert len(chosen) == 6 and chosen[0] is events[0] and chosen[-1] is events[-1]
    assert all(e.short for e in chosen[1:-1])
    assert list(chosen) == sorted(chosen, key=lambda e: int(e.when.said))


def test_events_stand_in_order_of_time_however_they_were_written() -> None:
    events = (event("1902"), event("44 BC"), event("c. 1851"), event("3 May 1834"))
    assert [str(e.when.said) for e in chosen_events(study(*events))] == ["44 BC", "3 May 1834", "c. 1851", "1902"]


def test_questions_are_only_asked_where_the_dates_are_sure() -> None:
    asked = age_questions(study(born="c. 1834", died="1902"), [event("1862-1865", "Charts the tides")])
    assert [q.kind for q in asked] == ["lasted"]
    assert asked[0].answer == "3"


def test_a_whole_life_asks_for_ages_and_intervals_with_right_answers() -> None:
    events = [event("1834", "Born"), event("1841", "A boat is lost"), event("1855", "Cork"), event("1867", "Lit"),
              event("1902", "Dies")]  # fmt: skip
    asked = age_questions(study(*events, born="3 May 1834", died="9 November 1902"), events)
    assert [q.kind for q in asked] == ["life", "age", "age", "age", "between"]
    assert asked[0].answer == "68"
    assert asked[1].what == "A boat is lost" and asked[1].answer == "7"
    assert (asked[-1].what, asked[-1].other, asked[-1].answer) == ("A boat is lost", "Lit", "26")


def test_every_question_has_one_answer_also_where_only_years_are_known() -> None:
    events = [event("1834", "Born"), event("1841", "A boat is lost"), event("1855", "Cork"), event("1867", "Lit"),
              event("1902", "Dies")]  # fmt: skip
    asked = age_questions(study(*events, born="1834", died="1902"), events)
    assert [q.kind for q in asked] == ["age", "age", "age", "between"]
    assert all(q.low == q.high for q in asked)


@pytest.mark.parametrize("words", ["Three poor years at the school", "3 poor years at the school"])
def test_a_bar_whose_words_say_how_long_it_is_is_not_asked_about(words: str) -> None:
    events = [event("1871-1874", words), event("1908-1921", "He covers his kitchen with tiles.")]
    asked = [q for q in age_questions(study(born="1849"), events) if q.kind == "lasted"]
    assert [(q.what, q.answer) for q in asked] == [("He covers his kitchen with tiles", "13")]


def test_an_age_that_stands_in_the_words_is_not_asked_for() -> None:
    events = [event("1841", "At seven she sees a wreck"), event("1858", "At twenty-four she opens a shop")]
    assert age_questions(study(born="1834"), events) == []


def test_the_oldest_are_asked_what_dates_leave_open() -> None:
    # Michael Faraday, 22 September 1791 to 25 August 1867; induction found on 29 August 1831, aged 39; the Christmas
    # lectures 1827 to 1860 (Encyclopaedia Britannica, from memory)
    events = [event("1791", "Born"), event("1813", "Joins the Institution"), event("c. 1821", "Rotates a wire"),
              event("29 August 1831", "Induction"), event("1827-1860", "Gives lectures"), event("1846", "Light"),
              event("1867", "Dies")]  # fmt: skip
    asked = {q.kind: q for q in timeline_questions(study(*events, born="22 September 1791", died="25 August 1867"),
                                                   events, "upper")}  # fmt: skip
    assert asked["life"].answer == "75"
    assert (asked["exact"].what, asked["exact"].answer) == ("Induction", "39")
    assert (asked["ages"].what, asked["ages"].answer) == ("Light", "54 or 55")
    assert asked["unsure"].answer == "24 to 35"
    assert asked["share"].answer == "44 %"  # 33 of 75 years
    assert asked["gap"].answer == "22"  # 1791 to 1813, open dots and bars left out
    assert asked["rate"].answer == "0.9"  # 7 events in 76 years


def test_where_only_years_are_known_the_oldest_name_both_ages_at_death() -> None:
    (first, *_) = timeline_questions(study(born="1849", died="October 1921"), [], "upper")
    assert (first.kind, first.answer) == ("lives", "71 or 72")
