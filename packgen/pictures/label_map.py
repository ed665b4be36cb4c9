"""A picture cut into areas: every pixel carries the number of its area. Areas are connected; found by rows.

Runs of equal pixels are handled rather than pixels, which keeps plain Python quick enough.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from PIL import Image

Pixels = np.ndarray[tuple[int, int], np.dtype[Any]]  # a row of the array is a row of the picture
Run = tuple[int, int, int]  # from x, to x (not included), number of the area


@dataclass(slots=True)
class LabelMap:
    """Rows of runs. Areas are numbered from 0 without gaps; `value[i]` is the pixel value area i had."""

    width: int
    height: int
    rows: list[list[Run]]
    value: list[int]

    @property
    def count(self) -> int:
        return len(self.value)

    def sizes(self) -> list[int]:
        """The number of pixels of each area."""
        out = [0] * self.count
        for row in self.rows:
            for start, end, area in row:
                out[area] += end - start
        return out

    def image(self, numbers: list[int]) -> Image.Image:
        """A picture of mode L in which each area shows the number (0..255) given for it."""
        data = b"".join(bytes((numbers[area],)) * (end - start) for row in self.rows for start, end, area in row)
        return Image.frombytes("L", (self.width, self.height), data)

    def plane(self) -> NDArray[np.int32]:
        """The areas' numbers, pixel by pixel."""
        runs = [run for row in self.rows for run in row]
        lengths = [end - start for start, end, _ in runs]
        return np.repeat(np.array([area for *_, area in runs], np.int32), lengths).reshape(self.height, self.width)

    def renumbered(self, group: list[int]) -> LabelMap:
        """The map with each area i taken into area group[i], whose value it gets; numbered again without gaps."""
        order = {old: new for new, old in enumerate(dict.fromkeys(group))}
        value = [self.value[old] for old in order]
        rows = []
        for row in self.rows:
            merged: list[Run] = []
            for start, end, area in row:
                new = order[group[area]]
                if merged and merged[-1][2] == new:
                    merged[-1] = (merged[-1][0], end, new)
                else:
                    merged.append((start, end, new))
            rows.append(merged)
        return LabelMap(self.width, self.height, rows, value)


def find(parent: list[int], item: int) -> int:
    """The head of an item's group, shortening the way there."""
    while parent[item] != item:
        parent[item] = parent[parent[item]]
        item = parent[item]
    return item


def from_plane(plane: NDArray[Any], value: list[int] | None = None) -> LabelMap:
    """The map of a plane of area numbers, which has none but from 0 without gaps; values are 0 if none are given."""
    height, width = plane.shape
    begins = np.ones((height, width), dtype=bool)
    begins[:, 1:] = plane[:, 1:] != plane[:, :-1]
    starts = np.flatnonzero(begins)
    numbers = plane.ravel()[starts].tolist()
    ends = np.append(starts[1:], width * height).tolist()
    rows: list[list[Run]] = [[] for _ in range(height)]
    for start, end, number in zip(starts.tolist(), ends, numbers, strict=True):
        y = start // width
        rows[y].append((start - y * width, end - y * width, number))
    return LabelMap(width, height, rows, value or [0] * (int(plane.max()) + 1))


def connected(image: Image.Image) -> LabelMap:
    """The connected areas (by edges) of equal value in a picture of one byte a pixel."""
    width, height = image.size
    pixels = np.frombuffer(image.tobytes(), dtype=np.uint8).reshape(height, width)
    begins = np.ones((height, width), dtype=bool)
    begins[:, 1:] = pixels[:, 1:] != pixels[:, :-1]
    starts = np.flatnonzero(begins)
    values = pixels.ravel()[starts].tolist()
    parent = list(range(len(starts)))
    for upper, lower in _alike_over_each_other(pixels, np.cumsum(begins).reshape(height, width) - 1):
        a, b = find(parent, upper), find(parent, lower)
        parent[max(a, b)] = min(a, b)
    rows: list[list[Run]] = [[] for _ in range(height)]
    ends = np.append(starts[1:], width * height)
    for number, (start, end) in enumerate(zip(starts.tolist(), ends.tolist(), strict=True)):
        y = start // width
        rows[y].append((start - y * width, end - y * width, number))
    whole = LabelMap(width, height, rows, values)
    return whole.renumbered([find(parent, i) for i in range(len(parent))])


def _alike_over_each_other(pixels: Pixels, runs: Pixels) -> Iterator[tuple[int, int]]:
    """The numbers of two runs of equal pixels, one in the row over the other, that touch."""
    alike = pixels[1:] == pixels[:-1]
    pairs = np.stack((runs[:-1][alike], runs[1:][alike]), axis=1)
    new = np.ones(len(pairs), dtype=bool)
    new[1:] = (pairs[1:] != pairs[:-1]).any(axis=1)
    return map(tuple, pairs[new].tolist())
