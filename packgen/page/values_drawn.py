"""The planned values of a trial as small drawings true to one another in size, for children who do not read numbers."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from packgen.page.look import BOLD, MIDDLE
from packgen.page.marks import Stroke
from packgen.page.pen import Pen
from packgen.trials.trial import Row, TrialPlan
from packgen.units import Quantity

MOST = 3
"""So many the youngest compare; of more, the least, the middle and the greatest are shown."""
_MOST_WORDS = 4
_BY_DIMENSION = {"length": "bar", "mass": "weight", "angle": "angle", "count": "dots"}
_LEAST_SHARE = 0.07
_INK, _FILL = 0.2, 0.82

NAMES = {
    "bar": ("short", "long"), "thread": ("short", "long"), "up": ("low", "high"), "level": ("low", "high"),
    "weight": ("light", "heavy"), "angle": ("narrow", "wide"), "square": ("small", "big"), "disc": ("small", "big"),
    "hole": ("small", "big"),
}  # fmt: skip
"""The pair of words for the least and the greatest, by kind of drawing; counted things go by their number."""


@dataclass(frozen=True, slots=True)
class Shown:
    """One value to show: its row's label, the key of its name's wording ("" : its `text` is its name), the drawing.

    `share` is its size as a part of the greatest; `count` how many, where things are counted.
    """

    label: str
    key: str
    text: str
    picture: str
    share: float
    count: int = 0


def shown_values(plan: TrialPlan) -> tuple[Shown, ...]:
    """What to show of a plan: up to three of its values from the least to the greatest, or up to four words."""
    rows = [row for row in plan.rows if isinstance(row.value, Quantity)]
    if len(rows) < len(plan.rows) or plan.changed is None or plan.x_axis.words:
        words = [(row.label, plan.named(row)) for row in plan.rows]
        return tuple(Shown(label, "", word, "", 1.0) for label, word in words) if 2 <= len(words) <= _MOST_WORDS else ()
    rows = _few(sorted(rows, key=_size))
    item = plan.model.input(plan.changed.name) if plan.model else None
    if len(rows) < 2 or min(map(_size, rows)) < 0 or (item and item.clock):
        return ()
    picture = _picture(plan, rows)
    greatest = max(map(_size, rows)) or 1.0
    keys = _keys(picture, len(rows))
    return tuple(
        Shown(
            row.label, key, row.number, picture, _size(row) / greatest, round(_size(row)) if picture in _COUNTED else 0
        )
        for key, row in zip(keys, rows, strict=True)
    )


def _size(row: Row) -> float:
    return row.value.value if isinstance(row.value, Quantity) else 0.0


def _few(rows: list[Row]) -> list[Row]:
    return rows if len(rows) <= MOST else [rows[0], rows[len(rows) // 2], rows[-1]]


def _picture(plan: TrialPlan, rows: list[Row]) -> str:
    """How the values are drawn: as the model says, or by their dimension; too many to count are bars."""
    item = plan.model.input(plan.changed.name) if plan.model and plan.changed else None
    value = rows[0].value
    usual = _BY_DIMENSION.get(value.dimension, "up") if isinstance(value, Quantity) else "up"
    picture = (item.picture if item else "") or usual
    if picture in _COUNTED and any(not _size(row).is_integer() or _size(row) > _COUNTED[picture] for row in rows):
        return "up"
    return picture


def _keys(picture: str, count: int) -> tuple[str, ...]:
    if picture in _COUNTED:
        return ("",) * count
    least, greatest = NAMES.get(picture, ("small", "big"))
    return (least, greatest) if count == 2 else (least, "middle", greatest)


def draw_value(pen: Pen, shown: Shown, x: float, y: float, width: float, height: float) -> None:
    """Draw a value in a cell with its lower left corner at (x, y); all cells of a row must be of one size."""
    _DRAWN[shown.picture](pen, shown, x + width / 2, y, width, height)


def _bar(pen: Pen, shown: Shown, x: float, y: float, width: float, height: float) -> None:
    long, thick = width * _share(shown), min(7.0, height * 0.3)
    pen.box(x - width / 2, y + (height - thick) / 2, long, thick, Stroke(MIDDLE, _INK), _FILL, 1.0, role="value")


def _up(pen: Pen, shown: Shown, x: float, y: float, width: float, height: float) -> None:
    wide = min(12.0, width * 0.4)
    pen.box(x - wide / 2, y, wide, height * _share(shown), Stroke(MIDDLE, _INK), _FILL, 1.0, role="value")
    pen.line(x - width / 2, y, x + width / 2, y, MIDDLE, _INK)


def _thread(pen: Pen, shown: Shown, x: float, y: float, width: float, height: float) -> None:
    bob = min(2.6, height * 0.08)
    long = (height - 2 * bob) * _share(shown)
    pen.line(x - min(9.0, width * 0.3), y + height, x + min(9.0, width * 0.3), y + height, BOLD, _INK)
    pen.line(x, y + height, x, y + height - long, MIDDLE, _INK, role="value")
    pen.ring(x, y + height - long - bob, bob, Stroke(MIDDLE, _INK), _FILL)


def _level(pen: Pen, shown: Shown, x: float, y: float, width: float, height: float) -> None:
    wide = min(width * 0.5, height * 0.55)
    deep = (height - 3.0) * _share(shown)
    pen.box(x - wide / 2, y, wide, deep, None, _FILL, role="value")
    pen.line(x - wide / 2, y + deep, x + wide / 2, y + deep, MIDDLE, _INK)
    pen.polygon([(x - wide / 2, y + height), (x - wide / 2, y), (x + wide / 2, y), (x + wide / 2, y + height)],
                Stroke(BOLD, _INK), closed=False)  # fmt: skip


def _square(pen: Pen, shown: Shown, x: float, y: float, width: float, height: float) -> None:
    side = min(width, height) * _share(shown)
    pen.box(x - side / 2, y + (height - side) / 2, side, side, Stroke(MIDDLE, _INK), _FILL, role="value")


def _disc(pen: Pen, shown: Shown, x: float, y: float, width: float, height: float) -> None:
    pen.ring(x, y + height / 2, min(width, height) / 2 * _share(shown), Stroke(MIDDLE, _INK), _FILL, role="value")


def _hole(pen: Pen, shown: Shown, x: float, y: float, width: float, height: float) -> None:
    pen.ring(x, y + height / 2, min(width, height) / 3 * _share(shown), None, 0.1, role="value")


def _weight(pen: Pen, shown: Shown, x: float, y: float, width: float, height: float) -> None:
    """A lump whose volume, not its width, goes with the weight."""
    radius = min(width, height) / 2 * max(shown.share, 0.003) ** (1 / 3)
    pen.ring(x, y + radius, radius, Stroke(MIDDLE, _INK), _FILL, role="value")


def _angle(pen: Pen, shown: Shown, x: float, y: float, width: float, height: float) -> None:
    """A wedge; the greatest is drawn at two thirds of a right angle, the others in proportion."""
    turn, long = math.radians(60 * shown.share), min(width * 0.8, height)
    left = x - long / 2
    pen.polygon([(left + long * math.cos(turn), y + long * math.sin(turn)), (left, y), (left + long, y)],
                Stroke(BOLD, _INK), closed=False, role="value")  # fmt: skip


def _dots(pen: Pen, shown: Shown, x: float, y: float, width: float, height: float) -> None:
    """So many dots in rows of at most five."""
    across = min(5, max(1, math.ceil(math.sqrt(shown.count))))
    rows = math.ceil(shown.count / across) or 1
    pitch = min(width / 5, height / rows, 9.0)
    for k in range(shown.count):
        row, place = divmod(k, across)
        left = x - (min(across, shown.count - row * across) - 1) * pitch / 2
        pen.ring(left + place * pitch, y + height / 2 + ((rows - 1) / 2 - row) * pitch, pitch * 0.33,
                 Stroke(MIDDLE, _INK), _FILL, role="value")  # fmt: skip


def _blades(pen: Pen, shown: Shown, x: float, y: float, width: float, height: float) -> None:
    """A wheel with so many blades."""
    radius, middle = min(width, height) / 2, y + height / 2
    for k in range(shown.count):
        turn = math.pi / 2 + 2 * math.pi * k / shown.count
        pen.line(
            x, middle, x + radius * math.cos(turn), middle + radius * math.sin(turn), BOLD + 0.4, _INK, role="value"
        )
    pen.ring(x, middle, radius * 0.45, Stroke(MIDDLE, _INK), _FILL)
    pen.ring(x, middle, radius * 0.1, None, _INK)


def _share(shown: Shown) -> float:
    return max(shown.share, _LEAST_SHARE)


_COUNTED = {"dots": 25, "blades": 24}
_DRAWN: dict[str, Callable[[Pen, Shown, float, float, float, float], None]] = {
    "bar": _bar, "up": _up, "thread": _thread, "level": _level, "square": _square, "disc": _disc, "hole": _hole,
    "weight": _weight, "angle": _angle, "dots": _dots, "blades": _blades,
}  # fmt: skip
PICTURES = tuple(_DRAWN)
"""Every kind of drawing that an input may name."""
