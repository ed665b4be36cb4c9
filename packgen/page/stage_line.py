"""Where in a design challenge a page stands: the stages of the level in one small line, those of this page in black."""

from __future__ import annotations

from dataclasses import dataclass

from packgen.page.blocks import Kit, Span, Whole, rigid
from packgen.page.look import SOFT
from packgen.page.pen import Pen
from packgen.page.text import Style
from packgen.trials.stages import Stage

_BETWEEN = "  ›  "
_SMALLEST = 2.1


@dataclass(frozen=True, slots=True)
class StageLine(Whole):
    """All stages of a level, one after the other; those whose keys are `now` stand out."""

    stages: tuple[Stage, ...]
    now: tuple[str, ...]
    gap: float | None = None
    tight: bool = True

    def measure(self, kit: Kit, width: float) -> Span:
        return rigid(self._style(kit, width).leading)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        style = self._style(kit, width)
        base = top - pen.drop(style)
        at = x
        for number, (words, here) in enumerate(self._parts()):
            at += pen.text(at, base, _BETWEEN, style.grey(SOFT), role="stage-between") if number else 0.0
            set_in = style.in_face(kit.look.label.face) if here else style.grey(SOFT)
            at += pen.text(at, base, words, set_in, role="stage-now" if here else "stage")

    def _parts(self) -> list[tuple[str, bool]]:
        """The titles to set, and whether each is one of this page's."""
        return [(stage.title, stage.key in self.now) for stage in self.stages]

    def _style(self, kit: Kit, width: float) -> Style:
        """The small style, or as much smaller as keeps all stages on one line."""
        style = kit.look.small
        faces, bold = kit.faces, kit.look.label.face
        wide = faces.width(_BETWEEN, style.face, style.size) * (len(self.stages) - 1)
        wide += sum(faces.width(t, bold if here else style.face, style.size) for t, here in self._parts())
        return style.at(max(_SMALLEST, style.size * min(1.0, width / wide)))
