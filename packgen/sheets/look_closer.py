"""Looking closer at a work, one thing a page: details to find, tones to judge, the lines its parts lie along."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from packgen.page.artwork import Box, centred, enough_in, frame_of, largest, subject_of
from packgen.page.blocks import Block, Bullets, Prose, draw_stack
from packgen.page.composition import composition, kinds_of
from packgen.page.desk import Desk, Laid, Option, Paint, Section, Sheet
from packgen.page.look import BOLD, RULE, THIN
from packgen.page.marks import Stroke
from packgen.page.pen import Pen
from packgen.page.pictured import place_picture
from packgen.page.text import wrap
from packgen.page.tones import tones_page
from packgen.pictures.closer import details
from packgen.pictures.load import Crop, aspect, picture_info
from packgen.reading.models import Work

SHEET = Sheet(
    title="Look closer",
    about="Four enlarged details to find in the work; for the older its tones and its lines of composition too.",
    per="work",
    options=(
        Option("tones", "", "a page with a strip of so many tones, 0 for none; left out: as suits the level"),
        Option("lines", "", "a page with lines of composition; left out: as suits level and work", ("yes", "no")),
        Option("most", "", "at most this many works"),
        Option("only", "", "only these works, by id or title"),
    ),
)

_TONES = {"first": 0, "younger": 0, "older": 5, "upper": 7}
_MOST_TONES = 9
_LINES = ("older", "upper")
_FAINT = {"first": 0.15, "younger": 0.5, "older": 0.6, "upper": 0.6}  # how far the copy is lightened
_COUNT = 4
_GUTTER = 4.0
_ENJOYED = 40.0  # mm; a detail as wide as this needs to be no wider
_LEAST_PX = 150  # of an enlarged detail's shorter side, where the picture has so many
_COARSE = 0.26  # but no larger a part of the picture's short side than this, however few pixels it has
_ROOM = 1.25  # a detail is shown with so much round it
_WHOLE = 0.7  # a part with more of the picture's width or height is no detail


@dataclass(frozen=True, slots=True)
class _Detail:
    """A part of the picture to find, with its name if the study gives one."""

    crop: Crop
    name: str = ""


@dataclass(frozen=True, slots=True)
class _Places:
    """Where the details and the copy lie: the details in a row over it, or in a column beside it."""

    cells: tuple[Box, ...]
    copy: Box


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The page to find details on, and for the older those of tones and of lines of composition."""
    work = desk.item.subject
    assert isinstance(work, Work) and work.image
    if not enough_in(desk, work, SHEET.title):
        return ()
    found = _details(desk, work)
    sections: list[Section] = []
    if len(found) > 1:
        head = desk.head(desk.say("title", count=len(found)), subject_of(desk, work), "eye")
        sections.append(Section(head, paint=_finding(desk, work, found)))
    tones = min(desk.count("tones", _TONES[desk.level]), _MOST_TONES)
    page = tones_page(desk, work, tones) if tones >= 2 else None
    if page:
        head = desk.head(desk.say("title_tones"), subject_of(desk, work), "eye", date=not sections)
        sections.append(Section(head, paint=page))
    said = str(desk.option("lines") or "")
    kinds = kinds_of(desk, work, said == "yes") if said == "yes" or (not said and desk.level in _LINES) else ()
    if kinds:
        head = desk.head(desk.say("title_lines"), subject_of(desk, work), "eye", date=not sections)
        sections.append(Section(head, composition(desk, work, head, kinds)))
    pages = desk.sections(sections, name=str(work.title)) if sections else ()
    title = f"{SHEET.title}: {work.title}"
    return (Laid("look-closer", title, pages, week=desk.item.week, colour=True),) if pages else ()


# Details to find


def _details(desk: Desk, work: Work) -> list[_Detail]:
    """The study's own details, and as many of the most busy parts as are wanting, none over another."""
    assert work.image
    shape = aspect(work.image)
    info = picture_info(work.image)
    least = 0.0 if info.vector else _LEAST_PX / max(1, min(info.width_px, info.height_px))
    found: list[_Detail] = []
    for own in work.details[:_COUNT]:
        crop = _squared((own.left, own.top, own.width, own.height), shape, least)
        found.append(_Detail(crop, str(own.name)))
    for part in details(desk.store, work.image, 2 * _COUNT):
        crop = _squared(part, shape, least, 1.0)
        if len(found) < _COUNT and not any(_overlap(crop, other.crop) for other in found):
            found.append(_Detail(crop))
    return [detail for detail in found if max(detail.crop[2], detail.crop[3]) < _WHOLE]


def _squared(part: Crop, shape: float, least: float, room: float = _ROOM) -> Crop:
    """A square round a part, with some room, at least `least` of the picture's short side and all within it."""
    left, top, wide, high = part
    short = min(shape, 1.0)
    side = max(wide * shape * room, high * room, min(_COARSE, least) * short)
    side = min(side, short)
    new_wide, new_high = side / shape, side
    at = left + wide / 2 - new_wide / 2, top + high / 2 - new_high / 2
    return max(0.0, min(1 - new_wide, at[0])), max(0.0, min(1 - new_high, at[1])), new_wide, new_high


def _overlap(a: Crop, b: Crop) -> bool:
    across = min(a[0] + a[2], b[0] + b[2]) - max(a[0], b[0])
    down = min(a[1] + a[3], b[1] + b[3]) - max(a[1], b[1])
    return across > 0 and down > 0


def _finding(desk: Desk, work: Work, found: list[_Detail]) -> Paint:
    """The page with the details, and the copy to mark them on."""
    assert work.image
    path = work.image
    shape = aspect(path)

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        marker = "ring" if desk.level in ("first", "younger") else "box"
        steps = desk.say_lines("steps", count=len(found))
        words: Block = Bullets(steps, marker, "body", spread=0.12) if len(steps) > 1 else Prose(steps[0], "body")
        top = draw_stack(desk.kit, pen, [words], x, y + height, width, height) - desk.look.gap
        live = Box(x, y, width, top - y)
        names = [detail.name for detail in found] if desk.level in ("first", "younger") else ["_"]
        places = _places(live, shape, len(found), _caption(desk, names), _left_handed(desk))
        for k, (detail, cell) in enumerate(zip(found, places.cells, strict=True)):
            _cell(desk, pen, work, detail, "ABCD"[k], cell)
        _names(desk, pen, names, places.cells)
        copy = places.copy
        place_picture(desk, pen, path, copy.x, copy.y, copy.width, copy.height, lighten=_FAINT[desk.level],
                      grey=None if desk.level == "first" else True, about=work.image_said,
                      name=f'"{work.title}"')  # fmt: skip

    return paint


def _left_handed(desk: Desk) -> bool:
    return bool(desk.child and desk.child.left_handed)


def _caption(desk: Desk, names: list[str]) -> Callable[[float], float]:
    """The height under a detail of that width: for its name, or for a line to write on."""
    small = desk.look.small

    def high(side: float) -> float:
        if not any(names):
            return 0.0
        if desk.level not in ("first", "younger"):
            return small.leading + 1.5
        return max(len(wrap(desk.faces, name, small, side)) for name in names) * small.leading + 1.0

    return high


def _places(live: Box, shape: float, count: int, caption: Callable[[float], float], lefty: bool) -> _Places:
    """The arrangement with the larger copy, of those whose details are large enough to enjoy."""
    found: list[_Places] = []
    for side in (0.16, 0.2, 0.235):
        row = min((live.width - _GUTTER * (count - 1)) / count, live.height * side + 6.0)
        found.append(_over(live, shape, count, row, caption(row)))
        column = live.width * side * 1.2
        column = min((live.height - _GUTTER * (count - 1)) / count - caption(column), column)
        beside = _beside(live, shape, count, column, caption(column), lefty) if column >= 20.0 else None
        found += [beside] if beside else []
    return max(found, key=lambda p: p.copy.width * p.copy.height * min(1.0, p.cells[0].width / _ENJOYED))


def _over(live: Box, shape: float, count: int, side: float, caption: float) -> _Places:
    """Details in a row over the copy."""
    gap = (live.width - side * count) / max(1, count - 1)
    top = live.y + live.height
    cells = tuple(Box(live.x + k * (side + gap), top - side - caption, side, side + caption) for k in range(count))
    rest = Box(live.x, live.y, live.width, live.height - side - caption - _GUTTER)
    return _Places(cells, centred(shape, rest, 0.0))


def _beside(live: Box, shape: float, count: int, side: float, caption: float, lefty: bool) -> _Places | None:
    """Details in a column beside the copy, on the side of the hand that does not draw; None if it is too high."""
    if (side + caption) * count + _GUTTER * (count - 1) > live.height + 1e-6:
        return None
    wide, high = largest(shape, live.width - side - _GUTTER, live.height)
    step = (max(high, (side + caption) * count) - side - caption) / max(1, count - 1)
    if step < side + caption + _GUTTER or step * (count - 1) + side + caption > live.height + 1e-6:
        step = side + caption + _GUTTER
    top = live.y + live.height
    spare = (live.width - side - _GUTTER - wide) / 2
    at, copy = (
        (live.x + live.width - side - spare, live.x + spare)
        if lefty
        else (live.x + spare, live.x + spare + side + _GUTTER)
    )
    cells = tuple(Box(at, top - k * step - side - caption, side, side + caption) for k in range(count))
    return _Places(cells, Box(copy, top - high, wide, high))


def _cell(desk: Desk, pen: Pen, work: Work, detail: _Detail, letter: str, box: Box) -> None:
    """One detail with its letter, and under it its name or a line to write what it is."""
    assert work.image
    side = box.width
    low = box.y + box.height - side
    place_picture(desk, pen, work.image, box.x, low, side, side, crop=detail.crop, framed=False, warn=False,
                  name=detail.name or f"{letter}")  # fmt: skip
    frame_of(pen, Box(box.x, low, side, side), BOLD, 0.2)
    style = desk.look.label
    badge = style.size * 0.85
    pen.ring(box.x + badge * 1.05, low + side - badge * 1.05, badge, Stroke(THIN, 0.2), 1.0, role="badge")
    drop = desk.faces.metrics(style.face).cap * style.size / 2
    pen.text(box.x + badge * 1.05, low + side - badge * 1.05 - drop, letter, style, align="centre")


def _names(desk: Desk, pen: Pen, names: list[str], cells: tuple[Box, ...]) -> None:
    """The details' names under them, or lines to write them on."""
    if desk.level not in ("first", "younger"):
        for box in cells:
            pen.line(box.x, box.y + 0.6, box.x + box.width, box.y + 0.6, THIN, RULE, role="baseline")
        return
    small = desk.look.small
    for name, box in zip(names, cells, strict=True):
        lines = wrap(desk.faces, name, small, box.width)
        pen.lines(box.x, box.y + box.height - box.width - 0.6, lines, small, align="centre", width=box.width)
