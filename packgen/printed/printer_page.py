"""The page that measures a printer: its scale, its margins, and how far a back lands beside its front."""

from __future__ import annotations

from packgen.page.look import BOLD, GUIDE, HAIR, MIDDLE, SOFT, THIN
from packgen.page.marks import Page
from packgen.page.pen import Pen
from packgen.page.text import Style, wrap
from packgen.page.type import Faces
from packgen.units import MM_PER_INCH

LADDER = 12  # steps of 1 mm; the widest margin seen in printers' manuals is under 7 mm
SHIFT = 3.0  # mm either way that the register scales show, in steps of half a mm
_STEP = 6.0  # mm along the edge for each step of the ladder
_ROW = 3.4  # mm from one step of a register scale to the next
_OFF = 7.0  # how far the scales begin from the middle, so that only one line of the cross meets each
_CROSS = _OFF + _ROW * (4 * SHIFT + 2)  # half the length of the front's lines

_TITLE = Style("display", 6.5, 8.0)
_BODY = Style("text", 3.7, 5.2)
_STRONG = Style("text-bold", 3.7, 5.2)
_SMALL = Style("text", 2.6, 3.4, SOFT)

_FRONT = (
    ("1", "Print this file at 100 % (“actual size”), on both sides, turned on the long edge. Use the paper that you "
          "will print the packs on."),
    ("2", "Scale. Measure the long rulers on this side with a ruler of your own. Within 1 mm is good. If they are "
          "short, look for “fit” or “shrink” in the print window, turn it off, and print again."),
    ("3", "Margin. On each of the four edges, find the smallest number whose bar is printed whole. The largest of the "
          "four, on both sides, is your printer’s margin."),
)  # fmt: skip
_BACK = (
    ("4", "Sides. If the arrow up there points the other way from the arrow on the front, the printer turned the sheet "
          "on its short edge. If this is a sheet of its own, the printer prints on one side only."),
    ("5", "Shift. Hold the sheet against a window, this side towards you, arrow up: the cross of the front shines "
          "through. Which small bar of each scale lies on its line? Those two numbers are the shift."),
)  # fmt: skip
_LAST = ("6", "Write what you found into the family file, under the key “printer”:")


def printer_pages(paper: tuple[float, float], faces: Faces) -> tuple[Page, Page]:
    """The front and the back of the page, for a paper of that width and height in mm, standing.

    Both are to be printed two-sided-long-edge. The register mark is in the middle of the sheet, so that it also works
    on a printer that turns the sheet on its short edge.
    """
    return _front(paper, faces), _back(paper, faces)


def _front(paper: tuple[float, float], faces: Faces) -> Page:
    width, height = paper
    pen = Pen(faces)
    _head(pen, paper, "Printer page: front", _FRONT)
    _ladders(pen, paper)
    x, y = width / 2, height / 2
    pen.line(x, y - _CROSS, x, y + _CROSS, MIDDLE, role="cross")
    pen.line(x - _CROSS, y, x + _CROSS, y, MIDDLE, role="cross")
    foot = 28.0
    _ruler(pen, 26.0, foot + 15.0, 100, 1.0, "100 mm", upright=False)
    _ruler(pen, 26.0, foot, 64, MM_PER_INCH / 16, "4 inches", upright=False)
    _ruler(pen, width - 48.0, foot, 100, 1.0, "100 mm", upright=True)
    _ruler(pen, width - 30.0, foot, 64, MM_PER_INCH / 16, "4 inches", upright=True)
    return Page(width, height, tuple(pen.marks), "Printer page: front")


def _back(paper: tuple[float, float], faces: Faces) -> Page:
    width, height = paper
    pen = Pen(faces)
    _head(pen, paper, "Printer page: back", _BACK)
    _ladders(pen, paper)
    _scales(pen, width / 2, height / 2)
    y = _steps(pen, 26.0, 80.0, width - 52.0, (_LAST,)) - 8.0
    for words in ("sides: two-sided-", "margin:", "duplex shift: ["):
        _to_fill_in(pen, 34.0, y, words)
        y -= 11.0
    return Page(width, height, tuple(pen.marks), "Printer page: back")


def _to_fill_in(pen: Pen, x: float, y: float, words: str) -> None:
    """A line of the family file with room to write what was found."""
    at = x + pen.text(x, y, words, _STRONG) + 1.5
    if words.startswith("sides"):
        pen.line(at, y - 0.8, at + 24, y - 0.8, THIN, GUIDE)
        pen.text(at + 25.5, y, "-edge", _STRONG)
        pen.text(at + 40, y, "(long or short; or one-sided)", _SMALL)
        return
    pen.line(at, y - 0.8, at + 14, y - 0.8, THIN, GUIDE)
    at += 15.5 + pen.text(at + 15.5, y, "mm", _STRONG)
    if words.startswith("duplex"):
        at += pen.text(at, y, ",", _STRONG) + 1.5
        pen.line(at, y - 0.8, at + 14, y - 0.8, THIN, GUIDE)
        pen.text(at + 15.5, y, "mm]", _STRONG)


def _head(pen: Pen, paper: tuple[float, float], title: str, steps: tuple[tuple[str, str], ...]) -> None:
    """The title with an arrow that points to the head of the page, and the numbered instructions."""
    width, height = paper
    left, right, y = 26.0, width - 26.0, height - 30.0
    pen.text(left, y, title, _TITLE)
    pen.arrow(right - 4, y - 2, right - 4, y + 8, BOLD, head=4.0)
    pen.text(right - 10, y, "top", _BODY, align="right")
    _steps(pen, left, y - 4.0, right - left, steps)


def _steps(pen: Pen, left: float, y: float, width: float, steps: tuple[tuple[str, str], ...]) -> float:
    """Numbered steps below y; returns the y under the last."""
    for number, words in steps:
        lines = wrap(pen.faces, words, _BODY, width - 7)
        pen.text(left, y - pen.drop(_STRONG), number, _STRONG)
        y = pen.lines(left + 7, y, lines, _BODY) - 1.8
    return y


def _ladders(pen: Pen, paper: tuple[float, float]) -> None:
    """On each edge, bars at 1, 2, ... mm from it, side by side, each with its number further in."""
    width, height = paper
    half = LADDER * _STEP / 2
    for step in range(1, LADDER + 1):
        for x1, x2 in ((step, step), (width - step, width - step)):
            low = height / 2 - half + (step - 1) * _STEP
            pen.line(x1, low, x2, low + _STEP, THIN, role="ladder")
        for y1, y2 in ((step, step), (height - step, height - step)):
            low = width / 2 - half + (step - 1) * _STEP
            pen.line(low, y1, low + _STEP, y2, THIN, role="ladder")
        along_x, along_y = (side / 2 - half + (step - 0.5) * _STEP for side in paper)
        inside = LADDER + 4.0
        for x, y in ((along_x, inside), (along_x, height - inside), (inside, along_y), (width - inside, along_y)):
            pen.text(x, y - 0.9, str(step), _SMALL, align="centre", role="ladder-number")


def _ruler(pen: Pen, x: float, y: float, ticks: int, apart: float, name: str, *, upright: bool) -> None:
    """A ruler from (x, y) to the right or upwards, with its name. Every tenth (or sixteenth) tick has its number."""
    whole = 10 if apart == 1.0 else 16
    length = ticks * apart

    def line(a1: float, b1: float, a2: float, b2: float, ink_width: float, role: str) -> None:
        ends = (x - b1, y + a1, x - b2, y + a2) if upright else (x + a1, y + b1, x + a2, y + b2)
        pen.line(*ends, ink_width, role=role)

    line(0.0, 0.0, length, 0.0, THIN, "ruler")
    for tick in range(ticks + 1):
        high = 5.0 if tick % whole == 0 else 3.5 if tick % (whole // 2) == 0 else 2.0
        line(tick * apart, 0.0, tick * apart, high, HAIR, "tick")
        if tick % whole == 0:
            number = str(tick if apart == 1.0 else tick // 16)
            at = (x - 6.0, y + tick * apart) if upright else (x + tick * apart, y + 6.0)
            pen.text(*at, number, _SMALL, align="centre", angle=90.0 if upright else 0.0)
    middle = (x + 3.6, y + length / 2) if upright else (x + length / 2, y - 3.6)
    pen.text(*middle, name, _SMALL, align="centre", angle=90.0 if upright else 0.0)


def _scales(pen: Pen, x: float, y: float) -> None:
    """The two scales that show the shift, seen from the back with the front's cross shining through.

    Each step is a bar of its own, half a mm beside the one before, with its number: along the cross's upright line for
    the first number, along its level line for the second. A back that lands to the right carries its bars to the right
    of the cross: so the bar for +1 stands 1 mm at the left, and the numbers are those of the family file as they are.
    """
    for place, half in enumerate(range(int(-2 * SHIFT), int(2 * SHIFT) + 1)):
        shift = half / 2
        along = _OFF + (place + 0.5) * _ROW
        style = _SMALL.in_face("text-bold") if half % 2 == 0 else _SMALL
        weight = THIN if half % 2 == 0 else HAIR
        low, high = along - _ROW * 0.36, along + _ROW * 0.36
        pen.line(x - shift, y + low, x - shift, y + high, weight, role="shift-right")
        pen.text(x - 8.0, y + along - 0.9, f"{shift:g}", style, align="right", role="shift-right")
        pen.line(x + low, y - shift, x + high, y - shift, weight, role="shift-up")
        pen.text(x + along + 0.9, y + 5.0, f"{shift:g}", style, angle=90.0, role="shift-up")
    far = _OFF + _ROW * (4 * SHIFT + 1)
    pen.text(x, y + far + 3.0, "first number", _SMALL, align="centre")
    pen.text(x + _OFF, y - 7.5, "second number", _SMALL)
