"""Nets on paper: the lines of the PDF are those of the manifest, and the manifest's are the solid's own lengths."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from itertools import pairwise
from typing import Any

import pytest
from built import Packs, Sheet
from paper import PaperPage, Point, Stroke

from packgen.reading.models import Model
from packgen.units import Quantity

NEAR = 0.1
Sizes = dict[str, float]


def nets(packs: Packs) -> Iterator[tuple[dict[str, Any], Sheet]]:
    """Every net of the manifest, also of what a challenge has to cut out, with its sheet."""
    for facts in packs.manifest["models"]:
        found = [s for s in packs.sheets() if s.file["path"] == facts["file"] and s.title.endswith(facts["title"])]
        assert len(found) == 1, facts["title"]
        yield facts, found[0]


def models(packs: Packs) -> Iterator[tuple[Model, dict[str, Any], Sheet]]:
    """Each model of each child: as written, as the manifest has it, and its sheet."""
    written = {str(model.title): model for model in packs.study.models}
    for facts, sheet in nets(packs):
        if sheet.kind == "model":
            yield written[facts["title"]], facts, sheet


def near(one: Point, other: Point, by: float = NEAR) -> bool:
    return math.dist(one, other) <= by


def matches(line: Stroke, start: Point, end: Point) -> bool:
    one, other = (line.x1, line.y1), (line.x2, line.y2)
    return (near(one, start) and near(other, end)) or (near(one, end) and near(other, start))


def page_of(packs: Packs, facts: dict[str, Any], piece: dict[str, Any]) -> PaperPage:
    return packs.file(facts["file"]).pages[piece["page"] - 1]


def test_every_model_of_a_child_is_in_the_manifest_with_its_file_and_pages(packs: Packs) -> None:
    found = [(str(model.title), facts["file"].split("/")[0]) for model, facts, _ in models(packs)]
    children = [str(c.name) for c in packs.family.children if c.pack != "first"]
    assert sorted(found) == sorted((str(m.title), c.lower()) for m in packs.study.models for c in children)
    for facts, sheet in nets(packs):
        first, last = sheet.facts["pages"]
        pages = {piece["page"] for key in ("faces", "folds", "cuts") for piece in facts[key]}
        assert pages == set(range(first, last + 1))


def fold_lines(page: PaperPage) -> list[tuple[Point, Point, tuple[float, ...]]]:
    """Every dashed straight piece: folds in one direction may be drawn as one line, so that their dashes run on."""
    found = [((s.x1, s.y1), (s.x2, s.y2), s.dash) for s in page.strokes if s.width > 0.3 and s.dash]
    for shape in page.shapes:
        if shape.width > 0.3 and shape.dash:
            found += [(a, b, shape.dash) for piece in shape.pieces for a, b in pairwise(piece)]
    return found


def lies_on(point: Point, one: Point, other: Point) -> bool:
    """True if a point lies on the straight line between two others."""
    return math.dist(one, point) + math.dist(point, other) - math.dist(one, other) <= NEAR / 5


def test_every_fold_of_the_manifest_is_a_dashed_line_on_paper(packs: Packs) -> None:
    """Yoshizawa and Randlett: a valley fold is dashed, a mountain fold dash and dot."""
    for facts, _ in nets(packs):
        for fold in facts["folds"]:
            start, end = fold["points_mm"]
            dashes = [dash for one, other, dash in fold_lines(page_of(packs, facts, fold))
                      if lies_on(start, one, other) and lies_on(end, one, other)]  # fmt: skip
            assert len(dashes) == 1, (facts["title"], fold)
            assert len(dashes[0]) == {"valley": 2, "mountain": 4}[fold["kind"]]


def test_every_cut_of_the_manifest_is_a_solid_line_on_paper(packs: Packs) -> None:
    for facts, _ in nets(packs):
        for cut in facts["cuts"]:
            solid = [s for s in page_of(packs, facts, cut).shapes if s.width > 0.45 and not s.dash and s.fill is None]
            points = [tuple(p) for p in cut["points_mm"]]
            assert any(
                len(piece) in (len(points), len(points) + 1) and all(map(near, piece, points))
                for shape in solid for piece in shape.pieces
            ), (facts["title"], points[:3])  # fmt: skip


def given(model: Model) -> Sizes:
    found = {}
    for one in model.given:
        value = one.values[0]
        assert isinstance(value, Quantity)
        found[str(one.name)] = value.value
    return found


def tower(of: Sizes) -> list[list[float]]:
    """A regular prism of that width across flats with a pyramid on it: plane trigonometry."""
    n = round(of["sides"])
    side = of["across"] * math.tan(math.pi / n)
    outer = of["across"] / 2 / math.cos(math.pi / n)
    slope = math.hypot(outer, of["roof"])
    wall = [side, of["height"], side, of["height"]]
    return [[side] * n, *([wall] * n), *([[side, slope, slope]] * n)]


def cuboid(of: Sizes) -> list[list[float]]:
    a, b, c = of["length"], of["width"], of["height"]
    return [[a, b] * 2, [a, b] * 2, [a, c] * 2, [a, c] * 2, [b, c] * 2, [b, c] * 2]


def lidded_box(of: Sizes) -> list[list[float]]:
    """Box and lid; the lid is larger by twice the card (0.25 mm) and 0.25 mm of play on every side."""
    a, b, c = of["length"], of["width"], of["height"]
    lid, more = of.get("lid", c / 3), 2 * (2 * 0.25 + 0.25)
    box = [[a, b] * 2, [a, c] * 2, [a, c] * 2, [b, c] * 2, [b, c] * 2]
    a, b = a + more, b + more
    return [*box, [a, b] * 2, [a, lid] * 2, [a, lid] * 2, [b, lid] * 2, [b, lid] * 2]


def pyramid_canopy(of: Sizes) -> list[list[float]]:
    n = round(of["sides"])
    slope = math.hypot(of["base"] / 2 / math.sin(math.pi / n), of["height"])
    return [[of["base"], slope, slope]] * n


def gabled_house(of: Sizes) -> list[list[float]]:
    a, b, wall = of["length"], of["width"], of["height"]
    rafter = math.hypot(b / 2, of["roof"])
    return [
        [a, b] * 2, [a, wall] * 2, [a, wall] * 2, [a, rafter] * 2, [a, rafter] * 2,
        [b, wall, rafter, rafter, wall], [b, wall, rafter, rafter, wall],
    ]  # fmt: skip


SOLIDS: dict[str, Callable[[Sizes], list[list[float]]]] = {
    "tower": tower, "cuboid": cuboid, "pyramid-canopy": pyramid_canopy, "gabled-house": gabled_house,
    "lidded-box": lidded_box,
}  # fmt: skip


def sides(points: list[Point]) -> list[float]:
    return [math.dist(a, b) for a, b in zip(points, [*points[1:], points[0]], strict=True)]


def test_faces_on_paper_have_the_solids_lengths_times_the_scale(packs: Packs) -> None:
    checked = 0
    for model, facts, _ in models(packs):
        if facts["solid"] not in SOLIDS:
            assert facts["solid"] == "cone", "a solid this test does not know"
            continue
        wanted = [sorted(x * facts["ratio"] for x in face) for face in SOLIDS[facts["solid"]](given(model))]
        for face in facts["faces"]:
            got = sorted(sides(face["points_mm"]))
            found = next((w for w in wanted if len(w) == len(got) and got == pytest.approx(w, abs=NEAR)), None)
            assert found, (facts["title"], face["name"], got)
            wanted.remove(found)
        assert not wanted, (facts["title"], wanted)
        checked += 1
    assert checked >= 2


def test_a_cone_is_a_sector_of_its_slant_and_a_disc_of_its_base(example: Packs) -> None:
    """The mantle of a cone of radius r and slant s is a sector of radius s whose arc is 2 pi r long."""
    found = [(model, facts) for model, facts, _ in models(example) if facts["solid"] == "cone"]
    assert found
    for model, facts in found:
        radius, height = given(model)["diameter"] / 2 * facts["ratio"], given(model)["height"] * facts["ratio"]
        faces = {face["name"]: [tuple(p) for p in face["points_mm"]] for face in facts["faces"]}
        slant = math.hypot(radius, height)
        mantle = faces["mantle"]
        apex = min(mantle, key=lambda p: max(abs(math.dist(p, q) - slant) for q in mantle if q != p))
        rim = [math.dist(apex, p) for p in mantle if p != apex]
        assert rim == pytest.approx([slant] * len(rim), abs=NEAR)
        arc = sum(sorted(sides(mantle))[: len(mantle) - 2])  # a polygon inside the arc, true to 0.1 mm
        assert 2 * math.pi * radius - 0.5 < arc <= 2 * math.pi * radius + 0.01
        base = faces["base"]
        middle = (sum(p[0] for p in base) / len(base), sum(p[1] for p in base) / len(base))
        assert [math.dist(middle, p) for p in base] == pytest.approx([radius] * len(base), abs=NEAR)


def test_the_scale_on_the_sheet_is_the_scale_of_the_net(packs: Packs) -> None:
    """Scales of ISO 5455 are 1:1, 1:2, 1:5, 1:10 and their tens."""
    standard = {1 / (base * 10**power) for base in (1, 2, 5) for power in range(5)}
    for model, facts, sheet in models(packs):
        if model.scale == "true":
            assert facts["ratio"] == 1.0
        else:
            assert any(facts["ratio"] == pytest.approx(scale) for scale in standard), facts["scale"]
        for page in sheet.pages:
            words = "truesize" if facts["ratio"] == 1.0 else f"SCALE{facts['scale']}".replace(" ", "")
            assert words in page.text


def test_tabs_stay_inside_the_cut_outline_and_every_letter_is_there_twice(packs: Packs) -> None:
    for facts, sheet in nets(packs):
        letters = {tab["letter"] for tab in facts["tabs"] if tab["letter"]}
        shown = [run.text.strip() for page in sheet.pages for run in page.runs]
        for letter in letters:
            assert shown.count(letter) >= 2, (facts["title"], letter)
