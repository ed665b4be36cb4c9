"""Charts to plot by hand, and charts with results drawn in: axes, light grid, strips to colour, picture graphs.

An axis is a value of packgen.trials.ticks.Axis; places in a chart's data are values on its axes. Lengths are mm.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass

from packgen.page.blocks import Block, Kit, Span
from packgen.page.look import BOLD, GUIDE, HAIR, MIDDLE, PALE, RULE, THIN, TINT
from packgen.page.marks import Point, Stroke
from packgen.page.pen import Pen
from packgen.page.text import Style, widest_word, wrap
from packgen.trials.ticks import Axis, PictureScale

# Grid lines nearer than this cannot be told apart with a pencil.
_FINEST = 1.8
_FINEST_BARS = 3.0  # a bar is coloured up to a line, so its lines are a crayon apart
_TICK = 1.6
_CLEAR = 1.2
_LEAST_PLOT = 42.0
_UNDER_KEY = 2.6
_UNDER_TITLE = 2.4
_LEADING = (0.4, 1.4)  # dots and gaps of the lines that lead over the gaps between bars
_STRIP = 0.31  # half the width of a strip, as a share of its place


@dataclass(frozen=True, slots=True)
class Series:
    """Results drawn in: (x, y) points with a mark (`cross`, `ring`, `dot`, `square`), joined by a line if `line`.

    The mark `line` is none at the points: a curve that is drawn through them only.
    """

    name: str
    points: tuple[Point, ...]
    mark: str = "cross"
    line: bool = False


@dataclass(frozen=True, slots=True)
class Band:
    """An expected band: (x, low, high) from left to right; over words, a block for each."""

    name: str
    edges: tuple[tuple[float, float, float], ...]


@dataclass(frozen=True, slots=True)
class Frame:
    """Where the plot lies on the page, and what stands along its foot."""

    x: float
    y: float
    width: float
    height: float
    labels: tuple[tuple[str, ...], ...]
    style: Style
    upright: bool


@dataclass(frozen=True, slots=True)
class Chart:
    """A chart: `kind` is "points", "bars" (an empty strip over each word) or "picture" (columns of squares to colour).

    `means` are short bars at (x, y); `filled` colours strips or columns of squares up to (x, y); `key` is a line of
    text over the chart. Without series, bands, means and filled ones the chart is empty, for the child to plot.
    """

    x: Axis
    y: Axis
    kind: str = "points"
    scale: PictureScale | None = None
    series: tuple[Series, ...] = ()
    bands: tuple[Band, ...] = ()
    means: tuple[Point, ...] = ()
    mean_name: str = ""
    filled: tuple[Point, ...] = ()
    key: str = ""
    least: float = 75.0
    most: float = 230.0
    grow: float = 3.0
    gap: float | None = None
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        least = max(self.least, self.least - self.frame(kit, 0.0, 0.0, width, self.least).height + _LEAST_PLOT)
        return Span(least, max(least, self.most), self.grow)

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """Never: a chart is whole."""
        return None

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        frame = self.frame(kit, x, top, width, height)
        self._titles(kit, pen, frame, x, top, width, top - height)
        for x_at, y_at in self.filled:
            self._fill(pen, frame, x_at, y_at)
        for band in self.bands:
            self._band(pen, frame, band)
        if self.kind == "picture":
            self._squares(kit, pen, frame)
        else:
            self._grid(pen, frame)
            self._y_labels(kit, pen, frame)
        self._x_labels(kit, pen, frame)
        self._data(kit, pen, frame)

    # Places

    def frame(self, kit: Kit, x: float, top: float, width: float, height: float) -> Frame:
        """Where the plot lies in a rectangle below `top`: what the titles and labels leave."""
        look = kit.look
        head = look.label.leading * len(self._y_title(kit, width)) + self._key_height(kit, width) + _UNDER_TITLE
        left = self._left(kit)
        labels, style, upright = self._foot_labels(kit, width - left - self._right(kit))
        deep = (max((kit.faces.width(text, style.face, style.size) for row in labels for text in row), default=0.0)
                if upright else max((len(row) for row in labels), default=0) * style.leading)  # fmt: skip
        title = wrap(kit.faces, self.x.title, look.label, width - left)
        foot = _TICK + 0.8 + deep + 0.8 + len(title) * look.label.leading
        return Frame(x + left, top - height + foot, width - left - self._right(kit), height - head - foot, labels,
                     style, upright)  # fmt: skip

    def _left(self, kit: Kit) -> float:
        """The room left of the plot: the widest label of the upright axis."""
        if self.kind == "picture" or self.y.blank:
            return 4.0 if self.kind == "picture" else 12.0
        style = kit.look.small
        return max(kit.faces.width(text, style.face, style.size) for text in self.y.labels) + _TICK + 1.5

    def _right(self, kit: Kit) -> float:
        """The room right of the plot: half of the last label."""
        if self.x.words:
            return 0.5
        return max(2.0, kit.faces.width(self.x.labels[-1], kit.look.small.face, kit.look.small.size) / 2 + 0.5)

    def _y_title(self, kit: Kit, width: float) -> tuple[str, ...]:
        return wrap(kit.faces, self.y.title, kit.look.label, width)

    def _key_rows(self) -> tuple[str, ...]:
        named = [s.name for s in self.series if s.name] + [b.name for b in self.bands if b.name]
        return (*named, *((self.mean_name,) if self.means and self.mean_name else ()))

    def _key_height(self, kit: Kit, width: float) -> float:
        lines = len(wrap(kit.faces, self.key, kit.look.small, width)) if self.key else 0
        lines += len(self._key_lines(kit, width))
        return lines * kit.look.small.leading + (_UNDER_KEY if lines else 0.0)

    def _key_lines(self, kit: Kit, width: float) -> list[list[str]]:
        """The entries of the key in lines that fit the width."""
        style = kit.look.small
        rows: list[list[str]] = []
        used = 0.0
        for name in self._key_rows():
            wide = kit.faces.width(name, style.face, style.size) + 14.0
            if not rows or used + wide > width:
                rows.append([])
                used = 0.0
            rows[-1].append(name)
            used += wide
        return rows

    def _foot_labels(self, kit: Kit, width: float) -> tuple[tuple[tuple[str, ...], ...], Style, bool]:
        """The labels along the foot, wrapped; in which style; and whether they must be set upright.

        Numbers that would touch are thinned out evenly, words are wrapped, then set smaller, then upright.
        """
        style = kit.look.small
        labels = self.x.labels
        slot = width / max(1, len(labels) - (0 if self.x.words else 1)) - _CLEAR
        if not self.x.words:
            wide = max((kit.faces.width(text, style.face, style.size) for text in labels), default=0.0)
            every = next((n for n in (1, 2, 5, 10, 20, 50) if wide <= (slot + _CLEAR) * n - _CLEAR), 100)
            return tuple((text,) if k % every == 0 else () for k, text in enumerate(labels)), style, False
        size = style.size
        while True:
            tried = style.at(size)
            if all(widest_word(kit.faces, text, tried) <= slot for text in labels):
                return tuple(wrap(kit.faces, text, tried, slot) for text in labels), tried, False
            if size <= kit.look.floor * 0.8:
                break
            size = max(kit.look.floor * 0.8, size * 0.95)
        return self._upright_labels(kit, style, slot + _CLEAR)

    def _upright_labels(self, kit: Kit, style: Style, slot: float) -> tuple[tuple[tuple[str, ...], ...], Style, bool]:
        """Words set upright under their places, in as many lines as the place is wide; deeper if need be."""
        size = min(style.size, slot / 1.2)
        widest = max(widest_word(kit.faces, text, style.at(size)) for text in self.x.labels)
        deepest = max(0.35 * self.least, min(widest, 0.55 * self.least))
        while True:
            tried = Style(style.face, size, size * 1.2)
            labels = tuple(wrap(kit.faces, text, tried, deepest) for text in self.x.labels)
            if max(map(len, labels)) * tried.leading <= slot + 1e-6:
                return labels, tried, True
            if size > kit.look.floor * 0.75:
                size *= 0.95
            else:
                deepest *= 1.2

    def at(self, frame: Frame, x: float, y: float) -> Point:
        """Where values on the axes lie on the page."""
        return frame.x + self.x.place(x) * frame.width, frame.y + self.y.place(y) * frame.height

    # Axes

    def _titles(self, kit: Kit, pen: Pen, frame: Frame, x: float, top: float, width: float, foot: float) -> None:
        look = kit.look
        y = top
        if self.key:
            y = pen.lines(x, y, wrap(kit.faces, self.key, look.small, width), look.small)
        y = self._draw_key(kit, pen, x, y, width)
        y -= _UNDER_KEY if y < top else 0.0
        pen.lines(x, y, self._y_title(kit, width), look.label, role="axis-title")
        title = wrap(kit.faces, self.x.title, look.label, width - (frame.x - x))
        pen.lines(frame.x, foot + len(title) * look.label.leading, title, look.label, align="right",
                  width=x + width - frame.x, role="axis-title")  # fmt: skip

    def _draw_key(self, kit: Kit, pen: Pen, x: float, top: float, width: float) -> float:
        style = kit.look.small
        marks = {s.name: s.mark for s in self.series} | {b.name: "band" for b in self.bands} | {self.mean_name: "mean"}
        y = top
        for row in self._key_lines(kit, width):
            at = x
            middle = y - pen.drop(style) + style.size * 0.25
            for name in row:
                _mark(pen, marks[name], at + 3.0, middle, kit)
                at += 8.0 + pen.text(at + 8.0, y - pen.drop(style), name, style) + 6.0
            y -= style.leading
        return y

    def _minor(self, axis: Axis, long: float) -> int:
        """Into how many parts the grid divides a step: the axis's own, or a divisor of it, if lines come too near."""
        step = long / max(1, len(axis.ticks) - 1)
        finest = _FINEST_BARS if self.kind == "bars" else _FINEST
        fits = [n for n in range(axis.minor, 0, -1) if axis.minor % n == 0 and step / n >= finest]
        return fits[0] if fits else 1

    def _grid(self, pen: Pen, frame: Frame) -> None:
        """Light lines: fine ones between the ticks, firmer ones at them; for words, the edges of their strips."""
        left, right, low, high = frame.x, frame.x + frame.width, frame.y, frame.y + frame.height
        if self.kind == "points" and not self.x.words:
            for at, main in _grid_places(self.x, self._minor(self.x, frame.width)):
                here = left + at * frame.width
                pen.line(here, low, here, high, THIN if main else HAIR, GUIDE if main else TINT, role="grid")
        bars = self.x.words and self.kind == "bars"
        strips = [(m - half, m + half) for m, half in self._strip_places(frame)] if bars else [(left, right)]
        for at, main in _grid_places(self.y, self._minor(self.y, frame.height)):
            here = low + at * frame.height
            for start, end in strips:
                wide = THIN if main and not bars else HAIR
                pen.line(start, here, end, here, wide, GUIDE if main else TINT, role="grid")
            if bars and main:  # between the bars only what leads the eye from a number to the bars
                pen.line(left, here, right, here, HAIR, TINT, _LEADING, role="leader")
        if self.x.words:
            self._strips(pen, frame)
        for tick in () if self.x.words else self.x.ticks:
            here = left + self.x.place(tick) * frame.width
            pen.line(here, low, here, low - _TICK, THIN, 0.0, role="tick-mark")
        for tick in self.y.ticks:
            here = low + self.y.place(tick) * frame.height
            pen.line(left, here, left - _TICK, here, THIN, 0.0, role="tick-mark")
        pen.line(left, low, right, low, BOLD, 0.0, role="axis")
        pen.line(left, low, left, high, BOLD, 0.0, role="axis")

    def _strip_places(self, frame: Frame) -> list[tuple[float, float]]:
        """The middle of each strip and half its width."""
        half = min(frame.width / len(self.x.ticks) * _STRIP, 14.0)
        return [(frame.x + self.x.place(tick) * frame.width, half) for tick in self.x.ticks]

    def _strips(self, pen: Pen, frame: Frame) -> None:
        """Over each word an empty strip to colour as high as the result, or a line to set points on."""
        for middle, half in self._strip_places(frame):
            if self.kind == "bars":
                pen.box(middle - half, frame.y, 2 * half, frame.height, Stroke(MIDDLE, 0.25), role="strip")
            else:
                pen.line(middle, frame.y, middle, frame.y + frame.height, THIN, GUIDE, role="grid")

    def _y_labels(self, kit: Kit, pen: Pen, frame: Frame) -> None:
        style = kit.look.small
        middle = kit.faces.metrics(style.face).cap * style.size / 2
        step = frame.height / max(1, len(self.y.ticks) - 1)
        every = next((n for n in (1, 2, 5, 10, 20) if step * n >= style.size * 1.15), 50)
        for k, (tick, text) in enumerate(zip(self.y.ticks, self.y.labels, strict=True)):
            y = frame.y + self.y.place(tick) * frame.height
            if self.y.blank:
                pen.line(frame.x - 10.0, y - 0.8, frame.x - _TICK - 0.6, y - 0.8, THIN, GUIDE, role="blank-label")
            elif k % every == 0:
                pen.text(frame.x - _TICK - 0.8, y - middle, text, style, align="right", role="tick-label")

    def _x_labels(self, kit: Kit, pen: Pen, frame: Frame) -> None:
        style = frame.style
        top = frame.y - _TICK - 0.8
        for tick, lines in zip(self.x.ticks, frame.labels, strict=True):
            middle = frame.x + self.x.place(tick) * frame.width
            if self.x.blank:
                pen.line(middle - 3.5, top - style.leading, middle + 3.5, top - style.leading, THIN, GUIDE,
                         role="blank-label")  # fmt: skip
                continue
            for k, line in enumerate(lines):
                if frame.upright:
                    across = (k - (len(lines) - 1) / 2) * style.leading + style.size * 0.35
                    pen.text(middle + across, top, line, style, align="right", angle=90.0, role="tick-label")
                else:
                    base = top - pen.drop(style) - k * style.leading
                    pen.text(middle, base, line, style, align="centre", role="tick-label")

    # Picture graphs

    def _squares(self, kit: Kit, pen: Pen, frame: Frame) -> None:
        """Over each word a column of empty squares, one for each picture's worth."""
        count = self.scale.boxes if self.scale else 10
        slot = frame.width / len(self.x.ticks)
        side = min(frame.height / count, slot * 0.8)
        for tick in self.x.ticks:
            middle = frame.x + self.x.place(tick) * frame.width
            for k in range(count):
                pen.box(middle - side / 2, frame.y + k * side, side, side, Stroke(THIN, RULE), role="square")
            pen.box(middle - side / 2, frame.y, side, side * count, Stroke(MIDDLE, 0.25), role="strip")
        pen.line(frame.x, frame.y, frame.x + frame.width, frame.y, BOLD, 0.0, role="axis")

    # Results drawn in

    def _data(self, kit: Kit, pen: Pen, frame: Frame) -> None:
        for series in self.series:
            places = [self.at(frame, x, y) for x, y in series.points]
            if series.line and len(places) > 1:
                pen.polygon(places, Stroke(MIDDLE, 0.2), closed=False, role="series")
            for x, y in places if series.mark != "line" else ():
                _mark(pen, series.mark, x, y, kit)
        for x, y in (self.at(frame, *mean) for mean in self.means):
            _mark(pen, "mean", x, y, kit)

    def _fill(self, pen: Pen, frame: Frame, x: float, y: float) -> None:
        """A strip coloured from the foot up to a value, or a column of squares up to the nearest part of one."""
        middle, top = self.at(frame, x, y)
        slot = frame.width / len(self.x.ticks)
        half, high = min(slot * _STRIP, 14.0), top - frame.y
        if self.kind == "picture" and self.scale and self.scale.each:
            side = min(frame.height / self.scale.boxes, slot * 0.8)
            half, high = side / 2, min(y / self.scale.each, self.scale.boxes) * side
        pen.box(middle - half, frame.y, 2 * half, max(high, 0.0), None, 0.75, role="filled")

    def _band(self, pen: Pen, frame: Frame, band: Band) -> None:
        """The band as a tinted shape between its edges; over words a block for each, in outline over filled strips."""
        edge = Stroke(THIN, RULE, (1.6, 1.0)) if not self.filled else Stroke(MIDDLE, 0.2, (1.6, 1.0))
        if self.x.words or len(band.edges) == 1:
            half = frame.width / len(self.x.ticks) * 0.4 if self.x.words else frame.width * 0.03
            for x, low, high in band.edges:
                (at, y0), (_, y1) = self.at(frame, x, low), self.at(frame, x, high)
                pen.box(at - half, y0, 2 * half, y1 - y0, edge, None if self.filled else PALE, role="band")
            return
        lows = [self.at(frame, x, low) for x, low, _ in band.edges]
        highs = [self.at(frame, x, high) for x, _, high in band.edges]
        pen.polygon([*lows, *reversed(highs)], edge, PALE, role="band")


def _grid_places(axis: Axis, minor: int) -> list[tuple[float, bool]]:
    """Where grid lines lie along an axis (0 to 1), the fine ones first, and whether each is one of the ticks."""
    fine = [a + (b - a) * k / minor for a, b in itertools.pairwise(axis.ticks) for k in range(1, minor)]
    return [*((axis.place(v), False) for v in fine), *((axis.place(v), True) for v in axis.ticks)]


def _mark(pen: Pen, mark: str, x: float, y: float, kit: Kit) -> None:
    """A data mark round (x, y)."""
    r = 1.3
    if mark == "cross":
        pen.line(x - r, y - r, x + r, y + r, MIDDLE, 0.0, role="point")
        pen.line(x - r, y + r, x + r, y - r, MIDDLE, 0.0, role="point")
    elif mark == "ring":
        pen.ring(x, y, r, Stroke(MIDDLE, 0.0), role="point")
    elif mark == "square":
        pen.box(x - r, y - r, 2 * r, 2 * r, Stroke(MIDDLE, 0.0), 1.0, role="point")
    elif mark == "line":
        pen.line(x - 3.0, y, x + 3.0, y, MIDDLE, 0.2, role="point")
    elif mark == "mean":
        pen.line(x - 3.2, y, x + 3.2, y, BOLD + 0.3, 0.0, role="mean")
    elif mark == "band":
        pen.box(x - 3.0, y - 1.3, 6.0, 2.6, Stroke(THIN, RULE, (1.6, 1.0)), PALE, role="band")
    else:
        pen.ring(x, y, r * 0.8, fill=0.0, role="point")
