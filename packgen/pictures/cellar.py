"""What was made of pictures in earlier builds, kept on the disk: a text changed in a study need not cost its line art.

Only data is read from it, never code. A thing is found by the content of its picture, what was asked for, and the code
that made it; whatever is wrong with the folder or with a thing in it, the thing is made anew.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
import time
from pathlib import Path
from typing import Any

from PIL import __version__ as pillow

from packgen.resources import code_stamp

_UNUSED = 60 * 24 * 3600.0  # seconds after which a thing that nobody asked for goes


class Cellar:
    """A folder of things kept from build to build, or none."""

    def __init__(self, folder: Path | None) -> None:
        self._folder = folder
        self._stamp = f"{code_stamp(Path(__file__).parent)} {pillow}" if folder else ""
        self._swept = False

    def value(self, *of: object) -> Any:
        """The kept value for these words, with lists as tuples; None if there is none."""
        data = self.data("value", *of)
        try:
            return None if data is None else _tupled(json.loads(data))
        except (ValueError, RecursionError):
            return None

    def keep_value(self, value: object, *of: object) -> None:
        """Keep a value of numbers, texts and tuples for these words."""
        self.keep_data(json.dumps(value).encode(), "value", *of)

    def data(self, *of: object) -> bytes | None:
        """The kept bytes for these words; None if there are none, or they are not whole."""
        if self._folder is None:
            return None
        place = self._place(self._folder, of)
        try:
            data = place.read_bytes()
            os.utime(place)
        except OSError:
            return None
        return data[32:] if hashlib.sha256(data[32:]).digest() == data[:32] else None

    def keep_data(self, data: bytes, *of: object) -> None:
        """Keep bytes for these words, with a sum by which it is seen whether they are whole."""
        if self._folder is None:
            return
        place = self._place(self._folder, of)
        beside = place.with_suffix(f".{os.getpid()}.part")
        try:
            self._sweep(self._folder)
            beside.write_bytes(hashlib.sha256(data).digest() + data)
            os.replace(beside, place)
        except OSError:
            with contextlib.suppress(OSError):
                beside.unlink()

    def _place(self, folder: Path, of: tuple[object, ...]) -> Path:
        return folder / hashlib.sha256(repr((self._stamp, of)).encode()).hexdigest()[:40]

    def _sweep(self, folder: Path) -> None:
        """Remove what has not been used for long, once a build that adds something."""
        if self._swept:
            return
        self._swept = True
        limit = time.time() - _UNUSED
        for entry in os.scandir(folder):
            with contextlib.suppress(OSError):
                if entry.is_file(follow_symlinks=False) and entry.stat().st_mtime < limit:
                    os.unlink(entry.path)


def _tupled(value: Any) -> Any:
    return tuple(map(_tupled, value)) if isinstance(value, list) else value
