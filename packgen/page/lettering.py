"""Whether everything a parent wrote can be set: every letter in some face, no script that runs from right to left."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass

from packgen.faults import Fault, Said
from packgen.page.type import Faces, is_right_to_left, script_names

_FACES = ("early", "text", "display")


def all_said(value: object) -> Iterator[Said]:
    """Every text in a study or family, whatever record it is in."""
    if isinstance(value, Said):
        yield value
    elif isinstance(value, tuple):
        for part in value:
            yield from all_said(part)
    elif is_dataclass(value) and not isinstance(value, type):
        for field in fields(value):
            yield from all_said(getattr(value, field.name))


def letter_faults(faces: Faces, *values: object) -> tuple[Fault, ...]:
    """A fault for each text that cannot be set, with its place and the letters or script in question."""
    faults: list[Fault] = []
    for text in (said for value in values for said in all_said(value)):
        if text.isascii():
            continue
        if is_right_to_left(text):
            faults.append(Fault(
                text.at, f'"{_short(text)}" is written from right to left, which packgen cannot set yet.',
                "Write it in letters that run from left to right, for instance as it is said in English.",
            ))  # fmt: skip
            continue
        missing = tuple(dict.fromkeys(c for face in _FACES for c in faces.missing(text, face) if c.isprintable()))
        if missing:
            scripts = ", ".join(script_names(missing)[:3])
            faults.append(Fault(
                text.at, f'No face has the letters {" ".join(missing[:12])} ({scripts}) of "{_short(text)}".',
                "Spell it another way, or give a TrueType font that has them under `fonts:` in the family file.",
            ))  # fmt: skip
    return tuple(faults)


def _short(text: str) -> str:
    return text if len(text) <= 40 else text[:39] + "…"
