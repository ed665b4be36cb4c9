"""The parent's pages against the finished packs: one week for each sheet, every file once, counts of the manifest."""

from __future__ import annotations

import re

import icalendar
import pytest
from built import Packs, Sheet
from paper import PaperPage

WEEK = re.compile(r"\bweek (\d+)\b")
OF_A_WORK = {"picture-study", "enlarging-grid", "finish-the-picture", "colour-by-number", "look-closer"}


def words(page: PaperPage) -> str:
    return " ".join(run.text for run in page.runs)


def squeezed(text: str) -> str:
    return "".join(text.split())


def parents(packs: Packs, title: str) -> str:
    """All words of a part of the parent's file, without spaces; its fronts and backs in turn."""
    found = [sheet for sheet in packs.sheets() if sheet.file["path"].startswith("parent/") and sheet.title == title]
    return squeezed("".join("".join(run.text for run in page.runs) for sheet in found for page in sheet.pages))


def foot_weeks(sheet: Sheet) -> set[int]:
    """The weeks printed at the feet of a sheet's pages."""
    low = [run.text for page in sheet.pages for run in page.runs if run.y < 30.0]
    return {int(number) for text in low for number in WEEK.findall(text)}


def children(packs: Packs) -> list[Sheet]:
    return [sheet for sheet in packs.sheets() if sheet.child]


@pytest.fixture(params=("example", "one_sided"))
def dated(request: pytest.FixtureRequest) -> Packs:
    """Packs of a family with a term."""
    found: Packs = request.getfixturevalue(request.param)
    return found


def test_the_week_at_the_foot_of_a_sheet_is_the_one_in_the_manifest(dated: Packs) -> None:
    weeks = [sheet for sheet in children(dated) if foot_weeks(sheet)]
    assert len(weeks) > 40
    for sheet in weeks:
        assert foot_weeks(sheet) == {sheet.facts["week"]}, sheet


def test_one_sheet_has_one_week_whoever_has_it(dated: Packs) -> None:
    found: dict[tuple[str, str], set[int]] = {}
    for sheet in children(dated):
        if sheet.kind in OF_A_WORK and "week" in sheet.facts:
            found.setdefault((sheet.kind, sheet.title.partition(": ")[2]), set()).add(sheet.facts["week"])
    assert found and all(len(weeks) == 1 for weeks in found.values()), found


def test_the_calendar_has_each_sheet_of_a_work_in_the_week_it_shows(dated: Packs) -> None:
    told: dict[int, str] = {}
    calendar = icalendar.Calendar.from_ical((dated.folder / "parent" / "term.ics").read_bytes())
    for event in calendar.walk("VEVENT"):
        for number in WEEK.findall(event["SUMMARY"]):
            told[int(number)] = told.get(int(number), "") + event["DESCRIPTION"]
    for sheet in children(dated):
        if sheet.kind in OF_A_WORK and "week" in sheet.facts:
            work = sheet.title.partition(": ")[2]
            for number, text in told.items():
                lines = [line for line in text.split("\n") if re.search(rf"\b{sheet.child}\b", line)]
                # by the number at its foot, a title, and the work it is about
                named = re.search(rf"(?:: |; ){sheet.facts['number']} [^;]*{re.escape(work)}", " ".join(lines))
                assert bool(named) == (number == sheet.facts["week"]), (sheet, number)


def test_the_portfolio_has_each_sheet_in_the_week_it_shows(dated: Packs) -> None:
    for name in {sheet.child for sheet in children(dated)}:
        portfolio = [sheet for sheet in dated.sheets("record") if sheet.title == f"Portfolio: {name}"]
        lines = [run for sheet in portfolio for page in sheet.pages for run in page.runs]
        own = [s for s in children(dated) if s.child == name and "week" in s.facts and "number" in s.facts]
        weeks = {str(s.facts["number"]): s.facts["week"] for s in own}
        found = 0
        for foot in (run for run in lines if run.text.strip() in weeks and 38 < run.x < 62):
            beside = [run for run in lines if run.text.strip().isdecimal() and run.x < 30 and abs(run.y - foot.y) < 2.5]
            assert str(weeks[foot.text.strip()]) in {run.text.strip() for run in beside}, foot.text
            found += 1
        assert found > 5


def test_every_file_is_in_the_print_plan_and_every_file_of_the_plan_is_there(packs: Packs) -> None:
    plan = parents(packs, "Print plan")
    table = plan[plan.index("Putin") :]
    there = [entry["path"] for entry in packs.manifest["files"]]
    assert table.count(".pdf") == len(there)
    for path in there:
        assert table.count(path) == 1 and (packs.folder / path).is_file()


def test_the_plan_and_the_list_count_the_paper_of_the_files(packs: Packs) -> None:
    for stock, begin in (("plain", "Putinplainpaper:"), ("card", "Putin")):
        files = [entry for entry in packs.manifest["files"] if entry["stock"] == stock]
        sheets = 0
        for entry in files:
            if not entry["path"].endswith("-backs.pdf"):
                two = entry["sides"] != "one-sided"
                sheets += entry["copies"] * (-(-entry["pages"] // 2) if two else entry["pages"])
        assert f"{sheets}sheet" in parents(packs, "Print plan").partition(begin)[2]


def test_portfolios_count_what_is_in_the_files(packs: Packs) -> None:
    for name in {sheet.child for sheet in children(packs)}:
        pages = sum(e["pages"] * e["copies"] for e in packs.manifest["files"] if e["child"] == name)
        assert f"on{pages}page" in parents(packs, f"Portfolio: {name}"), name


def test_the_first_page_to_be_printed_has_the_ruler(packs: Packs) -> None:
    shown = next(entry["path"] for entry in packs.manifest["files"] if entry["path"].startswith("parent/"))
    assert "10 cm" in words(packs.file(shown).pages[0])
    leaf = "page 1" if "fronts" in shown else "pages 1 and 2"
    assert squeezed(f"Print only {leaf} of {shown}") in parents(packs, "Print plan")


def test_the_book_is_to_be_got_on_the_list_the_plan_and_the_calendar(dated: Packs) -> None:
    assert dated.study.book
    title = squeezed(f"“{dated.study.book.title}”")
    assert title in parents(dated, "Term plan") and title in parents(dated, "Shopping list")
    calendar = icalendar.Calendar.from_ical((dated.folder / "parent" / "term.ics").read_bytes())
    first = min(calendar.walk("VEVENT"), key=lambda event: event["DTSTART"].dt)
    assert title in squeezed(first["DESCRIPTION"])
