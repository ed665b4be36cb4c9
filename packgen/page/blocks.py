"""Blocks: the pieces a page is stacked from. A block says how high it may be, and draws itself into what it gets.

Heights and widths are mm. A block that can grow (writing lines, boxes to draw in) takes its share of what a page has
left over, so that no page ends half empty. A block that can be split goes on on the next page.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import ClassVar

from packgen.page.block import Block, Kit, Span, Whole, draw_stack, gap_of, rigid, shares, style_of
from packgen.page.look import BOLD, GUIDE, HAIR, MIDDLE, PALE, RULE, SOFT, THIN, TINT, Ruling
from packgen.page.marks import Stroke
from packgen.page.ornament import folded_corner
from packgen.page.pen import Pen
from packgen.page.text import Fitted, Style, fit, wrap

__all__ = [
    "Art", "Block", "Boxed", "Break", "Bullets", "DrawBox", "Fit", "Kit", "Lines", "Prose", "Row", "Space", "Span",
    "Stack", "Whole", "draw_stack", "gap_of", "heading", "rigid", "rule", "shares", "style_of", "warning_sign",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Prose:
    """Running text. Split between lines with at least two on either side (no widows, no orphans)."""

    text: str
    style: str | Style = "body"
    align: str = "left"
    gap: float | None = None
    tight: bool = False
    role: str = "text"

    def measure(self, kit: Kit, width: float) -> Span:
        style = style_of(kit, self.style)
        return rigid(len(wrap(kit.faces, self.text, style, width)) * style.leading)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        style = style_of(kit, self.style)
        lines = wrap(kit.faces, self.text, style, width)
        pen.lines(x, top, lines, style, align=self.align, width=width, role=self.role)

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        style = style_of(kit, self.style)
        lines = wrap(kit.faces, self.text, style, width)
        fits = min(int(room / style.leading + 1e-6), len(lines) - 2)
        if fits < 2:
            return None
        head = replace(self, text="\n".join(lines[:fits]))
        return head, replace(self, text=" ".join(lines[fits:]), gap=0.0)


def heading(text: str, gap: float | None = None) -> Prose:
    """A heading inside a page, kept with what follows it."""
    return Prose(text, "heading", gap=gap, tight=True, role="heading")


@dataclass(frozen=True, slots=True)
class Bullets:
    """A list. `marker` is "dot", "box" (to tick), "number" or "ring"; split between its items."""

    items: tuple[str, ...]
    marker: str = "dot"
    style: str | Style = "body"
    gap: float | None = None
    tight: bool = False
    first: int = 1
    spread: float = 0.35

    def _layout(self, kit: Kit, width: float) -> tuple[Style, float, list[tuple[str, ...]]]:
        style = style_of(kit, self.style)
        widest = f"{self.first + len(self.items) - 1}."
        dent = kit.faces.width(widest, style.face, style.size) + style.size * 0.5 if self.marker == "number" else (
            style.size * (1.7 if self.marker in ("box", "ring") else 1.1)
        )  # fmt: skip
        return style, dent, [wrap(kit.faces, item, style, width - dent) for item in self.items]

    def measure(self, kit: Kit, width: float) -> Span:
        style, _, items = self._layout(kit, width)
        between = style.leading * self.spread * max(0, len(items) - 1)
        return rigid(sum(len(lines) for lines in items) * style.leading + between)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        style, dent, items = self._layout(kit, width)
        y = top
        for number, lines in enumerate(items, self.first):
            base = y - pen.drop(style)
            self._mark(pen, x, base, style, number)
            y = pen.lines(x + dent, y, lines, style) - style.leading * self.spread

    def _mark(self, pen: Pen, x: float, base: float, style: Style, number: int) -> None:
        middle = base + pen.faces.metrics(style.face).x * style.size / 2
        if self.marker == "number":
            pen.text(x, base, f"{number}.", style)
        elif self.marker == "box":
            side = style.size * 0.95
            pen.box(x, middle - side / 2, side, side, Stroke(THIN + 0.1, 0.15), corner=side * 0.15, role="tick")
        elif self.marker == "ring":
            pen.ring(x + style.size * 0.5, middle, style.size * 0.48, Stroke(THIN + 0.1, 0.15), role="tick")
        else:
            pen.ring(x + style.size * 0.3, middle, style.size * 0.14, fill=0.2)

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        style, _, items = self._layout(kit, width)
        used, count = 0.0, 0
        for lines in items:
            used += len(lines) * style.leading
            if used > room + 1e-6:
                break
            count += 1
            used += style.leading * self.spread
        if not 0 < count < len(items):
            return None
        rest = replace(self, items=self.items[count:], first=self.first + count, gap=0.0)
        return replace(self, items=self.items[:count]), rest


@dataclass(frozen=True, slots=True)
class Lines(Whole):
    """Ruled writing lines, from `least` to `most` of them (None: as many as fit). `starter` begins the first."""

    least: int = 2
    most: int | None = None
    starter: str = ""
    ruling: Ruling | None = None
    gap: float | None = None
    tight: bool = False
    grow: float = 1.0

    def _ruling(self, kit: Kit) -> Ruling:
        return self.ruling or kit.look.ruling

    def _rise(self, kit: Kit) -> float:
        """The height from the block's top to its first base line: room for tall letters under a printed line."""
        ruling = self._ruling(kit)
        return ruling.pitch if ruling.guides == "one" else ruling.ascent + ruling.x_height * 0.2

    def measure(self, kit: Kit, width: float) -> Span:
        ruling = self._ruling(kit)
        foot = 0.0 if ruling.guides == "one" else ruling.descent
        least = self._rise(kit) + (self.least - 1) * ruling.pitch + foot
        most = 1e6 if self.most is None else least + (self.most - self.least) * ruling.pitch
        return Span(least, most, self.grow if self.most is None or self.most > self.least else 0.0, ruling.pitch)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        ruling = self._ruling(kit)
        foot = 0.0 if ruling.guides == "one" else ruling.descent
        count = 1 + int((height - self._rise(kit) - foot) / ruling.pitch + 1e-6)
        for k in range(count):
            rule(pen, x, top - self._rise(kit) - k * ruling.pitch, width, ruling)
        if self.starter:
            style = kit.look.body
            base = top - self._rise(kit)
            room = pen.text(x, base + (1.0 if ruling.guides == "one" else 0.0), self.starter, style)
            assert room <= width, "a starter is always shorter than its line"


def rule(pen: Pen, x: float, base: float, width: float, ruling: Ruling,
         clear: Sequence[tuple[float, float]] = ()) -> None:  # fmt: skip
    """One writing line on its base: with guides for the height of small and tall letters, and the depth of tails.

    The dotted middle line leaves out the `clear` stretches, where dotted letters stand that it would run into.
    """
    end = x + width
    if ruling.guides != "one":
        high, start = base + ruling.x_height, x
        for left, right in (*sorted(clear), (end, end)):
            if left - start > 1.0:
                pen.line(start, high, left, high, MIDDLE, RULE, (0.01, 1.6), 1, "midline")
            start = max(start, right)
    if ruling.guides == "four":
        pen.line(x, base + ruling.ascent, end, base + ruling.ascent, HAIR, GUIDE, role="topline")
        pen.line(x, base - ruling.descent, end, base - ruling.descent, HAIR, TINT, role="tailline")
    pen.line(x, base, end, base, THIN if ruling.guides == "one" else BOLD * 0.8, RULE, role="baseline")


@dataclass(frozen=True, slots=True)
class DrawBox(Whole):
    """A framed place to draw or glue in, with a label along its top and, if given, a note at its foot."""

    label: str = ""
    least: float = 40.0
    most: float = 1e6
    note: str = ""
    gap: float | None = None
    tight: bool = False
    grow: float = 2.0
    dashed: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        return Span(self.least, max(self.least, self.most), self.grow)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        look = kit.look
        stroke = Stroke(look.frame, 0.2, (2.0, 1.4) if self.dashed else ())
        pen.box(x, top - height, width, height, stroke, corner=look.corner, role="drawbox")
        inset = max(2.2, look.corner)
        if self.label:
            lines = wrap(kit.faces, self.label, look.label, width - 2 * inset)
            pen.lines(x + inset, top - inset * 0.7, lines, look.label)
        if self.note:
            lines = wrap(kit.faces, self.note, look.small.grey(SOFT), width - 2 * inset)
            foot = top - height + inset * 0.7 + len(lines) * look.small.leading
            pen.lines(x + inset, foot, lines, look.small.grey(SOFT))


@dataclass(frozen=True, slots=True)
class Stack:
    """Blocks kept one over the other on one page."""

    blocks: tuple[Block, ...]
    gap: float | None = None
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        spans = [block.measure(kit, width) for block in self.blocks]
        gaps = sum(gap_of(kit, block) for block in self.blocks[1:])
        growing = [span for span in spans if span.grow]
        step = growing[0].step if len(growing) == 1 else 0.0
        most = min(1e6, sum(span.most for span in spans) + gaps)
        return Span(sum(s.least for s in spans) + gaps, most, sum(s.grow for s in growing), step)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        draw_stack(kit, pen, self.blocks, x, top, width, height)

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        return None


@dataclass(frozen=True, slots=True)
class Row(Whole):
    """Blocks side by side. Each cell is (share of the width, or minus its width in mm; block)."""

    cells: tuple[tuple[float, Block], ...]
    gutter: float = 5.0
    gap: float | None = None
    tight: bool = False

    def widths(self, width: float) -> list[float]:
        """The widths of the cells in mm."""
        room = width - self.gutter * (len(self.cells) - 1) - sum(-w for w, _ in self.cells if w < 0)
        shares = sum(w for w, _ in self.cells if w > 0) or 1.0
        return [-w if w < 0 else room * w / shares for w, _ in self.cells]

    def measure(self, kit: Kit, width: float) -> Span:
        spans = [b.measure(kit, w) for (_, b), w in zip(self.cells, self.widths(width), strict=True)]
        least = max(s.least for s in spans)
        growing = [s for s in spans if s.grow]
        if not growing:
            return rigid(least)
        step = growing[0].step if len(growing) == 1 else 0.0
        return Span(least, max(least, max(s.most for s in growing)), max(s.grow for s in growing), step)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        at = x
        for (_, block), wide in zip(self.cells, self.widths(width), strict=True):
            span = block.measure(kit, wide)
            block.draw(kit, pen, at, top, wide, min(height, span.most) if span.grow else span.least)
            at += wide + self.gutter


@dataclass(frozen=True, slots=True)
class Art(Whole):
    """A drawing of the sheet's own: `paint(pen, x, y, width, height)` fills the rectangle from its lower left."""

    paint: Callable[[Pen, float, float, float, float], None]
    least: float
    most: float = 0.0
    grow: float = 1.0
    gap: float | None = None
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        return Span(self.least, self.most, self.grow) if self.most > self.least else rigid(self.least)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        self.paint(pen, x, top - height, width, height)


@dataclass(frozen=True, slots=True)
class Boxed(Whole):
    """A block in a quiet box: `kind` is "note" (tinted), "caution" (barred and marked) or "plain" (a thin frame)."""

    block: Block
    kind: str = "note"
    title: str = ""
    gap: float | None = None
    tight: bool = False
    pad: float = 3.5
    FILLS: ClassVar[dict[str, float | None]] = {"note": PALE, "caution": None, "plain": None}

    def _inner(self, kit: Kit, width: float) -> tuple[float, float, tuple[str, ...]]:
        """The left inset, the height of the title, and its lines."""
        inset = self.pad + (9.0 if self.kind == "caution" else 0.0)
        style = kit.look.label
        lines = wrap(kit.faces, self.title, style, width - inset - self.pad) if self.title else ()
        return inset, len(lines) * style.leading + (0.8 if lines else 0.0), lines

    def measure(self, kit: Kit, width: float) -> Span:
        inset, head, _ = self._inner(kit, width)
        span = self.block.measure(kit, width - inset - self.pad)
        extra = head + 2 * self.pad
        least = max(span.least + extra, 13.0 if self.kind == "caution" else 0.0)
        return Span(least, max(least, span.most + extra), span.grow, span.step)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        inset, head, lines = self._inner(kit, width)
        stroke = Stroke(THIN, RULE) if self.kind != "caution" else Stroke(BOLD, 0.1)
        pen.box(x, top - height, width, height, stroke, self.FILLS[self.kind], corner=kit.look.corner * 0.6)
        if self.kind == "caution":
            warning_sign(pen, x + self.pad + 3.0, top - height / 2, 7.0)
        elif self.kind == "note":
            folded_corner(pen, x + width, top, 3.0)
        pen.lines(x + inset, top - self.pad, lines, kit.look.label)
        self.block.draw(kit, pen, x + inset, top - self.pad - head, width - inset - self.pad,
                        height - head - 2 * self.pad)  # fmt: skip


def warning_sign(pen: Pen, x: float, y: float, size: float) -> None:
    """A triangle with a mark of exclamation round (x, y): the general warning sign of ISO 7010, W001, in one ink."""
    high = size * math.sqrt(3) / 2
    pen.polygon([(x - size / 2, y - high / 2), (x + size / 2, y - high / 2), (x, y + high / 2)], Stroke(BOLD, 0.0))
    pen.line(x, y - high * 0.14, x, y + high * 0.16, size * 0.11, cap=1)
    pen.ring(x, y - high * 0.32, size * 0.065, fill=0.0)


@dataclass(frozen=True, slots=True)
class Fit(Whole):
    """Text in a box of fixed height, as large as its style allows and no smaller than `floor` mm; see text.fit."""

    text: str
    height: float
    floor: float
    style: str | Style = "body"
    align: str = "left"
    gap: float | None = None
    tight: bool = False
    role: str = "text"

    def fitted(self, kit: Kit, width: float) -> Fitted:
        """The lines as they will stand."""
        return fit(kit.faces, self.text, style_of(kit, self.style), width, self.height, self.floor)

    def measure(self, kit: Kit, width: float) -> Span:
        return rigid(max(self.height, self.fitted(kit, width).height))

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        fitted = self.fitted(kit, width)
        start = top - max(0.0, height - fitted.height) / 2
        pen.lines(x, start, fitted.lines, fitted.style, align=self.align, width=width, role=self.role)


@dataclass(frozen=True, slots=True)
class Space(Whole):
    """Empty height."""

    least: float
    most: float = 0.0
    gap: float | None = 0.0
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        return Span(self.least, self.most, 0.3) if self.most > self.least else rigid(self.least)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """Nothing."""


@dataclass(frozen=True, slots=True)
class Break(Whole):
    """The next block begins a new page."""

    gap: float | None = 0.0
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        return rigid(0.0)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """Nothing."""
