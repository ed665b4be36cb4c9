"""OBJ and OFF files read as text: corners and faces, nothing else. No unit is in such a file.

OBJ as in the Wavefront description (v and f lines, 1-based or negative numbers); OFF as in the Geomview manual
(counts, then corners, then faces, 0-based). Lines that say how a thing looks are passed over.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from packgen.nets.errors import NetError
from packgen.nets.vectors import Vector

MOST_FACES = 400
"""More faces than anyone would cut out and glue."""


@dataclass(frozen=True, slots=True)
class RawMesh:
    """What a file says: corners, faces as loops of corner numbers from 0, each face's group name and line number."""

    vertices: tuple[Vector, ...]
    loops: tuple[tuple[int, ...], ...]
    groups: tuple[str, ...]
    lines: tuple[int, ...]


def read_mesh(text: str, kind: str = "") -> RawMesh:
    """The corners and faces of an OBJ or OFF file. Raises NetError, naming the line, for what cannot be read."""
    first = next((line.split("#")[0].strip() for line in text.splitlines() if line.split("#")[0].strip()), "")
    if not first:
        raise NetError("The mesh file is empty.", "Give an OBJ or OFF file with corners and faces.")
    is_off = kind == "off" or (not kind and first.split()[0].upper().endswith("OFF"))
    raw = _read_off(text) if is_off else _read_obj(text)
    if len(raw.loops) < 4:
        raise NetError(
            f"The mesh has {len(raw.loops)} faces; a solid has at least 4.",
            "Give a closed solid as an OBJ or OFF file.",
        )
    if len(raw.loops) > 4 * MOST_FACES:
        raise NetError(
            f"The mesh has {len(raw.loops)} faces, too many to cut out.", f"Simplify it to {MOST_FACES} faces or fewer."
        )
    return raw


def _number(word: str, line: int) -> float:
    try:
        value = float(word)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        raise NetError(f"Line {line} of the mesh file has '{word}' where a number should be.", "Mend that line.")
    return value


def _whole(word: str, line: int) -> int:
    try:
        return int(word)
    except ValueError:
        raise NetError(
            f"Line {line} of the mesh file has '{word}' where a corner's number should be.", "Mend that line."
        ) from None


def _corner(number: int, count: int, line: int) -> int:
    if not 0 <= number < count:
        raise NetError(
            f"Line {line} of the mesh file names a corner that is not there (the file has {count}).", "Mend that line."
        )
    return number


def _read_obj(text: str) -> RawMesh:
    vertices: list[Vector] = []
    loops: list[tuple[int, ...]] = []
    groups: list[str] = []
    lines: list[int] = []
    group, kept = "", ""
    for number, line in enumerate(text.splitlines(), 1):
        line = kept + line.split("#")[0]
        if line.rstrip().endswith("\\"):
            kept = line.rstrip()[:-1] + " "
            continue
        kept = ""
        words = line.split()
        if not words:
            continue
        if words[0] == "v":
            if len(words) < 4:
                raise NetError(f"Line {number} of the mesh file: a corner needs three numbers.", "Mend that line.")
            vertices.append((_number(words[1], number), _number(words[2], number), _number(words[3], number)))
        elif words[0] == "f":
            loop = []
            for word in words[1:]:
                index = _whole(word.split("/")[0], number)
                loop.append(_corner(index - 1 if index > 0 else len(vertices) + index, len(vertices), number))
            loops.append(tuple(loop))
            groups.append(group)
            lines.append(number)
        elif words[0] in ("g", "o"):
            group = " ".join(words[1:]).replace("_", " ").lower()
            group = "" if group in ("default", "off") else group
    return RawMesh(tuple(vertices), tuple(loops), tuple(groups), tuple(lines))


def _read_off(text: str) -> RawMesh:
    rows = [(n, line.split("#")[0].split()) for n, line in enumerate(text.splitlines(), 1)]
    rows = [(n, words) for n, words in rows if words]
    if rows[0][1][0].upper().endswith("OFF"):
        rows[0] = (rows[0][0], rows[0][1][1:])
        rows = rows if rows[0][1] else rows[1:]
    if not rows or len(rows[0][1]) < 2:
        raise NetError("The OFF file does not say how many corners and faces it has.", "Add that line after OFF.")
    number, words = rows[0]
    count, faces = _whole(words[0], number), _whole(words[1], number)
    if count < 0 or faces < 0 or len(rows) < 1 + count + faces:
        raise NetError(
            f"The OFF file promises {count} corners and {faces} faces but ends before that.", "Mend the counts."
        )
    vertices = []
    for number, words in rows[1 : 1 + count]:
        if len(words) < 3:
            raise NetError(f"Line {number} of the mesh file: a corner needs three numbers.", "Mend that line.")
        vertices.append((_number(words[0], number), _number(words[1], number), _number(words[2], number)))
    loops, lines = [], []
    for number, words in rows[1 + count : 1 + count + faces]:
        size = _whole(words[0], number)
        if len(words) < 1 + size:
            raise NetError(f"Line {number} of the mesh file lists fewer corners than it says.", "Mend that line.")
        loops.append(tuple(_corner(_whole(w, number), count, number) for w in words[1 : 1 + size]))
        lines.append(number)
    return RawMesh(tuple(vertices), tuple(loops), ("",) * len(loops), tuple(lines))
