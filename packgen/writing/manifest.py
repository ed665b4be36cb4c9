"""The manifest, packgen.json: every file with its print setting and sheets, every model with its lines in mm."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from packgen import __version__
from packgen.faults import Fault
from packgen.printed.runs import PrintRun, RunSheet


@dataclass(frozen=True, slots=True)
class Written:
    """One file of the output: its path under the study's folder, whose it is, and how to print its pages.

    `sheets` and `models` are its entries in the manifest. Holds neither pages nor bytes, so that a build of many
    children need not hold them all.
    """

    path: str
    child: str
    pack: str
    stock: str
    sides: str
    copies: int
    pages: int
    sha256: str
    sheets: tuple[dict[str, Any], ...]
    models: tuple[dict[str, Any], ...]


def written(path: str, child: str, pack: str, run: PrintRun, data: bytes) -> Written:
    """What the manifest says of a print run's file with these bytes."""
    return Written(
        path, child, pack, run.stock, run.sides, run.copies, len(run.pages), hashlib.sha256(data).hexdigest(),
        tuple(_sheet(sheet) for sheet in run.sheets), tuple(_models(run.sheets, path)),
    )  # fmt: skip


def _sheet(sheet: RunSheet) -> dict[str, Any]:
    laid = sheet.laid
    entry: dict[str, Any] = {"kind": laid.kind, "title": laid.title, "pages": [sheet.first, sheet.last]}
    if laid.number:
        entry["number"] = laid.number
    if laid.part:
        entry["part"] = laid.part
    if laid.week:
        entry["week"] = laid.week
    plan = sheet.imposed.plan
    if plan:
        entry["scheme"] = plan.scheme
        entry["book_pages"] = plan.book_pages
        entry["page_mm"] = [round(plan.page_width, 3), round(plan.page_height, 3)]
        entry["caliper_mm"] = plan.caliper
        entry["creep_per_sheet_mm"] = plan.creep_per_sheet
        entry["creep_most_mm"] = round(plan.creep_most, 4)
        if len(plan.signatures) > 1:
            entry["signatures"] = list(plan.signatures)
    return entry


def _models(sheets: Sequence[RunSheet], path: str) -> list[dict[str, Any]]:
    models: list[dict[str, Any]] = []
    for sheet in sheets:
        if isinstance(sheet.laid.net, dict):
            net = dict(sheet.laid.net)
            for key in ("faces", "folds", "cuts", "tabs", "holes"):
                net[key] = [{**piece, "page": piece["page"] + sheet.first - 1} for piece in net.get(key, ())]
            models.append({**net, "file": path})
    return models


def _warning(fault: Fault) -> str:
    """A warning with the name of its file only, so that a manifest tells nothing of the folders at home."""
    return str(replace(fault, place=replace(fault.place, file=Path(fault.place.file).name)))


def manifest(study: str, paper: str, files: Sequence[Written], faults: Sequence[Fault],
             more: dict[str, str] | None = None) -> bytes:  # fmt: skip
    """The manifest as JSON. `more` maps other files of the output to the sha256 of their bytes."""
    data = {
        "packgen": __version__, "study": study, "paper": paper,
        "files": [
            {
                "path": file.path, "child": file.child, "pack": file.pack, "stock": file.stock, "sides": file.sides,
                "copies": file.copies, "pages": file.pages, "sha256": file.sha256, "sheets": list(file.sheets),
            } for file in files
        ],
        "other_files": [{"path": path, "sha256": digest} for path, digest in sorted((more or {}).items())],
        "models": [model for file in files for model in file.models],
        "warnings": [_warning(f) for f in faults],
    }  # fmt: skip
    return (json.dumps(data, ensure_ascii=False, indent=1) + "\n").encode()
