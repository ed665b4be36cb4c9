"""Enlarging by squares: how many, how large on the print and on the empty grid, and by exactly how much it grows.

All squares are whole if a hair off the picture's edge makes them so; else they fit the long side exactly, and on the
other side the last is a part of one. Squares are whole millimetres on the print and on the copy, so that a child can
rule them.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from string import ascii_uppercase

from PIL import ImageChops, ImageFilter

from packgen.pictures.load import Crop, Store

# Squares along the long side: what suits the level, and the fewest and most that may be taken to fit the short side.
ALONG = {"first": (3, 2, 4), "younger": (5, 4, 6), "older": (8, 6, 10), "upper": (10, 8, 14)}
MOST_SQUARES = {"first": 12, "younger": 24, "older": 48, "upper": 96}
_PLAIN = ((3, 2), (2, 1), (5, 2), (3, 1), (4, 1), (5, 1), (6, 1), (8, 1), (10, 1))
RATIOS = tuple(Fraction(large, small) for large, small in _PLAIN)
_LEAST = 4  # mm, of a square on the print
_NEARLY = Fraction(95, 100)
_TRIM = 0.07  # at most so much of the picture's width or height is left off to make the squares whole
_SLIVER = 0.3  # a last part of a square is at least so much of one


class NoGrid(ValueError):
    """No grid fits the room there is: carries what to do instead."""

    def __init__(self, message: str, instead: str) -> None:
        self.message, self.instead = message, instead
        super().__init__(f"{message}. {instead}")


@dataclass(frozen=True, slots=True)
class Enlarging:
    """A grid of `columns` x `rows` squares, the last of which may be a part (columns and rows need not be whole).

    `cell` is a square's side on the print and `large` on the empty grid, in mm; large / cell is exactly `ratio`.
    `crop` is the part of the picture shown: all of it, or all but the hair left off.
    """

    columns: float
    rows: float
    cell: float
    large: float
    ratio: Fraction
    crop: Crop

    @property
    def source_size(self) -> tuple[float, float]:
        """Width and height of the print in mm."""
        return self.columns * self.cell, self.rows * self.cell

    @property
    def target_size(self) -> tuple[float, float]:
        """Width and height of the empty grid in mm."""
        return self.columns * self.large, self.rows * self.large

    @property
    def letters(self) -> str:
        """The letters over the columns, from the left."""
        return ascii_uppercase[: math.ceil(self.columns - 1e-9)]

    @property
    def numbers(self) -> tuple[int, ...]:
        """The numbers beside the rows, from the top."""
        return tuple(range(1, math.ceil(self.rows - 1e-9) + 1))

    @property
    def ratio_words(self) -> str:
        """The enlargement as it is printed, e.g. "2 : 1" or "3 : 2"."""
        return f"{self.ratio.numerator} : {self.ratio.denominator}"

    def lines(self, cell: float) -> tuple[tuple[float, ...], tuple[float, ...]]:
        """Where the upright and the level lines lie for squares of that side: x from the left, y down from the top."""
        across = [i * cell for i in range(len(self.letters))] + [self.columns * cell]
        down = [i * cell for i in range(len(self.numbers))] + [self.rows * cell]
        return tuple(across), tuple(down)

    def cell_box(self, column: int, row: int) -> Crop:
        """A square (from 0) as fractions of the part of the picture shown: left, top, width, height."""
        wide, high = min(1.0, self.columns - column), min(1.0, self.rows - row)
        return column / self.columns, row / self.rows, wide / self.columns, high / self.rows


def enlarging(aspect: float, level: str, source: tuple[float, float], target: tuple[float, float],
              ratios: Sequence[Fraction] = RATIOS) -> Enlarging:  # fmt: skip
    """The grid for a picture of that aspect whose print has the room `source` and whose copy the room `target`, in mm.

    The copy is as large as it can be; of ratios that make it nearly as large, the smallest is taken. Raises NoGrid.
    """
    for columns, rows in _squares(aspect, *ALONG[level], MOST_SQUARES[level]):
        large = min(target[0] / columns, target[1] / rows)
        room = min(source[0] / columns, source[1] / rows)
        found: list[tuple[Fraction, Fraction]] = []
        for ratio in sorted(ratios):
            step = ratio.denominator  # of so many mm squares are whole mm on both
            cell = Fraction(math.floor(min(large / float(ratio), room) / step + 1e-9) * step)
            if cell >= _LEAST:
                found.append((cell, ratio))
        if found:
            most = max(cell * ratio for cell, ratio in found)
            cell, ratio = next(pair for pair in found if pair[0] * pair[1] >= _NEARLY * most)
            shown = _shown(aspect, columns, rows)
            return Enlarging(columns, rows, float(cell), float(cell * ratio), ratio, shown)
    raise NoGrid("there is no room for the squares of this picture", "Give it a larger paper or fewer squares.")


def _squares(aspect: float, wish: int, fewest: int, most: int, many: int) -> list[tuple[float, float]]:
    """Squares across and down, the best first: whole ones, near the wish, with little of the picture left off.

    Never more than `many` in all.
    """
    options: list[tuple[float, float, float]] = []
    for count in range(fewest, most + 1):
        short = min(aspect, 1 / aspect) * count
        if count * math.ceil(short - 0.5) > many:
            continue
        whole = max(1, round(short))
        trim = 1 - min(whole, short) / max(whole, short)
        part = short - int(short)
        cost = abs(count - wish) * 0.1
        if trim <= _TRIM:
            options.append((cost + trim * 10, float(count), float(whole)))
        elif part >= _SLIVER:
            options.append((cost + 10, float(count), short))
        else:
            options.append((cost + 20, float(count), short))
    return [(long, short) if aspect >= 1 else (short, long) for _, long, short in sorted(options)]


def _shown(aspect: float, columns: float, rows: float) -> Crop:
    """The part of the picture with the aspect of the squares, in its middle."""
    wide, high = min(1.0, columns / rows / aspect), min(1.0, aspect / (columns / rows))
    return (1 - wide) / 2, (1 - high) / 2, wide, high


def drawn_beforehand(store: Store, path: Path, grid: Enlarging, share: float = 0.34) -> tuple[tuple[int, int], ...]:
    """Squares (column, row from 0) to be drawn for the child: the hardest, no two side by side. Raises PictureError."""
    image = store.pixels(path, 320, grey=True).filter(ImageFilter.GaussianBlur(1.5))
    edges = ImageChops.subtract(image.filter(ImageFilter.MaxFilter(3)), image.filter(ImageFilter.MinFilter(3)))
    left, top, wide, high = grid.crop
    weight: dict[tuple[int, int], float] = {}
    for row in range(len(grid.numbers)):
        for column in range(len(grid.letters)):
            x, y, w, h = grid.cell_box(column, row)
            x0, y0 = (left + x * wide) * image.width, (top + y * high) * image.height
            box = (round(x0), round(y0), round(x0 + w * wide * image.width), round(y0 + h * high * image.height))
            if box[2] > box[0] and box[3] > box[1]:
                part = edges.crop(box).histogram()
                weight[column, row] = sum(v * n for v, n in enumerate(part)) / max(1, sum(part)) * w * h
    chosen: list[tuple[int, int]] = []
    for cell in sorted(weight, key=lambda c: (-weight[c], c)):
        if len(chosen) < share * len(weight) and all(abs(cell[0] - a) + abs(cell[1] - b) > 1 for a, b in chosen):
            chosen.append(cell)
    return tuple(sorted(chosen, key=lambda c: (c[1], c[0])))
