"""Writing a file whole or not at all: beside its place first, then moved into it."""

from __future__ import annotations

import contextlib
import errno
import os
import tempfile
from pathlib import Path

from packgen.faults import WorkFailed

_IN_WORDS = {
    errno.ENOSPC: "the disk is full; make room and run it again",
    errno.EDQUOT: "your share of the disk is full; make room and run it again",
    errno.EROFS: "the disk is read-only; choose another folder",
    errno.EACCES: "the folder or file may not be written; choose another folder",
    errno.EPERM: "the folder or file may not be written; choose another folder",
    errno.ENOENT: "there is no such folder; make it first or choose another",
    errno.ENOTDIR: "one of the folders in its name is a file; choose another folder",
    errno.EISDIR: "there is a folder of that name; choose another name",
    errno.ENAMETOOLONG: "the name is too long; choose a shorter one",
}


def write_whole(path: Path, data: bytes) -> None:
    """Write a file so that at every moment its place holds the old file or the new one, whole. Makes no folders.

    Raises WorkFailed, in words, if it cannot be written; then the old file is as it was and nothing is left beside it.
    """
    beside: Path | None = None
    try:
        number, name = tempfile.mkstemp(prefix=f".{path.name[:40]}.", suffix=".part", dir=path.parent)
        beside = Path(name)
        with os.fdopen(number, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        beside.chmod(_mode(path))
        os.replace(beside, path)
    except OSError as trouble:
        raise WorkFailed(f"{path} could not be written: {in_words(trouble)}") from trouble
    finally:
        # After the move there is nothing left beside; after any trouble, an interruption too, what is left goes.
        if beside is not None:
            with contextlib.suppress(OSError):
                beside.unlink(missing_ok=True)


def in_words(trouble: OSError) -> str:
    """What went wrong with a file, as a sentence with what to do about it."""
    return _IN_WORDS.get(trouble.errno or 0, trouble.strerror or str(trouble))


def _mode(path: Path) -> int:
    """The permissions of the old file, or those a new file would get (mkstemp's own would hide it from others)."""
    with contextlib.suppress(OSError):
        return path.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask
