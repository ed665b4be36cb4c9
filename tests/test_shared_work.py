"""What children share is made once in a build: the calls of what takes long are counted, by the profiler.

A build for one child of a level and a build for three are counted; nothing below may be called more often for three.
"""

from __future__ import annotations

import cProfile
import os
import pstats
import random
from pathlib import Path

import pytest
from PIL import Image

from packgen.all_made import all_made
from packgen.build import Order, build
from packgen.workshop import open_workshop

STUDY = """
study: Isaure Quenby
kind: both
in_short: Lamp-maker who measured the tides.
place: {name: Saltmere, lat: 50.4, lon: -4.9}
portrait: harbour.jpg
works:
  - {id: harbour, title: The Harbour at Dusk, when: 1861, image: harbour.jpg, held: Saltmere}
timeline:
  - {when: 1851, what: Makes her first lamp}
challenges:
  - {title: A rotor, brief: Let it fall slowly., model: bladed-rotor}
models:
  - {title: The lamp house, solid: prism, given: {sides: 6, across: 5.2 m, height: 6.1 m}}
"""
ONCE = {
    "pictures decoded": ("opening.py", "upright"),
    "pictures prepared": ("load.py", "_prepare"),
    "line art traced": ("tracing.py", "traced"),
    "nets laid out": ("layout.py", "lay_out"),
    "solids unfolded": ("unfold.py", "unfold"),
    "fonts read": ("ttfonts.py", "extractInfo"),
    "land cut out for maps": ("world.py", "_map_for"),
}


@pytest.fixture
def home(tmp_path: Path) -> Path:
    (tmp_path / "study.yaml").write_text(STUDY)
    dice = random.Random(1834)
    image = Image.new("RGB", (600, 450), (240, 230, 200))
    for _ in range(12):
        left, top = dice.randrange(430), dice.randrange(320)
        image.paste(tuple(dice.choices(range(256), k=3)), (left, top, left + 150, top + 120))
    image.save(tmp_path / "harbour.jpg", quality=90)
    return tmp_path


def family(home: Path, names: str) -> Path:
    path = home / f"family-{names}.yaml"
    path.write_text("family: Ferrar\nchildren:\n" + "".join(f"  - {{name: {n}, pack: older}}\n" for n in names))
    return path


def calls(home: Path, names: str) -> dict[str, int]:
    """How often each of `ONCE` is called while the children's packs are made."""
    only = ("biography", "picture-study", "colour-by-number", "look-closer", "where-in-the-world", "model")
    order = Order(home / "study.yaml", family(home, names), packs=("older",), only=only)
    shop = open_workshop(order, home)
    seen = cProfile.Profile()
    seen.enable()
    all_made(order, shop, lambda path, data: None, 1, None)
    seen.disable()
    counted = {(os.path.basename(key[0]), key[2]): value[1] for key, value in pstats.Stats(seen).stats.items()}
    return {what: counted.get(where, 0) for what, where in ONCE.items()}


def test_more_children_do_not_make_more_of_what_they_share(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PACKGEN_CACHE", "off")
    one, three = calls(home, "J"), calls(home, "ABC")
    assert one["pictures prepared"] and one["line art traced"] and one["nets laid out"]
    for what, count in three.items():
        assert count <= one[what], what


def test_what_has_not_changed_is_not_written_again(home: Path) -> None:
    order = Order(home / "study.yaml", family(home, "JB"), only=("biography", "timeline"))
    first = build(order, home / "out")
    dates = {file.path: (first.folder / file.path).stat().st_mtime_ns for file in first.files}
    assert build(order, home / "out").changed == ()
    (home / "study.yaml").write_text(STUDY.replace("Makes her first lamp", "Sells her first lamp"))
    family(home, "JB").write_text(
        family(home, "JB").read_text().replace("name: B, ", "name: B, leave_out: [timeline], ")
    )
    changed = build(order, home / "out").changed
    assert any(path.startswith("j/") for path in changed)
    for path, date in dates.items():
        if (first.folder / path).exists():
            assert ((first.folder / path).stat().st_mtime_ns == date) == (path not in changed), path
