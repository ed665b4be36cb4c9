"""The study's words: to trace and draw, to trace and copy, to match with their meanings, to guess and to use."""

from __future__ import annotations

import hashlib
import itertools
from collections.abc import Sequence
from dataclasses import dataclass, replace

from packgen.page.blocks import Block, Break, DrawBox, Kit, Lines, Prose, Row, Span, Stack, gap_of, heading
from packgen.page.desk import Desk, Laid, Option, Sheet
from packgen.page.frame import Head
from packgen.page.letters import Traced, trace_width
from packgen.page.look import PALE, RULE, THIN
from packgen.page.marks import Stroke
from packgen.page.pen import Pen
from packgen.page.table import Cell, Column, Table
from packgen.page.text import Style, fit, widest_word, wrap
from packgen.reading.models import Word

SHEET = Sheet(
    title="Words",
    about="The study's words: the first trace and draw them, the younger trace, copy and match them, the older guess "
    "what they mean, match them and use them.",
    options=(Option("most", "", "how many words to take (all; the first get the 4 shortest)"),),
)

# Fewer pairs than this are no puzzle.
_PAIRS = 3
_FIRST_WORDS, _FIRST_ON_PAGE = 4, 2
# With so few words or fewer there is room for more to do.
_FEW = 6
# So few pairs to match leave half of their page.
_HALF_PAGE = 4


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """One laid sheet of one to several pages; nothing if the study has no words."""
    words = _chosen(desk)
    if not words:
        return ()
    book = desk.study.book
    head = desk.head(desk.say("title"), str(book.title) if book else str(desk.study.study), "letter")
    made = {"first": _first, "younger": _younger}.get(desk.level, _older)
    pages = desk.pages(head, made(desk, head, words), name=head.title)
    sides = "two-sided-long-edge" if desk.level in ("older", "upper") and len(pages) > 1 else "one-sided"
    return (Laid("words", head.title, pages, week=desk.item.week, sides=sides),)


def _chosen(desk: Desk) -> tuple[Word, ...]:
    """The words of this sheet in the study's order; for the first, the shortest."""
    words = tuple(w for w in desk.study.words if not w.levels or desk.level in w.levels)
    most = desk.count("most", _FIRST_WORDS if desk.level == "first" else len(words))
    if len(words) <= most:
        return words
    if desk.level != "first":
        return words[:most]
    short = sorted(range(len(words)), key=lambda k: (len(words[k].word), k))[:most]
    return tuple(words[k] for k in sorted(short))


def _left(desk: Desk) -> bool:
    """True if the model belongs on the right, where a left hand does not cover it."""
    return bool(desk.child and desk.child.left_handed)


def _letters(desk: Desk) -> str:
    return desk.child.letters if desk.child else "print"


def _evenly(words: Sequence[Word], most: int) -> list[tuple[Word, ...]]:
    """The words in as few groups of at most `most` as will do, as even as they come."""
    count = -(-len(words) // most)
    cuts = [round(k * len(words) / count) for k in range(count + 1)]
    return [tuple(words[a:b]) for a, b in itertools.pairwise(cuts)]


def _entry(desk: Desk, word: Word) -> Block:
    """A word in bold with its meaning beside it, or under it if the word is long."""
    style = desk.look.strong
    wide = desk.faces.width(word.word, style.face, style.size)
    name, means = Prose(word.word, "strong"), Prose(word.means, "body", gap=0.0)
    if wide > desk.live_width * 0.4:
        return Stack((name, means), tight=True)
    return Row(((-wide - 0.1, name), (1.0, means)), gutter=desk.look.body.size * 0.9, tight=True)


# Trace and draw, trace and copy


def _first(desk: Desk, head: Head, words: Sequence[Word]) -> list[Block]:
    """Two words on a page: each huge, with its meaning to be read aloud and a place to draw it."""
    blocks: list[Block] = []
    for group in _evenly(words, _FIRST_ON_PAGE):
        if blocks:
            blocks.append(Break())
        else:
            blocks.append(Prose(desk.say("trace"), "strong"))
        for word in group:
            traced = Traced(word.word, times=4, letters=_letters(desk), gap=1.0)
            again = (replace(traced, arrows=False, gap=3.0),) if len(group) == 1 else ()
            blocks.append(Stack((_entry(desk, word), traced, *again, DrawBox(desk.say("draw"), least=40.0, gap=4.0))))
    return blocks


def _younger(desk: Desk, head: Head, words: Sequence[Word]) -> list[Block]:
    """Each word with its meaning, to trace and to write on the same line; then all to match."""
    blocks: list[Block] = [Prose(desk.say("trace"), "strong")]
    used = blocks[0].measure(desk.kit, desk.live_width).least + desk.look.gap
    for number, group in enumerate(_pages_of(desk, words, desk.room(head, 0) - used)):
        if number:
            blocks.append(Break())
        room = desk.room(head, number) - (0.0 if number else used)
        entries = _fullest(desk, group, room)
        blocks += entries
        left = room - _height(desk, entries) - desk.look.gap
        if left >= 45.0:
            blocks.append(DrawBox(desk.say("draw"), least=40.0))
    # Of words for two pages each has few: they stand farther apart, so that neither page ends early.
    blocks += _match(desk, words, 54.0 if len(words) > 2 * _PAIRS else 34.0)
    if _PAIRS <= len(words) <= _HALF_PAGE:
        blocks.append(Stack((Prose(desk.say("sentence"), "strong"), Lines(2, gap=0.5))))
    return blocks


def _pages_of(desk: Desk, words: Sequence[Word], room: float) -> list[tuple[Word, ...]]:
    """The words by pages, as few pages as hold them, evenly filled."""
    for most in range(len(words), 1, -1):
        groups = _evenly(words, most)
        if all(_height(desk, [_copied(desk, word, 0) for word in group]) <= room for group in groups):
            return groups
    return [(word,) for word in words]


def _fullest(desk: Desk, words: Sequence[Word], room: float) -> list[Block]:
    """The entries of a page with as many empty lines under each word as the page has room for, up to three."""
    for under in (3, 2, 1):
        entries = [_copied(desk, word, under) for word in words]
        if _height(desk, entries) <= room:
            return entries
    return [_copied(desk, word, 0) for word in words]


def _height(desk: Desk, blocks: Sequence[Block]) -> float:
    least = sum(block.measure(desk.kit, desk.live_width).least for block in blocks)
    return least + sum(gap_of(desk.kit, block) for block in blocks[1:])


def _copied(desk: Desk, word: Word, under: int) -> Block:
    """A word to trace, with the rest of its line to write it on; a word too long for that gets a line under it."""
    wide = trace_width(desk.kit, word.word, desk.look.ruling.x_height, _letters(desk))
    under = max(under, 1 if wide > desk.live_width * 0.46 else 0)
    align = "right" if _left(desk) else "left"
    traced = Traced(word.word, under=under, align=align, letters=_letters(desk), gap=0.5)
    return Stack((_entry(desk, word), traced))


# Match


@dataclass(frozen=True, slots=True)
class Match:
    """Words on one side and their meanings on the other in another order, to be joined by lines.

    The order is the same for the same words, and no meaning stands beside its word. `mirrored` puts the words on the
    right. `most`: rows stand at most so far (mm) from each other.
    """

    pairs: tuple[tuple[str, str], ...]
    mirrored: bool = False
    gap: float | None = None
    tight: bool = False
    most: float = 34.0

    def meanings(self) -> tuple[str, ...]:
        """The meanings in the order they are printed in."""
        return tuple(self.pairs[k][1] for k in shuffled(self.pairs))

    def _widths(self, width: float) -> tuple[float, float]:
        return width * 0.34, width * 0.48

    def _cells(self, kit: Kit, width: float) -> list[tuple[tuple[str, ...], Style, tuple[str, ...], Style]]:
        name, means = self._widths(width)
        pad = 2 * _pad(kit)
        found = []
        for (word, _), meaning in zip(self.pairs, self.meanings(), strict=True):
            strong = fit(kit.faces, word, kit.look.strong, name - pad, 1e6, kit.look.floor * 0.85)
            if widest_word(kit.faces, word, kit.look.strong) <= name - pad:
                strong = replace(strong, lines=wrap(kit.faces, word, kit.look.strong, name - pad))
            lines = wrap(kit.faces, meaning, kit.look.body, means - pad)
            found.append((strong.lines, strong.style, lines, kit.look.body))
        return found

    def _row_heights(self, kit: Kit, width: float) -> list[float]:
        cells = self._cells(kit, width)
        return [max(len(a) * s.leading, len(b) * t.leading) + 2 * _pad(kit) for a, s, b, t in cells]

    def measure(self, kit: Kit, width: float) -> Span:
        """Rows as high as their texts; the space between them grows."""
        rows = self._row_heights(kit, width)
        least = sum(rows) + (len(rows) - 1) * kit.look.gap * 0.7
        return Span(least, sum(max(high, self.most) for high in rows), 1.5)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """Boxes in two columns, a dot at the inner edge of each."""
        rows = self._row_heights(kit, width)
        between = (height - sum(rows)) / max(1, len(rows) - 1) if len(rows) > 1 else 0.0
        name, means = self._widths(width)
        names_x, means_x = (x + width - name, x) if self.mirrored else (x, x + width - means)
        y = top
        for (a, a_style, b, b_style), high in zip(self._cells(kit, width), rows, strict=True):
            _label(kit, pen, names_x, y, name, high, a, a_style, None)
            _label(kit, pen, means_x, y, means, high, b, b_style, PALE)
            for at in (names_x, means_x + means) if self.mirrored else (names_x + name, means_x):
                pen.ring(at, y - high / 2, 1.3, Stroke(THIN, 0.2), 1.0, role="join")
            y -= high + between

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        """Two puzzles of at least three pairs each; each has its own order."""
        rows = self._row_heights(kit, width)
        fits, used = 0, 0.0
        for high in rows:
            used += high
            if used > room + 1e-6:
                break
            fits += 1
            used += kit.look.gap * 0.7
        fits = min(fits, len(rows) - _PAIRS)
        if fits < _PAIRS:
            return None
        return replace(self, pairs=self.pairs[:fits]), replace(self, pairs=self.pairs[fits:], gap=0.0)


def _pad(kit: Kit) -> float:
    return 0.35 * kit.look.body.size + 0.6


def _label(kit: Kit, pen: Pen, x: float, top: float, width: float, high: float, lines: Sequence[str], style: Style,
           fill: float | None) -> None:  # fmt: skip
    pen.box(x, top - high, width, high, Stroke(THIN, RULE), fill, corner=kit.look.corner * 0.7, role="label")
    up = top - (high - len(lines) * style.leading) / 2
    pen.lines(x + _pad(kit) + 1.0, up, lines, style)


def shuffled(pairs: Sequence[tuple[str, str]]) -> tuple[int, ...]:
    """Which meaning stands in each row: a fixed order that looks like chance, with none beside its own word.

    The rows are put into a ring by a digest of what they say, and each gets the meaning of the next; a ring never
    gives a row its own. Of several rings the first is taken in which no equal wording meets its word either.
    """
    for salt in range(24):
        ring = sorted(range(len(pairs)), key=lambda k: hashlib.sha256(f"{salt}|{k}|{pairs[k]}".encode()).digest())
        found = [0] * len(pairs)
        for here, following in zip(ring, [*ring[1:], *ring[:1]], strict=True):
            found[here] = following
        if all(pairs[k][1] != pairs[row][1] for row, k in enumerate(found)):
            break
    return tuple(found)


def _match(desk: Desk, words: Sequence[Word], most: float = 34.0) -> list[Block]:
    """The matching page, if there are enough words for one."""
    if len(words) < _PAIRS:
        return []
    pairs = tuple((str(word.word), str(word.means)) for word in words)
    return [Break(), _told(desk, "match_head", "match"), Match(pairs, _left(desk), most=most)]


def _told(desk: Desk, title: str, text: str) -> Block:
    """A heading with the line that says what to do, kept with what follows."""
    return Stack((heading(desk.say(title)), Prose(desk.say(text), gap=1.0)), tight=True)


# Guess and use


def _older(desk: Desk, head: Head, words: Sequence[Word]) -> list[Block]:
    """A table to guess in before the book tells, the check, and lines for sentences of one's own."""
    blocks: list[Block] = [_told(desk, "guess_head", "guess"), _guesses(desk, words)]
    if len(words) <= _PAIRS:
        blocks.append(DrawBox(desk.say("draw_guess"), least=50.0))
    blocks += [Break()] if desk.level == "upper" or len(words) < _PAIRS else _match(desk, words)
    blocks.append(_told(desk, "own_head", "own"))
    blocks += [Stack((_named(desk, word, words), Lines(2, 6, gap=0.5))) for word in _own_order(desk, words)]
    if len(words) <= _FEW:
        blocks.append(DrawBox(desk.say("draw"), least=50.0))
    return blocks


def _own_order(desk: Desk, words: Sequence[Word]) -> list[Word]:
    """The words to use in an order of their own, so that the list does not give away what was to be joined."""
    if len(words) < _PAIRS:
        return list(words)
    return [words[k] for k in shuffled([(str(word.word), "") for word in words])]


def _named(desk: Desk, word: Word, words: Sequence[Word]) -> Block:
    """A word to use in a sentence; its meaning beside it unless it is to be found: by matching, or behind a fold."""
    found = desk.level == "upper" or len(words) >= _PAIRS
    return Prose(word.word, "strong", tight=True) if found else _entry(desk, word)


def _guesses(desk: Desk, words: Sequence[Word]) -> Block:
    pitch = desk.look.ruling.pitch
    columns = [Column(desk.say("col_word"), 1.1, names=True), Column(desk.say("col_place"), 2.2, ruled=True),
               Column(desk.say("col_guess"), 1.7, ruled=True)]  # fmt: skip
    rows: list[list[str | Cell]] = [[word.word, "", ""] for word in words]
    if _left(desk):
        columns, rows = [*columns[1:], columns[0]], [[*row[1:], row[0]] for row in rows]
    if desk.level == "upper":
        columns.append(Column(desk.say("col_means"), 1.5, fold=True))
        rows = [[*row, Cell(word.means, "small")] for row, word in zip(rows, words, strict=True)]
    return Table(tuple(columns), tuple(tuple(row) for row in rows), least=2 * pitch + 1.0, most=7 * pitch)
