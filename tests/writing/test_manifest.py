"""The manifest says what the design promises: every file, its setting and sheets, and the lines of its models."""

import json

from packgen.faults import Place, warning
from packgen.page.desk import Fold, Laid
from packgen.page.marks import Page
from packgen.printed.runs import print_runs
from packgen.reading.models import Printer
from packgen.writing.manifest import manifest, written

A4 = (210.0, 297.0)
PAGE = Page(*A4, ())
NET = {
    "title": "The lamp house", "solid": "prism", "scale": "1:100",
    "faces": [{"page": 1, "points_mm": [[0, 0], [1, 0], [1, 1]]}],
    "folds": [{"page": 2, "points_mm": [[0, 0], [1, 1]]}], "cuts": [], "tabs": [],
}  # fmt: skip


def listed(*laids: Laid) -> dict[str, object]:
    runs = print_runs(laids, A4, Printer())
    files = [written(f"juno/{run.name}", "Juno", "older", run, b"bytes") for run in runs]
    told = [warning(Place("study.yaml", 3, 1), "A picture is coarse.")]
    found = json.loads(manifest("Isaure Quenby", "A4", files, told, {"parent/term.ics": "ab"}))
    assert isinstance(found, dict)
    return found


def test_a_file_has_its_setting_pages_sum_and_sheets() -> None:
    found = listed(Laid("words", "New words", (PAGE, PAGE), week=2), Laid("biography", "Life", (PAGE,), week=1))
    assert found["files"] == [
        {
            "path": "juno/1-plain-one-sided.pdf", "child": "Juno", "pack": "older", "stock": "plain",
            "sides": "one-sided", "copies": 1, "pages": 3,
            # SHA-256 of the five letters "bytes", by sha256sum
            "sha256": "277089d91c0bdf4f2e6862ba7e4a07605119431f5d13f726dd352b06f1b206a9",
            "sheets": [
                {"kind": "biography", "title": "Life", "pages": [1, 1], "week": 1},
                {"kind": "words", "title": "New words", "pages": [2, 3], "week": 2},
            ],
        }
    ]  # fmt: skip


def test_a_book_has_its_scheme_and_page_size() -> None:
    half = Page(105.0, 148.5, ())
    found = listed(Laid("fold-book", "Book", (half,) * 8, sides="one-sided", fold=Fold("slit")))
    (file,) = found["files"]  # type: ignore[misc]
    assert file["sheets"][0]["scheme"] == "slit" and file["sheets"][0]["book_pages"] == 8
    assert file["sheets"][0]["page_mm"] == [74.25, 105.0]


def test_a_models_lines_count_their_pages_in_the_file() -> None:
    found = listed(
        Laid("model", "Other", (PAGE, PAGE), "card"),
        Laid("model", "Model: The lamp house", (PAGE, PAGE), "card", net=NET),
    )
    (model,) = found["models"]  # type: ignore[misc]
    assert model["file"] == "juno/1-card-one-sided.pdf"
    assert [face["page"] for face in model["faces"]] == [3]
    assert [fold["page"] for fold in model["folds"]] == [4]
    assert NET["faces"][0]["page"] == 1, "the net itself is not changed"  # type: ignore[index]


def test_warnings_and_other_files_are_listed() -> None:
    found = listed(Laid("words", "W", (PAGE,)))
    assert found["warnings"] == ["study.yaml:3:1: warning: A picture is coarse."]
    assert found["other_files"] == [{"path": "parent/term.ics", "sha256": "ab"}]
    assert (found["study"], found["paper"]) == ("Isaure Quenby", "A4")


def test_letters_stand_in_the_manifest_as_they_are() -> None:
    assert "田中一村".encode() in manifest("田中一村", "A4", [], [])
