"""Contact sheets: every page of a file, small, twelve to a picture."""

import io

from PIL import Image

from packgen.page.marks import Line, Page, Stroke
from packgen.writing.pdf import Document, pdf_bytes
from packgen.writing.preview import contact_sheets


def sheets(count: int) -> list[Image.Image]:
    page = Page(210.0, 297.0, (Line(10, 10, 200, 287, Stroke(3.0)),))
    return [Image.open(io.BytesIO(data)) for data in contact_sheets(pdf_bytes(Document("A", (page,) * count)))]


def test_thirteen_pages_make_two_pictures() -> None:
    found = sheets(13)
    assert [image.format for image in found] == ["PNG", "PNG"]
    assert found[0].width > found[1].width and found[0].height > found[1].height


def test_pages_are_shown_four_across_at_sixty_dots_an_inch() -> None:
    (image,) = sheets(4)
    assert image.width >= 4 * round(210 / 25.4 * 60)
    assert image.convert("L").getextrema()[0] < 60
