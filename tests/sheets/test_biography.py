"""Biography: the life of the level in full, and nothing asked that the study cannot answer."""

from dataclasses import replace

import pytest
from art_desks import LEVELS, SHEETS_OF_PAPER, art_desk, picture, placed

from packgen.faults import Said
from packgen.page.desk import Desk
from packgen.page.marks import Picture, Text
from packgen.reading.dates import read_when
from packgen.sheets import biography

LONG = "\n".join(f"Paragraph {k}. " + "She lived by the sea and made lamps for the boats. " * 6 for k in range(9))


def desk(level: str, life: str = "She made lamps.", *, paper: str = "A4", **more: object) -> Desk:
    at = art_desk("biography", level, paper=paper, per="study")
    at.study = replace(at.study, life=((level, Said(life)),), **more)  # type: ignore[arg-type]
    at.item = replace(at.item, subject=at.study)
    return at


def shown(at: Desk) -> str:
    (laid,) = biography.lay_out(at)
    return " ".join(p.mark.text for page in laid.pages for p in placed(page) if isinstance(p.mark, Text))


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("life", ["She made lamps.", LONG])
def test_the_whole_life_is_on_paper(level: str, paper: str, life: str) -> None:
    at = desk(level, life, paper=paper)
    words = shown(at)
    for word in set(life.split()):
        assert words.split().count(word) >= life.split().count(word), word
    assert not at.faults


def test_dates_are_only_asked_where_the_study_has_them() -> None:
    with_dates = {"born": read_when(Said("1834")), "died": read_when(Said("1902"))}
    for level in ("younger", "older"):
        assert "orn" in shown(desk(level, **with_dates))
        assert "Died" not in shown(desk(level))


def test_a_portrait_stands_beside_the_box_to_draw() -> None:
    for level in LEVELS:
        (laid,) = biography.lay_out(desk(level, portrait=picture(270, 360)))
        found = [p for page in laid.pages for p in placed(page) if isinstance(p.mark, Picture)]
        assert len(found) == 1
        (none,) = biography.lay_out(desk(level))
        assert not [p for page in none.pages for p in placed(page) if isinstance(p.mark, Picture)]


def test_what_is_drawn_on_stays_on_one_side_of_the_paper() -> None:
    for level in LEVELS:
        (laid,) = biography.lay_out(desk(level, LONG))
        assert (laid.sides == "one-sided") == (level in ("first", "younger"))
