"""The frame of every full page: margins, the head with its emblem, the foot. Book pages have their own, smaller one."""

from __future__ import annotations

from dataclasses import dataclass

from packgen.page.blocks import Kit
from packgen.page.look import GUIDE, HAIR, MIDDLE, RULE, SOFT, THIN
from packgen.page.ornament import emblem, folded_strip
from packgen.page.pen import Pen
from packgen.page.sheet_number import draw_tag, tag_width
from packgen.page.text import Fitted, Style, fit

_EMBLEM = {"first": 22.0, "younger": 19.0, "older": 15.0, "upper": 14.0, "parent": 13.0}
_STRIP = {"first": 4.4, "younger": 3.8, "older": 2.8, "upper": 2.4, "parent": 2.4}
_FOOT = 11.0
_CLEAR = 8.0  # mm more that the subject keeps from the date beside it, so that the two are not read as one line
_DOT = " · "
_TAG = 46.0  # mm, the most the tag with the sheet's number takes of the foot
RULER = 100.0


@dataclass(frozen=True, slots=True)
class Margins:
    """The empty edges of a page in mm."""

    left: float
    right: float
    top: float
    bottom: float


@dataclass(frozen=True, slots=True)
class Head:
    """What stands at a page's head: `title` says what to do, `subject` on what; `person` whose sheet it is."""

    title: str
    subject: str = ""
    person: str = ""
    emblem: str = "fan"
    date: bool = True
    name_word: str = "Name"
    date_word: str = "Date"


@dataclass(frozen=True, slots=True)
class Foot:
    """What stands at a page's foot: `left` the study and sheet, `right` the week and page, `tag` whose sheet it is.

    The tag gets the sheet's number in the pack behind it.
    """

    left: str
    right: str
    ruler: str = ""
    tag: str = ""


def margins(printer_margin: float) -> Margins:
    """The margins of a full page: even, and well inside what the printer reaches."""
    side = max(16.0, printer_margin + 5.0)
    return Margins(side, side, max(13.0, printer_margin + 4.0), max(12.0, printer_margin + 4.0))


def head_height(kit: Kit, head: Head, width: float, first: bool) -> float:
    """The height of the head in mm, the gap under it included; later pages have a slim one."""
    if not first:
        return kit.look.label.leading + 5.0
    return _head_text(kit, head, width)[1] + _STRIP[kit.look.level] + 2.5 + kit.look.gap


def _head_text(kit: Kit, head: Head, width: float) -> tuple[float, float]:
    """The width for the title, and the height of the head over its strip."""
    look = kit.look
    mark = _EMBLEM[look.level]
    aside = 44.0 if (head.person or head.date) else 0.0
    room = width - mark - 5.0 - (aside + 4.0 if aside else 0.0)
    fitted = fit(kit.faces, head.title, look.title, room, 2 * look.title.leading, look.title.size * 0.6)
    high = fitted.height
    if head.subject:
        high += _subject(kit, head, room).height + 0.5
    return room, max(mark, high)


def _subject(kit: Kit, head: Head, room: float) -> Fitted:
    """The subject in as few lines as hold it; parts with a dot between them are kept whole while that takes no more."""
    style = kit.look.label
    room -= _CLEAR if head.date else 0.0
    plain = fit(kit.faces, head.subject, style, room, 3 * style.leading, style.size * 0.8)
    lines: list[str] = []
    for part in head.subject.split(_DOT):
        joined = f"{lines[-1]}{_DOT}{part}" if lines else part
        if lines and kit.faces.width(joined, style.face, style.size) <= room:
            lines[-1] = joined
        else:
            lines.append(part)
    parted = fit(kit.faces, "\n".join(lines), style, room, 3 * style.leading, style.size * 0.8)
    return parted if parted.height <= plain.height + 1e-6 else plain


def draw_head(kit: Kit, pen: Pen, head: Head, x: float, top: float, width: float, first: bool) -> None:
    """Draw the head below `top`."""
    look = kit.look
    if not first:
        drop = pen.drop(look.label)
        pen.text(x, top - drop, head.title, look.label, role="heading")
        pen.line(x, top - look.label.leading - 1.2, x + width, top - look.label.leading - 1.2, THIN, RULE)
        return
    mark = _EMBLEM[look.level]
    room, high = _head_text(kit, head, width)
    emblem(pen, head.emblem, x, top - (high + mark) / 2, mark, MIDDLE)
    left = x + mark + 5.0
    title = fit(kit.faces, head.title, look.title, room, 2 * look.title.leading, look.title.size * 0.6)
    subject = _subject(kit, head, room)
    text_high = title.height + (subject.height + 0.5 if head.subject else 0.0)
    y = pen.lines(left, top - (high - text_high) / 2, title.lines, title.style, role="title")
    if head.subject:
        pen.lines(left, y - 0.5, subject.lines, subject.style.grey(SOFT), role="subject")
    _person(kit, pen, head, x + width - 44.0, top, high)
    strip = _STRIP[look.level]
    folded_strip(pen, x, top - high - 2.5 - strip, width, strip)


def _person(kit: Kit, pen: Pen, head: Head, x: float, top: float, high: float) -> None:
    """The child's name, and a line for the date, at the right of the head."""
    style = kit.look.small
    room = 44.0
    y = top - high / 2 + 1.0
    if head.person:
        named = fit(kit.faces, head.person, kit.look.label, room, 2 * kit.look.label.leading, kit.look.label.size * 0.6)
        # A long name in two lines stays under the top margin.
        rise = kit.faces.metrics(named.style.face).ascent * named.style.size
        foot = min(y + 2.0, top - rise - (len(named.lines) - 1) * named.style.leading)
        for k, line in enumerate(reversed(named.lines)):
            pen.text(x + room, foot + k * named.style.leading, line, named.style, align="right")
    if head.date:
        wide = kit.faces.width(head.date_word, style.face, style.size)
        base = y - 5.5
        pen.text(x, base, head.date_word, style.grey(SOFT))
        pen.line(x + wide + 2.0, base - 0.6, x + room, base - 0.6, THIN, GUIDE, role="dateline")


def foot_height(ruler: bool = False) -> float:
    """The height of the foot in mm, the gap over it included; a ruler stands on it and wants more."""
    return _FOOT + (4.5 if ruler else 0.0)


def draw_foot(kit: Kit, pen: Pen, foot: Foot, x: float, bottom: float, width: float) -> None:
    """Draw the foot on the bottom margin: a hairline and one quiet line of text."""
    style = kit.look.small.at(min(kit.look.small.size, 3.1)).grey(SOFT)
    pen.line(x, bottom + style.leading + 1.4, x + width, bottom + style.leading + 1.4, HAIR, RULE, role="footline")
    base = bottom + style.size * 0.25
    tag = tag_width(kit, foot.tag, _TAG) + (4.0 if foot.tag else 0.0)
    right = kit.faces.width(foot.right, style.face, style.size)
    room = width - right - tag - 6.0
    if foot.ruler:
        draw_ruler(kit, pen, foot.ruler, x, bottom + style.leading + 2.6, width - RULER - 2.0)
    fitted = _foot_words(kit, foot.left, style, room)
    pen.text(x, base, fitted.lines[0], fitted.style, role="foot")
    pen.text(x + width - tag, base, foot.right, style, align="right", role="foot")
    draw_tag(kit, pen, foot.tag, x + width, base, _TAG)


def _foot_words(kit: Kit, words: str, style: Style, room: float) -> Fitted:
    """The words of a foot on one line: of study and sheet the study alone if both are too long, at worst its beginning.

    Both stand in full at the head of the sheet.
    """
    for shown in (words, words.split(_DOT)[0]):
        fitted = fit(kit.faces, shown, style, room, style.leading, 2.6)
        if len(fitted.lines) == 1:
            return fitted
    cut = shown
    while cut and kit.faces.width(cut + "…", style.face, 2.6) > room:
        cut = cut[:-1]
    return Fitted((cut.rstrip() + "…",), style.at(2.6), True)


def draw_ruler(kit: Kit, pen: Pen, words: str, x: float, y: float, room: float = 60.0) -> None:
    """A ruler of exactly 100 mm standing on y, its ends at x and x + 100; beside it, in `room`, what it is for."""
    for k in range(11):
        high = 2.2 if k % 5 == 0 else 1.3
        pen.line(x + 10 * k, y, x + 10 * k, y + high, THIN, 0.2, role="ruler-tick")
    pen.line(x, y, x + RULER, y, MIDDLE, 0.2, role="ruler")
    style = kit.look.small.at(3.0).grey(SOFT)
    fitted = fit(kit.faces, words, style, room, style.leading, 2.0)
    # Tails stand clear of the line under the words.
    pen.text(x + RULER + 2.0, y + 1.0, " ".join(fitted.lines), fitted.style)
