"""Names a study, a family or a recipe uses for sheets, their parts and options, held against what there is."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from packgen import sheets
from packgen.faults import Fault, Place, nearest, place_of
from packgen.planning.challenges import trial_of
from packgen.reading.models import Challenge, Family, Model, Recipe, Study

# Options every sheet made for several things understands, and those of the whole pack.
_COMMON = ("most", "only")


def unknown_sheet(kind: str, at: Place) -> Fault:
    """The fault of a sheet that does not exist, with the nearest name or all of them."""
    return _unknown("sheet", kind, at, sheets.kinds())


def _unknown(what: str, name: str, at: Place, known: Iterable[str]) -> Fault:
    known = tuple(known)
    near = nearest(name, known)
    instead = f'Did you mean "{near}"?' if near else f"Choose from: {', '.join(known)}."
    return Fault(at, f'There is no {what} called "{name}".', instead)


def parts() -> tuple[str, ...]:
    """The names of all parts of sheets that can have copies of their own."""
    return tuple(dict.fromkeys(part for kind in sheets.kinds() for part in sheets.about(kind).parts))


def recipe_faults(recipe: Recipe) -> list[Fault]:
    """Sheets and options of a recipe that do not exist, and choices an option does not have."""
    faults: list[Fault] = []
    for line in recipe.sheets:
        if line.sheet not in sheets.kinds():
            faults.append(unknown_sheet(str(line.sheet), line.at))
            continue
        known = {option.name: option for option in sheets.about(str(line.sheet)).options}
        for name, value in line.options:
            if str(name) not in known and str(name) not in _COMMON:
                at = place_of(name)
                faults.append(_unknown(f"option of the sheet {line.sheet}", str(name), at, (*known, *_COMMON)))
                continue
            choices = known[str(name)].choices if str(name) in known else ()
            if choices and str(value) not in choices:
                at = place_of(value) if place_of(value).line else place_of(name)
                faults.append(_unknown(f"choice for {name}", str(value), at, choices))
            if str(name) == "most" and not str(value).isdecimal():
                faults.append(Fault(place_of(value), f'"most" wants a whole number, not "{value}".',
                                    "Write for example most: 2"))  # fmt: skip
    return faults


def study_faults(study: Study) -> list[Fault]:
    """Sheets named by the works of a study that do not exist."""
    named = [name for work in study.works for name in work.leave_out]
    return [unknown_sheet(str(name), place_of(name)) for name in named if name not in sheets.kinds()]


def family_faults(family: Family) -> list[Fault]:
    """Sheets and parts named by the children and goals of a family that do not exist."""
    faults: list[Fault] = []
    with_parts = (*sheets.kinds(), *parts())
    for child in family.children:
        faults += [unknown_sheet(str(n), place_of(n)) for n in child.leave_out if n not in sheets.kinds()]
        faults += [
            _unknown("sheet or part", str(n), place_of(n), with_parts) for n, _ in child.extra if n not in with_parts
        ]
    for goal in family.goals:
        faults += [unknown_sheet(str(n), place_of(n)) for n in goal.met_by if n not in sheets.kinds()]
    return faults


def making_faults(study: Study, family: Family, told: Collection[Fault]) -> list[Fault]:
    """What is wrong with the values of a study's challenges and models, for a study that is refused anyway.

    Of one that is not their sheets tell it, which lay the models out as well. A making with a fault among those `told`
    is passed over: what was misread would be missing here.
    """
    from packgen.nets import NetError  # loads the nets, which a study in order does not need here
    from packgen.page.net_made import asked_solid, place_in

    written: tuple[Challenge | Model, ...] = (*study.challenges, *study.models)
    makings = sorted(written, key=lambda making: making.at.line)
    lines = {fault.place.line for fault in told if fault.place.file == study.at.file}
    ends = [making.at.line for making in makings[1:]] + [max([*lines, 0]) + 1]
    faults: list[Fault] = []
    for making, end in zip(makings, ends, strict=False):
        if any(making.at.line <= line < end for line in lines):
            continue
        if isinstance(making, Challenge):
            faults += trial_of(making, family)[1]
            continue
        try:
            asked_solid(making)
        except NetError as error:
            faults.append(Fault(place_in(making, error), error.message, error.instead))
    return faults
