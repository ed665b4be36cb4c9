"""Nets on pages: the lines of a laid-out net, its key, its scale, and what the manifest says of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, radians, sin
from typing import Any

from packgen.nets.layout import NetSheet, NetSheets
from packgen.nets.net import FlatFace, Hole, Letter
from packgen.page.desk import Desk
from packgen.page.frame import draw_ruler
from packgen.page.look import BOLD, HAIR, MIDDLE, SOFT, THIN
from packgen.page.marks import Line, Page, Point, Stroke
from packgen.page.pen import Pen
from packgen.page.pictured import place_picture
from packgen.page.text import fit
from packgen.pictures.load import aspect
from packgen.reading.models import FaceArt

# Yoshizawa and Randlett's lines: a valley fold dashed, a mountain fold dash-dot; a cut is solid and wide.
VALLEY = Stroke(MIDDLE, 0.15, (2.4, 1.4))
MOUNTAIN = Stroke(MIDDLE, 0.15, (3.2, 1.0, 0.3, 1.0))
CUT = Stroke(BOLD, 0.0)
SCORE = Stroke(HAIR, 0.4, (1.0, 0.8))
_HEAD, _FOOT = 15.0, 17.0


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
    return NetArea(edge, edge + _FOOT, width - 2 * edge, height - 2 * edge - _HEAD - _FOOT)


def net_pages(desk: Desk, title: str, net: NetSheets, art: Sequence[FaceArt] = ()) -> tuple[Page, ...]:
    """A page for each sheet of a net, drawn on its printed side."""
    count = len(net.sheets)
    return tuple(_page(desk, title, net, sheet, k, count, art) for k, sheet in enumerate(net.sheets, 1))


def _page(desk: Desk, title: str, net: NetSheets, sheet: NetSheet, number: int, count: int,
          art: Sequence[FaceArt]) -> Page:  # fmt: skip
    area = net_area(desk)
    width, height = desk.paper
    pen = desk.kit.pen()
    sheets = _say(desk, "sheet_of", number=number, count=count) if count > 1 else ""
    card_head(desk, pen, title, _say(desk, "scale_words", scale=net.scale_text, ratio=net.ratio), sheets)
    inner = desk.kit.pen()
    _draw(desk, inner, sheet, art)
    pen.lost += inner.lost
    pen.group(inner.marks, (1.0, 0.0, 0.0, 1.0, area.x, area.y))
    card_foot(desk, pen)
    return desk.finish(pen, width, height, title)


def card_head(desk: Desk, pen: Pen, title: str, scale: str, more: str = "") -> None:
    """The head of a page of card: the thing's name and the child's on the left, the scale on the right."""
    area = net_area(desk)
    look = desk.look
    top = area.y + area.height + _HEAD
    right = desk.faces.width(scale, look.label.face, look.label.size)
    room = area.width - right - 8.0
    fitted = fit(desk.faces, title, look.heading, room, 9.0, look.small.size)
    pen.lines(area.x, top, fitted.lines, fitted.style, role="title")
    pen.text(area.x + area.width, top - pen.drop(look.heading), scale, look.label, align="right")
    under = " · ".join(part for part in (str(desk.study.study), desk.person, more) if part)
    style = look.small.at(min(3.2, look.small.size)).grey(SOFT)
    small = fit(desk.faces, under, style, area.width, style.leading, 2.2)
    pen.lines(area.x, top - max(fitted.height, look.heading.leading), small.lines[:1], small.style)


def card_foot(desk: Desk, pen: Pen) -> None:
    """The foot of a page of card: the key to the lines, which side is printed, and a ruler of 100 mm."""
    area = net_area(desk)
    style = desk.look.small.at(2.9).grey(SOFT)
    y = area.y - 6.0
    x = area.x
    for key, stroke in (("key_cut", CUT), ("key_mountain", MOUNTAIN), ("key_valley", VALLEY)):
        words = _say(desk, key)
        pen.marks.append(_line((x, y + 1.0), (x + 11.0, y + 1.0), stroke))
        pen.text(x + 12.5, y, words, style)
        x += 12.5 + desk.faces.width(words, style.face, style.size) + 6.0
    pen.text(area.x + area.width, y, _say(desk, "printed_side"), style, align="right")
    draw_ruler(desk.kit, pen, desk.wording.say("", desk.level, "foot_ruler", {}), area.x, y - 8.5)


def _say(desk: Desk, key: str, **values: Any) -> str:
    """A wording of the model sheet, whichever sheet the net is for."""
    return desk.wording.say("model", desk.level, key, values)


def _line(start: Point, end: Point, stroke: Stroke, role: str = "") -> Line:
    return Line(*start, *end, stroke, role)


def _draw(desk: Desk, pen: Pen, sheet: NetSheet, art: Sequence[FaceArt]) -> None:
    drawn = {_plain(str(a.face)): a for a in art}
    for tab in sheet.tabs:
        pen.polygon(tab.points, None, 0.96, role="tab")
    for overlap in sheet.overlaps:
        pen.polygon(overlap.points, None, 0.96, role="overlap")
    for face in sheet.faces:
        found = drawn.get(_plain(face.name)) or drawn.get(_plain(face.name).rstrip(" 0123456789"))
        if found:
            _face_art(desk, pen, face, found)
        else:
            _face_name(desk, pen, face)
    for fold in sheet.folds:
        stroke = MOUNTAIN if fold.kind == "mountain" else VALLEY
        pen.marks.append(_line(fold.start, fold.end, stroke, f"fold-{fold.kind}"))
    for score in sheet.scores:
        pen.polygon(score, SCORE, closed=False, role="score")
    for cut in sheet.cuts:
        pen.polygon(cut.points, CUT, closed=cut.closed, role="cut")
    for hole in sheet.holes:
        _hole(pen, hole)
    for letter in sheet.letters:
        _letter(desk, pen, letter)
    for overlap in sheet.overlaps:
        for x, y in overlap.crosses:
            pen.line(x - 2.0, y, x + 2.0, y, HAIR)
            pen.line(x, y - 2.0, x, y + 2.0, HAIR)


def _plain(name: str) -> str:
    return " ".join(name.lower().replace("-", " ").replace("_", " ").split())


def _letter(desk: Desk, pen: Pen, letter: Letter) -> None:
    style = desk.look.strong.at(3.4 if letter.on == "tab" else 2.8)
    inner = desk.kit.pen()
    inner.text(0.0, -style.size * 0.33, letter.text, style.grey(0.2), align="centre", role="glue-letter")
    _turned(pen, inner, letter.at, letter.turn_deg)


def _turned(pen: Pen, inner: Pen, at: Point, angle: float) -> None:
    c, s = cos(radians(angle)), sin(radians(angle))
    pen.group(inner.marks, (c, s, -s, c, at[0], at[1]))


def _hole(pen: Pen, hole: Hole) -> None:
    x, y = hole.centre
    if hole.mark_only:
        r = hole.across / 2
        pen.line(x - r, y, x + r, y, THIN, role="mark")
        pen.line(x, y - r, x, y + r, THIN, role="mark")
    else:
        pen.ring(x, y, hole.across / 2, Stroke(MIDDLE, 0.0), role="hole")


def _face_name(desk: Desk, pen: Pen, face: FlatFace) -> None:
    """The face's name in small grey letters, upright on the built model, where the face is large enough."""
    style = desk.look.small.at(2.6).grey(SOFT)
    wide = desk.faces.width(face.name, style.face, style.size)
    if face.art.width < wide + 6.0 or face.art.height < 8.0:
        return
    inner = desk.kit.pen()
    inner.text(0.0, -0.9, face.name, style, align="centre", role="face-name")
    _turned(pen, inner, face.label, face.up_deg - 90.0)


def _face_art(desk: Desk, pen: Pen, face: FlatFace, wanted: FaceArt) -> None:
    """A drawing on a face, clipped to it and upright on the built model: as large as fills the face."""
    box = face.art
    inner = desk.kit.pen()
    if wanted.image:
        shape = aspect(wanted.image)
        wide = max(box.width, box.height * shape)
        high = wide / shape
        place_picture(desk, inner, wanted.image, (box.width - wide) / 2, (box.height - high) / 2, wide, high,
                      about=wanted.image_said, framed=False)  # fmt: skip
    elif wanted.texture:
        _texture(inner, str(wanted.texture), box.width, box.height)
    pen.group(inner.marks, box.matrix, box.outline)


def _texture(pen: Pen, kind: str, width: float, height: float) -> None:
    """A ruled texture: `bricks`, `boards` or `tiles`, else level lines."""
    thin = (HAIR, 0.5)
    rows = max(1, round(height / 5.0))
    step = height / rows
    for k in range(rows + 1):
        pen.line(0.0, k * step, width, k * step, *thin)
    if kind in ("bricks", "brick", "tiles", "boards"):
        run = step * (2.0 if kind.startswith("brick") else 1.0 if kind == "tiles" else 6.0)
        for k in range(rows):
            offset = run / 2 if kind.startswith("brick") and k % 2 else 0.0
            x = offset
            while x < width:
                pen.line(x, k * step, x, (k + 1) * step, *thin)
                x += run


def net_facts(desk: Desk, title: str, solid: str, net: NetSheets) -> dict[str, Any]:
    """What the manifest says: every line in mm from the page's lower left corner, pages from 1 in the sheet."""
    area = net_area(desk)

    def at(points: Sequence[Point]) -> list[list[float]]:
        return [[round(x + area.x, 4), round(y + area.y, 4)] for x, y in points]

    facts: dict[str, Any] = {"title": title, "solid": solid, "scale": net.scale_text, "ratio": net.ratio}
    pages = list(enumerate(net.sheets, 1))
    facts["faces"] = [{"page": k, "name": f.name, "points_mm": at(f.points)} for k, s in pages for f in s.faces]
    facts["folds"] = [{"page": k, "kind": f.kind, "points_mm": at((f.start, f.end))} for k, s in pages for f in s.folds]
    facts["cuts"] = [{"page": k, "closed": c.closed, "points_mm": at(c.points)} for k, s in pages for c in s.cuts]
    facts["tabs"] = [
        {"page": k, "letter": t.letter, "on": t.on_face, "under": t.under, "points_mm": at(t.points)}
        for k, s in pages
        for t in s.tabs
    ]
    return facts
