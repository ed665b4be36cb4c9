from dataclasses import replace

from parent_desks import CHILDREN, desk, family, squeezed, study

from packgen.page.blocks import Block
from packgen.page.desk import Desk
from packgen.page.lesson import Lesson
from packgen.page.marks import Text
from packgen.page.parents import persons
from packgen.page.week_later import first_week
from packgen.page.week_pages import week_moments, week_subject, week_title
from packgen.planning.weeks import SheetDue, Week


def words(on: Desk, blocks: list[Block]) -> str:
    pen = on.kit.pen()
    for block in blocks:
        block.draw(on.kit, pen, 0.0, 0.0, on.live_width, block.measure(on.kit, on.live_width).least)
    return squeezed("".join(mark.text for mark in pen.marks if isinstance(mark, Text)))


def lesson(on: Desk, week: Week) -> Lesson:
    return Lesson(on, week, persons(on), life_page="5")


def whole(on: Desk, week: Week) -> str:
    return words(on, list(week_moments(lesson(on, week)).all))


def test_the_first_week_tells_the_life_and_recalls_nothing() -> None:
    on = desk("guide")
    said = whole(on, on.term.weeks[0])
    assert "Tellthelife" in said and "Whattosayisonpage5" in said and "Recall" not in said


def test_what_was_done_last_week_is_recalled() -> None:
    on = desk("guide")
    for before, week in zip(on.term.weeks, on.term.weeks[1:], strict=False):
        said = whole(on, week)
        if week.recall and any(part.name == "recall" for part in week.sittings[0].parts):
            assert any(squeezed(item.title) in said for item in week.recall) or not before.chapters


def test_minutes_stand_beside_each_part() -> None:
    on = desk("guide")
    week = next(week for week in on.term.weeks if week.chapters and week.number > 1)
    said = whole(on, week)
    assert "Recall1min" in said and "Tellback5min" in said and "Read18min" in said
    assert said.index("Before") < said.index("Read18min") < said.index("Atthetable") < said.index("Recall1min")


def test_every_week_has_another_thing_to_listen_for() -> None:
    on = desk("guide")
    weeks = [week for week in on.term.weeks if week.chapters]
    first, second = (whole(on, week) for week in weeks[:2])
    assert "Namesplacesandnumbers" in first.replace(",", "") or "Names,places" in first
    assert "Names,places" not in second


def test_titles_say_what_the_week_is_about() -> None:
    on = desk("guide")
    week = on.term.weeks[0]
    assert week_title(on, week) == "Week 1: Chapter 0"
    assert week_subject(on, week) == "Wednesday 3 February 2027"
    empty = replace(week, number=9, chapters=(), works=(), makings=(), due=(), review=False, spare=True)
    assert week_title(on, empty) == "Week 9: Time to catch up"
    assert week_title(on, replace(empty, spare=False, review=True)) == "Week 9: Looking back"
    drawn = replace(empty, spare=False, due=(SheetDue("timeline"), SheetDue("words")))
    assert week_title(on, drawn) == "Week 9: Timeline, words"


def test_a_spare_week_says_what_it_is_good_for() -> None:
    on = desk("guide")
    spare = replace(on.term.weeks[1], chapters=(), works=(), again=(), makings=(), due=(), words=(), spare=True)
    assert "Finishwhatishalfdone" in whole(on, spare)


def test_a_making_of_two_weeks_is_tested_with_the_key_of_the_first() -> None:
    about = study(chapters=2, works=(), models=())
    on = desk("guide", about, family(CHILDREN, replace(family().term, weeks=12) if family().term else None))
    parts = [(week, making) for week in on.term.weeks for making in week.makings if making.parts == 2]
    assert parts
    for week, making in parts:
        if making.part == 2:
            said = whole(on, week)
            assert f"Testwhatwasbuiltinweek{first_week(lesson(on, week), making)}." in said
