"""Pages of results in the finished files: what the children wrote, what it says, and kind words about slips."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from challenge_files import CANOPY, CLOCK, FREE, LONG, NAMES, Made, kept, made

from packgen.faults import InputFaults, Severity

LEVELS = ("first", "younger", "older", "upper")
SOFT = {"90 mm": "0.71, 0.75, 0.70", "12 cm": "0.95, -, 1.02", "150": "1.22, 1.18, 1.21"}


def wrote(title: str, rows: dict[str, str], *levels: str) -> str:
    """The lines of a family file with these rows for the children of some levels."""
    lines = ["results:"]
    for level in levels or LEVELS:
        lines += [f"  - challenge: {title}", f"    child: {NAMES[level]}", "    trials:"]
        lines += [f"      {label}: [{numbers}]" for label, numbers in rows.items()]
    return "\n".join(lines) + "\n"


def soft(folder: Path, rows: dict[str, str] | None = None, *, levels: tuple[str, ...] = LEVELS, paper: str = "A4"
         ) -> Made:  # fmt: skip
    """The pages of results of a canopy for the children of some levels."""
    results = wrote("A soft landing", rows or SOFT, *levels)
    return made(folder, CANOPY, results=results, sheets="results", levels=levels, paper=paper)


def test_without_numbers_there_is_no_page() -> None:
    built = kept(CANOPY)
    assert all(built.sheets(level, "results") == [] for level in LEVELS)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_each_child_has_one_page_at_its_level(paper: str, tmp_path: Path) -> None:
    built = soft(tmp_path, paper=paper)
    assert not built.faults
    said = {}
    for level in LEVELS:
        (said[level],) = built.text(level, "results")
    assert "The big one took the longest. small 0.71 s middle 0.98 s big 1.21 s" in said["first"]
    assert "The longest time to fall was 1.21 s, with 150 mm." in said["younger"]
    assert "The difference: 1.21 − 0.71 = 0.50 s." in said["younger"]
    assert "the mean time to fall went up from 0.72 s to 1.20 s." in said["older"]
    assert "Best fit: y =" in said["upper"] and "lie in the band that was predicted" in said["upper"]
    assert "predicted" in said["older"] and "predicted" not in said["younger"] + said["first"]


def test_the_table_is_filled_in_as_it_was_written_with_what_comes_of_it(tmp_path: Path) -> None:
    built = soft(tmp_path)
    words = {level: built.text(level, "results")[0].split() for level in LEVELS}
    row = ["90", "0.71", "0.75", "0.70"]
    for level, ends in (("younger", ["0.71"]), ("older", ["0.72"]), ("upper", ["0.72", "0.05"])):
        text = " ".join(words[level])
        assert " ".join([*row, *ends]) in text, (level, text)
        assert " ".join(["120", "0.95", "–", "1.02"]) in text


def test_a_design_of_ones_own_has_the_last_line_of_the_table(tmp_path: Path) -> None:
    built = soft(tmp_path, {**SOFT, "mine": "1.30, 1.40, 1.60"})
    for level, ends in (("younger", "1.40"), ("older", "1.43"), ("upper", "1.43 0.30")):
        text = " ".join(built.text(level, "results")[0].split())
        assert f"mine 1.30 1.40 1.60 {ends}" in text, (level, text)
        assert "1.60 s" not in text  # what is said of the planned values is said of them alone


def test_the_bars_are_as_long_as_the_numbers(tmp_path: Path) -> None:
    built = soft(tmp_path, levels=("first", "younger"))
    (page,) = built.pages("younger", "results")
    filled = [r for r in page.rects if r["fill"] and r["non_stroking_color"] and _grey(r) == pytest.approx(0.75)]
    highs = [r["height"] for r in sorted(filled, key=lambda r: float(r["x0"]))]
    assert highs == pytest.approx([highs[0] * number / 0.71 for number in (0.71, 0.985, 1.21)], rel=0.005)
    (page,) = built.pages("first", "results")
    bars = [c for c in (*page.curves, *page.rects) if c["fill"] and c["width"] > 90 and _grey(c) == pytest.approx(0.82)]
    longs = [b["width"] for b in sorted(bars, key=lambda b: float(b["top"]))]
    assert longs == pytest.approx([longs[2] * number / 1.21 for number in (0.71, 0.985, 1.21)], rel=0.005)


def _grey(mark: dict[str, object]) -> float:
    ink = mark["non_stroking_color"]
    return float(ink[0] if isinstance(ink, tuple | list) else ink)  # type: ignore[arg-type]


def test_slips_are_pointed_out_kindly_on_the_page_and_told_with_their_line(tmp_path: Path) -> None:
    rows = {"90 mm": "0.71, 75 g, 0.70", "120 mm": "95, 1.02, 0.98", "150 mm": "-1.2, it tore, 1.18"}
    built = soft(tmp_path, rows)
    told = [fault for fault in built.faults if fault.place.line]
    assert {fault.severity for fault in told} == {Severity.WARNING} and len({f.place.line for f in told}) == 3 * 4
    for level in ("younger", "older", "upper"):
        text = " ".join(built.text(level, "results"))
        assert "75 g is not a time to fall in s" in text and "Is the minus sign a smudge?" in text
        assert "(75 g)" in text and "(it tore)" in text and "(95)" in text
    assert "smudge" not in " ".join(built.text("first", "results"))
    assert "Anybody can slip with a number." in " ".join(built.text("older", "results"))


def test_a_mean_without_a_failed_trial_is_marked_as_the_middle_number(tmp_path: Path) -> None:
    (text,) = soft(tmp_path, {"90 mm": "0.71, it tore, 0.75, 0.70"}, levels=("older",)).text("older", "results")
    assert "(*)" in text and re.search(r"0\.70 \*? ?0\.71|0\.71", text)


def test_a_row_of_another_name_stops_the_build_with_the_names_of_the_rows(tmp_path: Path) -> None:
    with pytest.raises(InputFaults) as caught:
        soft(tmp_path, {"200 mm": "1"}, levels=("older",))
    assert "Its rows are: 90 mm, 120 mm, 150 mm." in str(caught.value)


@pytest.mark.parametrize(
    ("case", "title", "rows"),
    [
        (CLOCK, "A shadow clock", {str(h): str(abs(h - 12) * 12 + 1) for h in range(9, 16)}),
        (FREE, "A boat", {"First build": "12", "Second build": "30"}),
        (LONG, "The strongest bridge of spaghetti over the harbour mouth and back to the lamp house",
         {name: ", ".join(str(20 + (7 * k + len(name)) % 60) for k in range(20)) for name in (
             "beam", "Donaudampfschifffahrtskapitänsbrücke", "arch", "triangles", "rolled tubes", "boxes",
             "plaited strips", "layers", "hanging", "folded fan")}),
    ],
    ids=["clock", "free", "long"],
)  # fmt: skip
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_any_trial_has_pages_that_are_full(case: str, title: str, rows: dict[str, str], paper: str, tmp_path: Path
                                           ) -> None:  # fmt: skip
    built = made(tmp_path, case, paper=paper, results=wrote(title, rows), sheets="results")
    for level in LEVELS:
        pages = built.pages(level, "results")
        assert 1 <= len(pages) <= 4
        for page in pages:
            marks = [*page.chars, *page.lines, *page.rects, *page.curves]
            foot = float(page.height) - 22 * 72 / 25.4
            assert max(m["bottom"] for m in marks if m["bottom"] < foot + 8) > 0.45 * float(page.height)
            assert max(m["x1"] for m in marks) < float(page.width) - 14 * 72 / 25.4
    text = " ".join(" ".join(built.text(level, "results")) for level in LEVELS)
    for label in rows:
        assert label.replace(" ", "")[:12] in text.replace(" ", "")


def test_the_day_is_told_and_trials_that_all_missed_have_no_column(tmp_path: Path) -> None:
    lines = wrote("A soft landing", {"90 mm": "0.71, 0.72, -", "120 mm": "0.9, -, -"}, "older")
    lines += "    done: 2027-02-24\n"
    (text,) = made(tmp_path, CANOPY, results=lines, sheets="results", levels=("older",)).text("older", "results")
    assert "Wednesday 24 February 2027" in text and "Date" not in text
    assert "Trial 2" in text and "Trial 3" not in text


def test_results_that_turn_are_told_with_the_turn(tmp_path: Path) -> None:
    rows = {str(h): str(abs(h - 12) * 12) for h in range(9, 16)}
    built = made(tmp_path, CLOCK, results=wrote("A shadow clock", rows, "upper"), levels=("upper",), sheets="results")
    (text,) = built.text("upper", "results")
    assert "went down from 36° to 0° at 12, and up again to 36°" in text and "Best fit" not in text


def test_results_belong_to_the_week_of_their_challenge(tmp_path: Path) -> None:
    both = CANOPY + FREE.strip("\n") + "\n"
    results = (
        wrote("A boat", {"First build": "12"}, "older") + wrote("A soft landing", SOFT, "older")[len("results:\n") :]
    )
    built = made(tmp_path, both, levels=("older",), results=results)
    weeks: dict[str, set[int]] = {}
    for file in built.manifest["files"]:
        for sheet in file["sheets"]:
            weeks.setdefault(sheet["title"].split(": ", 1)[-1].split(":")[0], set()).add(sheet["week"])
    assert all(len(found) == 1 for found in weeks.values()) and len(set(map(min, weeks.values()))) == 2
