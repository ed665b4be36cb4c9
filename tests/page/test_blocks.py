"""Blocks: all their words are drawn, inside the height they said, and writing lines lie as the ruling says."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from page_marks import box, drawn, kit, of_role, words_of

from packgen.page.blocks import Block, Boxed, Break, Bullets, DrawBox, Fit, Lines, Prose, Row, Stack, heading
from packgen.page.marks import Line

LEVELS = ("first", "younger", "older", "upper", "parent")
TEXT = st.lists(st.text(alphabet="abcdefgh", min_size=1, max_size=9), min_size=1, max_size=60).map(" ".join)


def every_part(block: Block, on: str, width: float, room: float) -> list[Block]:
    """A block split as often as it can be into parts no higher than the room."""
    parts = []
    while True:
        halves = block.split(kit(on), width, room)
        if halves is None or block.measure(kit(on), width).least <= room:
            return [*parts, block]
        parts.append(halves[0])
        block = halves[1]


@given(TEXT, st.sampled_from(LEVELS), st.floats(60, 180))
@settings(max_examples=40, deadline=None)
def test_prose_stays_inside_its_height_and_splits_without_loss(text: str, level: str, width: float) -> None:
    on = kit(level)
    block = Prose(text)
    high = block.measure(on, width).least
    pen = drawn(on, block, width)
    assert words_of(pen.marks) == text.split()
    assert all(-high - 1e-6 <= box(mark)[1] and box(mark)[3] <= 1e-6 for mark in pen.marks)
    parts = every_part(block, level, width, on.look.body.leading * 5)
    assert " ".join(part.text for part in parts if isinstance(part, Prose)).split() == text.split()
    assert all(part.measure(on, width).least >= 2 * on.look.body.leading - 1e-6 for part in parts) or len(parts) == 1


@given(st.lists(TEXT, min_size=1, max_size=8), st.sampled_from(("dot", "box", "number", "ring")))
@settings(max_examples=40, deadline=None)
def test_lists_split_between_items_and_go_on_counting(items: list[str], marker: str) -> None:
    on = kit("older")
    block = Bullets(tuple(items), marker)
    parts = every_part(block, "older", 120.0, 60.0)
    shown = [item for part in parts if isinstance(part, Bullets) for item in part.items]
    assert shown == items
    if marker == "number":
        numbers = [word for part in parts for word in words_of(drawn(on, part, 120.0).marks) if word.endswith(".")]
        assert numbers == [f"{k}." for k in range(1, len(items) + 1)]


def base_lines(block: Block, level: str, height: float) -> list[float]:
    pen = drawn(kit(level), block, 100.0, height)
    return [mark.y1 for mark in of_role(pen.marks, "baseline") if isinstance(mark, Line)]


@pytest.mark.parametrize("level", LEVELS)
def test_writing_lines_keep_their_pitch_and_their_number(level: str) -> None:
    ruling = kit(level).look.ruling
    span = Lines(3, 6).measure(kit(level), 100.0)
    for count, height in ((3, span.least), (6, span.most), (5, span.least + 2 * ruling.pitch)):
        ys = base_lines(Lines(3, 6), level, height)
        assert len(ys) == count
        assert all(a - b == pytest.approx(ruling.pitch) for a, b in pairwise(ys))
        assert ys[-1] >= -height - 1e-6
    assert span.step == ruling.pitch


@pytest.mark.parametrize("level", ["first", "younger"])
def test_guides_stand_at_the_heights_of_small_and_tall_letters(level: str) -> None:
    """Tall letters are twice as high as small ones (National Handwriting Association, UK)."""
    pen = drawn(kit(level), Lines(1), 100.0)
    ys = {}
    for role in ("topline", "midline", "baseline", "tailline"):
        (line,) = of_role(pen.marks, role)
        assert isinstance(line, Line)
        ys[role] = line.y1
    ruling = kit(level).look.ruling
    assert ys["midline"] - ys["baseline"] == pytest.approx(ruling.x_height)
    assert ys["topline"] - ys["baseline"] == pytest.approx(2 * ruling.x_height)
    assert ys["tailline"] < ys["baseline"]


def test_a_starter_begins_the_first_line() -> None:
    pen = drawn(kit("younger"), Lines(2, starter="She was"), 150.0)
    assert words_of(pen.marks) == ["She", "was"]


def test_a_box_to_draw_in_is_as_high_as_it_is_asked_to_be() -> None:
    on = kit("first")
    pen = drawn(on, DrawBox("Draw it.", least=40.0, note="With felt pens."), 150.0, 90.0)
    (frame,) = of_role(pen.marks, "drawbox")
    assert box(frame) == pytest.approx((0.0, -90.0, 150.0, 0.0))
    assert words_of(pen.marks) == ["Draw", "it.", "With", "felt", "pens."]
    assert DrawBox(least=40.0).measure(on, 100.0).grow > 0


def test_cells_of_a_row_have_their_shares_and_their_mm() -> None:
    row = Row(((-30.0, DrawBox()), (1.0, DrawBox()), (3.0, DrawBox())), gutter=5.0)
    assert row.widths(120.0) == pytest.approx([30.0, 20.0, 60.0])


def test_a_stack_is_as_high_as_its_parts_and_gaps() -> None:
    on = kit("older")
    parts = (DrawBox(least=20.0, most=20.0), DrawBox(least=30.0, most=30.0, gap=2.0))
    assert Stack(parts).measure(on, 100.0).least == pytest.approx(52.0)


@pytest.mark.parametrize("kind", ["note", "caution", "plain"])
@pytest.mark.parametrize("level", LEVELS)
def test_a_box_holds_what_is_in_it(kind: str, level: str) -> None:
    on = kit(level)
    text = "A grown-up cuts the bottle and makes the hole with a drill on a block of wood. " * 3
    block = Boxed(Prose(text), kind, "Take care")
    pen = drawn(on, block, 150.0)
    high = block.measure(on, 150.0).least
    assert words_of(pen.marks) == ["Take", "care", *text.split()]
    for mark in pen.marks:
        left, bottom, right, top = box(mark)
        assert left >= -1e-6 and right <= 150.0 + 1e-6 and bottom >= -high - 1e-6 and top <= 1e-6


def test_text_to_fit_never_leaves_its_height_while_it_fits() -> None:
    on = kit("older")
    block = Fit("The Lamp House on the Quay and all that was seen from its windows", 12.0, 2.4, "title")
    assert block.measure(on, 60.0).least == pytest.approx(12.0)
    for mark in drawn(on, block, 60.0).marks:
        assert box(mark)[1] >= -12.0 and box(mark)[3] <= 0.5


def test_headings_keep_with_what_follows_and_breaks_take_no_room() -> None:
    assert heading("Steps").tight and heading("Steps").role == "heading"
    assert Break().measure(kit("older"), 100.0).least == 0.0
