"""Blocks of the parent's pages: steps with their minutes at the left, texts beside names, room for what was said."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from packgen.page.blocks import Block, Kit, Span, draw_stack, gap_of, rigid, style_of
from packgen.page.look import GUIDE, HAIR, RULE, SOFT, THIN
from packgen.page.pen import Pen
from packgen.page.text import Style, fit, wrap

LABEL = 31.0  # the width of the column of names and minutes
_GUTTER = 4.0
_OVER = 2.2  # from a step's rule to its words


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to do: its name and how long it takes at the left, what to say and do at the right, a rule over both.

    `notes` stand under the name in small type (minutes, the day). Parted between its blocks.
    """

    name: str
    blocks: tuple[Block, ...]
    notes: tuple[str, ...] = ()
    gap: float | None = 2.6
    tight: bool = False

    def _label(self, kit: Kit) -> tuple[Style, tuple[str, ...], tuple[str, ...]]:
        """The style and lines of the name, and the lines of the notes."""
        fitted = fit(kit.faces, self.name, kit.look.heading, LABEL, 3 * kit.look.heading.leading, kit.look.floor)
        notes = tuple(line for note in self.notes for line in wrap(kit.faces, note, kit.look.small, LABEL))
        return fitted.style, fitted.lines, notes

    def _inner(self, kit: Kit, width: float) -> float:
        wide = width - LABEL - _GUTTER
        gaps = sum(gap_of(kit, block) for block in self.blocks[1:])
        return sum(block.measure(kit, wide).least for block in self.blocks) + gaps

    def measure(self, kit: Kit, width: float) -> Span:
        """As high as the higher of the two columns."""
        style, lines, notes = self._label(kit)
        label = len(lines) * style.leading + len(notes) * kit.look.small.leading
        return rigid(_OVER + max(label, self._inner(kit, width)))

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """The rule, the name with its notes, and the blocks."""
        style, lines, notes = self._label(kit)
        pen.line(x, top, x + width, top, THIN, RULE, role="step-rule")
        y = pen.lines(x, top - _OVER + 0.6, lines, style, role="heading")
        pen.lines(x, y, notes, kit.look.small.grey(SOFT))
        inner = width - LABEL - _GUTTER
        draw_stack(kit, pen, self.blocks, x + width - inner, top - _OVER, inner, height - _OVER)

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """The blocks that fit, and the rest under the same name."""
        wide = width - LABEL - _GUTTER
        style, lines, notes = self._label(kit)
        if _OVER + len(lines) * style.leading + len(notes) * kit.look.small.leading > room:
            return None
        parted = part_blocks(kit, self.blocks, wide, room - _OVER)
        if not parted:
            return None
        return replace(self, blocks=parted[0]), replace(self, blocks=parted[1], notes=(), gap=0.0)


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


@dataclass(frozen=True, slots=True)
class Pairs:
    """Texts beside names: `rows` are (name, text). The column of names is as wide as needed; parted between rows."""

    rows: tuple[tuple[str, str], ...]
    style: str | Style = "body"
    gap: float | None = None
    tight: bool = False
    most: float = 0.34
    between: float = 0.7

    def _layout(self, kit: Kit, width: float) -> tuple[Style, Style, float, list[tuple[tuple[str, ...], ...]]]:
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
class Sayings:
    """Room to write down what was said, a few lines for each name; nothing at all where the page is full.

    It takes what is left of a page, and never asks for a page of its own.
    """

    title: str
    names: tuple[str, ...]
    gap: float | None = 0.0
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        """From nothing to as much as there is."""
        return Span(0.0, 1e6, 1.0)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """A heading, and ruled lines with a name before the first of each share."""
        look = kit.look
        over = look.gap
        head = look.heading.leading + 1.0
        pitch = look.ruling.pitch
        count = int((height - over - head) / pitch + 1e-6)
        if count < 2:
            return
        top -= over
        pen.line(x, top, x + width, top, THIN, RULE, role="step-rule")
        pen.lines(x, top - _OVER + 0.6, (self.title,), look.heading, role="heading")
        base = top - head
        names = self.names if len(self.names) <= count else ()
        column = min(LABEL, max((kit.faces.width(n, look.label.face, look.label.size) for n in names), default=0.0) + 3)
        each = count // len(names) if names else count
        for k in range(count):
            base -= pitch
            begins = names and k % each == 0 and k // each < len(names)
            left = x + column if names else x
            if begins:
                fitted = fit(kit.faces, names[k // each], look.label, column - 2.0, look.label.leading, 2.4)
                pen.text(x, base + 0.8, " ".join(fitted.lines), fitted.style)
            if names and k >= each * len(names):
                return
            pen.line(left, base, x + width, base, HAIR, GUIDE, role="baseline")

    def split(self, kit: Kit, width: float, room: float) -> None:
        """Never."""
