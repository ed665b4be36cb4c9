"""Many hands: how many there are, that each pack is made once by them, and what happens when one fails."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from packgen.faults import WorkFailed
from packgen.hands import hands, make_all
from packgen.workshop import Order, Workshop, open_workshop

CORES = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


@pytest.fixture
def shop(tmp_path: Path) -> tuple[Order, Workshop]:
    (tmp_path / "study.yaml").write_text("study: Isaure Quenby\nkind: inventor\nin_short: Lamp-maker.\nborn: 1834\n")
    children = "".join(f"  - {{name: Child{k}, pack: {('older', 'younger')[k % 2]}}}\n" for k in range(6))
    (tmp_path / "family.yaml").write_text("family: Ferrar\nchildren:\n" + children)
    order = Order(tmp_path / "study.yaml", tmp_path / "family.yaml", only=("biography",))
    return order, open_workshop(order, tmp_path)


@pytest.mark.parametrize(
    ("jobs", "packs", "count"),
    [(None, 1, 1), (None, 5, 1), (None, 6, min(6, CORES)), (None, 300, CORES), (4, 2, 2), (4, 300, 4), (1, 300, 1),
     (3, 0, 1)],
)  # fmt: skip
def test_there_are_as_many_hands_as_asked_for_and_never_more_than_packs(
    jobs: int | None, packs: int, count: int
) -> None:
    assert hands(jobs, packs) == count


@pytest.mark.parametrize("count", [1, 2])
def test_every_pack_is_made_once_whoever_makes_it(shop: tuple[Order, Workshop], tmp_path: Path, count: int) -> None:
    put = Put(tmp_path / "made")
    made = dict(make_all(*shop, range(6), put, count, lambda words: None))
    assert sorted(made) == list(range(6))
    for place, one in made.items():
        assert one.files and all(file.path.startswith(f"child{place}/") for file in one.files)
        assert (tmp_path / "made" / one.files[0].path.replace("/", "-")).is_file()


def test_words_are_told_only_by_the_first_hand(shop: tuple[Order, Workshop]) -> None:
    told: list[str] = []
    list(make_all(*shop, range(6), None, 2, told.append))
    assert told == ["child0: biography", "child1: biography"]  # the first of each recipe, before helpers start


def test_what_fails_in_a_helper_fails_here(shop: tuple[Order, Workshop], tmp_path: Path) -> None:
    with pytest.raises(WorkFailed, match="no room"):
        list(make_all(*shop, range(6), Refuse(), 2, lambda words: None))


class Put:
    """A sink any process can use."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        folder.mkdir()

    def __call__(self, path: str, data: bytes) -> None:
        with open(self.folder / path.replace("/", "-"), "xb") as file:
            file.write(data)


class Refuse:
    """A sink that takes only the files of the first two children."""

    def __call__(self, path: str, data: bytes) -> None:
        if not path.startswith(("child0/", "child1/")):
            raise WorkFailed("There is no room.")
