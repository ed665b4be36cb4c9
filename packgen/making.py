"""One pack made: its sheets laid out, placed on printed sheets, and handed on as files. Nothing of it is kept."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Sequence
from dataclasses import dataclass, replace

from packgen import sheets
from packgen.faults import NOWHERE, Fault, Said
from packgen.page.blocks import Kit
from packgen.page.desk import Desk, Laid
from packgen.page.look import look_for
from packgen.page.marks import Group, Mark, Path_, Picture
from packgen.page.numbering import with_count
from packgen.page.sheet_number import printed_title
from packgen.planning.plan import PackPlan, PlanItem
from packgen.planning.print_plan import NumberedSheet, RunInfo
from packgen.printed.runs import PrintRun, RunSheet, print_runs, with_numbers
from packgen.reading.models import Family
from packgen.workshop import Workshop
from packgen.writing.manifest import Written, written
from packgen.writing.pdf import Bookmark, Document, pdf_bytes

Tell = Callable[[str], None]
Sink = Callable[[str, bytes], None]

_ROUNDS = 3  # the parent's pages count their own print runs; more rounds than this have not been seen


@dataclass(frozen=True, slots=True)
class Made:
    """What is left of a pack when its pages are gone: its files, its print runs, and what is to be told.

    `clean` are the places in the plan of those sheets that had nothing to tell.
    """

    files: tuple[Written, ...]
    runs: tuple[RunInfo, ...]
    faults: tuple[Fault, ...]
    clean: tuple[int, ...] = ()

    def for_pack(self, pack: PackPlan) -> Made:
        """The same runs as those of a pack like it, of which nothing was written."""
        child = str(pack.child.name) if pack.child else ""
        return Made((), tuple(
            replace(run, path=f"{pack.folder}/{run.path.rpartition('/')[2]}", child=child,
                    sheets=tuple(replace(sheet, child=child) for sheet in run.sheets)) for run in self.runs
        ), ())  # fmt: skip


def alike(shop: Workshop, places: Sequence[int]) -> dict[int, int]:
    """For each pack at these places one like it in all but the child's name; of those alike the longest name is taken.

    What does not fit for the longest name is told; nothing else on a page depends on it.
    """
    groups: dict[Hashable, list[int]] = {}
    for place in places:
        child = shop.packs[place].child
        own: Hashable = place
        if child and not any(result.child == child.name for result in shop.family.results):
            own = replace(child, name=Said(""), at=NOWHERE)
        groups.setdefault((shop.packs[place].recipe.pack, own), []).append(place)

    def name(place: int) -> int:
        child = shop.packs[place].child
        return len(child.name) if child else 0

    return {place: max(group, key=name) for group in groups.values() for place in group}


def make(shop: Workshop, pack: PackPlan, others: tuple[RunInfo, ...], sink: Sink | None, tell: Tell) -> Made:
    """Make one pack. `others` are the runs of the packs before it; `sink` takes each file, or None to make no files.

    `tell` is called with the name of each sheet before it is laid out.
    """
    kept, shop.faults = shop.faults, []
    try:
        runs, clean = _runs(shop, pack, others, tell)
        files: tuple[Written, ...] = ()
        if sink:
            files = tuple(_files(shop, pack, runs, sink))
        return Made(files, _infos(pack, runs, shop.family), tuple(shop.faults), clean)
    finally:
        shop.faults = kept


def is_parents(pack: PackPlan) -> bool:
    """True for the parent's own pack."""
    return pack.child is None and pack.recipe.level == "parent"


def _runs(
    shop: Workshop, pack: PackPlan, others: tuple[RunInfo, ...], tell: Tell
) -> tuple[tuple[PrintRun, ...], tuple[int, ...]]:
    """The print runs of a pack, and the places of the sheets that had nothing to tell.

    The sheets that show print runs are laid out again until their own are counted in.
    """
    name = "guide" if is_parents(pack) else ""
    laid: list[tuple[Laid, ...]] = [()] * len(pack.items)
    again = list(range(len(pack.items)))
    own: tuple[RunInfo, ...] = ()
    clean = set(again)
    for _ in range(_ROUNDS):
        asking = []
        for k in again:
            tell(f"{pack.folder}: {pack.items[k].sheet}")
            desk, before = _desk(shop, pack, pack.items[k], others + own), len(shop.faults)
            laid[k] = _copied(pack, sheets.lay_out(pack.items[k].sheet, desk))
            if len(shop.faults) > before:
                clean.discard(k)
            asking += [k] if desk.asked else []
        loose = [one for each in laid for one in each]
        all_laid = with_numbers(loose, shop.faces, look_for(pack.recipe.level).strong.face)
        runs = print_runs(all_laid, shop.paper, shop.family.printer, name=name)
        counted, own = own, _infos(pack, runs, shop.family)
        again = asking
        if not again or counted == own:
            break
    return _numbered_through(shop, runs) if name else runs, tuple(sorted(clean))


def _numbered_through(shop: Workshop, runs: Sequence[PrintRun]) -> tuple[PrintRun, ...]:
    """The runs of one file with pages numbered through, over all its parts; fronts and backs as they lie together."""
    count = sum(len(run.pages) for run in runs)
    numbered = []
    for run in runs:
        places = range(len(run.pages)) if not run.half else range(run.half == "backs", count, 2)
        words = [shop.wording.say("", "parent", "foot_page", {"page": k + 1, "pages": count}) for k in places]
        pages = tuple(with_count(shop.faces, page, said) for page, said in zip(run.pages, words, strict=False))
        numbered.append(replace(run, pages=pages))
    return tuple(numbered)


def _copied(pack: PackPlan, laids: Sequence[Laid]) -> tuple[Laid, ...]:
    """Each sheet or part as often as it is printed: once, and what the child's `extra` says of it."""
    extra = {str(name): number for name, number in pack.child.extra} if pack.child else {}
    return tuple(laid for laid in laids for _ in range(1 + extra.get(laid.part or laid.kind, 0)))


def _desk(shop: Workshop, pack: PackPlan, item: PlanItem, runs: tuple[RunInfo, ...]) -> Desk:
    child = pack.child
    look = look_for(
        pack.recipe.level,
        writing=pack.recipe.writing,
        larger=bool(child and child.larger_type),
        wider=bool(child and child.wider_spacing),
    )
    return Desk(
        shop.study, shop.family, pack, item, Kit(shop.faces, look), shop.paper, shop.wording, shop.store, shop.term,
        shop.faults, shop.packs, runs, shop.kept,
    )  # fmt: skip


def _infos(pack: PackPlan, runs: Sequence[PrintRun], family: Family) -> tuple[RunInfo, ...]:
    """What the parent's print plan says of a pack's runs."""
    child = str(pack.child.name) if pack.child else ""
    return tuple(
        RunInfo(
            path=f"{pack.folder}/{run.name}", child=child, stock=run.stock, sides=run.sides, copies=run.copies,
            pages=len(run.pages), sheets_of_paper=run.paper_sheets,
            kinds=tuple(dict.fromkeys(s.laid.kind for s in run.sheets)),
            after=tuple(dict.fromkeys(words for s in run.sheets for words in s.laid.after)),
            colour_pages=sum(has_colour(page.marks) for page in run.pages) if family.printer.colour else 0,
            face=run.half, flip=run.flip, sheets=tuple(_named(child, s) for s in run.sheets),
        ) for run in runs
    )  # fmt: skip


def _named(child: str, sheet: RunSheet) -> NumberedSheet:
    """A sheet as the parent's pages name it."""
    laid = sheet.laid
    title = next(filter(None, map(printed_title, laid.pages)), laid.title)
    return NumberedSheet(
        child,
        laid.number,
        title,
        laid.kind,
        laid.title,
        laid.part,
        laid.week,
        laid.stock,
        sheet.first,
        len(laid.pages),
        laid.begins,
    )


def has_colour(marks: Sequence[Mark]) -> bool:
    """True if some mark is a picture or has an ink that is not a grey."""
    for mark in marks:
        if isinstance(mark, Picture) or (isinstance(mark, Group) and has_colour(mark.marks)):
            return True
        inks = (mark.fill, mark.stroke.ink if mark.stroke else None) if isinstance(mark, Path_) else ()
        if any(isinstance(ink, tuple) for ink in inks):
            return True
    return False


def _bookmarks(run: PrintRun) -> Iterator[Bookmark]:
    """The file's outline: its sheets, and what begins inside them where the pages lie in their order."""
    for sheet in run.sheets:
        if sheet.first <= len(run.pages):
            yield Bookmark(sheet.laid.title, sheet.first)
            for begin in sheet.laid.begins if not run.half else ():
                yield Bookmark(begin.title, sheet.first - 1 + begin.page, 2 if begin.under else 1)


def _files(shop: Workshop, pack: PackPlan, runs: Sequence[PrintRun], sink: Sink) -> Iterator[Written]:
    """Every file of a pack, made one after the other and handed to the sink."""
    child = str(pack.child.name) if pack.child else ""
    for run in runs:
        document = Document(
            title=f"{shop.study.study} · {child or pack.folder} · {run.name.removesuffix('.pdf')}",
            pages=run.pages,
            sides=run.sides,
            copies=run.copies,
            language=shop.study.language,
            bookmarks=tuple(_bookmarks(run)),
            subject=str(shop.study.in_short),
        )
        path, data = f"{pack.folder}/{run.name}", pdf_bytes(document)
        sink(path, data)
        yield written(path, child, str(pack.recipe.pack), run, data)
