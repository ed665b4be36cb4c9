from dataclasses import replace

import pytest
from parent_desks import CHILDREN, FREE, LETTER, challenge, desk, family, material, squeezed, study

from packgen.faults import Said
from packgen.page.blocks import Block, Break
from packgen.page.desk import Desk
from packgen.page.key_pages import key_blocks
from packgen.page.marks import Text
from packgen.page.parents import height_of, persons
from packgen.planning.challenges import trial_of
from packgen.reading.models import Challenge, ChildResults, Family, Given, RowTried
from packgen.trials.models import models
from packgen.units import Quantity, quantity

WHOLE = 1e6


def words(on: Desk, blocks: list[Block]) -> str:
    pen = on.kit.pen()
    for block in blocks:
        block.draw(on.kit, pen, 0.0, 0.0, on.live_width, block.measure(on.kit, on.live_width).least)
    return squeezed("".join(mark.text for mark in pen.marks if isinstance(mark, Text)))


def plainest(key: str) -> Challenge:
    """A challenge with a model and only what that model must be given."""
    model = models()[key]
    given = tuple(
        Given(Said(i.name), (Quantity(float(i.tries[len(i.tries) // 2]), i.dimension, i.shown_unit),))
        for i in model.inputs if i.needed and i.tries and i.name != model.vary and not isinstance(i.tries[0], str)
    )  # fmt: skip
    return Challenge(Said(model.title), Said("Build one that does it as well as it can."), Said(key), given)


def parted(blocks: list[Block]) -> list[list[Block]]:
    """The blocks of each page, as the breaks part them."""
    pages: list[list[Block]] = [[]]
    for block in blocks:
        if isinstance(block, Break):
            pages.append([])
        else:
            pages[-1].append(block)
    return pages


@pytest.mark.parametrize("key", list(models()))
@pytest.mark.parametrize("of", [None, LETTER])
def test_the_key_to_every_model_takes_a_page_or_two_parted_before_what_will_not_work(
    key: str, of: Family | None
) -> None:
    on = desk("guide", of=of)
    room = on.room(on.head("Week 1"), 1)
    made = plainest(key)
    blocks = key_blocks(on, made, persons(on), room)
    pages = parted(blocks)
    assert len(pages) <= 2 and all(height_of(on, page) <= room for page in pages)
    said = words(on, blocks)
    model = models()[key]
    assert squeezed(model.formula) in said and squeezed(model.extension) in said
    if len(pages) == 2:
        assert "Whattoexpect" in words(on, pages[0]) and "Ifitwillnotwork" in words(on, pages[1])


def test_a_key_is_set_small_only_where_that_saves_a_page() -> None:
    on = desk("guide")
    large = key_blocks(on, challenge(), persons(on), WHOLE)
    least = height_of(on, large)
    assert height_of(on, key_blocks(on, challenge(), persons(on), least)) == least
    smaller = key_blocks(on, challenge(), persons(on), least - 1.0)
    assert height_of(on, smaller) < least and len(parted(smaller)) == 1
    assert len(parted(key_blocks(on, challenge(), persons(on), least * 0.8))) == 2


def test_the_conditions_of_the_figures_are_told() -> None:
    on = desk("guide")
    said = words(on, key_blocks(on, challenge(), persons(on), WHOLE))
    assert "Workedoutfor:" in said and "loadmass10g" in said and "dropheight2m" in said
    assert "canopyside:120mm,240mm" in said


def test_the_length_of_a_pendulum_that_is_asked_for_is_told() -> None:
    given = (Given(Said("amplitude"), (quantity(10, "deg"),)),)
    change = Given(Said("length"), tuple(quantity(n, "mm") for n in (200, 400, 600)))
    asked = Challenge(Said("Keep time"), Said("Ten swings in 15 s."), Said("pendulum"), given, change,
                      goal=quantity(15, "s"))  # fmt: skip
    on = desk("guide", of=family(place=None))
    said = words(on, key_blocks(on, asked, persons(on), WHOLE))
    # T = 2 pi sqrt(L/g) (OpenStax College Physics, 16.4): L = 9.81 (1.5 / 2 pi)^2 = 0.559 m; less for 10 degrees:
    # the period is 1 + (10 deg in rad)^2 / 16 = 1.0019 longer (first term of the series, from memory), so 0.557 m
    assert "Askedfor:15s.Youneedlength557mm" in said or "length556mm" in said


def test_what_a_list_of_things_brings_along_is_warned_of_once() -> None:
    risky = replace(
        FREE, materials=(material("washing-up bowl", 1), material("thin bin bag", 1), material("tall tin", 1)),
    )  # fmt: skip
    on = desk("guide")
    said = words(on, key_blocks(on, risky, persons(on), WHOLE))
    for words_ in ("alonewithwater", "thinbagovertheface", "rimofanopenedtin"):
        assert said.count(words_) == 1
    told = replace(risky, caution=(Said("Never leave a young child alone with water or a bag or a tin."),))
    again = words(on, key_blocks(on, told, persons(on), WHOLE))
    assert again.count("alonewithwater") == 1 and "thinbagovertheface" not in again


def test_each_level_has_the_question_of_its_own_page() -> None:
    on = desk("guide")
    said = words(on, key_blocks(on, challenge(), persons(on), WHOLE))
    assert "BramWhichcanopyfallsmostslowly?" in said
    assert "JunoHowdoesthesideofthecanopychange" in said


def test_what_each_child_tries_is_told() -> None:
    on = desk("guide")
    made = replace(challenge(), trials=5)
    assert "5ofeachforBramandJuno" in words(on, key_blocks(on, made, persons(on), WHOLE))


def test_where_children_design_one_more_the_key_says_that_nothing_is_predicted_for_it() -> None:
    on = desk("guide")
    wheel = replace(plainest("wheel"), job=Said("design"))
    said = words(on, key_blocks(on, wheel, persons(on), WHOLE))
    assert "TheirownBramandJuno:onemore" in said and "nothingispredictedforit" in said
    assert "Theirown" not in words(on, key_blocks(on, plainest("pendulum"), persons(on), WHOLE))


def test_those_without_the_sheet_are_not_asked() -> None:
    home = family((replace(CHILDREN[0], leave_out=(Said("challenge"),)), CHILDREN[1]))
    on = desk("guide", of=home)
    assert "Juno" not in words(on, key_blocks(on, challenge(), persons(on), WHOLE))


def test_a_challenge_with_faults_says_so_and_builds_on() -> None:
    wrong = replace(challenge(), model=Said("teleporter"))
    on = desk("guide")
    assert "packgencheck" in words(on, key_blocks(on, wrong, persons(on), WHOLE))


def test_the_results_have_a_column_for_each_who_measures() -> None:
    on = desk("guide", of=LETTER)
    pen = on.kit.pen()
    last = key_blocks(on, FREE, persons(on), WHOLE)[-2]
    last.draw(on.kit, pen, 0.0, 0.0, on.live_width, 120.0)
    said = squeezed("".join(mark.text for mark in pen.marks if isinstance(mark, Text)))
    assert "Firstbuild" in said and "Mary" in said and "Bo" not in said.replace("Boats", "")


def test_means_are_filled_in_once_the_numbers_are_known() -> None:
    tried = (RowTried(Said("120 mm"), tuple(map(Said, ("0.8", "0.9", "0.7")))),)
    came_out = ChildResults(Said("A slow fall"), Said("Juno"), tried)
    on = desk("guide", study(challenges=(challenge(),)), family(results=(came_out,)))
    pen = on.kit.pen()
    last = key_blocks(on, challenge(), persons(on), WHOLE)[-2]
    last.draw(on.kit, pen, 0.0, 0.0, on.live_width, 120.0)
    # (0.8 + 0.9 + 0.7) / 3
    assert "0.8" in [mark.text for mark in pen.marks if isinstance(mark, Text)]


def test_what_the_study_asks_further_is_not_asked_again_in_other_words() -> None:
    on = desk("guide")
    model = trial_of(challenge(), on.family)[0].model
    again = replace(challenge(), extension=Said(f"Now {model.extension}"))
    assert squeezed(words(on, key_blocks(on, again, persons(on), WHOLE))).count(squeezed(model.extension)) == 1
    other = replace(challenge(), extension=Said("Paint it in stripes."))
    said = squeezed(words(on, key_blocks(on, other, persons(on), WHOLE)))
    assert squeezed(model.extension) in said and "Paintitinstripes." in said


def test_the_younger_note_their_middle_one_and_the_older_their_mean() -> None:
    on = desk("guide")
    said = squeezed(words(on, key_blocks(on, challenge(), persons(on), WHOLE)))
    assert "Juno:themean.Bram:themiddleone." in said
