"""Materials in words, cautions each once, and an adult beside the child."""

import pytest
from page_marks import drawn, words_of
from trial_desks import CANOPY, trial_desk

from packgen.page.preparing import care, cautions, material_words, materials

NEEDS = (
    CANOPY
    + """    materials:
      - {item: paper clip, amount: 10, shared: true}
      - {item: stiff card, amount: 2, unit: sheet}
      - {item: thread, amount: 1.2, unit: m}
      - {item: scissors, amount: 1}
      - {item: slice of bread, amount: 2}
      - {item: pennies, amount: 30}
      - old newspaper
"""
)
WARNED = """    caution:
      - Never leave a young child alone with water. Wipe the floor at once.
      - Never leave a young child alone with water, and wipe the floor.
      - water
      - glue
"""


def test_amounts_read_as_words() -> None:
    desk, challenge, _ = trial_desk("older", NEEDS)
    assert [material_words(desk, m) for m in challenge.materials] == [
        "10 paper clips (to share)", "2 sheets of stiff card", "1.2 m of thread", "scissors", "2 slices of bread",
        "30 pennies", "old newspaper",
    ]  # fmt: skip


def test_every_material_is_listed_whether_in_one_column_or_two() -> None:
    desk, challenge, _ = trial_desk("younger", NEEDS)
    for narrow in (True, False):
        (block,) = materials(desk, challenge, narrow)
        said = " ".join(words_of(drawn(desk.kit, block, 170.0).marks))
        assert all(material_words(desk, m) in said for m in challenge.materials)
    bare, challenge, _ = trial_desk("younger")
    assert materials(bare, challenge) == []


def test_a_caution_that_says_the_same_again_is_left_out() -> None:
    desk, challenge, plan = trial_desk("older", CANOPY + WARNED)
    said = cautions(desk, challenge, plan)
    assert sum("young child alone" in words for words in said) == 1
    assert sum("water" in words.lower() for words in said) == 1  # `water` is spoken of already
    assert sum("glue gun" in words.lower() for words in said) == 1
    assert len(set(said)) == len(said) and set(plan.cautions) <= set(said)


def test_cutting_is_warned_of_where_something_is_cut() -> None:
    desk, challenge, plan = trial_desk("older", NEEDS)
    assert any("Cut away from your fingers" in words for words in cautions(desk, challenge, plan))
    desk, challenge, plan = trial_desk("older")
    assert not any("Cut away from your fingers" in words for words in cautions(desk, challenge, plan))


@pytest.mark.parametrize("most", [1, 3, 6])
def test_the_box_ends_with_the_adult_beside_the_child(most: int) -> None:
    desk, challenge, plan = trial_desk("younger", NEEDS)
    (block,) = care(desk, challenge, plan, most)
    said = " ".join(words_of(drawn(desk.kit, block, 170.0).marks))
    assert said.endswith("Work with a grown-up beside you.")
    assert sum(words in said for words in cautions(desk, challenge, plan)) == min(most, 4)
