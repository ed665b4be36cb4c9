"""The model sheet, through study files: faults with their place, drawings on faces, steps, cautions, things to have."""

from __future__ import annotations

import json
import math
import re
from pathlib import Path
from typing import Any

import pdfplumber
import pypdfium2
import pytest
import shapely
from PIL import Image

from packgen import build
from packgen.faults import Fault, Severity

FAMILY = "family: Sorrel\npaper: {paper}\nprinter: {{margin: 6 mm, colour: true}}\nchildren:\n  - {child}\n"
BRAM = "{name: Bram, age: 8, pack: younger}"
MM = 72 / 25.4


def order(home: Path, model: str, child: str = BRAM, paper: str = "A4") -> build.Order:
    head = "study: Isaure Quenby\nkind: inventor\nin_short: Lamp-maker.\nmodels:\n"
    (home / "study.yaml").write_text(head + model, encoding="utf-8")
    (home / "family.yaml").write_text(FAMILY.format(paper=paper, child=child), encoding="utf-8")
    return build.Order(home / "study.yaml", home / "family.yaml", only=("model",))


def faults(home: Path, model: str) -> list[Fault]:
    return [f for f in build.check(order(home, model), jobs=1) if f.severity is Severity.FAULT]


def made(home: Path, model: str, child: str = BRAM) -> tuple[dict[str, Any], Path]:
    built = build.build(order(home, model, child), home / "out", jobs=1)
    return json.loads((built.folder / "packgen.json").read_text(encoding="utf-8")), built.folder


def words(home: Path, model: str, child: str = BRAM, part: str = "plain") -> str:
    """All words on the plain pages (the steps) or the card, with single spaces."""
    manifest, folder = made(home, model, child)
    text = []
    for entry in manifest["files"]:
        if entry["stock"] == part:
            pdf = pypdfium2.PdfDocument(folder / entry["path"])
            text += [page.get_textpage().get_text_range() for page in pdf]
    return " ".join(" ".join(text).split())


BOX = "  - {title: Box, solid: cuboid, given: {length: 80 mm, width: 50 mm, height: 40 mm}, scale: true}\n"
CANOPY = "  - {title: Canopy, solid: pyramid-canopy, given: {sides: 4, base: 90 mm, height: 40 mm}, holes: [corners]}\n"

CORNERS = "v 0 0 0\nv 60 0 0\nv 60 60 0\nv 0 60 0\nv 30 30 40\n"
SIDES = "f 1 2 5\nf 2 3 5\nf 3 4 5\nf 4 1 5\n"
OFF = "OFF\n5 5 0\n0 0 0\n60 0 0\n60 60 0\n0 60 0\n30 30 40\n4 3 2 1 0\n3 0 1 4\n3 1 2 4\n3 2 3 4\n3 3 0 4\n"

# Each with where the fault is told: the text it begins at in the file.
WRONG = [
    ("  - title: Box\n    solid: cubiod\n    given: {length: 80 mm}\n", "cubiod", "Did you mean 'cuboid'"),
    ("  - title: Box\n    solid: cuboid\n    given: {length: 80 mm, width: 5 cm, hight: 4 cm}\n", "hight", "height"),
    ("  - title: Box\n    solid: cube\n    given: {edge: 0 mm}\n", "edge", "more than zero"),
    ("  - title: Box\n    solid: cube\n    given: {edge: 40}\n", "edge", "no unit"),
    (
        "  - title: Hat\n    solid: cone\n    given: {diameter: 60 mm, height: 50 mm, slant: 40 mm}\n",
        "slant",
        "shorter than its height",
    ),
    (
        "  - title: House\n    solid: gabled-house\n    given: {length: 9 m, width: 6 m, height: 4 m, roof: 3 m}\n"
        "    scale: '1:10'\n",
        "'1:10'",
        "more than 12 sheets",
    ),
    (
        "  - title: House\n    solid: gabled-house\n    given: {length: 9 m, width: 6 m, height: 4 m, roof: 3 m}\n"
        "    scale: '1:2000'\n",
        "'1:2000'",
        "narrower than 4 mm",
    ),
    (
        "  - title: Box\n    solid: cube\n    given: {edge: 40 mm}\n"
        "    holes:\n      - {where: corners, across: 3 mm}\n"
        "      - {where: base, across: 39 mm}\n",
        "{where: base",
        "does not fit",
    ),
    (
        "  - title: Box\n    solid: cube\n    given: {edge: 40 mm}\n"
        "    faces:\n      - {face: side 7, texture: tiles}\n",
        "side 7",
        "no face called 'side 7'",
    ),
    (
        "  - title: Box\n    solid: cube\n    given: {edge: 40 mm}\n"
        "    faces:\n      - {face: side 1, texture: tles}\n",
        "tles",
        "Did you mean 'tiles'",
    ),
    ("  - title: Boat\n    mesh: open.obj\n", "open.obj", "one side only"),
    ("  - title: Boat\n    solid: cube\n    mesh: open.obj\n", "cube", "Leave out solid"),
]


@pytest.mark.parametrize(("model", "at", "said"), WRONG)
def test_faults_are_told_where_they_are_written(tmp_path: Path, model: str, at: str, said: str) -> None:
    (tmp_path / "open.obj").write_text(f"{CORNERS}{SIDES}", encoding="utf-8")
    (fault,) = faults(tmp_path, model)
    assert said in f"{fault.message} {fault.instead}" and fault.instead
    line = (tmp_path / "study.yaml").read_text(encoding="utf-8").splitlines()[fault.place.line - 1]
    assert line[fault.place.column - 1 :].startswith(at), (line, fault.place.column)


def test_all_faults_of_a_model_are_told_at_once(tmp_path: Path) -> None:
    model = (
        "  - title: Box\n    solid: cuboid\n    given: {length: 80, width: 0 mm, hight: 4 cm}\n"
        "    faces:\n      - {face: side 1, texture: tles}\n"
    )
    found = faults(tmp_path, model)
    text = (tmp_path / "study.yaml").read_text(encoding="utf-8").splitlines()
    at = [text[f.place.line - 1][f.place.column - 1 :].split(":")[0].split(",")[0].strip(" }") for f in found]
    assert sorted(at) == sorted(["length", "width", "hight", "tles"])
    assert all(f.instead for f in found)


def test_two_holes_that_do_not_fit_are_two_faults(tmp_path: Path) -> None:
    holes = "[{where: base, across: 39 mm}, {where: apex, across: 39 mm}]"
    found = faults(tmp_path, f"  - {{title: Box, solid: cube, given: {{edge: 40 mm}}, scale: true, holes: {holes}}}\n")
    assert len(found) == 2 and all("does not fit" in f.message for f in found)


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("tent.obj", f"{CORNERS}f 4 3 2 1\n{SIDES}"),
        ("tent.off", OFF),
    ],
)
def test_a_model_from_a_file_is_printed_at_its_size(tmp_path: Path, name: str, text: str) -> None:
    """A square pyramid of 60 mm, 40 mm high: its sides slope over 50 mm (3-4-5 triangle)."""
    (tmp_path / name).write_text(text, encoding="utf-8")
    manifest, _ = made(tmp_path, f"  - {{title: Tent, mesh: {name}, scale: true}}\n")
    faces = [f["points_mm"] for f in manifest["models"][0]["faces"]]
    areas = sorted(
        abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(f, [*f[1:], f[0]], strict=True))) / 2 for f in faces
    )
    assert areas == pytest.approx([1500.0] * 4 + [3600.0], rel=1e-4)


def test_drawings_are_upright_on_the_model_and_stay_inside_their_face(tmp_path: Path) -> None:
    """A picture red above and blue below: every wall is red towards the roof, blue towards the floor, and the strip
    along its folds stays white."""
    picture = Image.new("RGB", (80, 60), (0, 0, 255))
    picture.paste((255, 0, 0), (0, 0, 80, 30))
    picture.save(tmp_path / "flag.png")
    walls = ("side 1", "side 2", "side 3", "side 4")
    art = "".join(f"      - {{face: {wall}, image: flag.png}}\n" for wall in walls)
    given = "{length: 60 mm, width: 60 mm, height: 45 mm}"
    manifest, folder = made(tmp_path, f"  - title: Box\n    solid: cuboid\n    given: {given}\n    faces:\n{art}")
    (model,) = manifest["models"]
    page = pypdfium2.PdfDocument(folder / model["file"])[0]
    scale = 4.0
    shown = page.render(scale=scale / MM).to_pil().convert("RGB")

    def colour(x: float, y: float) -> str:
        red, green, blue = shown.getpixel((round(x * scale), shown.height - round(y * scale)))
        if min(red, green, blue) > 230:
            return "white"
        return "red" if red > blue + 80 else "blue" if blue > red + 80 else "neither"

    faces = {f["name"]: [tuple(p) for p in f["points_mm"]] for f in model["faces"]}
    for wall in walls:
        # A wall runs along the floor from its first corner to its second, and up to its third and fourth.
        a, b, c, d = faces[wall]

        def at(along: float, up: float, a=a, b=b, d=d) -> tuple[float, float]:  # type: ignore[no-untyped-def]
            return tuple(a[k] + along * (b[k] - a[k]) + up * (d[k] - a[k]) for k in (0, 1))  # type: ignore[return-value]

        assert math.dist(a, b) == pytest.approx(60) and math.dist(b, c) == pytest.approx(45)
        assert [colour(*at(x, y)) for x in (0.2, 0.8) for y in (0.2, 0.8)] == ["blue", "red"] * 2, wall
        assert colour(*at(0.015, 0.4)) == colour(*at(0.985, 0.6)) == "white", wall


def test_a_picture_of_another_shape_is_shown_whole_and_told(tmp_path: Path) -> None:
    Image.new("RGB", (300, 60), (0, 0, 255)).save(tmp_path / "long.png")
    model = "  - title: Box\n    solid: cube\n    given: {edge: 40 mm}\n    faces: [{face: side 1, image: long.png}]\n"
    told = [f for f in build.check(order(tmp_path, model), jobs=1) if "another shape" in f.message]
    assert len(told) == 1 and "40 mm wide and 40 mm high" in told[0].instead


def test_own_steps_stand_where_they_belong(tmp_path: Path) -> None:
    steps = "[Hang it up., Before you close it put a bell in., Before you cut paint the card.]"
    said = words(tmp_path, BOX[:-2] + f", steps: {steps}}}\n")
    row = [said.index(x) for x in ("Before you cut", "Score the fold", "Glue tab", "Before you close it", "Now the",
                                   "Hang it up")]  # fmt: skip
    assert row == sorted(row)


@pytest.mark.parametrize(
    ("own", "before", "after"),
    [
        ("Colour the walls yellow.", "", "Score the fold"),
        ("Is the glass grey? Colour it yellow.", "", "Score the fold"),
        ("Draw a door and two windows.", "", "Score the fold"),
        ("A grown-up helps, then prick a hole in the lid.", "Cut along", "Fold every"),
        ("Draw the finished box from above.", "Now the", ""),
        ("Hang it up and write down what you see.", "Now the", ""),
    ],
)
def test_what_marks_or_pierces_the_card_comes_before_it_is_closed(
    tmp_path: Path, own: str, before: str, after: str
) -> None:
    said = words(tmp_path, BOX[:-2] + f", steps: ['{own}']}}\n")
    steps = said[said.index("Steps") :]
    at = steps.index(own[:20])
    assert not before or steps.index(before) < at
    assert not after or at < steps.index(after)


@pytest.mark.parametrize("level", ["younger", "older"])
def test_the_finished_model_is_drawn_once_and_no_box_is_huge(tmp_path: Path, level: str) -> None:
    manifest, folder = made(tmp_path, BOX, f"{{name: Bram, age: 8, pack: {level}}}")
    (sheet,) = [(f["path"], s["pages"]) for f in manifest["files"] for s in f["sheets"] if s.get("part") == "steps"]
    seen, boxes, text = [], [], ""
    with pdfplumber.open(folder / sheet[0]) as pdf:
        for page in pdf.pages[sheet[1][0] - 1 : sheet[1][1]]:
            faces = [c for c in page.curves if len(c["pts"]) == 5 and c.get("fill") and c["width"] > 30 * MM]
            seen += [len(faces)] if faces else []
            boxes += [c["height"] for c in (*page.curves, *page.rects) if c["width"] > 450]
            text += page.extract_text()
    assert len(seen) == 1 and seen[0] <= 6  # one box, of three faces in sight and three behind them
    assert max(boxes, default=0) < 95 * MM
    assert "Box · Isaure Quenby" in text  # whose box it is, above what is told of it


TOWER = "  - {title: Lamp, solid: tower, given: {sides: 8, across: 2.6 m, height: 6.6 m, roof: 1.2 m}, scale: '1:50'}\n"
CONE = "  - {title: Cone, solid: cone, given: {diameter: 70 mm, height: 90 mm}, scale: true, holes: [apex]%s}\n"


def test_letters_on_faces_that_show_hug_their_edge(tmp_path: Path) -> None:
    manifest, folder = made(tmp_path, BOX)
    (card,) = [f for f in manifest["files"] if f["stock"] == "card"]
    (model,) = manifest["models"]
    with pdfplumber.open(folder / card["path"]) as pdf:
        page = pdf.pages[0]
        height = float(page.height)
        letters = [
            ((c["x0"] + c["x1"]) / 2 / MM, (height - (c["top"] + c["bottom"]) / 2) / MM, c)
            for c in page.chars
            if c["text"] in {t["letter"] for t in model["tabs"]} and "Bold" in c["fontname"]
        ]
    tabs = [shapely.Polygon(t["points_mm"]) for t in model["tabs"]]
    cuts = shapely.union_all([shapely.LineString([*c["points_mm"], c["points_mm"][0]]) for c in model["cuts"]])
    faces = [shapely.Polygon(f["points_mm"]) for f in model["faces"]]
    found = 0
    for x, y, _ in letters:
        at = shapely.Point(x, y)
        if any(face.contains(at) for face in faces) and not any(tab.contains(at) for tab in tabs):
            found += 1
            assert cuts.distance(at) < 2.6  # the middle of the letter: all of it is within 3 mm or so
    assert found >= len(tabs)


def test_a_model_with_drawings_bears_no_names_on_them_and_its_last_face_is_told_by_its_letters(tmp_path: Path) -> None:
    faces = ", ".join(f"{{face: side {k}, texture: boards}}" for k in (1, 2, 3, 4))
    barn = f"  - {{title: Barn, solid: gabled-house, given: {{length: 72 mm, width: 50 mm, height: 28 mm, roof: 24 mm}}, scale: true, faces: [{faces}, {{face: roof 1, texture: tiles}}, {{face: roof 2, texture: tiles}}]}}\n"  # noqa: E501
    card = words(tmp_path, barn, part="card")
    assert not re.search(r"(roof|side|gable) \d", card)
    assert "Now the last face" in (said := words(tmp_path, barn)) and "roof 1" not in said


def test_the_teeth_of_a_cone_are_wider_for_small_hands(tmp_path: Path) -> None:
    def teeth(level: str) -> list[float]:
        manifest, _ = made(tmp_path, CONE % "", f"{{name: Bram, age: 8, pack: {level}}}")
        rows = [t["points_mm"] for t in manifest["models"][0]["tabs"] if t["under"] == "base"]
        return [math.dist(row[0], row[3]) for row in rows]

    younger, older = teeth("younger"), teeth("older")
    assert len(younger) <= 12 < len(older) and min(younger) > 1.4 * max(older)


def test_many_tabs_are_glued_with_a_grown_up_by_the_younger(tmp_path: Path) -> None:
    assert "There are 12 tabs: work with a grown-up." in words(tmp_path, TOWER)
    assert "work with a grown-up" not in words(tmp_path, TOWER, "{name: Juno, age: 11, pack: older}")
    assert "work with a grown-up" not in words(tmp_path, BOX)


def test_a_thread_is_pulled_through_only_if_the_study_has_one(tmp_path: Path) -> None:
    with_thread = words(tmp_path, CONE % ", steps: [Hang the cone up by its thread.]")
    assert "Pull the thread through the hole now" in with_thread and "If a thread" not in with_thread
    assert "thread" not in words(tmp_path, CONE % "")


def test_cautions_are_told_once_and_end_with_a_line_for_a_grown_up(tmp_path: Path) -> None:
    said = words(tmp_path, BOX[:-2] + ", caution: [scissors, Scissors cut away from the hand.]}\n")
    care = said[said.index("Take care") : said.index("Steps")]
    assert care.lower().count("scissors cut") == 1 and care.count("For a grown-up") == 1
    assert "Cut slowly" not in care and "hot glue" in care


def test_a_canopy_gets_tape_on_its_holes_and_a_word_on_threads(tmp_path: Path) -> None:
    said = words(tmp_path, CANOPY)
    assert "Stick a bit of tape over each dashed ring" in said and "hole punch" in said
    assert "catch round a neck" in said


def test_one_of_a_thing_is_named_without_its_number(tmp_path: Path) -> None:
    things = "[{item: stopwatch, amount: 1}, {item: bells, amount: 2}, {item: clay, amount: 1, unit: piece}]"
    said = words(tmp_path, BOX[:-2] + f", materials: {things}}}\n")
    assert "stopwatch" in said and "stopwatch (1)" not in said
    assert "bells (2)" in said and "clay (1 piece)" in said


def test_a_child_without_glue_has_tape_ready_and_no_glue(tmp_path: Path) -> None:
    said = words(tmp_path, BOX, "{name: Bram, age: 8, pack: younger, glue: no}")
    assert "sticky tape" in said and "a glue stick or white glue" not in said and "hot glue" not in said


@pytest.mark.parametrize("solid", ["cuboid", "cone", "prism"])
def test_no_step_of_a_child_without_glue_asks_for_glue(tmp_path: Path, solid: str) -> None:
    given = {
        "cuboid": "{length: 80 mm, width: 50 mm, height: 40 mm}",
        "cone": "{diameter: 60 mm, height: 60 mm}",
        "prism": "{sides: 6, side: 30 mm, height: 60 mm}",
    }[solid]
    model = f"  - {{title: Thing, solid: {solid}, given: {given}, scale: true}}\n"
    child = "{name: Bram, age: 8, pack: younger, glue: no}"
    steps = words(tmp_path, model, child)
    steps = steps[steps.index("Steps") :].lower()
    assert "glue" not in steps.replace("no glue here", "") and "tape" in steps
    assert "glue" not in words(tmp_path, model, child, part="card").lower()
    assert "tape" not in words(tmp_path, model, part="card").lower()


def test_several_sheets_say_that_letters_go_from_sheet_to_sheet(tmp_path: Path) -> None:
    given = "{sides: 6, side: 60 mm, height: 160 mm, roof: 90 mm}"
    tower = f"  - {{title: Tower, solid: tower, given: {given}, scale: true}}\n"
    assert "from sheet to sheet too" in words(tmp_path, tower, part="card")
    assert "sheet 2 of" in words(tmp_path, tower, part="card")
    assert "from sheet to sheet" not in words(tmp_path, BOX, part="card")


def test_a_face_larger_than_the_sheet_is_told_and_shown(tmp_path: Path) -> None:
    big = "  - {title: Tray, solid: open-box, given: {length: 300 mm, width: 220 mm, height: 60 mm}, scale: true}\n"
    assert "Lay the strips with the same name over each other, cross on cross" in words(tmp_path, big)
    assert "lay cross on cross" in words(tmp_path, big, part="card")


def test_the_cards_thickness_is_the_recipes(tmp_path: Path) -> None:
    """A lid over a box is larger by twice the card and 0.25 mm of play on each side."""
    lid = "  - {title: Box, solid: lidded-box, given: {length: 80 mm, width: 50 mm, height: 40 mm}, scale: true}\n"
    (tmp_path / "packs").mkdir()
    recipe = "pack: thick\nlevel: younger\nabout: Thick card.\nsheets:\n  - {sheet: model, card: 0.5 mm}\n"
    (tmp_path / "packs" / "thick.yaml").write_text(recipe, encoding="utf-8")
    manifest, _ = made(tmp_path, lid, "{name: Bram, age: 8, pack: thick}")
    (cover,) = [f["points_mm"] for f in manifest["models"][0]["faces"] if f["name"] == "lid"]
    long = max(math.dist(a, b) for a, b in zip(cover, [*cover[1:], cover[0]], strict=True))
    assert long == pytest.approx(80 + 2 * (2 * 0.5 + 0.25), abs=0.01)
