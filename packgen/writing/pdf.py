"""Marks become a PDF. With the type measurer the only place that knows reportlab, and where mm become points.

The same pages give the same bytes: dates and identifiers are fixed, faces are embedded and subset, pictures are named
by their content.
"""

from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from reportlab import rl_config
from reportlab.lib.rl_accel import fp_str
from reportlab.pdfbase.pdfdoc import PDFDictionary
from reportlab.pdfgen.canvas import Canvas

from packgen.page.marks import Group, Ink, Line, Link, Mark, Page, Path_, Picture, Stroke, Text
from packgen.page.type import font
from packgen.units import MM_PER_POINT
from packgen.writing.tags import Tags

# Five times faster and a quarter smaller than text-safe streams, which nothing needs any more.
rl_config.useA85 = 0

_PT = 1 / MM_PER_POINT
_DUPLEX = {
    "one-sided": "Simplex",
    "two-sided-long-edge": "DuplexFlipLongEdge",
    "two-sided-short-edge": "DuplexFlipShortEdge",
}


@dataclass(frozen=True, slots=True)
class Bookmark:
    """An entry of the file's outline: the page counts from 1."""

    title: str
    page: int
    level: int = 0


@dataclass(frozen=True, slots=True)
class Document:
    """What one PDF holds. `sides` is an RFC 8011 keyword."""

    title: str
    pages: tuple[Page, ...]
    sides: str = "one-sided"
    copies: int = 1
    language: str = "en"
    bookmarks: tuple[Bookmark, ...] = ()
    subject: str = ""


class _ByContent(str):
    """A path that prints as the file's name alone.

    reportlab names a picture in the PDF after what its path prints as; the prepared pictures are named by their
    content, but lie in a folder that differs from build to build.
    """

    __slots__ = ()

    def __str__(self) -> str:
        return Path(str.__str__(self)).name


def pdf_bytes(document: Document) -> bytes:
    """The bytes of a PDF 1.7 with its pages, viewer preferences, outline, language and title."""
    font("text")
    out = io.BytesIO()
    canvas = Canvas(
        out, invariant=1, pageCompression=1, pdfVersion=(1, 7), initialFontName="text", lang=document.language
    )
    canvas.setTitle(document.title)
    canvas.setAuthor("packgen")
    canvas.setCreator("packgen")
    canvas.setSubject(document.subject or document.title)
    _viewer(canvas, document)
    marked = {mark.page: [m for m in document.bookmarks if m.page == mark.page] for mark in document.bookmarks}
    tags = Tags(canvas)
    painter = Painter(canvas, tags)
    for number, page in enumerate(document.pages, 1):
        canvas.setPageSize((page.width * _PT, page.height * _PT))
        for k, mark in enumerate(marked.get(number, ())):
            key = f"p{number}-{k}"
            canvas.bookmarkPage(key)
            canvas.addOutlineEntry(mark.title, key, mark.level)
        painter.page(page.marks)
        canvas.showPage()
        tags.page_done()
    tags.finish()
    canvas.save()
    return out.getvalue()


def _viewer(canvas: Canvas, document: Document) -> None:
    """Ask the viewer to print at true size, with the run's duplex mode and copies, on the paper of the page."""
    canvas.setViewerPreference("PrintScaling", "None")
    canvas.setViewerPreference("Duplex", _DUPLEX[document.sides])
    canvas.setViewerPreference("DisplayDocTitle", "true")
    # ISO 32000-1 table 150 has these two, but reportlab's own check refuses their names.
    preferences = canvas._doc.Catalog.ViewerPreferences
    PDFDictionary.__setitem__(preferences, "PickTrayByPDFSize", "true")
    PDFDictionary.__setitem__(preferences, "NumCopies", document.copies)


class Painter:
    """Draws marks on a canvas, setting ink and line only where they change."""

    def __init__(self, canvas: Canvas, tags: Tags) -> None:
        self._canvas = canvas
        self._tags = tags
        self._forget()

    def _forget(self) -> None:
        self._fill: Ink | None = None
        self._stroke: Stroke | None = None

    def page(self, marks: Sequence[Mark]) -> None:
        """Draw the marks of a new page."""
        self._forget()
        self._draw(marks)
        self._tags.close()

    def _draw(self, marks: Sequence[Mark]) -> None:
        for mark in marks:
            if not isinstance(mark, Group):
                self._tags.mark(mark)
            match mark:
                case Text():
                    self._text(mark)
                case Line():
                    self._set_stroke(mark.stroke)
                    self._canvas.line(mark.x1 * _PT, mark.y1 * _PT, mark.x2 * _PT, mark.y2 * _PT)
                case Path_():
                    self._path(mark)
                case Picture():
                    self._canvas.drawImage(
                        _ByContent(mark.source), mark.x * _PT, mark.y * _PT, mark.width * _PT, mark.height * _PT
                    )
                case Link():
                    box = (mark.x * _PT, mark.y * _PT, (mark.x + mark.width) * _PT, (mark.y + mark.height) * _PT)
                    self._canvas.linkURL(mark.url, box, relative=1, thickness=0)
                case Group():
                    self._group(mark)

    def _group(self, group: Group) -> None:
        a, b, c, d, e, f = group.matrix
        canvas = self._canvas
        self._tags.close()
        canvas.saveState()
        canvas.transform(a, b, c, d, e * _PT, f * _PT)
        if group.clip:
            shape = canvas.beginPath()
            shape.moveTo(group.clip[0][0] * _PT, group.clip[0][1] * _PT)
            for x, y in group.clip[1:]:
                shape.lineTo(x * _PT, y * _PT)
            shape.close()
            canvas.clipPath(shape, stroke=0, fill=0)
        self._forget()
        self._draw(group.marks)
        self._tags.close()
        canvas.restoreState()
        self._forget()

    def _text(self, mark: Text) -> None:
        self._set_fill(mark.ink)
        canvas = self._canvas
        font(mark.face)
        canvas.setFont(mark.face, mark.size * _PT)
        if mark.angle:
            canvas.saveState()
            canvas.translate(mark.x * _PT, mark.y * _PT)
            canvas.rotate(mark.angle)
            canvas.drawString(0, 0, mark.text)
            canvas.restoreState()
        else:
            canvas.drawString(mark.x * _PT, mark.y * _PT, mark.text)

    def _path(self, mark: Path_) -> None:
        # Operators of ISO 32000-1, table 59, written straight into the page: pages of line art are mostly these.
        code = ["n"]
        for kind, *numbers in mark.steps:
            code.append("h" if kind == "z" else f"{fp_str([float(n) * _PT for n in numbers])} {kind}")
        if mark.fill is not None:
            self._set_fill(mark.fill)
        if mark.stroke:
            self._set_stroke(mark.stroke)
        self._canvas._code.append(" ".join(code))
        self._canvas._strokeAndFill(mark.stroke is not None, mark.fill is not None, 0)

    def _set_fill(self, ink: Ink) -> None:
        if ink != self._fill:
            self._fill = ink
            if isinstance(ink, tuple):
                self._canvas.setFillColorRGB(*ink)
            else:
                self._canvas.setFillGray(ink)

    def _set_stroke(self, stroke: Stroke) -> None:
        if stroke == self._stroke:
            return
        self._stroke = stroke
        canvas = self._canvas
        canvas.setLineWidth(stroke.width * _PT)
        canvas.setLineCap(stroke.cap)
        canvas.setLineJoin(stroke.join)
        canvas.setDash([d * _PT for d in stroke.dash] if stroke.dash else [])
        if isinstance(stroke.ink, tuple):
            canvas.setStrokeColorRGB(*stroke.ink)
        else:
            canvas.setStrokeGray(stroke.ink)
