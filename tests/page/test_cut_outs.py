"""Things to cut out: each exactly as large as its place, none over another, its letter where scissors do not come."""

import sys
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from page_marks import box, kit, of_role, overlap, words_of
from PIL import Image

from packgen.page.blocks import Block, DrawBox
from packgen.page.cut_outs import Card, CutOut, GlueBox, card_pages, cut_out_pages
from packgen.page.desk import Desk
from packgen.page.marks import Group, Mark, Path_, Text
from packgen.pictures.load import Store

sys.path.insert(0, str(Path(__file__).parents[1] / "sheets"))
from study_desks import words_desk


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    at = words_desk("younger", [("ebb", "out")])
    (tmp_path / "store").mkdir()
    at.store = Store(tmp_path / "store")
    return at


@pytest.fixture
def picture(tmp_path: Path) -> Path:
    Image.new("RGB", (900, 600), "teal").save(tmp_path / "p.png")
    return tmp_path / "p.png"


def flat(marks: tuple[Mark, ...]) -> list[Mark]:
    """All marks, those of groups that only turn or move included as boxes where they come to lie."""
    found: list[Mark] = []
    for mark in marks:
        if isinstance(mark, Group):
            a, b, c, d, e, f = mark.matrix
            for inner in mark.marks:
                if isinstance(inner, Path_):
                    x1, y1, x2, y2 = box(inner)
                    corners = [(a * x + c * y + e, b * x + d * y + f) for x, y in ((x1, y1), (x2, y2))]
                    (px, py), (qx, qy) = corners
                    found.append(Path_((("m", px, py), ("l", qx, qy)), inner.stroke, inner.fill, inner.role))
        else:
            found.append(mark)
    return found


@given(st.lists(st.floats(20, 110), min_size=1, max_size=9))
@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_pieces_have_their_sizes_and_do_not_overlap(desk: Desk, picture: Path, widths: list[float]) -> None:
    cuts = [CutOut(chr(65 + k), f"Work {k}", picture, wide, wide / 1.5) for k, wide in enumerate(widths)]
    pages = cut_out_pages(desk, desk.head("Cut"), cuts)
    sizes = []
    for page in pages:
        frames = [box(mark) for mark in of_role(flat(page.marks), "cut")]
        assert not [1 for k, a in enumerate(frames) for b in frames[k + 1 :] if overlap(a, b)]
        sizes += [tuple(sorted((f[2] - f[0], f[3] - f[1]))) for f in frames]
    for one, other in zip(sorted(sizes), sorted((w / 1.5, w) for w in widths), strict=True):
        assert one == pytest.approx(other)


def test_a_letter_stands_inside_its_picture_and_letters_are_read_in_order(desk: Desk, picture: Path) -> None:
    cuts = [CutOut(chr(65 + k), f"Work {k}", picture, 60.0 + 5 * (k % 3), 42.0) for k in range(7)]
    pages = cut_out_pages(desk, desk.head("Cut"), cuts)
    read = []
    for page in pages:
        frames = [box(mark) for mark in of_role(page.marks, "cut")]
        chips = [box(mark) for mark in of_role(page.marks, "chip")]
        letters = [mark for mark in of_role(page.marks, "chip-letter") if isinstance(mark, Text)]
        assert len(frames) == len(chips) == len(letters)
        for frame, chip, letter in zip(frames, chips, letters, strict=True):
            assert frame[0] + 1 < chip[0] and frame[1] + 1 < chip[1] and chip[2] < frame[2] and chip[3] < frame[3]
            assert chip[0] < letter.x < chip[2] and chip[1] < letter.y < chip[3]
        placed = sorted(zip(frames, letters, strict=True), key=lambda p: (-p[0][3], p[0][0]))
        read += [letter.text for _, letter in placed]
    assert read == list("ABCDEFG")


def test_what_to_do_next_stands_under_the_pictures_where_it_fits(desk: Desk, picture: Path) -> None:
    cuts = [CutOut("A", "Work", picture, 60.0, 40.0)]

    def more(room: float) -> tuple[Block, ...]:
        return (DrawBox("next", least=room - desk.look.gap, most=room - desk.look.gap),) if room > 100 else ()

    (page,) = cut_out_pages(desk, desk.head("Cut"), cuts, more)
    frame = box(of_role(page.marks, "cut")[0])
    below = box(of_role(page.marks, "drawbox")[0])
    assert below[3] < frame[1]


def test_a_glue_box_is_dashed_as_large_as_asked_and_names_its_letter() -> None:
    on = kit("younger")
    pen = on.pen()
    GlueBox("B", "glue", 60.0, 40.0).draw(on, pen, 0.0, 0.0, 100.0, 40.0)
    (place,) = of_role(pen.marks, "gluebox")
    assert isinstance(place, Path_) and place.stroke and place.stroke.dash
    assert box(place) == pytest.approx((20.0, -40.0, 80.0, 0.0))
    assert words_of(pen.marks) == ["glue", "B"]


def test_cards_share_their_edges_and_hold_their_words(desk: Desk) -> None:
    cards = [Card(str(1834 + k), f"Event {k} of a long life", 80.0, 30.0) for k in range(9)]
    pages = card_pages(desk, desk.head("Cut"), cards)
    frames = [box(mark) for page in pages for mark in of_role(page.marks, "cut")]
    assert len(frames) == 9
    assert all((f[2] - f[0], f[3] - f[1]) == pytest.approx((80.0, 30.0)) for f in frames)
    assert len({round(f[0], 3) for f in frames}) == 2
    words = [word for page in pages for word in words_of(page.marks)]
    assert all(str(1834 + k) in words for k in range(9)) and not desk.faults


def test_words_too_many_for_a_card_are_a_fault(desk: Desk) -> None:
    card_pages(desk, desk.head("Cut"), [Card("1834", "very " * 200, 60.0, 20.0)])
    assert len(desk.faults) == 1 and "short:" in desk.faults[0].instead


def test_nothing_to_cut_makes_no_page(desk: Desk) -> None:
    assert card_pages(desk, desk.head("Cut"), []) == ()
