"""The lines a picture is built on: faint copies of it, each under other lines, to go over what lies along them.

A work with a vanishing point has a page of its own kind: the child draws along the edges that run into depth and sees
where they meet; for the older the eye line and the point are printed, for the oldest neither.
"""

from __future__ import annotations

from packgen.page.artwork import Box, largest
from packgen.page.blocks import Art, Block, Bullets, Lines, Prose, Stack, gap_of
from packgen.page.desk import Desk
from packgen.page.frame import Head
from packgen.page.look import THIN
from packgen.page.marks import Stroke
from packgen.page.pen import Pen
from packgen.page.pictured import place_picture
from packgen.page.text import fit
from packgen.pictures.closer import Segment, built_on, composition_lines, eye_line
from packgen.pictures.load import aspect
from packgen.reading.models import Work

_FAINT = 0.68  # how far a copy is lightened
_GUTTER = 4.0
_DOT = 1.1  # mm, the radius of the point where lines meet
_SECOND = ("thirds", "diagonals", "middle")  # beside a pattern a picture follows, one to choose between
_TWIN = {"golden": "thirds", "thirds": "golden"}  # nearly the same lines
_NAMES = {"golden section": "golden", "halves": "middle"}  # as a study writes them, and as the pictures know them


def kinds_of(desk: Desk, work: Work, asked: bool) -> tuple[str, ...]:
    """The kinds of lines that say something about a work: those the study names, or those its picture follows.

    At least the two it follows most if they are asked for; none if it follows none. One has another beside it to choose
    between. A work with a vanishing point has that alone, unless the study names more.
    """
    assert work.image
    if work.composition is not None:
        named = tuple(_NAMES.get(str(kind), str(kind)) for kind in work.composition)
    else:
        named = built_on(desk.store, work.image, 2 if asked else 0)
    if work.vanishing:
        return (*(named if work.composition is not None else ()), "vanishing")
    if len(named) != 1:
        return named
    return (*named, next(kind for kind in _SECOND if kind not in (named[0], _TWIN.get(named[0]))))


def composition(desk: Desk, work: Work, head: Head, kinds: tuple[str, ...]) -> tuple[Block, ...]:
    """A faint copy for each kind of lines, and what to do with them."""
    assert work.image
    asks: list[Block] = [
        Stack((Prose(ask, "strong", tight=True), Lines(1, 4, gap=0.3)))
        for ask in desk.say_lines("asks_lines", vanishing="vanishing" in kinds, inside=_inside(work))
    ]
    others = [kind for kind in kinds if kind != "vanishing"]
    steps = desk.say_lines("steps_lines", others=others, vanishing="vanishing" in kinds, inside=_inside(work))
    words: list[Block] = [Bullets(steps, "box", "body", spread=0.12)]
    words += [Prose(note, "body") for note in desk.say_lines("note_lines", others=others)]
    used = sum(b.measure(desk.kit, desk.live_width).least + gap_of(desk.kit, b) for b in [*words, *asks])
    room = desk.room(head, 0) - used - desk.look.gap
    shape = aspect(work.image)
    caption = desk.look.label.leading + 1.0
    across, down, wide, high = max(
        (_sized(desk.live_width, room, shape, across, -(-len(kinds) // across), caption)
         for across in range(1, len(kinds) + 1)),
        key=lambda found: found[2],
    )  # fmt: skip

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        step = (width - wide * across) / (across + 1)
        for k, kind in enumerate(kinds):
            left = x + step + (k % across) * (wide + step)
            low = y + height - (k // across + 1) * (high + caption) - (k // across) * _GUTTER
            _overlay(desk, pen, work, kind, Box(left, low, wide, high))

    total = down * (high + caption) + _GUTTER * (down - 1)
    return (*words, Art(paint, total, total), *asks)


def _sized(width: float, room: float, shape: float, across: int, down: int, caption: float
           ) -> tuple[int, int, float, float]:  # fmt: skip
    cell = (width - _GUTTER * (across + 1)) / across, (room - _GUTTER * (down - 1)) / down - caption
    return (across, down, *largest(shape, *cell))


def _inside(work: Work) -> bool:
    """True if the lines into depth meet within the picture."""
    at = work.vanishing
    return at is not None and 0 <= at.left <= 1 and 0 <= at.top <= 1


def _lines(desk: Desk, work: Work, kind: str) -> tuple[Segment, ...]:
    if kind != "vanishing":
        return composition_lines(kind)
    assert work.vanishing
    up = 1 - work.vanishing.top
    return (eye_line(up),) if desk.level != "upper" and 0 < up < 1 else ()


def _overlay(desk: Desk, pen: Pen, work: Work, kind: str, box: Box) -> None:
    """A faint copy under lines of composition, with their name over it."""
    assert work.image
    place_picture(desk, pen, work.image, box.x, box.y, box.width, box.height, lighten=_FAINT, grey=True, warn=False,
                  about=work.image_said)  # fmt: skip
    for (x1, y1), (x2, y2) in _lines(desk, work, kind):
        pen.line(box.x + x1 * box.width, box.y + y1 * box.height, box.x + x2 * box.width, box.y + y2 * box.height,
                 THIN, 0.2, (1.6, 1.2), role="composition")  # fmt: skip
    style = desk.look.label
    side = style.size * 0.9 if kind != "vanishing" else 0.0
    base = box.y + box.height + 1.2
    if side:
        pen.box(box.x, base - side * 0.1, side, side, Stroke(THIN, 0.15), corner=side * 0.15, role="tick")
    else:
        _point(desk, pen, work, box)
    left = side + 2.0 if side else 0.0
    name = fit(desk.faces, desk.say(f"lines_{kind}"), style, box.width - left, style.leading, 2.2)
    pen.text(box.x + left, base, name.lines[0], name.style)


def _point(desk: Desk, pen: Pen, work: Work, box: Box) -> None:
    """The point where the lines into depth meet, for those who do not find it themselves; it may lie outside."""
    assert work.vanishing
    left, up = work.vanishing.left, 1 - work.vanishing.top
    if desk.level == "upper" or not _inside(work):
        return
    x, y = box.x + left * box.width, box.y + up * box.height
    pen.ring(x, y, _DOT + 0.4, None, 1.0, role="vanishing-casing")
    pen.ring(x, y, _DOT, None, 0.0, role="vanishing-point")
