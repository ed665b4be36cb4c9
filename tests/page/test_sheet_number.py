"""The tag with a sheet's number: it ends where the foot ends, whatever the number and the name."""

import pytest
from page_marks import box, kit, of_role, overlap

from packgen.page.frame import Foot, draw_foot, draw_head
from packgen.page.frame import Head as PageHead
from packgen.page.marks import Page, Text
from packgen.page.sheet_number import has_tag, numbered, printed_title

LEVELS = ("first", "younger", "older", "upper")
NAMES = ("Juno", "Wilhelmina Bartholomea Featherstonehaugh-Cholmondeley", "Søren Ångström", "小明")
SHOWN = {NAMES[1]: "Wilhelmina"}  # of a name that is too long the first part


def foot_page(level: str, name: str) -> Page:
    on = kit(level)
    pen = on.pen()
    left = "Isaure Quenby · The Harbour at Dusk, seen from the end of the quay"
    draw_foot(on, pen, Foot(left, "week 12 · page 11 of 12", "this line is 10 cm long", name), 16.0, 12.0, 178.0)
    return Page(210.0, 297.0, tuple(pen.marks))


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("number", [1, 12, 188])
def test_the_number_stands_behind_the_name_and_touches_nothing(level: str, name: str, number: int) -> None:
    on = kit(level)
    page = numbered(on.faces, foot_page(level, name), number, on.look.strong.face)
    tag = of_role(page.marks, "sheet-number")
    assert "".join(mark.text for mark in tag if isinstance(mark, Text)) == f"{SHOWN.get(name, name)} {number}"
    assert max(box(mark)[2] for mark in tag) == pytest.approx(194.0, abs=1e-6)
    texts = [mark for mark in page.marks if isinstance(mark, Text)]
    others = [mark for mark in texts if mark.role != "sheet-number"]
    assert not [mark for mark in tag for other in others if overlap(box(mark), box(other))]
    for mark in tag:
        assert box(mark)[1] >= 9.0 and box(mark)[3] < 12.0 + 4.9


def test_a_page_without_a_tag_is_left_alone() -> None:
    page = foot_page("older", "")
    assert not has_tag(page) and numbered(kit("older").faces, page, 3, "text-bold") is page


def test_the_printed_title_is_read_off_the_head() -> None:
    on = kit("older")
    pen = on.pen()
    draw_head(on, pen, PageHead("Set down the life of Isaure Quenby, lamp-maker", "1834"), 16.0, 284.0, 178.0, True)
    page = Page(210.0, 297.0, tuple(pen.marks))
    assert printed_title(page) == "Set down the life of Isaure Quenby, lamp-maker"
