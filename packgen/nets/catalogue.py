"""Every solid, found by its place: a file in `solids/` is a solid, and its name is the file's."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import Any, cast

from packgen.faults import nearest
from packgen.nets import solids
from packgen.nets.errors import NetError
from packgen.nets.given import Given, Parameter, listed, plain_name
from packgen.nets.solid import Solid


@dataclass(frozen=True, slots=True)
class Entry:
    """A solid of the catalogue: its name in a study, its title, what it is good for, and what it can be given."""

    name: str
    title: str
    about: str
    parameters: tuple[Parameter, ...]
    build: Callable[[Given], Solid]

    @property
    def takes(self) -> str:
        """Its parameters in words."""
        return listed(self.parameters)


@cache
def catalogue() -> tuple[Entry, ...]:
    """Every solid, by name."""
    found = []
    for module in sorted(pkgutil.iter_modules(solids.__path__), key=lambda m: m.name):
        code = cast(Any, importlib.import_module(f"{solids.__name__}.{module.name}"))
        found.append(Entry(module.name.replace("_", "-"), code.TITLE, code.ABOUT, tuple(code.PARAMETERS), code.build))
    return tuple(found)


def entry(name: str) -> Entry:
    """The solid of that name; spaces and underscores count as hyphens. Raises NetError if there is none."""
    wanted = plain_name(name).replace(" ", "-")
    known = {e.name: e for e in catalogue()}
    if wanted in known:
        return known[wanted]
    near = nearest(wanted, known)
    hint = f"Did you mean '{near}'? " if near else ""
    raise NetError(f"There is no solid called '{name}'.", f"{hint}The solids are: {', '.join(known)}.", "solid")


def build(name: str, given: Given) -> Solid:
    """The solid of that name with the sizes given (mm). Raises NetError for a wrong name, size or unit."""
    return entry(name).build(given)
