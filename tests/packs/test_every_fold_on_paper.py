"""Every fold scheme printed from one study on both papers, and folded in memory from what the PDF shows."""

from __future__ import annotations

import json

import pytest
from built import Packs
from test_books_on_paper import UP, read_back

from packgen import build
from packgen.folding import schemes
from packgen.reading.family import read_family
from packgen.reading.study import read_study

NAMES = ("Ada", "Bea", "Cleo", "Dora", "Enid", "Fay", "Gwen", "Hope", "Iris", "Jane", "Kit", "Lea")
AGES = [(8, "younger"), (11, "older")]
STUDY = "study: Jo Quay\nkind: inventor\nin_short: Lamp-maker.\nfacts: [She made lamps.]\nobstacles: [Cold.]\n"


@pytest.fixture(scope="module", params=["A4", "Letter"])
def books(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Packs:
    home = tmp_path_factory.mktemp("folds")
    children = "".join(
        f"  - {{name: {name}, age: {age}, pack: {pack}, book: {scheme}}}\n"
        for name, scheme, (age, pack) in zip(
            NAMES, sorted(schemes()), [(8, "younger"), (11, "older")] * 6, strict=False
        )
    )
    (home / "study.yaml").write_text(STUDY, encoding="utf-8")
    (home / "family.yaml").write_text(
        f"family: Sorrel\npaper: {request.param}\nprinter: {{sides: two-sided-long-edge, margin: 6 mm}}\n"
        f"children:\n{children}",
        encoding="utf-8",
    )
    order = build.Order(home / "study.yaml", home / "family.yaml", only=("fold-book",))
    built = build.build(order, home / "out", jobs=1)
    study, _ = read_study(home / "study.yaml")
    family, _ = read_family(home / "family.yaml", ("first", "younger", "older", "upper", "parent"))
    assert study and family
    manifest = json.loads((built.folder / "packgen.json").read_text(encoding="utf-8"))
    return Packs(built.folder, study, family, manifest, built)


def test_every_scheme_reads_from_its_cover_to_its_back_when_folded(books: Packs) -> None:
    folded = set()
    for child in books.family.children:
        halves = books.sheets("fold-book", "", str(child.name))
        facts = halves[0].facts
        folded.add(facts["scheme"])
        wanted = [(number, UP) for number in range(1, facts["book_pages"] + 1)]
        assert read_back(books, halves) == wanted, facts["scheme"]
    assert folded == set(schemes())


def test_the_steps_beside_it_explain_their_lines(books: Packs) -> None:
    for child in books.family.children:
        (steps,) = books.sheets("fold-book", "cut-outs", str(child.name))
        text = "".join(page.text for page in steps.pages)
        assert "Howtofoldthebook" in text
        assert ("valleyfold:" in text) or ("mountainfold:" in text), child.name
        assert ("Makeamountainfold" not in text) or "mountainfold:behind" in text, child.name
        assert len(steps.pages) == 1, child.name  # no pictures to cut out: one page of steps
