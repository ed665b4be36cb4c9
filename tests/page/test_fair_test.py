"""A fair test changes one thing: the frame names it, what is measured and what stays, and nothing of the answer."""

import pytest
from page_marks import drawn, words_of
from trial_desks import CANOPY, COINS, trial_desk

from packgen.page.fair_test import fair_frame, fair_note, kept_same


@pytest.mark.parametrize("level", ["older", "upper"])
def test_the_frame_names_change_measure_and_what_stays(level: str) -> None:
    desk, challenge, plan = trial_desk(level)
    said = " ".join(words_of(drawn(desk.kit, fair_frame(desk, challenge, plan), 170.0).marks))
    for words in ("canopy side", "90 mm, 120 mm, 150 mm", "time to fall (s)", "the load", "still air"):
        assert words in said, words
    assert not any(row.expected and f"{row.expected.value:.2f}" in said for row in plan.rows)


def test_the_studys_own_words_for_what_stays_come_first() -> None:
    desk, challenge, plan = trial_desk("older", CANOPY + "    keep_same: [the window, the hand]\n")
    assert kept_same(challenge, plan) == ("the window", "the hand")
    desk, challenge, plan = trial_desk("older", COINS)
    assert kept_same(challenge, plan) == ()
    assert "everything else" in " ".join(words_of(drawn(desk.kit, fair_frame(desk, challenge, plan), 170.0).marks))


def test_the_younger_have_it_in_a_sentence() -> None:
    desk, challenge, plan = trial_desk("younger")
    said = " ".join(words_of(drawn(desk.kit, fair_note(desk, challenge, plan), 170.0).marks))
    assert said.startswith("To be fair, change only the side of the canopy. Keep the same: the load,")
