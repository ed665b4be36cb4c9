"""A picture as an ink sketch: the lines a pen would draw along its edges, as filled shapes that keep their swelling.

Where line art gives closed areas to fill, a sketch gives what is recognised: roofs, masts, faces, hands. A line runs on
the dark side of every edge, where the picture is darker than a wider blur of itself (a difference of two Gaussians;
D. Marr and E. Hildreth, "Theory of edge detection", 1980). Lines go on where they grow faint, but begin only where an
edge is plain (hysteresis; J. Canny, "A computational approach to edge detection", 1986).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from pathlib import Path

from PIL import Image, ImageChops, ImageFilter, ImageOps

from packgen.pictures.calm import calmed, median
from packgen.pictures.label_map import LabelMap, connected
from packgen.pictures.line_art import LineArt, unpacked
from packgen.pictures.load import Store, aspect
from packgen.pictures.shapes import Steps, moved
from packgen.pictures.tracing import rings, traced

_PASSES, _TOLERANCE = 14, 0.4
_SHADE = 60.0
_WIDER = 1.6  # the ratio of the two blurs that comes nearest to the Laplacian of a Gaussian (Marr and Hildreth)


@dataclass(frozen=True, slots=True)
class _Level:
    """The size in px, the lines' half width in px, how dark (of 255) a line goes on and begins, and how long it is.

    A line shorter than `long`, a part of the picture's long side, is texture unless it is very dark, like an eye.
    """

    size: int
    width: float
    on: int
    begin: int
    long: float


_LEVELS = {1: _Level(500, 2.5, 6, 13, 0.06), 2: _Level(720, 2.0, 5, 11, 0.05), 3: _Level(900, 1.55, 4, 9, 0.025)}
_DARK = 2.4  # times `begin`: so dark is a dot that counts
_SPECK = 6.0  # times the width squared: what is smaller is a speck


def sketch(store: Store, path: Path, level: int) -> LineArt:
    """The sketch at one of three amounts of detail, 1 with few bold lines: `ink` shapes to fill, and the frame.

    There are no regions. Raises PictureError.
    """
    if store.measuring:  # that there is a line is all that is asked
        some: bool = store.keep_long(path, ("sketched", level), lambda: any(_traces(store, path, _LEVELS[level]).value))
        frame = _frame(1 / aspect(path))
        return LineArt(1.0, 1 / aspect(path), (frame,), (frame,) if some else (), ())
    made: LineArt = store.keep_long(
        path, ("sketch", level), lambda: _sketch(_traces(store, path, _LEVELS[level])), LineArt.packed, unpacked
    )
    return made


def _traces(store: Store, path: Path, level: _Level) -> LabelMap:
    """The lines of the picture as areas with the value 255."""
    image = store.pixels(path, level.size)
    scale = max(image.size) / level.size  # a small picture has fewer pixels to a line
    plain = calmed(_lifted(ImageOps.autocontrast(image, cutoff=1, preserve_tone=True)), 3, 1)
    return _lines(_darker(plain, level.width * scale), level, scale)


def _frame(height: float) -> Steps:
    return (("m", 0, 0), ("l", 1, 0), ("l", 1, height), ("l", 0, height), ("z",))


def _sketch(lines: LabelMap) -> LineArt:
    width, height = lines.width, lines.height
    matrix = (1 / width, 0.0, 0.0, -1 / width, 0.0, height / width)
    around = rings(traced(lines, _PASSES, _TOLERANCE), lines.count)
    ink = tuple(moved(steps, matrix) for steps, value in zip(around, lines.value, strict=True) if value)
    return LineArt(1.0, height / width, (_frame(height / width),), ink, ())


def _lifted(image: Image.Image) -> Image.Image:
    """The picture with its darks spread apart: an edge in the shade is as plain to the eye as one in the light.

    Equal ratios of light look about equally far apart (the Weber-Fechner law).
    """
    curve = [round(255 * math.log1p(v / _SHADE) / math.log1p(255 / _SHADE)) for v in range(256)]
    return image.point(curve * 3)


def _darker(image: Image.Image, width: float) -> Image.Image:
    """How much darker each pixel is than what lies round it, in the band where that is most, as L."""
    most = Image.new("L", image.size, 0)
    for band in (image.convert("L"), *image.split()):
        near, wide = (band.filter(ImageFilter.GaussianBlur(blur)) for blur in (width, width * _WIDER))
        most = ImageChops.lighter(most, ImageChops.subtract(wide, near))
    return most


def _lines(darker: Image.Image, level: _Level, scale: float) -> LabelMap:
    """The lines as areas with the value 255: where it is dark enough to go on, and somewhere dark enough to begin."""
    mask = median(darker.point([0] * level.on + [255] * (256 - level.on)))
    areas = connected(mask)
    darkest, sizes, long = _darkest(areas, darker), areas.sizes(), _extents(areas)
    reach, speck = level.long * max(darker.size), _SPECK * (level.width * scale) ** 2
    kept = [
        255 * (dark >= level.begin and size >= speck and (extent >= reach or dark >= _DARK * level.begin))
        for dark, size, extent in zip(darkest, sizes, long, strict=True)
    ]
    return connected(areas.image(kept))


def _darkest(areas: LabelMap, darker: Image.Image) -> list[int]:
    """How dark each line is where it is darkest; 0 for what is no line."""
    data, width = darker.tobytes(), areas.width
    out = [0] * areas.count
    for y, row in enumerate(areas.rows):
        for start, end, area in row:
            if areas.value[area]:
                out[area] = max(out[area], max(data[y * width + start : y * width + end]))
    return out


def _extents(areas: LabelMap) -> list[float]:
    """The diagonal of the box round each area in px."""
    boxes = [[areas.width, areas.height, 0, 0] for _ in range(areas.count)]
    for y, row in enumerate(areas.rows):
        for start, end, area in row:
            box = boxes[area]
            box[0], box[1] = min(box[0], start), min(box[1], y)
            box[2], box[3] = max(box[2], end), y + 1
    return [math.hypot(right - left, low - top) for left, top, right, low in boxes]
