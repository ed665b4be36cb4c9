"""A work of art as something to draw on: where it fits best on paper, and its line art within a place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from packgen.page.desk import Desk
from packgen.page.look import HAIR, MIDDLE
from packgen.page.marks import Ink, Mark, Path_, Point, Stroke
from packgen.page.pen import Pen
from packgen.page.pictured import place_picture
from packgen.pictures.drawn import fits, shows_drawing
from packgen.pictures.finish import is_plain
from packgen.pictures.line_art import LineArt, lines_alone
from packgen.pictures.load import WHOLE, Crop, picture_info
from packgen.pictures.shapes import Steps
from packgen.reading.dates import plain
from packgen.reading.models import Work

_FEWEST_PX = 48
_UNDERLAID = ("first", "younger")
_UNDER = 0.84  # how far a work under its own outlines is lightened
_TURN = 1.2  # a picture is laid sideways if that makes it so much wider


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle on a page: its lower left corner and its size in mm."""

    x: float
    y: float
    width: float
    height: float

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """Its corners, anticlockwise from the lower left."""
        right, top = self.x + self.width, self.y + self.height
        return (self.x, self.y), (right, self.y), (right, top), (self.x, top)

    def part(self, crop: Crop) -> Box:
        """The part of it that shows `crop` (fractions from the upper left corner) of what fills it."""
        left, top, wide, high = crop
        low = self.y + self.height * (1.0 - top - high)
        return Box(self.x + left * self.width, low, wide * self.width, high * self.height)


def within(part: Crop, whole: Crop) -> Crop:
    """The part of a part: `part` of what `whole` shows, as fractions of the full picture."""
    left, top, wide, high = whole
    return left + part[0] * wide, top + part[1] * high, part[2] * wide, part[3] * high


def largest(shape: float, width: float, height: float) -> tuple[float, float]:
    """The largest rectangle of that shape (width over height) inside width x height."""
    wide = min(width, height * shape)
    return wide, wide / shape


def centred(shape: float, box: Box, down: float = 0.5) -> Box:
    """The largest rectangle of that shape in a box, in the middle across; `down` 0 at the top, 1 at the foot."""
    wide, high = largest(shape, box.width, box.height)
    return Box(box.x + (box.width - wide) / 2, box.y + (box.height - high) * (1.0 - down), wide, high)


def turns(upright: float, sideways: float) -> bool:
    """True if a picture so wide on an upright page, and so wide on one sideways, is better laid sideways."""
    return sideways > _TURN * upright


def subject_of(desk: Desk, work: Work) -> str:
    """What a sheet's head says of a work: title, maker and year."""
    maker = str(desk.study.study)
    return f"{work.title} · {maker}, {plain(work.when)}" if work.when else f"{work.title} · {maker}"


@dataclass(frozen=True, slots=True)
class Lining:
    """How line art is drawn: the lines' width and ink, if its ink strokes are drawn, and by how much they swell."""

    width: float = MIDDLE
    ink: Ink = 0.15
    strokes: bool = True
    swell: float = 0.0
    frame: bool = True


def draw_line_art(pen: Pen, art: LineArt, box: Box, lining: Lining, *, only: Sequence[Box] = (),
                  crop: Crop = WHOLE) -> None:  # fmt: skip
    """Line art, or the part `crop` of it, filling a box; if `only` is given, inside these boxes."""
    left, top, wide, high = crop
    scale = box.width / wide
    low = box.y - (1.0 - top - high) * box.height / high
    placed = art.placed(box.x - left * scale, low, scale)
    stroke = Stroke(lining.width, lining.ink, cap=1)
    lines = placed.outlines if lining.frame else placed.outlines[1:]
    for part in only or (box,):
        marks: list[Mark] = [Path_(steps, stroke, None, "line-art") for steps in lines if _reaches(steps, part)]
        if lining.strokes:
            edge = Stroke(lining.swell, lining.ink) if lining.swell else None
            marks += [Path_(steps, edge, lining.ink, "line-art-ink") for steps in placed.ink if _reaches(steps, part)]
        pen.group(marks, (1, 0, 0, 1, 0, 0), part.corners)


def enough_in(desk: Desk, work: Work, sheet: str) -> bool:
    """True if a work's picture has enough pixels, and enough in them, to draw from; else the parent is warned."""
    assert work.image
    info = picture_info(work.image)
    small = not info.vector and min(info.width_px, info.height_px) < _FEWEST_PX
    if not small and not is_plain(desk.store, work.image):
        return True
    why = "is too small a file" if small else "is too plain"
    desk.warn(work.image_said, f'"{work.title}" has no sheet "{sheet}": its picture {why} to draw from.',
              "Use a larger copy of it." if small else "")  # fmt: skip
    return False


def drawing_of(work: Work) -> Path | None:
    """The line drawing of a work, if the study gives one that has the shape of the picture."""
    return work.drawing if work.image and work.drawing and fits(work.image, work.drawing) else None


def lines_of(desk: Desk, work: Work, detail: int) -> LineArt:
    """The lines of a work to draw on: those of its drawing if there is one, or those found in its picture."""
    assert work.image
    return lines_alone(desk.store, work.image, detail, drawing_of(work))


def underlay(desk: Desk, pen: Pen, work: Work, box: Box, crop: Crop | None = None) -> None:
    """For the younger, the work or a part of it as faintly as it may lie under lines found in it: few tell more so.

    Nothing under the lines of a drawing, which tell enough.
    """
    assert work.image
    if desk.level not in _UNDERLAID or drawing_of(work) or shows_drawing(desk.store, work.image):
        return
    place_picture(desk, pen, work.image, box.x, box.y, box.width, box.height, crop=crop, grey=True, lighten=_UNDER,
                  framed=False, warn=False)  # fmt: skip


def frame_of(pen: Pen, box: Box, width: float = HAIR, ink: Ink = 0.45, role: str = "picture-edge") -> None:
    """The edge of a picture's place."""
    pen.box(box.x, box.y, box.width, box.height, Stroke(width, ink), role=role)


def _reaches(steps: Steps, box: Box) -> bool:
    """True if a shape may show inside a box; the box round its points, curves' handles included, decides."""
    xs = [float(v) for step in steps for v in step[1::2]]
    ys = [float(v) for step in steps for v in step[2::2]]
    return bool(xs) and (
        max(xs) >= box.x and min(xs) <= box.x + box.width and max(ys) >= box.y and min(ys) <= box.y + box.height
    )
