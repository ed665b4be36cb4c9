"""Room to work out means: a sum to fill in for each row, and lines for what went wrong."""

from __future__ import annotations

from packgen.page.blocks import Art, Block, Lines, Prose, Stack, heading
from packgen.page.challenge_set import ChallengeSet
from packgen.page.look import RULE, THIN
from packgen.page.pen import Pen
from packgen.page.text import fit

_MOST_SUMS, _MOST_TERMS = 10, 6
_PITCH = 11.0
_SIGN = 5.0


def working_out(made: ChallengeSet) -> list[Block]:
    """A sum for each row, where there is one to do and it fits a line, but not for the upper; then what went wrong."""
    count = made.plan.repeats(made.desk.level)
    blocks: list[Block] = []
    if made.desk.level != "upper" and 1 < count <= _MOST_TERMS and len(made.plan.rows) <= _MOST_SUMS:
        blocks.append(Stack((heading(made.say("working")), _sums(made, count))))
    blocks.append(Stack((Prose(made.say("went_wrong"), "strong", tight=True), Lines(3, 12, gap=0.5))))
    return blocks


def _sums(made: ChallengeSet, count: int) -> Block:
    """For each row: its name, so many blanks to add, the sum, divided by how many, and the mean."""
    desk = made.desk
    names = [*(made.plan.named(row) for row in made.plan.rows), *((made.own,) if made.own else ())]
    style, small = desk.look.body, desk.look.label
    signs = ["+"] * (count - 1) + ["=", f"÷ {count} ="]

    def paint(pen: Pen, x: float, y: float, width: float, height: float) -> None:
        wide = min(width * 0.22, max(desk.faces.width(name, small.face, small.size) for name in names) + 3.0)
        over = desk.faces.width(signs[-1], style.face, style.size) + 3.0
        blank = (width - wide - _SIGN * count - over) / (count + 2)
        pitch = height / len(names)
        for k, name in enumerate(names):
            base = y + height - (k + 1) * pitch + 2.5
            fitted = fit(desk.faces, name, small, wide - 2.0, pitch, 2.2)
            pen.lines(x, base + fitted.height * 0.8, fitted.lines, fitted.style)
            at = x + wide
            for n in range(count + 2):
                pen.line(at, base, at + blank, base, THIN, RULE, role="blank")
                at += blank
                if n < len(signs):
                    room = over if n == len(signs) - 1 else _SIGN
                    pen.text(at + room / 2, base, signs[n], style, align="centre")
                    at += room

    return Art(paint, _PITCH * len(names), _PITCH * 1.5 * len(names), 0.5)
