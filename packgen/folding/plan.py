"""Planning a book: which of a scheme's programs, how many sheets, in which sections; then where every page lies."""

from __future__ import annotations

from math import ceil, floor
from typing import Literal

from packgen.faults import nearest
from packgen.folding.placing import Placing
from packgen.folding.program import FoldError, Program, Scheme
from packgen.folding.schemes import schemes
from packgen.folding.slots import Flip, FoldPlan, natural_flip

USUAL_CALIPER = 0.10  # mm, 80 g/m² writing paper (0.004 in): prepressure.com printing dictionary, "caliper"
THICKEST_NEST = 1.2  # mm of paper folded at once; common practice, no source: about 12 sheets of 80 g/m²
THICKEST_CALIPER = 1.0  # mm; thicker board is not folded but hinged (common practice, no source)


def plan_fold(
    scheme: str,
    pages: int,
    sheet_width: float,
    sheet_height: float,
    *,
    caliper: float = USUAL_CALIPER,
    two_sided_flip: Flip | None = None,
    panels: int | None = None,
    faces: Literal[1, 2] | None = None,
    margin: float = 6.0,
) -> FoldPlan:
    """Where every page of a book of that many pages lies. The sheet may be given upright or lying; the scheme turns it.

    two_sided_flip: the duplex setting to plan the backs for (None: the one that keeps them upright). panels: how many
    side by side, for schemes that leave it open. faces: 1 to print one side where the scheme can do both. margin: what
    the printer cannot print, past which ticks must reach. Raises FoldError.
    """
    found = scheme_named(scheme)
    _check(pages, caliper)
    program, count = _choose(scheme, found, pages, panels, faces)
    short, long = sorted((float(sheet_width), float(sheet_height)))
    width, height = (long, short) if program.orientation == "landscape" else (short, long)
    flip = two_sided_flip or natural_flip(width, height)
    placing = Placing(program, width, height, flip, caliper, margin, count > 1)
    signatures = _signatures(program, count, caliper)
    sheets = tuple(placing.sheets(pages, signatures))
    slots = [slot for sheet in sheets for slot in (*sheet.front, *sheet.back)]
    biggest = max(slots, key=lambda slot: slot.page_width * slot.page_height)
    return FoldPlan(
        scheme=scheme,
        title=found.title,
        program=program,
        page_width=biggest.page_width,
        page_height=biggest.page_height,
        pages=pages,
        book_pages=program.pages_per_sheet * count,
        sheet_width=width,
        sheet_height=height,
        sides="one-sided" if program.faces == 1 else flip,
        sheets=sheets,
        signatures=signatures,
        caliper=caliper,
        creep_per_sheet=caliper if any(slot.creep for slot in slots) else 0.0,
        laid=program.laid,
    )


def _check(pages: int, caliper: float) -> None:
    if pages < 1:
        raise FoldError("a book needs at least one page", "give at least one page")
    if not 0 <= caliper <= THICKEST_CALIPER:
        raise FoldError(
            f"paper {caliper:g} mm thick cannot be folded", "give the thickness of one sheet, such as 0.10 mm"
        )


def scheme_named(name: str) -> Scheme:
    """The fold scheme of that name. Raises FoldError with every name there is."""
    known = schemes()
    if name in known:
        return known[name]
    near = nearest(name, known)
    hint = f"{near}, or another" if near else "one"
    raise FoldError(f"there is no fold scheme {name!r}", f"write {hint} of: {', '.join(known)}")


def _choose(
    name: str, scheme: Scheme, pages: int, panels: int | None, faces: Literal[1, 2] | None
) -> tuple[Program, int]:
    """The scheme's program for that many pages, and the number of sheets."""
    kept = [one for one in scheme.programs if faces in (None, one.faces)] or list(scheme.programs)
    kept = [one for one in kept if one.faces == kept[0].faces]
    offered = sorted({one.panels for one in kept})
    if panels is not None and panels not in offered:
        raise FoldError(
            f"{name} cannot have {panels} panels side by side", f"ask for {' or '.join(map(str, offered))} panels"
        )
    if scheme.grows:
        if panels is None and scheme.usual_panels:
            strip = ceil(pages / kept[0].faces)
            panels = max(offered[0], ceil(strip / ceil(strip / scheme.usual_panels)))
        program = next(one for one in kept if panels in (None, one.panels))
        return program, ceil(pages / program.pages_per_sheet)
    fits = [one for one in kept if one.pages_per_sheet >= pages and panels in (None, one.panels)]
    if not fits:
        most = max(one.pages_per_sheet for one in kept if panels in (None, one.panels))
        raise FoldError(f"{pages} pages do not fit {name}, which holds {most}", _takes(pages))
    return min(fits, key=lambda one: one.pages_per_sheet), 1


def _takes(pages: int) -> str:
    """Which schemes hold that many pages, in words."""
    held = {name: scheme.most_pages for name, scheme in schemes().items()}
    fixed = sorted((most, name) for name, most in held.items() if most and most >= pages)
    words = [f"{name} ({most})" for most, name in fixed]
    words += [f"{name} (any number)" for name, most in held.items() if most is None]
    return f"take fewer pages, or a scheme that holds them: {', '.join(words)}"


def _signatures(program: Program, sheets: int, caliper: float) -> tuple[int, ...]:
    """The number of sheets in each section, as even as can be, none thicker than folds well."""
    if program.assembly != "nested":
        return (sheets,)
    leaves = program.pages_per_sheet // 4  # folded leaves lying in one another, from one sheet
    most = max(1, floor(THICKEST_NEST / max(caliper, USUAL_CALIPER / 2) / leaves + 1e-9))
    sections = ceil(sheets / most)
    each, more = divmod(sheets, sections)
    return tuple(each + (section < more) for section in range(sections))
