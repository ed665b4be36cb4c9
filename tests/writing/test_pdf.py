"""Marks in a PDF, found again by a second reader: in place, at size, in their ink, and asking to be printed so."""

import io
from pathlib import Path

import pdfplumber
import pikepdf
import pytest
from PIL import Image

from packgen.page.marks import Group, Line, Link, Mark, Page, Path_, Picture, Stroke, Text
from packgen.writing.pdf import Bookmark, Document, pdf_bytes

MM = 72 / 25.4
PAGE = (210.0, 297.0)


def page_of(*marks: Mark) -> pdfplumber.page.Page:
    data = pdf_bytes(Document("A title", (Page(*PAGE, tuple(marks)),)))
    return pdfplumber.open(io.BytesIO(data)).pages[0]


def mm(*points: float) -> list[float]:
    return [point / MM for point in points]


def test_a_page_has_its_size_to_a_thousandth_of_a_mm() -> None:
    page = page_of()
    assert mm(float(page.width), float(page.height)) == pytest.approx(PAGE, abs=1e-3)


def test_a_line_lies_where_it_was_put_with_its_width_ink_and_dashes() -> None:
    (line,) = page_of(Line(10.0, 20.0, 110.0, 20.0, Stroke(0.35, 0.45, (2.0, 1.5)))).lines
    assert mm(line["x0"], line["y0"], line["x1"], line["y1"]) == pytest.approx([10, 20, 110, 20], abs=1e-3)
    assert line["linewidth"] / MM == pytest.approx(0.35, abs=1e-3)
    assert mm(*line["dash"][0]) == pytest.approx([2.0, 1.5], abs=1e-3)
    assert line["stroking_color"] in (0.45, (0.45,))


def test_a_dash_does_not_reach_the_next_line() -> None:
    lines = page_of(Line(0, 1, 9, 1, Stroke(0.2, 0.0, (1.0, 1.0))), Line(0, 2, 9, 2, Stroke(0.2))).lines
    assert [bool(line["dash"][0]) for line in lines] == [True, False]


def test_text_stands_with_its_baseline_and_size_in_mm() -> None:
    (char,) = page_of(Text(50.0, 100.0, "x", "text", 5.0, 0.3)).chars
    assert mm(*char["matrix"][4:]) == pytest.approx([50.0, 100.0], abs=1e-3)
    assert char["size"] / MM == pytest.approx(5.0, abs=1e-3)
    assert char["non_stroking_color"] in (0.3, (0.3,))


def test_turned_text_runs_up_the_page() -> None:
    chars = page_of(Text(50.0, 100.0, "up", "text", 5.0, angle=90.0)).chars
    assert all(char["matrix"][:4] == pytest.approx((0, 1, -1, 0), abs=1e-9) for char in chars)
    assert chars[1]["y0"] > chars[0]["y0"]


def test_a_group_moves_its_marks_and_only_them() -> None:
    inside = Group((Line(0, 0, 10, 0, Stroke(0.2)),), (0.0, 2.0, -2.0, 0.0, 100.0, 50.0))
    moved, plain = page_of(inside, Line(0, 0, 10, 0, Stroke(0.2))).lines
    assert mm(moved["x0"], moved["y0"], moved["x1"], moved["y1"]) == pytest.approx([100, 50, 100, 70], abs=1e-3)
    assert mm(plain["x0"], plain["x1"]) == pytest.approx([0, 10], abs=1e-3)


def test_a_clip_hides_what_lies_outside_it() -> None:
    import pypdfium2

    box = Path_((("m", 0, 0), ("l", 100, 0), ("l", 100, 100), ("l", 0, 100), ("z",)), None, 0.0)
    data = pdf_bytes(Document("A", (Page(*PAGE, (Group((box,), clip=((0, 0), (50, 0), (50, 50), (0, 50))),)),)))
    grey = pypdfium2.PdfDocument(data)[0].render(scale=1, grayscale=True).to_numpy()
    height = grey.shape[0]
    assert grey[height - round(25 * MM), round(25 * MM)] == 0
    assert grey[height - round(75 * MM), round(75 * MM)] == 255


def test_a_shape_with_a_hole_is_filled_by_the_even_odd_rule() -> None:
    import pypdfium2

    def square(a: float, b: float) -> tuple[tuple[str | float, ...], ...]:
        return ("m", a, a), ("l", b, a), ("l", b, b), ("l", a, b), ("z",)

    data = pdf_bytes(Document("A", (Page(*PAGE, (Path_((*square(0, 60), *square(20, 40)), None, 0.0),)),)))
    grey = pypdfium2.PdfDocument(data)[0].render(scale=1, grayscale=True).to_numpy()
    height = grey.shape[0]
    assert grey[height - round(10 * MM), round(10 * MM)] == 0
    assert grey[height - round(30 * MM), round(30 * MM)] == 255


def test_a_picture_fills_its_rectangle_and_is_embedded_once(tmp_path: Path) -> None:
    Image.new("RGB", (40, 20), "teal").save(tmp_path / "p.png")
    marks = (Picture(10, 20, 80, 40, tmp_path / "p.png"), Picture(10, 100, 40, 20, tmp_path / "p.png"))
    data = pdf_bytes(Document("A", (Page(*PAGE, marks),)))
    first, second = pdfplumber.open(io.BytesIO(data)).pages[0].images
    assert mm(first["x0"], first["x1"], first["y0"], first["y1"]) == pytest.approx([10, 90, 20, 60], abs=1e-3)
    assert mm(second["x0"], second["x1"]) == pytest.approx([10, 50], abs=1e-3)
    with pikepdf.open(io.BytesIO(data)) as pdf:
        assert sum(1 for thing in pdf.objects if isinstance(thing, pikepdf.Stream)
                   and thing.get("/Subtype") == "/Image") == 1  # fmt: skip


def test_a_link_opens_its_address() -> None:
    data = pdf_bytes(Document("A", (Page(*PAGE, (Link(10, 10, 20, 20, "https://example.org/a"),)),)))
    with pikepdf.open(io.BytesIO(data)) as pdf:
        (note,) = pdf.pages[0].Annots
        assert str(note.A.URI) == "https://example.org/a"
        assert [float(x) / MM for x in note.Rect] == pytest.approx([10, 10, 30, 30], abs=1e-3)


@pytest.mark.parametrize(
    ("sides", "duplex"),
    [
        ("one-sided", "/Simplex"),
        ("two-sided-long-edge", "/DuplexFlipLongEdge"),
        ("two-sided-short-edge", "/DuplexFlipShortEdge"),
    ],
)
def test_viewer_preferences_are_those_of_iso_32000_table_150(sides: str, duplex: str) -> None:
    data = pdf_bytes(Document("A", (Page(*PAGE, ()),), sides, copies=3, language="de"))
    with pikepdf.open(io.BytesIO(data)) as pdf:
        wishes = pdf.Root.ViewerPreferences
        assert (wishes.PrintScaling, wishes.Duplex, int(wishes.NumCopies)) == ("/None", duplex, 3)
        assert bool(wishes.PickTrayByPDFSize) and bool(wishes.DisplayDocTitle)
        assert str(pdf.Root.Lang) == "de" and pdf.pdf_version == "1.7"


def test_bookmarks_lead_to_their_pages() -> None:
    pages = tuple(Page(*PAGE, ()) for _ in range(3))
    data = pdf_bytes(Document("A", pages, bookmarks=(Bookmark("First", 1), Bookmark("Last", 3))))
    with pikepdf.open(io.BytesIO(data)) as pdf, pdf.open_outline() as outline:
        assert [item.title for item in outline.root] == ["First", "Last"]


def test_the_same_pages_give_the_same_bytes() -> None:
    def made() -> bytes:
        marks = (Text(1, 1, "twice", "display", 5.0), Line(0, 0, 1, 1, Stroke(0.2)))
        return pdf_bytes(Document("Ä title", (Page(*PAGE, marks),)))

    assert made() == made()


def test_letters_of_many_scripts_come_back_as_they_were() -> None:
    words = "Nguyễn Ελένη Анна 田中 œuvre"
    from packgen.page.pen import Pen
    from packgen.page.text import Style
    from packgen.page.type import Faces

    pen = Pen(Faces())
    pen.text(10, 10, words, Style("text", 5.0, 6.0))
    page = page_of(*pen.marks)
    assert "".join(char["text"] for char in page.chars) == words
