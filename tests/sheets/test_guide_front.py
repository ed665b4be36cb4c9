from dataclasses import replace

from parent_desks import CHILDREN, SMALLEST, desk, family, squeezed, study

from packgen.faults import Said
from packgen.page.blocks import Block, Break
from packgen.page.desk import Desk
from packgen.page.guide_front import life_blocks
from packgen.page.marks import Text
from packgen.page.parents import height_of, persons
from packgen.reading.dates import read_when


def words(on: Desk, blocks: list[Block]) -> str:
    pen = on.kit.pen()
    for block in blocks:
        block.draw(on.kit, pen, 0.0, 0.0, on.live_width, block.measure(on.kit, on.live_width).least)
    return squeezed("".join(mark.text for mark in pen.marks if isinstance(mark, Text)))


def test_a_long_life_is_parted_between_what_is_told_and_what_is_looked_up() -> None:
    on = desk("guide")
    blocks = life_blocks(on, persons(on))
    assert not any(isinstance(block, Break) for block in blocks)
    parted = life_blocks(on, persons(on), height_of(on, blocks) - 1.0)
    (at,) = [place for place, block in enumerate(parted) if isinstance(block, Break)]
    assert "Shewasbornaboveashop." in words(on, parted[:at]) and "Shekeptbees." in words(on, parted[at + 1 :])


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
