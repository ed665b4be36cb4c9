"""Look closer: details that are the study's own and lie apart, tones, and true lines of composition."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from art_desks import LEVELS, SHEETS_OF_PAPER, art_desk, picture, placed, said, work

from packgen.faults import Said
from packgen.page.marks import Line, Page, Path_, Picture, Text
from packgen.page.tones import tone_answers
from packgen.pictures.closer import tone_strip
from packgen.reading.models import Detail, Meeting
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


@pytest.mark.parametrize(("level", "count"), [("first", 0), ("younger", 0), ("older", 5), ("upper", 7)])
def test_the_strip_has_as_many_tones_as_suit_the_level_each_darker(level: str, count: int) -> None:
    tones = [p.mark.fill for page in looked_at(level) for p in placed(page, "tone") if isinstance(p.mark, Path_)]
    assert len(tones) == count
    assert all(a > b for a, b in pairwise(tones))  # type: ignore[operator]


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
def test_a_ringed_place_has_the_tone_of_the_strip_and_a_box_to_write_it_in(paper: str) -> None:
    page = looked_at("older", paper=paper)[1]
    desk = art_desk("look-closer", "older", [work(path=picture(*SHAPES["landscape"]))])
    greys = tone_strip(5)
    (image,) = [p for p in placed(page) if isinstance(p.mark, Picture)]
    rings, boxes = placed(page, "spot"), placed(page, "answer")
    assert len(rings) == len(boxes) >= 2
    shown = desk.store.pixels(picture(*SHAPES["landscape"]), 600, grey=True)
    found, in_order = set(), []
    for ring in rings:
        x = ((ring.box[0] + ring.box[2]) / 2 - image.box[0]) / (image.box[2] - image.box[0])
        y = 1 - ((ring.box[1] + ring.box[3]) / 2 - image.box[1]) / (image.box[3] - image.box[1])
        grey = shown.getpixel((int(x * shown.width), int(y * shown.height))) / 255  # type: ignore[operator]
        nearest = min(range(5), key=lambda k: abs(greys[k] - grey))
        assert abs(greys[nearest] - grey) < 0.08
        found.add(nearest)
        in_order.append(nearest)
    assert len(found) == len(rings)  # each place has another tone
    assert tone_answers(desk, desk.item.subject, 5) == tuple(
        zip("ABCDE", [tone + 1 for tone in in_order], strict=False)
    )
    assert set("ABCDE"[: len(rings)]) <= {p.mark.text for p in placed(page) if isinstance(p.mark, Text)}


def test_there_is_one_kind_of_task_on_a_page() -> None:
    finding, tones, *_ = looked_at("older", options=[("lines", "yes")])
    assert not placed(finding, "tone", "drawbox", "composition")
    assert not placed(tones, "composition", "baseline")


def named(*kinds: str, **more: object) -> tuple[Page, ...]:
    own = replace(work(path=picture(600, 450)), composition=tuple(Said(kind) for kind in kinds), **more)  # type: ignore[arg-type]
    (laid,) = lay_out(art_desk("look-closer", "older", [own], options=[("tones", 0)]))
    return laid.pages


def test_lines_of_composition_are_those_the_study_names() -> None:
    page = named("thirds", "golden section", "halves", "diagonals")[-1]
    frames = [p.box for p in placed(page, "picture-edge")]
    assert len(frames) == 4
    found = set()
    for p in placed(page, "composition"):
        assert isinstance(p.mark, Line)
        left, _, right, _ = next(f for f in frames if f[0] - 0.01 <= p.box[0] and p.box[2] <= f[2] + 0.01
                                     and f[1] - 0.01 <= p.box[1] and p.box[3] <= f[3] + 0.01)  # fmt: skip
        if abs(p.mark.x1 - p.mark.x2) < 1e-6:
            found.add(round((p.mark.x1 - left) / (right - left), 3))
    # 0.618 = 1/phi, phi = 1.6180339887 (MathWorld, "Golden Rectangle")
    assert found == {0.333, 0.667, 0.382, 0.618, 0.5}


def meeting(level: str) -> tuple[Page, tuple[float, float, float, float], float, float]:
    """The page with the lines into depth, the picture's box on it and where they meet."""
    own = replace(work(path=picture(600, 450)), vanishing=Meeting(0.4, 0.3))
    (laid,) = lay_out(art_desk("look-closer", level, [own], options=[("tones", 0)]))
    page = laid.pages[-1]
    (box,) = [p.box for p in placed(page, "picture-edge")]
    return page, box, box[0] + 0.4 * (box[2] - box[0]), box[3] - 0.3 * (box[3] - box[1])


def test_the_older_draw_the_lines_into_depth_to_a_point_on_the_eye_line() -> None:
    assert len(named()) == 1  # nothing to say, no page
    page, _, x, y = meeting("older")
    ((left, low, right, top),) = [p.box for p in placed(page, "vanishing-point")]
    assert (left + right) / 2 == pytest.approx(x, abs=0.01) and (low + top) / 2 == pytest.approx(y, abs=0.01)
    (line,) = [p.mark for p in placed(page, "composition") if isinstance(p.mark, Line)]
    assert line.y1 == pytest.approx(y, abs=0.01) and line.y2 == pytest.approx(y, abs=0.01)


def test_the_oldest_find_the_point_themselves() -> None:
    page = meeting("upper")[0]
    assert not placed(page, "vanishing-point", "composition")


def test_a_pattern_never_stands_alone_to_be_ticked_and_the_golden_section_is_explained() -> None:
    page = named("golden section")[-1]
    assert len(placed(page, "picture-edge")) == 2
    assert "1.6 times" in " ".join(p.mark.text for p in placed(page) if isinstance(p.mark, Text))


def test_a_page_of_composition_is_for_works_that_have_some_and_for_whoever_asks() -> None:
    assert not [p for page in looked_at("younger") for p in placed(page, "composition")]
    assert placed(looked_at("younger", options=[("lines", "yes")])[-1], "composition")
    assert not [p for page in looked_at("upper", options=[("lines", "no")]) for p in placed(page, "composition")]


@pytest.mark.parametrize("left_handed", [False, True])
def test_details_beside_the_copy_lie_away_from_the_drawing_hand(left_handed: bool) -> None:
    *cells, copy = pictures(looked_at("older", "tall", left_handed=left_handed)[0])
    assert all((cell[0] > copy[2]) is left_handed for cell in cells)


def test_no_warning_is_given_for_a_detail_that_is_coarse_because_it_is_enlarged() -> None:
    desk = art_desk("look-closer", "first", [work(path=picture(1200, 900))])
    lay_out(desk)
    assert not [f for f in desk.faults if "coarse" in f.message and "Harbour" not in f.message]
