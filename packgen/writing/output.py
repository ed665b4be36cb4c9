"""The output folder: a build is made ready beside it and takes its place in one step; what packgen did not make stays.

What is guaranteed. While a build runs, its files go into a hidden folder beside the old output, which nobody touches:
with a full disk, a fault or a stop at any moment the old output is whole. Then the two folders change places, in one
step on Linux and macOS. Elsewhere there is a moment in which the old output lies under a hidden name; the next run puts
it back. Where the two cannot change places at all (the folder is a disk of its own, or the disk has no hard links and
holds files that are not packgen's), the new files are moved into their places one by one, each whole, the manifest
last. The disk is told to keep what was written before any of this. What a stop leaves behind goes with the next run.
"""

from __future__ import annotations

import contextlib
import json
import os
import shutil
import tempfile
from collections.abc import Iterator, Sequence
from pathlib import Path

from packgen.faults import Fault, InputFaults, Place, WorkFailed
from packgen.writing.atomic import in_words
from packgen.writing.exchange import exchange, put_back
from packgen.writing.hold import held

MANIFEST = "packgen.json"


@contextlib.contextmanager
def opened(target: Path) -> Iterator[Output]:
    """The output folder at `target`, held for one build. Raises WorkFailed if it is busy or cannot be written."""
    target = target.resolve()
    put_back(target, _aside(target))
    with held(target):
        output = Output(target)
        try:
            yield output
        finally:
            output.close()


class Output:
    """A build on its way into its folder. `put` files from any process, then `publish` once."""

    def __init__(self, target: Path) -> None:
        self.target = target
        for place in (target.parent, target):
            for leftover in place.glob(f".packgen.{_safe(target.name)}.*"):
                shutil.rmtree(leftover, ignore_errors=True)
        self.staging = _staging(target)

    def put(self, path: str, data: bytes) -> None:
        """Make a file ready. One that is as it was is not written again. Raises WorkFailed."""
        old, new = self.target / path, self.staging / path
        try:
            new.parent.mkdir(parents=True, exist_ok=True)
            if not (_same(old, data) and _linked(old, new)):
                _write(new, data)
        except OSError as error:
            raise _failed(self.target, error) from error

    def publish(self, manifest: bytes) -> tuple[str, ...]:
        """Put everything in its place with its manifest; returns the paths that changed, sorted.

        Files of an earlier build that this one did not make are gone then. Raises InputFaults if a file packgen did not
        make is in the way, and WorkFailed if the folder cannot be written.
        """
        before = made_before(self.target)
        made = sorted(_files(self.staging))
        _refuse_strangers(self.target, [*made, MANIFEST], before)
        changed = tuple(path for path in made if not _one_file(self.target / path, self.staging / path))
        self.put(MANIFEST, manifest)
        try:
            if self.staging.parent == self.target.parent and self._adopted(before):
                _keep(self.staging)
                exchange(self.staging, self.target, _aside(self.target))
                _keep(self.target.parent)
            else:
                self._moved(changed, before - set(made) - {MANIFEST})
        except OSError as error:
            raise _failed(self.target, error) from error
        return changed

    def add(self) -> tuple[Path, ...]:
        """Move every file into its place, one by one, each whole; nothing is removed. Raises WorkFailed."""
        made = sorted(_files(self.staging))
        try:
            for path in made:
                (self.target / path).parent.mkdir(parents=True, exist_ok=True)
                os.replace(self.staging / path, self.target / path)
        except OSError as error:
            raise _failed(self.target, error) from error
        return tuple(self.target / path for path in made)

    def close(self) -> None:
        """Remove what was made ready but not published, or the output that was replaced."""
        shutil.rmtree(self.staging, ignore_errors=True)

    def _adopted(self, before: frozenset[str]) -> bool:
        """Bring what packgen did not make, and the modes of folders, over from the old output; False if that fails."""
        try:
            shutil.copymode(self.target, self.staging)
            for folder, folders, names in os.walk(self.target):
                inside = Path(folder).relative_to(self.target)
                names += [name for name in folders if (Path(folder) / name).is_symlink()]
                strangers = [name for name in names if (inside / name).as_posix() not in before]
                if strangers or not (names or folders):
                    (self.staging / inside).mkdir(parents=True, exist_ok=True)
                if (self.staging / inside).is_dir():
                    shutil.copymode(folder, self.staging / inside)
                for name in strangers:
                    os.link(Path(folder) / name, self.staging / inside / name, follow_symlinks=False)
        except (OSError, NotImplementedError):
            return False
        return True

    def _moved(self, changed: Sequence[str], gone: frozenset[str]) -> None:
        for path in (*changed, MANIFEST):
            (self.target / path).parent.mkdir(parents=True, exist_ok=True)
            os.replace(self.staging / path, self.target / path)
        for path in sorted(gone):
            _remove(self.target, path)


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


def _staging(target: Path) -> Path:
    """A new folder for a build: beside the target if the two can change places, else inside it. Raises WorkFailed."""
    start = f".packgen.{target.name}."
    with contextlib.suppress(OSError):
        if target.parent.stat().st_dev == target.stat().st_dev and not target.is_mount():
            return Path(tempfile.mkdtemp(prefix=start, dir=target.parent))
    try:
        return Path(tempfile.mkdtemp(prefix=start, dir=target))
    except OSError as error:
        raise _failed(target, error) from error


def _aside(target: Path) -> Path:
    return target.parent / f".packgen-old.{target.name}"


def _safe(name: str) -> str:
    return "".join(f"[{letter}]" if letter in "*?[" else letter for letter in name)


def _failed(target: Path, error: OSError) -> WorkFailed:
    return WorkFailed(f"{target} cannot be written: {in_words(error)}. The files there before are whole. "
                      "Free some room, or choose another folder with --out.")  # fmt: skip


def _files(folder: Path) -> Iterator[str]:
    for inside, _, names in os.walk(folder):
        for name in names:
            yield (Path(inside) / name).relative_to(folder).as_posix()


def _write(path: Path, data: bytes) -> None:
    with open(path, "wb") as out:
        out.write(data)
        out.flush()
        os.fsync(out.fileno())


def _keep(folder: Path) -> None:
    """Have the disk keep the names in a folder, where the system can be told so."""
    with contextlib.suppress(OSError):
        number = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(number)
        finally:
            os.close(number)


def _linked(old: Path, new: Path) -> bool:
    """Give a file that stays as it is a second name, so that it keeps its date; False if the disk cannot."""
    try:
        os.link(old, new, follow_symlinks=False)
    except (OSError, NotImplementedError):
        return False
    return True


def _one_file(old: Path, new: Path) -> bool:
    """True if the file made ready is the old one, or has its bytes."""
    try:
        return old.samefile(new) or _same(old, new.read_bytes())
    except OSError:
        return False


def _same(path: Path, data: bytes) -> bool:
    try:
        return not path.is_symlink() and path.stat().st_size == len(data) and path.read_bytes() == data
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
