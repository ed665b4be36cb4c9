from dataclasses import replace

import pytest
from parent_desks import CHILDREN, FREE, LETTER, challenge, desk, family, squeezed, study

from packgen.faults import Said
from packgen.page.blocks import Block
from packgen.page.desk import Desk
from packgen.page.key_pages import key_blocks
from packgen.page.marks import Text
from packgen.page.parents import height_of, persons
from packgen.reading.models import Challenge, ChildResults, Given, RowTried
from packgen.trials.models import models
from packgen.units import Quantity

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


@pytest.mark.parametrize("key", list(models()))
def test_the_key_to_every_model_fits_a_page_of_a4(key: str) -> None:
    on = desk("guide")
    room = on.room(on.head("Week 1"), 1)
    made = plainest(key)
    blocks = key_blocks(on, made, persons(on), room)
    assert height_of(on, blocks) <= room
    said = words(on, blocks)
    model = models()[key]
    assert squeezed(model.formula) in said and squeezed(model.extension) in said
    assert all(squeezed(caution) in said for caution in model.cautions)


def test_a_key_is_set_small_only_where_that_saves_a_page() -> None:
    on = desk("guide")
    large = key_blocks(on, challenge(), persons(on), WHOLE)
    least = height_of(on, large)
    assert height_of(on, key_blocks(on, challenge(), persons(on), least)) == least
    assert height_of(on, key_blocks(on, challenge(), persons(on), least - 1.0)) < least
    assert height_of(on, key_blocks(on, challenge(), persons(on), 10.0)) == least


def test_each_level_has_the_question_of_its_own_page() -> None:
    on = desk("guide")
    said = words(on, key_blocks(on, challenge(), persons(on), WHOLE))
    assert "WilfandBramWhichcanopyfallsmostslowly?" in said
    assert "JunoHowdoesthesideofthecanopychange" in said


def test_what_each_child_tries_is_told() -> None:
    on = desk("guide")
    made = replace(challenge(), trials=5)
    assert "5ofeachforBramandJuno" in words(on, key_blocks(on, made, persons(on), WHOLE))


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
    last = key_blocks(on, FREE, persons(on), WHOLE)[-1]
    last.draw(on.kit, pen, 0.0, 0.0, on.live_width, 120.0)
    said = squeezed("".join(mark.text for mark in pen.marks if isinstance(mark, Text)))
    assert "Firstbuild" in said and "Mary" in said and "Bo" not in said.replace("Boats", "")


def test_means_are_filled_in_once_the_numbers_are_known() -> None:
    tried = (RowTried(Said("120 mm"), tuple(map(Said, ("0.8", "0.9", "0.7")))),)
    came_out = ChildResults(Said("A slow fall"), Said("Juno"), tried)
    on = desk("guide", study(challenges=(challenge(),)), family(results=(came_out,)))
    pen = on.kit.pen()
    last = key_blocks(on, challenge(), persons(on), WHOLE)[-1]
    last.draw(on.kit, pen, 0.0, 0.0, on.live_width, 120.0)
    # (0.8 + 0.9 + 0.7) / 3
    assert "0.8" in [mark.text for mark in pen.marks if isinstance(mark, Text)]
