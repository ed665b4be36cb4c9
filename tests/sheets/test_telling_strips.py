"""Telling strips: every chapter has one, two share a page where two fit, and no strip is left alone on a page."""

from __future__ import annotations

from dataclasses import replace

import pytest
from art_desks import LEVELS, SHEETS_OF_PAPER, art_desk, placed, said

from packgen.faults import Said
from packgen.page.desk import Desk
from packgen.page.marks import Page
from packgen.reading.models import Book, Chapter
from packgen.sheets import telling


def desk(level: str, count: int, *, paper: str = "A4", title: str = "Chapter") -> Desk:
    at = art_desk("telling", level, paper=paper, per="study")
    chapters = tuple(Chapter(Said(f"{title} {k}")) for k in range(1, count + 1))
    at.study = replace(at.study, book=Book(Said("The Lamp on the Quay"), chapters=chapters))
    at.item = replace(at.item, subject=at.study)
    return at


def pages(level: str, count: int, **wishes: str) -> tuple[Page, ...]:
    (laid,) = telling.lay_out(desk(level, count, **wishes))
    return laid.pages


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("count", [1, 2, 7, 24])
@pytest.mark.parametrize("level", LEVELS)
def test_every_chapter_has_a_strip_and_no_page_has_one_where_two_fit(level: str, count: int, paper: str) -> None:
    made = pages(level, count, paper=paper)
    shown = " ".join(said(page) for page in made)
    assert all(f"Chapter {k} " in shown + " " for k in range(1, count + 1))
    strips = [len(placed(page, "strip")) for page in made]
    assert set(strips) == {1 if level == "first" else 2}
    assert ("The whole book" in shown) == (level != "first" and count % 2 == 1)


@pytest.mark.parametrize("level", ["older", "upper"])
def test_strips_of_a_page_share_its_height(level: str) -> None:
    for page in pages(level, 5)[1:]:
        one, other = (p.box[3] - p.box[1] for p in placed(page, "strip"))
        assert min(one, other) > 0.7 * max(one, other)


@pytest.mark.parametrize("level", LEVELS)
def test_there_are_lines_for_what_is_told_beside_or_under_each_drawing(level: str) -> None:
    for page in pages(level, 4):
        for strip in (p.box for p in placed(page, "strip")):
            lines = [p.box for p in placed(page, "baseline") if strip[1] < p.box[1] < strip[3]]
            (drawing,) = [p.box for p in placed(page, "drawbox") if strip[1] < p.box[1] < strip[3]]
            assert len(lines) >= 2 and drawing[3] - drawing[1] < 0.75 * (strip[3] - strip[1])


def test_without_a_book_there_is_nothing_to_tell() -> None:
    at = desk("older", 1)
    at.study = replace(at.study, book=None)
    assert telling.lay_out(at) == ()


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("level", ["older", "upper"])
def test_recall_and_question_have_two_lines_each_on_both_papers(level: str, paper: str) -> None:
    for page in pages(level, 4, paper=paper)[1:]:
        for strip in placed(page, "strip"):
            _, low, _, top = strip.box
            boxed = [p.box for p in placed(page, "drawbox") if low < p.box[1] < top]
            lines = [p.box for p in placed(page, "baseline") if low < p.box[1] < top]
            over, under = max(b[3] for b in boxed), min(b[1] for b in boxed)
            assert sum(line[1] > over for line in lines) == 2 and sum(line[1] < under for line in lines) == 2
            assert sum(under <= line[1] <= over for line in lines) >= 3
