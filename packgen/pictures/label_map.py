"""A picture cut into areas: every pixel carries the number of its area. Areas are connected; found and merged by rows.

Runs of equal pixels are handled rather than pixels, which keeps plain Python quick enough.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any

import numpy as np
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


def _touching(above: list[Run], below: list[Run]) -> list[tuple[int, int, int, int]]:
    """Which runs of two rows lie over each other: upper area, lower area, from x, to x."""
    out = []
    i = j = 0
    while i < len(above) and j < len(below):
        start, end = max(above[i][0], below[j][0]), min(above[i][1], below[j][1])
        if start < end:
            out.append((above[i][2], below[j][2], start, end))
        if above[i][1] < below[j][1]:
            i += 1
        else:
            j += 1
    return out


@dataclass(slots=True)
class Border:
    """What two neighbouring areas share: the length of their border in px, and the sum of the contrast along it."""

    length: int = 0
    contrast: int = 0


@dataclass(slots=True)
class Neighbours:
    """For each area its neighbours and the border with each, and the length of its whole outline in px."""

    of: list[dict[int, Border]]
    outline: list[int] = field(default_factory=list)


def neighbours(areas: LabelMap, contrast: bytes | None = None) -> Neighbours:
    """The neighbours of every area; `contrast` gives a byte for each pixel, summed along the borders."""
    width = areas.width
    shared: dict[tuple[int, int], Border] = defaultdict(Border)
    outline = [0] * areas.count
    for y, row in enumerate(areas.rows):
        line = contrast[y * width : (y + 1) * width] if contrast else b""
        outline[row[0][2]] += 1
        outline[row[-1][2]] += 1
        for (_, end, left), (_, _, right) in pairwise(row):
            border = shared[(left, right) if left < right else (right, left)]
            border.length += 1
            border.contrast += line[end] if line else 0
        for upper, lower, start, end in _touching(areas.rows[y - 1], row) if y else ():
            if upper != lower:
                border = shared[(upper, lower) if upper < lower else (lower, upper)]
                border.length += end - start
                border.contrast += sum(line[start:end])
    for row in (areas.rows[0], areas.rows[-1]):
        for start, end, area in row:
            outline[area] += end - start
    of: list[dict[int, Border]] = [{} for _ in range(areas.count)]
    for (a, b), border in shared.items():
        of[a][b] = Border(border.length, border.contrast)
        of[b][a] = Border(border.length, border.contrast)
        outline[a] += border.length
        outline[b] += border.length
    return Neighbours(of, outline)


def without_small(areas: LabelMap, least: float) -> LabelMap:
    """The map with every area of fewer than `least` pixels given to the neighbour it shares most border with."""
    size, near = areas.sizes(), neighbours(areas).of
    parent = list(range(areas.count))
    waiting = sorted((size[i], i) for i in range(areas.count) if size[i] < least)
    while waiting:
        _, area = waiting.pop(0)
        if parent[area] != area or size[area] >= least or not near[area]:
            continue
        into = max(near[area], key=lambda other: (near[area][other].length, -other))
        parent[area] = into
        size[into] += size[area]
        join(near, area, into)
        if size[into] < least:
            waiting.append((size[into], into))
    return areas.renumbered([find(parent, i) for i in range(areas.count)])


def join(near: list[dict[int, Border]], area: int, into: int) -> None:
    """Make one area's neighbours those of another, adding up the borders they share."""
    for other, border in near[area].items():
        del near[other][area]
        if other == into:
            continue
        for one, two in ((into, other), (other, into)):
            kept = near[one].setdefault(two, Border())
            kept.length += border.length
            kept.contrast += border.contrast
    near[area] = {}
