from packgen.page.marks import Group, Page, Text
from packgen.page.numbering import with_count
from packgen.page.type import Faces

FACES = Faces()
WORDS = Text(10.0, 5.0, "Study", "text", 3.0, role="foot")
COUNT = Text(150.0, 5.0, "page 1 of 2", "text", 3.0, role="foot")


def right(text: Text) -> float:
    return text.x + FACES.width(text.text, text.face, text.size)


def test_the_count_is_set_again_and_ends_at_the_same_place() -> None:
    page = with_count(FACES, Page(210.0, 297.0, (WORDS, COUNT)), "page 31 of 42")
    first, last = page.marks
    assert first == WORDS and isinstance(last, Text) and last.text == "page 31 of 42"
    assert abs(right(last) - right(COUNT)) < 1e-9


def test_a_page_that_was_moved_is_numbered_inside_its_group() -> None:
    moved = Page(210.0, 297.0, (Group((WORDS, COUNT), (1, 0, 0, 1, -0.5, 1.0)),))
    (group,) = with_count(FACES, moved, "page 2 of 42").marks
    assert isinstance(group, Group) and group.matrix == (1, 0, 0, 1, -0.5, 1.0)
    assert [mark.text for mark in group.marks if isinstance(mark, Text)] == ["Study", "page 2 of 42"]


def test_an_empty_back_stays_empty() -> None:
    empty = Page(210.0, 297.0, ())
    assert with_count(FACES, empty, "page 2 of 42") == empty
