"""One work, looked at, covered and told: a plate as large as the page allows, then a page to draw, answer and find."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from packgen.faults import Said
from packgen.page.blocks import Art, Block, Boxed, Bullets, DrawBox, Lines, Prose, Row, Stack, gap_of
from packgen.page.desk import Desk, Laid, Option, Sheet
from packgen.page.frame import Head, draw_foot
from packgen.page.letters import TraceLine, at_size, trace_width
from packgen.page.look import SOFT
from packgen.page.marks import Page
from packgen.page.pen import Pen
from packgen.page.pictured import place_picture
from packgen.page.qr import draw_qr, side_for
from packgen.page.text import Style, fit, wrap
from packgen.pictures.load import aspect
from packgen.planning.asking import WRITTEN, on_paper
from packgen.reading.dates import plain
from packgen.reading.models import Work

SHEET = Sheet(
    title="Picture study",
    about="One work: a plate as large as the page allows, and a page to tell, draw, answer and find it on.",
    per="work",
    options=(
        Option("plate", "yes", "the picture on a page of its own", ("yes", "no")),
        Option("most", "", "at most this many works"),
        Option("only", "", "only these works, by id or title"),
    ),
)

# For the younger, the first of these that fits one page: the height of the place to draw in mm, if the title is to be
# copied, and the lines of an answer.
_YOUNGER = ((50.0, True, 2), (38.0, True, 2), (42.0, True, 1), (50.0, False, 2), (34.0, False, 1))
# The same for the older: the height of the sketch, the lines of an answer, and how many questions less.
_OLDER = ((44.0, 2, 0), (38.0, 2, 0), (40.0, 1, 0), (40.0, 1, 1), (36.0, 1, 2))
_FAINT = 0.62  # how far the copy to draw on is lightened
_APART = 6.0  # mm between the copy and what stands beside it
_SMALLEST = 0.65  # of the level's letters, in a title to copy


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The plate and the page of tasks for one work."""
    work = desk.item.subject
    assert isinstance(work, Work) and work.image
    head = desk.head(desk.say("title"), " · ".join(_label(desk, work)[:2]), "frame")
    plated = str(desk.option("plate", "yes")) != "no"
    tasks = desk.pages(head, _tasks(desk, head, work), name=str(work.title), before=int(plated))
    plate = (_plate(desk, work, len(tasks) + 1),) if plated else ()
    title = f"{SHEET.title}: {work.title}"
    return (Laid("picture-study", title, plate + tasks, week=desk.item.week, colour=True),)


def _label(desk: Desk, work: Work) -> list[str]:
    """What a museum's label says: title, maker and year, medium and size."""
    maker = str(desk.study.study)
    size = _size(desk, work)
    dated = f"{maker}, {plain(work.when)}" if work.when else maker
    more = ", ".join(part for part in (str(work.medium or ""), size) if part)
    return [part for part in (str(work.title), dated, more) if part]


def _size(desk: Desk, work: Work) -> str:
    if not (work.width and work.height):
        return ""
    if desk.family.units == "customary":
        return f"{work.width / 25.4:.3g} × {work.height / 25.4:.3g} in"
    return f"{work.width / 10:.4g} × {work.height / 10:.4g} cm"


def _plate(desk: Desk, work: Work, count: int) -> Page:
    """The picture as large as the page allows; turned on its side if that makes it much larger."""
    assert work.image
    width, height = desk.paper
    edge = desk.margins
    pen = desk.kit.pen()
    label = _label(desk, work)
    style = desk.look.small
    strong = Style(desk.look.strong.face, style.size, style.leading)
    under = 4.0 + style.leading * 2
    live = (desk.live_width, height - edge.top - edge.bottom - 9.0)
    shape = aspect(work.image)
    upright = _largest(shape, live[0], live[1] - under)
    turned = _largest(shape, live[1], live[0] - under)
    turn = turned[0] > 1.1 * upright[0]
    wide, high = turned if turn else upright
    across = live[1] if turn else live[0]
    inner = desk.kit.pen()
    left = (across - wide) / 2
    place_picture(desk, inner, work.image, left, under, wide, high, about=work.image_said, name=f'"{work.title}"')
    _caption(inner, label, left, under - 4.0, wide, strong, style)
    pen.lost += inner.lost
    spare = ((live[0] if turn else live[1]) - high - under) / 2
    if turn:
        # Turned to be read from the right-hand side of the page.
        pen.group(inner.marks, (0.0, 1.0, -1.0, 0.0, edge.left + live[0] - spare, edge.bottom + 9.0))
    else:
        pen.group(inner.marks, (1.0, 0.0, 0.0, 1.0, edge.left, edge.bottom + 9.0 + spare))
    draw_foot(desk.kit, pen, desk.foot(str(work.title), 1, count), edge.left, edge.bottom, desk.live_width)
    return desk.finish(pen, width, height, str(work.title))


def _caption(pen: Pen, label: list[str], x: float, top: float, width: float, strong: Style, style: Style) -> None:
    """Title in bold and the rest beside it, on one or two lines under the picture."""
    fitted = fit(pen.faces, label[0], strong, width, strong.leading, strong.size * 0.7)
    y = pen.lines(x, top, fitted.lines[:1], fitted.style)
    rest = fit(pen.faces, " · ".join([*fitted.lines[1:], *label[1:]]), style, width, style.leading, style.size * 0.7)
    pen.lines(x, y, rest.lines, rest.style.grey(SOFT))


def _largest(shape: float, width: float, height: float) -> tuple[float, float]:
    """The largest rectangle of that shape (width over height) inside width x height."""
    wide = min(width, height * shape)
    return wide, wide / shape


def _tasks(desk: Desk, head: Head, work: Work) -> list[Block]:
    if desk.level == "first":
        return _first(desk, work)
    if desk.level == "younger":
        return _younger(desk, head, work)
    return _older(desk, head, work)


def _first(desk: Desk, work: Work) -> list[Block]:
    questions = on_paper(tuple(map(str, work.look)), tuple(map(str, work.look_first)), "first")
    blocks: list[Block] = [Bullets(desk.say_lines("steps"), "ring", "body")]
    blocks.append(DrawBox(desk.say("draw"), least=95.0))
    if questions:
        blocks.append(Boxed(Bullets(tuple(questions), "dot", "small"), "note", desk.say("ask_aloud")))
    return blocks


def _younger(desk: Desk, head: Head, work: Work) -> list[Block]:
    """What fits one page with a place to draw that is large enough: with the title to copy only if there is room."""
    blocks: list[Block] = []
    for draw, copied, lines in _YOUNGER:
        blocks = [Bullets(desk.say_lines("steps"), "ring", "body", spread=0.15), DrawBox(desk.say("draw"), least=draw)]
        blocks += [_copied(desk, str(work.title))] if copied else []
        for question in work.look[: WRITTEN["younger"]]:
            blocks.append(Stack((Prose(question, "strong", tight=True), Lines(lines, lines + 1))))
        blocks += _whereabouts(desk, work)
        if _on_a_page(desk, head, blocks):
            break
    return blocks


def _copied(desk: Desk, title: str) -> Block:
    """A work's title to copy, a long one written smaller so that it stands on one line."""
    model = TraceLine(desk, title, copy=True).traced(desk.kit)
    ruling = desk.look.ruling
    wide = trace_width(desk.kit, title, ruling.x_height, model.letters)
    if wide > desk.live_width:
        model = replace(model, ruling=at_size(ruling, ruling.x_height * max(_SMALLEST, desk.live_width / wide * 0.995)))
    return Stack((Prose(desk.say("copy_title"), "strong", tight=True), model))


def _older(desk: Desk, head: Head, work: Work) -> list[Block]:
    """What fits one page: as many questions as the level answers, with fewer lines or fewer questions if need be."""
    questions = work.look[: WRITTEN[desk.level]] or (desk.say("notice"),)
    blocks: list[Block] = []
    for sketch, lines, less in _OLDER:
        blocks = [Bullets(desk.say_lines("steps"), "box", "body", spread=0.12)]
        blocks.append(DrawBox(desk.say("sketch"), least=sketch, grow=1.6))
        for question in questions[: max(1, len(questions) - less)]:
            blocks.append(Stack((Prose(question, "strong", tight=True), Lines(lines, 5, gap=0.3))))
        # The faint copy would give the memory sketch away beside it: it comes last, below the fold.
        where = Stack(tuple(_whereabouts(desk, work)))
        blocks.append(Row(((_copy_share(work), _composition(desk, work)), (1.0, where)), gutter=_APART))
        if _on_a_page(desk, head, blocks):
            break
    return blocks


def _on_a_page(desk: Desk, head: Head, blocks: Sequence[Block]) -> bool:
    """True if the blocks fit the first page of a sheet at their least."""
    least = sum(b.measure(desk.kit, desk.live_width).least for b in blocks)
    return least + sum(gap_of(desk.kit, b) for b in blocks[1:]) <= desk.room(head, 0)


def _composition(desk: Desk, work: Work) -> Block:
    """A faint copy of the work, as large as its share of the page allows, to draw its big shapes on."""
    assert work.image
    path = work.image
    words = desk.say("composition")
    style = desk.look.label

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        lines = wrap(desk.faces, words, style, width)
        pen.lines(x, y + height, lines, style)
        room = height - len(lines) * style.leading - 1.5
        wide, high = _largest(aspect(path), width, room)
        place_picture(desk, pen, path, x, y + room - high, wide, high, lighten=_FAINT, grey=True, about=work.image_said)

    # An upright work needs more height to be large enough to draw on.
    column = (desk.live_width - _APART) * _copy_share(work) / (_copy_share(work) + 1.0)
    wanted = 2 * style.leading + 1.5 + column / aspect(path)
    return Art(paint, min(70.0, max(56.0, wanted)), min(104.0, max(56.0, wanted)), grow=1.4)


def _copy_share(work: Work) -> float:
    """How wide the column of the faint copy is, over the one beside it: a wide work wants more."""
    assert work.image
    return 1.35 if aspect(work.image) > 1.1 else 1.0


def _whereabouts(desk: Desk, work: Work) -> list[Block]:
    """Where the work hangs today, how large it is, and the code that opens its link."""
    cells: list[Block] = []
    if work.held:
        cells.append(Prose(desk.say("hangs", work=work), "body", gap=1.0))
        if desk.level in ("older", "upper"):
            asked = desk.say("map_again" if _told_before(desk, work) else "map_task")
            cells.append(Stack((Prose(asked, "strong"), Lines(1, 1, gap=0.0)), gap=1.5))
    if work.width and work.height and desk.level != "younger":
        cells.append(Prose(desk.say("real_size", size=_size(desk, work), times=_times(desk, work)), "body", gap=1.5))
    if work.link:
        code = Row(((-_code_side(work.link), _code(work.link)), (1.0, Prose(desk.say("scan"), "small"))), gap=2.0)
        if desk.level == "younger" and cells:
            side = _code_side(work.link)
            words = Stack((*cells, Prose(desk.say("scan"), "small", gap=1.5)))
            row = Row(((1.0, words), (-side, _code(work.link))))
            return [Boxed(row, "plain", desk.say("where"))]
        cells.append(code)
    return [Boxed(Stack(tuple(cells)), "plain", desk.say("where"))] if cells else []


def _told_before(desk: Desk, work: Work) -> bool:
    """True if a work before this one in the study hangs at the same place, so that its distance is known."""
    works = desk.study.works
    return any(str(other.held) == str(work.held) for other in works[: works.index(work)]) if work in works else False


def _code_side(link: Said) -> float:
    return max(20.0, side_for(str(link)))


def _code(link: Said) -> Block:
    side = _code_side(link)

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        draw_qr(pen, str(link), x, y + height - side, side)

    return Art(paint, side)


def _times(desk: Desk, work: Work) -> str:
    """How many times as wide as the plate the real work is, in plain words such as "2.4 times as wide"."""
    assert work.image and work.width
    height = desk.paper[1] - desk.margins.top - desk.margins.bottom - 9.0
    under = 4.0 + desk.look.small.leading * 2
    shape = aspect(work.image)
    upright = _largest(shape, desk.live_width, height - under)
    turned = _largest(shape, height, desk.live_width - under)
    printed = turned[0] if turned[0] > 1.1 * upright[0] else upright[0]
    ratio = work.width / printed
    if ratio >= 10:
        return f"{round(ratio)}"
    digits = 1 if ratio >= 1 else 2
    return f"{math.floor(ratio * 10**digits + 0.5) / 10**digits:g}"
