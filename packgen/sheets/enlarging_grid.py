"""A work drawn larger square by square: its print under a grid, and an empty grid at an exact, printed enlargement."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from packgen.page.artwork import Box, Lining, draw_line_art, enough_in, lines_of, subject_of, within
from packgen.page.blocks import Art, Block, Boxed, Bullets, Lines, Prose, Stack, draw_stack, gap_of
from packgen.page.desk import Desk, Laid, Option, Sheet
from packgen.page.frame import Head
from packgen.page.look import BOLD, GUIDE, HAIR, MIDDLE, SOFT, THIN
from packgen.page.marks import Page, Stroke
from packgen.page.pen import Pen
from packgen.page.pictured import place_picture
from packgen.page.sideways import sideways, upright
from packgen.pictures.drawn import shows_drawing
from packgen.pictures.grid import RATIOS, Enlarging, NoGrid, drawn_beforehand, enlarging
from packgen.pictures.load import aspect
from packgen.reading.models import Work

SHEET = Sheet(
    title="Enlarging grid",
    about="The work under a grid of squares, and an empty grid to draw it on at an exact enlargement.",
    per="work",
    options=(
        Option("pages", "auto", "print and empty grid on one page, or on one each as large as it goes",
               ("auto", "one", "two")),
        Option("drawn", "", "which part of the squares is drawn already, 0 to 0.5; left out: as suits the level"),
        Option("help", "", "squares drawn already: a faint print to trace, or lines; left out: as suits the picture",
               ("faint", "lines")),
        Option("most", "", "at most this many works"),
        Option("only", "", "only these works, by id or title"),
    ),
)  # fmt: skip

# The part of the squares drawn beforehand, and the amount of detail they are drawn with.
_DRAWN = {"first": (0.4, 2), "younger": (0.3, 3), "older": (0.0, 3), "upper": (0.0, 3)}
_AXIS = {"first": 9.0, "younger": 7.5, "older": 5.0, "upper": 5.0}
_TURNED = 0.96  # what a copy on a page on its side is worth beside an upright one
_ONE = 0.8  # one page does if the copy on it is so large beside that on a page of its own
_LEAST_CELL = 10.0  # mm, of a print that shares its page
_LEAST_PRINT = 80.0  # mm, its longer side
_GAP = 5.0
_FAINT = 0.7  # how far a square to be traced is lightened


@dataclass(frozen=True, slots=True)
class _Plan:
    """A grid and where it goes: both on one page (`beside` each other or one over the other), or on two."""

    grid: Enlarging
    pages: int
    turned: bool
    beside: bool = False


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The gridded print and the empty grid."""
    work = desk.item.subject
    assert isinstance(work, Work) and work.image
    if not enough_in(desk, work, SHEET.title):
        return ()
    head = desk.head(desk.say("title"), subject_of(desk, work), "squares")
    plan = _plan(desk, head, work)
    if plan is None:
        return ()
    pages = _one_page(desk, head, work, plan) if plan.pages == 1 else _two_pages(desk, head, work, plan)
    return (Laid("enlarging-grid", f"{SHEET.title}: {work.title}", pages, week=desk.item.week, colour=True),)


# Where everything goes


def _plan(desk: Desk, head: Head, work: Work) -> _Plan | None:
    """The best plan for the work's shape, or None with a warning if no grid fits."""
    wish = str(desk.option("pages") or "auto")
    both = [] if wish == "one" else [p for turned in (False, True) if (p := _on_two(desk, head, work, turned))]
    single = [] if wish == "two" else [p for turned in (False, True) if (p := _on_one(desk, head, work, turned))]
    two = max(both, key=lambda p: p.grid.large * (_TURNED if p.turned else 1.0), default=None)
    one = max(single, key=lambda p: p.grid.large * (_TURNED if p.turned else 1.0), default=None)
    if one and two and wish == "auto":
        return one if one.grid.target_size[0] >= _ONE * two.grid.target_size[0] and _clear(one.grid) else two
    if not (one or two):
        desk.warn(work.image_said, f'"{work.title}" has no enlarging grid: no squares fit its shape on this paper.',
                  "Leave it out with `only:` in the recipe's line, or use a picture that is less long.")  # fmt: skip
    return one or two


def _clear(grid: Enlarging) -> bool:
    """True if a print that shares its page is still large enough to see what is in each square."""
    return grid.cell >= _LEAST_CELL and max(grid.source_size) >= _LEAST_PRINT


def _on_two(desk: Desk, head: Head, work: Work, turned: bool) -> _Plan | None:
    """A page for the print with its text, and one for the empty grid, upright or turned."""
    assert work.image
    axis = _AXIS[desk.level]
    blocks = [*_steps(desk, work), *_after(desk, None)]
    over = sum(b.measure(desk.kit, desk.live_width).least + gap_of(desk.kit, b) for b in blocks)
    source = (desk.live_width - axis, desk.room(head, 0) - over - axis - 1.0)
    at = sideways(desk) if turned else desk
    target = (at.live_width - axis, at.room(head, 1) - axis)
    grid = _grid(desk, work, source, target, RATIOS)
    return _Plan(grid, 2, turned) if grid else None


def _on_one(desk: Desk, head: Head, work: Work, turned: bool) -> _Plan | None:
    """Both on one page: the print over the grid, or beside it if the page is turned."""
    axis = _AXIS[desk.level]
    at = sideways(desk) if turned else desk
    blocks = [*_steps(desk, work), _facts(desk, None)]
    over = sum(b.measure(desk.kit, at.live_width).least + gap_of(desk.kit, b) for b in blocks)
    wide, high = at.live_width, at.room(head, 0) - over
    best: _Plan | None = None
    for ratio in RATIOS[:5]:
        small, large = 1 / (1 + float(ratio)), float(ratio) / (1 + float(ratio))
        if turned:
            across = wide - 2 * axis - _GAP
            source, target = (across * small, high - axis), (across * large, high - axis)
        else:
            down = high - 2 * axis - _GAP
            source, target = (wide - axis, down * small), (wide - axis, down * large)
        grid = _grid(desk, work, source, target, (ratio,))
        if grid and (best is None or _worth(grid) > _worth(best.grid)):
            best = _Plan(grid, 1, turned, beside=turned)
    return best


def _worth(grid: Enlarging) -> float:
    """How good a shared page is: a large copy, from a print that is not too small."""
    return grid.large * (1.0 if _clear(grid) else 0.6)


def _grid(desk: Desk, work: Work, source: tuple[float, float], target: tuple[float, float],
          ratios: Sequence[Fraction]) -> Enlarging | None:  # fmt: skip
    assert work.image
    if min(*source, *target) < 20.0:
        return None
    try:
        return enlarging(aspect(work.image), desk.level, source, target, ratios)
    except NoGrid:
        return None


# The pages


def _one_page(desk: Desk, head: Head, work: Work, plan: _Plan) -> tuple[Page, ...]:
    at = sideways(desk) if plan.turned else desk
    axis = _AXIS[desk.level]
    grid = plan.grid
    (sw, sh), (tw, th) = grid.source_size, grid.target_size
    lefty = bool(desk.child and desk.child.left_handed)

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        blocks = [*_steps(desk, work), _facts(desk, grid)]
        top = draw_stack(desk.kit, pen, blocks, x, y + height, width, height) - desk.look.gap
        if plan.beside:
            spare = (width - sw - tw - 2 * axis) / 3
            foot = max(y, y + (top - y - th - axis) / 2)
            lefts = (x + spare, x + 2 * spare + sw + axis)
            if lefty:  # the hand that draws must not lie on what it draws from
                lefts = (x + 2 * spare + tw + axis, x + spare)
            boxes = (Box(lefts[0] + axis, foot + th - sh, sw, sh), Box(lefts[1] + axis, foot, tw, th))
        else:
            spare = max(0.0, top - y - sh - th - 2 * axis) / 2
            middle = x + (width + axis) / 2
            boxes = (Box(middle - sw / 2, top - axis - sh - spare * 0.3, sw, sh), Box(middle - tw / 2, y, tw, th))
        _print(desk, pen, work, grid, boxes[0])
        _copy(desk, pen, work, grid, boxes[1])

    page = at.free_page(paint, head, name=str(work.title))
    return upright((page,)) if plan.turned else (page,)


def _two_pages(desk: Desk, head: Head, work: Work, plan: _Plan) -> tuple[Page, ...]:
    axis = _AXIS[desk.level]
    grid = plan.grid
    (sw, sh), (tw, th) = grid.source_size, grid.target_size

    def paint_print(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        def art(inner: Pen, left: float, low: float, wide: float, high: float) -> None:
            _print(desk, inner, work, grid, Box(left + (wide - sw + axis) / 2, low + (high - axis - sh) / 2, sw, sh))

        after = _after(desk, grid)
        grows = 0.0 if len(after) > 1 else 1.0  # without lines under it the print takes the middle of the page
        blocks = [*_steps(desk, work), Art(art, sh + axis, 1e6 if grows else sh + axis, grows), *after]
        draw_stack(desk.kit, pen, blocks, x, y + height, width, height, 8.0)

    def paint_copy(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        _copy(desk, pen, work, grid, Box(x + (width - tw + axis) / 2, y + (height - axis - th) / 2, tw, th))

    first = desk.free_page(paint_print, head, name=str(work.title), number=1, count=2)
    at = sideways(desk) if plan.turned else desk
    slim = desk.head(f"{desk.say('copy_title')} · {work.title}", emblem="squares")
    second = at.free_page(paint_copy, slim, name=str(work.title), number=2, count=2)
    return (first, *(upright((second,)) if plan.turned else (second,)))


def _steps(desk: Desk, work: Work) -> list[Block]:
    marker = "ring" if desk.level in ("first", "younger") else "box"
    return [Bullets(desk.say_lines("steps", traced=not _as_lines(desk, work)), marker, "body", spread=0.12)]


def _facts(desk: Desk, grid: Enlarging | None) -> Block:
    """The enlargement in words and figures; without a grid, as long as it can become."""
    values = {"small": "10.5", "large": "100.5", "ratio": "5 : 2"}
    if grid:
        values = {"small": f"{grid.cell:g}", "large": f"{grid.large:g}", "ratio": grid.ratio_words}
    return Boxed(Prose(desk.say("facts", **values), "body"), "note", pad=2.5)


def _after(desk: Desk, grid: Enlarging | None) -> list[Block]:
    """What stands under the print on a page of its own: the enlargement, and for the older something to reckon."""
    blocks: list[Block] = [_facts(desk, grid)]
    for ask in desk.say_lines("asks"):
        blocks.append(Stack((Prose(ask, "strong", tight=True), Lines(1, 3, gap=0.3)), gap=2.5))
    return blocks


# The two grids


def _print(desk: Desk, pen: Pen, work: Work, grid: Enlarging, box: Box) -> None:
    """The picture under its squares. The lines are dark on light, so that they show on any picture."""
    assert work.image
    place_picture(desk, pen, work.image, box.x, box.y, box.width, box.height, crop=grid.crop, framed=False,
                  about=work.image_said, name=f'"{work.title}"')  # fmt: skip
    _rule(pen, grid, box, grid.cell, ((0.55, 1.0, "grid-casing"), (HAIR, 0.0, "grid-print")))
    _axes(desk, pen, grid, box, grid.cell)


def _copy(desk: Desk, pen: Pen, work: Work, grid: Enlarging, box: Box) -> None:
    """The empty squares, some of them drawn already for the younger."""
    assert work.image
    share, detail = _DRAWN[desk.level]
    share = _share(desk, share)
    cells = drawn_beforehand(desk.store, work.image, grid, share) if share > 0 else ()
    for cell in cells:
        part = grid.cell_box(*cell)
        place = box.part(part)
        if not _as_lines(desk, work):
            place_picture(desk, pen, work.image, place.x, place.y, place.width, place.height, framed=False, grey=True,
                          lighten=_FAINT, crop=within(part, grid.crop), warn=False)  # fmt: skip
    if cells and _as_lines(desk, work):
        lining = Lining(BOLD if desk.level in ("first", "younger") else MIDDLE, 0.2, frame=False)
        boxes = [box.part(grid.cell_box(*cell)) for cell in cells]
        draw_line_art(pen, lines_of(desk, work, detail), box, lining, only=boxes, crop=grid.crop)
    _rule(pen, grid, box, grid.large, ((THIN, GUIDE, "grid-copy"),))
    pen.box(box.x, box.y, box.width, box.height, Stroke(MIDDLE, 0.3), role="grid-frame")
    _axes(desk, pen, grid, box, grid.large)


def _as_lines(desk: Desk, work: Work) -> bool:
    """True if help is drawn in lines: lines taken from a drawing are its own, those from a painting a stranger's."""
    assert work.image
    said = str(desk.option("help") or "")
    return said == "lines" if said else shows_drawing(desk.store, work.image)


def _share(desk: Desk, usual: float) -> float:
    said = desk.option("drawn")
    if said is None:
        return usual
    try:
        share = float(str(said))
    except ValueError:
        share = -1.0
    if not 0 <= share <= 0.5:
        desk.fault(said, f'"drawn" wants a number from 0 to 0.5, not "{said}".', "Write for example drawn: 0.3")
        return usual
    return share


def _rule(pen: Pen, grid: Enlarging, box: Box, cell: float, lines: Sequence[tuple[float, float, str]]) -> None:
    """The lines between squares of that side, each drawn with every (width, ink, role) in turn."""
    across, down = grid.lines(cell)
    right, top = box.x + box.width, box.y + box.height
    for width, ink, role in lines:
        for x in across:
            pen.line(box.x + x, box.y, box.x + x, top, width, ink, role=role)
        for y in down:
            pen.line(box.x, top - y, right, top - y, width, ink, role=role)


def _axes(desk: Desk, pen: Pen, grid: Enlarging, box: Box, cell: float) -> None:
    """Letters over the columns and numbers beside the rows, on the side that the drawing hand does not cover."""
    style = desk.look.label.grey(SOFT)
    lefty = bool(desk.child and desk.child.left_handed)
    rise = desk.faces.metrics(style.face).x * style.size * 0.7
    for k, letter in enumerate(grid.letters):
        middle = (k * cell + min((k + 1) * cell, grid.columns * cell)) / 2
        pen.text(box.x + middle, box.y + box.height + style.size * 0.4, letter, style, align="centre", role="axis")
    for k, number in enumerate(grid.numbers):
        middle = (k * cell + min((k + 1) * cell, grid.rows * cell)) / 2
        at = box.x + box.width + 1.5 if lefty else box.x - 1.5
        pen.text(at, box.y + box.height - middle - rise, str(number), style, align="left" if lefty else "right",
                 role="axis")  # fmt: skip
