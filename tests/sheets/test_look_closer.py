"""Look closer: details that are the study's own and lie apart, tones, and true lines of composition."""

from __future__ import annotations

from itertools import pairwise

import pytest
from art_desks import LEVELS, SHEETS_OF_PAPER, art_desk, picture, placed, said, work

from packgen.faults import Said
from packgen.page.marks import Line, Page, Path_, Picture
from packgen.reading.models import Detail
from packgen.sheets.look_closer import _details, _squared, lay_out

SHAPES = {"wide": (900, 200), "landscape": (600, 450), "upright": (450, 600), "tall": (180, 900)}
SUN = Detail(Said("the sun"), 0.42, 0.06, 0.12, 0.16)
HOUSE = Detail(Said("a red house"), 0.08, 0.12, 0.22, 0.44)


def looked_at(level: str = "older", shape: str = "landscape", details: tuple[Detail, ...] = (),
              **wishes: object) -> tuple[Page, ...]:  # fmt: skip
    works = [work(path=picture(*SHAPES[shape]), details=details)]
    (laid,) = lay_out(art_desk("look-closer", level, works, **wishes))  # type: ignore[arg-type]
    return laid.pages


def pictures(page: Page) -> list[tuple[float, float, float, float]]:
    return [p.box for p in placed(page) if isinstance(p.mark, Picture)]


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("level", LEVELS)
def test_four_details_and_a_copy_lie_apart_on_the_page(level: str, shape: str, paper: str) -> None:
    page = looked_at(level, shape, paper=paper)[0]
    boxes = pictures(page)
    assert 4 <= len(boxes) <= 5
    for k, a in enumerate(boxes):
        assert a[0] > 10 and a[1] > 18 and a[2] < page.width - 10 and a[3] < page.height - 10
        for b in boxes[:k]:
            assert min(a[2], b[2]) - max(a[0], b[0]) < 0.01 or min(a[3], b[3]) - max(a[1], b[1]) < 0.01
    sides = [(b[2] - b[0], b[3] - b[1]) for b in boxes[:-1]]
    assert all(abs(w - sides[0][0]) < 0.01 and abs(w - h) < 0.01 for w, h in sides)
    assert len(boxes) == 5 or shape != "landscape"


def test_the_studys_own_details_come_first_and_are_shown_whole() -> None:
    desk = art_desk("look-closer", "younger", [work(path=picture(600, 450), details=(SUN, HOUSE))])
    found = _details(desk, desk.item.subject)  # type: ignore[arg-type]
    assert [d.name for d in found][:2] == ["the sun", "a red house"] and 3 <= len(found) <= 4
    for own, shown in zip((SUN, HOUSE), found, strict=False):
        left, top, wide, high = shown.crop
        assert left <= own.left + 1e-9 and top <= own.top + 1e-9
        assert left + wide >= own.left + own.width - 1e-9 and top + high >= own.top + own.height - 1e-9
        assert wide * 600 == pytest.approx(high * 450)


def test_a_detail_in_a_corner_stays_within_the_picture() -> None:
    for part in ((0.0, 0.0, 0.05, 0.05), (0.95, 0.95, 0.05, 0.05), (0.4, 0.9, 0.5, 0.1)):
        left, top, wide, high = _squared(part, 4 / 3, 0.2)
        assert left >= 0 and top >= 0 and left + wide <= 1 + 1e-9 and top + high <= 1 + 1e-9


def test_names_are_printed_for_the_young_and_asked_of_the_older() -> None:
    assert "the sun" in said(looked_at("younger", details=(SUN, HOUSE))[0])
    page = looked_at("older", details=(SUN, HOUSE))[0]
    assert "the sun" not in said(page) and len(placed(page, "baseline")) >= 4


@pytest.mark.parametrize(("level", "count"), [("first", 0), ("younger", 5), ("older", 7), ("upper", 9)])
def test_the_strip_has_as_many_tones_as_suit_the_level_each_darker(level: str, count: int) -> None:
    tones = [p.mark.fill for p in placed(looked_at(level)[0], "tone") if isinstance(p.mark, Path_)]
    assert len(tones) == count
    assert all(a > b for a, b in pairwise(tones))  # type: ignore[operator]


def test_lines_of_composition_are_thirds_diagonals_the_golden_section_and_halves() -> None:
    page = looked_at("older")[-1]
    frames = [p.box for p in placed(page, "picture-edge")]
    found = set()
    for p in placed(page, "composition"):
        assert isinstance(p.mark, Line)
        left, _, right, _ = next(f for f in frames if f[0] - 0.01 <= p.box[0] and p.box[2] <= f[2] + 0.01
                                     and f[1] - 0.01 <= p.box[1] and p.box[3] <= f[3] + 0.01)  # fmt: skip
        if abs(p.mark.x1 - p.mark.x2) < 1e-6:
            found.add(round((p.mark.x1 - left) / (right - left), 3))
    # 0.618 = 1/phi, phi = 1.6180339887 (MathWorld, "Golden Rectangle")
    assert found == {0.333, 0.667, 0.382, 0.618, 0.5}


def test_a_page_of_composition_is_for_the_older_or_for_whoever_asks() -> None:
    assert len(looked_at("younger")) == 1 and len(looked_at("older")) == 2
    assert len(looked_at("younger", options=[("lines", "yes")])) == 2
    assert len(looked_at("upper", options=[("lines", "no")])) == 1


@pytest.mark.parametrize("left_handed", [False, True])
def test_details_beside_the_copy_lie_away_from_the_drawing_hand(left_handed: bool) -> None:
    *cells, copy = pictures(looked_at("older", "tall", left_handed=left_handed)[0])
    assert all((cell[0] > copy[2]) is left_handed for cell in cells)


def test_no_warning_is_given_for_a_detail_that_is_coarse_because_it_is_enlarged() -> None:
    desk = art_desk("look-closer", "first", [work(path=picture(1200, 900))])
    lay_out(desk)
    assert not [f for f in desk.faults if "coarse" in f.message and "Harbour" not in f.message]
