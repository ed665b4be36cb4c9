import itertools
from dataclasses import replace

import pytest
from parent_desks import (
    CHILDREN,
    FAMILIES,
    FREE,
    KINDS,
    LETTER,
    SMALLEST,
    STUDIES,
    assert_well_set,
    challenge,
    desk,
    family,
    laid,
    pages_of,
    said,
    squeezed,
    study,
    texts,
    work,
)

from packgen import sheets
from packgen.faults import Said
from packgen.planning.challenges import trial_of
from packgen.planning.print_plan import NumberedSheet, RunInfo


@pytest.mark.parametrize(("about", "of"), tuple(itertools.product(STUDIES, FAMILIES)))
def test_every_study_and_family_gets_a_guide_without_faults(about: str, of: str) -> None:
    if about == "many works" and of not in ("three", "six on Letter"):
        pytest.skip("large, and shown with two families")
    home = FAMILIES[of]
    (guide,) = laid("guide", STUDIES[about], home)
    assert_well_set(guide.pages, home.printer.margin)
    assert guide.sides == "two-sided-long-edge"


def test_every_week_has_a_page_with_its_title_and_day() -> None:
    on = desk("guide")
    text = [said(page) for page in pages_of(laid("guide"))]
    for week in on.term.weeks:
        page = next(words for words in text if words.startswith(f"Week{week.number}:"))
        for chapter in week.chapters:
            assert squeezed(str(chapter.title)) in page
        day = week.dates[0]
        assert f"{day.day}{day:%B}" in page


def numbered(at: int) -> tuple[RunInfo, ...]:
    """The parent's own file, as it is known when the guide is laid out again: the guide begins on page `at`."""
    sheets = (
        NumberedSheet("", None, "The term at a glance", "term-plan", "Term plan", first=1, pages=2),
        NumberedSheet("", None, "The guide", "guide", "Guide", first=at, pages=20),
        NumberedSheet("", None, "What to print, and how", "print-plan", "Print plan", first=at + 40, pages=2),
    )
    long = "two-sided-long-edge"
    return (RunInfo("parent/guide.pdf", "", "plain", long, 1, 60, 30, ("guide",), sheets=sheets),)


@pytest.mark.parametrize("at", [1, 3])
def test_the_contents_name_the_page_each_part_begins_on(at: int) -> None:
    on = desk("guide", runs=numbered(at))
    (guide,) = sheets.lay_out("guide", on)
    first = guide.pages[0]
    listed = [mark for mark in texts(first) if mark.role == "contents"]
    numbers = {round(mark.y, 3): int(mark.text) for mark in listed if mark.x < first.width / 2}
    numbers_right = {round(mark.y, 3): int(mark.text) for mark in listed if mark.x >= first.width / 2}
    assert len(listed) == len(on.term.weeks) + len(on.study.challenges) + 3 + (at > 1)
    for week in on.term.weeks:
        title = f"Week {week.number}:"
        (line,) = [mark for mark in texts(first) if mark.text.startswith(title)]
        page = (numbers if line.x < first.width / 2 else numbers_right)[round(line.y, 3)]
        assert said(guide.pages[page - at]).startswith(squeezed(title))
    for challenge_ in on.study.challenges:
        (line,) = [mark for mark in texts(first) if mark.text == f"Key: {challenge_.title}"]
        page = (numbers if line.x < first.width / 2 else numbers_right)[round(line.y, 3)]
        assert squeezed(f"Key: {challenge_.title}") in said(guide.pages[page - at])
    (last,) = [mark for mark in texts(first) if mark.text == "What to print, and how"]
    assert (numbers | numbers_right)[round(last.y, 3)] == at + 40


def test_the_moments_of_a_week_come_in_order_and_the_minutes_at_the_table_are_those_under_it() -> None:
    on = desk("guide")
    words = said(*pages_of(laid("guide")))
    for week in on.term.weeks:
        begin = words.index(f"Week{week.number}:", words.index("Before", 400))
        part = words[begin:]
        assert part.index("Before") < part.index("Atthetable")
        minutes = sum(part.minutes for sitting in week.sittings for part in sitting.parts)
        if minutes:
            assert f"Atthetableabout{minutes}minutes" in part


def test_nothing_the_study_says_about_works_is_left_out() -> None:
    about = study()
    words = said(*pages_of(laid("guide", about)))
    for one in about.works:
        for text in (one.title, one.tell, one.held, *one.look):
            assert squeezed(str(text)) in words
    for text in (*about.obstacles, *about.facts, *(t for _, t in about.life), *(w.means for w in about.words)):
        assert squeezed(str(text)) in words


def test_the_distance_to_a_work_is_told_in_the_units_of_the_family() -> None:
    # Saltmere is invented and lies at 50.4 N 4.9 W here; to 48.86 N 2.34 E it is 548 km by the haversine formula.
    assert "about550kmfromhome" in said(*pages_of(laid("guide")))
    assert "about340milesfromhome" in said(*pages_of(laid("guide", of=LETTER)))


def test_expected_results_are_those_of_the_planned_trial() -> None:
    about = study(challenges=(challenge(),))
    plan, _ = trial_of(about.challenges[0], family())
    assert plan and plan.model
    words = said(*pages_of(laid("guide", about)))
    for row in plan.rows:
        assert row.expected and squeezed(row.expected.text) in words
    for fault in plan.model.faults_of_build:
        assert squeezed(fault.symptom) in words and squeezed(fault.remedy) in words
    for why in (*plan.model.why_higher, *plan.model.why_lower, *plan.cautions):
        assert squeezed(why) in words
    assert squeezed(plan.model.formula) in words
    assert squeezed("Nobody climbs to let things fall") in words


def test_a_challenge_without_a_model_has_a_key_without_numbers() -> None:
    words = said(*pages_of(laid("guide", study(challenges=(FREE,)))))
    assert "Thereisnoformulabehindthisone" in words
    assert squeezed(str(FREE.extension)) in words


def test_the_youngest_is_asked_first_and_the_easier_question() -> None:
    hard, easy = "Which of the boats is the nearest, and how can you tell that it is?", "What is red?"
    words = said(*pages_of(laid("guide", study(works=[work(0, look=(hard, easy))]))))
    assert words.index(squeezed(easy)) < words.index(squeezed(hard))
    assert words[words.index(squeezed(easy)) - 40 :].index("WilfandBram") < 40


def test_sheets_go_by_what_they_are_as_long_as_their_files_are_not_known() -> None:
    wilf = replace(CHILDREN[2], leave_out=(Said("telling"),))
    words = said(*pages_of(laid("guide", of=family((*CHILDREN[:2], wilf)))))
    assert "JunoandBramLifesheetTellingstrip" in words
    assert "WilfLifesheetTellingstrip" not in words


def test_sheets_go_by_their_number_and_printed_title() -> None:
    named = (
        NumberedSheet("Juno", 4, "Set down the life", "biography", "Set down the life", "", 1),
        NumberedSheet("Juno", None, "The box", "model", "Model: A box", "", 2, "card", 1, 1),
        NumberedSheet("Juno", 9, "Left over", "puzzle", "Left over"),
    )
    run = RunInfo("juno/1-plain-one-sided.pdf", "Juno", "plain", "one-sided", 1, 3, 3, KINDS, sheets=named)
    words = said(*pages_of(laid("guide", of=family(CHILDREN[:1]), runs=(run,))))
    assert "4Setdownthelife" in words and "cardsThebox" in words
    assert "AnyweeksheetsnoweekasksforJuno9Leftover" in words


def test_answers_to_the_timeline_are_those_read_off_the_line() -> None:
    words = said(*pages_of(laid("guide")))
    # 1862 to 1865 on the line is three years; born in 1834, somebody becomes 17 in 1851.
    assert "TimelineanswersforJuno,inyears" in words
    assert "3“Chartsthetides”" in words and "17“Makesalamp”" in words
    young = said(*pages_of(laid("guide", of=family(CHILDREN[1:]))))
    assert "Timelineanswers" not in young


def test_a_child_too_young_to_write_has_something_to_do_beside_the_others() -> None:
    assert "Besidetheothers" in said(*pages_of(laid("guide")))
    alone = said(*pages_of(laid("guide", of=family(CHILDREN[2:]))))
    assert "Besidetheothers" not in alone


def test_the_smallest_study_takes_few_pages() -> None:
    assert len(laid("guide", SMALLEST, FAMILIES["no file"])[0].pages) <= 4


def test_a_model_is_told_with_the_scale_it_comes_out_at() -> None:
    words = said(*pages_of(laid("guide", study(challenges=()))))
    # ISO 5455: a box of 80 x 50 x 30 mm fits a sheet of A4 at full size
    assert "truesize" in words
    assert "length:80mm" in words
