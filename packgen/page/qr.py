"""QR codes (ISO/IEC 18004) as one shape of dark modules. The only place that knows the qrcode library."""

from __future__ import annotations

from functools import lru_cache

from packgen.page.pen import Pen

# A quiet zone of four modules on every side is part of the symbol (ISO/IEC 18004); 0.5 mm a module reads well with a
# phone's camera (common practice, no source).
QUIET = 4
_MODULE = 0.5


@lru_cache(maxsize=256)
def modules(text: str) -> tuple[tuple[bool, ...], ...]:
    """The dark modules of the smallest QR code of level M that holds the text, rows from the top, no quiet zone."""
    import qrcode  # slow to load, and only needed where a study has links
    from qrcode.constants import ERROR_CORRECT_M

    code = qrcode.QRCode(error_correction=ERROR_CORRECT_M, border=0)
    code.add_data(text)
    code.make(fit=True)
    return tuple(tuple(map(bool, row)) for row in code.get_matrix())


def side_for(text: str) -> float:
    """The side in mm at which a code for this text reads well, its quiet zone included."""
    return (len(modules(text)) + 2 * QUIET) * _MODULE


def draw_qr(pen: Pen, text: str, x: float, y: float, side: float) -> None:
    """Draw the code in the square with its lower left corner at (x, y), quiet zone included, as a link too."""
    rows = modules(text)
    module = side / (len(rows) + 2 * QUIET)
    steps: list[tuple[str | float, ...]] = []
    for down, row in enumerate(rows):
        top = y + side - (QUIET + down) * module
        start = None
        for across, dark in enumerate([*row, False]):
            if dark and start is None:
                start = across
            elif not dark and start is not None:
                left, right = x + (QUIET + start) * module, x + (QUIET + across) * module
                steps += [("m", left, top), ("l", right, top), ("l", right, top - module), ("l", left, top - module)]
                steps.append(("z",))
                start = None
    pen.path(steps, fill=0.0, role="qr")
    if text.startswith(("http://", "https://")):
        pen.link(x, y, side, side, text)
