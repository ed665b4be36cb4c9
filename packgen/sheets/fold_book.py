"""A real small book: pages to write in and glue into, and a sheet of pictures cut exactly to its boxes."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from packgen.faults import Said
from packgen.folding import FoldError, plan_fold
from packgen.folding.plan import scheme_named
from packgen.folding.slots import FoldPlan
from packgen.page.blocks import Block, DrawBox, Fit, Lines, Prose, Stack, draw_stack, gap_of
from packgen.page.cut_outs import CutOut, GlueBox, cut_out_count, cut_out_pages
from packgen.page.desk import Desk, Fold, Laid, Option, Sheet
from packgen.page.folds import fold_step_blocks
from packgen.page.frame import Head
from packgen.page.letters import TraceLine
from packgen.page.look import SOFT, Ruling
from packgen.page.marks import Page
from packgen.page.ornament import emblem, folded_strip
from packgen.page.text import Style, fit
from packgen.pictures.load import aspect
from packgen.reading.models import Work

SHEET = Sheet(
    title="Fold-book",
    about="A small book to fold, write in and glue pictures into, with its sheet of cut-out pictures.",
    options=(
        Option("scheme", "", "the fold scheme, see the fold schemes below; left out: one that suits the level"),
        Option("works", "", "at most this many works"),
    ),
    parts=("cut-outs",),
)

_USUAL = {"first": "half", "younger": "slit", "older": "stitched", "upper": "stitched"}
_ACROSS = {"first": (3, 2), "younger": (3, 4, 2), "older": (4, 3, 2)}
"""How many fold steps stand side by side, the wished number first."""
_SMALL_PAGE = 130.0  # a page lower than this has no room for ornament
_SMALLEST = 0.62  # of the level's heading, for the headings of a small book
_DICTATED = Ruling(4.0, 11.0, "one")  # for a grown-up, who writes what a child says
_SHARES = (1.0, 0.96, 0.92, 0.88, 0.84, 0.8)
_SEEN = 0.88
"""The scale at which the folding steps, their staples too, are well seen."""
_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


@dataclass(slots=True)
class _Book:
    """The book being made: the size of the page in hand, its margins, the boxes so far that want a picture, and
    the share of its usual height that each picture has.
    """

    desk: Desk
    width: float
    height: float
    cuts: list[CutOut]
    share: float = 1.0

    @property
    def edge(self) -> float:
        """The outer margin: inside what the printer reaches even when a back is moved by its shift; a finger's hold."""
        printer = self.desk.family.printer
        return max(
            9.0 if self.height > _SMALL_PAGE else 5.5, printer.margin + 0.8 + max(map(abs, printer.duplex_shift))
        )

    @property
    def spine(self) -> float:
        """The margin at the spine, a little more for the fold."""
        return max(6.5, self.edge)

    @property
    def live(self) -> tuple[float, float]:
        """The width and height a page's blocks have."""
        return self.width - self.edge - self.spine, self.height - 2 * self.edge - 3.0

    @property
    def most(self) -> int | None:
        """The most lines to write after one question; None if lines are to fill the page."""
        if self.desk.level == "younger":
            return 3 if self.height > _SMALL_PAGE else None
        return 4


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The book, the pictures to glue in, and the steps to fold it."""
    scheme = str(desk.child.book if desk.child and desk.child.book else desk.option("scheme") or _USUAL[desk.level])
    probe = _plan(desk, scheme, 1)
    if probe is None:
        return ()
    book = _Book(desk, probe.page_width, probe.page_height, [])
    wanted = _contents(desk, book)
    most = scheme_named(scheme).most_pages
    plan = _plan(desk, scheme, min(len(wanted), most or len(wanted)))
    plan = plan and _plan(desk, scheme, plan.book_pages)  # no page is left blank
    if plan is None:
        return ()
    wanted = _in_time(_to_count(desk, book, wanted, plan.book_pages))
    # Some folds have narrower pages the more there are, some pages of several sizes: each is measured in its turn.
    sizes = _sizes(plan)
    book.share = _share(book, plan, wanted, sizes)
    book.cuts.clear()
    book.width, book.height = min(sizes.values())
    style = _heading_style(desk, book.live[0], [entry.title for entry in wanted])
    pages: list[Page] = []
    for number, entry in enumerate(wanted, 1):
        book.width, book.height = sizes[number]
        pages.append(_page(book, number, entry, len(wanted), style))
    title = f"{SHEET.title}: {desk.study.study}"
    laid = [Laid("fold-book", title, tuple(pages), fold=Fold(scheme), week=desk.item.week, sides=plan.sides,
                 after=desk.say_lines("after_no_glue" if desk.no_glue else "after"))]  # fmt: skip
    laid += _cut_outs(desk, book, plan)
    return tuple(laid)


def _sizes(plan: FoldPlan) -> dict[int, tuple[float, float]]:
    """The width and height of each page."""
    slots = [slot for sheet in plan.sheets for slot in (*sheet.front, *sheet.back)]
    return {slot.page: (slot.page_width, slot.page_height) for slot in slots if slot.page}


def _plan(desk: Desk, scheme: str, pages: int) -> FoldPlan | None:
    try:
        return plan_fold(
            scheme, pages, *desk.paper, caliper=desk.family.printer.caliper, margin=desk.family.printer.margin
        )
    except FoldError as error:
        said = desk.child.book if desk.child and desk.child.book else desk.option("scheme")
        desk.fault(
            said, f"{error.message[0].upper()}{error.message[1:]}.", f"{error.instead[0].upper()}{error.instead[1:]}."
        )
        return None


# What goes on the pages.


@dataclass(frozen=True, slots=True)
class _Entry:
    """A page to be: what kind it is, its heading, and what makes its blocks once it is sure to be in the book."""

    kind: str
    title: str
    make: Callable[[], list[Block]]
    year: float | None = None


def _contents(desk: Desk, book: _Book) -> list[_Entry]:
    """All pages the study can fill, in reading order: cover, life, works, obstacles, facts, back."""
    study = desk.study
    pages = [_Entry("cover", "", lambda: _cover(desk, book))]
    if desk.level != "first":
        pages.append(_asked(desk, book, "life"))
        if desk.level in ("older", "upper") and study.timeline:
            pages.append(_asked(desk, book, "dates"))
    most = desk.count("works", 99)
    works = [work for work in study.works if work.image][:most]
    pages += [_Entry("work", str(work.title), partial(_work, desk, book, work), _year(work)) for work in works]
    if desk.level == "first":
        pages.append(_Entry("draw", desk.say("draw"), lambda: [DrawBox("", least=20.0)]))
    else:
        pages += [_asked(desk, book, "obstacles"), _asked(desk, book, "facts")]
    if desk.level in ("older", "upper") and study.words:
        pages.append(_asked(desk, book, "words"))
    pages.append(_Entry("back", desk.say("back_title"), lambda: _back(desk, book)))
    return pages


def _spare(desk: Desk, book: _Book) -> list[_Entry]:
    """Pages of the child's own, to draw on and to write on by turns."""
    draw = [_Entry("own", words, lambda: [DrawBox("", least=20.0)]) for words in desk.say_lines("spare")]
    if desk.level == "first":
        return draw

    def lines() -> list[Block]:
        box = [DrawBox(desk.say("spare_picture"), least=20.0)] if book.most else []
        return [Lines(2, 2 * book.most if book.most else None, ruling=_small(desk)), *box]

    write = [_Entry("own", words, lines) for words in desk.say_lines("spare_write")]
    return [entry for pair in zip(draw, write, strict=False) for entry in pair]


def _to_count(desk: Desk, book: _Book, wanted: list[_Entry], count: int) -> list[_Entry]:
    """Exactly as many pages as the fold has: works are left out from the end, or pages of the child's own added."""
    kept = list(wanted)
    order = ["dates", "words", "work", "draw", "facts", "obstacles", "life"]
    while len(kept) > count:
        kinds = [entry.kind for entry in kept]
        kind = next((k for k in order if kinds.count(k) > (1 if k == "work" else 0)), "work")
        del kept[max(i for i, k in enumerate(kinds) if k == kind)]
    spare = _spare(desk, book)
    for added in range(count - len(kept)):
        kept.insert(len(kept) - 1, spare[added % len(spare)])
    return kept


def _year(work: Work) -> float | None:
    """When a work was made, as a number that grows with time; None if it is not known."""
    day = work.when and (work.when.start or work.when.end)
    return day.year + ((day.month or 1) - 1) / 12 if day else None


def _in_time(wanted: list[_Entry]) -> list[_Entry]:
    """The pages with the works in order of time; as the study lists them if one has no date."""
    places = [k for k, entry in enumerate(wanted) if entry.kind == "work"]
    years = [(wanted[k].year, k) for k in places]
    if any(year is None for year, _ in years):
        return wanted
    found = list(wanted)
    for place, (_, k) in zip(places, sorted(years, key=lambda x: (x[0] or 0.0, x[1])), strict=True):
        found[place] = wanted[k]
    return found


def _share(book: _Book, plan: FoldPlan, wanted: list[_Entry], sizes: dict[int, tuple[float, float]]) -> float:
    """How much of their usual height pictures have, so that the folding steps are well seen beside the last of them."""
    desk, best = book.desk, (99, 1.0)
    for book.share in _SHARES:
        book.cuts.clear()
        for number, entry in enumerate(wanted, 1):
            if entry.kind in ("cover", "work"):
                book.width, book.height = sizes[number]
                entry.make()
        if not book.cuts:
            return 1.0
        pages, together = cut_out_count(desk, _cut_head(desk), book.cuts, partial(_steps, desk, plan, _SEEN))
        if together:
            best = min(best, (pages, book.share), key=lambda way: (way[0], -way[1]))
    return best[1]


def _heading_style(desk: Desk, width: float, titles: Sequence[str]) -> Style:
    """One style for the headings of all pages: the largest at which each takes two lines, if it can."""
    style = desk.look.heading
    sizes = [fit(desk.faces, title, style, width, 2 * style.leading, _SMALLEST * style.size).style.size
             for title in titles if title]  # fmt: skip
    return style.at(min(sizes, default=style.size))


def _cover(desk: Desk, book: _Book) -> list[Block]:
    width, height = book.live
    study = desk.study
    share = 0.5 if book.height > _SMALL_PAGE else 0.42
    title = Fit(str(study.study), height * 0.2, 3.2, desk.look.title, "centre", role="title")
    subtitle = Fit(str(study.in_short), height * 0.1, 2.4, "small", "centre", gap=1.0)
    by = Fit(desk.say("by"), desk.look.strong.leading, 2.4, "small", "centre", gap=2.0)
    if study.portrait:
        middle = _glue(book, study.portrait, str(study.study), width * 0.86, height * share, study.portrait_said)
    else:
        middle = DrawBox(desk.say("cover_draw"), least=height * 0.3)
    if desk.level == "first":
        return [title, middle, TraceLine(desk, desk.person or desk.say("called_you"), small=True)]
    return [title, subtitle, middle, by, Lines(1, 1, ruling=Ruling(3.5, 10.0, "one"), gap=0.0)]


def _small(desk: Desk) -> Ruling:
    """Writing lines for a small page: those of the level, with less between them."""
    ruling = desk.look.ruling
    if ruling.guides == "one":
        return ruling
    return Ruling(ruling.x_height * 0.8, ruling.pitch * 0.76, ruling.guides)


def _asked(desk: Desk, book: _Book, key: str) -> _Entry:
    """A page with things to write, each with its lines, and where they leave room a place for a picture of one."""

    def make() -> list[Block]:
        most = book.most
        blocks: list[Block] = []
        for ask in desk.say_lines(f"{key}_asks"):
            lines = Lines(1, most, ruling=_small(desk), gap=0.0)
            blocks.append(Stack((Prose(ask, "label", tight=True), lines), gap=2.0))
        if most:  # what the lines leave is for a picture
            blocks.append(DrawBox(desk.say(f"{key}_picture"), least=14.0))
        return blocks

    return _Entry(key, desk.say(f"{key}_title"), make)


def _work(desk: Desk, book: _Book, work: Work) -> list[Block]:
    width, height = book.live
    assert work.image
    roomy = desk.level == "younger" and book.most is not None
    share = 0.5 if roomy or desk.level == "first" else 0.42
    box = _glue(book, work.image, str(work.title), width, height * share, work.image_said)
    if desk.level == "first":
        told = Lines(1, ruling=_DICTATED, gap=0.0)
        return [
            box,
            Prose(desk.say("work_ask"), "body", tight=True),
            Prose(desk.say("dictated"), "small", gap=0.5),
            told,
        ]
    ask = Prose(desk.say("work_ask"), "label", tight=True, gap=2.0)
    if roomy:
        return [box, ask, Lines(1, 3, ruling=_small(desk), gap=0.0), DrawBox(desk.say("part_drawn"), least=14.0)]
    return [box, ask, Lines(1, ruling=_small(desk), gap=0.0)]


def _glue(book: _Book, path: Path, name: str, width: float, height: float, about: Said | None) -> Block:
    """A box to glue a picture into, exactly as large as its cut-out; its letter is on both."""
    shape = aspect(path)
    wide = min(width, book.share * height * shape)
    high = wide / shape
    if book.desk.no_glue:
        return DrawBox(book.desk.say("draw_it"), least=high, most=high)
    index = len(book.cuts)
    letter = _LETTERS[index] if index < 26 else f"{_LETTERS[index // 26 - 1]}{_LETTERS[index % 26]}"
    book.cuts.append(CutOut(letter, name, path, wide, high, about))
    return GlueBox(letter, book.desk.say("glue"), wide, high)


def _back(desk: Desk, book: _Book) -> list[Block]:
    if desk.level == "first":
        return [DrawBox(desk.say("back_draw"), least=40.0)]
    most = book.most and book.most + 2
    lines = Lines(2, most, ruling=_small(desk), gap=0.0)
    blocks: list[Block] = [Stack((Prose(desk.say("back_ask"), "label", tight=True), lines), gap=2.0)]
    if most:
        blocks.append(DrawBox(desk.say("cover_draw_back"), least=20.0))
    blocks.append(Fit(desk.say("made_on"), desk.look.strong.leading, 2.4, "small", gap=2.0))
    blocks.append(Lines(1, 1, ruling=Ruling(3.0, 8.0, "one"), gap=0.0))
    return blocks


def _page(book: _Book, number: int, entry: _Entry, count: int, style: Style) -> Page:
    """One book page: odd pages are rectos, whose spine is at the left. `style` is that of all headings."""
    desk = book.desk
    pen = desk.kit.pen()
    left = book.spine if number % 2 else book.edge
    width, _ = book.live
    top = book.height - book.edge
    bottom = book.edge + 3.0
    if entry.kind == "cover":
        folded_strip(pen, left, top - 2.6, width, 2.6)
        top -= 4.5
        if book.height > _SMALL_PAGE:
            emblem(pen, "book", left + width / 2 - 5.0, book.edge, 10.0)
            bottom = book.edge + 13.0
    else:
        small = desk.look.small.at(2.6).grey(SOFT)
        pen.text(book.width / 2, book.edge, str(number), small, align="centre", role="foot")
        head = Prose(entry.title, style, role="heading")  # in the same place on every page
        head.draw(desk.kit, pen, left, top, width, 0.0)
        top -= head.measure(desk.kit, width).least + 0.4 * desk.look.gap
    blocks = _fitting(desk, entry.make(), width, top - bottom, entry.kind)
    draw_stack(desk.kit, pen, blocks, left, top, width, top - bottom, 5.0)
    return desk.finish(pen, book.width, book.height, f"{SHEET.title}, page {number} of {count}")


def _fitting(desk: Desk, blocks: Sequence[Block], width: float, height: float, name: str) -> list[Block]:
    """The blocks that fit a page; questions at the end are left out of a page too small for all of them."""
    kept = list(blocks)

    def needed() -> float:
        return sum(b.measure(desk.kit, width).least for b in kept) + sum(gap_of(desk.kit, b) for b in kept[1:])

    while len(kept) > 1 and needed() > height + 0.01:
        asks = [b for b in kept if isinstance(b, Stack)]
        if name == "cover" and len(kept) > 4:
            del kept[1]  # what the person was stands on many pages; a small cover goes without it
            continue
        if len(asks) < (1 if name in ("cover", "back") else 2):
            break
        kept.remove(asks[-1])
    if needed() > height + 0.01:
        desk.warn(desk.study.study, f'The fold-book page "{name}" is very full on this small page.',
                  "Choose a scheme with larger pages, for example stitched.")  # fmt: skip
    return kept


def _cut_outs(desk: Desk, book: _Book, plan: FoldPlan) -> list[Laid]:
    """The pictures to cut out, and the folding steps, on plain paper of their own."""
    head, well = _cut_head(desk), partial(_steps, desk, plan, _SEEN)
    _, together = cut_out_count(desk, head, book.cuts, well)
    pages = cut_out_pages(desk, head, book.cuts, well if together else partial(_steps, desk, plan, 0.0))
    return [Laid("fold-book", desk.say("cut_title"), pages, part="cut-outs", week=desk.item.week, colour=True)]


def _cut_head(desk: Desk) -> Head:
    """The head of the page of pictures; without glue there are none, only the folding."""
    suffix = "_no_glue" if desk.no_glue else ""
    return desk.head(desk.say(f"cut_title{suffix}"), desk.say(f"cut_subject{suffix}"), "fan", date=False)


def _steps(desk: Desk, plan: FoldPlan, least: float, room: float) -> tuple[Block, ...]:
    """The folding steps that fit a room, at that scale or a larger one."""
    across = _ACROSS.get(desk.level, _ACROSS["older"])
    return fold_step_blocks(desk.kit, plan, desk.say, desk.live_width, room, across, least)
