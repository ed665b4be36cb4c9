from dataclasses import replace

from hypothesis import given, settings
from planning_studies import family, studies, study, term, terms

from packgen.faults import Said
from packgen.planning.people import Person
from packgen.planning.plan import plan_pack
from packgen.planning.ready import alike, in_no_week, kinds_due, ready_for, subject_key, subject_title, weeks_of
from packgen.planning.term import DEFAULT_KINDS, plan_term
from packgen.reading.models import Recipe, RecipeSheet, Study, Term

PER = {"picture-study": "work", "enlarging-grid": "work", "finish-the-picture": "work", "challenge": "challenge",
       "model": "model"}  # fmt: skip


def person(about: Study, *kinds: str, name: str = "Juno") -> Person:
    recipe = Recipe(Said("older"), "older", tuple(RecipeSheet(Said(kind)) for kind in kinds))
    pack = plan_pack(about, None, recipe, name.lower(), {k: PER.get(k, "study") for k in kinds}, plan_term(about))
    return Person(name, name[:1], "older", items=pack.items)


def test_a_strip_of_tellings_is_needed_in_every_week_with_a_chapter() -> None:
    about = study(chapters=4)
    plan = plan_term(about, family(term()))
    juno = person(about, "telling")
    weeks = [week.number for week in plan.weeks if any(r.kind == "telling" for r in ready_for(juno, week))]
    assert weeks == [week.number for week in plan.weeks if week.chapters]
    assert weeks_of(juno.items[0], plan.weeks) == tuple(weeks)


def test_a_picture_is_needed_only_in_its_own_week() -> None:
    about = study(works=3)
    plan = plan_term(about)
    for item in person(about, "picture-study").items:
        weeks = weeks_of(item, plan.weeks)
        assert weeks == tuple(week.number for week in plan.weeks if item.subject in week.works)


def test_works_with_one_title_are_told_apart() -> None:
    about = study(works=2)
    about = replace(about, works=tuple(replace(work, title=Said("The same")) for work in about.works))
    first, second = person(about, "picture-study").items
    plan = plan_term(about)
    assert weeks_of(first, plan.weeks) != weeks_of(second, plan.weeks)


def test_who_has_no_such_sheet_needs_none() -> None:
    about = study()
    plan = plan_term(about)
    bram = person(about, "words")
    assert all(ready.kind == "words" for week in plan.weeks for ready in ready_for(bram, week))


def test_a_person_whose_pack_is_not_known_needs_all() -> None:
    plan = plan_term(study())
    nobody = Person("Nobody", "N", "older")
    for week in plan.weeks:
        assert {ready.kind for ready in ready_for(nobody, week)} == set(week.sheets)


def test_those_with_the_same_sheets_stand_together() -> None:
    about = study()
    juno, mia, bram = (person(about, "telling", name="Juno"), person(about, "telling", name="Mia"),
                       person(about, "words", name="Bram"))  # fmt: skip
    week = plan_term(about).weeks[0]
    assert [[p.name for p in group] for group, _ in alike((juno, mia, bram), week)] == [["Juno", "Mia"], ["Bram"]]
    assert [(kind, len(group)) for kind, group in kinds_due((juno, mia, bram), week)] == [("telling", 2), ("words", 1)]


@given(studies(), terms())
@settings(max_examples=30, deadline=None)
def test_every_sheet_belongs_to_a_week_or_is_told_to_belong_to_none(about: Study, weeks: Term) -> None:
    plan = plan_term(about, family(weeks))
    one = person(about, *sorted(DEFAULT_KINDS))
    loose = in_no_week(one, plan.weeks)
    for item in one.items:
        assert (item in loose) == (not weeks_of(item, plan.weeks))
    # What is about one work, challenge or model is always planned.
    assert all(isinstance(item.subject, Study) for item in loose if item.sheet in ("challenge", "model"))


def test_subjects_go_by_id_or_title() -> None:
    about = study(works=1)
    assert subject_key(about.works[0]) == "work-0" and subject_title(about.works[0]) == "Work 0"
    assert subject_key(about) == "" and subject_title(about.challenges[0]) == "Challenge 0"
