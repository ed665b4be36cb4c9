import doctest

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
