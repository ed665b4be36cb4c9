import itertools
from dataclasses import replace
from datetime import date

import pytest
from parent_desks import CHILDREN, FAMILIES, STUDIES, assert_well_set, desk, family, laid, said, squeezed, study

from packgen.faults import Said
from packgen.planning.print_plan import NumberedSheet
from packgen.reading.models import Term


@pytest.mark.parametrize(("about", "of"), tuple(itertools.product(STUDIES, FAMILIES)))
def test_every_study_and_family_gets_a_plan_on_whole_leaves(about: str, of: str) -> None:
    (plan,) = laid("term-plan", STUDIES[about], FAMILIES[of])
    assert_well_set(plan.pages, FAMILIES[of].printer.margin)
    # A plan of one page may leave its back blank; a longer one fills its leaves.
    assert len(plan.pages) == 1 or len(plan.pages) % 2 == 0


def test_weeks_away_stand_in_their_place() -> None:
    words = said(laid("term-plan")[0].pages[0])
    # With 17 March 2027 away, the whole week from Monday 15 to Sunday 21 March is not taught.
    assert words.index("10Mar") < words.index("15–21Maraway") < words.index("24Mar")


def test_everything_read_looked_at_and_made_is_in_the_plan() -> None:
    about = study()
    words = said(*laid("term-plan", about)[0].pages)
    assert about.book
    for thing in (*about.book.chapters, *about.works, *about.challenges, *about.models):
        assert squeezed(str(thing.title)) in words


def test_minutes_are_those_of_the_planned_weeks_and_add_up() -> None:
    on = desk("term-plan")
    words = said(*laid("term-plan")[0].pages)
    for week in on.term.weeks:
        row = (week.talk_minutes, week.reading_minutes, week.sheet_minutes, week.making_minutes)
        assert "".join(str(minutes) for minutes in row if minutes) in words
    total = [sum(w.talk_minutes for w in on.term.weeks), sum(w.reading_minutes for w in on.term.weeks),
             sum(w.sheet_minutes for w in on.term.weeks), sum(w.making_minutes for w in on.term.weeks)]  # fmt: skip
    assert "inall" + "".join(map(str, total)) in words
    assert sum(total) == sum(week.minutes for week in on.term.weeks)


def test_a_making_apart_from_the_sittings_has_its_day_and_sheets_have_their_numbers() -> None:
    on = desk("term-plan")
    words = said(*laid("term-plan")[0].pages)
    apart = [(m, day) for week in on.term.weeks for m, day in zip(week.makings, week.making_days, strict=True) if day]
    assert apart
    for _, day in apart:
        assert f"Sat{day.day}" in words
    first = on.packs[0].items[0]
    sheets = tuple(NumberedSheet("Juno", n, "Title", first.sheet, "Title", week=2) for n in (7, 8, 9))
    runs = [replace(run, sheets=sheets) if run.path.startswith("juno/1") else run for run in on.print_runs]
    numbered = said(*laid("term-plan", runs=runs)[0].pages)
    assert "Juno7–9" in numbered and "thenumbersattheirfeet" in numbered


def test_what_may_be_left_out_is_said() -> None:
    words = said(*laid("term-plan")[0].pages)
    assert "Bychoice,eachonafreeafternoon:4makingsof" in words
    assert "Thestudyiswholewithoutthem." in words


def test_the_book_is_to_be_got_before_the_first_week() -> None:
    told = study()
    assert told.book
    numbered = replace(told, book=replace(told.book, isbn=Said("978-0-306-40615-7"), edition=Said("2nd edition")))
    words = said(*laid("term-plan", numbered)[0].pages)
    assert "Beforethefirstweek" in words
    assert "“TheLampontheQuay”byTamsinOrre,2ndedition,ISBN978-0-306-40615-7" in words
    assert "Borroworbuy" not in said(*laid("term-plan", study(chapters=0))[0].pages)


def test_a_sheet_not_everybody_has_names_those_who_have_it() -> None:
    wilf = replace(CHILDREN[2], leave_out=(Said("telling"),))
    words = said(*laid("term-plan", of=family((*CHILDREN[:2], wilf)))[0].pages)
    assert "tellitback(J·B)" in words.replace("Tellitback", "tellitback")
    assert "words(" not in words


def test_without_a_term_there_are_no_dates_and_that_is_said() -> None:
    words = said(*laid("term-plan", of=family(term=None))[0].pages)
    assert "Date" not in words
    assert "sotheplan" in words and "hasnodates" in words


def test_two_sittings_a_week_show_both_days() -> None:
    home = family(term=Term(date(2027, 3, 29), 3, (0, 4)))
    # Monday 29 March and Friday 2 April 2027
    assert "29Mar,2Apr" in said(*laid("term-plan", of=home)[0].pages)


def test_the_notes_of_the_plan_are_all_there() -> None:
    words = said(*laid("term-plan")[0].pages)
    for note in desk("term-plan").term.notes:
        assert squeezed(note) in words
