"""Things to cut out, each exactly as large as its place: pictures for glue boxes, cards for a timeline.

Neighbours share their cuts, which run straight from edge to edge of the block, so that there is little to cut.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from packgen.faults import Said
from packgen.page.blocks import Block, Kit, Span, Stack, rigid
from packgen.page.desk import Desk
from packgen.page.frame import Head
from packgen.page.look import MIDDLE, SOFT, THIN
from packgen.page.marks import Page, Stroke
from packgen.page.pen import Pen
from packgen.page.pictured import place_picture
from packgen.page.text import fit
from packgen.pictures.cutouts import Piece, pack

_LABEL = 5.0  # the strip under a picture that says where it goes; it is cut off


@dataclass(frozen=True, slots=True)
class CutOut:
    """A picture for the glue box of the same letter, wide x high mm."""

    letter: str
    name: str
    path: Path
    wide: float
    high: float
    about: Said | None = None


@dataclass(frozen=True, slots=True)
class Card:
    """A card with a date and words, wide x high mm."""

    when: str
    words: str
    wide: float
    high: float
    about: object = None


@dataclass(frozen=True, slots=True)
class GlueBox:
    """The place for a cut-out: a dashed box of its exact size, centred, with its letter."""

    letter: str
    words: str
    wide: float
    high: float
    gap: float | None = None
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        """Its own height."""
        return rigid(self.high)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """The box and its letter."""
        left = x + (width - self.wide) / 2
        pen.box(left, top - self.high, self.wide, self.high, Stroke(THIN, 0.3, (1.4, 1.0)), role="gluebox")
        style = kit.look.small.grey(SOFT)
        middle = top - self.high / 2 - style.size * 0.33
        pen.text(left + self.wide / 2, middle, f"{self.words} {self.letter}", style, align="centre")

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """Never."""
        return None


def cut_out_pages(desk: Desk, head: Head, cuts: Sequence[CutOut], more: Sequence[Block] = ()) -> tuple[Page, ...]:
    """Pages of pictures to cut out, and after them the blocks in `more` (how to fold), where there is room."""
    sizes = [Piece(cut.letter, cut.wide, cut.high + _LABEL) for cut in cuts]
    high = desk.room(head, 1, ruler=True)
    blocks: list[Block] = [
        _Packed(desk, tuple(cuts), tuple((p.piece.name, p.x, p.y) for p in sheet.placed), sheet.used_height)
        for sheet in pack(sizes, desk.live_width, min(high, desk.room(head, 0, ruler=True)), gap=3.0)
    ]
    if more:
        blocks.append(Stack(tuple(more)) if len(more) < 3 else more[0])
        blocks += more[1:] if len(more) >= 3 else ()
    return desk.pages(head, blocks, name=head.title, ruler=True, loosen=2.0)


@dataclass(frozen=True, slots=True)
class _Packed:
    """Pictures placed on one page. `places` are (letter, x, y) from the block's upper left corner."""

    desk: Desk
    cuts: tuple[CutOut, ...]
    places: tuple[tuple[str, float, float], ...]
    high: float
    gap: float | None = None
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        return rigid(self.high)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        by_letter = {cut.letter: cut for cut in self.cuts}
        style = kit.look.small.at(3.0).grey(SOFT)
        for letter, left, down in self.places:
            cut = by_letter[letter]
            at_x, at_y = x + left, top - down - cut.high
            place_picture(self.desk, pen, cut.path, at_x, at_y, cut.wide, cut.high, about=cut.about, framed=False,
                          name=f'"{cut.name}"')  # fmt: skip
            pen.box(at_x, at_y, cut.wide, cut.high, Stroke(THIN, 0.2), role="cut")
            fitted = fit(kit.faces, f"{letter} · {cut.name}", style, cut.wide, _LABEL, 1.8)
            pen.lines(at_x, at_y - 0.4, fitted.lines[:1], fitted.style)

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        return None


def card_pages(desk: Desk, head: Head, cards: Sequence[Card]) -> tuple[Page, ...]:
    """Pages of cards with shared straight cuts: one block of equal cards, cut from edge to edge."""
    if not cards:
        return ()
    across = max(1, int(desk.live_width / cards[0].wide))
    high = max(card.high for card in cards)
    rows = max(1, int(min(desk.room(head, 0, ruler=True), desk.room(head, 1, ruler=True)) / high))
    a_page = rows * across
    blocks = [_Cards(desk, tuple(cards[k : k + a_page]), across) for k in range(0, len(cards), a_page)]
    return desk.pages(head, blocks, name=head.title, ruler=True)


@dataclass(frozen=True, slots=True)
class _Cards:
    """Equal cards in rows, their edges shared."""

    desk: Desk
    cards: tuple[Card, ...]
    across: int
    gap: float | None = None
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        return rigid(-(-len(self.cards) // self.across) * self.cards[0].high)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        look = kit.look
        for k, card in enumerate(self.cards):
            left = x + (k % self.across) * card.wide
            foot = top - (k // self.across + 1) * card.high
            pen.box(left, foot, card.wide, card.high, Stroke(MIDDLE, 0.2), role="cut")
            room = (card.wide - 8.0, card.high - look.strong.leading - 4.0)
            fitted = fit(kit.faces, card.words, look.body, *room, 3.0)
            when = fit(kit.faces, card.when, look.strong, room[0], look.strong.leading, 3.0)
            if not fitted.fits:
                self.desk.fault(card.about or card.words, f'"{card.words[:40]}" is too long for its card.',
                                'Give the event a short wording with "short:".')  # fmt: skip
            y = pen.lines(left + 4.0, foot + card.high - 2.0, when.lines, when.style)
            pen.lines(left + 4.0, y, fitted.lines, fitted.style)

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        return None
