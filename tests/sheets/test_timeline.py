"""Timelines: true to scale at every level, years before Christ without a year nought, nothing lost however many."""

import sys
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest
from art_desks import LEVELS, SHEETS_OF_PAPER, art_desk, placed

from packgen.faults import Said
from packgen.page.desk import Desk, Laid
from packgen.page.marks import Text
from packgen.reading.dates import read_when
from packgen.reading.models import Event
from packgen.sheets import timeline

sys.path.insert(0, str(Path(__file__).parents[1] / "page"))
from page_marks import overlap


def event(when: str, what: str = "", short: str = "") -> Event:
    return Event(read_when(Said(when)), Said(what or f"In {when}"), Said(short) if short else None)


def desk(level: str, *events: Event, paper: str = "A4", **options: object) -> Desk:
    at = art_desk("timeline", level, paper=paper, per="study", options=tuple(options.items()))
    at.study = replace(at.study, timeline=events)
    at.item = replace(at.item, subject=at.study)
    return at


def words(laids: tuple[Laid, ...]) -> str:
    return " ".join(
        p.mark.text for laid in laids for page in laid.pages for p in placed(page) if isinstance(p.mark, Text)
    )


LIFE = tuple(event(str(1834 + 7 * k), f"Event {k} of a long life", f"event {k}") for k in range(10))


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
def test_every_level_and_paper_has_all_its_events_and_no_texts_on_one_another(level: str, paper: str) -> None:
    at = desk(level, *LIFE, paper=paper)
    laids = timeline.lay_out(at)
    shown = words(laids)
    if level != "first":  # the youngest have a few
        assert all((f"event {k}" if level == "younger" else f"Event {k}") in shown for k in range(10))
    assert not at.faults
    for page in (page for laid in laids for page in laid.pages):
        texts = [p.box for p in placed(page) if isinstance(p.mark, Text)]
        assert not [1 for k, a in enumerate(texts) for b in texts[k + 1 :] if overlap(a, b)]


SAD = (event("1834", "Ada is born"), event("1841", "Her father dies"), event("1850", "She paints a cat"),
       event("1860", "A war begins"), event("1870", "She builds a boat"), event("1902", "Ada dies"))  # fmt: skip


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
def test_the_youngest_draw_a_few_gentle_events_in_order_without_an_axis(paper: str) -> None:
    at = desk("first", *SAD, paper=paper)
    ((page,),) = (laid.pages for laid in timeline.lay_out(at))
    shown = " ".join(p.mark.text for p in placed(page) if isinstance(p.mark, Text))
    assert all(words in shown for words in ("Ada is born", "She paints a cat", "She builds a boat"))
    assert "dies" not in shown and "war" not in shown and not placed(page, "axis", "year")
    boxes = [p.box for p in placed(page, "drawbox")]
    assert len(boxes) == 3 and all(a[1] > b[3] for a, b in pairwise(boxes))
    assert len({round(b[3] - b[1], 3) for b in boxes}) == 1
    bottom = min(b[1] for b in boxes)
    assert bottom < at.margins.bottom + 20.0  # they fill the page


def test_of_many_events_the_youngest_have_at_most_four() -> None:
    (laid,) = timeline.lay_out(desk("first", *LIFE))
    assert len(placed(laid.pages[0], "drawbox")) == 4


@pytest.mark.parametrize("level", ["older", "upper"])
def test_a_number_has_one_line_and_a_thought_has_several(level: str) -> None:
    (laid,) = timeline.lay_out(desk(level, *LIFE))
    page = laid.pages[-1]
    asks = [(p.mark.text, p.box[1]) for p in placed(page, "text") if isinstance(p.mark, Text)]
    lines = [p.box[1] for p in placed(page, "baseline")]

    def lines_under(text: str) -> int:
        top = next(y for words, y in asks if text in words)
        low = max((y for _, y in asks if y < top - 1), default=0.0)
        return sum(low < y < top for y in lines)

    thoughts = ("longest time", "In which ten years") if level == "older" else ("Which ten years hold",)
    assert all(lines_under(words) >= 2 for words in thoughts)


def test_the_oldest_are_asked_about_gaps_and_doubt_and_not_what_the_older_are_asked() -> None:
    life = (*LIFE, event("c. 1872", "An undated sketch"), event("1880-1890", "A long voyage"))
    desks = [desk(level, *life) for level in ("older", "upper")]
    for at in desks:
        at.study = replace(at.study, born=read_when(Said("1834")), died=read_when(Said("1902")))
    older, upper = (words(timeline.lay_out(at)) for at in desks)
    assert "how many years is this bar long?" in older and "what age did" in older
    assert "longest gap" in upper and "“about” date" in upper and "on average" in upper
    assert "how many years is this bar long?" not in upper and "what age did" not in upper


def test_forms_suit_the_level_and_can_be_chosen() -> None:
    assert [laid.part for laid in timeline.lay_out(desk("younger", *LIFE))] == ["", "cards"]
    assert [laid.part for laid in timeline.lay_out(desk("first", *LIFE))] == [""]
    assert [laid.part for laid in timeline.lay_out(desk("older", *LIFE, form="glue"))] == ["", "cards"]


def test_a_child_without_glue_draws_instead() -> None:
    at = desk("younger", *LIFE)
    assert at.child
    at.pack = replace(at.pack, child=replace(at.child, glue=False))
    assert [laid.part for laid in timeline.lay_out(at)] == [""]


def test_years_before_christ_have_no_year_nought() -> None:
    at = desk("older", event("100 BC"), event("44 BC"), event("27 BC"), event("14 AD"), event("50 AD"))
    years = {p.mark.text for laid in timeline.lay_out(at) for page in laid.pages for p in placed(page, "year")
             if isinstance(p.mark, Text)}  # fmt: skip
    assert "0" not in years and any("BC" in year for year in years) and any(year.isdigit() for year in years)


def test_so_many_events_that_no_axis_holds_their_labels_are_numbered_and_listed() -> None:
    many = [event("1834", f"Event number {k} of very many in one year, told at some length here") for k in range(150)]
    at = desk("older", event("1800"), *many, event("1900"), events="all")
    shown = words(timeline.lay_out(at))
    assert all(f"Event number {k} of" in shown for k in range(150)) and "What the numbers stand for" in shown


def test_a_study_without_dates_has_no_timeline() -> None:
    assert timeline.lay_out(desk("older")) == ()


def test_no_label_stands_on_a_strip_that_is_glued() -> None:
    many = [
        event(str(1834 + k), f"Event number {k} of a long and busy life, told at some length here") for k in range(60)
    ]
    (laid,) = timeline.lay_out(desk("older", *many, events="all"))
    joined = [page for page in laid.pages if placed(page, "join")]
    assert len(joined) >= 2
    for page in joined:
        words = [p.box for p in placed(page, "join-words")]
        labels = [p.box for p in placed(page, "text") if isinstance(p.mark, Text)]
        assert words and not [1 for a in words for b in labels if overlap(a, b)]


def test_two_or_three_events_are_no_puzzle_to_glue() -> None:
    assert [laid.part for laid in timeline.lay_out(desk("younger", *LIFE[:3]))] == [""]
    assert [laid.part for laid in timeline.lay_out(desk("younger", *LIFE[:4]))] == ["", "cards"]
