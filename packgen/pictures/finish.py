"""Which part of a picture to print, and which to leave to the child, so that it carries on sensibly.

A picture carries on well over an edge that many of its own lines cross: each is a hook for the pencil.
"""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

from PIL import Image, ImageChops, ImageFilter, ImageOps

from packgen.pictures.load import Crop, Store

_LOOK_PX = 240
_CUTS = tuple(0.44 + 0.01 * i for i in range(13))
_STEPS = 12
_LARGE = 4.0  # px, of the blur that leaves only what is large
_ASIDE = 0.5  # how much less a part in a corner is worth
_EDGE, _PLAIN = 14, 0.003  # at least this part of a picture has changes of so much, of 255
_MOST_KEPT = 0.75  # of what there is to see: the child must have something left to draw


def is_plain(store: Store, path: Path) -> bool:
    """Whether there is next to nothing to see in a picture: hardly an edge in it. Raises PictureError."""

    def found() -> bool:
        histogram = _edges(store, path).histogram()
        return sum(histogram[_EDGE:]) < _PLAIN * sum(histogram)

    plain: bool = store.keep_long(path, "plain", found)
    return plain


def kept_half(store: Store, path: Path) -> Crop:
    """About half of the picture to print: left, right, upper or lower. Raises PictureError."""
    calm, edges = _calm(store, path), _edges(store, path)
    alike = _mirrored(store, path)
    best = max(
        ((_along(calm, cut, upright) * (1 + alike if upright else 1), -abs(cut - 0.5), cut, upright)
         for upright in (True, False) for cut in _CUTS),
    )  # fmt: skip
    cut, upright = best[2], best[3]
    halves: tuple[Crop, Crop] = ((0.0, 0.0, cut, 1.0), (cut, 0.0, 1 - cut, 1.0))
    if not upright:
        halves = ((0.0, 0.0, 1.0, cut), (0.0, cut, 1.0, 1 - cut))
    first = _seen(edges, halves[0]) / max(1e-9, _seen(edges, halves[0]) + _seen(edges, halves[1]))
    keep_first = first >= 0.5 if 1 - _MOST_KEPT <= first <= _MOST_KEPT else first < 0.5
    return halves[0] if keep_first else halves[1]


def blank_window(store: Store, path: Path, size: float = 0.4) -> Crop:
    """A window of the picture, `size` of its width and height, to leave blank. Raises PictureError."""
    calm, edges = _calm(store, path), _edges(store, path)
    room = 1 - size
    windows: list[Crop] = [
        (0.06 * room + 0.88 * room * i / _STEPS, 0.06 * room + 0.88 * room * j / _STEPS, size, size)
        for j in range(_STEPS + 1) for i in range(_STEPS + 1)
    ]  # fmt: skip
    whole = _seen(edges, (0.0, 0.0, 1.0, 1.0))

    def worth(window: Crop) -> tuple[float, float, float]:
        inside = min(1.5, _seen(edges, window) / max(1e-9, whole * size * size))
        middle = -abs(window[0] - room / 2) - abs(window[1] - room / 2)
        return _round_about(calm, window) * inside, middle, window[0]

    return max(windows, key=worth)


def kept_middle(store: Store, path: Path, size: float = 0.5) -> Crop:
    """The part of the picture, `size` of its width and height, with the most to see; for a picture fading outwards.

    What is large and near the middle counts, not texture: the sea is busy, but the boat is what is looked at. Found
    once a build.
    """
    found: Crop = store.keep(path, ("kept middle", size), lambda: _kept_middle(store, path, size))
    return found


def _kept_middle(store: Store, path: Path, size: float) -> Crop:
    calm = store.pixels(path, _LOOK_PX, grey=True).filter(ImageFilter.GaussianBlur(_LARGE))
    edges = ImageChops.subtract(calm.filter(ImageFilter.MaxFilter(5)), calm.filter(ImageFilter.MinFilter(5)))
    room = 1 - size
    parts = [(room * i / _STEPS, room * j / _STEPS, size, size) for j in range(_STEPS + 1) for i in range(_STEPS + 1)]

    def worth(part: Crop) -> tuple[float, float]:
        off = (abs(part[0] - room / 2) + abs(part[1] - room / 2)) / room
        return _seen(edges, part) * (1 - _ASIDE * off), -off

    return max(parts, key=worth)


def _calm(store: Store, path: Path) -> Image.Image:
    return store.pixels(path, _LOOK_PX, grey=True).filter(ImageFilter.GaussianBlur(1.2))


def _edges(store: Store, path: Path) -> Image.Image:
    calm = _calm(store, path)
    return ImageChops.subtract(calm.filter(ImageFilter.MaxFilter(3)), calm.filter(ImageFilter.MinFilter(3)))


def _mirrored(store: Store, path: Path) -> float:
    """How like its mirror image the picture is, 0 to 1: a face or a front is best continued sideways."""
    small = store.pixels(path, 48, grey=True)
    apart = ImageChops.difference(small, ImageOps.mirror(small)).histogram()
    return max(0.0, 1 - 4 * sum(v * n for v, n in enumerate(apart)) / max(1, sum(apart)) / 255)


def _box(edges: Image.Image, part: Crop) -> tuple[int, int, int, int]:
    left, top = round(part[0] * edges.width), round(part[1] * edges.height)
    right, low = round((part[0] + part[2]) * edges.width), round((part[1] + part[3]) * edges.height)
    left, top = min(left, edges.width - 1), min(top, edges.height - 1)
    return left, top, max(left + 1, min(right, edges.width)), max(top + 1, min(low, edges.height))


def _seen(edges: Image.Image, part: Crop) -> float:
    """How much there is to see in a part: the sum of its edges."""
    return float(sum(v * n for v, n in enumerate(edges.crop(_box(edges, part)).histogram())))


def _along(calm: Image.Image, cut: float, upright: bool) -> float:
    """How much the picture changes along a cut, for its length: upright at a fraction from the left, or level."""
    line: Crop = (cut, 0.0, 0.0, 1.0) if upright else (0.0, cut, 1.0, 0.0)
    return _changes(calm, line) / (calm.height if upright else calm.width)


def _changes(calm: Image.Image, line: Crop) -> float:
    """The sum of the changes along a line one pixel wide; only what crosses it counts, not what runs along it."""
    values = calm.crop(_box(calm, line)).tobytes()
    return float(sum(abs(a - b) for a, b in pairwise(values)))


def _round_about(calm: Image.Image, window: Crop) -> float:
    left, top, wide, high = window
    sides: tuple[Crop, ...] = (
        (left, top, wide, 0.0), (left, top + high, wide, 0.0), (left, top, 0.0, high), (left + wide, top, 0.0, high)
    )  # fmt: skip
    return sum(_changes(calm, side) for side in sides)
