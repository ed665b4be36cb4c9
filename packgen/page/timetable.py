"""Blocks of the parent's pages: steps with their minutes at the left, texts beside names, room for what was said."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from packgen.page.blocks import Block, Kit, Span, draw_stack, gap_of, rigid, style_of
from packgen.page.look import GUIDE, HAIR, RULE, SOFT, THIN
from packgen.page.marks import Stroke
from packgen.page.pen import Pen
from packgen.page.text import Style, fit, wrap

LABEL = 31.0  # the width of the column of names and minutes
_GUTTER = 4.0
_MUCH = 72.0  # room over this is parted into boxes
_BOX = 40.0  # the least height of such a box, where there are several rows of them
_OVER = 2.0  # from a step's rule to its words


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to do: its name and how long it takes at the left, what to say and do at the right, a rule over both.

    `notes` stand under the name in small type (minutes, the day). A `wide` step has its name over its blocks, which
    then have the whole width. Parted between its blocks; the rest goes by the name `on` if it has one.
    """

    name: str
    blocks: tuple[Block, ...]
    notes: tuple[str, ...] = ()
    gap: float | None = 2.0
    tight: bool = False
    wide: bool = False
    on: str = ""

    def _label(self, kit: Kit, width: float) -> tuple[Style, tuple[str, ...], tuple[str, ...]]:
        """The style and lines of the name, and the lines of the notes."""
        room = width if self.wide else LABEL
        fitted = fit(kit.faces, self.name, kit.look.heading, room, 3 * kit.look.heading.leading, kit.look.floor)
        notes = wrap(kit.faces, " · ".join(self.notes), kit.look.small, room) if self.notes else ()
        return fitted.style, fitted.lines, notes

    def _label_height(self, kit: Kit, width: float) -> float:
        style, lines, notes = self._label(kit, width)
        return len(lines) * style.leading + len(notes) * kit.look.small.leading

    def _columns(self, kit: Kit, width: float) -> tuple[float, float]:
        """How far below the rule the blocks begin, and how wide they are."""
        return (_OVER + self._label_height(kit, width), width) if self.wide else (_OVER, width - LABEL - _GUTTER)

    def measure(self, kit: Kit, width: float) -> Span:
        """As high as the higher of the two columns, or as both one over the other; it grows as its blocks do."""
        down, wide = self._columns(kit, width)
        gaps = sum(gap_of(kit, block) for block in self.blocks[1:])
        spans = [block.measure(kit, wide) for block in self.blocks]
        inner = sum(span.least for span in spans) + gaps
        least = max(down + inner, _OVER + self._label_height(kit, width))
        grow = sum(span.grow for span in spans)
        return Span(least, least + sum(span.most - span.least for span in spans), grow) if grow else rigid(least)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """The rule, the name with its notes, and the blocks."""
        style, lines, notes = self._label(kit, width)
        pen.line(x, top, x + width, top, THIN, RULE, role="step-rule")
        y = pen.lines(x, top - _OVER + 0.6, lines, style, role="heading")
        pen.lines(x, y, notes, kit.look.small.grey(SOFT))
        down, wide = self._columns(kit, width)
        draw_stack(kit, pen, self.blocks, x + width - wide, top - down, wide, height - down)

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """The blocks that fit, and the rest under the same name."""
        down, wide = self._columns(kit, width)
        if _OVER + self._label_height(kit, width) > room:
            return None
        parted = part_blocks(kit, self.blocks, wide, room - down)
        if not parted:
            return None
        rest = replace(self, name=self.on or self.name, blocks=parted[1], notes=(), gap=0.0)
        return replace(self, blocks=parted[0]), rest


def part_blocks(kit: Kit, blocks: Sequence[Block], width: float,
                room: float) -> tuple[tuple[Block, ...], tuple[Block, ...]] | None:  # fmt: skip
    """A stack's blocks that fit into `room`, and those that do not; a block may be parted. None if either is empty."""
    used = 0.0
    for number, block in enumerate(blocks):
        left = room - used - (gap_of(kit, block) if number else 0.0)
        least = block.measure(kit, width).least
        if least <= left + 1e-6:
            used += (gap_of(kit, block) if number else 0.0) + least
            continue
        parts = block.split(kit, width, left)
        if parts:
            return (*blocks[:number], parts[0]), (parts[1], *blocks[number + 1 :])
        while number and blocks[number - 1].tight:
            number -= 1
        return (tuple(blocks[:number]), tuple(blocks[number:])) if number else None
    return None


_Lines = tuple[tuple[str, ...], tuple[str, ...]]  # those of a name and of its text


@dataclass(frozen=True, slots=True)
class Pairs:
    """Texts beside names: `rows` are (name, text). The column of names is as wide as needed; parted between rows."""

    rows: tuple[tuple[str, str], ...]
    style: str | Style = "body"
    gap: float | None = None
    tight: bool = False
    most: float = 0.34
    between: float = 0.7

    def _layout(self, kit: Kit, width: float) -> tuple[Style, Style, float, list[_Lines]]:
        """The styles of names and texts, the width of the names, and the lines of each row."""
        text = style_of(kit, self.style)
        name = Style(kit.look.label.face, text.size, text.leading)
        widest = max((kit.faces.width(label, name.face, name.size) for label, _ in self.rows), default=0.0)
        column = min(widest + 3.0, width * self.most)
        rows = [
            (wrap(kit.faces, label, name, column - 2.5), wrap(kit.faces, words, text, width - column))
            for label, words in self.rows
        ]
        return name, text, column, rows

    def _heights(self, kit: Kit, width: float) -> list[float]:
        name, text, _, rows = self._layout(kit, width)
        return [max(len(a) * name.leading, len(b) * text.leading) + self.between for a, b in rows]

    def measure(self, kit: Kit, width: float) -> Span:
        """As high as all rows."""
        return rigid(sum(self._heights(kit, width)))

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """Names at the left, texts at the right."""
        name, text, column, rows = self._layout(kit, width)
        y = top
        for (label, words), high in zip(rows, self._heights(kit, width), strict=True):
            pen.lines(x, y, label, name)
            pen.lines(x + column, y, words, text)
            y -= high

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """Between two rows."""
        used, fits = 0.0, 0
        for high in self._heights(kit, width):
            used += high
            if used > room + 1e-6:
                break
            fits += 1
        if not 0 < fits < len(self.rows):
            return None
        return replace(self, rows=self.rows[:fits]), replace(self, rows=self.rows[fits:], gap=0.0)


@dataclass(frozen=True, slots=True)
class IfRoom:
    """What is drawn where a page has room left: the first of some blocks that fits, or none of them.

    It takes what is left of a page, and never asks for a page of its own.
    """

    blocks: tuple[Block, ...]
    over: float = 3.0
    gap: float | None = 0.0
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        """From nothing to as much as the blocks can be."""
        most = max(max(span.most, span.least) for span in (block.measure(kit, width) for block in self.blocks))
        return Span(0.0, min(1e6, most + self.over), 1.0)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """The first block that fits."""
        room = height - self.over
        for block in self.blocks:
            span = block.measure(kit, width)
            if room >= span.least - 1e-6:
                high = min(room, span.most) if span.grow else span.least
                block.draw(kit, pen, x, top - self.over, width, high)
                return

    def split(self, kit: Kit, width: float, room: float) -> None:
        """Never."""


@dataclass(frozen=True, slots=True)
class Sayings:
    """Room to keep what each person said: ruled lines beside the names, or a box for each where there is much room.

    Without names it is lines only, `most` of them at most.
    """

    title: str
    names: tuple[str, ...]
    most: int = 99
    gap: float | None = None
    tight: bool = False

    def _head(self, kit: Kit) -> float:
        return kit.look.heading.leading + 1.0

    def measure(self, kit: Kit, width: float) -> Span:
        """At least two lines."""
        pitch = kit.look.ruling.pitch
        most = 1e6 if self.names else self._head(kit) + self.most * pitch
        return Span(self._head(kit) + 2 * pitch, most, 1.0)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """A heading over lines or boxes."""
        look = kit.look
        pen.line(x, top, x + width, top, THIN, RULE, role="step-rule")
        pen.lines(x, top - _OVER + 0.6, (self.title,), look.heading, role="heading")
        room = height - self._head(kit)
        if room > _MUCH and self.names:
            self._boxes(kit, pen, x, top - self._head(kit) - 1.5, width, room - 1.5)
        else:
            self._lines(kit, pen, x, top - self._head(kit), width, room)

    def _lines(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        look = kit.look
        count = int(height / look.ruling.pitch + 1e-6)
        names = self.names if len(self.names) <= count else ()
        widest = max((kit.faces.width(n, look.label.face, look.label.size) for n in names), default=0.0)
        column = min(LABEL, widest + 3.0) if names else 0.0
        each = count // len(names) if names else count
        for k in range(each * max(1, len(names))):
            base = top - (k + 1) * look.ruling.pitch
            if names and k % each == 0:
                pen.text(x, base + 0.8, _on_one_line(kit, names[k // each], column - 2.0), look.label)
            pen.line(x + column, base, x + width, base, HAIR, GUIDE, role="baseline")

    def _boxes(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """A box for each name, in rows that fill the width."""
        gap = 3.5
        count = len(self.names)
        rows = max(1, min(count, int((height + gap) / (_BOX + gap))))
        high = (height - gap * (rows - 1)) / rows
        style = kit.look.label
        for down in range(rows):
            names = self.names[down * count // rows : (down + 1) * count // rows]
            wide = (width - gap * (len(names) - 1)) / len(names)
            up = top - down * (high + gap)
            for right, name in enumerate(names):
                left = x + right * (wide + gap)
                pen.box(left, up - high, wide, high, Stroke(THIN, GUIDE), corner=kit.look.corner, role="drawbox")
                pen.lines(left + 2.5, up - 1.5, wrap(kit.faces, name, style, wide - 5.0), style)

    def split(self, kit: Kit, width: float, room: float) -> None:
        """Never."""


def _on_one_line(kit: Kit, name: str, room: float) -> str:
    """As many words of a name as fit, its first letters if not even one does."""
    style = kit.look.label
    words = name.split() or [name]
    for count in range(len(words), 0, -1):
        tried = " ".join(words[:count])
        if kit.faces.width(tried, style.face, style.size) <= room:
            return tried
    letters = next((n for n in range(len(words[0]), 1, -1)
                    if kit.faces.width(words[0][:n], style.face, style.size) <= room), 1)  # fmt: skip
    return words[0][:letters]
