"""What a block is: something that says how high it may be and draws itself, and how a stack of them shares a height.

Heights and widths are mm.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Protocol

from packgen.page.look import Look
from packgen.page.pen import Pen
from packgen.page.text import Style
from packgen.page.type import Faces


@dataclass(frozen=True, slots=True)
class Kit:
    """What every block needs to measure and draw itself: the faces and the level's look."""

    faces: Faces
    look: Look

    def pen(self) -> Pen:
        """A fresh pen."""
        return Pen(self.faces)


@dataclass(frozen=True, slots=True)
class Span:
    """How high a block must and may be. `grow` is its share of spare height, `step` the height it grows by (0: any)."""

    least: float
    most: float
    grow: float = 0.0
    step: float = 0.0


def rigid(height: float) -> Span:
    """The span of a block that has one height only."""
    return Span(height, height)


class Block(Protocol):
    """What every block can do."""

    @property
    def gap(self) -> float | None:
        """The space over the block in mm, or None for the look's own."""

    @property
    def tight(self) -> bool:
        """True if the block must be on the same page as the next."""

    def measure(self, kit: Kit, width: float) -> Span:
        """How high the block must and may be at this width."""

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """Draw the block below `top`, `height` high."""

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """The part that fits into `room` and the rest, or None if the block cannot be parted there."""


class Whole:
    """A block that is never split."""

    __slots__ = ()

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """Never."""
        return None


def style_of(kit: Kit, style: str | Style) -> Style:
    """A style by the name of its role in the look (`body`, `strong`, `small`, `label`, `heading`...), or itself."""
    return style if isinstance(style, Style) else getattr(kit.look, style)


def gap_of(kit: Kit, block: Block) -> float:
    """The space over a block in mm."""
    return kit.look.gap if block.gap is None else block.gap


@dataclass(slots=True)
class _Share:
    block: Block
    span: Span
    height: float = field(default=0.0)


def shares(kit: Kit, blocks: Sequence[Block], width: float, height: float) -> list[float]:
    """The heights the blocks get in a stack `height` high: their least, and what is left by their shares."""
    items = [_Share(b, b.measure(kit, width)) for b in blocks]
    gaps = sum(gap_of(kit, b) for b in blocks[1:])
    spare = height - gaps - sum(i.span.least for i in items)
    for item in items:
        item.height = item.span.least
    # Blocks that grow by whole lines first; what their steps leave over goes to those that grow by any amount.
    for stepped in (True, False):
        growing = [i for i in items if i.span.grow and bool(i.span.step) is stepped]
        everyone = sum(i.span.grow for i in items if i.span.grow and (stepped or not i.span.step))
        while spare > 1e-6 and growing:
            weight = everyone if stepped else sum(i.span.grow for i in growing)
            taken = 0.0
            for item in growing:
                share = min(spare * item.span.grow / weight, item.span.most - item.height)
                if item.span.step:
                    share = math.floor(share / item.span.step + 1e-6) * item.span.step
                item.height += share
                taken += share
            spare -= taken
            growing = [i for i in growing if i.height < i.span.most - 1e-6]
            if taken < 1e-6 or stepped:
                break
    # Whole lines that still fit, where nothing else can take the space: one to each in turn, so none has many more.
    if not any(i.span.grow and not i.span.step and i.height < i.span.most - 1e-6 for i in items):
        turns = sorted((i for i in items if i.span.step and i.span.grow), key=lambda i: i.height)
        while turns:
            turns = [i for i in turns if i.span.step <= spare + 1e-6 and i.height + i.span.step <= i.span.most + 1e-6]
            for item in turns:
                if item.span.step <= spare + 1e-6:
                    item.height += item.span.step
                    spare -= item.span.step
    return [i.height for i in items]


def draw_stack(kit: Kit, pen: Pen, blocks: Sequence[Block], x: float, top: float, width: float, height: float,
               loosen: float = 0.0) -> float:  # fmt: skip
    """Draw blocks one under the other into a given height; returns the y under the last one.

    `loosen` is how much each gap may grow (mm) if nothing else takes what is left.
    """
    heights = shares(kit, blocks, width, height)
    left = height - sum(heights) - sum(gap_of(kit, b) for b in blocks[1:])
    extra = min(loosen, max(0.0, left) / max(1, len(blocks) - 1))
    y = top
    for k, (block, high) in enumerate(zip(blocks, heights, strict=True)):
        y -= (gap_of(kit, block) + extra) if k else 0.0
        lower = 0.0
        if getattr(block, "role", "") == "heading" and k + 1 < len(blocks):
            # A heading belongs to what follows: it stands nearer to that than to what is over it.
            lower = 0.4 * gap_of(kit, blocks[k + 1]) + 0.9 * extra
        block.draw(kit, pen, x, y - lower, width, high)
        y -= high
    return y
