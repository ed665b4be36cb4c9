import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from parent_desks import FAMILIES, LETTER, STUDIES, assert_well_set, laid, said, squeezed

from packgen.page.marks import Line
from packgen.planning.print_plan import NumberedSheet, RunInfo
from packgen.sheets.print_plan import in_lines


@pytest.mark.parametrize(("about", "of"), tuple(itertools.product(("usual", "no makings"), FAMILIES)))
def test_every_family_gets_a_plan_without_faults(about: str, of: str) -> None:
    (plan,) = laid("print-plan", STUDIES[about], FAMILIES[of])
    assert_well_set(plan.pages, FAMILIES[of].printer.margin)


@st.composite
def runs(draw: st.DrawFn) -> list[RunInfo]:
    found = []
    for number in range(draw(st.integers(0, 25))):
        stock = draw(st.sampled_from(("plain", "card")))
        pages = draw(st.integers(1, 60))
        after = tuple(draw(st.lists(st.sampled_from(("Cut it out.", "Fold it by the steps and glue it.")), max_size=2)))
        found.append(RunInfo(f"child-{number % 4}/{number}-{stock}-one-sided.pdf", f"Child {number % 4}", stock,
                             "one-sided", draw(st.integers(1, 3)), pages, pages, ("biography",), after))  # fmt: skip
    return found


@given(runs())
@settings(max_examples=15, deadline=None)
def test_every_file_is_in_the_plan_once(found: list[RunInfo]) -> None:
    words = said(*laid("print-plan", runs=found)[0].pages)
    for run in found:
        assert words.count(squeezed(run.path)) == 1
    sheets = sum(run.sheets_of_paper * run.copies for run in found)
    assert words.count(f"{len(found)}file") == 1 and f"{sheets}sheet" in words


def test_backs_follow_their_fronts_and_take_no_paper() -> None:
    words = said(*laid("print-plan", of=LETTER)[0].pages)
    front, back = words.index("mary/2-fold-book-fronts.pdf"), words.index("mary/2-fold-book-backs.pdf")
    assert front < back
    assert ".pdf" not in words[front + len("mary/2-fold-book-fronts.pdf") : back]
    assert "Turnthestackonitsshortedge" in words[back:]
    assert "onthefronts" in words[back:]


def test_a_two_sided_printer_is_not_told_to_turn_the_stack() -> None:
    assert "Fronts,thenbacks" not in said(*laid("print-plan")[0].pages)


def test_the_ruler_is_on_the_first_page_of_the_guide_and_is_ten_centimetres() -> None:
    for home in FAMILIES.values():
        first = laid("term-plan", of=home)[0].pages[0]
        (ruler,) = [mark for mark in first.marks if isinstance(mark, Line) and mark.role == "ruler"]
        assert ruler.x2 - ruler.x1 == pytest.approx(100.0)


def test_the_scale_is_checked_on_one_page_before_anything_else_is_printed() -> None:
    own = RunInfo("parent/guide.pdf", "", "plain", "two-sided-long-edge", 1, 30, 15, ("guide",))
    child = RunInfo("juno/1-plain-one-sided.pdf", "Juno", "plain", "one-sided", 1, 9, 9, ("telling",))
    words = said(*laid("print-plan", runs=[child, own])[0].pages)
    assert words.index("Printonlypages1and2ofparent/guide.pdf") < words.index("Nowprint")
    assert words.index("Layaruler") < words.index("Putinplainpaper")
    table = words[words.index("Putinplainpaper") :]
    assert table.index("parent/guide.pdf") < table.index("juno/1-plain")


def test_plain_paper_comes_before_card() -> None:
    words = said(*laid("print-plan")[0].pages)
    assert words.index("Putinplainpaper") < words.index("Putinthincard")


@pytest.mark.parametrize("path", ["juno/1-plain-two-sided-long-edge.pdf", "a" * 60 + ".pdf", "x/y-z.pdf"])
def test_a_path_in_lines_loses_no_letter(path: str) -> None:
    lines = in_lines(path)
    assert "".join(lines) == path
    assert all(len(line) <= 22 or "-" not in line[:-1] for line in lines)


def test_a_file_says_which_sheets_are_in_it_and_nothing_is_cut_yet() -> None:
    held = [NumberedSheet("Juno", n, f"Title {n}", "telling", f"Title {n}") for n in (3, 4, 5, 9)]
    book = NumberedSheet("Juno", None, "A book of Isaure", "fold-book", "Small book")
    run = RunInfo("juno/1-plain-one-sided.pdf", "Juno", "plain", "one-sided", 1, 9, 9, ("telling", "fold-book"),
                  ("Cut it out and fold it.",), sheets=(*held, book))  # fmt: skip
    words = said(*laid("print-plan", runs=[run])[0].pages)
    assert "Sheets3–5,9,smallbook" in words and "intoJuno’sfolder" in words
    assert "Cutitout" not in words and "Cutandfoldnothingyet" in words


def test_the_first_leaf_is_not_printed_twice() -> None:
    own = RunInfo("parent/guide.pdf", "", "plain", "two-sided-long-edge", 1, 30, 15, ("guide",))
    assert "Nowprintthatfilefrompage3on,andthen" in said(*laid("print-plan", runs=[own])[0].pages)
    fronts = RunInfo("parent/1-fronts.pdf", "", "plain", "one-sided", 1, 15, 15, ("guide",), face="fronts")
    words = said(*laid("print-plan", runs=[fronts])[0].pages)
    assert "Printonlypage1ofparent/1-fronts.pdf" in words and "thatfilefrompage2on" in words
