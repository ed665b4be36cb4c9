import doctest
from datetime import date

from hypothesis import given, settings
from hypothesis import strategies as st
from planning_studies import family, studies, study, term, terms

from packgen.faults import Said
from packgen.planning import record
from packgen.planning.aims import aims_for
from packgen.planning.record import ChildSheets, SheetGiven, kind_key, make_record
from packgen.planning.term import plan_term
from packgen.reading.models import Goal, Study, Term

SHEETS = (
    SheetGiven("model", "Model 0", "Model 0"),
    SheetGiven("biography", "Isaure Quenby"),
    SheetGiven("challenge", "Challenge 1", "Challenge 1"),
    SheetGiven("where-in-the-world", "Where she lived"),
)
JUNO = ChildSheets("Juno", "older", SHEETS)
WILF = ChildSheets("Wilf", "first", SHEETS[:2])
GOALS = (
    Goal(Said("make-1"), Said("Plans and makes a thing to a brief"), (Said("Challenges"), Said("Fold book"))),
    Goal(Said("art-1"), Said("Talks about a picture"), (Said("picture-study"),)),
)
PLAN = plan_term(study(), family(term()))


def test_its_examples_hold() -> None:
    assert doctest.testmod(record).failed == 0


def test_a_goal_is_met_by_the_kinds_it_names() -> None:
    found = make_record(GOALS, [JUNO, WILF], PLAN)
    make, art = found.children[0].goals
    assert [entry.sheet.title for entry in make.entries] == ["Challenge 1"]
    week = PLAN.week_of("challenge", "Challenge 1")
    assert week is not None and make.weeks == (week.number,)
    assert art.gap and found.children[0].gaps == (art,)
    assert [goal.gap for goal in found.children[1].goals] == [True, True]
    assert found.own_goals


def test_sheets_stand_in_order_of_their_weeks_and_those_without_come_last() -> None:
    entries = make_record(GOALS, [JUNO], PLAN).children[0].entries
    weeks = [entry.week for entry in entries]
    assert weeks[0] == 1 and weeks[-1] is None
    assert [week for week in weeks if week] == sorted(week for week in weeks if week)
    assert entries[0].day == date(2027, 2, 3)
    child = make_record(GOALS, [JUNO], PLAN).children[0]
    assert [entry.sheet.kind for entry in child.in_week(1)] == ["biography"]
    assert [entry.sheet.kind for entry in child.in_week(None)] == ["where-in-the-world"]


def test_the_day_a_sheet_was_done_counts_before_the_day_it_was_planned() -> None:
    done = SheetGiven("biography", "Isaure Quenby", done=date(2027, 2, 6), result="Finished on Saturday.")
    (entry,) = make_record((), [ChildSheets("Bram", "younger", (done,))], PLAN).children[0].entries
    assert entry.day == date(2027, 2, 6)


def test_without_goals_of_the_family_each_child_has_the_aims_of_its_level() -> None:
    found = make_record((), [JUNO, WILF], PLAN)
    assert not found.own_goals
    assert [goal.id for goal in found.children[0].goals] == [aim.id for aim in aims_for("older")]
    assert [goal.id for goal in found.children[1].goals] == [aim.id for aim in aims_for("first")]
    assert all(goal.spirit for goal in found.children[0].goals)


@settings(max_examples=40, deadline=None)
@given(studies(), terms(), st.lists(st.sampled_from(["challenge", "model", "words", "telling", "new"]), max_size=12))
def test_every_sheet_is_recorded_exactly_once_and_counts_add_up(of: Study, when: Term, kinds: list[str]) -> None:
    sheets = tuple(SheetGiven(kind, f"{kind} {i}") for i, kind in enumerate(kinds))
    found = make_record(
        GOALS, [ChildSheets("A", "older", sheets), ChildSheets("B", "first", ())], plan_term(of, family(when))
    )
    child = found.children[0]
    assert sorted(entry.sheet.title for entry in child.entries) == sorted(sheet.title for sheet in sheets)
    assert found.sheets == len(sheets)
    assert sum(len(goal.entries) for goal in child.goals) == sum(kind == "challenge" for kind in kinds)


def test_kinds_are_compared_without_regard_to_how_they_are_written() -> None:
    assert kind_key("Picture Study") == kind_key("picture_study") == kind_key("picture-study")
    assert kind_key("challenges") == kind_key("challenge")
