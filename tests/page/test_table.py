"""Tables: nothing leaves its cell or is lost, rows fill the height they get, and the head is repeated."""

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from page_marks import box, drawn, kit, of_role, words_of

from packgen.page.marks import Line, Text
from packgen.page.table import Cell, Column, Table

TRIALS = Table(
    (
        Column("Side of the canopy", 1.3, "cm", names=True),
        *(Column(f"Trial {k}", unit="s", group="Time to fall", align="centre") for k in (1, 2, 3)),
        Column("Mean", unit="s", align="right"),
    ),
    tuple((side, "", "", "", "") for side in ("20", "30", "40", "50")),
)
TEXT = st.text(alphabet="abcdefghij klmno é-", max_size=60).map(lambda t: " ".join(t.split()))


def rows_of(count: int) -> tuple[tuple[str, ...], ...]:
    return tuple((f"row{k}", f"what stands in row {k}") for k in range(count))


def test_rows_fill_the_height_evenly() -> None:
    on = kit("older")
    span = TRIALS.measure(on, 170.0)
    height = (span.least + span.most) / 2
    frame = of_role(drawn(on, TRIALS, 170.0, height).marks, "table-frame")[0]
    assert box(frame) == pytest.approx((0.0, -height, 170.0, 0.0))
    rules = sorted({m.y1 for m in of_role(drawn(on, TRIALS, 170.0, height).marks, "table-rule")
                    if isinstance(m, Line) and m.y1 == m.y2 and m.x2 - m.x1 > 169}, reverse=True)  # fmt: skip
    heights = [a - b for a, b in zip(rules, [*rules[1:], -height], strict=True)]
    assert heights == pytest.approx([heights[0]] * 4)


def test_low_rows_grow_before_high_ones() -> None:
    on = kit("older")
    block = Table((Column("Word"), Column("Meaning")), (("ebb", "short"), ("flow", "long " * 60)), most=60.0)
    span = block.measure(on, 90.0)
    rules = [m.y1 for m in of_role(drawn(on, block, 90.0, span.least + 10.0).marks, "table-rule") if isinstance(m, Line)
             and m.y1 == m.y2]  # fmt: skip
    before = [m.y1 for m in of_role(drawn(on, block, 90.0).marks, "table-rule") if isinstance(m, Line) and m.y1 == m.y2]
    assert min(rules) == pytest.approx(min(before) - 10.0)


@given(st.lists(st.tuples(TEXT, TEXT, TEXT), min_size=1, max_size=6), st.floats(60, 180),
       st.sampled_from(["younger", "older", "upper"]))  # fmt: skip
@settings(max_examples=40, deadline=None)
def test_text_keeps_to_its_cell_and_none_is_lost(rows, width, level) -> None:  # type: ignore[no-untyped-def]
    on = kit(level)
    columns = (Column("Name", -30.0, names=True), Column("What it does", 2.0, "in words"), Column("Note", 1.0))
    block = Table(columns, tuple(rows))
    pen = drawn(on, block, width)
    said = "".join(words_of(pen.marks))
    assert said == "NameWhatitdoesinwordsNote" + "".join("".join("".join(row).split()) for row in rows)
    edges = [0.0, 30.0, 30.0 + (width - 30.0) * 2 / 3, width]
    low = -block.measure(on, width).least
    for mark in (m for m in pen.marks if isinstance(m, Text)):
        left, bottom, right, top = box(mark)
        assert any(a <= left + 1e-6 and right <= b + 1e-6 for a, b in itertools.pairwise(edges))
        assert bottom >= low and top <= 0.0


def test_columns_of_one_kind_stand_under_a_common_head() -> None:
    on = kit("older")
    pen = drawn(on, TRIALS, 170.0)
    heads = [m for m in pen.marks if isinstance(m, Text) and m.text == "Time to fall"]
    tries = [m for m in pen.marks if isinstance(m, Text) and m.text.startswith("Trial")]
    assert len(heads) == 1 and len(tries) == 3
    assert heads[0].y > max(m.y for m in tries)
    assert box(tries[0])[0] < box(heads[0])[0] < box(heads[0])[2] < box(tries[2])[2]


@given(st.integers(4, 60), st.floats(60, 240))
@settings(max_examples=40, deadline=None)
def test_a_split_table_repeats_its_head_and_keeps_every_row(count: int, room: float) -> None:
    on = kit("older")
    block = Table((Column("Name"), Column("What")), rows_of(count))
    rest: Table = block
    found: list[str] = []
    for _ in range(60):
        if rest.measure(on, 160.0).least <= room:
            break
        parts = rest.split(on, 160.0, room)
        assert parts
        head, after = parts
        assert isinstance(head, Table) and isinstance(after, Table)
        assert head.columns == block.columns and head.measure(on, 160.0).least <= room + 1e-6
        found += [str(row[0]) for row in head.rows]
        rest = after
    found += [str(row[0]) for row in rest.rows]
    assert found == [f"row{k}" for k in range(count)]
    assert len(rest.rows) > 1


def test_a_table_without_room_for_one_row_is_not_split() -> None:
    assert Table((Column("Name"), Column("What")), rows_of(4)).split(kit("older"), 160.0, 12.0) is None


def test_a_row_higher_than_a_page_goes_on_on_the_next() -> None:
    on = kit("older")
    long = " ".join(f"word{k}" for k in range(900))
    block = Table((Column("Name"), Column("What")), (("ebb", long),))
    parts = block.split(on, 160.0, 200.0)
    assert parts
    said = [word for part in parts for word in words_of(drawn(on, part, 160.0).marks) if word.startswith("word")]
    assert said == long.split()


def test_a_column_to_fold_back_has_a_fold_line_over_and_under_the_table() -> None:
    on = kit("upper")
    block = Table((Column("Word"), Column("Meaning", fold=True)), (("ebb", "the tide going out"),))
    fold = of_role(drawn(on, block, 160.0).marks, "fold")
    assert len(fold) == 1 and isinstance(fold[0], Line)
    assert fold[0].x1 == fold[0].x2 == 80.0 and fold[0].stroke.dash
    assert fold[0].y1 > 0.0 and fold[0].y2 < -block.measure(on, 160.0).least


def test_cells_can_be_ticked_crossed_or_ruled() -> None:
    on = kit("older")
    block = Table((Column("A"), Column("B"), Column("C", ruled=True)), ((Cell(box=True), Cell(crossed=True), ""),),
                  least=3 * on.look.ruling.pitch)  # fmt: skip
    marks = drawn(on, block, 160.0).marks
    assert len(of_role(marks, "tick")) == 1 and len(of_role(marks, "table-crossed")) == 1
    assert len(of_role(marks, "baseline")) == 2


def test_an_empty_table_is_only_its_head() -> None:
    on = kit("older")
    block = Table((Column("Word"), Column("Meaning")), ())
    assert words_of(drawn(on, block, 160.0).marks) == ["Word", "Meaning"]


def test_joined_cells_have_no_rule_above_them_and_corners_their_word() -> None:
    on = kit("older")
    rows = (("a", Cell("", corner="1"), ""), (Cell(joined=True), Cell("", corner="2"), ""), ("b", "", ""))
    block = Table((Column("Name", -40.0, names=True), Column("Trial"), Column("Mean")), rows)
    marks = drawn(on, block, 160.0).marks
    level = [box(m) for m in of_role(marks, "table-rule") if box(m)[1] == box(m)[3]]
    assert sorted(r[0] for r in level) == [
        0.0,
        0.0,
        40.0,
    ]  # under the head, under the whole row, beside the joined cell
    assert [m.text for m in of_role(marks, "corner")] == ["1", "2"]  # type: ignore[union-attr]


def test_a_common_head_over_columns_without_heads_is_all_their_head() -> None:
    on = kit("older")
    columns = (Column("Name"), *(Column("", group="Trials 1 to 3") for _ in range(3)), Column("Mean"))
    marks = drawn(on, Table(columns, (("a", "", "", "", ""),)), 160.0).marks
    head = box(of_role(marks, "table-head")[0])
    upright = [box(m) for m in of_role(marks, "table-rule") if box(m)[0] == box(m)[2]]
    inner = [r for r in upright if r[3] == pytest.approx(head[1])]
    assert len(inner) == 2 and len(upright) == 4
    assert not [m for m in of_role(marks, "table-rule") if box(m)[1] == box(m)[3] and box(m)[1] > head[1] + 1e-6]
