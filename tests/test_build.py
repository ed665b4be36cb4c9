"""The whole way: many children shared among processes, check beside build, and the parent's pages that count runs."""

from __future__ import annotations

import random
from pathlib import Path

import pytest
from PIL import Image

from packgen import build
from packgen.faults import InputFaults

STUDY = """
study: Isaure Quenby
kind: inventor
in_short: Lamp-maker who measured the tides.
born: 1834
life: {younger: She made lamps., older: "She made lamps, and measured the tides of the whole coast."}
works:
  - {id: harbour, title: The Harbour at Dusk, when: 1861, image: harbour.png, link: "https://example.org/harbour"}
timeline:
  - {when: 1851, what: Makes her first lamp}
words: [{word: ebb, means: the tide going out}]
"""
NAMES = ("Juno", "Bram", "Wilf", "Ada", "Bo", "Cy", "Maximiliane-Theodora", "Eve", "Fin")


@pytest.fixture
def order(tmp_path: Path) -> build.Order:
    (tmp_path / "study.yaml").write_text(STUDY)
    children = [
        f"  - {{name: {n}, age: {6 + k % 5}, pack: {('older', 'younger')[k % 2]}}}" for k, n in enumerate(NAMES)
    ]
    (tmp_path / "family.yaml").write_text("family: Ferrar\nchildren:\n" + "\n".join(children) + "\n")
    Image.frombytes("RGB", (90, 60), random.Random(1).randbytes(90 * 60 * 3)).save(tmp_path / "harbour.png")
    return build.Order(tmp_path / "study.yaml", tmp_path / "family.yaml",
                       only=("biography", "picture-study", "words", "print-plan", "guide"))  # fmt: skip


def files(made: build.Built) -> dict[str, bytes]:
    return {p.relative_to(made.folder).as_posix(): p.read_bytes() for p in made.folder.rglob("*") if p.is_file()}


def test_any_number_of_processes_makes_the_same_bytes(order: build.Order, tmp_path: Path) -> None:
    alone = build.build(order, tmp_path / "alone", jobs=1)
    shared = build.build(order, tmp_path / "shared", jobs=3)
    assert files(alone) == files(shared)
    assert [f.path for f in alone.files] == [f.path for f in shared.files]
    assert alone.faults == shared.faults
    assert {f.child for f in alone.files} == {*NAMES, ""}


def test_progress_never_runs_back_and_reaches_the_end(order: build.Order, tmp_path: Path) -> None:
    for jobs in (1, 3):
        told: list[tuple[int, int]] = []
        build.build(order, tmp_path / str(jobs), lambda words, done, of, told=told: told.append((done, of)), jobs)
        done = [d for d, _ in told]
        assert done == sorted(done) and told[-1][0] == told[-1][1]


def test_check_tells_what_a_build_tells(order: build.Order, tmp_path: Path) -> None:
    made = build.build(order, tmp_path / "out")
    assert any("coarse" in fault.message for fault in made.faults)
    assert build.check(order) == made.faults


def test_check_tells_the_faults_of_pages_too(order: build.Order, tmp_path: Path) -> None:
    long = "A word. " * 4000
    order.study.write_text(STUDY.replace("the tide going out", long))
    with pytest.raises(InputFaults) as refused:
        build.build(order, tmp_path / "out")
    assert build.check(order) == refused.value.faults
    assert not (tmp_path / "out").exists()


def test_the_print_plan_lists_every_file_the_parents_own_too(order: build.Order, tmp_path: Path) -> None:
    from pypdf import PdfReader

    made = build.build(order, tmp_path / "out")
    guide = "".join(page.extract_text() for page in PdfReader(made.folder / "parent" / "guide.pdf").pages)
    flat = "".join(guide.split())
    for name in {Path(file.path).name for file in made.files}:
        assert name in flat, name
