"""Small books read off the finished PDF and folded in memory by hands that know nothing of packgen's own folding."""

from __future__ import annotations

import math
import sys
from pathlib import Path

from built import Packs, Sheet
from paper import PaperPage, Run

from packgen.folding import plan_fold
from packgen.page.desk import PAPERS

sys.path.insert(0, str(Path(__file__).parents[1] / "folding"))
from folding_hands import Mark
from reading_books import READERS, UP, Book


def heading(run: Run) -> tuple[int, int]:
    """Which way the head of a run points on the page."""
    turned = math.radians(run.angle + 90)
    return round(math.cos(turned)), round(math.sin(turned))


def marks_on(page: PaperPage, sheet: int, side: str, study: str) -> list[Mark]:
    """The page numbers printed on one side of a sheet of paper. The cover, the only page without one, has its title."""
    marks = []
    for run in page.runs:
        text = run.text.strip()
        if text == study or (text.isdigit() and run.size_pt < 7.5):
            marks.append(Mark(1 if text == study else int(text), sheet, side, *middle(run), heading(run)))
    return marks


def middle(run: Run) -> tuple[float, float]:
    return (run.box[0] + run.box[2]) / 2, (run.box[1] + run.box[3]) / 2


def read_back(packs: Packs, halves: list[Sheet]) -> list[tuple[int, tuple[int, int]]]:
    """What is read when the finished sheets are folded as a parent would fold them.

    A book in one file is printed as the file asks; fronts and backs in two files are turned sideways like a page.
    """
    facts = halves[0].facts
    study = str(packs.study.study)
    marks: list[Mark] = []
    if len(halves) == 2:
        sides = "two-sided-short-edge"
        for half, side in zip(halves, ("front", "back"), strict=True):
            for number, page in enumerate(half.pages):
                marks += marks_on(page, number, side, study)
    else:
        sides = halves[0].file["sides"]
        for index, page in enumerate(halves[0].pages):
            number, back = (index, 0) if sides == "one-sided" else divmod(index, 2)
            marks += marks_on(page, number, "back" if back else "front", study)
    plan = plan_fold(facts["scheme"], facts["book_pages"], *PAPERS[packs.family.paper])
    lines = [[(p.x1, p.y1, p.x2, p.y2, p.kind) for p in (*s.fold_lines, *s.cut_lines)] for s in plan.sheets]
    book = Book(
        plan.sheet_width, plan.sheet_height, sides, marks, lines, signatures=plan.signatures,
        panels=plan.program.panels, flap=plan.program.glue_flap if len(plan.sheets) > 1 else 0.0,
    )  # fmt: skip
    return READERS[facts["scheme"]](book)


def test_every_book_reads_from_its_cover_to_its_back_when_folded(packs: Packs) -> None:
    schemes = set()
    for child in packs.family.children:
        halves = packs.sheets("fold-book", "", child.name)
        schemes.add(halves[0].facts["scheme"])
        wanted = [(number, UP) for number in range(1, halves[0].facts["book_pages"] + 1)]
        assert read_back(packs, halves) == wanted, halves[0]
    assert len(schemes) >= 2


def test_a_book_has_pages_for_all_it_says_of_itself(example: Packs) -> None:
    """Pages are as many as the scheme makes, each of exactly its share of the paper (ISO 216: A4 halves to A5)."""
    wanted = {"Juno": ("stitched", (148.5, 210.0)), "Bram": ("slit", (74.25, 105.0)), "Wilf": ("half", (148.5, 210.0))}
    for name, (scheme, size) in wanted.items():
        facts = example.sheets("fold-book", "", name)[0].facts
        assert (facts["scheme"], tuple(facts["page_mm"])) == (scheme, size)
    assert example.sheets("fold-book", "", "Bram")[0].facts["book_pages"] == 8
    assert example.sheets("fold-book", "", "Juno")[0].facts["book_pages"] % 4 == 0
