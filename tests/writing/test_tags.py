"""The tagged structure of a finished PDF: marked content and the tree agree, and nothing is left unmarked."""

from __future__ import annotations

import io
import re

import pikepdf

from packgen.page.marks import Group, Line, Page, Stroke, Text
from packgen.writing.pdf import Document, pdf_bytes

PAGES = (
    Page(
        210.0,
        297.0,
        (
            Text(20, 270, "Look, cover, tell", "display", 8, role="title"),
            Line(20, 260, 190, 260, Stroke(0.3)),
            Text(20, 250, "What do you see first?", "text", 4),
            Text(20, 244, "What do you see last?", "text", 4),
            Text(20, 12, "page 1 of 2", "text", 3, role="foot"),
        ),
    ),
    Page(210.0, 297.0, (Group((Text(5, 5, "Inside a small book", "text", 4, role="heading"),), (1, 0, 0, 1, 50, 50)),)),
)


def _open() -> pikepdf.Pdf:
    return pikepdf.open(io.BytesIO(pdf_bytes(Document("A title", PAGES, language="en"))))


def test_the_file_says_that_it_is_tagged_with_language_and_title() -> None:
    with _open() as pdf:
        assert bool(pdf.Root.MarkInfo.Marked)
        assert str(pdf.Root.Lang) == "en"
        assert str(pdf.docinfo["/Title"]) == "A title"


def test_titles_headings_and_paragraphs_stand_in_reading_order() -> None:
    """Lines of one paragraph are one element; what stands at the foot is no part of the text."""
    with _open() as pdf:
        kids = pdf.Root.StructTreeRoot.K[0].K
        assert [str(kid.S) for kid in kids] == ["/H1", "/P", "/H2"]
        assert [int(kid.K) for kid in kids] == [0, 1, 0]


def test_every_element_points_to_its_page_and_back() -> None:
    with _open() as pdf:
        tree = pdf.Root.StructTreeRoot
        numbers = tree.ParentTree.Nums
        pages = {page.objgen: k for k, page in enumerate(p.obj for p in pdf.pages)}
        for kid in tree.K[0].K:
            place = pages[kid.Pg.objgen]
            assert int(pdf.pages[place].obj.StructParents) == place
            assert numbers[2 * place + 1][int(kid.K)].objgen == kid.objgen


def test_marked_content_is_balanced_on_every_page() -> None:
    with _open() as pdf:
        for page in pdf.pages:
            stream = page.Contents.read_bytes().decode("latin-1")
            assert len(re.findall(r"\bB[DM]C\b", stream)) == len(re.findall(r"\bEMC\b", stream)) > 0
