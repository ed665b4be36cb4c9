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

from packgen.pictures.calm import calmed
from packgen.pictures.label_map import LabelMap, connected
from packgen.pictures.line_art import LineArt
from packgen.pictures.load import Store
from packgen.pictures.shapes import Steps, moved
from packgen.pictures.tracing import rings, traced

_PASSES, _TOLERANCE = 10, 0.4
_SHADE = 60.0
_WIDER = 1.6  # the ratio of the two blurs that comes nearest to the Laplacian of a Gaussian (Marr and Hildreth)


@dataclass(frozen=True, slots=True)
class _Level:
    """The size in px, the lines' half width in px, the least darkness (of 255) to go on and to begin, and the least
    length of a line in px."""

    size: int
    width: float
    on: int
    begin: int
    length: int


_LEVELS = {1: _Level(460, 2.6, 6, 14, 26), 2: _Level(680, 2.2, 5, 11, 24), 3: _Level(860, 1.7, 4, 9, 18)}


def sketch(store: Store, path: Path, level: int) -> LineArt:
    """The sketch at one of three amounts of detail, 1 with few bold lines: `ink` shapes to fill, and the frame.

    There are no regions. Raises PictureError.
    """
    made: LineArt = store.keep(path, ("sketch", level), lambda: _sketch(store, path, _LEVELS[level]))
    return made


def _sketch(store: Store, path: Path, level: _Level) -> LineArt:
    image = store.pixels(path, level.size)
    scale = max(image.size) / level.size  # a small picture has fewer pixels to a line
    plain = calmed(_lifted(ImageOps.autocontrast(image, cutoff=1, preserve_tone=True)), 3, 1)
    lines = _lines(_darker(plain, level.width * scale), level, scale)
    width, height = image.size
    matrix = (1 / width, 0.0, 0.0, -1 / width, 0.0, height / width)
    around = rings(traced(lines, _PASSES, _TOLERANCE), lines.count)
    ink = tuple(moved(steps, matrix) for steps, value in zip(around, lines.value, strict=True) if value)
    frame: Steps = (("m", 0, 0), ("l", 1, 0), ("l", 1, height / width), ("l", 0, height / width), ("z",))
    return LineArt(1.0, height / width, (frame,), ink, ())


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
    mask = darker.point([0] * level.on + [255] * (256 - level.on)).filter(ImageFilter.MedianFilter(3))
    areas = connected(mask)
    data, width = darker.tobytes(), areas.width
    darkest = [0] * areas.count
    for y, row in enumerate(areas.rows):
        for start, end, area in row:
            if areas.value[area]:
                darkest[area] = max(darkest[area], max(data[y * width + start : y * width + end]))
    least = level.length * level.width * scale * scale
    sizes = areas.sizes()
    kept = [255 * (dark >= level.begin and size >= least) for dark, size in zip(darkest, sizes, strict=True)]
    return connected(areas.image(kept))
