"""The desk a sheet is laid out on: everything a sheet may use, and what it hands back.

A sheet is one module in packgen/sheets/, found by its file's name. It has a `SHEET` (see below) and a function
`lay_out(desk) -> tuple[Laid, ...]`. The desk knows the study, the child, the level's look, the wording and the
pictures; it turns blocks into pages with the frame of the level, and collects faults.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from packgen.faults import Fault, Place, place_of, warning
from packgen.page.blocks import Block, Kit, draw_stack
from packgen.page.flow import DoesNotFit, paginate
from packgen.page.frame import Foot, Head, Margins, draw_foot, draw_head, foot_height, head_height, margins
from packgen.page.look import Look
from packgen.page.marks import Page
from packgen.page.pen import Pen
from packgen.page.sheet import PAPERS, Option, Sheet
from packgen.page.type import Faces, script_names
from packgen.page.wording import Wording
from packgen.pictures.load import PreparedPicture, Store
from packgen.planning.plan import PackPlan, PlanItem
from packgen.planning.print_plan import Begin, RunInfo
from packgen.planning.weeks import TermPlan
from packgen.reading.dates import plain
from packgen.reading.models import Child, Family, Recipe, Study

__all__ = ["PAPERS", "Desk", "Fold", "Laid", "Numbered", "Option", "Paint", "Section", "Sheet"]


@dataclass(frozen=True, slots=True)
class Fold:
    """Pages that are a small book: imposed by a fold scheme on sheets of the family's paper."""

    scheme: str
    panels: int | None = None


@dataclass(frozen=True, slots=True)
class Laid:
    """A finished sheet: its pages, the paper they want, and how. `after` says what to cut or fold when printed.

    `part` names a part of a set that has copies of its own (`design-draft`). `net` holds a model's pieces for the
    manifest, by page. `colour` is True if the sheet gains from colour. `number` is the sheet's place in its pack, once
    that is known; None for what carries no number. `begins` is what begins on which of its pages.
    """

    kind: str
    title: str
    pages: tuple[Page, ...]
    stock: str = "plain"
    sides: str = "one-sided"
    fold: Fold | None = None
    week: int | None = None
    part: str = ""
    after: tuple[str, ...] = ()
    colour: bool = False
    net: object | None = None
    texts: tuple[str, ...] = ()
    number: int | None = None
    begins: tuple[Begin, ...] = ()


Paint = Callable[[Pen, float, float, float, float], None]


@dataclass(frozen=True, slots=True)
class Section:
    """A part of a sheet with a head of its own: blocks, or a page it paints itself; in several copies if asked.

    A part of two pages that is to lie open at once (`opening`) begins on an even page: printed on both sides, pages 2
    and 3, 4 and 5 ... face each other. The page this leaves over goes to the part before, filled with its `more`.
    """

    head: Head
    blocks: tuple[Block, ...] = ()
    paint: Paint | None = None
    copies: int = 1
    opening: bool = False
    more: tuple[Block, ...] = ()


@dataclass(frozen=True, slots=True)
class Numbered:
    """The name and number of a page for its foot."""

    name: str
    number: int
    count: int


@dataclass(slots=True)
class Desk:
    """What one sheet of one pack is laid out with. Lengths in mm."""

    study: Study
    family: Family
    pack: PackPlan
    item: PlanItem
    kit: Kit
    paper: tuple[float, float]
    wording: Wording
    store: Store
    term: TermPlan
    faults: list[Fault] = field(default_factory=list)
    packs: tuple[PackPlan, ...] = ()
    print_runs: tuple[RunInfo, ...] = ()
    kept: dict[Hashable, Any] = field(default_factory=dict)
    asked: set[str] = field(default_factory=set)

    # What the sheet is for

    @property
    def look(self) -> Look:
        """The look of the level."""
        return self.kit.look

    @property
    def faces(self) -> Faces:
        """The faces and their measures."""
        return self.kit.faces

    @property
    def level(self) -> str:
        """The level: first, younger, older, upper, or parent."""
        return self.kit.look.level

    @property
    def child(self) -> Child | None:
        """The child, or None on the parent's pages."""
        return self.pack.child

    @property
    def no_glue(self) -> bool:
        """True for a child who should have nothing to glue."""
        return bool(self.child and not self.child.glue)

    @property
    def recipe(self) -> Recipe:
        """The pack's recipe."""
        return self.pack.recipe

    @property
    def person(self) -> str:
        """The child's name, or nothing."""
        return str(self.child.name) if self.child else ""

    def option(self, name: str, default: Any = None) -> Any:
        """An option of the recipe's line for this sheet (text as written), or the default."""
        return dict(self.item.options).get(name, default)

    @property
    def runs(self) -> tuple[RunInfo, ...]:
        """The print runs known so far. A sheet that asks for them is laid out again when its own pack's are known."""
        self.asked.add("runs")
        return self.print_runs

    def count(self, name: str, default: int) -> int:
        """A whole-number option; a fault at the recipe's line if it is not one."""
        value = self.option(name)
        if value is None:
            return default
        try:
            return int(str(value))
        except ValueError:
            self.fault(value, f'"{name}" wants a whole number, not "{value}".', f"Write for example {name}: {default}")
            return default

    def once(self, key: Hashable, make: Callable[[], Any]) -> Any:
        """What `make` gives, made once in a build for that key: for work that does not depend on the child."""
        if key not in self.kept:
            self.kept[key] = make()
        return self.kept[key]

    def copies_of(self, part: str) -> int:
        """How many copies the child has of a sheet or part: one, and what its `extra` says."""
        extra = {str(name): number for name, number in self.child.extra} if self.child else {}
        return 1 + extra.get(part, 0)

    # Words

    def say(self, key: str, **values: Any) -> str:
        """A wording for this sheet and level as one line."""
        return self.wording.say(self.item.sheet, self.level, key, self._values(values))

    def say_lines(self, key: str, **values: Any) -> tuple[str, ...]:
        """A wording of several lines for this sheet and level."""
        return self.wording.lines(self.item.sheet, self.level, key, self._values(values))

    def has(self, key: str) -> bool:
        """True if there is such a wording for this sheet and level."""
        return self.wording.has(self.item.sheet, self.level, key)

    def _values(self, more: dict[str, Any]) -> dict[str, Any]:
        name = str(self.study.study)
        base = {
            "study": self.study, "who": name, "called": name.split()[0] if name.split() else name,
            "subject": self.item.subject, "child": self.person, "plain": plain, "level": self.level,
            "week": self.item.week, "family": self.family, "paper": self.family.paper,
        }  # fmt: skip
        return {**base, **more}

    # Faults

    def fault(self, about: object, message: str, instead: str) -> None:
        """Note a fault at the place where a value was written."""
        self.faults.append(Fault(about if isinstance(about, Place) else place_of(about), message, instead))

    def warn(self, about: object, message: str, instead: str = "") -> None:
        """Note a warning at the place where a value was written."""
        self.faults.append(warning(about if isinstance(about, Place) else place_of(about), message, instead))

    # Pictures

    def picture(self, path: Path, width: float, height: float, name: str = "", about: object = None,
                **wishes: Any) -> PreparedPicture:  # fmt: skip
        """A picture made ready to be printed width x height mm; warns if it has too few pixels for that.

        `name` is what to call it in the warning, `about` the value whose place the warning names.
        """
        wishes.setdefault("grey", not self.family.printer.colour)
        prepared = self.store.prepared(path, width, height, **wishes)
        coarse = prepared.warning(name or path.name, about if isinstance(about, Place) else place_of(about))
        if coarse:
            self.faults.append(coarse)
        return prepared

    # Pages

    @property
    def margins(self) -> Margins:
        """The margins of a full page."""
        return margins(self.family.printer.margin)

    @property
    def live_width(self) -> float:
        """The width of the live area of a full page in mm."""
        return self.paper[0] - self.margins.left - self.margins.right

    def foot(self, title: str, page: int, pages: int, *, ruler: bool = False) -> Foot:
        """The foot of page `page` (from 1) of `pages`."""
        left = " · ".join(part for part in (str(self.study.study), title) if part)
        week = self.wording.say("", self.level, "foot_week", {"week": self.item.week}) if self.item.week else ""
        count = self.wording.say("", self.level, "foot_page", {"page": page, "pages": pages})
        right = " · ".join(part for part in (week, count) if part)
        words = self.wording.say("", self.level, "foot_ruler", {}) if ruler else ""
        return Foot(left, right, words, self.tag)

    @property
    def tag(self) -> str:
        """What stands before the number of a child's sheet in the pack; nothing on the parent's pages."""
        return "" if self.level == "parent" else self.person or self.wording.say("", self.level, "foot_sheet", {})

    def head(self, title: str, subject: str = "", emblem: str = "fan", date: bool = True) -> Head:
        """The head of a sheet, with this child's name."""
        return Head(title, subject, self.person, emblem, date, date_word=self.wording.say("", self.level, "date", {}))

    def room(self, head: Head, page: int, ruler: bool = False) -> float:
        """The height of the live area on page `page` (from 0) under its head, in mm."""
        edge = self.margins
        over = head_height(self.kit, head, self.live_width, page == 0)
        return self.paper[1] - edge.top - edge.bottom - foot_height(ruler) - over

    def pages(self, head: Head, blocks: Sequence[Block], *, name: str = "", ruler: bool = False, loosen: float = 6.0,
              before: int = 0) -> tuple[Page, ...]:  # fmt: skip
        """The pages of a sheet, from its blocks. `name` is its name for the foot (the head's title if not given).

        `before` is how many pages of the sheet come before these. A block that cannot be placed is noted as a fault,
        and the pages without it are returned.
        """
        parts = (Section(head, tuple(blocks)),)
        return self.sections(parts, name=name or head.title, ruler=ruler, loosen=loosen, before=before)

    def sections(self, parts: Sequence[Section], *, name: str, ruler: bool = False, loosen: float = 6.0,
                 before: int = 0) -> tuple[Page, ...]:  # fmt: skip
        """The pages of a sheet of several parts, each with a head of its own, numbered through."""
        broken: list[tuple[Section, int, list[Block]]] = []
        for part in parts:
            pages = [[]] if part.paint else self._broken(part.head, part.blocks, ruler, name)
            last = broken[-1][0] if broken else None
            if part.opening and len(pages) > 1 and len(broken) % 2 == 0 and last and last.more:
                broken.append((last, 1, list(last.more)))
            for _ in range(part.copies):
                broken += [(part, k, blocks) for k, blocks in enumerate(pages)]
        count = len(broken) + before
        return tuple(
            self._page(part, blocks, place, Numbered(name, number, count), ruler, loosen)
            for number, (part, place, blocks) in enumerate(broken, before + 1)
        )

    def _broken(self, head: Head, blocks: Sequence[Block], ruler: bool, name: str) -> list[list[Block]]:
        """The blocks of each page; one that is higher than a page is left out with a fault."""
        left = list(blocks)
        while True:
            try:
                return paginate(self.kit, left, self.live_width, lambda k: self.room(head, k, ruler))
            except DoesNotFit as trouble:
                self._too_high(trouble, name)
                kept = [block for block in left if block is not trouble.block]
                if len(kept) == len(left):  # it was the rest of a block that had been split
                    return []
                left = kept

    def _page(self, part: Section, blocks: Sequence[Block], place: int, numbered: Numbered, ruler: bool,
              loosen: float) -> Page:  # fmt: skip
        width, height = self.paper
        edge = self.margins
        pen = self.kit.pen()
        self._tint(pen)
        draw_head(self.kit, pen, part.head, edge.left, height - edge.top, self.live_width, place == 0)
        high = self.room(part.head, place, ruler)
        low = edge.bottom + foot_height(ruler)
        if part.paint:
            part.paint(pen, edge.left, low, self.live_width, high)
        else:
            draw_stack(self.kit, pen, blocks, edge.left, low + high, self.live_width, high, loosen)
        foot = self.foot(numbered.name, numbered.number, numbered.count, ruler=ruler)
        draw_foot(self.kit, pen, foot, edge.left, edge.bottom, self.live_width)
        return self.finish(pen, width, height, numbered.name)

    def _tint(self, pen: Pen) -> None:
        """A pale ground for a child who reads better on one, as far as the printer reaches."""
        if self.child and self.child.tint:
            edge = self.family.printer.margin
            ink = (1.0, 0.985, 0.925) if self.family.printer.colour else 0.965
            pen.box(edge, edge, self.paper[0] - 2 * edge, self.paper[1] - 2 * edge, fill=ink, role="tint")

    def free_page(self, paint: Paint, head: Head, *, name: str = "", number: int = 1, count: int = 1,
                  ruler: bool = False) -> Page:  # fmt: skip
        """A page whose live area the sheet paints itself: `paint(pen, x, y, width, height)`, lower left first."""
        numbered = Numbered(name or head.title, number, count)
        return self._page(Section(head, paint=paint), (), number - 1, numbered, ruler, 0.0)

    def finish(self, pen: Pen, width: float, height: float, title: str) -> Page:
        """A page from what a pen has drawn; letters that no face has become a fault."""
        if pen.lost:
            letters = tuple(dict.fromkeys(pen.lost))
            self.fault(self.study.study, f'On "{title}" no face has the letters {" ".join(letters[:12])} '
                       f'({", ".join(script_names(letters)[:3])}).', "Spell them another way, or give a font that has "
                       "them under `fonts:` in the family file.")  # fmt: skip
        return Page(width, height, tuple(pen.marks), title)

    def _too_high(self, trouble: DoesNotFit, name: str) -> None:
        text = str(getattr(trouble.block, "text", "") or getattr(trouble.block, "label", ""))
        begins = f' It begins "{text[:40]}".' if text else ""
        high = f"{trouble.needed:.0f} mm high and the page has {trouble.room:.0f} mm"
        self.fault(
            getattr(trouble.block, "at", self.item.subject),
            f'On "{name}" a part is {high}.{begins}',
            "Make this text shorter, or part it into several.",
        )
