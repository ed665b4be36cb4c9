from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from planning_studies import CHILDREN, family

from packgen.faults import Said
from packgen.planning.people import MOST_NAMED, by_level, in_groups, names_of, people
from packgen.planning.plan import PackPlan, default_family
from packgen.reading.models import Child, Recipe

PARENTS = PackPlan("parent", Recipe(Said("parent"), "parent", ()), None, ())


def pack(child: Child | None, level: str) -> PackPlan:
    return PackPlan(level, Recipe(Said(level), level, ()), child, ())


def test_people_are_those_the_packs_are_for() -> None:
    found = people(family(), [*(pack(child, str(child.pack)) for child in CHILDREN), PARENTS])
    assert [(p.name, p.mark, p.level, p.age) for p in found] == [
        ("Juno", "J", "older", 11), ("Bram", "B", "younger", 8), ("Wilf", "W", "first", 4)]  # fmt: skip
    assert all(person.named for person in found)


def test_without_their_packs_the_children_of_the_family_are_meant() -> None:
    assert [person.name for person in people(family(), [PARENTS])] == ["Juno", "Bram", "Wilf"]


def test_a_child_without_a_name_goes_by_its_pack() -> None:
    found = people(default_family(), [], lambda name: f"{name} child")
    assert [(person.name, person.named) for person in found] == [("younger child", False), ("older child", False)]


def test_a_pack_for_nobody_is_a_person_too() -> None:
    (found,) = people(family(()), [pack(None, "upper")])
    assert (found.name, found.level, found.named) == ("Upper", "upper", False)


def test_names_that_come_twice_are_numbered() -> None:
    twins = (CHILDREN[0], replace(CHILDREN[0], age=9))
    assert [person.name for person in people(family(children=twins), [])] == ["Juno 1", "Juno 2"]


@given(st.lists(st.text(min_size=1, max_size=8).map(str.strip).filter(bool), min_size=1, max_size=8))
def test_marks_tell_everybody_apart(names: list[str]) -> None:
    children = tuple(Child(Said(name)) for name in names)
    marks = [person.mark.casefold() for person in people(family(children=children), [])]
    assert len(set(marks)) == len(marks)


def test_marks_are_as_short_as_can_be() -> None:
    children = tuple(Child(Said(name)) for name in ("Maximilian", "Mary", "Max", "Moritz", "Bo"))
    assert [person.mark for person in people(family(children=children), [])] == ["Maxi", "Mar", "Max", "Mo", "B"]


def test_levels_go_from_the_youngest_up() -> None:
    found = people(family(), [])
    assert [level for level, _ in by_level(found)] == ["first", "younger", "older"]
    assert names_of(found) == "Juno, Bram and Wilf" and names_of(found[:1]) == "Juno" and names_of([]) == ""


def test_of_a_great_many_those_who_have_the_same_sheets_are_spoken_of_together() -> None:
    children = tuple(Child(Said(f"Child {k}"), 10, Said(("older", "first")[k % 2])) for k in range(MOST_NAMED + 1))
    found = people(family(children=children), [])
    few, many = (in_groups(found[:count], lambda level, count: f"{level} {count}") for count in (MOST_NAMED, None))
    assert few == found[:MOST_NAMED]
    assert [(person.name, person.level) for person in many] == [("older 13", "older"), ("first 12", "first")]
    assert len({person.mark for person in many}) == 2
