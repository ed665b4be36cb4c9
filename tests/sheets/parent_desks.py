"""Desks for the tests of the parent's sheets: an invented study, families of one to six, their packs and print runs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path

from packgen import sheets
from packgen.faults import Said
from packgen.page.blocks import Kit
from packgen.page.desk import PAPERS, Desk, Laid
from packgen.page.look import look_for
from packgen.page.marks import Group, Mark, Page, Text
from packgen.page.type import Faces
from packgen.page.wording import Wording
from packgen.pictures.load import Store
from packgen.planning.plan import PackPlan, PlanItem, default_family, plan_pack
from packgen.planning.print_plan import RunInfo
from packgen.planning.term import plan_term
from packgen.reading.dates import read_when
from packgen.reading.models import (
    Book,
    Challenge,
    Chapter,
    Child,
    Event,
    Family,
    Given,
    Goal,
    Material,
    Measure,
    Model,
    Printer,
    Recipe,
    RecipeSheet,
    Spot,
    Study,
    Term,
    Word,
    Work,
)
from packgen.resources import folder
from packgen.units import quantity

FACES = Faces()
PER = {"picture-study": "work", "challenge": "challenge", "model": "model"}
KINDS = ("biography", "timeline", "picture-study", "telling", "words", "fold-book", "challenge", "model")
HOME = Spot(Said("Saltmere"), 50.4, -4.9)
TERM = Term(date(2027, 2, 3), 9, (2,), (date(2027, 3, 17),), 10)
CHILDREN = (
    Child(Said("Juno"), 11, Said("older")),
    Child(Said("Bram"), 8, Said("younger")),
    Child(Said("Wilf"), 4, Said("first")),
)
GOALS = (
    Goal(Said("make-1"), Said("Plans and makes a thing to a brief"), (Said("challenge"), Said("model"))),
    Goal(Said("sing-1"), Said("Learns a sea song by heart"), ()),
)
LONG = "A title that a museum gave it in the year eighteen hundred and ninety-four, with two boats and the lamplighter"


def material(item: str, amount: float, unit: str = "", shared: bool = False) -> Material:
    return Material(Said(item), amount, Said(unit) if unit else None, shared)


def work(number: int, title: str = "", look: Sequence[str] = ()) -> Work:
    asked = look or (f"What is nearest in picture {number}?", f"Where does the light of picture {number} come from?")
    return Work(
        Said(f"work-{number}"), Said(title or f"Picture {number}"), read_when(f"{1850 + number}"), Said("oil on panel"),
        420.0, 310.0, held=Said(f"Museum {number}"), held_at=Spot(Said("Far"), 48.86, 2.34),
        link=Said(f"https://example.org/{number}"), look=tuple(map(Said, asked)), tell=Said(f"Told of {number}."),
    )  # fmt: skip


def challenge(title: str = "A slow fall") -> Challenge:
    given = (Given(Said("load mass"), (quantity(10, "g"),)), Given(Said("drop height"), (quantity(2, "m"),)))
    change = Given(Said("canopy side"), (quantity(120, "mm"), quantity(240, "mm")))
    return Challenge(
        Said(title), Said("Make a canopy that brings a load down slowly."), Said("canopy"), given, change,
        materials=(material("tissue paper", 2, "sheet"), material("thread", 1.5, "m", shared=True)),
        caution=(Said("heights"),),
    )  # fmt: skip


FREE = Challenge(
    Said("Keep a flame still"), Said("Build a shade."), measure=Measure(Said("streamers"), Said("streamers")),
    extension=Said("Make one that opens."),
)  # fmt: skip
BOX = Model(
    Said("A box"), Said("cuboid"), (Given(Said("length"), (quantity(80, "mm"),)),
    Given(Said("width"), (quantity(50, "mm"),)), Given(Said("height"), (quantity(30, "mm"),))),
)  # fmt: skip


def study(works: Sequence[Work] | None = None, chapters: int = 5, **more: object) -> Study:
    """The invented study, with so many chapters; the first speaks of the first work."""
    shown = tuple(works) if works is not None else tuple(work(k) for k in range(3))
    told = tuple(
        Chapter(Said(f"Chapter {k}"), Said(f"{10 * k + 1}-{10 * k + 9}"), (shown[0].id,) if shown and k == 1 else ())
        for k in range(chapters)
    )
    events = (("1834", "Born above the shop"), ("1851", "Makes a lamp"), ("1862-1865", "Charts the tides"),
              ("1870", "Opens the lamp house"), ("1902", "Dies in Saltmere"))  # fmt: skip
    found = Study(
        Said("Isaure Quenby"), Said("both"), Said("Lamp-maker who measured the tides."), Path(),
        read_when("1834"), read_when("1902"), HOME,
        book=Book(Said("The Lamp on the Quay"), Said("Tamsin Orre"), told) if chapters else None,
        life=(("younger", Said("She made lamps.")), ("older", Said("She was born above a shop."))),
        timeline=tuple(Event(read_when(when), Said(what)) for when, what in events), works=shown,
        obstacles=(Said("Her lamps cracked."),), facts=(Said("She kept bees."),),
        words=tuple(Word(Said(f"word{k}"), Said(f"meaning {k}")) for k in range(4)),
        challenges=(challenge(), FREE), models=(BOX,),
    )  # fmt: skip
    return replace(found, **more)  # type: ignore[arg-type]


SMALLEST = Study(Said("Ada Quill"), Said("inventor"), Said("Clockmaker."), Path())


def family(children: Sequence[Child] = CHILDREN, term: Term | None = TERM, **more: object) -> Family:
    return replace(Family(Said("Ferrar"), tuple(children), term=term, place=HOME), **more)  # type: ignore[arg-type]


SIX = tuple(
    Child(Said(name), age, Said(pack))
    for name, age, pack in (("Maximilian Alexander", 14, "upper"), ("Mary", 12, "older"), ("Max", 10, "older"),
                            ("Moritz", 8, "younger"), ("Miriam", 7, "younger"), ("Bo", 2, "first"))
)  # fmt: skip
LETTER = family(SIX, Term(date(2026, 11, 2), 12, (0, 3), (date(2026, 12, 24),), 20), paper="Letter",
                units="customary", printer=Printer("one-sided", 8.0, False))  # fmt: skip
FAMILIES = {
    "three": family(),
    "goals": family(goals=GOALS),
    "no file": default_family(),
    "one": family(CHILDREN[2:], None),
    "upper": family((Child(Said("Una"), 15, Said("upper")),), Term(date(2027, 2, 3), 3, (2,))),
    "six on Letter": LETTER,
}
STUDIES = {
    "usual": study(),
    "smallest": SMALLEST,
    "no book": study(chapters=0),
    "no works": study(works=()),
    "no makings": study(challenges=(), models=()),
    "many works": study(works=[work(k, f"{LONG} {k}" if k % 7 == 0 else "") for k in range(40)], chapters=3),
}


def desk(kind: str, about: Study | None = None, of: Family | None = None,
         runs: Sequence[RunInfo] | None = None) -> Desk:  # fmt: skip
    """The desk of one of the parent's sheets, all packs planned; with the print runs given, or invented ones."""
    shown, home = about or study(), of or family()
    term = plan_term(shown, home)
    kinds = {kind: PER.get(kind, "study") for kind in KINDS}
    packs = []
    for child in home.children:
        recipe = Recipe(child.pack, str(child.pack), tuple(RecipeSheet(Said(name)) for name in KINDS))
        packs.append(plan_pack(shown, child, recipe, str(child.name or child.pack).lower(), kinds, term))
    item = PlanItem(kind, shown)
    own = PackPlan("parent", Recipe(Said("parent"), "parent", ()), None, (item,))
    return Desk(
        shown, home, own, item, Kit(FACES, look_for("parent")), PAPERS[home.paper], Wording([folder("templates")]),
        Store(Path()), term, packs=(*packs, own),
        print_runs=tuple(runs if runs is not None else invented_runs(packs, home)),
    )  # fmt: skip


def invented_runs(packs: Iterable[PackPlan], home: Family) -> Iterator[RunInfo]:
    """A run of plain paper for each pack, a book in two halves or one, and a card for those with models."""
    for pack in packs:
        child = str(pack.child.name) if pack.child else ""
        kinds = tuple(dict.fromkeys(item.sheet for item in pack.items))
        yield RunInfo(f"{pack.folder}/1-plain-one-sided.pdf", child, "plain", "one-sided", 1, 14, 14, kinds)
        for half in ("fronts", "backs") if home.printer.sides == "one-sided" else ("",):
            yield RunInfo(
                f"{pack.folder}/2-fold-book-{half or 'two-sided-short-edge'}.pdf", child, "plain",
                "one-sided" if half else "two-sided-short-edge", 1, 2, 2, ("fold-book",), ("Fold it.",), 0, half,
                "two-sided-short-edge" if half else "",
            )  # fmt: skip
        if "model" in kinds:
            yield RunInfo(f"{pack.folder}/3-card-one-sided.pdf", child, "card", "one-sided", 1, 1, 1, ("model",))


def laid(kind: str, about: Study | None = None, of: Family | None = None,
         runs: Sequence[RunInfo] | None = None) -> tuple[Laid, ...]:  # fmt: skip
    """The sheet as it is laid out on such a desk; no fault may be found on the way."""
    on = desk(kind, about, of, runs)
    found = sheets.lay_out(kind, on)
    assert not on.faults
    return found


# Reading pages


def texts(page: Page) -> list[Text]:
    """All runs of letters of a page, in the order drawn."""

    def inside(marks: Iterable[Mark]) -> Iterator[Text]:
        for mark in marks:
            if isinstance(mark, Text):
                yield mark
            elif isinstance(mark, Group):
                yield from inside(mark.marks)

    return list(inside(page.marks))


def squeezed(text: str) -> str:
    """A text without its spaces, as words of one line and of two are then alike."""
    return "".join(text.split())


def said(*pages: Page) -> str:
    """All letters of some pages in the order drawn, without spaces."""
    return squeezed("".join(text.text for page in pages for text in texts(page)))


def pages_of(found: Iterable[Laid]) -> list[Page]:
    return [page for sheet in found for page in sheet.pages]


def assert_well_set(pages: Iterable[Page], margin: float) -> None:
    """No text outside the printable area, none over another, none smaller than 8.5 pt (the small style of the parent).

    Words in the foot and beside its ruler are not read at the table.
    """
    for page in pages:
        boxes = []
        for text in texts(page):
            metrics = FACES.metrics(text.face)
            wide = FACES.width(text.text, text.face, text.size)
            box = (text.x, text.y - metrics.descent * text.size, text.x + wide, text.y + metrics.cap * text.size)
            assert box[0] >= margin and box[2] <= page.width - margin, f"{page.title}: {text.text!r} {box}"
            assert box[1] >= margin and box[3] <= page.height - margin, f"{page.title}: {text.text!r} {box}"
            small = text.role == "foot" or ("10 cm" in text.text and text.size < 2.7)
            assert text.size >= (1.9 if small else 2.99), f"{page.title}: {text.text!r} is {text.size:.2f} mm"
            boxes.append((box, text.text))
        boxes.sort()
        for place, (a, first) in enumerate(boxes):
            for b, second in boxes[place + 1 :]:
                if b[0] >= a[2] - 0.1:
                    break
                low, high = max(a[1], b[1]), min(a[3], b[3])
                assert high - low < 0.15, f"{page.title}: {first!r} over {second!r}"
