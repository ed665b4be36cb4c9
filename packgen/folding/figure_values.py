"""What a figure of a fold step is made of: outlines, lines, arrows, scissors and labels in a small frame of its own."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from math import cos, radians, sin

from packgen.folding.program import Side
from packgen.folding.slots import FoldLine

Point = tuple[float, float]

# How far the handles of scissors 5 mm long, as figures have them, reach behind the tips and to either side, in mm.
HANDLES = (4.7, 1.8)


@dataclass(frozen=True, slots=True)
class Outline:
    """The outline of a part of the paper, and which side of the sheet looks up. Two points are an edge seen end on."""

    points: tuple[Point, ...]
    side: Side


@dataclass(frozen=True, slots=True)
class Label:
    """A page's number, centred in its panel and turned as the page is (anticlockwise)."""

    x: float
    y: float
    text: str
    rotation_deg: float


@dataclass(frozen=True, slots=True)
class Arrow:
    """A curved arrow: start, two control points, end (a cubic curve). `behind`: it passes behind the paper."""

    points: tuple[Point, Point, Point, Point]
    behind: bool = False


@dataclass(frozen=True, slots=True)
class Scissors:
    """Where scissors begin to cut and which way they point (anticlockwise from the right)."""

    x: float
    y: float
    angle_deg: float


@dataclass(frozen=True, slots=True)
class StepFigure:
    """One step: the paper as it lies before it, and what to do. In mm from the lower left of a width x height frame.

    outlines: from the lowest up. creases: folds made before and opened again; slits: cuts made before. folds, cuts: the
    lines to fold and cut now. staples: short lines across the fold. The sentence says what to do, the caution what to
    mind (empty if nothing).
    """

    sentence: str
    caution: str = ""
    number: int = 0
    width: float = 0.0
    height: float = 0.0
    outlines: tuple[Outline, ...] = ()
    creases: tuple[FoldLine, ...] = ()
    slits: tuple[FoldLine, ...] = ()
    folds: tuple[FoldLine, ...] = ()
    cuts: tuple[FoldLine, ...] = ()
    staples: tuple[FoldLine, ...] = ()
    arrows: tuple[Arrow, ...] = ()
    scissors: tuple[Scissors, ...] = ()
    labels: tuple[Label, ...] = ()


def framed(figure: StepFigure, number: int) -> StepFigure:
    """The figure with its number, moved so that everything lies in a frame that begins at the origin."""
    points = list(_points(figure))
    left, bottom = min(x for x, _ in points), min(y for _, y in points)

    def at(point: Point) -> Point:
        return point[0] - left, point[1] - bottom

    def lines(given: Iterable[FoldLine]) -> tuple[FoldLine, ...]:
        return tuple(FoldLine(*at((g.x1, g.y1)), *at((g.x2, g.y2)), g.kind) for g in given)

    def arrow(given: Arrow) -> Arrow:
        start, first, second, end = given.points
        return Arrow((at(start), at(first), at(second), at(end)), given.behind)

    return replace(
        figure,
        number=number,
        width=max(x for x, _ in points) - left,
        height=max(y for _, y in points) - bottom,
        outlines=tuple(Outline(tuple(at(p) for p in one.points), one.side) for one in figure.outlines),
        creases=lines(figure.creases),
        slits=lines(figure.slits),
        folds=lines(figure.folds),
        cuts=lines(figure.cuts),
        staples=lines(figure.staples),
        arrows=tuple(arrow(one) for one in figure.arrows),
        scissors=tuple(Scissors(*at((one.x, one.y)), one.angle_deg) for one in figure.scissors),
        labels=tuple(Label(*at((one.x, one.y)), one.text, one.rotation_deg) for one in figure.labels),
    )


def _points(figure: StepFigure) -> Iterator[Point]:
    for outline in figure.outlines:
        yield from outline.points
    for arrow in figure.arrows:
        yield from _on_curve(arrow.points)
    for line in (*figure.folds, *figure.cuts, *figure.staples):
        yield line.x1, line.y1
        yield line.x2, line.y2
    for pair in figure.scissors:
        yield from _handles(pair)


def _handles(pair: Scissors) -> Iterator[Point]:
    """How far the handles of a pair of scissors reach, behind the tips and to both sides."""
    cos_a, sin_a = cos(radians(pair.angle_deg)), sin(radians(pair.angle_deg))
    for aside in (-HANDLES[1], HANDLES[1]):
        yield pair.x - HANDLES[0] * cos_a - aside * sin_a, pair.y - HANDLES[0] * sin_a + aside * cos_a


def _on_curve(points: tuple[Point, Point, Point, Point]) -> Iterator[Point]:
    """Some points of a cubic curve, close enough to tell how far it reaches."""
    for step in range(9):
        t = step / 8
        weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
        yield (
            sum(w * x for w, (x, _) in zip(weights, points, strict=True)),
            sum(w * y for w, (_, y) in zip(weights, points, strict=True)),
        )
