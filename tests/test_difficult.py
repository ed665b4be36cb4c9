"""Difficult studies and families: very long, very short, in other scripts, with parts missing, for odd papers.

Each builds, or is refused with a message that says what is wrong. What builds is sound to three readers that share
nothing with the writer, and `check` has said of it just what the build says.
"""

from __future__ import annotations

import io
import random
from pathlib import Path

import pikepdf
import pypdfium2
import pytest
from difficult_cases import CASES, Case
from PIL import Image
from pypdf import PdfReader

from packgen import build
from packgen.faults import PackgenError


def pictures(place: Path) -> None:
    """The pictures the cases speak of."""

    def noise(width: int, height: int) -> Image.Image:
        return Image.frombytes("RGB", (width, height), random.Random(7).randbytes(width * height * 3))

    noise(300, 200).save(place / "harbour.png")
    noise(1, 1).save(place / "dot.png")
    noise(3000, 12).save(place / "wide.png")
    noise(12, 3000).save(place / "high.png")
    noise(300, 200).convert("CMYK").save(place / "inks.jpg")
    whole = io.BytesIO()
    noise(300, 200).save(whole, "JPEG")
    (place / "half.jpg").write_bytes(whole.getvalue()[: len(whole.getvalue()) // 2])
    (place / "text.png").write_text("I am no picture")
    Image.new("RGB", (300, 200), (200, 90, 40)).save(place / "plain.png")
    noise(30, 20).save(place.parent / "outside.png")
    (place / "leads-out.png").symlink_to(place.parent / "outside.png")


@pytest.fixture(scope="session")
def home(tmp_path_factory: pytest.TempPathFactory) -> Path:
    place = tmp_path_factory.mktemp("difficult") / "home"
    place.mkdir()
    pictures(place)
    return place


def test_there_are_sixty_and_each_has_a_name() -> None:
    assert len(CASES) >= 60
    assert len({case.name for case in CASES}) == len(CASES)


def sound(path: Path) -> int:
    """The number of pages of a PDF, if qpdf, pypdf and pdfium all find nothing wrong with it."""
    with pikepdf.open(path) as pdf:
        assert pdf.check_pdf_syntax() == []
        pages = len(pdf.pages)
    reader = PdfReader(path, strict=True)
    assert len(reader.pages) == pages
    for page in reader.pages:
        page.get_contents()
    document = pypdfium2.PdfDocument(path)
    assert len(document) == pages
    document.close()
    return pages


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_a_difficult_case_builds_or_says_what_is_wrong(case: Case, home: Path, tmp_path: Path) -> None:
    (home / "study.yaml").write_text(case.study, encoding="utf-8")
    (home / "family.yaml").write_text(case.family, encoding="utf-8")
    order = build.Order(home / "study.yaml", home / "family.yaml" if case.family else None, only=case.only)
    told = build.check(order)
    try:
        made = build.build(order, tmp_path / "out")
    except PackgenError as wrong:
        assert case.refused, f"it should build: {wrong}"
        assert case.refused in str(wrong) and wrong.exit_code == 2
        assert getattr(wrong, "faults", ()) == told
        assert not (tmp_path / "out").exists()
        return
    assert not case.refused, "it should be refused"
    assert set(made.faults) <= set(told)
    assert all("reads at" in fault.message for fault in set(told) - set(made.faults))  # only check tells that
    assert list((tmp_path / "out").iterdir()) == [made.folder]
    for file in made.files:
        assert (made.folder / file.path).resolve().is_relative_to(made.folder.resolve())
        assert sound(made.folder / file.path) == file.pages
