"""Colour by number: every area has a number that can be read, and the key tells every number's colour."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from art_desks import FACES, LEVELS, SHEETS_OF_PAPER, art_desk, picture, placed, said, shelf, work
from PIL import Image, ImageDraw

from packgen.page.marks import Page, Path_, Picture, Text
from packgen.pictures.mixing import PAINTS
from packgen.sheets.colour_by_number import _art, lay_out

LEAST_MM = 6 * 25.4 / 72  # 6 pt is the least that is read with ease (common practice, no source)


def numbered_page(level: str = "younger", size: tuple[int, int] = (400, 300), **wishes: object) -> Page:
    (laid,) = lay_out(art_desk("colour-by-number", level, [work(path=picture(*size))], **wishes))  # type: ignore[arg-type]
    (page,) = laid.pages
    return page


def numbers(page: Page) -> list[Text]:
    return [p.mark for p in placed(page, "number") if isinstance(p.mark, Text)]


def keyed(page: Page) -> set[str]:
    """The numbers of the key: those in rings, or over the tones."""
    return {p.mark.text for p in placed(page, "key-number") if isinstance(p.mark, Text)}


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("form", ["colours", "tones"])
@pytest.mark.parametrize("level", LEVELS)
def test_every_number_in_the_picture_is_in_the_key(level: str, form: str, paper: str) -> None:
    page = numbered_page(level, paper=paper, options=[("form", form)])
    shown = {mark.text for mark in numbers(page)}
    assert shown and shown <= keyed(page)


@pytest.mark.parametrize("level", LEVELS)
def test_numbers_can_be_read(level: str) -> None:
    assert min(mark.size for mark in numbers(numbered_page(level))) >= LEAST_MM - 0.02


def test_numbers_do_not_lie_on_each_other() -> None:
    boxes = [p.box for p in placed(numbered_page("older"), "number")]
    for k, a in enumerate(boxes):
        for b in boxes[:k]:
            apart = max(a[0] - b[2], b[0] - a[2], abs(a[1] - b[1]) - 1.5)
            assert apart > -0.1


@pytest.mark.parametrize("form", ["colours", "tones"])
@pytest.mark.parametrize("level", LEVELS)
def test_every_area_has_its_number_in_it_and_none_is_painted(level: str, form: str) -> None:
    page = numbered_page(level, options=[("form", form)])
    art = _art(art_desk("colour-by-number", level, [work(path=picture(400, 300))]), work(path=picture(400, 300)), form)
    shown = placed(page, "number")
    assert len(shown) == len(art.regions) and not placed(page, "painted")
    frame = max((p.box for p in placed(page, "picture-edge")), key=lambda box: box[2] - box[0])
    scale = (frame[2] - frame[0]) / art.width
    for p, region in zip(shown, art.regions, strict=True):
        assert isinstance(p.mark, Text) and p.mark.text == str(region.number)
        cap = FACES.metrics(p.mark.face).cap * p.mark.size
        middle = ((p.box[0] + p.box[2]) / 2, p.box[1] + cap / 2)
        wanted = (frame[0] + region.label[0] * scale, frame[1] + region.label[1] * scale)
        assert math.dist(middle, wanted) < 0.05


@pytest.mark.parametrize("level", LEVELS)
def test_numbers_fit_their_areas_and_stand_out_from_the_paper(level: str) -> None:
    desk = art_desk("colour-by-number", level, [work(path=picture(400, 300))])
    page = numbered_page(level)
    art = _art(desk, work(path=picture(400, 300)), "tones" if level == "upper" else "colours")
    frame = max((p.box for p in placed(page, "picture-edge")), key=lambda box: box[2] - box[0])
    for p, region in zip(placed(page, "number"), art.regions, strict=True):
        assert isinstance(p.mark, Text)
        half = math.hypot(p.box[2] - p.box[0], FACES.metrics(p.mark.face).cap * p.mark.size) / 2
        assert half <= 1.15 * region.room * (frame[2] - frame[0]) / art.width
        # Relative luminance of a grey (WCAG 2.1); 7:1 on white is its enhanced contrast, 1.4.6.
        grey = float(p.mark.ink)  # type: ignore[arg-type]
        assert 1.05 / (((grey + 0.055) / 1.055) ** 2.4 + 0.05) >= 7


@pytest.mark.parametrize(("level", "shown"), [("first", 1), ("younger", 1), ("older", 0), ("upper", 0)])
def test_the_younger_see_the_work_faintly_under_lines_found_in_it(level: str, shown: int) -> None:
    page = numbered_page(level)
    images = [p for p in placed(page) if isinstance(p.mark, Picture)]
    assert len(images) == shown
    for p in images:
        with Image.open(p.mark.source) as image:  # type: ignore[union-attr]
            # Black on the darkest of it is still 7:1 (WCAG 2.1, 1.4.6): a grey of 151 of 255 has luminance 0.31;
            # packgen keeps to a paler grey, so that the lines stay what is seen first.
            assert image.convert("L").getextrema()[0] > 200
        frame = max((q.box for q in placed(page, "picture-edge")), key=lambda box: box[2] - box[0])
        assert p.box == pytest.approx(frame, abs=0.01)


def test_a_drawing_of_the_work_gives_the_lines() -> None:
    lines = shelf().folder / "lines.png"
    image = Image.new("RGB", (400, 300), "white")
    ImageDraw.Draw(image).rectangle((100, 80, 300, 220), outline="black", width=4)
    image.save(lines)
    plain = work(path=picture(400, 300))
    (laid,) = lay_out(art_desk("colour-by-number", "younger", [replace(plain, drawing=lines)]))
    assert len(placed(laid.pages[0], "number")) == 2 and placed(laid.pages[0], "line-art-ink")
    tall = shelf().folder / "tall.png"
    image.resize((300, 400)).save(tall)
    (laid,) = lay_out(art_desk("colour-by-number", "younger", [replace(plain, drawing=tall)]))
    assert len(placed(laid.pages[0], "number")) > 2


def test_no_stroke_of_a_drawing_runs_through_a_number_and_the_key_holds_what_is_shown() -> None:
    lines = shelf().folder / "grating.png"
    image = Image.new("RGB", (800, 600), "white")
    pen = ImageDraw.Draw(image)
    pen.rectangle((60, 60, 740, 300), outline="black", width=5)
    pen.rectangle((300, 380, 420, 460), outline="black", width=4)  # a little lawn, with blades of grass all over
    for x in range(310, 416, 9):
        for y in range(388, 450, 11):
            pen.line((x, y, x, y + 6), fill="black", width=2)
    for x in (380, 420):  # thin strokes in a wide place, which the number keeps clear of
        pen.line((x, 170, x + 12, 190), fill=(90, 90, 90), width=2)
    image.save(lines)
    (laid,) = lay_out(art_desk("colour-by-number", "older", [replace(work(path=picture(400, 300)), drawing=lines)]))
    page = laid.pages[0]
    points = [
        (float(x), float(y)) for p in placed(page, "line-art-ink") if isinstance(p.mark, Path_)
        for step in p.mark.steps if len(step) > 2 for x, y in [step[-2:]]
    ]  # fmt: skip
    shown = placed(page, "number")
    assert shown and points
    for p in shown:
        assert isinstance(p.mark, Text)
        left, low, right, _ = p.box
        top = low + FACES.metrics(p.mark.face).cap * p.mark.size
        grounds = [g.box for g in placed(page, "number-ground") if g.box[0] < left and g.box[2] > right]
        if any(g[1] < low and g[3] > top for g in grounds):
            continue  # on white of its own, over the strokes
        assert not [q for q in points if left + 0.15 < q[0] < right - 0.15 and low + 0.15 < q[1] < top - 0.15]
    assert len(placed(page, "number-ground")) == 1 and len(shown) == 3
    assert keyed(page) == {p.mark.text for p in shown if isinstance(p.mark, Text)}


def test_the_count_of_colours_can_be_chosen_and_bounded() -> None:
    assert len(keyed(numbered_page(options=[("colours", 3)]))) <= 3
    assert len(keyed(numbered_page(options=[("form", "tones"), ("colours", 4)]))) == 4
    assert keyed(numbered_page(options=[("colours", 1000)]))


def test_a_count_that_is_no_number_is_a_fault() -> None:
    desk = art_desk("colour-by-number", "younger", options=[("colours", "many")])
    assert lay_out(desk)
    assert any("whole number" in fault.message for fault in desk.faults)


def test_without_coloured_ink_there_is_none_and_every_colour_has_its_name() -> None:
    page = numbered_page("older", colour=False)
    for p in placed(page):
        if isinstance(p.mark, Path_):
            assert not isinstance(p.mark.fill, tuple)
            assert p.mark.stroke is None or not isinstance(p.mark.stroke.ink, tuple)
    assert "blue" in said(page)
    assert "matches the printed one" not in said(page)


def test_the_mixes_are_made_of_the_five_paints() -> None:
    words = said(numbered_page("older")).split()
    assert {"W", "B"} <= set(words) and all(paint in said(numbered_page("older")) for paint in PAINTS)


def test_tones_run_from_light_to_dark_with_an_empty_box_for_each() -> None:
    page = numbered_page("upper")
    strip = [p for p in placed(page, "tone") if isinstance(p.mark, Path_)]
    greys = [p.mark.fill for p in sorted(strip, key=lambda p: p.box[0])]  # type: ignore[union-attr]
    assert len(greys) >= 3 and greys == sorted(greys, reverse=True)
    assert len(placed(page, "drawbox")) == len(greys)
    for tone, box in zip(strip, placed(page, "drawbox"), strict=True):
        assert abs(tone.box[0] - box.box[0]) < 0.01 and tone.box[3] - tone.box[1] == pytest.approx(
            box.box[3] - box.box[1]
        )


@pytest.mark.parametrize("size", [(900, 200), (180, 900)])
@pytest.mark.parametrize("level", LEVELS)
def test_long_pictures_leave_room_for_the_key(level: str, size: tuple[int, int]) -> None:
    page = numbered_page(level, size)
    patches = [p.box for p in placed(page, "patch")]
    for box in patches or [p.box for p in placed(page, "tone")]:
        assert box[0] > 10 and box[1] > 18 and box[2] < page.width - 10 and box[3] < page.height - 10
