"""Line art made from a picture itself: closed smooth areas a child can colour, and a few ink strokes.

Three amounts of detail; areas of equal tone, for drawing; and areas with numbers and a palette, for painting. All of
it is vector, in a rectangle 1 wide with its lower left corner at (0, 0), y upwards.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from PIL import Image, ImageChops, ImageFilter

from packgen.pictures.calm import calmed, stretched
from packgen.pictures.colours import Colour, apart, main_colours, nearest_colour
from packgen.pictures.drawn import DRAWING_PX, drawn_areas, drawn_ink, shows_drawing
from packgen.pictures.ink import stroke_outlines, strokes
from packgen.pictures.label_map import LabelMap, connected, find, neighbours, without_small
from packgen.pictures.load import Store, aspect
from packgen.pictures.regions import Wanted, areas_of, softened
from packgen.pictures.shapes import Point, Steps, moved
from packgen.pictures.tracing import Chain, rings, traced


@dataclass(frozen=True, slots=True)
class Region:
    """One area: its closed outline (even-odd), its part of the picture, its mean colour, and where a number fits best.

    `label` is the middle of the largest circle inside, `room` that circle's radius. `number` is 0 if it has none.
    """

    steps: Steps
    area: float
    colour: Colour
    label: Point
    room: float
    number: int = 0


@dataclass(frozen=True, slots=True)
class LineArt:
    """`outlines`, each border once, to be stroked (the first is the frame); `ink`, closed shapes to fill; regions."""

    width: float
    height: float
    outlines: tuple[Steps, ...]
    ink: tuple[Steps, ...]
    regions: tuple[Region, ...]
    palette: tuple[Colour, ...] = ()

    def packed(self) -> tuple[object, ...]:
        """The same as tuples, numbers and texts; see `unpacked`."""
        regions = tuple((r.steps, r.area, r.colour, r.label, r.room, r.number) for r in self.regions)
        return self.width, self.height, self.outlines, self.ink, regions, self.palette

    def placed(self, x: float, y: float, width: float) -> LineArt:
        """The same scaled to a width in mm with its lower left corner at (x, y)."""
        scale = width / self.width
        matrix = (scale, 0.0, 0.0, scale, x, y)
        regions = tuple(
            replace(r, steps=moved(r.steps, matrix), label=(x + r.label[0] * scale, y + r.label[1] * scale),
                    room=r.room * scale)
            for r in self.regions
        )  # fmt: skip
        outlines = tuple(moved(steps, matrix) for steps in self.outlines)
        ink = tuple(moved(steps, matrix) for steps in self.ink)
        return LineArt(width, self.height * scale, outlines, ink, regions, self.palette)


def unpacked(data: tuple[Any, ...]) -> LineArt:
    """The line art that was packed."""
    width, height, outlines, ink, regions, palette = data
    return LineArt(width, height, outlines, ink, tuple(Region(*region) for region in regions), palette)


@dataclass(frozen=True, slots=True)
class _Level:
    """The size in px areas are found at, what is wanted, smoothing, and the ink: size in px, blur, share, most."""

    size: int
    wanted: Wanted
    passes: int
    ink: tuple[int, float, float, int]


LEVELS = {
    1: _Level(260, Wanted(8, 20, 14, 0.006, 3.0, 0.7), 30, (440, 2.4, 0.02, 8)),
    2: _Level(340, Wanted(20, 60, 38, 0.0018, 2.2, 0.6), 24, (520, 2.0, 0.03, 16)),
    3: _Level(420, Wanted(50, 150, 85, 0.0006, 1.7, 0.55), 16, (640, 1.8, 0.03, 30)),
}
_TONE_SIZE, _TONE_LEAST, _TONE_SOFT = 340, 0.003, 2.6
_ALIKE = 0.15
_TOLERANCE = 0.4
_DRAWING_PASSES = 8
_GREY = 0.95  # how light the lightest tone is, so that it is told from bare paper


def line_art(store: Store, path: Path, level: int) -> LineArt:
    """Closed areas and ink strokes: level 1 about a dozen large areas, 2 the main shapes, 3 fine. Raises PictureError.

    The number of areas lies in 8-20, 20-60 or 50-150 if the picture has that much in it.
    """
    made: LineArt = store.keep_long(
        path, ("line art", level), lambda: _line_art(store, path, level), LineArt.packed, unpacked
    )
    return made


def _line_art(store: Store, path: Path, level: int) -> LineArt:
    chosen = LEVELS[level]
    image, areas, drawing = _cut_up(store, path, chosen)
    chains = traced(areas, _DRAWING_PASSES if drawing else chosen.passes, _TOLERANCE)
    if drawing:
        inked = drawn_ink(image.convert("L"), chains, 1.0)
        return _art(image, areas, chains, tuple(_joined(outline, inked) for outline in stroke_outlines(inked)))
    size, blur, share, most = chosen.ink
    grey = store.pixels(path, size, grey=True)
    inked = strokes(grey, chains, grey.width / image.width, blur, share, most)
    ink = tuple(_joined(outline, inked) for outline in stroke_outlines(inked))
    return _art(image, areas, chains, ink)


def _cut_up(store: Store, path: Path, chosen: _Level) -> tuple[Image.Image, LabelMap, bool]:
    """The pixels worked on, their areas, and whether the picture is a drawing of lines."""
    if shows_drawing(store, path):
        image = store.pixels(path, DRAWING_PX)
        return image, drawn_areas(image.convert("L"), chosen.wanted), True
    image = store.pixels(path, chosen.size)
    return image, areas_of(image, chosen.wanted), False


def tone_shapes(store: Store, path: Path, tones: int) -> LineArt:
    """Areas of equal tone, numbered from 1, the lightest; `palette` holds the greys. Raises PictureError."""
    if not 2 <= tones <= 9:
        raise ValueError("between 2 and 9 tones")
    if store.measuring:
        return _unseen(path, tones)
    made: LineArt = store.keep_long(
        path, ("tones", tones), lambda: _tone_shapes(store, path, tones), LineArt.packed, unpacked
    )
    return made


def _tone_shapes(store: Store, path: Path, tones: int) -> LineArt:
    image = store.pixels(path, _TONE_SIZE)
    calm = calmed(stretched(image), 3, 2).convert("L")
    steps = _tone_steps(calm.filter(ImageFilter.GaussianBlur(1.5)), tones)
    shown = softened(calm.point([1 + sum(v < limit for limit in steps) for v in range(256)]), _TONE_SOFT)
    areas = without_small(connected(shown), image.width * image.height * _TONE_LEAST)
    art = _art(image, areas, traced(areas, 24, _TOLERANCE), ())
    greys = tuple(_GREY - (_GREY - 0.12) * i / (tones - 1) for i in range(tones))
    regions = tuple(replace(r, number=areas.value[i]) for i, r in enumerate(art.regions))
    return replace(art, regions=regions, palette=tuple((g, g, g) for g in greys))


def _tone_steps(grey: Image.Image, tones: int) -> list[float]:
    """The limits between tones: halfway between even steps of lightness and even shares of the picture."""
    histogram = grey.histogram()
    whole, even = sum(histogram), []
    run, at = 0, 0
    for part in range(1, tones):
        while run + histogram[at] < whole * part / tones:
            run += histogram[at]
            at += 1
        even.append(at)
    low, high = (float(v) for v in grey.getextrema())  # type: ignore[arg-type]
    return [(share + low + (high - low) * (i + 1) / tones) / 2 for i, share in enumerate(even)]


def numbered(store: Store, path: Path, level: int, colours: int) -> LineArt:
    """The areas of that level, each with the number of its paint from 1; `palette` holds the paints, lightest first.

    Neighbours of one paint that look alike are one area, so there may be fewer areas than in the line art.
    """
    if store.measuring:
        return _unseen(path, colours)
    key = ("numbered", level, colours)
    made: LineArt = store.keep_long(path, key, lambda: _numbered(store, path, level, colours), LineArt.packed, unpacked)
    return made


def _numbered(store: Store, path: Path, level: int, colours: int) -> LineArt:
    chosen = LEVELS[level]
    image, areas, drawing = _cut_up(store, path, chosen)
    means = _mean_colours(image, areas)
    weights = [size**0.7 for size in areas.sizes()]
    paints = sorted(main_colours(means, weights, colours), key=lambda c: (-(2 * c[0] + 3 * c[1] + c[2]), c))
    paint = [nearest_colour(mean, paints) for mean in means]
    areas = _alike_joined(areas, paint, means)
    art = _art(image, areas, traced(areas, _DRAWING_PASSES if drawing else chosen.passes, _TOLERANCE), ())
    regions = tuple(replace(r, number=1 + areas.value[i]) for i, r in enumerate(art.regions))
    return replace(art, regions=regions, palette=tuple(paints))


def _unseen(path: Path, count: int) -> LineArt:
    """Art for a page that is only measured: one area for each of so many numbers."""
    height = 1 / aspect(path)
    grey = (0.5, 0.5, 0.5)
    frame: Steps = (("m", 0, 0), ("l", 1, 0), ("l", 1, height), ("l", 0, height), ("z",))
    regions = tuple(Region(frame, 1 / count, grey, (0.5, height / 2), 0.1, number + 1) for number in range(count))
    return LineArt(1.0, height, (frame,), (), regions, (grey,) * count)


def _alike_joined(areas: LabelMap, paint: list[int], means: list[Colour]) -> LabelMap:
    """The areas with neighbours joined that have one paint and look alike; `value` is the paint."""
    parent = list(range(areas.count))
    for area, others in enumerate(neighbours(areas).of):
        for other in others:
            if paint[area] == paint[other] and apart(means[area], means[other]) < _ALIKE:
                parent[find(parent, max(area, other))] = find(parent, min(area, other))
    painted = LabelMap(areas.width, areas.height, areas.rows, paint)
    return painted.renumbered([find(parent, i) for i in range(areas.count)])


def _art(image: Image.Image, areas: LabelMap, chains: list[Chain], ink: tuple[Steps, ...]) -> LineArt:
    width, height = areas.width, areas.height
    matrix = (1 / width, 0.0, 0.0, -1 / width, 0.0, height / width)
    frame: Steps = (("m", 0, 0), ("l", 1, 0), ("l", 1, height / width), ("l", 0, height / width), ("z",))
    outlines = (frame, *(_closed(chain.steps, chain, matrix) for chain in chains if not chain.framing))
    sizes, means = areas.sizes(), _mean_colours(image, areas)
    around = rings(chains, areas.count)
    regions = []
    for index in range(areas.count):
        (x, y), room = _middle(areas, index)
        regions.append(
            Region(moved(around[index], matrix), sizes[index] / (width * height), means[index],
                   (x / width, (height - y) / width), room / width)
        )  # fmt: skip
    return LineArt(1.0, height / width, outlines, ink, tuple(regions))


def _closed(steps: Steps, chain: Chain, matrix: tuple[float, float, float, float, float, float]) -> Steps:
    return (*moved(steps, matrix), ("z",)) if chain.closed else moved(steps, matrix)


def _joined(outline: list[Chain], areas: LabelMap) -> Steps:
    matrix = (1 / areas.width, 0.0, 0.0, -1 / areas.width, 0.0, areas.height / areas.width)
    return tuple(step for chain in outline for step in _closed(chain.steps, chain, matrix))


def _mean_colours(image: Image.Image, areas: LabelMap) -> list[Colour]:
    sums = [[0, 0, 0] for _ in range(areas.count)]
    bands = [band.tobytes() for band in image.split()]
    for y, row in enumerate(areas.rows):
        at = y * areas.width
        for start, end, area in row:
            for i, band in enumerate(bands):
                sums[area][i] += sum(band[at + start : at + end])
    return [(r / n / 255, g / n / 255, b / n / 255) for (r, g, b), n in zip(sums, areas.sizes(), strict=True)]


def _middle(areas: LabelMap, index: int) -> tuple[Point, float]:
    """The point of an area farthest from its outline, and how far that is, in px: what is left when it is worn away."""
    rows = [(y, run) for y, row in enumerate(areas.rows) for run in row if run[2] == index]
    left, right = min(run[0] for _, run in rows), max(run[1] for _, run in rows)
    top, low = rows[0][0], rows[-1][0] + 1
    mask = Image.new("L", (right - left + 2, low - top + 2), 0)
    for y, (start, end, _) in rows:
        mask.paste(255, (start - left + 1, y - top + 1, end - left + 1, y - top + 2))
    room = 0
    while True:
        # Wearing by a square and by a cross in turn comes near to a circle.
        worn = mask.filter(ImageFilter.MinFilter(3)) if room % 2 else _worn_by_cross(mask)
        if worn.getbbox() is None:
            break
        mask, room = worn, room + 1
    x0, y0, x1, y1 = mask.getbbox() or (0, 0, 1, 1)
    data, width = mask.tobytes(), mask.width
    middle = ((x0 + x1 - 1) / 2, (y0 + y1 - 1) / 2)
    points = [(x, y) for y in range(y0, y1) for x in range(x0, x1) if data[y * width + x]]
    x, y = min(points, key=lambda p: ((p[0] - middle[0]) ** 2 + (p[1] - middle[1]) ** 2, p))
    return (left + x - 0.5, top + y - 0.5), room + 0.5


def _worn_by_cross(mask: Image.Image) -> Image.Image:
    worn = mask
    for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1)):
        worn = ImageChops.darker(worn, ImageChops.offset(mask, dx, dy))
    return worn
