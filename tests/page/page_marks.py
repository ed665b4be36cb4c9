"""What the tests of the page kit measure on marks: the rectangles they cover, by role."""

from __future__ import annotations

import math
from collections.abc import Iterable

from packgen.page.blocks import Block, Kit
from packgen.page.look import look_for
from packgen.page.marks import Line, Mark, Path_, Text
from packgen.page.pen import Pen
from packgen.page.type import Faces

FACES = Faces()
Box = tuple[float, float, float, float]


def kit(level: str) -> Kit:
    """The kit of a level, its faces shared by all tests."""
    return Kit(FACES, look_for(level))


def drawn(on: Kit, block: Block, width: float, height: float | None = None) -> Pen:
    """A block drawn below y = 0 from x = 0, as high as it must be or as given."""
    pen = on.pen()
    block.draw(on, pen, 0.0, 0.0, width, block.measure(on, width).least if height is None else height)
    return pen


def box(mark: Mark) -> Box:
    """The rectangle a mark covers: left, bottom, right, top; text by its width, capitals and tails."""
    if isinstance(mark, Text):
        wide = FACES.width(mark.text, mark.face, mark.size)
        metrics = FACES.metrics(mark.face)
        corners = [(0.0, -metrics.descent * mark.size), (wide, metrics.cap * mark.size)]
        cos, sin = round(math.cos(math.radians(mark.angle)), 9), round(math.sin(math.radians(mark.angle)), 9)
        xs = [mark.x + px * cos - py * sin for px, py in corners]
        ys = [mark.y + px * sin + py * cos for px, py in corners]
    elif isinstance(mark, Line):
        xs, ys = [mark.x1, mark.x2], [mark.y1, mark.y2]
    elif isinstance(mark, Path_):
        numbers = [n for step in mark.steps for n in step[1:]]
        xs, ys = [float(n) for n in numbers[::2]], [float(n) for n in numbers[1::2]]
    else:
        raise TypeError(type(mark))
    return min(xs), min(ys), max(xs), max(ys)


def of_role(marks: Iterable[Mark], *roles: str) -> list[Mark]:
    """The marks of some roles, in order."""
    return [mark for mark in marks if getattr(mark, "role", "") in roles]


def overlap(a: Box, b: Box) -> bool:
    """True if two rectangles share more than their edges."""
    return min(a[2], b[2]) - max(a[0], b[0]) > 1e-6 and min(a[3], b[3]) - max(a[1], b[1]) > 1e-6


def words_of(marks: Iterable[Mark]) -> list[str]:
    """The words of all text marks, in the order drawn."""
    return [word for mark in marks if isinstance(mark, Text) for word in mark.text.split()]
