"""The trial table: a cell for every trial that can be written in, as many beside each other as the hand allows."""

import pytest
from page_marks import box, drawn, of_role, words_of
from trial_desks import CANOPY, COINS, LEVELS, trial_desk

from packgen.page.table import Cell
from packgen.page.trial_table import Line, counted, empty_lines, trial_table, with_repeats

LEAST = {"younger": 18.0, "older": 13.0, "upper": 12.0}


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("repeats", [1, 2, 3, 5, 8, 13, 20])
@pytest.mark.parametrize("text", [CANOPY, COINS], ids=["canopy", "coins"])
def test_every_trial_has_a_cell_wide_enough_to_write_in(level: str, repeats: int, text: str) -> None:
    desk, challenge, plan = trial_desk(level, text, options=(("trials", repeats),))
    plan = with_repeats(desk, challenge, plan)
    kinds = [column.kind for column in plan.columns(level)]
    table = trial_table(desk, plan, empty_lines(plan, level), kinds)
    cells = [cell for row in table.rows for cell in row]
    numbered = [cell for cell in cells if isinstance(cell, Cell) and cell.corner]
    if numbered:
        assert [cell.corner for cell in numbered[:repeats]] == [str(k) for k in range(1, repeats + 1)]
        assert len(numbered) == repeats * len(plan.rows)
    else:
        assert sum(column.head.startswith(("Try", "Trial ")) for column in table.columns) == repeats
    assert min(table.widths(desk.live_width)) >= LEAST[level] - 1.0


@pytest.mark.parametrize("level", LEVELS)
def test_the_columns_are_those_of_the_plan(level: str) -> None:
    desk, _, plan = trial_desk(level)
    kinds = [column.kind for column in plan.columns(level)]
    table = trial_table(desk, plan, empty_lines(plan, level), kinds)
    heads = [column.head for column in table.columns]
    assert len(heads) == len(kinds) and heads[0] == "canopy side"
    assert ("My guess" in heads, "Mean" in heads, "Range" in heads, "The middle one" in heads) == (
        level != "younger", level != "younger", level == "upper", level == "younger",
    )  # fmt: skip
    assert {column.unit for column in table.columns[1:]} == {"s"} and table.columns[0].unit == "mm"


def test_a_row_of_many_trials_is_never_parted_by_a_page() -> None:
    desk, challenge, plan = trial_desk("older", COINS, options=(("trials", 20),))
    plan = with_repeats(desk, challenge, plan)
    table = trial_table(desk, plan, empty_lines(plan, "older"), [column.kind for column in plan.columns("older")])
    for room in range(40, 200, 7):
        parts = table.split(desk.kit, desk.live_width, float(room))
        if parts:
            first = parts[1].rows[0]  # type: ignore[attr-defined]
            assert not any(isinstance(cell, Cell) and cell.joined for cell in first)


def test_the_trials_of_one_value_stand_under_one_name_without_a_rule() -> None:
    desk, challenge, plan = trial_desk("older", COINS, options=(("trials", 20),))
    plan = with_repeats(desk, challenge, plan)
    table = trial_table(desk, plan, empty_lines(plan, "older"), ["value", "guess", "mean"])
    marks = drawn(desk.kit, table, desk.live_width).marks
    rules = [box(m) for m in of_role(marks, "table-rule")]
    level = [r for r in rules if r[1] == r[3]]
    deep = len(table.rows) // len(plan.rows)
    whole = [r for r in level if r[0] == 0.0 and r[2] > desk.live_width - 0.1]
    assert deep > 1 and len(whole) == len(plan.rows) - 1 + 1  # between the values, and under the head
    assert len([r for r in level if r[0] > 0.0]) == (deep - 1) * len(plan.rows)
    assert "Trials" in words_of(marks)


def test_a_filled_row_shows_what_was_written_and_what_came_of_it() -> None:
    desk, _, plan = trial_desk("upper")
    lines = [Line("90", ("0.81", "(8.1)", "–"), (("mean", "0.81"), ("range", "0.10")))]
    words = words_of(drawn(desk.kit, trial_table(desk, plan, lines, ["value", "mean", "range"], 0.7), 170.0).marks)
    assert words[-6:] == ["90", "0.81", "(8.1)", "–", "0.81", "0.10"]


def test_what_is_counted_is_known() -> None:
    assert counted(trial_desk("younger", COINS)[2]) and not counted(trial_desk("younger", CANOPY)[2])
    boat = "\n    title: A boat\n    brief: Build.\n    model: boat-load\n"
    assert not counted(trial_desk("younger", boat)[2])
    coins = boat + "    measure: {what: coins carried, unit: coins}\n    given: {coin mass: 5 g}\n"
    assert counted(trial_desk("younger", coins)[2])


def test_the_study_says_how_often_before_the_recipe_does() -> None:
    text = CANOPY + "    trials: 4\n"
    desk, challenge, plan = trial_desk("younger", text, options=(("trials", 2),))
    assert with_repeats(desk, challenge, plan).repeats("younger") == 4
    desk, challenge, plan = trial_desk("younger", options=(("trials", 2),))
    assert with_repeats(desk, challenge, plan).repeats("younger") == 2
    desk, challenge, plan = trial_desk("younger")
    assert with_repeats(desk, challenge, plan).repeats("younger") == 3
