"""Bytes of the parent's file -> text: encodings, control characters, and files that are no text at all."""

from __future__ import annotations

import codecs
import re
from pathlib import Path

from packgen.faults import Fault, Place, nearest
from packgen.reading import messages
from packgen.reading.names import snippet

MAX_BYTES = 2_000_000
_MAX_CONTROLS = 20
_OTHER_KINDS = (
    (b"PK\x03\x04", "word processor's file or an archive"),
    (b"\xd0\xcf\x11\xe0", "word processor's file"),
    (b"{\\rtf", "word processor's file"),
    (b"%PDF", "PDF"),
    (b"\x89PNG", "picture"),
    (b"\xff\xd8\xff", "picture"),
    (b"GIF8", "picture"),
)
# YAML 1.2.2, section 5.1: the characters a file may hold; unpaired surrogates are never among them.
_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufdd0-\ufdef\ufffe\uffff]")


def read_text(path: Path) -> tuple[str | None, tuple[Fault, ...]]:
    """The text of a file with line ends as \\n, and what is wrong with it; None if it cannot be read at all."""
    at = Place(str(path))
    try:
        if path.is_dir():
            return None, (messages.NOT_A_FILE.fault(at, name=path.name or "."),)
        with path.open("rb") as file:
            data = file.read(MAX_BYTES + 1)
    except (FileNotFoundError, NotADirectoryError, ValueError):
        return None, (messages.NO_FILE.fault(at, hint=_like(path)),)
    except OSError as error:
        return None, (messages.CANNOT_OPEN.fault(at, reason=error.strerror or type(error).__name__),)
    return decode(data, str(path))


def decode(data: bytes, file: str) -> tuple[str | None, tuple[Fault, ...]]:
    """The text of a file's bytes: UTF-8 with or without a mark, or UTF-16; None if they are neither."""
    at = Place(file)
    if len(data) > MAX_BYTES:
        return None, (messages.TOO_LARGE.fault(at, most=MAX_BYTES // 1_000_000),)
    for start, what in _OTHER_KINDS:
        if data.startswith(start):
            return None, (messages.NOT_TEXT.fault(at, what=what),)
    encoding = _encoding(data)
    try:
        text = data.decode(encoding)
    except UnicodeDecodeError as error:
        return None, (_not_utf8(data, error, file),)
    return clean(text.removeprefix("\ufeff"), file)


def clean(text: str, file: str) -> tuple[str, tuple[Fault, ...]]:
    """The text with line ends as \\n; each character no page can show becomes a space and a fault."""
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    for separator in ("\x85", "\u2028", "\u2029", "\ufeff"):
        text = text.replace(separator, " ")
    faults: list[Fault] = []
    for found in _CONTROL.finditer(text):
        if len(faults) < _MAX_CONTROLS:
            line = text.count("\n", 0, found.start()) + 1
            column = found.start() - text.rfind("\n", 0, found.start())
            faults.append(messages.CONTROL.fault(Place(file, line, column), code=f"U+{ord(found.group()):04X}"))
    return _CONTROL.sub(" ", text), tuple(faults)


def _encoding(data: bytes) -> str:
    """UTF-16 and UTF-32 by their mark or by the zero bytes beside plain letters, as YAML 1.2.2 section 5.2 does."""
    if data.startswith((codecs.BOM_UTF32_LE, codecs.BOM_UTF32_BE)):
        return "utf-32"
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return "utf-16"
    if len(data) >= 4 and len(data) % 2 == 0:
        if data[1] == 0 and data[0]:
            return "utf-16-le"
        if data[0] == 0 and data[1]:
            return "utf-16-be"
    return "utf-8-sig"


def _not_utf8(data: bytes, error: UnicodeDecodeError, file: str) -> Fault:
    if error.encoding.startswith("utf-16") or error.encoding.startswith("utf-32"):
        return messages.NOT_UTF8.fault(Place(file), guess="")
    start = data.rfind(b"\n", 0, error.start) + 1
    line = data.count(b"\n", 0, error.start) + 1
    column = len(data[start : error.start].decode("utf-8", "replace")) + 1
    word = re.search(rb"\S*$", data[start : error.start])
    head = word.group() if word else b""
    tail = re.match(rb"\S*", data[error.start :])
    guess = snippet(_CONTROL.sub("", (head + (tail.group() if tail else b"")).decode("cp1252", "replace")), 30)
    return messages.NOT_UTF8.fault(Place(file, line, column), guess=f" (in the word `{guess}`?)")


def _like(path: Path) -> str:
    """A hint at a file of the same folder with a name like this one."""
    try:
        names = [entry.name for entry in path.parent.iterdir()]
    except (OSError, ValueError):
        return ""
    found = nearest(path.name, names)
    return f" Is {path.parent / found} meant?" if found else ""
