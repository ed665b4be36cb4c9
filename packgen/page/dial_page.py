"""The shadow clock on card: its plate with the hour lines of a latitude, the gnomon to fold, and the caution."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, radians, sin
from typing import Any

from packgen.page.blocks import Boxed, Bullets, Stack, draw_stack, heading
from packgen.page.desk import Desk
from packgen.page.look import HEAVY, MIDDLE, SOFT
from packgen.page.marks import Page, Point
from packgen.page.net_pages import CUT, MOUNTAIN, VALLEY, NetArea, card_foot, card_head, net_area
from packgen.page.pen import Pen
from packgen.page.text import fit
from packgen.trials.dial import Dial, FlatGnomon, HourLine, dial, flat_gnomon

_SHARE = 0.54  # how much of the area's height the plate takes; the gnomon and the steps have the rest
_WIDEST = 175.0
_BETWEEN = 7.0
_STRIP = 13.0  # along the lower edge of the plate, for words that no line may cross
_LEAST_STEPS = 62.0


@dataclass(frozen=True, slots=True)
class DialSheet:
    """The page of a dial, and what the manifest says of it."""

    page: Page
    facts: dict[str, Any]


def dial_sheet(desk: Desk, title: str, latitude: float, offset: float = 0.0) -> DialSheet:
    """The page for a latitude in degrees. Raises ValueError within 3 degrees of the equator, where there is no dial."""
    area = net_area(desk)
    deep = area.height * _SHARE
    made = dial(latitude, offset, min(area.width, _WIDEST), deep - _STRIP)
    low = (area.x + (area.width - made.width) / 2, area.y + area.height - made.depth)
    under = area.height - deep - _BETWEEN
    gnomon = flat_gnomon(made, area.width - _LEAST_STEPS, under)
    high = max(y for _, y in gnomon.outline)
    at = (area.x, area.y + under - high)
    pen = desk.kit.pen()
    card_head(desk, pen, title, desk.say("dial_for", latitude=f"{abs(latitude):.1f}", southern=made.southern))
    _plate(desk, pen, made, low, gnomon.base)
    _gnomon(desk, pen, gnomon, at)
    left = area.x + max(x for x, _ in gnomon.outline) + 6.0
    _steps(desk, pen, made, NetArea(left, area.y, area.x + area.width - left, under))
    card_foot(desk, pen)
    return DialSheet(desk.finish(pen, *desk.paper, title), _facts(title, made, low, gnomon, at))


def _moved(points: Sequence[Point], by: Point) -> list[Point]:
    return [(x + by[0], y + by[1]) for x, y in points]


def _corners(made: Dial) -> list[Point]:
    """The plate's corners: the dial's own square and the strip below it."""
    return [(0.0, -_STRIP), (made.width, -_STRIP), (made.width, made.depth), (0.0, made.depth)]


def _plate(desk: Desk, pen: Pen, made: Dial, low: Point, base: float) -> None:
    """The plate with its hour lines, and a thick line as long as the gnomon's base where that is to stand."""
    pen.polygon(_moved(_corners(made), low), CUT, role="cut")
    (foot,) = _moved([made.foot], low)
    for line in made.lines:
        start, end = _moved([line.start, line.end], low)
        noon = abs(line.angle_deg) < 1e-6
        pen.line(*(foot if noon else start), *end, MIDDLE, 0.0, role="hour-line")
        _hour(desk, pen, line, low)
    pen.line(*foot, foot[0], foot[1] + base, HEAVY, 0.0, role="gnomon-line")
    pen.ring(*foot, 0.9, fill=0.0, role="dial-foot")
    _on_plate(desk, pen, made, low)


def _hour(desk: Desk, pen: Pen, line: HourLine, low: Point) -> None:
    """The hour's number just beyond the end of its line."""
    style = desk.look.strong.at(4.6)
    angle = radians(line.angle_deg)
    x, y = low[0] + line.end[0] + 5.0 * sin(angle), low[1] + line.end[1] + 5.0 * cos(angle)
    pen.text(x, y - style.size * 0.34, str(line.hour), style, align="centre", role="hour")


def _on_plate(desk: Desk, pen: Pen, made: Dial, low: Point) -> None:
    """In the strip along the lower edge: the caution, and which way the plate points."""
    middle = low[0] + made.width / 2
    style = desk.look.label.at(3.6)
    words = fit(desk.faces, desk.say("dial_care"), style, made.width - 12.0, style.leading, 2.4)
    pen.lines(middle - made.width / 2, low[1] - 0.6, words.lines, words.style, align="centre", width=made.width)
    small = desk.look.small.at(3.2).grey(SOFT)
    text = desk.say("dial_points", southern=made.southern)
    pen.text(middle, low[1] - _STRIP + 3.2, text, small, align="centre")
    half = desk.faces.width(text, small.face, small.size) / 2 + 4.0
    for side in (-half, half):
        pen.arrow(middle + side, low[1] - _STRIP + 1.6, middle + side, low[1] - _STRIP + 7.4, MIDDLE, 0.2)


def _gnomon(desk: Desk, pen: Pen, flat: FlatGnomon, at: Point) -> None:
    """The gnomon's outline, the style to fold away and the tabs to fold out."""
    for tab in flat.tabs:
        pen.polygon(_moved(tab, at), None, 0.96, role="tab")
    for half in flat.halves:
        foot, heel, _ = _moved(half, at)
        pen.path((("m", *foot), ("l", *heel)), VALLEY, role="fold-valley")
    start, end = _moved(flat.style, at)
    pen.path((("m", *start), ("l", *end)), MOUNTAIN, role="fold-mountain")
    pen.polygon(_moved(flat.outline, at), CUT, role="cut")
    pen.ring(*start, 0.9, fill=0.0, role="dial-foot")


def _steps(desk: Desk, pen: Pen, made: Dial, area: NetArea) -> None:
    """How to build and set the clock, beside the gnomon, as large as fits; the caution last."""
    style = desk.look.small
    told = desk.say_lines("dial_steps", southern=made.southern)
    if desk.no_glue:
        told = (*told, desk.wording.say("model", desk.level, "no_glue", {}))
    while True:
        steps = Bullets(told, "number", style, spread=0.2)
        care = Boxed(Bullets(desk.say_lines("dial_cautions"), "dot", style, spread=0.1), "caution", desk.say("care"))
        stack = Stack((heading(desk.say("dial_build")), steps, care), gap=2.0)
        if stack.measure(desk.kit, area.width).least <= area.height or style.size < 2.2:
            break
        style = style.at(style.size * 0.95)
    draw_stack(desk.kit, pen, stack.blocks, area.x, area.y + area.height, area.width, area.height)


def _facts(title: str, made: Dial, low: Point, flat: FlatGnomon, at: Point) -> dict[str, Any]:
    """What the manifest says: plate, gnomon and hour lines in mm from the page's lower left corner."""

    def on(points: Sequence[Point], by: Point) -> list[list[float]]:
        return [[round(x, 4), round(y, 4)] for x, y in _moved(points, by)]

    faces = [("plate", _corners(made), low), *((f"gnomon {k}", half, at) for k, half in enumerate(flat.halves, 1))]
    outlines = ((_corners(made), low), (flat.outline, at))
    return {
        "title": title, "solid": "shadow-clock", "scale": "true size", "ratio": 1.0, "latitude_deg": made.style_deg,
        "faces": [{"page": 1, "name": name, "points_mm": on(points, by)} for name, points, by in faces],
        "folds": [{"page": 1, "kind": "mountain", "points_mm": on(flat.style, at)},
                  *({"page": 1, "kind": "valley", "points_mm": on(half[:2], at)} for half in flat.halves)],
        "cuts": [{"page": 1, "closed": True, "points_mm": on(points, by)} for points, by in outlines],
        "tabs": [{"page": 1, "letter": "", "on": f"gnomon {k}", "under": False, "points_mm": on(tab, at)}
                 for k, tab in enumerate(flat.tabs, 1)],
        "hour_lines": [{"hour": line.hour, "angle_deg": round(line.angle_deg, 4),
                        "points_mm": on((line.start, line.end), low)} for line in made.lines],
    }  # fmt: skip
