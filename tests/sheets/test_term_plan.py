import itertools
from dataclasses import replace
from datetime import date

import pytest
from parent_desks import CHILDREN, FAMILIES, STUDIES, assert_well_set, desk, family, laid, said, squeezed, study

from packgen.faults import Said
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


def test_minutes_are_those_of_the_planned_weeks() -> None:
    on = desk("term-plan")
    words = said(*laid("term-plan")[0].pages)
    for week in on.term.weeks:
        table, other = sum(s.minutes for s in week.sittings), sum(p.minutes for p in week.other)
        assert f"{table}+{other}" in words if other else str(table) in words


def test_a_sheet_not_everybody_has_names_those_who_have_it() -> None:
    wilf = replace(CHILDREN[2], leave_out=(Said("telling"),))
    words = said(*laid("term-plan", of=family((*CHILDREN[:2], wilf)))[0].pages)
    assert "tellingstrip(J·B)" in words.replace("Tellingstrip", "tellingstrip")
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
