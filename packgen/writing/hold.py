"""One packgen at a time in an output folder: the folder itself is locked while a build is on its way into it."""

from __future__ import annotations

import contextlib
import os
import sys
from collections.abc import Iterator
from pathlib import Path

from packgen.faults import WorkFailed
from packgen.writing.atomic import in_words

if sys.platform != "win32":
    import fcntl


@contextlib.contextmanager
def held(folder: Path) -> Iterator[None]:
    """Hold a folder, made if need be, for as long as the context lasts; nothing made is left behind if it stays empty.

    The lock is the system's (flock(2)): it ends with the process, however that ends. On Windows, which cannot lock a
    folder, two builds may run at once; then the last to finish wins, whole. Raises WorkFailed if another packgen holds
    the folder, or if it cannot be made.
    """
    made = [place for place in (folder, *folder.parents) if not place.exists()]
    number = _locked(folder)
    try:
        yield
    finally:
        with contextlib.suppress(OSError):
            for place in made:
                place.rmdir()  # only an empty one goes
        if number is not None:
            os.close(number)


def _make(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise WorkFailed(f"{folder} cannot be made: {in_words(error)}.") from error


def _locked(folder: Path) -> int | None:
    """The locked folder as an open file. A folder that was exchanged while it was being locked is opened again."""
    if sys.platform == "win32":
        _make(folder)
        return None
    while True:
        _make(folder)
        try:
            number = os.open(folder, os.O_RDONLY)
        except FileNotFoundError:
            continue
        except OSError as error:
            raise WorkFailed(f"{folder} cannot be opened: {in_words(error)}.") from error
        try:
            fcntl.flock(number, fcntl.LOCK_EX | fcntl.LOCK_NB)
            if os.path.samestat(os.fstat(number), os.stat(folder)):
                return number
        except BlockingIOError as busy:
            os.close(number)
            raise WorkFailed(f"{folder} is busy: another packgen is writing there. Wait until it is done, and run this "
                             "again, or choose another folder with --out.") from busy  # fmt: skip
        except FileNotFoundError:
            pass
        except OSError:  # a disk without locks, as some in a network: then the last to finish wins, whole
            return number
        os.close(number)
