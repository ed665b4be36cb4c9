"""Where the YAML library stopped, and what becomes of it: a slip in plain words, and edits that let reading go on.

Lines and columns count from 0 here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from packgen.reading.messages import Message


@dataclass(frozen=True, slots=True)
class Edit:
    """Put `new` in the place of what stands from `start` to `end` of a line."""

    line: int
    start: int
    end: int
    new: str


@dataclass(frozen=True, slots=True)
class Slip:
    """What is wrong, where, and the edits after which reading can go on. `gap` is True if they leave something out."""

    message: Message
    line: int
    column: int
    words: Mapping[str, object] = field(default_factory=dict)
    edits: tuple[Edit, ...] = ()
    gap: bool = False


@dataclass(frozen=True, slots=True)
class Stop:
    """Where the library stopped, and why, beside the lines of the file."""

    lines: list[str]
    problem: str
    line: int
    column: int
    from_line: int
    from_column: int

    @property
    def text(self) -> str:
        return self.lines[self.line]

    @property
    def letter(self) -> str:
        return self.text[self.column : self.column + 1]

    @property
    def before(self) -> str:
        return self.text[: self.column]


def indent_of(line: str) -> int:
    """The number of spaces a line begins with."""
    return len(line) - len(line.lstrip(" "))


def text_column(line: str) -> int:
    """The column where the text of a line begins, after its spaces and dashes."""
    return len(line) - len(line.lstrip(" -"))
