"""Things to cut out: each exactly as large as its place, none over another, labels outside the cut."""

import sys
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from page_marks import box, kit, of_role, overlap, words_of
from PIL import Image

from packgen.page.cut_outs import Card, CutOut, GlueBox, card_pages, cut_out_pages
from packgen.page.desk import Desk
from packgen.page.marks import Group, Mark, Path_
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
