"""The rhythm of a sitting as a folded strip: a panel for each part, with its minutes and a word on how."""

from __future__ import annotations

from dataclasses import dataclass

from packgen.page.blocks import Kit, Span, rigid
from packgen.page.look import HAIR, PALE, RULE, SOFT
from packgen.page.marks import Stroke
from packgen.page.pen import Pen
from packgen.page.text import fit, wrap

_LEAN = 3.0
_PAD = 3.0


@dataclass(frozen=True, slots=True)
class Panel:
    """One part: its name, its minutes in words, and how it is done."""

    name: str
    minutes: str
    how: str


@dataclass(frozen=True, slots=True)
class Rhythm:
    """Panels side by side, like paper folded to and fro."""

    panels: tuple[Panel, ...]
    gap: float | None = None
    tight: bool = False

    def _wide(self, width: float) -> float:
        return width / len(self.panels)

    def _text_height(self, kit: Kit, width: float) -> float:
        room = self._wide(width) - 2 * _PAD
        lines = max(len(wrap(kit.faces, panel.how, kit.look.small, room)) for panel in self.panels)
        return kit.look.heading.leading + kit.look.label.leading + lines * kit.look.small.leading + 1.0

    def measure(self, kit: Kit, width: float) -> Span:
        """As high as the fullest panel."""
        return rigid(self._text_height(kit, width) + 2 * _PAD + _LEAN)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """Every other panel leans the other way and lies in shade."""
        look = kit.look
        wide = self._wide(width)
        high = height - _LEAN
        for number, panel in enumerate(self.panels):
            left = x + number * wide
            shade = number % 2 == 1
            begin, end = (-_LEAN, 0.0) if shade else (0.0, -_LEAN)
            corners = [(left, top + begin - high), (left + wide, top + end - high), (left + wide, top + end),
                       (left, top + begin)]  # fmt: skip
            pen.polygon(corners, Stroke(HAIR, RULE), PALE if shade else 1.0, role="rhythm")
            room = wide - 2 * _PAD
            y = top - _LEAN - _PAD + 1.0
            name = fit(kit.faces, panel.name, look.heading, room, look.heading.leading, look.floor)
            y = pen.lines(left + _PAD, y, name.lines[:1], name.style, role="heading")
            y = pen.lines(left + _PAD, y, (panel.minutes,), look.label.grey(SOFT)) - 1.0
            pen.lines(left + _PAD, y, wrap(kit.faces, panel.how, look.small, room), look.small)

    def split(self, kit: Kit, width: float, room: float) -> None:
        """Never."""
