"""The challenge models as the command lists them: what each is given, allows and measures."""

from __future__ import annotations

from dataclasses import dataclass

from packgen.trials.frame import WORD, Input
from packgen.trials.given import in_system, range_text
from packgen.trials.models import models


@dataclass(frozen=True, slots=True)
class InputLine:
    """One quantity: name, range or words, default ("" if it must be given, "may be left out" if optional), help."""

    name: str
    allowed: str
    default: str
    help: str
    also: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ModelLine:
    """One model: key, title, what it is about, its quantities, what it measures, and its formula with source."""

    key: str
    title: str
    about: str
    inputs: tuple[InputLine, ...]
    measures: tuple[str, ...]
    change: str
    formula: str
    source: str


def catalogue(units: str = "metric") -> tuple[ModelLine, ...]:
    """Every challenge model with its quantities, ranges and units, in the order of the keys."""
    return tuple(
        ModelLine(
            key,
            model.title,
            model.about,
            tuple(_line(item, units) for item in model.inputs),
            tuple(f"{r.name} ({r.unit})" if r.unit else r.name for r in model.results),
            model.vary,
            model.formula,
            model.source,
        )
        for key, model in models().items()
    )


def _line(item: Input, units: str) -> InputLine:
    default = item.default
    if isinstance(default, int | float) and item.dimension != WORD:
        text = str(in_system(default, item.dimension, item.shown_unit, units, rounded=False))
    else:
        text = default if isinstance(default, str) else ("may be left out" if item.optional else "")
    return InputLine(item.name, range_text(item, units), text, item.help, item.also)
