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
from packgen.pictures.cutouts import PackedSheet, Piece, pack

_GAP = 3.0
_WORTH = 8.0  # mm of a page's height, for which a picture is turned
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
    """Pages of pictures to cut out, and after them the blocks in `more` (how to fold), where there is room.

    A picture is turned on its side where that saves paper.
    """
    high = min(desk.room(head, 1, ruler=True), desk.room(head, 0, ruler=True))
    turned, sheets = _saving(cuts, desk.live_width, high)
    blocks: list[Block] = [
        _Packed(desk, tuple(cuts), tuple((p.piece.name, p.x, p.y) for p in sheet.placed), turned, sheet.used_height)
        for sheet in sheets
    ]
    if more:
        blocks.append(Stack(tuple(more)) if len(more) < 3 else more[0])
        blocks += more[1:] if len(more) >= 3 else ()
    return desk.pages(head, blocks, name=head.title, ruler=True, loosen=2.0)


def _saving(cuts: Sequence[CutOut], width: float, height: float) -> tuple[frozenset[str], tuple[PackedSheet, ...]]:
    """The letters of the pictures to turn, and the sheets they then make: as few, and as little filled, as found."""
    turned: frozenset[str] = frozenset()
    best = pack(_pieces(cuts, turned), width, height, _GAP)
    while True:
        tries = []
        for cut in cuts:
            wide, high = cut.high + _LABEL, cut.wide
            if cut.letter not in turned and wide <= width and high <= height:
                more = turned | {cut.letter}
                tries.append((_paper(pack(_pieces(cuts, more), width, height, _GAP)), sorted(more)))
        if not tries:
            return turned, best
        paper, letters = min(tries)
        before = _paper(best)
        if not (paper[0] < before[0] or (paper[0] == before[0] and paper[1] < before[1] - _WORTH)):
            return turned, best
        turned = frozenset(letters)
        best = pack(_pieces(cuts, turned), width, height, _GAP)


def _pieces(cuts: Sequence[CutOut], turned: frozenset[str]) -> list[Piece]:
    """The pieces of paper, labels and all."""
    sizes = ((cut.letter, cut.wide, cut.high + _LABEL) for cut in cuts)
    return [Piece(name, high, wide) if name in turned else Piece(name, wide, high) for name, wide, high in sizes]


def _paper(sheets: Sequence[PackedSheet]) -> tuple[int, float]:
    """How much paper sheets take: their number, and their filled height in mm."""
    return len(sheets), sum(sheet.used_height for sheet in sheets)


@dataclass(frozen=True, slots=True)
class _Packed:
    """Pictures placed on one page. `places` are (letter, x, y) from the block's upper left corner."""

    desk: Desk
    cuts: tuple[CutOut, ...]
    places: tuple[tuple[str, float, float], ...]
    turned: frozenset[str]
    high: float
    gap: float | None = None
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        return rigid(self.high)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        by_letter = {cut.letter: cut for cut in self.cuts}
        for letter, left, down in self.places:
            cut = by_letter[letter]
            if letter in self.turned:
                inner = kit.pen()
                self._piece(kit, inner, cut, 0.0, _LABEL)
                pen.lost += inner.lost
                across = x + left + cut.high + _LABEL
                pen.group(inner.marks, (0.0, 1.0, -1.0, 0.0, across, top - down - cut.wide))
            else:
                self._piece(kit, pen, cut, x + left, top - down - cut.high)

    def _piece(self, kit: Kit, pen: Pen, cut: CutOut, x: float, y: float) -> None:
        """One picture with its lower left corner at (x, y), and its label under it."""
        style = kit.look.small.at(3.0).grey(SOFT)
        place_picture(self.desk, pen, cut.path, x, y, cut.wide, cut.high, about=cut.about, framed=False,
                      name=f'"{cut.name}"')  # fmt: skip
        pen.box(x, y, cut.wide, cut.high, Stroke(THIN, 0.2), role="cut")
        fitted = fit(kit.faces, f"{cut.letter} · {cut.name}", style, cut.wide, _LABEL, 1.8)
        pen.lines(x, y - 0.4, fitted.lines[:1], fitted.style)

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
