"""From a picture to a given number of closed areas, as a person would outline them.

The picture is smoothed, reduced to few colours and cut into connected areas; then the two neighbours that differ least
are joined, again and again. What counts is how far their colours lie apart, how sharp the border between them is, and
how large they are: a sky that only grows paler becomes one area, while an eye, small but sharp, stays. The number of
areas is whatever is asked for, since the joining can be stopped anywhere.
"""

from __future__ import annotations

import heapq
from dataclasses import dataclass

from PIL import Image, ImageChops, ImageFilter

from packgen.pictures.calm import calmed, grown, stretched
from packgen.pictures.label_map import Border, LabelMap, connected, find, join, neighbours, without_small

_COLOURS = 40
_SPECK = 6  # px; smaller patches of one colour are noise
_CALM_REACH, _CALM_PASSES = 3, 2
_LIGHT, _CHROMA = 0.6, 2.0  # a shadow on a thing changes its lightness more than its colour, and is no border
_CLEAR = 45  # a difference, of 255, that is plain to see: a greater one counts no more
_FAINT = 6.0  # a border less sharp than this, of 255, is no border,
_SAME = 4.0  # nor is one between colours that lie hardly further apart than this,
_GRAIN = 0.7  # nor is one that is hardly sharper than what lies within the areas on its sides
_LARGE = 0.04  # beyond this part of the picture size counts no more, so that a pale sky is not kept in bands
_THIN = 2.6  # mean thickness in px below which an area is a line between areas
_TRIES = 7


@dataclass(frozen=True, slots=True)
class Wanted:
    """How many areas, from `low` to `high`; none below `least` of the picture; `soft` is the blur of edges in px.

    `power`: how much an area's size counts against how clearly it differs; with less, small sharp things last longer.
    """

    low: int
    high: int
    target: int
    least: float
    soft: float
    power: float


def areas_of(image: Image.Image, wanted: Wanted) -> LabelMap:
    """The picture (RGB) cut into areas, their number within the range wanted if the picture has that much in it."""
    fine = _cut_up(image, wanted)
    best: LabelMap | None = None
    aim, below, above = wanted.target, 0, 0
    last = 0
    for _ in range(_TRIES):
        made = _rounded(fine.at(aim, wanted), wanted)
        if best is None or abs(made.count - wanted.target) < abs(best.count - wanted.target):
            best = made
        if abs(made.count - wanted.target) <= wanted.target * 0.15:
            break
        if made.count == last < wanted.target:
            break  # there is no more in the picture
        last = made.count
        if made.count < wanted.target:
            below = aim
            aim = (aim + above) // 2 if above else aim * 2
        else:
            above = aim
            aim = (aim + below) // 2
        if aim in (below, above) or aim > 4 * fine.areas.count:
            break
    assert best is not None
    return best


def _for_the_eye(image: Image.Image) -> Image.Image:
    """Lightness and two colour differences as the three bands, the latter strengthened as the eye does."""
    bands = image.convert("YCbCr").split()
    chroma = [band.point(lambda v: round(128 + (v - 128) * _CHROMA)) for band in bands[1:]]
    return Image.merge("RGB", (bands[0].point(lambda v: round(v * _LIGHT)), *chroma))


def _sharpness(space: Image.Image) -> Image.Image:
    """How much any band changes from one side of a pixel to the other, as L: 16 times the root of it.

    A mean of roots is not led astray by the few pixels where a faint border runs into a strong one.
    """
    bands = [ImageChops.subtract(b.filter(ImageFilter.MaxFilter(3)), b.filter(ImageFilter.MinFilter(3)))
             for b in space.split()]  # fmt: skip
    most = ImageChops.lighter(bands[0], ImageChops.lighter(bands[1], bands[2]))
    return most.point([round(16 * min(v, _CLEAR + 15) ** 0.5) for v in range(256)])


@dataclass(slots=True)
class _Fine:
    """The finest areas and the order in which they were joined."""

    areas: LabelMap
    joins: list[tuple[int, int, float]]

    def at(self, count: int, wanted: Wanted) -> Image.Image:
        """A picture of the areas left when about `count` are, numbered from 1; 0 where lines and specks were."""
        parent = list(range(self.areas.count))
        for done, (area, into, cost) in enumerate(self.joins):
            if done >= self.areas.count - count and cost > 0:
                break
            parent[area] = into
        joined = self.areas.renumbered([find(parent, i) for i in range(self.areas.count)])
        pixels = joined.width * joined.height
        joined = without_small(joined, pixels * wanted.least / 2)
        size, outline = joined.sizes(), neighbours(joined).outline
        thin = [2 * s / o < _THIN for s, o in zip(size, outline, strict=True)]
        order = sorted((i for i in range(joined.count) if not thin[i]), key=lambda i: -size[i])[:255]
        number = [0] * joined.count
        for index, area in enumerate(order or [0]):
            number[area] = index + 1
        return joined.image(number)


def _cut_up(image: Image.Image, wanted: Wanted) -> _Fine:
    plain = stretched(image)
    space = _for_the_eye(calmed(plain, _CALM_REACH, _CALM_PASSES))
    few = space.quantize(_COLOURS, method=Image.Quantize.MEDIANCUT, kmeans=3, dither=Image.Dither.NONE)
    areas = without_small(connected(few), _SPECK)
    palette = few.getpalette() or []
    colours = [tuple(palette[3 * v : 3 * v + 3]) for v in areas.value]
    # Sharpness is that of the picture before it was calmed, where a soft shadow still has a soft edge.
    sharp = _sharpness(_for_the_eye(plain.filter(ImageFilter.MedianFilter(5))))
    # Calming may have moved an edge by a pixel or two: a border takes the sharpest that lies so near.
    near = neighbours(areas, grown(sharp, 2).tobytes())
    joins = _Joining(areas.sizes(), colours, near.of, _middling(areas), wanted.power, _roughness(areas, sharp)).all()
    return _Fine(areas, joins)


def _roughness(areas: LabelMap, sharp: Image.Image) -> list[int]:
    """The sum of the sharpness, as it is given, over each area."""
    data, width = sharp.tobytes(), areas.width
    sums = [0] * areas.count
    for y, row in enumerate(areas.rows):
        for start, end, area in row:
            sums[area] += sum(data[y * width + start : y * width + end])
    return sums


def _middling(areas: LabelMap) -> list[float]:
    """How near to the middle of the picture each area lies, from 1 at the edge to 2: there the subject mostly is."""
    sums, size = [0.0] * areas.count, areas.sizes()
    for y, row in enumerate(areas.rows):
        up = (2 * y / areas.height - 0.95) ** 2
        for start, end, area in row:
            aside = ((start + end) / areas.width - 1) ** 2
            sums[area] += (end - start) * (1 + max(0.0, 1 - up - aside))
    return [s / n for s, n in zip(sums, size, strict=True)]


class _Joining:
    """Joins the two most alike neighbours until one area is left."""

    def __init__(
        self,
        size: list[int],
        colours: list[tuple[int, ...]],
        near: list[dict[int, Border]],
        middling: list[float],
        power: float,
        rough: list[int],
    ) -> None:
        self.size, self.near, self.power, self.rough = size, near, power, rough
        self.middling = [m * n for m, n in zip(middling, size, strict=True)]
        self.sums = [[c * n for c in colour] for colour, n in zip(colours, size, strict=True)]
        self.enough = sum(size) * _LARGE
        self.waiting: list[tuple[float, int, int]] = []

    def all(self) -> list[tuple[int, int, float]]:
        """Every join in order: the area, the one it goes into, and how much was lost by it; 0 if nothing was."""
        for area, others in enumerate(self.near):
            for other in others:
                if area < other:
                    self._offer(area, other)
        joins = []
        while self.waiting:
            known, a, b = heapq.heappop(self.waiting)
            if b not in self.near[a]:
                continue
            # Costs are looked at again only when they come up: an area with many neighbours would be slow otherwise.
            cost = self._cost(a, b)
            if cost > known and self.waiting and cost > self.waiting[0][0]:
                heapq.heappush(self.waiting, (cost, a, b))
                continue
            area, into = (a, b) if self.size[a] <= self.size[b] else (b, a)
            joins.append((area, into, cost))
            self._join(area, into)
        return joins

    def _join(self, area: int, into: int) -> None:
        self.size[into] += self.size[area]
        self.rough[into] += self.rough[area]
        self.middling[into] += self.middling[area]
        for i in range(3):
            self.sums[into][i] += self.sums[area][i]
        moved = [other for other in self.near[area] if other != into]
        join(self.near, area, into)
        for other in moved:
            self._offer(into, other)

    def _offer(self, a: int, b: int) -> None:
        heapq.heappush(self.waiting, (self._cost(a, b), min(a, b), max(a, b)))

    def _cost(self, a: int, b: int) -> float:
        na, nb = self.size[a], self.size[b]
        (ra, ga, ba), (rb, gb, bb) = self.sums[a], self.sums[b]
        apart = (ra / na - rb / nb) ** 2 + (ga / na - gb / nb) ** 2 + (ba / na - bb / nb) ** 2
        border = self.near[a][b]
        inside = min(self.rough[a] / na, self.rough[b] / nb)
        clear = (border.contrast / border.length / 16) ** 2 - _FAINT - _GRAIN * (inside / 16) ** 2
        size = min(na * nb / (na + nb), self.enough)
        cost = size**self.power * min(max(0.0, clear), _CLEAR) * min(max(0.0, apart**0.5 - _SAME), _CLEAR)
        return float(cost * max(self.middling[a] / na, self.middling[b] / nb))


def _rounded(numbers: Image.Image, wanted: Wanted) -> LabelMap:
    """The areas with softened edges: each is blurred, and a pixel goes to the one that is strongest there."""
    least = numbers.width * numbers.height * wanted.least
    return without_small(connected(softened(numbers, wanted.soft)), least)


def softened(numbers: Image.Image, soft: float) -> Image.Image:
    """A picture of numbers 1..255 with its edges softened by `soft` px; where it has 0, the nearest number comes in."""
    shown = numbers
    for grow in (1, 1, 2, 4, 8, 16, 32):
        shown = _strongest(shown, soft * grow)
        if shown.getextrema()[0]:  # no pixel is left without an area
            break
    return shown


def _strongest(numbers: Image.Image, soft: float) -> Image.Image:
    best = Image.new("L", numbers.size, 0)
    shown = Image.new("L", numbers.size, 0)
    reach = round(soft * 3) + 1
    for number in sorted(v for _, v in numbers.getcolors() or [] if isinstance(v, int) and v):
        mask = numbers.point([255 * (v == number) for v in range(256)])
        left, top, right, low = mask.getbbox() or (0, 0, 1, 1)
        box = (max(0, left - reach), max(0, top - reach), min(mask.width, right + reach), min(mask.height, low + reach))
        blurred = mask.crop(box).filter(ImageFilter.GaussianBlur(soft))
        before = best.crop(box)
        stronger = ImageChops.subtract(blurred, before).point([0] + [255] * 255)
        shown.paste(number, box, stronger)
        best.paste(ImageChops.lighter(blurred, before), box)
    return shown
