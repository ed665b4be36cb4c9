"""Files for the tests of the readers: written into a folder, read, and compared with the table of messages."""

from __future__ import annotations

import re
import string
from pathlib import Path

from packgen.faults import Fault
from packgen.reading import messages
from packgen.reading.family import read_family
from packgen.reading.messages import Message
from packgen.reading.recipe import read_recipe
from packgen.reading.study import read_study

PACKS = ("first", "younger", "older", "upper", "parent")
SHEETS = ("biography", "challenge", "enlarging-grid", "model", "telling", "timeline")
STUDY = "study: Isaure Quenby\nkind: inventor\nin_short: Lamp-maker who measured the tides.\n"
FAMILY = "family: Ferrar\n"
CHILD = FAMILY + "children: [{name: Juno, age: 11}]\n"
RECIPE = "pack: recipe\nlevel: older\nsheets: [biography]\n"


def all_messages() -> dict[str, Message]:
    """The table of messages by their names in the module."""
    return {name: value for name, value in vars(messages).items() if isinstance(value, Message)}


def is_case_of(fault: Fault, message: Message) -> bool:
    """True if the fault's words are those of the message, with anything in its braces."""
    return all(
        re.fullmatch(_pattern(template), text, re.DOTALL)
        for template, text in ((message.text, fault.message), (message.instead, fault.instead))
    )


def _pattern(template: str) -> str:
    parts = string.Formatter().parse(template)
    return "".join(re.escape(literal) + (".*" if field is not None else "") for literal, field, _, _ in parts)


def read_text(folder: Path, kind: str, text: str | bytes) -> tuple[object, tuple[Fault, ...]]:
    """What the reader of a kind of file makes of a text, in a folder with one picture."""
    (folder / "pictures").mkdir(exist_ok=True)
    (folder / "pictures" / "harbour.png").write_bytes(b"\x89PNG")
    path = folder / f"{kind}.yaml"
    path.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
    return read_path(path, kind)


def read_path(path: Path, kind: str) -> tuple[object, tuple[Fault, ...]]:
    """What the reader of a kind of file makes of the file at a path."""
    if kind == "family":
        return read_family(path, PACKS, SHEETS)
    return read_recipe(path, SHEETS) if kind == "recipe" else read_study(path)
