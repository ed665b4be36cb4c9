"""Every challenge model, found by its place: one module of this package is one model, its name is the model's key."""

from __future__ import annotations

import importlib
import pkgutil
from dataclasses import replace
from functools import cache

from packgen.trials.frame import ChallengeModel


@cache
def _found() -> tuple[tuple[str, ChallengeModel], ...]:
    found = []
    for module in sorted(pkgutil.iter_modules(__path__), key=lambda m: m.name):
        key = module.name.replace("_", "-")
        model = importlib.import_module(f"{__name__}.{module.name}").MODEL
        found.append((key, replace(model, key=key)))
    return tuple(found)


def models() -> dict[str, ChallengeModel]:
    """Every challenge model by its key, in the order of the keys."""
    return dict(_found())
