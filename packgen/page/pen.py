"""The pen: collects marks. Its words are those of drawing (line, box, ring, curve); it knows no sheets."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from pathlib import Path

from packgen.page.look import BLACK, THIN
from packgen.page.marks import Group, Ink, Line, Link, Mark, Path_, Picture, Point, Stroke, Text
from packgen.page.text import Style
from packgen.page.type import Faces

# Four cubic curves this far along their tangents are a circle to 0.03 % (the usual constant, 4/3 (sqrt 2 - 1)).
_ROUND = 4 / 3 * (math.sqrt(2) - 1)


class Pen:
    """Collects marks in mm, y upwards. `faces` measures and picks the face for each letter."""

    def __init__(self, faces: Faces) -> None:
        self.faces = faces
        self.marks: list[Mark] = []
        self.lost: list[str] = []

    # Text

    def text(self, x: float, y: float, text: str, style: Style, *, align: str = "left", role: str = "text",
             angle: float = 0.0) -> float:  # fmt: skip
        """Set one line of text with its baseline at y; returns its width in mm.

        `align` is "left", "centre" or "right" of x. Letters no face has are noted in `lost`, never left unsaid.
        """
        faces = self.faces
        wide = faces.width(text, style.face, style.size)
        self.lost.extend(faces.missing(text, style.face) if not faces.covers(text, style.face) else ())
        back = {"left": 0.0, "centre": wide / 2, "right": wide}[align]
        cos, sin = math.cos(math.radians(angle)), math.sin(math.radians(angle))
        at_x, at_y = x - back * cos, y - back * sin
        for face, part in faces.runs(text, style.face):
            self.marks.append(Text(at_x, at_y, part, face, style.size, style.ink, angle, role))
            step = faces.width(part, face, style.size)
            at_x, at_y = at_x + step * cos, at_y + step * sin
        return wide

    def lines(self, x: float, top: float, lines: Sequence[str], style: Style, *, align: str = "left",
              width: float = 0.0, role: str = "text") -> float:  # fmt: skip
        """Set lines of text below `top`; returns the y under the last. With centre or right, `width` is the measure."""
        anchor = {"left": x, "centre": x + width / 2, "right": x + width}[align]
        y = top
        drop = self.drop(style)
        for line in lines:
            self.text(anchor, y - drop, line, style, align=align, role=role)
            y -= style.leading
        return y

    def drop(self, style: Style) -> float:
        """How far below the top of its leading a line's baseline lies, in mm."""
        metrics = self.faces.metrics(style.face)
        return (style.leading + (metrics.ascent - metrics.descent) * style.size) / 2

    # Lines and shapes

    def line(self, x1: float, y1: float, x2: float, y2: float, width: float = THIN, ink: Ink = BLACK,
             dash: tuple[float, ...] = (), cap: int = 0, role: str = "") -> None:  # fmt: skip
        """A straight line."""
        self.marks.append(Line(x1, y1, x2, y2, Stroke(width, ink, dash, cap), role))

    def path(self, steps: Iterable[tuple[str | float, ...]], stroke: Stroke | None = None, fill: Ink | None = None,
             role: str = "") -> None:  # fmt: skip
        """A shape of steps; see marks.Path_."""
        self.marks.append(Path_(tuple(steps), stroke, fill, role))

    def polygon(self, points: Sequence[Point], stroke: Stroke | None = None, fill: Ink | None = None, *,
                closed: bool = True, role: str = "") -> None:  # fmt: skip
        """A polygon, or an open line through the points."""
        (x0, y0), *rest = points
        steps: list[tuple[str | float, ...]] = [("m", x0, y0), *(("l", x, y) for x, y in rest)]
        self.path([*steps, ("z",)] if closed else steps, stroke, fill, role)

    def box(self, x: float, y: float, width: float, height: float, stroke: Stroke | None = None,
            fill: Ink | None = None, corner: float = 0.0, role: str = "box") -> None:  # fmt: skip
        """A rectangle from its lower left corner, with round corners if asked."""
        self.path(rounded(x, y, width, height, corner), stroke, fill, role)

    def ring(self, x: float, y: float, radius: float, stroke: Stroke | None = None, fill: Ink | None = None,
             role: str = "") -> None:  # fmt: skip
        """A circle round (x, y)."""
        self.path(rounded(x - radius, y - radius, 2 * radius, 2 * radius, radius), stroke, fill, role)

    def picture(self, x: float, y: float, width: float, height: float, source: Path, words: str = "") -> None:
        """A prepared picture filling a rectangle; `words` say what it shows."""
        self.marks.append(Picture(x, y, width, height, source, words=words))

    def link(self, x: float, y: float, width: float, height: float, url: str) -> None:
        """A rectangle that opens an address on a screen."""
        self.marks.append(Link(x, y, width, height, url))

    def group(self, marks: Sequence[Mark], matrix: tuple[float, float, float, float, float, float],
              clip: Sequence[Point] = ()) -> None:  # fmt: skip
        """Marks moved by a matrix, shown only inside a polygon if one is given."""
        self.marks.append(Group(tuple(marks), matrix, tuple(clip)))

    def arrow(self, x1: float, y1: float, x2: float, y2: float, width: float = THIN, ink: Ink = BLACK,
              head: float = 2.0) -> None:  # fmt: skip
        """A line with a solid head at its end."""
        angle = math.atan2(y2 - y1, x2 - x1)
        cos, sin = math.cos(angle), math.sin(angle)
        base_x, base_y = x2 - head * cos, y2 - head * sin
        self.line(x1, y1, base_x, base_y, width, ink)
        half = head * 0.38
        self.polygon(
            [(x2, y2), (base_x - half * sin, base_y + half * cos), (base_x + half * sin, base_y - half * cos)],
            fill=ink,
        )


def rounded(x: float, y: float, width: float, height: float, corner: float) -> tuple[tuple[str | float, ...], ...]:
    """The steps of a rectangle with round corners (a circle if the corner is half the side)."""
    right, top = x + width, y + height
    if corner <= 0:
        return (("m", x, y), ("l", right, y), ("l", right, top), ("l", x, top), ("z",))
    r = min(corner, width / 2, height / 2)
    k = r * (1 - _ROUND)
    return (
        ("m", x + r, y), ("l", right - r, y), ("c", right - k, y, right, y + k, right, y + r),
        ("l", right, top - r), ("c", right, top - k, right - k, top, right - r, top),
        ("l", x + r, top), ("c", x + k, top, x, top - k, x, top - r),
        ("l", x, y + r), ("c", x, y + k, x + k, y, x + r, y), ("z",),
    )  # fmt: skip
