import io

import pdfplumber
import pytest

from packgen.page.marks import Line, Page, Text
from packgen.page.type import Faces
from packgen.printed.printer_page import printer_pages
from packgen.writing.pdf import Document, pdf_bytes

MM = 72 / 25.4
PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}  # ISO 216; ANSI/ASME Y14.1
BOTH = pytest.mark.parametrize("paper", sorted(PAPERS))


def pages(paper: str) -> tuple[Page, Page]:
    return printer_pages(PAPERS[paper], Faces())


def lines(page: Page, role: str) -> list[Line]:
    return [mark for mark in page.marks if isinstance(mark, Line) and mark.role == role]


@BOTH
def test_rulers_are_true_in_both_directions_in_the_finished_pdf(paper: str) -> None:
    """100 mm, and 4 in = 101.6 mm (the inch is 25.4 mm by definition, NIST SP 811)."""
    data = pdf_bytes(Document("page", pages(paper), "two-sided-long-edge"))
    with pdfplumber.open(io.BytesIO(data)) as pdf:
        found = pdf.pages[0].lines
        level = {round((line["x1"] - line["x0"]) / MM, 2) for line in found}
        upright = {round((line["bottom"] - line["top"]) / MM, 2) for line in found}
    assert {100.0, 101.6} <= level
    assert {100.0, 101.6} <= upright


@BOTH
def test_the_ladder_has_a_bar_at_every_millimetre_from_all_four_edges_of_both_sides(paper: str) -> None:
    width, height = PAPERS[paper]
    for page in pages(paper):
        bars = lines(page, "ladder")
        upright = [bar.x1 for bar in bars if bar.x1 == bar.x2]
        level = [bar.y1 for bar in bars if bar.y1 == bar.y2]
        for found, far in ((upright, width), (level, height)):
            assert sorted(round(v, 6) for v in found if v < far / 2) == list(range(1, 13))
            assert sorted(round(far - v, 6) for v in found if v > far / 2) == list(range(1, 13))


def readings(paper: str, right: float, up: float, *, about_level: bool = False) -> tuple[float, float]:
    """What a parent reads on the back of a sheet whose back landed right of and above its place by that much.

    The sheet is paper here: the front's cross is looked at through it, mirrored; of the back's bars, the one on the
    cross's line is found, and the number beside it.
    """
    front, back = pages(paper)
    width, height = PAPERS[paper]
    (upright,) = [line for line in lines(front, "cross") if line.x1 == line.x2]
    (level,) = [line for line in lines(front, "cross") if line.y1 == line.y2]
    cross_x = upright.x1 if about_level else width - upright.x1
    cross_y = height - level.y1 if about_level else level.y1
    first = min(lines(back, "shift-right"), key=lambda bar: abs(bar.x1 + right - cross_x))
    second = min(lines(back, "shift-up"), key=lambda bar: abs(bar.y1 + up - cross_y))
    texts = [mark for mark in back.marks if isinstance(mark, Text)]
    one = min((t for t in texts if t.role == "shift-right"), key=lambda t: abs(t.y + 0.9 - (first.y1 + first.y2) / 2))
    two = min((t for t in texts if t.role == "shift-up"), key=lambda t: abs(t.x - 0.9 - (second.x1 + second.x2) / 2))
    return float(one.text), float(two.text)


@BOTH
@pytest.mark.parametrize("shift", [(0.0, 0.0), (0.5, -1.0), (-2.5, 3.0), (1.0, 0.5), (3.0, -3.0)])
@pytest.mark.parametrize("about_level", [False, True])
def test_the_numbers_read_are_the_shift_as_the_family_file_wants_it(
    paper: str, shift: tuple[float, float], about_level: bool
) -> None:
    """`duplex shift` is how far a back lands right of and above its place, looked at from the back."""
    assert readings(paper, *shift, about_level=about_level) == shift


@BOTH
def test_the_cross_reaches_every_bar_of_the_scales(paper: str) -> None:
    front, back = pages(paper)
    cross = lines(front, "cross")
    top = max(line.y2 for line in cross)
    width = PAPERS[paper][0]
    right = width - min(line.x1 for line in cross)
    assert all(bar.y2 <= top for bar in lines(back, "shift-right"))
    assert all(bar.x2 <= right for bar in lines(back, "shift-up"))


@BOTH
def test_words_keep_clear_of_the_edges_and_of_one_another(paper: str) -> None:
    width, height = PAPERS[paper]
    faces = Faces()
    for page in pages(paper):
        boxes = []
        for mark in page.marks:
            if isinstance(mark, Text) and mark.angle == 0:
                wide = faces.width(mark.text, mark.face, mark.size)
                boxes.append((mark.x, mark.y - 0.2 * mark.size, mark.x + wide, mark.y + 0.7 * mark.size))
        for box in boxes:
            assert box[0] > 12
            assert box[1] > 12
            assert box[2] < width - 12
            assert box[3] < height - 12
        for one in boxes:
            for other in boxes:
                if one is not other:
                    across = min(one[2], other[2]) - max(one[0], other[0])
                    along = min(one[3], other[3]) - max(one[1], other[1])
                    assert min(across, along) <= 0.01


@BOTH
def test_no_drawing_crosses_the_words(paper: str) -> None:
    faces = Faces()
    for page in pages(paper):
        for mark in page.marks:
            if not isinstance(mark, Text) or mark.angle or mark.role != "text":
                continue
            wide = faces.width(mark.text, mark.face, mark.size)
            for line in page.marks:
                if isinstance(line, Line):
                    across = min(mark.x + wide, max(line.x1, line.x2)) - max(mark.x, min(line.x1, line.x2))
                    along = min(mark.y + 0.7 * mark.size, max(line.y1, line.y2)) - max(mark.y, min(line.y1, line.y2))
                    assert not (across > 0 and along > 0), (mark.text, line)
