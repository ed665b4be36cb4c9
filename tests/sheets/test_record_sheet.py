import itertools
from dataclasses import replace
from datetime import date

import pytest
from parent_desks import (
    CHILDREN,
    FAMILIES,
    GOALS,
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
)

from packgen.faults import Said
from packgen.page.parents import persons
from packgen.planning.print_plan import NumberedSheet
from packgen.planning.ready import weeks_of
from packgen.reading.models import ChildResults, RowTried, Word
from packgen.trials.stages import stages


@pytest.mark.parametrize(("about", "of"), tuple(itertools.product(STUDIES, FAMILIES)))
def test_every_study_and_family_gets_a_record_without_faults(about: str, of: str) -> None:
    if about == "many works" and of not in ("three", "six on Letter"):
        pytest.skip("large, and shown with two families")
    found = laid("record", STUDIES[about], FAMILIES[of])
    assert_well_set(pages_of(found), FAMILIES[of].printer.margin)


def test_every_child_has_a_cover_and_on_its_back_a_list() -> None:
    _, *portfolios = laid("record")
    assert len(portfolios) == len(CHILDREN)
    for child, portfolio in zip(CHILDREN, portfolios, strict=True):
        cover, listed, *_ = portfolio.pages
        assert squeezed(f"the portfolio of {child.name} A study of Isaure Quenby") in said(cover)
        assert said(listed).startswith(f"Portfolio:{child.name}")


def test_a_cover_without_a_name_has_a_line_for_it() -> None:
    cover = laid("record", of=FAMILIES["no file"])[1].pages[0]
    assert [mark for mark in cover.marks if getattr(mark, "role", "") == "nameline"]
    assert "Youngerchild" not in said(cover)


def test_the_record_counts_the_sheets_of_the_packs() -> None:
    on = desk("record")
    for pack, portfolio in zip(on.packs, laid("record")[1:], strict=False):
        words = said(*portfolio.pages)
        assert f"{len(pack.items)}piecesofworkintheorderoftheweeks" in words
        for item in pack.items:
            title = str(getattr(item.subject, "title", ""))
            assert squeezed(title) in words


def test_sheets_that_were_not_printed_are_not_counted() -> None:
    on = desk("record")
    kept = [replace(run, kinds=("biography", "telling")) for run in on.print_runs]
    words = said(*laid("record", runs=kept)[1].pages)
    assert "2piecesofworkintheorderoftheweeks" in words and "Timeline" not in words


def test_goals_of_the_family_show_their_gaps() -> None:
    words = said(*laid("record", of=FAMILIES["goals"])[0].pages)
    for goal in GOALS:
        assert squeezed(str(goal.text)) in words
    # Nothing meets the second goal for any of the three.
    assert words.index("Nosheet") < words.index("all", words.index("Learnsaseasongbyheart"))
    assert "NotinthisstudyLearnsaseasongbyheart" in said(*laid("record", of=FAMILIES["goals"])[1].pages)


def test_without_goals_the_aims_of_each_level_stand_with_their_source() -> None:
    words = said(*laid("record")[0].pages)
    assert "AimsforWilf(3-5)" in words and "AimsforJuno(9-12)" in words
    assert "NGSS3-5-ETS1" in words


def test_stages_of_designing_are_those_of_the_level() -> None:
    words = said(*laid("record")[0].pages)
    for stage in stages("older"):
        assert squeezed(stage.title) in words and squeezed(stage.does) in words
        assert all(squeezed(code) in words for code in stage.in_spirit_of)


def test_results_appear_with_their_day() -> None:
    tried = tuple(
        RowTried(Said(label), tuple(map(Said, numbers)))
        for label, numbers in (("120 mm", ("0.8", "0.9", "0.7")), ("240 mm", ("1.2", "1.3", "1.1")))
    )
    came_out = ChildResults(Said("A slow fall"), Said("Juno"), tried, done=date(2027, 2, 20))
    found = laid("record", study(challenges=(challenge(),)), family(results=(came_out,)))
    words = said(*found[1].pages)
    # The means of the two rows are 0.8 and 1.2 s.
    assert "✓20Feb" in words and "from0.8sto1.2s" in words
    assert "20Feb" not in said(*found[2].pages)


def test_the_column_of_gaps_is_there_only_if_there_are_some() -> None:
    met = family(goals=GOALS[:1])
    assert "Nosheet" not in said(*laid("record", of=met)[0].pages)
    assert "Nosheet" in said(*laid("record", of=family(goals=GOALS))[0].pages)


def test_a_goal_that_is_met_has_a_mark_and_not_only_a_tint() -> None:
    one = family(CHILDREN[:1], goals=GOALS[:1])
    words = said(*laid("record", of=one)[0].pages)
    assert "•" in words and "Adot:plannedforthatweek.Tickitwhenitwasdone." in words
    assert "✓" not in words  # nothing looks done before it is


def test_what_the_aims_rest_on_is_said_once() -> None:
    words = said(*laid("record")[0].pages)
    assert words.count("packgen'sownwords") == 1 and words.count("Thecodesofthestages") == 1
    assert "results`" not in words


def test_every_portfolio_has_room_for_the_best_of_all() -> None:
    for home in FAMILIES.values():
        for portfolio in laid("record", of=home)[1:]:
            assert "Bestofall" in said(*portfolio.pages)


def test_a_portfolio_counts_its_pages_and_names_the_numbers_at_their_feet() -> None:
    on = desk("record")
    first = on.packs[0].items[0]
    sheet = NumberedSheet("Juno", 12, "The life", first.sheet, "The life")
    runs = [replace(run, sheets=(sheet,)) if run.path.startswith("juno/1") else run for run in on.print_runs]
    pages = sum(run.pages for run in runs if run.path.startswith("juno/"))
    cover, listed, *_ = laid("record", runs=runs)[1].pages
    assert f"on{pages}pages" in said(cover) and f"{pages}printedpages" in said(listed)
    assert "3Feb12Thelife" in said(listed)  # the title that is printed at its head


def test_words_stand_in_a_portfolio_with_the_weeks_of_that_child() -> None:
    told = study(chapters=8)
    hard = Word(Said("fathom"), Said("six feet"), (Said("older"),))
    easy = tuple(Word(Said(f"easy{k}"), Said("a word"), (Said("first"),)) for k in range(8))
    home = family((CHILDREN[0], CHILDREN[2]))
    on = desk("record", replace(told, words=(hard, *easy)), home)
    juno, wilf = persons(on)
    for person in (juno, wilf):
        item = next(item for item in person.items if item.sheet == "words")
        weeks = weeks_of(item, on.term.weeks, person.level)
        assert len(weeks) == (1 if person is juno else 8)
