"""Biography: the life of the level in full, and nothing asked that the study cannot answer."""

from dataclasses import replace

import pytest
from art_desks import LEVELS, SHEETS_OF_PAPER, art_desk, picture, placed, read_back

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


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("sentences", [1, 8, 12, 14, 18, 24, 30, 40])
def test_no_page_of_the_youngest_is_left_half_empty_however_long_the_story(paper: str, sentences: int) -> None:
    at = desk("first", "She lived by the sea and made lamps for the boats. " * sentences, paper=paper)
    (laid,) = biography.lay_out(at)
    mm = 72 / 25.4
    with read_back(laid.pages) as pdf:
        for page in pdf.pages:
            marks = [*page.chars, *page.rects, *page.curves, *page.lines]
            lowest = min(m["y0"] for m in marks if m["y0"] > 20.0 * mm)  # over the foot
            assert lowest < 0.3 * page.height, f"nothing below {lowest / mm:.0f} mm"


def test_dates_are_only_asked_where_the_study_has_them() -> None:
    with_dates = {"born": read_when(Said("1834")), "died": read_when(Said("1902"))}
    for level in ("younger", "older"):
        assert "Born:" in shown(desk(level, "Ada was born in 1834 and died in 1902.", **with_dates))
        assert "Died" not in shown(desk(level))


@pytest.mark.parametrize("level", ["older", "upper"])
def test_only_what_is_in_the_story_is_to_be_found_there(level: str) -> None:
    to_the_day = {"born": read_when(Said("3 May 1834")), "died": read_when(Said("9 November 1902"))}
    words = shown(desk(level, "Ada was born in 1834.", **to_the_day))
    assert "Born:" in words and "Died:" not in words and "Age at death" not in words
    both = "Ada was born in 1834 and died in 1902."
    assert ("Age at death" in shown(desk(level, both, **to_the_day))) == (level == "upper")
    years = {"born": read_when(Said("1834")), "died": read_when(Said("1902"))}
    assert "Age at death" not in shown(desk(level, both, **years))  # 67 or 68: no one answer


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
def test_the_name_of_a_fact_stands_on_its_own_line(paper: str) -> None:
    at = desk("older", "Ada was born in 1834.", paper=paper, born=read_when(Said("1834")))
    (laid,) = biography.lay_out(at)
    for page in laid.pages:
        for p in placed(page):
            if isinstance(p.mark, Text) and p.mark.text == "Born:":
                lines = [line.box for line in placed(page, "baseline") if line.box[0] <= p.box[0] + 0.1]
                assert min(abs(p.mark.y - box[1]) for box in lines) < 1.5


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
