"""The small book: as many pages as its fold makes, every picture cut to its box, none of it lost on the way."""

from dataclasses import replace

import pytest
from art_desks import LEVELS, SHEETS_OF_PAPER, art_desk, placed, work

from packgen.faults import Place, Said, Severity
from packgen.folding import plan_fold, schemes
from packgen.page.desk import PAPERS, Desk, Laid
from packgen.page.marks import Page, Text
from packgen.sheets import fold_book

LONG = "A Letter to the Harbour Master on the Matter of the Second Lamp and Its Glass"


def desk(level: str, works: int = 3, *, paper: str = "A4", scheme: str = "") -> Desk:
    at = art_desk("fold-book", level, [work(f"Work {k}") for k in range(works)], paper=paper, per="study")
    assert at.child
    at.pack = replace(
        at.pack, child=replace(at.child, book=Said(scheme, Place("family.yaml", 3, 30)) if scheme else None)
    )
    return at


def sizes(laid: Laid, role: str) -> list[tuple[float, float]]:
    boxes = [p.box for page in laid.pages for p in placed(page, role)]
    return sorted((round(min(b[2] - b[0], b[3] - b[1]), 3), round(max(b[2] - b[0], b[3] - b[1]), 3)) for b in boxes)


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
def test_boxes_and_cut_outs_agree_on_every_paper(level: str, paper: str) -> None:
    at = desk(level, paper=paper)
    book, pieces = fold_book.lay_out(at)
    assert pieces.part == "cut-outs" and sizes(book, "gluebox") == sizes(pieces, "cut")
    assert book.fold and len(book.pages) % 4 == 0
    assert not [fault for fault in at.faults if fault.severity is Severity.FAULT]


@pytest.mark.parametrize("scheme", sorted(schemes()))
@pytest.mark.parametrize("level", ["younger", "older"])
def test_every_fold_gets_pages_of_its_own_size(scheme: str, level: str) -> None:
    at = desk(level, scheme=scheme)
    book, pieces = fold_book.lay_out(at)
    plan = plan_fold(scheme, len(book.pages), *PAPERS["A4"], caliper=0.1, margin=at.family.printer.margin)
    for slot in (slot for sheet in plan.sheets for slot in (*sheet.front, *sheet.back) if slot.page):
        page = book.pages[slot.page - 1]
        assert (page.width, page.height) == pytest.approx((slot.page_width, slot.page_height)), (scheme, slot.page)
    for page in book.pages:
        for p in placed(page):
            assert p.box[0] >= -0.5 and p.box[2] <= page.width + 0.5, scheme
            assert p.box[1] >= -0.5 and p.box[3] <= page.height + 0.5, scheme
    assert sizes(book, "gluebox") == sizes(pieces, "cut")


def test_pages_of_the_childs_own_fill_what_the_fold_leaves_over() -> None:
    (book, _) = fold_book.lay_out(desk("older", works=1))
    assert len(book.pages) % 4 == 0
    shown = [p.mark.text for page in book.pages for p in placed(page, "foot") if isinstance(p.mark, Text)]
    assert shown == [str(k) for k in range(2, len(book.pages) + 1)]  # all but the cover


def test_a_book_of_eight_pages_takes_no_more_works_than_fit() -> None:
    book, pieces = fold_book.lay_out(desk("younger", works=9))
    assert len(book.pages) == 8 and len(sizes(book, "gluebox")) == len(sizes(pieces, "cut")) < 9


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
def test_headings_are_of_one_size_and_stand_at_one_height(level: str, paper: str) -> None:
    at = art_desk("fold-book", level, [work(t) for t in ("Hen", LONG, "The Lamp House on the Quay")], paper=paper,
                  per="study")  # fmt: skip
    book, _ = fold_book.lay_out(at)
    firsts = []
    for page in book.pages[1:]:
        lines = [p.mark for p in placed(page, "heading") if isinstance(p.mark, Text)]
        firsts.append((round(lines[0].size, 4), lines[0].face, round(lines[0].y, 3)))
        assert lines[0].size >= 2.6
    assert len(set(firsts)) == 1


def extent(page: Page) -> tuple[float, float]:
    """The lowest point of what a page has beside its number, and the widest empty strip across it (mm)."""
    spans = sorted((p.box[1], p.box[3]) for p in placed(page) if getattr(p.mark, "role", "") != "foot")
    gap, reached = 0.0, spans[0][1]
    for low, high in spans[1:]:
        gap, reached = max(gap, low - reached), max(reached, high)
    return spans[0][0], gap


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("works", [0, 3, 5, 12])
def test_no_page_has_an_empty_third(level: str, works: int) -> None:
    at = desk(level, works)
    at.study = replace(at.study, works=at.study.works if works else ())
    book, *_ = fold_book.lay_out(at)
    assert not [fault for fault in at.faults if fault.severity is Severity.FAULT]
    for page in book.pages:
        low, gap = extent(page)
        assert low < page.height / 4 and gap < page.height / 3, (page.title, gap)


@pytest.mark.parametrize("works", [3, 12])
def test_a_stitched_book_holds_every_work_and_its_cut_out(works: int) -> None:
    book, pieces = fold_book.lay_out(desk("older", works))
    assert len(sizes(book, "gluebox")) == len(sizes(pieces, "cut")) == works
    letters = [p.mark.text for page in pieces.pages for p in placed(page, "chip-letter") if isinstance(p.mark, Text)]
    glued = [p.mark.text.split()[-1] for page in book.pages for p in placed(page) if isinstance(p.mark, Text)
             and p.mark.text.startswith("glue ")]  # fmt: skip
    assert letters == glued == [chr(65 + k) for k in range(works)]


def test_the_youngest_have_room_for_what_a_grown_up_writes() -> None:
    book, _ = fold_book.lay_out(desk("first"))
    page = next(page for page in book.pages if placed(page, "gluebox") and placed(page, "foot"))
    assert "writes down what you say" in " ".join(p.mark.text for p in placed(page) if isinstance(p.mark, Text))
    assert len(placed(page, "baseline")) >= 3


def test_a_child_without_glue_gets_boxes_to_draw_in() -> None:
    at = desk("older")
    assert at.child
    at.pack = replace(at.pack, child=replace(at.child, glue=False))
    book, steps = fold_book.lay_out(at)
    assert not sizes(book, "gluebox") and not sizes(steps, "cut") and len(steps.pages) == 1


def headings(laid: Laid) -> list[str]:
    """The first line of each page's heading."""
    lines = [[p.mark.text for p in placed(page, "heading") if isinstance(p.mark, Text)] for page in laid.pages]
    return [line[0] for line in lines if line]


def test_works_stand_in_order_of_time_or_as_listed_if_one_has_no_date() -> None:
    def order(hen: str, cat: str, dog: str) -> list[str]:
        works = [work("Hen", year=hen), work("Cat", year=cat), work("Dog", year=dog)]
        found = headings(fold_book.lay_out(art_desk("fold-book", "older", works, per="study"))[0])
        return [title for title in found if title in ("Hen", "Cat", "Dog")]

    assert order("1869", "c. 1864", "1870") == ["Cat", "Hen", "Dog"]
    assert order("1869", "1864", "") == ["Hen", "Cat", "Dog"]


@pytest.mark.parametrize("works", [1, 2, 4])
def test_no_two_pages_ask_for_the_same_and_boxes_say_what_they_are_for(works: int) -> None:
    book, _ = fold_book.lay_out(desk("upper", works))
    titles = headings(book)
    assert len(set(titles)) == len(titles)
    said = " ".join(p.mark.text for page in book.pages for p in placed(page) if isinstance(p.mark, Text))
    assert "A place in the story" not in said
    if "What I want to find out" in titles:
        assert "A picture to go with it" in said


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("level", ["older", "upper"])
@pytest.mark.parametrize("works", [5, 7, 8])
def test_folding_steps_stand_well_seen_beside_the_pictures(paper: str, level: str, works: int) -> None:
    _, pieces = fold_book.lay_out(desk(level, works, paper=paper))
    last = pieces.pages[-1]
    assert placed(last, "cut")  # pictures too: no page has the steps alone
    staples = placed(last, "staple")
    assert len(staples) == 2 and all(p.box[3] - p.box[1] > 2.5 for p in staples)


def test_who_staples_is_told_in_words_for_the_age() -> None:
    said = {
        level: " ".join(p.mark.text for page in fold_book.lay_out(desk(level))[1].pages for p in placed(page)
                        if isinstance(p.mark, Text))
        for level in ("older", "upper")
    }  # fmt: skip
    assert "grown-up" in said["older"] and "grown-up" not in said["upper"] and "staples and needle" in said["upper"]


def test_an_unknown_scheme_is_a_fault_at_the_childs_line() -> None:
    at = desk("older", scheme="octavio")
    assert fold_book.lay_out(at) == ()
    assert at.faults[0].place.file == "family.yaml" and "octavo" in at.faults[0].instead
