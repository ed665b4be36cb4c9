"""The keys of what the children's trials gave: in the family file itself, or in a file of its own that it names."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from packgen.faults import Said
from packgen.reading import messages
from packgen.reading.dates import read_day
from packgen.reading.fields import Defs, Key, Many, Notes, One, Record, Schema, making
from packgen.reading.models import ChildResults, RowTried
from packgen.reading.names import snippet, unquoted
from packgen.reading.values import name
from packgen.reading.yaml_tree import Leaf, Listing, Mapping, Node, read_tree

LEAST = "    results:\n      - {challenge: A wheel, child: Juno, trials: {6: [7.1, 7.4, -]}}"
MAX_RESULTS = 2000
MAX_ROWS = 60
MAX_TRIED = 60
_MISSED = {"", "-", "–", "—", "−", "x", "/", "missed", "missing", "none", "nothing", "no", "n/a", "na"}
_SCALAR: Schema = {"type": ["string", "number", "null"]}


@dataclass(frozen=True, slots=True)
class Trials:
    """Rows of a trial table with the numbers as the children wrote them: `{120 mm: [1.4, 1.5 s, -]}`."""

    def read(self, node: Node, notes: Notes) -> tuple[RowTried, ...] | None:
        """The rows; None if there are none."""
        if not isinstance(node, Mapping):
            notes.add(messages.ROWS_WANTED, node.at)
            return None
        if len(node.pairs) > MAX_ROWS:
            notes.add(messages.TOO_MANY, node.pairs[MAX_ROWS][0].at, count=len(node.pairs), most=MAX_ROWS)
        return tuple(RowTried(label, _tried(value, notes), label.at) for label, value in node.pairs[:MAX_ROWS])

    def schema(self, defs: Defs) -> Schema:
        """Any rows, each with a number or a list of them."""
        one: Schema = {"anyOf": [_SCALAR, {"type": "array", "items": _SCALAR, "maxItems": MAX_TRIED}]}
        return {"type": "object", "additionalProperties": one, "maxProperties": MAX_ROWS}


def _tried(node: Node, notes: Notes) -> tuple[Said, ...]:
    """The numbers of a row as written; empty for a trial that was missed."""
    items = node.items if isinstance(node, Listing) else (node,)
    if len(items) > MAX_TRIED:
        notes.add(messages.TOO_MANY, items[MAX_TRIED].at, count=len(items), most=MAX_TRIED)
    found: list[Said] = []
    for item in items[:MAX_TRIED]:
        if not isinstance(item, Leaf):
            notes.add(messages.ROWS_WANTED, item.at)
        elif item.is_nothing:
            found += [Said("", item.at)] if isinstance(node, Listing) else []
        else:
            found += _numbers(item.text)
    return tuple(found)


def _numbers(said: Said) -> list[Said]:
    """One number, or several in one text: `1.4, 1.5, -`; a comma between two digits is a decimal comma."""
    parts = [part.strip() for part in re.split(r"[;|]|,\s", said)]
    if len(parts) == 1:
        parts = said.split() or [""]
    if not all(_is_missed(part) or (part[0].isdecimal() and len(part.split()) <= 2) for part in parts):
        parts = [said]
    return [Said("" if _is_missed(part) else snippet(part, 40), said.at) for part in parts]


def _is_missed(text: str) -> bool:
    return text.casefold() in _MISSED


def _day() -> One[date]:
    return One("a day", lambda said, notes: read_day(said), {"type": "string"})


RESULT: Record[ChildResults] = Record(
    "a result",
    "What one child's trials of one challenge gave.",
    (
        Key("challenge", name(), "The challenge's title, as in the study.", "A wheel the stream can turn", True),
        Key("child", name(), "The child's name, as in the family file.", "Juno", required=True),
        Key(
            "trials",
            Trials(),
            "For each row of the table the numbers as written down, with - for a trial that was missed.",
            {"3": [9.8, "10.2 s", "-"], "6": [7.1, 7.4, 7.0]},
            required=True,
            aliases=("numbers", "rows"),
        ),
        Key("study", name(120), "The study, if two have a challenge of this title.", "Isaure Quenby"),
        Key("done", _day(), "The day it was tried, for the record.", "2027-02-24", aliases=("date",)),
    ),
    making(ChildResults),
)


@dataclass(frozen=True, slots=True)
class Results:
    """The results themselves, or the name of a file beside the family file that holds them under `results`."""

    def read(self, node: Node, notes: Notes) -> tuple[ChildResults, ...]:
        """The results that could be read."""
        if not isinstance(node, Leaf):
            return Many(RESULT, MAX_RESULTS).read(node, notes)
        path = _file(node.text, notes.folder)
        if path is None:
            notes.add(messages.RESULTS_MISSING, node.at, text=snippet(node.text))
            return ()
        tree = read_tree(path, LEAST)
        notes.faults += tree.faults
        if not isinstance(tree.root, Mapping):
            return ()
        return RESULTS.read(tree.root, notes) or ()

    def schema(self, defs: Defs) -> Schema:
        """A list of results, or a path."""
        held = Many(RESULT, MAX_RESULTS).schema(defs)
        return {"anyOf": [{"type": "string"}, *held["anyOf"]]}


def _file(said: Said, folder: Path) -> Path | None:
    """The file of that name in the family's folder or anywhere on the disk, or None."""
    try:
        path = folder / Path(unquoted(said)).expanduser()
        return path if path.is_file() else None
    except (OSError, RuntimeError, ValueError):
        return None


def _held(values: dict[str, Any], notes: Notes) -> tuple[ChildResults, ...]:
    held: tuple[ChildResults, ...] = values["results"]
    return held


RESULTS: Record[tuple[ChildResults, ...]] = Record(
    "the results",
    "What the children's trials gave, in a file of its own that the family file names.",
    (
        Key(
            "results",
            Many(RESULT, MAX_RESULTS),
            "A result for each child and challenge.",
            [{"challenge": "A wheel", "child": "Juno", "trials": {"6": [7.1, 7.4, "-"]}}],
            required=True,
        ),
    ),
    _held,
)
