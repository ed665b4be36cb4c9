import itertools
from dataclasses import replace

import pytest
from parent_desks import (
    CHILDREN,
    FAMILIES,
    LETTER,
    STUDIES,
    assert_well_set,
    challenge,
    family,
    laid,
    material,
    said,
    study,
)

from packgen.faults import Said
from packgen.planning.print_plan import RunInfo


@pytest.mark.parametrize(("about", "of"), tuple(itertools.product(STUDIES, FAMILIES)))
def test_every_study_and_family_gets_a_list_without_faults(about: str, of: str) -> None:
    (found,) = laid("shopping-list", STUDIES[about], FAMILIES[of])
    assert_well_set(found.pages, FAMILIES[of].printer.margin)


def test_amounts_are_added_up_over_the_children() -> None:
    words = said(*laid("shopping-list")[0].pages)
    # Two children take two sheets each, the youngest works beside them; 1.5 m for all and a tenth: 1.7 m.
    assert "Tissuepaper4sheets2sheetseach" in words
    assert "Wilfworksbesidetheothers" in words
    assert "Thread1.7mtoshare" in words


def test_the_book_is_the_first_thing_to_get() -> None:
    words = said(*laid("shopping-list")[0].pages)
    assert words.index("Beforeweek1“TheLampontheQuay”byTamsinOrre1") < words.index("Tissuepaper")
    assert "Beforeweek1" not in said(*laid("shopping-list", study(chapters=0))[0].pages)


def test_amounts_are_in_the_units_of_the_family() -> None:
    # 1.5 m is 4.92 ft; with a tenth to spare 5.41 ft, which is 5 1/2 ft in steps of half a foot.
    assert "Thread51/2fttoshare" in said(*laid("shopping-list", of=LETTER)[0].pages)


def test_a_child_that_does_not_take_part_is_not_counted() -> None:
    bram = replace(CHILDREN[1], leave_out=(Said("challenge"),))
    words = said(*laid("shopping-list", of=family((CHILDREN[0], bram, CHILDREN[2])))[0].pages)
    assert "Tissuepaper2sheets2sheetseach" in words


def test_what_is_used_again_stands_last_and_once() -> None:
    made = replace(challenge(), materials=(material("scissors", 1), material("thread", 1, "m")))
    words = said(*laid("shopping-list", study(challenges=(made,), models=()))[0].pages)
    assert words.index("Thread") < words.index("Tools") < words.index("3×scissors")
    assert "Scissorswithbluntends" not in words  # the kit does not name again what the list has


def test_the_week_and_the_day_it_is_needed_by_are_told() -> None:
    assert "Week" in said(*laid("shopping-list")[0].pages)


def test_paper_is_counted_from_the_print_runs() -> None:
    runs = [
        RunInfo("juno/1-plain.pdf", "Juno", "plain", "one-sided", 2, 40, 40, ("biography",), colour_pages=3),
        RunInfo("juno/2-card.pdf", "Juno", "card", "one-sided", 1, 3, 3, ("model",)),
    ]
    words = said(*laid("shopping-list", runs=runs)[0].pages)
    # 80 sheets of plain paper and a twentieth to spare; of 3 cards two to spare at least; 2 x 3 pages in colour.
    assert "Plainpaper8084806" in words
    assert "200g/m²3530" in words


def test_card_is_told_in_the_weights_its_shops_use() -> None:
    # Basis weights are pounds for 500 sheets of 20 x 26 in (cover) and 25.5 x 30.5 in (index): common practice of the
    # trade, no source at hand; a pound is 453.59237 g and an inch 25.4 mm exactly (NIST SP 811).
    cover = 65 * 453.59237 / (500 * 0.508 * 0.6604)
    index = 110 * 453.59237 / (500 * 0.6477 * 0.7747)
    assert round(cover / 5) * 5 == 175 and round(index / 5) * 5 == 200
    assert "65lbcoverto110lbindex(about175to200g/m²)" in said(*laid("shopping-list", of=LETTER)[0].pages)
    assert "lb" not in said(*laid("shopping-list")[0].pages)


def test_small_things_are_kept_from_the_youngest() -> None:
    made = replace(challenge(), materials=(material("washer", 2),))
    words = said(*laid("shopping-list", study(challenges=(made,)), LETTER)[0].pages)
    assert "KeepthesesmallthingsawayfromBo:washer." in words


def test_what_is_sharp_is_not_on_the_table_but_kept_by_a_grown_up() -> None:
    tools = (material("craft knife", 1, shared=True), material("stopwatch", 1, shared=True))
    made = replace(challenge(), materials=tools, caution=(Said("A grown-up drills the hole."),))
    words = said(*laid("shopping-list", study(challenges=(made,)))[0].pages)
    kept = words.index("Keptbyagrown-up,outofreach")
    table = words[words.index("Tools") : kept]
    assert "Stopwatch(week" in table and "ortheclockofaphone" in table and "Alwaysonthetable" in table
    assert "knife(" not in table and "drill" not in table
    assert "Craftknife" in words[kept:] and "Ahanddrill" in words[kept:]


def test_a_thing_of_many_makings_names_all_their_weeks() -> None:
    many = tuple(replace(challenge(), title=Said(f"Trial {k}"), materials=(material("cork", 2),)) for k in range(5))
    words = said(*laid("shopping-list", study(challenges=many, models=()))[0].pages)
    row = words[words.index("Cork") :]
    assert "weeks" in row and "more" not in row[: row.index("weeks")]
