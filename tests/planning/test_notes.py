import doctest
from datetime import date

from planning_studies import CHILDREN, family, study, term

from packgen.planning import notes
from packgen.planning.notes import counted, week_list
from packgen.planning.term import plan_term


def notes_of(*args: int, minutes: int = 10, weeks: int = 9, away: tuple[date, ...] = (), pages: str = "11-14") -> str:
    return "\n".join(plan_term(study(*args, pages=pages), family(term(weeks=weeks, away=away, minutes=minutes))).notes)


def test_its_examples_hold() -> None:
    assert doctest.testmod(notes).failed == 0


def test_weeks_are_listed_as_people_say_them() -> None:
    assert week_list([4]) == "week 4"
    assert week_list([5, 2, 4, 4]) == "weeks 2, 4 and 5"
    assert counted(1, "week") == "one week"
    assert counted(13, "week") == "13 weeks"


def test_a_week_away_is_named_with_its_days() -> None:
    found = notes_of(5, 0, 0, 0, away=(date(2027, 3, 17),))
    assert "15 to 21 March 2027 is a week away. That leaves eight weeks." in found


def test_a_week_away_over_the_turn_of_month_or_year_is_named_in_full() -> None:
    assert "29 March to 4 April 2027 is a week away" in notes_of(5, 0, 0, 0, away=(date(2027, 4, 1),))
    plan = plan_term(study(), family(term(starts=date(2026, 12, 2), away=(date(2027, 1, 1),))))
    assert "28 December 2026 to 3 January 2027 is a week away" in " ".join(plan.notes)


def test_a_date_away_outside_the_term_is_said_to_change_nothing() -> None:
    assert "30 June 2027 lies outside the term" in notes_of(5, 0, 0, 0, away=(date(2027, 6, 30),))


def test_long_chapters_are_to_be_read_over_several_days() -> None:
    assert "over several days" in notes_of(3, 0, 0, 0, pages="1-40")
    assert "over several days" not in notes_of(3, 0, 0, 0, pages="1-4")


def test_the_young_are_let_go_after_twenty_minutes() -> None:
    # C. M. Mason, Home Education (1886), p. 142: lessons seldom over 20 minutes under age eight
    crowded = plan_term(study(12, 0, 0, 0), family(term(weeks=4, away=())))
    assert any("let Wilf stop then" in note for note in crowded.notes)
    older = plan_term(study(12, 0, 0, 0), family(term(weeks=4, away=()), CHILDREN[:2]))
    assert not any("stop then" in note for note in older.notes)


def test_an_easy_term_needs_no_notes_about_balance() -> None:
    found = notes_of(4, 4, 2, 1, weeks=12, minutes=20)
    assert "share" not in found and "more than one" not in found and "of its own" not in found


def test_a_week_with_two_makings_says_on_which_two_days() -> None:
    # ten makings in the eight weeks before the looking back
    plan = plan_term(study(8, 0, 5, 4), family(term(away=())))
    (two, *_), said = [week for week in plan.weeks if len(week.makings) > 1], " ".join(plan.notes)
    assert two.making_days[0] != two.making_days[1]
    assert "The calendar puts it on a Saturday" in said and "choose one, or make each on a day of its own" in said


def test_a_week_with_two_chapters_has_two_evenings() -> None:
    found = notes_of(9, 0, 0, 0, weeks=8)
    assert (
        "Nine chapters in eight weeks: week 5 has more than one. Read each chapter on an evening of its own." in found
    )
