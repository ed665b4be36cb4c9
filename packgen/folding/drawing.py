"""Drawing piles of paper for the figures of fold steps: outlines, creases, page numbers, arrows. In mm."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import atan2, cos, degrees, dist, pi, sin

from packgen.folding.derive import reading
from packgen.folding.figure_values import Arrow, Label, Outline, Point, Scissors
from packgen.folding.layers import Box, Layer, Pile, hinge_line
from packgen.folding.program import Cut, CutAndStack, Edge, Fold, Side
from packgen.folding.slots import FoldLine

_STEP_DOWN = 0.6  # mm by which each lower layer shows beside the one above
_HOOK = (3.5, 6.5, 3.0)  # mm: how far an arrow to behind begins inside its edge, reaches out of it, and to either side
_MOST_SHOWN = 4  # layers of one shape; more make the figure no clearer


@dataclass(frozen=True, slots=True)
class PileDrawing:
    """Draws a pile of sheets that are width x height mm in the figure; pages after `pages` carry no number."""

    pile: Pile
    width: float
    height: float
    pages: int

    def at(self, x: Fraction, y: Fraction) -> Point:
        """A place on the table (as shares of the sheet) in the figure's mm."""
        return float(x) * self.width, float(y) * self.height

    def line(self, x1: Fraction, y1: Fraction, x2: Fraction, y2: Fraction, kind: str) -> FoldLine:
        """A line on the table in the figure's mm."""
        return FoldLine(*self.at(x1, y1), *self.at(x2, y2), kind)  # type: ignore[arg-type]

    def outlines(self) -> tuple[Outline, ...]:
        """The parts of the paper that lie as one, from the lowest up; of many alike only a few."""
        parts: dict[tuple[object, ...], list[Layer]] = {}
        for layer in reversed(self.pile.layers):
            parts.setdefault((layer.sheet, layer.flip_x, layer.flip_y, layer.dx, layer.dy), []).append(layer)
        boxes: list[tuple[Box, Side]] = []
        for part in parts.values():
            box = _around([self.pile.box(layer) for layer in part])
            if sum(other == box for other, _ in boxes) == _MOST_SHOWN:
                boxes.remove(next(found for found in boxes if found[0] == box))
            boxes.append((box, "front" if part[0].front_up else "back"))
        return tuple(self._outline(box, side, boxes[n + 1 :]) for n, (box, side) in enumerate(boxes))

    def _outline(self, box: Box, side: Side, above: Sequence[tuple[Box, Side]]) -> Outline:
        off = _STEP_DOWN * sum(overlap(box, other) for other, _ in above)
        (x1, y1), (x2, y2) = self.at(*box[:2]), self.at(*box[2:])
        return Outline(((x1 + off, y1 - off), (x2 + off, y1 - off), (x2 + off, y2 - off), (x1 + off, y2 - off)), side)

    def old_lines(self) -> tuple[tuple[FoldLine, ...], tuple[FoldLine, ...]]:
        """Creases and cuts that lie flat and open on the top sheet."""
        where = {(one.sheet, one.cell): one for one in self.pile.layers}
        top = self.pile.layers[0].sheet
        found: tuple[list[FoldLine], list[FoldLine]] = ([], [])
        marks = [(hinge, kind, 0) for hinge, kind in self.pile.creases]
        marks += [(hinge, kind, 1) for hinge, kind in self.pile.cuts]  # type: ignore[misc]
        for (sheet, one, other), kind, which in marks:
            first, second = where[sheet, one], where[sheet, other]
            if sheet == top and (first.dx, first.dy) == (second.dx, second.dy) and not self._hidden(first):
                x1, y1, x2, y2 = hinge_line(self.pile.program, (sheet, one, other))
                found[which].append(self.line(*first.at(x1, y1), *first.at(x2, y2), kind))
        return tuple(found[0]), tuple(found[1])

    def _hidden(self, layer: Layer) -> bool:
        above = self.pile.layers[: self.pile.layers.index(layer)]
        return any(overlap(self.pile.box(layer), self.pile.box(other)) for other in above)

    def seen(self) -> dict[int, tuple[Box, float]]:
        """The pages that look up uncovered: their place on the table and how far they are turned there."""
        program = self.pile.program
        sheets = len({layer.sheet for layer in self.pile.layers})
        numbers = {(f.sheet, f.cell, f.side): (n, f.up) for n, f in enumerate(reading(program, sheets), 1)}
        found = {}
        for layer in self.pile.layers:
            side: Side = "front" if layer.front_up else "back"
            number, up = numbers.get((layer.sheet, layer.cell, side), (0, (0, 1)))
            if 0 < number <= self.pages and not self._hidden(layer):
                ux, uy = (-up[0] if layer.flip_x else up[0]), (-up[1] if layer.flip_y else up[1])
                found[number] = (self.pile.box(layer), degrees(atan2(-ux, uy)) % 360)
        return found

    def labels(self) -> tuple[Label, ...]:
        """The numbers of the pages that look up, each in its panel."""
        return tuple(
            Label(*self.at((box[0] + box[2]) / 2, (box[1] + box[3]) / 2), str(number), turn)
            for number, (box, turn) in sorted(self.seen().items())
        )

    def fold(self, step: Fold) -> tuple[FoldLine, Arrow]:
        """The line of a fold, and its arrow: from the edge that moves to where it lands, or round it if behind."""
        left, bottom, right, top = self.pile.bounds
        edge = {"left": left, "right": right, "bottom": bottom, "top": top}[step.moving]
        lands = 2 * step.at - edge
        if step.moving in ("left", "right"):
            line = self.line(step.at, bottom, step.at, top, step.kind)
            start, end = self.at(edge, (bottom + top) / 2), self.at(lands, (bottom + top) / 2)
        else:
            line = self.line(left, step.at, right, step.at, step.kind)
            start, end = self.at((left + right) / 2, edge), self.at((left + right) / 2, lands)
        if step.kind == "mountain":
            return line, Arrow(hook(start, end), behind=True)
        return line, Arrow(curve(_towards(start, end), _towards(end, start)))

    def cut(self, step: Cut) -> tuple[FoldLine, Scissors]:
        """The line of a cut, and the scissors at the end of it that lies at the paper's edge."""
        left, bottom, right, top = self.pile.bounds
        first, last = (step.x1, step.y1), (step.x2, step.y2)
        inside = left < step.x1 < right if step.y1 == step.y2 else bottom < step.y1 < top
        if inside:
            first, last = last, first
        line = self.line(*first, *last, step.kind)
        return line, scissors(line)

    def cut_and_stack(self, step: CutAndStack) -> tuple[FoldLine, Scissors, Arrow]:
        """The cut across a pile, and the arrow from the middle of one part to that of the other."""
        left, bottom, right, top = self.pile.bounds
        upright = step.moving in ("left", "right")
        near, far = (left, right) if upright else (bottom, top)
        low, high = (near + step.at) / 2, (step.at + far) / 2
        start, end = (high, low) if step.moving in ("right", "top") else (low, high)
        if upright:
            line = self.line(step.at, bottom, step.at, top, "cut")
            ends = self.at(start, (bottom + top) / 2), self.at(end, (bottom + top) / 2)
        else:
            line = self.line(left, step.at, right, step.at, "cut")
            ends = self.at((left + right) / 2, start), self.at((left + right) / 2, end)
        return line, scissors(line), Arrow(curve(*ends))

    def edge(self, edge: Edge) -> FoldLine:
        """An edge of the pile as a line to cut."""
        left, bottom, right, top = self.pile.bounds
        return self.line(*{
            "left": (left, bottom, left, top), "right": (right, bottom, right, top),
            "top": (left, top, right, top), "bottom": (left, bottom, right, bottom),
        }[edge], "cut")  # fmt: skip

    def staples(self, spine: str) -> tuple[FoldLine, ...]:
        """Two staples along the spine, a quarter of its length from either end."""
        left, bottom, right, top = self.pile.bounds
        x, low = self.at(right if spine == "right" else left, bottom)
        _, high = self.at(right, top)
        middles = (low + (high - low) * share for share in (0.25, 0.75))
        return tuple(FoldLine(x, y - 1.5, x, y + 1.5, "cut") for y in middles)

    def pushed(self) -> tuple[Arrow, Arrow]:
        """Arrows that push both ends of the pile inward."""
        left, bottom, right, top = self.pile.bounds
        (x1, y), (x2, _) = self.at(left, (bottom + top) / 2), self.at(right, (bottom + top) / 2)
        reach = self.width / 6
        return _straight((x1 - reach, y), (x1 - 1, y)), _straight((x2 + reach, y), (x2 + 1, y))

    def turned(self) -> Arrow:
        """The arrow that turns the pile over like a page."""
        left, bottom, right, top = self.pile.bounds
        return Arrow(curve(self.at(right, (bottom + top) / 2), self.at(left, (bottom + top) / 2)))


def overlap(one: Box, other: Box) -> bool:
    """True if two rectangles share more than an edge."""
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def scissors(line: FoldLine) -> Scissors:
    """Scissors at the beginning of a line, ready to cut along it."""
    return Scissors(line.x1, line.y1, degrees(atan2(line.y2 - line.y1, line.x2 - line.x1)))


def curve(start: Point, end: Point) -> tuple[Point, Point, Point, Point]:
    """A cubic curve that bows upwards, or to the right, by about a sixth of its length."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    bow_x, bow_y = (-dy, dx) if dx > 0 or (dx == 0 and dy < 0) else (dy, -dx)
    first = (start[0] + dx / 4 + bow_x / 4, start[1] + dy / 4 + bow_y / 4)
    second = (end[0] - dx / 4 + bow_x / 4, end[1] - dy / 4 + bow_y / 4)
    return start, first, second, end


def hook(start: Point, end: Point) -> tuple[Point, Point, Point, Point]:
    """A cubic curve from the paper just inside its edge at `start`, out over the edge and back to it, away from `end`.

    An arrow along it whose second half passes behind the paper says: fold this edge behind.
    """
    far = dist(start, end)
    out_x, out_y = (start[0] - end[0]) / far, (start[1] - end[1]) / far
    inside, outside, aside = _HOOK

    def at(out: float, side: float) -> Point:
        return start[0] + out * out_x - side * out_y, start[1] + out * out_y + side * out_x

    return at(-inside, aside), at(outside, aside), at(outside, -aside), at(-0.4, -aside)


def star(leaves: int, reach: float) -> tuple[Outline, ...]:
    """Leaves standing round their common spine, seen from above: each bent round at its outer edge."""
    drawn = []
    for leaf in range(leaves):
        angle = 2 * pi * leaf / leaves + pi / leaves
        side_x, side_y = -sin(angle) * reach / 24, cos(angle) * reach / 24
        tip = (reach * cos(angle), reach * sin(angle))
        drawn.append(Outline(((side_x, side_y), tip, (-side_x, -side_y)), "front"))
    return tuple(drawn)


def zigzag(panels: int, reach: float) -> tuple[Outline, ...]:
    """A strip folded forth and back, its edge seen from above."""
    points = [(index * reach / 2, reach if index % 2 else 0.0) for index in range(panels + 1)]
    return tuple(Outline(pair, "front") for pair in pairwise(points))


def _around(boxes: Sequence[Box]) -> Box:
    return min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes)


def _towards(point: Point, to: Point) -> Point:
    """A point a twelfth of the way on, so that an arrow does not hide the paper's edge."""
    return point[0] + (to[0] - point[0]) / 12, point[1] + (to[1] - point[1]) / 12


def _straight(start: Point, end: Point) -> Arrow:
    third = ((end[0] - start[0]) / 3, (end[1] - start[1]) / 3)
    return Arrow((start, (start[0] + third[0], start[1] + third[1]), (end[0] - third[0], end[1] - third[1]), end))
