"""Line art made from a picture itself, or from a drawing of it: closed smooth areas a child can colour.

Three amounts of detail; areas of equal tone, for drawing; and areas with numbers and a palette, for painting. All of
it is vector, in a rectangle 1 wide with its lower left corner at (0, 0), y upwards.
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import numpy as np
from PIL import Image

from packgen.pictures.calm import stretched
from packgen.pictures.cells import Plane, middles
from packgen.pictures.colours import Colour, apart, nearest_colour
from packgen.pictures.drawn import AREAS_PX, CELLS_PX, INK_PX, drawn_areas, drawn_cells, drawn_ink, shows_drawing
from packgen.pictures.flats import flat_pixels, line_pixels, things
from packgen.pictures.label_map import LabelMap, connected, find
from packgen.pictures.load import Store, aspect
from packgen.pictures.paints import painted_things, paints_for
from packgen.pictures.regions import Wanted, areas_of
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
    """`outlines`, each border once, to be stroked (the first is the frame); `ink`, closed shapes to fill; regions.

    There is one kind of line in it: outlines traced from a picture, or the ink of a drawing.
    """

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
    """What is wanted of the areas, and how often their outlines are smoothed."""

    wanted: Wanted
    passes: int


_PX = 480  # the long side of the picture areas are found in
_PAPER = 165.0  # mm; a picture to colour is about so long on paper
# A crayon needs 11 mm across, a thick pencil 5.5, a sharp one 3.2 (common practice, no source).
LEVELS = {
    1: _Level(Wanted(8, 20, 14, 11.0 / _PAPER, 0.75, 0.75), 30),
    2: _Level(Wanted(20, 60, 44, 5.5 / _PAPER, 0.6, 0.75), 24),
    3: _Level(Wanted(50, 150, 110, 3.2 / _PAPER, 0.5), 16),
}
_ALIKE, _TONE_ALIKE = 0.06, 0.05
_TOLERANCE = 0.4
_DRAWING_PASSES = 8
_INK_PASSES, _INK_TOLERANCE = 6, 0.3
_BARE = 0.995
_BESIDE = 0.25  # a number stands beside the ink if it has at least so much of the room it would have over it
_LIGHT, _DARK = 0.95, 0.27  # the lightest tone is told from bare paper, the darkest is what a soft pencil gives


@dataclass(frozen=True, slots=True)
class _Ink:
    """What is drawn in a drawing: which pixels, and the shapes to fill in a picture 1 wide."""

    pixels: Image.Image
    strokes: tuple[Steps, ...]


@dataclass(frozen=True, slots=True)
class _Cut:
    """A picture cut into areas: its colours in pixels of the areas, the areas, and the ink if it is a drawing."""

    image: Image.Image
    areas: LabelMap
    ink: _Ink | None = None
    thing: tuple[int, ...] = ()  # of each area, if the drawing's fills tell,
    fill: tuple[Colour, ...] = ()  # and the fill of each thing


def line_art(store: Store, path: Path, level: int, drawing: Path | None = None) -> LineArt:
    """Closed areas: level 1 about a dozen large ones, 2 the main shapes, 3 fine; of a drawing its ink too.

    `drawing` is a line drawing of the picture, whose lines are then taken instead of traced ones. The number of areas
    lies in 8-20, 20-60 or 50-150 if the picture has that much in it. Raises PictureError.
    """
    if store.measuring:
        return _unseen(path, LEVELS[level].wanted.low)
    key = ("line art", level, _content(store, drawing))
    made: LineArt = store.keep_long(path, key, lambda: _line_art(store, path, level, drawing), LineArt.packed, unpacked)
    return made


def lines_alone(store: Store, path: Path, level: int, drawing: Path | None = None) -> LineArt:
    """The lines of the line art; of a drawing without its areas, which is quicker. Raises PictureError."""
    lines = drawing or path
    if store.measuring or not shows_drawing(store, lines, drawing is not None):
        return line_art(store, path, level, drawing)
    height = 1 / aspect(path)
    return LineArt(1.0, height, (_frame(height),), _ink(store, path, drawing), ())


def _frame(height: float) -> Steps:
    return (("m", 0, 0), ("l", 1, 0), ("l", 1, height), ("l", 0, height), ("z",))


def _content(store: Store, drawing: Path | None) -> str:
    return store.content(drawing) if drawing else ""


def _line_art(store: Store, path: Path, level: int, drawing: Path | None) -> LineArt:
    cut = _cut_up(store, path, level, drawing)
    return _art(cut, LEVELS[level].passes)


def _cut_up(store: Store, path: Path, level: int, drawing: Path | None, whole: bool = False) -> _Cut:
    """The picture, or the drawing of it, cut into areas; `whole`: every one the drawing has, however narrow."""
    wanted = LEVELS[level].wanted
    lines = drawing or path
    if shows_drawing(store, lines, drawing is not None):
        side = CELLS_PX if whole else AREAS_PX
        drawn = _drawn(store, path, drawing, side)
        image = store.pixels(path, side).resize(drawn.size)
        areas = drawn_cells(drawn) if whole else drawn_areas(drawn, wanted, image if drawing else None)
        flat = flat_pixels(store, drawing, drawn.size) if drawing else None
        ink = _Ink(_inked(store, path, drawing, drawn.size), _ink(store, path, drawing))
        thing, fill = things(areas.plane(), flat) if flat else ((), ())
        return _Cut(image, areas, ink, tuple(thing), tuple(fill))
    image = store.pixels(lines, _PX)
    areas = areas_of(image, wanted)
    return _Cut(store.pixels(path, _PX).resize(image.size) if drawing else image, areas)


def _drawn(store: Store, path: Path, drawing: Path | None, least: int) -> Image.Image:
    """A drawing in grey; of one given beside its picture the lines alone."""
    return line_pixels(store, drawing, least) if drawing else store.pixels(path, least, grey=True)


def tone_shapes(store: Store, path: Path, level: int, tones: int, drawing: Path | None = None) -> LineArt:
    """The areas of that level in so many tones, numbered from 1, the lightest; `palette` holds the greys.

    Neighbours of one tone that are nearly alike are one area. Raises PictureError.
    """
    if not 2 <= tones <= 9:
        raise ValueError("between 2 and 9 tones")
    if store.measuring:
        return _unseen(path, tones)
    key = ("tones", level, tones, _content(store, drawing))
    made: LineArt = store.keep_long(
        path, key, lambda: _tone_shapes(store, path, level, tones, drawing), LineArt.packed, unpacked
    )
    return made


def _tone_shapes(store: Store, path: Path, level: int, tones: int, drawing: Path | None) -> LineArt:
    cut = _cut_up(store, path, level, drawing, whole=True)
    cut = replace(cut, image=stretched(cut.image).convert("L").convert("RGB"))
    means = _mean_colours(cut)
    limits = _tone_limits([mean[0] for mean in means], cut.areas.sizes(), tones)
    tone = _in_order([sum(mean[0] < limit for limit in limits) for mean in means])
    art = _art_in(cut, level, tone, means, _TONE_ALIKE)
    greys = tuple(_LIGHT - (_LIGHT - _DARK) * i / max(1, max(tone)) for i in range(max(tone) + 1))
    return replace(art, palette=tuple((g, g, g) for g in greys))


def _in_order(numbers: list[int]) -> list[int]:
    """The numbers as 0, 1, 2 ... without those that nothing has."""
    used = {number: k for k, number in enumerate(sorted(set(numbers)))}
    return [used[number] for number in numbers]


def _tone_limits(greys: list[float], sizes: list[int], tones: int) -> list[float]:
    """The limits between tones: halfway between even steps of lightness and even shares of the picture."""
    order = sorted(zip(greys, sizes, strict=True))
    low, high, whole = order[0][0], order[-1][0], sum(sizes)
    limits, covered = [], 0
    places = iter(order)
    grey = low
    for part in range(1, tones):
        while covered < whole * part / tones:
            grey, size = next(places)
            covered += size
        limits.append((grey + low + (high - low) * part / tones) / 2)
    return limits


def numbered(store: Store, path: Path, level: int, colours: int, drawing: Path | None = None) -> LineArt:
    """The areas of that level, each with the number of its paint from 1; `palette` holds the paints, lightest first.

    Neighbours of one paint that look alike are one area, so there may be fewer areas than in the line art.
    """
    if store.measuring:
        return _unseen(path, colours)
    key = ("numbered", level, colours, _content(store, drawing))
    made: LineArt = store.keep_long(
        path, key, lambda: _numbered(store, path, level, colours, drawing), LineArt.packed, unpacked
    )
    return made


def _numbered(store: Store, path: Path, level: int, colours: int, drawing: Path | None) -> LineArt:
    cut = _cut_up(store, path, level, drawing, whole=True)
    means, sizes = _mean_colours(cut), cut.areas.sizes()
    if cut.thing:
        seen = dict(zip(cut.thing, means, strict=True))
        fill = [seen[k] if min(own) > _BARE else own for k, own in enumerate(cut.fill)]  # bare paper tells no colour
        of_things, paints = painted_things(fill, *_lying(cut, sizes), colours)
        paint = [of_things[thing] for thing in cut.thing]
    else:
        paints = paints_for(means, [size**0.7 for size in sizes], colours)
        paint = [nearest_colour(mean, paints) for mean in means]
    used = tuple(paints[k] for k in sorted(set(paint)))
    art = _art_in(cut, level, _in_order(paint), means, _ALIKE)
    if cut.thing:
        own = [fill[thing] for thing in cut.thing]
        art = replace(art, regions=tuple(replace(r, colour=c) for r, c in zip(art.regions, own, strict=True)))
    return replace(art, palette=used)


def _lying(cut: _Cut, sizes: list[int]) -> tuple[list[float], dict[int, set[int]]]:
    """The size of each thing in px, and the things beside it."""
    size, beside = [0.0] * len(cut.fill), defaultdict[int, set[int]](set)
    for thing, own in zip(cut.thing, sizes, strict=True):
        size[thing] += own
    for one, other in _touching(cut.areas.plane()):
        a, b = cut.thing[one], cut.thing[other]
        if a != b:
            beside[a].add(b)
            beside[b].add(a)
    return size, beside


def _unseen(path: Path, count: int) -> LineArt:
    """Art for a page that is only measured: one area for each of so many numbers."""
    height = 1 / aspect(path)
    grey = (0.5, 0.5, 0.5)
    frame = _frame(height)
    regions = tuple(Region(frame, 1 / count, grey, (0.5, height / 2), 0.1, number + 1) for number in range(count))
    return LineArt(1.0, height, (frame,), (), regions, (grey,) * count)


def _art_in(cut: _Cut, level: int, paint: list[int], means: list[Colour], alike: float) -> LineArt:
    """The art with the areas numbered by their paints from 1, neighbours joined that have one paint and look alike."""
    parent = list(range(cut.areas.count))
    plane = cut.areas.plane()
    for one, other in _touching(plane) if cut.ink is None else ():
        if paint[one] == paint[other] and apart(means[one], means[other]) < alike:
            parent[find(parent, max(one, other))] = find(parent, min(one, other))
    painted = LabelMap(cut.areas.width, cut.areas.height, cut.areas.rows, paint)
    areas = painted.renumbered([find(parent, i) for i in range(cut.areas.count)])
    art = _art(replace(cut, areas=areas, thing=cut.thing if cut.ink else ()), LEVELS[level].passes)
    regions = tuple(replace(r, number=1 + areas.value[i]) for i, r in enumerate(art.regions))
    return replace(art, regions=regions)


def _touching(plane: Plane) -> list[tuple[int, int]]:
    """The pairs of areas that lie beside each other, the lower number first."""
    pairs = set()
    for one, two in ((plane[:, :-1], plane[:, 1:]), (plane[:-1], plane[1:])):
        other = one != two
        pairs |= set(zip(np.minimum(one, two)[other].tolist(), np.maximum(one, two)[other].tolist(), strict=True))
    return sorted(pairs)


def _art(cut: _Cut, passes: int) -> LineArt:
    areas = cut.areas
    width, height = areas.width, areas.height
    chains = traced(areas, _DRAWING_PASSES if cut.ink else passes, _TOLERANCE)
    matrix = (1 / width, 0.0, 0.0, -1 / width, 0.0, height / width)
    inside = () if cut.ink else (chain for chain in chains if not chain.framing)
    outlines = (_frame(height / width), *(_closed(chain.steps, chain, matrix) for chain in inside))
    sizes, means = areas.sizes(), _mean_colours(cut)
    around = rings(chains, areas.count)
    regions = tuple(
        Region(moved(around[index], matrix), sizes[index] / (width * height), means[index],
               (x / width, (height - y) / width), room / width)
        for index, (x, y, room) in enumerate(_spots(cut))
    )  # fmt: skip
    return LineArt(1.0, height / width, outlines, cut.ink.strokes if cut.ink else (), regions)


def _ink(store: Store, path: Path, drawing: Path | None) -> tuple[Steps, ...]:
    """The shapes to fill that make a drawing, in a picture 1 wide."""

    def made() -> tuple[Steps, ...]:
        ink = connected(drawn_ink(_drawn(store, path, drawing, INK_PX)))
        matrix = (1 / ink.width, 0.0, 0.0, -1 / ink.width, 0.0, ink.height / ink.width)
        around = rings(traced(ink, _INK_PASSES, _INK_TOLERANCE, apart=False), ink.count)
        return tuple(moved(steps, matrix) for steps, inked in zip(around, ink.value, strict=True) if inked)

    found: tuple[Steps, ...] = store.keep_long(drawing or path, ("ink", drawing is not None), made)
    return found


def _inked(store: Store, path: Path, drawing: Path | None, size: tuple[int, int]) -> Image.Image:
    """The pixels of a picture of that size which the ink of a drawing touches, thin and faint strokes too."""
    touched = drawn_ink(_drawn(store, path, drawing, INK_PX)).resize(size, Image.Resampling.BOX)
    return touched.point([0] + [255] * 255)


def _spots(cut: _Cut) -> list[tuple[float, float, float]]:
    """Where a number fits best in each area, and the room there; clear of the ink if there is enough room beside it."""
    plane = cut.areas.plane()
    free = middles(plane)
    if cut.ink is None:
        return free
    beside = middles(plane, np.asarray(cut.ink.pixels) > 0)
    return [clear if clear[2] > _BESIDE * spot[2] else spot for clear, spot in zip(beside, free, strict=True)]


def _closed(steps: Steps, chain: Chain, matrix: tuple[float, float, float, float, float, float]) -> Steps:
    return (*moved(steps, matrix), ("z",)) if chain.closed else moved(steps, matrix)


def _mean_colours(cut: _Cut) -> list[Colour]:
    """The mean colour of each area; of the areas of one thing that of them all."""
    numbers = cut.areas.plane().ravel()
    of = np.array(cut.thing or range(cut.areas.count))
    owner = of[numbers]
    pixels = np.asarray(cut.image).reshape(-1, 3) / 255
    sizes = np.bincount(owner)
    bands = [(np.bincount(owner, pixels[:, k])[of] / sizes[of]).tolist() for k in range(3)]
    return list(zip(*bands, strict=True))
