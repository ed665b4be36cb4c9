"""Marks: what a finished page is made of. Frozen values at fixed places; drawing decides nothing.

Lengths are mm, y upwards from the lower left corner of the page; angles in degrees, anticlockwise. Ink is a grey
(0 black, 1 white) or an RGB triple of 0..1.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

Ink = float | tuple[float, float, float]
Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line's width, ink and dashes (on, off, ... in mm). `cap` and `join`: 0 butt/mitre, 1 round."""

    width: float
    ink: Ink = 0.0
    dash: tuple[float, ...] = ()
    cap: int = 0
    join: int = 1


@dataclass(frozen=True, slots=True)
class Text:
    """A run of letters in one face, from its baseline's left end. `size` is the em in mm; `role` its purpose."""

    x: float
    y: float
    text: str
    face: str
    size: float
    ink: Ink = 0.0
    angle: float = 0.0
    role: str = "text"


@dataclass(frozen=True, slots=True)
class Line:
    x1: float
    y1: float
    x2: float
    y2: float
    stroke: Stroke
    role: str = ""


@dataclass(frozen=True, slots=True)
class Path_:
    """A shape of steps: ("m", x, y), ("l", x, y), ("c", x1, y1, x2, y2, x, y) and ("z",). Fill rule is even-odd."""

    steps: tuple[tuple[str | float, ...], ...]
    stroke: Stroke | None = None
    fill: Ink | None = None
    role: str = ""


@dataclass(frozen=True, slots=True)
class Picture:
    """A raster picture filling a rectangle. `source` is a prepared picture file (upright, right colours).

    `words` say what it shows, for readers that speak.
    """

    x: float
    y: float
    width: float
    height: float
    source: Path
    role: str = "picture"
    words: str = ""


@dataclass(frozen=True, slots=True)
class Link:
    """A rectangle that opens a web address when the file is read on a screen."""

    x: float
    y: float
    width: float
    height: float
    url: str


@dataclass(frozen=True, slots=True)
class Group:
    """Marks moved by (a, b, c, d, e, f): x' = a x + c y + e, y' = b x + d y + f; shown only inside `clip` if given.

    `clip` is a polygon in the group's own coordinates.
    """

    marks: tuple[Mark, ...]
    matrix: tuple[float, float, float, float, float, float] = (1, 0, 0, 1, 0, 0)
    clip: tuple[Point, ...] = ()


Mark = Text | Line | Path_ | Picture | Link | Group


@dataclass(frozen=True, slots=True)
class Page:
    """One laid-out face of paper: its size in mm and its marks."""

    width: float
    height: float
    marks: tuple[Mark, ...]
    title: str = ""
