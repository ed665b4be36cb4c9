"""Every solid of the catalogue printed once from one study: for eight-year-olds on A4, for the youngest on Letter."""

from __future__ import annotations

import json
import math
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from paper import MM, Box, PaperFile, PaperPage, Point, Run, Stroke, around
from test_page_quality import crossed, overlapping

from packgen import build
from packgen.nets import catalogue

SOLIDS = {
    "antiprism": "{sides: 6, side: 30 mm}",
    "bladed-wheel": "{diameter: 120 mm, blades: 8, axle: 6 mm}",
    "bridge-pier": "{length: 10 m, width: 3 m, height: 5 m, top: 2.4 m}",
    "cone": "{diameter: 60 mm, height: 40 mm}",
    "cone-canopy": "{diameter: 300 mm, height: 90 mm}",
    "cube": "{edge: 3 cm}",
    "cuboctahedron": "{edge: 3 cm}",
    "cuboid": "{length: 80 mm, width: 60 mm, height: 40 mm}",
    "cylinder": "{diameter: 5 m, height: 6 m}",
    "dodecahedron": "{edge: 3 cm}",
    "frustum": "{sides: 6, base: 40 mm, top: 20 mm, height: 50 mm}",
    "gabled-house": "{length: 7 m, width: 5 m, height: 4 m, roof: 2.5 m}",
    "icosahedron": "{edge: 30 mm}",
    "lidded-box": "{length: 80 mm, width: 60 mm, height: 40 mm}",
    "mesh": "",
    "octahedron": "{edge: 40 mm}",
    "open-box": "{length: 300 mm, width: 210 mm, height: 80 mm}",
    "prism": "{sides: 8, across: 5.2 m, height: 6.1 m}",
    "pyramid": "{sides: 4, base: 230 m, height: 147 m}",
    "pyramid-canopy": "{sides: 6, base: 100 mm, height: 60 mm}",
    "stepped-pyramid": "{steps: 3, base: 80 mm, top: 30 mm, height: 45 mm}",
    "tetrahedron": "{edge: 40 mm}",
    "tower": "{sides: 6, side: 60 mm, height: 160 mm, roof: 90 mm}",
    "truncated-cone": "{diameter: 120 mm, top diameter: 60 mm, height: 40 mm}",
    "truncated-icosahedron": "{edge: 18 mm}",
    "wound-strip": "{former: 60 mm, width: 40 mm, turns: 4}",
}
TRUE = ("open-box", "cone-canopy", "pyramid-canopy", "tower")
HOLES = {"cone": "apex", "pyramid": "apex", "pyramid-canopy": "corners", "cone-canopy": "corners", "cube": "base"}
TENT = "v 0 0 0\nv 60 0 0\nv 60 60 0\nv 0 60 0\nv 30 30 50\nf 4 3 2 1\nf 1 2 5\nf 2 3 5\nf 3 4 5\nf 4 1 5\n"
FAMILIES = {
    "A4": ("paper: A4\nprinter: {margin: 6 mm}", "younger"),
    "Letter": ("paper: Letter\nprinter: {margin: 12 mm, colour: false}", "tiny"),
}
NEAR = 0.1
REACH = 0.3
"""Half a line's width and rounding (mm)."""


@dataclass(frozen=True)
class Printed:
    """One model as printed: its facts in the manifest, its card and its steps."""

    facts: dict[str, Any]
    card: tuple[PaperPage, ...]
    steps: tuple[PaperPage, ...]
    margin: float

    def page(self, piece: dict[str, Any]) -> PaperPage:
        return next(p for p in self.card if p.index == piece["page"] - 1)


def study_text() -> str:
    rows = ["study: All Solids", "kind: inventor", "in_short: Every solid once.", "models:"]
    for name, given in SOLIDS.items():
        rows.append(f"  - title: The {name}")
        rows += [f"    solid: {name}", f"    given: {given}"] if given else ["    mesh: tent.obj"]
        rows += ["    scale: true"] if name in TRUE else []
        rows += [f"    holes: [{{where: {HOLES[name]}, across: 3 mm}}]"] if name in HOLES else []
    return "\n".join(rows) + "\n"


def printed(home: Path, paper: str) -> list[Printed]:
    head, pack = FAMILIES[paper]
    (home / "packs").mkdir()
    (home / "study.yaml").write_text(study_text(), encoding="utf-8")
    (home / "tent.obj").write_text(TENT, encoding="utf-8")
    (home / "packs" / "tiny.yaml").write_text(
        "pack: tiny\nlevel: first\nabout: The youngest.\nsheets:\n  - model\n", encoding="utf-8"
    )
    family = f"family: Sorrel\n{head}\nchildren:\n  - {{name: Ada, age: 8, pack: {pack}}}\n"
    (home / "family.yaml").write_text(family, encoding="utf-8")
    built = build.build(build.Order(home / "study.yaml", home / "family.yaml", only=("model",)), home / "out", jobs=1)
    manifest = json.loads((built.folder / "packgen.json").read_text(encoding="utf-8"))
    files = {f["path"]: PaperFile(built.folder / f["path"]) for f in manifest["files"]}

    def pages(title: str, part: str) -> tuple[PaperPage, ...]:
        found = [(f["path"], s["pages"]) for f in manifest["files"] for s in f["sheets"]
                 if s["title"] == f"Model: {title}" and s.get("part", "") == part]  # fmt: skip
        ((path, (first, last)),) = found
        return tuple(files[path].pages[first - 1 : last])

    margin = 6.0 if paper == "A4" else 12.0
    return [Printed(m, pages(m["title"], ""), pages(m["title"], "steps"), margin) for m in manifest["models"]]


@pytest.fixture(scope="module", params=sorted(FAMILIES))
def models(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> list[Printed]:
    return printed(tmp_path_factory.mktemp("solids"), request.param)


def test_every_solid_of_the_catalogue_is_printed(models: list[Printed]) -> None:
    assert set(SOLIDS) == {e.name for e in catalogue()} == {m.facts["solid"] for m in models}


def test_nothing_leaves_what_the_printer_reaches(models: list[Printed]) -> None:
    for model in models:
        for page in (*model.card, *model.steps):
            xs = [x for e in page.edges for x in (e.x1, e.x2)]
            ys = [y for e in page.edges for y in (e.y1, e.y2)]
            left, bottom, right, top = around(tuple(r.box for r in page.runs if r.text.strip()))
            least = model.margin - REACH
            assert min(*xs, left) >= least and max(*xs, right) <= page.width - least, (model.facts["title"], page)
            assert min(*ys, bottom) >= least and max(*ys, top) <= page.height - least, (model.facts["title"], page)


def test_no_letters_lie_on_letters(models: list[Printed]) -> None:
    found = [f"{model.facts['title']} {page}: {a.text!r} on {b.text!r}"
             for model in models for page in (*model.card, *model.steps) for a, b in overlapping(page)
             if (straight(a) and straight(b)) or near_by(a, b)]  # fmt: skip
    assert not found, "\n".join(found)


def straight(run: Run) -> bool:
    """True if the boxes of a run are those of its letters: on slanted letters they reach too far."""
    return min(run.angle % 90, 90 - run.angle % 90) < 1


def middles(run: Run) -> list[Point]:
    return [((b[0] + b[2]) / 2, (b[1] + b[3]) / 2) for b in run.boxes]


def near_by(a: Run, b: Run) -> bool:
    """True if letters stand so near each other that they must touch: half an em from middle to middle."""
    em = (a.size_pt + b.size_pt) / 2 / MM
    return any(math.dist(p, q) < 0.6 * em for p in middles(a) for q in middles(b))


def through(run: Run, line: Stroke) -> bool:
    """True if a line that meets the box of letters runs through their middle, a quarter of an em or nearer."""
    if straight(run):
        return True
    return any(off(p, line) < 0.25 * run.size_pt / MM for p in middles(run))


def off(p: Point, line: Stroke) -> float:
    dx, dy = line.x2 - line.x1, line.y2 - line.y1
    along = ((p[0] - line.x1) * dx + (p[1] - line.y1) * dy) / ((dx * dx + dy * dy) or 1.0)
    along = max(0.0, min(1.0, along))
    return math.dist(p, (line.x1 + along * dx, line.y1 + along * dy))


def on_patch(page: PaperPage, box: Box) -> bool:
    """True if letters stand on a white patch of their own."""
    return any(
        s.fill in (1, 1.0, (1.0,), (1.0, 1.0, 1.0)) and s.wide < 30 and s.high < 30 and
        s.box[0] <= box[0] and s.box[1] <= box[1] and s.box[2] >= box[2] and s.box[3] >= box[3]
        for s in page.shapes
    )  # fmt: skip


def test_no_line_runs_through_letters_but_a_fine_one_under_a_white_patch(models: list[Printed]) -> None:
    found = [f"{model.facts['title']} {page}: {run.text!r} by {line}"
             for model in models for page in model.card for run, line in crossed(page)
             if through(run, line) and not (line.width < 0.2 and on_patch(page, run.box))]  # fmt: skip
    assert not found, "\n".join(found)


def near(one: Point, other: Point) -> bool:
    return math.dist(one, other) <= NEAR


def test_every_line_of_the_manifest_is_on_the_paper(models: list[Printed]) -> None:
    for model in models:
        for cut in model.facts["cuts"]:
            points = [tuple(p) for p in cut["points_mm"]]
            wide = [s for s in model.page(cut).shapes if s.width > 0.45 and not s.dash]
            singly = [s for s in model.page(cut).strokes if s.width > 0.45 and not s.dash]
            assert any(
                len(piece) in (len(points), len(points) + 1) and all(map(near, piece, points))
                for s in wide for piece in s.pieces
            ) or any(near((s.x1, s.y1), points[0]) and near((s.x2, s.y2), points[-1]) for s in singly), (
                model.facts["title"], points[:2]
            )  # fmt: skip
        for fold in model.facts["folds"]:
            a, b = (tuple(p) for p in fold["points_mm"])
            dashes = {len(s.dash) for s in model.page(fold).edges if s.width > 0.3 and s.dash
                      and on_line(a, s.x1, s.y1, s.x2, s.y2) and on_line(b, s.x1, s.y1, s.x2, s.y2)}  # fmt: skip
            assert dashes == {{"valley": 2, "mountain": 4}[fold["kind"]]}, (model.facts["title"], fold)


def on_line(p: Point, x1: float, y1: float, x2: float, y2: float) -> bool:
    return math.dist((x1, y1), p) + math.dist(p, (x2, y2)) - math.dist((x1, y1), (x2, y2)) <= NEAR / 5


def test_holes_are_dashed_rings_of_their_width(models: list[Printed]) -> None:
    rings = 0
    for model in models:
        for hole in model.facts["holes"]:
            if hole["kind"] != "hole":
                continue
            at = tuple(hole["at_mm"])
            found = [s for s in model.page(hole).shapes if s.dash and s.width and abs(s.wide - hole["across_mm"]) < NEAR
                     and near(((s.box[0] + s.box[2]) / 2, (s.box[1] + s.box[3]) / 2), at)]  # fmt: skip
            assert len(found) == 1, (model.facts["title"], hole)
            rings += 1
    assert rings == 6 + 4 + 1 + 1  # two canopies, the cube's base, the wheel's axle


def test_every_letter_stands_on_its_tab_and_on_its_edge(models: list[Printed]) -> None:
    for model in models:
        shown = [run.text.strip() for page in model.card for run in page.runs]
        for letter in {tab["letter"] for tab in model.facts["tabs"]}:
            assert shown.count(letter) >= 2, (model.facts["title"], letter)


def test_the_face_closed_last_is_named_on_the_print(models: list[Printed]) -> None:
    """Steps name one face, the last; its name, or on a small face its number, stands on the card."""
    told = 0
    for model in models:
        words = "".join(page.text for page in model.steps)
        for face in {f["name"].replace("mantle", "curved side") for f in model.facts["faces"]}:
            if f"Nowthe{face}".replace(" ", "") in words or f"Now{face},".replace(" ", "") in words:
                card = {run.text.strip() for page in model.card for run in page.runs}
                assert face in card or face.split()[-1] in card, (model.facts["title"], face)
                told += 1
    assert told >= 15


def test_the_key_has_the_lines_that_are_on_the_sheet_and_no_others(models: list[Printed]) -> None:
    for model in models:
        for page in model.card:
            number = page.index + 1
            kinds = {f["kind"] for f in model.facts["folds"] if f["page"] == number}
            assert ("mountainfold:awayfromyou" in page.text) == ("mountain" in kinds), model.facts["title"]
            assert ("valleyfold:towardsyou" in page.text) == ("valley" in kinds), model.facts["title"]
            bent = any(f["name"].startswith("mantle") for f in model.facts["faces"] if f["page"] == number)
            assert ("bend,nocrease" in page.text) == bent, model.facts["title"]
            flat = kinds == {"valley"} and not model.facts["tabs"]  # a wheel whose blades are folded up has no outside
            assert ("printedsideistheoutside" in page.text) != flat and "10cm" in page.text, model.facts["title"]


def test_faces_have_plain_names_on_the_print(models: list[Printed]) -> None:
    """A round wall is a curved side, a house has walls and gables."""
    for model in models:
        text = "".join(page.text for page in (*model.card, *model.steps)).lower()
        assert "mantle" not in text, model.facts["title"]
        if model.facts["solid"] == "gabled-house":
            assert "gable1" in text and "wall2" in text
        if model.facts["solid"] in ("cone", "cylinder"):
            assert "curvedside" in text


def test_a_scale_has_a_bar_as_long_as_it_says(models: list[Printed]) -> None:
    """ISO 5455: SCALE and a ratio; the bar's real length times the ratio is its length on paper."""
    scaled = 0
    for model in models:
        ratio = model.facts["ratio"]
        for page in model.card:
            if ratio == 1:
                assert "truesize" in page.text and "SCALE" not in page.text
                continue
            said = page.text.split("SCALE", 1)[1]
            up, down = said.split(":")[0], "".join(c for c in said.split(":")[1][:6] if c.isdigit())
            assert float(up) / float(down) == pytest.approx(ratio)
            bars = [s for s in page.shapes if s.rectangle and abs(s.high - 1.2) < 0.02 and s.box[1] > page.height - 60]
            left, _, right, _ = around(tuple(s.box for s in bars))
            words = next(r.text for r in page.runs if r.box[3] > page.height - 60 and abs(r.box[2] - right) < 0.6
                         and r.box[3] < bars[0].box[1])  # fmt: skip
            number, unit = words.split()
            real = float(number) * {"mm": 1, "cm": 10, "m": 1000, "km": 1e6}[unit]
            assert right - left == pytest.approx(real * ratio, abs=0.1), model.facts["title"]
            scaled += 1
    assert scaled >= 4


def test_tabs_of_the_youngest_have_round_corners_and_larger_letters(models: list[Printed]) -> None:
    cube = next(m for m in models if m.facts["solid"] == "cube")
    youngest = cube.margin == 12.0
    corners = [len(tab["points_mm"]) for tab in cube.facts["tabs"]]
    assert min(corners) > 8 if youngest else max(corners) == 4
    sizes = [r.size_pt for page in cube.card for r in page.runs if r.text.strip() == "A" and r.y > 40]
    # The letter on a face stays in sight when the model is done, so it is smaller than the one that the glue covers.
    face, tab = min(sizes), max(sizes)
    assert len(sizes) == 2 and face < tab
    assert (face >= 9.0) == (tab >= 14.0) == youngest


def test_steps_take_one_page_or_two_and_the_second_is_no_leftover(models: list[Printed]) -> None:
    for model in models:
        assert len(model.steps) <= 3, model.facts["title"]
        if len(model.steps) > 1:
            numbers = [r for r in model.steps[-1].runs if r.text.strip().rstrip(".").isdigit()]
            assert len(numbers) >= 2, model.facts["title"]


def test_no_two_cuts_leave_a_sliver(models: list[Printed]) -> None:
    """Cuts of one piece that do not meet stay 0.9 mm apart or more, nearly all of them 3 mm."""
    near_by = total = 0
    for model in models:
        if model.facts["solid"] in ("truncated-icosahedron", "bladed-wheel"):
            continue
        for tab in model.facts["tabs"]:
            tip = [tuple(p) for p in tab["points_mm"]][1:3]
            for other in model.facts["tabs"]:
                if other is not tab and other["page"] == tab["page"]:
                    gap = min(math.dist(p, q) for p in tip for q in map(tuple, other["points_mm"][1:3]))
                    total += 1
                    near_by += gap < 0.9
    assert near_by / total < 0.005
    assert all(a != b for model in models for c in model.facts["cuts"] for a, b in pairwise(c["points_mm"]))
