"""The fold schemes: each module here holds one value, SCHEME, and is found by its place. Its name is the file's."""

from __future__ import annotations

from functools import cache
from importlib import import_module
from pkgutil import iter_modules

from packgen.folding.program import Scheme


@cache
def _found() -> tuple[tuple[str, Scheme], ...]:
    names = sorted(module.name for module in iter_modules(__path__))
    return tuple((name.replace("_", "-"), import_module(f"{__name__}.{name}").SCHEME) for name in names)


def schemes() -> dict[str, Scheme]:
    """Every fold scheme by name, in order of the alphabet."""
    return dict(_found())
