from dataclasses import replace

import pytest
from parent_desks import (
    CHILDREN,
    FAMILIES,
    KINDS,
    LETTER,
    STUDIES,
    TERM,
    assert_well_set,
    desk,
    family,
    laid,
    pages_of,
    said,
    squeezed,
    study,
    texts,
)

from packgen import sheets
from packgen.page.blocks import Block
from packgen.page.desk import Desk
from packgen.page.marks import Text
from packgen.page.parents import height_of, persons
from packgen.page.start_pages import first_blocks, how_to_blocks
from packgen.planning.print_plan import Begin, NumberedSheet, RunInfo

GUIDE = (Begin("Isaure Quenby at a glance", 1), Begin("Week 1: A Cold Harbour", 3), Begin("Key: A wheel", 5, True))


def words(on: Desk, blocks: list[Block]) -> str:
    pen = on.kit.pen()
    for block in blocks:
        block.draw(on.kit, pen, 0.0, 0.0, on.live_width, block.measure(on.kit, on.live_width).least)
    return squeezed("".join(mark.text for mark in pen.marks if isinstance(mark, Text)))


def own_file(face: str = "") -> tuple[RunInfo, ...]:
    """The parent's own file as it is known when its sheets are laid out again; or only its fronts."""
    half = (lambda page: (page + 1) // 2) if face else (lambda page: page)
    parts = (
        NumberedSheet("", None, "Start here", "contents", "Contents", first=1, begins=(Begin("How a week goes", 2),)),
        NumberedSheet("", None, "The term at a glance", "term-plan", "Term plan", first=half(3)),
        NumberedSheet("", None, "Isaure Quenby at a glance", "guide", "Guide", first=half(5), begins=GUIDE),
        NumberedSheet("", None, "Juno", "record", "Portfolio: Juno", "portfolio", first=half(41)),
    )
    sides = "one-sided" if face else "two-sided-long-edge"
    name = f"parent/guide{'-' if face else ''}{face}.pdf"
    return (RunInfo(name, "", "plain", sides, 1, 44, 22, ("contents",), face=face, sheets=parts),)


@pytest.mark.parametrize("face", ["", "fronts"])
def test_the_contents_name_the_page_of_the_file_each_part_begins_on(face: str) -> None:
    (start,) = sheets.lay_out("contents", desk("contents", runs=own_file(face)))
    first = start.pages[0]
    lines = sorted((round(-mark.y, 2), mark.text) for mark in texts(first) if mark.role == "contents")
    titles = {round(-mark.y, 2): mark.text for mark in texts(first) if mark.role == "text"}
    assert [(titles[y], number) for y, number in lines] == [
        ("How a week goes", "2"),
        ("The term at a glance", "3"),
        ("Isaure Quenby at a glance", "5"),
        ("Week 1: A Cold Harbour", "7"),
        ("Key: A wheel", "9"),
        ("Portfolio: Juno", "41"),
    ]


@pytest.mark.parametrize("of", list(FAMILIES))
def test_every_family_gets_contents_without_faults(of: str) -> None:
    home = FAMILIES[of]
    for about in (STUDIES["usual"], STUDIES["smallest"]):
        (start,) = laid("contents", about, home)
        assert_well_set(start.pages, home.printer.margin)


def test_a_sheet_no_week_asks_for_is_named_here() -> None:
    named = (NumberedSheet("Juno", 9, "Left over", "puzzle", "Left over"),)
    run = RunInfo("juno/1-plain-one-sided.pdf", "Juno", "plain", "one-sided", 1, 3, 3, KINDS, sheets=named)
    told = said(*pages_of(laid("contents", of=family(CHILDREN[:1]), runs=(run,))))
    assert "AnyweeksheetsnoweekasksforJuno9Leftover" in told


def test_a_child_without_a_name_has_sheets_called_so() -> None:
    nameless = replace(CHILDREN[0], name=type(CHILDREN[0].name)(""))
    assert "suchas“Sheet3”" in said(*pages_of(laid("contents", of=family((nameless,)))))
    assert "suchas“Juno3”" in said(*pages_of(laid("contents")))


def test_how_a_week_goes_takes_one_page_on_letter() -> None:
    on = desk("contents", of=LETTER)
    assert height_of(on, how_to_blocks(on)) <= on.room(on.head("x", "y"), 0)


def test_the_book_is_got_before_the_first_week() -> None:
    on = desk("contents")
    said = words(on, first_blocks(on, persons(on), ()))
    assert "1.Getthebook:TheLampontheQuay,byTamsinOrre." in said and "5chapters" in said
    without = desk("contents", study(chapters=0))
    assert "Getthebook" not in words(without, first_blocks(without, persons(without), ()))


def test_the_rhythm_has_only_the_parts_this_study_has() -> None:
    with_book, without = desk("contents"), desk("contents", study(chapters=0, works=()))
    assert "Beforehand:achapter,aloudandonce" in words(with_book, how_to_blocks(with_book))
    said = words(without, how_to_blocks(without))
    assert "chapter" not in said and "Lookinsilence" not in said


def test_a_long_sitting_has_the_reading_in_it_and_its_minutes_are_those_of_the_weeks() -> None:
    assert TERM
    long = desk("contents", of=family(term=replace(TERM, minutes=45)))
    told = words(long, how_to_blocks(long))
    found = [sum(s.minutes for s in week.sittings) for week in long.term.weeks]
    low, high = min(found), max(found)
    assert f"{low}–{high}minutesofitatthetable" in told and "Achapter,aloudandonce" in told


def test_files_and_sheets_are_those_of_each_child() -> None:
    on = desk("contents")
    # 14 sheets of plain paper, 2 for the book and 1 of card, in three files
    assert "Juno,11" in words(on, first_blocks(on, persons(on), ()))
    assert "3files,17sheets" in words(on, first_blocks(on, persons(on), ()))
