"""Letters to trace: single-stroke letters as rows of dots, with where the pencil starts and which way it goes.

A letter that has no strokes (Greek, Cyrillic, Chinese ...) is set in grey in the level's own face, so that none is ever
missing. Positions and sizes are mm; `x_height` is the height of the small letters.
"""

from __future__ import annotations

import itertools
import math
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass, replace

from packgen.page.blocks import Block, Kit, Span, rigid, rule
from packgen.page.desk import Desk
from packgen.page.joined import joined
from packgen.page.look import Ruling
from packgen.page.marks import Ink, Point, Stroke
from packgen.page.pen import Pen
from packgen.page.skeleton import Skeleton, along, bounds, clear, dense, dots, length, points, runs, skeleton
from packgen.page.text import Style

# Between words, and beside letters of a face, in x-heights.
_SPACE, _BESIDE = 0.72, 0.12
_FALLBACK_INK = 0.72
# Strokes shorter than this many x-heights (the dot on an i) have no start dot and no arrow.
_SHORT = 0.45
# A word too wide is written smaller, down to this part of the size; then it is parted.
_FLOOR = 0.6
# Letters in a small book, as part of the level's own.
_SMALL = 0.6


@dataclass(frozen=True, slots=True)
class _Placed:
    """A letter at its place in a line, in mm from the line's beginning; `skeleton` is None where it has no strokes."""

    x: float
    text: str
    skeleton: Skeleton | None


def _letters_of(text: str) -> list[str]:
    """A text cut into letters, each with the combining marks that follow it, composed where Unicode can."""
    found: list[str] = []
    for sign in unicodedata.normalize("NFC", text):
        if found and unicodedata.combining(sign):
            found[-1] += sign
        else:
            found.append(sign)
    return found


def _text_style(kit: Kit, x_height: float) -> Style:
    """The level's running face at the size at which its small letters are `x_height` high."""
    face = kit.look.body.face
    size = x_height / kit.faces.metrics(face).x
    return Style(face, size, size, _FALLBACK_INK)


def _pieces(text: str, letters: str) -> list[tuple[str, Skeleton | None]]:
    """What a line is put together from: spaces, letters, and in a joined hand whole words.

    A letter without strokes comes with None.
    """
    found: list[tuple[str, Skeleton | None]] = []
    for known, run in itertools.groupby(_letters_of(text), lambda c: None if c.isspace() else bool(skeleton(c))):
        together = tuple(run)
        if known and letters == "cursive":
            found.append(("".join(together), joined(together)))
        else:
            found += [(letter, skeleton(letter) if known else None) for letter in together]
    return found


def _place(kit: Kit, text: str, x_height: float, letters: str) -> tuple[list[_Placed], float]:
    """Where each letter (or joined word) of a line lies, and the width of the line, in mm."""
    found: list[_Placed] = []
    x = 0.0
    for piece, known in _pieces(text, letters):
        if known:
            found.append(_Placed(x + known.left * x_height, piece, known))
            x += known.advance * x_height
        elif piece.isspace():
            x += _SPACE * x_height
        else:
            style = _text_style(kit, x_height)
            found.append(_Placed(x + _BESIDE * x_height, piece, None))
            x += kit.faces.width(piece, style.face, style.size) + 2 * _BESIDE * x_height
    return found, x


def trace_width(kit: Kit, text: str, x_height: float, letters: str = "print") -> float:
    """The width in mm of a line of letters to trace whose small letters are `x_height` high."""
    return _place(kit, text, x_height, letters)[1]


def trace_top(text: str, x_height: float) -> float:
    """How high letters to trace reach over their base line in mm: accents on capitals stand over the top line."""
    known = [skeleton(letter) for letter in _letters_of(text)]
    return max((bounds(k.strokes)[3] for k in known if k), default=2.0) * x_height


def dot_spacing(x_height: float) -> float:
    """The distance between the dots of letters to trace, in mm: close in small letters, wide in large ones."""
    return 0.4 + 0.12 * x_height


def draw_trace(kit: Kit, pen: Pen, text: str, x: float, base: float, x_height: float, *, dots: bool = False,
               arrows: bool = False, ink: Ink = 0.3, solid: bool = False, letters: str = "print") -> float:  # fmt: skip
    """Draw letters to trace from x on the base line; returns their width in mm.

    `dots` marks where each stroke starts, `arrows` which way it goes. `solid` draws whole lines: a model to copy.
    `letters` is "print" or "cursive".
    """
    placed, width = _place(kit, text, x_height, letters)
    thick = max(0.3, 0.085 * x_height) if solid else 0.28 + 0.035 * x_height
    steps: list[tuple[str | float, ...]] = []
    role = "model" if solid else "trace"
    for item in placed:
        at = x + item.x
        if item.skeleton is None:
            pen.text(at, base, item.text, _text_style(kit, x_height), role=role)
            continue
        for px, py in points(item.skeleton):
            radius = thick * 0.62 if solid else 0.2 + 0.05 * x_height
            pen.ring(at + px * x_height, base + py * x_height, radius, fill=ink, role=role)
        steps.extend((_line_steps if solid else _dot_steps)(item.skeleton, at, base, x_height))
    if steps:
        pen.path(steps, Stroke(thick, ink, cap=1), role=role)
    for item in placed:
        if item.skeleton and (dots or arrows):
            _draw_starts(pen, item.skeleton, x + item.x, base, x_height, dots, arrows)
    return width


def _dot_steps(known: Skeleton, x: float, base: float, size: float) -> list[tuple[str | float, ...]]:
    """The dots of a letter as a path: a dot is a line too short to see with round ends, so one mark holds a word."""
    found: list[tuple[str | float, ...]] = []
    for px, py in dots(known, round(dot_spacing(size) / size, 4)):
        found += [("m", x + px * size, base + py * size), ("l", x + px * size + 0.01, base + py * size)]
    return found


def _line_steps(known: Skeleton, x: float, base: float, size: float) -> list[tuple[str | float, ...]]:
    """The strokes of a letter as a path of whole lines."""
    found: list[tuple[str | float, ...]] = []
    for stroke in known.strokes:
        (start_x, start_y) = stroke[0][0]
        found.append(("m", x + start_x * size, base + start_y * size))
        for segment in stroke:
            flat = [n for px, py in segment[1:] for n in (x + px * size, base + py * size)]
            found.append(("l" if len(segment) == 2 else "c", *flat))
    return found


def _draw_starts(pen: Pen, known: Skeleton, x: float, base: float, size: float, marked: bool, arrows: bool) -> None:
    """A full dot where the letter starts, a ring where the pencil starts again, an arrow head a little further on.

    The arrow heads lie clear of the other strokes.
    """
    started: list[Point] = []
    for number, stroke in enumerate(known.strokes[: known.marked]):
        run = runs(stroke)[0]
        if length(run) < _SHORT:
            continue
        start = run[0]
        if marked and all(math.dist(start, other) > 0.15 for other in started):
            again = bool(started)
            edge = Stroke(0.2 + 0.02 * size, 0.0) if again else None
            pen.ring(x + start[0] * size, base + start[1] * size, 0.28 + 0.06 * size, edge, 1.0 if again else 0.0,
                     role="start")  # fmt: skip
        started.append(start)
        if arrows:
            others = [p for k, other in enumerate(known.strokes) if k != number for p in dense(other)]
            (px, py), (dx, dy) = along(run, clear(run, [*others, *started]))
            _head(pen, x + px * size, base + py * size, dx, dy, 0.3 + 0.17 * size)


def _head(pen: Pen, x: float, y: float, dx: float, dy: float, long: float) -> None:
    """A solid arrow head with its middle at (x, y), pointing along (dx, dy)."""
    half = long * 0.4
    back_x, back_y = x - dx * long / 2, y - dy * long / 2
    corners = [(x + dx * long / 2, y + dy * long / 2), (back_x - dy * half, back_y + dx * half),
               (back_x + dy * half, back_y - dx * half)]  # fmt: skip
    pen.polygon(corners, fill=0.0, role="arrow")


# Blocks


def at_size(ruling: Ruling, x_height: float) -> Ruling:
    """The same ruling with small letters of another height, its lines in proportion."""
    return Ruling(x_height, ruling.pitch * x_height / ruling.x_height, ruling.guides)


@dataclass(frozen=True, slots=True)
class Traced:
    """A text to trace on ruled lines, as many lines as its words need.

    A word too wide for the line is written smaller, down to `floor` of the size, and then parted with a hyphen. `times`
    writes the text again and again along its line while it fits; `under` rules empty lines under each to copy it on.
    With `align` "right" the text ends at the line's end. Where strokes start is shown as the level wants it, unless
    `dots` and `arrows` say so.
    """

    text: str
    dots: bool | None = None
    arrows: bool | None = None
    solid: bool = False
    ink: Ink = 0.3
    times: int = 1
    under: int = 0
    align: str = "left"
    letters: str = "print"
    floor: float = _FLOOR
    ruling: Ruling | None = None
    gap: float | None = None
    tight: bool = False

    def setting(self, kit: Kit, width: float) -> tuple[tuple[str, ...], Ruling]:
        """The lines the text takes at this width, and the ruling (perhaps a smaller one) they are written on."""
        ruling = self.ruling or kit.look.ruling
        words = self.text.split()
        widest = max((trace_width(kit, word, ruling.x_height, self.letters) for word in words), default=0.0)
        if widest > width:
            ruling = at_size(ruling, ruling.x_height * max(self.floor, width / widest * 0.999))
        return tuple(_lines(kit, words, ruling.x_height, width, self.letters)), ruling

    def _rise(self, lines: Sequence[str], ruling: Ruling) -> float:
        """The height from the block's top to its first base line."""
        top = trace_top(lines[0], ruling.x_height) if lines else 0.0
        return max(ruling.ascent, top) + ruling.x_height * 0.2

    def measure(self, kit: Kit, width: float) -> Span:
        lines, ruling = self.setting(kit, width)
        rows = max(1, len(lines) * (1 + self.under))
        return rigid(self._rise(lines, ruling) + (rows - 1) * ruling.pitch + ruling.descent)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        lines, ruling = self.setting(kit, width)
        base = top - self._rise(lines, ruling)
        for line in lines:
            places = self._places(kit, line, x, width, ruling.x_height)
            wide = trace_width(kit, line, ruling.x_height, self.letters)
            beside = 0.25 * ruling.x_height
            clear = () if self.solid else [(at - beside, at + wide + beside) for at in places]
            for k in range(1 + self.under):
                rule(pen, x, base - k * ruling.pitch, width, ruling, () if k else clear)
            self._write(kit, pen, line, places, base, ruling.x_height)
            base -= ruling.pitch * (1 + self.under)

    def _places(self, kit: Kit, line: str, x: float, width: float, size: float) -> list[float]:
        """Where the text begins, each time it is written on its line."""
        wide = trace_width(kit, line, size, self.letters)
        step = wide + _SPACE * 1.6 * size
        count = max(1, min(self.times, int((width + step - wide + 1e-6) / step)))
        start = x + width - wide - (count - 1) * step if self.align == "right" else x
        return [start + k * step for k in range(count)]

    def _write(self, kit: Kit, pen: Pen, line: str, places: Sequence[float], base: float, size: float) -> None:
        level = kit.look.level
        marked = level in ("first", "younger") and not self.solid if self.dots is None else self.dots
        arrows = level == "first" and not self.solid if self.arrows is None else self.arrows
        for at in places:
            draw_trace(kit, pen, line, at, base, size, dots=marked, arrows=arrows, ink=self.ink,
                       solid=self.solid, letters=self.letters)  # fmt: skip

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        lines, ruling = self.setting(kit, width)
        one = ruling.pitch * (1 + self.under)
        first = self._rise(lines, ruling) + self.under * ruling.pitch + ruling.descent
        fits = 1 + int((room - first) / one + 1e-6)
        if room < first - 1e-6 or not 0 < fits < len(lines):
            return None
        head = replace(self, text=" ".join(lines[:fits]), ruling=ruling)
        return head, replace(self, text=" ".join(lines[fits:]), ruling=ruling, gap=0.0)


@dataclass(frozen=True, slots=True)
class TraceLine:
    """A text for the desk's child to trace: its kind of letters, its level's lines and marks.

    `small` fits a page of a small book. `copy` gives a whole-line model instead, with an empty line under it.
    """

    desk: Desk
    text: str
    small: bool = False
    copy: bool = False
    gap: float | None = None
    tight: bool = False

    def traced(self, kit: Kit) -> Traced:
        """The same as a block that knows no desk."""
        child = self.desk.child
        ruling = kit.look.ruling
        return Traced(
            self.text,
            solid=self.copy,
            under=int(self.copy),
            align="right" if self.copy and child and child.left_handed else "left",
            letters=child.letters if child else "print",
            ruling=at_size(ruling, ruling.x_height * _SMALL) if self.small else None,
        )

    def measure(self, kit: Kit, width: float) -> Span:
        return self.traced(kit).measure(kit, width)

    def draw(self, kit: Kit, pen: Pen, x: float, top: float, width: float, height: float) -> None:
        self.traced(kit).draw(kit, pen, x, top, width, height)

    def split(self, kit: Kit, width: float, room: float) -> tuple[Block, Block] | None:
        return self.traced(kit).split(kit, width, room)


def _lines(kit: Kit, words: Sequence[str], x_height: float, width: float, hand: str) -> list[str]:
    """Words set in lines no wider than `width`; a word too wide for a line is parted with hyphens."""
    found: list[str] = []
    for part in (part for word in words for part in _parted(kit, word, x_height, width, hand)):
        joined = f"{found[-1]} {part}" if found else part
        if found and trace_width(kit, joined, x_height, hand) <= width + 1e-6:
            found[-1] = joined
        else:
            found.append(part)
    return found


def _parted(kit: Kit, word: str, x_height: float, width: float, hand: str) -> list[str]:
    """A word in as few and as even parts as fit a line, a hyphen on all but the last."""
    letters = _letters_of(word)
    for count in range(1, len(letters) + 1):
        cuts = [round(k * len(letters) / count) for k in range(count + 1)]
        parts = ["".join(letters[a:b]) for a, b in itertools.pairwise(cuts)]
        parts = [*(part + "-" for part in parts[:-1]), parts[-1]]
        if all(trace_width(kit, part, x_height, hand) <= width + 1e-6 for part in parts):
            return parts
    return letters
