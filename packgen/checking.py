"""Checking: every fault and warning of the files and of the pages they would make, with nothing written.

Pages are laid out only where a fault could not be seen otherwise; see packgen/sure.py.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import replace

from packgen.faults import Fault, InputFaults, Severity, in_order
from packgen.pictures.cellar import Cellar
from packgen.planning.plan import PackPlan
from packgen.planning.reading_check import reading_warnings
from packgen.reading.models import Study
from packgen.resources import cache_folder
from packgen.sure import Sure
from packgen.workshop import Order, Plans, open_workshop, read_all

__all__ = ["Order", "check", "told"]


def check(order: Order, jobs: int | None = None) -> tuple[Fault, ...]:
    """Every fault and warning of the files and of the pages they would make; writes nothing."""
    try:
        plans = read_all(order)
        found = _laid_out(order, plans, jobs)
        return in_order((*found, *reading_warnings(plans.study, plans.packs)))
    except InputFaults as wrong:
        return wrong.faults


def _laid_out(order: Order, plans: Plans, jobs: int | None) -> tuple[Fault, ...]:
    """What is to be told of plans, those sheets laid out that are not sure to be right."""
    sure = Sure(plans, order.study, Cellar(cache_folder()))
    asked_all = not (order.only or order.packs)
    left = sure.left() if asked_all else plans.packs
    if not any(pack.items for pack in left):
        return in_order(plans.faults)
    from packgen.all_made import all_made  # loads what lays out pages, which a study in order does not need

    if _needs_others(left):
        left = plans.packs
    shop = open_workshop(order, plans=replace(plans, packs=left))
    made = all_made(order, shop, None, jobs, None)
    for pack, one in zip(left, made, strict=True):
        for place in one.clean:
            sure.clean(pack, pack.items[place])
    sure.save()
    printed = left != plans.packs or any(one.runs for one in made)
    return told(plans.study, (*shop.faults, *(fault for one in made for fault in one.faults)), printed)


def _needs_others(packs: Iterable[PackPlan]) -> bool:
    """True if some sheet is about the whole study: those of the parent show what the other packs print."""
    return any(isinstance(item.subject, Study) for pack in packs for item in pack.items)


def told(study: Study, faults: Collection[Fault], printed: bool) -> tuple[Fault, ...]:
    """Every fault and warning, each once, in order. Raises InputFaults with all of them if one is a fault."""
    faults = in_order(faults)
    if not faults and not printed:
        message = "There is nothing to print: this study has nothing for the sheets asked for."
        faults = (Fault(study.at, message, "Leave out --only and --pack, or add to the study."),)
    if any(fault.severity is Severity.FAULT for fault in faults):
        raise InputFaults(faults)
    return faults
