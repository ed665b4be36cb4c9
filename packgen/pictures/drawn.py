"""Line art from a picture that is line art already: a pen drawing, an engraving of few lines, a diagram.

Cutting such a picture up by colour would make an area of each pen stroke. Here the strokes are walls: the paper between
them gives the areas, which meet in the middle of each stroke, and what is drawn inside an area stays as ink.
"""

from __future__ import annotations

from PIL import Image, ImageChops, ImageFilter

from packgen.pictures.ink import zone
from packgen.pictures.label_map import LabelMap, connected, without_small
from packgen.pictures.regions import Wanted, softened
from packgen.pictures.tracing import Chain

_PAPER = 0.55  # at least so much of a drawing is bare paper,
_MARKED = 0.35  # at most so much is marked,
_THICK = 0.12  # and at most so much of the marks is thicker than a pen stroke
_DARKER = 60  # of 255: a mark is so much darker than the paper
_PLAIN = 40  # of 255: the paper's own colour may vary by so much
_STROKE = 0.022  # of the long side: a stroke is thinner


def is_drawing(image: Image.Image) -> bool:
    """Whether a picture (RGB) is thin dark lines on plain light paper."""
    grey = image.convert("L")
    paper = _paper(grey)
    histogram = grey.histogram()
    pixels = grey.width * grey.height
    marked = sum(histogram[: max(0, paper - _DARKER)])
    if paper < 150 or sum(histogram[max(0, paper - _PLAIN) :]) < _PAPER * pixels:
        return False
    if not 0 < marked < _MARKED * pixels:
        return False
    side = 2 * round(_STROKE * max(grey.size) / 2) + 1
    thick = marks(grey).filter(ImageFilter.MinFilter(side)).filter(ImageFilter.MaxFilter(side))
    return thick.histogram()[255] < _THICK * marked


def _paper(grey: Image.Image) -> int:
    """The commonest lightness, taken over a few neighbouring levels."""
    histogram = grey.histogram()
    return max(range(256), key=lambda v: sum(histogram[max(0, v - 2) : v + 3]))


def marks(grey: Image.Image) -> Image.Image:
    """White where something is drawn."""
    limit = max(0, _paper(grey) - _DARKER)
    return grey.point([255] * limit + [0] * (256 - limit))


def drawn_areas(image: Image.Image, wanted: Wanted) -> LabelMap:
    """The paper between the strokes of a drawing (L), meeting in the middle of the strokes; not more than wanted.

    Strokes are thickened a little first, so that a small gap in one does not let two areas run together.
    """
    walls = marks(image).filter(ImageFilter.MaxFilter(3))
    paper = connected(walls)
    least = wanted.least * image.width * image.height
    size = paper.sizes()
    good = sorted((i for i in range(paper.count) if not paper.value[i] and size[i] >= least), key=lambda i: -size[i])
    number = [0] * paper.count
    for index, area in enumerate(good[: wanted.high] or [0]):
        number[area] = index + 1
    return without_small(connected(softened(paper.image(number), 1.0)), least)


def drawn_ink(image: Image.Image, outlines: list[Chain], scale: float) -> LabelMap:
    """What a drawing (L) shows besides its outlines, areas with the value 255; outlines in px of `scale` times less."""
    stroke = max(3, round(_STROKE * max(image.size)))
    left = ImageChops.subtract(marks(image), zone(image.size, outlines, scale, stroke))
    areas = connected(left)
    kept = [255 * (bool(v) and size >= stroke) for v, size in zip(areas.value, areas.sizes(), strict=True)]
    return connected(areas.image(kept))
