"""Ruled textures for the faces of models: pale lines that say bricks, boards or tiles and let the folds be seen."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise

from packgen.page.look import HAIR
from packgen.page.marks import Stroke
from packgen.page.pen import Pen

_INK = 0.62
_LINE = Stroke(HAIR, _INK)


def draw_texture(pen: Pen, kind: str, width: float, height: float) -> None:
    """Draw a texture over a box with its lower left at the origin; one that has no such name is level lines."""
    TEXTURES[texture_named(kind) or "lines"](pen, width, height)


def texture_named(kind: str) -> str:
    """The texture a word means (`brick`, `Tiles`), or nothing."""
    word = kind.strip().lower()
    return next((name for name in (word, f"{word}s", _ALSO.get(word, "")) if name in TEXTURES), "")


def _rows(height: float, about: float) -> list[float]:
    """The feet of rows about so high that fill a height, and its top."""
    count = max(1, round(height / about))
    return [height * k / count for k in range(count + 1)]


def _level(pen: Pen, y: float, width: float) -> None:
    pen.line(0.0, y, width, y, HAIR, _INK, role="texture")


def _upright(pen: Pen, x: float, low: float, high: float) -> None:
    pen.line(x, low, x, high, HAIR, _INK, role="texture")


def _courses(pen: Pen, width: float, height: float, about: float, run: float) -> None:
    """Rows of blocks, every other row half a block on."""
    rows = _rows(height, about)
    for k, (low, high) in enumerate(pairwise(rows)):
        _level(pen, low, width)
        x = run / 2 if k % 2 else run
        while x < width:
            _upright(pen, x, low, high)
            x += run
    _level(pen, height, width)


def _bricks(pen: Pen, width: float, height: float) -> None:
    _courses(pen, width, height, 4.0, 9.0)


def _slates(pen: Pen, width: float, height: float) -> None:
    _courses(pen, width, height, 6.0, 5.0)


def _stones(pen: Pen, width: float, height: float) -> None:
    """Squared stones of changing length, in courses."""
    lengths = (11.0, 7.0, 9.0, 13.0, 8.0)
    rows = _rows(height, 6.5)
    for k, (low, high) in enumerate(pairwise(rows)):
        _level(pen, low, width)
        n, x = 2 * k, lengths[(3 * k + 1) % 5] * 0.6
        while x < width:
            _upright(pen, x, low, high)
            n, x = n + 1, x + lengths[n % 5]
    _level(pen, height, width)


def _boards(pen: Pen, width: float, height: float) -> None:
    """Upright boards, side by side."""
    count = max(2, round(width / 5.0))
    for k in range(count + 1):
        _upright(pen, width * k / count, 0.0, height)


def _planks(pen: Pen, width: float, height: float) -> None:
    """Level planks with a few joints."""
    _courses(pen, width, height, 5.0, 34.0)


def _tiles(pen: Pen, width: float, height: float) -> None:
    """Rows of tiles with round lower ends, every other row half a tile on."""
    run = width / max(2, round(width / 6.0))
    rows = _rows(height, 5.5)
    for k, (low, high) in enumerate(pairwise(rows)):
        deep = 0.45 * (high - low)
        x = -run / 2 if k % 2 else 0.0
        while x < width:
            bow = ("c", x, low, x + run, low, x + run, low + deep)
            pen.path((("m", x, high), ("l", x, low + deep), bow), _LINE, role="texture")
            x += run


def _lines(pen: Pen, width: float, height: float) -> None:
    for y in _rows(height, 5.0):
        _level(pen, y, width)


TEXTURES: dict[str, Callable[[Pen, float, float], None]] = {
    "boards": _boards, "bricks": _bricks, "lines": _lines, "planks": _planks, "slates": _slates, "stones": _stones,
    "tiles": _tiles,
}  # fmt: skip
_ALSO = {"brickwork": "bricks", "wood": "planks", "shingles": "slates", "stonework": "stones", "stripes": "lines"}
