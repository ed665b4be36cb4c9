"""A line drawing as an SVG file whose shapes are filled with flat colours: its lines alone, and its colours alone.

The lines are drawn on; the colours tell which parts are one thing, however light and shadow lie on it in the picture.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from packgen.pictures.cells import Plane
from packgen.pictures.colours import Colour, apart
from packgen.pictures.load import Store
from packgen.pictures.shapes import Ink, Shape, VectorPicture
from packgen.pictures.svg import read_svg
from packgen.pictures.svg_pixels import drawn

_DARK = 0.5  # a shape without an outline that is darker is a stroke of the pen
_ONE = 0.16  # of `apart`: fills as near as this are one thing
_PAPER = (1.0, 1.0, 1.0)


def line_pixels(store: Store, path: Path, least: int) -> Image.Image:
    """The lines of a drawing in grey, its long side `least` px or as many as it has; fills are white paper.

    Raises PictureError.
    """
    vector = _vector(store, path)
    if vector is None:
        return store.pixels(path, least, grey=True)
    return drawn(_with(vector, _lined), *_size(vector, least)).convert("L")


def flat_pixels(store: Store, path: Path, size: tuple[int, int]) -> Image.Image | None:
    """The fills of a drawing without its lines, that many px wide and high; None if it has no colours."""
    vector = _vector(store, path)
    if vector is None or not any(_coloured(shape.fill) for shape in vector.shapes):
        return None
    return drawn(_with(vector, _filled), *size)


def things(plane: Plane, flat: Image.Image) -> tuple[list[int], list[Colour]]:
    """For each area of a plane the thing it belongs to (areas of one fill, or nearly, are one), and things' fills."""
    pixels = np.asarray(flat.convert("RGB"), np.int64)
    codes = ((pixels[..., 0] << 16) | (pixels[..., 1] << 8) | pixels[..., 2]).ravel()
    known: list[Colour] = []
    found = []
    order = np.argsort(plane.ravel(), kind="stable")
    for own in np.split(codes[order], np.cumsum(np.bincount(plane.ravel()))[:-1]):
        colour = _commonest(own)
        near = [k for k, other in enumerate(known) if apart(colour, other) < _ONE]
        if not near:
            known.append(colour)
            near = [len(known) - 1]
        found.append(min(near, key=lambda k: apart(colour, known[k])))
    return found, known


def _commonest(codes: NDArray[np.int64]) -> Colour:
    values, counts = np.unique(codes, return_counts=True)
    code = int(values[counts.argmax()])
    return (code >> 16) / 255, (code >> 8 & 255) / 255, (code & 255) / 255


def _vector(store: Store, path: Path) -> VectorPicture | None:
    if path.suffix.lower() != ".svg":
        return None
    found: VectorPicture = store.keep(path, "vector", lambda: read_svg(path))
    return found


def _size(vector: VectorPicture, least: int) -> tuple[int, int]:
    scale = least / max(vector.width, vector.height)
    return max(1, round(vector.width * scale)), max(1, round(vector.height * scale))


def _with(vector: VectorPicture, change: object) -> VectorPicture:
    assert callable(change)
    return replace(vector, shapes=tuple(new for shape in vector.shapes if (new := change(shape)) is not None))


def _lined(shape: Shape) -> Shape:
    if shape.fill is None:
        return shape
    return replace(shape, fill=0.0 if shape.stroke is None and _luma(shape.fill) < _DARK else 1.0)


def _filled(shape: Shape) -> Shape | None:
    if shape.fill is None or (shape.stroke is None and _luma(shape.fill) < _DARK):
        return None
    return replace(shape, stroke=None)


def _coloured(ink: Ink | None) -> bool:
    return isinstance(ink, tuple) and max(ink) - min(ink) > 0.02


def _luma(ink: Ink) -> float:
    red, green, blue = ink if isinstance(ink, tuple) else (ink, ink, ink)
    return 0.299 * red + 0.587 * green + 0.114 * blue
