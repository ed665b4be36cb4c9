"""The sheets: one module a kind, found by its place in this folder. A sheet's key is its file's name with hyphens."""

from __future__ import annotations

import importlib
import pkgutil
from functools import cache
from types import ModuleType

from packgen.page.desk import Desk, Laid, Sheet


@cache
def _modules() -> dict[str, str]:
    """The dotted name of each sheet's module, by key. Modules whose name begins with _ are not sheets."""
    names = sorted(info.name for info in pkgutil.iter_modules(__path__) if not info.name.startswith("_"))
    return {name.replace("_", "-"): f"{__name__}.{name}" for name in names}


def kinds() -> tuple[str, ...]:
    """The keys of all sheets."""
    return tuple(_modules())


def _module(kind: str) -> ModuleType:
    return importlib.import_module(_modules()[kind])


def about(kind: str) -> Sheet:
    """What a sheet says about itself. Raises KeyError if there is no such sheet."""
    sheet: Sheet = _module(kind).SHEET
    return sheet


def lay_out(kind: str, desk: Desk) -> tuple[Laid, ...]:
    """The finished sheet, as the pages of one or more parts; none if the study has nothing to put on it."""
    laid: tuple[Laid, ...] = _module(kind).lay_out(desk)
    return laid
