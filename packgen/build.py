"""The arrow: read the study -> plan -> lay out sheets as pages -> place pages on printed sheets -> write."""

from __future__ import annotations

import hashlib
import shutil
import tempfile
from collections.abc import Callable, Collection, Hashable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from packgen import sheets
from packgen.faults import Fault, InputFaults, Place, Said, Severity, in_order, nearest
from packgen.known_names import family_faults, recipe_faults, unknown_sheet
from packgen.page.blocks import Kit
from packgen.page.desk import PAPERS, Desk, Laid
from packgen.page.lettering import letter_faults
from packgen.page.look import look_for
from packgen.page.marks import Group, Mark, Path_, Picture
from packgen.page.type import Faces
from packgen.page.wording import Wording
from packgen.pictures.load import Store, check_picture
from packgen.planning.calendar import calendar_text
from packgen.planning.plan import PackPlan, PlanItem, default_family, plan_pack
from packgen.planning.print_plan import RunInfo
from packgen.planning.results import result_faults
from packgen.planning.term import plan_term
from packgen.planning.weeks import TermPlan
from packgen.printed.runs import PrintRun, print_runs
from packgen.reading.family import read_family
from packgen.reading.models import Child, Family, Recipe, Study
from packgen.reading.names import slug
from packgen.reading.recipe import find_recipes, read_recipe
from packgen.reading.study import read_study
from packgen.resources import folder
from packgen.writing.manifest import Written, manifest
from packgen.writing.output import write_loose, write_output
from packgen.writing.pdf import Bookmark, Document, pdf_bytes

Progress = Callable[[str, int, int], None]


@dataclass(frozen=True, slots=True)
class Order:
    """What the command line asks for. `packs` and `only` are empty for everything."""

    study: Path
    family: Path | None = None
    packs: tuple[str, ...] = ()
    only: tuple[str, ...] = ()
    paper: str | None = None


@dataclass(frozen=True, slots=True)
class BuiltPack:
    """One pack with its finished sheets and the files they are printed from."""

    plan: PackPlan
    laids: tuple[Laid, ...]
    runs: tuple[PrintRun, ...]


@dataclass(frozen=True, slots=True)
class Built:
    """What a build wrote: the folder, its files, what is to be told, and which paths changed."""

    folder: Path
    files: tuple[Written, ...]
    faults: tuple[Fault, ...]
    changed: tuple[str, ...]
    others: tuple[str, ...] = ()


@dataclass(slots=True)
class Workshop:
    """What a build works with once everything is read. Close it to remove its prepared pictures."""

    study: Study
    family: Family
    packs: tuple[PackPlan, ...]
    term: TermPlan
    wording: Wording
    faults: list[Fault]
    store: Store
    faces: Faces
    kept: dict[Hashable, Any] = field(default_factory=dict)

    @property
    def paper(self) -> tuple[float, float]:
        """The paper's width and height in mm."""
        return PAPERS[self.family.paper]

    def close(self) -> None:
        """Remove what was prepared on the way."""
        shutil.rmtree(self.store.folder, ignore_errors=True)


def open_workshop(order: Order) -> Workshop:
    """Read everything and plan it. Raises InputFaults with every fault of every file."""
    study, faults = read_study(order.study)
    found = list(faults)
    own = order.family.parent if order.family else None
    recipe_files = find_recipes([p for p in (own / "packs" if own else None, folder("packs")) if p and p.is_dir()])
    family, wrong = _family(order, recipe_files)
    found += wrong
    recipes, more = _recipes(order, family, recipe_files)
    found += more
    faces = Faces(family.fonts if family else ())
    if study:
        found += _check_pictures(study)
    if study and family:
        found += result_faults(study, family)
    found += letter_faults(faces, study, family)
    if study is None or family is None or any(f.severity is Severity.FAULT for f in found):
        raise InputFaults(found)
    templates = [p for p in (own / "templates" if own else None, folder("templates")) if p and p.is_dir()]
    childrens = [recipe for recipe in recipes.values() if recipe.level != "parent"]
    wanted = {str(line.sheet) for recipe in childrens for line in recipe.sheets}
    term = plan_term(study, family, wanted)
    packs = _packs(order, study, family, recipes, term)
    store = Store(Path(tempfile.mkdtemp(prefix="packgen-")))
    return Workshop(study, family, packs, term, Wording(templates), found, store, faces)


def _family(order: Order, recipes: dict[str, Path]) -> tuple[Family | None, tuple[Fault, ...]]:
    if order.family is None:
        family: Family | None = default_family()
        faults: tuple[Fault, ...] = ()
    else:
        family, faults = read_family(order.family, tuple(recipes))
    if family and order.paper:
        family = replace(family, paper=order.paper)
    return family, faults


def _recipes(order: Order, family: Family | None, files: dict[str, Path]) -> tuple[dict[str, Recipe], list[Fault]]:
    """The recipes the family's children use, and the parent's; faults of their files and of their sheets' names."""
    names = [str(child.pack) for child in family.children] if family else []
    known = {*files, *(word for child in (family.children if family else ()) for word in _words_for(child))}
    faults = [_unknown_pack(name, known) for name in order.packs if name not in known]
    recipes: dict[str, Recipe] = {}
    for name in dict.fromkeys([*names, *order.packs, "parent"]):
        if name not in files:
            continue
        recipe, found = read_recipe(files[name])
        faults += found
        if recipe:
            faults += recipe_faults(recipe)
            recipes[name] = recipe
    for kind in order.only:
        if kind not in sheets.kinds():
            faults.append(unknown_sheet(kind, Place("--only")))
    return recipes, faults + (family_faults(family) if family else [])


def _words_for(child: Child) -> set[str]:
    """What a child's pack may be asked for by: the name as written, or its folder's."""
    return {str(child.name), slug(str(child.name) or str(child.pack))}


def _unknown_pack(name: str, known: Collection[str]) -> Fault:
    near = nearest(name, known)
    instead = f'Did you mean "{near}"?' if near else f"The packs are: {', '.join(sorted(filter(None, known)))}."
    return Fault(Place("--pack"), f'There is no pack called "{name}".', instead)


def _check_pictures(study: Study) -> list[Fault]:
    said = [(study.portrait, study.portrait_said)]
    said += [(work.image, work.image_said) for work in study.works]
    said += [(art.image, art.image_said) for model in study.models for art in model.faces]
    faults: list[Fault] = []
    for path, words in dict.fromkeys((p, w) for p, w in said if p):
        assert path is not None
        faults += check_picture(path, words.at if isinstance(words, Said) else study.at)[1]
    return faults


def _packs(order: Order, study: Study, family: Family, recipes: dict[str, Recipe],
           term: TermPlan) -> tuple[PackPlan, ...]:  # fmt: skip
    """The packs asked for: the children's in the family's order, the parent's last."""
    kinds = {kind: sheets.about(kind).per for kind in sheets.kinds()}
    packs: list[PackPlan] = []
    for child in family.children:
        pack = str(child.pack)
        name = slug(str(child.name) or pack)
        if order.packs and not {pack, *_words_for(child)} & set(order.packs):
            continue
        packs.append(plan_pack(study, child, recipes[pack], name, kinds, term, order.only))
    for pack in order.packs:
        if pack in recipes and pack != "parent" and not any(pack == p.recipe.pack for p in packs):
            packs.append(plan_pack(study, None, recipes[pack], pack, kinds, term, order.only))
    if not order.packs or "parent" in order.packs:
        packs.append(plan_pack(study, None, recipes["parent"], "parent", kinds, term, order.only))
    return tuple(packs)


def build_packs(shop: Workshop, progress: Progress | None = None) -> tuple[BuiltPack, ...]:
    """Lay out and impose every pack. Faults found on the way are in the workshop; raises InputFaults if any stops it.

    The parent's pages count every print run, their own too, so they are laid out again until that count stands.
    """
    tell = progress or (lambda words, done, of: None)
    of = sum(len(pack.items) for pack in shop.packs)
    done = 0
    built: list[BuiltPack] = []
    for pack in shop.packs:
        runs = tuple(info for other in built for info in run_infos(other, shop.family))
        made = _lay_out_pack(shop, pack, runs, lambda words, k, at=done: tell(words, at + k, of))  # type: ignore[misc]
        for _ in range(3 if is_parents(pack) else 0):
            own = run_infos(made, shop.family)
            again = _lay_out_pack(shop, pack, runs + own, None)
            settled = run_infos(again, shop.family) == own
            made = again
            if settled:
                break
        done += len(pack.items)
        built.append(made)
    tell("", of, of)
    shop.faults[:] = in_order(shop.faults)
    if any(f.severity is Severity.FAULT for f in shop.faults):
        raise InputFaults(shop.faults)
    return tuple(built)


def is_parents(pack: PackPlan) -> bool:
    """True for the parent's own pack."""
    return pack.child is None and pack.recipe.level == "parent"


def _lay_out_pack(shop: Workshop, pack: PackPlan, runs: tuple[RunInfo, ...],
                  tell: Callable[[str, int], None] | None) -> BuiltPack:  # fmt: skip
    laids: list[Laid] = []
    for k, item in enumerate(pack.items):
        if tell:
            tell(f"{pack.folder}: {item.sheet}", k)
        for laid in sheets.lay_out(item.sheet, _desk(shop, pack, item, runs)):
            laids += [laid] * _copies(pack, laid)
    name = "guide" if is_parents(pack) else ""
    return BuiltPack(pack, tuple(laids), print_runs(laids, shop.paper, shop.family.printer, name=name))


def _copies(pack: PackPlan, laid: Laid) -> int:
    """How many times a sheet or part is printed: once, and what the child's `extra` says of it."""
    extra = {str(name): number for name, number in pack.child.extra} if pack.child else {}
    return 1 + extra.get(laid.part or laid.kind, 0)


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


def run_infos(pack: BuiltPack, family: Family) -> tuple[RunInfo, ...]:
    """What the parent's print plan says of a pack's runs."""
    child = str(pack.plan.child.name) if pack.plan.child else ""
    return tuple(
        RunInfo(
            path=f"{pack.plan.folder}/{run.name}", child=child, stock=run.stock, sides=run.sides, copies=run.copies,
            pages=len(run.pages), sheets_of_paper=run.paper_sheets,
            kinds=tuple(dict.fromkeys(s.laid.kind for s in run.sheets)),
            after=tuple(dict.fromkeys(words for s in run.sheets for words in s.laid.after)),
            colour_pages=sum(has_colour(page.marks) for page in run.pages) if family.printer.colour else 0,
            face=run.half, flip=run.flip,
        ) for run in pack.runs
    )  # fmt: skip


def has_colour(marks: Sequence[Mark]) -> bool:
    """True if some mark is a picture or has an ink that is not a grey."""
    for mark in marks:
        if isinstance(mark, Picture) or (isinstance(mark, Group) and has_colour(mark.marks)):
            return True
        inks = (mark.fill, mark.stroke.ink if mark.stroke else None) if isinstance(mark, Path_) else ()
        if any(isinstance(ink, tuple) for ink in inks):
            return True
    return False


def documents(shop: Workshop, built: Sequence[BuiltPack]) -> Iterator[Written]:
    """Every file of the build, made one after the other."""
    for pack in built:
        child = str(pack.plan.child.name) if pack.plan.child else ""
        for run in pack.runs:
            path = f"{pack.plan.folder}/{run.name}"
            who = child or pack.plan.folder
            document = Document(
                title=f"{shop.study.study} · {who} · {run.name.removesuffix('.pdf')}",
                pages=run.pages,
                sides=run.sides,
                copies=run.copies,
                language=shop.study.language,
                bookmarks=tuple(Bookmark(s.laid.title, s.first) for s in run.sheets if s.first <= len(run.pages)),
                subject=str(shop.study.in_short),
            )
            yield Written(path, child, str(pack.plan.recipe.pack), run, pdf_bytes(document))


def build(order: Order, out: Path, progress: Progress | None = None) -> Built:
    """Read the study, plan, lay out, impose and write. Raises InputFaults and WorkFailed."""
    shop = open_workshop(order)
    try:
        target = out / slug(str(shop.study.study))
        refuse_inside(target, shop.study.folder, order.study)
        packs = build_packs(shop, progress)
        files = tuple(documents(shop, packs))
        more = extras(shop)
        shown = {path: hashlib.sha256(data).hexdigest() for path, data in more.items()}
        listing = manifest(str(shop.study.study), shop.family.paper, files, shop.faults, shown)
        changed = write_output(target, {**{f.path: f.data for f in files}, **more}, listing)
        return Built(target, files, tuple(shop.faults), changed, tuple(more))
    finally:
        shop.close()


def extras(shop: Workshop) -> dict[str, bytes]:
    """The files of the output that are not printed: the calendar, if the term has dates."""
    if shop.term.dated and any(pack.folder == "parent" for pack in shop.packs):
        return {"parent/term.ics": calendar_text(shop.study, shop.family, shop.term).encode()}
    return {}


def check(order: Order) -> tuple[Fault, ...]:
    """Every fault and warning of the files and of the pages they would make; writes nothing."""
    try:
        shop = open_workshop(order)
    except InputFaults as wrong:
        return wrong.faults
    try:
        build_packs(shop)
    except InputFaults as wrong:
        return wrong.faults
    finally:
        shop.close()
    return in_order(shop.faults)


def refuse_inside(target: Path, study_folder: Path, study: Path) -> None:
    """Refuse an output folder that is the study's own folder or a file. Raises InputFaults."""
    if target.resolve() == study_folder.resolve():
        raise InputFaults([Fault(Place(str(target)), "The output would land among the study's own files.",
                                 "Choose another folder with --out.")])  # fmt: skip
    if target.exists() and not target.is_dir():
        raise InputFaults([Fault(Place(str(target)), "There is a file of this name where a folder is needed.",
                                 "Choose another folder with --out.")])  # fmt: skip


@dataclass(frozen=True, slots=True)
class Previewed:
    """What a preview wrote, and what is to be told."""

    paths: tuple[Path, ...]
    faults: tuple[Fault, ...]


def preview(order: Order, out: Path, progress: Progress | None = None) -> Previewed:
    """Write contact sheets of every file the build would make. Raises InputFaults and WorkFailed."""
    from packgen.writing.preview import contact_sheets  # loads the PDF renderer, which only this needs

    shop = open_workshop(order)
    try:
        target = out / slug(str(shop.study.study))
        refuse_inside(target, shop.study.folder, order.study)
        packs = build_packs(shop, progress)
        pictures: dict[str, bytes] = {}
        for file in documents(shop, packs):
            stem = file.path.removesuffix(".pdf").replace("/", "-")
            for number, picture in enumerate(contact_sheets(file.data), 1):
                pictures[f"preview/{stem}-{number}.png"] = picture
        paths = write_loose(target, pictures)
        return Previewed(paths, tuple(shop.faults))
    finally:
        shop.close()
