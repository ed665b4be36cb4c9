"""Letters to trace: no letter is lost, none leaves its line, starts and models are where they should be."""

import string

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from page_marks import box, drawn, kit, of_role

from packgen.page.letters import Traced, at_size, draw_trace, trace_top, trace_width
from packgen.page.marks import Line, Path_, Text
from packgen.page.skeleton import skeleton

LETTERS = string.ascii_letters + string.digits + ".,:;!?'’“”-–()&éèñüåçøßšőłæðþặếÉÅÜŁ" + "ΛЖ富"


def test_letters_typed_as_letter_and_accent_are_the_same() -> None:
    assert trace_width(kit("first"), "e\u0301", 10) == trace_width(kit("first"), "é", 10)


def test_start_dots_stand_at_the_beginning_of_each_stroke() -> None:
    on = kit("first")
    pen = on.pen()
    draw_trace(on, pen, "t", 0.0, 0.0, 10.0, dots=True, arrows=True)
    starts = [box(m) for m in of_role(pen.marks, "start")]
    middles = [((a + c) / 2, (b + d) / 2) for a, b, c, d in starts]
    known = skeleton("t")
    assert known
    left = known.left * 10
    assert [(round(x - left, 3), round(y, 3)) for x, y in middles] == [(2.7, 16.0), (0.0, 10.0)]
    assert len(of_role(pen.marks, "arrow")) == 2
    # The letter begins at the full dot; where the pencil starts again there is a ring.
    assert [m.fill for m in of_role(pen.marks, "start") if isinstance(m, Path_)] == [0.0, 1.0]


def test_the_dotted_middle_line_leaves_out_dotted_letters() -> None:
    on = kit("younger")
    pen = on.pen()
    Traced("tide").draw(on, pen, 20.0, 200.0, 150.0, 20.0)
    wide = trace_width(on, "tide", on.look.ruling.x_height)
    lines = [m for m in of_role(pen.marks, "midline") if isinstance(m, Line)]
    assert lines and all(m.x1 > 20.0 + wide and m.x2 <= 170.0 for m in lines)


def test_a_letter_without_strokes_is_set_in_grey_and_never_missing() -> None:
    on = kit("younger")
    pen = on.pen()
    draw_trace(on, pen, "Λ富ж", 0.0, 0.0, 5.0)
    texts = [m for m in pen.marks if isinstance(m, Text)]
    assert [m.text for m in texts] == ["Λ", "富", "ж"] and not pen.lost
    assert all(m.ink == 0.72 for m in texts)


@given(st.text(alphabet=LETTERS, min_size=1, max_size=30), st.sampled_from(["print", "cursive"]))
@settings(max_examples=40, deadline=None)
def test_letters_stay_within_their_measured_width(text: str, letters: str) -> None:
    on = kit("younger")
    pen = on.pen()
    wide = draw_trace(on, pen, text, 0.0, 0.0, 5.0, dots=True, arrows=True, letters=letters)
    assert wide == trace_width(on, text, 5.0, letters)
    for mark in pen.marks:
        left, _, right, top = box(mark)
        assert left > -0.6 and right < wide + 0.6
        assert top <= max(10.6, trace_top(text, 5.0) + 0.6)


WORDS = st.lists(st.text(alphabet="abcdefghijklmnopqrstuvwxyzÅéß", min_size=1, max_size=34), min_size=1, max_size=5)


@given(WORDS, st.floats(45, 190), st.sampled_from(["first", "younger"]), st.sampled_from(["print", "cursive"]))
@settings(max_examples=50, deadline=None)
def test_a_traced_text_loses_no_letter_and_keeps_to_its_width(words, width, level, letters) -> None:  # type: ignore[no-untyped-def]
    on = kit(level)
    block = Traced(" ".join(words), letters=letters)
    lines, ruling = block.setting(on, width)
    assert "".join(lines).replace("-", "").replace(" ", "") == "".join(words)
    assert all(trace_width(on, line, ruling.x_height, letters) <= width + 1e-6 for line in lines)
    assert on.look.ruling.x_height * 0.6 - 1e-9 <= ruling.x_height <= on.look.ruling.x_height
    pen = drawn(on, block, width)
    low = -block.measure(on, width).least
    for mark in pen.marks:
        left, bottom, right, top = box(mark)
        assert left > -1.2 and right < width + 1.2 and bottom >= low - 1e-6 and top <= 1.0


def test_a_word_of_thirty_letters_is_written_smaller_before_it_is_parted() -> None:
    on = kit("younger")
    lines, ruling = Traced("Donaudampfschifffahrtskapitän").setting(on, 120.0)
    assert len(lines) == 1 and ruling.x_height < 5.0
    assert ruling.pitch == pytest.approx(18.0 * ruling.x_height / 5.0)


def test_a_traced_text_is_split_between_its_lines() -> None:
    on = kit("first")
    block = Traced("the lamp on the quay by the water")
    whole = block.measure(on, 120.0).least
    parts = block.split(on, 120.0, whole - 10.0)
    assert parts
    head, rest = parts
    assert isinstance(head, Traced) and isinstance(rest, Traced)
    assert f"{head.text} {rest.text}" == block.text
    assert head.measure(on, 120.0).least <= whole - 10.0
    assert block.split(on, 120.0, 20.0) is None


def test_each_line_has_its_empty_lines_to_copy_on() -> None:
    on = kit("younger")
    pen = drawn(on, Traced("ebb", under=2), 120.0)
    assert len(of_role(pen.marks, "baseline")) == 3
    trace = [m for m in of_role(pen.marks, "trace") if isinstance(m, Path_)]
    assert len(trace) == 1


def test_a_model_for_a_left_hand_ends_at_the_right() -> None:
    on = kit("younger")
    left = box(of_role(drawn(on, Traced("ebb", solid=True), 150.0).marks, "model")[0])
    right = box(of_role(drawn(on, Traced("ebb", solid=True, align="right"), 150.0).marks, "model")[0])
    assert left[0] < 5 and right[2] > 145


def test_a_ruling_at_another_size_keeps_its_proportions() -> None:
    small = at_size(kit("first").look.ruling, 5.0)
    assert (small.x_height, small.pitch, small.guides) == (5.0, 16.0, "four")
