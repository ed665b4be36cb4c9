"""Pictures to cut out: each exactly as large as its box, whether upright or turned; turned only to save paper."""

from __future__ import annotations

import pytest
from art_desks import SHEETS_OF_PAPER, art_desk, picture, placed
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.page.cut_outs import CutOut, cut_out_pages
from packgen.page.marks import Group, Page, Picture


def cut(sizes: list[tuple[float, float]], paper: str = "A4") -> tuple[Page, ...]:
    desk = art_desk("fold-book", "younger", paper=paper)
    cuts = [CutOut("ABCDEFGHIJ"[k], f"Picture {k}", picture(), wide, high) for k, (wide, high) in enumerate(sizes)]
    return cut_out_pages(desk, desk.head("Cut and glue", "For the book", date=False), cuts)


def is_turned(page: Page) -> bool:
    return any(isinstance(mark, Group) and mark.matrix[1] == 1.0 for mark in page.marks)


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
def test_tall_pictures_are_turned_where_that_saves_a_sheet(paper: str) -> None:
    tall = [(100.0, 160.0)] * 3
    pages = cut(tall, paper)
    assert len(pages) == 2 and any(is_turned(page) for page in pages)  # upright only one would fit a page


def test_pictures_that_fit_as_they_are_stay_upright() -> None:
    (page,) = cut([(80.0, 60.0), (80.0, 60.0)])
    assert not is_turned(page)


@given(st.lists(st.tuples(st.floats(25, 165), st.floats(25, 165)), min_size=1, max_size=5))
@settings(max_examples=15, deadline=None)
def test_every_picture_is_as_large_as_its_box_and_none_lies_on_another(sizes: list[tuple[float, float]]) -> None:
    boxes = []
    for number, page in enumerate(cut(sizes)):
        for p in placed(page):
            if isinstance(p.mark, Picture):
                left, low, right, top = p.box
                assert left > 15.9 and right < page.width - 15.9 and low > 15.0
                assert sorted((round(right - left, 3), round(top - low, 3))) in [
                    sorted((round(w, 3), round(h, 3))) for w, h in sizes
                ]
                boxes.append((number, p.box))
    assert len(boxes) == len(sizes)
    for k, (page_a, a) in enumerate(boxes):
        for page_b, b in boxes[:k]:
            assert page_a != page_b or (
                min(a[2], b[2]) - max(a[0], b[0]) < 0.01 or min(a[3], b[3]) - max(a[1], b[1]) < 0.01
            )
