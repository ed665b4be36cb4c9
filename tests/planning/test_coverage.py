import doctest
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from planning_studies import family, studies, study, term, terms

from packgen.faults import Said
from packgen.planning import coverage as module
from packgen.planning.aims import aims_for
from packgen.planning.coverage import coverage, runs_of
from packgen.planning.people import Person
from packgen.planning.plan import plan_pack
from packgen.planning.term import plan_term
from packgen.reading.models import Goal, Recipe, RecipeSheet, Study, Term

PER = {"picture-study": "work", "challenge": "challenge", "model": "model"}
GOALS = (
    Goal(Said("make"), Said("Makes a thing"), (Said("Challenges"), Said("model"))),
    Goal(Said("sing"), Said("Sings"), ()),
)


def person(about: Study, name: str, level: str, *kinds: str) -> Person:
    recipe = Recipe(Said(level), level, tuple(RecipeSheet(Said(kind)) for kind in kinds))
    pack = plan_pack(about, None, recipe, name.lower(), {k: PER.get(k, "study") for k in kinds}, plan_term(about))
    return Person(name, name[:1], level, items=pack.items)


def test_its_examples_hold() -> None:
    assert doctest.testmod(module).failed == 0


def test_a_goal_is_met_in_the_weeks_of_its_sheets() -> None:
    about = study(challenges=2, models=1)
    plan = plan_term(about, family(term()))
    juno, wilf = person(about, "Juno", "older", "challenge", "model"), person(about, "Wilf", "first", "telling")
    ((made, sung),) = (group.goals for group in coverage(GOALS, (juno, wilf), plan))
    weeks = [week.number for week in plan.weeks if any(m.kind in ("challenge", "model") for m in week.makings)]
    assert [number for number, _ in made.weeks] == weeks
    assert all(meeting == (juno,) for _, meeting in made.weeks)
    assert made.gaps == (wilf,) and sung.gaps == (juno, wilf) and not sung.weeks


def test_without_goals_each_level_has_its_own_aims() -> None:
    about = study()
    found = coverage((), (person(about, "Juno", "older", "telling"), person(about, "Wilf", "first", "telling")),
                     plan_term(about))  # fmt: skip
    assert [group.level for group in found] == ["first", "older"]
    assert [goal.text for goal in found[1].goals] == [aim.text for aim in aims_for("older")]


@given(studies(), terms())
@settings(max_examples=25, deadline=None)
def test_everybody_meets_a_goal_in_a_week_or_later_or_never(about: Study, weeks: Term) -> None:
    plan = plan_term(about, family(weeks))
    everybody = (person(about, "Juno", "older", "challenge", "telling"), person(about, "Wilf", "first", "words"))
    for group in coverage(GOALS, everybody, plan):
        for goal in group.goals:
            met = {one for _, meeting in goal.weeks for one in meeting}
            assert met | set(goal.later) | set(goal.gaps) == set(everybody)
            assert len(met) + len(goal.later) + len(goal.gaps) == len(everybody)


@given(st.sets(st.integers(1, 60)))
def test_runs_of_numbers_can_be_read_back(numbers: set[int]) -> None:
    read: set[int] = set()
    for part in filter(None, runs_of(sorted(numbers)).split(", ")):
        first, _, last = part.partition("–")
        read |= set(range(int(first), int(last or first) + 1))
    assert read == numbers


def test_an_aim_of_designing_is_met_only_where_something_is_designed() -> None:
    about = study(challenges=2, models=0)
    found, made = replace(about.challenges[0], job=Said("find out")), replace(about.challenges[1], job=Said("design"))
    about = replace(about, challenges=(found, made))
    plan = plan_term(about, family(term()))
    (group,) = coverage((), (person(about, "Juno", "older", "challenge"),), plan)
    met = {goal.text: [number for number, _ in goal.weeks] for goal in group.goals}
    weeks = {making.title: week.number for week in plan.weeks for making in reversed(week.makings)}
    assert met["Draws several designs and chooses one for a reason"] == [weeks["Challenge 1"]]
    assert weeks["Challenge 0"] in met["Changes one thing, measures one, keeps the rest, and repeats"]


def test_looking_at_the_table_meets_the_aim_without_a_sheet_and_no_week_without_a_picture_does() -> None:
    about = study(chapters=8, works=3)
    plan = plan_term(about, family(term()))
    (first, younger) = coverage((), (person(about, "Wilf", "first", "telling"), person(about, "Bram", "younger",
                                "look-closer", "telling")), plan)  # fmt: skip
    looked = [week.number for week in plan.weeks if week.works or week.again]
    assert looked and len(looked) < len(plan.weeks)
    for group, aim in ((first, "Looks quietly at a picture"), (younger, "Describes a picture from memory")):
        goal = next(goal for goal in group.goals if goal.text.startswith(aim))
        assert [number for number, _ in goal.weeks] == looked and not goal.gaps


def test_a_chapter_told_back_is_no_account_of_a_life() -> None:
    about = study(chapters=8)
    (group,) = coverage((), (person(about, "Rhea", "upper", "telling", "biography"),), plan_term(about))
    account = next(goal for goal in group.goals if goal.text.startswith("Writes an account"))
    assert [number for number, _ in account.weeks] == [1]
