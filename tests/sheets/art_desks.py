"""Desks for the tests of picture sheets: an invented study with small pictures drawn here, one child, any printer."""

from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from tempfile import mkdtemp

import pdfplumber
from PIL import Image, ImageDraw, ImageFilter

from packgen.faults import Said
from packgen.page.blocks import Kit
from packgen.page.desk import PAPERS, Desk
from packgen.page.look import look_for
from packgen.page.marks import Group, Line, Mark, Page, Path_, Picture, Text
from packgen.page.type import Faces
from packgen.page.wording import Wording
from packgen.pictures.load import Store
from packgen.planning.plan import PackPlan, PlanItem
from packgen.planning.weeks import TermPlan
from packgen.reading.dates import read_when
from packgen.reading.models import Child, Detail, Family, Printer, Recipe, Spot, Study, Work
from packgen.resources import folder
from packgen.writing.pdf import Document, pdf_bytes

FACES = Faces()
WORDING = Wording([folder("templates")])
LEVELS = ("first", "younger", "older", "upper")
SHEETS_OF_PAPER = ("A4", "Letter")
MM = 72 / 25.4


@cache
def shelf() -> Store:
    """One store for all tests, so that the line art of a picture is made once."""
    return Store(Path(mkdtemp(prefix="art-")))


@cache
def picture(width: int = 360, height: int = 270, kind: str = "harbour") -> Path:
    """A picture of that size: a `harbour` with a house, a boat and a sun; a `face`, the same on both sides; `plain`."""
    image = Image.new("RGB", (width, height), (150, 180, 215))
    pen = ImageDraw.Draw(image)

    def box(left: float, top: float, right: float, low: float) -> tuple[float, float, float, float]:
        return left * width, top * height, right * width, low * height

    if kind == "harbour":
        pen.rectangle(box(0, 0.55, 1, 1), fill=(50, 80, 120))
        pen.rectangle(box(0.08, 0.3, 0.3, 0.56), fill=(190, 90, 60))
        pen.polygon([(0.05 * width, 0.3 * height), (0.19 * width, 0.12 * height), (0.33 * width, 0.3 * height)],
                    fill=(90, 40, 40))  # fmt: skip
        pen.rectangle(box(0.15, 0.4, 0.2, 0.48), fill=(250, 230, 140))
        pen.polygon([(0.5 * width, 0.7 * height), (0.9 * width, 0.7 * height), (0.82 * width, 0.84 * height),
                     (0.58 * width, 0.84 * height)], fill=(30, 40, 30))  # fmt: skip
        pen.polygon([(0.68 * width, 0.2 * height), (0.68 * width, 0.68 * height), (0.86 * width, 0.66 * height)],
                    fill=(235, 230, 215))  # fmt: skip
        pen.ellipse(box(0.42, 0.06, 0.54, 0.22), fill=(250, 220, 110))
    elif kind == "face":
        pen.ellipse(box(0.22, 0.12, 0.78, 0.9), fill=(230, 185, 150), outline=(60, 40, 30), width=4)
        for x in (0.36, 0.56):
            pen.ellipse(box(x, 0.38, x + 0.08, 0.46), fill=(40, 40, 60))
        pen.chord(box(0.4, 0.62, 0.6, 0.74), 0, 180, fill=(170, 60, 60))
        pen.rectangle(box(0.47, 0.48, 0.53, 0.58), fill=(190, 140, 110))
    path = shelf().folder / f"{kind}-{width}-{height}.png"
    image.filter(ImageFilter.GaussianBlur(0.6)).save(path)
    return path


def work(title: str = "The Harbour", path: Path | None = None, *, year: str = "1861", held: str = "",
         spot: tuple[float, float] | None = None, details: Sequence[Detail] = ()) -> Work:  # fmt: skip
    """A work of the study."""
    where = Spot(Said(held or "A Museum"), *spot) if spot else None
    return Work(
        Said(title.lower()), Said(title), read_when(Said(year)) if year else None, image=path or picture(),
        image_said=Said(title), held=Said(held) if held else None, held_at=where, details=tuple(details),
    )  # fmt: skip


def art_desk(kind: str, level: str = "older", works: Sequence[Work] = (), *, paper: str = "A4", colour: bool = True,
             left_handed: bool = False, sides: str = "two-sided-long-edge", options: Sequence[tuple[str, object]] = (),
             place: tuple[float, float] | None = None, home: tuple[float, float] | None = None,
             per: str = "work", units: str = "metric") -> Desk:  # fmt: skip
    """A desk for one sheet of one child."""
    works = tuple(works) or (work(),)
    study = Study(
        Said("Isaure Quenby"), Said("artist"), Said("Lamp-maker who painted."), Path(), works=works,
        place=Spot(Said("Saltmere"), *place) if place else None,
    )  # fmt: skip
    child = Child(Said("Juno"), 8, Said(level), left_handed=left_handed)
    family = Family(Said("Ferrar"), (child,), paper, Printer(sides, colour=colour), units=units,
                    place=Spot(Said("Here"), *home) if home else None)  # fmt: skip
    item = PlanItem(kind, works[0] if per == "work" else study, tuple((k, Said(str(v))) for k, v in options), 2)
    recipe = Recipe(Said(level), level, ())
    return Desk(
        study, family, PackPlan("juno", recipe, child, (item,)), item, Kit(FACES, look_for(level)), PAPERS[paper],
        WORDING, shelf(), TermPlan((), 10, (), (), ()),
    )  # fmt: skip


@dataclass(frozen=True)
class Placed:
    """A mark as it stands on the page: moved by all groups round it."""

    mark: Mark
    box: tuple[float, float, float, float]
    clip: tuple[float, float, float, float] | None = None


def placed(page: Page, *roles: str) -> list[Placed]:
    """All marks of a page with the boxes they cover (of text its baseline), of these roles if any are given."""
    found: list[Placed] = []

    def walk(marks: Sequence[Mark], matrix: tuple[float, ...], clip: tuple[float, float, float, float] | None) -> None:
        for mark in marks:
            if isinstance(mark, Group):
                inner = _moved_box(mark.clip, _times(matrix, mark.matrix)) if mark.clip else clip
                walk(mark.marks, _times(matrix, mark.matrix), inner)
            elif not roles or getattr(mark, "role", "") in roles:
                found.append(Placed(mark, _moved_box(_points(mark), matrix), clip))

    walk(page.marks, (1, 0, 0, 1, 0, 0), None)
    return found


def _times(outer: Sequence[float], inner: Sequence[float]) -> tuple[float, ...]:
    a, b, c, d, e, f = outer
    p, q, r, s, t, u = inner
    return a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f


def _points(mark: Mark) -> list[tuple[float, float]]:
    if isinstance(mark, Line):
        return [(mark.x1, mark.y1), (mark.x2, mark.y2)]
    if isinstance(mark, Text):
        wide = FACES.width(mark.text, mark.face, mark.size)
        return [(mark.x, mark.y), (mark.x + wide, mark.y)]
    if isinstance(mark, Path_):
        numbers = [float(n) for step in mark.steps for n in step[1:]]
        return list(zip(numbers[::2], numbers[1::2], strict=True))
    if isinstance(mark, Picture):
        return [(mark.x, mark.y), (mark.x + mark.width, mark.y + mark.height)]
    return [(0.0, 0.0)]


def _moved_box(points: Sequence[tuple[float, float]], matrix: Sequence[float]) -> tuple[float, float, float, float]:
    a, b, c, d, e, f = matrix
    moved = [(a * x + c * y + e, b * x + d * y + f) for x, y in points]
    return (
        min(x for x, _ in moved), min(y for _, y in moved), max(x for x, _ in moved), max(y for _, y in moved)
    )  # fmt: skip


def said(page: Page) -> str:
    """All words of a page, in the order drawn."""
    return " ".join(p.mark.text for p in placed(page) if isinstance(p.mark, Text))


def read_back(pages: Sequence[Page]) -> pdfplumber.PDF:
    """The pages as a finished PDF, opened by a second reader."""
    return pdfplumber.open(io.BytesIO(pdf_bytes(Document("A title", tuple(pages)))))
