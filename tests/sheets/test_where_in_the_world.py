"""Where in the world: places stand where their degrees say, the bar measures true, and nothing hides a name."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from itertools import pairwise

import pytest
from art_desks import LEVELS, SHEETS_OF_PAPER, art_desk, placed, said, work

from packgen.page.desk import Desk
from packgen.page.look import look_for
from packgen.page.marks import Line, Page, Text
from packgen.sheets.where_in_the_world import lay_out

PARIS, OSLO, KYOTO, BOSTON = (48.86, 2.35), (59.91, 10.75), (35.01, 135.77), (42.36, -71.06)


def world_desk(level: str, place: tuple[float, float] | None, *spots: tuple[float, float], **wishes: object) -> Desk:
    works = [work(f"Work {k}", held=f"Hall {k}", spot=spot) for k, spot in enumerate(spots)] or [work()]
    return art_desk("where-in-the-world", level, works, place=place, per="study", **wishes)  # type: ignore[arg-type]


def pages(*args: object, **wishes: object) -> tuple[Page, ...]:
    (laid,) = lay_out(world_desk(*args, **wishes))  # type: ignore[arg-type]
    return laid.pages


def markers(page: Page) -> list[tuple[float, float]]:
    """The middles of the markers, in the order drawn; a frame is drawn in two boxes of one middle."""
    found: list[tuple[float, float]] = []
    for p in placed(page, "marker"):
        middle = ((p.box[0] + p.box[2]) / 2, (p.box[1] + p.box[3]) / 2)
        if not found or math.dist(found[-1], middle) > 0.5:
            found.append(middle)
    return found


def test_without_degrees_there_is_no_map() -> None:
    assert all(lay_out(world_desk(level, None)) == () for level in LEVELS)


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("spots", [(), (OSLO,), (OSLO, KYOTO, BOSTON)], ids=len)
@pytest.mark.parametrize("level", LEVELS)
def test_the_map_lies_within_the_margins_and_names_its_places(level: str, spots: tuple, paper: str) -> None:  # type: ignore[type-arg]
    made = pages(level, PARIS, *spots, paper=paper)
    for page in made:
        for p in placed(page):
            if p.clip is None:
                assert p.box[0] > 8 and p.box[2] < page.width - 8 and p.box[1] > 8, p.mark
    words = " ".join(said(page) for page in made)
    assert "Saltmere" in words and all(f"Hall {k}" in words for k in range(len(spots)))


def test_the_bar_measures_the_way_between_two_places_on_one_meridian() -> None:
    # One degree of latitude is 111.2 km on a sphere of 6371 km (IUGG mean radius R1): ten are 1112 km.
    (page,) = pages("younger", (50.0, 5.0), (60.0, 5.0))
    one, other = markers(page)
    bar = [p.box for p in placed(page, "scale")]
    length = max(b[2] for b in bar) - min(b[0] for b in bar)
    words = next(p.mark.text for p in placed(page, "scale-words") if isinstance(p.mark, Text))
    km = float(words.split()[0])
    assert words.endswith("km")
    assert math.dist(one, other) / length * km == pytest.approx(1112, rel=0.02)


def test_families_who_count_in_miles_get_miles() -> None:
    (page,) = pages("younger", (50.0, 5.0), (60.0, 5.0), units="customary")
    assert any("miles" in p.mark.text for p in placed(page, "scale-words") if isinstance(p.mark, Text))


def test_names_of_degrees_stand_at_their_lines() -> None:
    (page,) = pages("older", PARIS, OSLO)
    lines = {round(p.mark.y1, 2) for p in placed(page, "parallel") if isinstance(p.mark, Line)}
    names = [p.mark for p in placed(page, "degree") if isinstance(p.mark, Text) and p.mark.text.endswith("N")]
    assert len(names) >= 3
    at = {float(mark.text.split("°")[0]): mark.y for mark in names}
    steps = sorted(at)
    spacing = {round((at[b] - at[a]) / (b - a), 3) for a, b in pairwise(steps)}
    assert max(spacing) - min(spacing) < 0.01 and len(lines) == len(names)


def test_a_blank_map_has_no_markers_but_a_table_of_degrees() -> None:
    (page,) = pages("older", PARIS, OSLO)
    assert not markers(page)
    assert "Latitude" in said(page) and len(degrees_of(page)) == 4


def degrees_of(page: Page) -> list[tuple[float, str]]:
    """The degrees in the table, each with its letter; those at the edges of the map have a role of their own."""
    words = [p.mark.text for p in placed(page, "text", "cell") if isinstance(p.mark, Text)]
    return [(float(m[1]), m[2]) for word in words if (m := re.fullmatch(r"([\d.]+)°(?: ([NSEW]))?", word))]


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("level", ["older", "upper"])
@pytest.mark.parametrize("spots", [(PARIS, OSLO), (PARIS, (47.2, 3.1)), (PARIS, KYOTO, BOSTON)])
def test_the_degrees_asked_can_be_set_on_the_map(level: str, paper: str, spots: tuple) -> None:  # type: ignore[type-arg]
    (page,) = pages(level, *spots, paper=paper)
    assert len(placed(page, "map-frame")) == 1
    lines = sorted(p.mark.x1 for p in placed(page, "meridian") if isinstance(p.mark, Line))
    names = {p.mark.text for p in placed(page, "degree") if isinstance(p.mark, Text)}
    shown = sorted({float(name.split("°")[0]) for name in names if name[-1] in "EW"})
    step = min(b - a for a, b in pairwise(shown))
    frame = placed(page, "map-frame")[0].box
    under = sorted(b[2] - b[0] for p in placed(page, "division") if (b := p.box)[3] <= frame[1] + 0.1)
    whole = under[len(under) // 2]
    per_degree = (lines[1] - lines[0]) / step
    division = whole / per_degree
    assert whole >= 2.3  # a child's pencil point is about 0.7 mm wide: three to a piece (common practice, no source)
    for (value, _), true in zip(degrees_of(page), [abs(v) for spot in spots for v in spot], strict=True):
        parts = value / (division / 2)
        assert parts == pytest.approx(round(parts), abs=0.05)
        assert abs(value - true) <= division / 2 + 1e-6


def test_places_that_come_to_the_same_degrees_are_one_row() -> None:
    (page,) = pages("older", PARIS, KYOTO, (35.2, 136.0))
    assert "Hall 0, Hall 1" in said(page) and len(degrees_of(page)) == 4


@pytest.mark.parametrize("level", LEVELS)
def test_what_is_farthest_is_asked_only_of_several(level: str) -> None:
    assert "farthest" not in said(pages(level, PARIS, OSLO)[0])
    assert level == "first" or "farthest" in said(pages(level, PARIS, OSLO, (52.5, 13.4))[0])


def test_south_and_west_are_named() -> None:
    (page,) = pages("upper", (-33.9, 151.2), (-22.9, -43.2))
    assert [letter for _, letter in degrees_of(page)] == ["S", "E", "S", "W"]


def test_places_far_apart_get_the_whole_world_and_a_globe() -> None:
    (page,) = pages("older", PARIS, KYOTO, BOSTON)
    assert "globe" in said(page) and len(degrees_of(page)) == 6
    (page,) = pages("younger", PARIS, KYOTO, BOSTON)
    frame = placed(page, "map-frame")[0].box
    assert frame[3] - frame[1] > 210  # to colour, along the paper's long side


def test_home_is_shown_only_if_it_is_elsewhere() -> None:
    assert len(markers(pages("younger", PARIS, home=PARIS)[0])) == 1
    assert len(markers(pages("younger", PARIS, home=OSLO)[0])) == 2
    assert lay_out(world_desk("younger", None, home=OSLO)) == ()
    named, blank = (said(page) for level in ("younger", "older") for page in pages(level, PARIS, home=OSLO)[:1])
    for words in (named, blank):  # on the map's label, and in the table: not the home of whoever the study is about
        assert "Your home" in words and not re.search(r"(?<!Your )\bHome\b", words)


def test_two_names_never_lie_on_each_other_even_where_places_are_near() -> None:
    near = [(48.86 + 0.3 * k, 2.35 + 0.2 * k) for k in range(1, 6)]
    (page,) = pages("younger", PARIS, *near)
    grounds = [p.box for p in placed(page, "label-ground")]
    assert len(grounds) >= 2
    for k, a in enumerate(grounds):
        for b in grounds[:k]:
            assert min(a[2], b[2]) - max(a[0], b[0]) < 0.2 or min(a[3], b[3]) - max(a[1], b[1]) < 0.2


def test_no_shore_is_drawn_behind_a_name() -> None:
    (page,) = pages("first", PARIS, OSLO)
    frame = placed(page, "map-frame")[0].box
    for ground in (p.box for p in placed(page, "label-ground")):
        for p in placed(page, "coast"):
            for x, y in _points(p.mark, frame):
                assert not (ground[0] + 0.05 < x < ground[2] - 0.05 and ground[1] + 0.05 < y < ground[3] - 0.05)


def _points(mark: object, frame: tuple[float, float, float, float]) -> list[tuple[float, float]]:
    return [(frame[0] + float(step[1]), frame[1] + float(step[2])) for step in mark.steps]  # type: ignore[attr-defined]


CITIES = (PARIS, OSLO, KYOTO, BOSTON, (-33.9, 151.2), (-22.9, -43.2), (30.0, 31.2), (55.8, 37.6), (19.4, -99.1),
          (1.3, 103.8))  # fmt: skip


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("larger", [False, True])
@pytest.mark.parametrize("count", [4, 9])
@pytest.mark.parametrize("level", ["older", "upper"])
def test_map_and_table_share_a_page_or_have_one_each_but_never_run_into_the_foot(
    level: str, count: int, larger: bool, paper: str
) -> None:
    at = world_desk(level, CITIES[0], *CITIES[1 : count + 1], paper=paper)
    at.kit = replace(at.kit, look=look_for(level, larger=larger, wider=larger))
    (laid,) = lay_out(at)
    assert len(laid.pages) <= 2
    for page in laid.pages:
        upright = not (placed(page, "map-frame") and len(laid.pages) == 2)
        (foot,) = [p.box[1] for p in placed(page, "footline")] if upright else [0.0]
        for p in placed(page, "table-cell", "baseline", "map-frame"):
            assert p.box[1] > foot, p.mark
    frame = placed(laid.pages[0], "map-frame")[0].box
    assert max(frame[2] - frame[0], frame[3] - frame[1]) > 125  # large enough to plot on


KRAKOW, TARNOW, LAND_S_END = (50.06, 19.94), (50.01, 20.99), (50.07, -5.72)


def inset_parts(page: Page) -> tuple[tuple[float, ...], list[tuple[float, float]], float]:
    """The frame of the small map, the middles of the markers in it, and the mm of its bar for a km."""
    (frame,) = [p.box for p in placed(page, "inset-frame")]

    def inside(box: tuple[float, ...]) -> bool:
        return frame[0] <= box[0] and box[2] <= frame[2] and frame[1] <= box[1] and box[3] <= frame[3]

    bar = [p.box for p in placed(page, "scale") if inside(p.box)]
    (words,) = [p.mark.text for p in placed(page, "scale-words") if isinstance(p.mark, Text) and inside(p.box)]
    per_km = (max(b[2] for b in bar) - min(b[0] for b in bar)) / float(words.split()[0])
    return frame, [at for at in markers(page) if inside((*at, *at))], per_km


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("level", ["younger", "older", "upper"])
def test_near_neighbours_are_drawn_larger_with_a_bar_that_measures_their_way(level: str, paper: str) -> None:
    # Krakow to Tarnow is about 75 km in a straight line (haversine on their published degrees)
    (page,) = pages(level, KRAKOW, TARNOW, home=LAND_S_END, paper=paper)
    _, (one, other), per_km = inset_parts(page)
    assert math.dist(one, other) / per_km == pytest.approx(75, rel=0.05)
    assert "The small map shows" in said(page)


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
def test_the_small_map_lies_within_the_large_and_off_the_way_that_is_drawn(paper: str) -> None:
    (page,) = pages("younger", KRAKOW, TARNOW, home=LAND_S_END, paper=paper)
    frame, _, _ = inset_parts(page)
    (whole,) = [p.box for p in placed(page, "map-frame") if p.box[2] - p.box[0] > 100]
    assert whole[0] < frame[0] and frame[2] < whole[2] and whole[1] < frame[1] and frame[3] < whole[3]
    outside = [(x, y) for x, y in markers(page) if not (frame[0] < x < frame[2] and frame[1] < y < frame[3])]
    (x1, y1), (x2, y2) = outside  # one star for both towns, and the house
    for k in range(101):
        x, y = x1 + (x2 - x1) * k / 100, y1 + (y2 - y1) * k / 100
        assert not (frame[0] < x < frame[2] and frame[1] < y < frame[3])


def test_places_that_no_small_map_parts_share_a_marker_and_are_said_to_be_too_near() -> None:
    near = (50.12, 19.94)  # 7 km north of the first
    (page,) = pages("younger", KRAKOW, near, home=LAND_S_END)
    assert not placed(page, "inset-frame") and len(markers(page)) == 2
    (page,) = pages("older", KRAKOW, near, home=LAND_S_END)
    assert "too near" in said(page)


def test_a_line_to_draw_is_named_by_both_its_ends() -> None:
    (page,) = pages("older", PARIS, OSLO)
    assert "from Saltmere to Hall 0." in said(page) and "the other place" not in said(page)
    (page,) = pages("younger", PARIS, home=OSLO)
    assert "Draw a line from the house to the star." in said(page)


def test_the_work_that_travelled_is_named() -> None:
    for level in ("older", "upper"):
        (page,) = pages(level, PARIS, OSLO)
        assert "“Work 0” is now at Hall 0." in said(page)
