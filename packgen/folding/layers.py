"""Folding a pile of sheets in memory: every panel is a layer with its place on the table, and steps move the layers."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import accumulate, pairwise

from packgen.folding.program import (
    Cell,
    Close,
    Crease,
    Cut,
    CutAndStack,
    Edge,
    Fold,
    Program,
    Step,
    TurnOver,
    Unfold,
)

Box = tuple[Fraction, Fraction, Fraction, Fraction]  # left, bottom, right, top
Hinge = tuple[int, Cell, Cell]  # sheet and two neighbouring panels, the lower or left one first


@dataclass(frozen=True, slots=True)
class Layer:
    """One panel of one sheet, and how it lies: a point (x, y) of the sheet's front is at (±x + dx, ±y + dy)."""

    sheet: int
    cell: Cell
    flip_x: bool = False
    flip_y: bool = False
    dx: Fraction = Fraction(0)
    dy: Fraction = Fraction(0)

    @property
    def front_up(self) -> bool:
        """True if the sheet's front looks up: every turn mirrors one axis, so two turns bring it up again."""
        return self.flip_x == self.flip_y

    def at(self, x: Fraction, y: Fraction) -> tuple[Fraction, Fraction]:
        """Where a point of the sheet's front lies on the table."""
        return (-x if self.flip_x else x) + self.dx, (-y if self.flip_y else y) + self.dy

    def mirrored_x(self, line: Fraction) -> Layer:
        """The layer turned over about the upright line at `line`."""
        return replace(self, flip_x=not self.flip_x, dx=2 * line - self.dx)

    def mirrored_y(self, line: Fraction) -> Layer:
        """The layer turned over about the level line at `line`."""
        return replace(self, flip_y=not self.flip_y, dy=2 * line - self.dy)


@dataclass(frozen=True, slots=True)
class Pile:
    """The sheets as they lie on the table: layers from the top down, and what has been creased and cut so far.

    `creases` holds (hinge, kind) with the kind as seen on the sheet's front. `before` are the states that Unfold goes
    back to.
    """

    program: Program
    layers: tuple[Layer, ...]
    creases: tuple[tuple[Hinge, Crease], ...] = ()
    cuts: tuple[tuple[Hinge, str], ...] = ()
    before: tuple[tuple[Layer, ...], ...] = ()

    def box(self, layer: Layer) -> Box:
        """The rectangle of the table that a layer covers."""
        left, bottom, right, top = cell_box(self.program, layer.cell)
        (x1, y1), (x2, y2) = layer.at(left, bottom), layer.at(right, top)
        return min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)

    @property
    def bounds(self) -> Box:
        """The rectangle that the whole pile covers."""
        boxes = [self.box(layer) for layer in self.layers]
        return (
            min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes),
        )  # fmt: skip


def cell_box(program: Program, cell: Cell) -> Box:
    """A panel's rectangle on the flat sheet's front."""
    xs = (Fraction(0), *accumulate(program.columns))
    ys = (Fraction(0), *accumulate(program.rows))
    return xs[cell[0]], ys[cell[1]], xs[cell[0] + 1], ys[cell[1] + 1]


def cells(program: Program) -> Iterator[Cell]:
    """Every panel of the sheet."""
    return ((c, r) for r in range(len(program.rows)) for c in range(len(program.columns)))


def hinges(program: Program, sheets: Iterable[int]) -> Iterator[Hinge]:
    """Every pair of panels that share an edge of the uncut sheet."""
    for sheet in sheets:
        for c, r in cells(program):
            if c + 1 < len(program.columns):
                yield sheet, (c, r), (c + 1, r)
            if r + 1 < len(program.rows):
                yield sheet, (c, r), (c, r + 1)


def hinge_line(program: Program, hinge: Hinge) -> Box:
    """The shared edge of two neighbouring panels on the front: x1, y1, x2, y2 with x1 = x2 or y1 = y2."""
    first, second = cell_box(program, hinge[1]), cell_box(program, hinge[2])
    if hinge[1][1] == hinge[2][1]:
        return first[2], first[1], first[2], first[3]
    return second[0], second[1], second[2], second[1]


def laid_out(program: Program, sheets: int = 1) -> Pile:
    """The sheets on the table before the first step: sheet 0 on top, then turned over if the back is to look up."""
    layers = tuple(Layer(sheet, cell) for sheet in range(sheets) for cell in cells(program))
    pile = Pile(program, layers)
    return after(pile, TurnOver()) if program.laid == "back" else pile


def folded(program: Program, sheets: int = 1) -> Pile:
    """The pile after every step of the program."""
    pile = laid_out(program, sheets)
    for step in program.steps:
        pile = after(pile, step)
    return pile


def after(pile: Pile, step: Step) -> Pile:
    """The pile after one step. Raises ValueError if the step would fold through the middle of a panel."""
    match step:
        case Fold():
            return _fold(pile, step)
        case Unfold(count):
            steps = min(count or len(pile.before), len(pile.before))
            return replace(pile, layers=pile.before[-steps], before=pile.before[:-steps]) if steps else pile
        case TurnOver():
            left, _, right, _ = pile.bounds
            middle = (left + right) / 2
            return replace(pile, layers=tuple(one.mirrored_x(middle) for one in reversed(pile.layers)), before=())
        case Cut():
            return _cut(pile, step)
        case CutAndStack():
            return _cut_and_stack(pile, step)
        case Close():
            return _close(pile, step)
        case _:
            return pile


def opposite(kind: Crease) -> Crease:
    """The same crease seen from the other side of the paper."""
    return "mountain" if kind == "valley" else "valley"


def _moves(pile: Pile, layer: Layer, at: Fraction, moving: Edge) -> bool:
    """True if the layer lies wholly in the moving part, False if wholly in the other."""
    left, bottom, right, top = pile.box(layer)
    low, high = (left, right) if moving in ("left", "right") else (bottom, top)
    if low < at < high:
        raise ValueError(f"a fold or cut at {at} of the sheet runs through the middle of panel {layer.cell}")
    return low >= at if moving in ("right", "top") else high <= at


def _fold(pile: Pile, step: Fold) -> Pile:
    upright = step.moving in ("left", "right")
    moved: list[Layer] = []
    still: list[Layer] = []
    for layer in pile.layers:
        (moved if _moves(pile, layer, step.at, step.moving) else still).append(layer)
    turned = [one.mirrored_x(step.at) if upright else one.mirrored_y(step.at) for one in reversed(moved)]
    gone = {(one.sheet, one.cell) for one in moved}
    facing = {(one.sheet, one.cell): one.front_up for one in pile.layers}
    creases = dict(pile.creases)
    for hinge in _whole(pile):
        first, second = (hinge[0], hinge[1]), (hinge[0], hinge[2])
        if (first in gone) != (second in gone):
            creases[hinge] = step.kind if facing[first] else opposite(step.kind)
    layers = (*turned, *still) if step.kind == "valley" else (*still, *turned)
    return replace(pile, layers=tuple(layers), creases=tuple(creases.items()), before=(*pile.before, pile.layers))


def _whole(pile: Pile) -> Iterator[Hinge]:
    """The hinges that no cut has opened."""
    opened = {hinge for hinge, _ in pile.cuts}
    sheets = sorted({layer.sheet for layer in pile.layers})
    return (hinge for hinge in hinges(pile.program, sheets) if hinge not in opened)


def _cut(pile: Pile, step: Cut) -> Pile:
    where = {(one.sheet, one.cell): one for one in pile.layers}
    low_x, high_x = sorted((step.x1, step.x2))
    low_y, high_y = sorted((step.y1, step.y2))
    found = []
    for hinge in _whole(pile):
        x1, y1, x2, y2 = hinge_line(pile.program, hinge)
        ends = (where[hinge[0], hinge[1]].at(x1, y1), where[hinge[0], hinge[1]].at(x2, y2))
        if all(low_x <= x <= high_x and low_y <= y <= high_y for x, y in ends):
            found.append((hinge, step.kind))
    if not found:
        raise ValueError("a cut must run along the edges of panels")
    opened = {hinge for hinge, _ in found}
    kept = tuple(pair for pair in pile.creases if pair[0] not in opened)
    return replace(pile, cuts=(*pile.cuts, *found), creases=kept)


def _cut_and_stack(pile: Pile, step: CutAndStack) -> Pile:
    upright = step.moving in ("left", "right")
    left, bottom, right, top = pile.bounds
    reach = {"left": right - step.at, "right": left - step.at, "top": bottom - step.at, "bottom": top - step.at}
    by = reach[step.moving]
    moved: list[Layer] = []
    still: list[Layer] = []
    for one in pile.layers:
        (moved if _moves(pile, one, step.at, step.moving) else still).append(one)
    laid = [replace(one, dx=one.dx + by) if upright else replace(one, dy=one.dy + by) for one in moved]
    gone = {(one.sheet, one.cell) for one in moved}
    opened = [(h, "cut") for h in _whole(pile) if ((h[0], h[1]) in gone) != ((h[0], h[2]) in gone)]
    return replace(pile, layers=(*laid, *still), cuts=(*pile.cuts, *opened), before=())


def walk(pile: Pile, step: Close) -> tuple[Cell, ...]:
    """The panels of the strip or ring in order. Raises ValueError if the cuts do not leave one strip of all panels."""
    joined: dict[Cell, list[Cell]] = {cell: [] for cell in cells(pile.program)}
    for _, one, other in _whole(pile):
        joined[one].append(other)
        joined[other].append(one)
    if any(len(others) > 2 for others in joined.values()) or step.second not in joined[step.first]:
        raise ValueError("the cuts must leave one strip or ring of panels that begins as told")
    order = [step.first, step.second]
    while onward := [cell for cell in joined[order[-1]] if cell not in order]:
        order.append(onward[0])
    if len(order) != len(joined):
        raise ValueError("the strip of panels must go through every panel of the sheet")
    return tuple(order)


def _close(pile: Pile, step: Close) -> Pile:
    order = walk(pile, step)
    left, _, right, _ = cell_box(pile.program, order[0])
    layer = Layer(0, order[0])
    if step.face == "down":
        layer = layer.mirrored_x((left + right) / 2)
    layers = [layer]
    creases = dict(pile.creases)
    outward: Crease = "mountain" if step.face == "up" else "valley"
    for one, other in pairwise(order):
        hinge = _between(one, other)
        x1, y1, x2, _ = hinge_line(pile.program, hinge)
        x, y = layer.at(x1, y1)
        layer = replace(layer, cell=other)
        layer = layer.mirrored_x(x) if x1 == x2 else layer.mirrored_y(y)
        layers.append(layer)
        creases[hinge], outward = outward, opposite(outward)
    ring = _between(order[-1], order[0])
    if len(order) > 2 and ring in set(_whole(pile)):
        creases[ring] = outward
    return replace(pile, layers=tuple(layers), creases=tuple(creases.items()), before=())


def _between(one: Cell, other: Cell) -> Hinge:
    return 0, min(one, other), max(one, other)
