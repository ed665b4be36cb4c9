"""A piece larger than the sheet, cut up over several sheets with a shared strip and crosses to lay over each other."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import shapely

from packgen.nets.cutting import edge_letter, face_label, tip_of
from packgen.nets.net import Cut, FlatFace, Fold, Letter, Net, Overlap, Part, Side, Stage, Tab
from packgen.nets.packing import fits, turns_of
from packgen.nets.plane import joined, shape
from packgen.nets.vectors import Point, bounds, hull, moved, rotation

STRIP = 12.0
"""The width (mm) two sheets share: wide enough to glue, and to hold the crosses."""


def tiled(net: Net, area: tuple[float, float]) -> Net:
    """The net with each piece that does not fit the area cut up into tiles.

    The crosses on the shared strips fall on the same points of the piece, so that tiles line up exactly. A joint
    belongs to the tile that holds the middle of its edge; its points stay those of the whole edge.
    """
    if all(fits(p, *area) for p in net.parts):
        return net
    parts: list[Part] = []
    homes: list[list[tuple[int, Part]]] = []
    for i, part in enumerate(net.parts):
        pieces = [part]
        if not fits(part, *area):
            grid = _grid(part, area)
            net = net.moved(i, rotation(grid.angle))
            lines = [(j.letter, j.edge.points) for j in net.joints if j.edge.part == i]
            pieces = list(_tiles(net.parts[i], grid, lines, sum(len(p.overlaps) for p in parts)))
        homes.append([(len(parts) + k, piece) for k, piece in enumerate(pieces)])
        parts += pieces
    joints = tuple(replace(j, tab=_rehomed(j.tab, homes), edge=_rehomed(j.edge, homes)) for j in net.joints)
    hinges = tuple(replace(h, part=_home(homes[h.part], h.start, h.end)) for h in net.hinges)
    return replace(net, parts=tuple(parts), joints=joints, hinges=hinges, stages=_with_strips(net.stages, len(parts)))


def _with_strips(stages: tuple[Stage, ...], count: int) -> tuple[Stage, ...]:
    """The stages with so many pieces to cut out, and the joining of their strips once that is done."""
    stages = tuple(replace(s, count=count) if s.kind == "cut" else s for s in stages)
    at = next((k + 1 for k, s in enumerate(stages) if s.kind == "cut"), 0)
    return (*stages[:at], Stage("strips"), *stages[at:])


def _rehomed(side: Side, homes: list[list[tuple[int, Part]]]) -> Side:
    return replace(side, part=_home(homes[side.part], side.points[0], side.points[-1]))


def _home(tiles: list[tuple[int, Part]], a: Point, b: Point) -> int:
    """The tile that holds the middle of an edge."""
    if len(tiles) == 1:
        return tiles[0][0]
    middle = shapely.Point((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    return min((round(_away(piece, middle), 6), number) for number, piece in tiles)[1]


def _away(piece: Part, point: shapely.Point) -> float:
    """How far a point lies from the faces of a tile; a tile of tabs alone is nobody's home."""
    return min((shape(f.points).distance(point) for f in piece.faces), default=math.inf)


@dataclass(frozen=True, slots=True)
class _Grid:
    """How a piece is cut up: its turn, the lower left of the first tile, the step, and how many tiles each way."""

    angle: float
    left: float
    bottom: float
    size: tuple[float, float]
    columns: int
    rows: int

    def box(self, column: int, row: int) -> tuple[float, float, float, float]:
        """Left, bottom, right and top of a tile. Outer tiles reach 1 mm beyond the piece, so that only cuts between
        tiles run along a box.
        """
        x = self.left + column * (self.size[0] - STRIP)
        y = self.bottom + row * (self.size[1] - STRIP)
        return (
            round(x - (column == 0), 6),
            round(y - (row == 0), 6),
            round(x + self.size[0] + (column == self.columns - 1), 6),
            round(y + self.size[1] + (row == self.rows - 1), 6),
        )


def _grid(part: Part, area: tuple[float, float]) -> _Grid:
    """The turn that needs the fewest tiles, the tiles all of one size."""
    corners = hull(part.corners)
    best: tuple[int, int, _Grid] | None = None
    for n, angle in enumerate(turns_of(corners)):
        left, bottom, right, top = bounds(moved(rotation(angle), p) for p in corners)
        columns = _needed(right - left, area[0])
        rows = _needed(top - bottom, area[1])
        if best is None or columns * rows < best[0]:
            size = ((right - left - STRIP) / columns + STRIP, (top - bottom - STRIP) / rows + STRIP)
            best = (columns * rows, n, _Grid(angle, left, bottom, size, columns, rows))
    assert best is not None
    return best[2]


def _needed(length: float, room: float) -> int:
    return 1 if length <= room + 1e-6 else math.ceil((length - STRIP) / (room - STRIP) - 1e-9)


def _tiles(part: Part, grid: _Grid, lines: list[tuple[str, tuple[Point, ...]]], before: int) -> Iterator[Part]:
    """The tiles of a piece already turned to its grid; `lines` are the edges on it that meet a tab, by letter."""
    whole = joined(part.shapes)
    for row in range(grid.rows):
        for column in range(grid.columns):
            box = shapely.box(*grid.box(column, row))
            if whole.intersection(box).area > 1.0:
                yield _tile(part, whole, box, _strips(grid, column, row, whole, before), lines)


def _strips(
    grid: _Grid, column: int, row: int, whole: shapely.Geometry, before: int
) -> list[tuple[shapely.Geometry, str]]:
    """The strips a tile shares with its neighbours; both neighbours compute the same strip and name."""
    out = []
    for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1)):
        c, r = column + dx, row + dy
        if 0 <= c < grid.columns and 0 <= r < grid.rows:
            both = shapely.box(*grid.box(column, row)).intersection(shapely.box(*grid.box(c, r)))
            inside = both.intersection(whole)
            if inside.area > 1.0:
                low = min((row, column), (r, c))
                number = before + 1 + 2 * (low[0] * grid.columns + low[1]) + (1 if dy else 0)
                out.append((inside, f"strip {number}"))
    return out


def _tile(
    part: Part,
    whole: shapely.Geometry,
    box: shapely.Geometry,
    strips: list[tuple[shapely.Geometry, str]],
    lines: list[tuple[str, tuple[Point, ...]]],
) -> Part:
    faces = []
    for f in part.faces:
        for points in _pieces(shape(f.points), box):
            faces.append(FlatFace(f.name, points, face_label(points), f.up, f.source, f.points))
    tabs, letters = [], []
    for t in part.tabs:
        for points in _pieces(shape(t.points), box):
            tabs.append(Tab(points, _longest(t.hinge, box) or t.hinge, t.letter, t.on_face, t.under))
            (ax, ay), (bx, by) = t.hinge[0], t.hinge[-1]
            turn = math.degrees(math.atan2(by - ay, bx - ax))
            letters.append(Letter(t.letter, face_label(points), turn, "tab", tip_of(t)))
    letters += [edge_letter(text, piece) for text, line in lines for piece in _lines(line, box)]
    folds = [
        Fold(line[0], line[-1], f.kind, f.dihedral_deg, f.on_tab)
        for f in part.folds
        for line in _lines((f.start, f.end), box)
    ]
    cuts = [Cut(line) for c in part.cuts for line in _lines((*c.points, c.points[0]) if c.closed else c.points, box)]
    edge = whole.intersection(box.exterior)
    cuts += [Cut(tuple(line.coords)) for line in getattr(edge, "geoms", [edge]) if line.geom_type == "LineString"]
    holds = shapely.box(*box.bounds)
    return Part(
        tuple(faces),
        tuple(folds),
        tuple(cuts),
        tuple(tabs),
        tuple(letters),
        tuple(line for s in part.scores for line in _lines(s, box)),
        tuple(h for h in part.holes if holds.contains(shapely.Point(h.centre))),
        tuple(_overlap(strip, text) for strip, text in strips),
        tuple(line for s in part.lays for line in _lines(s, box)),
    )


def _pieces(whole: shapely.Polygon, box: shapely.Geometry) -> list[tuple[Point, ...]]:
    found = whole.intersection(box)
    out = []
    for piece in getattr(found, "geoms", [found]):
        if piece.geom_type == "Polygon" and piece.area > 1e-3:
            ring = shapely.geometry.polygon.orient(piece).exterior.coords
            out.append(tuple((x, y) for x, y in ring)[:-1])
    return out


def _lines(points: Sequence[Point], box: shapely.Geometry) -> list[tuple[Point, ...]]:
    found = shapely.LineString(points).intersection(box)
    return [
        tuple((x, y) for x, y in line.coords)
        for line in getattr(found, "geoms", [found])
        if line.geom_type == "LineString" and line.length > 1e-3
    ]


def _longest(points: Sequence[Point], box: shapely.Geometry) -> tuple[Point, ...]:
    return max(_lines(points, box), key=len, default=())


def _overlap(strip: shapely.Geometry, text: str) -> Overlap:
    """The shared strip and two crosses on its middle line, a quarter in from either end."""
    left, bottom, right, top = strip.bounds
    ring = strip.convex_hull.exterior.coords
    points = tuple((x, y) for x, y in ring)[:-1]
    x, y = (left + right) / 2, (bottom + top) / 2
    if right - left < top - bottom:
        crosses = ((x, bottom + (top - bottom) / 4), (x, top - (top - bottom) / 4))
    else:
        crosses = ((left + (right - left) / 4, y), (right - (right - left) / 4, y))
    return Overlap(points, text, crosses)
