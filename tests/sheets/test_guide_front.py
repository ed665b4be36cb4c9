from dataclasses import replace

from parent_desks import CHILDREN, LETTER, SMALLEST, desk, family, squeezed, study

from packgen.faults import Said
from packgen.page.blocks import Block, Break
from packgen.page.desk import Desk
from packgen.page.guide_front import first_blocks, how_to_blocks, life_blocks
from packgen.page.marks import Text
from packgen.page.parents import height_of, persons
from packgen.reading.dates import read_when


def words(on: Desk, blocks: list[Block]) -> str:
    pen = on.kit.pen()
    for block in blocks:
        block.draw(on.kit, pen, 0.0, 0.0, on.live_width, block.measure(on.kit, on.live_width).least)
    return squeezed("".join(mark.text for mark in pen.marks if isinstance(mark, Text)))


def test_how_a_week_goes_takes_one_page_on_letter() -> None:
    on = desk("guide", of=LETTER)
    assert height_of(on, how_to_blocks(on)) <= on.room(on.head("x", "y"), 0)


def test_the_book_is_got_before_the_first_week() -> None:
    on = desk("guide")
    said = words(on, first_blocks(on, persons(on), ()))
    assert "1.Getthebook:TheLampontheQuay,byTamsinOrre." in said and "5chapters" in said
    without = desk("guide", study(chapters=0))
    assert "Getthebook" not in words(without, first_blocks(without, persons(without), ()))


def test_a_long_life_is_parted_between_what_is_told_and_what_is_looked_up() -> None:
    on = desk("guide")
    blocks = life_blocks(on, persons(on))
    assert not any(isinstance(block, Break) for block in blocks)
    parted = life_blocks(on, persons(on), height_of(on, blocks) - 1.0)
    (at,) = [place for place, block in enumerate(parted) if isinstance(block, Break)]
    assert "Shewasbornaboveashop." in words(on, parted[:at]) and "Shekeptbees." in words(on, parted[at + 1 :])


def test_the_rhythm_has_only_the_parts_this_study_has() -> None:
    with_book, without = desk("guide"), desk("guide", study(chapters=0, works=()))
    assert "Achapter,aloudandonce" in words(with_book, how_to_blocks(with_book))
    said = words(without, how_to_blocks(without))
    assert "Achapter" not in said and "Lookinsilence" not in said


def test_files_and_sheets_are_those_of_each_child() -> None:
    on = desk("guide")
    # 14 sheets of plain paper, 2 for the book and 1 of card, in three files
    assert "Juno,11" in words(on, first_blocks(on, persons(on), ()))
    assert "3·17" in words(on, first_blocks(on, persons(on), ()))


def test_each_child_is_told_the_life_nearest_to_its_level() -> None:
    on = desk("guide")
    said = words(on, life_blocks(on, persons(on)))
    assert "TotellWilfandBramShemadelamps." in said and "TotellJunoShewasborn" in said
    one = desk("guide", study(life=(("upper", Said("She lived.")),)))
    assert "TotellShelived." in words(one, life_blocks(one, persons(one)))


def test_an_age_is_told_only_where_the_dates_are_sure() -> None:
    sure, unsure = desk("guide"), desk("guide", study(born=read_when("c. 1834")))
    assert "attheageof67or68" in words(sure, life_blocks(sure, persons(sure)))
    assert "attheage" not in words(unsure, life_blocks(unsure, persons(unsure)))
    exact = desk("guide", study(born=read_when("3 May 1834"), died=read_when("9 November 1902")))
    assert "attheageof68" in words(exact, life_blocks(exact, persons(exact)))


def test_a_study_with_nothing_but_a_name_says_at_least_that() -> None:
    on = desk("guide", SMALLEST, family(CHILDREN[:1], None))
    assert words(on, life_blocks(on, persons(on))) == "Clockmaker."


def test_without_people_every_wording_of_the_life_is_there() -> None:
    on = replace(desk("guide"), print_runs=())
    said = words(on, life_blocks(on, ()))
    assert "Shemadelamps." in said and "Shewasbornaboveashop." in said
