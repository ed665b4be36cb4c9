import io
import math
import os
import subprocess
import sys
import tempfile
from pathlib import Path

import pdfplumber
import pikepdf
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfWriter
from reportlab.pdfgen.canvas import Canvas

from packgen.faults import InputFaults
from packgen.folding import FoldPlan, schemes
from packgen.writing.foreign import FoldReport, fold_pdf

sys.path.insert(0, str(Path(__file__).parents[1] / "folding"))
from folding_hands import Mark
from reading_books import READERS, UP, Book

MM = 72 / 25.4
A4, LETTER = (210.0, 297.0), (215.9, 279.4)  # ISO 216; ANSI/ASME Y14.1
A5 = (148.0, 210.0)


def numbered(path: Path, count: int, size: tuple[float, float] = A5) -> Path:
    """A PDF whose pages carry their number, two digits, in the middle, and nothing else."""
    w, h = size[0] * MM, size[1] * MM
    canvas = Canvas(str(path), pagesize=(w, h), invariant=1)
    for number in range(1, count + 1):
        canvas.setFont("Courier", 40)
        canvas.drawCentredString(w / 2, h / 2 - 12, f"{number:02}")
        canvas.showPage()
    canvas.save()
    return path


def marks_in(path: Path, side_of: str = "both") -> list[Mark]:
    """The numbers printed in a finished PDF: fronts and backs in turn, or all one side of it."""
    found = []
    with pdfplumber.open(path) as pdf:
        for index, page in enumerate(pdf.pages):
            sheet, back = divmod(index, 2) if side_of == "both" else (index, side_of == "back")
            chars = page.chars
            for one, two in zip(chars[::2], chars[1::2], strict=True):
                c, d = one["matrix"][2], one["matrix"][3]
                head = (round(c / math.hypot(c, d)), round(d / math.hypot(c, d)))
                x = (min(one["x0"], two["x0"]) + max(one["x1"], two["x1"])) / 2 / MM
                y = (float(page.height) - (one["top"] + one["bottom"]) / 2) / MM
                found.append(Mark(int(one["text"] + two["text"]), sheet, "back" if back else "front", x, y, head))
    return found


def book_of(plan: FoldPlan, marks: list[Mark], sides: str | None = None) -> Book:
    lines = [[(p.x1, p.y1, p.x2, p.y2, p.kind) for p in (*s.fold_lines, *s.cut_lines)] for s in plan.sheets]
    flap = plan.program.glue_flap if len(plan.sheets) > 1 else 0.0
    return Book(
        plan.sheet_width, plan.sheet_height, sides or plan.sides, marks, lines,
        signatures=plan.signatures, panels=plan.program.panels, flap=flap,
    )  # fmt: skip


def read_book(report: FoldReport) -> list[tuple[int, tuple[int, int]]]:
    plan = report.plan
    marks = marks_in(report.files[0], "front" if plan.sides == "one-sided" else "both")
    return READERS[plan.scheme](book_of(plan, marks))


@pytest.mark.parametrize("scheme", sorted(schemes()))
@pytest.mark.parametrize(("paper", "sides"), [(A4, "two-sided-short-edge"), (LETTER, "two-sided-long-edge")])
def test_a_finished_pdf_folded_by_hand_reads_from_page_one_to_the_end(
    tmp_path: Path, scheme: str, paper: tuple[float, float], sides: str
) -> None:
    most = schemes()[scheme].most_pages
    pages = most if scheme in ("slit", "meander") else min(most or 64, 11)
    report = fold_pdf(numbered(tmp_path / "in.pdf", pages), scheme, paper, sides, 0.1, tmp_path / "out.pdf")
    assert read_book(report) == [(number, UP) for number in range(1, pages + 1)]


@settings(max_examples=8, deadline=None)
@given(
    pages=st.integers(1, 64),
    scheme=st.sampled_from(("stitched", "pocket", "concertina")),
    paper=st.sampled_from((A4, LETTER)),
    sides=st.sampled_from(("two-sided-long-edge", "two-sided-short-edge")),
)
def test_a_finished_pdf_of_any_length_reads_in_order(
    pages: int, scheme: str, paper: tuple[float, float], sides: str
) -> None:
    with tempfile.TemporaryDirectory() as folder:
        source = numbered(Path(folder) / "in.pdf", pages)
        report = fold_pdf(source, scheme, paper, sides, 0.1, Path(folder) / "out.pdf")
        assert read_book(report) == [(number, UP) for number in range(1, pages + 1)]


def test_a_printer_of_one_side_gets_fronts_and_backs_and_is_told_how_to_turn_the_stack(tmp_path: Path) -> None:
    report = fold_pdf(numbered(tmp_path / "in.pdf", 10), "stitched", A4, "one-sided", 0.1, tmp_path / "book.pdf")
    assert [path.name for path in report.files] == ["book-fronts.pdf", "book-backs.pdf"]
    marks = marks_in(report.files[0], "front") + marks_in(report.files[1], "back")
    # Turned sideways like a page: a lying sheet then goes about its short edge.
    read = READERS["stitched"](book_of(report.plan, marks, "two-sided-short-edge"))
    assert read == [(number, UP) for number in range(1, 11)]
    told = " ".join(report.notes)
    assert "Turn the whole stack over sideways" in told
    assert "seen with the sheets lying" in told
    for path in report.files:
        with pikepdf.open(path) as pdf:
            assert pdf.Root.ViewerPreferences.Duplex == "/Simplex"


def test_a_scheme_printed_on_one_side_makes_one_file(tmp_path: Path) -> None:
    for scheme, pages in (("slit", 8), ("concertina", 6)):
        source = numbered(tmp_path / "in.pdf", pages)
        report = fold_pdf(source, scheme, A4, "one-sided", 0.1, tmp_path / f"{scheme}.pdf")
        assert [path.name for path in report.files] == [f"{scheme}.pdf"]
        assert report.plan.sides == "one-sided"


@pytest.mark.parametrize(
    ("sides", "duplex"),
    [(None, "/DuplexFlipShortEdge"), ("two-sided-long-edge", "/DuplexFlipLongEdge")],
)
def test_the_file_asks_to_be_printed_unscaled_with_its_own_duplex_setting(
    tmp_path: Path, sides: str | None, duplex: str
) -> None:
    """ISO 32000-1:2008 table 150: Duplex names; PrintScaling None; PDF 1.7."""
    report = fold_pdf(numbered(tmp_path / "in.pdf", 4), "stitched", A4, sides, 0.1, tmp_path / "out.pdf")
    with pikepdf.open(report.files[0]) as pdf:
        preferences = pdf.Root.ViewerPreferences
        assert preferences.PrintScaling == "/None"
        assert preferences.Duplex == duplex
        assert preferences.PickTrayByPDFSize
        assert pdf.pdf_version == "1.7"
        assert pdf.check_pdf_syntax() == []
        # A4 is 210 x 297 mm (ISO 216), a point 1/72 in.
        assert [float(v) for v in pdf.pages[0].MediaBox] == pytest.approx([0, 0, 841.890, 595.276], abs=0.001)


def test_pages_are_scaled_whole_into_their_panel_and_centred(tmp_path: Path) -> None:
    """A square page on an A5 panel (148.5 x 210 mm): its frame is 148.5 mm square, in the middle of the panel."""
    canvas = Canvas(str(tmp_path / "in.pdf"), pagesize=(300, 300), invariant=1)
    for _ in range(2):
        canvas.rect(0, 0, 300, 300, stroke=0, fill=1)
        canvas.showPage()
    canvas.save()
    report = fold_pdf(tmp_path / "in.pdf", "half", A4, None, 0.1, tmp_path / "out.pdf")
    with pdfplumber.open(report.files[0]) as pdf:
        (frame,) = pdf.pages[0].rects
    found = [value / MM for value in (frame["x0"], frame["x1"], frame["top"], frame["bottom"])]
    assert found == pytest.approx([148.5, 297, 30.75, 179.25], abs=0.01)


@pytest.mark.parametrize("turn", [0, 90, 180, 270])
def test_turned_and_cropped_pages_are_shown_as_a_reader_shows_them(tmp_path: Path, turn: int) -> None:
    """The page asks for a clockwise turn; its text is written the other way, so that it reads upright when turned. The
    crop box is 200 x 300 points with a cross-hair at its corners, seen upright as 300 x 200 when turned a quarter."""
    left, bottom, right, top = 50, 70, 250, 370
    canvas = Canvas(str(tmp_path / "plain.pdf"), pagesize=(400, 500), invariant=1)
    canvas.translate((left + right) / 2, (bottom + top) / 2)
    canvas.rotate(turn)
    canvas.setFont("Courier", 40)
    canvas.drawCentredString(0, -12, "07")
    canvas.rotate(-turn)
    canvas.rect(-(right - left) / 2, -(top - bottom) / 2, right - left, top - bottom, stroke=0, fill=1)
    canvas.save()
    with pikepdf.open(tmp_path / "plain.pdf") as pdf:
        pdf.pages[0].CropBox = [left, top, right, bottom]  # corners in any order are allowed
        pdf.pages[0].Rotate = turn
        pdf.save(tmp_path / "in.pdf")
    report = fold_pdf(tmp_path / "in.pdf", "half", A4, None, 0.1, tmp_path / "out.pdf")
    (mark,) = marks_in(report.files[0])
    assert mark.head == UP
    assert (mark.x, mark.y) == pytest.approx((148.5 * 1.5, 105), abs=1.5)
    with pdfplumber.open(report.files[0]) as read:
        (frame,) = read.pages[0].rects
    wide, high = (frame["x1"] - frame["x0"]) / MM, (frame["bottom"] - frame["top"]) / MM
    lying = turn in (90, 270)
    assert (wide, high) == pytest.approx((148.5, 99.0) if lying else (140.0, 210.0), abs=0.01)


def test_pages_of_mixed_sizes_each_fill_their_panel(tmp_path: Path) -> None:
    canvas = Canvas(str(tmp_path / "in.pdf"), invariant=1)
    sizes = [(200, 200), (1000, 500), (100, 400), (420, 594)]
    for number, size in enumerate(sizes, 1):
        canvas.setPageSize(size)
        canvas.setFont("Courier", 20)
        canvas.drawCentredString(size[0] / 2, size[1] / 2 - 6, f"{number:02}")
        canvas.showPage()
    canvas.save()
    report = fold_pdf(tmp_path / "in.pdf", "quarto", A4, None, 0.1, tmp_path / "out.pdf")
    assert [number for number, _ in read_book(report)] == [1, 2, 3, 4]
    with pikepdf.open(report.files[0]) as pdf:
        assert pdf.check_pdf_syntax() == []


def test_split_content_and_inherited_resources_are_drawn(tmp_path: Path) -> None:
    """A page's drawing may come in several streams, and its resources from the pages' tree (ISO 32000-1, 7.7.3)."""
    numbered(tmp_path / "plain.pdf", 3)
    with pikepdf.open(tmp_path / "plain.pdf") as pdf:
        for page in pdf.pages:
            whole = page.Contents.read_bytes()
            cut = whole.index(b"BT")
            page.Contents = pdf.make_indirect(
                pikepdf.Array([pdf.make_stream(whole[:cut]), pdf.make_stream(whole[cut:])])
            )
        pdf.Root.Pages.Resources = pdf.pages[0].Resources
        for page in pdf.pages:
            del page.Resources
        pdf.save(tmp_path / "in.pdf")
    report = fold_pdf(tmp_path / "in.pdf", "stitched", A4, None, 0.1, tmp_path / "out.pdf")
    assert [number for number, _ in read_book(report)] == [1, 2, 3]


def test_empty_pages_stay_empty(tmp_path: Path) -> None:
    canvas = Canvas(str(tmp_path / "in.pdf"), pagesize=(300, 400), invariant=1)
    canvas.showPage()
    canvas.setFont("Courier", 20)
    canvas.drawCentredString(150, 194, "02")
    canvas.showPage()
    canvas.save()
    with pikepdf.open(tmp_path / "in.pdf", allow_overwriting_input=True) as pdf:
        del pdf.pages[0].Contents
        pdf.save(tmp_path / "in.pdf")
    report = fold_pdf(tmp_path / "in.pdf", "half", A4, None, 0.1, tmp_path / "out.pdf")
    assert [mark.number for mark in marks_in(report.files[0])] == [2]


def test_stamps_and_filled_fields_print_and_hidden_ones_do_not(tmp_path: Path) -> None:
    numbered(tmp_path / "plain.pdf", 1)
    with pikepdf.open(tmp_path / "plain.pdf") as pdf:

        def stamp(flags: int, x: int) -> pikepdf.Object:
            look = pdf.make_stream(b"0 0 10 10 re f", Type=pikepdf.Name.XObject, Subtype=pikepdf.Name.Form,
                                   BBox=[0, 0, 10, 10])  # fmt: skip
            return pdf.make_indirect(pikepdf.Dictionary(
                Type=pikepdf.Name.Annot, Subtype=pikepdf.Name.Stamp, Rect=[x, 100, x + 50, 120], F=flags,
                AP=pikepdf.Dictionary(N=look),
            ))  # fmt: skip

        pdf.pages[0].Annots = pikepdf.Array([stamp(4, 100), stamp(4 | 2, 200), stamp(0, 300)])
        pdf.save(tmp_path / "in.pdf")
    report = fold_pdf(tmp_path / "in.pdf", "half", A4, None, 0.1, tmp_path / "out.pdf")
    with pdfplumber.open(report.files[0]) as read:
        (rect,) = read.pages[0].rects
    # A5 at full size on its panel, which starts 148.5 mm from the left, 0.25 mm further in for the panel's rounding.
    found = (rect["x0"] - (148.5 + 0.25) * MM, rect["width"], rect["height"])
    assert found == pytest.approx((100, 50, 20), abs=0.05)


def test_hidden_layers_stay_hidden(tmp_path: Path) -> None:
    numbered(tmp_path / "plain.pdf", 1)
    with pikepdf.open(tmp_path / "plain.pdf") as pdf:
        layer = pdf.make_indirect(pikepdf.Dictionary(Type=pikepdf.Name.OCG, Name="answers"))
        pdf.pages[0].Resources.Properties = pikepdf.Dictionary(MC0=layer)
        pdf.Root.OCProperties = pikepdf.Dictionary(
            OCGs=[layer], D=pikepdf.Dictionary(OFF=[layer], BaseState=pikepdf.Name.ON)
        )
        pdf.save(tmp_path / "in.pdf")
    report = fold_pdf(tmp_path / "in.pdf", "half", A4, None, 0.1, tmp_path / "out.pdf")
    with pikepdf.open(report.files[0]) as read:
        form = next(iter(read.pages[0].Resources.XObject.values()))
        assert read.Root.OCProperties.D.OFF[0].objgen == form.Resources.Properties.MC0.objgen


def test_creep_is_measured_on_the_finished_sheets(tmp_path: Path) -> None:
    """0.1 mm of paper: the middle sheet of 16 pages is moved 0.3 mm toward the spine on either side (stack model)."""
    report = fold_pdf(numbered(tmp_path / "in.pdf", 16), "stitched", A4, None, 0.1, tmp_path / "out.pdf")
    gaps = {}
    for mark in marks_in(report.files[0]):
        gaps.setdefault(mark.sheet, []).append(abs(mark.x - 148.5))
    closer = [sum(gaps[0]) / 4 - sum(gaps[sheet]) / 4 for sheet in range(4)]
    assert closer == pytest.approx([0.0, 0.1, 0.2, 0.3], abs=0.005)
    assert any("0.1 mm thick" in note and "0.3 mm" in note for note in report.notes)


def test_a_printers_shift_is_taken_off_the_backs_only(tmp_path: Path) -> None:
    source = numbered(tmp_path / "in.pdf", 4)
    plain = marks_in(fold_pdf(source, "stitched", A4, None, 0.1, tmp_path / "a.pdf").files[0])
    moved = marks_in(fold_pdf(source, "stitched", A4, None, 0.1, tmp_path / "b.pdf", duplex_shift=(0.5, -1)).files[0])
    for one, other in zip(plain, moved, strict=True):
        wanted = (-0.5, 1.0) if one.side == "back" else (0.0, 0.0)
        assert (other.x - one.x, other.y - one.y) == pytest.approx(wanted, abs=0.005)


def test_ticks_stand_at_the_edges_where_the_folds_end(tmp_path: Path) -> None:
    report = fold_pdf(numbered(tmp_path / "in.pdf", 8), "slit", A4, None, 0.1, tmp_path / "out.pdf")
    with pdfplumber.open(report.files[0]) as pdf:
        page = pdf.pages[0]
        lines = [tuple(round(line[k] / MM, 2) for k in ("x0", "top", "x1", "bottom")) for line in page.lines]
    upright = {line[0] for line in lines if line[0] == line[2]}
    assert upright == {74.25, 148.5, 222.75}
    assert (74.25, 105.0, 222.75, 105.0) in lines  # the slit, whole
    for x0, top, x1, bottom in lines:
        if (x0, x1) != (74.25, 222.75):
            assert x0 == 0 or top == 0 or x1 == 297 or bottom == 210
            assert max(x1 - x0, bottom - top) <= 9


def test_the_same_pdf_gives_the_same_bytes_in_another_process(tmp_path: Path) -> None:
    source = numbered(tmp_path / "in.pdf", 9)
    fold_pdf(source, "stitched", A4, None, 0.1, tmp_path / "a.pdf")
    work = (
        "import sys; from pathlib import Path; from packgen.writing.foreign import fold_pdf;"
        "fold_pdf(Path(sys.argv[1]), 'stitched', (210.0, 297.0), None, 0.1, Path(sys.argv[2]))"
    )
    subprocess.run(
        [sys.executable, "-c", work, str(source), str(tmp_path / "b.pdf")],
        check=True, env={**os.environ, "PYTHONHASHSEED": "7", "TZ": "Asia/Tokyo"}, cwd=Path(__file__).parents[2],
    )  # fmt: skip
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()


def refused(source: Path, scheme: str = "stitched", out: Path | None = None) -> str:
    with pytest.raises(InputFaults) as caught:
        fold_pdf(source, scheme, A4, None, 0.1, out or source.with_name("out.pdf"))
    (fault,) = caught.value.faults
    assert fault.instead
    return f"{fault}"


def test_a_pdf_with_a_password_is_refused_and_one_that_opens_without_is_not(tmp_path: Path) -> None:
    numbered(tmp_path / "plain.pdf", 4)
    with pikepdf.open(tmp_path / "plain.pdf") as pdf:
        pdf.save(tmp_path / "locked.pdf", encryption=pikepdf.Encryption(user="ebb", owner="flow"))
        pdf.save(tmp_path / "open.pdf", encryption=pikepdf.Encryption(user="", owner="flow"))
    assert "protected by a password" in refused(tmp_path / "locked.pdf")
    report = fold_pdf(tmp_path / "open.pdf", "stitched", A4, None, 0.1, tmp_path / "out.pdf")
    assert [number for number, _ in read_book(report)] == [1, 2, 3, 4]


def test_what_is_no_pdf_or_has_no_pages_is_refused(tmp_path: Path) -> None:
    (tmp_path / "text.pdf").write_text("a list of books")
    (tmp_path / "empty.pdf").write_bytes(b"")
    with (tmp_path / "none.pdf").open("wb") as file:
        PdfWriter().write(file)
    assert "not a PDF" in refused(tmp_path / "text.pdf")
    assert "not a PDF" in refused(tmp_path / "empty.pdf")
    assert "no pages" in refused(tmp_path / "none.pdf")
    assert "no such file" in refused(tmp_path / "nowhere.pdf")
    assert "cannot be read as a file" in refused(tmp_path)


def test_a_pdf_broken_off_in_the_middle_is_refused(tmp_path: Path) -> None:
    whole = numbered(tmp_path / "in.pdf", 6).read_bytes()
    (tmp_path / "cut.pdf").write_bytes(whole[:200])
    assert "damaged" in refused(tmp_path / "cut.pdf")


@settings(max_examples=40, deadline=None)
@given(data=st.data())
def test_a_damaged_pdf_is_folded_or_refused_but_never_breaks_the_program(data: st.DataObject) -> None:
    with tempfile.TemporaryDirectory() as folder:
        whole = bytearray(numbered(Path(folder) / "in.pdf", 2).read_bytes())
        for _ in range(data.draw(st.integers(1, 6))):
            at = data.draw(st.integers(9, len(whole) - 1))
            whole[at] = data.draw(st.integers(0, 255))
        damaged = Path(folder) / "damaged.pdf"
        damaged.write_bytes(whole[: data.draw(st.integers(len(whole) // 2, len(whole)))])
        try:
            report = fold_pdf(damaged, "half", A4, None, 0.1, Path(folder) / "out.pdf")
        except InputFaults:
            return
        with pikepdf.open(io.BytesIO(report.files[0].read_bytes())) as pdf:
            assert len(pdf.pages) == 2


def test_too_many_pages_unknown_schemes_and_settings_are_refused(tmp_path: Path) -> None:
    source = numbered(tmp_path / "in.pdf", 17)
    told = refused(source, "octavo")
    assert "17 pages do not fit octavo, which holds 16" in told
    assert "stitched (any number)" in told
    assert "of: concertina, flaps" in refused(source, "origami")
    with pytest.raises(InputFaults, match="Write one-sided, two-sided-long-edge"):
        fold_pdf(source, "stitched", A4, "both", 0.1, tmp_path / "out.pdf")


def test_the_source_is_never_written_over(tmp_path: Path) -> None:
    source = numbered(tmp_path / "in.pdf", 4)
    before = source.read_bytes()
    assert "written over" in refused(source, out=source)
    os.link(source, tmp_path / "other.pdf")
    assert "written over" in refused(source, out=tmp_path / "other.pdf")
    assert "written over" in refused(source, out=tmp_path / "." / "in.pdf")
    fronts = source.rename(tmp_path / "book-fronts.pdf")
    with pytest.raises(InputFaults, match="written over"):
        fold_pdf(fronts, "stitched", A4, "one-sided", 0.1, tmp_path / "book.pdf")
    assert fronts.read_bytes() == before
