"""What a child designs itself, the goal of a challenge, and what stands beside them, in the finished files."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from challenge_files import CANOPY, NAMES, kept, made

LEVELS = ("younger", "older", "upper")
WHEEL = """
  - title: A wheel
    brief: Build a wheel that water can turn.
    model: wheel
    given: {wheel radius: 60 mm, axle radius: 4 mm, load mass: 10 g, lift height: 500 mm}
    change: {number of blades: [3, 6, 12]}
    materials: [{item: scissors}, {item: thread}, {item: tap}, {item: box}, {item: jug}, {item: clips}, {item: tape}]
    steps:
      - Before you cut, cover the card on both sides with wide tape. Then water does not make it soft at once.
      - Push one end of the stick through the hole. Tape it so that it turns with the wheel and does not slip.
      - Cut a notch in the rim of the box, in front and behind, and lay the stick in the notches over the sink.
      - Tie the thread to that end and the clips to the thread. They hang half a metre below the stick in the air.
      - A grown-up lets the tap run as hard each time. It should fill the jug in the same time as before.
      - Time how long the clips take to rise to the stick. Then change the wheel and begin again with the next.
"""
PENDULUM = """
  - title: A pendulum
    brief: Find a thread that keeps time.
    model: pendulum
    given: {amplitude: 10 deg, swings: 10}
    change: {length: [200 mm, 400 mm, 600 mm]}
    measure: {what: time for the swings, unit: s}
    goal: 15 s
"""
OWN = {"younger": "mine", "older": "my own", "upper": "my own"}


@pytest.mark.parametrize("level", LEVELS)
def test_where_the_planned_ones_are_on_card_the_child_designs_one_more(level: str) -> None:
    pages = kept(WHEEL).text(level)
    ideas = next(page for page in pages if "on card: 3 blades, 6 blades, 12 blades" in page)
    assert "your own" in ideas or "Design a rival" in ideas
    tried = [page for page in pages if re.search(r"\b12 " + OWN[level], page)]
    assert tried, "the table has a row for the child's own"
    if level == "younger":
        assert "3 6 12 mine" in " ".join(pages), "the chart has a bar for it"
    else:
        assert "Mark your own design with a star." in " ".join(pages)
    assert "ou" in pages[-1] and re.search(r"[Yy]our own", pages[-1])
    assert len(kept(WHEEL).text(level, part="own")) == 1


@pytest.mark.parametrize("level", LEVELS)
def test_without_card_the_planned_ones_are_the_childs_design(level: str) -> None:
    built = kept(PENDULUM.replace("    goal: 15 s\n", "    job: design\n"))
    text = " ".join(built.text(level))
    assert "on card" not in text and OWN[level] not in text.split() and not built.text(level, part="own")


@pytest.mark.parametrize("level", ["younger", "older"])
def test_each_copy_of_a_draft_says_what_it_is_for(level: str, tmp_path: Path) -> None:
    built = made(tmp_path, CANOPY, levels=(level,), child=", extra: {design-draft: 2}")
    title = "Choose and draw" if level == "younger" else "Design draft"
    drafts = [page for page in built.text(level) if page.startswith(title)]
    assert len(drafts) == 3 and len({re.sub(r"page \d", "", page) for page in drafts}) == 3
    for page, words in zip(drafts, ("First dra", "A better dra", "Spare page for one more dra"), strict=True):
        assert words in page


@pytest.mark.parametrize("level", LEVELS)
def test_the_goal_is_asked_for_and_has_a_place_for_its_answer(level: str) -> None:
    pages = kept(PENDULUM).text(level)
    assert "Then find the length that gives 15 s." in pages[0]
    text = " ".join(pages)
    assert re.search(r"[Ff]or 15 s, the length of the thread (must be|is) about _+ mm", text)
    assert not re.search(r"\b5[56]\d mm", text)  # the answer: 15 s takes about 560 mm


def test_the_look_back_asks_the_question_again_and_names_the_longer_thread() -> None:
    text = " ".join(kept(PENDULUM).text("older"))
    assert "Begin: “The longer the thread, …”" in text and "You were asked to find the length that gives 15 s." in text
    text = " ".join(kept(PENDULUM.replace("    goal: 15 s\n", "")).text("older"))
    assert text.count("How does the length of the thread change the time for 10 swings?") == 2
    assert "the question of this challenge" not in text and "the more …" not in text


@pytest.mark.parametrize("level", LEVELS)
def test_a_wide_hole_in_the_middle_is_made_with_a_pencil_and_clay(level: str) -> None:
    text = " ".join(kept(WHEEL).text(level))
    assert "a sharp pencil and a lump of modelling clay" in text and "hole punch" not in text


def test_the_steps_of_the_younger_stand_on_one_page() -> None:
    pages = kept(WHEEL).text("younger")
    steps = [k for k, page in enumerate(pages) for n in range(1, 11) if re.search(rf"(?<![\d.]){n}\. [A-Z]", page)]
    assert len(set(steps)) == 1 and len(steps) >= 10


def test_the_youngest_are_sent_to_the_card_of_a_named_child() -> None:
    text = " ".join(kept(WHEEL).text("first"))
    assert f"in {NAMES['younger']}’s pack: “A wheel”" in text


def test_what_the_youngest_need_is_in_letters_of_one_size_in_all_challenges() -> None:
    sizes = set()
    for challenge in (CANOPY, WHEEL):
        page = next(p for p in kept(challenge).pages("first") if "We need" in (p.extract_text() or ""))
        words = [(word["text"], round(word["size"], 1)) for word in page.extract_words(extra_attrs=["size"])]
        need = next(size for text, size in words if text == "need")
        assert next(size for text, size in words if text == "thread") == need
        sizes.add(need)
    assert len(sizes) == 1


def test_a_value_without_a_net_is_told(tmp_path: Path) -> None:
    built = made(tmp_path, WHEEL.replace("[3, 6, 12]", "[2, 6, 12]"), levels=("older",))
    assert any("no template for 2 blades" in fault.message for fault in built.faults)


def test_the_upper_level_reads_of_adults_and_works_out_means_unasked() -> None:
    text = " ".join(kept(WHEEL).text("upper"))
    assert "grown-up" not in text and "An adult lets the tap run" in text and "Work out the means" not in text
    assert "A grown-up lets the tap run" in " ".join(kept(WHEEL).text("older"))


def test_the_card_for_the_childs_own_wheel_has_its_hole_and_no_word_of_an_outside() -> None:
    (page,) = kept(WHEEL).pages("older", part="own")
    text = page.extract_text()
    assert "A wheel: your own" in text and "outside" not in text and "fold" not in text
    cards = kept(WHEEL).text("older", part="templates")
    assert len(cards) == 3 and not any("outside" in card for card in cards)
    middle = (float(page.width) / 2, float(page.height) / 2)
    rings = [c for c in page.curves if abs(c["x1"] - c["x0"] - 8 * 72 / 25.4) < 1]
    assert any(abs((c["x0"] + c["x1"]) / 2 - middle[0]) < 1 for c in rings)
