"""Which sheets are sure to have nothing wrong with them without being laid out, so that a check is quick.

What can be wrong with a study shows in its files, but for two things that only laying out shows: text or pictures that
do not fit their place, and things made of a work, a challenge or a model (lines, templates, nets). Of the first there
is nothing where every text is of an ordinary length, every list of an ordinary number, every picture of an ordinary
size, and the wording, faces and type sizes are packgen's own; the tests lay out studies at these bounds. The second is
remembered: a sheet that was laid out without a fault has none as long as nothing it is made of changes.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from pathlib import Path

from packgen.faults import Place, Said
from packgen.pictures.cellar import Cellar
from packgen.pictures.load import PictureError, picture_info
from packgen.planning.plan import PackPlan, PlanItem
from packgen.reading.models import Child, Family, Study
from packgen.resources import code_stamp, folder
from packgen.workshop import Plans

# The most letters of an ordinary text, by its key; of those not named here _LETTERS.
_LETTERS = 140
_MOST_LETTERS = {
    "study": 40, "in_short": 90, "title": 50, "author": 40, "name": 40, "what": 90, "short": 40, "word": 24,
    "means": 75,
    "medium": 40, "held": 60, "life": 2500, "tell": 320, "brief": 240, "note": 200, "item": 60, "unit": 12, "text": 120,
    "family": 40, "look": 100, "look_first": 70, "answers": 145, "answers_first": 85, "steps": 240,
}  # fmt: skip
_UNREAD = frozenset(
    {"link", "image_said", "drawing_said", "portrait_said", "mesh_said", "id", "works", "levels", "leave_out"}
)
_MOST = 24  # entries of an ordinary list, but of those named here
_MOST_ENTRIES = {"look": 4, "look_first": 3, "answers": 4, "answers_first": 3, "works": 8, "obstacles": 12, "facts": 12,
                 "words": 20, "materials": 12}  # fmt: skip
_WORD = 24  # letters of an ordinary word
_LEAST_PX = 700  # of a picture's shorter side: enough for every picture on a sheet of the whole study
_SLIM = 0.5  # an ordinary picture's shorter side over its longer one, at least
_MARGIN = 8.0  # mm
_WEEKS = 20
_CHILDREN = 12
_KEPT = 4000


class Sure:
    """What is sure of the sheets of some plans. `clean` remembers what was laid out; `save` keeps it for other runs."""

    def __init__(self, plans: Plans, study: Path, cellar: Cellar) -> None:
        self._plans = plans
        self._cellar = cellar
        self._of = ("sure", _stamp(), str(study.resolve()))
        self._known: dict[str, None] = dict.fromkeys(cellar.value(*self._of) or ())
        self._fresh = False
        self._ordinary = plans.shipped and ordinary(plans.study, plans.family)
        self._common = _digest(_household(plans.family))
        self._whole = "" if self._ordinary else _digest((plans.study, plans.family))

    def left(self) -> tuple[PackPlan, ...]:
        """The packs with those sheets alone that have to be laid out."""
        return tuple(
            replace(pack, items=tuple(item for item in pack.items if not self.of(pack, item)))
            for pack in self._plans.packs
        )

    def of(self, pack: PackPlan, item: PlanItem) -> bool:
        """True if nothing can be wrong with a sheet that is not known without laying it out."""
        if self._ordinary and isinstance(item.subject, Study):
            return True
        return self._key(pack, item) in self._known

    def clean(self, pack: PackPlan, item: PlanItem) -> None:
        """Remember that a sheet was laid out and had nothing wrong with it."""
        self._known[self._key(pack, item)] = None
        self._fresh = True

    def save(self) -> None:
        """Keep what is known for the next run."""
        if self._fresh:
            self._cellar.keep_value(list(self._known)[-_KEPT:], *self._of)

    def _key(self, pack: PackPlan, item: PlanItem) -> str:
        study = self._plans.study
        about: object = item.subject
        if isinstance(about, Study):
            about = None
        elif self._ordinary:  # texts of the study on this sheet, but those it is about, are short
            about = (about, study.place)
        child = pack.child and replace(pack.child, name=Said(""), leave_out=(), extra=())
        asked = (item.sheet, item.options, replace(pack.recipe, sheets=()), child, about)
        return _digest((asked, self._common, self._whole))


def ordinary(study: Study, family: Family) -> bool:
    """True if no text, list or picture is so large or small that it might not fit its place on some sheet."""
    if family.fonts or family.results or family.printer.margin > _MARGIN or not study.language.startswith("en"):
        return False
    if len(family.children) > _CHILDREN or (family.term and family.term.weeks > _WEEKS):
        return False
    return (
        all(_plain_child(child) for child in family.children)
        and all(_fits(name, text) for name, text in _texts((study, family)))
        and all(_is_shown_well(path) for path in (study.portrait, *(work.image for work in study.works)) if path)
    )


def _plain_child(child: Child) -> bool:
    return not (child.larger_type or child.wider_spacing or child.book) and len(child.name) <= _WORD


def _fits(name: str, text: Said | int) -> bool:
    if isinstance(text, int):
        return text <= _MOST_ENTRIES.get(name, _MOST)
    if name in _UNREAD:
        return True
    return len(text) <= _MOST_LETTERS.get(name, _LETTERS) and max(map(len, text.split()), default=0) <= _WORD


def _texts(value: object, name: str = "") -> Iterator[tuple[str, Said | int]]:
    """Every text in a record, with the key it stands under, and the length of every list."""
    if isinstance(value, Said):
        yield name, value
    elif isinstance(value, tuple):
        yield name, len(value)
        for part in value:
            yield from _texts(part, name)
    elif is_dataclass(value):
        for key in fields(value):
            yield from _texts(getattr(value, key.name), key.name)


def _is_shown_well(path: Path) -> bool:
    try:
        info = picture_info(path)
    except PictureError:
        return False
    short, long = sorted((info.width_px, info.height_px))
    return short >= _SLIM * long and (info.vector or short >= _LEAST_PX)


def _household(family: Family) -> tuple[object, ...]:
    """What of a family every sheet depends on."""
    return family.paper, family.printer, family.units, family.place, family.fonts


def _stamp() -> str:
    """A text that changes with anything that pages are made with."""
    here = Path(__file__).parent
    parts = [here, *(here / name for name in ("page", "sheets", "nets", "nets/solids", "trials", "trials/models"))]
    parts += [here / name for name in ("pictures", "planning", "folding", "folding/schemes", "printed", "reading")]
    data = [folder("packs"), folder("fonts"), *sorted(p for p in folder("templates").iterdir() if p.is_dir())]
    stamps = [code_stamp(part) for part in parts] + [code_stamp(part, "") for part in data]
    return hashlib.sha256("\n".join(stamps).encode()).hexdigest()[:32]


def _digest(value: object) -> str:
    return hashlib.sha256("\0".join(_said(value)).encode("utf-8", "surrogatepass")).hexdigest()[:24]


def _said(value: object) -> Iterator[str]:
    """A value in words, the places where it was written left out, and for a file its state."""
    if isinstance(value, tuple):
        yield f"({len(value)}"
        for part in value:
            yield from _said(part)
    elif isinstance(value, Place):
        return
    elif isinstance(value, Path):
        try:
            state = value.stat()
            yield f"{value.name} {state.st_size} {state.st_mtime_ns}"
        except OSError:
            yield f"{value} is not there"
    elif is_dataclass(value):
        yield type(value).__name__
        for key in fields(value):
            yield from _said(getattr(value, key.name))
    else:
        yield str(value) if isinstance(value, str) else repr(value)
