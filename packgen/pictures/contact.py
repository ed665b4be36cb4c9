"""Small pictures of pages side by side on one sheet."""

from __future__ import annotations

import io
from collections.abc import Sequence

from PIL import Image

_GAP_PX = 14
_GROUND = (214, 214, 210)


def contact_sheet(pages: Sequence[Image.Image], across: int) -> bytes:
    """PNG bytes of the pages in rows of `across`, each row as high as its highest page."""
    rows = [pages[k : k + across] for k in range(0, len(pages), across)]
    width = max(sum(p.width + _GAP_PX for p in row) for row in rows) + _GAP_PX
    height = sum(max(p.height for p in row) + _GAP_PX for row in rows) + _GAP_PX
    sheet = Image.new("RGB", (width, height), _GROUND)
    top = _GAP_PX
    for row in rows:
        left = _GAP_PX
        for page in row:
            sheet.paste(page.convert("RGB"), (left, top))
            left += page.width + _GAP_PX
        top += max(p.height for p in row) + _GAP_PX
    out = io.BytesIO()
    sheet.quantize(128, dither=Image.Dither.NONE).save(out, "PNG", optimize=True)
    return out.getvalue()
