"""What a finished page must never be: crowded, clipped by the printer, pale, tiny, heavy with ink, or nearly empty."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

import numpy as np
import pytest
from built import Packs, Sheet
from paper import MM, Box, PaperPage, Run, Stroke, contrast, shared

from packgen.page.look import look_for

# Boxes of letters are the boxes of their ink; two that share less than this touch at most.
TOUCH = 0.12
# WCAG 2.1, success criterion 1.4.6 (enhanced): at least 7 to 1.
CONTRAST = 7.0
CAPITAL = 0.7  # of the em: how high capitals and figures are
# The smallest type of each level, in pt: the `small` style of packgen/page/look.py (common practice, no source); the
# parent's sources stand a tenth smaller.
SMALLEST_PT = {"first": 12.0, "younger": 10.5, "older": 9.5, "upper": 9.0, "parent": 7.65}
# What is not for reading at the table (feet, rulers, page numbers, keys, labels that are cut off), in pt.
FURNITURE_PT = 5.0
BOOK_PT = 2.4 * MM  # the floor that packgen/sheets/fold_book.py states for the small pages of a book
FOOT = "this line is 10 cm"
PAGE_OF = re.compile(r"page \d+ of \d+")
INK = 0.06
FILLED = 0.35


def overlapping(page: PaperPage) -> Iterator[tuple[Run, Run]]:
    for one, other in combinations([run for run in page.runs if run.text.strip()], 2):
        if min(shared(one.box, other.box)) > TOUCH and any(
            min(shared(a, b)) > TOUCH for a in one.boxes for b in other.boxes
        ):
            yield one, other


def test_no_two_texts_lie_on_each_other(packs: Packs) -> None:
    found = [f"{page}: {a.text!r} on {b.text!r}" for page in packs.pages for a, b in overlapping(page)]
    assert not found, "\n".join(found)


def crosses(line: Stroke, box: Box, inside: float = 0.15) -> bool:
    """True if a line runs through a box (Liang and Barsky's clipping), not counting its rim."""
    left, bottom, right, top = box[0] + inside, box[1] + inside, box[2] - inside, box[3] - inside
    if right <= left or top <= bottom:
        return False
    low, high = 0.0, 1.0
    dx, dy = line.x2 - line.x1, line.y2 - line.y1
    for p, q in ((-dx, line.x1 - left), (dx, right - line.x1), (-dy, line.y1 - bottom), (dy, top - line.y1)):
        if abs(p) < 1e-12:
            if q < 0:
                return False
        elif p < 0:
            low = max(low, q / p)
        else:
            high = min(high, q / p)
    return low < high


def crossed(page: PaperPage) -> Iterator[tuple[Run, Stroke]]:
    lines = page.edges
    ends = np.array([(e.x1, e.y1, e.x2, e.y2) for e in lines]).reshape(-1, 4)
    low, high = np.minimum(ends[:, :2], ends[:, 2:]), np.maximum(ends[:, :2], ends[:, 2:])
    for run in page.runs:
        if run.text.strip():
            left, bottom, right, top = run.box
            near = (low[:, 0] < right) & (high[:, 0] > left) & (low[:, 1] < top) & (high[:, 1] > bottom)
            for index in np.flatnonzero(near):
                if any(crosses(*straightened(lines[index], box, run)) for box in run.boxes):
                    yield run, lines[index]


def straightened(line: Stroke, box: Box, run: Run) -> tuple[Stroke, Box]:
    """A line and a letter's box, both turned about the letter until it is upright: the box round a slanted letter is
    wider and higher than the letter is, and a line beside it that is slanted too runs through its corner.
    """
    if abs((run.angle + 45) % 90 - 45) < 1.0:
        return line, box
    c, s = math.cos(math.radians(run.angle)), math.sin(math.radians(run.angle))
    x, y = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2
    high = CAPITAL * run.size_pt / MM
    # The box round a rectangle turned by an angle is (w |cos| + h |sin|) wide and (w |sin| + h |cos|) high.
    wide = max(box[2] - box[0] - high * abs(s), 0.0) / abs(c) if abs(c) > abs(s) else (
        max(box[3] - box[1] - high * abs(c), 0.0) / abs(s))  # fmt: skip
    ends = [(x + c * (px - x) + s * (py - y), y - s * (px - x) + c * (py - y))
            for px, py in ((line.x1, line.y1), (line.x2, line.y2))]  # fmt: skip
    turned = replace(line, x1=ends[0][0], y1=ends[0][1], x2=ends[1][0], y2=ends[1][1])
    return turned, (x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)


def test_a_line_beside_a_slanted_letter_is_told_from_one_through_it() -> None:
    high, wide = CAPITAL * 10.0 / MM, 2.0  # a letter of 10 pt, turned by 45 degrees about (0, 0)
    half = (wide + high) / 2 / math.sqrt(2)
    run = Run("M", 0.0, 0.0, 10.0, (0.0, 0.0, 0.0), 45.0, ((-half, -half, half, half),))
    for off, through in ((high / 2 + 0.2, False), (high / 2 - 0.3, True), (0.0, True)):
        dx, dy = -off / math.sqrt(2), off / math.sqrt(2)  # parallel to its foot, so far from its middle
        line = Stroke(dx - 9, dy - 9, dx + 9, dy + 9, 0.5, 0.0, ())
        assert crosses(*straightened(line, run.box, run)) == through


def covered(page: PaperPage, run: Run) -> bool:
    """True if the letters stand on a white ground of their own, over whatever lines there are."""
    left, bottom, right, top = run.box
    return any(
        s.fill == 1.0 and s.box[0] <= left and s.box[1] <= bottom and s.box[2] >= right and s.box[3] >= top
        and s.high < top - bottom + 8.0 and s.wide < right - left + 8.0 for s in page.shapes
    )  # fmt: skip


def faint(line: Stroke) -> bool:
    """A hairline in grey, as the scores and textures of nets are drawn."""
    return line.width < 0.2 and isinstance(line.ink, float) and line.ink >= 0.4


def on_white(page: PaperPage, run: Run) -> bool:
    """True if the letters stand on something white, such as a small map that hides a part of a large one."""
    left, bottom, right, top = run.box
    return any(
        s.fill == 1.0 and s.box[0] <= left and s.box[1] <= bottom and s.box[2] >= right and s.box[3] >= top
        for s in page.shapes
    )  # fmt: skip


def unseen(page: PaperPage, line: Stroke, run: Run) -> bool:
    """True if nothing of a line is seen beside the letters: it ends at a face's edges, or lies under white ground."""
    dpi = 200
    px, grey = dpi / 25.4, page.greys(dpi)
    left, bottom, right, top = run.box
    steps = max(2, int(line.length / 0.1))
    sides: dict[tuple[bool, bool], list[bool]] = {}
    for k in range(steps + 1):
        x, y = line.x1 + (line.x2 - line.x1) * k / steps, line.y1 + (line.y2 - line.y1) * k / steps
        aside, off = max(left - x, x - right, 0.0), max(bottom - y, y - top, 0.0)
        row, column = int((page.height - y) * px), int(x * px)
        if 0.2 < max(aside, off) < 0.7 and 0 <= row < grey.shape[0] and 0 <= column < grey.shape[1]:
            sides.setdefault((x > (left + right) / 2, y > (bottom + top) / 2), []).append(bool(grey[row, column] < 225))
    return not line.dash and not any(all(dark) for dark in sides.values())


def test_no_line_runs_through_letters(packs: Packs) -> None:
    found = [
        f"{sheet}, {page}: {run.text!r} is crossed by {line}"
        for sheet in packs.sheets() for page in sheet.pages for run, line in crossed(page)
        if not (is_net(sheet) and faint(line)) and not covered(page, run)
        and not ((is_net(sheet) or on_white(page, run)) and unseen(page, line, run))
    ]  # fmt: skip
    assert not found, "\n".join(found)


def test_nothing_is_printed_where_the_printer_cannot_reach(packs: Packs) -> None:
    """Only the ticks of a fold stand there: what of them a printer leaves out is not missed."""
    dpi = 100
    pixel = 25.4 / dpi
    strip = int(packs.family.printer.margin / pixel)
    found = []
    for sheet in packs.sheets():
        for page in sheet.pages:
            grey = page.greys(dpi).copy()
            if sheet.facts.get("scheme"):
                for tick in page.strokes:
                    if tick.length < 15 and reaches_edge(tick, page):
                        blank(grey, tick, page, dpi)
            inside = grey[strip:-strip, strip:-strip]
            if (grey < 250).sum() > (inside < 250).sum():
                found.append(f"{sheet}, {page}")
    assert not found, "\n".join(found)


def reaches_edge(line: Stroke, page: PaperPage) -> bool:
    near = min(line.x1, line.x2, page.width - line.x1, page.width - line.x2,
               line.y1, line.y2, page.height - line.y1, page.height - line.y2)  # fmt: skip
    return near < 3.0


def blank(grey: np.ndarray, line: Stroke, page: PaperPage, dpi: float) -> None:  # type: ignore[type-arg]
    px = dpi / 25.4
    x1, x2 = sorted((line.x1 * px, line.x2 * px))
    y1, y2 = sorted(((page.height - line.y1) * px, (page.height - line.y2) * px))
    grey[max(0, int(y1) - 2) : int(y2) + 3, max(0, int(x1) - 2) : int(x2) + 3] = 255


def test_all_letters_stand_out_from_their_ground(packs: Packs) -> None:
    found = []
    for page in packs.pages:
        colours = page.colours(72)
        for run in page.runs:
            if run.text.strip():
                ground = ground_of(colours, run.box, page)
                if contrast(run.ink, ground) < CONTRAST:
                    found.append(f"{page}: {run.text!r}: {contrast(run.ink, ground):.2f} to 1")
    assert not found, "\n".join(found)


def ground_of(colours: np.ndarray, box: Box, page: PaperPage) -> float:  # type: ignore[type-arg]
    """The grey a text stands on: the lightest thing seen in a strip round its box that is there often."""
    left, right = int(box[0] * MM) - 1, int(box[2] * MM) + 2
    top, bottom = int((page.height - box[3]) * MM) - 1, int((page.height - box[1]) * MM) + 2
    cut = colours[max(0, top) : bottom, max(0, left) : right]
    return float(np.percentile(cut.min(axis=2), 90)) / 255


def is_net(sheet: Sheet) -> bool:
    return (sheet.kind == "model" and not sheet.part) or sheet.part in ("templates", "own")  # all with the key to lines


def furniture(sheet: Sheet, run: Run) -> bool:
    """True for what is not read at the table."""
    text = run.text.strip()
    if is_net(sheet):
        return True
    if sheet.part == "cut-outs":
        return text.isdigit() or " · " in text or text.startswith(FOOT)
    if sheet.kind == "colour-by-number" and text.isdigit():
        return True  # a number is as small as its area
    if sheet.kind == "where-in-the-world" and ("°" in text or text == "N"):
        return True
    if PAGE_OF.fullmatch(text) or (run.y < 20 and sheet.facts.get("number") and re.search(r" \d+$", text)):
        return True
    return text.startswith(FOOT) or (" · " in text and run.size_pt < 8.9)


def smallest(sheet: Sheet, run: Run) -> float:
    if furniture(sheet, run):
        return FURNITURE_PT
    return BOOK_PT if sheet.facts.get("scheme") else SMALLEST_PT[sheet.pack]


def test_no_type_is_smaller_than_its_level_allows(packs: Packs) -> None:
    found = []
    for sheet in packs.sheets():
        for page in sheet.pages:
            for run in page.runs:
                if run.text.strip() and run.size_pt < smallest(sheet, run) - 0.01:
                    found.append(f"{sheet}, {page}: {run.text!r} in {run.size_pt:.1f} pt")
    assert not found, "\n".join(found)


def pictured(packs: Packs, sheet: Sheet, page: PaperPage) -> bool:
    """True if the page shows a picture, of pixels or of lines."""
    if sheet.kind in ("finish-the-picture", "colour-by-number"):
        return True
    drawings = [w.title for w in packs.study.works if w.image and w.image.suffix == ".svg"]
    drawings += [m.title for m in packs.study.models if m.faces]
    return bool(page.images) or any(str(title) in sheet.title for title in drawings)


def test_pages_of_children_take_little_ink(packs: Packs) -> None:
    found = []
    for sheet in packs.sheets():
        for page in sheet.pages if sheet.child else ():
            cover = 1 - float(page.greys(72).mean()) / 255
            if cover >= INK and not pictured(packs, sheet, page):
                found.append(f"{sheet}, {page}: {cover:.1%}")
    assert not found, "\n".join(found)


def filled(page: PaperPage) -> float:
    """How much of the height between the margins a page uses: from the top down to its lowest mark over the foot."""
    grey = page.greys(72)
    rows = np.flatnonzero((grey < 240).sum(axis=1) > 0)
    foot = round((page.height - 24) * MM)
    used = rows[rows < foot]
    top = 13 * MM
    return float(used.max() - top) / (foot - top) if len(used) else 0.0


def test_the_last_page_of_a_sheet_is_not_left_nearly_empty(packs: Packs) -> None:
    found = []
    for sheet in packs.sheets():
        if sheet.facts.get("scheme") or is_net(sheet):
            continue
        pages = [page for page in sheet.pages if page.runs]  # the back of an odd last page is blank
        if pages and filled(pages[-1]) < FILLED:
            found.append(f"{sheet}, {pages[-1]}: {filled(pages[-1]):.0%}")
    assert not found, "\n".join(found)


WHOLE = ("biography", "timeline", "picture-study", "telling", "words", "where-in-the-world")


def test_pages_to_write_and_draw_on_are_used_to_their_foot(packs: Packs) -> None:
    """A page that is a plate, a strip of time, a map or lines to write on leaves no half of itself empty."""
    found = []
    for sheet in packs.sheets():
        for page in sheet.pages if sheet.child and sheet.kind in WHOLE and not sheet.part else ():
            if page.runs and filled(page) < 0.7:
                found.append(f"{sheet}, {page}: {filled(page):.0%}")
    assert not found, "\n".join(found)


@pytest.mark.parametrize("level", ["first", "younger", "older", "upper"])
def test_smallest_sizes_are_those_of_the_looks(level: str) -> None:
    assert look_for(level).small.size * MM == pytest.approx(SMALLEST_PT[level])
