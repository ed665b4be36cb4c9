"""Challenge sets in the finished files: the stages of each level, tables and charts that fit, nothing of the answer."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from challenge_files import ALL, CANOPY, CLOCK, FREE, LONG, NAMES, kept, made

from packgen.faults import InputFaults, Severity
from packgen.trials.plan import plan_trial
from packgen.trials.stages import stages
from packgen.units import quantity

LEVELS = ("first", "younger", "older", "upper")
CASES = dict(zip(("canopy", "clock", "long", "free"), ALL, strict=True))


def millimetres(points: float) -> float:
    return points * 25.4 / 72


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("case", CASES)
def test_pages_are_full_and_nothing_reaches_the_edge(case: str, paper: str) -> None:
    built = kept(CASES[case], paper)
    assert not [fault for fault in built.faults if fault.severity is Severity.FAULT]
    for level in LEVELS:
        for number, page in enumerate(built.pages(level)):
            high, wide = float(page.height), float(page.width)
            marks = [*page.chars, *page.lines, *page.rects, *page.curves]
            assert min(m["x0"] for m in marks) > 15 * 72 / 25.4 - 1, (level, number)
            assert max(m["x1"] for m in marks) < wide - 14.5 * 72 / 25.4, (level, number)
            foot = high - 22 * 72 / 25.4  # over the foot's line
            work = [m["bottom"] for m in marks if m["bottom"] < foot + 8]
            assert max(work) > 0.62 * high, (level, number)


@pytest.mark.parametrize("case", ["canopy", "clock"])
@pytest.mark.parametrize("level", LEVELS)
def test_every_stage_of_the_level_has_a_page_of_its_name(level: str, case: str) -> None:
    built = kept(CASES[case])
    job = "find out" if case == "clock" else "design"
    titles = [page.split(NAMES[level])[0].strip() for page in built.text(level)]
    wanted = [stage.title for stage in stages(level, job)]
    assert [title for title in dict.fromkeys(titles) if title in wanted] == wanted


@pytest.mark.parametrize("level", LEVELS)
def test_what_is_to_be_found_out_asks_for_no_ideas_and_no_draft(level: str, tmp_path: Path) -> None:
    found = " ".join(kept(CLOCK).text(level))
    assert not any(word in found for word in ("Idea 1", "Think of two ways", "Choose and draw", "Design draft"))
    if level not in ("first", "upper"):
        asked = " ".join(made(tmp_path, CLOCK + "    job: design\n", levels=(level,)).text(level))
        assert "Think of two ways" in asked or "Idea 1" in asked


@pytest.mark.parametrize("level", ["younger", "older", "upper"])
def test_steps_come_after_ideas_and_draft(level: str) -> None:
    pages = kept(LONG).text(level)
    step = next(k for k, page in enumerate(pages) if "Sort the pieces." in page)
    draft = max(k for k, page in enumerate(pages) if page.startswith(("Choose and draw", "Design draft")))
    trial = next(k for k, page in enumerate(pages) if page.startswith(("Try it out", "Fair test", "Measure")))
    assert draft < step < trial


@pytest.mark.parametrize("level", LEVELS)
def test_the_stages_of_a_page_stand_out_in_its_line(level: str) -> None:
    built = kept(CANOPY)
    bold: set[str] = set()
    for page in built.pages(level):
        line = [c for c in page.chars if millimetres(c["top"]) < 62 and c["size"] * 25.4 / 72 < 4.4]
        text = "".join(c["text"] for c in line if "old" in c["fontname"])
        bold |= {stage.key for stage in stages(level) if stage.title.replace(" ", "") in text.replace(" ", "")}
    assert bold == {stage.key for stage in stages(level)}


@pytest.mark.parametrize("level", ["younger", "older", "upper"])
def test_the_table_has_the_planned_rows_columns_units_and_repeats(level: str, tmp_path: Path) -> None:
    text = " ".join(made(tmp_path, CANOPY + "    trials: 4\n", levels=(level,)).text(level))
    name = "Try" if level == "younger" else "Trial"
    assert all(f"{name} {k}" in text for k in range(1, 5)) and f"{name} 5" not in text
    assert "canopy side" in text and all(re.search(rf"\b{side}\b", text) for side in (90, 120, 150))
    assert ("The middle" in text) is (level == "younger")
    assert ("My guess" in text and "Mean" in text) is (level != "younger")
    assert ("Range" in text) is (level == "upper")


def test_the_answer_is_on_no_page_of_a_child() -> None:
    built = kept(CANOPY)
    sides = [quantity(side, "mm") for side in (90, 120, 150)]
    given = {"canopy": "square-pyramid", "load mass": quantity(20, "g"), "drop height": quantity(2, "m")}
    plan = plan_trial("canopy", given, ("canopy side", sides), ("time to fall", "s"))
    for level in LEVELS:
        text = " ".join(built.text(level))
        for row in plan.rows:
            assert row.expected is not None
            for number in (row.expected.value, row.expected.low, row.expected.high):
                assert f"{number:.2f}" not in text and f"{number:.3f}" not in text
        assert "expected" not in text and "predicted" not in text


def test_the_question_and_the_fair_test_are_there_at_each_level() -> None:
    built = kept(CANOPY)
    said = {level: " ".join(built.text(level)) for level in LEVELS}
    assert "Which one comes down slowly?" in said["first"] and "Which canopy falls most slowly?" in said["younger"]
    assert "How does the side of the canopy change the time it takes to fall 2 m?" in said["older"]
    assert "How does the time it takes to fall 2 m depend on the side of the canopy?" in said["upper"]
    assert "To be fair, change only the side of the canopy. Keep the same: the load" in said["younger"]
    for level in ("older", "upper"):
        assert "Change one thing" in said[level] and "90 mm, 120 mm, 150 mm" in said[level]


def test_the_youngest_draw_before_and_after_with_the_parents_pen() -> None:
    before, ready, after = kept(CANOPY).text("first")
    assert "What will happen? Draw it." in before and "What happened? Draw it." in after
    assert all("A grown-up writes what the child says" in page for page in (before, after))
    assert all("small middle big" in page for page in (before, after)) and "yes a bit no" in after
    assert "We need tissue paper thread" in ready and "For the grown-up" in ready
    assert "Trial" not in before + after and "mm" not in before + after


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("case", CASES)
def test_the_youngest_have_three_pages_with_large_letters_and_wide_margins(
    case: str, paper: str, tmp_path: Path
) -> None:
    built = made(tmp_path, CASES[case], levels=("first",), paper=paper, child=", larger type: yes",
                 more="printer: {margin: 12 mm}\n")  # fmt: skip
    assert len(built.text("first")) <= 3 and not [f for f in built.faults if f.severity is Severity.FAULT]


def test_the_sizes_shown_to_the_youngest_are_true_to_one_another() -> None:
    page = kept(CANOPY).pages("first")[0]
    grey = [
        r for r in (*page.rects, *page.curves) if r["fill"] and abs(r["width"] - r["height"]) < 0.5 and r["width"] > 9
    ]
    sides = sorted({round(r["width"], 1) for r in grey})[-3:]
    assert [side / sides[-1] for side in sides] == pytest.approx([90 / 150, 120 / 150, 1], abs=0.01)


def test_the_younger_compare_one_number_and_tally_what_they_count() -> None:
    text = " ".join(kept(CANOPY).text("younger"))
    assert "the longest the shortest how much longer" in text and "up to your middle number" in text
    text = " ".join(kept(LONG).text("younger"))
    assert "Make a tally mark for each one" in text and "One square stands for ____ pennies" in text


def test_the_upper_guess_their_best_line_by_eye() -> None:
    text = " ".join(kept(CANOPY).text("upper"))
    assert "when the canopy side grows by" in text and "My rule: time to fall =" in text
    text = " ".join(kept(LONG).text("upper"))
    assert "My rule" not in text and "Draw a bar for each mean" in text


@pytest.mark.parametrize("level", ["younger", "older", "upper"])
def test_twenty_trials_of_ten_things_each_have_their_cell(level: str) -> None:
    built = kept(LONG)
    text = " ".join(built.text(level))
    assert f"{'Tries' if level == 'younger' else 'Trials'} 1 to 20 (pennies)" in text
    numbered = [word["text"] for page in built.pages(level) for word in page.extract_words(extra_attrs=["size"])
                if word["size"] < 8.2 and word["text"].isdigit()]  # fmt: skip
    for number in range(1, 21):
        assert numbered.count(str(number)) >= 10


@pytest.mark.parametrize("level", ["older", "upper"])
@pytest.mark.parametrize("case", CASES)
def test_leaves_printed_on_both_sides_have_no_empty_back(case: str, level: str) -> None:
    built = kept(CASES[case])
    for _, (first, last) in built.sheets(level):
        assert (last - first + 1) % 2 == 0
    pages = built.text(level)
    assert all(len(page) > 40 for page in pages)
    assert [re.search(r"page (\d+) of (\d+)", page).groups() for page in pages] == [  # type: ignore[union-attr]
        (str(k), str(len(pages))) for k in range(1, len(pages) + 1)
    ]


@pytest.mark.parametrize("level", ["younger", "older"])
def test_extra_copies_of_the_draft_are_counted_with_the_pages(level: str, tmp_path: Path) -> None:
    plain = kept(FREE)
    more = made(tmp_path, FREE, levels=(level,), child=", extra: {design-draft: 3}")
    title = "Choose and draw" if level == "younger" else "Design draft"
    counts = [sum(page.startswith(title) for page in built.text(level)) for built in (plain, more)]
    assert counts == [1, 4]
    pages = more.text(level)
    assert all(f"page {k} of {len(pages)}" in page for k, page in enumerate(pages, 1))
    assert len(pages) >= len(plain.text(level)) + 2  # the chart's page may make it even


@pytest.mark.parametrize("level", ["younger", "older", "upper"])
def test_each_planned_value_has_its_template_on_card(level: str) -> None:
    built = kept(CANOPY)
    files = {path.relative_to(built.folder).as_posix() for path, _ in built.sheets(level, part="templates")}
    models = [model for model in built.manifest["models"] if model["file"] in files]
    assert [model["title"] for model in models] == [f"A soft landing: {mm} mm" for mm in (90, 120, 150)]
    sheets = built.sheets(level, part="templates")
    assert len(sheets) == 3 and all("card" in path.name for path, _ in sheets)
    pages = built.text(level, part="templates")
    assert all("true size" in page for page in pages)
    building = " ".join(built.text(level))
    assert "sheets of card come with this challenge" in building
    assert "90 mm, 120 mm, 150 mm" in building and "Glue tab A" in building


def test_the_template_on_paper_is_where_the_manifest_says() -> None:
    built = kept(CANOPY)
    path, (first, _) = built.sheets("older", part="templates")[1]
    model = next(m for m in built.manifest["models"] if m["title"].endswith("120 mm") and m["file"] in str(path))
    pages = built.pages("older", part="templates")
    offset = built.sheets("older", part="templates")[0][1][0]
    assert model["cuts"][0]["page"] == first
    for cut in model["cuts"]:
        page = pages[cut["page"] - offset]
        high = float(page.height)
        drawn = [
            (millimetres(x), millimetres(high - y)) for mark in (*page.curves, *page.lines) for x, y in mark["pts"]
        ]
        for x, y in cut["points_mm"]:
            assert min(abs(x - px) + abs(y - py) for px, py in drawn) < 0.05


def test_templates_can_be_left_out_and_the_youngest_get_none(tmp_path: Path) -> None:
    assert kept(CANOPY).sheets("first", part="templates") == []
    without = made(tmp_path, CANOPY, levels=("older",), sheets="{sheet: challenge, templates: no}")
    assert without.manifest["models"] == [] and "true size" not in " ".join(without.text("older"))


@pytest.mark.parametrize("level", ["younger", "older", "upper"])
def test_the_shadow_clock_has_a_dial_for_the_familys_latitude(level: str) -> None:
    built = kept(CLOCK)
    model = built.manifest["models"][0]
    assert model["latitude_deg"] == 50.4 and model["title"] == "A shadow clock"
    (page,) = built.text(level, part="dial")
    assert "for 50.4° north" in page and page.count("Never look at the sun") == 2
    assert any("Never look at the sun" in text for text in built.text(level))
    assert not built.faults


def test_the_familys_latitude_counts_before_the_studys(tmp_path: Path) -> None:
    given = CLOCK + "    given: {latitude: 30 deg}\n"
    assert made(tmp_path, given, levels=("older",)).manifest["models"][0]["latitude_deg"] == 50.4
    away = made(tmp_path, given, levels=("older",), more="place: none\n")
    assert away.manifest["models"][0]["latitude_deg"] == 30
    (told,) = away.faults
    assert told.severity is Severity.WARNING and "latitude the study gives, 30°" in told.message
    assert "place:" in told.instead and told.place.line > 0


def test_without_any_latitude_the_fault_says_what_to_write(tmp_path: Path) -> None:
    with pytest.raises(InputFaults) as caught:
        made(tmp_path, CLOCK, levels=("older",), more="place: none\n")
    (fault,) = caught.value.faults
    assert "latitude" in fault.message and "place:" in fault.instead


def test_a_challenge_with_a_fault_makes_no_page_and_is_told_once(tmp_path: Path) -> None:
    with pytest.raises(InputFaults) as caught:
        made(tmp_path, CANOPY.replace("load mass", "lode mass"))
    assert len(caught.value.faults) >= 1
    assert len({str(fault) for fault in caught.value.faults}) == len(caught.value.faults)


def test_the_grown_up_of_a_youngest_alone_has_every_step_in_large_type_too(tmp_path: Path) -> None:
    steps = "".join(
        f"      - Step {k} is told in a sentence that is long enough to go on to a second line.\n" for k in range(9)
    )
    built = made(
        tmp_path, f"{CANOPY}    steps:\n{steps}", levels=("first",), paper="Letter", child=", larger type: yes"
    )
    text = " ".join(built.text("first"))
    assert "For the grown-up" in text and all(f"Step {k} is told" in text for k in range(9))
