"""From the faces of a folded sheet to slots, lines and ticks in mm on its printed sides."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate
from typing import Literal

from packgen.folding.derive import Face, reading
from packgen.folding.layers import Hinge, folded, hinge_line, opposite
from packgen.folding.program import Program
from packgen.folding.slots import Flip, FoldLine, FoldSheet, LineKind, Slot, natural_flip

_TICK_BEYOND_MARGIN = 2.0


@dataclass(frozen=True, slots=True)
class Placing:
    """Places the faces of a program on a sheet of that size in mm. `several`: its sheets are joined by glue flaps."""

    program: Program
    width: float
    height: float
    flip: Flip
    caliper: float
    margin: float
    several: bool

    @property
    def flap(self) -> float:
        """The width of the glue flap; a single sheet has none."""
        return self.program.glue_flap if self.several else 0.0

    @property
    def turns_upright(self) -> bool:
        """True if the printer turns the sheet about its upright middle line."""
        return self.flip == natural_flip(self.width, self.height)

    def sheets(self, pages: int, signatures: tuple[int, ...]) -> Iterator[FoldSheet]:
        """Every sheet in the order of printing."""
        first = 1
        for signature, count in enumerate(signatures):
            faces = reading(self.program, count)
            numbered = [(face, number if number <= pages else 0) for number, face in enumerate(faces, first)]
            first += len(faces)
            for sheet in range(count):
                mine = [(face, number) for face, number in numbered if face.sheet == sheet]
                yield self._sheet(mine, signature, sheet, last=sheet == count - 1)

    def _sheet(self, faces: list[tuple[Face, int]], signature: int, sheet: int, *, last: bool) -> FoldSheet:
        front = sorted((self._slot(f, n) for f, n in faces if f.side == "front"), key=lambda s: (-s.y, s.x))
        back = sorted((self._slot(f, n) for f, n in faces if f.side == "back"), key=lambda s: (-s.y, s.x))
        lines = self._lines(sheet, last=last)
        ticks = tuple(tick for line in lines for tick in self._ticks(line))
        return FoldSheet(
            front=tuple(front),
            back=tuple(back),
            fold_lines=tuple(line for line in lines if line.kind in ("valley", "mountain")),
            cut_lines=tuple(line for line in lines if line.kind in ("cut", "slit")),
            front_ticks=ticks,
            back_ticks=tuple(self._seen_on_back(tick) for tick in ticks),
            inner_cuts=tuple(line for line in lines if line.kind in ("cut", "slit") and self._ends_inside(line)),
            signature=signature,
        )

    def _edges(self) -> tuple[list[float], list[float]]:
        across = self.width - self.flap
        xs = [float(share) * across for share in accumulate(self.program.columns, initial=0)]
        ys = [float(share) * self.height for share in accumulate(self.program.rows, initial=0)]
        return xs, ys

    def _slot(self, face: Face, number: int) -> Slot:
        xs, ys = self._edges()
        column, row = face.cell
        x, y, width, height = xs[column], ys[row], xs[column + 1] - xs[column], ys[row + 1] - ys[row]
        up = face.up
        if face.side == "back":
            if self.turns_upright:
                x, up = self.width - x - width, (-up[0], up[1])
            else:
                y, up = self.height - y - height, (up[0], -up[1])
        turns: dict[tuple[int, int], Literal[0, 90, 180, 270]] = {
            (0, 1): 0, (-1, 0): 90, (0, -1): 180, (1, 0): 270,
        }  # fmt: skip
        covered = face.side == "back" and face.sheet > 0 and column == 0 and self.flap > 0
        return Slot(
            page=number,
            x=x,
            y=y,
            width=width,
            height=height,
            rotation_deg=turns[up],
            creep=face.depth * self.caliper,
            spine=face.spine,
            clear=(0.0, 0.0, self.flap, 0.0) if covered else (0.0, 0.0, 0.0, 0.0),
        )

    def _lines(self, sheet: int, *, last: bool) -> tuple[FoldLine, ...]:
        pile = folded(self.program)
        kinds: dict[Hinge, LineKind] = {**dict(pile.creases), **{h: _cut_kind(kind) for h, kind in pile.cuts}}
        # In a strip of sheets the folds go on alternating: after an odd number of panels a sheet begins reversed.
        reversed_ = self.program.assembly == "joined" and (sheet * self.program.panels) % 2 == 1
        pieces = []
        xs, ys = self._edges()
        shares_x, shares_y = self._shares()
        for hinge, kind in kinds.items():
            x1, y1, x2, y2 = hinge_line(self.program, hinge)
            seen = _reversed(kind) if reversed_ else kind
            place = (xs[shares_x.index(x1)], ys[shares_y.index(y1)], xs[shares_x.index(x2)], ys[shares_y.index(y2)])
            pieces.append(FoldLine(*place, seen))
        if self.flap:
            joint: LineKind = "mountain" if (sheet + 1) * self.program.panels % 2 else "valley"
            pieces.append(FoldLine(xs[-1], 0.0, xs[-1], self.height, "cut" if last else joint))
        return tuple(_merged(pieces))

    def _shares(self) -> tuple[list[object], list[object]]:
        return list(accumulate(self.program.columns, initial=0)), list(accumulate(self.program.rows, initial=0))

    def _ticks(self, line: FoldLine) -> Iterator[FoldLine]:
        """The ends of a line at the sheet's edges, reaching past what the printer cannot print."""
        reach = self.margin + _TICK_BEYOND_MARGIN
        if line.x1 == line.x2:
            if line.y1 <= 0:
                yield FoldLine(line.x1, 0.0, line.x1, reach, line.kind)
            if line.y2 >= self.height:
                yield FoldLine(line.x1, self.height - reach, line.x1, self.height, line.kind)
        else:
            if line.x1 <= 0:
                yield FoldLine(0.0, line.y1, reach, line.y1, line.kind)
            if line.x2 >= self.width:
                yield FoldLine(self.width - reach, line.y1, self.width, line.y1, line.kind)

    def _ends_inside(self, line: FoldLine) -> bool:
        across = line.x1 <= 0 and line.x2 >= self.width
        along = line.y1 <= 0 and line.y2 >= self.height
        return not (across or along)

    def _seen_on_back(self, line: FoldLine) -> FoldLine:
        if self.turns_upright:
            x1, x2 = sorted((self.width - line.x1, self.width - line.x2))
            return FoldLine(x1, line.y1, x2, line.y2, _reversed(line.kind))
        y1, y2 = sorted((self.height - line.y1, self.height - line.y2))
        return FoldLine(line.x1, y1, line.x2, y2, _reversed(line.kind))


def _cut_kind(kind: str) -> LineKind:
    return "slit" if kind == "slit" else "cut"


def _reversed(kind: LineKind) -> LineKind:
    return opposite(kind) if kind in ("valley", "mountain") else kind


def _merged(pieces: list[FoldLine]) -> Iterator[FoldLine]:
    """Lines of one kind that go on from one another, as one line; from the lower left."""
    pieces = sorted(pieces, key=lambda p: (p.x1 != p.x2, p.x1 if p.x1 == p.x2 else p.y1, p.y1, p.x1))
    held: FoldLine | None = None
    for piece in pieces:
        if held and held.kind == piece.kind and (held.x2, held.y2) == (piece.x1, piece.y1) and _same_way(held, piece):
            held = FoldLine(held.x1, held.y1, piece.x2, piece.y2, held.kind)
            continue
        if held:
            yield held
        held = piece
    if held:
        yield held


def _same_way(one: FoldLine, other: FoldLine) -> bool:
    return (one.x1 == one.x2) == (other.x1 == other.x2)
