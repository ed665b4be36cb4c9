"""QR codes: as another library reads them, with their quiet zone, as large as a telephone needs."""

import numpy as np
import pypdfium2
import pytest
import zxingcpp
from hypothesis import given, settings
from hypothesis import strategies as st
from page_marks import FACES

from packgen.page.marks import Link, Page, Path_
from packgen.page.pen import Pen
from packgen.page.qr import QUIET, draw_qr, modules, side_for
from packgen.writing.pdf import Document, pdf_bytes

LINK = "https://example.org/quenby/harbour-at-dusk"


def read(text: str, dpi: float) -> list[str]:
    pen = Pen(FACES)
    side = side_for(text)
    draw_qr(pen, text, 20.0, 20.0, side)
    page = Page(side + 40.0, side + 40.0, tuple(pen.marks))
    grey = pypdfium2.PdfDocument(pdf_bytes(Document("A", (page,))))[0].render(scale=dpi / 72, grayscale=True).to_numpy()
    return [code.text for code in zxingcpp.read_barcodes(np.ascontiguousarray(grey))]


@pytest.mark.parametrize("dpi", [150, 300])
def test_a_code_says_what_it_was_given(dpi: float) -> None:
    assert read(LINK, dpi) == [LINK]


@given(st.text(alphabet=st.characters(min_codepoint=33, max_codepoint=126), min_size=1, max_size=150))
@settings(max_examples=12, deadline=None)
def test_any_address_comes_back(text: str) -> None:
    assert read(text, 200) == [text]


def test_a_code_keeps_four_modules_quiet_on_every_side() -> None:
    """ISO/IEC 18004: the quiet zone is four modules wide."""
    pen = Pen(FACES)
    draw_qr(pen, LINK, 0.0, 0.0, 33.0)
    dark = pen.marks[0]
    assert isinstance(dark, Path_) and QUIET == 4
    module = 33.0 / (len(modules(LINK)) + 8)
    xs = [float(step[1]) for step in dark.steps if len(step) > 1]
    assert min(xs) == pytest.approx(4 * module) and max(xs) == pytest.approx(33.0 - 4 * module)


def test_a_code_has_the_size_of_its_version() -> None:
    """ISO/IEC 18004: version v has 17 + 4 v modules a side; 42 letters at level M take version 3 (26 to 42 of them)."""
    assert len(modules(LINK)) == 29 and len(LINK) == 42
    assert side_for(LINK) == pytest.approx((29 + 8) * 0.5)


def test_only_web_addresses_can_be_clicked() -> None:
    for text, links in ((LINK, 1), ("javascript:alert(1)", 0), ("file:///etc/hostname", 0)):
        pen = Pen(FACES)
        draw_qr(pen, text, 0.0, 0.0, 30.0)
        assert sum(isinstance(mark, Link) for mark in pen.marks) == links
