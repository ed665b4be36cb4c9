"""Tagged structure (ISO 32000-1, 14.8): what is a title, a heading, a paragraph or a figure, for readers that speak.

reportlab has no call for it. Marked content is written into the page's stream, and the structure tree is built from
reportlab's own objects when the last page is done. Everything that only decorates or rules the page is an artifact.
"""

from __future__ import annotations

from dataclasses import dataclass

from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFName, PDFString
from reportlab.pdfgen.canvas import Canvas

from packgen.page.marks import Mark, Picture, Text

_TAGS = {"title": "H1", "heading": "H2", "subject": "P"}
_ARTIFACTS = {"foot", "sheet-number", "year", "glue-letter", "face-name"}
_ARTIFACT = ("Artifact", "", 0.0)


@dataclass(frozen=True, slots=True)
class _Element:
    tag: str
    page: int
    number: int
    words: str


class Tags:
    """Collects the structure of one document while its pages are drawn."""

    def __init__(self, canvas: Canvas) -> None:
        self._canvas = canvas
        self._elements: list[_Element] = []
        self._open: tuple[str, str, float] | None = None
        self._page = 0
        self._number = 0

    def mark(self, mark: Mark) -> None:
        """Say what the next mark is; marks alike that follow each other are one element."""
        key = _key(mark)
        if key == self._open and key[0] != "Figure":
            return
        self.close()
        self._open = key
        tag, words, _ = key
        if tag == "Artifact":
            self._canvas._code.append("/Artifact BMC")
            return
        self._canvas._code.append(f"/{tag} <</MCID {self._number}>> BDC")
        self._elements.append(_Element(tag, self._page, self._number, words if tag == "Figure" else ""))
        self._number += 1

    def close(self) -> None:
        """End the element that is open."""
        if self._open:
            self._canvas._code.append("EMC")
            self._open = None

    def page_done(self) -> None:
        """The page was shown: give it its place in the structure."""
        page = self._canvas._doc.Pages.pages[-1]
        page.__NoDefault__ = [*page.__NoDefault__, "StructParents", "Tabs"]
        page.StructParents = self._page
        page.Tabs = PDFName("S")
        self._page += 1
        self._number = 0

    def finish(self) -> None:
        """Build the structure tree of the whole document."""
        doc = self._canvas._doc
        pages = doc.Pages.pages
        root = PDFDictionary({"Type": PDFName("StructTreeRoot")})
        root_ref = doc.Reference(root, "structure")
        whole = PDFDictionary({"Type": PDFName("StructElem"), "S": PDFName("Document"), "P": root_ref})
        whole_ref = doc.Reference(whole, "structure-document")
        kids, by_page = [], [[] for _ in pages]  # type: ignore[var-annotated]
        for k, element in enumerate(self._elements):
            entry = {
                "Type": PDFName("StructElem"), "S": PDFName(element.tag), "P": whole_ref, "K": element.number,
                "Pg": doc.Reference(pages[element.page]),
            }  # fmt: skip
            if element.words:
                entry["Alt"] = PDFString(element.words)
            ref = doc.Reference(PDFDictionary(entry), f"structure-{k}")
            kids.append(ref)
            by_page[element.page].append(ref)
        numbers: list[object] = []
        for k, refs in enumerate(by_page):
            numbers += [k, doc.Reference(PDFArray(refs), f"structure-page-{k}")]
        whole.dict["K"] = PDFArray(kids)
        root.dict["K"] = PDFArray([whole_ref])
        root.dict["ParentTree"] = doc.Reference(PDFDictionary({"Nums": PDFArray(numbers)}), "structure-parents")
        root.dict["ParentTreeNextKey"] = len(pages)
        doc.Catalog.StructTreeRoot = root
        doc.Catalog.MarkInfo = PDFDictionary({"Marked": "true"})


def _key(mark: Mark) -> tuple[str, str, float]:
    if isinstance(mark, Text) and mark.role not in _ARTIFACTS:
        return _TAGS.get(mark.role, "P"), mark.role, mark.size
    if isinstance(mark, Picture):
        return "Figure", mark.words or "picture", 0.0
    return _ARTIFACT
