from dataclasses import replace

from parent_desks import CHILDREN, challenge, desk, family, laid, material, pages_of, said, squeezed, study

from packgen.faults import Said
from packgen.page.blocks import Block
from packgen.page.desk import Desk
from packgen.page.lesson import Lesson
from packgen.page.marks import Text
from packgen.page.needed import needed_by_all
from packgen.page.parents import persons
from packgen.page.start_pages import how_to_blocks
from packgen.page.week_later import first_week
from packgen.page.week_pages import week_moments, week_subject, week_title
from packgen.planning.weeks import Making, Part, Recalled, SheetDue, Week


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


def test_a_making_that_shared_its_week_is_recalled_only_if_it_was_made() -> None:
    about = study(models=(), challenges=(challenge("One"), challenge("Two")))
    on = desk("guide", about)
    made = tuple(Making("challenge", name, k, 60) for k, name in enumerate(("One", "Two")))
    weeks = (replace(on.term.weeks[0], makings=made), replace(on.term.weeks[1], makings=()))
    recalled = replace(weeks[1], recall=(Recalled("challenge", "One"),))
    for both, asked in ((made, "“One”,ifyoumadeit:"), (made[:1], "“One”:")):
        term = replace(on.term, weeks=(replace(weeks[0], makings=both), recalled, *on.term.weeks[2:]))
        assert asked in whole(replace(on, term=term), recalled)


def test_every_week_ends_with_room_for_what_was_said() -> None:
    on = desk("guide")
    pages = [said(page) for page in pages_of(laid("guide"))]
    for week in on.term.weeks:
        number = f"Week{week.number}:"
        own = [page for page in pages if page.startswith(number)]
        kept = [k for k, page in enumerate(own) if "Keep:whatwassaid,foundordrawn" in page]
        assert len(kept) == 1
        later = [k for k, page in enumerate(own) if "Laterintheweek" in page or "Atthetable" in page]
        assert kept[0] >= max(later, default=0)


def test_the_life_to_tell_all_at_once_is_named() -> None:
    on = desk("guide")
    told = {str(text) for _, text in on.study.life}
    assert len(told) > 1 and "tellallofthemwhatisthereforWilfandBram" in whole(on, on.term.weeks[0])


def test_a_models_own_danger_comes_first_and_the_rules_for_all_models_once_in_front() -> None:
    on = desk("guide")
    week = next(week for week in on.term.weeks if any(making.kind == "model" for making in week.makings))
    alone = whole(on, week)
    front = replace(on.pack, items=(*on.pack.items, replace(on.item, sheet="contents")))
    told = whole(replace(on, pack=front), week)
    assert "Ahotgluegunburns" in alone and "Ahotgluegunburns" not in told
    assert "Therulesforcuttingandgluingareonthepage" in told
    assert "Ahotgluegunburns" in words(desk("contents"), how_to_blocks(desk("contents"), persons(on)))


def test_tools_that_only_steps_speak_of_are_to_be_found_too() -> None:
    steps = (Said("Weigh the load."), Said("Tape the thread to it and start the watch."))
    made = replace(challenge("One"), steps=steps, materials=(material("stopwatch", 1, shared=True),))
    on = desk("guide", study(models=(), challenges=(made,)))
    words_of = needed_by_all(on, "challenge", 0, persons(on))
    assert "kitchen scales" in words_of and "sticky tape" in words_of
    assert [words for words in words_of if "watch" in words] == ["stopwatch"]


def test_two_chapters_too_long_for_one_evening_are_read_on_two() -> None:
    on = desk("guide")
    week = next(week for week in on.term.weeks if week.chapters)
    long = replace(week, chapters=week.chapters * 2, other=(Part("read", 52),), sittings=())
    assert "achapteroneachofthe2eveningsbefore" in whole(on, long)
    short = replace(long, other=(Part("read", 20),))
    assert "theeveningbefore;about20minutesaloud,atbedtime" in whole(on, short)


def test_a_tool_for_holes_is_listed_once() -> None:
    steps = (Said("A grown-up makes the holes with a punch or a needle."),)
    on = desk("guide", study(challenges=(replace(challenge("One"), steps=steps),)))
    holes = [said for said in needed_by_all(on, "challenge", 0, persons(on)) if "punch" in said or "needle" in said]
    assert holes == ["a hole punch or a thick needle"]
