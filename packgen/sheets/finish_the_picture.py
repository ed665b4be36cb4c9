"""A work of which only a part is printed, the rest for the child: outlines, a half, a window, a fading edge."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, hypot

from packgen.page.artwork import (
    Box,
    Lining,
    centred,
    draw_line_art,
    enough_in,
    frame_of,
    lines_of,
    subject_of,
    turns,
    underlay,
)
from packgen.page.blocks import Block, Bullets, Lines, Prose, Stack, draw_stack, gap_of
from packgen.page.desk import Desk, Laid, Option, Sheet
from packgen.page.frame import Head
from packgen.page.look import HAIR, MIDDLE, RULE, THIN, TINT
from packgen.page.marks import Line, Mark, Stroke
from packgen.page.pen import Pen
from packgen.page.pictured import place_picture
from packgen.page.sideways import sideways, upright
from packgen.pictures.finish import blank_window, kept_half, kept_middle
from packgen.pictures.line_art import LineArt
from packgen.pictures.load import WHOLE, Crop, aspect
from packgen.pictures.shapes import flattened
from packgen.reading.models import Work

SHEET = Sheet(
    title="Finish the picture",
    about="A part of the work is printed; the rest is outlines, faint lines, squares or blank paper to carry it on.",
    per="work",
    options=(
        Option("form", "", "what is printed of the work; left out: as suits the level",
               ("outline", "half", "window", "gap", "faded-edge")),
        Option("rest", "", "what stands where nothing is printed; left out: as suits the level",
               ("outlines", "faint", "squares", "blank")),
        Option("most", "", "at most this many works"),
        Option("only", "", "only these works, by id or title"),
    ),
)  # fmt: skip

_FORM = {"first": "outline", "younger": "half", "older": "window", "upper": "faded-edge"}
_REST = {"first": "outlines", "younger": "outlines", "older": "blank", "upper": "blank"}
_DETAIL = {"first": 1, "younger": 2, "older": 3, "upper": 3}
_LINING = {
    "first": Lining(1.1, 0.0, swell=0.3, frame=False), "younger": Lining(0.6, 0.1, swell=0.1, frame=False),
    "older": Lining(MIDDLE, 0.1, frame=False), "upper": Lining(THIN, 0.1, frame=False),
}  # fmt: skip
_FAINT = Lining(HAIR, 0.8, frame=False)
_SQUARES = 4  # along the short side
_WINDOW = {"first": 0.55, "younger": 0.5, "older": 0.46, "upper": 0.3}
_LONG = 1.8
_GAP = 0.42
_FADE = 0.15  # of the picture's sides, in which it fades to nothing
_EVEN = 0.36  # a half with at least so much of all lines is as good as the other
_LEAST_SMALL, _MOST_SMALL = 20.0, 70.0  # mm, the height of one under the outlines
_SMALL = 34.0  # mm, the longer side of the small picture beside outlines to colour


@dataclass(frozen=True, slots=True)
class _Part:
    """Which part of the work is printed, and the parts left to the child; it may fade away outside `kept` of it."""

    shown: Crop | None
    rest: tuple[Crop, ...]
    kept: Crop | None = None


def lay_out(desk: Desk) -> tuple[Laid, ...]:
    """The page to draw on, sideways if the picture is wide."""
    work = desk.item.subject
    assert isinstance(work, Work) and work.image
    if not enough_in(desk, work, SHEET.title):
        return ()
    form = str(desk.option("form") or _FORM[desk.level])
    head = desk.head(desk.say(f"title_{form}".replace("-", "_")), subject_of(desk, work), "half")
    turned = sideways(desk)
    shape = aspect(work.image)
    wide = [centred(shape, _room(at, head, form, work)).width for at in (desk, turned)]
    at = turned if turns(*wide) else desk

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        _paint(at, pen, work, form, Box(x, y, width, height))

    page = at.free_page(paint, head, name=str(work.title))
    pages = upright((page,)) if at is turned else (page,)
    return (Laid("finish-the-picture", f"{SHEET.title}: {work.title}", pages, week=desk.item.week,
                 colour=form != "outline"),)  # fmt: skip


def _words(desk: Desk, form: str) -> list[Block]:
    """What to do, and what to talk about when it is done."""
    steps = desk.say_lines(f"steps_{form}".replace("-", "_"))
    marker = "ring" if desk.level in ("first", "younger") else "box"
    if len(steps) > 1:
        return [Bullets(steps, marker, "body", spread=0.12)]
    return [Prose(step, "body") for step in steps]


def _small(form: str, work: Work) -> tuple[float, float]:
    """Width and height of the small picture beside the words; none but for outlines to colour."""
    assert work.image
    box = centred(aspect(work.image), Box(0, 0, _SMALL, _SMALL))
    return (box.width, box.height) if form == "outline" else (0.0, 0.0)


def _room(at: Desk, head: Head, form: str, work: Work) -> Box:
    """The place for the picture under the words."""
    small = _small(form, work) if _words(at, form) else (0.0, 0.0)
    width = at.live_width - (small[0] + 5.0 if small[0] else 0.0)
    blocks = _words(at, form)
    words = sum(b.measure(at.kit, width).least for b in blocks) + sum(gap_of(at.kit, b) for b in blocks[1:])
    over = max(words, small[1]) + at.look.gap if blocks else 0.0
    return Box(0, 0, at.live_width, at.room(head, 0) - over)


def _paint(desk: Desk, pen: Pen, work: Work, form: str, live: Box) -> None:
    assert work.image
    told = _words(desk, form)
    if not told:
        _alone(desk, pen, work, form, live)
        return
    small = _small(form, work)
    words = live.width - (small[0] + 5.0 if small[0] else 0.0)
    lefty = bool(desk.child and desk.child.left_handed)
    top = live.y + live.height
    left = live.x + (small[0] + 5.0 if small[0] and lefty else 0.0)
    foot = draw_stack(desk.kit, pen, told, left, top, words, live.height)
    if small[0]:
        at = live.x if lefty else live.x + live.width - small[0]
        place_picture(desk, pen, work.image, at, top - small[1], *small, about=work.image_said, warn=False)
        foot = min(foot, top - small[1])
    place = Box(live.x, live.y, live.width, foot - desk.look.gap - live.y)
    box = centred(aspect(work.image), place)
    under = _after(desk)
    left_over = place.height - box.height - desk.look.gap
    if under and left_over >= sum(b.measure(desk.kit, live.width).least for b in under):
        box = centred(aspect(work.image), place, 0.0)
        draw_stack(desk.kit, pen, under, live.x, live.y + left_over, live.width, left_over)
    _picture(desk, pen, work, form, box)


def _alone(desk: Desk, pen: Pen, work: Work, form: str, live: Box) -> None:
    """The picture high on the page where nothing need be said, and under it the small one if that has room."""
    assert work.image
    box = centred(aspect(work.image), live, 0.0)
    left_over = live.height - box.height - 1.5 * desk.look.gap
    if form == "outline" and left_over >= _LEAST_SMALL:
        small = centred(aspect(work.image), Box(live.x, live.y, live.width, min(left_over, _MOST_SMALL)))
        place_picture(desk, pen, work.image, small.x, small.y, small.width, small.height,
                      about=work.image_said, warn=False)  # fmt: skip
    _picture(desk, pen, work, form, box)


def _after(desk: Desk) -> list[Block]:
    """What to write under the picture, where its shape leaves room."""
    return [Stack((Prose(ask, "strong", tight=True), Lines(1, gap=0.3))) for ask in desk.say_lines("after")[:1]]


def _picture(desk: Desk, pen: Pen, work: Work, form: str, box: Box) -> None:
    """The printed part, and what stands in the rest."""
    assert work.image
    part = _part(desk, work, form)
    if part.shown:
        at = box.part(part.shown)
        place_picture(desk, pen, work.image, at.x, at.y, at.width, at.height, crop=part.shown, fade=part.kept,
                      framed=False, about=work.image_said, name=f'"{work.title}"')  # fmt: skip
    places = [box.part(crop) for crop in part.rest]
    rest = str(desk.option("rest") or _REST[desk.level])
    if form == "gap":
        for place in places:
            pen.box(place.x, place.y, place.width, place.height, fill=1.0, role="gap")
            frame_of(pen, place, THIN, RULE)
    if rest == "squares":
        _squares(pen, box, places)
    elif rest != "blank" or form == "outline":
        art = lines_of(desk, work, _DETAIL[desk.level])
        for crop in part.rest if rest == "outlines" else ():
            underlay(desk, pen, work, box.part(crop), crop)
        draw_line_art(pen, art, box, _FAINT if rest == "faint" else _LINING[desk.level], only=places)
    frame_of(pen, box, _LINING[desk.level].width if form == "outline" else THIN, 0.0 if form == "outline" else RULE)


def _part(desk: Desk, work: Work, form: str) -> _Part:
    """What is printed and what is not, for each form."""
    assert work.image
    store, path = desk.store, work.image
    if form == "outline":
        return _Part(None, (WHOLE,))
    if form == "half":
        half = _across(kept_half(store, path), aspect(path))
        half = _by_hand(desk, half, lines_of(desk, work, _DETAIL[desk.level]))
        return _Part(half, (_other(half),))
    if form == "gap":
        return _Part(WHOLE, (blank_window(store, path, _GAP),))
    kept = kept_middle(store, path, _WINDOW[desk.level])
    if form == "window":
        return _Part(kept, _around(kept))
    shown = _wider(kept)
    inner = tuple((kept[i] - shown[i]) / shown[i + 2] for i in (0, 1))
    return _Part(shown, _around(kept), (inner[0], inner[1], kept[2] / shown[2], kept[3] / shown[3]))


def _across(half: Crop, shape: float) -> Crop:
    """The half, but of a very wide or tall picture never one cut off along its length."""
    if shape > _LONG and half[2] == 1.0:
        return 0.0, 0.0, 0.5, 1.0
    if shape < 1 / _LONG and half[3] == 1.0:
        return 0.0, 0.0, 1.0, 0.5
    return half


def _wider(part: Crop) -> Crop:
    """The part with room round it to fade away in, as far as the picture goes."""
    left, top = max(0.0, part[0] - _FADE), max(0.0, part[1] - _FADE)
    right, low = min(1.0, part[0] + part[2] + _FADE), min(1.0, part[1] + part[3] + _FADE)
    return left, top, right - left, low - top


def _other(half: Crop) -> Crop:
    """The other half."""
    left, top, wide, high = half
    if wide < 1:
        return (wide if left == 0 else 0.0, 0.0, 1 - wide, 1.0)
    return (0.0, high if top == 0 else 0.0, 1.0, 1 - high)


def _around(part: Crop) -> tuple[Crop, ...]:
    """What lies over, under and on both sides of a part."""
    left, top, wide, high = part
    right, low = left + wide, top + high
    sides = ((0.0, 0.0, 1.0, top), (0.0, low, 1.0, 1 - low), (0.0, top, left, high), (right, top, 1 - right, high))
    return tuple(side for side in sides if side[2] > 1e-6 and side[3] > 1e-6)


def _by_hand(desk: Desk, half: Crop, art: LineArt) -> Crop:
    """The half on the side of the hand that does not draw, where both have about as much to see in them."""
    left, _, wide, _ = half
    lefty = bool(desk.child and desk.child.left_handed)
    if wide == 1.0 or (left > 0) == lefty:
        return half
    lengths = [0.0, 0.0]
    cut = wide if left == 0 else left
    for steps in (*art.outlines[1:], *art.ink):
        for line in flattened(steps, 3):
            for (x0, y0), (x1, y1) in pairwise(line):
                lengths[(x0 + x1) / 2 > cut] += hypot(x1 - x0, y1 - y0)
    share = lengths[0] / (sum(lengths) or 1.0)
    return _other(half) if _EVEN <= share <= 1 - _EVEN else half


def _squares(pen: Pen, box: Box, places: Sequence[Box]) -> None:
    """Faint squares over the rest, to carry proportions on by."""
    side = min(box.width, box.height) / _SQUARES
    lines: list[Mark] = []
    for k in range(1, ceil(box.width / side - 1e-6)):
        lines.append(Line(box.x + k * side, box.y, box.x + k * side, box.y + box.height, Stroke(HAIR, TINT)))
    for k in range(1, ceil(box.height / side - 1e-6)):
        lines.append(Line(box.x, box.y + k * side, box.x + box.width, box.y + k * side, Stroke(HAIR, TINT)))
    for place in places:
        pen.group(lines, (1, 0, 0, 1, 0, 0), place.corners)
