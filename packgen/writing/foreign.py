"""Imposing the pages of any PDF for a fold: print, fold, and it reads in order."""

from __future__ import annotations

import io
import logging
import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from pypdf import PdfWriter
from pypdf.generic import BooleanObject, DecodedStreamObject, DictionaryObject, NameObject

from packgen.faults import Fault, InputFaults, Place
from packgen.folding import FoldError, FoldLine, FoldPlan, FoldSheet, Slot, plan_fold, schemes
from packgen.folding.slots import Flip
from packgen.units import MM_PER_POINT
from packgen.writing.atomic import write_whole
from packgen.writing.foreign_pages import ForeignPage, open_pages

_TICK_WIDTH, _TICK_GREY = 0.25, 0.35
_DUPLEX = {
    "one-sided": "/Simplex",
    "two-sided-long-edge": "/DuplexFlipLongEdge",
    "two-sided-short-edge": "/DuplexFlipShortEdge",
}
_FLIPS: dict[str, Flip] = {
    "two-sided-long-edge": "two-sided-long-edge",
    "two-sided-short-edge": "two-sided-short-edge",
}


@dataclass(frozen=True, slots=True)
class FoldReport:
    """What `fold_pdf` wrote: the files to print in order, the plan they follow, and what to tell the parent."""

    files: tuple[Path, ...]
    plan: FoldPlan
    notes: tuple[str, ...]

    @property
    def lines(self) -> tuple[str, ...]:
        """Everything to tell: the files, then the notes."""
        return (*(str(path) for path in self.files), *self.notes)


def fold_pdf(
    source: Path,
    scheme: str,
    paper: tuple[float, float],
    sides: str | None,
    caliper: float,
    out: Path,
    *,
    panels: int | None = None,
    margin: float = 6.0,
    duplex_shift: tuple[float, float] = (0.0, 0.0),
) -> FoldReport:
    """Write the pages of a PDF as a book to fold, each page scaled whole into its panel and centred there.

    paper: width and height in mm. sides: the printer's setting (None: the one that suits the scheme); `one-sided`
    makes two files beside `out`, fronts and backs, if the scheme prints on both sides. caliper: mm of one sheet.
    duplex_shift: how far the printer lands a back (right of, above) its front, in mm. Comments, stamps and filled-in
    fields are kept as they print; links are lost. The same input gives the same bytes.

    Raises InputFaults for a source that cannot be read or does not fit the scheme, WorkFailed if writing fails.
    """
    _quiet()
    pages = open_pages(source)
    if sides is not None and sides not in _DUPLEX:
        raise InputFaults([
            Fault(Place("--sides"), f"No printer setting is called {sides!r}.", f"Write {', '.join(_DUPLEX)}.")
        ])  # fmt: skip
    try:
        plan = plan_fold(
            scheme, len(pages), *paper, caliper=caliper, two_sided_flip=_FLIPS.get(sides or ""), panels=panels,
            faces=1 if sides == "one-sided" else None, margin=margin,
        )  # fmt: skip
    except FoldError as wrong:
        place = Place(str(source)) if scheme in schemes() else Place("--scheme")
        raise InputFaults([Fault(place, _sentence(wrong.message), _sentence(wrong.instead))]) from wrong
    written = _files(plan, sides, out)
    for path, _, _ in written:
        _refuse_the_source(source, path)
    made = [(path, _document(pages, plan, chosen, duplex, duplex_shift)) for path, chosen, duplex in written]
    for path, data in made:
        write_whole(path, data)
    return FoldReport(tuple(path for path, _ in made), plan, tuple(_notes(plan, split=len(made) > 1)))


Chosen = tuple[tuple[FoldSheet, bool], ...]  # sheets, and whether their front is meant


def _files(plan: FoldPlan, sides: str | None, out: Path) -> list[tuple[Path, Chosen, str]]:
    """The files to write: path, the sides in it, and their duplex setting."""
    fronts = tuple((sheet, True) for sheet in plan.sheets)
    backs = tuple((sheet, False) for sheet in plan.sheets)
    if plan.sides == "one-sided":
        return [(out, fronts, "one-sided")]
    if sides == "one-sided":
        front, back = (out.with_name(f"{out.stem}-{name}{out.suffix or '.pdf'}") for name in ("fronts", "backs"))
        return [(front, fronts, "one-sided"), (back, backs, "one-sided")]
    both = tuple(side for pair in zip(fronts, backs, strict=True) for side in pair)
    return [(out, both, plan.sides)]


def _refuse_the_source(source: Path, path: Path) -> None:
    same = path.exists() and os.path.samefile(source, path)
    if same or source.resolve() == path.resolve():
        raise InputFaults([
            Fault(Place(str(path)), "The folded book would be written over the PDF it is made from.",
                  "Give another name with --out.")
        ])  # fmt: skip


def _document(
    pages: Sequence[ForeignPage], plan: FoldPlan, chosen: Chosen, duplex: str, shift: tuple[float, float]
) -> bytes:
    writer = PdfWriter()
    writer.pdf_header = "%PDF-1.7"  # the Duplex preference came with 1.7
    pages[0].carry_layers(writer)
    for sheet, front in chosen:
        side = writer.add_blank_page(plan.sheet_width / MM_PER_POINT, plan.sheet_height / MM_PER_POINT)
        slots, ticks = (sheet.front, sheet.front_ticks) if front else (sheet.back, sheet.back_ticks)
        forms = DictionaryObject()
        steps = [] if front else [f"1 0 0 1 {_number(-shift[0])} {_number(-shift[1])} cm"]
        for slot in slots:
            if not 0 < slot.page <= len(pages):
                continue
            page = pages[slot.page - 1]
            form = page.form(writer)
            if form is not None:
                name = f"/P{slot.page}"
                forms[NameObject(name)] = form
                steps.append(_placed(page, slot, name))
        steps += _lines((*ticks, *(sheet.inner_cuts if front else ())))
        content = DecodedStreamObject()
        in_mm = f"{_number(1 / MM_PER_POINT)} 0 0 {_number(1 / MM_PER_POINT)} 0 0 cm"
        content.set_data("\n".join(["q", in_mm, *steps, "Q"]).encode("ascii"))
        side[NameObject("/Contents")] = writer._add_object(content.flate_encode())
        side[NameObject("/Resources")] = DictionaryObject({NameObject("/XObject"): forms})
    _prefer(writer, duplex)
    held = io.BytesIO()
    writer.write(held)
    return held.getvalue()


def _prefer(writer: PdfWriter, duplex: str) -> None:
    """Set how the file wants to be printed: unscaled, on paper of its own size, with this duplex setting."""
    preferences = writer.create_viewer_preferences()
    preferences[NameObject("/PrintScaling")] = NameObject("/None")
    preferences[NameObject("/Duplex")] = NameObject(_DUPLEX[duplex])
    preferences[NameObject("/PickTrayByPDFSize")] = BooleanObject(True)
    writer.metadata = {"/Producer": "packgen"}


def _placed(page: ForeignPage, slot: Slot, name: str) -> str:
    """The drawing of one page in its cell: clipped to the cell, as large as fits, centred in what no flap covers."""
    left, bottom, right, top = slot.clear
    room_x, room_y = slot.page_width - left - right, slot.page_height - bottom - top
    scale = min(room_x / page.width, room_y / page.height)
    x = left + (room_x - page.width * scale) / 2
    y = bottom + (room_y - page.height * scale) / 2
    cell = " ".join(map(_number, (slot.x, slot.y, slot.width, slot.height)))
    slot_to_side = " ".join(map(_number, slot.matrix))
    in_slot = " ".join(map(_number, (scale, 0.0, 0.0, scale, x, y)))
    upright = " ".join(map(_number, page.upright))
    return f"q {cell} re W n {slot_to_side} cm {in_slot} cm {upright} cm {name} Do Q"


def _lines(lines: Sequence[FoldLine]) -> Iterator[str]:
    if lines:
        yield f"q {_number(_TICK_WIDTH)} w {_number(_TICK_GREY)} G"
        for line in lines:
            x1, y1, x2, y2 = map(_number, (line.x1, line.y1, line.x2, line.y2))
            yield f"{x1} {y1} m {x2} {y2} l S"
        yield "Q"


def _number(value: float) -> str:
    """A number for a content stream: seven places are far finer than any printer; PDF knows no exponents."""
    text = f"{value:.7f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:] + ("" if words.endswith(".") else ".")


def _notes(plan: FoldPlan, *, split: bool) -> Iterator[str]:
    """What the parent should know, in sentences."""
    sheets = len(plan.sheets)
    blanks = plan.book_pages - plan.pages
    yield (
        f"{plan.title}: {_count(plan.book_pages, 'page')} of {plan.page_width:.4g} × {plan.page_height:.4g} mm on "
        f"{_count(sheets, 'sheet')}" + (f", the last {_count(blanks, 'page')} blank." if blanks else ".")
    )
    if len(plan.signatures) > 1:
        sizes = " and ".join(map(str, plan.signatures))
        yield f"Too thick to fold in one: fold and staple sections of {sizes} sheets, then lay them on one another."
    if plan.creep_most > 0:
        yield (
            f"Paper {plan.caliper:g} mm thick: inner pages are moved up to {plan.creep_most:.2g} mm toward the spine."
        )
    if split:
        yield from turning_notes(plan)
    else:
        yield f"Print at 100 %, set to {plan.sides}."


def turning_notes(plan: FoldPlan) -> tuple[str, ...]:
    """How to print a two-sided book on a printer that prints one side at a time."""
    standing = "standing" if plan.sheet_height >= plan.sheet_width else "lying"
    return (
        "Print the file of fronts at 100 % and keep the sheets in order.",
        f"Turn the whole stack over sideways like the page of a book, seen with the sheets {standing}, so that left "
        "and right change places and the top stays at the top; put it back in the tray and print the file of backs.",
        "The first sheet's back must meet the first sheet's front: if the printer piles its sheets face up, put them "
        "in the opposite order first. Try it with one sheet, marked with a pencil cross at the top.",
    )


def _count(number: int, thing: str) -> str:
    return f"{number} {thing}{'' if number == 1 else 's'}"


def _quiet() -> None:
    """Keep pypdf's remarks on untidy files to itself: what matters comes back as a fault."""
    logging.getLogger("pypdf").setLevel(logging.CRITICAL)
