"""The look of a level: type roles, line weights, ruled writing lines. Everything that makes pages one family.

Sizes are em sizes in mm, given below in points for the eye. Children's running text follows the usual starting sizes
(about 24 pt at 5-6, 18-20 at 6-7, 14-16 at 8-9, 12 from 10; common practice, no source; J. Watts and J. Nisbet,
"Legibility in Children's Books", hold that more than 18 pt may hinder word recognition, so `first` stays at 20, most
of it read aloud by an adult). Line weights are from the series of ISO 128: 0.18 0.25 0.35 0.5 0.7 mm.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from packgen.page.text import Style
from packgen.units import MM_PER_POINT

HAIR, THIN, MIDDLE, BOLD, HEAVY = 0.18, 0.25, 0.35, 0.5, 0.7

# Greys. Text is never lighter than SOFT, whose contrast on white is more than 7:1 (WCAG 2.1, 1.4.6).
BLACK, SOFT = 0.0, 0.30
RULE, GUIDE, TINT, PALE = 0.45, 0.62, 0.86, 0.94


@dataclass(frozen=True, slots=True)
class Ruling:
    """Writing lines. `x_height` and `pitch` (baseline to baseline) in mm.

    `guides` is "four" (top, dotted middle, base, descender), "two" (middle and base) or "one" (base only).
    """

    x_height: float
    pitch: float
    guides: str

    @property
    def ascent(self) -> float:
        """The height of tall letters over the base line, twice the small letters (National Handwriting Association)."""
        return 2 * self.x_height

    @property
    def descent(self) -> float:
        """The depth of tails under the base line; as deep as a small letter is high, less a hair of room."""
        return 0.9 * self.x_height


@dataclass(frozen=True, slots=True)
class Look:
    """How one level's pages are set."""

    level: str
    title: Style
    heading: Style
    body: Style
    strong: Style
    small: Style
    label: Style
    ruling: Ruling
    floor: float
    gap: float
    corner: float
    frame: float


def _style(face: str, points: float, leading: float) -> Style:
    size = points * MM_PER_POINT
    return Style(face, size, size * leading)


# Writing lines. 15 mm from line to line is the usual Key Stage 1 exercise book, small letters 4-6 mm (National
# Handwriting Association, UK); with guides for tall letters and tails, 18 mm keeps the sets apart. 11/32 in = 8.7 mm is
# US wide ruling and 9/32 in = 7.1 mm medium. The 10 mm letters of `first` are common practice, no source.
_RULINGS = {
    "first": Ruling(10.0, 32.0, "four"),
    "younger": Ruling(5.0, 18.0, "four"),
    "older": Ruling(3.0, 8.7, "one"),
    "upper": Ruling(2.5, 7.1, "one"),
    "parent": Ruling(2.5, 8.0, "one"),
}

_LOOKS = {
    "first": Look(
        "first", _style("display", 30, 1.1), _style("display", 20, 1.15), _style("early", 20, 1.35),
        _style("early-bold", 20, 1.35), _style("early", 12, 1.3), _style("early-bold", 14, 1.25),
        _RULINGS["first"], 14 * MM_PER_POINT, 8.0, 4.0, BOLD,
    ),
    "younger": Look(
        "younger", _style("display", 25, 1.1), _style("display", 16, 1.2), _style("early", 15, 1.4),
        _style("early-bold", 15, 1.4), _style("early", 10.5, 1.3), _style("early-bold", 12, 1.25),
        _RULINGS["younger"], 12 * MM_PER_POINT, 6.0, 3.0, BOLD,
    ),
    "older": Look(
        "older", _style("display", 21, 1.12), _style("display", 13.5, 1.2), _style("text", 11.5, 1.38),
        _style("text-bold", 11.5, 1.38), _style("text", 9.5, 1.3), _style("text-bold", 10, 1.25),
        _RULINGS["older"], 9.5 * MM_PER_POINT, 4.5, 2.0, MIDDLE,
    ),
    "upper": Look(
        "upper", _style("display", 19, 1.12), _style("display", 12, 1.2), _style("text", 10.5, 1.4),
        _style("text-bold", 10.5, 1.4), _style("text", 9, 1.3), _style("text-bold", 9.5, 1.25),
        _RULINGS["upper"], 9 * MM_PER_POINT, 4.0, 1.0, MIDDLE,
    ),
    "parent": Look(
        "parent", _style("display", 19, 1.12), _style("display", 12, 1.2), _style("text", 10, 1.38),
        _style("text-bold", 10, 1.38), _style("text", 9, 1.3), _style("text-bold", 9.5, 1.25),
        _RULINGS["parent"], 9 * MM_PER_POINT, 4.0, 1.0, MIDDLE,
    ),
}  # fmt: skip


def look_for(level: str, *, writing: float | None = None, larger: bool = False, wider: bool = False) -> Look:
    """The look of a level (`first`, `younger`, `older`, `upper`, `parent`), with a child's own preferences.

    `writing` is the x-height of ruled lines in mm. `larger` sets text a fifth larger, `wider` the lines further apart.
    """
    look = _LOOKS[level]
    ruling = look.ruling
    if writing and writing != ruling.x_height:
        ruling = Ruling(writing, ruling.pitch * writing / ruling.x_height, ruling.guides)
    if wider:
        ruling = replace(ruling, pitch=ruling.pitch * 1.2)
    if not (larger or wider):
        return replace(look, ruling=ruling)
    grow, lead = (1.2 if larger else 1.0), (1.18 if wider else 1.0)

    def suited(style: Style) -> Style:
        return Style(style.face, style.size * grow, style.leading * grow * lead, style.ink)

    return replace(
        look, ruling=ruling, heading=suited(look.heading), body=suited(look.body), strong=suited(look.strong),
        small=suited(look.small), label=suited(look.label),
    )  # fmt: skip
