"""Two folders change places in one step where the system has a call for it, elsewhere in two quick ones."""

from __future__ import annotations

import contextlib
import ctypes
import errno
import os
import sys
from pathlib import Path

# Linux: renameat2(2), glibc 2.28 and on. macOS: renamex_np(2). Their flags are in <linux/fs.h> and <sys/stdio.h>.
_HERE = -100  # AT_FDCWD: paths are taken as they are
_EXCHANGE = 2  # RENAME_EXCHANGE and RENAME_SWAP alike
_NOT_HERE = (errno.ENOSYS, errno.EINVAL, errno.ENOTSUP)


def exchange(one: Path, two: Path, aside: Path) -> None:
    """Let two folders of one file system change places.

    In one step on Linux and macOS. Where the system or the disk cannot do that, `two` is put `aside` for the moment;
    `put_back` mends what a stop just then leaves. Raises OSError; then both are where they were.
    """
    if _in_one_step(one, two):
        return
    os.replace(two, aside)
    try:
        os.replace(one, two)
    except OSError:
        os.replace(aside, two)
        raise
    with contextlib.suppress(OSError):
        os.replace(aside, one)


def put_back(two: Path, aside: Path) -> None:
    """Mend an exchange that was stopped half-way: the folder put aside goes back if its place is empty."""
    if not aside.is_dir() or two.exists():
        return
    with contextlib.suppress(OSError):
        os.replace(aside, two)


def _in_one_step(one: Path, two: Path) -> bool:
    """True if the two have changed places; False if this system or disk cannot do it. Raises OSError for the rest."""
    if sys.platform == "linux":
        call, arguments = "renameat2", (_HERE, os.fsencode(one), _HERE, os.fsencode(two), _EXCHANGE)
    elif sys.platform == "darwin":
        call, arguments = "renamex_np", (os.fsencode(one), os.fsencode(two), _EXCHANGE)
    else:
        return False
    function = getattr(ctypes.CDLL(None, use_errno=True), call, None)
    if function is None:
        return False
    if function(*arguments) == 0:
        return True
    number = ctypes.get_errno()
    if number in _NOT_HERE:
        return False
    raise OSError(number, os.strerror(number), str(two))
