"""QR codes, read from the rendered page as a telephone would."""

from __future__ import annotations

import numpy as np
import pypdfium2.raw as raw
import pytest
import zxingcpp
from built import Packs, Sheet


def codes(sheet: Sheet, dpi: float) -> list[str]:
    """What the codes on a sheet say."""
    found = []
    for page in sheet.pages:
        for code in zxingcpp.read_barcodes(np.ascontiguousarray(page.greys(dpi))):
            found.append(code.text)
    return found


@pytest.mark.parametrize("dpi", [150, 300])
def test_a_works_code_opens_its_link(example: Packs, dpi: float) -> None:
    links = {str(work.title): str(work.link) for work in example.study.works}
    assert len(links) >= 5
    for sheet in example.sheets("picture-study"):
        link = links[sheet.title.split(": ", 1)[1]]
        if sheet.pack in ("younger", "older"):
            assert codes(sheet, dpi) == [link], sheet


def test_every_link_that_a_code_shows_can_be_clicked_too(packs: Packs) -> None:
    links = {str(work.link) for work in packs.study.works if work.link}
    for child in packs.family.children:
        found = {
            address for sheet in packs.sheets("picture-study", child=child.name) for page in sheet.pages
            for address in clickable(page.file.pdfium[page.index])
        }  # fmt: skip
        assert found == links if child.pack != "first" else found <= links


def clickable(page: object) -> list[str]:
    """The addresses of all links of a page."""
    import ctypes

    found = []
    position, link = ctypes.c_int(0), raw.FPDF_LINK()
    while raw.FPDFLink_Enumerate(page, position, link):
        action = raw.FPDFLink_GetAction(link)
        size = raw.FPDFAction_GetURIPath(page.pdf, action, None, 0)  # type: ignore[attr-defined]
        buffer = ctypes.create_string_buffer(size)
        raw.FPDFAction_GetURIPath(page.pdf, action, buffer, size)  # type: ignore[attr-defined]
        found.append(buffer.value.decode())
    return found
