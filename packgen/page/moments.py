"""The headings that part a week of the guide: before, at the table, later, to keep."""

from __future__ import annotations

from dataclasses import dataclass

from packgen.page.blocks import Kit, Span, Whole, rigid
from packgen.page.look import SOFT, TINT
from packgen.page.pen import Pen
from packgen.page.text import fit

_PAD = 1.1
_SIDE = 2.0


@dataclass(frozen=True, slots=True)
class Moment(Whole):
    """A tinted band with the moment's name at its left and how long it takes at its right."""

    name: str
    note: str = ""
    gap: float | None = 4.0
    tight: bool = True
    role: str = "heading"

    def measure(self, kit: Kit, width: float) -> Span:
        """One line of a heading."""
        return rigid(kit.look.heading.leading + 2 * _PAD)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        """The band, the name, the note."""
        look = kit.look
        high = look.heading.leading + 2 * _PAD
        pen.box(x, top - high, width, high, fill=TINT, corner=look.corner, role="moment")
        base = top - _PAD - pen.drop(look.heading)
        wide = pen.text(x + _SIDE, base, self.name, look.heading, role="heading")
        if self.note:
            room = width - wide - 3 * _SIDE
            noted = fit(kit.faces, self.note, look.label, room, look.label.leading, look.floor * 0.9)
            pen.text(x + width - _SIDE, base, noted.lines[0], noted.style.grey(SOFT * 0.6), align="right")
