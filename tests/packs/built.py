"""A whole build as tests read it: the manifest, the finished files, and what went into them."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

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
