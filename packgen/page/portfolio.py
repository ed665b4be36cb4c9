"""The cover of a child's portfolio: a frieze of folded paper, the name, and a place for the picture liked best."""

from __future__ import annotations

from packgen.page.desk import Desk
from packgen.page.look import GUIDE, MIDDLE, SOFT, THIN
from packgen.page.marks import Page, Stroke
from packgen.page.ornament import EMBLEMS, emblem, folded_strip
from packgen.page.pen import Pen
from packgen.page.text import Style, fit
from packgen.planning.days import months_between
from packgen.planning.people import Person

_NAME, _STUDY, _WORD = 15.0, 9.0, 4.6  # em sizes in mm
_STRIP = 6.0


def cover_page(desk: Desk, person: Person, count: int, pages: int, title: str) -> Page:
    """The cover as a page; `count` is the number of things done in the folder, on so many pages (0: not known)."""
    width, height = desk.paper
    edge = desk.margins
    pen = desk.kit.pen()
    left, wide = edge.left, desk.live_width
    top = height - edge.top - 2.0
    y = _frieze(pen, left, top, wide)
    y = _names(desk, pen, person, left, y - 14.0, wide)
    foot = _foot(desk, pen, person, desk.say("cover_count", count=count, pages=pages), left, edge.bottom + 4.0, wide)
    box = y - 10.0 - foot - 10.0
    pen.box(left, foot + 10.0, wide, box, Stroke(MIDDLE, 0.25, (3.0, 2.0)), corner=4.0, role="drawbox")
    style = desk.look.label.grey(SOFT)
    pen.text(left + 5.0, foot + 10.0 + box - 7.0, desk.say("cover_box"), style)
    return desk.finish(pen, width, height, title)


def _frieze(pen: Pen, x: float, top: float, width: float) -> float:
    """Every emblem once in a row between two folded strips; returns the y under it."""
    folded_strip(pen, x, top - _STRIP, width, _STRIP)
    size = 11.0
    names = list(EMBLEMS)
    count = min(len(names), int((width + 4.0) / (size + 4.0)))
    step = (width - size) / (count - 1)
    for place, name in enumerate(names[:count]):
        emblem(pen, name, x + place * step, top - _STRIP - 4.0 - size, size, THIN)
    under = top - 2 * _STRIP - 8.0 - size
    folded_strip(pen, x, under, width, _STRIP)
    return under


def _names(desk: Desk, pen: Pen, person: Person, x: float, top: float, width: float) -> float:
    """Whose portfolio it is, and of which study; returns the y under it."""
    y = top
    rows = (
        (desk.say("cover_by"), desk.look.heading.grey(SOFT), _WORD, 1),
        (person.name, desk.look.title, _NAME, 2),
        (desk.say("cover_study"), desk.look.heading.grey(SOFT), _WORD, 1),
        (str(desk.study.study), desk.look.title, _STUDY, 2),
    )
    for text, role, size, lines in rows:
        if text == person.name and not person.named:
            y -= size * 1.4
            pen.line(x + width * 0.2, y, x + width * 0.8, y, MIDDLE, GUIDE, role="nameline")
            y -= size * 0.5
            continue
        style = Style(role.face, size, size * 1.25, role.ink)
        fitted = fit(desk.faces, text, style, width, lines * style.leading, size * 0.4)
        y = pen.lines(x, y, fitted.lines, fitted.style, align="centre", width=width, role="title") - 1.5
    return y


def _foot(desk: Desk, pen: Pen, person: Person, count: str, x: float, bottom: float, width: float) -> float:
    """When, how old, how many sheets, and a line for the date it was finished; returns the y over it."""
    style = desk.look.body
    days = [day for week in desk.term.weeks for day in week.dates]
    said = [desk.say("cover_age", age=person.age)] if person.age is not None else []
    said += [months_between(days[0], days[-1])] if days else []
    said.append(count)
    words = desk.say("cover_finished")
    line = 44.0
    begin = x + width - line - desk.faces.width(words, style.face, style.size) - 3.0
    lines = fit(desk.faces, " · ".join(said), style, begin - x - 5.0, 2 * style.leading, 3.0)
    for place, part in enumerate(reversed(lines.lines)):
        pen.text(x, bottom + place * lines.style.leading, part, lines.style)
    pen.text(begin, bottom, words, style)
    pen.line(x + width - line, bottom - 0.6, x + width, bottom - 0.6, THIN, GUIDE, role="dateline")
    return bottom + len(lines.lines) * style.leading
