"""Timelines: true to scale at every level, years before Christ without a year nought, nothing lost however many."""

import sys
from dataclasses import replace
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
    assert all((f"event {k}" if level in ("first", "younger") else f"Event {k}") in shown for k in range(10))
    assert not at.faults
    for page in (page for laid in laids for page in laid.pages):
        texts = [p.box for p in placed(page) if isinstance(p.mark, Text)]
        assert not [1 for k, a in enumerate(texts) for b in texts[k + 1 :] if overlap(a, b)]


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
