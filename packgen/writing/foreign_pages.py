"""Pages of PDFs made elsewhere, each as one drawing that can be put anywhere: cropped, upright, with its resources."""

from __future__ import annotations

import io
import struct
import zlib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pypdf import PageObject, PdfReader, PdfWriter
from pypdf.errors import DependencyError, PyPdfError
from pypdf.generic import (
    ArrayObject,
    DecodedStreamObject,
    DictionaryObject,
    FloatObject,
    IndirectObject,
    NameObject,
    StreamObject,
)

from packgen.faults import Fault, InputFaults, Place

Matrix = tuple[float, float, float, float, float, float]

# A damaged file shows itself in the reader as almost any error, at any depth.
_DAMAGE = (
    PyPdfError, ArithmeticError, AssertionError, AttributeError, EOFError, LookupError, NotImplementedError, OSError,
    RecursionError, TypeError, ValueError, struct.error, zlib.error,
)  # fmt: skip

_HIDDEN, _PRINT = 1 << 1, 1 << 2  # annotation flags, ISO 32000-1 table 165


@dataclass(frozen=True, slots=True)
class ForeignPage:
    """One page of a PDF. width and height: what is seen of it, upright, in its own units.

    `upright` moves the seen part, turned as the page asks for, to the lower left corner.
    """

    page: PageObject
    place: Place
    width: float
    height: float
    upright: Matrix
    box: tuple[float, float, float, float]

    def form(self, writer: PdfWriter) -> IndirectObject | None:
        """The page as a form XObject of the writer's, or None if it is empty. Raises InputFaults if it is damaged."""
        try:
            return self._form(writer)
        except _DAMAGE as trouble:
            raise InputFaults([_damaged(self.place)]) from trouble

    def carry_layers(self, writer: PdfWriter) -> None:
        """Take over which layers (optional content) of the document are shown, so that hidden ones stay hidden."""
        try:
            reader = self.page.pdf
            layers = reader.root_object.get("/OCProperties") if isinstance(reader, PdfReader) else None
            if layers is not None:
                writer.root_object[NameObject("/OCProperties")] = layers.get_object().clone(writer)
        except _DAMAGE as trouble:
            raise InputFaults([_damaged(self.place)]) from trouble

    def _form(self, writer: PdfWriter) -> IndirectObject | None:
        content = b"\n".join(_streams(self.page.get("/Contents")))
        stamps = list(_appearances(self.page))
        if not content.strip() and not stamps:
            return None
        resources = _dictionary(self.page.get("/Resources")).clone(writer)
        body = _wrapped(content, self.box, _reference(resources, writer))
        group = self.page.get("/Group")
        if group is not None:
            body[NameObject("/Group")] = group.get_object().clone(writer)
        drawn = writer._add_object(body)
        if not stamps:
            return drawn
        forms = DictionaryObject({NameObject("/Page"): drawn})
        steps = ["/Page Do"]
        for number, (appearance, matrix) in enumerate(stamps):
            forms[NameObject(f"/A{number}")] = _reference(appearance.clone(writer), writer)
            steps.append(f"q {' '.join(f'{v:.6f}' for v in matrix)} cm /A{number} Do Q")
        both = DictionaryObject({NameObject("/XObject"): forms})
        return writer._add_object(_wrapped("\n".join(steps).encode("ascii"), self.box, both))


def open_pages(source: Path) -> tuple[ForeignPage, ...]:
    """Every page of a PDF. Raises InputFaults if there is no such file, or it is no PDF, damaged, locked or empty."""
    place = Place(str(source))
    try:
        data = source.read_bytes()
    except FileNotFoundError as trouble:
        raise _wrong(place, "There is no such file.", "Check the name and the folder.") from trouble
    except OSError as trouble:
        raise _wrong(place, "This cannot be read as a file.", "Give the name of a PDF that you may open.") from trouble
    if b"%PDF-" not in data[:1024]:
        raise _wrong(place, "This is not a PDF.", "Give a PDF; most programs can print or export to one.")
    try:
        reader = PdfReader(io.BytesIO(data))
        _unlock(reader, place)
        pages = tuple(_page(page, place, number) for number, page in enumerate(reader.pages, 1))
    except InputFaults:
        raise
    except _DAMAGE as trouble:
        raise InputFaults([_damaged(place)]) from trouble
    if not pages:
        raise _wrong(place, "This PDF has no pages.", "Export it again with at least one page.")
    return pages


def _unlock(reader: PdfReader, place: Place) -> None:
    """Open a file that any reader opens without asking; refuse one that needs a password."""
    if not reader.is_encrypted:
        return
    try:
        opened = bool(reader.decrypt(""))
    except (DependencyError, *_DAMAGE):
        opened = False
    if not opened:
        raise _wrong(place, "This PDF is protected by a password.", "Open it in a PDF reader and save it without one.")


def _page(page: PageObject, place: Place, number: int) -> ForeignPage:
    media, crop = _box(page.mediabox), _box(page.cropbox)
    box = (max(media[0], crop[0]), max(media[1], crop[1]), min(media[2], crop[2]), min(media[3], crop[3]))
    if box[2] <= box[0] or box[3] <= box[1]:
        box = media
    left, bottom, right, top = box
    width, height = right - left, top - bottom
    if width <= 0 or height <= 0:
        raise _wrong(place, f"Page {number} of this PDF has no size.", "Export the PDF again, or leave that page out.")
    # /Rotate turns the page clockwise; a form's own /UserUnit does not matter, as every page is scaled to its panel.
    upright: dict[int, Matrix] = {
        0: (1, 0, 0, 1, -left, -bottom),
        90: (0, -1, 1, 0, -bottom, right),
        180: (-1, 0, 0, -1, right, top),
        270: (0, 1, -1, 0, top, -left),
    }
    turned = page.rotation % 360
    if turned not in upright:
        raise _wrong(place, f"Page {number} of this PDF is turned by {turned} degrees.", "Export the PDF again.")
    if turned in (90, 270):
        width, height = height, width
    return ForeignPage(page, place, width, height, upright[turned], box)


def _wrapped(
    content: bytes, box: tuple[float, float, float, float], resources: DictionaryObject | IndirectObject
) -> StreamObject:
    """A form XObject that shows what lies in the box."""
    plain = DecodedStreamObject()
    plain.set_data(content)
    form = plain.flate_encode()
    form[NameObject("/Type")] = NameObject("/XObject")
    form[NameObject("/Subtype")] = NameObject("/Form")
    form[NameObject("/BBox")] = ArrayObject([FloatObject(f"{edge:.6f}") for edge in box])
    form[NameObject("/Resources")] = resources
    return form


def _box(rectangle: Any) -> tuple[float, float, float, float]:
    x1, y1, x2, y2 = (float(value) for value in rectangle)
    return min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)


def _streams(contents: Any) -> Iterator[bytes]:
    """The drawing of a page: one stream, or several that count as one."""
    found = contents.get_object() if contents is not None else None
    parts = found if isinstance(found, ArrayObject) else [found]
    for part in parts:
        stream = part.get_object() if part is not None else None
        if isinstance(stream, StreamObject):
            yield stream.get_data()


def _appearances(page: PageObject) -> Iterator[tuple[StreamObject, Matrix]]:
    """What comments, stamps and fields look like when printed, each with the matrix that puts it in its place."""
    found = page.get("/Annots")
    listed = found.get_object() if found is not None else None
    for entry in listed if isinstance(listed, ArrayObject) else ():
        note = entry.get_object()
        if not isinstance(note, DictionaryObject) or note.get("/Subtype") in ("/Link", "/Popup"):
            continue
        flags = int(note.get("/F", 0))
        if flags & _HIDDEN or not flags & _PRINT:
            continue
        look = _normal_look(note)
        if look is not None and "/Rect" in note:
            yield look, _look_matrix(look, _box(note["/Rect"]))


def _normal_look(note: DictionaryObject) -> StreamObject | None:
    """The stream that draws an annotation, chosen by its state if there are several."""
    look = _dictionary(note.get("/AP")).get("/N")
    look = look.get_object() if look is not None else None
    if isinstance(look, DictionaryObject) and not isinstance(look, StreamObject):
        chosen = look.get(note.get("/AS", "/Off"))
        look = chosen.get_object() if chosen is not None else None
    return look if isinstance(look, StreamObject) else None


def _look_matrix(look: StreamObject, rect: tuple[float, float, float, float]) -> Matrix:
    """The matrix that fits an appearance's turned box into the annotation's rectangle (ISO 32000-1, 12.5.5)."""
    a, b, c, d, e, f = (float(v) for v in look.get("/Matrix", (1, 0, 0, 1, 0, 0)))
    x1, y1, x2, y2 = _box(look["/BBox"])
    corners = [(a * x + c * y + e, b * x + d * y + f) for x in (x1, x2) for y in (y1, y2)]
    low_x, low_y = min(x for x, _ in corners), min(y for _, y in corners)
    wide, high = max(x for x, _ in corners) - low_x, max(y for _, y in corners) - low_y
    sx = (rect[2] - rect[0]) / wide if wide else 1.0
    sy = (rect[3] - rect[1]) / high if high else 1.0
    return sx, 0.0, 0.0, sy, rect[0] - low_x * sx, rect[1] - low_y * sy


def _dictionary(found: Any) -> DictionaryObject:
    whole = found.get_object() if found is not None else None
    return whole if isinstance(whole, DictionaryObject) else DictionaryObject()


def _reference(copied: Any, writer: PdfWriter) -> IndirectObject:
    known = getattr(copied, "indirect_reference", None)
    return known if isinstance(known, IndirectObject) else writer._add_object(copied)


def _wrong(place: Place, message: str, instead: str) -> InputFaults:
    return InputFaults([Fault(place, message, instead)])


def _damaged(place: Place) -> Fault:
    return Fault(place, "This PDF is damaged and cannot be read.", "Download it or export it again.")
