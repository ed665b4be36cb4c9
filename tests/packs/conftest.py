"""Whole packs, each built once for all tests that read them."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest
from households import LETTER_GREY, ONE_SIDED_WIDE_MARGIN, SHORT_EDGE
from paper import PaperFile, PaperPage

from packgen import build
from packgen.reading.family import read_family
from packgen.reading.models import Child, Family, Study
from packgen.reading.study import read_study

ROOT = Path(__file__).resolve().parents[2]
EXAMPLES = ROOT / "examples"
QUENBY = EXAMPLES / "isaure-quenby" / "study.yaml"
ORRELIN = EXAMPLES / "tomasz-orrelin" / "study.yaml"


@dataclass(frozen=True)
class Sheet:
    """One sheet as the manifest lists it, with its finished pages. `pack` is its recipe's name, empty name for all."""

    kind: str
    part: str
    title: str
    child: str
    pack: str
    facts: dict[str, Any]
    file: dict[str, Any]
    pages: tuple[PaperPage, ...]

    def __repr__(self) -> str:
        return f"{self.child or self.pack}: {self.title}"


@dataclass
class Packs:
    """A built folder: its manifest, its files opened once, and what went into it."""

    folder: Path
    study: Study
    family: Family
    manifest: dict[str, Any]
    built: build.Built
    opened: dict[str, PaperFile] = field(default_factory=dict)

    def file(self, path: str) -> PaperFile:
        if path not in self.opened:
            self.opened[path] = PaperFile(self.folder / path)
        return self.opened[path]

    @property
    def pages(self) -> list[PaperPage]:
        return [page for entry in self.manifest["files"] for page in self.file(entry["path"]).pages]

    def sheets(self, kind: str = "", part: str | None = None, child: str | None = None) -> list[Sheet]:
        """The sheets in the manifest, of a kind, part or child if asked."""
        found = []
        for entry in self.manifest["files"]:
            for facts in entry["sheets"]:
                first, last = facts["pages"]
                found.append(Sheet(
                    facts["kind"], facts.get("part", ""), facts["title"], entry["child"], entry["pack"], facts, entry,
                    tuple(self.file(entry["path"]).pages[first - 1 : last]),
                ))  # fmt: skip
        return [
            s for s in found
            if kind in ("", s.kind) and part in (None, s.part) and child in (None, s.child)
        ]  # fmt: skip

    def child(self, name: str) -> Child:
        return next(c for c in self.family.children if c.name == name)


def make(study: Path, family: Path, out: Path) -> Packs:
    built = build.build(build.Order(study, family), out)
    read, _ = read_study(study)
    known, _ = read_family(family, ("first", "younger", "older", "upper", "parent"))
    assert read and known
    manifest = json.loads((built.folder / "packgen.json").read_text(encoding="utf-8"))
    return Packs(built.folder, read, known, manifest, built)


Maker = Callable[[Path, str], Packs]


@pytest.fixture(scope="session")
def maker(tmp_path_factory: pytest.TempPathFactory) -> Maker:
    def made(study: Path, family: str) -> Packs:
        home = tmp_path_factory.mktemp("home")
        (home / "family.yaml").write_text(family, encoding="utf-8")
        return make(study, home / "family.yaml", tmp_path_factory.mktemp("out"))

    return made


@pytest.fixture(scope="session")
def example(maker: Maker) -> Packs:
    """The example inventor for the example family: A4, two-sided on the long edge, a margin of 6 mm, colour."""
    return maker(QUENBY, (EXAMPLES / "ferrar.yaml").read_text(encoding="utf-8"))


@pytest.fixture(scope="session")
def letter(maker: Maker) -> Packs:
    """All four levels on Letter in black and white."""
    return maker(QUENBY, LETTER_GREY)


@pytest.fixture(scope="session")
def one_sided(maker: Maker) -> Packs:
    """A4 on a printer that prints one side only and cannot reach the outer 12 mm."""
    return maker(QUENBY, ONE_SIDED_WIDE_MARGIN)


@pytest.fixture(scope="session")
def short_edge(maker: Maker) -> Packs:
    """The example painter on Letter, on a printer that flips on the short edge; larger type, other books."""
    return maker(ORRELIN, SHORT_EDGE)


ALL = ("example", "letter", "one_sided", "short_edge")


@pytest.fixture(params=ALL)
def packs(request: pytest.FixtureRequest) -> Packs:
    """Each of the built packs in turn."""
    found: Packs = request.getfixturevalue(request.param)
    return found
