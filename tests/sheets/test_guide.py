import itertools
from dataclasses import replace

import pytest
from parent_desks import (
    CHILDREN,
    FAMILIES,
    FREE,
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

from packgen.faults import Said
from packgen.planning.challenges import trial_of


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


def test_an_opening_of_two_pages_begins_on_the_left() -> None:
    pages = laid("guide")[0].pages
    for place, page in enumerate(pages, 1):
        if said(page).startswith("Week") and "Key:" in said(page)[:60] and place > 1:
            # The page before it is the week's own, which then has an even number.
            assert said(pages[place - 2]).startswith("Week")
            assert place % 2 == 1


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
    first = words.index("First:WilfandBram")
    then = words.index("Then:Juno")
    assert first < words.index(squeezed(easy)) < then < words.index(squeezed(hard))


def test_each_child_has_its_sheets_to_have_ready() -> None:
    wilf = replace(CHILDREN[2], leave_out=(Said("telling"),))
    words = said(*pages_of(laid("guide", of=family((*CHILDREN[:2], wilf)))))
    assert "JunoandBramLifesheet,tellingstrip1" in words
    assert "WilfLifesheet,tellingstrip1" not in words


def test_answers_to_the_timeline_are_given() -> None:
    words = said(*pages_of(laid("guide")))
    # 1834 to 1902: 67 years, or 68 if the birthday had come.
    assert "Timelineanswers" in words and "67or68years" in words


def test_a_child_too_young_to_write_has_something_to_do_beside_the_others() -> None:
    assert "Besidetheothers" in said(*pages_of(laid("guide")))
    alone = said(*pages_of(laid("guide", of=family(CHILDREN[2:]))))
    assert "Besidetheothers" not in alone


def test_the_smallest_study_takes_two_pages() -> None:
    assert len(laid("guide", SMALLEST, FAMILIES["no file"])[0].pages) == 2


def test_a_model_is_told_with_the_scale_it_comes_out_at() -> None:
    words = said(*pages_of(laid("guide", study(challenges=()))))
    # ISO 5455: a box of 80 x 50 x 30 mm fits a sheet of A4 at full size
    assert "truesize" in words
    assert "length:80mm" in words
