"""One pack made: its files and runs, what is told of it, and which packs are alike."""

from __future__ import annotations

from pathlib import Path

import pytest

from packgen.making import Made, alike, has_colour, is_parents, make
from packgen.page.marks import Group, Line, Path_, Picture, Stroke
from packgen.workshop import Order, Workshop, open_workshop

STUDY = """
study: Isaure Quenby
kind: inventor
in_short: Lamp-maker who measured the tides.
timeline:
  - {when: 1851, what: Makes her first lamp}
models:
  - {title: The lamp house, solid: prism, given: {sides: 8, across: 5.2 m, height: 6.1 m}}
  - {title: The ship, solid: cube, given: {edge: 40 cm}, scale: true}
"""
CHILDREN = """family: Ferrar
children:
  - {name: Juno, age: 11, pack: older}
  - {name: Maximiliane, age: 11, pack: older}
  - {name: Bram, age: 11, pack: older, glue: false}
  - {name: Wilf, age: 4, pack: first}
"""


@pytest.fixture
def shop(tmp_path: Path) -> Workshop:
    (tmp_path / "study.yaml").write_text(STUDY)
    (tmp_path / "family.yaml").write_text(CHILDREN)
    order = Order(tmp_path / "study.yaml", tmp_path / "family.yaml", only=("biography", "timeline", "model", "guide"))
    return open_workshop(order, tmp_path)


def made(shop: Workshop, place: int, others: tuple[object, ...] = ()) -> tuple[Made, dict[str, bytes]]:
    files: dict[str, bytes] = {}
    one = make(shop, shop.packs[place], others, files.__setitem__, lambda words: None)  # type: ignore[arg-type]
    return one, files


def test_a_pack_is_its_files_their_runs_and_what_is_told(shop: Workshop) -> None:
    one, files = made(shop, 0)
    assert [file.path for file in one.files] == list(files) == [run.path for run in one.runs]
    assert all(data.startswith(b"%PDF-1.7") for data in files.values())
    assert [run.pages for run in one.runs] == [file.pages for file in one.files]
    assert {run.child for run in one.runs} == {"Juno"}
    assert len(one.faults) == 1 and "cube" in one.faults[0].message
    assert shop.faults == []


def test_sheets_without_a_fault_are_named_by_their_place(shop: Workshop) -> None:
    one, _ = made(shop, 0)
    kinds = [item.sheet for item in shop.packs[0].items]
    assert [kinds[place] for place in one.clean] == ["biography", "timeline", "model"]
    assert kinds.count("model") == 2


def test_nothing_is_written_without_a_sink(shop: Workshop) -> None:
    one = make(shop, shop.packs[0], (), None, lambda words: None)
    assert one.files == () and one.runs == made(shop, 0)[0].runs


def test_packs_are_alike_but_for_the_name_and_the_longest_stands_for_all(shop: Workshop) -> None:
    assert alike(shop, range(4)) == {0: 1, 1: 1, 2: 2, 3: 3}


def test_the_runs_of_a_pack_like_another_are_its_own_by_name(shop: Workshop) -> None:
    own, like = made(shop, 0)[0].runs, made(shop, 1)[0].for_pack(shop.packs[0])
    assert [(run.path, run.child, run.pages) for run in like.runs] == [(r.path, r.child, r.pages) for r in own]
    assert like.files == () and like.faults == ()


def test_only_the_parents_pack_is_the_parents(shop: Workshop) -> None:
    assert [is_parents(pack) for pack in shop.packs] == [False, False, False, False, True]


def test_the_parents_runs_count_themselves(shop: Workshop) -> None:
    runs = tuple(run for place in range(4) for run in made(shop, place)[0].runs)
    one, files = made(shop, 4, runs)
    assert list(files) == ["parent/guide.pdf"]
    assert one.runs[0].pages == one.files[0].pages


def test_a_picture_or_an_ink_makes_a_page_one_of_colour() -> None:
    line = Line(0, 0, 1, 1, Stroke(0.2, 0.5))
    red = Path_((("m", 0.0, 0.0), ("l", 1.0, 1.0)), None, (1.0, 0.0, 0.0))
    assert not has_colour((line, Group((line,))))
    assert has_colour((line, Group((Group((red,)),))))
    assert has_colour((Picture(Path("a.png"), 0, 0, 1, 1),))
