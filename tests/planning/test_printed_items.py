"""Planned sheets and the printed sheets that belong to them."""

from pathlib import Path

from packgen.faults import Said
from packgen.planning.plan import PlanItem
from packgen.planning.print_plan import NumberedSheet, RunInfo
from packgen.planning.printed_items import pages_printed, printed_for, printed_name
from packgen.reading.models import Study, Work

STUDY = Study(Said("Isaure Quenby"), Said("both"), Said("Lamp-maker."), Path())
TIDES = Work(Said("tides"), Said("Tides"))
LONGER = Work(Said("tides-2"), Said("Tides at Saltmere"))


def run(
    *sheets: NumberedSheet, path: str = "juno/1-plain.pdf", kinds: tuple[str, ...] = (), copies: int = 1
) -> RunInfo:
    held = kinds or tuple(dict.fromkeys(sheet.kind for sheet in sheets))
    return RunInfo(path, "Juno", "plain", "one-sided", copies, 7, 7, held, sheets=sheets)


def sheet(number: int, kind: str, about: str) -> NumberedSheet:
    return NumberedSheet("Juno", number, about, kind, about)


def test_a_sheet_belongs_to_the_longest_title_in_its_name() -> None:
    items = (PlanItem("look-closer", TIDES), PlanItem("look-closer", LONGER), PlanItem("timeline", STUDY))
    looks = (sheet(3, "look-closer", "Look closer: Tides at Saltmere"), sheet(2, "look-closer", "Look closer: Tides"))
    runs = [run(*looks, sheet(1, "timeline", "Timeline"), sheet(4, "timeline", "Cut out the cards"))]
    found = {item: [one.number for one in own] for item, own in printed_for(items, runs, "juno")}
    assert found == {items[0]: [2], items[1]: [3], items[2]: [1, 4]}


def test_what_was_planned_and_not_printed_does_not_count() -> None:
    items = (PlanItem("look-closer", TIDES), PlanItem("look-closer", LONGER), PlanItem("words", STUDY))
    runs = [run(sheet(1, "look-closer", "Look closer: Tides"))]
    assert [item for item, _ in printed_for(items, runs, "juno")] == [items[0]]


def test_all_of_a_kind_count_where_names_tell_nothing_and_all_where_no_file_is_known() -> None:
    items = (PlanItem("look-closer", TIDES), PlanItem("look-closer", LONGER), PlanItem("words", STUDY))
    runs = [run(kinds=("look-closer",))]
    assert [item for item, _ in printed_for(items, runs, "juno")] == list(items[:2])
    assert [item for item, _ in printed_for(items, (), "juno")] == list(items)
    assert [item for item, _ in printed_for(items, runs, "bram")] == list(items)


def test_pages_count_with_their_copies() -> None:
    runs = [run(copies=2, kinds=("words",)), run(path="bram/1.pdf", kinds=("words",))]
    assert pages_printed(runs, "juno") == 14


def test_a_sheet_goes_by_its_printed_title_and_what_it_is_about() -> None:
    looked = NumberedSheet("Juno", 4, "Look, cover, tell", "picture-study", "Picture study: The Harbour at Dusk")
    assert printed_name(looked) == "Look, cover, tell: The Harbour at Dusk"
    assert printed_name(NumberedSheet("Juno", 5, "A wheel", "challenge", "Challenge: A wheel")) == "A wheel"
    beyond = NumberedSheet("Juno", 7, "What is outside?", "finish-the-picture", "Finish the picture: Dusk")
    assert printed_name(beyond) == "What is outside? Dusk"
    assert printed_name(NumberedSheet("Juno", 2, "New words", "words", "New words")) == "New words"
