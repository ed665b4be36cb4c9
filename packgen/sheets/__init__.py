"""The sheets: one module a kind, found by its place in this folder. A sheet's key is its file's name with hyphens."""

from __future__ import annotations

import ast
import importlib
import pkgutil
import re
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING

from packgen.page.sheet import Option, Sheet

if TYPE_CHECKING:
    from packgen.page.desk import Desk, Laid

_SAID = re.compile(r"^SHEET = (Sheet\(.*?^\))", re.MULTILINE | re.DOTALL)


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


@cache
def about(kind: str) -> Sheet:
    """What a sheet says about itself. Raises KeyError if there is no such sheet.

    It is read from the sheet's file as it is written there, for a name is often looked up where nothing is laid out
    and the modules that draw are not needed. A sheet that computes what it says is asked for it instead.
    """
    name = _modules()[kind].rpartition(".")[2]
    try:
        said = _SAID.search((Path(__path__[0]) / f"{name}.py").read_text(encoding="utf-8"))
        sheet = _made(ast.parse(said[1], mode="eval").body) if said else None
    except (OSError, ValueError, KeyError, TypeError):
        sheet = None
    if not isinstance(sheet, Sheet):
        sheet = _module(kind).SHEET
    assert isinstance(sheet, Sheet)
    return sheet


_MADE_OF = {"Sheet": Sheet, "Option": Option}


def _made(node: ast.expr) -> object:
    """The value of plain constants, tuples, and sheets and options made of them. Raises ValueError for more."""
    if isinstance(node, ast.Tuple):
        return tuple(_made(part) for part in node.elts)
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
        values = {str(word.arg): _made(word.value) for word in node.keywords}
        return _MADE_OF[node.func.id](*(_made(part) for part in node.args), **values)
    return ast.literal_eval(node)


def lay_out(kind: str, desk: Desk) -> tuple[Laid, ...]:
    """The finished sheet, as the pages of one or more parts; none if the study has nothing to put on it."""
    laid: tuple[Laid, ...] = _module(kind).lay_out(desk)
    return laid
