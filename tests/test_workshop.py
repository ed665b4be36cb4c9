"""Everything read and planned: which packs, what is told, and that all faults of all files come at once."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image

from packgen.faults import InputFaults
from packgen.workshop import Order, open_workshop, read_all

STUDY = "study: Isaure Quenby\nkind: inventor\nin_short: Lamp-maker.\nborn: 1834\n"
FAMILY = """family: Ferrar
paper: Letter
children:
  - {name: Juno, age: 11, pack: older}
  - {name: Zoë, age: 8, pack: younger}
"""


@pytest.fixture
def home(tmp_path: Path) -> Path:
    (tmp_path / "study.yaml").write_text(STUDY)
    (tmp_path / "family.yaml").write_text(FAMILY)
    return tmp_path


def order(home: Path, **more: object) -> Order:
    return Order(home / "study.yaml", home / "family.yaml", **more)  # type: ignore[arg-type]


def packs(home: Path, *names: str) -> list[str]:
    return [pack.folder for pack in read_all(order(home, packs=names)).packs]


def test_the_children_come_in_their_order_and_the_parent_last(home: Path) -> None:
    assert packs(home) == ["juno", "zoe", "parent"]


def test_without_a_family_there_is_a_younger_and_an_older_pack(home: Path) -> None:
    plans = read_all(Order(home / "study.yaml"))
    assert [pack.folder for pack in plans.packs] == ["younger", "older", "parent"]
    assert plans.shipped and plans.family.paper == "A4"


def test_a_pack_is_asked_for_by_a_name_its_folder_or_its_recipe(home: Path) -> None:
    assert packs(home, "Juno") == packs(home, "juno") == packs(home, "older") == ["juno"]
    assert packs(home, "Zoë", "parent") == ["zoe", "parent"]
    assert packs(home, "first") == ["first"]  # a recipe no child has


def test_the_paper_of_the_command_line_comes_before_the_familys(home: Path) -> None:
    assert open_workshop(order(home)).paper == (215.9, 279.4)
    assert open_workshop(order(home, paper="A4")).paper == (210.0, 297.0)


def test_without_a_folder_pictures_are_only_measured(home: Path) -> None:
    assert open_workshop(order(home)).store.measuring
    assert not open_workshop(order(home), home).store.measuring


def test_recipes_and_wordings_of_the_familys_own_come_first_and_are_known(home: Path) -> None:
    assert read_all(order(home)).shipped
    (home / "packs").mkdir()
    (home / "packs" / "older.yaml").write_text("pack: older\nlevel: older\nsheets: [timeline]\n")
    plans = read_all(order(home))
    assert not plans.shipped and [item.sheet for item in plans.packs[0].items] == ["timeline"]
    (home / "templates").mkdir()
    assert read_all(order(home)).templates[0] == home / "templates"


def test_all_faults_of_all_files_come_at_once(home: Path) -> None:
    (home / "study.yaml").write_text(STUDY + "timeline: [{when: some day, what: A lamp}]\nportrait: nowhere.png\n")
    (home / "family.yaml").write_text(FAMILY.replace("pack: older", "pack: oldest").replace("Letter", "A5"))
    with pytest.raises(InputFaults) as told:
        read_all(order(home, packs=("nobody",), only=("biografy",)))
    said = str(told.value)
    for word in ("some day", "nowhere.png", "oldest", "A5", "nobody", "biografy"):
        assert word in said, said


def test_a_picture_that_was_whole_is_looked_at_again_when_it_changes(home: Path) -> None:
    (home / "study.yaml").write_text(STUDY + "portrait: portrait.png\n")
    Image.effect_noise((300, 200), 60).save(home / "portrait.png")
    for _ in range(2):
        assert read_all(order(home)).faults == ()
    data = (home / "portrait.png").read_bytes()
    (home / "portrait.png").write_bytes(data[: len(data) // 2])
    for _ in range(2):
        with pytest.raises(InputFaults, match=r"portrait\.png is damaged"):
            read_all(order(home))
