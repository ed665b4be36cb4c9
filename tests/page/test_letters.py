"""Letters to trace: every letter has strokes, in the order and direction schools teach, and nothing leaves its line."""

import itertools
import math
import string

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from page_marks import box, drawn, kit, of_role

from packgen.page import strokes, strokes_joined
from packgen.page.joined import joined
from packgen.page.letters import Traced, at_size, dot_spacing, draw_trace, trace_top, trace_width
from packgen.page.marks import Path_, Text
from packgen.page.skeleton import bounds, dots, length, points, runs, skeleton

LATIN = string.ascii_letters + string.digits + ".,:;!?'\"’‘“”-–—()/&+=%£€$½"
# Letters of European languages beyond a to z, from Danish, French, German, Polish, Czech, Icelandic, Latvian, Romanian,
# Turkish, Hungarian, Welsh and Spanish, and Vietnamese with two accents at once (the alphabets are common knowledge).
ACCENTED = "éèêëñüåçøßšőłæðþœđãõűžčřěůďťľąęįųģķļņșțşğıŵŷÿïîíìāēīūặếợữẩỗÉÅÑÜŐČŠŁÆØŒĐÞÇŞĄÕÂŽŘĎŤĽÍ"


@pytest.mark.parametrize("letter", LATIN + ACCENTED)
def test_every_latin_letter_has_strokes_of_its_own(letter: str) -> None:
    assert skeleton(letter) is not None


@pytest.mark.parametrize("letter", string.ascii_letters + string.digits)
def test_letters_stand_on_the_lines_of_the_ruling(letter: str) -> None:
    # Tall letters twice as high as small ones, tails nearly as deep: National Handwriting Association.
    known = skeleton(letter)
    assert known
    _, low, _, high = bounds(known.strokes)
    tall = letter in "bdfhkl" or not letter.islower()
    top = {"t": 1.6, "i": 1.52, "j": 1.52}.get(letter, 2.0 if tall else 1.0)
    tail = -0.9 if letter in "gjpqy" else (-0.08 if letter == "Q" else 0.0)
    assert high == pytest.approx(top, abs=0.03)
    assert low == pytest.approx(tail, abs=0.03)


def turning(letter: str) -> float:
    """Twice the area the longest curve of the first stroke goes round: positive if it turns anticlockwise."""
    known = skeleton(letter)
    assert known
    line = max(runs(known.strokes[0]), key=length)
    return sum(ax * by - bx * ay for (ax, ay), (bx, by) in itertools.pairwise([*line, line[0]]))


# How schools teach it (common practice, no source): round letters anticlockwise from the right, b and p clockwise
# after the stem, stems downwards, bars to the right.
@pytest.mark.parametrize("letter", "acdegoqCGOQ069")
def test_round_letters_turn_anticlockwise(letter: str) -> None:
    assert turning(letter) > 0


@pytest.mark.parametrize("letter", "bhjklmnprtuvwxyBDEFHKLMNPRTUVWXY147")
def test_the_first_stroke_begins_at_the_top(letter: str) -> None:
    known = skeleton(letter)
    assert known
    first = known.strokes[0]
    highest = max(y for seg in first for _, y in seg)
    assert first[0][0][1] >= highest - 0.4


@pytest.mark.parametrize("letter", "ftAEFHTZz")
def test_bars_are_written_to_the_right(letter: str) -> None:
    known = skeleton(letter)
    assert known
    bars = [s for stroke in known.strokes for s in stroke if len(s) == 2 and abs(s[0][1] - s[1][1]) < 1e-9]
    assert bars and all(start[0] < end[0] for start, end in bars)


def test_small_a_and_g_have_one_storey() -> None:
    for letter in "ag":
        known = skeleton(letter)
        assert known and len(known.strokes) == 1 and bounds(known.strokes)[3] == pytest.approx(1.0, abs=0.01)


def test_an_accent_takes_the_place_of_the_dot_on_an_i() -> None:
    dotted, accented = skeleton("i"), skeleton("í")
    assert dotted and accented
    assert len(points(dotted)) == 1 and not points(accented)


def test_letters_typed_as_letter_and_accent_are_the_same() -> None:
    assert trace_width(kit("first"), "e\u0301", 10) == trace_width(kit("first"), "é", 10)


@pytest.mark.parametrize("x_height", [10.0, 5.0])
@pytest.mark.parametrize("letter", string.ascii_letters + string.digits + "éßøÅ&")
def test_dots_follow_the_stroke_without_blots_or_holes(letter: str, x_height: float) -> None:
    known = skeleton(letter)
    assert known
    spacing = dot_spacing(x_height) / x_height
    placed = dots(known, round(spacing, 4))
    for a, b in itertools.combinations(placed, 2):
        assert math.dist(a, b) > 0.6 * spacing
    for run in (run for stroke in known.strokes for run in runs(stroke)):
        if length(run) > 0.05:
            for point in run:
                assert min(math.dist(point, dot) for dot in placed) < 1.15 * spacing


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


def test_a_letter_without_strokes_is_set_in_grey_and_never_missing() -> None:
    on = kit("younger")
    pen = on.pen()
    draw_trace(on, pen, "Λ富ж", 0.0, 0.0, 5.0)
    texts = [m for m in pen.marks if isinstance(m, Text)]
    assert [m.text for m in texts] == ["Λ", "富", "ж"] and not pen.lost
    assert all(m.ink == 0.72 for m in texts)


@given(st.text(alphabet=LATIN + ACCENTED + "ΛЖ富", min_size=1, max_size=30), st.sampled_from(["print", "cursive"]))
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
    assert ruling.pitch == pytest.approx(16.5 * ruling.x_height / 5.0)


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


# The joined hand


def test_the_joined_hand_has_every_small_letter() -> None:
    assert set(strokes_joined.JOINED) == set(strokes.SMALL) == set(string.ascii_lowercase)


@given(st.text(alphabet=string.ascii_lowercase + "éñüçí", min_size=1, max_size=14))
@settings(max_examples=60, deadline=None)
def test_joined_strokes_never_jump(word: str) -> None:
    for stroke in joined(tuple(word)).strokes:
        for before, after in itertools.pairwise(stroke):
            assert math.dist(before[-1], after[0]) < 1e-9


def test_letters_join_until_the_pencil_lifts() -> None:
    # The usual break letters b g j p q s x y z (common practice in British schools, no source).
    assert joined(tuple("main")).marked == 1
    assert joined(tuple("mug")).marked == 1
    assert joined(tuple("gum")).marked == 2
    assert joined(tuple("boys")).marked == 3
    assert joined(tuple("Main")).marked == 2 + 1


def test_dots_and_bars_come_after_the_word() -> None:
    known = joined(tuple("tint"))
    assert known.marked == 1 and len(known.strokes) == 1 + 3
    assert len(points(known)) == 1


def test_letters_of_a_joined_word_keep_their_order() -> None:
    assert joined(tuple("minimum")).width > joined(tuple("minim")).width > joined(tuple("min")).width
