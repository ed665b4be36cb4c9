"""Lengths on paper, measured with a second reader: rulers, writing lines, boxes and what is cut to fit them, axes."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
from built import Maker, Packs, Sheet
from paper import PaperPage, Shape, Stroke

RULER_WORDS = "this line is 10 cm"


# Rulers


def test_every_ruler_is_100_mm_long_with_a_tick_each_10_mm(packs: Packs) -> None:
    seen = 0
    for page in packs.pages:
        if not any(RULER_WORDS in run.text for run in page.runs):
            continue
        seen += 1
        rules = [s for s in page.strokes if s.level and abs(s.length - 100) < 0.5 and abs(s.width - 0.35) < 0.01]
        assert len(rules) == 1, page
        rule, begin = rules[0], min(rules[0].x1, rules[0].x2)
        assert rule.length == pytest.approx(100.0, abs=0.02)
        feet = [s for s in page.strokes if s.upright and min(abs(s.y1 - rule.y1), abs(s.y2 - rule.y1)) < 0.01]
        ticks = sorted(s.x1 - begin for s in feet if -0.1 <= s.x1 - begin <= 100.1)
        assert ticks == pytest.approx([10.0 * k for k in range(11)], abs=0.02), page
    assert seen >= 10


def test_what_is_cut_or_read_off_to_scale_has_a_ruler(packs: Packs) -> None:
    for sheet in packs.sheets():
        net = (sheet.kind == "model" and not sheet.part) or sheet.part == "templates"
        if net or sheet.part == "cut-outs" or (sheet.kind, sheet.part) == ("timeline", "cards"):
            for page in sheet.pages:
                assert any(RULER_WORDS in run.text for run in page.runs), (sheet, page)


# Writing lines

# The x-height and the distance of base lines in mm, as packgen/page/look.py documents them: small letters of 4 to 6 mm
# and 15 mm from line to line are usual at Key Stage 1 (National Handwriting Association, UK); 11/32 in is US wide
# ruling and 9/32 in medium (8.7 and 7.1 mm). The letters of the first are common practice, no source.
RULING = {
    "first": (10.0, 32.0),
    "younger": (5.0, 18.0),
    "older": (None, 11 / 32 * 25.4),
    "upper": (None, 9 / 32 * 25.4),
}


def base_lines(page: PaperPage) -> list[Stroke]:
    """Long level lines in the grey of rules, drawn singly."""
    return [s for s in page.strokes if s.level and s.ink == 0.45 and not s.dash and s.length > 20 and s.width > 0.2]


def steps(page: PaperPage) -> Counter[float]:
    """The distances from each base line to the next under it that begins and ends at the same places."""
    by_place: dict[tuple[int, int], list[float]] = {}
    for line in base_lines(page):
        x1, x2 = sorted((line.x1, line.x2))
        by_place.setdefault((round(x1), round(x2)), []).append(line.y1)
    found: Counter[float] = Counter()
    for ys in by_place.values():
        found.update(round(a - b, 1) for a, b in pairwise(sorted(set(ys), reverse=True)))
    return found


def spans(line: Stroke, other: Stroke) -> bool:
    """True if a level line lies under the whole of another and ends where it ends."""
    (x1, x2), (from_x, to_x) = sorted((line.x1, line.x2)), sorted((other.x1, other.x2))
    return x1 < from_x + 0.1 and abs(x2 - to_x) < 0.1


@pytest.mark.parametrize("level", ["first", "younger", "older", "upper"])
def test_writing_lines_have_the_heights_of_their_level(letter: Packs, level: str) -> None:
    x_height, pitch = RULING[level]
    sheets = [s for s in letter.sheets() if s.pack == level and s.kind in ("biography", "words", "telling")]
    found: Counter[float] = Counter()
    middles = 0
    for sheet in sheets:
        for page in sheet.pages:
            found += steps(page)
            if x_height:
                dotted = [s for s in page.strokes if s.level and s.dash and s.dash[0] < 0.1 and s.length > 20]
                bases = base_lines(page)
                for middle in dotted:  # it leaves out the letters to trace, but lies on the line they stand on
                    under = min(middle.y1 - b.y1 for b in bases if b.y1 < middle.y1 and spans(b, middle))
                    assert under == pytest.approx(x_height, abs=0.05), page
                    middles += 1
    assert middles >= 3 if x_height else not middles
    if level == "younger":
        # 4 to 6 mm at six to eight: common practice, no source
        assert 4.0 <= x_height <= 6.0  # type: ignore[operator]
    if level != "first":  # a page of the first has few lines under each other
        (usual, _), *_ = found.most_common(1)
        assert usual == pytest.approx(pitch, abs=0.1)
        assert not any(0.5 < step < pitch - 0.15 for step in found), found


# Boxes and what is glued into them


def glue_boxes(sheet: Sheet, words: str) -> dict[str, tuple[float, float]]:
    """The dashed boxes of a book by their letters, as they lie when the book is read: width and height."""
    found = {}
    for page in sheet.pages:
        for run in page.runs:
            named = re.fullmatch(rf"{words} ([A-Z]+)", run.text.strip())
            if named:
                x, y = (run.box[0] + run.box[2]) / 2, (run.box[1] + run.box[3]) / 2
                around = [s for s in page.shapes if s.dash and inside(s, x, y)]
                assert len(around) == 1, (sheet, named[0])
                lying = round(run.angle / 90) % 2
                found[named[1]] = (around[0].high, around[0].wide) if lying else (around[0].wide, around[0].high)
    return found


def bare(text: str) -> str:
    return "".join(text.split())


def inside(shape: Shape, x: float, y: float) -> bool:
    return shape.box[0] < x < shape.box[2] and shape.box[1] < y < shape.box[3]


def cut_pieces(sheet: Sheet) -> dict[str, tuple[float, float]]:
    """The pictures to cut out by their letters: a solid frame with its letter inside, on a chip in a corner."""
    found = {}
    for page in sheet.pages:
        frames = [s for s in page.shapes if s.rectangle and s.width and not s.dash and s.fill is None]
        for run in page.runs:
            x, y = (run.box[0] + run.box[2]) / 2, (run.box[1] + run.box[3]) / 2
            round_it = [s for s in frames if s.box[0] < x < s.box[2] and s.box[1] < y < s.box[3]]
            if re.fullmatch("[A-Z]{1,2}", run.text.strip()) and round_it:
                frame = max(round_it, key=lambda s: s.wide * s.high)  # a drawing may have boxes of its own
                found[run.text.strip()] = (frame.wide, frame.high)
    return found


def test_each_picture_is_cut_exactly_as_large_as_its_box_in_the_book(packs: Packs) -> None:
    for child in packs.family.children:
        (book,) = packs.sheets("fold-book", "", child.name)[:1]
        halves = packs.sheets("fold-book", "", child.name)
        boxes: dict[str, tuple[float, float]] = {}
        for half in halves:
            boxes |= glue_boxes(half, "glue")
        pieces = cut_pieces(packs.sheets("fold-book", "cut-outs", child.name)[0])
        assert boxes.keys() == pieces.keys() and len(boxes) >= 2, book
        for letter, (wide, high) in boxes.items():  # a piece may lie on its side where that saves paper
            upright, lying = (pieces[letter] == pytest.approx(size, abs=0.1) for size in ((wide, high), (high, wide)))
            assert upright or lying, (book, letter, (wide, high), pieces[letter])


def test_a_picture_to_cut_out_fills_its_frame(packs: Packs) -> None:
    for sheet in packs.sheets("fold-book", "cut-outs"):
        for page in sheet.pages:
            frames = [s.box for s in page.shapes if s.rectangle and s.width and not s.dash]
            for image in page.images:
                assert any(image == pytest.approx(frame, abs=0.05) for frame in frames), (sheet, page)


def test_cards_are_as_large_as_the_places_for_them(packs: Packs) -> None:
    for cards in packs.sheets("timeline", "cards"):
        (places,) = packs.sheets("timeline", "", cards.child)
        wanted = [(s.wide, s.high) for page in places.pages for s in page.shapes if s.dash and s.wide > 60]
        got = [(s.wide, s.high) for page in cards.pages for s in page.shapes
               if s.rectangle and s.width == pytest.approx(0.35, abs=0.01) and s.wide > 60]  # fmt: skip
        assert len(wanted) == len(got) == 8
        for size in got:
            assert size == pytest.approx(wanted[0], abs=0.1)


# Enlarging grids


IN_WORDS = {"oneandahalf": 1.5, "twice": 2.0, "twoandahalf": 2.5, "three": 3.0}


def test_a_grid_enlarges_by_exactly_the_ratio_it_states(packs: Packs) -> None:
    checked = 0
    for sheet in packs.sheets("enlarging-grid"):
        text = "".join(page.text for page in sheet.pages)
        said = re.search(r"([\d.]+)mm(?:becomesoneof|growto)([\d.]+)mm", text)
        ratio = re.search(r"(\d+):(\d+)\.", text)
        words = re.search(r"(oneandahalf|twice|twoandahalf|three)(?:times)?aswide", text)
        assert said and (ratio or words), sheet
        small, large = float(said[1]), float(said[2])
        stated = int(ratio[1]) / int(ratio[2]) if ratio else IN_WORDS[words[1]]  # type: ignore[index]
        assert large / small == pytest.approx(stated, abs=1e-9)
        lines = [s for page in sheet.pages for s in page.strokes]
        for side, width, ink in ((small, 0.18, 0.0), (large, 0.25, 0.62)):
            ruled = [s for s in lines if s.width == pytest.approx(width, abs=0.01) and s.ink == ink and s.length > 25]
            for upright in (True, False):
                places = sorted({round(s.x1 if upright else s.y1, 3) for s in ruled if s.upright == upright})
                gaps = Counter(round(b - a, 2) for a, b in pairwise(places) if b - a > 1)
                assert gaps.most_common(1)[0][0] == pytest.approx(side, abs=0.02), (sheet, side, gaps)
        checked += 1
    assert checked >= 2


# The time axis


@dataclass(frozen=True)
class Axis:
    """An axis read off a page: mm down from the page's head a year stands, as a line through its ticks."""

    x: float
    years: tuple[float, ...]
    down: tuple[float, ...]

    @property
    def fit(self) -> tuple[float, float]:
        scale, start = np.polyfit(self.years, self.down, 1)
        return float(scale), float(start)


def year_of(label: str) -> float | None:
    found = re.fullmatch(r"(\d+)( BC)?", label.strip())
    return None if not found else 1.0 - int(found[1]) if found[2] else float(found[1])


def axis_of(page: PaperPage) -> Axis:
    """The heavy upright line with its labelled ticks at its left."""
    spine = max((s for s in page.strokes if s.upright and s.width > 0.65), key=lambda s: s.length)
    years, down = [], []
    for tick in page.strokes:
        if tick.level and abs(max(tick.x1, tick.x2) - spine.x1) < 0.01 and tick.length == pytest.approx(3.0, abs=0.01):
            names = [
                year for run in page.runs
                if abs((run.box[1] + run.box[3]) / 2 - tick.y1) < 1.0 and 0 < min(tick.x1, tick.x2) - run.box[2] < 3
                and (year := year_of(run.text)) is not None
            ]  # fmt: skip
            assert len(names) == 1, (page, tick)
            years.append(names[0])
            down.append(page.height - tick.y1)
    return Axis(spine.x1, tuple(years), tuple(down))


def test_years_stand_on_the_axis_in_proportion(packs: Packs) -> None:
    checked = set()
    for sheet in packs.sheets("timeline", ""):
        for page in sheet.pages:
            if not any(s.upright and s.width > 0.65 and s.length > 60 for s in page.strokes):
                continue
            axis = axis_of(page)
            assert len(axis.years) >= 3
            scale, start = axis.fit
            for year, down in zip(axis.years, axis.down, strict=True):
                assert down == pytest.approx(scale * year + start, abs=0.2), (sheet, page, year)
            checked.add(sheet.child)
    assert checked == {child.name for child in packs.family.children if child.pack != "first"}


def test_the_youngests_events_stand_down_their_path_in_order_of_time(packs: Packs) -> None:
    """Four-year-olds do not read a scale: their timeline is numbered boxes, one event and its year in each."""
    for child in packs.family.children:
        if child.pack != "first":
            continue
        (sheet,) = packs.sheets("timeline", "", child.name)
        (page,) = sheet.pages
        boxes = sorted((s for s in page.shapes if s.wide > 60 and s.high > 30), key=lambda s: -s.box[3])
        assert len(boxes) >= 2
        years = []
        for number, box in enumerate(boxes, 1):
            runs = [run for run in page.runs if box.box[1] < run.y < box.box[3]]
            assert [run.text for run in runs if run.box[2] < box.box[0]] == [str(number)]
            words = "".join(run.text for run in runs if run.box[0] > box.box[0] and run.size_pt > 14)
            (event,) = [e for e in packs.study.timeline if bare(words) == bare(e.short or e.what)]
            assert event.when.start and any(run.text == str(event.when.start.year) for run in runs), words
            years.append(event.when.start.year)
        assert years == sorted(years)


def test_dots_stand_at_their_dates_and_bars_last_as_long_as_they_should(example: Packs) -> None:
    (sheet,) = example.sheets("timeline", "", "Juno")
    page = sheet.pages[0]
    axis = axis_of(page)
    scale, start = axis.fit
    dots = [page.height - (s.box[1] + s.box[3]) / 2 for s in page.shapes
            if 2.0 < s.wide < 2.8 and abs((s.box[0] + s.box[2]) / 2 - axis.x) < 0.05]  # fmt: skip
    moments = []
    for event in example.study.timeline:
        day = event.when.start
        assert day
        if not event.when.is_span:
            # The days before a month in a year of 365. A year alone stands at its own mark.
            before = (0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334)[(day.month or 1) - 1]
            moments.append(day.year + (before + (day.day or 1) - 1) / 365)
    assert sorted(dots) == pytest.approx(sorted(scale * m + start for m in moments), abs=0.2)
    bars = [s for s in page.shapes if s.fill == 0.8 and s.wide == pytest.approx(2.0, abs=0.01)]
    (span,) = [event.when for event in example.study.timeline if event.when.is_span]
    assert span.start and span.end and len(bars) == 1
    assert bars[0].high == pytest.approx(scale * (span.end.year - span.start.year), abs=0.2)


JOINED = """
study: Oda Brann
kind: inventor
in_short: Invented, with a long life of many dates.
born: 1801
died: 1899
timeline:
""" + "".join(f"  - {{when: {1801 + 2 * k}, what: Event number {k} of a long and busy life full of things}}\n"
              for k in range(50))  # fmt: skip


def test_the_axis_runs_on_true_over_joined_sheets(maker: Maker, tmp_path: Path) -> None:
    """The strip that two sheets share shows the same years on both; laid over one another, the years stay linear."""
    (tmp_path / "study.yaml").write_text(JOINED, encoding="utf-8")
    packs = maker(tmp_path / "study.yaml", "family: Fell\nchildren:\n  - {name: Juno, age: 11, pack: older}\n")
    (sheet,) = packs.sheets("timeline", "", "Juno")
    pages = [p for p in sheet.pages if any(s.upright and s.width > 0.65 and s.length > 60 for s in p.strokes)]
    assert len(pages) >= 2
    years: dict[float, list[float]] = {}
    along = 0.0  # how far down the joined axis the head of this page's axis lies
    for number, page in enumerate(pages):
        spine = max((s for s in page.strokes if s.upright and s.width > 0.65), key=lambda s: s.length)
        head, foot = page.height - max(spine.y1, spine.y2), page.height - min(spine.y1, spine.y2)
        axis = axis_of(page)
        for year, down in zip(axis.years, axis.down, strict=True):
            years.setdefault(year, []).append(along + down - head)
        joins = [page.height - s.y1 for s in page.strokes if s.level and s.dash and s.length > 150]
        if number < len(pages) - 1:
            (under,) = [join for join in joins if join > (head + foot) / 2]
            along += under - head
    assert any(len(places) == 2 for places in years.values())
    flat = [(year, place) for year, places in years.items() for place in places]
    scale, start = np.polyfit(*zip(*flat, strict=True), 1)
    for year, place in flat:
        assert place == pytest.approx(scale * year + start, abs=0.2), year
