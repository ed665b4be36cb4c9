"""Faults as data: what is wrong, where it stands, and what to write instead.

Readers and sheets return faults beside their values and carry on past the first one, so that a parent sees all of
them at once. The two exceptions carry their exit code; only the command line turns them into words on a terminal.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum


class Severity(StrEnum):
    """A fault stops the build; a warning is told and the pages still build."""

    FAULT = "fault"
    WARNING = "warning"


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """Where something stands in a file of the parent's: line and column count from 1; 0 means the whole file."""

    file: str
    line: int = 0
    column: int = 0

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}" if self.line else self.file


NOWHERE = Place("")


class Said(str):
    """A text that knows where the parent wrote it. Behaves as plain text everywhere else."""

    at: Place

    def __new__(cls, text: str, at: Place = NOWHERE) -> Said:
        said = super().__new__(cls, text)
        said.at = at
        return said


def place_of(value: object) -> Place:
    """The place a value was written at, or NOWHERE if it does not know."""
    at = getattr(value, "at", NOWHERE)
    return at if isinstance(at, Place) else NOWHERE


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong: a sentence in plain words, and what to write instead."""

    place: Place
    message: str
    instead: str
    severity: Severity = Severity.FAULT

    def __str__(self) -> str:
        where = f"{self.place}: " if self.place != NOWHERE else ""
        instead = f"\n    {self.instead}" if self.instead else ""
        return f"{where}{self.severity}: {self.message}{instead}"


def warning(place: Place, message: str, instead: str = "") -> Fault:
    """A fault that is told but does not stop the build."""
    return Fault(place, message, instead, Severity.WARNING)


def in_order(faults: Iterable[Fault]) -> tuple[Fault, ...]:
    """Faults by file, line and column, each only once."""
    return tuple(sorted(dict.fromkeys(faults), key=lambda f: (f.place, f.severity, f.message)))


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word most like the given one, or None if none is near."""
    found = difflib.get_close_matches(word.lower(), list(known), n=1, cutoff=0.6)
    return found[0] if found else None


class PackgenError(Exception):
    """What packgen tells a parent. `exit_code` is 1 for a failure on the way, 2 for wrong input."""

    exit_code = 1


class InputFaults(PackgenError):
    """The input is wrong: carries every fault found (exit code 2)."""

    exit_code = 2

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = in_order(faults)
        super().__init__("\n".join(str(f) for f in self.faults))


class WorkFailed(PackgenError):
    """Something failed on the way: a full disk, a folder that cannot be written, an unreadable file (exit code 1)."""
