"""The small book: as many pages as its fold makes, every picture cut to its box, none of it lost on the way."""

from dataclasses import replace

import pytest
from art_desks import LEVELS, SHEETS_OF_PAPER, art_desk, placed, work

from packgen.faults import Place, Said, Severity
from packgen.folding import schemes
from packgen.page.desk import Desk, Laid
from packgen.page.marks import Text
from packgen.sheets import fold_book


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
    assert len({(page.width, page.height) for page in book.pages}) == 1
    for page in book.pages:
        for p in placed(page):
            assert p.box[0] >= -0.5 and p.box[2] <= page.width + 0.5, scheme
            assert p.box[1] >= -0.5 and p.box[3] <= page.height + 0.5, scheme
    assert sizes(book, "gluebox") == sizes(pieces, "cut")


def test_pages_of_the_childs_own_fill_what_the_fold_leaves_over() -> None:
    (book, _) = fold_book.lay_out(desk("older", works=1))
    assert len(book.pages) % 4 == 0
    shown = [p.mark.text for page in book.pages for p in placed(page, "foot") if isinstance(p.mark, Text)]
    assert shown == [str(k) for k in range(2, len(book.pages))]


def test_a_book_of_eight_pages_takes_no_more_works_than_fit() -> None:
    book, pieces = fold_book.lay_out(desk("younger", works=9))
    assert len(book.pages) == 8 and len(sizes(book, "gluebox")) == len(sizes(pieces, "cut")) < 9


def test_an_unknown_scheme_is_a_fault_at_the_childs_line() -> None:
    at = desk("older", scheme="octavio")
    assert fold_book.lay_out(at) == ()
    assert at.faults[0].place.file == "family.yaml" and "octavo" in at.faults[0].instead
