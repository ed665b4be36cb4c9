"""The fuzz targets: each a strategy of hostile input and what must hold for it.

A target lets through only what a parent is told: faults with a place, and the ValueErrors packgen's own layers raise.
Anything else, a hang or a blow-up of memory ends the run (see run.py).
"""

from __future__ import annotations

import math
import os
import random
import shutil
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import mutating
from hypothesis import strategies as st
from mutating import EXAMPLES, FAMILY, MESHES, ROOT, SMALL, SVGS, spoilt_bytes, spoilt_text

from packgen.faults import Fault, PackgenError, Severity
from packgen.folding.plan import plan_fold
from packgen.folding.program import FoldError
from packgen.folding.schemes import schemes
from packgen.nets import NetError, build, catalogue, lay_out
from packgen.page.text import Style, fit, wrap
from packgen.page.type import ROLES, Faces
from packgen.pictures.load import Store, check_picture
from packgen.pictures.opening import PictureError
from packgen.reading import dates, measures
from packgen.reading.family import read_family
from packgen.reading.messages import Misread
from packgen.reading.recipe import read_recipe
from packgen.reading.study import read_study
from packgen.trials.frame import WORD, TrialError
from packgen.trials.models import models
from packgen.trials.plan import plan_trial
from packgen.units import BASE, Quantity, quantity


@dataclass(frozen=True)
class Target:
    """What is fuzzed: inputs, what must hold for each, and the seconds one input may take."""

    inputs: Callable[[], st.SearchStrategy[Any]]
    holds: Callable[[Any], None]
    seconds: int = 20


TARGETS: dict[str, Target] = {}


def target(inputs: Callable[[], st.SearchStrategy[Any]], seconds: int = 20) -> Callable[[Callable[[Any], None]], None]:
    """Add a target under its function's name."""

    def add(holds: Callable[[Any], None]) -> None:
        TARGETS[holds.__name__.replace("_", "-")] = Target(inputs, holds, seconds)

    return add


@cache
def place() -> Path:
    """A folder of this process, with the picture the small study shows; it goes when the run is over."""
    folder = Path(os.environ.get("PACKGEN_FUZZ_PLACE") or tempfile.mkdtemp(prefix="packgen-fuzz-"))
    (folder / "harbour.png").write_bytes(mutating.picture_files()[0])
    return folder


@cache
def texts() -> tuple[tuple[str, str], ...]:
    """(kind, text) of files as parents write them: small ones, and the examples."""
    found = [("study", SMALL), ("family", FAMILY)]
    found += [("study", path.read_text("utf-8")) for path in sorted(EXAMPLES.glob("*/study.yaml"))]
    found += [("family", (EXAMPLES / "ferrar.yaml").read_text("utf-8"))]
    found += [("results", (EXAMPLES / "ferrar-results.yaml").read_text("utf-8"))]
    found += [("recipe", path.read_text("utf-8")) for path in sorted((ROOT / "packs").glob("*.yaml"))]
    return tuple(found)


def told(faults: tuple[Fault, ...], lines: int, needed: bool) -> None:
    """Each fault is told at a place that is there; a file that gives nothing has one."""
    assert any(f.severity is Severity.FAULT for f in faults) or not needed
    for fault in faults:
        assert str(fault) and 0 <= fault.place.line <= lines + 1, fault


@st.composite
def files(draw: st.DrawFn) -> tuple[str, str | bytes]:
    kind = draw(st.sampled_from(("study", "study", "family", "results", "recipe")))
    known = tuple(text for one, text in texts() if one == kind)
    if draw(st.integers(0, 9)) == 0:
        return kind, draw(spoilt_bytes(tuple(text.encode() for text in known)))
    return kind, draw(spoilt_text(known))


@target(files)
def reader(file: tuple[str, str | bytes]) -> None:
    kind, text = file
    data = text if isinstance(text, bytes) else text.encode("utf-8", "surrogatepass")
    path = place() / f"{kind}.yaml"
    path.write_bytes(data)
    lines = data.count(b"\n") + data.count(b"\r") + 1
    if kind == "results":
        (place() / "with-results.yaml").write_text("family: Ferrar\nchildren: [{name: Juno}]\nresults: results.yaml\n")
        _, faults = read_family(place() / "with-results.yaml", ("older",))
        told(faults, lines + 3, False)
        return
    value, faults = {"study": read_study, "recipe": read_recipe}.get(
        kind, lambda p: read_family(p, ("older", "younger", "first"))
    )(path)
    told(faults, lines, value is None)


def words_of(*texts: str) -> st.SearchStrategy[str]:
    """One of the words of some texts."""
    return st.sampled_from([word for text in texts for word in text.split()])


DATE_PARTS = words_of(
    "18 1834 44 0 -43 / . .. X XX ? ~ % - – to BC AD BCE c. about before after early late mid spring winter century",
    "th st May Sept 3 31 30 29 Feb 1900s 1860s T12:00 Z + E5 Y-17e7 between and or, from until { } [ ] 2027-02-30",
)


@target(lambda: st.lists(DATE_PARTS | st.text(max_size=4), max_size=9).map(lambda p: "".join(p)) | st.text(max_size=40)
        | st.lists(DATE_PARTS, max_size=9).map(" ".join))  # fmt: skip
def when(said: str) -> None:
    try:
        when = dates.read_when(said)
    except Misread as wrong:
        assert str(wrong) and wrong.instead
    else:
        low, high = dates.as_years(when)
        assert low <= high and dates.plain(when)
    try:
        dates.read_day(said)
    except Misread as wrong:
        assert str(wrong) and wrong.instead
    dates.doubt(said)


NUMBER_PARTS = words_of(
    "1 3 1/4 ½ 0 -5 1e9 1e400 1e-400 . , ' \" mm cm m in ft kg g oz ml l s min deg ° °C F N x × by + / // 1/0 ⅛ ٣",
    "0x10 inf nan _ sheet N S E W 50°24′N km/h m/s %",
)


@target(lambda: st.lists(NUMBER_PARTS | st.text(max_size=3), max_size=8).map("".join)
        | st.lists(NUMBER_PARTS, max_size=8).map(" ".join) | st.text(max_size=30))  # fmt: skip
def units(said: str) -> None:
    def finite(value: Any) -> None:
        numbers = value if isinstance(value, tuple) else (getattr(value, "value", value),)
        assert all(math.isfinite(number) for number in numbers), (said, value)

    reads: list[Callable[[str], Any]] = [measures.read_number, measures.read_length, measures.read_size]
    reads += [measures.read_type_size, lambda text: measures.read_degrees(text, "NS")]
    reads += [lambda text, d=d: measures.read_quantity(text, d) for d in (None, *BASE)]  # type: ignore[misc]
    for read in reads:
        try:
            finite(read(said))
        except Misread as wrong:
            assert str(wrong) and wrong.instead


@cache
def faces() -> Faces:
    return Faces()


@target(lambda: st.tuples(
    st.text(max_size=300) | st.lists(st.sampled_from(mutating.SPOILS), max_size=12).map(" ".join),
    st.sampled_from(ROLES), st.floats(0.01, 200), st.floats(0.01, 300), st.floats(0.5, 30), st.floats(0.5,
    30)))  # fmt: skip
def fitter(wish: tuple[str, str, float, float, float, float]) -> None:
    text, face, width, height, size, floor = wish
    style = Style(face, size, size * 1.3)
    fitted = fit(faces(), text, style, width, height, min(size, floor))
    for lines, used in ((wrap(faces(), text, style, width), style), (fitted.lines, fitted.style)):
        assert "".join("".join(lines).split()) == "".join(text.split()), "letters are lost"
        for line in lines:
            wide = faces().width(line, face, used.size)
            mixed = not faces().covers(line, face)  # a space after a letter of another face is that face's
            assert wide <= width + (used.size if mixed else 1e-4) or len(line.strip()) < 2, (line, wide, width)
    if fitted.fits:
        assert fitted.height <= height + 1e-4


SIZES = st.floats(0.1, 3000) | st.floats() | st.integers(-2, 60) | st.sampled_from(mutating.SPOILS)
SIZES |= st.builds(quantity, st.floats(-10, 2000), st.sampled_from(("mm", "cm", "m", "in", "deg", "s", "")))
SCALES = st.sampled_from(("auto", "fit", "true", "1:1", "1:50", "1:20", "2:1", "1:100000", "x", "1:0", "-1:2"))


@st.composite
def solids(draw: st.DrawFn) -> tuple[Any, ...]:
    entry = draw(st.sampled_from([e for e in catalogue() if e.name != "mesh"]))
    given: dict[str, Any] = {}
    for p in entry.parameters:
        if draw(st.integers(0, 9)) < (9 if p.required and not p.group else 5):
            low, high = p.low or 0.0, p.high if p.high is not None else (14.0 if p.dimension == "count" else 200.0)
            usual = st.floats(low, high) if p.dimension != "count" else st.integers(math.ceil(low), math.floor(high))
            given[p.name] = draw(st.sampled_from(p.words) if p.words else usual if draw(st.integers(0, 11)) else SIZES)
    return (entry.name, given, draw(st.floats(20, 400)), draw(st.floats(20, 600)), draw(SCALES), draw(st.booleans()),
            draw(st.sampled_from((0.05, 0.25, 1.0))))  # fmt: skip


def laid_out(thing: Any, width: float, height: float, scale: str, youngest: bool, card: float) -> None:
    made = lay_out(thing, width, height, scale, youngest=youngest, card=card)
    assert made.sheets and made.ratio > 0
    for sheet in made.sheets:
        for face in sheet.faces:
            for x, y in face.points:
                assert -1e-6 <= x <= width + 1e-6 and -1e-6 <= y <= height + 1e-6


@target(solids, seconds=40)
def nets(wish: tuple[Any, ...]) -> None:
    name, given, width, height, scale, youngest, card = wish
    try:
        laid_out(build(name, given), width, height, scale, youngest, card)
    except NetError as wrong:
        assert wrong.message


@st.composite
def hulls(draw: st.DrawFn) -> str:
    """The convex hull of some points as an OBJ file of triangles, or a spoilt mesh file."""
    if draw(st.booleans()):
        return draw(spoilt_text(MESHES))
    from shapely import MultiPoint

    points = draw(st.lists(st.tuples(*[st.integers(0, 60)] * 2), min_size=3, max_size=9, unique=True))
    flat = MultiPoint(points).convex_hull
    if flat.geom_type != "Polygon":
        return "OFF\n0 0 0\n"
    ring = list(flat.exterior.coords)[:-1][::-1]
    count, high, tip = len(ring), draw(st.integers(1, 90)), draw(st.booleans())
    shrink = draw(st.floats(0.05, 1.5))
    lines = [f"v {x} {y} 0" for x, y in ring]
    lines += ["v 20 20 60"] if tip else [f"v {x * shrink} {y * shrink} {high}" for x, y in ring]
    lines.append("f " + " ".join(str(k) for k in range(count, 0, -1)))
    if not tip:
        lines.append("f " + " ".join(str(count + k) for k in range(1, count + 1)))
    for k in range(count):
        after = (k + 1) % count
        lines.append(f"f {k + 1} {after + 1} " + (f"{count + 1}" if tip else f"{count + after + 1} {count + k + 1}"))
    return "\n".join(lines) + "\n"


@target(lambda: st.tuples(hulls(), SCALES, st.floats(60, 300), st.booleans(), st.sampled_from(("z", "y"))), seconds=40)
def meshes(wish: tuple[str, str, float, bool, str]) -> None:
    text, scale, side, youngest, up = wish
    try:
        laid_out(build("mesh", {"text": text, "up": up}), side, side * 1.4, scale, youngest, 0.25)
    except NetError as wrong:
        assert wrong.message


@target(lambda: st.tuples(
    st.sampled_from([*schemes(), "x"]), st.integers(-1, 300), st.floats(50, 500), st.floats(50, 500),
    st.floats(0, 1.2), st.none() | st.integers(0, 12), st.sampled_from((None, 1, 2)),
    st.sampled_from((None, "two-sided-long-edge", "two-sided-short-edge")), st.floats(0, 20)))  # fmt: skip
def folder(wish: tuple[Any, ...]) -> None:
    scheme, pages, width, height, caliper, panels, sides, flip, margin = wish
    try:
        plan = plan_fold(scheme, pages, width, height, caliper=caliper, panels=panels, faces=sides,
                         two_sided_flip=flip, margin=margin)  # fmt: skip
    except FoldError as wrong:
        assert wrong.message and wrong.instead
        return
    slots = [slot for sheet in plan.sheets for slot in (*sheet.front, *sheet.back)]
    shown = sorted(slot.page for slot in slots if slot.page)
    assert shown == list(range(1, pages + 1))


@target(lambda: st.tuples(spoilt_bytes(mutating.pdf_files()), st.sampled_from(tuple(schemes()))))
def folded_pdf(wish: tuple[bytes, str]) -> None:
    from packgen.writing.foreign import fold_pdf

    data, scheme = wish
    (place() / "pages.pdf").write_bytes(data)
    try:
        report = fold_pdf(place() / "pages.pdf", scheme, (210.0, 297.0), None, 0.1, place() / "book.pdf")
        assert report.files
    except PackgenError as wrong:
        assert str(wrong)


@target(lambda: spoilt_text(SVGS))
def svg(text: str) -> None:
    from packgen.pictures.svg import vector_picture
    from packgen.pictures.svg_pixels import drawn
    from packgen.pictures.svg_xml import SvgError

    try:
        picture = vector_picture(text.encode("utf-8", "surrogatepass"), Path("a.svg"))
    except (PictureError, SvgError) as wrong:
        assert str(wrong)
        return
    assert picture.width > 0 and picture.height > 0
    shrunk = 60 / max(picture.width, picture.height)
    drawn(picture, max(1, round(picture.width * shrunk)), max(1, round(picture.height * shrunk)))


@target(lambda: spoilt_bytes(mutating.picture_files()))
def pictures(data: bytes) -> None:
    from packgen.faults import NOWHERE

    path = place() / "spoilt.png"
    path.write_bytes(data)
    folder_ = place() / "prepared"
    folder_.mkdir(exist_ok=True)
    info, faults = check_picture(path, NOWHERE)
    told(faults, 1, info is None)
    store = Store(folder_)
    try:
        made = store.prepared(path, 40, 30, dpi=50)
        assert made.width_px > 0
        store.palette(path, 4)
        assert info is not None, "check refused what the store takes"
    except PictureError as wrong:
        assert str(wrong)
    shutil.rmtree(folder_)


GIVEN = st.sampled_from(mutating.SPOILS) | st.builds(
    quantity, st.floats(0, 1000), st.sampled_from(("mm", "cm", "m", "g", "kg", "s", "deg", "", "ml"))
)


@st.composite
def trial_wishes(draw: st.DrawFn) -> tuple[Any, ...]:
    model = draw(st.sampled_from(list(models().values())))
    names = [item.name for item in model.inputs]
    given: dict[str, Any] = {}
    for item in model.inputs:
        if draw(st.booleans()):
            usual = item.default if isinstance(item.default, float | int) else 50.0
            near = st.floats(0.2, 5).map(lambda f, u=usual, d=item.dimension: Quantity(f * u, d, BASE.get(d, "")))
            given[item.name] = draw(near if draw(st.integers(0, 3)) and item.dimension != WORD else GIVEN)
    change = (draw(st.sampled_from(names)), draw(st.lists(GIVEN, max_size=5))) if draw(st.booleans()) else None
    return (model.key, given, change, draw(st.none() | st.integers(-1, 40)), draw(st.sampled_from(("metric",
    "customary"))),
            draw(st.none() | st.floats(-90, 90)))  # fmt: skip


@target(trial_wishes)
def trials(wish: tuple[Any, ...]) -> None:
    key, given, change, count, system, latitude = wish
    try:
        plan = plan_trial(key, given, change, None, count, system, latitude)
        assert plan.rows
    except TrialError as wrong:
        assert wrong.message and wrong.instead


@st.composite
def whole_builds(draw: st.DrawFn) -> tuple[Any, ...]:
    from packgen import sheets

    example = (EXAMPLES / "isaure-quenby" / "study.yaml").read_text("utf-8")
    study = draw(spoilt_text((SMALL, SMALL, SMALL, example)))
    family = draw(st.just("") | st.just(FAMILY) | spoilt_text((FAMILY,)))
    only = draw(st.just(()) | st.lists(st.sampled_from(sheets.kinds()), max_size=4, unique=True).map(tuple))
    return study, family, only, draw(st.sampled_from((None, "A4", "Letter")))


@target(whole_builds, seconds=120)
def builds(wish: tuple[Any, ...]) -> None:
    from packgen import build as work

    study, family, only, paper = wish
    home = place() / "home"
    out = place() / "out"
    if not home.exists():
        shutil.copytree(EXAMPLES / "isaure-quenby", home)
        shutil.copy(place() / "harbour.png", home)
    (home / "study.yaml").write_bytes(study.encode("utf-8", "surrogatepass"))
    (home / "family.yaml").write_bytes(family.encode("utf-8", "surrogatepass"))
    shutil.rmtree(out, ignore_errors=True)
    order = work.Order(home / "study.yaml", home / "family.yaml" if family else None, only=only, paper=paper)
    said = work.check(order, 1)
    refused = any(fault.severity is Severity.FAULT for fault in said)
    try:
        made = work.build(order, out, jobs=1)
    except PackgenError as wrong:
        assert str(wrong) and not out.exists()
        assert refused or wrong.exit_code == 1, f"check did not say it: {wrong}"
        return
    assert not refused, "check refused what builds"
    import pikepdf

    for file in made.files:
        with pikepdf.open(made.folder / file.path) as pdf:
            assert pdf.check_pdf_syntax() == [] and len(pdf.pages) == file.pages


@target(lambda: st.lists(st.sampled_from(
    (*mutating.SPOILS[:60], "build", "check", "fold", "new", "catalogue", "schema", "printer-page", "--out",
    "--family", "--pack", "--only",
     "--paper", "--jobs", "--who", "--scheme", "--caliper", "A4", "stitched", "0", "-1", "study.yaml",
     "nowhere.yaml", ".",
     "timeline", "x/y", "")), max_size=7))  # fmt: skip
def command_line(words: list[str]) -> None:
    import contextlib
    import io

    from packgen.cli import main

    home = place() / "commands"
    shutil.rmtree(home, ignore_errors=True)
    home.mkdir()
    (home / "study.yaml").write_text("study: Isaure Quenby\nkind: artist\nin_short: Lamp-maker.\n")
    before = os.getcwd()
    os.chdir(home)
    try:
        if any(word.startswith(("/", "..", "~")) or "\0" in word for word in words):
            return  # a new study beside the tests would be what was asked for
        with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
            main(words)
    except SystemExit as end:
        assert end.code in (0, 1, 2)
    finally:
        os.chdir(before)


random.seed(1834)
