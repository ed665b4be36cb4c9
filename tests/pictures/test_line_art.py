import math
from pathlib import Path

import pytest
from picture_kinds import KINDS
from PIL import Image, ImageDraw
from shapely import LineString, Point, Polygon, make_valid
from shapely.strtree import STRtree

from packgen.pictures.line_art import LineArt, line_art, lines_alone, numbered, tone_shapes
from packgen.pictures.load import Store
from packgen.pictures.shapes import flattened

RANGES = {1: (8, 20), 2: (20, 60), 3: (50, 150)}
EVERY = [(kind, level) for kind in KINDS for level in RANGES]


def ground(steps: tuple[tuple[str | float, ...], ...]) -> Polygon:
    shape = Polygon()
    for line in flattened(steps, 6):
        if len(line) > 3:
            shape = shape.symmetric_difference(make_valid(Polygon(line)))
    return shape


@pytest.mark.parametrize(("kind", "level"), EVERY)
def test_the_number_of_areas_is_in_the_levels_range(six: dict[str, Path], store: Store, kind: str, level: int) -> None:
    low, high = RANGES[level]
    assert low <= len(line_art(store, six[kind], level).regions) <= high


@pytest.mark.parametrize(("kind", "level"), EVERY)
def test_areas_are_closed_and_share_out_the_picture(six: dict[str, Path], store: Store, kind: str, level: int) -> None:
    art = line_art(store, six[kind], level)
    assert all(region.steps[-1] == ("z",) for region in art.regions)
    shapes = [ground(region.steps) for region in art.regions]
    assert sum(shape.area for shape in shapes) == pytest.approx(art.width * art.height, rel=1e-4)
    assert sum(region.area for region in art.regions) == pytest.approx(1)
    for region, shape in zip(art.regions, shapes, strict=True):
        assert shape.area == pytest.approx(region.area * art.width * art.height, rel=0.3)


@pytest.mark.parametrize(("kind", "level"), EVERY)
def test_outlines_cross_neither_themselves_nor_each_other(
    six: dict[str, Path], store: Store, kind: str, level: int
) -> None:
    art = line_art(store, six[kind], level)
    lines = [LineString(flattened(steps, 6)[0]) for steps in art.outlines[1:]]
    assert all(line.is_simple for line in lines)
    tree = STRtree(lines)
    assert not any(lines[i].crosses(lines[j]) for i in range(len(lines)) for j in tree.query(lines[i]) if i < j)


@pytest.mark.parametrize(("kind", "level"), EVERY)
def test_a_label_has_room_inside_its_area(six: dict[str, Path], store: Store, kind: str, level: int) -> None:
    for region in line_art(store, six[kind], level).regions:
        shape = ground(region.steps)
        assert shape.buffer(0.004).contains(LineString([region.label, region.label]).centroid)
        assert region.room > 0


# Across, in mm, at the size it has on paper: a crayon's tip, a pencil's, a sharp pencil's (common practice, no source).
HOLDS = {1: 7.4, 2: 3.6, 3: 2.8}


@pytest.mark.parametrize(("kind", "level"), EVERY)
def test_every_area_holds_the_pen_of_its_level(six: dict[str, Path], store: Store, kind: str, level: int) -> None:
    art = line_art(store, six[kind], level)
    placed = art.placed(0, 0, 165 if art.height <= 1 else 165 / art.height)
    free = [2 * region.room for region in placed.regions]
    assert kind == "line_drawing" or min(free) >= HOLDS[level]


@pytest.mark.parametrize(("kind", "level"), EVERY)
def test_there_is_one_kind_of_line(six: dict[str, Path], store: Store, kind: str, level: int) -> None:
    art = line_art(store, six[kind], level)
    assert bool(art.ink) == (kind == "line_drawing") and (len(art.outlines) > 1) != bool(art.ink)


def test_the_face_of_a_portrait_keeps_its_eyes(six: dict[str, Path], store: Store) -> None:
    for level in (2, 3):
        shapes = [ground(region.steps) for region in line_art(store, six["portrait"], level).regions]
        # The eyes are drawn round (178, 198) and (225, 198) in a picture 400 px wide and 480 high.
        for x in (178, 225):
            eye = Point(x / 400, (480 - 198) / 400)
            assert min(shape.area for shape in shapes if shape.buffer(0.003).contains(eye)) < 0.012


def disc(path: Path, lines: bool) -> Path:
    """A red disc on blue ground, or its outline on paper."""
    image = Image.new("RGB", (400, 300), "white" if lines else (60, 90, 200))
    box = (150, 100, 250, 200)
    pen = ImageDraw.Draw(image)
    if lines:
        pen.ellipse(box, outline="black", width=4)
    else:
        pen.ellipse(box, fill=(200, 50, 40))
    image.save(path)
    return path


def test_a_drawing_gives_the_lines_and_the_picture_the_colours(store: Store, tmp_path: Path) -> None:
    picture, lines = disc(tmp_path / "disc.png", False), disc(tmp_path / "lines.png", True)
    art = numbered(store, picture, 2, 5, lines)
    assert art.ink and len(art.outlines) == 1 and len(art.regions) == 2
    small, large = sorted(art.regions, key=lambda region: region.area)
    assert small.colour[0] > 0.7 and small.colour[2] < 0.3 and large.colour[2] > 0.7
    assert small.number != large.number
    # The disc is 100 px across in a picture 400 px wide.
    assert small.label == pytest.approx((0.5, 0.375), abs=0.02) and small.room == pytest.approx(0.12, abs=0.01)


@pytest.mark.parametrize("level", RANGES)
def test_outlines_lie_on_the_edges_of_the_picture(store: Store, tmp_path: Path, level: int) -> None:
    art = line_art(store, disc(tmp_path / "disc.png", False), level)
    (outline,) = (steps for steps in art.outlines[1:] if steps[-1] == ("z",))
    off = [abs(math.hypot(x - 0.5, y - 0.375) - 0.125) for x, y in flattened(outline)[0]]
    assert max(off) * 165 < 1.0  # mm, at the width it has on paper


def test_lines_alone_are_the_lines_of_the_art(store: Store, tmp_path: Path) -> None:
    picture, lines = disc(tmp_path / "disc.png", False), disc(tmp_path / "lines.png", True)
    assert lines_alone(store, picture, 2) == line_art(store, picture, 2)
    alone, whole = lines_alone(store, picture, 2, lines), line_art(store, picture, 2, lines)
    assert (alone.ink, alone.outlines) == (whole.ink, whole.outlines) and not alone.regions


def test_all_that_is_drawn_is_in_the_ink(store: Store, tmp_path: Path) -> None:
    lines = disc(tmp_path / "lines.png", True)
    art = line_art(store, disc(tmp_path / "disc.png", False), 1, lines)
    inked = sum(ground(steps).area for steps in art.ink) * 400 * 400
    assert inked == pytest.approx(3.1416 * (50**2 - 46**2), rel=0.25)


def test_the_same_picture_gives_the_same_art(six: dict[str, Path], tmp_path: Path) -> None:
    for folder in ("one", "two"):
        (tmp_path / folder).mkdir()
    one, two = (line_art(Store(tmp_path / folder), six["still_life"], 1) for folder in ("one", "two"))
    assert one == two


def test_art_placed_at_a_width_is_in_mm(six: dict[str, Path], store: Store) -> None:
    art = line_art(store, six["landscape"], 1)
    placed = art.placed(10, 20, 180)
    assert placed.width == 180 and placed.height == pytest.approx(180 * 400 / 480, abs=0.4)
    assert placed.outlines[0][2] == ("l", 190, 20 + placed.height)
    assert placed.regions[0].room == pytest.approx(180 * art.regions[0].room)


def numbers_of(art: LineArt) -> set[int]:
    return {region.number for region in art.regions}


@pytest.mark.parametrize("tones", [3, 4, 5])
def test_tones_run_from_light_to_dark(six: dict[str, Path], store: Store, tones: int) -> None:
    art = tone_shapes(store, six["still_life"], 3, tones)
    assert tones - 1 <= len(art.palette) <= tones and list(art.palette) == sorted(art.palette, reverse=True)
    assert numbers_of(art) == set(range(1, len(art.palette) + 1))  # no number is left out
    lightness = {number: [sum(r.colour) for r in art.regions if r.number == number] for number in numbers_of(art)}
    means = [sum(lightness[n]) / len(lightness[n]) for n in sorted(lightness)]
    assert means == sorted(means, reverse=True)


def test_each_numbered_area_has_the_paint_most_like_it(six: dict[str, Path], store: Store) -> None:
    art = numbered(store, six["landscape"], 2, 8)
    assert 5 <= len(art.palette) <= 8
    for region in art.regions:
        paint = art.palette[region.number - 1]
        assert max(abs(a - b) for a, b in zip(paint, region.colour, strict=True)) < 0.35


def test_a_plain_picture_is_one_area(store: Store, tmp_path: Path) -> None:
    path = tmp_path / "plain.png"
    Image.new("RGB", (300, 200), (90, 140, 160)).save(path)
    for level in RANGES:
        assert len(line_art(store, path, level).regions) == 1
    assert len(tone_shapes(store, path, 3, 3).regions) == 1


@pytest.mark.parametrize("size", [(1, 1), (3, 500), (500, 3)])
def test_the_smallest_and_narrowest_pictures_pass(store: Store, tmp_path: Path, size: tuple[int, int]) -> None:
    path = tmp_path / "odd.png"
    Image.effect_noise(size, 50).convert("RGB").save(path)
    assert line_art(store, path, 2).regions
    assert tone_shapes(store, path, 3, 3).regions
    assert numbered(store, path, 1, 6).regions
