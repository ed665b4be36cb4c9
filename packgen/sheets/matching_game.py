"""A game of cards to match: each work's picture with its title, its year, where it hangs, or a detail of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from string import ascii_uppercase

from packgen.page.artwork import Box, centred, largest
from packgen.page.blocks import Block, Bullets, draw_stack
from packgen.page.dealing import dealt
from packgen.page.desk import Desk, Laid, Option, Sheet
from packgen.page.frame import Head
from packgen.page.look import MIDDLE, SOFT
from packgen.page.marks import Page
from packgen.page.pen import Pen
from packgen.page.pictured import place_picture
from packgen.page.text import Style, fit
from packgen.pictures.closer import details
from packgen.pictures.load import aspect
from packgen.reading.dates import plain
from packgen.reading.models import Work

SHEET = Sheet(
    title="Matching game",
    about="Cards to cut out and match: picture and detail, picture and title, or title, year and place too.",
    options=(
        Option("sets", "", "how many cards a work has, 2 to 4; left out: as suits the level", ("2", "3", "4")),
        Option("backs", "auto", "a letter on the back of each card by which a match is checked", ("auto", "yes", "no")),
        Option("most", "", "at most this many works"),
    ),
    parts=("cards",),
)

_SETS = {
    "first": ("picture", "detail"), "younger": ("picture", "title"), "older": ("picture", "title", "year"),
    "upper": ("picture", "title", "year", "held"),
}  # fmt: skip
_ORDER = ("picture", "title", "year", "held")
_LEAST = (38.0, 34.0)  # mm, the smallest card that is still pleasant to hold
_HIGHEST = 80.0
_PAD = 3.0
_MOST = 12
_LEFT_OVER = 1500.0  # mm2 of picture that a place left over in the last row counts for


@dataclass(frozen=True, slots=True)
class _Deal:
    """How the cards lie: cards side by side in a row, rows on a page, and a card's size in mm."""

    across: int
    rows: int
    wide: float
    high: float


@dataclass(frozen=True, slots=True)
class _Card:
    """A card: whose it is, its kind, and its place on a page from the upper left."""

    work: Work
    kind: str
    row: int
    column: int


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """Pages of cards on card, with backs if the printer prints both sides."""
    works = [work for work in desk.study.works if work.image][: desk.count("most", _MOST)]
    sets = _sets(desk, works)
    if len(works) < 2 or len(sets) < 2:
        return ()
    head = desk.head(desk.say("title"), str(desk.study.study), "cards", date=False)
    words = _words(desk, backs := _has_backs(desk))
    deal = _deal(desk, head, words, works, len(sets))
    parts = _dealt(deal, works, sets)
    pages: list[Page] = []
    for k, part in enumerate(parts):
        # Every page is turned over: a page of the run and its back count as one.
        pages.append(_front(desk, head, words if k == 0 else [], deal, part, (k + 1, len(parts))))
        if backs:
            pages.append(_back(desk, head, deal, works, part, k))
    sides = "two-sided-long-edge" if backs else "one-sided"
    after = desk.say_lines("after")
    return (Laid("matching-game", SHEET.title, tuple(pages), "card", sides, week=desk.item.week, part="cards",
                 after=after, colour=True),)  # fmt: skip


def _dealt(deal: _Deal, works: list[Work], sets: tuple[str, ...]) -> list[list[_Card]]:
    """The cards of each page, mixed so that those of a work do not lie side by side."""
    cards = [(work, kind) for work in works for kind in sets]
    a_page = deal.across * deal.rows
    cells = [(k // a_page, k % a_page // deal.across, k % deal.across) for k in range(len(cards))]
    letters = [frozenset(_letters(works, work, kind).split()) for work, kind in cards]
    pages: list[list[_Card]] = [[] for _ in range(cells[-1][0] + 1)]
    for (page, row, column), number in zip(cells, dealt(letters, cells), strict=True):
        pages[page].append(_Card(*cards[number], row, column))
    return pages


def _sets(desk: Desk, works: list[Work]) -> tuple[str, ...]:
    """The kinds of card: those of the level, or the first so many; one that most works lack is left out."""
    chosen = _SETS[desk.level]
    said = desk.option("sets")
    if said is not None:
        count = desk.count("sets", len(chosen))
        chosen = _ORDER[: min(max(2, count), 4)]
    known: dict[str, Callable[[Work], object]] = {
        "picture": lambda w: w.image, "detail": lambda w: w.image, "title": lambda w: w.title,
        "year": lambda w: w.when, "held": lambda w: w.held,
    }  # fmt: skip
    return tuple(kind for kind in chosen if sum(bool(known[kind](w)) for w in works) * 2 > len(works))


def _has_backs(desk: Desk) -> bool:
    said = str(desk.option("backs") or "auto")
    return said == "yes" or (said == "auto" and desk.family.printer.sides != "one-sided")


def _words(desk: Desk, backs: bool) -> list[Block]:
    return [Bullets(desk.say_lines("how", backs=backs), "dot", "small", spread=0.1)]


def _room(desk: Desk, head: Head, words: list[Block]) -> float:
    """The height for cards on every page."""
    used = sum(b.measure(desk.kit, desk.live_width).least for b in words) + desk.look.gap
    return min(desk.room(head, 0) - used, desk.room(head, 1))


def _deal(desk: Desk, head: Head, words: list[Block], works: list[Work], sets: int) -> _Deal:
    """The way to lay the cards on the fewest pages, then with the largest pictures."""
    room = _room(desk, head, words)
    shapes = [aspect(work.image) for work in works if work.image]
    cards = len(works) * sets
    found: list[tuple[int, float, _Deal]] = []
    for across in range(2, 7):
        wide = desk.live_width / across
        for rows in range(1, 7):
            pages = -(-cards // (across * rows))
            high = min(room / min(rows, -(-cards // across)), _HIGHEST, wide * 1.5)
            areas = [w * h for w, h in (largest(s, wide - 2 * _PAD, high - 2 * _PAD) for s in shapes)]
            if (wide >= _LEAST[0] and high >= _LEAST[1]) or (across, rows) == (2, 1):
                over = -cards % across  # places left over in the last row
                found.append(
                    (pages, _LEFT_OVER * over - min(areas) - sum(areas) / len(areas), _Deal(across, rows, wide, high))
                )
    return min(found, key=lambda deal: deal[:2])[2]


def _box(desk: Desk, deal: _Deal, card: _Card, top: float) -> Box:
    """Where a card lies."""
    y = top - (card.row + 1) * deal.high
    return Box(desk.margins.left + card.column * deal.wide, y, deal.wide, deal.high)


def _top(desk: Desk, head: Head, words: list[Block], number: int) -> float:
    """Where the first row of cards begins on a page."""
    edge = desk.margins
    over = desk.paper[1] - edge.top - edge.bottom - desk.room(head, number) - 9.0
    used = sum(b.measure(desk.kit, desk.live_width).least for b in words)
    return desk.paper[1] - edge.top - over - (used + desk.look.gap if words else 0.0)


def _front(desk: Desk, head: Head, words: list[Block], deal: _Deal, part: list[_Card],
           place: tuple[int, int]) -> Page:  # fmt: skip
    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        top = y + height
        if words:
            top = draw_stack(desk.kit, pen, words, x, top, width, height) - desk.look.gap
        for card in part:
            _face(desk, pen, card.work, card.kind, _box(desk, deal, card, top))
        _cuts(pen, deal, len(part), x, top)

    return desk.free_page(paint, head, name=SHEET.title, number=place[0], count=place[1])


def _face(desk: Desk, pen: Pen, work: Work, kind: str, box: Box) -> None:
    """The face of one card."""
    inner = Box(box.x + _PAD, box.y + _PAD, box.width - 2 * _PAD, box.height - 2 * _PAD)
    assert work.image
    if kind == "picture":
        at = centred(aspect(work.image), inner)
        place_picture(desk, pen, work.image, at.x, at.y, at.width, at.height, about=work.image_said,
                      name=f'"{work.title}"')  # fmt: skip
    elif kind == "detail":
        crop = _detail(desk, work)
        at = centred(crop[2] / crop[3] * aspect(work.image), inner)
        place_picture(desk, pen, work.image, at.x, at.y, at.width, at.height, crop=crop, warn=False)
    else:
        _lettered(desk, pen, _text(work, kind), _style(desk, kind), inner)


def _detail(desk: Desk, work: Work) -> tuple[float, float, float, float]:
    """A part by which the work is known again: its first named detail with some room, or the busiest."""
    assert work.image
    shape = aspect(work.image)
    if work.details:
        own = work.details[0]
        middle = own.left + own.width / 2, own.top + own.height / 2
        side = max(own.width * shape, own.height, 0.24 * min(shape, 1.0)) * 1.1
        wide, high = min(1.0, side / shape), min(1.0, side)
        return max(0.0, min(1 - wide, middle[0] - wide / 2)), max(0.0, min(1 - high, middle[1] - high / 2)), wide, high
    found = details(desk.store, work.image, 1, side=0.34)
    return found[0] if found else (0.25, 0.25, 0.5, 0.5)


def _text(work: Work, kind: str) -> str:
    if kind == "year":
        return plain(work.when) if work.when else "–"
    return str(work.title) if kind == "title" else str(work.held or "–")


def _style(desk: Desk, kind: str) -> Style:
    return {"year": desk.look.title, "title": desk.look.heading}.get(kind, desk.look.strong)


def _lettered(desk: Desk, pen: Pen, words: str, style: Style, box: Box) -> None:
    """Words in the middle of a card."""
    fitted = fit(desk.faces, words, style, box.width, box.height, 2.4)
    if not fitted.fits:
        desk.fault(words, f'"{words[:40]}" is too long for its card.', "Shorten it, or print fewer kinds of card.")
    top = box.y + (box.height + fitted.height) / 2
    pen.lines(box.x, top, fitted.lines, fitted.style, align="centre", width=box.width)


def _cuts(pen: Pen, deal: _Deal, cards: int, x: float, top: float) -> None:
    """The cuts, each straight from edge to edge of the block and shared by neighbours."""
    rows = -(-cards // deal.across)
    full = min(cards, deal.across)
    last = cards - (rows - 1) * deal.across
    for row in range(rows + 1):
        y = top - row * deal.high
        pen.line(x, y, x + (full if row < rows else last) * deal.wide, y, MIDDLE, 0.2, role="cut")
    for card in range(full + 1):
        low = top - (rows if card <= last else rows - 1) * deal.high
        pen.line(x + card * deal.wide, top, x + card * deal.wide, low, MIDDLE, 0.2, role="cut")


def _back(desk: Desk, head: Head, deal: _Deal, works: list[Work], part: list[_Card], number: int) -> Page:
    """The letters behind the cards: left and right change when the paper is turned over its long edge."""
    pen = desk.kit.pen()
    words = _words(desk, True) if number == 0 else []
    style = desk.look.title.at(min(16.0, deal.high * 0.3)).grey(SOFT)
    drop = desk.faces.metrics(style.face).cap * style.size / 2
    top = _top(desk, head, words, number)
    for card in part:
        box = _box(desk, deal, card, top)
        letters = _letters(works, card.work, card.kind)
        sized = style.at(min(style.size, style.size * 3 / max(3, len(letters))))
        middle = desk.paper[0] - box.x - box.width / 2
        pen.text(middle, box.y + box.height / 2 - drop, letters, sized, align="centre", role="back")
    return desk.finish(pen, *desk.paper, SHEET.title)


def _letters(works: list[Work], work: Work, kind: str) -> str:
    """The letters of all works that this card goes with: more than one if they share a title, a year or a place."""
    if kind in ("picture", "detail"):
        return ascii_uppercase[works.index(work) % 26]
    words = _text(work, kind)
    return " ".join(ascii_uppercase[k % 26] for k, other in enumerate(works) if _text(other, kind) == words)
