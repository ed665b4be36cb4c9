"""The two commands about the printer itself: fold any PDF, and the page that measures a printer."""

from __future__ import annotations

from pathlib import Path

from packgen.faults import Fault, InputFaults, Place
from packgen.folding.slots import Sides
from packgen.page.desk import PAPERS
from packgen.page.type import Faces
from packgen.printed.printer_page import printer_pages
from packgen.reading.measures import read_length
from packgen.reading.messages import Misread
from packgen.writing.atomic import write_whole
from packgen.writing.foreign import fold_pdf
from packgen.writing.pdf import Document, pdf_bytes


def run(pages: Path, scheme: str, paper: str, sides: Sides | None, caliper: str, out: Path) -> tuple[str, ...]:
    """Impose a PDF's pages; returns what to tell. Raises InputFaults and WorkFailed."""
    written = caliper if any(letter.isalpha() or letter == '"' for letter in caliper) else f"{caliper} mm"
    try:
        thick = read_length(written)
    except Misread as wrong:
        raise InputFaults([Fault(Place("--caliper"), str(wrong), wrong.instead)]) from wrong
    report = fold_pdf(pages, scheme, PAPERS[paper], sides, thick, out)
    return (*(str(path) for path in report.files), *report.notes)


def printer_page(paper: str, out: Path) -> None:
    """Write the duplex page that shows a printer's scale, margins and shift. Raises WorkFailed."""
    sides = printer_pages(PAPERS[paper], Faces())
    document = Document("packgen · printer page", tuple(sides), "two-sided-long-edge")
    write_whole(out, pdf_bytes(document))
