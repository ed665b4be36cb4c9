"""Reading a folded pile: in which order its faces come, which way up each stands, and where its spine lies."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from packgen.folding.layers import Layer, Pile, folded
from packgen.folding.program import Cell, Close, Program, Side, Spine

Vector = tuple[int, int]

_UP: dict[str, Vector] = {"top": (0, 1), "bottom": (0, -1), "left": (-1, 0), "right": (1, 0)}


@dataclass(frozen=True, slots=True)
class Face:
    """One side of one panel, in reading order.

    up: the way to the head of its page, in the coordinates of the sheet's front (also for a face on the back).
    spine: the edge of the page that lies at the spine, as the page is read.
    depth: how many leaves of its section lie outside of it, counted at the spine.
    """

    sheet: int
    cell: Cell
    side: Side
    up: Vector
    spine: Spine
    depth: int


@lru_cache(maxsize=256)
def reading(program: Program, sheets: int = 1) -> tuple[Face, ...]:
    """Every face that carries a page, in the order of the pages, for one section of that many sheets."""
    if program.assembly == "joined":
        return _joined(program, sheets)
    pile = folded(program, sheets)
    faces = tuple(face for face in _in_order(pile) if _printed(program, face))
    return faces


def _joined(program: Program, sheets: int) -> tuple[Face, ...]:
    one = tuple(face for face in _in_order(folded(program)) if _printed(program, face))
    fronts = [face for face in one if face.side == "front"]
    backs = [face for face in one if face.side == "back"]
    there = [_on_sheet(face, sheet) for sheet in range(sheets) for face in fronts]
    back = [_on_sheet(face, sheet) for sheet in reversed(range(sheets)) for face in backs]
    return (*there, *back)


def _on_sheet(face: Face, sheet: int) -> Face:
    return Face(sheet, face.cell, face.side, face.up, face.spine, face.depth)


def _printed(program: Program, face: Face) -> bool:
    return (program.faces == 2 or face.side == "front") and (*face.cell, face.side) not in program.blank


def _in_order(pile: Pile) -> Iterator[Face]:
    match pile.program.reads:
        case "leaf by leaf":
            for group in _groups(pile):
                for place, layer in enumerate(group):
                    depth = _depth(pile.program, place, len(group))
                    yield _face(pile, layer, upper=True, depth=depth)
                    yield _face(pile, layer, upper=False, depth=depth)
        case "side by side":
            for layer in pile.layers:
                yield _face(pile, layer, upper=layer.front_up)
            for layer in reversed(pile.layers):
                yield _face(pile, layer, upper=not layer.front_up)
        case "opened out":
            yield from _opened_out(pile)


def _groups(pile: Pile) -> list[list[Layer]]:
    """The layers by the place they lie at, places from the top left, each from the top layer down."""
    found: dict[tuple[Fraction, Fraction], list[Layer]] = {}
    for layer in pile.layers:
        left, _, _, top = pile.box(layer)
        found.setdefault((-top, left), []).append(layer)
    return [found[place] for place in sorted(found)]


def _depth(program: Program, place: int, leaves: int) -> int:
    """How many leaves lie outside of a leaf: those of a section are folded round one another, first round last."""
    section = program.spine in ("left", "right") and not any(isinstance(step, Close) for step in program.steps)
    return min(place, leaves - 1 - place) if section else 0


def _opened_out(pile: Pile) -> Iterator[Face]:
    """First what lies on top of the closed sheet, then its inside laid flat from the top left, then what is left."""
    seen = {layer: _covered(pile, place) for place, layer in enumerate(pile.layers)}
    first = sorted((one for one in pile.layers if not seen[one]), key=lambda one: _from_top_left(pile, one))
    outer: Side = "front" if first[0].front_up else "back"
    for layer in first:
        yield _face(pile, layer, upper=True)
    laid = sorted(pile.layers, key=lambda one: (-one.cell[1], one.cell[0] if outer == "back" else -one.cell[0]))
    for layer in laid:
        yield _face(pile, layer, upper=layer.front_up == (outer == "back"))
    for layer in pile.layers:
        if seen[layer]:
            yield _face(pile, layer, upper=layer.front_up == (outer == "front"))


def _covered(pile: Pile, place: int) -> bool:
    """True if any layer above lies on this one."""
    left, bottom, right, top = pile.box(pile.layers[place])
    above = (pile.box(layer) for layer in pile.layers[:place])
    return any(b[0] < right and left < b[2] and b[1] < top and bottom < b[3] for b in above)


def _from_top_left(pile: Pile, layer: Layer) -> tuple[Fraction, Fraction]:
    left, _, _, top = pile.box(layer)
    return -top, left


def _face(pile: Pile, layer: Layer, *, upper: bool, depth: int = 0) -> Face:
    """The upper or lower face of a layer of the finished pile.

    A leaf is turned about the spine (about an upright line if there is none), so the lower face of a book bound at
    its head stands the other way round; and after turning, an edge that was at the left lies at the right.
    """
    program = pile.program
    up = _UP[program.head]
    along = program.spine == "none" or (_UP[program.spine][0] == 0) == (up[0] == 0)
    over_the_head = along and program.spine != "none"
    if not upper and over_the_head:
        up = (-up[0], -up[1])
    side: Side = "front" if upper == layer.front_up else "back"
    on_sheet = (-up[0] if layer.flip_x else up[0], -up[1] if layer.flip_y else up[1])
    return Face(layer.sheet, layer.cell, side, on_sheet, _spine(program, upper=upper), depth)


def _spine(program: Program, *, upper: bool) -> Spine:
    """The edge of the page at the spine, as the page is read upright."""
    if program.spine == "none":
        return "none"
    order: tuple[Spine, ...] = ("top", "right", "bottom", "left")
    turn = order.index(program.spine) - order.index(program.head)
    edge = order[turn % 4]
    opposites: dict[Spine, Spine] = {"left": "right", "right": "left", "top": "bottom", "bottom": "top"}
    return edge if upper else opposites[edge]
