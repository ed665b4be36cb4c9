"""The desk: pages numbered through, what does not fit told and not lost silently, a child's wishes kept."""

import sys
from dataclasses import replace
from pathlib import Path

import pytest
from page_marks import box, words_of

from packgen.faults import Place, Said, Severity
from packgen.page.blocks import Block, DrawBox, Prose
from packgen.page.desk import Desk, Section
from packgen.page.marks import Text

sys.path.insert(0, str(Path(__file__).parents[1] / "sheets"))
from study_desks import words_desk

LEVELS = ("first", "younger", "older", "upper")


def desk(level: str = "older", **more: object) -> Desk:
    return words_desk(level, [("ebb", "the tide going out")], **more)  # type: ignore[arg-type]


def boxes(count: int, least: float = 60.0) -> list[Block]:
    return [DrawBox(f"box{k}", least=least) for k in range(count)]


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_pages_are_numbered_through_and_stay_in_their_margins(level: str, paper: str) -> None:
    at = desk(level, paper=paper)
    pages = at.pages(at.head("Draw", "Saltmere"), boxes(9))
    assert len(pages) > 1
    for number, page in enumerate(pages, 1):
        assert (page.width, page.height) == at.paper
        assert f"page {number} of {len(pages)}" in " ".join(words_of(page.marks))
        edge = at.margins
        for mark in page.marks:
            left, bottom, right, top = box(mark)
            assert left >= edge.left - 1.0 and right <= page.width - edge.right + 1.0
            assert bottom >= edge.bottom - 1.5 and top <= page.height - edge.top + 1e-6
    shown = [word for page in pages for word in words_of(page.marks) if word.startswith("box")]
    assert shown == [f"box{k}" for k in range(9)]


def test_a_part_too_high_for_a_page_is_a_fault_at_its_subject() -> None:
    at = desk()
    at.item = replace(at.item, subject=Said("x", Place("study.yaml", 9, 3)))  # type: ignore[arg-type]
    pages = at.pages(at.head("Draw"), [DrawBox("too high", least=500.0), DrawBox("fits", least=50.0)])
    assert [fault.place.line for fault in at.faults] == [9]
    assert at.faults[0].severity is Severity.FAULT and "too high" in at.faults[0].message and at.faults[0].instead
    assert "fits" in words_of(pages[0].marks)


def test_letters_lost_on_a_page_are_a_fault() -> None:
    at = desk()
    at.pages(at.head("Draw"), [Prose("aसb")])
    assert len(at.faults) == 1 and "Devanagari" in at.faults[0].message


def test_a_part_comes_in_as_many_copies_as_asked() -> None:
    at = desk()
    head = at.head("Draw")
    pages = at.sections([Section(head, tuple(boxes(1))), Section(head, tuple(boxes(1)), copies=3)], name="Set")
    assert len(pages) == 4 and "page 4 of 4" in " ".join(words_of(pages[3].marks))


def test_extra_copies_are_one_more_than_none() -> None:
    at = desk()
    assert at.child and at.copies_of("design-draft") == 1
    more = replace(at.child, extra=((Said("design-draft"), 2),))
    at.pack = replace(at.pack, child=more)
    assert at.copies_of("design-draft") == 3


def test_an_option_that_is_no_number_is_told_at_the_recipe() -> None:
    at = desk()
    at.item = replace(at.item, options=(("most", Said("many", Place("packs/older.yaml", 9, 20))),))
    assert at.count("most", 4) == 4
    assert at.faults[0].place == Place("packs/older.yaml", 9, 20)


def test_what_does_not_depend_on_the_child_is_made_once() -> None:
    at = desk()
    made = [at.once("key", lambda: object()) for _ in range(3)]
    assert made[0] is made[1] is made[2]


def test_the_foot_names_study_sheet_child_and_week() -> None:
    at = desk()
    (page,) = at.pages(at.head("New words"), boxes(1), name="Words")
    foot = [mark.text for mark in page.marks if isinstance(mark, Text) and mark.role == "foot"]
    assert foot == ["Isaure Quenby · Words", "week 2 · page 1 of 1"]
    assert [mark.text for mark in page.marks if isinstance(mark, Text) and mark.role == "sheet-number"] == ["Juno"]
