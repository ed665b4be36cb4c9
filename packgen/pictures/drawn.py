"""Line art from a picture that is line art already: a pen drawing, an engraving of few lines, a diagram.

Cutting such a picture up by colour would make an area of each pen stroke. Here the strokes are walls: the paper between
them gives the areas, which meet in the middle of each stroke, and what is drawn inside an area stays as ink.
"""

from __future__ import annotations

from pathlib import Path

from PIL import Image, ImageChops, ImageFilter

from packgen.pictures.calm import grown, shrunk
from packgen.pictures.ink import zone
from packgen.pictures.label_map import LabelMap, connected, without_small
from packgen.pictures.load import Store
from packgen.pictures.regions import Wanted, softened
from packgen.pictures.tracing import Chain

DRAWING_PX = 560  # fine enough that two lines of a drawing stay two
_PAPER = 0.55  # at least so much of a drawing is bare paper,
_MARKED = 0.35  # at most so much is marked,
_THICK = 0.12  # and at most so much of the marks is thicker than a pen stroke
_DARKER = 60  # of 255: a mark is so much darker than the paper
_PLAIN = 24  # of 255: the paper's own lightness may vary by so much
_TINT, _COLOURED = 16, 0.04  # at most this part of it has a colour so far, of 255, from the paper's
_SPECK = 0.0004  # of the picture: a smaller bit of paper between strokes is no area
_STROKE = 0.022  # of the long side: a stroke is thinner


def shows_drawing(store: Store, path: Path) -> bool:
    """Whether the picture in a file is a drawing of thin dark lines on plain light paper. Raises PictureError."""
    found: bool = store.keep_long(path, "drawing", lambda: is_drawing(store.pixels(path, DRAWING_PX)))
    return found


def is_drawing(image: Image.Image) -> bool:
    """Whether a picture (RGB) is thin dark lines on plain light paper."""
    grey = image.convert("L")
    paper = _paper(grey)
    histogram = grey.histogram()
    pixels = grey.width * grey.height
    marked = sum(histogram[: max(0, paper - _DARKER)])
    if paper < 150 or sum(histogram[max(0, paper - _PLAIN) : paper + _PLAIN]) < _PAPER * pixels:
        return False
    if _coloured(image) > _COLOURED * pixels:
        return False
    if not 0 < marked < _MARKED * pixels:
        return False
    reach = round(_STROKE * max(grey.size) / 2)
    thick = grown(shrunk(marks(grey), reach), reach)
    return thick.histogram()[255] < _THICK * marked


def _coloured(image: Image.Image) -> int:
    """How many pixels have another colour than the paper, however light or dark."""
    bands = image.convert("YCbCr").split()[1:]
    plain = [_paper(band) for band in bands]
    far = [
        band.point([255 * (abs(v - own) > _TINT) for v in range(256)]) for band, own in zip(bands, plain, strict=True)
    ]
    return ImageChops.lighter(*far).histogram()[255]


def _paper(grey: Image.Image) -> int:
    """The commonest value of a band, taken over a few neighbouring ones."""
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
    size = paper.sizes()
    least = _SPECK * image.width * image.height
    good = sorted((i for i in range(paper.count) if not paper.value[i] and size[i] >= least), key=lambda i: -size[i])
    number = [0] * paper.count
    for index, area in enumerate(good[:255] or [0]):
        number[area] = index + 1
    areas = connected(softened(paper.image(number), 1.0))
    while True:
        areas = without_small(areas, least)
        if areas.count <= wanted.high:
            return areas
        # The smallest go first, a few at a time; the lines that parted them stay as ink.
        order = sorted(areas.sizes())
        least = order[(areas.count - wanted.high) // 2] + 1


def drawn_ink(image: Image.Image, outlines: list[Chain], scale: float) -> LabelMap:
    """What a drawing (L) shows besides its outlines, areas with the value 255; outlines in px of `scale` times less."""
    stroke = max(3, round(_STROKE * max(image.size)))
    left = ImageChops.subtract(marks(image), zone(image.size, outlines, scale, stroke))
    areas = connected(left)
    kept = [255 * (bool(v) and size >= stroke) for v, size in zip(areas.value, areas.sizes(), strict=True)]
    return connected(areas.image(kept))
