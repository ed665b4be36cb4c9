"""A second reader of finished PDFs: what stands on each page, in mm from its lower left corner, y upwards.

Text is read with pdfium, lines and boxes with pdfminer: neither shares anything with the library that wrote them.
"""

from __future__ import annotations

import ctypes
import io
import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
import pdfplumber
import pypdfium2
import pypdfium2.raw as raw

MM = 72 / 25.4
Box = tuple[float, float, float, float]
Point = tuple[float, float]


@dataclass(frozen=True)
class Run:
    """A run of letters set in one go: where its baseline begins, its em in pt, its ink, and the box of each letter."""

    text: str
    x: float
    y: float
    size_pt: float
    ink: tuple[float, float, float]
    angle: float
    boxes: tuple[Box, ...]

    @property
    def box(self) -> Box:
        return around(self.boxes)


@dataclass(frozen=True)
class Stroke:
    """A straight line: its ends, width, ink and dashes (mm)."""

    x1: float
    y1: float
    x2: float
    y2: float
    width: float
    ink: object
    dash: tuple[float, ...]

    @property
    def length(self) -> float:
        return math.hypot(self.x2 - self.x1, self.y2 - self.y1)

    @property
    def level(self) -> bool:
        return abs(self.y2 - self.y1) < 1e-3

    @property
    def upright(self) -> bool:
        return abs(self.x2 - self.x1) < 1e-3


@dataclass(frozen=True)
class Shape:
    """A path of several corners or curves: its pieces (each a line of points, curves flattened), its box, and how it
    is drawn. `width` is 0 if it has no line."""

    pieces: tuple[tuple[Point, ...], ...]
    box: Box
    width: float
    ink: object
    fill: object
    dash: tuple[float, ...]
    rectangle: bool

    @property
    def wide(self) -> float:
        return self.box[2] - self.box[0]

    @property
    def high(self) -> float:
        return self.box[3] - self.box[1]


class PaperPage:
    """One page of a finished file."""

    def __init__(self, file: PaperFile, index: int) -> None:
        self.file, self.index = file, index
        self.width, self.height = (side / MM for side in file.pdfium[index].get_size())

    def __repr__(self) -> str:
        return f"{self.file.path.parent.name}/{self.file.path.name} page {self.index + 1}"

    @cached_property
    def runs(self) -> tuple[Run, ...]:
        """All runs of letters in the order they are read.

        pdfium puts runs on one line in order from the page's left to its right, so a page whose letters all stand on
        their heads, as the backs for a printer that flips on the short edge do, is turned for the reading. Places stay
        those on the page as it lies.
        """
        page = self.file.pdfium[self.index]
        found = tuple(_runs(page))
        if found and all(round(run.angle) % 360 == 180 for run in found):
            page.set_rotation(180)
            found = tuple(_runs(page))
            page.set_rotation(0)
        return found

    @cached_property
    def text(self) -> str:
        """All letters of the page in the order they are read, without any white space."""
        return "".join("".join(run.text.split()) for run in self.runs)

    @cached_property
    def _drawn(self) -> dict[str, list[dict[str, Any]]]:
        page = self.file.plumber.pages[self.index]
        found = {"line": page.lines, "rect": page.rects, "curve": page.curves, "image": page.images}
        page.close()
        return found

    @cached_property
    def strokes(self) -> tuple[Stroke, ...]:
        """All straight lines that are drawn singly."""
        return tuple(
            Stroke(
                *_point(line["pts"][0], self.height), *_point(line["pts"][1], self.height), line["linewidth"] / MM,
                _ink(line["stroking_color"]), _dash(line),
            ) for line in self._drawn["line"] if line["stroke"]
        )  # fmt: skip

    @cached_property
    def shapes(self) -> tuple[Shape, ...]:
        """All boxes, polygons and curves."""
        return tuple(_shape(d, self.height, kind == "rect") for kind in ("rect", "curve") for d in self._drawn[kind])

    @cached_property
    def edges(self) -> tuple[Stroke, ...]:
        """All straight lines, those of boxes and polygons with a line included."""
        sides = list(self.strokes)
        for shape in self.shapes:
            if not shape.width:
                continue
            for piece in shape.pieces:
                for (x1, y1), (x2, y2) in pairwise(piece):
                    sides.append(Stroke(x1, y1, x2, y2, shape.width, shape.ink, shape.dash))
        return tuple(sides)

    @cached_property
    def images(self) -> tuple[Box, ...]:
        """The boxes of all pictures of pixels."""
        found = []
        for image in self._drawn["image"]:
            found.append((image["x0"] / MM, self.height - image["bottom"] / MM,
                          image["x1"] / MM, self.height - image["top"] / MM))  # fmt: skip
        return tuple(found)

    def greys(self, dpi: float) -> np.ndarray[Any, np.dtype[np.uint8]]:
        """The page as pixels, 0 black to 255 white, the first row at the top."""
        return self.file.pdfium[self.index].render(scale=dpi / 72, grayscale=True).to_numpy().reshape(
            round(self.height * MM * dpi / 72 + 0.4999), -1
        )  # fmt: skip

    def colours(self, dpi: float) -> np.ndarray[Any, np.dtype[np.uint8]]:
        """The page as pixels of blue, green and red."""
        return self.file.pdfium[self.index].render(scale=dpi / 72).to_numpy()


class PaperFile:
    """A finished file, its pages read when they are asked for."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self._data = path.read_bytes()
        self.pdfium = pypdfium2.PdfDocument(self._data)
        self.pages = [PaperPage(self, index) for index in range(len(self.pdfium))]

    @cached_property
    def plumber(self) -> pdfplumber.PDF:
        return pdfplumber.open(io.BytesIO(self._data))


def around(boxes: tuple[Box, ...]) -> Box:
    """The smallest box round some boxes."""
    return (min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes))


def shared(a: Box, b: Box) -> tuple[float, float]:
    """How wide and how high the part is that two boxes share; negative where they are apart."""
    return min(a[2], b[2]) - max(a[0], b[0]), min(a[3], b[3]) - max(a[1], b[1])


def contrast(ink: tuple[float, float, float], paper: float = 1.0) -> float:
    """The contrast of an ink with a paper's grey (WCAG 2.1, definitions of relative luminance and contrast ratio)."""

    def light(colour: tuple[float, float, float]) -> float:
        red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in colour)
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue

    one, other = sorted((light(ink), light((paper,) * 3)))
    return (other + 0.05) / (one + 0.05)


def _runs(page: pypdfium2.PdfPage) -> Iterator[Run]:
    text = page.get_textpage()
    now, kept = None, None
    letters: list[str] = []
    boxes: list[Box] = []
    for index in range(text.count_chars()):
        held = raw.FPDFText_GetTextObject(text, index)
        at = ctypes.addressof(held.contents) if held else None
        if at is None or raw.FPDFText_IsGenerated(text, index) == 1:
            continue
        if at != now and letters:
            yield _run(letters, boxes, kept)
            letters, boxes = [], []
        now, kept = at, held
        # pdfium marks a hyphen at the end of a line, which may be a soft one, by a sign of its own.
        letter = "-" if raw.FPDFText_IsHyphen(text, index) == 1 else chr(raw.FPDFText_GetUnicode(text, index))
        letters.append(letter)
        if letter.strip():
            left, bottom, right, top = text.get_charbox(index)
            boxes.append((left / MM, bottom / MM, right / MM, top / MM))
    if letters:
        yield _run(letters, boxes, kept)
    text.close()


def _run(letters: list[str], boxes: list[Box], held: Any) -> Run:
    matrix, size = raw.FS_MATRIX(), ctypes.c_float()
    raw.FPDFPageObj_GetMatrix(held, matrix)
    raw.FPDFTextObj_GetFontSize(held, size)
    red, green, blue, alpha = (ctypes.c_uint() for _ in range(4))
    raw.FPDFPageObj_GetFillColor(held, red, green, blue, alpha)
    ink = (red.value / 255, green.value / 255, blue.value / 255)
    high = math.hypot(matrix.c, matrix.d)
    angle = math.degrees(math.atan2(matrix.b, matrix.a))
    shown = tuple(boxes) or ((matrix.e / MM, matrix.f / MM, matrix.e / MM, matrix.f / MM),)
    return Run("".join(letters), matrix.e / MM, matrix.f / MM, size.value * high, ink, angle, shown)


def _point(point: tuple[float, float], height: float) -> tuple[float, float]:
    return point[0] / MM, height - point[1] / MM


def _ink(colour: Any) -> object:
    if isinstance(colour, (tuple, list)):
        return colour[0] if len(colour) == 1 else tuple(colour)
    return colour


def _dash(drawn: dict[str, Any]) -> tuple[float, ...]:
    return tuple(part / MM for part in drawn["dash"][0]) if drawn.get("dash") else ()


def _shape(drawn: dict[str, Any], height: float, rectangle: bool) -> Shape:
    box = (drawn["x0"] / MM, height - drawn["bottom"] / MM, drawn["x1"] / MM, height - drawn["top"] / MM)
    width = drawn["linewidth"] / MM if drawn["stroke"] else 0.0
    fill = _ink(drawn["non_stroking_color"]) if drawn["fill"] else None
    pieces = tuple(tuple(piece) for piece in _pieces(drawn["path"], height))
    return Shape(pieces, box, width, _ink(drawn["stroking_color"]), fill, _dash(drawn), rectangle)


def _pieces(path: list[Any], height: float) -> list[list[Point]]:
    """A path as lines of points; a curve is ten straight steps."""
    pieces: list[list[Point]] = []
    for kind, *at in path:
        points = [_point(p, height) for p in at]
        if kind == "m":
            pieces.append(points)
        elif kind == "l":
            pieces[-1] += points
        elif kind == "h":
            pieces[-1].append(pieces[-1][0])
        else:
            start = pieces[-1][-1]
            a, b, c = points if kind == "c" else (start, *points) if kind == "v" else (points[0], points[1], points[1])
            for step in range(1, 11):
                t = step / 10
                weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
                xs, ys = zip(start, a, b, c, strict=True)
                pieces[-1].append((sum(w * x for w, x in zip(weights, xs, strict=True)),
                                   sum(w * y for w, y in zip(weights, ys, strict=True))))  # fmt: skip
    return pieces
