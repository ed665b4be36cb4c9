"""Light and dark: a strip of tones to match with the pencil, and places in the work whose tone is judged by it."""

from __future__ import annotations

from packgen.page.artwork import Box, centred
from packgen.page.blocks import Block, Bullets, draw_stack
from packgen.page.desk import Desk, Paint
from packgen.page.look import HAIR, MIDDLE, RULE, THIN
from packgen.page.marks import Stroke
from packgen.page.pen import Pen
from packgen.page.pictured import place_picture
from packgen.pictures.closer import ToneSpot, tone_spots, tone_strip
from packgen.pictures.load import aspect
from packgen.reading.models import Work

_FEWEST = 3  # places to judge
_STRIP = 28.0  # mm, the height of the strip
_WIDE = 24.0  # mm, of a tone at most
_RING = 3.2  # mm, the radius of the ring round a place
_BADGE = 2.6
_LETTERS = "ABCDEFGHI"


def tones_page(desk: Desk, work: Work, count: int) -> Paint | None:
    """A page with `count` tones, an empty box under each, and the work in grey with places ringed and lettered.

    None if there are not enough places of even tone in the work.
    """
    assert work.image
    path = work.image
    greys = tone_strip(count)
    spots = _spots(desk, work, count)
    if len(spots) < _FEWEST:
        return None

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        steps: list[Block] = [Bullets(desk.say_lines("steps_tones"), "box", "body", spread=0.12)]
        top = draw_stack(desk.kit, pen, steps, x, y + height, width, height) - desk.look.gap
        _strip(desk, pen, greys, Box(x, top - _STRIP, width, _STRIP))
        foot = _answers(desk, pen, spots, x, y, width)
        place = Box(x, foot, width, top - _STRIP - desk.look.gap - foot)
        box = centred(aspect(path), place)
        place_picture(desk, pen, path, box.x, box.y, box.width, box.height, grey=True, about=work.image_said,
                      name=f'"{work.title}"')  # fmt: skip
        for k, spot in enumerate(spots):
            _mark(desk, pen, _LETTERS[k], spot, box)

    return paint


def _spots(desk: Desk, work: Work, count: int) -> tuple[ToneSpot, ...]:
    assert work.image
    return tone_spots(desk.store, work.image, tone_strip(count))


def tone_answers(desk: Desk, work: Work, count: int) -> tuple[tuple[str, int], ...]:
    """The letter of each ringed place of the page with `count` tones, and the number of its tone; () if it has none."""
    spots = _spots(desk, work, count)
    return tuple((_LETTERS[k], spot.tone + 1) for k, spot in enumerate(spots)) if len(spots) >= _FEWEST else ()


def _strip(desk: Desk, pen: Pen, greys: tuple[float, ...], box: Box) -> None:
    """Printed tones from light to dark, numbered, and under each an empty box to match it in."""
    style = desk.look.label.at(desk.look.small.size)
    wide = min(box.width / len(greys), _WIDE)
    left = box.x + (box.width - wide * len(greys)) / 2
    high = (box.height - style.leading) / 2
    for k, grey in enumerate(greys):
        at = left + k * wide
        pen.text(at + wide / 2, box.y + 2 * high + 1.0, str(k + 1), style, align="centre")
        pen.box(at, box.y + high, wide, high, Stroke(HAIR, RULE), grey, role="tone")
        pen.box(at, box.y, wide, high, Stroke(MIDDLE, 0.3), role="drawbox")


def _answers(desk: Desk, pen: Pen, spots: tuple[ToneSpot, ...], x: float, y: float, width: float) -> float:
    """A letter and a box for the number of each place, in a row at the foot; the top of it."""
    if not spots:
        return y
    style = desk.look.strong
    side = style.size * 1.9
    step = min(width / len(spots), 34.0)
    left = x + (width - step * len(spots)) / 2
    for k in range(len(spots)):
        middle = left + (k + 0.5) * step
        wide = pen.text(middle - 1.5, y + side * 0.3, _LETTERS[k], style, align="right")
        pen.box(middle, y, max(side, wide), side, Stroke(MIDDLE, 0.3), role="answer")
    return y + side + desk.look.gap


def _mark(desk: Desk, pen: Pen, letter: str, spot: ToneSpot, box: Box) -> None:
    """A ring round a place that shows on light and dark, and its letter on white beside it."""
    x, y = box.x + spot.x * box.width, box.y + (1 - spot.y) * box.height
    pen.ring(x, y, _RING, Stroke(0.9, 1.0), role="spot-casing")
    pen.ring(x, y, _RING, Stroke(THIN, 0.0), role="spot")
    right = x + _RING + 2 * _BADGE < box.x + box.width
    at = x + (_RING + _BADGE) * (1 if right else -1)
    pen.ring(at, y, _BADGE, Stroke(THIN, 0.0), 1.0, role="badge")
    style = desk.look.label
    pen.text(at, y - desk.faces.metrics(style.face).cap * style.size / 2, letter, style, align="centre")
