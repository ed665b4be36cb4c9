"""Charts: values lie where the axes say, labels never collide, and everything stays inside the block."""

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from page_marks import box, drawn, kit, of_role, overlap, words_of

from packgen.page.chart import Band, Chart, Series
from packgen.page.marks import Line, Path_, Text
from packgen.trials.ticks import Axis, blank_axis, number_axis, picture_scale, result_axis, word_axis

TIME = result_axis("time to fall", "s", (1.2, 2.1, 2.9))
SIDES = number_axis("side of the canopy", "cm", (20, 30, 40, 50))
LEVELS = st.sampled_from(["first", "younger", "older", "upper"])
WORD = st.text(alphabet="abcdefghijklmnopqrstuvwxyz", min_size=1, max_size=24)
LABELS = st.lists(st.lists(WORD, min_size=1, max_size=4).map(" ".join), min_size=1, max_size=12)


def tick_labels(marks: list[object]) -> list[Text]:
    return [m for m in marks if isinstance(m, Text) and m.role == "tick-label"]


def check_chart(chart: Chart, level: str, width: float, height: float | None = None) -> None:
    on = kit(level)
    least = chart.measure(on, width).least
    pen = drawn(on, chart, width, max(height or least, least))
    labels = tick_labels(list(pen.marks))
    titles = [m for m in pen.marks if isinstance(m, Text) and m.role == "axis-title"]
    for a, b in itertools.combinations([*labels, *titles], 2):
        assert not overlap(box(a), box(b)), (a.text, b.text)
    for mark in pen.marks:
        left, bottom, right, top = box(mark)
        assert left > -0.1 and right < width + 0.1, mark
        assert bottom > -max(height or least, least) - 0.1 and top < 0.1, mark


@given(LABELS, LEVELS, st.floats(80, 185), st.sampled_from(["bars", "points", "picture"]))
@settings(max_examples=50, deadline=None)
def test_labels_of_words_never_collide_and_are_all_there(labels, level, width, kind) -> None:  # type: ignore[no-untyped-def]
    axis = word_axis("kind", labels)
    chart = Chart(axis, TIME, kind, scale=picture_scale(TIME))
    check_chart(chart, level, width)
    on = kit(level)
    said = "".join(m.text for m in tick_labels(list(drawn(on, chart, width).marks)) if not m.text[0].isdigit())
    assert said.replace(" ", "") == "".join(labels).replace(" ", "")


@given(st.floats(-1e5, 1e6), st.floats(0.001, 1e6), LEVELS, st.floats(70, 185), st.floats(75, 220))
@settings(max_examples=50, deadline=None)
def test_labels_of_numbers_never_collide(low, long, level, width, height) -> None:  # type: ignore[no-untyped-def]
    x = number_axis("how far", "mm", (low, low + long), count=11)
    y = number_axis("how long", "s", (low, low + long), count=9)
    check_chart(Chart(x, y), level, width, height)


def test_long_titles_are_wrapped() -> None:
    long = "the time the canopy takes to fall from the top of the stairs to the hall, timed by two people"
    check_chart(Chart(number_axis(long, "cm", (0, 10)), number_axis(long, "s", (0, 10))), "younger", 120.0)


def test_points_lie_where_the_axes_say() -> None:
    # y = x on axes from 0 to 50 and 0 to 4: linear, so a point at 25 lies half way along.
    on = kit("older")
    chart = Chart(SIDES, TIME, series=(Series("Juno", ((0.0, 0.0), (25.0, 2.0), (50.0, 4.0)), "dot"),))
    pen = drawn(on, chart, 170.0, 120.0)
    middles = [((a + c) / 2, (b + d) / 2) for a, b, c, d in map(box, of_role(pen.marks, "point"))][-3:]
    across, up = [m for m in of_role(pen.marks, "axis") if isinstance(m, Line)]
    assert middles[0] == pytest.approx((across.x1, across.y1))
    assert middles[2] == pytest.approx((across.x2, up.y2))
    assert middles[1] == pytest.approx(((across.x1 + across.x2) / 2, (up.y1 + up.y2) / 2))


def test_ticks_are_evenly_spaced_and_labelled_at_their_marks() -> None:
    on = kit("older")
    pen = drawn(on, Chart(SIDES, TIME), 170.0, 120.0)
    ups = [m.y1 for m in of_role(pen.marks, "tick-mark") if isinstance(m, Line) and m.y1 == m.y2]
    steps = [b - a for a, b in itertools.pairwise(ups)]
    assert steps == pytest.approx([steps[0]] * (len(TIME.ticks) - 1))
    labels = {m.text: box(m) for m in tick_labels(list(pen.marks)) if box(m)[2] < 12}
    for text, y in zip(TIME.labels, ups, strict=True):
        assert (labels[text][1] + labels[text][3]) / 2 == pytest.approx(y, abs=0.5)


def test_the_grid_is_never_finer_than_a_pencil_can_tell() -> None:
    on = kit("older")
    fine = Axis("x", "", tuple(float(k) for k in range(41)), tuple(str(k) for k in range(41)), 10)
    pen = drawn(on, Chart(fine, fine), 120.0, 90.0)
    xs = sorted({round(m.x1, 4) for m in of_role(pen.marks, "grid") if isinstance(m, Line) and m.x1 == m.x2})
    assert min(b - a for a, b in itertools.pairwise(xs)) >= 1.8


def test_a_picture_graph_has_a_square_for_each_picture() -> None:
    on = kit("first")
    words = word_axis("canopy", ("small", "middle", "large"))
    scale = picture_scale(TIME)
    pen = drawn(on, Chart(words, TIME, "picture", scale=scale, key="One square is half a second."), 170.0, 150.0)
    squares = [box(m) for m in of_role(pen.marks, "square")]
    assert len(squares) == 3 * scale.boxes
    assert all(c - a == pytest.approx(d - b) for a, b, c, d in squares)
    assert {"One", "small", "middle", "large"} <= set(words_of(pen.marks))


def test_bars_have_an_empty_strip_over_each_word() -> None:
    on = kit("younger")
    pen = drawn(on, Chart(word_axis("canopy", ("small", "large")), TIME, "bars"), 170.0, 120.0)
    strips = [m for m in of_role(pen.marks, "strip") if isinstance(m, Path_)]
    assert len(strips) == 2 and all(m.fill is None for m in strips)


def test_a_band_reaches_from_its_low_to_its_high_edge() -> None:
    on = kit("older")
    band = Band("expected", ((20.0, 1.0, 2.0), (50.0, 2.0, 3.0)))
    pen = drawn(on, Chart(SIDES, TIME, bands=(band,)), 170.0, 120.0)
    across, up = [m for m in of_role(pen.marks, "axis") if isinstance(m, Line)]
    left, low, right, high = max((box(m) for m in of_role(pen.marks, "band")), key=lambda b: b[2] - b[0])
    scale = (up.y2 - up.y1) / 4
    assert (low, high) == pytest.approx((up.y1 + scale, up.y1 + 3 * scale))
    assert (left, right) == pytest.approx((across.x1 + (across.x2 - across.x1) * 0.4, across.x2))


def test_everything_drawn_in_is_named_in_the_key() -> None:
    on = kit("older")
    series = (Series("Juno", ((20, 1),)), Series("Bram", ((20, 1.2),), "ring", line=True))
    bands = (Band("expected", ((20, 1, 2), (50, 2, 3))),)
    chart = Chart(SIDES, TIME, series=series, bands=bands, means=((20, 1.1),), mean_name="mean")
    assert {"Juno", "Bram", "expected", "mean"} <= set(words_of(drawn(on, chart, 170.0).marks))
    check_chart(chart, "older", 70.0)


def test_a_blank_axis_has_lines_to_write_its_numbers_on() -> None:
    on = kit("upper")
    pen = drawn(on, Chart(blank_axis("length", "cm"), blank_axis("time", "s")), 170.0, 120.0)
    assert len(of_role(pen.marks, "blank-label")) == 22 and not tick_labels(list(pen.marks))


@pytest.mark.parametrize("kind", ["bars", "picture"])
def test_strips_are_filled_up_to_their_values(kind: str) -> None:
    on = kit("younger")
    axis = word_axis("canopy", ["flat", "cone", "cup"])
    filled = ((1.0, 1.5), (3.0, 3.0))
    chart = Chart(axis, TIME, kind, picture_scale(TIME), filled=filled)
    marks = drawn(on, chart, 160.0, 90.0).marks
    fills = [box(m) for m in of_role(marks, "filled")]
    strips = [box(m) for m in of_role(marks, "strip")]
    assert len(fills) == 2 and len(strips) == 3
    whole = TIME.high if kind == "bars" else picture_scale(TIME).each * picture_scale(TIME).boxes
    for (_, value), fill, strip in zip(filled, fills, (strips[0], strips[2]), strict=True):
        assert (fill[0], fill[1], fill[2]) == pytest.approx((strip[0], strip[1], strip[2]))
        assert (fill[3] - fill[1]) / (strip[3] - strip[1]) == pytest.approx(value / whole)


def test_a_curve_has_no_marks_at_its_points() -> None:
    on = kit("upper")
    curve = Series("best fit", ((20, 1.0), (30, 1.5), (50, 2.0)), "line", True)
    marks = drawn(on, Chart(SIDES, TIME, series=(curve,)), 160.0, 90.0).marks
    assert len(of_role(marks, "series")) == 1
    assert len(of_role(marks, "point")) == 1  # the one in the key


def test_a_band_over_filled_strips_leaves_them_to_be_seen() -> None:
    on = kit("older")
    axis = word_axis("canopy", ["flat", "cone"])
    bands = (Band("predicted", ((1.0, 1.0, 1.5), (2.0, 1.2, 2.0))),)
    for filled in ((), ((1.0, 1.2),)):
        marks = drawn(on, Chart(axis, TIME, "bars", bands=bands, filled=filled), 160.0, 90.0).marks
        inks = {m.fill for m in of_role(marks, "band")[1:] if isinstance(m, Path_)}  # without the one in the key
        assert inks == ({None} if filled else {0.94})


def test_between_bars_there_are_only_dots_that_lead_from_the_numbers() -> None:
    chart = Chart(word_axis("length", ["200", "400", "600"]), TIME, "bars")
    marks = drawn(kit("younger"), chart, 160.0).marks
    strips = [box(mark) for mark in of_role(marks, "strip")]
    assert len(strips) == 3
    for line in of_role(marks, "grid"):
        left, _, right, _ = box(line)
        assert any(left > strip[0] - 0.3 and right < strip[2] + 0.3 for strip in strips)
    assert all(mark.stroke.dash for mark in of_role(marks, "leader"))  # type: ignore[union-attr]
