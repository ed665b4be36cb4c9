"""What a week takes, part by part and child by child."""

from hypothesis import given, settings
from planning_studies import challenge, family, studies, study, term, terms

from packgen.planning.load import Holder, Span, load_of, making_minutes, takes, who_test
from packgen.planning.term import plan_term
from packgen.planning.weeks import Load, SheetDue, Week
from packgen.reading.models import Study, Term

JUNO = Holder("juno", "older", frozenset({SheetDue("telling"), SheetDue("look-closer", "work-0"), SheetDue("words")}))
WILF = Holder("wilf", "first", frozenset({SheetDue("telling"), SheetDue("challenge", "A wheel")}))
WEEK = Week(1, (), due=(SheetDue("telling", "Chapter 0"), SheetDue("look-closer", "work-0"),
                        SheetDue("look-closer", "work-1"), SheetDue("challenge", "A wheel")))  # fmt: skip


def test_a_child_is_counted_for_its_own_sheets_and_not_for_others() -> None:
    # a strip takes 5 minutes and a look closer 10; the second picture is somebody else's, the challenge is a making
    assert load_of(JUNO, WEEK) == Load("juno", 5, 10)
    assert load_of(WILF, WEEK) == Load("wilf", 5, 0)


def test_words_count_in_weeks_that_have_some_for_the_child() -> None:
    due = Week(2, (), due=(SheetDue("words"),))
    assert load_of(JUNO, due).talk == 0
    told = plan_term(study(), family(term()), holders=[JUNO])
    assert any(load_of(JUNO, week).talk >= 10 for week in told.weeks if week.words)


def test_the_youngest_tests_only_if_nobody_else_does() -> None:
    due = SheetDue("challenge", "A wheel")
    older = Holder("ada", "older", frozenset({due}))
    assert who_test([WILF, older], due) == (older,)
    assert who_test([WILF], due) == (WILF,)
    assert who_test([JUNO], due) == ()


def test_a_making_is_built_at_once_and_tested_in_turn() -> None:
    due = SheetDue("challenge", "A wheel")
    pair = [Holder(str(k), "older", frozenset({due})) for k in range(2)]
    made = challenge("A wheel", trials=3, values=3)
    # 40 minutes to build; 3 trials x 3 values x 2 min = 18, rounded up to 20, for each of the two
    assert making_minutes(pair, due, made, 1, 1) == 80
    assert making_minutes(pair, due, made, 1, 2) == 40 and making_minutes(pair, due, made, 2, 2) == 40
    assert making_minutes(pair, SheetDue("model"), None, 1, 1) == 40


@settings(max_examples=60, deadline=None)
@given(studies(), terms())
def test_what_a_term_takes_is_the_least_and_most_of_its_weeks(of: Study, when: Term) -> None:
    plan = plan_term(of, family(when))
    found = takes(plan)
    assert found.sitting == plan.minutes
    reading = [week.reading_minutes for week in plan.weeks if week.chapters]
    assert found.reading == (Span(min(reading), max(reading)) if reading else None)
    assert found.makings == len(of.challenges) + len(of.models) + 1
    assert set(found.making_weeks) == {week.number for week in plan.weeks if week.making_minutes}
    for number, minutes in found.longer:
        week = plan.weeks[number - 1]
        assert week.talk_minutes == minutes > plan.minutes * max(1, len(week.sittings))
