from dataclasses import replace

from parent_desks import CHILDREN, desk, family, squeezed, study
from test_week_pages import lesson, words

from packgen.page.week_answers import answer_steps
from packgen.planning.weeks import SheetDue
from packgen.reading.models import Child, Study


def answers(kind: str, about: Study | None = None, children: tuple[Child, ...] = CHILDREN) -> str:
    found = about or study()
    on = desk("guide", found, family(children))
    week = replace(on.term.weeks[0], due=(SheetDue(kind),))
    these = lesson(on, week)
    item = next(item for person in these.persons for item in person.items)
    persons = tuple(replace(p, items=(*p.items, replace(item, sheet=kind, subject=None))) for p in these.persons)
    return words(on, answer_steps(replace(these, persons=persons)))


def test_map_answers_allow_for_degrees_that_were_rounded() -> None:
    # 548 km by the haversine formula from Saltmere (invented, 50.4 N 4.9 W) to 48.86 N 2.34 E: a twentieth either way.
    found = answers("where-in-the-world")
    assert "MapanswersforJuno,fromSaltmere" in found and "520–580km" in found and "Far" in found


def test_no_map_answers_where_places_are_named_on_the_map() -> None:
    assert answers("where-in-the-world", children=CHILDREN[1:]) == ""


def test_the_busiest_years_and_the_longest_gap_stand_with_the_timeline() -> None:
    found = answers("timeline")
    assert "Thelongesttimewithoutanevent" in found and "Thetenyearsinwhichmostbegan" in found
    assert squeezed("for Juno, in years") in found


def test_only_the_oldest_are_told_how_an_area_grows() -> None:
    rhea = replace(CHILDREN[0], name=type(CHILDREN[0].name)("Rhea"), pack=type(CHILDREN[0].pack)("upper"), age=14)
    assert "2:1makesit4times" in answers("enlarging-grid", children=(rhea,))
    assert answers("enlarging-grid") == ""
