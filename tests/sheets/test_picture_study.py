"""Picture study: the plate as large as the page allows, never stretched; questions by level; the code to the link."""

from dataclasses import replace

import pytest
from art_desks import LEVELS, SHEETS_OF_PAPER, art_desk, picture, placed, said, work

from packgen.faults import Said
from packgen.page.desk import Desk
from packgen.page.look import look_for
from packgen.page.marks import Line, Page, Picture, Text
from packgen.sheets import picture_study

ASKS = tuple(Said(f"Question number {k}?") for k in range(6))


def desk(level: str = "older", *, paper: str = "A4", size: tuple[int, int] = (360, 270), **more: object) -> Desk:
    shown = replace(work(path=picture(*size)), look=ASKS, **more)  # type: ignore[arg-type]
    return art_desk("picture-study", level, [shown], paper=paper)


def plate(page: Page) -> tuple[float, float, float, float]:
    (found,) = [p.box for p in placed(page) if isinstance(p.mark, Picture)]
    return found


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("size", [(360, 270), (270, 360), (600, 200), (200, 600), (300, 300)])
def test_the_plate_keeps_its_shape_and_fills_the_page(level: str, paper: str, size: tuple[int, int]) -> None:
    at = desk(level, paper=paper, size=size)
    (laid,) = picture_study.lay_out(at)
    left, bottom, right, top = plate(laid.pages[0])
    wide, high = right - left, top - bottom
    shape = size[0] / size[1]
    assert wide / high == pytest.approx(shape, rel=1e-6) or wide / high == pytest.approx(1 / shape, rel=1e-6)
    edge = at.margins
    assert left >= edge.left - 0.1 and right <= at.paper[0] - edge.right + 0.1
    assert bottom >= edge.bottom and top <= at.paper[1] - edge.top + 0.1
    room = (at.live_width, at.paper[1] - edge.top - edge.bottom)
    assert max(wide / room[0], high / room[1]) >= 0.85


def test_a_wide_picture_is_turned_and_a_tall_one_is_not() -> None:
    for size, turned in (((600, 200), True), ((200, 600), False)):
        (laid,) = picture_study.lay_out(desk(size=size))
        left, bottom, right, top = plate(laid.pages[0])
        assert top - bottom > right - left
        captions = [p.mark for p in placed(laid.pages[0]) if isinstance(p.mark, Text) and p.mark.text == "The Harbour"]
        assert captions and ((top - bottom) / (right - left) == pytest.approx(3.0, rel=1e-6)), turned


@pytest.mark.parametrize(("level", "count"), [("younger", 1), ("older", 2), ("upper", 3)])
def test_each_level_answers_its_number_of_questions(level: str, count: int) -> None:
    (laid,) = picture_study.lay_out(desk(level))
    shown = " ".join(p.mark.text for page in laid.pages for p in placed(page) if isinstance(p.mark, Text))
    assert [str(ask) in shown for ask in ASKS] == [k < count for k in range(6)]


def test_a_link_becomes_a_code_and_no_link_none() -> None:
    for link, codes in ((Said("https://example.org/a"), 1), (None, 0)):
        (laid,) = picture_study.lay_out(desk("older", link=link, held=Said("A Museum")))
        assert sum(len(placed(page, "qr")) for page in laid.pages) == codes


def test_the_plate_can_be_left_out() -> None:
    at = desk()
    at.item = replace(at.item, options=(("plate", "no"),))
    (with_plate,), (without,) = picture_study.lay_out(desk()), picture_study.lay_out(at)
    assert len(without.pages) == len(with_plate.pages) - 1


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("wider", [False, True])
@pytest.mark.parametrize("title", ["Heron", "Kitchen Tiles with Fish and Flowers from the House of the Miller's Widow"])
def test_a_work_has_a_plate_and_one_page_of_tasks_however_long_its_title(
    level: str, paper: str, title: str, wider: bool
) -> None:
    link, held = Said("https://example.org/works/of/the/painter/seen/large"), Said("The Collection of the Town Hall")
    at = desk(level, paper=paper, title=Said(title), link=link, held=held)
    at.kit = replace(at.kit, look=look_for(level, wider=wider))
    (laid,) = picture_study.lay_out(at)
    assert len(laid.pages) == 2
    if level == "younger":
        (drawn,) = [p.box for p in placed(laid.pages[1], "drawbox")]
        assert drawn[3] - drawn[1] >= 33.9


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("level", ["older", "upper"])
@pytest.mark.parametrize(("size", "least"), [((400, 300), 75.0), ((300, 400), 44.0)])
def test_the_copy_to_draw_on_is_large_and_bare(level: str, paper: str, size: tuple[int, int], least: float) -> None:
    (laid,) = picture_study.lay_out(desk(level, paper=paper, size=size, held=Said("A Museum")))
    left, _, right, _ = plate(laid.pages[1])
    assert right - left >= least
    assert not [p for p in placed(laid.pages[1]) if isinstance(p.mark, Line) and p.mark.stroke.dash]


def test_how_far_a_place_lies_is_asked_once_and_then_what_else_is_there() -> None:
    first = replace(work(path=picture(360, 270)), title=Said("First"), held=Said("The Mill"))
    second = replace(first, title=Said("Second"))
    shown = []
    for subject in (first, second):
        at = art_desk("picture-study", "older", [first, second])
        at.item = replace(at.item, subject=subject)
        (laid,) = picture_study.lay_out(at)
        shown.append(said(laid.pages[-1]))
    assert "How far is that place" in shown[0] and "Name another work" not in shown[0]
    assert "How far is that place" not in shown[1] and "Name another work" in shown[1]


def test_the_younger_are_told_whose_name_to_trace() -> None:
    (laid,) = picture_study.lay_out(desk("younger"))
    assert "Trace the name of the picture. Then write it below." in said(laid.pages[-1])
