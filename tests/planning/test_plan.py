"""Who gets which sheets: recipes, what a child leaves out, and the life told at the nearest level."""

from dataclasses import replace
from pathlib import Path

import pytest
from planning_studies import study, term

from packgen.faults import Said
from packgen.planning.plan import best, default_family, holder_of, key_of, life_at, plan_items, plan_pack, subjects
from packgen.planning.term import plan_term
from packgen.planning.weeks import SheetDue, TermPlan
from packgen.reading.models import Child, Detail, Family, Recipe, RecipeSheet

KINDS = {"biography": "study", "telling": "study", "picture-study": "work", "challenge": "challenge", "model": "model"}
NO_TERM = TermPlan((), 10, (), (), ())


def line(sheet: str, **options: object) -> RecipeSheet:
    return RecipeSheet(Said(sheet), tuple((Said(name), value) for name, value in options.items()))


def planned(*lines: RecipeSheet, child: Child | None = None, only: tuple[str, ...] = ()) -> list[tuple[str, str]]:
    recipe = Recipe(Said("older"), "older", lines)
    made = plan_pack(study(), child, recipe, "juno", KINDS, NO_TERM, only)
    return [(item.sheet, str(getattr(item.subject, "title", ""))) for item in made.items]


def test_sheets_come_in_the_recipes_order_one_for_each_subject() -> None:
    found = planned(line("biography"), line("challenge"), line("telling"))
    assert found == [("biography", ""), *(("challenge", f"Challenge {k}") for k in range(3)), ("telling", "")]


def test_most_and_only_choose_among_the_subjects() -> None:
    assert planned(line("picture-study", most=2)) == [("picture-study", "Work 0"), ("picture-study", "Work 1")]
    assert planned(line("picture-study", only="work-3")) == [("picture-study", "Work 3")]
    assert planned(line("challenge", only=("challenge 2", "Challenge 0"))) == [
        ("challenge", "Challenge 0"), ("challenge", "Challenge 2"),
    ]  # fmt: skip


def test_a_child_leaves_out_sheets_and_the_command_line_keeps_some() -> None:
    child = Child(Said("Juno"), 11, Said("older"), leave_out=(Said("telling"),))
    assert planned(line("biography"), line("telling"), child=child) == [("biography", "")]
    assert planned(line("biography"), line("telling"), only=("telling",)) == [("telling", "")]


def test_works_without_a_picture_have_no_picture_sheets() -> None:
    assert subjects(study(pictured=False), "work") == ()
    assert len(subjects(study(works=4), "work")) == 4


@pytest.mark.parametrize(
    ("written", "level", "told"),
    [
        ("younger older", "older", "older"),
        ("younger older", "first", "younger"),
        ("younger older", "upper", "older"),
        ("first upper", "younger", "first"),
        ("first older", "younger", "first"),  # as near on either side: the simpler
        ("upper", "first", "upper"),
        ("older", "parent", "older"),
    ],
)
def test_a_life_not_written_for_a_level_is_told_from_the_nearest(written: str, level: str, told: str) -> None:
    lives = tuple((name, Said(f"the {name} life")) for name in written.split())
    assert life_at(replace(study(), life=lives), level) == f"the {told} life"


def test_a_study_without_a_life_has_none() -> None:
    assert life_at(study(), "older") is None


def test_without_a_family_file_a_younger_and_an_older_child_are_assumed() -> None:
    assert [str(child.pack) for child in default_family().children] == ["younger", "older"]


def test_the_week_of_a_sheet_is_the_one_the_term_plan_has_it_in() -> None:
    told = study(mentions={0: [0], 1: [1]})
    recipe = Recipe(Said("older"), "older", (line("picture-study"), line("look-closer", most=2), line("model")))
    kinds = {**KINDS, "look-closer": "work"}
    holder = holder_of("juno", recipe, plan_items(told, None, recipe, kinds))
    plan = plan_term(told, Family(Said("F"), (), term=term()), holders=[holder])
    for item in plan_pack(told, None, recipe, "juno", kinds, plan).items:
        due = SheetDue(item.sheet, key_of(item.subject))
        assert [item.week] == [week.number for week in plan.weeks if due in week.due]


def test_the_plan_knows_a_child_by_the_sheets_it_will_have() -> None:
    recipe = Recipe(Said("older"), "older", (line("picture-study", most=1), line("telling")))
    child = Child(Said("Juno"), 11, Said("older"), leave_out=(Said("telling"),))
    holder = holder_of("juno", recipe, plan_items(study(), child, recipe, KINDS))
    assert (holder.level, holder.sheets) == ("older", frozenset({SheetDue("picture-study", "work-0")}))


def titles(kind: str, count: int, **changes: dict[int, object]) -> list[str]:
    works = list(study(works=4).works)
    for name, values in changes.items():
        for number, value in values.items():
            works[number] = replace(works[number], **{name: value})
    return [str(work.title) for work in best(kind, works, count)]  # type: ignore[union-attr]


def test_sheets_of_works_do_not_all_begin_with_the_first() -> None:
    kinds = ("look-closer", "finish-the-picture", "enlarging-grid", "colour-by-number")
    assert sorted(titles(kind, 1)[0] for kind in kinds) == ["Work 0", "Work 1", "Work 2", "Work 3"]
    assert titles("enlarging-grid", 3) == ["Work 0", "Work 2", "Work 3"]  # in the study's order
    assert titles("colour-by-number", 9) == ["Work 0", "Work 1", "Work 2", "Work 3"]


def test_works_with_a_drawing_are_best_to_colour_and_with_details_to_look_closer_at() -> None:
    assert titles("colour-by-number", 1, drawing={2: Path("w.svg")}) == ["Work 2"]
    assert titles("finish-the-picture", 2, drawing={0: Path("w.svg"), 2: Path("w.svg")}) == ["Work 0", "Work 2"]
    drawn = {k: Path("w.svg") for k in (0, 2, 3)}  # the youngest study the pictures rather than the chart between them
    assert titles("picture-study", 3, drawing=drawn) == ["Work 0", "Work 2", "Work 3"]
    some = (Detail(Said("a boat"), 0.1, 0.1, 0.1, 0.1),)
    assert titles("look-closer", 1, details={3: some}) == ["Work 3"]


def test_a_work_leaves_out_sheets_with_and_without_a_count() -> None:
    works = tuple(replace(w, leave_out=(Said("picture-study"),)) if k == 0 else w for k, w in enumerate(study().works))
    recipe = Recipe(Said("older"), "older", (line("picture-study", most=1),))
    one = plan_items(replace(study(), works=works), None, recipe, KINDS)
    assert [str(item.subject.title) for item in one] == ["Work 1"]  # type: ignore[union-attr]
    every = plan_items(replace(study(), works=works), None, replace(recipe, sheets=(line("picture-study"),)), KINDS)
    assert len(every) == len(works) - 1
