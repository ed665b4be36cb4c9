"""The head and the foot of a page of card: name and scale with a bar of real lengths, the key to the lines, a ruler."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from math import floor, log10
from typing import Any

from packgen.nets.layout import NetSheet, Size
from packgen.page.desk import Desk
from packgen.page.frame import draw_ruler
from packgen.page.look import HAIR, RULE, SOFT, THIN
from packgen.page.marks import Stroke
from packgen.page.net_lines import BEND, CROSS, CUT, LAY, MOUNTAIN, RING, TAB, VALLEY
from packgen.page.pen import Pen
from packgen.page.sheet_number import draw_tag
from packgen.page.text import fit

HEAD, FOOT = 15.0, 20.0
_SAMPLE, _AFTER, _BETWEEN = 10.0, 1.5, 5.5
_BAR = (18.0, 46.0)
"""The shortest and the longest bar of real lengths (mm); between them lies one of 1, 2 or 5 of any unit."""
_FOOT_MM = 304.8


@dataclass(frozen=True, slots=True)
class NetArea:
    """Where a net lies on a page: its lower left corner and size in mm."""

    x: float
    y: float
    width: float
    height: float


def net_area(desk: Desk) -> NetArea:
    """The largest place for a net: all that the printer reaches, less a slim head and foot."""
    edge = desk.family.printer.margin + 2.0
    width, height = desk.paper
    return NetArea(edge, edge + FOOT, width - 2 * edge, height - 2 * edge - HEAD - FOOT)


def say(desk: Desk, key: str, **values: Any) -> str:
    """A wording of the model sheet, whichever sheet the net is for."""
    return desk.wording.say("model", desk.level, key, values)


@dataclass(frozen=True, slots=True)
class HeadWords:
    """What stands in the head of a page of card. `ratio` is paper to real thing, `sizes` the real thing's in words."""

    title: str
    scale: str = ""
    more: str = ""
    sizes: str = ""
    ratio: float = 1.0


def card_head(desk: Desk, pen: Pen, title: str, scale: str, more: str = "") -> None:
    """The head of a page of card: the thing's name and the child's on the left, the scale on the right."""
    draw_card_head(desk, pen, HeadWords(title, scale, more))


def draw_card_head(desk: Desk, pen: Pen, words: HeadWords) -> None:
    """Draw the head: name, child and real sizes on the left; on the right the scale and, if it is one, its bar."""
    area = net_area(desk)
    look = desk.look
    top = area.y + area.height + HEAD
    right = max(desk.faces.width(words.scale, look.label.face, look.label.size), _bar(desk, words.ratio)[0])
    room = area.width - right - 8.0
    fitted = fit(desk.faces, words.title, look.heading, room, 6.5, look.small.size)
    y = pen.lines(area.x, top, fitted.lines[:1], fitted.style, role="title")
    pen.text(area.x + area.width, top - pen.drop(look.label), words.scale, look.label, align="right")
    style = look.small.at(min(3.2, look.small.size)).grey(SOFT)
    under = " · ".join(part for part in (str(desk.study.study), desk.person, words.more) if part)
    for line in (under, words.sizes):
        small = fit(desk.faces, line, style, room, style.leading, 2.2)
        y = pen.lines(area.x, y, small.lines[:1], small.style)
    if abs(words.ratio - 1) > 1e-9:
        _scale_bar(desk, pen, words.ratio, area.x + area.width, top - look.label.leading - 3.4)


def _bar(desk: Desk, ratio: float) -> tuple[float, str, int]:
    """The length on paper of a bar of a round real length, that length in words, and into how many it is divided."""
    if abs(ratio - 1) < 1e-9:
        return 0.0, "", 0
    feet = desk.family.units == "customary" and ratio < 0.2
    unit = _FOOT_MM if feet else 1.0
    most = _BAR[1] / ratio / unit
    power = 10.0 ** floor(log10(most))
    digit = next(d for d in (5, 2, 1) if d * power <= most * (1 + 1e-9))
    real = digit * power * unit
    words = f"{digit * power:g} ft" if feet else real_words(real)
    return real * ratio, words, {5: 5, 2: 4, 1: 5}[digit]


def real_words(length: float) -> str:
    """A round real length in the unit a reader would use: '20 cm', '1 m', '2 km'."""
    if length >= 1e6:
        return f"{length / 1e6:g} km"
    if length >= 1000:
        return f"{length / 1000:g} m"
    return f"{length / 10:g} cm" if length >= 10 else f"{length:g} mm"


def _scale_bar(desk: Desk, pen: Pen, ratio: float, right: float, y: float) -> None:
    """A bar whose whole length stands for a round real length, from 0 at its left end."""
    long, words, parts = _bar(desk, ratio)
    left = right - long
    step = long / parts
    for k in range(parts):
        pen.box(left + k * step, y, step, 1.2, Stroke(HAIR, 0.2), None if k % 2 else 0.2, role="scale-bar")
    style = desk.look.small.at(2.6).grey(SOFT)
    pen.text(left, y - 3.0, "0", style)
    pen.text(right, y - 3.0, words, style, align="right", role="scale-length")


def sizes_words(desk: Desk, sizes: tuple[Size, ...], ratio: float) -> str:
    """The lengths of the real thing in one line, if the model is to a scale."""
    if abs(ratio - 1) < 1e-9:
        return ""
    return " · ".join(f"{s.name} {length_words(desk, s.real)}" for s in sizes if s.dimension == "length")


def length_words(desk: Desk, length: float) -> str:
    """A length in the family's units: '5.2 m', '120 mm'; '17.1 ft', '4.72 in'."""
    if desk.family.units == "customary":
        return f"{length / _FOOT_MM:.3g} ft" if length >= 2 * _FOOT_MM else f"{length / _FOOT_MM * 12:.3g} in"
    if length >= 1e6:
        return f"{length / 1e6:.4g} km"
    return f"{length / 1000:.4g} m" if length >= 1000 else f"{length:.4g} mm"


Sample = Callable[[Pen, float, float], None]


def card_foot(desk: Desk, pen: Pen, sheet: NetSheet | None = None, sheets: int = 1) -> None:
    """The foot of a page of card: the key to the lines on it, which side is printed, and a ruler of 100 mm.

    Without a sheet the key has the three lines that any card may have.
    """
    area = net_area(desk)
    style = desk.look.small.at(2.8).grey(SOFT)
    x, y = area.x, area.y - 5.5
    for sample, words in _entries(desk, sheet, sheets):
        wide = _SAMPLE + _AFTER + desk.faces.width(words, style.face, style.size)
        if x > area.x and x + wide > area.x + area.width:
            x, y = area.x, y - 4.6
        sample(pen, x, y + 1.0)
        pen.text(x + _SAMPLE + _AFTER, y, words, style, role="key")
        x += wide + _BETWEEN
    low = area.y - FOOT + 1.5
    draw_ruler(desk.kit, pen, desk.wording.say("", desk.level, "foot_ruler", {}), area.x, low, area.width - 142.0)
    draw_tag(desk.kit, pen, desk.tag, area.x + area.width, low + 0.6, 38.0)


def _entries(desk: Desk, sheet: NetSheet | None, sheets: int) -> Iterator[tuple[Sample, str]]:
    """The samples and words of the key: only of what is on the sheet; the printed side last."""
    yield partial(_line, stroke=CUT), say(desk, "key_cut")
    kinds = {f.kind for f in sheet.folds} if sheet else {"mountain", "valley"}
    if "mountain" in kinds:
        yield partial(_line, stroke=MOUNTAIN), say(desk, "key_mountain")
    if "valley" in kinds:
        yield partial(_line, stroke=VALLEY), say(desk, "key_valley")
    if sheet and sheet.scores:
        yield partial(_line, stroke=BEND), say(desk, "key_bend")
    if sheet and sheet.lays:
        yield partial(_line, stroke=LAY), say(desk, "key_lay")
    if sheet and sheet.letters:
        yield partial(_tab, desk), say(desk, "key_tab", sheets=sheets, glue=not desk.no_glue)
    if sheet and any(not h.mark_only and not h.snip for h in sheet.holes):
        yield _ring, say(desk, "key_hole")
    if sheet and any(h.mark_only for h in sheet.holes):
        yield _cross, say(desk, "key_mark")
    if sheet and sheet.overlaps:
        yield _cross, say(desk, "key_strip")
    # A flat thing, such as a wheel whose blades are folded up, has no outside.
    if not sheet or sheet.letters or sheet.lays or sheet.scores or kinds - {"valley"}:
        yield _side, say(desk, "printed_side")


def _line(pen: Pen, x: float, y: float, stroke: Stroke) -> None:
    pen.line(x, y, x + _SAMPLE, y, stroke.width, stroke.ink, stroke.dash, role="key-line")


def _tab(desk: Desk, pen: Pen, x: float, y: float) -> None:
    pen.polygon([(x, y - 1.6), (x + 1.6, y + 1.7), (x + 8.4, y + 1.7), (x + 10.0, y - 1.6)], Stroke(HAIR, RULE), TAB)
    style = desk.look.strong.at(2.8).grey(0.1)
    pen.text(x + 5.0, y - 0.9, say(desk, "key_letter"), style, align="centre", role="key")


def _ring(pen: Pen, x: float, y: float) -> None:
    pen.ring(x + 5.0, y, 1.4, RING)
    _cross(pen, x, y)


def _cross(pen: Pen, x: float, y: float) -> None:
    pen.line(x + 2.8, y, x + 7.2, y, CROSS.width, CROSS.ink)
    pen.line(x + 5.0, y - 2.0, x + 5.0, y + 2.0, CROSS.width, CROSS.ink)


def _side(pen: Pen, x: float, y: float) -> None:
    """A sheet of card with its printed side up."""
    pen.polygon(
        [(x + 1.0, y - 1.4), (x + 6.4, y - 1.4), (x + 9.0, y + 1.4), (x + 3.6, y + 1.4)], Stroke(THIN, 0.2), 1.0
    )
    for k in range(3):
        pen.line(x + 3.0 + 0.75 * k, y - 0.7 + 0.7 * k, x + 6.2 + 0.75 * k, y - 0.7 + 0.7 * k, HAIR, RULE)
