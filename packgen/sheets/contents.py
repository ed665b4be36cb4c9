"""The first pages of the parent's file: contents, what to do before the first week, and how a week goes."""

from __future__ import annotations

from dataclasses import replace

from packgen.page.desk import Desk, Laid, Section, Sheet
from packgen.page.parents import spoken_of
from packgen.page.start_pages import first_blocks, how_to_blocks
from packgen.planning.print_plan import Begin, NumberedSheet

SHEET = Sheet(
    title="Contents",
    about="What is in the parent's file and on which page, what to do before the first week, and how a week goes.",
    levels=("parent",),
)


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """Contents on the front of a sheet of paper, how a week goes on its back.

    It is the first to be printed, so a ruler proves its scale.
    """
    everybody = spoken_of(desk)
    how = desk.say("how_title")
    head = desk.head(desk.say("title"), desk.say("subject"), "letter", date=False)
    how_head = desk.head(how, desk.say("how_subject"), "strip", date=False)
    first = tuple(first_blocks(desk, everybody, _entries(desk, how)))
    sections = (Section(head, first), Section(how_head, tuple(how_to_blocks(desk, everybody))))
    pages = desk.sections(sections, name=desk.say("contents_word"), ruler=True, loosen=3.0)
    begins = (Begin(how, len(pages)),)
    return (Laid("contents", SHEET.title, pages, sides="two-sided-long-edge", begins=begins),)


def _entries(desk: Desk, how: str) -> list[Begin]:
    """Every part of the file and what begins in it, with the pages of the file; none as long as they are not known."""
    entries: list[Begin] = []
    for sheet in _own_sheets(desk):
        if sheet.kind not in ("contents", "guide"):
            title = sheet.about if sheet.part else sheet.title
            entries.append(Begin(title, sheet.first, bool(sheet.part)))
        entries += [replace(one, page=sheet.first - 1 + one.page) for one in sheet.begins]
    return entries or [Begin(how, 0)]


def _own_sheets(desk: Desk) -> list[NumberedSheet]:
    """The parts of the file this sheet is in, in their order; none as long as they are not known."""
    runs = [run for run in desk.runs if run.path.startswith(f"{desk.pack.folder}/") and run.face != "backs"]
    return [
        replace(sheet, first=2 * sheet.first - 1) if run.face == "fronts" else sheet
        for run in runs for sheet in run.sheets
    ]  # fmt: skip
