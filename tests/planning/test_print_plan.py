from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from packgen.planning.print_plan import RunInfo, count_paper, fresh_sheets, plan_printing, setting

LONG, SHORT = "two-sided-long-edge", "two-sided-short-edge"


def run(
    path: str, stock: str = "plain", sides: str = LONG, child: str = "Juno", copies: int = 1, pages: int = 4
) -> RunInfo:
    sheets = pages if sides == "one-sided" else -(-pages // 2)
    return RunInfo(path, child, stock, sides, copies, pages, sheets, ("words",), ("Cut along the lines.",), 1)


FRONTS = replace(run("juno/2-plain-fronts.pdf", sides="one-sided", pages=3), face="fronts", flip=SHORT)
BACKS = replace(run("juno/2-plain-backs.pdf", sides="one-sided", pages=3), face="backs", flip=SHORT)


def test_paper_is_changed_once_for_each_further_stock() -> None:
    runs = [run("juno/1-plain.pdf"), run("juno/2-card.pdf", "card"), run("bram/1-plain.pdf", child="Bram"),
            run("bram/2-card.pdf", "card", child="Bram")]  # fmt: skip
    plan = plan_printing(runs)
    assert [step.run.path for step in plan.steps] == [
        "juno/1-plain.pdf", "bram/1-plain.pdf", "juno/2-card.pdf", "bram/2-card.pdf"
    ]  # fmt: skip
    assert [step.load for step in plan.steps] == [True, False, True, False]
    assert plan.paper_changes == 1


def test_numbers_in_names_count_as_numbers() -> None:
    plan = plan_printing([run("juno/10-plain.pdf"), run("juno/9-plain.pdf")])
    assert [step.run.path for step in plan.steps] == ["juno/9-plain.pdf", "juno/10-plain.pdf"]


def test_backs_follow_their_fronts_and_say_how_to_turn_the_stack() -> None:
    plan = plan_printing([BACKS, run("juno/1-plain.pdf"), FRONTS, run("juno/3-plain.pdf")])
    assert [step.run.face for step in plan.steps] == ["", "fronts", "backs", ""]
    assert "short edge" in plan.steps[2].turn
    assert not plan.steps[1].turn
    assert "long edge" in plan_printing([replace(BACKS, flip=LONG)]).steps[0].turn


def test_backs_take_no_fresh_paper() -> None:
    (plain,) = count_paper([FRONTS, BACKS])
    assert (plain.sheets, plain.pages) == (3, 6)
    assert fresh_sheets(BACKS) == 0


def test_copies_count_in_paper_pages_and_colour() -> None:
    (plain,) = count_paper([run("a.pdf", copies=3, pages=4)])
    assert (plain.sheets, plain.pages, plain.colour_pages) == (6, 12, 3)


def test_settings_are_in_words() -> None:
    # keywords of RFC 8011 (IPP), `sides`
    assert setting("one-sided") == "one side only"
    assert "long edge" in setting(LONG) and "short edge" in setting(SHORT)


def test_no_runs_make_an_empty_plan() -> None:
    assert plan_printing([]).steps == ()
    assert plan_printing([]).paper_changes == 0


RUNS = st.lists(
    st.builds(
        RunInfo,
        st.integers(0, 400).map(lambda i: f"child/{i}-run.pdf"),
        st.sampled_from(["Juno", "Bram", ""]),
        st.sampled_from(["plain", "card", "tracing"]),
        st.sampled_from(["one-sided", LONG, SHORT]),
        st.integers(1, 4),
        st.integers(1, 9),
        st.integers(1, 9),
    ),
    max_size=15,
    unique_by=lambda run: run.path,
)


@given(RUNS)
def test_every_file_is_in_the_plan_exactly_once(runs: list[RunInfo]) -> None:
    plan = plan_printing(runs)
    assert sorted(step.run.path for step in plan.steps) == sorted(run.path for run in runs)
    assert [step.number for step in plan.steps] == list(range(1, len(runs) + 1))


@given(RUNS)
def test_no_order_changes_the_paper_less_and_paper_adds_up(runs: list[RunInfo]) -> None:
    plan = plan_printing(runs)
    stocks = {run.stock for run in runs}
    assert plan.paper_changes == max(0, len(stocks) - 1)
    assert sum(step.paper for step in plan.steps) == sum(count.sheets for count in plan.paper)
    assert {count.stock for count in plan.paper} == stocks
    if "plain" in stocks:
        assert plan.steps[0].run.stock == "plain"
