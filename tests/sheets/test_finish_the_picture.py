"""Finish the picture: what is printed stands exactly in its place, and the rest is left to the child."""

from __future__ import annotations

from dataclasses import replace

import pytest
from art_desks import LEVELS, MM, SHEETS_OF_PAPER, art_desk, picture, placed, read_back, shelf, work
from PIL import Image, ImageDraw

from packgen.page.marks import Page, Path_, Picture, Text
from packgen.sheets.finish_the_picture import lay_out

FORMS = ("outline", "half", "window", "gap", "faded-edge")
SHAPES = {"wide": (900, 200), "landscape": (400, 300), "upright": (300, 400), "tall": (180, 900)}


def finished(level: str = "younger", size: tuple[int, int] = (400, 300), kind: str = "harbour",
             **wishes: object) -> Page:  # fmt: skip
    works = [work(path=picture(*size, kind))]
    (laid,) = lay_out(art_desk("finish-the-picture", level, works, **wishes))  # type: ignore[arg-type]
    (page,) = laid.pages
    return page


def frame(page: Page) -> tuple[float, float, float, float]:
    """The place of the whole picture: the largest edge on the page."""
    return max((p.box for p in placed(page, "picture-edge")), key=lambda b: (b[2] - b[0]) * (b[3] - b[1]))


def printed(page: Page, faint: bool = False) -> list[tuple[float, float, float, float]]:
    """Where the work is printed within its place; or where it lies faintly under lines, without words of its own."""
    whole = frame(page)
    boxes = [p.box for p in placed(page) if isinstance(p.mark, Picture) and bool(p.mark.words) is not faint]
    return [b for b in boxes if b[0] > whole[0] - 0.1 and whole[1] - 0.1 < b[1] and b[3] < whole[3] + 0.1]


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("level", LEVELS)
def test_every_form_can_be_had_at_every_level(level: str, form: str, paper: str) -> None:
    page = finished(level, paper=paper, options=[("form", form)])
    left, low, right, top = frame(page)
    assert left >= 15.9 and right <= page.width - 15.9 and low > 20.0
    assert abs((right - left) / (top - low) - 4 / 3) < 0.01
    assert bool(printed(page)) is (form != "outline")


def test_the_level_decides_the_form() -> None:
    assert not printed(finished("first"))
    shares = {}
    for level in ("younger", "older", "upper"):
        whole, (part,) = frame(finished(level)), printed(finished(level))
        shares[level] = (part[2] - part[0]) * (part[3] - part[1]) / ((whole[2] - whole[0]) * (whole[3] - whole[1]))
    assert 0.35 < shares["younger"] < 0.65
    assert shares["older"] < shares["younger"] and shares["upper"] < 0.5


def test_two_children_get_the_same_work_at_two_difficulties() -> None:
    first, younger, older = finished("first"), finished("younger"), finished("older")
    assert len(printed(younger)) == len(printed(older)) == 1 and printed(younger) != printed(older)
    widths = [max(p.mark.stroke.width for p in placed(page, "line-art") if isinstance(p.mark, Path_) and p.mark.stroke)
              for page in (first, younger)]  # fmt: skip
    assert widths[0] > widths[1]
    # What is left to the older is bare paper, without a hint of the answer.
    assert not placed(older, "line-art", "line-art-ink", "gap")


def test_the_lines_are_those_of_the_drawing_and_bolder_for_the_youngest() -> None:
    path = shelf().folder / "outline.png"
    image = Image.new("RGB", (400, 300), "white")
    ImageDraw.Draw(image).ellipse((100, 80, 300, 220), outline="black", width=4)
    image.save(path)
    drawn = replace(work(path=picture(400, 300)), drawing=path)
    (laid,) = lay_out(art_desk("finish-the-picture", "first", [drawn]))
    ink = placed(laid.pages[0], "line-art-ink")
    assert len(ink) == 1 and not placed(laid.pages[0], "line-art")
    left, low, right, top = frame(laid.pages[0])
    assert ink[0].box[0] == pytest.approx(left + (right - left) * 100 / 400, abs=0.5)
    assert ink[0].box[3] == pytest.approx(top - (top - low) * 80 / 300, abs=0.5)
    assert isinstance(ink[0].mark, Path_) and ink[0].mark.stroke and ink[0].mark.stroke.width > 0.2


def test_lines_are_drawn_only_where_nothing_is_printed() -> None:
    page = finished("younger")
    (part,) = printed(page)
    lines = placed(page, "line-art", "line-art-ink")
    assert lines
    for line in lines:
        assert line.clip
        across = min(part[2], line.clip[2]) - max(part[0], line.clip[0])
        down = min(part[3], line.clip[3]) - max(part[1], line.clip[1])
        assert min(across, down) < 0.01


def test_the_younger_see_the_rest_faintly_under_lines_found_in_it() -> None:
    for level, count in (("first", 1), ("younger", 1), ("older", 0), ("upper", 0)):
        assert len(printed(finished(level), faint=True)) == count
    ((left, low, right, top),), (part,) = printed(finished("younger"), faint=True), printed(finished("younger"))
    assert min(part[2], right) - max(part[0], left) < 0.01 or min(part[3], top) - max(part[1], low) < 0.01
    assert not printed(finished("younger", options=[("rest", "blank")]), faint=True)


def test_blank_paper_is_blank() -> None:
    page = finished("upper")
    assert not placed(page, "line-art", "line-art-ink") and printed(page)


@pytest.mark.parametrize("left_handed", [False, True])
def test_the_printed_half_of_a_face_lies_away_from_the_drawing_hand(left_handed: bool) -> None:
    page = finished("younger", (300, 400), "face", left_handed=left_handed)
    whole, (part,) = frame(page), printed(page)
    assert (part[0] > whole[0] + 1.0) is left_handed
    assert (part[2] < whole[2] - 1.0) is not left_handed


@pytest.mark.parametrize("shape", SHAPES)
def test_a_long_picture_is_never_halved_along_its_length(shape: str) -> None:
    wide, high = SHAPES[shape]
    page = finished("younger", (wide, high))
    whole, (part,) = frame(page), printed(page)
    shares = sorted(((part[2] - part[0]) / (whole[2] - whole[0]), (part[3] - part[1]) / (whole[3] - whole[1])))
    assert shares[1] > 0.999 and 0.4 < shares[0] < 0.6
    if wide / high > 1.8 or high / wide > 1.8:
        assert max(part[2] - part[0], part[3] - part[1]) < 0.7 * max(whole[2] - whole[0], whole[3] - whole[1])


def test_a_wide_picture_gets_a_page_on_its_side() -> None:
    page = finished("older", SHAPES["wide"])
    left, low, right, top = frame(page)
    assert top - low > 220 and right - left < 100  # along the paper's long side


def test_the_printed_part_stands_within_a_fifth_of_a_millimetre_of_its_place_in_the_pdf() -> None:
    page = finished("older")
    whole, (part,) = frame(page), printed(page)
    with read_back((page,)) as pdf:
        (image,) = pdf.pages[0].images
        found = (
            image["x0"] / MM,
            page.height - image["bottom"] / MM,
            image["x1"] / MM,
            page.height - image["top"] / MM,
        )
    assert all(abs(a - b) < 0.05 for a, b in zip(found, part, strict=True))
    pixel = (whole[2] - whole[0]) / 400
    for edge in (part[0], part[2]):
        share = (edge - whole[0]) / pixel
        assert abs(share - round(share)) * pixel < max(0.2, pixel / 2)


def test_a_plain_picture_is_told_and_not_printed() -> None:
    desk = art_desk("finish-the-picture", "older", [work(path=picture(300, 200, "plain"))])
    assert lay_out(desk) == ()
    assert any("too plain" in fault.message for fault in desk.faults)


@pytest.mark.parametrize("paper", SHEETS_OF_PAPER)
@pytest.mark.parametrize("shape", ["landscape", "upright"])
def test_the_youngest_colour_a_picture_high_on_the_page_that_needs_no_words(shape: str, paper: str) -> None:
    page = finished("first", SHAPES[shape], paper=paper)
    _, low, _, top = frame(page)
    head = [p.box[1] for p in placed(page) if isinstance(p.mark, Text) and p.box[1] > top]
    assert min(head) - top < 25
    small = [p.box for p in placed(page) if isinstance(p.mark, Picture) and p.box[3] < low]
    assert len(small) <= 1 and all(low - box[3] > 1 for box in small)
