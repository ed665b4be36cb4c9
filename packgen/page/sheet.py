"""What a sheet says about itself, and the papers there are: small things that are known before a page is laid out."""

from __future__ import annotations

from dataclasses import dataclass

PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}


@dataclass(frozen=True, slots=True)
class Option:
    """An option of a sheet that a recipe may set: its default, what it does, and `choices` if only some words fit."""

    name: str
    default: object
    about: str
    choices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Sheet:
    """What a sheet module says about itself. `per` is what one is made for: study, work, challenge or model."""

    title: str
    about: str
    per: str = "study"
    levels: tuple[str, ...] = ("first", "younger", "older", "upper")
    options: tuple[Option, ...] = ()
    parts: tuple[str, ...] = ()
