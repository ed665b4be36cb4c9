"""A time axis true to scale: events to read off, to glue in place or to draw, over as many joined sheets as needed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from packgen.page.blocks import Block, Bullets, Lines, Prose, Stack
from packgen.page.cut_outs import Card, card_pages
from packgen.page.desk import Desk, Laid, Option, Sheet
from packgen.page.frame import Head
from packgen.page.look import BOLD, HAIR, PALE, RULE, SOFT, THIN
from packgen.page.marks import Page, Stroke
from packgen.page.pen import Pen
from packgen.page.story_path import Stop, path_page
from packgen.page.table import Column, Table
from packgen.page.text import Style, fit, wrap
from packgen.page.time_axis import TimeAxis, axis_for, spread, year_name
from packgen.page.time_points import Moment, draw_axis, draw_dot, years_of
from packgen.planning.gentle import gentle_events
from packgen.planning.life import chosen_events, timeline_questions
from packgen.reading.dates import plain
from packgen.reading.models import Event, When

SHEET = Sheet(
    title="Timeline",
    about="A time axis true to scale: events to draw (first), to cut out and glue (younger), or to read off (older).",
    options=(
        Option("events", "", "at most this many events; left out: as the recipe's `events`"),
        Option("form", "", "how it is done; left out: as suits the level", ("draw", "glue", "read")),
    ),
    parts=("cards",),
)

_FORMS = {"first": "draw", "younger": "glue", "older": "read", "upper": "read"}
_JOIN = 16.0  # how much of the axis is printed on both of two joined sheets
_MOST_SHEETS = 10
_RIGHT_OF_AXIS = 56.0  # mm from the live area's left edge, clear of the axis, its bars and the lines to labels
_FEW = 4  # so few events are no puzzle to put in order: they are drawn
_STORY = 4  # the most events a child of four tells in order (common practice, no source)
_PULL = 55.0  # how far a label may be pulled from its date


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The axis with its tasks, and for the younger the cards to glue on."""
    form = str(desk.option("form") or _FORMS[desk.level])
    if form == "draw" and desk.level == "first":
        return _story(desk)
    marks = _marks(desk)
    if not marks:
        return ()
    form = "draw" if form == "glue" and (desk.no_glue or len(marks) < _FEW) else form
    head = desk.head(desk.say(f"title_{form}"), desk.say(f"subject_{form}"), "strip", date=form == "read")
    if form == "read":
        return (Laid("timeline", SHEET.title, _read(desk, head, marks), week=desk.item.week),)
    return _placed(desk, head, marks, glue=form == "glue")


def _story(desk: Desk) -> tuple[Laid, ...]:
    """For the youngest: a few gentle events in order, on a path without an axis."""
    every = str(desk.option("events")) == "all"
    most = _STORY if every else max(1, min(_STORY, desk.count("events", desk.recipe.events or _STORY)))
    events = gentle_events(desk.study, most)
    if not events:
        return ()
    head = desk.head(desk.say("title_story"), desk.say("subject_story"), "strip", date=False)
    stops = [Stop(str(event.short or event.what), _year_words(event.when)) for event in events]
    page, crowded = path_page(desk, head, stops, SHEET.title)
    for event in (event for event, stop in zip(events, stops, strict=True) if stop in crowded):
        _too_long(desk, str(event.short or event.what), event)
    return (Laid("timeline", SHEET.title, (page,), week=desk.item.week),)


def _year_words(when: When) -> str:
    """A date as the youngest's grown-up reads it: of a day only the year."""
    if when.start is None or when.is_span or when.spread or when.approximate or when.uncertain:
        return plain(when)
    return year_name(when.start.year)


def _too_long(desk: Desk, words: str, event: Event) -> None:
    desk.fault(event.what, f'"{words[:40]}" is too long for its place on the timeline.',
               'Give the event a short wording with "short:".')  # fmt: skip


def _marks(desk: Desk) -> list[Moment]:
    """The events in order of time, as many as the recipe wants; those left out are told to the parent."""
    every = str(desk.option("events")) == "all"
    events = chosen_events(desk.study, None if every else desk.count("events", desk.recipe.events or 99))
    short = desk.level in ("first", "younger")
    marks = []
    for event in events:
        start, end = years_of(event.when)
        words = str(event.short or event.what) if short else str(event.what)
        unsure = event.when.approximate or event.when.uncertain or event.when.spread
        marks.append(Moment(start, end, plain(event.when), words, unsure, event))
    return marks


# Reading off: labels beside the axis


@dataclass(frozen=True, slots=True)
class _Sheet:
    """One sheet's stretch of the axis, in mm along it, with its labels' tops counted from the stretch's beginning."""

    begin: float
    end: float
    marks: tuple[Moment, ...]
    tops: tuple[float, ...]


def _read(desk: Desk, head: Head, marks: Sequence[Moment]) -> tuple[Page, ...]:
    tasks = _tasks(desk, marks)
    plan = _sheets(desk, head, marks)
    if plan is None:
        return _numbered(desk, head, marks, tasks)
    axis, stretches = plan
    count = len(stretches)
    style = _label_style(desk)
    task_head = replace(head, title=desk.say("tasks_title"))
    more = desk.pages(task_head, tasks, name=SHEET.title, before=count)
    total = count + len(more)
    pages = []
    for number, stretch in enumerate(stretches, 1):

        def paint(pen: Pen, x: float, y: float, width: float, height: float, *, here: _Sheet = stretch,
                  at: int = number) -> None:  # fmt: skip
            _paint(desk, pen, axis, here, (x, y, width, height), style, at, count)

        pages.append(desk.free_page(paint, head, name=SHEET.title, number=number, count=total, ruler=True))
    return (*pages, *more)


def _label_style(desk: Desk) -> Style:
    return desk.look.body.at(desk.look.body.size * 0.92)


def _label_room(desk: Desk) -> tuple[float, float]:
    """Where labels begin right of the live area's left edge, and how wide they are."""
    return _RIGHT_OF_AXIS, desk.live_width - _RIGHT_OF_AXIS


def _sheets(desk: Desk, head: Head, marks: Sequence[Moment]) -> tuple[TimeAxis, list[_Sheet]] | None:
    """The axis and its stretches on the fewest sheets where every label finds its place; None if six do not do."""
    style = _label_style(desk)
    _, wide = _label_room(desk)
    heights = [_label_height(desk, mark, style, wide) for mark in marks]
    first, last = min(m.start for m in marks), max(m.end for m in marks)
    for count in range(1, _MOST_SHEETS + 1):
        rooms = [desk.room(head, k, ruler=True) - 4.0 for k in range(count)]
        axis = axis_for(first, last, sum(rooms) - _JOIN * (count - 1))
        sheets = _cut(axis, rooms, marks, heights)
        if sheets is not None:
            return axis, sheets
    return None


def _label_height(desk: Desk, mark: Moment, style: Style, width: float) -> float:
    return len(wrap(desk.faces, f"{mark.when}  {mark.words}", style, width)) * style.leading


def _cut(
    axis: TimeAxis, rooms: Sequence[float], marks: Sequence[Moment], heights: Sequence[float]
) -> list[_Sheet] | None:
    sheets: list[_Sheet] = []
    begin = 0.0
    for k, room in enumerate(rooms):
        end = begin + room
        last = k == len(rooms) - 1
        own_end = axis.length + 1 if last else end - _JOIN / 2
        own_begin = -1.0 if k == 0 else begin + _JOIN / 2
        here = [i for i, m in enumerate(marks) if own_begin <= axis.down(m.start) < own_end]
        wanted = [axis.down(marks[i].start) - begin for i in here]
        # No label on a strip that is joined: words stand there, and half of it is covered.
        tops = spread(wanted, [heights[i] for i in here], _JOIN if k else 0.0, room if last else room - _JOIN)
        if tops is None:
            return None
        pulls = [abs(t + heights[i] / 2 - w) for t, i, w in zip(tops, here, wanted, strict=True)]
        if max(pulls, default=0.0) > _PULL:
            return None
        sheets.append(_Sheet(begin, end, tuple(marks[i] for i in here), tuple(tops)))
        begin = end - _JOIN
    return sheets


def _paint(desk: Desk, pen: Pen, axis: TimeAxis, sheet: _Sheet, place: tuple[float, float, float, float], style: Style,
           number: int, count: int) -> None:  # fmt: skip
    """One sheet: the axis at the left third, spans as bars beside it, labels at the right with their leaders."""
    x, y, _, height = place
    top = y + height - 2.0
    line = x + 30.0
    end = min(sheet.end, axis.length)
    draw_axis(desk, pen, axis, sheet.begin, end, line, top)
    _joins(desk, pen, sheet, axis, x, top, number, count)
    indent, wide = _label_room(desk)
    lanes: list[float] = []
    for mark, label_top in zip(sheet.marks, sheet.tops, strict=True):
        at = top - (axis.down(mark.start) - sheet.begin)
        dot = line
        if mark.lasted:
            dot = _bar(pen, axis, mark, sheet, line, top, lanes)
        else:
            draw_dot(pen, mark, line, at)
        lines = wrap(desk.faces, f"{mark.when}  {mark.words}", style, wide)
        label_y = top - label_top
        middle = label_y - style.leading * 0.5
        elbow = x + indent - 5.0
        pen.line(dot + 1.3, at, elbow - 4.0, at, HAIR, RULE)
        pen.line(elbow - 4.0, at, elbow, middle, HAIR, RULE)
        pen.line(elbow, middle, x + indent - 1.5, middle, HAIR, RULE)
        _label(desk, pen, mark, lines, style, x + indent, label_y)


def _label(desk: Desk, pen: Pen, mark: Moment, lines: Sequence[str], style: Style, x: float, top: float) -> None:
    """A label: the date in bold where it fits on the first line, and what happened."""
    bold = style.in_face(desk.look.strong.face)
    base = top - pen.drop(style)
    head = f"{mark.when} "
    if lines and lines[0].startswith(head.strip()):
        wide = desk.faces.width(head, style.face, style.size)
        pen.text(x, base, mark.when, bold)
        rest = lines[0][len(mark.when) :].strip()
        bold_wide = desk.faces.width(mark.when + " ", bold.face, bold.size)
        pen.text(x + max(wide, bold_wide), base, rest, style)
        pen.lines(x, top - style.leading, lines[1:], style)
    else:
        pen.lines(x, top, lines, style)


def _bar(pen: Pen, axis: TimeAxis, mark: Moment, sheet: _Sheet, line: float, top: float, lanes: list[float]) -> float:
    """A span as a bar right of the axis, in the first lane that is free there; returns its middle line."""
    start, end = axis.down(mark.start), axis.down(mark.end)
    lane = next((k for k, until in enumerate(lanes) if until <= start), len(lanes))
    lanes[lane : lane + 1] = [end + 1.0]
    x = line + 3.0 + min(lane, 3) * 3.2
    high, low = max(start, sheet.begin), min(end, sheet.end)
    pen.box(x - 1.0, top - low + sheet.begin, 2.0, low - high, Stroke(THIN, 0.2), 0.8, corner=0.8, role="span")
    return x


def _joins(desk: Desk, pen: Pen, sheet: _Sheet, axis: TimeAxis, x: float, top: float, number: int, count: int) -> None:
    """Where this sheet joins the next: a hatched strip to glue under, and the line that must meet."""
    joins = []
    if number < count:
        joins.append((top - (sheet.end - sheet.begin) + _JOIN, "join_under", False))
    if number > 1:
        joins.append((top - _JOIN, "join_over", True))
    style = desk.look.small.grey(SOFT)
    left, room = x + _RIGHT_OF_AXIS, desk.live_width - _RIGHT_OF_AXIS
    for y, key, over in joins:
        pen.line(x, y, x + desk.live_width, y, THIN, RULE, (2.0, 1.4), role="join")
        words = fit(desk.faces, desk.say(key), style, room, 2 * style.leading, style.size * 0.8)
        pen.lines(left, y + words.height + 0.8 if over else y - 0.8, words.lines, words.style, role="join-words")


def _numbered(desk: Desk, head: Head, marks: Sequence[Moment], tasks: Sequence[Block]) -> tuple[Page, ...]:
    """Too many labels for the axis: numbered points on one axis, and the list they point to."""
    first, last = min(m.start for m in marks), max(m.end for m in marks)
    axis = axis_for(first, last, desk.room(head, 0, ruler=True) - 4.0)
    style = desk.look.small

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        top, line = y + height - 2.0, x + 30.0
        draw_axis(desk, pen, axis, 0.0, axis.length, line, top)
        groups: list[list[int]] = []
        for k, mark in enumerate(marks):
            at = axis.down(mark.start)
            if groups and at - axis.down(marks[groups[-1][0]].start) < style.leading:
                groups[-1].append(k)
            else:
                groups.append([k])
            draw_dot(pen, mark, line, top - at)
        for group in groups:
            at = top - axis.down(marks[group[0]].start)
            words = str(group[0] + 1) if len(group) == 1 else f"{group[0] + 1}–{group[-1] + 1}"
            pen.text(line + 4.0, at - style.size * 0.33, words, style)

    rows = tuple((str(k), m.when, m.words) for k, m in enumerate(marks, 1))
    table = Table((Column("", 0.09), Column(desk.say("when"), 0.24), Column(desk.say("what"), 0.67)), rows)
    list_head = replace(head, title=desk.say("list_title"))
    listed = desk.pages(list_head, [table, *tasks], name=SHEET.title, before=1)
    page = desk.free_page(paint, head, name=SHEET.title, count=1 + len(listed), ruler=True)
    return (page, *listed)


def _tasks(desk: Desk, marks: Sequence[Moment]) -> list[Block]:
    """Intervals and ages to read off the axis, with lines for the answers."""
    asked = timeline_questions(desk.study, [m.event for m in marks], desk.level)
    asks = [desk.say(f"ask_{q.kind}", q=q) for q in asked]
    blocks: list[Block] = [Bullets(desk.say_lines("how"), "dot", "body", spread=0.15)]
    blocks += [
        Stack((Prose(f"{k}. {ask}", "strong", tight=True), Lines(1, 1, gap=0.0)), gap=2.5)
        for k, ask in enumerate(asks, 1)
    ]
    unsure = any(m.event.when.approximate for m in marks)
    own = desk.say_lines("own", unsure=unsure)
    blocks += [Stack((Prose(ask, "strong", tight=True), Lines(2, 12, gap=0.0))) for ask in own]
    return blocks


# Gluing and drawing: places for a few events, each joined to its date


def _placed(desk: Desk, head: Head, marks: Sequence[Moment], *, glue: bool) -> tuple[Laid, ...]:
    """Boxes beside the axis, each joined to its date; to glue, the cards to cut out are a sheet of their own."""
    room = desk.room(head, 0, ruler=True) - 4.0
    gap = 3.0
    most = 40.0 if glue else 52.0
    least = 17.0 if glue else 30.0
    a_page = max(1, int((room + gap) / (least + gap)))
    kept = list(marks)
    parts = [kept[k : k + a_page] for k in range(0, len(kept), a_page)]
    if len(parts) > 1:
        size = -(-len(kept) // len(parts))
        parts = [kept[k : k + size] for k in range(0, len(kept), size)]
    high = min(most, (room - gap * (max(len(p) for p in parts) - 1)) / max(len(p) for p in parts))
    wide = desk.live_width - 46.0
    pages = tuple(
        desk.free_page(_boxes(desk, part, (wide, high, gap), glue=glue), head, name=SHEET.title, number=k,
                       count=len(parts), ruler=True) for k, part in enumerate(parts, 1)
    )  # fmt: skip
    laid = [Laid("timeline", SHEET.title, pages, week=desk.item.week)]
    if glue:
        cards = [Card(m.when, m.words, wide, high) for m in _shuffled(kept)]
        card_head = desk.head(desk.say("cards_title"), desk.say("cards_subject"), "strip", date=False)
        laid.append(Laid("timeline", desk.say("cards_title"), card_pages(desk, card_head, cards), part="cards",
                         week=desk.item.week))  # fmt: skip
    return tuple(laid)


def _shuffled(marks: Sequence[Moment]) -> list[Moment]:
    """The cards in an order that does not give the places away: every third, three times over."""
    return [mark for start in (1, 2, 0) for mark in marks[start::3]]


def _boxes(desk: Desk, marks: Sequence[Moment], size: tuple[float, float, float], *, glue: bool):  # type: ignore[no-untyped-def]
    wide, high, gap = size

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        top = y + height - 2.0
        line = x + 26.0
        axis = axis_for(min(m.start for m in marks), max(m.end for m in marks), height - 4.0)
        draw_axis(desk, pen, axis, 0.0, axis.length, line, top)
        wanted = [axis.down(m.start) for m in marks]
        tops = spread(wanted, [high] * len(marks), 0.0, height - 4.0, gap) or []
        for mark, down in zip(marks, tops, strict=False):
            at = top - axis.down(mark.start)
            if mark.lasted:
                pen.box(line - 0.2, top - axis.down(mark.end), 2.2, axis.down(mark.end) - axis.down(mark.start),
                        Stroke(THIN, 0.2), 0.8, role="span")  # fmt: skip
            else:
                draw_dot(pen, mark, line, at)
            middle = top - down - high / 2
            pen.line(line + 1.5, at, line + 8.0, at, THIN, RULE)
            pen.line(line + 8.0, at, line + 15.0, middle, THIN, RULE)
            pen.line(line + 15.0, middle, line + 20.0, middle, THIN, RULE)
            _place(desk, pen, mark, (line + 20.0, top - down - high, wide, high), glue=glue)

    return paint


def _place(desk: Desk, pen: Pen, mark: Moment, box: tuple[float, float, float, float], *, glue: bool) -> None:
    """One place beside the axis: a dashed box for a card, or a box to draw in with the event's words."""
    x, y, wide, high = box
    look = desk.look
    dash = (1.6, 1.2) if glue else ()
    if not glue:
        pen.box(x, y, wide * 0.42, high, fill=PALE)
    pen.box(x, y, wide, high, Stroke(THIN if glue else BOLD, 0.25, dash), role="gluebox" if glue else "drawbox")
    if glue:  # no date in it: the child follows the line back to the year
        return
    style = look.small.in_face(look.label.face)
    room = wide * 0.42
    text = f"{mark.words}\n{mark.when}"
    fitted = fit(desk.faces, text, style.at(look.body.size), room - 5.0, high - 4.0, 3.0)
    if not fitted.fits:
        _too_long(desk, mark.words, mark.event)
    pen.lines(x + 2.5, y + high / 2 + fitted.height / 2, fitted.lines, fitted.style)
