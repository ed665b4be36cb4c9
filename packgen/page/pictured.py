"""Pictures on a page: a block that shows a picture as large as its place allows, never cut, never stretched."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from packgen.page.blocks import Block, Kit, Span
from packgen.page.desk import Desk
from packgen.page.look import HAIR, RULE
from packgen.page.marks import Ink, Path_, Stroke
from packgen.page.pen import Pen
from packgen.pictures.load import Crop, aspect
from packgen.pictures.shapes import VectorPicture
from packgen.pictures.svg import read_svg


@dataclass(frozen=True, slots=True)
class PictureBlock:
    """A picture between `least` and `most` mm high, centred, its own shape kept; `caption` stands under it."""

    desk: Desk
    path: Path
    least: float = 50.0
    most: float = 1e6
    caption: str = ""
    about: object = None
    gap: float | None = None
    tight: bool = False
    grow: float = 2.0
    framed: bool = True

    def measure(self, kit: Kit, width: float) -> Span:
        """As high as the picture is at this width, at most."""
        words = kit.look.small.leading * 1.2 if self.caption else 0.0
        full = width / aspect(self.path)
        most = max(min(self.most, full), min(self.least, full)) + words
        least = min(self.least, full) + words
        return Span(least, most, self.grow if most > least else 0.0)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """The picture at the largest size that fits, centred."""
        words = kit.look.small.leading * 1.2 if self.caption else 0.0
        shape = aspect(self.path)
        wide = min(width, (height - words) * shape)
        high = wide / shape
        left = x + (width - wide) / 2
        place_picture(self.desk, pen, self.path, left, top - high, wide, high, about=self.about, framed=self.framed)
        if self.caption:
            style = kit.look.small
            pen.text(x + width / 2, top - high - style.leading, self.caption, style, align="centre")

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """Never."""
        return None


@dataclass(frozen=True, slots=True)
class Beside:
    """A picture and another block side by side, both as high as the row: the picture takes the width its height asks.

    `widest` is the largest share of the width the picture may have; `right` puts the picture on the right.
    """

    desk: Desk
    path: Path
    block: Block
    about: object = None
    widest: float = 0.55
    right: bool = False
    gutter: float = 6.0
    gap: float | None = None
    tight: bool = False

    def _most(self, width: float) -> float:
        """The height at which the picture is as wide as it may be."""
        return width * self.widest / aspect(self.path)

    def measure(self, kit: Kit, width: float) -> Span:
        """From the other block's least height to where the picture is as wide as it may be."""
        other = self.block.measure(kit, width * (1 - self.widest) - self.gutter)
        least = min(other.least, self._most(width)) if other.grow else other.least
        return Span(least, max(least, self._most(width)), max(other.grow, 1.0))

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """The picture as high as the row, the other block in what is left of the width."""
        high = min(height, self._most(width))
        wide = high * aspect(self.path)
        rest = width - wide - self.gutter
        left, other = (x + rest + self.gutter, x) if self.right else (x, x + wide + self.gutter)
        place_picture(self.desk, pen, self.path, left, top - high, wide, high, about=self.about)
        self.block.draw(kit, pen, other, top, rest, high)

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """Never."""
        return None


def place_picture(desk: Desk, pen: Pen, path: Path, x: float, y: float, width: float, height: float, *,
                  about: object = None, framed: bool = True, name: str = "", crop: Crop | None = None,
                  lighten: float = 0.0, grey: bool | None = None, fade: Crop | None = None,
                  warn: bool = True) -> None:  # fmt: skip
    """Put a picture, or a part of it, into a rectangle (lower left corner first); vector pictures stay vector.

    `about` is the value whose place a warning names; no `warn` for a detail that is coarse because it is enlarged.
    `lighten` 0..1 brings it nearer to white; outside `fade` (a part of what is shown) it fades to white.
    """
    in_grey = not desk.family.printer.colour if grey is None else grey
    vector = desk.store.keep(path, "vector", lambda: read_svg(path)) if path.suffix.lower() == ".svg" else None
    if isinstance(vector, VectorPicture) and not fade:
        draw_vector(pen, vector, x, y, width, height, crop=crop, lighten=lighten, grey=in_grey)
    else:
        wishes: dict[str, Any] = {"crop": crop, "lighten": lighten, "grey": in_grey, "fade": fade}
        made = (
            desk.picture(path, width, height, name, about, **wishes)
            if warn
            else desk.store.prepared(path, width, height, **wishes)
        )
        pen.picture(x, y, width, height, made.source, name.strip('"'))
    if framed:
        pen.box(x, y, width, height, Stroke(HAIR, RULE), role="picture-edge")


def draw_vector(pen: Pen, picture: VectorPicture, x: float, y: float, width: float, height: float, *,
                crop: Crop | None = None, lighten: float = 0.0, grey: bool = False) -> None:  # fmt: skip
    """Draw a vector picture, or a part of it, into a rectangle; shown only inside it."""
    left, top, part_wide, part_high = crop or (0.0, 0.0, 1.0, 1.0)
    scale = width / (picture.width * part_wide)
    low = picture.height * (1.0 - top - part_high)
    placed = picture.placed(x - left * picture.width * scale, y - low * scale, picture.width * scale)
    marks = [
        Path_(
            shape.steps,
            None if shape.stroke is None else Stroke(
                shape.stroke_width, _faded(shape.stroke, lighten, grey), shape.dash, int(shape.round_cap),
                int(shape.round_join),
            ),
            None if shape.fill is None else _faded(shape.fill, lighten, grey),
            "vector",
        )
        for shape in placed.shapes
    ]  # fmt: skip
    pen.group(marks, (1, 0, 0, 1, 0, 0), ((x, y), (x + width, y), (x + width, y + height), (x, y + height)))


def _faded(ink: Ink, lighten: float, grey: bool) -> Ink:
    """An ink nearer to white, and as a grey if asked (luma of ITU-R BT.601, as for pixels)."""
    if isinstance(ink, tuple) and grey:
        ink = 0.299 * ink[0] + 0.587 * ink[1] + 0.114 * ink[2]
    if isinstance(ink, tuple):
        red, green, blue = (1 - (1 - c) * (1 - lighten) for c in ink)
        return red, green, blue
    return 1 - (1 - ink) * (1 - lighten)
