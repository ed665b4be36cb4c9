from parent_desks import FAMILIES, assert_well_set, desk, said, squeezed, study

from packgen.faults import Said
from packgen.page.marks import Path_
from packgen.page.parents import persons
from packgen.page.portfolio import cover_page

LONG = "Maximiliana Wilhelmina Alexandrina von Quenby-Featherstonehaugh the Younger"


def test_a_cover_says_whose_it_is_and_of_what() -> None:
    on = desk("record")
    words = said(cover_page(on, persons(on)[0], 17, 40, "Portfolio"))
    assert words == squeezed(
        "the portfolio of Juno A study of Isaure Quenby age 11 · February to March 2027 · 17 pieces of work on 40 pages"
        " Finished on The picture I like best, drawn or glued in"
    )


def test_the_longest_names_stay_on_the_page_on_either_paper() -> None:
    for home in FAMILIES.values():
        on = desk("record", study(study=Said(LONG)), home)
        for person in persons(on):
            page = cover_page(on, person, 1, 3, "Portfolio")
            assert_well_set([page], home.printer.margin)
            (place,) = [mark for mark in page.marks if isinstance(mark, Path_) and mark.role == "drawbox"]
            heights = [float(step[-1]) for step in place.steps if len(step) > 1]
            assert max(heights) - min(heights) > 80.0  # room for a picture
