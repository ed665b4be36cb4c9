"""The output folder: files made ready beside their place, then moved into it; what packgen did not make stays."""

from __future__ import annotations

import hashlib
import json
import os
import shutil
import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path

from packgen.faults import Fault, InputFaults, Place, WorkFailed
from packgen.writing.atomic import in_words, write_whole

MANIFEST = "packgen.json"


def made_before(target: Path) -> frozenset[str]:
    """The files an earlier build left in this folder, by the manifest there; none if there is no manifest."""
    try:
        old = json.loads((target / MANIFEST).read_text(encoding="utf-8"))
        listed = [entry["path"] for key in ("files", "other_files") for entry in old.get(key, ())]
    except FileNotFoundError:
        return frozenset()
    except (OSError, ValueError, TypeError, KeyError, AttributeError):
        return frozenset({MANIFEST})
    return frozenset(str(path) for path in listed) | {MANIFEST}


def write_output(target: Path, files: Mapping[str, bytes], manifest: bytes) -> tuple[str, ...]:
    """Write a whole build into `target`; returns the paths that changed.

    Everything is written to a folder beside first, so that a full disk is noticed before any old file is touched. Files
    of an earlier build that this one does not make are removed. Raises InputFaults if a file packgen did not make is in
    the way, and WorkFailed if the folder cannot be written.
    """
    before = made_before(target)
    _refuse_strangers(target, [*files, MANIFEST], before)
    changed = [path for path, data in files.items() if not _same(target / path, data)]
    staging: Path | None = None
    try:
        target.mkdir(parents=True, exist_ok=True)
        staging = Path(tempfile.mkdtemp(prefix=".packgen-", dir=target))
        for path in changed:
            _put(staging / path, files[path])
        _put(staging / MANIFEST, manifest)
        for path in changed:
            (target / path).parent.mkdir(parents=True, exist_ok=True)
            os.replace(staging / path, target / path)
        os.replace(staging / MANIFEST, target / MANIFEST)
        for path in sorted(before - set(files) - {MANIFEST}):
            _remove(target, path)
    except OSError as error:
        raise WorkFailed(f"{target} cannot be written: {in_words(error)}. The files there before are whole. "
                         "Free some room, or choose another folder with --out.") from error  # fmt: skip
    finally:
        if staging:
            shutil.rmtree(staging, ignore_errors=True)
    return tuple(changed)


def _put(path: Path, data: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    with open(path, "wb") as out:
        out.write(data)
        out.flush()
        os.fsync(out.fileno())


def _same(path: Path, data: bytes) -> bool:
    try:
        return (
            path.stat().st_size == len(data)
            and hashlib.sha256(path.read_bytes()).digest() == hashlib.sha256(data).digest()
        )
    except OSError:
        return False


def _refuse_strangers(target: Path, paths: Sequence[str], before: frozenset[str]) -> None:
    strangers = [path for path in paths if path not in before and os.path.lexists(target / path)]
    if strangers:
        raise InputFaults([
            Fault(Place(str(target / path)), "This file is in the way, and packgen did not make it.",
                  "Move it elsewhere, or choose another folder with --out.") for path in strangers
        ])  # fmt: skip


def _remove(target: Path, path: str) -> None:
    """Remove a file of an earlier build, and its folder if that is empty now; never anything outside the target."""
    place = (target / path).resolve()
    if not place.is_relative_to(target.resolve()):
        return
    place.unlink(missing_ok=True)
    if place.parent != target.resolve() and not any(place.parent.iterdir()):
        place.parent.rmdir()


def write_loose(target: Path, files: Mapping[str, bytes]) -> tuple[Path, ...]:
    """Write files one by one, each whole or not at all; returns their paths. Raises WorkFailed."""
    paths: list[Path] = []
    for name, data in files.items():
        path = target / name
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise WorkFailed(f"{path.parent} cannot be made: {in_words(error)}") from error
        write_whole(path, data)
        paths.append(path)
    return tuple(paths)
