"""Pages on printed sheets: backs behind their fronts for either flip, moved against the printer's shift, and folds."""

import pytest

from packgen.page.desk import Fold, Laid
from packgen.page.marks import Group, Line, Page, Stroke, Text
from packgen.printed.impose import duplex_for, impose
from packgen.reading.models import Printer

A4 = (210.0, 297.0)
LINE = Line(20.0, 30.0, 40.0, 30.0, Stroke(0.2))
PAGE = Page(*A4, (LINE,))
LONG, SHORT, ONE = "two-sided-long-edge", "two-sided-short-edge", "one-sided"


def placed(page: Page) -> tuple[float, float]:
    """Where the line's beginning comes to lie on a printed side."""
    (mark,) = page.marks
    if isinstance(mark, Line):
        return mark.x1, mark.y1
    assert isinstance(mark, Group)
    a, b, c, d, e, f = mark.matrix
    return a * LINE.x1 + c * LINE.y1 + e, b * LINE.x1 + d * LINE.y1 + f


@pytest.mark.parametrize(
    ("wanted", "printer", "got"),
    [(LONG, LONG, LONG), (LONG, SHORT, SHORT), (SHORT, LONG, SHORT), (LONG, ONE, LONG), (ONE, SHORT, ONE)],
)
def test_a_printer_that_only_flips_short_gets_every_two_sided_run_so(wanted: str, printer: str, got: str) -> None:
    assert duplex_for(wanted, Printer(printer)) == got


def test_an_odd_page_gets_a_blank_back() -> None:
    made = impose(Laid("words", "W", (PAGE, PAGE, PAGE), sides=LONG), A4, Printer())
    assert [bool(side.marks) for side in made.sides] == [True, True, True, False]
    assert (made.sides[3].width, made.sides[3].height) == A4


def test_one_sided_sheets_are_left_as_they_are() -> None:
    assert impose(Laid("words", "W", (PAGE,)), A4, Printer()).sides == (PAGE,)


def test_backs_are_turned_round_for_the_other_flip_and_fronts_are_not() -> None:
    front, back = impose(Laid("words", "W", (PAGE, PAGE), sides=LONG), A4, Printer(SHORT)).sides
    assert placed(front) == (20.0, 30.0)
    assert placed(back) == (190.0, 267.0)


def test_backs_are_moved_by_as_much_the_other_way_as_the_printer_is_off() -> None:
    off = Printer(duplex_shift=(0.5, -1.0))
    front, back = impose(Laid("words", "W", (PAGE, PAGE), sides=LONG), A4, off).sides
    assert placed(front) == (20.0, 30.0) and placed(back) == pytest.approx((19.5, 31.0))
    turned = impose(Laid("words", "W", (PAGE, PAGE), sides=LONG), A4, Printer(SHORT, duplex_shift=(0.5, -1.0))).sides[1]
    assert placed(turned) == pytest.approx((189.5, 268.0))


def numbered(number: int, width: float, height: float) -> Page:
    return Page(width, height, (Text(width / 2, height / 2, str(number), "text", 5.0),))


def test_a_folded_book_puts_every_page_on_paper_once_inside_its_panel() -> None:
    pages = tuple(numbered(k, 148.5, 210.0) for k in range(1, 9))
    made = impose(Laid("fold-book", "B", pages, sides=SHORT, fold=Fold("stitched")), A4, Printer())
    assert made.plan and made.plan.book_pages == 8 and made.duplex == SHORT
    assert [(side.width, side.height) for side in made.sides] == [(297.0, 210.0)] * 4
    numbers = []
    for side in made.sides:
        for mark in side.marks:
            if isinstance(mark, Group):
                assert mark.clip, "a page may not run into the next"
                (text,) = mark.marks
                assert isinstance(text, Text)
                numbers.append(int(text.text))
    assert sorted(numbers) == list(range(1, 9))
    assert sorted(numbers[:2]) == [1, 8]


def test_a_slit_is_drawn_where_the_scissors_go() -> None:
    pages = tuple(numbered(k, 74.25, 105.0) for k in range(1, 9))
    (side,) = impose(Laid("fold-book", "B", pages, fold=Fold("slit")), A4, Printer()).sides
    slits = [mark for mark in side.marks if isinstance(mark, Line) and mark.role == "slit"]
    # Half the long side of A4, in the middle of the sheet.
    assert [(slit.x1, slit.y1, slit.x2, slit.y2) for slit in slits] == [pytest.approx((74.25, 105.0, 222.75, 105.0))]
    ticks = [mark for mark in side.marks if isinstance(mark, Line) and mark.role == "fold-tick"]
    assert {round(t.x1, 2) for t in ticks if t.x1 == t.x2} == {74.25, 148.5, 222.75}
