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
    work,
)

from packgen import sheets
from packgen.faults import Said
from packgen.planning.challenges import trial_of
from packgen.planning.print_plan import Begin, NumberedSheet, RunInfo


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


def test_the_guide_says_what_begins_on_which_of_its_pages() -> None:
    on = desk("guide")
    (guide,) = sheets.lay_out("guide", on)
    assert guide.begins[0] == Begin("Isaure Quenby at a glance", 1)
    weeks = [one for one in guide.begins if one.title.startswith("Week")]
    keys = [one for one in guide.begins if one.under]
    assert len(weeks) == len(on.term.weeks) and len(keys) == len(on.study.challenges)
    for one in weeks:
        assert said(guide.pages[one.page - 1]).startswith(squeezed(one.title))
    for one in keys:
        assert squeezed(one.title) in said(guide.pages[one.page - 1])


def test_the_life_is_on_the_page_of_the_file_that_the_first_week_names() -> None:
    sheet = NumberedSheet("", None, "Isaure Quenby at a glance", "guide", "Guide", first=7)
    run = RunInfo("parent/guide.pdf", "", "plain", "two-sided-long-edge", 1, 60, 30, ("guide",), sheets=(sheet,))
    (guide,) = sheets.lay_out("guide", desk("guide", runs=(run,)))
    assert "Whattosayisonpage7" in said(*guide.pages)


def test_the_moments_of_a_week_come_in_order_and_the_minutes_at_the_table_are_those_under_it() -> None:
    on = desk("guide")
    words = said(*pages_of(laid("guide")))
    for week in on.term.weeks:
        begin = words.index(f"Week{week.number}:")
        part = words[begin:]
        if "Before" in part:
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
    at = words.index("Forthetable")
    assert words[at - 15 : at] == "JunoandBramWilf"


def test_sheets_go_by_their_number_and_printed_title() -> None:
    named = (
        NumberedSheet("Juno", 4, "Set down the life", "biography", "Set down the life", "", 1),
        NumberedSheet("Juno", None, "The box", "model", "Model: A box", "", 2, "card", 1, 1),
    )
    run = RunInfo("juno/1-plain-one-sided.pdf", "Juno", "plain", "one-sided", 1, 3, 3, KINDS, sheets=named)
    words = said(*pages_of(laid("guide", of=family(CHILDREN[:1]), runs=(run,))))
    assert "4Setdownthelife" in words and "cardsThebox" in words


def test_answers_to_the_timeline_are_those_read_off_the_line() -> None:
    words = said(*pages_of(laid("guide")))
    # 1862 to 1865 on the line is three years; born in 1834, somebody becomes 17 in 1851.
    assert "TimelineanswersforJuno,inyears" in words
    assert "3“Chartsthetides”" in words and "17“Makesalamp”" in words
    young = said(*pages_of(laid("guide", of=family(CHILDREN[1:]))))
    assert "Timelineanswers" not in young


def test_without_a_book_nothing_is_asked_about_one_and_pictures_are_told_when_they_were_looked_at() -> None:
    words = said(*pages_of(laid("guide", study(chapters=0))))
    assert "thebook" not in words.replace("thebookbythesteps", "").replace("Thebook", "")
    first = words[words.index("Week1:") :]
    assert first.index("Lookandtalk") < first.index("Tellback") < first.index("Onethingthatwasinit")


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
