"""The frame: a ruler of exactly 100 mm, margins the printer reaches, heads and feet that hold their words."""

import pytest
from page_marks import box, kit, of_role, overlap, words_of

from packgen.page.frame import Foot, Head, draw_foot, draw_head, draw_ruler, foot_height, head_height, margins
from packgen.page.marks import Line, Text

LEVELS = ("first", "younger", "older", "upper", "parent")
LONG = "Wilhelmina Bartholomea Featherstonehaugh-Cholmondeley-Marjor"


def test_the_ruler_is_a_hundred_mm_with_a_tick_each_ten() -> None:
    on = kit("older")
    pen = on.pen()
    draw_ruler(on, pen, "10 cm", 30.0, 50.0)
    (ruler,) = of_role(pen.marks, "ruler")
    assert isinstance(ruler, Line) and (ruler.x1, ruler.x2) == (30.0, 130.0)
    assert [m.x1 for m in of_role(pen.marks, "ruler-tick") if isinstance(m, Line)] == [30.0 + 10 * k for k in range(11)]


@pytest.mark.parametrize("reach", [0.0, 4.2, 6.0, 12.0, 25.0])
def test_margins_lie_inside_what_the_printer_reaches(reach: float) -> None:
    edge = margins(reach)
    assert min(edge.left, edge.right, edge.top, edge.bottom) >= reach + 3.0


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("first", [True, False])
@pytest.mark.parametrize("words", ["Trace it", f"Set down the life of {LONG}"])
def test_a_head_stays_inside_the_height_it_says(level: str, first: bool, words: str) -> None:
    on = kit(level)
    head = Head(words, "The Harbour at Dusk · " + LONG, LONG)
    pen = on.pen()
    draw_head(on, pen, head, 16.0, 284.0, 178.0, first)
    high = head_height(on, head, 178.0, first)
    for mark in pen.marks:
        left, bottom, right, top = box(mark)
        assert bottom >= 284.0 - high - 1e-6 and top <= 284.0 + 1e-6
        assert (left >= 16.0 - 1e-6 and right <= 194.0 + 0.2) or not first
    texts = [mark for mark in pen.marks if isinstance(mark, Text)]
    assert not [1 for k, a in enumerate(texts) for b in texts[k + 1 :] if overlap(box(a), box(b))]
    shown = words_of(pen.marks)
    assert "".join(words.split()) in "".join(shown)


@pytest.mark.parametrize("level", LEVELS)
def test_a_foot_with_a_ruler_holds_its_words_apart(level: str) -> None:
    on = kit(level)
    pen = on.pen()
    foot = Foot(f"{LONG} · The Harbour at Dusk", "Juno · week 12 · page 11 of 12", "this line is 10 cm long")
    draw_foot(on, pen, foot, 16.0, 12.0, 178.0)
    texts = [mark for mark in pen.marks if isinstance(mark, Text)]
    assert not [1 for k, a in enumerate(texts) for b in texts[k + 1 :] if overlap(box(a), box(b))]
    for mark in pen.marks:
        left, bottom, right, top = box(mark)
        assert left >= 16.0 - 1e-6 and right <= 194.0 + 1e-6
        assert bottom >= 9.0 and top <= 12.0 + foot_height(ruler=True)
    lines = [m.y1 for m in of_role(pen.marks, "ruler", "footline") if isinstance(m, Line)]
    for text in texts:
        assert not any(box(text)[1] + 0.1 < y < box(text)[3] - 0.1 for y in lines)


def test_a_subject_in_two_lines_is_parted_at_its_dot() -> None:
    on = kit("younger")
    pen = on.pen()
    head = Head("Look, cover, tell", "Jug and Lemons on a Blue Cloth · Tomasz Orrelin, 1882", "Bram")
    draw_head(on, pen, head, 16.0, 284.0, 178.0, True)
    shown = [mark.text for mark in of_role(pen.marks, "subject") if isinstance(mark, Text)]
    assert shown == ["Jug and Lemons on a Blue Cloth", "Tomasz Orrelin, 1882"]


@pytest.mark.parametrize("level", LEVELS)
def test_the_words_of_a_foot_stay_on_its_one_line(level: str) -> None:
    on = kit(level)
    pen = on.pen()
    foot = Foot(f"{LONG} · {LONG} · {LONG}", "week 12 · page 11 of 12", "", "Maximiliana Theodora")
    draw_foot(on, pen, foot, 16.0, 12.0, 178.0)
    texts = [mark for mark in pen.marks if isinstance(mark, Text)]
    assert len({mark.y for mark in texts}) == 1 and texts[0].text.startswith("Wilhelmina")
    assert not [1 for k, a in enumerate(texts) for b in texts[k + 1 :] if overlap(box(a), box(b))]


@pytest.mark.parametrize("level", LEVELS)
def test_the_subject_is_not_read_on_into_the_date(level: str) -> None:
    on = kit(level)
    for subject in (
        "Self-Portrait with a Lantern · Isaure Quenby, 1870",
        "Lamp-maker and painter who measured the tides",
    ):
        pen = on.pen()
        draw_head(on, pen, Head("Look, cover, tell", subject, "Bram"), 16.0, 284.0, 178.0, True)
        (date,) = [box(mark) for mark in pen.marks if isinstance(mark, Text) and mark.text == "Date"]
        ends = [box(mark)[2] for mark in pen.marks if isinstance(mark, Text) and mark.role == "subject"]
        assert max(ends) <= date[0] - 11.0
