"""Small studies and families built whole in a folder, for the tests that read finished files of challenges."""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pdfplumber

from packgen.build import Order, build
from packgen.faults import Fault

WRITING = {"first": 10, "younger": 5, "older": 3, "upper": 2.5}
AGES = {"first": 4, "younger": 8, "older": 11, "upper": 14}
NAMES = {"first": "Wilf", "younger": "Bram", "older": "Juno", "upper": "Tamsin"}
CANOPY = """
  - title: A soft landing
    brief: Make a canopy that lets a small load fall as slowly as you can.
    model: canopy
    given: {canopy: square-pyramid, load mass: 20 g, drop height: 2 m}
    change: {canopy side: [90 mm, 120 mm, 150 mm]}
    measure: {what: time to fall, unit: s}
    materials: [{item: tissue paper, amount: 2, unit: sheet}, {item: thread, amount: 2, unit: m}]
"""
CLOCK = """
  - title: A shadow clock
    brief: Make a clock that tells the hours by the sun.
    model: shadow-clock
"""
LONG = """
  - title: The strongest bridge of spaghetti over the harbour mouth and back to the lamp house
    brief: >-
      Saltmere had a bridge of planks that sagged whenever the mail cart went over it. Build a bridge from dry
      spaghetti and glue that spans the gap between two chairs, and hang a bucket from its middle. The bridge must be
      no heavier than four hundred grams, it must stand by itself on the two chairs without tape, and it must let a
      paper boat of the length of your hand pass below it. Load it with coins, one at a time, and write down how many
      it bears before it breaks; then look at where it broke and build another. A bridge may fail in the middle, at the
      ends, at a knot of glue, or sideways, and each has another cure. You have one afternoon.
    change:
      kind of construction:
        [beam, Donaudampfschifffahrtskapitänsbrücke, arch, triangles, rolled tubes, boxes, plaited strips, layers,
         hanging, folded fan]
    measure: {what: coins borne before it breaks, unit: pennies}
    trials: 20
    keep_same: [the gap between the chairs, the bucket and how it hangs, the hand that lays the coins, the glue]
    materials: [spaghetti, newspaper, glue, a bucket, pennies, string, scales, chairs, ruler, scissors, tape, a sheet]
    caution: [scissors, glue, heights, Broken spaghetti is sharp and flies; cover the eyes.]
    steps: [Draw it., Sort the pieces., Glue it and let it dry for a night., Stand it on the chairs., Lay in the coins.]
    extension: Build one that weighs half as much.
"""
FREE = "\n  - {title: A boat, brief: Build a boat.}\n"
ALL = (CANOPY, CLOCK, LONG, FREE)


@dataclass(frozen=True)
class Made:
    """What was built: the folder of the study's output, the manifest, and what was told."""

    folder: Path
    manifest: dict[str, Any]
    faults: tuple[Fault, ...]

    def sheets(self, level: str, kind: str = "challenge", part: str = "") -> list[tuple[Path, list[int]]]:
        """The files and pages (first and last) of a child's sheets of a kind."""
        return [
            (self.folder / file["path"], sheet["pages"])
            for file in self.manifest["files"] if file["pack"] == level
            for sheet in file["sheets"] if sheet["kind"] == kind and sheet.get("part", "") == part
        ]  # fmt: skip

    def text(self, level: str, kind: str = "challenge", part: str = "") -> list[str]:
        """The text of each page of a child's sheets of a kind, spaces evened out."""
        return [" ".join(page.extract_text().split()) for page in self.pages(level, kind, part)]

    def pages(self, level: str, kind: str = "challenge", part: str = "") -> list[Any]:
        """The pages of a child's sheets of a kind as a second reader sees them."""
        return [
            page for path, (first, last) in self.sheets(level, kind, part) for page in _read(path)[first - 1 : last]
        ]


@cache
def _read(path: Path) -> list[Any]:
    """The pages of a file, read to the end while it is open."""
    with pdfplumber.open(path) as file:
        for page in file.pages:
            assert page.objects is not None
        return list(file.pages)


_HELD = TemporaryDirectory(prefix="challenge-files-")


def kept(challenges: str, paper: str = "A4") -> Made:
    """All four levels of these challenges, built once for all tests that only look."""
    return _kept(challenges, paper)


@cache
def _kept(challenges: str, paper: str) -> Made:
    folder = Path(_HELD.name) / str(abs(hash((challenges, paper))))
    folder.mkdir()
    return made(folder, challenges, paper=paper)


def made(folder: Path, challenges: str = CANOPY, *, levels: tuple[str, ...] = tuple(WRITING), paper: str = "A4",
         results: str = "", sheets: str = "challenge, results", more: str = "", child: str = "") -> Made:  # fmt: skip
    """The packs of a family of these levels, from a study with these challenges. `child` is added to each child."""
    (folder / "packs").mkdir(exist_ok=True)
    for level in (*WRITING, "parent"):
        lines = f"pack: {level}\nlevel: {level}\nwriting: {WRITING.get(level, 2.5)} mm\nsheets: [{sheets}]\n"
        (folder / "packs" / f"{level}.yaml").write_text(lines)
    (folder / "study.yaml").write_text(
        f"study: Isaure Quenby\nkind: inventor\nin_short: Lamp-maker.\nchallenges:{challenges}"
    )
    children = "".join(f"  - {{name: {NAMES[level]}, age: {AGES[level]}, pack: {level}{child}}}\n" for level in levels)
    place = "" if "place:" in more else "place: {name: Saltmere, lat: 50.4, lon: -4.9}\n"
    lines = f"family: Ferrar\npaper: {paper}\n{place}{more}children:\n{children}{results}"
    (folder / "family.yaml").write_text(lines.replace("place: none\n", ""))
    order = Order(folder / "study.yaml", folder / "family.yaml", packs=levels)
    built = build(order, folder / "out")
    return Made(built.folder, json.loads((built.folder / "packgen.json").read_text()), built.faults)
