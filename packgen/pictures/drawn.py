"""Line art from a picture that is line art already: a pen drawing, an engraving of few lines, a diagram.

Cutting such a picture up by colour would make an area of each pen stroke. Here the strokes are walls: the paper between
them gives the areas, which meet in the middle of each stroke, and what is drawn inside an area stays as ink.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
from PIL import Image, ImageChops, ImageFilter

from packgen.pictures.calm import grown, shrunk
from packgen.pictures.cells import Plane, in_order, nearest_of, parted
from packgen.pictures.flats import line_pixels
from packgen.pictures.graph import Graph, Room
from packgen.pictures.label_map import LabelMap, connected, from_plane
from packgen.pictures.load import Store, aspect
from packgen.pictures.opencv import cv
from packgen.pictures.regions import Wanted, lab

INK_PX = 800  # the long side of a drawing whose lines are taken,
AREAS_PX = 560  # and of one whose areas are looked for; two lines stay two in it
CELLS_PX = 900  # and of one of which no area is left out, be it as small as an apple in a tree
_PAPER = 0.55  # at least so much of a drawing is bare paper,
_MARKED = 0.35  # at most so much is marked,
_THICK = 0.12  # and at most so much of the marks is thicker than a pen stroke
_DARKER = 60  # of 255: a mark is so much darker than the paper
_PLAIN = 24  # of 255: the paper's own lightness may vary by so much
_TINT, _COLOURED = 16, 0.04  # at most this part of it has a colour so far, of 255, from the paper's
_SPECK = 16  # px; a smaller bit of paper between strokes is no area
_SMALL = 7  # px; nor is one smaller than this where none is left out
_DOT = 5  # px; a smaller mark is dirt
_STROKE = 0.022  # of the long side: a stroke is thinner
_SHAPE = 0.04  # a drawing's width over height may differ from its picture's by so much
_STEP = 40.0  # every stroke is a border, and all alike


def fits(path: Path, drawing: Path) -> bool:
    """Whether a drawing is as wide to high as its picture, or nearly. Raises PictureError."""
    one, other = aspect(path), aspect(drawing)
    return abs(one - other) <= _SHAPE * max(one, other)


def shows_drawing(store: Store, path: Path, lines: bool = False) -> bool:
    """Whether the picture in a file is a drawing of thin dark lines on plain light paper. Raises PictureError.

    `lines`: it is given for its lines, so that its fills, if it is an SVG file, do not count.
    """
    if lines:
        own: bool = store.keep_long(path, "lines", lambda: is_drawing(line_pixels(store, path, AREAS_PX)))
        return own
    found: bool = store.keep_long(path, "drawing", lambda: is_drawing(store.pixels(path, AREAS_PX)))
    return found


def is_drawing(image: Image.Image) -> bool:
    """Whether a picture is thin dark lines on plain light paper."""
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
    bands = image.convert("RGB").convert("YCbCr").split()[1:]
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


def drawn_cells(image: Image.Image) -> LabelMap:
    """Every bit of paper between the strokes of a drawing (L) that is no speck, meeting in the middle of the strokes.

    Strokes are thickened a little first, so that a small gap in one does not let two areas run together.
    """
    return from_plane(_cells(image, _SMALL))


def _cells(image: Image.Image, least: int = _SPECK) -> Plane:
    walls = np.asarray(marks(image).filter(ImageFilter.MaxFilter(3)))
    _, paper, facts, _ = cv().connectedComponentsWithStats((walls == 0).astype(np.uint8), connectivity=4)
    good = facts[:, cv().CC_STAT_AREA] >= least
    good[0] = False  # the strokes
    return parted(nearest_of(in_order(paper), good[paper])) if good.any() else np.zeros(paper.shape, np.int32)


def drawn_areas(image: Image.Image, wanted: Wanted, colours: Image.Image | None = None) -> LabelMap:
    """The paper between the strokes of a drawing (L), meeting in the middle of the strokes; not more than wanted.

    An area too narrow for what is wanted is joined to a neighbour, its strokes stay as ink; `colours`, a picture of the
    same size, tells which neighbour is like it.
    """
    plane = _cells(image)
    tints = lab(np.asarray(colours or image.convert("RGB")))
    level = np.ones(plane.shape, np.float32)
    graph = Graph(plane, tints, level * _STEP, level, wanted.power)
    graph.join_narrow(Room(wanted.across * max(image.size) / 2 * 0.9, _SPECK), tries=8, share=0.5)
    graph.join_smallest(wanted.high)
    return from_plane(in_order(graph.planed()))


def drawn_ink(image: Image.Image) -> Image.Image:
    """White where a drawing (L) is drawn on, without specks."""
    areas = connected(marks(image))
    return areas.image([255 * (bool(v) and n >= _DOT) for v, n in zip(areas.value, areas.sizes(), strict=True)])
