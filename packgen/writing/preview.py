"""Contact sheets: the built pages as small pictures side by side, one PNG for each file."""

from __future__ import annotations

from collections.abc import Iterator

import pypdfium2

from packgen.pictures.contact import contact_sheet

_DPI = 60


def contact_sheets(data: bytes, across: int = 4, most: int = 12) -> Iterator[bytes]:
    """PNG bytes of contact sheets of a PDF's pages, `most` pages on each."""
    document = pypdfium2.PdfDocument(data)
    try:
        for start in range(0, len(document), most):
            pages = [document[k] for k in range(start, min(start + most, len(document)))]
            yield contact_sheet([page.render(scale=_DPI / 72).to_pil() for page in pages], across)
    finally:
        document.close()
