"""Everything read and planned: what a build works with before the first page is laid out."""

from __future__ import annotations

from collections.abc import Collection, Hashable
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from packgen import sheets
from packgen.faults import Fault, InputFaults, Place, Said, Severity, nearest, place_of, warning
from packgen.known_names import family_faults, making_faults, recipe_faults, study_faults, unknown_sheet
from packgen.page.lettering import letter_faults
from packgen.page.sheet import PAPERS
from packgen.page.type import Faces
from packgen.pictures.cellar import Cellar
from packgen.pictures.drawn import fits
from packgen.pictures.load import PictureError, Store, check_picture
from packgen.planning.load import Holder
from packgen.planning.plan import PackPlan, default_family, holder_of, plan_items, plan_pack
from packgen.planning.results import result_faults
from packgen.planning.term import plan_term
from packgen.planning.weeks import TermPlan
from packgen.reading.family import read_family
from packgen.reading.models import Child, Family, Recipe, Study, Work
from packgen.reading.names import slug
from packgen.reading.recipe import find_recipes, read_recipe
from packgen.reading.study import read_study
from packgen.resources import cache_folder, folder

if TYPE_CHECKING:
    from packgen.page.wording import Wording


@dataclass(frozen=True, slots=True)
class Order:
    """What the command line asks for. `packs` and `only` are empty for everything."""

    study: Path
    family: Path | None = None
    packs: tuple[str, ...] = ()
    only: tuple[str, ...] = ()
    paper: str | None = None


@dataclass(frozen=True, slots=True)
class Plans:
    """Everything read and planned, and what is to be told of it. `templates` are the folders of wordings, own first.

    `shipped` is True if all recipes and wordings are packgen's own.
    """

    study: Study
    family: Family
    packs: tuple[PackPlan, ...]
    term: TermPlan
    faults: tuple[Fault, ...]
    faces: Faces
    templates: tuple[Path, ...]
    shipped: bool


@dataclass(slots=True)
class Workshop:
    """What a build works with once everything is read."""

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


def open_workshop(order: Order, pictures: Path | None = None, plans: Plans | None = None) -> Workshop:
    """What pages are laid out with, from plans or from the files. Raises InputFaults with every fault of every file.

    Prepared pictures go into the folder `pictures`; without one pictures are only measured, as `check` does.
    """
    from packgen.page.wording import Wording  # loads the template engine, which only laying out needs

    plans = plans or read_all(order)
    store = Store(pictures, Cellar(cache_folder()))
    return Workshop(
        plans.study, plans.family, plans.packs, plans.term, Wording(plans.templates), list(plans.faults), store,
        plans.faces,
    )  # fmt: skip


def read_all(order: Order) -> Plans:
    """Everything read and planned. Raises InputFaults with every fault of every file."""
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
        found += study_faults(study) + _check_pictures(study)
    if study and family:
        found += result_faults(study, family)
    found += letter_faults(faces, study, family)
    if study is None or family is None or any(f.severity is Severity.FAULT for f in found):
        raise InputFaults([*found, *(making_faults(study, family or default_family(), found) if study else ())])
    templates = [p for p in (own / "templates" if own else None, folder("templates")) if p and p.is_dir()]
    term = plan_term(study, family, holders=_holders(study, family, recipes))
    packs = _packs(order, study, family, recipes, term)
    shipped = len(templates) == 1 and all(file.parent == folder("packs") for file in recipe_files.values())
    return Plans(study, family, packs, term, tuple(found), faces, tuple(templates), shipped)


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
    """What is wrong with the pictures. Those that were looked at before and had nothing are not decoded again."""
    cellar, known = Cellar(cache_folder()), _contents(study)
    if known and cellar.value("pictures", known):
        return []
    faults = _decoded(study)
    if known and not faults:
        cellar.keep_value(True, "pictures", known)
    return faults


def _contents(study: Study) -> tuple[str, ...]:
    """What is in each of the study's pictures, work by work; nothing if one cannot be read."""
    store = Store(None)
    paths = [study.portrait, *(path for work in study.works for path in (work.image, work.drawing))]
    paths += [art.image for model in study.models for art in model.faces]
    try:
        return tuple(store.content(path) if path else "" for path in paths)
    except PictureError:
        return ()


def _decoded(study: Study) -> list[Fault]:
    said = [(study.portrait, study.portrait_said)]
    said += [(work.image, work.image_said) for work in study.works]
    said += [(work.drawing, work.drawing_said) for work in study.works]
    said += [(art.image, art.image_said) for model in study.models for art in model.faces]
    faults: list[Fault] = []
    for path, words in dict.fromkeys((p, w) for p, w in said if p):
        assert path is not None
        faults += check_picture(path, words.at if isinstance(words, Said) else study.at)[1]
    if not faults:
        faults += [_unlike(work) for work in study.works if work.image and work.drawing
                   and not fits(work.image, work.drawing)]  # fmt: skip
    return faults


def _unlike(work: Work) -> Fault:
    """The warning of a drawing that has not the shape of its picture."""
    return warning(
        place_of(work.drawing_said), f'The drawing of "{work.title}" is not as wide to high as its picture.',
        "Cut one of the two, so that the lines lie where they lie in the picture.",
    )  # fmt: skip


def _made_for() -> dict[str, str]:
    """What each kind of sheet is made for."""
    return {kind: sheets.about(kind).per for kind in sheets.kinds()}


def _holders(study: Study, family: Family, recipes: dict[str, Recipe]) -> tuple[Holder, ...]:
    """Every child of the family with all its sheets, whichever of them are asked for: the weeks do not depend on it.

    A pack that is asked for and is no child's counts as a child.
    """
    kinds = _made_for()
    found = []
    for child in family.children:
        recipe = recipes[str(child.pack)]
        found.append(holder_of(_folder(child), recipe, plan_items(study, child, recipe, kinds)))
    own = {str(child.pack) for child in family.children}
    for name, recipe in recipes.items():
        if name not in own and recipe.level != "parent":
            found.append(holder_of(name, recipe, plan_items(study, None, recipe, kinds)))
    return tuple(found)


def _folder(child: Child) -> str:
    """The folder of a child's pack."""
    return slug(str(child.name) or str(child.pack))


def _packs(order: Order, study: Study, family: Family, recipes: dict[str, Recipe],
           term: TermPlan) -> tuple[PackPlan, ...]:  # fmt: skip
    """The packs asked for: the children's in the family's order, the parent's last."""
    kinds = _made_for()
    packs: list[PackPlan] = []
    for child in family.children:
        pack = str(child.pack)
        name = _folder(child)
        if order.packs and not {pack, *_words_for(child)} & set(order.packs):
            continue
        packs.append(plan_pack(study, child, recipes[pack], name, kinds, term, order.only))
    for pack in order.packs:
        if pack in recipes and pack != "parent" and not any(pack == p.recipe.pack for p in packs):
            packs.append(plan_pack(study, None, recipes[pack], pack, kinds, term, order.only))
    if not order.packs or "parent" in order.packs:
        packs.append(plan_pack(study, None, recipes["parent"], "parent", kinds, term, order.only))
    return tuple(packs)
