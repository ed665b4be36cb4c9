"""Things to cut out, each exactly as large as its place: pictures for glue boxes, cards for a timeline.

Pictures lie in the order of their letters, each letter in a corner of its picture so that it is not cut off. Cards
share their cuts, which run straight from edge to edge of the block, so that there is little to cut.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from packgen.faults import Said
from packgen.page.blocks import Block, Break, Kit, Span, Whole, rigid
from packgen.page.desk import Desk
from packgen.page.frame import Head
from packgen.page.look import HAIR, MIDDLE, RULE, SOFT, THIN
from packgen.page.marks import Page, Stroke
from packgen.page.pen import Pen
from packgen.page.pictured import place_picture
from packgen.page.text import fit
from packgen.pictures.cutouts import PackedSheet, Piece, pack

_GAP = 3.0
_LETTER = 3.7  # mm: the em of the letter on a picture, or more if the level's smallest type is larger
_INSET, _CHIP = 1.2, 1.4  # its white chip: mm off the picture's corner, and its height in ems of the letter

More = Callable[[float], Sequence[Block]]


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


def cut_out_pages(desk: Desk, head: Head, cuts: Sequence[CutOut], more: More | None = None) -> tuple[Page, ...]:
    """Pages of pictures to cut out in the order of their letters, and after them `more` (how to fold).

    `more` gives the blocks that fit a height in mm, or none; they stand on the last page of pictures if that has room.
    A picture is turned on its side where that saves paper.
    """
    rooms = (desk.room(head, 0, ruler=True), desk.room(head, 1, ruler=True))
    sheets, after = _laid(desk, cuts, rooms, more)
    blocks: list[Block] = []
    for k, sheet in enumerate(sheets):
        blocks += [Break()] if k else []
        blocks.append(_Packed(desk, tuple(cuts), sheet))
    if more and not after:
        after = (*([Break()] if sheets else ()), *more(rooms[1] if sheets else rooms[0]))
    blocks += after
    return desk.pages(head, blocks, name=head.title, ruler=True, loosen=6.0)


def cut_out_count(desk: Desk, head: Head, cuts: Sequence[CutOut], more: More) -> tuple[int, bool]:
    """How many pages the pictures take, and whether `more` stands on the last of them."""
    sheets, after = _laid(desk, cuts, (desk.room(head, 0, ruler=True), desk.room(head, 1, ruler=True)), more)
    return len(sheets), bool(after)


def _laid(desk: Desk, cuts: Sequence[CutOut], rooms: tuple[float, float],
          more: More | None) -> tuple[Sequence[PackedSheet], Sequence[Block]]:  # fmt: skip
    """The pictures on as few pages as can be, some turned if that saves paper, and what stands under the last."""
    pieces = [Piece(c.letter, c.wide, c.high) for c in cuts]
    upright, turned = (pack(pieces, desk.live_width, min(rooms), _GAP, turn=turn) for turn in (False, True))
    sheets, after = upright, _beside(desk, upright, rooms, more)
    if len(turned) < len(upright) or (more and not after and _beside(desk, turned, rooms, more)):
        sheets, after = turned, _beside(desk, turned, rooms, more)
    return sheets, after


def _beside(desk: Desk, sheets: Sequence[PackedSheet], rooms: Sequence[float], more: More | None) -> Sequence[Block]:
    """The blocks of `more` that fit under the last of the pictures; none if they do not."""
    if not more or not sheets:
        return ()
    return more(rooms[0 if len(sheets) == 1 else 1] - sheets[-1].used_height)


@dataclass(frozen=True, slots=True)
class _Packed(Whole):
    """Pictures placed on one page."""

    desk: Desk
    cuts: tuple[CutOut, ...]
    sheet: PackedSheet
    gap: float | None = None
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        return rigid(self.sheet.used_height)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        by_letter = {cut.letter: cut for cut in self.cuts}
        for place in self.sheet.placed:
            cut = by_letter[place.piece.name]
            if place.turned:
                inner = kit.pen()
                self._piece(kit, inner, cut, 0.0, 0.0)
                pen.lost += inner.lost
                pen.group(inner.marks, (0.0, 1.0, -1.0, 0.0, x + place.x + cut.high, top - place.y - cut.wide))
            else:
                self._piece(kit, pen, cut, x + place.x, top - place.y - cut.high)

    def _piece(self, kit: Kit, pen: Pen, cut: CutOut, x: float, y: float) -> None:
        """One picture with its lower left corner at (x, y); its letter in that corner, where no scissors come."""
        place_picture(self.desk, pen, cut.path, x, y, cut.wide, cut.high, about=cut.about, framed=False,
                      name=f'"{cut.name}"')  # fmt: skip
        pen.box(x, y, cut.wide, cut.high, Stroke(THIN, 0.2), role="cut")
        style = kit.look.strong.at(max(_LETTER, kit.look.small.size))
        high = _CHIP * style.size
        wide = max(high, kit.faces.width(cut.letter, style.face, style.size) + 2.0)
        pen.box(x + _INSET, y + _INSET, wide, high, Stroke(HAIR, RULE), 1.0, corner=0.8, role="chip")
        base = y + _INSET + high / 2 - kit.faces.metrics(style.face).cap * style.size / 2
        pen.text(x + _INSET + wide / 2, base, cut.letter, style, align="centre", role="chip-letter")


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
