"""The finished guide against the finished packs: every sheet it asks for is there, and it asks for every sheet."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

import pikepdf
import pytest
from built import Packs, Sheet
from paper import PaperPage, Run

NUMBERS = re.compile(r"\d+(?:(?:–|, )\d+)*|book|cards|card")
AFTER = ("Find or buy", "At the table", "Later in the week", "Keep: what was said, found or drawn")


@dataclass(frozen=True)
class Asked:
    """One line of a child's list in the guide: numbers of sheets, which may be none, and their titles."""

    child: str
    numbers: tuple[int, ...]
    words: str


@pytest.fixture(params=("example", "letter", "one_sided"))
def upright(request: pytest.FixtureRequest) -> Packs:
    """Packs whose guide has all pages the right way up: a printer that flips on the short edge turns the backs."""
    found: Packs = request.getfixturevalue(request.param)
    return found


def guide_pages(packs: Packs) -> list[PaperPage]:
    """The pages of the parent's file as they lie, fronts and backs in turn."""
    paths = [entry["path"] for entry in packs.manifest["files"] if entry["path"].startswith("parent/")]
    if len(paths) == 1:
        return packs.file(paths[0]).pages
    fronts, backs = (packs.file(f"parent/guide-{half}.pdf").pages for half in ("fronts", "backs"))
    return [page for pair in zip(fronts, backs, strict=True) for page in pair]


def squeezed(words: str) -> str:
    return "".join(words.split())


def asked_on(page: PaperPage, children: list[str]) -> Iterator[Asked]:
    """The lists under `Lay ready`, read by where they stand: names over columns, numbers at the left of titles."""
    tops = [run.y for run in page.runs if run.text.strip() == "Lay ready"]
    if not tops:
        return
    ends = [run.y for run in page.runs if run.text.strip() in AFTER and run.y < tops[0]]
    under = [run for run in page.runs if max(ends, default=0.0) + 1.0 < run.y < tops[0] - 5.0 and run.text.strip()]
    under = sorted((run for run in under if run.size_pt >= 9.4), key=lambda run: -run.y)
    names = [run for run in under if _named(run, children)]
    numbers = [run for run in under if NUMBERS.fullmatch(run.text.strip())]
    titles = [run for run in under if run not in names and run not in numbers]
    lefts = sorted({round(run.x, 1) for run in names})
    lines: dict[tuple[float, float], tuple[Run, str, list[str]]] = {}
    for title in titles:
        left = max(x for x in lefts if x <= title.x + 0.2)
        name = min((n for n in names if abs(n.x - left) < 0.2 and n.y > title.y), key=lambda n: n.y - title.y)
        # A line without a number belongs to the one over it, if that has one and this stands as far in.
        beside = [n for n in numbers if abs(n.x - left) < 0.2 and name.y > n.y >= title.y - 0.2]
        number = min(beside, key=lambda n: n.y - title.y) if beside and title.x > left + 1.0 else None
        at = (left, number.y if number else title.y)
        lines.setdefault(at, (name, number.text if number else "", []))[2].append(title.text)
    for name, number_words, parts in lines.values():
        for child in _named(name, children):
            yield Asked(child, tuple(_expanded(number_words)), " ".join(parts))


def _named(run: Run, children: list[str]) -> list[str]:
    """The children a run of letters names, if it is nothing but names."""
    words = re.split(r", | and ", run.text.strip())
    return words if all(word in children for word in words) else []


def _expanded(words: str) -> Iterator[int]:
    for part in words.strip().split(", ") if words.strip()[:1].isdigit() else ():
        first, _, last = part.partition("–")
        yield from range(int(first), int(last or first) + 1)


def all_asked(packs: Packs) -> list[Asked]:
    children = [str(child.name) for child in packs.family.children]
    return [one for page in guide_pages(packs) for one in asked_on(page, children)]


def shows(sheets: list[Sheet], words: str) -> bool:
    """True if the words, without what they say of paper and pages, are printed on a page of these sheets."""
    text = [page.text for sheet in sheets for page in sheet.pages]
    plain = squeezed(re.sub(r" \([^()]*\)$", "", words))
    if any(plain in page for page in text):
        return True
    begin, _, rest = re.sub(r" \([^()]*\)$", "", words).partition(": ")
    return bool(rest) and all(
        any(squeezed(begin) in page and squeezed(part) in page for page in text) for part in rest.split(", ")
    )


def test_every_title_the_guide_asks_for_is_printed_in_that_childs_pack(upright: Packs) -> None:
    found = all_asked(upright)
    assert len(found) > 30
    for one in found:
        assert shows(upright.sheets(child=one.child), one.words), one


def test_the_guide_asks_for_every_numbered_sheet_by_its_number(upright: Packs) -> None:
    found = all_asked(upright)
    for child in upright.family.children:
        asked = {number for one in found if one.child == child.name for number in one.numbers}
        theirs = {s.facts["number"] for s in upright.sheets(child=str(child.name)) if s.facts.get("number")}
        assert theirs and asked == theirs, child.name


def test_the_guide_asks_for_what_has_no_number_by_its_title(upright: Packs) -> None:
    found = all_asked(upright)
    for sheet in upright.sheets():
        if sheet.child and not sheet.facts.get("number"):
            asked = [one for one in found if one.child == sheet.child and not one.numbers]
            both_halves = upright.sheets(sheet.kind, sheet.part, sheet.child)
            assert any(shows(both_halves, one.words) for one in asked), sheet


def test_a_sheet_with_a_number_has_the_title_the_guide_gives_it(upright: Packs) -> None:
    for one in all_asked(upright):
        theirs = [s for s in upright.sheets(child=one.child) if s.facts.get("number") in one.numbers]
        if one.numbers:
            assert shows(theirs, one.words), one


def test_pages_are_numbered_through_the_whole_file(upright: Packs) -> None:
    pages = guide_pages(upright)
    numbered = 0
    for place, page in enumerate(pages, 1):
        found = re.findall(r"page(\d+)of(\d+)$", page.text)
        assert found in ([], [(str(place), str(len(pages)))]), page
        numbered += bool(found)
    assert numbered > 0.7 * len(pages)


def test_the_contents_send_to_the_page_where_each_part_begins(upright: Packs) -> None:
    pages = guide_pages(upright)
    (front,) = [page for page in pages if "Whatisinthisfile" in page.text]
    top = next(run.y for run in front.runs if run.text.strip() == "What is in this file")
    low = next(run.y for run in front.runs if run.text.strip() == "Before the first week")
    entries = [run for run in front.runs if low < run.y < top and run.text.strip()]
    checked = []
    for number in entries:
        if not number.text.strip().isdigit():
            continue
        left = [run for run in entries if run is not number and abs(run.y - number.y) < 0.05 and run.x < number.x]
        title = max(left, key=lambda run: run.x).text
        begins = pages[int(number.text) - 1].text
        # A portfolio begins with its cover, which has the title in other words.
        words = squeezed(title).replace("Portfolio:", "theportfolioof")
        assert words in begins, (title, number.text)
        if title.startswith("Week "):
            assert begins.startswith(squeezed(title)[:6])
            checked.append(title)
    assert len(checked) >= 8


def test_the_outline_of_the_guide_leads_to_each_week(example: Packs) -> None:
    with pikepdf.open(example.folder / "parent" / "guide.pdf") as pdf, pdf.open_outline() as outline:
        (guide,) = [item for item in outline.root if item.title == "Guide"]
        weeks = [item for item in guide.children if item.title.startswith("Week")]
        assert len(weeks) >= 8 and any(item.children for item in weeks)
        for item in weeks:
            target = item.destination if item.destination is not None else item.action.D
            name = target if not isinstance(target, pikepdf.Array) else None
            assert name is None
            page = pikepdf.Page(target[0]).index
            assert example.file("parent/guide.pdf").pages[page].text.startswith(squeezed(item.title)[:6])
