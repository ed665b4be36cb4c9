"""Small figures for the steps of a model: how a fold goes, where a tab goes, how strips and threads are joined."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from packgen.nets import NetSheets
from packgen.page.block import Kit, Span, Whole
from packgen.page.desk import Desk
from packgen.page.look import BOLD, HAIR, MIDDLE, THIN
from packgen.page.marks import Point, Stroke
from packgen.page.net_key import say
from packgen.page.net_lines import MOUNTAIN, RING, TAB, VALLEY
from packgen.page.pen import Pen
from packgen.page.text import fit

_LIGHT, _DARK = 1.0, 0.86
_EDGE = Stroke(MIDDLE, 0.1)
_WIDE, _HIGH = 30.0, 19.0
_LARGER = 1.5
_MOST = 4

Draw = Callable[[Pen, float, float], None]


@dataclass(frozen=True, slots=True)
class Figures(Whole):
    """A row of small figures, each with a few words under it. A figure draws itself from its lower left corner."""

    shown: tuple[tuple[Draw, str], ...]
    gap: float | None = None
    tight: bool = False

    def measure(self, kit: Kit, width: float) -> Span:
        """From its own size to half as large again, or as wide as its share of the width."""
        words = 1.5 + kit.look.small.leading
        most = max(1.0, min(_LARGER, width / len(self.shown) / (_WIDE + 4.0)))
        return Span(_HIGH + words, most * _HIGH + words, 0.5 if most > 1.0 else 0.0)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """The figures, spread over the width, each centred over its words."""
        step = width / len(self.shown)
        size = (height - 1.5 - kit.look.small.leading) / _HIGH
        for k, (figure, words) in enumerate(self.shown):
            middle = x + step * (k + 0.5)
            inner = kit.pen()
            figure(inner, 0.0, 0.0)
            pen.group(inner.marks, (size, 0.0, 0.0, size, middle - size * _WIDE / 2, top - size * _HIGH))
            fitted = fit(kit.faces, words, kit.look.small, step - 2.0, kit.look.small.leading, 2.4)
            foot = top - size * _HIGH - 1.5 - pen.drop(fitted.style)
            pen.text(middle, foot, fitted.lines[0], fitted.style, align="centre", role="figure-words")


def figures_of(desk: Desk, net: NetSheets) -> Figures:
    """The figures that help with this net, at most four."""
    kinds = {stage.kind for stage in net.stages}
    folds = {kind for stage in net.stages for kind in stage.folds}
    shown: list[tuple[Draw, str]] = []
    if "strips" in kinds:
        shown.append((_strips, say(desk, "how_strips")))
    if "mountain" in folds:
        shown.append((_mountain, say(desk, "how_mountain")))
    if "valley" in folds:
        shown.append((_valley, say(desk, "how_valley")))
    if "bend" in kinds:
        shown.append((_bend, say(desk, "how_bend")))
    if kinds & {"glue", "close", "teeth", "close_teeth"}:
        shown.append((partial(_tab, desk), say(desk, "how_tab")))
    if "string" in kinds:
        shown.append((_string, say(desk, "how_string")))
    return Figures(tuple(shown[:_MOST]))


def _at(x: float, y: float, *points: Point) -> list[Point]:
    return [(x + px, y + py) for px, py in points]


def _mountain(pen: Pen, x: float, y: float) -> None:
    """A card folded like a roof, the fold on top."""
    pen.polygon(_at(x, y, (1, 4), (11, 13), (19, 17), (9, 8)), _EDGE, _LIGHT)
    pen.polygon(_at(x, y, (11, 13), (19, 17), (29, 10), (21, 5)), _EDGE, _DARK)
    pen.line(x + 11, y + 13, x + 19, y + 17, MOUNTAIN.width + 0.5, 1.0)
    pen.line(x + 11, y + 13, x + 19, y + 17, MOUNTAIN.width, 0.0, MOUNTAIN.dash)


def _valley(pen: Pen, x: float, y: float) -> None:
    """A card folded like an open book, the fold at the bottom."""
    pen.polygon(_at(x, y, (1, 12), (11, 3), (19, 7), (9, 17)), _EDGE, _DARK)
    pen.polygon(_at(x, y, (11, 3), (19, 7), (29, 15), (21, 11)), _EDGE, _LIGHT)
    pen.line(x + 11, y + 3, x + 19, y + 7, VALLEY.width + 0.5, 1.0)
    pen.line(x + 11, y + 3, x + 19, y + 7, VALLEY.width, 0.0, VALLEY.dash)


def _tab(desk: Desk, pen: Pen, x: float, y: float) -> None:
    """A tab about to go behind the edge that has its letter."""
    pen.polygon(_at(x, y, (1, 1), (10, 1), (10, 16), (1, 16)), _EDGE, _LIGHT)
    pen.polygon(_at(x, y, (10, 2), (15.5, 4.5), (15.5, 12.5), (10, 15)), _EDGE, TAB - 0.03)
    pen.line(x + 10, y + 2, x + 10, y + 15, MOUNTAIN.width + 0.3, 1.0)
    pen.line(x + 10, y + 2, x + 10, y + 15, MOUNTAIN.width, 0.0, MOUNTAIN.dash)
    pen.polygon(_at(x, y, (19, 1), (29, 3), (29, 18), (19, 16)), _EDGE, _LIGHT)
    letter = say(desk, "key_letter")
    style = desk.look.strong.at(desk.look.small.size)
    pen.text(x + 12.6, y + 7.2, letter, style, align="centre")
    pen.text(x + 21.4, y + 7.6, letter, style, align="centre")
    pen.arrow(x + 13, y + 16.6, x + 18.4, y + 17.6, THIN, 0.1, 1.8)


def _bend(pen: Pen, x: float, y: float) -> None:
    """A card drawn over the edge of a table."""
    pen.polygon(_at(x, y, (0, 0), (17, 0), (17, 9), (0, 9)), Stroke(THIN, 0.3), _DARK)
    pen.path(
        (("m", x + 1, y + 10), ("l", x + 14, y + 10), ("c", x + 19, y + 10, x + 19, y + 9, x + 19.5, y + 4)),
        Stroke(BOLD, 0.0, cap=1),
    )
    pen.path((("m", x + 12, y + 14), ("c", x + 20, y + 14, x + 24, y + 11, x + 24, y + 6)), Stroke(THIN, 0.1))
    pen.arrow(x + 24, y + 7, x + 24, y + 3.5, THIN, 0.1, 1.8)


def _strips(pen: Pen, x: float, y: float) -> None:
    """Two pieces that share a strip, its crosses on each other."""
    pen.polygon(_at(x, y, (1, 3), (17, 3), (17, 16), (1, 16)), _EDGE, _LIGHT)
    pen.polygon(_at(x, y, (13, 1), (29, 1), (29, 14), (13, 14)), _EDGE, _LIGHT)
    pen.polygon(_at(x, y, (13, 3), (17, 3), (17, 14), (13, 14)), Stroke(HAIR, 0.4), _DARK)
    for high in (5.5, 11.5):
        pen.line(x + 13.4, y + high, x + 16.6, y + high, THIN, 0.0)
        pen.line(x + 15, y + high - 1.6, x + 15, y + high + 1.6, THIN, 0.0)


def _string(pen: Pen, x: float, y: float) -> None:
    """A corner of card with a bit of tape, the hole through it, and a thread tied in."""
    pen.polygon(_at(x, y, (2, 17), (14, 1), (28, 17)), _EDGE, _LIGHT)
    pen.polygon(_at(x, y, (9, 6.5), (19, 6.5), (19, 12.5), (9, 12.5)), Stroke(THIN, 0.4, (1.2, 0.7)), 0.92)
    pen.ring(x + 14, y + 9.5, 1.5, RING, 1.0)
    pen.path(
        (("m", x + 14, y + 9.5), ("c", x + 20, y + 8, x + 18, y + 2, x + 24, y + 0.5)), Stroke(MIDDLE, 0.1, cap=1)
    )  # fmt: skip
