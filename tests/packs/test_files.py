"""The files of a build as a printer's window and a screen reader meet them, and the manifest that lists them."""

from __future__ import annotations

import hashlib
import json
import re
from itertools import pairwise

import pikepdf
import pytest
from built import Packs

# ISO 216: A4 is 210 x 297 mm. ANSI/ASME Y14.1: Letter is 8.5 x 11 in.
PAPER = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
# ISO 32000-1:2008, table 150.
DUPLEX = {
    "one-sided": "/Simplex",
    "two-sided-long-edge": "/DuplexFlipLongEdge",
    "two-sided-short-edge": "/DuplexFlipShortEdge",
}


def test_every_page_is_the_whole_paper_and_only_books_and_wide_works_lie_on_their_side(packs: Packs) -> None:
    wide, high = PAPER[packs.family.paper]
    for sheet in packs.sheets():
        for page in sheet.pages:
            size = (pytest.approx(page.width, abs=0.02), pytest.approx(page.height, abs=0.02))
            assert (wide, high) == size or (sheet.facts.get("scheme") and (high, wide) == size), (sheet, page)


def test_a_folded_sheet_lies_on_its_side_if_its_scheme_halves_the_long_edge_first(example: Packs) -> None:
    for sheet in example.sheets("fold-book", ""):
        for page in sheet.pages:
            wide, high = sheet.facts["page_mm"]
            assert page.width > page.height
            assert (page.width / wide) == pytest.approx(round(page.width / wide), abs=1e-3)
            assert (page.height / high) == pytest.approx(round(page.height / high), abs=1e-3)


def test_a_file_asks_for_true_size_its_own_duplex_mode_and_the_paper_of_its_pages(packs: Packs) -> None:
    for entry in packs.manifest["files"]:
        with pikepdf.open(packs.folder / entry["path"]) as pdf:
            wishes = pdf.Root.ViewerPreferences
            assert wishes.PrintScaling == "/None"
            assert wishes.Duplex == DUPLEX[entry["sides"]]
            assert wishes.PickTrayByPDFSize == True  # noqa: E712  (a pikepdf boolean)
            assert int(wishes.NumCopies) == entry["copies"] >= 1
            assert str(pdf.Root.Lang) == packs.study.language


def test_a_files_name_says_how_to_print_it(packs: Packs) -> None:
    for entry in packs.manifest["files"]:
        folder, name = entry["path"].split("/")
        if folder == "parent":
            assert re.fullmatch(r"guide(-fronts|-backs)?\.pdf", name)
            continue
        found = re.fullmatch(r"(\d)-(plain|card|fold-book)-(.+)\.pdf", name)
        assert found, entry["path"]
        number, what, how = found.groups()
        assert entry["stock"] == ("card" if what == "card" else "plain")
        assert how == entry["sides"] or (how in ("fronts", "backs") and entry["sides"] == "one-sided")
        order = [e["path"] for e in packs.manifest["files"] if e["path"].startswith(folder + "/")]
        assert order[int(number) - 1] == entry["path"]


def test_every_file_of_a_child_lies_in_its_own_folder(packs: Packs) -> None:
    folders = {str(child.name): str(child.name).lower() for child in packs.family.children}
    for entry in packs.manifest["files"]:
        assert entry["path"].split("/")[0] == (folders[entry["child"]] if entry["child"] else "parent")
    assert {path.name for path in packs.folder.iterdir()} == {*folders.values(), "parent", "packgen.json"}


def test_the_manifest_and_the_files_agree(packs: Packs) -> None:
    listed = {entry["path"] for key in ("files", "other_files") for entry in packs.manifest[key]}
    there = {p.relative_to(packs.folder).as_posix() for p in packs.folder.rglob("*") if p.is_file()}
    assert listed | {"packgen.json"} == there
    assert packs.manifest["study"] == packs.study.study and packs.manifest["paper"] == packs.family.paper
    for key in ("files", "other_files"):
        for entry in packs.manifest[key]:
            assert hashlib.sha256((packs.folder / entry["path"]).read_bytes()).hexdigest() == entry["sha256"]
    for entry in packs.manifest["files"]:
        assert len(packs.file(entry["path"]).pages) == entry["pages"]
        ranges = [sheet["pages"] for sheet in entry["sheets"]]
        assert ranges[0][0] == 1 and ranges[-1][1] == entry["pages"]
        for (_, last), (first, _) in pairwise(ranges):
            assert first == last + 1, entry["path"]


def test_two_sided_sheets_begin_on_a_front(packs: Packs) -> None:
    for sheet in packs.sheets():
        if sheet.file["sides"] != "one-sided":
            assert sheet.facts["pages"][0] % 2 == 1 and sheet.facts["pages"][1] % 2 == 0


def test_fronts_and_backs_have_as_many_pages(one_sided: Packs) -> None:
    pages = {entry["path"]: entry["pages"] for entry in one_sided.manifest["files"]}
    fronts = [path for path in pages if path.endswith("fronts.pdf")]
    assert len(fronts) >= 3
    for path in fronts:
        backs = [p for p in pages if p.endswith("backs.pdf") and p.split("/")[0] == path.split("/")[0]]
        assert pages[path] in [pages[p] for p in backs]
    assert all(entry["sides"] == "one-sided" for entry in one_sided.manifest["files"])


def test_a_short_edge_printer_gets_no_long_edge_run(short_edge: Packs) -> None:
    modes = {entry["sides"] for entry in short_edge.manifest["files"]}
    assert modes == {"one-sided", "two-sided-short-edge"}


def test_backs_for_a_short_edge_printer_are_turned_to_read_like_a_leaf(short_edge: Packs) -> None:
    """On a standing sheet flipped on its short edge, the back's head must lie at the front's foot."""
    for sheet in short_edge.sheets("telling"):
        for page in sheet.pages[1::2]:
            angles = {round(run.angle) % 360 for run in page.runs}
            assert angles <= {180}
        for page in sheet.pages[::2]:
            assert {round(run.angle) % 360 for run in page.runs} == {0}


def test_backs_are_moved_against_the_printers_shift(example: Packs, letter: Packs) -> None:
    """The example's backs land 0.5 mm too far right and 1 mm too low; so they are printed as much left and higher."""
    first, second = example.sheets("telling", child="Juno")[0].pages[:2]
    one, other = (next(run for run in page.runs if run.text.startswith("Isaure Quenby ·")) for page in (first, second))
    assert other.x - one.x == pytest.approx(-0.5, abs=0.01)
    assert other.y - one.y == pytest.approx(1.0, abs=0.01)
    first, second = letter.sheets("telling", child="Bo")[0].pages[:2]
    one, other = (next(run for run in page.runs if run.text.startswith("Isaure Quenby ·")) for page in (first, second))
    assert (other.x, other.y) == (pytest.approx(one.x), pytest.approx(one.y))


def test_the_title_names_the_study_and_the_child(packs: Packs) -> None:
    for entry in packs.manifest["files"]:
        with pikepdf.open(packs.folder / entry["path"]) as pdf:
            title = str(pdf.docinfo["/Title"])
            assert str(packs.study.study) in title and (entry["child"] or "parent") in title
            assert pdf.Root.ViewerPreferences.DisplayDocTitle == True  # noqa: E712


def test_every_page_of_a_childs_loose_sheet_shows_its_number_in_the_order_of_use(packs: Packs) -> None:
    for child in packs.family.children:
        sheets = [s for s in packs.sheets(child=str(child.name)) if "number" in s.facts]
        numbers = sorted({s.facts["number"] for s in sheets})
        assert numbers == list(range(1, len(numbers) + 1))
        for sheet in sheets:
            tag = "".join(f"{child.name}{sheet.facts['number']}".split())
            fronts = sheet.pages[::2] if sheet.kind == "matching-game" else sheet.pages  # backs of cards are a pattern
            assert all(tag in page.text for page in fronts if page.text), sheet
        weeks = [s.facts.get("week", 0) for s in sorted(sheets, key=lambda s: s.facts["number"])]
        assert weeks == sorted(weeks)
        for file in {s.file["path"]: s.file for s in sheets}.values():
            shown = [facts["number"] for facts in file["sheets"] if "number" in facts]
            assert shown == sorted(shown)


def test_bookmarks_are_the_sheets_of_the_manifest(packs: Packs) -> None:
    for entry in packs.manifest["files"]:
        file = packs.file(entry["path"])
        marks = [mark for mark in file.pdfium.get_toc() if mark.level == 0]  # those below are parts of a sheet
        found = [(mark.get_title(), mark.get_dest().get_index() + 1) for mark in marks]
        wanted = [(sheet["title"], sheet["pages"][0]) for sheet in entry["sheets"]]
        assert found == wanted, entry["path"]


def test_bookmarks_below_a_sheet_lead_to_the_page_of_the_sheet_that_has_their_words(packs: Packs) -> None:
    below = 0
    for entry in packs.manifest["files"]:
        file, last = packs.file(entry["path"]), 0
        ends = {sheet["title"]: sheet["pages"] for sheet in entry["sheets"]}
        for mark in file.pdfium.get_toc():
            page = mark.get_dest().get_index() + 1
            if mark.level == 0:
                over, last = ends[mark.get_title()], 0
                continue
            assert over[0] <= page <= over[1] and page >= last, (entry["path"], mark.get_title())
            assert "".join(mark.get_title().split()) in file.pages[page - 1].text, (entry["path"], mark.get_title())
            below, last = below + 1, page
    # The halves of a guide for a one-sided printer have no page order to lead through.
    assert below == 0 if packs.family.printer.sides == "one-sided" else below >= 10


def test_all_fonts_are_embedded_and_subset(packs: Packs) -> None:
    seen = set()
    for entry in packs.manifest["files"]:
        with pikepdf.open(packs.folder / entry["path"]) as pdf:
            for thing in pdf.objects:
                if isinstance(thing, pikepdf.Dictionary) and thing.get("/Type") == "/Font":
                    name = str(thing.BaseFont)
                    seen.add(name.split("+")[-1])
                    assert re.match(r"/[A-Z]{6}\+", name), f"{entry['path']}: {name} is not a subset"
                    described = thing.FontDescriptor
                    assert "/FontFile2" in described, f"{entry['path']}: {name} is not embedded"
    assert {"PackgenDisplay-Regular"} <= {name.lstrip("/") for name in seen}


def test_no_letter_is_missing(packs: Packs) -> None:
    """A letter that no face has would come out as code 0 or as the sign for the unknown."""
    for page in packs.pages:
        lost = {letter for letter in page.text if letter in "\0\x02￾�" or ord(letter) < 32}
        assert not lost, (page, lost)


def test_a_file_is_sound_to_an_independent_reader(packs: Packs) -> None:
    for entry in packs.manifest["files"]:
        with pikepdf.open(packs.folder / entry["path"]) as pdf:
            assert pdf.check_pdf_syntax() == []
            assert pdf.pdf_version == "1.7"


def test_black_and_white_packs_have_no_colour_at_all(letter: Packs) -> None:
    for page in letter.pages:
        pixels = page.colours(50).astype(int)
        spread = pixels.max(axis=2) - pixels.min(axis=2)
        assert spread.max() <= 8, page


def test_the_manifest_holds_nothing_of_this_machine(packs: Packs) -> None:
    text = json.dumps(packs.manifest)
    assert str(packs.folder) not in text and str(packs.study.folder) not in text
