"""The same input gives the same bytes, whatever the machine's mood: hash seed, time zone, language, folder, cache."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

from built import EXAMPLES, QUENBY, ROOT, Packs


def sums(folder: Path) -> dict[str, str]:
    listing = json.loads((folder / "packgen.json").read_text(encoding="utf-8"))
    return {entry["path"]: entry["sha256"] for key in ("files", "other_files") for entry in listing[key]}


def test_another_process_in_another_mood_makes_the_same_bytes(example: Packs, tmp_path: Path) -> None:
    mood = {"PYTHONHASHSEED": "4711", "TZ": "Pacific/Auckland", "LC_ALL": "C", "PYTHONPATH": str(ROOT),
            "PACKGEN_CACHE": "off"}  # fmt: skip
    ran = subprocess.run(
        [sys.executable, "-m", "packgen", "build", os.path.relpath(QUENBY, tmp_path), "--family",
         os.path.relpath(EXAMPLES / "ferrar.yaml", tmp_path), "--out", "elsewhere",
         "--jobs", "2"],
        cwd=tmp_path, env={**os.environ, **mood}, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert ran.returncode == 0, ran.stderr
    folder = tmp_path / "elsewhere" / example.folder.name
    assert sums(folder) == sums(example.folder)
    for path in sums(folder):
        assert (folder / path).read_bytes() == (example.folder / path).read_bytes(), path
    one, other = (json.loads((f / "packgen.json").read_text(encoding="utf-8")) for f in (folder, example.folder))
    assert one.keys() == other.keys() and one["models"] == other["models"]
