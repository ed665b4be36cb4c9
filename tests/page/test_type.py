"""Faces: which letters they have, who steps in for the others, and that their heights are as said."""

from pathlib import Path

import pypdfium2
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from packgen.faults import WorkFailed
from packgen.page.marks import Page, Text
from packgen.page.type import ROLES, Faces, is_right_to_left, script_names
from packgen.writing.pdf import Document, pdf_bytes

FACES = Faces()


@pytest.mark.parametrize("face", ROLES)
def test_every_face_sets_english_alone_and_european_names_with_help(face: str) -> None:
    assert FACES.covers("ABCXYZabcxyz0123456789 .,;:!?'()-", face)
    assert not FACES.missing("Dvořák Łódź Gödel Curaçao Nguyễn Ελένη Щукин 田中一村 陈", face)


@pytest.mark.parametrize("face", ROLES)
def test_letters_no_face_has_are_named_once_in_order(face: str) -> None:
    assert FACES.missing("aसूसb", face) == ("स", "ू")


@given(st.text(alphabet="abc ÄŁяΩ田ễ", max_size=30), st.sampled_from(ROLES))
@settings(max_examples=60, deadline=None)
def test_runs_give_the_text_back_and_widths_add_up(text: str, face: str) -> None:
    runs = FACES.runs(text, face)
    assert "".join(part for _, part in runs) == text
    assert FACES.width(text, face, 4.0) == pytest.approx(sum(FACES.width(part, f, 4.0) for f, part in runs), abs=1e-6)


def test_width_grows_in_proportion_to_size() -> None:
    assert FACES.width("harbour", "text", 8.0) == pytest.approx(2 * FACES.width("harbour", "text", 4.0))


@pytest.mark.parametrize("face", ROLES)
def test_heights_are_those_of_the_letters_as_rendered(face: str) -> None:
    """The boxes of letters as another library finds them; at an em of 100 mm the boxes are in hundredths of an em."""
    pages = tuple(Page(300.0, 300.0, (Text(20.0, 100.0, letter, face, 100.0),)) for letter in "xHdp")
    file = pypdfium2.PdfDocument(pdf_bytes(Document("A", pages)))
    boxes = [[edge / 72 * 25.4 - 100.0 for edge in page.get_textpage().get_charbox(0)] for page in file]
    metrics = FACES.metrics(face)
    assert boxes[0][3] / 100 == pytest.approx(metrics.x, abs=0.03)
    assert boxes[1][3] / 100 == pytest.approx(metrics.cap, abs=0.03)
    assert boxes[2][3] / 100 == pytest.approx(metrics.ascent, abs=0.04)
    assert -boxes[3][1] / 100 == pytest.approx(metrics.descent, abs=0.04)


def test_a_familys_font_that_is_none_is_told(tmp_path: Path) -> None:
    (tmp_path / "f.ttf").write_bytes(b"not a font")
    with pytest.raises(WorkFailed, match=r"f\.ttf cannot be read"):
        Faces((tmp_path / "f.ttf",))
    with pytest.raises(WorkFailed):
        Faces((tmp_path / "none.ttf",))


def test_scripts_are_named_and_their_direction_known() -> None:
    assert script_names("שरא") == ("Hebrew", "Devanagari")
    assert is_right_to_left("שרה") and is_right_to_left("a سلام") and not is_right_to_left("Ελένη 田")
